"""Plans and elevations of cuboids without a picture: areas of what is seen, and back."""

from __future__ import annotations

from collections.abc import Mapping

from generators.geometry._areas import said_question
from generators.geometry._plan_mistakes import ADDED, OTHER_SIDE, SEEN_FROM_FRONT, WHOLE_SOLID
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _cuboid(wide: int, deep: int, high: int, of: int) -> bool:
    """Keep cuboids with three different edges, where each wrong view has another area."""
    areas = {wide * deep, wide * high, deep * high}
    kept = len({wide, deep, high}) == 3 and len(areas) == 3
    return kept and (wide + 2 * deep + 3 * high + of) % 3 == 0


def _seen(topic: Topic, tier: Tier, wide: int, deep: int, high: int, of: int) -> Draft:
    """Return the area of the plan (0), the front elevation (1) or the side elevation (2)."""
    edges = [t.Quantity(t.Int(edge), "cm") for edge in (wide, deep, high)]
    view = ("plan", "front elevation", "side elevation")[of]
    first, second = ((0, 1), (0, 2), (1, 2))[of]
    sizes = (wide, deep, high)
    key = t.Quantity(t.Int(sizes[first] * sizes[second]), "cm^2")
    target = t.times(edges[first], edges[second])
    names = ("width", "depth", "height")
    wrong = [
        (SEEN_FROM_FRONT, wide * high if of != 1 else wide * deep),
        (OTHER_SIDE, deep * high if of != 2 else wide * deep),
    ]
    return said_question(
        f"A cuboid is {{a}} wide, {{b}} deep and {{c}} high. What is the area of its {view}?",
        target,
        key,
        [
            Step(
                f"The {view} is a rectangle, {names[first]} by {names[second]}: "
                f"{sizes[first]} cm by {sizes[second]} cm."
            ),
            Step("Multiply.", t.equals(target, key)),
        ],
        wrong,
        ("told view", wide, deep, high, of),
        a=edges[0],
        b=edges[1],
        c=edges[2],
    )


def _solid(topic: Topic, tier: Tier, wide: int, deep: int, high: int, of: int) -> Draft:
    """Return the volume of a cuboid from its plan, its front elevation and its width."""
    plan, front = (t.Quantity(t.Int(area), "cm^2") for area in (wide * deep, wide * high))
    edge = t.Quantity(t.Int(wide), "cm")
    tall = t.Quantity(t.Int(high), "cm")
    key = t.Quantity(t.Int(wide * deep * high), "cm^3")
    return said_question(
        "A cuboid is {w} wide. Its plan is {p} and its front elevation {f}. What is its volume?",
        t.divide(t.times(plan, front), edge),
        key,
        [
            Step(
                "The front elevation is width times height.", t.equals(t.divide(front, edge), tall)
            ),
            Step(
                "Volume is the area of the plan times the height.",
                t.equals(t.times(plan, tall), key),
            ),
        ],
        [
            (ADDED, wide * deep + wide * high),
            (WHOLE_SOLID, wide * deep * wide),
        ],
        ("told solid", wide, deep, high),
        w=edge,
        p=plan,
        f=front,
    )


def _solid_kept(wide: int, deep: int, high: int, of: int) -> bool:
    volume = wide * deep * high
    wrong = {volume, wide * deep + wide * high, wide * deep * wide}
    return _cuboid(wide, deep, high, of) and len(wrong) == 3


def with_told(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of plans and elevations with cuboids told in words at their ends."""
    edges = {"wide": range(2, 12), "deep": range(2, 10), "high": range(2, 10)}
    more = {"wide": range(3, 13), "deep": (2, 3, 4, 5, 6, 7), "high": (3, 5, 6, 8, 9)}
    few = {"wide": range(3, 12), "deep": (2, 3, 4, 5, 7), "high": (3, 5, 6, 8)}
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT]
        .also(_seen, _cuboid, **more, of=(0,))
        .also(_seen, _cuboid, wide=(2, 4, 5, 6, 9), deep=(3, 6, 8), high=(4, 7, 9, 10), of=(0, 1)),
        Tier.CORE: spaces[Tier.CORE].also(_seen, _cuboid, **few, of=(1, 2)),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(_solid, _solid_kept, **edges, of=(0,)),
    }
