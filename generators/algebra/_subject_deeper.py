"""Formulas whose new subject is taken away, stands in a bracket or under a bar, or stands twice."""

from __future__ import annotations

from generators._turns import by_turns
from generators.algebra._subject_asked import back_check, lots_of, subject_question
from generators.algebra._subject_mistakes import (
    BRACKET_LEFT,
    DIVIDES_ONE,
    ONE_MULTIPLIED,
    ONE_TERM,
    ORDER,
    SAME,
    SIGN_LOST,
    SIGNS,
)
from generators.algebra._writing import asking, shown
from itembank.items.item import Draft
from itembank.notation import tree as t

_AREAS = ("Aabh", "Ampk", "Scdw", "Txyn")


def deeper(twin: tuple[object, ...], kind: int, a: int, b: int, c: int) -> Draft:
    """Return the question of the challenge tier whose formula has this kind."""
    y, x = map(t.Sym, by_turns(("yx", "rw", "ba", "wt", "hk"), a + b + c))
    if kind == 0:
        return _taken_away(y, x, a, 5 * c if b == 2 else c, b, twin)
    if kind == 1:
        return _standard(a, b, c, twin)
    if kind == 2:
        n, over = t.Int(c), t.sub(lots_of(x, a), t.Int(b))
        formula = t.equals(y, t.Frac(over, n))
        value: t.Node = t.Frac(t.add(lots_of(y, c), t.Int(b)), t.Int(a))
        return subject_question(
            formula,
            x,
            value,
            [
                (f"Multiply both sides by {c}.", t.equals(lots_of(y, c), over)),
                (
                    f"Add {b} to both sides.",
                    t.equals(t.add(lots_of(y, c), t.Int(b)), lots_of(x, a)),
                ),
                (f"Divide both sides by {a}.", t.equals(value, x)),
            ],
            [
                (
                    asking(SIGNS, f"{b} is subtracted. What undoes subtracting {b}?"),
                    t.Frac(t.sub(lots_of(y, c), t.Int(b)), t.Int(a)),
                ),
                (
                    ORDER,
                    t.Frac(t.Juxt((t.Int(c), t.Bracket(t.add(y, t.Int(b))))), t.Int(a)),
                ),
            ],
            twin,
        )
    if kind == 3:
        inside = t.sub(lots_of(x, b), t.Int(c))
        formula = t.equals(y, t.Juxt((t.Int(a), t.Bracket(inside))))
        value = t.Frac(t.add(y, t.Int(a * c)), t.Int(a * b))
        open_ = t.sub(lots_of(x, a * b), t.Int(a * c))
        return subject_question(
            formula,
            x,
            value,
            [
                ("Expand the bracket.", t.equals(y, open_)),
                (
                    f"Add {a * c} to both sides.",
                    t.equals(t.add(y, t.Int(a * c)), lots_of(x, a * b)),
                ),
                (f"Divide both sides by {a * b}.", t.equals(value, x)),
            ],
            [
                (
                    asking(BRACKET_LEFT, f"What is {a} × {c}? Where is it in your working?"),
                    t.Frac(t.add(y, t.Int(c)), t.Int(a * b)),
                ),
                (SIGNS, t.Frac(t.sub(y, t.Int(a * c)), t.Int(a * b))),
            ],
            twin,
        )
    return _mean_height(a, c, twin) if (a + c) % 2 else _twice(a, c, twin)


def _taken_away(
    y: t.Sym, x: t.Sym, a: int, first: int, way: int, twin: tuple[object, ...]
) -> Draft:
    """Return y = c − ax, or y = a − x/c."""
    if way == 2:
        formula = t.equals(y, t.sub(t.Int(first), lots_of(x, a)))
        value: t.Node = t.Frac(t.sub(t.Int(first), y), t.Int(a))
        return subject_question(
            formula,
            x,
            value,
            [
                (
                    f"Add {shown(lots_of(x, a))} to both sides.",
                    t.equals(t.add(y, lots_of(x, a)), t.Int(first)),
                ),
                (
                    f"Subtract {y.name} from both sides.",
                    t.equals(lots_of(x, a), t.sub(t.Int(first), y)),
                ),
                (f"Divide both sides by {a}.", t.equals(x, value)),
            ],
            [
                (
                    asking(SIGN_LOST, back_check(y.name, x.name, formula, 1, first - a)),
                    t.Frac(t.sub(y, t.Int(first)), t.Int(a)),
                ),
                (
                    asking(ONE_TERM, f"When you divide by {a}, what happens to the {first}?"),
                    t.sub(t.Int(first), t.Frac(y, t.Int(a))),
                ),
            ],
            twin,
        )
    part, n = t.Frac(x, t.Int(first)), t.Int(10 * a)
    formula = t.equals(y, t.sub(n, part))
    value = t.Juxt((t.Int(first), t.Bracket(t.sub(n, y))))
    return subject_question(
        formula,
        x,
        value,
        [
            (f"Add {shown(part)} to both sides.", t.equals(t.add(y, part), n)),
            (f"Subtract {y.name} from both sides.", t.equals(part, t.sub(n, y))),
            (f"Multiply both sides by {first}.", t.equals(x, value)),
        ],
        [
            (
                asking(SIGN_LOST, back_check(y.name, x.name, formula, first, 10 * a - 1)),
                t.Juxt((t.Int(first), t.Bracket(t.sub(y, n)))),
            ),
            (
                asking(ONE_MULTIPLIED, f"When you multiply by {first}, what happens to {y.name}?"),
                t.sub(t.Int(first * 10 * a), y),
            ),
        ],
        twin,
    )


def _standard(a: int, b: int, c: int, twin: tuple[object, ...]) -> Draft:
    """Return ax + by = c, to be written as y = …."""
    x, y = t.Sym("x"), t.Sym("y")
    formula = t.equals(t.add(lots_of(x, a), lots_of(y, b)), t.Int(c))
    rest = t.sub(t.Int(c), lots_of(x, a))
    value = t.Frac(rest, t.Int(b))
    return subject_question(
        formula,
        y,
        value,
        [
            (f"Subtract {a}x from both sides.", t.equals(lots_of(y, b), rest)),
            (f"Divide both sides by {b}.", t.equals(y, value)),
        ],
        [
            (
                asking(SIGNS, f"{a}x is added. What undoes adding {a}x?"),
                t.Frac(t.add(t.Int(c), lots_of(x, a)), t.Int(b)),
            ),
            (
                asking(ONE_TERM, f"When you divide by {b}, is each term divided?"),
                t.sub(t.Int(c), t.Frac(lots_of(x, a), t.Int(b))),
            ),
        ],
        twin,
    )


def _mean_height(a: int, c: int, twin: tuple[object, ...]) -> Draft:
    """Return A = (1/2)(a + b)h and its like, for h or for a; the numbers choose the letters."""
    area, first, second, high = map(t.Sym, _AREAS[(a - 2) % 4])
    total = t.Bracket(t.add(first, second))
    half = t.frac(1, c) if c > 2 else t.frac(1, 2)
    n = c if c > 2 else 2
    formula = t.equals(area, t.Juxt((half, total, high)))
    value = t.Frac(lots_of(area, n), total.of)
    double = t.equals(lots_of(area, n), t.Juxt((total, high)))
    return subject_question(
        formula,
        high,
        value,
        [
            (f"Multiply both sides by {n}.", double),
            (f"Divide both sides by {shown(total.of)}.", t.equals(value, high)),
        ],
        [
            (SAME, t.Frac(area, t.Juxt((t.Int(n), total)))),
            (DIVIDES_ONE, t.sub(t.Frac(lots_of(area, n), first), second)),
        ],
        twin,
    )


def _twice(a: int, c: int, twin: tuple[object, ...]) -> Draft:
    """Return ax + b = cx + d in letters, or with the letter taken away on one side."""
    names = ("abcd", "mkpq", "pqmn", "rstu")[(a - 2) % 4]
    first, plus, second, more = map(t.Sym, names)
    x = t.Sym("xyw"[c % 3])
    left, right = t.Juxt((first, x)), t.Juxt((second, x))
    formula = t.equals(t.add(left, plus), t.add(right, more))
    apart = t.sub(first, second)
    rest = t.sub(more, plus)
    value = t.Frac(rest, apart)
    name = x.name
    return subject_question(
        formula,
        x,
        value,
        [
            (
                f"Subtract {second.name}{name} and {plus.name} from both sides.",
                t.equals(t.sub(left, right), rest),
            ),
            (
                f"Take {name} out as a factor.",
                t.equals(t.Juxt((x, t.Bracket(apart))), rest),
            ),
            (f"Divide both sides by {shown(apart)}.", t.equals(x, value)),
        ],
        [
            (
                asking(SIGNS, f"What undoes adding {plus.name}? And adding {second.name}{name}?"),
                t.Frac(t.add(more, plus), t.add(first, second)),
            ),
            (
                asking(DIVIDES_ONE, f"What is {name} multiplied by: {first.name}, or a bracket?"),
                t.Frac(rest, first),
            ),
        ],
        twin,
    )
