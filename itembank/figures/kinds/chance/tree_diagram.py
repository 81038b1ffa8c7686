"""A tree diagram: outcomes of one event after another, with probabilities on the branches."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, Mark, Point, Stroke, Text, drawing
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Said,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.chance.taken_from import taken_otherwise
from itembank.figures.label_room import room
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import exact
from itembank.notation.words import words as said

MOST_BRANCHES = 3
LONGEST = 10


@dataclass(frozen=True, slots=True)
class Branch:
    """A branch: its outcome, and its probability, `None` where it is left to be found.

    `then` are the branches that follow it.
    """

    outcome: str
    chance: t.Node | None = None
    then: tuple[Twig, ...] = ()


@dataclass(frozen=True, slots=True)
class Twig:
    """A branch of the second event, after which nothing follows."""

    outcome: str
    chance: t.Node | None = None


@dataclass(frozen=True, slots=True)
class TreeDiagram(Figure):
    """Branches from one place, each followed by others or by none.

    Of each set of branches the probabilities come to 1; one of a set may be left out.

    >>> half = t.frac(1, 2)
    >>> twigs = (Twig("red", t.frac(1, 3)), Twig("blue"))
    >>> figure = TreeDiagram((Branch("red", half, twigs), Branch("blue", half, twigs)))
    >>> shown_line(_read(figure, Reading("probability", ("red", "blue"))))
    '1/3'
    """

    branches: tuple[Branch, ...]


def _sets(figure: TreeDiagram) -> list[tuple[str, tuple[Branch | Twig, ...]]]:
    """Return each set of branches with what it comes after."""
    after = [(branch.outcome, branch.then) for branch in figure.branches if branch.then]
    return [("", figure.branches), *after]


def _fault(figure: TreeDiagram) -> str:
    for after, branches in _sets(figure):
        where = f"the branches after {after}" if after else "the first branches"
        if not 2 <= len(branches) <= MOST_BRANCHES:
            return f"{where} are {len(branches)}: there may be 2 to {MOST_BRANCHES}"
        names = [twig.outcome for twig in branches]
        if any(not re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9 ]*", name) for name in names):
            return "an outcome is a word or a number"
        if any(len(name) > LONGEST for name in names):
            return f"the name of an outcome has at most {LONGEST} letters"
        if len({name.casefold() for name in names}) < len(names):
            return f"{where} have two with one name"
        given = [twig.chance for twig in branches if twig.chance is not None]
        try:
            values = [exact(chance) for chance in given]
        except t.NotationError:
            return "probabilities are to be numbers"
        if any(not isinstance(chance, t.Int | t.Dec | t.Frac) for chance in given):
            return "probabilities are fractions or decimals"
        if any(room(chance).width > Fraction(5, 2) for chance in given):
            return "a probability is too long for its branch"
        total = sum(values, Fraction(0))
        if any(not 0 <= value <= 1 for value in values):
            return "probabilities stand between 0 and 1"
        if len(given) < len(branches) - 1:
            return f"{where} leave out more than one probability"
        if len(given) == len(branches) and total != 1:
            return f"{where} come to {_plain(total)}, not to 1"
        if len(given) < len(branches) and total >= 1:
            return f"{where} leave nothing for the probability that is left out"
    if {bool(branch.then) for branch in figure.branches} == {True, False}:
        return "some branches are followed by others and some are not"
    return ""


def _plain(value: Fraction) -> str:
    whole = value.denominator == 1
    return shown_line(t.num(int(value)) if whole else t.frac(value.numerator, value.denominator))


_BESIDE = Fraction(1, 4)
_ALONG = (Fraction(13, 20), Fraction(3, 4), Fraction(4, 5))
"""How far along its branch a probability may stand: farther along, branches are more apart."""
_APART = Fraction(3, 10)
"""How far two probabilities are apart, so that nobody takes the foot of one fraction and the head
of the next for a fraction of their own."""


def _along(step: Fraction, tall: Fraction) -> Fraction:
    """Return how far along probabilities stand: no farther than they have to for their room.

    Of a branch enough is seen behind them then, and not a dot that looks like a decimal point.
    """
    return next((value for value in _ALONG if step * value - tall >= _APART), _ALONG[-1])


def _drawing(figure: TreeDiagram) -> Drawing:
    chances = [c.chance for _, branches in _sets(figure) for c in branches if c.chance is not None]
    tall = max([room(chance).height for chance in chances], default=Fraction(1))
    # Where their probabilities stand, two branches are apart by a part of the step.
    total = sum(len(branch.then) or 1 for branch in figure.branches)
    step = min(Fraction(4, 3) * (tall + Fraction(3, 4)), Fraction(9) / (total - 1))
    step = max(Fraction(3, 2), Fraction(4, 3) * tall + Fraction(1, 10), step)
    along = _along(step, tall)
    names = [room(twig.outcome).width for _, some in _sets(figure) for twig in some]
    across = max(Fraction(7, 2), min(Fraction(5), Fraction(15, 2) - max(names)))
    marks: list[Mark] = []
    chances_on: list[Text] = []
    leaves = [len(branch.then) or 1 for branch in figure.branches]
    first_at = []
    row = Fraction(0)
    for count in leaves:
        first_at.append(-(row + Fraction(count - 1, 2)) * step)
        row += count
    middle = -Fraction(total - 1, 2) * step
    wide = max(room(branch.outcome).width for branch in figure.branches)
    for branch, y in zip(figure.branches, first_at, strict=True):
        tip = Point(across, y)
        _branch(marks, chances_on, (Point(Fraction(0), middle), tip), branch, along)
        start = Point(across + 2 * _BESIDE + wide, y)
        top = y + Fraction(len(branch.then) - 1, 2) * step
        for place, twig in enumerate(branch.then):
            ends = start, Point(start.x + across, top - place * step)
            _branch(marks, chances_on, ends, twig, along)
    # After all strokes, so that each stands on paper.
    return drawing([*marks, *chances_on])


def _branch(
    marks: list[Mark],
    chances: list[Text],
    ends: tuple[Point, Point],
    branch: Branch | Twig,
    along: Fraction,
) -> None:
    start, tip = ends
    marks.append(Stroke(ends, "branch"))
    marks.append(Text(Point(tip.x + _BESIDE, tip.y), branch.outcome, "left", role="outcome"))
    if branch.chance is not None:
        place = Point(start.x + (tip.x - start.x) * along, start.y + (tip.y - start.y) * along)
        chances.append(Text(place, branch.chance, role="chance", paper=True))


def _words(figure: TreeDiagram) -> str:
    deep = bool(figure.branches[0].then)
    out = ["A tree diagram shows two events, one after the other." if deep else ""]
    for after, branches in _sets(figure):
        first = "First" if deep else "A tree diagram shows one event"
        told = [
            f"{twig.outcome} has a branch with no probability"
            if twig.chance is None
            else f"{twig.outcome} has the probability {said(twig.chance)}"
            for twig in branches
        ]
        out.append(f"{f'After {after}' if after else first}: {'; '.join(told)}.")
    return " ".join(part for part in out if part)


def _chance(branches: tuple[Branch | Twig, ...], outcome: str) -> Fraction | None:
    """Return the probability of an outcome among a set of branches."""
    known = {
        twig.outcome.casefold(): None if twig.chance is None else exact(twig.chance)
        for twig in branches
    }
    if outcome.casefold() not in known:
        return None
    value = known[outcome.casefold()]
    if value is None:
        return 1 - sum((value for value in known.values() if value is not None), Fraction(0))
    return value


def _read(figure: TreeDiagram, reading: Reading) -> t.Node:
    value: Fraction | None = None
    match reading:
        case Reading("missing", ()):
            lacking = [
                (branches, twig.outcome)
                for _, branches in _sets(figure)
                for twig in branches
                if twig.chance is None
            ]
            found = {_chance(*place) for place in lacking}
            value = found.pop() if len(lacking) == 1 else None
        case Reading("probability", (first, *rest)) if len(rest) < 2:
            value = _chance(figure.branches, first)
            for second in rest:
                branch = _after(figure, first)
                then = _chance(branch, second) if branch else None
                value = None if value is None or then is None else value * then
    if value is None:
        raise not_shown(reading)
    return written_as(value, *(chance for chance in _printed(figure)))


def _after(figure: TreeDiagram, outcome: str) -> tuple[Twig, ...]:
    return next(
        (
            branch.then
            for branch in figure.branches
            if branch.outcome.casefold() == outcome.casefold()
        ),
        (),
    )


def _denies(figure: TreeDiagram, sentence: str) -> bool:
    after = [
        {twig.outcome: _chance(branch.then, twig.outcome) for twig in branch.then}
        for branch in figure.branches
        if branch.then
    ]
    same = [
        (_chance(figure.branches, branch.outcome), _chance(branch.then, branch.outcome))
        for branch in figure.branches
    ]
    return taken_otherwise(sentence, same, any(chances != after[0] for chances in after))


def _readings(figure: TreeDiagram) -> tuple[Reading, ...]:
    out = [Reading("probability", (branch.outcome,)) for branch in figure.branches]
    for branch in figure.branches:
        out += [Reading("probability", (branch.outcome, twig.outcome)) for twig in branch.then]
    lacking = [twig for _, branches in _sets(figure) for twig in branches if twig.chance is None]
    return (*out, *((Reading("missing"),) if len(lacking) == 1 else ()))


def _printed(figure: TreeDiagram) -> tuple[t.Node, ...]:
    return tuple(
        twig.chance for _, branches in _sets(figure) for twig in branches if twig.chance is not None
    )


def _path(*groups: str) -> Said:
    """Return what a wording asks that wants a way along the branches; the last may serve twice."""

    def asks(figure: Figure, found: re.Match[str]) -> Asked:
        names = tuple(_outcome(figure, found[group]) for group in groups)
        return Asked(t.Sym("r"), (("r", Reading("probability", names)),))

    return asks


def _in_any_order(figure: Figure, found: re.Match[str]) -> Asked:
    first, second = _outcome(figure, found["a"]), _outcome(figure, found["b"])
    if first == second:
        raise FigureError("it asks for one outcome twice")
    return Asked(
        t.add(t.Sym("a"), t.Sym("b")),
        (
            ("a", Reading("probability", (first, second))),
            ("b", Reading("probability", (second, first))),
        ),
    )


def _outcome(figure: Figure, text: str) -> str:
    """Return the outcome that a word of a question names: also *two reds*, *a red*."""
    assert isinstance(figure, TreeDiagram)
    known = {twig.outcome.casefold(): twig.outcome for _, some in _sets(figure) for twig in some}
    plain = re.sub(r"^(?:an? |the )", "", text.casefold())
    for spelled in (plain, plain.removesuffix("s")):
        if spelled in known:
            return known[spelled]
    raise FigureError(f"no branch of it is called ‘{text}’")


_IS = r"(?:what is|find|work out|write down) the probability"
_A, _B = r"(?P<a>[a-z0-9][a-z0-9 ]*?)", r"(?P<b>[a-z0-9][a-z0-9 ]*?)"

TREE_DIAGRAM = register_figure(
    FigureKind(
        "tree diagram",
        TreeDiagram,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        denies=_denies,
        wordings=(
            Wording(
                r"(?:what is|find|work out|write down) the (?:missing probability"
                r"|probability (?:that is missing|missing from the (?:tree )?diagram))",
                asks_reading("missing"),
            ),
            Wording(
                rf"{_IS} of one {_A} and one {_B}(?:,? in (?:any|either) order)?", _in_any_order
            ),
            Wording(rf"{_IS} of {_A},? (?:and then|then|followed by) {_B}", _path("a", "b")),
            Wording(rf"{_IS} (?:that both are|of two|of both being) {_A}", _path("a", "a")),
            Wording(rf"{_IS} that the first is {_A} and the second is {_B}", _path("a", "b")),
            Wording(rf"{_IS} that the first is {_A}", _path("a")),
        ),
    )
)
