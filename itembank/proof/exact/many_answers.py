"""The first road to questions with many right answers: exact arithmetic and a search.

The key is one of the answers, printed as an example. It is held to every condition by exact
arithmetic; and a search that does not look at the key has to find at least two answers, so that
the question has many indeed.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import islice, pairwise
from math import ceil, floor

from itembank.items.asks import Give
from itembank.items.forms.form_rules import number_node
from itembank.items.membership import are_right, others, unmet
from itembank.notation import tree as t
from itembank.notation.linear import linear
from itembank.notation.value import NotExact, exact, over, sides
from itembank.proof.claim.finding import Finding, text
from itembank.proof.exact.reckoning.elimination import minus
from itembank.proof.exact.reckoning.ranges import statement, turning_places

MOST_TRIED = 2000
"""Whole numbers that are tried, from the least that may be right."""
WHOLE = frozenset(["whole", "even", "odd", "prime", "square", "cube", "multiple", "factor"])
"""Conditions that only whole numbers meet."""


def find_given(ask: Give, key: t.Node) -> Finding:
    """Return an answer that is right, and how the key is not.

    Raises:
        NotExact: fewer than two answers are found, or a number has no exact value.

    >>> from itembank.notation import parse
    >>> ask = Give((t.Sym("x"),), (parse("1/3 < x < 1/2"),))
    >>> find_given(ask, parse("2/5")).shown
    'for example 7/18'
    >>> find_given(ask, parse("5/6")).fault
    '7/18 would be right, the key says 5/6; 5/6 is not between 1/3 and 1/2: it is more than 1/2'
    """
    found: list[tuple[Fraction, ...]] = []
    for answer in _answers(ask):
        if are_right(ask, answer):
            found.append(answer)
        if others(found) > 1:
            break
    fault = unmet(ask, key)
    if others(found) < 2:
        # The search came to nothing, but the key itself breaks a condition: that is enough.
        if fault and not found:
            return Finding("", fault)
        only = f"no answer but {text(answer_node(found[0]))}" if found else "no right answer"
        raise NotExact(f"{only} is found, where there should be many")
    ours = text(answer_node(found[0]))
    if fault:
        says = f"{ours} would be right, the key says {text(key)}; {fault}"
        return Finding(f"for example {ours}", says)
    return Finding(f"for example {ours}")


def answer_node(values: tuple[Fraction, ...]) -> t.Node:
    """Return numbers as one answer: a number, or a list."""
    nodes = tuple(map(number_node, values))
    return nodes[0] if len(nodes) == 1 else t.Listing(nodes)


def _answers(ask: Give) -> Iterator[tuple[Fraction, ...]]:
    """Yield numbers that may be answers; those that are not are thrown out later."""
    first, *rest = ask.letters
    if not rest:
        for value in islice(_values(ask), MOST_TRIED):
            yield (value,)
        return
    if len(rest) > 1:
        raise NotExact("more than two numbers at once are not looked for here")
    equations = [
        relation for relation in ask.relations if all(op == "=" for op, _ in relation.rest)
    ]
    for value in islice(_values(ask), MOST_TRIED // 4):
        if not equations:
            for second in islice(_values(ask), MOST_TRIED // 100):
                yield value, second
        for equation in equations[:1]:
            found = _other(equation, {first.name: value}, rest[0].name)
            if found is not None:
                yield value, found


def _other(equation: t.Relation, known: dict[str, Fraction], letter: str) -> Fraction | None:
    """Return what an equation makes of a second letter, where the first is known; None for none."""
    form = minus(linear(equation.first, known), linear(equation.rest[0][1], known))
    slope = form.get(letter)
    return over(-form.get("", 0), slope) if slope else None


def _values(ask: Give) -> Iterator[Fraction]:
    """Yield the numbers that one letter may be."""
    names = {condition.name: condition for condition in ask.conditions}
    if "factor" in names:
        n = exact(names["factor"].of[0])
        limit = abs(n.numerator) if n.denominator == 1 else 0
        yield from (Fraction(k) for k in range(1, min(limit, 10 * MOST_TRIED) + 1) if n % k == 0)
        return
    places = _places(ask)
    if not WHOLE & set(names):
        yield from places
        # Twelfths hold the halves, thirds and quarters that such questions have for answers.
        yield from (Fraction(sign * k, 12) for k in range(1, MOST_TRIED) for sign in (1, -1))
        return
    step = abs(exact(names["multiple"].of[0])) if "multiple" in names else Fraction(1)
    if step.denominator != 1 or not step:
        raise NotExact("a multiple is one of a whole number that is not 0")
    low = floor(min(places) / step) if places else 0
    high = ceil(max(places) / step) if places else 0
    # From the least that may be right on; and where there is no least, from the greatest down.
    yield from (k * step for k in range(low, low + MOST_TRIED // 2))
    yield from (k * step for k in range(high, high - MOST_TRIED // 2, -1))


def _places(ask: Give) -> list[Fraction]:
    """Return where relations in one letter turn from true to false, and points between."""
    found: list[Fraction] = []
    for letter in ask.letters:
        about = [
            relation for relation in ask.relations if t.symbols(relation) - {"π"} == {letter.name}
        ]
        turns = sorted({place for relation in about for place in _turns(relation, letter)})
        if turns:
            # Two points of every gap, so that a gap with many answers shows two.
            found += [(2 * a + b) / 3 for a, b in pairwise(turns)]
            found += [(a + 2 * b) / 3 for a, b in pairwise(turns)]
            found += [turns[0] - 1, turns[0] - 2, *turns, turns[-1] + 1, turns[-1] + 2]
    return found


def _turns(relation: t.Relation, letter: t.Sym) -> list[Fraction]:
    """Return where a relation in one letter turns: its bounds, where the letter stands alone."""
    found = []
    for left, _, right in sides(relation):
        if letter not in (left, right):
            places = turning_places(statement((relation,), letter.name))
            return [place.rational for place in places if place.is_rational]
        found.append(exact(right if left == letter else left))
    return found
