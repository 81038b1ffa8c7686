"""Which speeds, times and distances are asked for, and what the mistakes give."""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._movers import mover_at, mover_at_both
from generators.ratio._rates import apart, written
from generators.ratio._speed_mistakes import DIVIDES, MULTIPLIES, SUBTRACTS


def support_fits(kind: str, speed: int, time: int, unit: str) -> bool:
    """Keep whole hours, or seconds, at speeds that something has."""
    if mover_at(speed, unit, 0) is None or speed == time or (unit == "m/s") is not (time > 9):
        return False
    if unit == "km/h" and speed * time > 480:
        return False
    return apart(key_of(kind, speed, time), *support_wrong(kind, speed, time))


def key_of(kind: str, speed: int, time: int) -> int:
    """Return a speed, a distance or a time.

    >>> key_of("distance", 30, 4)
    120
    """
    return {"speed": speed, "distance": speed * time, "time": time}[kind]


def support_wrong(kind: str, speed: int, time: int) -> tuple[Fraction | int | None, ...]:
    """Return what the likely mistakes of a kind give, in the order of :data:`MISTAKES`."""
    distance = speed * time
    if kind == "speed":
        return distance * time, distance - time
    if kind == "distance":
        return written(max(speed, time), min(speed, time)), abs(speed - time)
    return distance * speed, distance - speed


MISTAKES = {
    "speed": (MULTIPLIES, SUBTRACTS),
    "distance": (DIVIDES, SUBTRACTS),
    "time": (MULTIPLIES, SUBTRACTS),
}


def core_fits(kind: str, speed: int, minutes: int, unit: str) -> bool:
    """Keep times in minutes, or in hours and minutes, whose distances have a decimal at most."""
    if mover_at(speed, unit, 0) is None or speed * minutes % 6 or speed * minutes < 120:
        return False
    if kind == "mixed" and (minutes < 60 or minutes % 60 == 0 or speed * minutes > 18_000):
        return False
    if kind != "mixed" and minutes >= 60:
        return False
    if kind == "minutes" and speed * minutes % 60:
        return False
    key = {"distance": Fraction(speed * minutes, 60), "minutes": Fraction(minutes)}.get(
        kind, Fraction(speed)
    )
    return apart(key, *core_wrong(kind, speed, minutes))


def core_wrong(kind: str, speed: int, minutes: int) -> tuple[Fraction | int | None, ...]:
    """Return what MINUTES and CLOCK give, PART_HOUR too for hours and minutes."""
    product = speed * minutes
    if kind == "distance":
        return product, written(product, 100)
    if kind == "minutes":
        hours = written(minutes, 60)
        return hours, None if hours is None else 100 * hours
    whole, rest = divmod(minutes, 60)
    clock = written(100 * product, 60 * (100 * whole + rest))
    if kind == "speed":
        return written(product, 60 * minutes), clock
    return written(product, 60 * minutes), clock, written(product, 60 * whole)


def challenge_fits(kind: str, first: int, second: int, distance: int) -> bool:
    """Keep two equal parts at two speeds, two parts of different length, and stops."""
    if kind == "two speeds":
        if mover_at(first, "km/h", 0) is None or mover_at(second, "km/h", 0) is None:
            return False
        # Each part takes a whole number of quarters of an hour.
        if distance > 3 * min(first, second) or 4 * distance % first or 4 * distance % second:
            return False
        average = written(2 * first * second, first + second)
        if first == second or average is None or mover_at_both(first, second, 0) is None:
            return False
        return apart(average, *two_speeds_wrong(first, second))
    if kind == "two parts":
        # first and second are minutes; the distance is of both, the first part a multiple of 5.
        if (first + second) % 30 or first == second:
            return False
        average = written(60 * distance, first + second, 0)
        near = 5 * (distance * first // (first + second) // 5)
        if average is None or not 12 <= average <= 90 or near < 5 or near == distance:
            return False
        speeds = (60 * near / first, 60 * (distance - near) / second)
        if not 8 <= min(speeds) <= max(speeds) <= 100:
            return False
        return apart(average, *two_parts_wrong(first, second, near, distance))
    # A stop of `second` minutes in `first` minutes in all.
    if second >= 31 or first <= 60 or (first - second) % 15 or first % 60 == 0:
        return False
    average = written(60 * distance, first - second, 0)
    if average is None or not 15 <= average <= 80:
        return False
    return apart(average, *stop_wrong(first, second, distance))


def two_speeds_wrong(first: int, second: int) -> tuple[Fraction | None, ...]:
    """Return what MEAN and HALF_WAY give."""
    return written(first + second, 2), written(first * second, first + second)


def two_parts_wrong(
    first: int, second: int, near: int, distance: int
) -> tuple[Fraction | None, ...]:
    """Return what MEAN, HALF_WAY and MINUTES give."""
    mean = 30 * (near * second + (distance - near) * first)
    return (
        written(mean, first * second),
        written(60 * (distance - near), first + second),
        written(distance, first + second),
    )


def stop_wrong(total: int, stop: int, distance: int) -> tuple[Fraction | None, ...]:
    """Return what STOP_COUNTED, STOP_ADDED and MINUTES give."""
    return (
        written(60 * distance, total),
        written(60 * distance, total + stop),
        written(distance, total - stop),
    )
