"""Take something from a figure: what it shows, or what is worked out from what it shows."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from functools import lru_cache

from itembank.data_class import dataclass
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    Reading,
    kind_of,
    read,
    relations_on,
    sound,
    words,
)
from itembank.figures.figure_data import to_data
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, only, register_kind
from itembank.items.asks.find_value import Find
from itembank.items.asks.layers import Layers
from itembank.items.asks.told_beside import only_tells, told_otherwise
from itembank.items.asks.told_words import other_head
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.once import once
from itembank.text.late_pattern import late
from itembank.text.needed_letters import Needing

READ_A_PICTURE = "read a picture"
"""What a teacher calls such a question."""


@dataclass(frozen=True, slots=True)
class OfFigure(Ask):
    """Work out `target`, whose letters stand for readings of the figure or for its unknowns.

    The figure is the very one that is printed. A letter that no reading stands for is an unknown
    that is printed on it, and is settled by the relations that the figure shows.

    >>> from itembank.figures.kinds.number.shaded_shape import ShadedShape
    >>> shape = ShadedShape("rectangle", 1, 4, (0, 1, 2))
    >>> ask = OfFigure(shape, t.Sym("r"), (("r", Reading("shaded")),))
    >>> shown_line(as_find(ask).target)
    '3/4'
    """

    figure: Figure
    target: t.Node
    readings: tuple[tuple[str, Reading], ...] = ()


@once
def as_find(ask: OfFigure) -> Find:
    """Return the question with what the figure's data shows put in its place.

    Raises
    ------
    FigureError
        If the figure has a fault, or does not show what is asked.
    """
    values: dict[t.Node, t.Node] = {
        t.Sym(letter): read(ask.figure, reading) for letter, reading in ask.readings
    }
    target = t.replaced(ask.target, values)
    known = relations_on(ask.figure)
    return Find(target, known if t.symbols(target) - {"π"} else ())


def name_read(ask: OfFigure) -> t.Label | None:
    """Return the name that answers the question, where it asks for one: an arrow, a bar."""
    if len(ask.readings) == 1 and ask.target == t.Sym(ask.readings[0][0]):
        found = read(ask.figure, ask.readings[0][1])
        if isinstance(found, t.Label):
            return found
    return None


def relations_in(target: t.Node) -> tuple[t.Relation, ...]:
    """Return the equations of a target that lists them: the solution that a figure shows.

    >>> from itembank.notation.parse import parse
    >>> len(relations_in(parse("x = 2, y = 3"))), relations_in(parse("(2, 3)"))
    (2, ())
    """
    parts = target.parts if isinstance(target, t.Listing) else ()
    found = tuple(part for part in parts if isinstance(part, t.Relation))
    return found if len(found) == len(parts) else ()


def is_range(target: t.Node) -> bool:
    """Tell whether a target is an inequality: the numbers that a figure shows.

    >>> from itembank.notation.parse import parse
    >>> is_range(parse("-2 < x ≤ 3")), is_range(parse("y = 2x"))
    (True, False)
    """
    return isinstance(target, t.Relation) and all(op in "<>≤≥" for op, _ in target.rest)


_STOP = re.compile(r"(?<=[.?!])\s+")
OF_ANSWER = re.compile(
    r"(?:give|write|show|leave|round) (?:your|the) answers?\b[^?]*|"
    r"round (?:it )?(?:off )?(?:up |down )?to [^?]*",
    re.IGNORECASE,
)
"""A sentence about the answer alone; it is read to its last word where a question is proved
(:func:`itembank.wording.tasks.answers.phrases_after.unread_of_answer`)."""
_NOT_ACCURATE = re.compile(r"(?:it is )?not drawn accurately", re.IGNORECASE)
_ROUNDED = re.compile(
    r"(?:,? (?:correct |rounded |accurate )?(?:up |down )?to (?:the nearest [a-z]+(?: number)?|"
    r"\w+ (?:decimal places?|significant figures?|d\.?p|s\.?f)))$",
    re.IGNORECASE,
)
"""How a sentence ends that asks for a rounded answer; what it is rounded to is read elsewhere."""


def asked_in(figure: Figure, prompt: Sequence[str | t.Node]) -> Asked:
    """Return what the words of a prompt ask of a figure: they are read whole.

    One sentence asks, in one of the wordings of the figure's kind; others may say what the figure
    shows (:mod:`itembank.items.asks.told_beside`), or how the answer is to be written.

    Raises
    ------
    FigureError
        If a sentence is not understood, or the figure does not show what is asked.

    >>> from itembank.figures.kinds.number.shaded_shape import ShadedShape
    >>> shape = ShadedShape("circle", 1, 3, (0,))
    >>> asked_in(shape, ("What fraction of the circle is shaded?",)).readings[0][1].name
    'shaded'
    """
    return _asked_in(figure, tuple(prompt))


@once
def _asked_in(figure: Figure, prompt: tuple[str | t.Node, ...]) -> Asked:
    found: Asked | None = None
    question, told = "", ""
    for sentence in sentences(prompt):
        bare = sentence.rstrip(".?! ")
        if (asked := _wording(figure, not_rounded(bare))) is not None:
            if found is not None:
                raise FigureError("its words ask for two things")
            found, question = asked, bare
        elif beside_the_question(figure, bare):
            told += f" {bare}"
        else:
            raise FigureError(
                f"‘{sentence}’ is not understood as a question about a {kind_of(figure).name}"
            )
    if found is None:
        raise FigureError("its words ask for nothing that the figure shows")
    if told and (strange := told_otherwise(told, words(figure), question)):
        raise FigureError(f"what is told and what is asked differ: ‘{strange}’")
    return found


def not_rounded(bare: str) -> str:
    """Return a question without what it ends with about rounding.

    >>> not_rounded("What is the area of the circle, correct to 3 significant figures")
    'What is the area of the circle'
    """
    return _ROUNDED.sub("", bare) if "to " in bare.casefold() else bare


def sentences(prompt: Sequence[str | t.Node]) -> list[str]:
    """Return the sentences of a prompt, its mathematics as lines between braces."""
    text = "".join(run if isinstance(run, str) else f"{{{shown_line(run)}}}" for run in prompt)
    return _STOP.split(" ".join(text.split()))


def beside_the_question(figure: Figure, bare: str) -> bool:
    """Tell whether a sentence only says what a figure shows, or how the answer is to be written."""
    if OF_ANSWER.fullmatch(bare) or _NOT_ACCURATE.fullmatch(bare):
        return True
    counts = kind_of(figure).name in _OF_COUNTS or "number of" in bare.casefold()
    if counts and other_head(bare, _counted(figure)):
        return False
    return only_tells(bare, words(figure)) and not kind_of(figure).denies(figure, bare)


_OF_COUNTS = ("bar chart", "pictogram", "pie chart")


def _counted(figure: Figure) -> str:
    """Return what a chart says that it counts or measures."""
    names = ("counts", "counted", "what", "title")
    return " ".join(str(getattr(figure, name, "")) for name in names)


def _wording(figure: Figure, bare: str) -> Asked | None:
    wordings = kind_of(figure).wordings
    needing, patterns = _patterns(tuple(wording.pattern for wording in wordings))
    for place in needing.of(bare):
        if match := patterns[place].fullmatch(bare):
            return wordings[place].asks(figure, match)
    return None


@lru_cache(maxsize=128)
def _patterns(texts: tuple[str, ...]) -> tuple[Needing, tuple[re.Pattern[str], ...]]:
    """Return the patterns of a kind of figure, and which of them words may meet."""
    return Needing(texts), tuple(late(text, re.IGNORECASE) for text in texts)


def of_figure(figure: Figure, prompt: Sequence[str | t.Node]) -> OfFigure:
    """Return the question that the words of a prompt ask of a figure; raises FigureError."""
    asked = asked_in(sound(figure), prompt)
    for _, reading in asked.readings:
        read(figure, reading)
    return OfFigure(figure, asked.target, asked.readings)


def _store(ask: OfFigure) -> Stored:
    return Stored((ask.target,), figure=ask.figure, readings=ask.readings)


def _restore(stored: Stored) -> OfFigure:
    if stored.figure is None:
        raise t.NotationError("there is no figure to take an answer from")
    return OfFigure(stored.figure, only(stored, 1)[0], stored.readings)


def _twin(ask: OfFigure, form: str) -> Twin:
    drawn = json.dumps(to_data(ask.figure), sort_keys=True, ensure_ascii=False)
    read = tuple((reading.name, *reading.of) for _, reading in ask.readings)
    return ("of figure", drawn, read, form), (ask.target,), ()


OF_FIGURE = register_kind(
    Kind(
        "of figure",
        OfFigure,
        trees=lambda ask: (ask.target,),
        store=_store,
        restore=_restore,
        twin=_twin,
        does="take something from a figure",
        told=READ_A_PICTURE,
        answerable=True,
        whole=True,
        layers=Layers(
            first_road="itembank.proof.exact.readings_found:find_read",
            second_road="itembank.proof.sympy.sympy_readings:reading",
            working="itembank.proof.lines.line_of_value:read_fault",
            bank="itembank.bank.question.key_form:READ_OFF",
            printed="itembank.proof.claim.printed:reading_unprinted",
            measuring="itembank.proof.claim.key_fits:reading_measures",
            forms="itembank.proof.exact.key_forms:IN_WORDS",
            worth="itembank.proof.likely_mistakes:reading_worth",
            marking="itembank.marking.worth.marked_by_kind:OF_FIGURE",
            difficulty="itembank.items.measures.difficulty_by_kind:OF_FIGURE",
        ),
    )
)
