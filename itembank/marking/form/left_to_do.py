"""What is left to do in an answer of the right value: a division, a power, pounds and pence."""

from __future__ import annotations

from itembank.items.forms.form_rules import form_fault
from itembank.items.forms.number_forms import NOT_WHOLE, whole_parts
from itembank.items.forms.value_forms import value
from itembank.marking.form.policy import Policy
from itembank.marking.worth.worth import unit_of
from itembank.notation import tree as t
from itembank.notation.value import exact

NOT_WORKED_OUT = "it is not worked out"

NOT_DIVIDED = "the division is not worked out"

NOT_A_FRACTION = "a division is not written as a fraction"

STILL_ADDED = "the whole number and the fraction are still added"

ONE_UNIT = "the parts of the ratio have a unit"

UNITS_DIFFER = "the parts of the ratio have different units"


def unfinished(how: Policy, given: t.Node, key: t.Node) -> str:
    """Return what is left to do in an answer, whatever its form: a division, a power, pence.

    A fraction whose denominator goes into its numerator is a division that was not done;
    7/2 is a number as it stands.

    >>> from itembank.notation.parse import parse
    >>> how = Policy(("value",))
    >>> [unfinished(how, parse(x), parse(key)) for x, key in (("27/3", "9"), ("7/2", "3.5"))]
    ['the division is not worked out', '']
    >>> unfinished(how, parse("£45/10"), parse("£4.50"))
    'it is not given in pounds and pence'
    >>> unfinished(Policy(("value",), powers=True), parse("3 × 3 × 3"), parse("3^3"))
    'a factor is repeated'
    """
    if isinstance(given, t.Ratio) and unit_of(given.parts[0]):
        return UNITS_DIFFER if len({unit_of(part) for part in given.parts}) > 1 else ONE_UNIT
    if fault := _other_form(given, key):
        return fault
    leaves = _leaves(given)
    for leaf in leaves:
        # Each value by itself: in 12, 27/3 one part is left to do.
        fault = _undivided(leaf, _holds_fraction(key)) or _unjoined(leaf, key)
        if fault:
            return fault
        if (
            how.places
            and not _holds_fraction(key)
            and any(
                isinstance(p, t.Money) and isinstance(p.amount, t.Frac | t.Mixed)
                for p in t.walk(leaf)
            )
        ):
            return "it is not given in pounds and pence"
        match leaf:
            case t.Frac(t.Int() | t.Dec(), t.Int() | t.Dec()) if whole_parts(leaf) == NOT_WHOLE:
                return NOT_WHOLE
    # A key that is a power or a product itself leaves something written as an operation.
    if not any(map(t.is_operation, t.walk(key))) and any(
        value(leaf) == NOT_WORKED_OUT for leaf in leaves if not t.symbols(leaf)
    ):
        return NOT_WORKED_OUT
    # Only where the words ask for it, and the key has one: 2 × 3 in index form is 2 × 3.
    if how.powers and any(isinstance(part, t.Power) for part in t.walk(key)):
        return _power_fault(given)
    return ""


def _other_form(given: t.Node, key: t.Node) -> str:
    """Return how the result beside a line's name is not factorised, or expanded, as the key's is.

    A worked solution says what was to be done: of 2t + 6 = 2(t + 3) the one is no answer to a
    question that asks for the other.
    """
    match given, key:
        case t.Listing((t.Label(), found)), t.Listing((t.Label(), wanted)):
            if t.symbols(wanted) and not isinstance(wanted, t.Relation | t.Ratio):
                fits = [form for form in ("factorised", "expanded") if not form_fault(form, wanted)]
                return form_fault(fits[0], found) if len(fits) == 1 else ""
    return ""


def _undivided(leaf: t.Node, as_fraction: bool = False) -> str:
    """Return what is left of a division, in a single value or a coefficient.

    Where the key is a fraction, a division that leaves a remainder is to be written as one.
    """
    match leaf:
        case t.Neg(of) | t.Bracket(of) | t.Percent(of) | t.Quantity(of, _) | t.Money(of, _):
            return _undivided(of, as_fraction)
        case t.Juxt(factors):
            return next((fault for fault in map(_undivided, factors) if fault), "")
        case t.Frac(t.Int(top), t.Int(bottom)) if bottom and top % bottom == 0:
            return "the denominator is 1" if bottom == 1 else NOT_DIVIDED
        case t.Product(first, rest) if not t.symbols(leaf) and all(op == "÷" for op, _ in rest):
            simple = all(isinstance(part, t.Int | t.Dec) for part in (first, *(f for _, f in rest)))
            if simple and as_fraction and len(rest) == 1 and exact(leaf).denominator > 1:
                return NOT_A_FRACTION
            return NOT_DIVIDED if simple else ""
    return ""


def _unjoined(leaf: t.Node, key: t.Node) -> str:
    """Return that 1 + 3/11 stands for the mixed number of the key, or an empty string."""
    match leaf:
        case t.Sum(t.Int(), (("+", t.Frac(t.Int(top), t.Int(bottom))),)) if top < bottom:
            return STILL_ADDED if any(isinstance(part, t.Mixed) for part in t.walk(key)) else ""
    return ""


def _leaves(node: t.Node) -> list[t.Node]:
    """Return the single values an answer is made of."""
    match node:
        case t.Relation(first, rest):
            return [leaf for part in (first, *(side for _, side in rest)) for leaf in _leaves(part)]
        case t.Listing(parts) | t.Either(parts) | t.Ratio(parts):
            return [leaf for part in parts for leaf in _leaves(part)]
        case t.Label():
            return []
    return [node]


def _holds_fraction(key: t.Node) -> bool:
    return any(isinstance(part, t.Frac | t.Mixed) for part in t.walk(key))


def _power_fault(given: t.Node) -> str:
    if isinstance(given, t.Relation) and len(given.rest) == 1:
        given = given.rest[0][1]
    for part in t.walk(given):
        match part:
            case t.Product(first, rest) if all(op == "×" for op, _ in rest):
                factors = [first, *(factor for _, factor in rest)]
            case t.Juxt(factors_):
                factors = list(factors_)
            case _:
                continue
        bases = [factor.base if isinstance(factor, t.Power) else factor for factor in factors]
        if any(bases.count(base) > 1 for base in bases):
            return "a factor is repeated"
    return "" if any(isinstance(part, t.Power) for part in t.walk(given)) else "it is not a power"
