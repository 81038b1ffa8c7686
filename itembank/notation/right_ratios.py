"""The sines, cosines and tangents of whole degrees that are fractions, and the angles of these.

That there are no others is Niven's theorem (*Irrational Numbers*, 1956; from memory): where an
angle in degrees and its sine are both fractions, the sine is 0, 1/2 or 1, with either sign.
"""

from __future__ import annotations

from fractions import Fraction

_HALF = Fraction(1, 2)
_SINES = {
    0: Fraction(0),
    30: _HALF,
    90: Fraction(1),
    150: _HALF,
    180: Fraction(0),
    210: -_HALF,
    270: Fraction(-1),
    330: -_HALF,
}
_TANGENTS = {0: Fraction(0), 45: Fraction(1), 135: Fraction(-1)}


def ratio_of(name: str, degrees: Fraction) -> Fraction | None:
    """Return a sine, cosine or tangent that is a fraction, None where it is none.

    >>> ratio_of("cos", Fraction(60)), ratio_of("tan", Fraction(45)), ratio_of("sin", Fraction(35))
    (Fraction(1, 2), Fraction(1, 1), None)
    """
    if degrees.denominator != 1:
        return None
    if name == "tan":
        return _TANGENTS.get(int(degrees % 180))
    return _SINES.get(int((degrees + (90 if name == "cos" else 0)) % 360))


def angle_of(name: str, ratio: Fraction) -> Fraction | None:
    """Return the angle in degrees of a ratio, None where it is no fraction.

    >>> angle_of("cos", Fraction(1, 2)), angle_of("tan", Fraction(3, 4))
    (Fraction(60, 1), None)
    """
    if name == "tan":
        found = {Fraction(0): 0, Fraction(1): 45, Fraction(-1): -45}.get(ratio)
    else:
        found = {
            Fraction(0): 0,
            _HALF: 30,
            -_HALF: -30,
            Fraction(1): 90,
            Fraction(-1): -90,
        }.get(ratio)
    if found is None:
        return None
    return Fraction(90 - found if name == "cos" else found)
