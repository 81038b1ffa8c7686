"""What everybody knows of shapes, rates and sequences, and a model must not go against.

The angles of a triangle make 180° and those of a quadrilateral 360°; a circle is half as wide as
its diameter from its centre; compound interest multiplies (school mathematics, common knowledge).
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.wording.model_summary import Modelled


def fact_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return the fact about a shape, a rate or a sequence that the model goes against."""
    text = " ".join(run if isinstance(run, str) else "…" for run in runs)
    numbers = {part.n for part in model.parts() if isinstance(part, t.Int)}
    angles = re.search(r"\bangle", text, re.I) and not re.search(r"\bexterior|\bturn", text, re.I)
    if angles and re.search(r"\btriang", text, re.I) and 360 in numbers:
        return "The angles of a triangle add up to 180°, and the model has 360."
    if angles and re.search(r"\bquadrilat", text, re.I) and 180 in numbers:
        return "The angles of a quadrilateral add up to 360°, and the model has 180."
    line = angles and re.search(r"\bon a straight line\b", text, re.I)
    if line and not numbers & {180, 90}:
        return "Angles on a straight line add up to 180°, and the model does not say so."
    half = re.search(r"\b(?:height|high|base|long)\b", words, re.I)
    if half and re.search(r"\btriangle\b[^.]*\barea of\b", text, re.I) and 2 not in numbers:
        return "The area of a triangle is half of base by height, and the model halves nothing."
    diameter = re.search(r"\bdiameter\b", text, re.I)
    if diameter and re.search(r"\barea\b", words, re.I) and not model.divides():
        return "The words give a diameter, and the model does not halve it."
    if re.search(r"\bsurface area\b", words, re.I) and not (model.has(t.Sum) or 6 in numbers):
        return "A surface area is that of every face, and the model finds that of one."
    if re.search(r"\bcompound interest\b", text, re.I) and not model.has(t.Power):
        times = [product for product in model.parts() if isinstance(product, t.Product)]
        if not any(sum(isinstance(f, t.Bracket) for f in _factors(time)) > 1 for time in times):
            return "Compound interest multiplies once for each year, and the model does not."
    position = re.search(r"\bwhich (?:term|pattern|row|position)\b", words, re.I)
    if position and not model.inverse and not model.divides() and not model.subtracts():
        return f"The words ask ‘{position[0]}’, and the model finds a term, not where it stands."
    if re.search(r"\b(?:estimat|approximat)", text, re.I) and numbers and numbers <= _printed(runs):
        return "The words ask for an estimate, and the model rounds nothing."
    return _other_sign(runs, model)


def _printed(runs: Sequence[Run]) -> set[int]:
    return {part.n for node in _nodes(runs) for part in t.walk(node) if isinstance(part, t.Int)}


def _nodes(runs: Sequence[Run]) -> list[t.Node]:
    return [run for run in runs if not isinstance(run, str)]


def _other_sign(runs: Sequence[Run], model: Modelled) -> str:
    """Return how a printed amount stands in the model with another unit, or ``""``."""
    amounts = (t.Quantity, t.Money)
    shown = [part for node in _nodes(runs) for part in t.walk(node) if isinstance(part, amounts)]
    for part in model.parts():
        if isinstance(part, amounts) and part not in shown and part.amount != t.Int(1):
            for number in shown:
                if number.amount == part.amount:
                    return f"The prompt prints {shown_line(number)}, and the model has {shown_line(part)}."
    return ""


def _factors(product: t.Product) -> tuple[t.Node, ...]:
    return (product.first, *(factor for _, factor in product.rest))
