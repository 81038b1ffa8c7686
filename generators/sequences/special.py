"""Special numbers and sequences: squares, cubes, triangular numbers, and sums of two terms.

Key stage 3, algebra (England, 2013): "recognise geometric sequences and appreciate other sequences
that arise" (from memory), such as square, cube and triangular numbers, and sequences like
Fibonacci's.
"""

from __future__ import annotations

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
from generators.sequences._square_numbers import square_between, squares_apart
from generators.sequences._sums_of_two_before import (
    further_term,
    missing_term,
    next_terms,
    second_term,
    terms_from,
    with_letters,
)
from generators.sequences._writing import asking, ending
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


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
        terms, place = terms_from(a, b, 4), (a + b) % 2 + 1
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
    spaces = kinds.with_working_spotted(
        spaces,
        "sequences.special",
        kinds.working_goes_wrong(
            {
                NOT_HALVED: (e.left_out,),
                DOUBLES: (e.added,),
                TRIPLES: (e.added,),
                SQUARES: (e.left_out,),
                ONE_FEWER: (e.cut_short,),
            }
        ),
    )

    def make(self, tier: Tier, kind: int, a: int, b: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, a, b)
        if tier is Tier.SUPPORT:
            if kind == 3:
                return next_terms(twin, a, b)
            return (_square, _cube, _triangular)[kind](twin, a)
        if tier is Tier.CORE:
            return (further_term, missing_term, square_between, squares_apart)[kind](twin, a, b)
        return (with_letters, second_term, _two_triangular)[kind](twin, a, b)


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
