"""The mistakes that several topics on fractions look for."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from itembank.items.item import Misconception

ADD_ACROSS = Misconception(
    "fractions.add-across",
    "adds the numerators and adds the denominators",
    "What would 1/2 + 1/2 be by your method? Can that be right?",
)


SUBTRACT_ACROSS = Misconception(
    "fractions.subtract-across",
    "subtracts the numerators and subtracts the denominators",
    "What would 3/4 − 1/2 be by your method? Can that be more than 3/4?",
)


KEEP_NUMERATORS = Misconception(
    "fractions.keep-numerators",
    "changes the denominators to a common one but leaves the numerators as they were",
    "Is 1/2 worth as much as 1/4? When the denominator grows, what must the numerator do?",
)


def keep_numerators(
    parts: tuple[tuple[int, int], ...], bottom: int, answer: Fraction
) -> Misconception:
    """Return the misconception with a question about a fraction that has to change.

    Where none has to, the numerators are kept by right: there is nothing to ask about. One that
    the mistake turns into the answer is not asked about.

    >>> keep_numerators(((5, 6), (2, 3)), 6, Fraction(3, 2)).ask
    'Is 2/3 worth as much as 2/6? What must happen to the numerator?'
    """
    asked = [(n, d) for n, d in parts if d != bottom and Fraction(n, bottom) != answer]
    if not asked:
        return KEEP_NUMERATORS
    n, d = asked[0]
    question = f"Is {n}/{d} worth as much as {n}/{bottom}? What must happen to the numerator?"
    return replace(KEEP_NUMERATORS, ask=question)
