"""Special numbers and sequences: squares, cubes, triangular numbers, and sums of two terms.

Key stage 3, algebra (England, 2013): "recognise geometric sequences and appreciate other sequences
that arise" (from memory), such as square, cube and triangular numbers, and sequences like
Fibonacci's.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.sequences._special_mistakes import (
    ADDED_BACK,
    ADDS_LAST_STEP,
    DIFFERENCE_SQUARED,
    DOUBLES,
    DOUBLES_LAST,
    EQUAL_SHARES,
    HALF_WAY,
    NOT_BETWEEN,
    NOT_HALVED,
    NUMBER_SQUARED,
    ONE_FEWER,
    ONE_MORE,
    ONE_ONLY,
    ONE_ROW_LESS,
    SQUARES,
    TRIPLES,
)
from generators.sequences._writing import asking, ending, listed
from itembank.items import kinds
from itembank.items.item import Condition, Draft, Find, Give, Rewrite, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _fibonacci(a: int, b: int, count: int) -> list[int]:
    terms = [a, b]
    while len(terms) < count:
        terms.append(terms[-1] + terms[-2])
    return terms


def _support(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # square numbers
        return b == 1 and 2 < a < 21
    if kind == 1:  # cube numbers
        return b == 1 and 1 < a < 13 and a != 3
    if kind == 2:  # triangular numbers
        return b == 1 and 3 < a < 21
    return a < 15 and a != b and 2 * b != a  # the next of a sequence


def _core(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # a term far on
        return a != b and a < 13
    if kind == 1:  # a gap, and no number half way between its neighbours
        terms, place = _fibonacci(a, b, 4), (a + b) % 2 + 1
        return a != b and a < 13 and b > 1 and _uneven(terms[place - 1 : place + 2])
    if kind == 2:  # a square number between two numbers
        return a > 2 and a < 15 and b < 8 and a > b
    return b > 1 and a > b + 2 and a < 15  # the difference of two squares


def _uneven(terms: list[int]) -> bool:
    low, middle, high = terms
    return low + high != 2 * middle


def _challenge(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # letters
        return a < 8
    if kind == 1:  # the second term, from the first and a later one
        return a != b
    return b == 2 and a > 2  # two triangular numbers after each other


@register
class Special(Topic):
    """A named number, the next term; terms far on and gaps; letters and terms found backwards."""

    id = "sequences.special"
    title = "Special sequences"
    statements = ("algebra.other-sequences",)
    prerequisites = ("sequences.term-to-term",)
    misconceptions = (
        *(DOUBLES, SQUARES, TRIPLES, ONE_ROW_LESS, NOT_HALVED, ADDS_LAST_STEP, DOUBLES_LAST),
        *(ONE_MORE, ONE_FEWER, ADDED_BACK, HALF_WAY, NUMBER_SQUARED, NOT_BETWEEN),
        *(DIFFERENCE_SQUARED, EQUAL_SHARES, ONE_ONLY),
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=range(4), a=range(1, 21), b=range(1, 15))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(_core, kind=range(4), a=range(1, 15), b=range(1, 12))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(_challenge, kind=range(3), a=range(1, 16), b=range(1, 13))
        ),
    }

    def make(self, tier: Tier, kind: int, a: int, b: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, a, b)
        if tier is Tier.SUPPORT:
            if kind == 3:
                return _next(twin, a, b)
            return (_square, _cube, _triangular)[kind](twin, a)
        if tier is Tier.CORE:
            return (_far, _gap, _between, _apart)[kind](twin, a, b)
        return (_letters, _second, _two_triangular)[kind](twin, a, b)


def _named(
    name: str,
    place: int,
    asked: t.Node,
    value: int,
    say: str,
    wrong: Any,
    twin: Any,
    constants: Any,
) -> Draft:
    return Draft(
        prompt(f"Work out the {{n}}{ending(place)} {name} number.", n=t.Int(place)),
        Find(asked),
        t.Int(value),
        "integer",
        (Step(say, t.equals(asked, t.Int(value))),),
        slips(*wrong, key=t.Int(value)),
        twin,
        constants=constants,
    )


def _square(twin: Any, n: int) -> Draft:
    asked = t.times(t.Int(n), t.Int(n))
    wrong = (
        (asking(DOUBLES, f"What is {n} squared: {n} + {n}, or {n} × {n}?"), 2 * n),
        (ONE_FEWER, (n - 1) ** 2),
    )
    return _named("square", n, asked, n * n, f"Multiply {n} by itself.", wrong, twin, ())


def _cube(twin: Any, n: int) -> Draft:
    asked = t.times(t.Int(n), t.Int(n), t.Int(n))
    wrong = (
        (asking(TRIPLES, f"What is {n} cubed: {n} × 3, or {n} × {n} × {n}?"), 3 * n),
        (SQUARES, n * n),
    )
    say = f"A cube number has three equal factors, here {n}."
    return _named("cube", n, asked, n**3, say, wrong, twin, ())


def _triangle(n: int) -> int:
    return n * (n + 1) // 2


def _triangle_tree(n: int) -> t.Node:
    after = t.Bracket(t.add(t.Int(n), t.Int(1)))
    return t.Product(t.Int(n), (("×", after), ("÷", t.Int(2))))


def _triangular(twin: Any, n: int) -> Draft:
    wrong = ((ONE_ROW_LESS, _triangle(n - 1)), (NOT_HALVED, n * (n + 1)))
    say = f"Add the numbers from 1 to {n}: half of {n} × {n + 1}."
    return _named("triangular", n, _triangle_tree(n), _triangle(n), say, wrong, twin, (1, 2))


_RULE = "Each term of a sequence is the sum of the two terms before it."


def _next(twin: Any, a: int, b: int) -> Draft:
    terms = _fibonacci(a, b, 5)
    *given, value = terms
    asked = t.add(t.Int(given[2]), t.Int(given[3]))
    return Draft(
        prompt(_RULE + " Find the next term: {s}.", s=listed(given)),
        Find(asked),
        t.Int(value),
        "integer",
        (Step("Add the last two terms.", t.equals(asked, t.Int(value))),),
        slips(
            (ADDS_LAST_STEP, 2 * given[3] - given[2]),
            (DOUBLES_LAST, 2 * given[3]),
            key=t.Int(value),
        ),
        twin,
    )


def _far(twin: Any, a: int, b: int) -> Draft:
    place = 5 + (a + b) % 3
    terms = _fibonacci(a, b, place + 1)
    nodes: list[t.Node] = [t.Int(a), t.Int(b)]
    for _ in range(place - 2):
        high, low = nodes[-1], nodes[-2]
        nodes.append(t.Sum(*_flat(low, high)))
    steps = []
    for k in range(2, place):
        line = t.equals(t.add(t.Int(terms[k - 2]), t.Int(terms[k - 1])), t.Int(terms[k]))
        steps.append(Step(f"The {k + 1}{ending(k + 1)} term.", line))
    value = terms[place - 1]
    return Draft(
        prompt(
            "The first two terms of a sequence are {a} and {b}. Each of the next terms is the sum "
            f"of the two terms before it. Work out the {{k}}{ending(place)} term.",
            a=t.Int(a),
            b=t.Int(b),
            k=t.Int(place),
        ),
        Find(nodes[place - 1]),
        t.Int(value),
        "integer",
        tuple(steps),
        slips(
            (ONE_FEWER, terms[place - 2]),
            (ONE_MORE, terms[place]),
            (ADDS_LAST_STEP, a + (place - 1) * (b - a)),
            key=t.Int(value),
        ),
        twin,
    )


def _flat(low: t.Node, high: t.Node) -> Any:
    """Return the parts of a sum of two sums, in one row."""
    first = low.first if isinstance(low, t.Sum) else low
    rest: tuple[tuple[t.SumOp, t.Node], ...] = low.rest if isinstance(low, t.Sum) else ()
    rest = (*rest, ("+", high.first if isinstance(high, t.Sum) else high))
    return first, (*rest, *(high.rest if isinstance(high, t.Sum) else ()))


def _gap(twin: Any, a: int, b: int) -> Draft:
    box = t.Blank()
    terms = _fibonacci(a, b, 4)
    place = (a + b) % 2 + 1
    parts = tuple(box if k == place else t.Int(value) for k, value in enumerate(terms))
    before, value, after = terms[place - 1], terms[place], terms[place + 1]
    relation = t.equals(t.add(t.Int(before), box), t.Int(after))
    return Draft(
        prompt(_RULE + " Find the missing term: {s}.", s=t.Listing(parts)),
        Find(box, (relation,)),
        t.Int(value),
        "integer",
        (
            Step("The missing term and the one before it add up to the one after it.", relation),
            Step(
                "Subtract the term before it from the term after it.",
                t.equals(t.sub(t.Int(after), t.Int(before)), t.Int(value)),
            ),
        ),
        slips(
            (ADDED_BACK, before + after),
            (HALF_WAY, Fraction(before + after, 2)),
            key=t.Int(value),
        ),
        twin,
    )


def _between(twin: Any, a: int, b: int) -> Draft:
    """Ask for a square number: two of them lie between."""
    low, high = a * a - b, (a + 1) ** 2 + b
    n = t.Sym("n")
    relation = t.Relation(t.Int(low), (("<", n), ("<", t.Int(high))))
    key = t.Int(a * a)
    return Draft(
        prompt("Write a square number that is between {a} and {b}.", a=t.Int(low), b=t.Int(high)),
        Give((n,), (relation,), (Condition("square"),)),
        key,
        "integer",
        (
            Step(
                f"{a} × {a} lies between the two numbers.",
                t.equals(t.times(t.Int(a), t.Int(a)), key),
            ),
        ),
        slips((NUMBER_SQUARED, a), (NOT_BETWEEN, (a - 1) ** 2), key=key),
        twin,
    )


def _apart(twin: Any, a: int, b: int) -> Draft:
    high, low = t.times(t.Int(a), t.Int(a)), t.times(t.Int(b), t.Int(b))
    asked, value = t.sub(high, low), a * a - b * b
    return Draft(
        prompt(
            f"How much larger is the {{a}}{ending(a)} square number than the {{b}}{ending(b)} "
            "square number?",
            a=t.Int(a),
            b=t.Int(b),
        ),
        Find(asked),
        t.Int(value),
        "integer",
        (
            Step(f"The {a}{ending(a)} square number.", t.equals(high, t.Int(a * a))),
            Step(f"The {b}{ending(b)} square number.", t.equals(low, t.Int(b * b))),
            Step("Subtract.", t.equals(t.sub(t.Int(a * a), t.Int(b * b)), t.Int(value))),
        ),
        slips(
            (DIFFERENCE_SQUARED, (a - b) ** 2),
            (DOUBLES, 2 * a - 2 * b),
            key=t.Int(value),
        ),
        twin,
    )


def _letters(twin: Any, a: int, b: int) -> Draft:
    x, y = (t.Sym(name) for name in ("xy", "kn", "tw")[(a + b) % 3])
    place = 5 + (a + b) % 2
    first, second = t.juxt(t.Int(a), x), t.juxt(t.Int(b), y)
    rows = [(a, 0), (0, b)]
    nodes: list[t.Node] = [first, second]
    steps = []
    for k in range(2, place):
        rows.append((rows[-1][0] + rows[-2][0], rows[-1][1] + rows[-2][1]))
        nodes.append(t.add(t.juxt(t.Int(rows[-1][0]), x), t.juxt(t.Int(rows[-1][1]), y)))
        if k < place - 1:
            steps.append(Step(f"The {k + 1}{ending(k + 1)} term is {_said(nodes[-1])}."))
    before, last = nodes[-3], nodes[-2]
    added = t.Sum(*_flat(before, last))
    sums: list[t.Node] = [first, second]
    for _ in range(place - 2):
        sums.append(t.Sum(*_flat(sums[-2], sums[-1])))
    key = nodes[-1]
    times = rows[-1][1] // b
    return Draft(
        prompt(
            "The first two terms of a sequence are {a} and {b}. Each of the next terms is the sum "
            f"of the two terms before it. Write an expression for the {{k}}{ending(place)} term in "
            "its simplest form.",
            a=first,
            b=second,
            k=t.Int(place),
        ),
        Rewrite(sums[-1], "simplify"),
        key,
        "simplified",
        (*steps, Step("Add the last two terms.", t.equals(added, key))),
        slips(
            (ONE_FEWER, last),
            (EQUAL_SHARES, t.add(t.juxt(t.Int(a * times), x), t.juxt(t.Int(b * times), y))),
            key=key,
        ),
        twin,
    )


def _said(node: t.Node) -> str:
    from itembank.notation.line import shown_line

    return shown_line(node)


def _second(twin: Any, a: int, b: int) -> Draft:
    place = 4 + (a + b) % 2
    terms = _fibonacci(a, b, place)
    x = t.Sym("x")
    m, n = (1, 2) if place == 4 else (2, 3)
    value = terms[-1]
    nodes: list[t.Node] = [t.Int(a), x]
    for _ in range(place - 2):
        nodes.append(t.Sum(*_flat(nodes[-2], nodes[-1])))
    relation = t.equals(nodes[-1], t.Int(value))
    lots = t.equals(t.add(t.juxt(t.Int(n), x), t.Int(m * a)), t.Int(value))
    return Draft(
        prompt(
            "In a sequence each term from the third on is the sum of the two terms before it. The "
            f"first term is {{a}} and the {{k}}{ending(place)} term is {{v}}. Work out the second "
            "term.",
            a=t.Int(a),
            k=t.Int(place),
            v=t.Int(value),
        ),
        Find(x, (relation,)),
        t.Int(b),
        "integer",
        (
            Step(
                f"Write x for the second term. The third is {a} + x. Go on to the "
                f"{place}{ending(place)} term.",
                lots,
            ),
            Step(
                f"Subtract {m * a} from both sides.",
                t.equals(t.juxt(t.Int(n), x), t.Int(value - m * a)),
            ),
            Step(f"Divide both sides by {n}.", t.equals(x, t.Int(b))),
        ),
        slips(
            (ONE_ONLY, value - m * a),
            (HALF_WAY, Fraction(a + value, 2)),
            key=t.Int(b),
        ),
        twin,
    )


def _two_triangular(twin: Any, a: int, _: int) -> Draft:
    first, second = _triangle_tree(a), _triangle_tree(a + 1)
    low, high = _triangle(a), _triangle(a + 1)
    asked = t.add(first, second)
    return Draft(
        prompt(
            f"Work out the sum of the {{a}}{ending(a)} and the {{b}}{ending(a + 1)} triangular "
            "numbers.",
            a=t.Int(a),
            b=t.Int(a + 1),
        ),
        Find(asked),
        t.Int(low + high),
        "integer",
        (
            Step(f"The {a}{ending(a)} triangular number.", t.equals(first, t.Int(low))),
            Step(f"The {a + 1}{ending(a + 1)} triangular number.", t.equals(second, t.Int(high))),
            Step(
                "Add them. It is a square number.",
                t.equals(t.add(t.Int(low), t.Int(high)), t.Int(low + high)),
            ),
        ),
        slips(
            (
                ONE_ROW_LESS,
                low + _triangle(a - 1),
            ),
            (NOT_HALVED, 2 * (low + high)),
            key=t.Int(low + high),
        ),
        twin,
        constants=(1, 2),
    )
