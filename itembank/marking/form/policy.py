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

from dataclasses import replace
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from itembank.data_class import dataclass
from itembank.files.faults import join_words, nearest
from itembank.items.forms.form_rules import FORMS
from itembank.items.item import Item
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.notation.enclosing import bounds
from itembank.notation.units import CURRENCY, UNITS
from itembank.text.in_words import counted
from itembank.text.late_pattern import late
from itembank.wording.tasks.answers.answer_phrases import (
    rounding,
    says_bounds,
    says_each_rounded,
    says_simplest,
)
from itembank.wording.tasks.answers.written_how import (
    asks_powers,
    asks_units,
    names_base,
    names_unit,
)

ACCEPT: dict[str, str] = {
    "any-form": "any form of the right value",
    "any-order": "the parts of a list in any order",
    "any-places": "money and rounded numbers with more or fewer places after the point",
    "lowest-terms-needed": "fractions in their lowest terms only, though the question is silent",
    "no-unit": "the number alone, though the question asks for a unit",
    "unit-needed": "an answer with its unit only",
}

_WITHIN = late(r"within (\d{1,9}(?:\.\d{1,9})?|\d{1,6}/[1-9]\d{0,5})")
CONVENTIONS = frozenset(
    {"number", "solution", "inequality", "roots", "amount", "amounts", "line-and-result", "point"}
)
"""Forms that say how the tool writes an answer more than what was asked for."""

PLACES_KNOWN = 30
"""Decimal places to which a root or π is known here: more than any calculator shows."""
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
    unrounded : the number before it is rounded, where it is known: exactly, or of a root or π to
        :data:`PLACES_KNOWN` decimal places.
    within : how far from the key an answer may be, in the key's own unit.
    ordered : whether the order of a list matters.
    powers : whether the question asks for powers with an index, as *in index form* does.
    base : whether the question names the base of the power that it asks for.
    """

    forms: tuple[str, ...]
    lowest_terms: bool = True
    unit: Literal["may be missing", "needed"] = "may be missing"
    named_unit: str = ""
    places: bool = True
    rounding: Rounding | None = None
    unrounded: Fraction | None = None
    within: Fraction = Fraction(0)
    ordered: bool = True
    powers: bool = False
    base: bool = False


def rounded_to(rounding: Rounding) -> str:
    """Return the words for what a question rounds to.

    >>> rounded_to(("places", 1)), rounded_to(("nearest", 100))
    ('1 decimal place', 'the nearest 100')
    """
    detail, amount = rounding
    return {
        "places": counted(amount, "decimal place"),
        "figures": counted(amount, "significant figure"),
        "nearest": f"the nearest {'whole number' if amount == 1 else amount}",
    }[detail]


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

    >>> from itembank.items.topics.registry import find_item
    >>> policy(find_item("ratio.scale/core/3")).named_unit
    'cm'
    """
    words = "".join(run for run in item.prompt if isinstance(run, str))
    found = _from_words(words, item.form, item.accept, _unit_of(item.key))
    marking = marking_of(item.ask)
    if marking.any_order(item.ask):
        found = replace(found, ordered=False)
    if (rounded := marking.rounded(item.ask)) is None:
        return found
    target, to = rounded
    return replace(found, rounding=to, unrounded=number_before(target, item.key))


def number_before(target: t.Node, key: t.Node) -> Fraction | None:
    """Return the number that is rounded, in the key's unit; None where it has no value here.

    >>> from itembank.notation.parse import parse
    >>> float(number_before(parse("25π cm^2"), parse("78.5 cm^2")))
    78.53981633974483
    """
    unit = _unit_of(key)
    facts = UNITS.get(unit) or CURRENCY.get(unit)
    percent = any(isinstance(part, t.Percent) for part in t.walk(key))
    try:
        # Ten places more than are kept, for what each step in between may lose.
        low, high = bounds(target, PLACES_KNOWN + 10)
    except t.NotationError:
        return None
    # In the key's unit, since that is the one whose places are counted.
    size = facts.size if facts else Fraction(1, 100) if percent else Fraction(1)
    if low == high:
        return low / size
    scale = 10**PLACES_KNOWN
    close = round(low / size * scale), round(high / size * scale)
    return Fraction(close[0], scale) if close[1] - close[0] <= 1 else None


def _unit_of(key: t.Node) -> str:
    for part in t.walk(key):
        if isinstance(part, t.Quantity):
            return part.unit
        if isinstance(part, t.Money):
            return part.sign
    return ""


@lru_cache(maxsize=4_096)
def _from_words(words: str, form: str, accept: tuple[str, ...], unit: str) -> Policy:
    forms = (form, *(word for word in accept if word in FORMS))
    needed = bool(unit and asks_units(words))
    if "no-unit" in accept:
        needed = False
    # After no-unit, so that of two words that clash the stricter holds.
    if "unit-needed" in accept:
        needed = True
    within = next((_WITHIN.fullmatch(word) for word in accept if word.startswith("within")), None)
    return Policy(
        forms=() if "any-form" in accept else forms,
        lowest_terms=form not in CONVENTIONS
        or "lowest-terms-needed" in accept
        or says_simplest(words),
        unit="needed" if needed else "may be missing",
        named_unit=unit if names_unit(words, unit) else "",
        places="any-places" not in accept,
        rounding=(None if says_bounds(words) or says_each_rounded(words) else rounding(words)),
        within=Fraction(within[1]) if within else Fraction(0),
        ordered="any-order" not in accept,
        powers=asks_powers(words),
        base=names_base(words),
    )
