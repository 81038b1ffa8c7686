"""What a kind of figure is, and the one table of all kinds.

A figure is a frozen dataclass of whole numbers, words and pieces of mathematics. Its faces are
functions of it, each in one place: what is drawn, what is said to who cannot see it, and what a
reader may take from it (*readings*), worked out from the figure's own data and never from the
drawing. The second road to a key measures the drawing instead
(:mod:`itembank.proof.measured`), and a figure whose drawing disagrees with its data is refused.

>>> from itembank.figures.kinds.number.shaded_shape import ShadedShape
>>> shape = ShadedShape("rectangle", 2, 4, (0, 1, 2))
>>> from itembank.notation.line import line
>>> line(read(shape, Reading("shaded")))
'3/8'
>>> words(shape)
'A rectangle is divided into 2 rows of 4 equal parts. 3 of the parts are shaded.'
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import field
from functools import lru_cache
from typing import Any, NamedTuple, Protocol

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing
from itembank.notation import tree as t
from itembank.once import once


class FigureError(t.NotationError):
    """A figure that cannot be drawn, contradicts itself, or does not show what is asked of it."""


class Figure:
    """A picture as data."""

    __slots__ = ()


class Reading(NamedTuple):
    """Something that a reader takes from a figure: its name, and the labels of what it is of.

    ``Reading("value", ("Monday",))`` is how high Monday's bar stands.
    """

    name: str
    of: tuple[str, ...] = ()


class Asked(NamedTuple):
    """What a question about a figure wants: a calculation with readings, each under a letter.

    The letters are those of `readings`; a letter that is none of them is an unknown of the figure.
    """

    target: t.Node
    readings: tuple[tuple[str, Reading], ...] = ()


class Said(Protocol):
    """Makes what is asked of the words that a wording found."""

    def __call__(self, figure: Any, found: re.Match[str]) -> Asked:
        """Return what is asked; raises FigureError where the figure does not show it."""


class Wording(NamedTuple):
    """One way to ask about a figure: a pattern for the whole question, and what it asks.

    The pattern meets the question without its last stop, capitals folded; mathematics stands in it
    as its line between braces. Group names are free.
    """

    pattern: str
    asks: Said


class ToDraw(NamedTuple):
    """What is to be drawn on a figure.

    `adds` is the part of the figure that grows, by the name of its field: all else stays. `holds`
    are readings of the figure of the answer, each with what it has to be; `told` stands beside
    that figure.
    """

    adds: str
    holds: tuple[tuple[Reading, t.Node], ...]
    told: str = "as drawn"


class SaidToDraw(Protocol):
    """Makes what is to be drawn of the words that a wording found."""

    def __call__(self, figure: Any, found: re.Match[str]) -> ToDraw:
        """Return what is to be drawn; raises FigureError where the figure has no place for it."""


class DrawWording(NamedTuple):
    """One way to ask for something to be drawn on a figure; as :class:`Wording`."""

    pattern: str
    asks: SaidToDraw


def asks_reading(name: str, *groups: str) -> Said:
    """Return what a wording asks that wants one reading, of the words in its groups."""

    def asks(figure: Figure, found: re.Match[str]) -> Asked:
        of = tuple(found[group] for group in groups)
        return Asked(t.Sym("r"), (("r", Reading(name, of)),))

    return asks


@dataclass(frozen=True, slots=True)
class FigureKind:
    """All that every layer needs to know of one kind of figure.

    Attributes
    ----------
    name
        What it is called in files, for ever: *number line*.
    figure
        Its class, a frozen dataclass.
    fault
        What is wrong with a figure's own data, as a clause, or ``""``. It is asked before any
        other face, and is quick whatever the data holds.
    drawing
        What is drawn.
    words
        All that a pupil who cannot see it needs in order to answer, and not the answer.
    printed
        The mathematics that is printed on it.
    readings
        Everything that can be taken from it, for the proof that drawing and data agree.
    read
        The value of one reading, from the data; raises FigureError.
    relations
        The equations that hold between what is printed on it.
    wordings
        The ways to ask about it that are understood.
    accurate
        Whether it is drawn to scale, so that it may be measured.
    drawn_answers
        The ways to ask for something to be drawn on it that are understood.
    bears
        The fields whose mathematics may hold more than plain numbers and letters, each with what:
        amounts with a unit, money, per cent or times of day.
    sets
        The names of readings that give a list in no order, as the members of a set.
    doubtful
        Why what a reading gives is not the only thing that a pupil may take from the figure, as a
        clause, or ``""``: a hand-written question that rests on it is left to a person.
    denies
        Whether what a sentence beside the question says of the figure is not so.
    """

    name: str
    figure: type[Figure]
    fault: Callable[[Any], str]
    drawing: Callable[[Any], Drawing]
    words: Callable[[Any], str]
    printed: Callable[[Any], tuple[t.Node, ...]]
    readings: Callable[[Any], tuple[Reading, ...]]
    read: Callable[[Any, Reading], t.Node]
    relations: Callable[[Any], tuple[t.Relation, ...]] = lambda figure: ()
    wordings: tuple[Wording, ...] = ()
    accurate: Callable[[Any], bool] = lambda figure: True
    drawn_answers: tuple[DrawWording, ...] = ()
    bears: Mapping[str, tuple[type[t.Node], ...]] = field(default_factory=dict)
    sets: frozenset[str] = frozenset()
    doubtful: Callable[[Any, Reading], str] = lambda figure, reading: ""
    denies: Callable[[Any, str], bool] = lambda figure, sentence: False


KINDS: dict[str, FigureKind] = {}
"""Every kind by its name."""
_BY_CLASS: dict[type, FigureKind] = {}


def register_figure(kind: FigureKind) -> FigureKind:
    """Add a kind of figure.

    Raises
    ------
    ValueError
        If another class has taken the name.
    """
    registered = KINDS.get(kind.name)
    if registered is not None and registered.figure is not kind.figure:
        raise ValueError(f"two kinds of figure are called {kind.name!r}")
    KINDS[kind.name] = _BY_CLASS[kind.figure] = kind
    return kind


def kind_of(figure: Figure) -> FigureKind:
    """Return the kind of a figure."""
    return _BY_CLASS[type(figure)]


WIDEST, HIGHEST = 17, 11
"""How large a drawing may be, in ems: what half a slide, or half a sheet, has room for."""


@once
def fault(figure: Figure) -> str:
    """Return what is wrong with a figure's data, as a clause, or ``""``; nothing is drawn."""
    return kind_of(figure).fault(figure)


def sound(figure: Figure) -> Figure:
    """Return a figure that has no fault.

    Raises
    ------
    FigureError
        If it has one.
    """
    if found := fault(figure):
        raise FigureError(found)
    return figure


@once
@lru_cache(maxsize=1024)
def drawn(figure: Figure) -> Drawing:
    """Return what is drawn.

    Raises
    ------
    FigureError
        If the figure has a fault, or takes more room than a page has for it.
    """
    made = kind_of(figure).drawing(sound(figure))
    if made.width > WIDEST or made.height > HIGHEST:
        raise FigureError(
            f"it would be {float(made.width):.1f} wide and {float(made.height):.1f} high, counted "
            f"in heights of its letters, and there is room for {WIDEST} by {HIGHEST}"
        )
    return made


def words(figure: Figure) -> str:
    """Return what is said to a pupil who cannot see it; raises FigureError as :func:`drawn`."""
    return kind_of(figure).words(sound(figure))


@once
def read(figure: Figure, reading: Reading) -> t.Node:
    """Return what a reader takes from a figure, from its data.

    Raises
    ------
    FigureError
        If the figure does not show it.
    """
    return kind_of(figure).read(sound(figure), reading)


@once
def printed_on(figure: Figure) -> tuple[t.Node, ...]:
    """Return the mathematics that is printed on a figure."""
    return kind_of(figure).printed(figure)


@once
def relations_on(figure: Figure) -> tuple[t.Relation, ...]:
    """Return the equations that hold between what is printed on a figure.

    Raises
    ------
    FigureError
        If the figure has a fault.
    """
    return kind_of(sound(figure)).relations(figure)


NOT_ACCURATE = "Not drawn accurately"
"""What stands by a figure that is not to be measured (the words of English examination papers,
common practice, no source)."""


def not_shown(reading: Reading) -> FigureError:
    """Return the error for a reading that a figure has not."""
    of = " of " + " and ".join(f"‘{name}’" for name in reading.of) if reading.of else ""
    return FigureError(f"it does not show the {reading.name}{of}")
