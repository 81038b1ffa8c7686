"""Words that ask for powers, products and fractions in a form of their own."""

from __future__ import annotations

import re

from itembank.text.late_pattern import late

_INDEX = r"\b(?:in|using|into|use|with) (?:index (?:form|notation)|indices)\b"
FORMS_SAID = (
    ("single-fraction", late(r"\b(?:single|one) (?:algebraic )?fraction\b", re.I)),
    ("positive-indices", late(r"\bpositive (?:indices|index|powers?|exponents?)\b", re.I)),
    ("powers", late(_INDEX, re.I)),
    ("power", late(r"\bas (?:an?|one) (?:single )?power\b", re.I)),
    ("surd", late(r"\brationali[sz]", re.I)),
)
PRIMES = late(r"\bprime", re.I)
PRIME_POWERS = late(rf"{_INDEX}|\bproduct of powers of\b", re.I)
PRODUCT = late(
    r"\b(?:as a (?:repeated )?(?:product|multiplication)|in expanded form|written out"
    r"|out in full|without (?:indices|index notation|powers))\b",
    re.I,
)
SIMPLIFY = late(r"\bsimplify\b", re.I)
LOWEST = late(r"\b(?:lowest terms|simplest form|simplest terms)\b", re.I)
ANY_FORM = late(r"fraction|ind(?:ex|ices)|power|positive|rational|lowest|simplest|prime", re.I)
"""A word of one of the patterns above stands in few prompts: the others need no further look."""
POWER_OF = late(r"\bas an? (?:single )?power of (?:(\d+|[A-Za-z])\b|$)", re.I)


def says_form(words: str) -> bool:
    """Whether the words ask for one power, index notation, a product or a single fraction.

    >>> says_form("Write 2^3 × 2^4 as a power of 2."), says_form("Use index notation.")
    (True, True)
    >>> says_form("Write 3/8 as a decimal.")
    False
    """
    return any(pattern.search(words) for _, pattern in FORMS_SAID) or bool(PRODUCT.search(words))
