"""What may be said of a wrong answer: something true that says where to look, never the answer.

First what is nearly right (the sign, the order, the place value, one answer of two), then what
trying the answer out shows, then whether it is too large or too small.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise, permutations

from itembank.items import item as items
from itembank.items.forms import number_node
from itembank.items.item import Item
from itembank.marking.policy import policy, rounded_to
from itembank.marking.same import TURNED, missing, same, turned, unknowns
from itembank.marking.working import equation_of
from itembank.marking.worth import bounded, quotient, says_the_same, unit_of, worths
from itembank.notation import tree as t
from itembank.notation.algebra import UNIT, Quotient, algebra, number
from itembank.notation.clock import is_time
from itembank.notation.line import line
from itembank.notation.value import exact

CHECK = "That is not the answer yet: check each step."
WRONG_UNIT = "The number is right, but the unit is not: look which unit the question is about."


def hint(item: Item, given: t.Node) -> str:
    """Return a sentence for a wrong answer. It is true of that answer, and names what to do.

    >>> from itembank.items.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("equations.two-step/support/91")  # 2y + 11 = 17
    >>> hint(item, parse("y = -3"))
    'The size is right, but the sign is not: is it more or less than 0?'
    >>> hint(item, parse("y = 5"))
    'Try it: with y = 5 the left side is 21 and the right side 17.'
    """
    try:
        return _hint(item, given) or CHECK
    except (t.NotationError, RecursionError, OverflowError):
        return CHECK


def _hint(item: Item, given: t.Node) -> str:
    key = item.key
    match key:
        case t.Label():
            return _label(item, given)
        case t.Either():
            said = _several(given, key)
        case t.Listing():
            said = _list(item, given, key)
        case t.Ratio():
            said = _ratio(item, given, key)
        case t.Relation():
            said = _relation(item, given, key)
        case _:
            match given:
                case t.Relation(t.Sym(name), (("=", right),)) if name not in t.symbols(key):
                    given = right
            said = _single(item, given, key)
    return said or _tried(item, given) or _size(given, key)


def _label(item: Item, given: t.Node) -> str:
    match item.ask, given:
        case items.Choose(options), t.Label(text):
            names = [name for name, _ in options]
            if text.casefold() not in (name.casefold() for name in names):
                return f"Give the name of one choice: {', '.join(names[:-1])} or {names[-1]}."
    return "That is not the one: work out what each choice comes to and compare."


def _several(given: t.Node, key: t.Either) -> str:
    left = missing(given, key)
    if left > 0:
        more = "Another answer is" if left == 1 else f"{left} more answers are"
        return f"What is given is right. {more} missing."
    parts = given.parts if isinstance(given, t.Either | t.Listing) else ()
    hits = [part for part in parts if any(same(part, one) for one in key.parts)]
    if hits and len(hits) < len(parts):
        count = "One of the answers is" if len(hits) == 1 else f"{len(hits)} of the answers are"
        return f"{count} right: look again at the {'other' if len(parts) == 2 else 'others'}."
    return ""


def _list(item: Item, given: t.Node, key: t.Listing) -> str:
    if isinstance(given, t.Ratio) and not unknowns(key):
        return "The answer is not a ratio: give the amounts, with commas between."
    if not isinstance(given, t.Listing):
        if any(same(given, part) for part in key.parts):
            return f"That is one part of the answer: give all {len(key.parts)}."
        return f"The answer has {len(key.parts)} parts: give each of them, with commas between."
    parts, wanted = given.parts, key.parts
    ordered = isinstance(item.ask, items.Order)
    if len(parts) != len(wanted):
        if len(parts) < len(wanted):
            return f"The answer has {len(wanted)} parts, and there are {len(parts)} here."
        return f"The answer has only {len(wanted)} parts, and there are {len(parts)} here."
    if len(parts) <= 5 and any(
        all(map(same, some, wanted)) for some in permutations(parts) if some != parts
    ):
        if ordered and all(map(same, parts[::-1], wanted)):
            return "That is the wrong way round: look which end the order begins from."
        if ordered:
            return _out_of_order(item, parts)
        return "The right numbers are there, in the wrong order: check which is which."
    if isinstance(item.ask, items.Order):
        for part in parts:
            if not any(same(part, one) for one in wanted):
                return f"{line(part)} is not one of the numbers in the question."
    names = unknowns(key)
    if names:
        for name, part in zip(names, wanted, strict=True):
            if any(same(one, part) for one in parts if isinstance(one, t.Relation)):
                return f"{name} is right: look again at the rest."
        if _swapped(parts, wanted):
            return "The right numbers are there, but not with the right letters."
        return ""
    pairs = list(zip(parts, wanted, strict=True))
    if all(_wrong_unit_only(one, other) for one, other in pairs):
        return WRONG_UNIT.replace("number is", "numbers are")
    right = [place for place, pair in enumerate(pairs) if same(*pair)]
    if right and not ordered:
        names_ = ("first", "second", "third", "fourth", "fifth", "sixth")
        if len(right) == 1 and right[0] < len(names_):
            return f"The {names_[right[0]]} part is right: look again at the rest."
        return f"{len(right)} of the {len(parts)} parts are right: look again at the rest."
    return ""


def _swapped(parts: tuple[t.Node, ...], wanted: tuple[t.Node, ...]) -> bool:
    """Tell whether letters have one another's values."""
    mine = [part.rest[0][1] if isinstance(part, t.Relation) else part for part in parts]
    theirs = [part.rest[0][1] for part in wanted if isinstance(part, t.Relation)]
    return len(mine) == len(theirs) and any(
        all(map(same, some, theirs)) for some in permutations(mine)
    )


def _out_of_order(item: Item, parts: tuple[t.Node, ...]) -> str:
    """Return a sentence that names two neighbours that stand the wrong way round."""
    up = isinstance(item.ask, items.Order) and item.ask.detail == "ascending"
    for one, other in pairwise(parts):
        a, b = exact(one), exact(other)
        if (a > b) if up else (a < b):
            return f"Look again at {line(one)} and {line(other)}: which of the two is larger?"
    return ""


def _ratio(item: Item, given: t.Node, key: t.Ratio) -> str:
    if not isinstance(given, t.Ratio):
        parts = _as_parts(given)
        if parts and same(t.Ratio(parts), key):
            return "The right numbers are there: write them as a ratio, with a colon between."
        if len(key.parts) == 2 and any(
            same(given, n) and part == t.Int(1) for n, part in (key.parts, key.parts[::-1])
        ):
            return "The number is right: give the whole ratio, with the 1 and a colon."
        return "The answer is a ratio: give it with a colon between the numbers."
    if len(given.parts) != len(key.parts):
        return f"The ratio has {len(key.parts)} parts, and there are {len(given.parts)} here."
    if len(key.parts) <= 4 and any(
        same(t.Ratio(some), key) for some in permutations(given.parts) if some != given.parts
    ):
        return "The right numbers are there, in the wrong order: which comes first?"
    if len(key.parts) == 3 and not t.symbols(given):
        for place, name in enumerate(("first", "second", "third")):
            rest = [i for i in range(3) if i != place]
            some = t.Ratio(tuple(given.parts[i] for i in rest))
            if same(some, t.Ratio(tuple(key.parts[i] for i in rest))):
                return f"Only the {name} part is not right: look again at that one."
    match item.ask:
        case items.Find(t.Ratio() as asked, ()) if not t.symbols(asked):
            return (
                f"That is not the same ratio as {line(asked)}: was every part multiplied or "
                "divided by the same number?"
            )
    return ""


def _as_parts(given: t.Node) -> tuple[t.Node, ...]:
    match given:
        case t.Frac(top, bottom):
            return (top, bottom)
        case t.Listing(parts):
            return parts
    return ()


def _relation(item: Item, given: t.Node, key: t.Relation) -> str:
    if isinstance(item.ask, items.Compare):
        return _compared(item.ask, given)
    letter = key.first if isinstance(key.first, t.Sym) else None
    if isinstance(given, t.Listing | t.Either) and len(key.rest) == 1:
        return _too_many(given, key)
    if letter is not None and isinstance(given, t.Relation):
        if says_the_same(given, key):
            return f"That is true: go on until {letter.name} stands alone on one side."
        alone = given.first == letter or given.rest[-1][1] == letter
        if letter.name in t.symbols(given) and not alone:
            return f"Go on until {letter.name} stands alone, and check the steps before."
        other = given.first if isinstance(given.first, t.Sym) else None
        if (
            other is not None
            and other != letter
            and len(given.rest) == 1
            and same(given.rest[0][1], key.rest[0][1])
            and key.rest[0][0] == "="
        ):
            return f"The question is about {letter.name}, not {other.name}."
    if isinstance(item.ask, items.Inequality):
        return _inequality(given, key)
    if letter is not None and len(key.rest) == 1 and key.rest[0][0] == "=":
        right = _right_side(given, letter)
        return _single(item, right, key.rest[0][1]) if right is not None else ""
    return ""


def _compared(ask: items.Compare, given: t.Node) -> str:
    if isinstance(given, t.Relation) and len(given.rest) == 1:
        sides = (given.first, given.rest[0][1])
        if not all(any(same(a, b) for b in (ask.left, ask.right)) for a in sides):
            return "Those are not the two numbers of the question."
        return "The sign is not right: which of the two is larger, or are they worth the same?"
    return "Give the sign that goes between the two numbers: <, > or =."


def _right_side(given: t.Node, letter: t.Sym) -> t.Node | None:
    match given:
        case t.Relation(first, (("=", right),)):
            return right if first == letter else first if right == letter else None
        case t.Relation() | t.Listing() | t.Either():
            return None
    return given


def _inequality(given: t.Node, key: t.Relation) -> str:
    if not isinstance(given, t.Relation):
        if len(key.rest) == 1 and same(given, key.rest[0][1]):
            return "The number is right: give the letter and the inequality sign as well."
        return "The answer is an inequality: give a letter, a sign and a number."
    if len(given.rest) != len(key.rest):
        ends = (t.Relation(key.rest[0][1], key.rest[1:]), t.Relation(key.first, key.rest[:1]))
        if any(same(given, end) for end in ends if len(key.rest) == 2):
            return "That is right at one end: give the other end as well."
        return ""
    if not isinstance(key.first, t.Sym):
        ways = (given, turned(given))
        if any(_sides_agree(way, key) for way in ways):
            return "The numbers are right: look again at the signs."
        return ""
    for way in (given, turned(given)):
        if way.first != key.first:
            continue
        (op, side), (wanted, number_) = way.rest[0], key.rest[0]
        if same(side, number_):
            return _sign(op, wanted, key.first)
        if (
            op == wanted
            and isinstance(side, t.Neg) != isinstance(number_, t.Neg)
            and same(t.Neg(t.Bracket(side)), number_)
        ):
            return "The sign of the number is not right: is it more or less than 0?"
        return ""
    return ""


def _sides_agree(way: t.Relation, key: t.Relation) -> bool:
    mine = [way.first, *(side for _, side in way.rest)]
    theirs = [key.first, *(side for _, side in key.rest)]
    return all(map(same, mine, theirs))


def _sign(op: str, wanted: str, letter: t.Sym) -> str:
    if op == "=":
        return "The number is right, but there is more than one answer: use an inequality sign."
    if {op, wanted} in ({"<", "≤"}, {">", "≥"}):
        return f"Nearly: can {letter.name} be equal to that number or not?"
    if op in TURNED:
        return (
            f"The number is right, but the sign is not: try a number that is less for {letter.name}"
            " and one that is more."
        )
    return ""


def wrong_unit(given: t.Node, key: t.Node) -> bool:
    """Tell whether both have a unit, of different kinds: 4 l for 4 kg.

    >>> from itembank.notation.parse import parse
    >>> wrong_unit(parse("4 l"), parse("4 kg")), wrong_unit(parse("4 g"), parse("4 kg"))
    (True, False)
    """
    own, wanted = unit_of(given), unit_of(key)
    return own is not None and wanted is not None and own[0] != wanted[0]


def _single(item: Item, given: t.Node, key: t.Node) -> str:
    """Return what is nearly right about an answer that is one number or expression."""
    if isinstance(given, t.Relation | t.Listing | t.Either | t.Ratio | t.Label):
        return _not_one(given, key)
    if isinstance(given, t.Percent) and not isinstance(key, t.Percent) and same(given.of, key):
        return "The number is right, but it is no percentage: leave the per cent sign out."
    if _wrong_unit_only(given, key):
        return WRONG_UNIT
    if not (bounded(given) and bounded(key)) or wrong_unit(given, key):
        return ""
    a, b = worths(given, key)
    if isinstance(a, Fraction) and isinstance(b, Fraction):
        return _numbers(given, key, a, b) or _rounded(item, given, a, b)
    number_given = exact_of(quotient(a))
    if number_given is not None and (about := approximately(quotient(b))) is not None:
        return _rounded(item, given, number_given, Fraction(about))
    if other := _foreign_letter(item, given, key):
        return other
    match given:
        case t.Sum(first, (*terms, (op, t.Frac(top, bottom)))):
            if same(t.Frac(t.Sum(first, (*terms, (op, top))), bottom), key):
                return "Put brackets round all that is divided, as in (a + b)/2."
    return _expressions(quotient(a), quotient(b))


def _foreign_letter(item: Item, given: t.Node, key: t.Node) -> str:
    """Return what to say of a letter that is neither in the question nor in the key."""
    own = t.symbols(key).union(*(t.symbols(run) for run in item.prompt if not isinstance(run, str)))
    strange = sorted(t.symbols(given) - own)
    if len(strange) != 1 or not t.symbols(key):
        return ""
    if len(own) == 1:
        return f"The question is about {min(own)}, not {strange[0]}."
    return f"There is no {strange[0]} in the question."


def _wrong_unit_only(given: t.Node, key: t.Node) -> bool:
    """Tell whether an answer has the key's number and another unit: 12 g for 12 kg."""
    amount, wanted = _amount(given), _amount(key)
    return (
        amount is not None
        and wanted is not None
        and unit_of(given) != unit_of(key)
        and same(amount, wanted)
    )


def _not_one(given: t.Node, key: t.Node) -> str:
    if t.symbols(key) and any(
        isinstance(part, t.Relation) for part in getattr(given, "parts", (given,))
    ):
        return "The answer is an expression: there is no equation to solve here."
    if isinstance(given, t.Listing | t.Either):
        return _too_many(given, key)
    if isinstance(given, t.Relation) and (names := t.symbols(given)) and not t.symbols(key):
        return f"Go on until {min(names)} stands alone, and check the steps before."
    if (
        isinstance(given, t.Ratio)
        and len(given.parts) == 2
        and not t.symbols(given)
        and same(t.Frac(*given.parts), key)
    ):
        kind = "fraction" if isinstance(key, t.Frac | t.Mixed) else "number"
        return f"The right numbers are there, but the answer is not a ratio: give a {kind}."
    return ""


def _too_many(given: t.Listing | t.Either, key: t.Node) -> str:
    if any(same(part, key) for part in given.parts):
        return "More than one answer is given, and they differ: decide on one."
    if any(isinstance(part, t.Product | t.Power) for part in t.walk(key)) and not t.symbols(key):
        return "The answer is a product: write × between the numbers, and check what they make."
    return "Only one answer is wanted: give one."


def _amount(node: t.Node) -> t.Node | None:
    match node:
        case t.Neg(of):
            return None if (amount := _amount(of)) is None else t.Neg(amount)
        case t.Quantity(amount, _) | t.Money(amount, _):
            return amount
    return None


def _numbers(given: t.Node, key: t.Node, a: Fraction, b: Fraction) -> str:
    if a == -b and b:
        return "The size is right, but the sign is not: is it more or less than 0?"
    inner, other = (one.of if isinstance(one, t.Neg) else one for one in (given, key))
    if a and isinstance(inner, t.Frac) and isinstance(other, t.Frac) and a * b == 1:
        return "The right numbers are there, but the fraction is upside down."
    if a and b and a != b and _power_of_ten(a / b):
        return "The digits are right, but the place value is not: look at the size again."
    return ""


def _power_of_ten(ratio: Fraction) -> bool:
    large = max(ratio.numerator, ratio.denominator)
    if ratio <= 0 or min(ratio.numerator, ratio.denominator) != 1 or large > 10**9:
        return False
    return str(large).strip("0") == "1"


_FRACTION_FORMS = frozenset({"fraction", "lowest-terms", "improper", "mixed", "simplest"})


def _rounded(item: Item, given: t.Node, a: Fraction, b: Fraction) -> str:
    """Return what to do about a decimal that is the key's value, cut off or rounded."""
    inner = given.of if isinstance(given, t.Neg) else given
    unit = unit_of(given)
    size = unit[1] if unit else Fraction(1)
    match inner:
        case t.Quantity(amount, _) | t.Money(amount, _):
            inner = amount
        case t.Percent(of):
            inner, size = of, Fraction(1, 100)
    if isinstance(inner, t.Int) and isinstance(given, t.Percent):
        inner = t.Dec(str(inner.n), "")
    if not isinstance(inner, t.Dec):
        return ""
    if abs(a - b) >= size * Fraction(1, 10 ** len(inner.places + inner.recurring)):
        return ""
    if inner.recurring:
        return "That is close: put dots over the digits that go on for ever."
    if rounding := policy(item).rounding:
        return f"That is close: look at the next digit, and round to {rounded_to(rounding)}."
    if any(isinstance(part, t.Root) for part in t.walk(item.key)):
        return "That is close, but it is not exact: leave the root in your answer."
    wanted = "do not round it"
    if item.form in _FRACTION_FORMS and isinstance(item.key, t.Frac | t.Mixed | t.Neg):
        wanted = f"give it as a {'mixed number' if item.form == 'mixed' else 'fraction'}"
    return f"That is close, but it is not exact: {wanted}."


def approximately(worth: Quotient) -> float | None:
    """Return about how large a surd is, or None where there are letters in it.

    >>> from itembank.notation.parse import parse
    >>> round(approximately(algebra(parse("2√3"))), 2), approximately(algebra(parse("2x")))
    (3.46, None)
    """
    if worth.letters():
        return None
    top, bottom = (
        sum(float(c) * root**0.5 for (_, root), c in side.items())
        for side in (worth.top, worth.bottom)
    )
    return top / bottom if bottom else None


def _expressions(a: Quotient, b: Quotient) -> str:
    """Return which terms of an expression are right, where it has the key's denominator."""
    if a == -b:
        return "Every sign is the wrong way round: check the signs."
    if a.bottom != {UNIT: Fraction(1)} or b.bottom != {UNIT: Fraction(1)}:
        return ""
    right = [monomial for monomial, c in b.top.items() if a.top.get(monomial) == c]
    if not b.letters():
        if right:
            return "Part of that is right: check the rest."
        return ""
    if not a.letters():
        if b.letters() == {"π"}:
            return "Leave π in your answer, as a letter that is not worked out."
        return "A letter is missing: the answer is an expression."
    if len(b.top) > 1 and right:
        said = [_term(monomial, b.top[monomial]) for monomial in right]
        if all(said):
            listed = said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}"
            verb = "is" if len(said) == 1 else "are"
            return f"{listed} {verb} right: look again at the rest."
    if any(abs(a.top.get(monomial, Fraction(0))) == abs(c) for monomial, c in b.top.items()) and {
        m: abs(c) for m, c in a.top.items()
    } == {m: abs(c) for m, c in b.top.items()}:
        return "The terms are right, but not all their signs: check the signs."
    return ""


def _term(monomial: tuple[tuple[tuple[str, int], ...], int], c: Fraction) -> str:
    powers, root = monomial
    if root != 1 or any(len(name) > 1 for name, _ in powers):
        return ""
    factors: list[t.Node] = [
        t.Sym(name) if n == 1 else t.Power(t.Sym(name), t.Int(n)) for name, n in powers
    ]
    size = number_node(abs(c))
    if not factors:
        node: t.Node = size
    elif abs(c) == 1:
        node = factors[0] if len(factors) == 1 else t.Juxt(tuple(factors))
    else:
        node = t.Juxt((size, *factors))
    return line(t.Neg(node) if c < 0 else node, pence=False)


def _tried(item: Item, given: t.Node) -> str:
    """Return what trying the answer out shows, where it can be tried."""
    equation = equation_of(item)
    if equation is not None and len(equation.rest) == 1:
        return _put_in(equation, given)
    match item.ask:
        case items.Sequence(terms) if t.symbols(given) == {"n"} and bounded(given):
            for place, term in enumerate(terms, start=1):
                got = exact_of(algebra(given, {"n": number(place)}))
                if got is not None and got != exact(term):
                    return (
                        f"Try it: with n = {place} it comes to {line(number_node(got))}, and the "
                        f"{('first', 'second', 'third', 'fourth', 'fifth')[min(place, 5) - 1]} "
                        f"term is {line(term)}."
                        if place <= 5
                        else ""
                    )
        case items.Common(numbers, detail):
            return _common(numbers, detail, given)
    return ""


def _put_in(equation: t.Relation, given: t.Node) -> str:
    """Return what the two sides of an equation come to with the value that was given."""
    left, right = equation.first, equation.rest[0][1]
    (name,) = t.symbols(equation)
    value = _right_side(given, t.Sym(name))
    if value is None or t.symbols(value):
        return ""
    known = {name: number(exact(value))}
    one, other = (exact_of(algebra(side, known)) for side in (left, right))
    if one is None or other is None or one == other:
        return ""
    shown = [line(number_node(worth)) for worth in (exact(value), one, other)]
    if max(map(len, shown)) > 12:
        return ""
    return (
        f"Try it: with {name} = {shown[0]} the left side is {shown[1]} and the right "
        f"side {shown[2]}."
    )


def exact_of(worth: Quotient) -> Fraction | None:
    """Return a quotient as a rational number, or None where it is none."""
    if set(worth.top) <= {UNIT} and set(worth.bottom) <= {UNIT}:
        return worth.top.get(UNIT, Fraction(0)) / worth.bottom[UNIT]
    return None


def _common(numbers: tuple[t.Node, ...], detail: str, given: t.Node) -> str:
    worth = exact(given)
    if worth.denominator != 1 or worth <= 0:
        return "The answer is a positive whole number."
    for node in numbers:
        n = exact(node)
        if detail == "hcf" and n % worth:
            return f"{line(given)} is not a factor of {line(node)}: try one that divides them all."
        if detail == "lcm" and worth % n:
            return f"{line(given)} is not a multiple of {line(node)}: look on in its times table."
    if detail == "hcf":
        return "That is a common factor, but there is a larger one."
    return "That is a common multiple, but there is a smaller one."


def _size(given: t.Node, key: t.Node) -> str:
    """Return whether a number is too large or too small."""
    match key:
        case t.Relation(t.Sym() as letter, (("=", right),)):
            value = _right_side(given, letter)
            return _size(value, right) if value is not None else ""
        case t.Relation() | t.Listing() | t.Either() | t.Ratio() | t.Label():
            return ""
    if isinstance(given, t.Relation | t.Listing | t.Either | t.Ratio | t.Label):
        return ""
    if t.symbols(given) and not t.symbols(key):
        return "The answer is a number, without letters."
    if not (bounded(given) and bounded(key)):
        return ""
    a, b = worths(given, key)
    if not isinstance(a, Fraction) or not isinstance(b, Fraction) or a == b:
        return ""
    if is_time(key):
        return "That is too late." if a > b else "That is too early."
    size = "large" if a > b else "small"
    return f"That is too {size}: check each step."
