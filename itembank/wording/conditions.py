"""Words that set a condition no model shows, numbers everybody knows, and what shapes ask.

A *median*, a *probability* or a *lower bound* is no sum of a model: a person decides. A constant
that a model brings in is one the words name, or one that belongs to what they speak of: 60 to
minutes, 180 to angles, 100 to per cent (common knowledge).
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation.tree import (
    Bracket,
    Frac,
    Juxt,
    Money,
    Node,
    Percent,
    Power,
    Product,
    Quantity,
    Root,
    Sum,
    Sym,
    symbols,
    walk,
)
from itembank.wording.modelled import Modelled
from itembank.wording.numbers import numbers_said
from itembank.wording.prompt import SLOT, index_of, slotted

_PERSON = re.compile(
    r"\b(?:median|mode|modal|probab\w*|likely|chance|bounds?|error interval|at random|even number|odd number|"
    r"compound(?:ed)? (?:monthly|quarterly|daily)|twice daily|return journey|there and back|each way|"
    r"deposit|instal?ments?|equal payments?)\b",
    re.I,
)
_COMMON = (
    ((0, 1), r".*"),
    ((100,), r"%|per ?cent|percent|reduc|increas|decreas|sale|off|tax|vat|interest|profit|loss|cent|metre|gram|litre|pence|pound|£|€"),
    ((60, 3600), r"hour|minute|second|speed|time|long|km/h|m/s|h\b"),
    ((24, 7, 48, 168), r"day|week|hour"),
    ((12, 52, 365, 366, 4), r"year|month|week|annual|monthly"),
    ((30, 31, 28), r"month|april|may|june|july|march|september|november|january|december"),
    ((180, 360, 90, 270), r"angle|triangle|degree|turn|line|quadrilateral|polygon|circle|bearing|°|rectang|square"),
    ((2, 3, 4, 5, 6, 8, 10), r"side|rectang|square|triang|perimeter|area|area|equilateral|isosceles|quadrilateral|pentagon|hexagon|octagon|decagon|cube|cuboid|polygon|angle|edge|face|all the way round|length|wide|trapezium"),
    ((2, 3, 4, 5, 6), r"consecutive|average|mean|numbers|next|both|each|twin|sides|edges|bags?|offer|free"),
    ((10, 1000, 10000, 1000000), r"metre|gram|litre|tonne|\bm\b|\bcm\b|\bkm\b|\bkg\b|\bg\b|\bml\b|\bl\b|million|map|scale|plan"),
    ((14,), r"fortnight"), ((13, 20), r"dozen|score"), ((12,), r"dozen|inch|foot|feet|year|month"),
    ((16, 14, 8, 3, 5280, 1760), r"pound|stone|ounce|pint|gallon|yard|mile|foot|feet"),
)  # fmt: skip


def condition_fault(runs: Sequence[Run], constants: Sequence[int], letters: bool) -> str:
    """Return the word that sets a condition, or the constant that comes from nowhere, or ``""``."""
    words = " ".join(run if isinstance(run, str) else " " for run in runs)
    if found := _PERSON.search(words):
        return f"‘{found[0]}’ is not worked out here: a person has to look."
    shown = words + " " + _signs(runs)
    said = {number.value for number in numbers_said(words)}
    said |= {1 / number.value for number in numbers_said(words) if number.value}
    terms = re.search(r"\bterm|sequence|row|position|pattern\b", words, re.I)
    for constant in constants:
        known = any(
            constant in numbers and re.search(pattern, shown, re.I) for numbers, pattern in _COMMON
        )
        if not known and constant not in said and not terms and not letters:
            return (
                f"The model uses {constant}, which the words do not name: say it in the question, as "
                "in ‘there are 52 weeks in a year’."
            )
    return ""


def _signs(runs: Sequence[Run]) -> str:
    found = set()
    for run in runs:
        if not isinstance(run, str):
            for part in walk(run):
                match part:
                    case Percent():
                        found.add("%")
                    case Money(_, sign):
                        found.add(sign)
                    case Quantity(_, unit):
                        found.add(unit)
    return " ".join(sorted(found))


def shape_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return what an area, a perimeter or interest needs that the model does not do, or ``""``."""
    text = " ".join(run if isinstance(run, str) else "…" for run in runs)
    if re.search(r"\barea\b", words, re.I) and not model.inverse and not _multiplies(model):
        return "The question asks for an area, and the model multiplies no two lengths."
    if re.search(r"\bperimeter\b", words, re.I) and not model.inverse and not _adds(model):
        return "The question asks for a perimeter, and the model adds no sides."
    halves = re.search(r"\barea\b", words, re.I) and re.search(r"\btriang|\btrapezi", text, re.I)
    if halves and not model.inverse and not model.divides():
        return (
            "The area of a triangle or a trapezium is half a product, and the model halves nothing."
        )
    if re.search(r"\bsimple interest\b", text, re.I) and model.has(Power):
        return "The words say simple interest, and the model has a power."
    if (
        re.search(r"\bhow much interest\b", words, re.I)
        and model.has(Power)
        and not model.subtracts()
    ):
        return "The question asks for the interest alone, and the model finds all of it."
    return _from_value(runs, model, words) or _another_letter(runs, model, words)


def _multiplies(model: Modelled) -> bool:
    return model.has(Product, Power, Juxt, Root)


def _adds(model: Modelled) -> bool:
    return model.has(Sum) or model.has(Product) or model.has(Juxt)


_FROM_TO = re.compile(rf"\bfrom ({SLOT}) to ({SLOT})")
_CHANGE = re.compile(
    r"\bpercentage (?:increase|decrease|profit|loss|change|rise|fall|reduction|gain)\b", re.I
)


def _from_value(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return whether a percentage change is divided by what the value changed from."""
    said = slotted(runs)
    match = _FROM_TO.search(said.text)
    if not (match and _CHANGE.search(words)) or model.inverse:
        return ""
    before = said.nodes[index_of(match[1])]
    for part in model.parts():
        match part:
            case Frac(_, den) if _is(den, before):
                return ""
            case Product(_, rest) if any(op == "÷" and _is(node, before) for op, node in rest):
                return ""
    return "A percentage change is of what was there before, and the model does not divide by that."


def _is(node: Node, other: Node) -> bool:
    while isinstance(node, Bracket):
        node = node.of
    return node == other or node == getattr(other, "amount", None)


def _another_letter(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how the question names what another letter of the model begins, or ``""``.

    With letters *a* and *s* for Ann and Sam, *How old is Sam?* is no question about *a*.
    """
    target = model.target
    if not isinstance(target, Sym) or not model.inverse:
        return ""
    letters = {name for part in model.parts() for name in symbols(part)} - {"x", "n", "π", "□"}
    if target.name not in letters or len(letters) < 2:
        return ""
    story = " ".join(run for run in runs if isinstance(run, str)).replace(words, " ")
    nouns = {w.lower() for w in re.findall(r"[A-Za-z'-]{3,}", words)} & {
        w.lower() for w in re.findall(r"[A-Za-z'-]{3,}", story)
    }
    nouns -= _SMALL
    own = [word for word in nouns if word[0] == target.name.lower()]
    others = [
        word for word in nouns if word[0] in {name.lower() for name in letters - {target.name}}
    ]
    if others and not own:
        return f"The question names {others[0]}, and the model finds {target.name}."
    return ""


_SMALL = frozenset(
    ["how", "many", "much", "what", "which", "is", "are", "was", "were", "the", "a", "an", "of", "in", "on", "at", "to", "for", "and", "or", "does", "do", "did", "has", "have", "had", "there", "they", "it", "each", "at", "all", "he", "she", "them", "their", "his", "her", "its", "be", "been", "long", "cost", "costs", "altogether", "than", "more", "less", "first", "second", "old", "years", "year", "work", "out", "find", "calculate"]
)  # fmt: skip
