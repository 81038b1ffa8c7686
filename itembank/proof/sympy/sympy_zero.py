"""Whether a sympy expression is zero, without waiting for its slow general simplifier.

Importing this module imports sympy.
"""

from __future__ import annotations

from typing import Any

import sympy

from itembank.notation.value import NotExact

DIGITS = 50
# Points for the letters, none of them a root or a pole that a school question would have.
POINTS = ("1.2345678901", "2.7101928374", "0.5918273645", "3.3217654098", "1.7182934756")


def is_zero(value: Any) -> bool:
    """Tell whether `value` is zero for all values of its letters.

    Raises:
        NotExact: it looks like zero to fifty digits, but sympy cannot show that it is.

    >>> x = sympy.Symbol("x", real=True)
    >>> is_zero((x + 1) ** 2 - x**2 - 2 * x - 1), is_zero(sympy.sqrt(8) - 2 * sympy.sqrt(2))
    (True, True)
    >>> is_zero((x**2 - 1) / (x - 1) - x - 1), is_zero(x - 1)
    (True, False)
    """
    # The quick ways first: sympy's simplifier takes seconds where these take a moment.
    if value.is_Rational or value == 0:
        return bool(value == 0)
    if value.has(sympy.zoo, sympy.nan, sympy.oo):
        raise NotExact("this divides by zero")
    if sympy.expand(value) == 0:
        return True
    top = sympy.numer(sympy.together(value))
    if sympy.expand(top) == 0:
        return True
    if _is_plain(top):
        return False  # a polynomial over the rationals, multiplied out, with a term left
    # One point where it is not zero shows that it is not zero everywhere. The other way round a
    # point shows nothing, so what looks like zero has to be simplified to it.
    if _far_from_zero(value):
        return False
    for simpler in (sympy.radsimp, sympy.cancel, sympy.simplify):
        if simpler(value) == 0:
            return True
    raise NotExact("sympy cannot tell whether the two are worth the same")


def _is_plain(value: Any) -> bool:
    letters = sorted(value.free_symbols, key=str)
    if not letters:
        return False
    return (
        bool(value.is_polynomial(*letters))
        and not value.has(sympy.pi)
        and not any(power.exp.is_Integer is False for power in value.atoms(sympy.Pow))
    )


def _far_from_zero(value: Any) -> bool:
    letters = sorted(value.free_symbols, key=str)
    at = {
        name: sympy.Float(POINTS[i % len(POINTS)], DIGITS) + i // len(POINTS)
        for i, name in enumerate(letters)
    }
    number = sympy.N(value.subs(at), DIGITS)
    return bool(number.is_number and abs(number) > sympy.Float(10) ** -30)
