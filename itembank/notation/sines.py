"""Proved bounds of sines, cosines and tangents of degrees, and of the angles of these.

The sine is its Taylor series (Newton; from memory), taken in whole numbers. From −90° to 90° its
terms alternate and fall, so that what is left out is less than the first term that is (Leibniz;
from memory), and each division loses less than one in the last place. An angle is guessed by a
float and then proved: the sine of a little less is below the ratio, that of a little more above
it, and in between the sine only rises. No float decides.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction

from itembank.notation.value import NotExact

Bounds = tuple[Fraction, Fraction]

# The circle constant to 50 places, for rounding only (Euler's and Machin's digits, from memory;
# a test holds them to mpmath's).
PI = Fraction(314159265358979323846264338327950288419716939937510, 10**50)
_PI_ABOVE = PI + Fraction(1, 10**50)
_GUARD = 8
"""Decimal places that are worked out beyond those asked, for what the divisions lose."""


def sine(degrees: Fraction, digits: int) -> Bounds:
    """Return bounds of the sine of an angle, about so many decimal places apart.

    >>> low, high = sine(Fraction(35), 20)
    >>> float(low), high - low < Fraction(1, 10**19)
    (0.573576436351046, True)
    """
    turned = degrees % 360
    if turned > 270:
        turned -= 360
    elif turned > 90:
        turned = 180 - turned  # sin(180° − a) is sin a, for angles up to 270° too
    if turned < 0:
        low, high = sine(-turned, digits)
        return -high, -low
    # It rises from 0° to 90°, so that bounds of the angle give bounds of the sine.
    return _series(turned * PI / 180, digits)[0], min(
        _series(turned * _PI_ABOVE / 180, digits)[1], Fraction(1)
    )


def _series(x: Fraction, digits: int) -> Bounds:
    """Return bounds of the sine of so many radians, from 0 to a little over π/2."""
    scale = 10 ** (digits + _GUARD)
    value = (x * scale).__floor__()
    square = value * value // scale
    total, term, k = 0, value, 1
    while term:
        total += term if k % 4 == 1 else -term
        term = term * square // (scale * (k + 1) * (k + 2))
        k += 2
    # Less than 2 for x and its square, and for each term less than 2 more than the one before.
    lost = 4 * k
    return Fraction(total - lost, scale), Fraction(total + lost, scale)


def cosine(degrees: Fraction, digits: int) -> Bounds:
    """Return bounds of the cosine of an angle."""
    return sine(90 - degrees, digits)


def tangent(degrees: Fraction, digits: int) -> Bounds:
    """Return bounds of the tangent of an angle; raises NotExact where it has none.

    >>> low, high = tangent(Fraction(40), 20)
    >>> float(low) == float(high) == 0.8390996311772800
    True
    """
    if (degrees - 90) % 180 == 0:
        raise NotExact("this angle has no tangent")
    top, bottom = sine(degrees, digits), cosine(degrees, digits)
    if bottom[0] <= 0 <= bottom[1]:
        raise NotExact("this angle is too near to one that has no tangent")
    ends = [a / b for a in top for b in bottom]
    return min(ends), max(ends)


RATIOS: dict[str, Callable[[Fraction, int], Bounds]] = {
    "sin": sine,
    "cos": cosine,
    "tan": tangent,
}


def ratio_bounds(name: str, angle: Bounds, digits: int) -> Bounds:
    """Return bounds of a ratio of an angle that lies between bounds, which are near each other."""
    low, high = angle
    if low == high:
        return RATIOS[name](low, digits)
    if name == "tan":
        if (low + 90) // 180 != (high + 90) // 180:
            raise NotExact("this angle is too near to one that has no tangent")
        return tangent(low, digits)[0], tangent(high, digits)[1]
    ends = (*RATIOS[name](low, digits), *RATIOS[name](high, digits))
    # A degree is less than 1/57 of a radian, and a sine changes by no more than its angle does.
    more = (high - low) / 57
    return min(ends) - more, max(ends) + more


def angle_bounds(name: str, ratio: Bounds, digits: int) -> Bounds:
    """Return bounds in degrees of the angle whose ratio lies between bounds.

    >>> low, high = angle_bounds("sin", (Fraction(5, 8), Fraction(5, 8)), 12)
    >>> round(float(low), 6), high - low < Fraction(1, 10**8)
    (38.682187, True)
    """
    if name == "cos":
        # sin(90° − a) is cos a
        low, high = angle_bounds("sin", ratio, digits)
        return 90 - high, 90 - low
    low, high = ratio
    if name == "sin" and not -1 < low <= high < 1:
        raise NotExact("no angle, or not one alone, has this ratio")
    undo = math.asin if name == "sin" else math.atan
    step = Fraction(1, 10**9)
    ends = [Fraction(round(math.degrees(undo(float(end))) * 10**9), 10**9) for end in ratio]
    below, above = max(ends[0] - step, Fraction(-90)), min(ends[1] + step, Fraction(90))
    places = max(digits, 12)
    short = below > -90 and RATIOS[name](below, places)[1] >= low
    if short or (above < 90 and RATIOS[name](above, places)[0] <= high):
        raise NotExact("this angle cannot be enclosed")
    return below, above
