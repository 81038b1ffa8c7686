"""The order of a ratio that is asked for: of boys to girls, and not of girls to boys."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.text.late_pattern import late
from itembank.wording.kinds.things_counted import noun_stem
from itembank.wording.meaning.told.tale import Tale
from itembank.wording.model_summary import Modelled

_ASKED = late(
    r"\bratio of (?:the (?:number of )?)?(?P<a>[\w'-]+)(?: [\w'-]+)?? to (?:the (?:number of )?)?(?P<b>[\w'-]+)",
    re.I,
)
_ALL = frozenset(
    (
        "member",
        "pupil",
        "people",
        "child",
        "total",
        "counter",
        "bead",
        "animal",
        "student",
        "all",
        "seat",
        "player",
        "car",
    )
)
_REST = late(
    r"\b(?:the )?(?:rest|others?|remainder|remaining) (?:\w+ )?(?:is|are|was|were) ([\w'-]+)", re.I
)


def order_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return how a ratio is taken the other way round, or of other things, or ``""``."""
    target = model.target
    if not isinstance(target, t.Ratio) or len(target.parts) != 2:
        return ""
    tale = Tale(runs)
    asked = _ASKED.search(tale.question)
    if asked is None:
        return ""
    try:
        first, second = (exact(part) for part in target.parts)
    except t.NotationError:
        return ""
    amounts = _amounts(tale)
    a, b = (_amount(noun_stem(asked[name]), amounts) for name in ("a", "b"))
    if a is None or b is None or not b or not second:
        return ""
    if Fraction(a, b) != Fraction(first, second):
        return f"The question asks for the ratio of {asked['a']} to {asked['b']}, and the model has another."
    return ""


def _amounts(tale: Tale) -> dict[str, Fraction]:
    """Return how many there are of each thing, the rest of a whole among them."""
    found: dict[str, Fraction] = {}
    for number in tale.numbers:
        words = re.findall(r"[A-Za-z'-]+", number.after)
        if number.measure in ("part", "percent"):
            match = re.search(r"\b(?:are|is|were|was) ([\w'-]+)", number.after)
            if match is None:
                return {}
            found[noun_stem(match[1])] = number.value
            if rest := _REST.search(tale.told):
                found[noun_stem(rest[1])] = 1 - number.value
        elif words and number.counts:
            if noun_stem(words[0]) in found:
                return {}
            found[noun_stem(words[0])] = number.value
    return found


def _amount(noun: str, amounts: dict[str, Fraction]) -> Fraction | None:
    if noun in amounts:
        return amounts[noun]
    alls = [name for name in amounts if name in _ALL]
    if noun in _ALL and not alls and len(amounts) == 2:
        return sum(amounts.values(), Fraction(0))
    if len(alls) == 1 and len(amounts) == 2:
        (part,) = (name for name in amounts if name not in alls)
        return amounts[alls[0]] - amounts[part]
    return None
