"""The first road to sequences, and to common factors and multiples."""

from __future__ import annotations

from collections.abc import Sequence as Row
from fractions import Fraction
from math import gcd, lcm

from itembank.items.asks import Common, Sequence
from itembank.items.forms.form_rules import number_node
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import Quotient, letter, number
from itembank.notation.value import NotExact, exact, over
from itembank.proof.claim.finding import Finding, found, ordinal, text
from itembank.proof.claim.key_solutions import value_given
from itembank.proof.exact.reckoning.tree_of import quotient_node


def find_nth_term(ask: Sequence, key: t.Node) -> Finding:
    """Return the nth term of a sequence, and whether the key is it.

    The differences, or the differences of the differences, have to be the same all along,
    and to be seen so at least twice.

    Raises:
        NotExact: they are not, so nothing printed says how the sequence goes on.

    >>> from itembank.notation import parse
    >>> find_nth_term(Sequence(parse("5, 8, 11, 14").parts), parse("3n + 2")).shown
    '3n + 2'
    """
    values = [exact(term) for term in ask.terms]
    rule = value_given(key)
    if t.symbols(rule) - {"n"}:
        return Finding("", f"the key {text(key)} is not an expression in n")
    ours = newton(values)
    answer = "" if ours is None else text(quotient_node(ours))
    # The printed terms come first: a key that misses one is wrong, whatever rule was meant.
    for place, value in enumerate(values, start=1):
        given = algebra(rule, {"n": number(place)})
        if given != number(value):
            says = text(quotient_node(given))
            parting = f"its {ordinal(place)} term would be {says}, not {text(number_node(value))}"
            return found(answer, key, False, parting)
    if ours is None:
        raise NotExact(
            "the key gives every term that is printed, but the differences do not say how the "
            "sequence goes on"
        )
    return found(answer, key, algebra(rule) == ours)


def newton(values: Row[Fraction]) -> Quotient | None:
    """Return the linear or quadratic expression in n that the differences show, or None.

    Newton's forward differences: the nth term is a + (n − 1)d + (n − 1)(n − 2)s/2.
    """
    rows = [list(values)]
    # Down to third differences: schools ask for linear and quadratic rules, no others.
    while len(rows[-1]) > 1 and len(rows) < 4:
        rows.append([b - a for a, b in zip(rows[-1], rows[-1][1:], strict=False)])
    for degree in (0, 1, 2):
        # Through any n + 1 terms goes a rule of degree n. Only one difference more, the same
        # again, shows that the rule was meant.
        if degree < len(rows) and len(rows[degree]) > 1 and len(set(rows[degree])) == 1:
            n = letter("n")
            total, product = number(0), number(1)
            for k in range(degree + 1):
                total = total + number(rows[k][0]) * product
                product = product * (n - number(k + 1)) / number(k + 1)
            return total
    return None


def find_common(ask: Common, key: t.Node) -> Finding:
    """Return the highest common factor or the lowest common multiple, and whether it is the key.

    Single terms in letters are taken too: their numbers (Euclid), and the least or the greatest
    power of each letter.

    Raises:
        NotExact: they are not whole numbers or single terms.

    >>> from itembank.notation import parse
    >>> find_common(Common(parse("12, 18").parts, "lcm"), parse("36")).shown
    '36'
    """
    terms = [_whole_term(node) for node in ask.numbers]
    pick, join = (min, gcd) if ask.detail == "hcf" else (max, lcm)
    names = {name for _, powers in terms for name in powers}
    ours = number(join(*(size for size, _ in terms)))
    for name in sorted(names):
        for _ in range(pick(powers.get(name, 0) for _, powers in terms)):
            ours = ours * letter(name)
    return found(quotient_node(ours), key, algebra(value_given(key)) == ours)


def _whole_term(node: t.Node) -> tuple[int, dict[str, int]]:
    value = algebra(node)
    if len(value.top) == 1 and not (value.bottom.keys() - {((), 1)}):
        (((powers, root), c),) = value.top.items()
        size = over(c, value.bottom[(), 1])
        # Factors of 0 and of negative numbers are not what school means by these words.
        if root == 1 and size.denominator == 1 and size > 0:
            return size.numerator, dict(powers)
    raise NotExact(f"{text(node)} is no whole number above 0, nor such a number of some letters")
