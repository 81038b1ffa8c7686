"""Whether a key is the kind of thing that a question asks for: a count, money, a length, a part."""

from __future__ import annotations

import re

from itembank.notation import tree as t
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late
from itembank.wording.kinds.kind import either
from itembank.wording.sentences.phrases import unit_names

_MONEY = late(
    r"\b(?:how much|what)\b.*\b(?:cost|costs|price|pay|pays|paid|spend|spends|spent|earn|earns|earned|"
    r"charge|charged|money|profit|fare|wage|save|saves|saved|owe|owes)\b|\bwhat price\b|\bthe (?:cost|price) of\b",
    re.I,
)
_DIMENSIONS: tuple[tuple[re.Pattern[str], frozenset[str]], ...] = tuple(
    (late(pattern, re.I), frozenset(kinds))
    for pattern, kinds in (
        (
            r"\bhow (?:far|wide|tall|high|deep)\b|\bwhat (?:length|width|height|distance|depth)\b|\bperimeter\b",
            ("length",),
        ),
        (
            r"\bhow heavy\b|\bwhat (?:mass|weight)\b|\bhow much (?:does|do|did) .* weigh\b",
            ("mass",),
        ),
        (r"\bhow long\b", ("length", "time")),
        (
            r"\b(?:what|work out|find|calculate)(?: is)? (?:the|its|their) (?:\w+ )?area\b",
            ("area",),
        ),
        (
            r"\b(?:what|work out|find|calculate)(?: is)? (?:the|its|their) (?:\w+ )?volume\b",
            ("volume", "capacity"),
        ),
        (r"\bspeed\b", ("speed",)),
    )
)
_HOW_MANY = late(r"\bhow many (?:more |fewer |full |whole |other )?([a-z'-]+(?: [a-z'-]+)?)", re.I)
_COUNTED = frozenset(("pounds", "pence", "degrees", "times", "percent", "units"))


_AMOUNT_OF_CHANGE = late(
    r"\b(?:the|its|her|his|their) (?:increase|decrease|profit|loss|rise|fall|discount|reduction|saving)\b"
    r"(?!.*\b(?:percent|per cent))",
    re.I,
)


def kind_fault(key: t.Node, words: str, prints_money: bool) -> str:
    """Return how the key is another kind of thing than the question asks for, or ``""``.

    >>> kind_fault(t.Int(8), "For what price do the two halls cost the same", True)
    'The question asks for a sum of money, and the key is none.'
    """
    parts = _parts(key)
    if re.search(r"\b(?:what|which) fraction\b|\bas a fraction\b", words, re.I):
        if not all(_is_fraction(part) for part in parts):
            return "The question asks for a fraction, and the key is none."
        return ""
    if re.search(r"\b(?:what|which|as a) percentage\b", words, re.I):
        return (
            "" if all(isinstance(p, t.Percent) for p in parts) else "The key is not a percentage."
        )
    if any(isinstance(part, t.Percent) for part in parts) and _AMOUNT_OF_CHANGE.search(words):
        return "The question asks for an amount, and the key is a percentage."
    if any(isinstance(part, t.Label | t.Ratio) for part in parts):
        return ""
    many = _HOW_MANY.search(words)
    if many and not _is_unit(many[1]):
        if any(isinstance(part, t.Money | t.Quantity | t.Percent) for part in parts):
            return f"The question asks how many {many[1]}, and the key is no plain number."
        return ""
    if many:
        return ""
    said_unit = re.search(r"\bin (?:pounds|pence|euros|dollars)\b", words, re.I)
    money_asked = prints_money and _MONEY.search(words) and not said_unit
    if money_asked and not all(isinstance(part, t.Money) for part in parts):
        return "The question asks for a sum of money, and the key is none."
    for pattern, wanted in _DIMENSIONS:
        if pattern.search(words):
            found = {
                UNITS[q.unit].dimension
                for part in parts
                for q in t.walk(part)
                if isinstance(q, t.Quantity)
            }
            if found and not found <= wanted:
                return f"The question asks for {either(sorted(wanted))}, and the key is none."
            if any(isinstance(part, t.Money) for part in parts):
                return f"The question asks for {either(sorted(wanted))}, and the key is money."
    return ""


def _parts(key: t.Node) -> list[t.Node]:
    match key:
        case t.Listing(parts) | t.Either(parts):
            return [inner for part in parts for inner in _parts(part)]
        case t.Relation(_, ((_, right),)):
            return _parts(right)
        case t.Neg(of) | t.Bracket(of):
            return _parts(of)
    return [key]


def _is_fraction(node: t.Node) -> bool:
    return isinstance(node, t.Frac | t.Int) or type(node).__name__ == "Mixed"


def _is_unit(words: str) -> bool:
    names = unit_names()
    return any(word.casefold() in names or word.lower() in _COUNTED for word in words.split())
