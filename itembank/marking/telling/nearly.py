"""What is nearly right about a wrong answer that is one number or expression."""

from __future__ import annotations

from fractions import Fraction

from itembank.items.forms.form_rules import number_node
from itembank.items.item import Item
from itembank.marking.form.policy import policy, rounded_to
from itembank.marking.form.rounded_answer import rounds_to
from itembank.marking.telling.tried import approximately, exact_of
from itembank.marking.typing.answer_setting import setting
from itembank.marking.worth.letters_unknown import PI, unknown_letters
from itembank.marking.worth.same_worth import same
from itembank.marking.worth.worth import bounded, quotient, unit_of, worths
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.quotients import UNIT, Quotient

WRONG_UNIT = "The number is right, but the unit is not: look which unit the question is about."


def wrong_unit(given: t.Node, key: t.Node) -> bool:
    """Tell whether both have a unit, of different kinds: 4 l for 4 kg.

    >>> from itembank.notation.parse import parse
    >>> wrong_unit(parse("4 l"), parse("4 kg")), wrong_unit(parse("4 g"), parse("4 kg"))
    (True, False)
    """
    own, wanted = unit_of(given), unit_of(key)
    return own is not None and wanted is not None and own[0] != wanted[0]


def single(item: Item, given: t.Node, key: t.Node) -> str:
    """Return what is nearly right about an answer that is one number or expression."""
    if isinstance(given, t.Relation | t.Listing | t.Either | t.Ratio | t.Label):
        return _not_one(given, key)
    if isinstance(given, t.Percent) and not isinstance(key, t.Percent) and same(given.of, key):
        return "The number is right, but it is no percentage: leave the per cent sign out."
    if wrong_unit_only(given, key):
        return WRONG_UNIT
    if not (bounded(given) and bounded(key)) or wrong_unit(given, key):
        return ""
    a, b = worths(given, key)
    if isinstance(a, Fraction) and isinstance(b, Fraction):
        return _numbers(given, key, a, b) or _rounded(item, given, a, b)
    # The key is a surd here. A float is enough to see that a decimal is near it, and the
    # hint only says that it is near.
    number_given = exact_of(quotient(a))
    if number_given is not None and (about := approximately(quotient(b))) is not None:
        return _rounded(item, given, number_given, Fraction(about))
    if letter := _foreign_letter(item, given, key):
        return letter
    match given:
        # a + b/2 typed on one line for (a + b)/2.
        case t.Sum(first, (*terms, (op, t.Frac(top, bottom)))):
            if same(t.Frac(t.Sum(first, (*terms, (op, top))), bottom), key):
                return "Put brackets round all that is divided, as in (a + b)/2."
    return _expressions(given, quotient(a), quotient(b))


def _foreign_letter(item: Item, given: t.Node, key: t.Node) -> str:
    """Return what to say of a letter that is neither in the question nor in the key."""
    own = setting(item).letters
    strange = sorted(unknown_letters(given) - own)
    if len(strange) != 1 or not t.symbols(key):
        return ""
    if len(own) == 1:
        return f"The question is about {min(own)}, not {strange[0]}."
    return f"There is no {strange[0]} in the question."


def wrong_unit_only(given: t.Node, key: t.Node) -> bool:
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
        return too_many(given, key)
    if isinstance(given, t.Relation) and (names := unknown_letters(given)) and not t.symbols(key):
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


def too_many(given: t.Listing | t.Either, key: t.Node) -> str:
    """Return what to say of several answers where one is asked for."""
    if all(same(part, key) for part in given.parts):
        return "The same answer stands there more than once: give it once."
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
    inner, other = (node.of if isinstance(node, t.Neg) else node for node in (given, key))
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


_ENDS = "That is close, but it is not exact: the answer is a decimal that ends."
_FRACTION_FORMS = frozenset({"fraction", "lowest-terms", "improper", "mixed", "simplest"})


def _rounded(item: Item, given: t.Node, a: Fraction, b: Fraction) -> str:
    """Return what to do about a decimal that is the key's value, cut off or rounded."""
    inner = given.of if isinstance(given, t.Neg) else given
    unit = unit_of(given) or unit_of(item.key)
    size = unit[1] if unit else Fraction(1)
    match inner:
        case t.Quantity(amount, _) | t.Money(amount, _):
            inner = amount
        case t.Percent(of):
            inner, size = of, Fraction(1, 100)
    how = policy(item)
    if how.unrounded is not None and unit_of(given) in (None, unit_of(item.key)):
        b = how.unrounded * size  # what is rounded is held against, and not what it rounds to
    if isinstance(inner, t.Int) and isinstance(given, t.Percent):
        inner = t.Dec(str(inner.n), "")
    if not isinstance(inner, t.Dec):
        return ""
    if how.rounding and rounds_to(how, given, item.key):
        to = rounded_to(how.rounding)
        return f"That is close: keep every digit until the end, and round only then, to {to}."
    # Cut off or rounded, a decimal is less than one in its last place away.
    if abs(a - b) >= size * Fraction(1, 10 ** len(inner.places + inner.recurring)):
        return ""
    rooted = any(isinstance(part, t.Root) for part in t.walk(item.key))
    if inner.recurring and not rooted:
        ends = 10**64 % b.denominator == 0
        return _ENDS if ends else "That is close: put dots over the digits that go on for ever."
    if how.rounding:
        return f"That is close: look at the next digit, and round to {rounded_to(how.rounding)}."
    if rooted:
        return "That is close, but it is not exact: leave the root in your answer."
    wanted = "do not round it"
    if item.form in _FRACTION_FORMS and isinstance(item.key, t.Frac | t.Mixed | t.Neg):
        wanted = f"give it as a {'mixed number' if item.form == 'mixed' else 'fraction'}"
    return f"That is close, but it is not exact: {wanted}."


def _expressions(given: t.Node, a: Quotient, b: Quotient) -> str:
    """Return which terms of an expression are right, where it has the key's denominator."""
    if a == -b:
        return "Every sign is the wrong way round: check the signs."
    # Term by term they can be held against each other only where nothing is divided.
    if a.bottom != {UNIT: Fraction(1)} or b.bottom != {UNIT: Fraction(1)}:
        return ""
    right = [monomial for monomial, c in b.top.items() if a.top.get(monomial) == c]
    if not b.letters():
        if right:
            return "Part of that is right: check the rest."
        return ""
    if not a.letters():
        if b.letters() == {PI}:
            return "Leave π in your answer, as a letter that is not worked out."
        return "A letter is missing: the answer is an expression."
    if len(b.top) > 1 and right:
        said = [_term(monomial, b.top[monomial]) for monomial in right]
        if all(said):
            listed = said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}"
            verb = "is" if len(said) == 1 else "are"
            # Of (x + 2)(x - 3) no term is to be seen before it is multiplied out.
            out = any(isinstance(part, t.Bracket) for part in t.walk(given))
            when = "Multiplied out, " if out else ""
            return f"{when}{listed} {verb} right: look again at the rest."
    if any(abs(a.top.get(monomial, Fraction(0))) == abs(c) for monomial, c in b.top.items()) and {
        m: abs(c) for m, c in a.top.items()
    } == {m: abs(c) for m, c in b.top.items()}:
        return "The terms are right, but not all their signs: check the signs."
    return ""


def _term(monomial: tuple[tuple[tuple[str, int], ...], int], c: Fraction | int) -> str:
    powers, root = monomial
    if root != 1 or any(len(name) > 1 for name, _ in powers):
        return ""
    factors: list[t.Node] = [
        t.Sym(name) if n == 1 else t.Power(t.Sym(name), t.Int(n)) for name, n in powers
    ]
    size = number_node(-c if c < 0 else c)
    if not factors:
        node: t.Node = size
    elif abs(c) == 1:
        node = factors[0] if len(factors) == 1 else t.Juxt(tuple(factors))
    else:
        node = t.Juxt((size, *factors))
    return shown_line(t.Neg(node) if c < 0 else node)
