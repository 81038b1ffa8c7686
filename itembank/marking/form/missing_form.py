"""What is missing from an answer that has the right value, by the policy of its item."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.forms.form_rules import form_fault
from itembank.items.forms.letter_forms import expression
from itembank.items.forms.number_forms import NOT_WHOLE, whole_parts
from itembank.items.forms.value_forms import value
from itembank.items.item import Item
from itembank.marking.form.form_told import TOLD_BY_FORM, right_value
from itembank.marking.form.policy import Policy, rounded_to
from itembank.marking.worth.same import turned
from itembank.marking.worth.typed_maths import alike
from itembank.marking.worth.worth import unit_of
from itembank.notation.tree import (
    Bracket,
    Dec,
    Either,
    Frac,
    Int,
    Juxt,
    Label,
    Listing,
    Mixed,
    MixedUnits,
    Money,
    Neg,
    Node,
    NotationError,
    Percent,
    Power,
    Product,
    Quantity,
    Ratio,
    Relation,
    Root,
    Sum,
    Sym,
    symbols,
    walk,
)
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact

UNIT_MISSING = "the unit is missing"
NOT_ROUNDED = "it is not rounded"
NOT_WORKED_OUT = "it is not worked out"
NOT_DIVIDED = "the division is not worked out"
NOT_A_FRACTION = "a division is not written as a fraction"
STILL_ADDED = "the whole number and the fraction are still added"
ONE_UNIT = "the parts of the ratio have a unit"
UNITS_DIFFER = "the parts of the ratio have different units"


def form_of(item: Item, how: Policy, typed: Node, given: Node) -> str:
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
    if faults[0] == UNIT_MISSING and any(isinstance(part, Quantity) for part in walk(given)):
        return NOT_WORKED_OUT  # 3 × 10^4 cm
    return faults[0]


def unfinished(how: Policy, given: Node, key: Node) -> str:
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
    if isinstance(given, Ratio) and unit_of(given.parts[0]):
        return UNITS_DIFFER if len({unit_of(part) for part in given.parts}) > 1 else ONE_UNIT
    leaves = _leaves(given)
    for leaf in leaves:
        fault = _undivided(leaf, _holds_fraction(key)) or _unjoined(leaf, key)
        if fault:
            return fault
        if (
            how.places
            and not _holds_fraction(key)
            and any(isinstance(p, Money) and isinstance(p.amount, Frac | Mixed) for p in walk(leaf))
        ):
            return "it is not given in pounds and pence"
        match leaf:
            case Frac(Int() | Dec(), Int() | Dec()) if whole_parts(leaf) == NOT_WHOLE:
                return NOT_WHOLE
    if not any(isinstance(part, Sum | Product | Juxt | Power | Root) for part in walk(key)) and any(
        value(leaf) == NOT_WORKED_OUT for leaf in leaves if not symbols(leaf)
    ):
        return NOT_WORKED_OUT
    if how.powers and any(isinstance(part, Power) for part in walk(key)):
        return _power_fault(given)
    return ""


def _undivided(leaf: Node, as_fraction: bool = False) -> str:
    """Return what is left of a division, in a single value or a coefficient.

    Where the key is a fraction, a division that leaves a remainder is to be written as one.
    """
    match leaf:
        case Neg(of) | Bracket(of) | Percent(of) | Quantity(of, _) | Money(of, _):
            return _undivided(of, as_fraction)
        case Juxt(factors):
            return next((fault for fault in map(_undivided, factors) if fault), "")
        case Frac(Int(top), Int(bottom)) if bottom and top % bottom == 0:
            return "the denominator is 1" if bottom == 1 else NOT_DIVIDED
        case Product(first, rest) if not symbols(leaf) and all(op == "÷" for op, _ in rest):
            simple = all(isinstance(part, Int | Dec) for part in (first, *(f for _, f in rest)))
            if simple and as_fraction and len(rest) == 1 and exact(leaf).denominator > 1:
                return NOT_A_FRACTION
            return NOT_DIVIDED if simple else ""
    return ""


def _unjoined(leaf: Node, key: Node) -> str:
    """Return that 1 + 3/11 stands for the mixed number of the key, or an empty string."""
    match leaf:
        case Sum(Int(), (("+", Frac(Int(top), Int(bottom))),)) if top < bottom:
            return STILL_ADDED if any(isinstance(part, Mixed) for part in walk(key)) else ""
    return ""


def _leaves(node: Node) -> list[Node]:
    """Return the single values an answer is made of."""
    match node:
        case Relation(first, rest):
            return [leaf for part in (first, *(side for _, side in rest)) for leaf in _leaves(part)]
        case Listing(parts) | Either(parts) | Ratio(parts):
            return [leaf for part in parts for leaf in _leaves(part)]
        case Label():
            return []
    return [node]


def _holds_fraction(key: Node) -> bool:
    return any(isinstance(part, Frac | Mixed) for part in walk(key))


def _power_fault(given: Node) -> str:
    if isinstance(given, Relation) and len(given.rest) == 1:
        given = given.rest[0][1]
    for part in walk(given):
        match part:
            case Product(first, rest) if all(op == "×" for op, _ in rest):
                factors = [first, *(factor for _, factor in rest)]
            case Juxt(factors_):
                factors = list(factors_)
            case _:
                continue
        bases = [one.base if isinstance(one, Power) else one for one in factors]
        if any(bases.count(base) > 1 for base in bases):
            return "a factor is repeated"
    return "" if any(isinstance(part, Power) for part in walk(given)) else "it is not a power"


def _fault(form: str, how: Policy, node: Node) -> str:
    fault = form_fault(form, node)
    if fault and not how.lowest_terms and not isinstance(node, Ratio):
        return _parts_fault(node, how)
    return fault


def _parts_fault(node: Node, how: Policy) -> str:
    """Return what keeps the numbers of an answer from being worked out, in whatever form."""
    match node:
        case Relation(first, rest):
            parts = [first, *(side for _, side in rest)]
        case Listing(parts_) | Either(parts_):
            parts = list(parts_)
        case Money() if how.places and _short_money(node):
            return "pounds and pence are not given to two places"
        case Sym():
            return ""
        case _:
            return value(node) if not symbols(node) else expression(node)
    return next((fault for fault in (_parts_fault(part, how) for part in parts) if fault), "")


def _short_money(node: Node) -> bool:
    if isinstance(node, Listing):
        return any(map(_short_money, node.parts))
    amount = node.amount if isinstance(node, Money) and node.sign != "p" else None
    return isinstance(amount, Dec) and len(amount.places) != 2


def completed(given: Node, key: Node) -> Node:
    """Return an answer with what may be left out put in: the unit, the letter, the key's order.

    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> pairs = (("5", "4 kg"), ("5", "x = 5"), ("3 ≤ x", "x ≥ 3"), ("7, -4", "x = -4 or x = 7"))
    >>> [line(completed(parse(one), parse(other))) for one, other in pairs]
    ['5 kg', 'x = 5', 'x ≥ 3', 'x = 7 or x = -4']
    """
    match key:
        case Relation(Sym() as letter, ((op, right),)):
            return _solved(given, letter, op == "=", right)
        case Relation():
            if isinstance(given, Relation) and given.rest[0][0] != key.rest[0][0]:
                return turned(given)
            return given
        case Listing(parts):
            if isinstance(given, Relation):
                given = Listing((given.first, *(side for _, side in given.rest)))
            if isinstance(given, Listing) and len(given.parts) == len(parts):
                pairs = zip(given.parts, _in_order(given.parts, parts), strict=True)
                return Listing(tuple(completed(one, other) for one, other in pairs))
            return given
        case Either(parts):
            answers: tuple[Node, ...] = (given,)
            single = not isinstance(parts[0], Listing)
            if isinstance(given, Either) or (single and isinstance(given, Listing)):
                answers = given.parts
            flat = [completed(answer, parts[0]) for answer in answers]
            return Either(tuple(flat)) if len(flat) > 1 else flat[0]
        case Quantity(_, unit) if unit_of(given) is None and not isinstance(given, Relation):
            return (
                Neg(Quantity(given.of, unit)) if isinstance(given, Neg) else Quantity(given, unit)
            )
        case Money(_, sign) if unit_of(given) is None and not isinstance(given, Relation):
            return Neg(Money(given.of, sign)) if isinstance(given, Neg) else Money(given, sign)
    if isinstance(given, Relation) and len(given.rest) == 1:
        # The value alone was asked for.
        left, value_ = given.first, given.rest[0][1]
        return completed(value_ if isinstance(left, Sym) else left, key)
    return given


def _solved(given: Node, letter: Sym, equation: bool, right: Node) -> Node:
    if isinstance(given, Relation):
        if given.first != letter and len(given.rest) == 1 and given.rest[0][1] == letter:
            given = turned(given)
        op, side = given.rest[0]
        return Relation(given.first, ((op, completed(side, right)), *given.rest[1:]))
    return Relation(letter, (("=", completed(given, right)),)) if equation else given


def _in_order(given: tuple[Node, ...], parts: tuple[Node, ...]) -> tuple[Node, ...]:
    """Return the key's parts in the order of the letters that were given."""
    by_letter = {part.first: part for part in parts if isinstance(part, Relation)}
    if len(by_letter) < len(parts):
        return parts
    named = [part.first for part in given if isinstance(part, Relation)]
    if len(named) == len(parts) and set(named) == set(by_letter):
        return tuple(by_letter[name] for name in named)
    return tuple(by_letter[name] for name in sorted(by_letter, key=repr))


def _unit_fault(how: Policy, given: Node, key: Node) -> str:
    match key:
        case Listing(parts) if isinstance(given, Listing) and len(given.parts) == len(parts):
            pairs = zip(given.parts, parts, strict=True)
            return next((f for f in (_unit_fault(how, a, b) for a, b in pairs) if f), "")
        case Relation(_, ((_, right),)) if isinstance(given, Relation) and len(given.rest) == 1:
            return _unit_fault(how, given.rest[0][1], right)
    if unit_of(key) is None:
        return ""
    if unit_of(given) is None:
        return UNIT_MISSING if how.unit == "needed" else ""
    if how.named_unit and isinstance(key, MixedUnits):
        units = tuple(part.unit for part in key.parts)
        if isinstance(given, MixedUnits) and tuple(part.unit for part in given.parts) == units:
            return ""
        return f"it is not in {' and '.join(UNITS[unit].many for unit in units)}"
    if how.named_unit and unit_of(given) != unit_of(key):
        known = UNITS.get(how.named_unit) or CURRENCY[how.named_unit]
        return f"it is not in {known.many}"
    return ""


def rounding_fault(how: Policy, given: Node, key: Node) -> str:
    """Return what keeps an answer from being rounded as the question asks, or an empty string.

    >>> from itembank.notation.parse import parse
    >>> how = Policy(("rounded",), rounding=("places", 2))
    >>> rounding_fault(how, parse("2.5"), parse("2.50"))
    'it is not given to 2 decimal places'
    """
    if how.rounding is None or not how.places:
        return ""
    detail, amount = how.rounding
    given = _number(given)
    if isinstance(given, Product):
        given = _number(given.first)
    if not isinstance(given, Int | Dec):
        return ""
    places = given.places if isinstance(given, Dec) else ""
    if detail == "places" and len(places) != amount:
        return f"it is not given to {amount} decimal place{'' if amount == 1 else 's'}"
    if detail == "figures" and isinstance(given, Dec):
        digits = (given.whole + places).lstrip("0")
        if len(digits) != amount:
            return f"it is not given to {amount} significant figure{'' if amount == 1 else 's'}"
    return ""


def unrounded(how: Policy, given: Node, key: Node) -> bool:
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
    except NotationError:
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


def _places(node: Node) -> int:
    """Return how many decimal places a number is written to; 0 where they never end."""
    node = node.of if isinstance(node, Neg) else node
    return len(node.places) if isinstance(node, Dec) and not node.recurring else 0


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


def _number(node: Node) -> Node:
    match node:
        case Neg(of) if not isinstance(of, Money | Quantity | Percent):
            return node
        case Neg(of) | Percent(of):
            return _number(of)
        case Money(amount, _) | Quantity(amount, _):
            return amount
        case Relation(_, (("=", right),)):
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
        form = {Mixed: "mixed", Frac: "lowest-terms", Int: "integer"}.get(type(item.key), form)
    return right_value(fault, form)


def _in_unit(key: Node) -> str:
    """Return the words for the one unit of a key, as *, in kilograms*."""
    found = {
        part.unit if isinstance(part, Quantity) else part.sign
        for part in walk(key)
        if isinstance(part, Quantity | Money)
    }
    if len(found) != 1:
        return ""
    (unit,) = found
    return f", in {(UNITS.get(unit) or CURRENCY[unit]).many}"
