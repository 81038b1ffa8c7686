"""Changing the subject of a formula.

Key stage 3, algebra (England, 2013): "understand and use standard mathematical formulae; rearrange
formulae to change the subject" (from memory).
"""

from __future__ import annotations

from math import gcd

from generators._turns import by_turns
from generators.algebra._subject_asked import back_check, lots_of, subject_question
from generators.algebra._subject_deeper import deeper
from generators.algebra._subject_mistakes import (
    ADDS_DIVISOR,
    BRACKET_LEFT,
    DIVIDES_ONE,
    ONE_MULTIPLIED,
    ONE_TERM,
    ORDER,
    SAME,
    SIGN_LOST,
    SIGNS,
    SUBTRACTS,
    WRONG_WAY,
)
from generators.algebra._writing import asking, shown
from itembank.items import kinds
from itembank.items.item import Draft, Misconception, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_PAIRS = ("yx", "ba", "Cn", "rw", "wt", "hk", "Pn", "vu")
"""The letter that stands alone, and the one that is to be the subject."""
_FOURS = ("vuat", "Pkmn", "Caxy", "yhmx", "Tabn", "sump")
"""A letter alone, one that is added, and a product of two."""
_STORIES = (
    ("The cost, in pounds, of hiring a hall for {x} hours", "C"),
    ("The cost, in pounds, of {x} swimming lessons and a cap", "C"),
    ("The number of plants in a garden with {x} rows and a border", "P"),
    ("The number of seats in a hall with {x} rows and a balcony", "S"),
    ("The mass, in kilograms, of a crate with {x} bags of compost", "M"),
    ("The time, in minutes, to repair {x} bikes and tidy up", "T"),
)


def _support(kind: int, a: int, b: int, which: int) -> bool:
    """Keep one step with a number, or two with different numbers."""
    if kind < 4:
        return b == 2 and which % 2 == kind % 2
    return a != b and which == (a + b) % 8 and a > 1


def _core(kind: int, a: int, b: int, which: int) -> bool:
    if kind == 3:  # letters alone
        return which < len(_FOURS) and b == 2 and a < 6
    if kind == 4:
        return a > 2 and b % 5 == 0 and which == (a + b) % len(_STORIES)
    return a != b and a > 1 and which == (a + 2 * b) % 8


def _challenge(kind: int, a: int, b: int, c: int) -> bool:
    if kind == 0:  # y = c·5 − ax
        return (b == 2 and c > 2 and gcd(a, 5 * c) == 1) or (b == 3 and a > 2 and c > 2)
    if kind == 1:  # ax + by = c
        return (
            gcd(gcd(a, b), c) == 1
            and a != b
            and a < 7
            and c > 3
            and (a + b + c) % 3 == 0
            and c not in (a, b)
        )
    if kind == 2:  # y = (ax − b)/c
        return len({a, b, c}) == 3 and a > 1 and gcd(a, gcd(b, c)) == 1 and c < 8
    if kind == 3:  # y = a(bx − c)
        return len({a, b, c}) == 3 and b < 5 and a < 8 and c < 8
    # A = (1/2)(a + b)h and its like, or ax + b = cx + d in letters
    return a < 6 and b == 2 and c < 5


@register
class MakeSubject(Topic):
    """One step or two with numbers; letters and fractions; then the letter taken away or twice."""

    id = "algebra.make-subject"
    title = "Changing the subject of a formula"
    statements = ("algebra.formulae",)
    prerequisites = ("equations.two-step",)
    misconceptions = (
        *(SAME, SUBTRACTS, ONE_TERM, ONE_MULTIPLIED, SIGN_LOST, SIGNS, DIVIDES_ONE),
        *(BRACKET_LEFT, ADDS_DIVISOR, WRONG_WAY, ORDER),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=range(5), a=range(2, 13), b=range(2, 14), which=range(8)
        ),
        Tier.CORE: Space(_core, kind=range(5), a=range(2, 10), b=range(2, 21), which=range(8)),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(5), a=range(2, 10), b=range(2, 8), c=range(2, 14)
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, *values: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, *values)
        build = {Tier.SUPPORT: _first, Tier.CORE: _second, Tier.CHALLENGE: deeper}[tier]
        return build(twin, kind, *values)


def _first(twin: tuple[object, ...], kind: int, a: int, b: int, which: int) -> Draft:
    """Return y = x + a, y = x − a, y = ax, y = x/a or y = ax + b."""
    y, x = map(t.Sym, by_turns(_PAIRS, which))
    n = t.Int(a)
    if kind in (0, 1):
        plus, minus = t.add(x, n), t.sub(x, n)
        undone = (t.sub(y, n), t.add(y, n))
        formula, value, same = (
            (t.equals(y, plus), *undone) if kind == 0 else (t.equals(y, minus), *undone[::-1])
        )
        say = f"Subtract {a} from both sides." if kind == 0 else f"Add {a} to both sides."
        ask = back_check(y.name, x.name, formula, 20, 20 + (a if kind == 0 else -a))
        wrong = [(asking(SAME, ask), same), (asking(WRONG_WAY, ask), t.sub(n, y))]
        return subject_question(formula, x, value, [(say, t.equals(value, x))], wrong, twin)
    if kind == 2:
        formula, value = t.equals(y, lots_of(x, a)), t.Frac(y, n)
        ask = f"{shown(lots_of(x, a))} means {a} × {x.name}. What undoes multiplying by {a}?"
        wrong = [(asking(SAME, ask), lots_of(y, a)), (asking(SUBTRACTS, ask), t.sub(y, n))]
        return subject_question(
            formula, x, value, [(f"Divide both sides by {a}.", t.equals(value, x))], wrong, twin
        )
    if kind == 3:
        formula, value = t.equals(y, t.Frac(x, n)), lots_of(y, a)
        ask = f"{x.name} is divided by {a}. What undoes dividing by {a}?"
        wrong = [(asking(SAME, ask), t.Frac(y, n)), (asking(ADDS_DIVISOR, ask), t.add(y, n))]
        return subject_question(
            formula, x, value, [(f"Multiply both sides by {a}.", t.equals(value, x))], wrong, twin
        )
    return _two_steps(y, x, a, b, twin)


def _two_steps(
    y: t.Sym, x: t.Sym, a: int, b: int, twin: tuple[object, ...], story: str = ""
) -> Draft:
    """Return y = ax + b, or y = ax − b where b is negative."""
    size = t.Int(abs(b))
    formula = t.equals(y, t.add(lots_of(x, a), t.num(b)))
    over = t.sub(y, size) if b > 0 else t.add(y, size)
    other = t.add(y, size) if b > 0 else t.sub(y, size)
    value = t.Frac(over, t.Int(a))
    first = f"Subtract {b} from both sides." if b > 0 else f"Add {-b} to both sides."
    alone = t.Frac(y, t.Int(a))
    ask = back_check(y.name, x.name, formula, 10, 10 * a + b)
    return subject_question(
        formula,
        x,
        value,
        [
            (first, t.equals(over, lots_of(x, a))),
            (f"Divide both sides by {a}.", t.equals(value, x)),
        ],
        [
            (
                asking(ONE_TERM, f"When you divide by {a}, is the {abs(b)} divided as well?"),
                t.sub(alone, size) if b > 0 else t.add(alone, size),
            ),
            (asking(SAME, ask), t.Frac(other, t.Int(a))),
        ],
        twin,
        story,
    )


def _second(twin: tuple[object, ...], kind: int, a: int, b: int, which: int) -> Draft:
    if kind == 0:
        y, x = map(t.Sym, by_turns(_PAIRS, which))
        return _two_steps(y, x, a, -b, twin)
    if kind in (1, 2):
        y, x = map(t.Sym, by_turns(_PAIRS, which))
        return _over(y, x, a, b if kind == 2 else -b, twin)
    if kind == 3:
        return _letters(which, a, twin)
    text, letter = by_turns(_STORIES, which)
    x = t.Sym("nhkt"[a % 3])
    return _two_steps(t.Sym(letter), x, a, b, twin, text.replace("{x}", x.name))


def _over(y: t.Sym, x: t.Sym, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return y = x/a − b, or y = (x + b)/a."""
    n, size = t.Int(a), t.Int(abs(b))
    if b < 0:
        formula = t.equals(y, t.sub(t.Frac(x, n), size))
        value: t.Node = t.Juxt((n, t.Bracket(t.add(y, size))))
        lines = [
            (f"Add {-b} to both sides.", t.equals(t.add(y, size), t.Frac(x, n))),
            (f"Multiply both sides by {a}.", t.equals(value, x)),
        ]
        wrong: list[tuple[Misconception, t.Node]] = [
            (
                asking(ONE_MULTIPLIED, f"When you multiply by {a}, what happens to the {-b}?"),
                t.add(lots_of(y, a), size),
            ),
            (
                asking(SAME, f"What undoes dividing by {a}?"),
                t.Frac(t.add(y, size), n),
            ),
        ]
    else:
        formula = t.equals(y, t.Frac(t.add(x, size), n))
        value = t.sub(lots_of(y, a), size)
        lines = [
            (f"Multiply both sides by {a}.", t.equals(lots_of(y, a), t.add(x, size))),
            (f"Subtract {b} from both sides.", t.equals(value, x)),
        ]
        wrong = [
            (
                asking(SIGNS, f"{b} is added. What undoes adding {b}?"),
                t.add(lots_of(y, a), size),
            ),
            (
                ORDER,
                t.Juxt((n, t.Bracket(t.sub(y, size)))),
            ),
        ]
    return subject_question(formula, x, value, lines, wrong, twin)


def _letters(which: int, way: int, twin: tuple[object, ...]) -> Draft:
    """Return v = u + at and its like: for u, for a, for t, with a minus, and over a letter."""
    v, u, a, x = map(t.Sym, _FOURS[which])
    product = t.Juxt((a, x))
    if way in (2, 3):
        wanted, other = (x, a) if way == 2 else (a, x)
        formula = t.equals(v, t.add(u, product))
        value: t.Node = t.Frac(t.sub(v, u), other)
        lines = [
            (f"Subtract {u.name} from both sides.", t.equals(t.sub(v, u), product)),
            (f"Divide both sides by {other.name}.", t.equals(value, wanted)),
        ]
        wrong: list[tuple[Misconception, t.Node]] = [
            (
                asking(ONE_TERM, f"When you divide by {other.name}, what happens to the {u.name}?"),
                t.sub(t.Frac(v, other), u),
            ),
            (
                asking(SUBTRACTS, f"What undoes multiplying by {other.name}?"),
                t.sub(v, u, other),
            ),
        ]
        return subject_question(formula, wanted, value, lines, wrong, twin)
    if way == 4:
        formula = t.equals(v, t.sub(product, u))
        value = t.Frac(t.add(v, u), a)
        lines = [
            (f"Add {u.name} to both sides.", t.equals(t.add(v, u), product)),
            (f"Divide both sides by {a.name}.", t.equals(value, x)),
        ]
        wrong = [
            (SIGNS, t.Frac(t.sub(v, u), a)),
            (
                asking(ONE_TERM, f"When you divide by {a.name}, what happens to the {u.name}?"),
                t.add(t.Frac(v, a), u),
            ),
        ]
        return subject_question(formula, x, value, lines, wrong, twin)
    formula = t.equals(v, t.sub(t.Frac(x, a), u))
    value = t.Juxt((a, t.Bracket(t.add(v, u))))
    lines = [
        (f"Add {u.name} to both sides.", t.equals(t.add(v, u), t.Frac(x, a))),
        (f"Multiply both sides by {a.name}.", t.equals(value, x)),
    ]
    wrong = [
        (
            asking(ONE_MULTIPLIED, f"When you multiply by {a.name}, what happens to the {u.name}?"),
            t.add(t.Juxt((a, v)), u),
        ),
        (asking(SAME, f"What undoes dividing by {a.name}?"), t.Frac(t.add(v, u), a)),
    ]
    return subject_question(formula, x, value, lines, wrong, twin)
