"""Several parts of one whole, and the rest: 2/5 is beans, 1/4 is peas, what fraction is left."""

from __future__ import annotations

import re
from fractions import Fraction
from math import prod

from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads

_REST = r"\b(?:left|the rest|remain\w*|the others?|neither|not used)\b"
_OF_REST = r"\bof (?:the|what|his|her|their) (?:rest|remainder|remaining|others?|is left)\b"
_BESIDE = (
    r"\b(?:more|less|fewer|increas\w*|decreas\w*|"
    r"reduc\w*|rises?|rose|falls?|fell|off|twice|half|times|then)\b"
)


def parts_and_rest_reading(tale: Tale) -> Reading | None:
    """Return the rest of a whole as a part or an amount, or the whole from its rest."""
    parts = tale.of("part", "percent")
    others = [n for n in tale.numbers if n not in parts]
    if len(parts) < 2 or len(others) > 1 or any(tale.asked(n) for n in tale.numbers):
        return None
    if late_search(_BESIDE, tale.text) or len({part.measure for part in parts}) != 1:
        return None
    later = [late_search(_OF_REST, "of " + part.after[3:]) for part in parts]
    if not any(later):
        rest = 1 - sum((part.value for part in parts), Fraction(0))
    elif later == [False] + [True] * (len(parts) - 1):
        rest = prod((1 - part.value for part in parts), start=Fraction(1))
    else:
        return None
    if not 0 < rest < 1:
        return None
    names_rest = re.search(
        r"\b[Tt]he (?:rest|others?|remaining \w+) (?:\w+ )?(?:is|are|was|were) (?:planted with |used for |made of )?(\w+)",
        tale.told,
    )
    asks_rest = tale.asks_for(_REST) or (
        names_rest is not None and late_search(rf"\b{names_rest[1].lower()}\b", tale.question)
    )
    if tale.asks_for(r"\b(?:fraction|percentage)\b"):
        return reads("the whole less all of its parts", rest) if asks_rest and not others else None
    if not others:
        return None
    (amount,) = others
    of_rest = late_search(
        r"\b(?:the (?:other|others|rest|remaining)|left)\b", tale.clause_of(amount)
    )
    if of_rest:
        if tale.asks_for(
            r"\b(?:altogether|in total|in all|total|whole|at first|to (?:start|begin) with|originally)\b"
        ):
            return reads("the amount given is the rest of the whole", amount.value / rest)
        return None
    if asks_rest and all(amount.at < part.at for part in parts):
        return reads("the whole less all of its parts", amount.value * rest)
    return None
