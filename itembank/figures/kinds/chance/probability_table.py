"""A table of probabilities: the outcomes of one event, and how likely each is."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chart.chart_names import names_fault
from itembank.figures.kinds.table.table_cells import table_drawing, table_width
from itembank.figures.kinds.unknown_asked import LETTER
from itembank.figures.label_room import room
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.notation.words import words as said

MOST_OUTCOMES = 6
LARGEST_COEFFICIENT = 9
WIDEST_TABLE = 16
HEADING = "Probability"


@dataclass(frozen=True, slots=True)
class ProbabilityTable(Figure):
    """The outcomes of one event, and their probabilities below or beside them: they add up to 1.

    A probability is a number, or one letter (or so many times it) that is to be found.

    >>> table = ProbabilityTable(("red", "blue"), (t.Dec("0", "3"), t.Sym("x")))
    >>> _read(table, Reading("probability", ("blue",)))
    Dec(whole='0', places='7', recurring='')
    """

    outcomes: tuple[str, ...]
    chances: tuple[t.Node, ...]
    heading: str = "Outcome"


def _letter(chance: t.Node) -> tuple[str, int]:
    """Return the letter of a probability, and how many times it is there; no letter is ``""``."""
    match chance:
        case t.Sym(name):
            return name, 1
        case t.Juxt((t.Int(times), t.Sym(name))):
            return name, times
    return "", 0


def _fault(figure: ProbabilityTable) -> str:
    if not 2 <= len(figure.outcomes) <= MOST_OUTCOMES:
        return f"it may have 2 to {MOST_OUTCOMES} outcomes"
    if found := names_fault(figure.outcomes, "name"):
        return found
    if len(figure.chances) != len(figure.outcomes):
        return "it has a probability for each outcome"
    if not re.fullmatch(r"[A-Za-z ]{1,12}", figure.heading):
        return "its heading is a word or two"
    letters = {name for name, _ in map(_letter, figure.chances) if name}
    if len(letters) > 1 or any(not re.fullmatch("[a-z]", name) for name in letters):
        return (
            "only one small letter can be found: the probabilities add up to 1 and settle no more"
        )
    total, times = Fraction(0), 0
    for chance in figure.chances:
        name, count = _letter(chance)
        if name:
            if not 1 <= count <= LARGEST_COEFFICIENT:
                return f"a letter stands up to {LARGEST_COEFFICIENT} times in a probability"
            times += count
            continue
        if not isinstance(chance, t.Int | t.Dec | t.Frac) or room(chance).width > 4:
            return "a probability is a short fraction or decimal, or a letter"
        try:
            value = exact(chance)
        except t.NotationError:
            return "a probability is a short fraction or decimal, or a letter"
        if not 0 <= value <= 1:
            return "probabilities stand between 0 and 1"
        total += value
    if times and total >= 1:
        return "its numbers leave nothing for the letter"
    if not times and total != 1:
        return f"its probabilities come to {total}, not to 1"
    if table_width(_across(figure)) > WIDEST_TABLE and len(figure.outcomes) > _most_down(figure):
        return "its names and numbers take too much room: shorten the names"
    return ""


_Cells = list[list[str | t.Node | None]]


def _across(figure: ProbabilityTable) -> _Cells:
    return [[figure.heading, *figure.outcomes], [HEADING, *figure.chances]]


def _most_down(figure: ProbabilityTable) -> int:
    """Return how many outcomes there may be one below another: rows of fractions are higher."""
    return 3 if any(isinstance(chance, t.Frac) for chance in figure.chances) else 5


def _shown(figure: ProbabilityTable) -> _Cells:
    """Return the cells: two rows where they are narrow enough, else two columns."""
    across = _across(figure)
    if table_width(across) <= WIDEST_TABLE:
        return across
    return [list(row) for row in zip(*across, strict=True)]


def _values(figure: ProbabilityTable) -> dict[str, Fraction]:
    """Return every probability by its outcome, small letters; a letter is what is left of 1."""
    letters = [_letter(chance)[1] for chance in figure.chances]
    known = [
        Fraction(0) if times else exact(chance)
        for times, chance in zip(letters, figure.chances, strict=True)
    ]
    share = (1 - sum(known, Fraction(0))) / sum(letters) if any(letters) else Fraction(0)
    return {
        name.casefold(): value + times * share
        for name, value, times in zip(figure.outcomes, known, letters, strict=True)
    }


def _read(figure: ProbabilityTable, reading: Reading) -> t.Node:
    values = _values(figure)
    names = [name.casefold() for name in reading.of]
    there = bool(names) and len({*names}) == len(names) and all(name in values for name in names)
    if reading.name in ("probability", "not") and there:
        either = sum((values[name] for name in names), Fraction(0))
        return written_as(either if reading.name == "probability" else 1 - either, *figure.chances)
    if reading.name in ("largest", "smallest") and not reading.of:
        best = (max if reading.name == "largest" else min)(values.values())
        found = [name for name in figure.outcomes if values[name.casefold()] == best]
        if len(found) == 1:
            return t.Label(found[0])
    raise not_shown(reading)


def _readings(figure: ProbabilityTable) -> tuple[Reading, ...]:
    found = [Reading(what, (name,)) for name in figure.outcomes for what in ("probability", "not")]
    if len(figure.outcomes) > 2:
        found.append(Reading("probability", figure.outcomes[:2]))
    for what, best in (("largest", max), ("smallest", min)):
        values = [*_values(figure).values()]
        if values.count(best(values)) == 1:
            found.append(Reading(what))
    return tuple(found)


def _relations(figure: ProbabilityTable) -> tuple[t.Relation, ...]:
    if not any(_letter(chance)[0] for chance in figure.chances):
        return ()
    return (t.equals(t.add(*figure.chances), t.Int(1)),)


def _words(figure: ProbabilityTable) -> str:
    pairs = zip(figure.outcomes, figure.chances, strict=True)
    told = "; ".join(f"{name} has {said(chance)}" for name, chance in pairs)
    return f"A table gives each {figure.heading} with its probability: {told}."


_ASKS = r"(?:what is|find|work out|write down|calculate) the probability"
_OTHERS = (
    r"(?:first|second|third|next|other|last|two|three|number|sum|total|"
    r"never|not|no|only|just|rarely|hardly|nearly|almost|always)\b"
)
"""Words that would make it another event, or one of several."""
_EVENT = (
    r"(?:of (?:getting |taking |landing on |rolling )?|that it (?:is |lands on |shows )|"
    rf"that (?:the|an?|this) (?:(?!{_OTHERS})[a-z]+ ){{1,2}}(?:is |lands on ))"
)


def _asked(figure: ProbabilityTable, found: re.Match[str]) -> Asked:
    text = found["event"].casefold()
    negated = text.startswith("not ")
    names = re.split(r" or ", text.removeprefix("not "))
    bare = [re.sub(r"^(?:an? )", "", name.strip("{}‘’ ")) for name in names]
    known = {name.casefold(): name for name in figure.outcomes}
    if any(name not in known for name in bare):
        raise FigureError(f"‘{found['event']}’ names no outcome of it")
    if len({*bare}) < len(bare):
        raise FigureError("it names one outcome twice")
    if negated and len(bare) > 1:
        raise FigureError("‘not … or …’ may be understood in two ways")
    what = Reading("not" if negated else "probability", tuple(known[name] for name in bare))
    return Asked(t.Sym("r"), (("r", what),))


def _likely(figure: ProbabilityTable, found: re.Match[str]) -> Asked:
    sort = found["sort"].casefold()
    if sort not in ("outcome", figure.heading.casefold()):
        raise FigureError(f"it has no ‘{sort}’")
    best = "largest" if found["way"].casefold() == "most" else "smallest"
    return Asked(t.Sym("r"), (("r", Reading(best)),))


PROBABILITY_TABLE = register_figure(
    FigureKind(
        "probability table",
        ProbabilityTable,
        fault=_fault,
        drawing=lambda figure: table_drawing(_shown(figure)),
        words=_words,
        printed=lambda figure: (*figure.chances, *map(t.Label, figure.outcomes)),
        readings=_readings,
        read=_read,
        relations=_relations,
        wordings=(
            LETTER,
            Wording(rf"{_ASKS} {_EVENT}(?P<event>[\w :–’{{}}-]{{1,60}}?)", _asked),
            Wording(r"which (?P<sort>[\w ]{1,12}) is (?:the )?(?P<way>most|least) likely", _likely),
        ),
    )
)
