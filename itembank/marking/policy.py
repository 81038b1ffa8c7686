"""How strictly an item is marked: the trade's defaults, and the words an item may change them by.

The defaults are common practice in schools (no source):

* the form the item names is required; but where its form is only a convention (a solution, an
  amount, a number), lowest terms are required only when the question says so;
* a unit may be left out, unless the question asks for units; a unit that the question names
  (*in centimetres*) is the one to give;
* pounds and pence have two places after the point;
* an answer that has not been rounded counts as the right value only when the question rounds.

An item's `accept` holds words that change them. :data:`ACCEPT` says what each means; besides
them stand ``within N`` (any answer no further than N from the key is right, N in the key's own
unit) and the name of any other form (an answer in that form is right as well).

>>> accept_fault("no-unit"), accept_fault("within 0.1"), accept_fault("decimal")
('', '', '')
>>> accept_fault("nounit")
'‘nounit’ is not a way to accept answers. Did you mean no-unit?'
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from itembank.faults import join_words, nearest
from itembank.items import item as items
from itembank.items.forms import FORMS
from itembank.items.item import Item
from itembank.notation.tree import Money, Node, Quantity, walk
from itembank.notation.units import CURRENCY, UNITS

ACCEPT: dict[str, str] = {
    "any-form": "any form of the right value",
    "any-order": "the parts of a list in any order",
    "any-places": "money and rounded numbers with more or fewer places after the point",
    "lowest-terms-needed": "fractions in their lowest terms only, though the question is silent",
    "no-unit": "the number alone, though the question asks for a unit",
    "unit-needed": "an answer with its unit only",
}

_WITHIN = re.compile(r"within (\d{1,9}(?:\.\d{1,9})?|\d{1,6}/[1-9]\d{0,5})")
_LOWEST = re.compile(r"simplest|lowest terms|\bsimplif|\bcancel|\breduced?\b", re.I)
_UNITS_ASKED = re.compile(
    r"\b(?:with|includ\w*|stat\w*|giv\w*|writ\w*) (?:\w+ ){0,4}units?\b(?! (?:price|cost|form))",
    re.I,
)
_WITHOUT_UNITS = re.compile(r"\bwithout (?:the |its |any )?units?\b|\bno units?\b", re.I)
_WORDS = ("one", "two", "three", "four", "five", "six")
_ROUNDS = re.compile(
    r"\b(?P<n>[1-9]|" + "|".join(_WORDS) + r") (?:(?P<dp>decimal places?|d\.?p\b)|"
    r"(?:significant figures?|s\.?f\b))",
    re.I,
)
CONVENTIONS = frozenset({"number", "solution", "inequality", "roots", "amount", "amounts"})
"""Forms that say how the tool writes an answer more than what was asked for."""

Rounding = tuple[Literal["places", "figures", "nearest"], int]


@dataclass(frozen=True, slots=True)
class Policy:
    """How an item's answers are marked.

    Attributes
    ----------
    forms : the forms that are right; none means any.
    lowest_terms : whether a form that is a convention requires fractions in lowest terms.
    unit : what to do about a unit: it may be missing, or it is needed.
    named_unit : the unit or currency sign the question names, or an empty string.
    places : whether money and rounded numbers need the places asked for.
    rounding : how the question rounds, or None.
    within : how far from the key an answer may be, in the key's own unit.
    ordered : whether the order of a list matters.
    """

    forms: tuple[str, ...]
    lowest_terms: bool = True
    unit: Literal["may be missing", "needed"] = "may be missing"
    named_unit: str = ""
    places: bool = True
    rounding: Rounding | None = None
    within: Fraction = Fraction(0)
    ordered: bool = True


def accept_fault(word: str) -> str:
    """Return what is wrong with a word of an item's `accept`, or an empty string."""
    if word in ACCEPT or word in FORMS:
        return ""
    if word.startswith("within"):
        return "" if _WITHIN.fullmatch(word) else f"‘{word}’ needs a number, as in ‘within 0.1’."
    like = nearest(word, [*ACCEPT, *FORMS], most=1)
    best = f"Did you mean {like[0]}?" if like else f"There are {join_words(sorted(ACCEPT))}."
    return f"‘{word}’ is not a way to accept answers. {best}"


def policy(item: Item) -> Policy:
    """Return how `item` is marked: what its words ask for, changed by what it accepts.

    >>> from itembank.items.registry import find_item
    >>> policy(find_item("ratio.scale/core/3")).named_unit
    'cm'
    """
    words = "".join(run for run in item.prompt if isinstance(run, str))
    found = _from_words(words, item.form, item.accept, _unit_of(item.key))
    if isinstance(item.ask, items.Round):
        return _changed(found, rounding=(item.ask.detail, item.ask.amount))
    return found


def _changed(found: Policy, rounding: Rounding) -> Policy:
    from dataclasses import replace

    return replace(found, rounding=rounding)


def _unit_of(key: Node) -> str:
    for part in walk(key):
        if isinstance(part, Quantity):
            return part.unit
        if isinstance(part, Money):
            return part.sign
    return ""


@lru_cache(maxsize=4_096)
def _from_words(words: str, form: str, accept: tuple[str, ...], unit: str) -> Policy:
    forms = (form, *(word for word in accept if word in FORMS))
    needed = bool(unit and _UNITS_ASKED.search(words) and not _WITHOUT_UNITS.search(words))
    if "no-unit" in accept:
        needed = False
    if "unit-needed" in accept:
        needed = True
    rounds = _ROUNDS.search(words)
    rounding: Rounding | None = None
    if rounds:
        count = rounds["n"].lower()
        amount = int(count) if count.isdigit() else _WORDS.index(count) + 1
        rounding = ("places" if rounds["dp"] else "figures", amount)
    within = next((_WITHIN.fullmatch(word) for word in accept if word.startswith("within")), None)
    return Policy(
        forms=() if "any-form" in accept else forms,
        lowest_terms=form not in CONVENTIONS
        or "lowest-terms-needed" in accept
        or bool(_LOWEST.search(words)),
        unit="needed" if needed else "may be missing",
        named_unit=unit if _names(words, unit) else "",
        places="any-places" not in accept,
        rounding=rounding,
        within=Fraction(within[1]) if within else Fraction(0),
        ordered="any-order" not in accept,
    )


def _names(words: str, unit: str) -> bool:
    """Tell whether a question asks for its answer in this unit, as *in centimetres* does."""
    known = UNITS.get(unit) or CURRENCY.get(unit)
    if known is None:
        return False
    names = "|".join(re.escape(name) for name in (unit, known.one, known.many))
    return bool(re.search(rf"\b(?i:in|to|into|how many) (?:{names})(?!\w)", words))
