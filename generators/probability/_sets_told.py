"""Sets in symbols: their regions, where to look for them, and what goes wrong."""

from __future__ import annotations

from typing import NamedTuple

from generators.probability import _misconceptions as m
from itembank.items.item import Misconception

UNION_FOR_BOTH = Misconception(
    "probability.sets-union-for-intersection",
    "takes everything in either set for what is in both",
    "Which sign says ‘in both’? Which says ‘in one or the other’?",
)
BOTH_FOR_UNION = Misconception(
    "probability.sets-intersection-for-union",
    "takes what is in both sets for what is in either",
    "Which sign says ‘in both’? Which says ‘in one or the other’?",
)
DASH_IGNORED = Misconception(
    "probability.sets-dash-ignored",
    "leaves the dash out",
    "What does the dash after the letter say?",
)
WHOLE_CIRCLE = Misconception(
    "probability.sets-whole-circle",
    "takes the whole circle, with the overlap",
    "Is what is in the overlap outside the other set?",
)
ADDS_MEMBERS = Misconception(
    "probability.sets-adds-members",
    "adds the members up instead of counting them",
    "How many members are there? Does it matter which numbers they are?",
)

Regions = tuple[int, ...]
"""Regions by number: 0 in the first alone, 1 in both, 2 in the second alone, 3 in neither."""


class SetTold(NamedTuple):
    """A set in symbols with its regions, what to look for, and the likely mistakes' regions."""

    shown: str
    regions: Regions
    look: str
    wrongs: tuple[tuple[Misconception, Regions], ...]
    before: tuple[str, Regions] = ("", ())
    """What to look for before that, where it takes two steps."""


SETS = (
    SetTold(
        "{a} ∩ {b}", (1,), "in both circles",
        ((UNION_FOR_BOTH, (0, 1, 2)), (m.ONLY_REGION, (0,))),
    ),
    SetTold("{a}", (0, 1), "in the circle {a}", ((m.ONLY_REGION, (0,)), (m.OTHER_CIRCLE, (1, 2)))),
    SetTold("{b}", (1, 2), "in the circle {b}", ((m.ONLY_REGION, (2,)), (m.OTHER_CIRCLE, (0, 1)))),
    SetTold(
        "{a} ∪ {b}", (0, 1, 2), "in either circle or in both",
        ((BOTH_FOR_UNION, (1,)), (m.LEAVES_OVERLAP, (0, 2))),
    ),
    SetTold(
        "{a}′", (2, 3), "outside the circle {a}", ((DASH_IGNORED, (0, 1)), (m.LEAVES_OUTSIDE, (2,)))
    ),
    SetTold(
        "{b}′", (0, 3), "outside the circle {b}", ((DASH_IGNORED, (1, 2)), (m.LEAVES_OUTSIDE, (0,)))
    ),
    SetTold(
        "{a} ∩ {b}′", (0,), "in {a} and outside {b}",
        ((DASH_IGNORED, (1,)), (WHOLE_CIRCLE, (0, 1))),
        ("outside {b}", (0, 3)),
    ),
    SetTold(
        "{a}′ ∩ {b}", (2,), "in {b} and outside {a}",
        ((DASH_IGNORED, (1,)), (WHOLE_CIRCLE, (1, 2))),
        ("outside {a}", (2, 3)),
    ),
    SetTold(
        "({a} ∪ {b})′", (3,), "outside both circles",
        ((DASH_IGNORED, (0, 1, 2)), (BOTH_FOR_UNION, (0, 2, 3))),
        ("in either circle or in both", (0, 1, 2)),
    ),
    SetTold(
        "({a} ∩ {b})′", (0, 2, 3), "outside the overlap",
        ((DASH_IGNORED, (1,)), (m.LEAVES_OUTSIDE, (0, 2)), (UNION_FOR_BOTH, (3,))),
        ("in both circles", (1,)),
    ),
    SetTold(
        "{a}′ ∪ {b}", (1, 2, 3), "outside {a}, or in {b}",
        ((DASH_IGNORED, (0, 1, 2)), (BOTH_FOR_UNION, (2,)), (m.LEAVES_OUTSIDE, (1, 2))),
        ("outside {a}", (2, 3)),
    ),
    SetTold(
        "{a} ∪ {b}′", (0, 1, 3), "in {a}, or outside {b}",
        ((DASH_IGNORED, (0, 1, 2)), (BOTH_FOR_UNION, (0,)), (m.LEAVES_OUTSIDE, (0, 1))),
        ("outside {b}", (0, 3)),
    ),
)  # fmt: skip
LETTERS = (("A", "B"), ("C", "D"), ("E", "F"), ("S", "T"), ("X", "Y"))
