"""What is missing from an answer that has the right value, by the policy of its item."""

from __future__ import annotations

from itembank.items.forms.form_rules import form_fault
from itembank.items.forms.letter_forms import expression
from itembank.items.forms.value_forms import value
from itembank.items.item import Item
from itembank.marking.form.completed import completed
from itembank.marking.form.form_told import TOLD_BY_FORM, right_value
from itembank.marking.form.left_to_do import NOT_WORKED_OUT, unfinished
from itembank.marking.form.policy import Policy, rounded_to
from itembank.marking.form.rounded_answer import NOT_ROUNDED, rounding_fault
from itembank.marking.worth.typed_maths import alike
from itembank.marking.worth.worth import unit_of
from itembank.notation import tree as t
from itembank.notation.units import UNITS, unit_known

UNIT_MISSING = "the unit is missing"


def form_of(item: Item, how: Policy, typed: t.Node, given: t.Node) -> str:
    """Return what keeps an answer of the right value from being right, or an empty string.

    `typed` is the answer as read, `given` the same tidied. Of one answer that is given in two ways,
    6 or 6 cm, each is held to the form.
    """
    if isinstance(given, t.Either) and not isinstance(item.key, t.Either):
        read = typed.parts if isinstance(typed, t.Either) else given.parts
        pairs = zip(
            read if len(read) == len(given.parts) else given.parts, given.parts, strict=True
        )
        return next((fault for pair in pairs if (fault := form_of(item, how, *pair))), "")
    fault = _unit_fault(how, given, item.key) or rounding_fault(how, given, item.key)
    if fault or not how.forms:
        return fault
    shaped = completed(given, item.key)
    if not alike(shaped, item.key):
        fault = unfinished(how, shaped, item.key)
        if fault:
            return fault
    faults = [_fault(form, how, candidate) for form in how.forms for candidate in (shaped, typed)]
    if how.base and _other_base(shaped, item.key):
        return "its base is not the one that is asked for"
    if "" in faults:
        return ""
    if how.places and _short_money(shaped):
        return "pounds and pence are not given to two places"
    # What is written as the key is, but for a unit, order or a spare zero, is right.
    if alike(shaped, item.key):
        return ""
    if faults[0] == UNIT_MISSING and any(isinstance(part, t.Quantity) for part in t.walk(given)):
        return NOT_WORKED_OUT  # 3 × 10^4 cm
    return faults[0]


def _other_base(node: t.Node, key: t.Node) -> bool:
    """Tell whether an answer is a power of another number than the key: 4^4 for 2^8."""
    return isinstance(node, t.Power) and isinstance(key, t.Power) and node.base != key.base


def _fault(form: str, how: Policy, node: t.Node) -> str:
    fault = form_fault(form, node)
    if fault and not how.lowest_terms and not isinstance(node, t.Ratio):
        return _parts_fault(node, how)
    return fault


def _parts_fault(node: t.Node, how: Policy) -> str:
    """Return what keeps the numbers of an answer from being worked out, in whatever form."""
    match node:
        case t.Relation(first, rest):
            parts = [first, *(side for _, side in rest)]
        case t.Listing(parts_) | t.Either(parts_):
            parts = list(parts_)
        case t.Money() if how.places and _short_money(node):
            return "pounds and pence are not given to two places"
        case t.Sym() | t.Label():
            return ""
        case t.Ratio():
            return form_fault("ratio", node)
        case _:
            return value(node) if not t.symbols(node) else expression(node)
    return next((fault for fault in (_parts_fault(part, how) for part in parts) if fault), "")


def _short_money(node: t.Node) -> bool:
    if isinstance(node, t.Listing):
        return any(map(_short_money, node.parts))
    amount = node.amount if isinstance(node, t.Money) and node.sign != "p" else None
    return isinstance(amount, t.Dec) and len(amount.places) != 2


def _unit_fault(how: Policy, given: t.Node, key: t.Node) -> str:
    match key:
        case t.Listing(parts) if isinstance(given, t.Listing) and len(given.parts) == len(parts):
            pairs = zip(given.parts, parts, strict=True)
            return next((f for f in (_unit_fault(how, a, b) for a, b in pairs) if f), "")
        case t.Relation(_, ((_, right),)) if isinstance(given, t.Relation) and len(given.rest) == 1:
            return _unit_fault(how, given.rest[0][1], right)
    if unit_of(key) is None:
        return ""
    if unit_of(given) is None:
        return UNIT_MISSING if how.unit == "needed" else ""
    if how.named_unit and isinstance(key, t.MixedUnits):
        units = tuple(part.unit for part in key.parts)
        if isinstance(given, t.MixedUnits) and tuple(part.unit for part in given.parts) == units:
            return ""
        return f"it is not in {' and '.join(UNITS[unit].many for unit in units)}"
    # Only where the question names the unit: else 400 cm is as right as 4 m.
    if how.named_unit and unit_of(given) != unit_of(key):
        known = unit_known(how.named_unit)
        return f"it is not in {known.many}"
    return ""


def asked_for(item: Item, how: Policy, fault: str) -> str:
    """Return a sentence that says what to do to an answer of the right value.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.marking.form.policy import policy
    >>> item = find_item("ratio.simplest-form/core/1")
    >>> asked_for(item, policy(item), "its parts are not all whole numbers")
    'Right value: now make all its parts whole numbers, without units.'
    """
    words = ("place", "figure", "round")
    if how.rounding is not None and (fault in TOLD_BY_FORM or any(w in fault for w in words)):
        detail, what = how.rounding[0], rounded_to(how.rounding)
        if fault == NOT_ROUNDED:
            if how.unrounded is None:
                return f"That rounds to the answer: give it to {what}."
            return f"Right so far: now round it to {what}."
        if fault in TOLD_BY_FORM and detail != "nearest":
            return f"Right value: give it as a decimal, to {what}."
        return f"Right value: give it to {what}."
    if fault == UNIT_MISSING:
        return f"The number is right: give the unit as well{_in_unit(item.key)}."
    form = item.form
    if form == "simplest":
        form = {t.Mixed: "mixed", t.Frac: "lowest-terms", t.Int: "integer"}.get(
            type(item.key), form
        )
    return right_value(fault, form)


def _in_unit(key: t.Node) -> str:
    """Return the words for the one unit of a key, as *, in kilograms*."""
    found = {
        part.unit if isinstance(part, t.Quantity) else part.sign
        for part in t.walk(key)
        if isinstance(part, t.Quantity | t.Money)
    }
    if len(found) != 1:
        return ""
    (unit,) = found
    return f", in {unit_known(unit).many}"
