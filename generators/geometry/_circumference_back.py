"""From the circumference of a circle back to its diameter or radius."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _circle_mistakes as m
from generators.geometry._calculator import PI, PLACE, amount, of_pi
from generators.geometry._circle_steps import PI_SIGN, TWO, across_named
from itembank.items.item import Draft, Find, Round, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

# What is so many metres round, at the most.
_PLACES = (
    (20, ("pond", "flower bed", "tent", "sandpit")),
    (90, ("lawn", "roundabout", "garden", "stage")),
    (400, ("lake", "park", "field", "race track")),
)


def back_from_pi(across: bool, tenths: int, unit: str) -> Draft:
    """Return the question back from so many times π, exact."""
    count = tenths // 10
    given = of_pi(count, unit)
    diameter = amount(count, unit)
    key = diameter if across else amount(Fraction(count, 2), unit)
    target = (
        t.divide(given, PI_SIGN) if across else t.divide(given, t.Bracket(t.times(TWO, PI_SIGN)))
    )
    steps = [
        Step("Divide by π to find the diameter.", t.equals(t.divide(given, PI_SIGN), diameter))
    ]
    if not across:
        half = t.equals(t.divide(diameter, TWO), key)
        steps.append(Step("The radius is half of the diameter.", half))
    return Draft(
        prompt(
            f"The circumference of a circle is {{n}}. Work out its {across_named(across)}.",
            n=given,
        ),
        Find(target),
        key,
        "quantity",
        tuple(steps),
        slips(
            (m.HALF_FOR_WHOLE, amount(Fraction(count, 2), unit) if across else None),
            (m.STOPS_AT_DIAMETER, None if across else diameter),
            (m.HALVED_TWICE, None if across else amount(Fraction(count, 4), unit)),
            (m.DOUBLED_BACK, amount(2 * count, unit)),
        ),
        ("from", across, count, unit),
        constants=(2,),
    )


def back_rounded(n: int, across: int) -> Draft:
    """Return the question back from n metres all the way round, rounded."""
    given, value = amount(n, "m"), Fraction(n) / PI / (1 if across else 2)
    place = by_turns(next(kinds for most, kinds in _PLACES if n <= most), n)
    target = (
        t.divide(given, PI_SIGN) if across else t.divide(given, t.Bracket(t.times(TWO, PI_SIGN)))
    )
    steps = [
        Step(
            "The circumference is π times the diameter, so divide by π.",
            t.divide(given, PI_SIGN),
        )
    ]
    if not across:
        half = t.divide(t.Bracket(t.divide(given, PI_SIGN)), TWO)
        steps = [Step("Divide by π, and halve the diameter to find the radius.", half)]
    return Draft(
        prompt(
            f"The distance all the way round a circular {place} is {{n}}. "
            f"Work out its {across_named(bool(across))}. {PLACE.said('m')}",
            n=given,
        ),
        Round(target, "places", 1),
        PLACE.node(value, "m"),
        "rounded",
        (*steps, *PLACE.steps(value, "m")),
        slips(
            (m.MULTIPLIED_BACK, PLACE.node(n * PI, "m")),
            (m.STOPS_AT_DIAMETER, None if across else PLACE.node(2 * value, "m")),
            (m.HALF_FOR_WHOLE, PLACE.node(value / 2, "m") if across else None),
        ),
        ("back", n, across),
        constants=(2,),
    )
