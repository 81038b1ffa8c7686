"""An angle of a right-angled triangle from two of its sides, told in words."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry._calculator import NEAREST, PLACE, Accuracy, amount
from generators.geometry._ratios import angle_of, ratio_named, ratio_said
from generators.geometry._trigonometry_mistakes import (
    CUT_OFF,
    OTHER_RATIO,
    RATIO_GIVEN,
    RATIO_ROUNDED,
    SINE_TAKEN,
    TANGENT_TAKEN,
    UPSIDE_DOWN,
)
from itembank.items.item import Draft, Misconception, Round, Slip, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_GIVEN = {
    "sin": "The side opposite an angle of a right-angled triangle is {a}, and the "
    "hypotenuse is {b}.",
    "cos": "The side adjacent to an angle of a right-angled triangle is {a}, and the "
    "hypotenuse is {b}.",
    "tan": "The side opposite an angle of a right-angled triangle is {a}, and the side "
    "adjacent to it is {b}.",
}


def angle_asked(name: str, a: int, b: int, accuracy: Accuracy = PLACE) -> Draft:
    """Return the question for the angle whose ratio is a over b, rounded as `accuracy` says."""
    ratio = Fraction(a, b)
    value = angle_of(name, ratio)
    target = t.Trig(ratio_named(name), t.Frac(t.Int(a), t.Int(b)), True)
    sine = angle_of("sin", ratio) if name == "tan" and a < b else None
    wrongs = [
        (UPSIDE_DOWN if name == "tan" else OTHER_RATIO, 90 - value),
        (SINE_TAKEN, sine),
        (TANGENT_TAKEN, None if name == "tan" else angle_of("tan", ratio)),
    ]
    if accuracy == PLACE:
        made = rounded_slips([*wrongs, (RATIO_GIVEN, ratio)], accuracy)
    else:
        made = whole_slips(value, [*wrongs, (RATIO_ROUNDED, ratio_rounded(name, ratio))])
    return Draft(
        prompt(
            f"{_GIVEN[name]} Work out the angle. {accuracy.said('°')}",
            a=amount(a, "cm"),
            b=amount(b, "cm"),
        ),
        Round(target, accuracy.detail, accuracy.amount),
        accuracy.node(value, "°"),
        "rounded",
        (
            Step(f"{ratio_said(name)} Find the angle whose ratio that is.", target),
            *accuracy.steps(value, "°"),
        ),
        made,
        ("angle", name, a, b),
    )


def ratio_rounded(name: str, ratio: Fraction) -> Fraction | None:
    """Return the angle that is found where a ratio is rounded to 1 decimal place before.

    >>> round(ratio_rounded("sin", Fraction(2, 3))), ratio_rounded("sin", Fraction(99, 100))
    (44, None)
    """
    early = Fraction(int(10 * ratio + Fraction(1, 2)), 10)
    return angle_of(name, early) if early > 0 and (early < 1 or name == "tan") else None


def whole_slips(
    value: Fraction, wrongs: list[tuple[Misconception, Fraction | None]]
) -> tuple[Slip, ...]:
    """Return wrong answers to the nearest degree, and the right one with its decimals cut off."""
    cut = Fraction(int(value)) if value - int(value) > Fraction(1, 2) else None
    return rounded_slips([*wrongs, (CUT_OFF, cut)], NEAREST)


def rounded_slips(
    wrongs: list[tuple[Misconception, Fraction | None]], accuracy: Accuracy
) -> tuple[Slip, ...]:
    """Return wrong angles rounded as the question asks; those that do not exist are left out."""
    return slips(
        *(
            (mistake, None if value is None else accuracy.node(value, "°"))
            for mistake, value in wrongs
        )
    )
