"""What is missing from an answer that has the right value, by the policy of its item."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.forms.form_rules import form_fault
from itembank.items.forms.letter_forms import expression
from itembank.items.forms.number_forms import NOT_WHOLE, unsigned, whole_parts
from itembank.items.forms.value_forms import value
from itembank.items.item import Item
from itembank.marking.form.form_told import TOLD_BY_FORM, right_value
from itembank.marking.form.policy import Policy, rounded_to
from itembank.marking.worth.same import turned
from itembank.marking.worth.typed_maths import alike
from itembank.marking.worth.worth import unit_of
from itembank.notation import tree as t
from itembank.notation.units import UNITS, unit_known
from itembank.notation.value import exact
from itembank.text.in_words import counted

UNIT_MISSING = "the unit is missing"
NOT_ROUNDED = "it is not rounded"
NOT_WORKED_OUT = "it is not worked out"
NOT_DIVIDED = "the division is not worked out"
NOT_A_FRACTION = "a division is not written as a fraction"
STILL_ADDED = "the whole number and the fraction are still added"
ONE_UNIT = "the parts of the ratio have a unit"
UNITS_DIFFER = "the parts of the ratio have different units"


def form_of(item: Item, how: Policy, typed: t.Node, given: t.Node) -> str:
    """Return what keeps an answer of the right value from being right, or an empty string.

    `typed` is the answer as read, `given` the same tidied.
    """
    fault = _unit_fault(how, given, item.key) or rounding_fault(how, given, item.key)
    if fault or not how.forms:
        return fault
    shaped = completed(given, item.key)
    if not alike(shaped, item.key):
        fault = unfinished(how, shaped, item.key)
        if fault:
            return fault
    faults = [_fault(form, how, candidate) for form in how.forms for candidate in (shaped, typed)]
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


def unfinished(how: Policy, given: t.Node, key: t.Node) -> str:
    """Return what is left to do in an answer, whatever its form: a division, a power, pence.

    A fraction whose denominator goes into its numerator is a division that was not done;
    7/2 is a number as it stands.

    >>> from itembank.notation.parse import parse
    >>> how = Policy(("value",))
    >>> [unfinished(how, parse(one), parse(key)) for one, key in (("27/3", "9"), ("7/2", "3.5"))]
    ['the division is not worked out', '']
    >>> unfinished(how, parse("£45/10"), parse("£4.50"))
    'it is not given in pounds and pence'
    >>> unfinished(Policy(("value",), powers=True), parse("3 × 3 × 3"), parse("3^3"))
    'a factor is repeated'
    """
    if isinstance(given, t.Ratio) and unit_of(given.parts[0]):
        return UNITS_DIFFER if len({unit_of(part) for part in given.parts}) > 1 else ONE_UNIT
    leaves = _leaves(given)
    for leaf in leaves:
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
    if not any(map(t.is_operation, t.walk(key))) and any(
        value(leaf) == NOT_WORKED_OUT for leaf in leaves if not t.symbols(leaf)
    ):
        return NOT_WORKED_OUT
    if how.powers and any(isinstance(part, t.Power) for part in t.walk(key)):
        return _power_fault(given)
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
        case t.Sym():
            return ""
        case _:
            return value(node) if not t.symbols(node) else expression(node)
    return next((fault for fault in (_parts_fault(part, how) for part in parts) if fault), "")


def _short_money(node: t.Node) -> bool:
    if isinstance(node, t.Listing):
        return any(map(_short_money, node.parts))
    amount = node.amount if isinstance(node, t.Money) and node.sign != "p" else None
    return isinstance(amount, t.Dec) and len(amount.places) != 2


def completed(given: t.Node, key: t.Node) -> t.Node:
    """Return an answer with what may be left out put in: the unit, the letter, the key's order.

    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> pairs = (("5", "4 kg"), ("5", "x = 5"), ("3 ≤ x", "x ≥ 3"), ("7, -4", "x = -4 or x = 7"))
    >>> [line(completed(parse(one), parse(other))) for one, other in pairs]
    ['5 kg', 'x = 5', 'x ≥ 3', 'x = 7 or x = -4']
    """
    match key:
        case t.Relation(t.Sym() as letter, ((op, right),)):
            return _solved(given, letter, op == "=", right)
        case t.Relation():
            if isinstance(given, t.Relation) and given.rest[0][0] != key.rest[0][0]:
                return turned(given)
            return given
        case t.Listing(parts):
            if isinstance(given, t.Relation):
                given = t.Listing((given.first, *(side for _, side in given.rest)))
            if isinstance(given, t.Listing) and len(given.parts) == len(parts):
                pairs = zip(given.parts, _in_order(given.parts, parts), strict=True)
                return t.Listing(tuple(completed(left, other) for left, other in pairs))
            return given
        case t.Either(parts):
            answers: tuple[t.Node, ...] = (given,)
            single = not isinstance(parts[0], t.Listing)
            if isinstance(given, t.Either) or (single and isinstance(given, t.Listing)):
                answers = given.parts
            flat = [completed(answer, parts[0]) for answer in answers]
            return t.Either(tuple(flat)) if len(flat) > 1 else flat[0]
        case t.Quantity(_, unit) if unit_of(given) is None and not isinstance(given, t.Relation):
            return (
                t.Neg(t.Quantity(given.of, unit))
                if isinstance(given, t.Neg)
                else t.Quantity(given, unit)
            )
        case t.Money(_, sign) if unit_of(given) is None and not isinstance(given, t.Relation):
            return (
                t.Neg(t.Money(given.of, sign)) if isinstance(given, t.Neg) else t.Money(given, sign)
            )
    if isinstance(given, t.Relation) and len(given.rest) == 1:
        # The value alone was asked for.
        left, value_ = given.first, given.rest[0][1]
        return completed(value_ if isinstance(left, t.Sym) else left, key)
    return given


def _solved(given: t.Node, letter: t.Sym, equation: bool, right: t.Node) -> t.Node:
    if isinstance(given, t.Relation):
        if given.first != letter and len(given.rest) == 1 and given.rest[0][1] == letter:
            given = turned(given)
        op, side = given.rest[0]
        return t.Relation(given.first, ((op, completed(side, right)), *given.rest[1:]))
    return t.Relation(letter, (("=", completed(given, right)),)) if equation else given


def _in_order(given: tuple[t.Node, ...], parts: tuple[t.Node, ...]) -> tuple[t.Node, ...]:
    """Return the key's parts in the order of the letters that were given."""
    by_letter = {part.first: part for part in parts if isinstance(part, t.Relation)}
    if len(by_letter) < len(parts):
        return parts
    named = [part.first for part in given if isinstance(part, t.Relation)]
    if len(named) == len(parts) and set(named) == set(by_letter):
        return tuple(by_letter[name] for name in named)
    return tuple(by_letter[name] for name in sorted(by_letter, key=repr))


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
    if how.named_unit and unit_of(given) != unit_of(key):
        known = unit_known(how.named_unit)
        return f"it is not in {known.many}"
    return ""


def rounding_fault(how: Policy, given: t.Node, key: t.Node) -> str:
    """Return what keeps an answer from being rounded as the question asks, or an empty string.

    >>> from itembank.notation.parse import parse
    >>> how = Policy(("rounded",), rounding=("places", 2))
    >>> rounding_fault(how, parse("2.5"), parse("2.50"))
    'it is not given to 2 decimal places'
    """
    if how.rounding is None or not how.places:
        return ""
    detail, amount = how.rounding
    given = unsigned(_number(given))
    if isinstance(given, t.Product):
        given = unsigned(_number(given.first))
    if not isinstance(given, t.Int | t.Dec):
        return ""
    places = given.places if isinstance(given, t.Dec) else ""
    if detail == "places" and len(places) != amount:
        return f"it is not given to {counted(amount, 'decimal place')}"
    if detail == "figures" and isinstance(given, t.Dec):
        digits = (given.whole + places).lstrip("0")
        if len(digits) != amount:
            return f"it is not given to {counted(amount, 'significant figure')}"
    return ""


def unrounded(how: Policy, given: t.Node, key: t.Node) -> bool:
    """Tell whether an answer is the key before rounding, or rounded less than was asked.

    Where the number that is rounded is not known exactly, an answer nearer to the key than half
    its last place counts.

    >>> from itembank.notation.parse import parse
    >>> how = Policy(("rounded",), rounding=("places", 2))
    >>> [unrounded(how, parse(text), parse("3.14")) for text in ("3.1416", "3.15", "3.2")]
    [True, False, False]
    """
    if how.rounding is None:
        return False
    detail, amount = how.rounding
    try:
        worth, wanted = exact(_number(given)), exact(_number(key))
    except t.NotationError:
        return False
    if how.unrounded is not None:
        places = _places(_number(given))
        near = abs(worth - how.unrounded) <= Fraction(1, 2 * 10**places)
        return worth == how.unrounded or (near and places > _places(_number(key)))
    if detail == "places":
        half = Fraction(1, 2 * 10**amount)
    elif detail == "nearest":
        half = Fraction(amount, 2)
    else:
        half = _place_of(wanted, amount) / 2
    return (
        wanted - half <= worth < wanted + half
        if wanted >= 0
        else (wanted - half < worth <= wanted + half)
    )


def _places(node: t.Node) -> int:
    """Return how many decimal places a number is written to; 0 where they never end."""
    node = node.of if isinstance(node, t.Neg) else node
    return len(node.places) if isinstance(node, t.Dec) and not node.recurring else 0


def _place_of(wanted: Fraction, figures: int) -> Fraction:
    """Return the value of the last of so many significant figures."""
    size, place = abs(wanted), Fraction(1)
    if not size:
        return place
    for _ in range(400):
        if size >= 10 * place:
            place *= 10
        elif size < place:
            place /= 10
        else:
            break
    return place / Fraction(10) ** (figures - 1)


def _number(node: t.Node) -> t.Node:
    match node:
        case t.Neg(of) if not isinstance(of, t.Money | t.Quantity | t.Percent):
            return node
        case t.Neg(of) | t.Percent(of):
            return _number(of)
        case t.Money(amount, _) | t.Quantity(amount, _):
            return amount
        case t.Relation(_, (("=", right),)):
            return _number(right)
    return node


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
