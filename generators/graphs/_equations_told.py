"""Equations of lines told without a picture: by gradient and a point, two points, a parallel."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.graphs._equation_mistakes import (
    ADDS_PRODUCT,
    CHANGED_OVER,
    COORDINATE_AS_INTERCEPT,
    OWN_EQUATION,
)
from generators.graphs._grids import pair
from generators.graphs._lines import X, Y, equation, said, signed
from generators.graphs._misconceptions import (
    GRADIENT_SIGN,
    INTERCEPT_FOR_GRADIENT,
    UPSIDE_DOWN,
)
from itembank.items.asks.of_subject import Subject
from itembank.items.item import Draft, Find, Slip, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_GRADIENT_AND_POINT = (
    "A line has gradient {m} and goes through {p}. Write its equation.",
    "What is the equation of the line with gradient {m} through {p}?",
)
_TWO_POINTS = (
    "What is the equation of the line through {p} and {q}?",
    "A line goes through {p} and {q}. Write its equation.",
)
_PARALLEL = (
    "What is the equation of the line parallel to {e} through {p}?",
    "A line through {p} is parallel to {e}. Write its equation.",
)
_SAME_GRADIENT = (
    "The lines {e} and {f} are parallel. What is the value of {k}?",
    "What is {k} if the lines {e} and {f} are parallel?",
)


def _crossing(m: int, c: int) -> bool:
    """Keep lines whose equation is not y = cx + m, nor falls from the same place."""
    return 0 not in (m, c) and abs(m) > 1 and m not in (c, -c)


def _through(m: int, x: int, c: int) -> bool:
    """Keep points off the y-axis whose line has another intercept by each wrong way."""
    y = m * x + c
    return abs(m) > 1 and len({c, y, y + m * x, m}) == 4 and 0 not in (c, y) and abs(y) < 25


def _thin(m: int, x: int, c: int) -> bool:
    return _through(m, x, c) and (m + 2 * x + 3 * c) % 5 == 0


def _joined(m: int, x: int, run: int, c: int) -> bool:
    """Keep two points off the y-axis, also on falling lines."""
    kept = _crossing(m, c) and x != 0 != x + run and max(abs(m * v + c) for v in (x, x + run)) < 20
    return kept and (m + 2 * x + 3 * c + run) % 11 == 0


def _beside(m: int, c: int, k: int) -> bool:
    """Keep lines parallel to a line, through another place of the y-axis."""
    return (
        abs(m) > 1 and 0 not in (c, k, m) and len({c, k, m, -m}) == 4 and (m + c + 2 * k) % 8 == 0
    )


def _beside_point(m: int, c: int, x: int, r: int) -> bool:
    y = m * x + r
    wrong = {r, y, y + m * x, c}
    kept = abs(m) > 1 and len(wrong) == 4 and 0 not in (c, r, y, x) and abs(y) < 20
    return kept and (3 * m + 5 * c + 7 * x + r) % 11 == 0


def _alike(m: int, c: int, k: int, turned: int) -> bool:
    return 0 not in (c, k) and len({m, c, k, -m}) == 4 and (m + 2 * c + k + turned) % 7 == 0


def _line_through(m: int, x: int, y: int) -> t.Relation:
    """Return y − b = m(x − a), which every point of the line fits."""
    return t.equals(t.sub(Y, signed(y)), t.times(t.num(m), t.Bracket(t.sub(X, signed(x)))))


def _equation_of(
    text: str,
    shown: dict[str, t.Node],
    m: int,
    at: tuple[int, int],
    key: t.Relation,
    steps: tuple[Step, ...],
    wrong: tuple[Slip, ...],
    twin: tuple[object, ...],
) -> Draft:
    return Draft(
        prompt(text, **shown), Subject(_line_through(m, *at), Y), key, "subject", steps, wrong, twin
    )


def _intercept(m: int, x: int, y: int) -> tuple[Step, ...]:
    """Return how the intercept is found from a point."""
    return (
        Step(
            "Multiply the gradient by the x-coordinate.",
            t.equals(t.times(t.num(m), signed(x)), t.num(m * x)),
        ),
        Step(
            "Take that from the y-coordinate: the rest is the intercept.",
            t.equals(t.sub(t.num(y), signed(m * x)), t.num(y - m * x)),
        ),
    )


def _at_axis(topic: Topic, tier: Tier, m: int, c: int) -> Draft:
    """Return the equation of a line from its gradient and where it crosses the y-axis."""
    key = equation(m, c)
    return _equation_of(
        by_turns(_GRADIENT_AND_POINT, m + c),
        {"m": t.num(m), "p": pair(0, c)},
        m,
        (0, c),
        key,
        (Step(f"It crosses the y-axis at {said(c)}, and the number with x is the gradient.", key),),
        slips((CHANGED_OVER, equation(c, m)), (GRADIENT_SIGN, equation(-m, c))),
        ("told axis", m, c),
    )


def _at_point(topic: Topic, tier: Tier, m: int, x: int, c: int) -> Draft:
    """Return the equation of a line from its gradient and a point off the y-axis."""
    y = m * x + c
    key = equation(m, c)
    return _equation_of(
        by_turns(_GRADIENT_AND_POINT, m + c + x),
        {"m": t.num(m), "p": pair(x, y)},
        m,
        (x, y),
        key,
        (*_intercept(m, x, y), Step("Write both into the equation.", key)),
        slips(
            (COORDINATE_AS_INTERCEPT, equation(m, y)),
            (ADDS_PRODUCT, equation(m, y + m * x)),
            (CHANGED_OVER, equation(c, m)),
            key=key,
        ),
        ("told point", m, x, c),
    )


def _by_two(topic: Topic, tier: Tier, m: int, x: int, run: int, c: int) -> Draft:
    """Return the equation of the line through two points."""
    a, b = (x, m * x + c), (x + run, m * (x + run) + c)
    key = equation(m, c)
    up, along = t.sub(t.num(b[1]), signed(a[1])), t.sub(t.num(b[0]), signed(a[0]))
    relation = t.equals(
        t.times(t.Bracket(t.sub(Y, signed(a[1]))), t.Bracket(along)),
        t.times(t.Bracket(up), t.Bracket(t.sub(X, signed(a[0])))),
    )
    return Draft(
        prompt(by_turns(_TWO_POINTS, m + c + x), p=pair(*a), q=pair(*b)),
        Subject(relation, Y),
        key,
        "subject",
        (
            Step(
                f"From the first point to the second it goes {abs(m * run)} "
                f"{'up' if m > 0 else 'down'} for {run} along."
            ),
            Step(f"Divide: the gradient is {said(m)}."),
            Step(f"Put a point into y = {said(m)}x + c: c is {said(c)}.", key),
        ),
        slips(
            (CHANGED_OVER, equation(c, m)),
            (GRADIENT_SIGN, equation(-m, a[1] + m * x)),
            (UPSIDE_DOWN, equation(Fraction(1, m), a[1] - Fraction(x, m)) if x % m == 0 else None),
            (COORDINATE_AS_INTERCEPT, equation(m, a[1])),
            key=key,
        ),
        ("told two", m, x, run, c),
    )


def _parallel_at_axis(topic: Topic, tier: Tier, m: int, c: int, k: int) -> Draft:
    """Return the parallel to a line through another place of the y-axis."""
    key = equation(m, k)
    return _equation_of(
        by_turns(_PARALLEL, m + c + k),
        {"e": equation(m, c), "p": pair(0, k)},
        m,
        (0, k),
        key,
        (
            Step(f"The line has a gradient of {said(m)}, and so has its parallel."),
            Step(f"It crosses the y-axis at {said(k)}.", key),
        ),
        slips((OWN_EQUATION, equation(m, c)), (GRADIENT_SIGN, equation(-m, k))),
        ("told parallel", m, c, k),
    )


def _parallel_at_point(topic: Topic, tier: Tier, m: int, c: int, x: int, r: int) -> Draft:
    """Return the parallel to a line through a point off the y-axis."""
    y = m * x + r
    key = equation(m, r)
    return _equation_of(
        by_turns(_PARALLEL, m + c + x),
        {"e": equation(m, c), "p": pair(x, y)},
        m,
        (x, y),
        key,
        (
            Step(f"The line has a gradient of {said(m)}, and so has its parallel."),
            *_intercept(m, x, y),
            Step("Write both into the equation.", key),
        ),
        slips(
            (OWN_EQUATION, equation(m, c)),
            (COORDINATE_AS_INTERCEPT, equation(m, y)),
            (ADDS_PRODUCT, equation(m, y + m * x)),
        ),
        ("told parallel point", m, c, x, r),
    )


def _missing_gradient(topic: Topic, tier: Tier, m: int, c: int, k: int, turned: int) -> Draft:
    """Return the number that makes two lines parallel."""
    letter = t.Sym("k")
    other = t.equals(
        Y,
        t.add(t.juxt(letter, X), t.num(k)) if k > 0 else t.sub(t.juxt(letter, X), t.Int(-k)),
    )
    given = equation(m, c)
    first, second = (other, given) if turned else (given, other)
    return Draft(
        prompt(by_turns(_SAME_GRADIENT, m + c), e=first, f=second, k=letter),
        # Each goes up by its gradient from x = 0 to x = 1: from c to m + c.
        Find(letter, (_from_to(t.num(m), t.num(c), letter, t.num(k)),)),
        t.num(m),
        "number",
        (Step("Parallel lines have one gradient: the number with x.", t.num(m)),),
        slips((INTERCEPT_FOR_GRADIENT, c), (GRADIENT_SIGN, -m)),
        ("told gradient", m, c, k, turned),
    )


def _from_to(m: t.Node, c: t.Node, letter: t.Node, k: t.Node) -> t.Relation:
    """Return that y grows alike in both lines when x does: (m + c) − c = (k + r) − r."""
    held = [t.Bracket(part) if isinstance(part, t.Neg) else part for part in (c, k)]
    return t.equals(
        t.sub(t.Bracket(t.add(m, held[0])), held[0]),
        t.sub(t.Bracket(t.add(letter, held[1])), held[1]),
    )


def with_equations(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of equations of lines with lines told in words at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _at_axis, _crossing, m=(2, 3, 4, 5), c=range(-8, 10)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            _at_point, _thin, m=(-4, -3, -2, 2, 3, 4), x=range(1, 6), c=range(-7, 9)
        ),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _by_two,
            _joined,
            m=(-4, -3, -2, 2, 3, 4),
            x=range(-4, 5),
            run=(1, 2, 3, 4),
            c=range(-7, 8),
        ),
    }


def with_parallels(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of parallel lines with lines told in words at their ends."""
    slopes = (-5, -4, -3, -2, 2, 3, 4, 5)
    near = range(-6, 8)
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _missing_gradient,
            _alike,
            m=range(2, 8),
            c=range(-5, 9),
            k=range(-5, 9),
            turned=range(2),
        ),
        Tier.CORE: spaces[Tier.CORE].also(_parallel_at_axis, _beside, m=slopes, c=near, k=near),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _parallel_at_point, _beside_point, m=slopes, c=near, x=range(-4, 6), r=near
        ),
    }
