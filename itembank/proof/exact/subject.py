"""The first road to making a letter the subject of a formula."""

from __future__ import annotations

from itertools import combinations

from itembank.items.asks import Subject
from itembank.notation import tree as t
from itembank.notation.algebra import algebra
from itembank.notation.quotients import Polynomial, Quotient, number
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found, text
from itembank.proof.claim.key_solutions import Misfit, subjects_given
from itembank.proof.claim.repeats import writing
from itembank.proof.exact.reckoning.equations import sides_of
from itembank.proof.exact.reckoning.tree_of import quotient_node


def find_subject(ask: Subject, key: t.Node) -> Finding:
    """Return the formula with the letter as its subject, and whether the key says the same.

    Raises:
        NotExact: the letter stands in it in a way that cannot be undone here.

    >>> from itembank.notation import parse
    >>> find_subject(Subject(parse("y = 3x + 2"), t.Sym("x")), parse("x = (y - 2)/3")).shown
    'x = (y - 2)/3'
    """
    letter = ask.letter
    power, value = undone(ask.relation, letter.name)
    answer = _answer(letter, power, value)
    try:
        given = subjects_given(key, letter)
    except Misfit as error:
        return found(answer, key, False, str(error))
    if power == 1:
        return found(answer, key, len(given) == 1 and algebra(given[0]) == value)
    # Held by their powers: E is a quotient of polynomials, and its root is none.
    if any(_power_of(node, power) != value for node in given):
        return found(answer, key, False)
    if power % 2 == 0 and not any(_opposite(a, b) for a, b in combinations(given, 2)):
        raise NotExact(
            "the key gives one of two roots: write both with ‘or’, or let a person say that "
            f"{letter.name} cannot be negative"
        )
    return found(answer, key, True)


def _opposite(a: t.Node, b: t.Node) -> bool:
    """Tell whether two roots are known to be each other's opposite.

    Both have the right power, so that they differ by a sign or not at all. A minus in front does
    not tell which: from x² = (a − b)² come a − b and −(b − a), which are one root written twice.
    """
    if any(
        isinstance(root, t.Neg) and writing(root.of) == writing(leg)
        for root, leg in ((a, b), (b, a))
    ):
        return True
    try:
        return algebra(a) == -algebra(b)
    except NotExact:
        return False  # letters under a root: only the same writing shows it


def undone(relation: t.Relation, name: str) -> tuple[int, Quotient]:
    """Return k and E where the formula says that the kth power of the letter is E.

    Raises:
        NotExact: the letter is not there, or stands there to several powers.
    """
    pairs = sides_of(relation)
    if len(pairs) != 1:
        raise NotExact("this is not one equation")
    a, b = pairs[0]
    by_power: dict[int, Polynomial] = {}
    # The top alone says when both sides are equal; the bottom, when they have a meaning.
    for (powers, root), c in (a - b).top.items():
        exponents = dict(powers)
        k = exponents.pop(name, 0)
        by_power.setdefault(k, {})[tuple(sorted(exponents.items())), root] = c
    power = max(by_power, default=0)
    if not power:
        raise NotExact(f"the formula has no {name} in it")
    if set(by_power) - {0, power}:
        raise NotExact(f"{name} stands in the formula to several powers")
    return power, -Quotient(by_power.get(0, {}), by_power[power])


def _answer(letter: t.Sym, power: int, value: Quotient) -> str:
    node = quotient_node(value)
    if power == 1:
        return text(t.equals(letter, node))
    if power not in (2, 3, 4):
        return ""
    root = t.Root(node, power)
    if power == 3:
        return text(t.equals(letter, root))
    return text(t.Either((t.equals(letter, root), t.equals(letter, t.Neg(root)))))


def _power_of(node: t.Node, k: int) -> Quotient:
    """Return the kth power of an expression, roots and all: (√E)² is E."""
    match node:
        # (ⁿ√E)ⁿ is E wherever the root has a value.
        case t.Root(of, index) if k % index == 0:
            total = number(1)
            for _ in range(k // index):
                total = total * algebra(of)
            return total
        case t.Neg(of):
            return _power_of(of, k) if k % 2 == 0 else -_power_of(of, k)
        case t.Bracket(of):
            return _power_of(of, k)
        case t.Frac(top, bottom):
            return _power_of(top, k) / _power_of(bottom, k)
        case t.Juxt(factors):
            total = number(1)
            for factor in factors:
                total = total * _power_of(factor, k)
            return total
        case t.Product(first, rest):
            total = _power_of(first, k)
            for op, factor in rest:
                raised = _power_of(factor, k)
                total = total / raised if op == "÷" else total * raised
            return total
    value, total = algebra(node), number(1)
    for _ in range(k):
        total = total * value
    return total
