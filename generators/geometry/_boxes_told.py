"""Boxes in few words: their surfaces, with and without a lid."""

from __future__ import annotations

from collections.abc import Mapping

from generators._turns import by_turns
from generators.geometry import _solid_mistakes as m
from generators.geometry._areas import length, said_question
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _box(p: int, q: int, r: int) -> bool:
    half = p * q + p * r + q * r
    apart = p > q > 1 and len({p, q, r}) > 1
    return apart and len({2 * half, half, p * q * r}) == 3 and (p + 2 * q + r) % 5 == 0


def _open(p: int, q: int, r: int) -> bool:
    half = p * q + p * r + q * r
    right = 2 * half - p * q
    return p > q and len({right, 2 * half, half, p * q * r}) == 4 and (p + 2 * q + r) % 5 == 0


def _surface(topic: Topic, tier: Tier, p: int, q: int, r: int) -> Draft:
    """Return the surface area of a cuboid, or at the core of an open box."""
    lidless = tier is not Tier.SUPPORT
    edges = [length(v, "cm") for v in (p, q, r)]
    pairs = [t.times(edges[n], edges[k]) for n, k in ((0, 1), (0, 2), (1, 2))]
    sizes = (p * q, p * r, q * r)
    half = sum(sizes)
    doubled = t.times(t.Int(2), t.Bracket(t.add(*pairs)))
    if not lidless:
        key = length(2 * half, "cm^2")
        steps = [
            Step(
                "Find the three different faces and add.",
                t.equals(t.add(*pairs), length(half, "cm^2")),
            ),
            Step("Each is there twice.", t.equals(t.times(t.Int(2), length(half, "cm^2")), key)),
        ]
        return said_question(
            by_turns(
                (
                    "A cuboid is {p} by {q} by {r}. What is its surface area?",
                    "What is the surface area of a box that is {p} by {q} by {r}?",
                ),
                p + q,
            ),
            doubled,
            key,
            steps,
            [(m.OPPOSITE_FORGOTTEN, half), (m.VOLUME_FOR_SURFACE, p * q * r)],
            ("told cuboid", p, q, r),
            (2,),
            p=edges[0],
            q=edges[1],
            r=edges[2],
        )
    key = length(2 * half - p * q, "cm^2")
    all_six, base = length(2 * half, "cm^2"), length(p * q, "cm^2")
    return said_question(
        "An open box is {p} long, {q} wide and {r} high. What is the area of its five faces?",
        t.sub(doubled, pairs[0]),
        key,
        [
            Step("With a lid there are two of each face.", t.equals(doubled, all_six)),
            Step("The lid is as large as the base.", t.equals(pairs[0], base)),
            Step("Take the lid away.", t.equals(t.sub(all_six, base), key)),
        ],
        [(m.LID_COUNTED, 2 * half), (m.OPPOSITE_FORGOTTEN, half)],
        ("told open", p, q, r),
        (2,),
        p=edges[0],
        q=edges[1],
        r=edges[2],
    )


def with_surfaces(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of surfaces with boxes told in few words at their ends."""
    edges = {"p": range(3, 13), "q": range(2, 9), "r": range(2, 10)}
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(_surface, _box, **edges),
        Tier.CORE: spaces[Tier.CORE].also(_surface, _open, **edges),
    }
