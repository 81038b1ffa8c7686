"""Quadratic equations that factorise.

Key stage 4, algebra (England, 2014): "solve quadratic equations … algebraically by factorising"
(from memory). Many schools begin it in year 9, after expanding and factorising.
"""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.equations._root_mistakes import (
    DIVIDES_LETTER,
    HALVES,
    NEGATIVE_LENGTH,
    NOT_ZERO,
    ONE_ROOT,
    OTHER_SIDE,
    ROOT_OF_LETTER,
    SIGNS,
)
from generators.equations._roots import (
    FACTOR_NOUGHT,
    ZERO,
    either_bracket,
    factors_told,
    root_is,
    root_or,
    trinomial,
    two_brackets,
)
from generators.equations._writing import lead, letter, side
from itembank.items import kinds
from itembank.items.asks import Solve
from itembank.items.item import Draft, Pick, Step, Tier, prompt
from itembank.items.measures.years import QUADRATIC_EQUATIONS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


def _support(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # x² = a²
        return b == 1 and a > 2
    if kind in (1, 3):  # (x − a)(x + b) = 0, (x − a)(x − b) = 0
        return a < b < 13 if kind == 3 else a != b and a < 11
    return b == 1 and a > 1  # x(x − a) = 0 or x(x + a) = 0


def _core(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # (x + a)(x + b)
        return a < b and a * b < 61
    if kind == 1:  # (x − a)(x − b)
        return a < b and a * b < 61
    if kind == 2:  # (x + a)(x − b)
        return a != b and a * b < 49 and abs(a - b) < 9
    return b == 1 and a > 1  # x² = ax


def _challenge(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # x² + cx = d, to be made 0
        return a != b and a * b < 61 and abs(a - b) > 1
    if kind == 1:  # a rectangle, b longer than wide
        return a > 2 and b < 11 and a != b
    return a > 1 and b in (2, 3, 5) and a % b > 0  # (bx − a)(x + 1) or so


_STORIES = (
    "A rectangular garden is {b} metres longer than it is wide. Its area is {p} square metres. "
    "Work out its width in metres.",
    "A rectangular pool is {b} metres longer than it is wide. Its area is {p} square metres. "
    "Work out its width in metres.",
    "A rectangular hall is {b} metres longer than it is wide. Its area is {p} square metres. "
    "Work out its width in metres.",
    "A rectangular yard is {b} metres longer than it is wide. Its area is {p} square metres. "
    "Work out its width in metres.",
)


@register
class Quadratics(Topic):
    """Squares and products that are 0; trinomials to factorise; to be made 0, and in stories."""

    id = "equations.quadratics"
    title = "Quadratic equations by factorising"
    statements = ("algebra.manipulation",)
    prerequisites = ("algebra.factorise-quadratics", "equations.both-sides")
    later = {
        Tier.SUPPORT: (Part(QUADRATIC_EQUATIONS),),
        Tier.CORE: (Part(QUADRATIC_EQUATIONS),),
        Tier.CHALLENGE: (Part(QUADRATIC_EQUATIONS, lambda kind, a, b: kind != 1),),
    }
    misconceptions = (
        *(ONE_ROOT, HALVES, SIGNS, NOT_ZERO, DIVIDES_LETTER, ROOT_OF_LETTER),
        *(NEGATIVE_LENGTH, OTHER_SIDE),
    )
    spare = "few squares and products are known by heart"
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(4), a=range(1, 16), b=range(1, 13)),
        Tier.CORE: Space(_core, kind=range(4), a=range(1, 13), b=range(1, 16)),
        Tier.CHALLENGE: Space(_challenge, kind=range(3), a=range(1, 13), b=range(1, 13)),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, a: int, b: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, a, b)
        x = letter(kind, a, b)
        if tier is Tier.SUPPORT:
            if kind in (1, 3):
                return _product(x, a, b if kind == 1 else -b, twin)
            return _square(x, a, twin) if kind == 0 else _with_nought(x, a, twin)
        if tier is Tier.CORE:
            if kind == 3:
                return _letter_twice(x, a, twin)
            signs = ((1, 1), (-1, -1), (1, -1))[kind]
            return _trinomial(x, signs[0] * a, signs[1] * b, twin)
        if kind == 0:
            return _to_be_made_nought(x, a, b, twin)
        return _rectangle(x, a, b, twin) if kind == 1 else _leading(x, a, b, twin)


def _draft(
    x: t.Sym,
    equation: t.Relation,
    roots: tuple[Fraction | int, Fraction | int],
    steps: tuple[Step, ...],
    wrong: list[Wrong],
    twin: tuple[object, ...],
) -> Draft:
    key = root_or(x, *roots)
    return Draft(
        prompt("Solve {e}.", e=equation),
        Solve((equation,)),
        key,
        "roots",
        steps if steps[-1].maths == key else (*steps, Step("Write both solutions.", key)),
        slips(*wrong, key=key),
        twin,
    )


def _square(x: t.Sym, a: int, twin: tuple[object, ...]) -> Draft:
    equation = t.equals(t.Power(x, t.Int(2)), t.Int(a * a))
    return _draft(
        x,
        equation,
        (a, -a),
        (Step(f"{a} × {a} is {a * a}, and so is −{a} × (−{a}).", root_or(x, a, -a)),),
        [(ONE_ROOT, root_is(x, a)), (HALVES, root_is(x, Fraction(a * a, 2)))],
        twin,
    )


def _product(x: t.Sym, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    equation = t.equals(two_brackets(x, -a, b), ZERO)
    return _draft(
        x,
        equation,
        (a, -b),
        (Step(FACTOR_NOUGHT + " Make each bracket 0.", root_or(x, a, -b)),),
        [(SIGNS, root_or(x, -a, b)), (ONE_ROOT, root_is(x, a))],
        twin,
    )


def _with_nought(x: t.Sym, a: int, twin: tuple[object, ...]) -> Draft:
    plus = a if a % 2 else -a
    equation = t.equals(t.Juxt((x, t.Bracket(side(1, x, plus)))), ZERO)
    return _draft(
        x,
        equation,
        (0, -plus),
        (Step(FACTOR_NOUGHT + f" Make {x.name} 0, then the bracket.", root_or(x, 0, -plus)),),
        [(SIGNS, root_or(x, 0, plus)), (DIVIDES_LETTER, root_is(x, -plus))],
        twin,
    )


def _trinomial(x: t.Sym, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    equation = t.equals(trinomial(x, a + b, a * b), ZERO)
    return _draft(
        x,
        equation,
        (-a, -b),
        (Step(factors_told(a, b), t.equals(two_brackets(x, a, b), ZERO)), either_bracket(x, a, b)),
        [(SIGNS, root_or(x, a, b)), (ONE_ROOT, root_is(x, -a))],
        twin,
    )


def _letter_twice(x: t.Sym, a: int, twin: tuple[object, ...]) -> Draft:
    lots = t.juxt(t.Int(a), x)
    equation = t.equals(t.Power(x, t.Int(2)), lots)
    return _draft(
        x,
        equation,
        (0, a),
        (
            Step("Make one side 0.", t.equals(t.sub(t.Power(x, t.Int(2)), lots), ZERO)),
            Step(f"Take out {x.name}.", t.equals(t.Juxt((x, t.Bracket(side(1, x, -a)))), ZERO)),
            either_bracket(x, 0, -a),
        ),
        [(DIVIDES_LETTER, root_is(x, a)), (SIGNS, root_or(x, 0, -a))],
        twin,
    )


def _to_be_made_nought(x: t.Sym, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return x² + (a − b)x = ab, or x² = (b − a)x + ab."""
    middle, end = a - b, a * b
    if (a + b) % 2:
        equation = t.equals(trinomial(x, middle, 0), t.Int(end))
        undo = f"Subtract {end} from both sides."
        right: Fraction | int = end
        wrong: list[Wrong] = [(NOT_ZERO, root_or(x, right, right - middle))]
    else:
        right_side = side(-middle, x, end) if middle < 0 else lead(end, -middle, x)
        equation = t.equals(t.Power(x, t.Int(2)), right_side)
        undo = "Make one side 0."
        wrong = [(ONE_ROOT, root_is(x, b))]
    return _draft(
        x,
        equation,
        (-a, b),
        (
            Step(undo, t.equals(trinomial(x, middle, -end), ZERO)),
            Step(factors_told(a, -b), t.equals(two_brackets(x, a, -b), ZERO)),
            either_bracket(x, a, -b),
        ),
        [(SIGNS, root_or(x, a, -b)), *wrong],
        twin,
    )


def _rectangle(x: t.Sym, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return a rectangle a wide and a + b long."""
    area = a * (a + b)
    relation = t.equals(t.Juxt((x, t.Bracket(side(1, x, b)))), t.Int(area))
    return Draft(
        prompt(by_turns(_STORIES, a + b), b=t.Int(b), p=t.Int(area)),
        Pick(Solve((relation,)), "positive"),
        t.Int(a),
        "integer",
        (
            Step(f"Write {x.name} for the width in metres.", relation),
            Step("Expand, and make one side 0.", t.equals(trinomial(x, b, -area), ZERO)),
            Step(factors_told(a + b, -a), t.equals(two_brackets(x, a + b, -a), ZERO)),
            Step("A width is more than 0.", t.Int(a)),
        ),
        slips(
            (OTHER_SIDE, t.Int(a + b)),
            (NEGATIVE_LENGTH, t.num(-a - b)),
            key=t.Int(a),
        ),
        twin,
    )


def _leading(x: t.Sym, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return (bx − a)(x + c) = 0 multiplied out; c goes with a."""
    c = a % 3 + 1
    equation = t.equals(trinomial(x, b * c - a, -a * c, b), ZERO)
    factors = t.Juxt((t.Bracket(side(b, x, -a)), t.Bracket(side(1, x, c))))
    return _draft(
        x,
        equation,
        (Fraction(a, b), -c),
        (
            Step("Factorise.", t.equals(factors, ZERO)),
            Step(
                FACTOR_NOUGHT,
                t.Either((t.equals(t.juxt(t.Int(b), x), t.Int(a)), t.equals(x, t.num(-c)))),
            ),
        ),
        [(SIGNS, root_or(x, Fraction(-a, b), c)), (ONE_ROOT, root_is(x, -c))],
        twin,
    )
