"""Whether a model finds the part or the whole that is asked for, and changes from the right value."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT, index_of, slotted

_PART = late(
    r"\b(?:what is|how much is|how much|find|work out)\b[^?]*\b(?:the )?(?:profit|reduction|saved?|saving|"
    r"discount|vat|tax|interest|tip|commission)\b(?! price)",
    re.I,
)

_WITH = late(r"\b(?:after|with|including) (?:the )?(?:discount|vat|tax|interest)\b", re.I)

_WHOLE = late(
    r"\b(?:selling|sale|new|final|reduced|total) (?:price|cost|amount|population|value)\b", re.I
)


def part_or_whole_fault(model: Modelled, words: str) -> str:
    """Return how the whole is found where a part is asked for, or a part for the whole."""
    target = model.target
    if target is None or model.inverse:
        return ""
    match = _PART.search(words)
    if match and not _WITH.search(words) and _changes_whole(target):
        return f"‘{match[0]}’ asks for a part, and the model finds the whole after the change."
    if _WHOLE.search(words) and isinstance(target, t.Product) and not _changes_whole(target):
        factors = (target.first, *(factor for _, factor in target.rest))
        if len(factors) == 2 and any(
            isinstance(f, t.Percent) and f.of != t.Int(100) for f in factors
        ):
            return f"‘{words}’ asks for the whole, and the model finds a percentage of it."
    return ""


def _changes_whole(target: t.Node) -> bool:
    match target:
        case t.Sum(first, ((_, t.Product() as part),)):
            return first in (part.first, *(factor for _, factor in part.rest))
        case t.Product(first, rest):
            factors = (first, *(factor for _, factor in rest))
            return any(
                isinstance(f, t.Bracket | t.Power)
                and any(
                    isinstance(p, t.Sum) and p.first in (t.Int(1), t.Percent(t.Int(100)))
                    for p in t.walk(f)
                )
                for f in factors
            )
    return False


def simple_interest_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return that simple interest is reckoned with a power, or ``""``."""
    text = " ".join(run if isinstance(run, str) else "…" for run in runs)
    if re.search(r"\bsimple interest\b", text, re.I) and model.has(t.Power):
        return "The words say simple interest, and the model has a power."
    return ""


_FROM_TO = late(rf"\bfrom ({SLOT}) to ({SLOT})")

_CHANGE = late(
    r"\bpercentage (?:increase|decrease|profit|loss|change|rise|fall|reduction|gain)\b", re.I
)


def changed_from_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return whether a percentage change is divided by what the value changed from."""
    said = slotted(runs)
    match = _FROM_TO.search(said.text)
    if not (match and _CHANGE.search(words)) or model.inverse:
        return ""
    before = said.nodes[index_of(match[1])]
    for part in model.parts():
        match part:
            case t.Frac(_, den) if _is(den, before):
                return ""
            case t.Product(_, rest) if any(op == "÷" and _is(node, before) for op, node in rest):
                return ""
    return "A percentage change is of what was there before, and the model does not divide by that."


def _is(node: t.Node, other: t.Node) -> bool:
    while isinstance(node, t.Bracket):
        node = node.of
    return node == other or node == getattr(other, "amount", None)
