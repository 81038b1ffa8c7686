"""Angles to the nearest degree: of a ratio, drawn, of a ladder, a rectangle, a cut triangle."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry._angle_asked import angle_asked, ratio_rounded, whole_slips
from generators.geometry._calculator import NEAREST, amount
from generators.geometry._ratios import angle_of, ratio_named, ratio_said
from generators.geometry._trigonometry_drawn import angle_in_picture
from generators.geometry._trigonometry_mistakes import (
    HALF_ANGLE,
    OF_RIGHT_ANGLE,
    OTHER_ANGLE,
    OTHER_INVERSE,
    OTHER_RATIO,
    RATIO_ROUNDED,
    SINE_TAKEN,
    TANGENT_TAKEN,
    WHOLE_BASE,
)
from itembank.items.item import Draft, Misconception, Round, Step, Tier, prompt
from itembank.items.kinds.brief import Brief
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_SAID = {"sin": "sine", "cos": "cosine", "tan": "tangent"}


def _whole(*values: Fraction | None) -> list[int]:
    """Return angles to the nearest degree, without those there are not."""
    return [round(value) for value in values if value is not None]


def _apart(value: Fraction, others: Iterable[Fraction | None]) -> bool:
    """Keep angles that no likely mistake comes to, and that are not near two whole degrees."""
    wrong = _whole(*others)
    plain = 12 <= value <= 78 and abs(value - int(value) - Fraction(1, 2)) > Fraction(1, 50)
    return plain and round(value) not in wrong and len({*wrong}) == len(wrong)


def _draft(
    text: str,
    shown: Mapping[str, t.Node],
    target: t.Node,
    value: Fraction,
    steps: tuple[Step, ...],
    wrongs: list[tuple[Misconception, Fraction | None]],
    twin: tuple[object, ...],
    constants: tuple[int, ...] = (),
) -> Draft:
    return Draft(
        prompt(f"{text} {NEAREST.said('°')}", **shown),
        Round(target, NEAREST.detail, NEAREST.amount),
        NEAREST.node(value, "°"),
        "rounded",
        (*steps, *NEAREST.steps(value, "°")),
        whole_slips(value, wrongs),
        twin,
        constants=constants,
    )


def _angle_of_ratio(topic: Topic, tier: Tier, name: str, hundredths: int) -> Draft:
    """Return the question which acute angle has a sine, cosine or tangent."""
    ratio = Fraction(hundredths, 100)
    shown, value = amount(ratio, ""), angle_of(name, ratio)
    target = t.Trig(ratio_named(name), shown, True)
    return _draft(
        f"The {_SAID[name]} of an acute angle is {{r}}. Work out the angle.",
        {"r": shown},
        target,
        value,
        (Step(f"Use the inverse {_SAID[name]}.", target),),
        _other_ratios(name, ratio),
        ("angle of ratio", name, hundredths),
    )


def _other_ratios(name: str, ratio: Fraction) -> list[tuple[Misconception, Fraction | None]]:
    other = "cos" if name == "sin" else "sin"
    return [(OTHER_INVERSE, angle_of(other, ratio)), (OF_RIGHT_ANGLE, 90 * ratio)]


def _keep_ratio(name: str, hundredths: int) -> bool:
    ratio = Fraction(hundredths, 100)
    wrong = [wrong for _, wrong in _other_ratios(name, ratio)]
    return hundredths % 10 != 0 and _apart(angle_of(name, ratio), wrong)


def _of_sides(topic: Topic, tier: Tier, name: str, a: int, b: int) -> Draft:
    """Return the question for an angle from two sides that are told."""
    return angle_asked(name, a, b, NEAREST)


def _drawn(topic: Topic, tier: Tier, name: str, a: int, b: int) -> Draft:
    """Return the question for an angle of a triangle that is drawn with two sides."""
    return angle_in_picture(angle_asked(name, a, b, NEAREST), name, a, b)


def _keep_sides(name: str, a: int, b: int) -> bool:
    # Those that the tier asks to 1 decimal place have an odd sum, or are tangents of one kind.
    if (a + b) % 2 or a == b or 2 * a == b or (name != "tan" and a > b):
        return False
    ratio = Fraction(a, b)
    value = angle_of(name, ratio)
    other = angle_of("sin" if name == "tan" else "tan", ratio) if name != "tan" or a < b else None
    return _apart(value, (90 - value, other, ratio_rounded(name, ratio)))


def _keep_drawn(name: str, a: int, b: int) -> bool:
    return _keep_sides(name, a, b) and 24 <= angle_of(name, Fraction(a, b)) <= 66


def _of_tenths(a: int, b: int) -> t.Node:
    """Return a over b as a fraction of two lengths in tenths."""
    return t.Frac(amount(Fraction(a, 10), ""), amount(Fraction(b, 10), ""))


def _ladder(topic: Topic, tier: Tier, foot: int, long: int) -> Draft:
    """Return the question at what angle a ladder stands; lengths in tenths of a metre."""
    ratio = Fraction(foot, long)
    value = angle_of("cos", ratio)
    target = t.Trig("cos", _of_tenths(foot, long), True)
    return _draft(
        "A ladder {l} long leans against a wall. Its foot is {f} from the wall on level ground. "
        "What angle does the ladder make with the ground?",
        {"l": amount(Fraction(long, 10), "m"), "f": amount(Fraction(foot, 10), "m")},
        target,
        value,
        (
            Step("The ground is adjacent to the angle, and the ladder is the hypotenuse."),
            Step(f"{ratio_said('cos')} Find the angle whose ratio that is.", target),
        ),
        [
            (OTHER_ANGLE, 90 - value),
            (TANGENT_TAKEN, angle_of("tan", ratio)),
            (RATIO_ROUNDED, ratio_rounded("cos", ratio)),
        ],
        ("ladder", foot, long),
    )


def _keep_ladder(foot: int, long: int) -> bool:
    ratio = Fraction(foot, long)
    value = angle_of("cos", ratio)
    wrong = (90 - value, angle_of("tan", ratio), ratio_rounded("cos", ratio))
    return foot % 10 != 0 and value >= 70 and _apart(value, wrong)


_SEEN = ("tree", "flagpole", "pole", "mast")


def _seen(topic: Topic, tier: Tier, high: int, far: int) -> Draft:
    """Return the question at what angle the top of something is seen; high in tenths."""
    ratio = Fraction(high, 10 * far)
    value = angle_of("tan", ratio)
    target = t.Trig("tan", t.Frac(amount(Fraction(high, 10), ""), t.Int(far)), True)
    thing = by_turns(_SEEN, high + far)
    return _draft(
        f"A {thing} {{h}} high stands on level ground. A line is drawn from its top to a point on "
        "the ground {d} from its foot. What angle does the line make with the ground?",
        {"h": amount(Fraction(high, 10), "m"), "d": amount(far, "m")},
        target,
        value,
        (
            Step(f"The {thing} is opposite the angle, and the ground is adjacent to it."),
            Step(f"{ratio_said('tan')} Find the angle whose ratio that is.", target),
        ),
        [
            (OTHER_ANGLE, 90 - value),
            (SINE_TAKEN, angle_of("sin", ratio) if ratio < 1 else None),
            (RATIO_ROUNDED, ratio_rounded("tan", ratio)),
        ],
        ("seen", high, far),
    )


def _keep_seen(high: int, far: int) -> bool:
    ratio = Fraction(high, 10 * far)
    value = angle_of("tan", ratio)
    sine = angle_of("sin", ratio) if ratio < 1 else None
    wrong = (90 - value, sine, ratio_rounded("tan", ratio))
    return high % 10 != 0 and (high + far) % 7 == 0 and _apart(value, wrong)


def _between_equal(topic: Topic, tier: Tier, side: int, third: int) -> Draft:
    """Return the question for the angle between the equal sides of an isosceles triangle."""
    half, ratio = Fraction(third, 2), Fraction(third, 2 * side)
    each = angle_of("sin", ratio)
    asked = t.Frac(t.Frac(t.Int(third), t.Int(2)), t.Int(side))
    said = t.Trig("sin", t.Frac(amount(half, ""), t.Int(side)), True)
    return _draft(
        "An isosceles triangle has two sides of {s} and a third side of {b}. "
        "Work out the angle between the equal sides.",
        {"s": amount(side, "cm"), "b": amount(third, "cm")},
        t.times(t.Int(2), t.Trig("sin", asked, True)),
        2 * each,
        (
            Step(
                "Cut it into two right-angled triangles.",
                t.equals(t.divide(amount(third, "cm"), t.Int(2)), amount(half, "cm")),
            ),
            Step(
                "That side is opposite half of the angle: take the angle twice.",
                t.times(t.Int(2), said),
            ),
        ),
        _isosceles_wrongs(2 * each, ratio),
        ("between equal", side, third),
        (2,),
    )


def _isosceles_wrongs(
    value: Fraction, ratio: Fraction
) -> list[tuple[Misconception, Fraction | None]]:
    """Return wrong angles for half of the third side over an equal side."""
    whole = angle_of("sin", 2 * ratio) if 2 * ratio < 1 else None
    return [
        (HALF_ANGLE, value / 2),
        (WHOLE_BASE, whole),
        (OTHER_RATIO, 2 * angle_of("cos", ratio)),
    ]


def _keep_between_equal(side: int, third: int) -> bool:
    ratio = Fraction(third, 2 * side)
    if side == third or ratio >= Fraction(7, 10):
        return False
    value = 2 * angle_of("sin", ratio)
    return _apart(value, [wrong for _, wrong in _isosceles_wrongs(value, ratio)])


_NAMES = ("sin", "cos", "tan")
_SIDES = {"name": _NAMES, "a": range(2, 20), "b": range(4, 21)}
TO_NEAREST_DEGREE = {
    Tier.SUPPORT: (
        Brief(_angle_of_ratio, _keep_ratio, {"name": _NAMES, "hundredths": range(21, 99)}),
    ),
    Tier.CORE: (Brief(_of_sides, _keep_sides, _SIDES), Brief(_drawn, _keep_drawn, _SIDES)),
    Tier.CHALLENGE: (
        Brief(_ladder, _keep_ladder, {"foot": range(5, 20), "long": range(22, 61)}),
        Brief(_seen, _keep_seen, {"high": range(32, 160), "far": range(4, 31)}),
        Brief(_between_equal, _keep_between_equal, {"side": range(6, 25), "third": range(4, 25)}),
    ),
}
"""The questions of each tier."""
