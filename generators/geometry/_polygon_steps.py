"""What the questions about any polygon share: a draft in words, and the steps to its sides."""

from __future__ import annotations

from collections.abc import Sequence

from generators.geometry._angles import (
    deg,
)
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


def polygon_draft(
    text: str,
    target: t.Node,
    key: t.Node,
    steps: Sequence[Step],
    wrong: Sequence[Wrong],
    twin: tuple[object, ...],
    constants: tuple[int, ...],
    **shown: t.Node,
) -> Draft:
    """Return the draft of a question whose key is an angle, or a number of sides."""
    angle = isinstance(key, t.Quantity)
    write = (lambda size: deg(int(size))) if angle else (lambda size: t.Int(int(size)))
    return Draft(
        prompt(text, **shown),
        Find(target),
        key,
        "quantity" if angle else "integer",
        tuple(steps),
        slips(*wrong, write=write, key=key),
        twin,
        constants=constants,
    )


def sides_around(outside: t.Node, n: int) -> Step:
    """Return the step from an exterior angle of a regular polygon to its n sides."""
    return Step(
        "The exterior angles add up to 360°. See how many of them there are.",
        t.equals(
            t.divide(deg(360) if isinstance(outside, t.Quantity) else t.Int(360), outside), t.Int(n)
        ),
    )


def sides_from_triangles(given: t.Node, n: int) -> tuple[Step, Step]:
    """Return the steps from the sum of the interior angles to n sides."""
    return (
        Step(
            "See how many triangles the polygon splits into.",
            t.equals(t.divide(given, deg(180)), t.Int(n - 2)),
        ),
        Step(
            "A polygon has 2 sides more than that.",
            t.equals(t.add(t.Int(n - 2), t.Int(2)), t.Int(n)),
        ),
    )
