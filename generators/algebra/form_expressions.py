"""Forming expressions: situations in words, written in letters.

Key stage 3, algebra (England, 2013): "model situations or procedures by translating them into
algebraic expressions or formulae" (from memory).
"""

from __future__ import annotations

from generators._turns import by_turns
from generators.algebra._forming_many import asked_of, in_several_steps
from generators.algebra._forming_mistakes import (
    DIVIDES_WRONG_WAY,
    FIRST_ONLY,
    FIXED_TIMES,
    HALF_ROUND,
    JOINED,
    LEFT_OUT,
    MULTIPLIES,
    ORDER,
    PLUS_AS_TIMES,
    REVERSED,
    SUBTRACTED_WRONG_WAY,
    SUBTRACTS,
    TIMES_AS_PLUS,
)
from generators.algebra._forming_stories import (
    CHANGE,
    EACH,
    FIXED,
    GROUPS,
    LESS,
    MORE,
    PACKED,
    PRICES,
    SHARED,
)
from generators.algebra._writing import asking, expression, shown
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _support(kind: int, a: int, b: int) -> bool:
    return b == 2 and (a < 17 or kind in (0, 3, 4))


def _core(kind: int, a: int, b: int) -> bool:
    if kind == 0:
        return a != b and 4 < b < 16 and a < 9
    if kind == 1:
        return a < 7 and b >= 20
    if kind == 5:
        return a != b and b < 13
    return a != b and a < 9 and b < 16


def _challenge(kind: int, a: int, b: int, c: int) -> bool:
    if kind == 0:
        return c == 2 and 2 < a < 8 and b != a
    if kind == 1:
        return a > c and len({a, b, c}) == 3 and a + c != c * b
    if kind == 2:
        return c == 2 and 2 < a < 8 and b != a
    # I think of a number n, multiply by a, add b, multiply by c.
    return c < 6 and a < 7 and len({a, b, c}) == 3


@register
class FormExpressions(Topic):
    """One operation or two like ones; fixed and repeated amounts; several parts, made simple."""

    id = "algebra.form-expressions"
    title = "Forming expressions"
    statements = ("algebra.modelling", "algebra.notation")
    prerequisites = ("algebra.collect-terms",)
    misconceptions = (
        *(REVERSED, TIMES_AS_PLUS, JOINED, ORDER, FIXED_TIMES, SUBTRACTED_WRONG_WAY, LEFT_OUT),
        *(HALF_ROUND, FIRST_ONLY, DIVIDES_WRONG_WAY, SUBTRACTS, MULTIPLIES, PLUS_AS_TIMES),
    )
    spare = "one operation with one number: larger numbers would make no other question"
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(5), a=range(2, 31), b=(2,)),
        Tier.CORE: Space(_core, kind=range(6), a=range(2, 13), b=(*range(2, 16), 20, 30, 40, 50)),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(4), a=range(2, 11), b=range(2, 13), c=range(2, 8)
        ),
    }
    # Where the words say the very sum, a right answer would only say the question again.
    spaces = {
        tier: kinds.with_answers(
            space, only=lambda kind, *_, tier=tier: tier is not Tier.SUPPORT or kind in (1, 2)
        )
        for tier, space in spaces.items()
    }

    def make(self, tier: Tier, kind: int, a: int, b: int, *more: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, a, b, *more)
        if tier is Tier.SUPPORT:
            return _single(kind, a, twin)
        if tier is Tier.CORE:
            return _prices(a, b, twin) if kind == 5 else _two(kind, a, b, twin)
        return in_several_steps(kind, a, b, *more, twin=twin)


def _single(kind: int, a: int, twin: tuple[object, ...]) -> Draft:
    x, number = t.Sym(by_turns("nkxw", a)), t.Int(a)
    given: dict[str, t.Node] = {"n": x, "a": number}
    lots, part = t.juxt(number, x), t.Frac(x, number)
    if kind == 0:
        key: t.Node = t.sub(x, number)
        return asked_of(
            by_turns(LESS, a),
            given,
            key,
            key,
            [(REVERSED, t.add(x, number)), (SUBTRACTED_WRONG_WAY, t.sub(number, x))],
            (Step("Subtract what is taken away from what was there.", key),),
            twin,
        )
    if kind == 3:
        key = t.add(x, number)
        return asked_of(
            by_turns(MORE, a),
            given,
            key,
            key,
            [(REVERSED, t.sub(x, number)), (PLUS_AS_TIMES, lots)],
            (Step("Add how much more it is.", key),),
            twin,
        )
    if kind == 4:
        key = t.sub(number, x)
        name = by_turns(("Femi", "Grace", "Jonas", "Leila", "Mo"), a)
        return asked_of(
            f"{name} thinks of a number {{n}} and subtracts it from {{a}}. Write an expression for "
            "the result.",
            given,
            key,
            key,
            [(SUBTRACTED_WRONG_WAY, t.sub(x, number)), (REVERSED, t.add(number, x))],
            (Step(f"Start with {a}, and take the number away.", key),),
            twin,
        )
    if kind == 1:
        return asked_of(
            by_turns(SHARED, a),
            given,
            t.divide(x, number),
            part,
            [(DIVIDES_WRONG_WAY, t.Frac(number, x)), (SUBTRACTS, t.sub(x, number))],
            (Step("Divide by the number of equal parts.", t.equals(t.divide(x, number), part)),),
            twin,
        )
    return asked_of(
        by_turns(EACH, a),
        given,
        t.times(number, x),
        lots,
        [(TIMES_AS_PLUS, t.add(x, number)), (DIVIDES_WRONG_WAY, part)],
        (
            Step(
                "Multiply the number in each by how many there are.",
                t.equals(t.times(number, x), lots),
            ),
        ),
        twin,
    )


def _prices(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    story = by_turns(PRICES, a + b)
    x, y, m, n = t.Sym(story.first), t.Sym(story.second), t.Int(a), t.Int(b)
    asked, key = t.add(t.times(m, x), t.times(n, y)), t.add(t.juxt(m, x), t.juxt(n, y))
    joined = t.juxt(t.Int(a + b), *sorted((x, y), key=lambda letter: letter.name))
    return asked_of(
        story.text,
        {"x": x, "y": y, "a": m, "b": n},
        asked,
        key,
        [
            (JOINED, joined),
            (TIMES_AS_PLUS, t.add(x, m, y, n)),
        ],
        (
            Step("Multiply each letter by how many there are, and add.", asked),
            Step("Leave out the times signs.", t.equals(asked, key)),
        ),
        twin,
    )


def _two(kind: int, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    x, m, n = t.Sym(by_turns("nkxw", a + b)), t.Int(a), t.Int(b)
    given: dict[str, t.Node] = {"n": x, "a": m, "b": n}
    lots = t.juxt(m, x)
    if kind == 0:
        asked, key = t.add(t.times(m, x), n), t.add(lots, n)
        return asked_of(
            by_turns(FIXED, a + b),
            given,
            asked,
            key,
            [(FIXED_TIMES, t.add(t.juxt(n, x), m)), (JOINED, t.juxt(t.Int(a + b), x))],
            (
                Step("Multiply what comes again and again.", t.equals(t.times(m, x), lots)),
                Step("Add what comes once.", key),
            ),
            twin,
        )
    if kind == 1:
        asked, key = t.sub(n, t.times(m, x)), t.sub(n, lots)
        return asked_of(
            by_turns(CHANGE, a + b // 10),
            given,
            asked,
            key,
            [(SUBTRACTED_WRONG_WAY, t.sub(lots, n)), (REVERSED, t.add(n, lots))],
            (
                Step("Find what is used.", t.equals(t.times(m, x), lots)),
                Step("Subtract it from what was there.", key),
            ),
            twin,
        )
    if kind == 2:
        inside = t.Bracket(t.add(x, n))
        key = t.Juxt((m, inside))
        return asked_of(
            by_turns(GROUPS, a + b),
            given,
            t.times(m, inside),
            key,
            [(FIRST_ONLY, t.add(lots, n)), (JOINED, t.juxt(t.Int(a * b), x))],
            (
                Step(f"Add what is in each: {shown(inside.of)}."),
                Step(f"Multiply all of it by {a}.", key),
            ),
            twin,
        )
    if kind == 3:
        inside = t.Bracket(t.add(x, n))
        key = t.Frac(inside.of, m)
        return asked_of(
            by_turns(PACKED, a + b),
            given,
            t.divide(inside, m),
            key,
            [(ORDER, t.add(t.Frac(x, m), n)), (MULTIPLIES, t.Juxt((m, inside)))],
            (
                Step(f"Add first: {shown(inside.of)}."),
                Step(f"Divide all of it by {a}.", key),
            ),
            twin,
        )
    subtract = (a + b) % 2
    first = t.sub(x, n) if subtract else t.add(x, n)
    key = t.Juxt((m, t.Bracket(first)))
    verb = "subtract" if subtract else "add"
    name = by_turns(("Femi", "Grace", "Jonas", "Leila", "Mo"), a + 2 * b)
    return asked_of(
        f"{name} thinks of a number {{n}}, {verb}s {{b}} and then multiplies by {{a}}. Write an "
        "expression for the result.",
        given,
        t.times(t.Bracket(first), m),
        key,
        [
            (ORDER, t.sub(lots, n) if subtract else t.add(lots, n)),
            (
                asking(TIMES_AS_PLUS, "The result is multiplied. Which sign do you need?"),
                expression((1, x.name), (a + (-b if subtract else b), "")),
            ),
        ],
        (
            Step(f"{verb.capitalize()} first: {shown(first)}."),
            Step(f"Multiply all of it by {a}: put it in a bracket.", key),
        ),
        twin,
    )
