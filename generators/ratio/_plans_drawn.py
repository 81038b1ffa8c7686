"""A plan that is drawn with its lengths, and its scale told."""

from __future__ import annotations

from fractions import Fraction

from generators._in_figures import in_figures
from generators._turns import by_turns
from generators.ratio._parts import amount, whole_ratio
from generators.ratio._scale_mistakes import CM_AS_M, THOUSAND
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_PLANS = (
    (6, "shed", "greenhouse"),
    (15, "classroom", "changing room"),
    (30, "pool", "playground"),
    (80, "car park", "bus depot"),
)
"""What may be that long at most, in metres, as a plan of it is drawn."""


def plan_fits(scale: int, long: int, wide: int, side: int) -> bool:
    """Keep rectangles that are drawn large enough to be read, and are not longer than a plot."""
    return wide < long <= 2 * wide and scale * wide >= 400 and scale * long <= 16_000


def drawn_plan(topic: Topic, tier: Tier, scale: int, long: int, wide: int, side: int) -> Draft:
    """Return a plan of a rectangle with the lengths drawn, and its scale: how long it really is.

    Lengths are in halves of 1 cm; `side` 0 asks for the long side, 1 for the short one.
    """
    across, up = Fraction(long, 2), Fraction(wide, 2)
    things = next(names for most, *names in _PLANS if scale * long <= 200 * most)
    length = (across, up)[side]
    corners = tuple((t.Int(x), t.Int(y)) for x, y in ((0, 0), (long, 0), (long, wide), (0, wide)))
    figure = Polygon(
        corners,
        lettered=True,
        sides=(("AB", amount(across, "cm")), ("BC", amount(up, "cm"))),
        right="ABCD",
    )
    on_plan, real_cm = amount(length, "cm"), amount(length * scale, "cm")
    key = amount(length * scale / 100, "m")
    text = prompt(
        f"This is a plan of a {by_turns(things, long // 2 + wide)}. "
        f"How long is {('AB', 'BC')[side]} really, in metres, if the scale is {{r}}?",
        r=whole_ratio(1, scale),
    )
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "quantity",
        to_real(scale, on_plan, real_cm, key),
        slips(
            (CM_AS_M, amount(length * scale, "m")), (THOUSAND, amount(length * scale / 1000, "m"))
        ),
        ("plan", scale, long, wide, side),
        figure=figure,
    )


def to_real(scale: int, on_plan: t.Node, in_cm: t.Node, real: t.Node) -> tuple[Step, Step]:
    """Return the lines from a length on a plan to the real length in metres."""
    return (
        Step(
            f"Real lengths are {in_figures(scale)} times larger, so multiply.",
            t.equals(t.times(t.Int(scale), on_plan), in_cm),
        ),
        Step("Change centimetres to metres.", t.equals(in_cm, real)),
    )
