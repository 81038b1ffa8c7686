"""The average speed of a whole journey: there and back, in two parts, and with a stop."""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._lengths_of_time import hours_and_minutes, in_hours
from generators.ratio._movers import mover_at, mover_at_both
from generators.ratio._parts import amount
from generators.ratio._rates import wrong_amounts
from generators.ratio._speed_mistakes import HALF_WAY, MEAN, MINUTES, STOP_ADDED, STOP_COUNTED
from generators.ratio._speed_numbers import stop_wrong, two_parts_wrong, two_speeds_wrong
from itembank.items.item import Draft, Find, Step, prompt
from itembank.notation import tree as t

_X = t.Sym("x")


def there_and_back(first: int, second: int, distance: int) -> Draft:
    """Return the question for the average speed of a way there and back at two speeds in km/h."""
    mover = mover_at_both(first, second, first + second + distance // 5)
    far, v, w = amount(distance, "km"), amount(first, "km/h"), amount(second, "km/h")
    times = [amount(Fraction(distance, speed), "h") for speed in (first, second)]
    total = amount(Fraction(distance, first) + Fraction(distance, second), "h")
    average = Fraction(2 * first * second, first + second)
    whole, time = t.add(far, far), t.add(t.divide(far, v), t.divide(far, w))
    return Draft(
        prompt(
            f"{mover} goes {{d}} at {{v}} and comes back the same way at {{w}}. Work out the "
            "average speed for the whole journey, in km/h.",
            d=far,
            v=v,
            w=w,
        ),
        Find(_X, (t.equals(_X, t.divide(t.Bracket(whole), t.Bracket(time))),)),
        amount(average, "km/h"),
        "quantity",
        (
            Step("Find the time there.", t.equals(t.divide(far, v), times[0])),
            Step("Find the time back.", t.equals(t.divide(far, w), times[1])),
            Step("Add the times.", t.equals(t.add(*times), total)),
            Step("Add the distances.", t.equals(whole, amount(2 * distance, "km"))),
            Step(
                "Divide all of the distance by all of the time.",
                t.equals(t.divide(amount(2 * distance, "km"), total), amount(average, "km/h")),
            ),
        ),
        wrong_amounts("km/h", average, (MEAN, HALF_WAY), two_speeds_wrong(first, second)),
        ("two speeds", first, second, distance),
    )


def in_two_parts(first: int, second: int, distance: int) -> Draft:
    """Return the question for the average speed of two parts that take so many minutes."""
    near = 5 * (distance * first // (first + second) // 5)
    average = Fraction(60 * distance, first + second)
    mover = mover_at(int(average), "km/h", first + second + distance) or "A bus"
    far, further = amount(near, "km"), amount(distance - near, "km")
    shown, then = amount(first, "min"), amount(second, "min")
    minutes, whole = amount(first + second, "min"), amount(distance, "km")
    hours, time = in_hours(first + second), t.add(shown, then)
    return Draft(
        prompt(
            f"{mover} travels {{d}} in {{t}} and then {{e}} in {{u}}. Work out the average "
            "speed for the whole journey, in km/h.",
            d=far,
            t=shown,
            e=further,
            u=then,
        ),
        Find(
            _X,
            (t.equals(_X, t.divide(t.Bracket(t.add(far, further)), t.Bracket(time))),),
        ),
        amount(average, "km/h"),
        "quantity",
        (
            Step("Add the distances.", t.equals(t.add(far, further), whole)),
            Step("Add the times.", t.equals(time, minutes)),
            Step("Write the time in hours.", t.equals(minutes, hours)),
            Step(
                "Divide all of the distance by all of the time.",
                t.equals(t.divide(whole, hours), amount(average, "km/h")),
            ),
        ),
        wrong_amounts(
            "km/h",
            average,
            (MEAN, HALF_WAY, MINUTES),
            two_parts_wrong(first, second, near, distance),
        ),
        ("two parts", first, second, distance),
    )


def with_a_stop(total: int, stop: int, distance: int) -> Draft:
    """Return the question for the speed while moving, of a journey with a stop, in minutes."""
    average = Fraction(60 * distance, total - stop)
    far, shown, pause = amount(distance, "km"), hours_and_minutes(total), amount(stop, "min")
    all_of_it, moving = amount(total, "min"), amount(total - stop, "min")
    hours = in_hours(total - stop)
    return Draft(
        prompt(
            "A bus journey of {d} takes {t}, with a stop of {s} on the way. Work out the "
            "average speed of the bus while it is moving, in km/h.",
            d=far,
            t=shown,
            s=pause,
        ),
        Find(_X, (t.equals(_X, t.divide(far, t.Bracket(t.sub(shown, pause)))),)),
        amount(average, "km/h"),
        "quantity",
        (
            Step("Write the time in minutes.", t.equals(shown, all_of_it)),
            Step("Subtract the stop.", t.equals(t.sub(all_of_it, pause), moving)),
            Step("Write the time in hours.", t.equals(moving, hours)),
            Step(
                "Divide the distance by the time.",
                t.equals(t.divide(far, hours), amount(average, "km/h")),
            ),
        ),
        wrong_amounts(
            "km/h",
            average,
            (STOP_COUNTED, STOP_ADDED, MINUTES),
            stop_wrong(total, stop, distance),
        ),
        ("stop", total, stop, distance),
    )
