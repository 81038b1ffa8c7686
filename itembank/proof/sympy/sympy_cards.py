"""Cards, lines and statements held against one another by sympy, two at a time.

Importing this module imports sympy.
"""

from __future__ import annotations

from typing import Any

import sympy

from itembank.items.asks import FaultyLine, Match, OddOneOut, TrueOrFalse
from itembank.items.asks.matching import PARTNERS
from itembank.items.asks.odd_one_out import LETTERS
from itembank.notation import tree as t
from itembank.notation.symbolic import symbol, to_sympy
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found
from itembank.proof.sympy.sympy_solving import equations
from itembank.proof.sympy.sympy_zero import is_zero


def same(first: t.Node, other: t.Node) -> bool:
    """Tell whether sympy finds two cards worth the same.

    Raises:
        NotExact: they are of two kinds, or sympy cannot tell.

    >>> from itembank.notation import parse
    >>> same(parse("2x + 1 = 7"), parse("x = 3")), same(parse("6 : 9"), parse("2 : 3"))
    (True, True)
    >>> same(parse("x + 2y = 6"), parse("y = 3 - x/2")), same(parse("n^2"), parse("1, 4, 9"))
    (True, True)
    """
    if isinstance(first, t.Relation) != isinstance(other, t.Relation):
        raise NotExact("an equation stands beside something else")
    if isinstance(first, t.Relation) and isinstance(other, t.Relation):
        if t.symbols(first) == t.symbols(other) == {"x", "y"}:
            return _same_line(first, other)
        return _solution(first) == _solution(other)
    if isinstance(first, t.Listing) or isinstance(other, t.Listing):
        return _same_terms(first, other)
    a, b = to_sympy(first), to_sympy(other)
    if isinstance(a, list) != isinstance(b, list):
        raise NotExact("a ratio stands beside something else")
    if isinstance(a, list):
        if len(a) != len(b):
            return False
        return all(is_zero(x * b[0] - y * a[0]) for x, y in zip(a, b, strict=True))
    return is_zero(a - b)


def _solution(relation: t.Relation) -> tuple[str, Any]:
    """Return the letter of an equation and its one solution."""
    rows = equations(relation)
    letters = {letter for row in rows for letter in row.free_symbols}
    if len(letters) != 1:
        raise NotExact("an equation has not one letter")
    (letter,) = letters
    values = sympy.solveset(rows[0], letter, sympy.S.Reals)
    if len(rows) != 1 or not isinstance(values, sympy.FiniteSet) or len(values) != 1:
        raise NotExact("an equation has not one solution")
    return str(letter), values.args[0]


def _same_line(first: t.Relation, other: t.Relation) -> bool:
    """Tell whether two equations are of one line: every point of each is on the other."""
    x, y = symbol("x"), symbol("y")
    rows = []
    for relation in (first, other):
        (row,) = equations(relation)
        polynomial = sympy.Poly(sympy.expand(row), x, y)
        if polynomial.total_degree() != 1:
            raise NotExact("the equation is not that of a straight line")
        rows.append([polynomial.coeff_monomial(monomial) for monomial in (x, y, 1)])
    return bool(sympy.Matrix(rows).rank() == 1)


def _same_terms(first: t.Node, other: t.Node) -> bool:
    """Tell whether two sequences begin with the same terms: listed, or by a rule for the nth."""
    lists = [node for node in (first, other) if isinstance(node, t.Listing)]
    count = len(lists[0].parts)
    if count < 3 or any(len(node.parts) != count or node.brackets for node in lists):
        raise NotExact("there are not three terms in each list, or more")
    n, rows = symbol("n"), []
    for node in (first, other):
        if isinstance(node, t.Listing):
            rows.append([to_sympy(part) for part in node.parts])
            continue
        rule = to_sympy(node)
        if isinstance(rule, list) or rule.free_symbols != {n}:
            raise NotExact("beside a list of terms there is something else than a rule in n")
        rows.append([rule.subs(n, place) for place in range(1, count + 1)])
    return all(is_zero(a - b) for a, b in zip(*rows, strict=True))


def odd_one_out(ask: OddOneOut, key: t.Node) -> Finding:
    """Return the letter of the card that sympy finds worth something else than every other.

    >>> from itembank.notation import parse
    >>> cards = tuple(map(parse, ("2(x + 1)", "2x + 2", "2x + 1")))
    >>> odd_one_out(OddOneOut(cards), t.Label("C")).fault
    ''
    """
    count = len(ask.cards)
    apart = [
        sum(
            not same(ask.cards[place], ask.cards[rival]) for rival in range(count) if rival != place
        )
        for place in range(count)
    ]
    # The odd one is apart from all others, and each of those from it alone.
    if sorted(apart) != [*[1] * (count - 1), count - 1] or count < 3:
        raise NotExact("there is not exactly one odd one out")
    name = t.Label(LETTERS[apart.index(count - 1)])
    return found(name, key, key == name)


def faulty_line(ask: FaultyLine, key: t.Node) -> Finding:
    """Return the line at which sympy finds that a solution goes wrong, and hold the key to it.

    >>> from itembank.notation import parse
    >>> ask = FaultyLine(parse("1/2 + 1/3"), (parse("3/6 + 2/6"), parse("5/12")))
    >>> faulty_line(ask, parse('"line 2", 5/6')).fault
    ''
    """
    before, wrong = ask.question, []
    for number, line in enumerate(ask.lines, start=1):
        if not same(before, line):
            wrong.append(number)
        before = line
    if len(wrong) != 1:
        raise NotExact(f"{len(wrong)} lines do not follow from the line before, and not one")
    name = t.Label(f"line {wrong[0]}")
    parts = key.parts if isinstance(key, t.Listing) else ()
    right = len(parts) == 2 and parts[0] == name and same(ask.question, parts[1])
    return found(name, key, right, "" if right else "the answer is that line and the right result")


def pairs(ask: Match, key: t.Node) -> Finding:
    """Return the partner that sympy finds for each card.

    >>> from itembank.notation import parse
    >>> ask = Match((parse("x + x"), parse("x * x")), (parse("x^2"), parse("2x")))
    >>> pairs(ask, parse('"A–Q", "B–P"')).fault
    ''
    """
    names = []
    for letter, card in zip(LETTERS, ask.cards, strict=False):
        fits = [n for n, match in zip(PARTNERS, ask.partners, strict=False) if same(card, match)]
        if len(fits) != 1:
            raise NotExact(f"{letter} has {len(fits)} partners, and not one")
        names.append((letter, fits[0]))
    if len({partner for _, partner in names}) != len(names):
        raise NotExact("two cards have one partner")
    ours = t.Listing(tuple(t.Label(f"{card}–{partner}") for card, partner in names))
    return found(ours, key, key == ours)


def truth(ask: TrueOrFalse, key: t.Node) -> Finding:
    """Return what sympy makes of a statement.

    >>> from itembank.notation import parse
    >>> truth(TrueOrFalse(parse("3x - 2 = 10"), (parse("x = 4"),)), t.Label("true")).fault
    ''
    """
    letters = t.symbols(ask.statement) - {"π"}
    known = {}
    for given in ask.given:
        if not (isinstance(given.first, t.Sym) and len(given.rest) == 1):
            raise NotExact("what is given is not a letter and its value")
        known[symbol(given.first.name)] = to_sympy(given.rest[0][1])
    if ask.given and set(map(str, known)) != letters:
        raise NotExact("what is given is not each letter of the statement")
    sides = [ask.statement.first, *(side for _, side in ask.statement.rest)]
    signs = [op for op, _ in ask.statement.rest]
    holds = all(
        _holds(sides[n], op, sides[n + 1], known, bool(letters)) for n, op in enumerate(signs)
    )
    name = t.Label("true" if holds else "false")
    return found(name, key, key == name)


def _holds(left: t.Node, op: str, right: t.Node, known: dict[Any, Any], letters: bool) -> bool:
    if isinstance(left, t.Ratio | t.Listing) or isinstance(right, t.Ratio | t.Listing):
        if op not in ("=", "≠") or type(left) is not type(right):
            raise NotExact("a ratio is held to be equal to a ratio or not, and to nothing else")
        return same(left, right) == (op == "=")
    gap = (to_sympy(left) - to_sympy(right)).subs(known)
    zero = is_zero(gap)
    if op in ("=", "≠"):
        return zero == (op == "=")
    if letters and not known:
        raise NotExact("it is not decided here whether it is true for every letter")
    above = not zero and bool(gap.is_positive)
    if not zero and gap.is_positive is None:
        raise NotExact("sympy cannot tell which side is larger")
    return {"<": not zero and not above, ">": above, "≤": not above, "≥": zero or above}[op]
