"""From the area of a circle back to its radius, diameter or circumference."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _circle_mistakes as m
from generators.geometry._calculator import PI, PLACE, amount, of_pi, root_of
from generators.geometry._circle_steps import IN_PI, PI_SIGN, TWO, across_named
from itembank.items.item import Draft, Find, Round, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

LARGE = ("pond", "flower bed", "lawn", "rug")


def back_exactly(n: int, wanted: str) -> Draft:
    """Return the question back from so many times π to what is `wanted`."""
    given, square, radius = of_pi(n * n, "cm^2"), amount(n * n, "cm^2"), amount(n, "cm")
    root: t.Node = t.Root(t.divide(given, PI_SIGN))
    steps = [
        Step(
            "Divide by π to find the square of the radius.",
            t.equals(t.divide(given, PI_SIGN), square),
        ),
        Step("The radius is its square root.", t.equals(t.Root(square), radius)),
    ]
    target, key, times, ending = root, radius, 1, ""
    if wanted == "diameter":
        target, key, times = t.times(TWO, root), amount(2 * n, "cm"), 2
        steps.append(Step("Double it for the diameter.", t.equals(t.times(TWO, radius), key)))
    if wanted == "circumference":
        target, key, times = t.times(TWO, PI_SIGN, root), of_pi(2 * n, "cm"), 2
        ending = IN_PI
        steps.append(
            Step(
                "The circumference is twice π times the radius.",
                t.equals(t.times(TWO, PI_SIGN, radius), key),
            )
        )
    made = of_pi if wanted == "circumference" else amount
    return Draft(
        prompt(f"The area of a circle is {{n}}. Work out its {wanted}.{ending}", n=given),
        Find(target),
        key,
        "simplified" if ending else "quantity",
        tuple(steps),
        slips(
            (m.HALVES_FOR_ROOT, made(Fraction(times * n * n, 2), "cm")),
            (m.NO_ROOT, made(times * n * n, "cm")),
        ),
        ("from", n, wanted),
        constants=(2,),
    )


def back_rounded(n: int, across: int) -> Draft:
    """Return the question back from an area in square metres, rounded."""
    given, square = amount(n, "m^2"), t.divide(amount(n, "m^2"), PI_SIGN)
    times = 2 if across else 1
    root: t.Node = t.Root(square)
    squared = Fraction(n) / PI
    value = times * root_of(squared)
    target = t.times(TWO, root) if across else root
    return Draft(
        prompt(
            f"The area of a circular {by_turns(LARGE, n)} is {{n}}. "
            f"Work out its {across_named(bool(across))}. {PLACE.said('m')}",
            n=given,
        ),
        Round(target, "places", 1),
        PLACE.node(value, "m"),
        "rounded",
        (
            Step(
                "Divide by π to find the square of the radius. The radius is its square root."
                + " Double it for the diameter." * across,
                target,
            ),
            *PLACE.steps(value, "m"),
        ),
        slips(
            (m.HALVES_FOR_ROOT, PLACE.node(times * squared / 2, "m")),
            (m.NO_ROOT, PLACE.node(times * squared, "m")),
            (m.STOPS_AT_RADIUS, PLACE.node(value / 2, "m") if across else None),
        ),
        ("back", n, across),
        constants=(2,),
    )
