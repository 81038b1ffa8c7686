"""Bar models as lessons draw them: a whole in equal parts, and shares one under another."""

from __future__ import annotations

from collections.abc import Iterable

from itembank.figures.kinds.number.bar_model import Bar, BarModel, Box
from itembank.notation import tree as t


def whole_bar(parts: int, shaded: int, total: t.Node) -> BarModel:
    """Return a bar in equal parts, the first of them shaded, with what all of it is worth.

    >>> len(whole_bar(5, 2, t.Int(40)).bars[0].boxes)
    5
    """
    return BarModel((Bar(tuple(Box(1, None, at < shaded) for at in range(parts)), "", total),))


def part_of_bar(parts: int, known: int, worth: t.Node) -> BarModel:
    """Return a bar in equal parts that says what the first `known` of them are worth together.

    >>> part_of_bar(5, 2, t.Int(16)).bars[0].boxes[0]
    Box(units=2, label=Int(n=16), shaded=False)
    """
    return BarModel((Bar((Box(known, worth), *(Box() for _ in range(parts - known)))),))


def shares(
    named: Iterable[tuple[str, int]],
    total: t.Node | None = None,
    known: tuple[int, t.Node] | None = None,
) -> BarModel:
    """Return bars of so many equal parts, one under another, each with its name.

    `total` is what they come to together; `known` says of one of them, counted from 0, what it
    comes to.

    >>> [bar.name for bar in shares((("Juniors", 2), ("Seniors", 3)), t.Int(40)).bars]
    ['Juniors', 'Seniors']
    """
    bars = tuple(
        Bar(
            tuple(Box() for _ in range(parts)),
            name,
            known[1] if known is not None and known[0] == place else None,
        )
        for place, (name, parts) in enumerate(named)
    )
    return BarModel(bars, total)


def compared(named: tuple[tuple[str, int], tuple[str, int]], more: t.Node) -> BarModel:
    """Return two bars, the longer of which says how much more it is.

    >>> compared((("Red", 2), ("White", 5)), t.Int(12)).bars[1].boxes[-1]
    Box(units=3, label=Int(n=12), shaded=False)
    """
    small = min(parts for _, parts in named)
    return BarModel(
        tuple(
            Bar(
                (
                    *(Box() for _ in range(small)),
                    *((Box(parts - small, more),) if parts > small else ()),
                ),
                name,
            )
            for name, parts in named
        )
    )
