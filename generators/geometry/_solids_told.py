"""Faces, edges and vertices of solids told by the sides of their ends, and back."""

from __future__ import annotations

from collections.abc import Mapping

from generators.geometry import _solid_shapes as s
from generators.geometry._areas import said_question
from generators.geometry._solid_shapes import EDGES, FACES, VERTICES
from generators.geometry._solids_counted import counted
from itembank.items.item import Draft, Misconception, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

PARTS = (FACES, EDGES, VERTICES)
_SHAPES = ("prism", "pyramid")
_BASE = {
    "prism": "A prism has ends with {n} sides.",
    "pyramid": "A pyramid has a base with {n} sides.",
}
_LEFT_OUT = {
    ("prism", FACES): s.ENDS_LEFT_OUT,
    ("prism", EDGES): s.JOINS_LEFT_OUT,
    ("prism", VERTICES): s.HIDDEN,
    ("pyramid", FACES): s.ENDS_LEFT_OUT,
    ("pyramid", EDGES): s.HIDDEN,
    ("pyramid", VERTICES): s.TOP_LEFT_OUT,
}


def _rule(shape: str, part: str) -> tuple[int, int]:
    """Return a and b of how many parts there are: a for each side of the base, and b more."""
    return {
        ("prism", FACES): (1, 2),
        ("prism", EDGES): (3, 0),
        ("prism", VERTICES): (2, 0),
        ("pyramid", FACES): (1, 1),
        ("pyramid", EDGES): (2, 0),
        ("pyramid", VERTICES): (1, 1),
    }[shape, part]


def _by_rule(n: t.Node, shape: str, part: str) -> t.Node:
    many, more = _rule(shape, part)
    product = n if many == 1 else t.times(t.Int(many), n)
    return t.add(product, t.Int(more)) if more else product


def _mixed(shape: str, n: int, part: str) -> int:
    """Return how many there are of another part, and not of this."""
    return s.count(shape, n, VERTICES if part == EDGES else EDGES)


def _left(shape: str, n: int, part: str) -> int:
    return 2 * n if (shape, part) == ("prism", EDGES) else n


def _known(shape: int, part: int, n: int) -> bool:
    name, of = _SHAPES[shape], PARTS[part]
    key = s.count(name, n, of)
    wrong: list[tuple[Misconception, int]] = [
        (s.MIXED_UP, _mixed(name, n, of)),
        (_LEFT_OUT[name, of], _left(name, n, of)),
    ]
    return len({key, *(value for _, value in wrong)}) == 3


def _from_base(topic: Topic, tier: Tier, shape: int, part: int, n: int) -> Draft:
    """Return how many faces, edges or vertices there are."""
    name, of = _SHAPES[shape], PARTS[part]
    sides = t.Int(n)
    return said_question(
        f"{_BASE[name]} How many {of} does it have?",
        _by_rule(sides, name, of),
        t.Int(s.count(name, n, of)),
        counted(name, n, of),
        [(s.MIXED_UP, _mixed(name, n, of)), (_LEFT_OUT[name, of], _left(name, n, of))],
        ("told base", shape, part, n),
        (1, 2, 3),
        n=sides,
    )


def _back(total: t.Node, shape: str, part: str) -> t.Node:
    many, more = _rule(shape, part)
    rest = t.sub(total, t.Int(more)) if more else total
    if many == 1:
        return rest
    return t.divide(rest, t.Int(many))


def _to_base(topic: Topic, tier: Tier, shape: int, part: int, n: int) -> Draft:
    """Return how many sides an end, or the base, has."""
    name, of = _SHAPES[shape], PARTS[part]
    total = s.count(name, n, of)
    many, more = _rule(name, of)
    asked = "does each of its ends have" if name == "prism" else "does its base have"
    why = {
        (1, 2): "Two of the faces are the ends.",
        (3, 0): "There are three edges for each side of an end.",
        (2, 0): "There are two for each side.",
        (1, 1): "One of them is the base." if of == FACES else "One of them is the top.",
    }[many, more]
    line = _back(t.Int(total), name, of)
    wrongs: list[tuple[Misconception, int | None]] = [
        (s.ENDS_LEFT_OUT, total),
        (s.MIXED_UP, total // (5 - many) if many > 1 and total % (5 - many) == 0 else None),
        (s.OTHER_FAMILY, total - (3 - more) if more else None),
        (s.OTHER_BASE, n + 1),
    ]
    return said_question(
        f"A {name} has {{k}} {of}. How many sides {asked}?",
        line,
        t.Int(n),
        [Step(why, t.equals(line, t.Int(n)))],
        wrongs,
        ("told back", shape, part, n),
        (1, 2, 3),
        k=t.Int(total),
    )


def _across(topic: Topic, tier: Tier, shape: int, part: int, other: int, n: int) -> Draft:
    """Return how many of one part there are, from how many of another."""
    name, known, wanted = _SHAPES[shape], PARTS[part], PARTS[other]
    total = s.count(name, n, known)
    base = _back(t.Int(total), name, known)
    key = s.count(name, n, wanted)
    held = t.Bracket(base) if isinstance(base, t.Sum) else base
    if isinstance(base, t.Product) and _rule(name, wanted)[0] > 1:
        held = t.Bracket(base)
    steps = [
        Step(
            f"Find the sides of {'an end' if name == 'prism' else 'the base'}.",
            t.equals(base, t.Int(n)),
        ),
        *counted(name, n, wanted),
    ]
    target = _by_rule(held, name, wanted)
    return said_question(
        f"A {name} has {{k}} {known}. How many {wanted} does it have?",
        target,
        t.Int(key),
        steps,
        [(s.ONLY_FIRST, n), (s.MIXED_UP, total), (s.OTHER_BASE, key + _rule(name, wanted)[0])],
        ("told across", shape, part, other, n),
        (1, 2, 3),
        k=t.Int(total),
    )


def _apart(shape: int, part: int, other: int, n: int) -> bool:
    name = _SHAPES[shape]
    if part == other or (name == "pyramid" and {part, other} == {0, 2}):
        return False  # a pyramid has as many faces as vertices
    total, key = s.count(name, n, PARTS[part]), s.count(name, n, PARTS[other])
    return len({n, total, key}) == 3


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of solids with solids told in words at their ends."""
    axes = {"shape": range(2), "part": range(3)}
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(_from_base, _known, **axes, n=range(3, 15)),
        Tier.CORE: spaces[Tier.CORE].also(_to_base, _known, **axes, n=range(3, 15)),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _across, _apart, **axes, other=range(3), n=range(3, 15)
        ),
    }
