"""A construction in words: what the compasses did, and not what follows from it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.notation.words import words as said

if TYPE_CHECKING:
    from itembank.figures.kinds.construction.construction import Construction


def words_of(figure: Construction) -> str:
    """Return what was done with ruler and compasses, and what is given."""
    told = {
        "perpendicular bisector": _bisector,
        "perpendicular from a point to a line": _from_point,
    }.get(figure.shape, _angle)(figure)
    given = [f" {_capital(name)} is {said(amount)}." for name, amount in figure.given]
    return told + "".join(given)


def _capital(name: str) -> str:
    return name[0].upper() + name[1:]


def _bisector(figure: Construction) -> str:
    a, b, c, d, m = tuple(figure.letters)
    told = (
        f"Arcs of one radius round {a} and {b}, the ends of a line, cross at {c} and {d}. "
        f"The line {c}{d} crosses {a}{b} at {m}."
    )
    return told + (f" {c} is joined to {a} and {b}." if figure.joined else "")


def _from_point(figure: Construction) -> str:
    a, b, p, q, n = tuple(figure.letters)
    return (
        f"{p} is beside the line {a}{b}. An arc round {p} crosses the line twice. Arcs of the same "
        f"radius round these crossings cross at {q}. The line {p}{q} crosses {a}{b} at {n}."
    )


def _angle(figure: Construction) -> str:
    a, b, c, *more = tuple(figure.letters)
    told = {
        "angle bisector": f"Lines go from {b} to {a} and to {c}.",
        "equilateral triangle": f"Arcs round {b} and {c} with the radius {b}{c} cross at {a}. "
        f"{a} is joined to {b} and {c}.",
        "perpendicular at a point on a line": f"{b} is on a line that goes on to {c}. An arc round "
        f"{b} crosses the line on both sides of {b}. Arcs of one radius round these crossings "
        f"cross at {a}. {a} is joined to {b}.",
    }[figure.shape]
    first = a
    for letter in more:
        told += (
            f" An arc round {b} crosses {b}{first} and {b}{c}. Arcs of one radius round these "
            f"crossings cross at {letter}, and the line {b}{letter} is drawn."
        )
        first = letter
    return told
