"""Questions on right-angled triangles with their picture in place of the words that describe it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

from generators._turns import by_turns
from generators.geometry._calculator import Accuracy
from itembank.figures.figure import fault
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Round, RoundReading, prompt
from itembank.notation import tree as t

Number = Fraction | int
_NAMES = ("ABC", "PQR", "XYZ", "DEF", "KLM")
_LETTERS = ("x", "y", "w", "z")
_TURNS = ((1, 1), (-1, 1), (1, -1), (-1, -1))
_WHOLE = ("Work out the length of {}.", "Find the length of {}.", "How long is {}?")
_SIDE = ("Work out the length {x}.", "Find the length {x}.", "What is the length {x}?")
_CORNER = ("Work out the size of angle {}.", "Find the size of angle {}.")
_ANGLE = ("Work out the size of angle {x}.", "Find angle {x}.")


def in_picture(
    draft: Draft,
    legs: tuple[Number, Number],
    labels: Mapping[str, t.Node],
    wanted: str,
    turn: int,
) -> Draft:
    """Return a question in words as a question about a triangle that is drawn.

    Parameters
    ----------
    draft
        The question in words: its key, its working and its mistakes stay.
    legs
        How long the level leg is, and the upright one.
    labels
        What stands at the ``level`` leg, the ``upright`` one, the ``slope``, and in the angle at
        the ``foot`` of the slope, as far as it is given.
    wanted
        Which of them is asked for.
    turn
        Which way round it stands, and how it is asked.
    """
    names = by_turns(_NAMES, turn // 3)
    lettered = turn % 2 == 0
    letter = t.Sym(by_turns(_LETTERS, turn // 2))
    shown = dict(labels) if lettered else {**labels, wanted: letter}
    figure = _triangle(legs, tuple(sorted(shown.items())), names, lettered, turn // 2)
    if wanted == "foot":
        called = names[0] + names[1] + names[2] if turn % 4 else names[2] + names[1] + names[0]
        asks = by_turns(_CORNER, turn).format(called) if lettered else by_turns(_ANGLE, turn)
    else:
        called = _sides(names)[wanted]
        asks = by_turns(_WHOLE, turn).format(called) if lettered else by_turns(_SIDE, turn)
    said = asks
    if isinstance(draft.ask, Round):
        accuracy = Accuracy(draft.ask.detail, draft.ask.amount)
        said = f"{asks} {accuracy.said('°' if wanted == 'foot' else 'cm')}"
    text = (said,) if lettered else prompt(said, x=letter)
    of = of_figure(figure, text)
    asked = draft.ask
    ask = RoundReading(of, asked.detail, asked.amount) if isinstance(asked, Round) else of
    return replace(draft, prompt=text, ask=ask, figure=figure, twin=("drawn", *draft.twin))


def has_room(legs: tuple[Number, Number]) -> bool:
    """Tell whether a triangle is neither so low nor so narrow that its labels find no place."""
    level, upright = legs
    return 2 * level <= 7 * upright and 2 * upright <= 5 * level


def _sides(names: str) -> dict[str, str]:
    return {"level": names[:2], "slope": names[1:], "upright": names[0] + names[2]}


@lru_cache(maxsize=512)
def _triangle(
    legs: tuple[Number, Number],
    labels: tuple[tuple[str, t.Node], ...],
    names: str,
    lettered: bool,
    turn: int,
) -> Polygon:
    x, y = by_turns(_TURNS, turn)
    level, upright = (Fraction(leg).limit_denominator(1000) for leg in legs)
    sides = _sides(names)
    figure = Polygon(
        (
            (t.Int(0), t.Int(0)),
            (_node(x * level), t.Int(0)),
            (t.Int(0), _node(y * upright)),
        ),
        names,
        lettered,
        tuple((sides[place], label) for place, label in labels if place in sides),
        tuple((names[1], label) for place, label in labels if place == "foot"),
        names[0],
    )
    assert not fault(figure), fault(figure)
    return figure


def _node(value: Fraction) -> t.Node:
    if value.denominator == 1:
        return t.num(int(value))
    made = t.frac(abs(value.numerator), value.denominator)
    return made if value > 0 else t.Neg(made)
