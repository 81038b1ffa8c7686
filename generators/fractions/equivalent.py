"""Equivalent fractions: filling in the missing numerator or denominator."""

from __future__ import annotations

from math import gcd
from typing import Any

from generators.fractions._equivalent_mistakes import ADD_SAME, LEAVE_OTHER, REST_TAKEN, TAKE_SAME
from generators.fractions._equivalents_given import with_given
from itembank.figures.figure import Figure
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.figures.kinds.number.shaded_shape import ShadedShape
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _scaled(b: int, a: int, k: int) -> bool:
    """Keep a proper fraction in lowest terms, multiplied up."""
    return a < b and gcd(a, b) == 1


def _scaled_drawn(b: int, a: int, k: int) -> bool:
    """Keep whole columns of a rectangle, k parts high, that are shaded."""
    return 1 < a < b and gcd(a, b) == 1 and b * k <= 40 and a * k != b - a


def _on_line(side: int, b: int, a: int, k: int) -> bool:
    """Keep a mark of a line from 0 to 1, the fraction of which is to be divided down by k."""
    if not (1 < a < b and gcd(a, b) == 1 and b * k <= 24):
        return False
    # Two wrong answers at least: taking the same away leaves a number, or the rest goes in.
    rest = _rest_in_box(side, b, a)
    left = b * k if side else a * k
    taken = b * k - (a * k - a) if side else a * k - (b * k - b)
    return len({rest, left, taken if taken > 0 else None} - {None, b if side else a}) > 1


def _rest_in_box(side: int, b: int, a: int) -> int | None:
    """Return what goes in the box of □/b, or of a/□, where the rest is taken for the part."""
    if side == 0:
        return b - a
    return a * b // (b - a) if a * b % (b - a) == 0 else None


def _through_drawn(side: int, b: int, a: int, p: int, q: int) -> bool:
    return _through_lowest(side, b, a, p, q) and b * p <= 40 and a > 1


def _columns_shaded(topic: Topic, tier: Tier, b: int, a: int, k: int) -> Draft:
    """Return a rectangle of k rows with a of b columns shaded: □/b of it."""
    dark = tuple(row * b + column for row in range(k) for column in range(a))
    figure = ShadedShape("rectangle", k, b, dark)
    box = t.Frac(t.Blank(), t.Int(b))
    text = prompt("Which number goes in the box, if {e} of the rectangle is shaded?", e=box)
    steps = (_counted(a * k, b * k, "shaded"), *_divided((a, b), k, "denominator", b))
    wrong = slips(
        (LEAVE_OTHER, a * k),
        (TAKE_SAME, _positive(a * k - (b * k - b))),
        (REST_TAKEN, b - a),
    )
    return _of_figure(figure, text, a, steps, wrong, ("columns", a, b, k))


def _arrow_shown(topic: Topic, tier: Tier, side: int, b: int, a: int, k: int) -> Draft:
    """Return an arrow at a × k of b × k steps: □/b, or a/□ where `side` is 1."""
    steps = b * k
    figure = NumberLine(t.Int(0), t.Int(1), steps, points=(("A", a * k),))
    box = t.Frac(t.Int(a), t.Blank()) if side else t.Frac(t.Blank(), t.Int(b))
    text = prompt("Which number goes in the box, if arrow A shows {e}?", e=box)
    part, becomes, key = ("numerator", a, b) if side else ("denominator", b, a)
    told = Step(f"The line has {steps} equal steps, and A is {a * k} steps after 0.")
    left = steps if side else a * k
    taken = steps - (a * k - a) if side else a * k - (steps - b)
    wrong = slips(
        (LEAVE_OTHER, left), (TAKE_SAME, _positive(taken)), (REST_TAKEN, _rest_in_box(side, b, a))
    )
    lines = (told, *_divided((a, b), k, part, becomes))
    return _of_figure(figure, text, key, lines, wrong, ("arrow", side, a, b, k))


def _shaded_again(topic: Topic, tier: Tier, side: int, b: int, a: int, p: int, q: int) -> Draft:
    """Return a × p of b × p parts shaded, to be written over b × q, or under a × q."""
    figure = ShadedShape("rectangle", p, b, tuple(range(a * p)))
    if side:
        box, key, part, was = t.Frac(t.Int(a * q), t.Blank()), b * q, "numerator", a
    else:
        box, key, part, was = t.Frac(t.Blank(), t.Int(b * q)), a * q, "denominator", b
    text = prompt("Which number goes in the box, if {e} of the rectangle is shaded?", e=box)
    cancelled = t.equals(t.frac(a * p, b * p), t.frac(a, b))
    cancel = Step(f"Divide the numerator and denominator by {p}.", cancelled)
    steps = (_counted(a * p, b * p, "shaded"), cancel, *_multiplied((a, b), q, part, was))
    left, added = (b * p, b * p + a * q - a * p) if side else (a * p, a * p + b * q - b * p)
    wrong = slips((LEAVE_OTHER, left), (ADD_SAME if q > p else TAKE_SAME, added))
    return _of_figure(figure, text, key, steps, wrong, ("again", side, a, b, p, q))


def _positive(number: int) -> int | None:
    return number if number > 0 else None


def _counted(part: int, whole: int, word: str) -> Step:
    return Step(f"There are {whole} equal parts, and {part} are {word}.")


def _of_figure(
    figure: Figure, text: Any, key: int, steps: Any, wrong: Any, twin: tuple[object, ...]
) -> Draft:
    return Draft(
        text, of_figure(figure, text), t.Int(key), "integer", steps, wrong, twin, figure=figure
    )


def _two_ways(side: int, b: int, a: int, k: int) -> bool:
    """Keep fractions whose denominator is missing: multiplied up (0) or divided down (1)."""
    return a < b and gcd(a, b) == 1 and (a > 1 or side == 0)


def _through_lowest(side: int, b: int, a: int, p: int, q: int) -> bool:
    """Neither fraction is in lowest terms, and neither is a multiple of the other."""
    # Were p and q multiples of one another, one could go straight across, past lowest terms.
    if a >= b or gcd(a, b) != 1 or p % q == 0 or q % p == 0:
        return False
    # By adding, the answer must still come out as a positive whole number.
    return (a * p + (q - p) * b if side == 0 else b * p + (q - p) * a) > 0


def _added(a: int, b: int, more: int) -> t.Node:
    """Return a fraction with the same number added to its numerator and its denominator."""
    return t.frac(a + more, b + more)


def _keep_odd(b: int, a: int, k: int, m: int) -> bool:
    """Keep fractions in lowest terms with two multiples of them."""
    return a < b and gcd(a, b) == 1 and k < m


def _odd(topic: Topic, tier: Tier, b: int, a: int, k: int, m: int) -> Draft:
    """Return three fractions that are equal, and one that adding the same number makes of one."""
    first, second, third = t.frac(a, b), t.frac(a * k, b * k), t.frac(a * m, b * m)
    return kinds.odd_one_out(
        _added(a * k, b * k, b * (m - k)) if tier is not Tier.SUPPORT else _added(a, b, k),
        (first, second, third),
        mistakes=((ADD_SAME, 2),),
        steps=(
            Step(f"Multiply the numerator and denominator by {k}.", t.equals(first, second)),
            Step(f"Multiply the numerator and denominator by {m}.", t.equals(first, third)),
        ),
        twin=(a, b, k, m),
    )


def _said(topic: Topic, tier: Tier, b: int, a: int, k: int, m: int) -> Draft:
    """Return the statement that two fractions are equal, which adding may have made so."""
    first = t.frac(a * k, b * k)
    holds = kinds.lot(2, a, b, k, m) == 0
    other = t.frac(a * m, b * m) if holds else _added(a * k, b * k, b * (m - k))
    lowest = t.equals(first, t.frac(a, b))
    return kinds.statement(
        t.equals(first, other),
        holds,
        mistake=ADD_SAME,
        steps=(
            Step(f"Divide the numerator and denominator by {k}.", lowest),
            Step(
                f"Multiply the numerator and denominator by {m}.",
                t.equals(t.frac(a, b), t.frac(a * m, b * m)),
            ),
        ),
        twin=(a, b, k, m),
    )


_EQUAL = {"b": range(3, 10), "a": range(1, 8)}


@register
class Equivalent(Topic):
    """Fractions that are worth the same, one part of one of them missing."""

    id = "fractions.equivalent"
    title = "Equivalent fractions"
    statements = ("number.operations",)
    misconceptions = (ADD_SAME, TAKE_SAME, LEAVE_OTHER, REST_TAKEN)
    spaces = {
        Tier.SUPPORT: Space(_scaled, b=range(2, 11), a=range(1, 10), k=range(2, 11))
        .also(_columns_shaded, _scaled_drawn, b=range(3, 11), a=range(2, 10), k=range(2, 5))
        .also(_odd, _keep_odd, **_EQUAL, k=(2, 3), m=(4, 5))
        .also(_said, _keep_odd, **_EQUAL, k=(2, 3), m=(4, 5)),
        Tier.CORE: Space(_two_ways, side=(0, 1), b=range(2, 13), a=range(1, 12), k=range(2, 10))
        .also(_arrow_shown, _on_line, side=(0, 1), b=range(3, 13), a=range(2, 12), k=range(2, 7))
        .also(_odd, _keep_odd, **_EQUAL, k=(2, 4, 6), m=(7, 9))
        .also(_said, _keep_odd, **_EQUAL, k=(2, 4, 6), m=(7, 9)),
        Tier.CHALLENGE: Space(
            _through_lowest,
            side=(0, 1),
            b=range(2, 10),
            a=range(1, 9),
            p=range(2, 8),
            q=range(2, 8),
        )
        .also(
            _shaded_again,
            _through_drawn,
            side=(0, 1),
            b=range(3, 10),
            a=range(2, 9),
            p=range(2, 5),
            q=range(2, 8),
        )
        .also(_odd, _keep_odd, **_EQUAL, k=(3, 6, 8), m=(11, 12))
        .also(_said, _keep_odd, **_EQUAL, k=(3, 6, 8), m=(11, 12)),
    }
    spaces = with_given(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            b, a, k = values
            missing: t.Node = t.Frac(t.Blank(), t.Int(b * k))
            known = t.frac(a, b)
            relation = t.equals(missing, known) if (a + k) % 2 else t.equals(known, missing)
            steps = _multiplied((a, b), k, "denominator", b)
            wrong = slips((ADD_SAME, a + b * k - b), (LEAVE_OTHER, a))
            return _draft(relation, a * k, steps, wrong, (a, b, k))
        if tier is Tier.CORE:
            side, b, a, k = values
            if side == 0:
                relation = t.equals(t.frac(a, b), t.Frac(t.Int(a * k), t.Blank()))
                wrong = slips((ADD_SAME, b + a * k - a), (LEAVE_OTHER, b))
                return _draft(
                    relation, b * k, _multiplied((a, b), k, "numerator", a), wrong, (0, a, b, k)
                )
            relation = t.equals(t.frac(a * k, b * k), t.Frac(t.Int(a), t.Blank()))
            wrong = slips((TAKE_SAME, b * k - (a * k - a)), (LEAVE_OTHER, b * k))
            return _draft(relation, b, _divided((a, b), k, "numerator", a), wrong, (1, a, b, k))
        side, b, a, p, q = values
        top, bottom = a * p, b * p
        cancel = Step(
            f"Divide the numerator and denominator by {p}.",
            t.equals(t.frac(top, bottom), t.frac(a, b)),
        )
        by_adding = ADD_SAME if q > p else TAKE_SAME
        if side == 0:
            relation = t.equals(t.frac(top, bottom), t.Frac(t.Blank(), t.Int(b * q)))
            steps = (cancel, *_multiplied((a, b), q, "denominator", b))
            wrong = slips((by_adding, top + b * q - bottom), (LEAVE_OTHER, top))
            return _draft(relation, a * q, steps, wrong, (0, a, b, p, q))
        relation = t.equals(t.frac(top, bottom), t.Frac(t.Int(a * q), t.Blank()))
        steps = (cancel, *_multiplied((a, b), q, "numerator", a))
        wrong = slips((by_adding, bottom + a * q - top), (LEAVE_OTHER, bottom))
        return _draft(relation, b * q, steps, wrong, (1, a, b, p, q))


def _draft(relation: Any, key: int, steps: Any, wrong: Any, twin: tuple[object, ...]) -> Draft:
    text = prompt("Which number goes in the box?  {r}", r=relation)
    return Draft(text, Find(t.Blank(), (relation,)), t.Int(key), "integer", steps, wrong, twin)


def _multiplied(pair: tuple[int, int], k: int, part: str, was: int) -> tuple[Step, ...]:
    a, b = pair
    return (
        Step(
            f"See what the {part} is multiplied by.",
            t.equals(t.times(t.Int(was), t.Int(k)), t.Int(was * k)),
        ),
        Step(
            f"Multiply the numerator and denominator by {k}.",
            t.equals(
                t.frac(a, b),
                t.Frac(t.times(t.Int(a), t.Int(k)), t.times(t.Int(b), t.Int(k))),
                t.frac(a * k, b * k),
            ),
        ),
    )


def _divided(pair: tuple[int, int], k: int, part: str, becomes: int) -> tuple[Step, ...]:
    a, b = pair
    top, bottom = t.Int(a * k), t.Int(b * k)
    return (
        Step(
            f"See what the {part} is divided by.",
            t.equals(t.divide(t.Int(becomes * k), t.Int(k)), t.Int(becomes)),
        ),
        Step(
            f"Divide the numerator and denominator by {k}.",
            t.equals(
                t.Frac(top, bottom),
                t.Frac(t.divide(top, t.Int(k)), t.divide(bottom, t.Int(k))),
                t.frac(a, b),
            ),
        ),
    )
