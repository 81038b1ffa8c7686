"""What a question about an area or a perimeter needs of its model."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.wording.model_summary import Modelled


def shape_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return what an area or a perimeter needs that the model does not do, or ``""``."""
    text = " ".join(run if isinstance(run, str) else "…" for run in runs)
    area = re.search(
        r"\barea\b|\bsquare (?:metre|centimetre|kilometre|millimetre)s?\b", words, re.I
    )
    mean_side = re.search(r"\btrapezi|\bparallel sides\b", text, re.I)
    if area and not model.inverse and not mean_side and not _multiplies(model):
        return "The question asks for an area, and the model multiplies no two lengths."
    if re.search(r"\bperimeter\b", words, re.I) and not model.inverse:
        sides = next((n for name, n in _SIDES if re.search(name, text, re.I)), 0)
        if not _goes_round(model, sides):
            return "The question asks for a perimeter, and the model does not go round every side."
    halves = re.search(r"\barea\b", words, re.I) and re.search(r"\btriang|\btrapezi", text, re.I)
    if halves and not model.inverse and not model.divides():
        return (
            "The area of a triangle or a trapezium is half a product, and the model halves nothing."
        )
    return ""


_SIDES = (
    ("triang", 3), ("pentagon", 5), ("hexagon", 6), ("octagon", 8), ("decagon", 10), ("square", 4),
)  # fmt: skip


def _goes_round(model: Modelled, sides: int) -> bool:
    numbers = [part.n for part in _multipliers(model) if isinstance(part, t.Int)]
    if sides and sides in numbers:
        return True
    sums = [1 + len(part.rest) for part in model.parts() if isinstance(part, t.Sum)]
    return any(count >= max(3, sides) for count in sums) or (2 in numbers and bool(sums))


def _multipliers(model: Modelled) -> list[t.Node]:
    """Return the factors by which a model multiplies; what it divides by is none."""
    found: list[t.Node] = []
    for part in model.parts():
        match part:
            case t.Product(first, rest):
                found += [first, *(factor for op, factor in rest if op != "÷")]
            case t.Juxt(factors):
                found += factors
    return found


def _multiplies(model: Modelled) -> bool:
    """Whether two amounts are multiplied that are no bare count, or one is squared."""
    if model.has(t.Power, t.Root):
        return True
    for part in model.parts():
        if isinstance(part, t.Juxt) and sum(not _is_count(factor) for factor in part.factors) > 1:
            return True
        if isinstance(part, t.Product):
            factors = [part.first, *(factor for op, factor in part.rest if op == "×")]
            if sum(not _is_count(factor) for factor in factors) > 1:
                return True
    return False


def _is_count(node: t.Node) -> bool:
    while isinstance(node, t.Bracket):
        node = node.of
    return (isinstance(node, t.Sum) and not t.symbols(node)) or node == t.Int(2)
