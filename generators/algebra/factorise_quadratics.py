"""Factorising quadratic expressions into two brackets.

Key stage 4, algebra (England, 2014): "factorising quadratic expressions of the form x² + bx + c,
including the difference of two squares" (from memory). Many schools begin it in year 9; it rests on
key stage 3: "expanding products of two or more binomials".
"""

from __future__ import annotations

from generators._turns import by_turns
from generators.algebra._quadratic_mistakes import (
    AS_PRINTED,
    CROSSED,
    NOT_ROOTED,
    NUMBER_LEFT,
    PRODUCT_ONLY,
    SIGNS,
    SQUARE,
    SUM_ONLY,
)
from generators.algebra._quadratic_numbers import challenge_fits, core_fits, support_fits
from generators.algebra._rewritten import rewritten
from generators.algebra._writing import (
    asking,
    bracket,
    collected,
    expression,
    letter,
    multiplied,
    shown,
    term,
)
from itembank.items import kinds
from itembank.items.asks import TwoNumbers
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.measures.years import FACTORISING_QUADRATICS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_STORIES = (
    "The area of a rectangular garden is {p} square metres. It is {q} metres wide.",
    "The area of a rectangular playground is {p} square metres. It is {q} metres wide.",
    "The area of a rectangular pool is {p} square metres. It is {q} metres wide.",
    "The area of a rectangular bus yard is {p} square metres. It is {q} metres wide.",
)


@register
class FactoriseQuadratics(Topic):
    """Both numbers positive; signs and differences of squares; a number in front."""

    id = "algebra.factorise-quadratics"
    title = "Factorising quadratics"
    statements = ("algebra.manipulation",)
    prerequisites = ("algebra.expand-two-brackets", "algebra.factorise")
    spare = "Two whole numbers up to 16 whose product and sum a pupil can search for are few."
    later = {
        Tier.SUPPORT: (Part(FACTORISING_QUADRATICS, lambda kind, a, b: kind == 0),),
        Tier.CORE: (Part(FACTORISING_QUADRATICS),),
        Tier.CHALLENGE: (Part(FACTORISING_QUADRATICS, lambda kind, p, a, b: kind < 3),),
    }
    misconceptions = (
        *(AS_PRINTED, SUM_ONLY, PRODUCT_ONLY, SIGNS, SQUARE, NUMBER_LEFT, CROSSED, NOT_ROOTED),
    )
    spaces = {
        Tier.SUPPORT: Space(support_fits, kind=range(2), a=range(1, 14), b=range(2, 17)),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(core_fits, kind=range(3), a=range(1, 14), b=range(1, 16))
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(challenge_fits, kind=range(4), p=(2, 3, 4, 5), a=range(1, 12), b=range(1, 10)),
            only=lambda kind, *_: kind < 3,
        ),
    }

    def make(self, tier: Tier, kind: int, *values: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, *values)
        x = letter(*values)
        if tier is Tier.SUPPORT:
            a, b = values
            return _two_numbers(a, b, twin) if kind else _plain(x, a, b, twin)
        if tier is Tier.CORE:
            a, b = values
            if kind == 2:
                return _squares(x, 1, a, twin)
            return _plain(x, a if kind == 0 else -a, -b, twin)
        p, a, b = values
        if kind == 0:
            return _leading(x, p, a, b if (a + b + p) % 2 else -b, twin)
        if kind == 1:
            return _squares(x, p, a, twin)
        return _common(x, p, a, b, twin) if kind == 2 else _length(x, a, b, twin)


def _pair(x: str, a: int, b: int) -> t.Juxt:
    return t.Juxt((bracket((1, x), (a, "")), bracket((1, x), (b, ""))))


def _quadratic(x: str, a: int, b: int) -> t.Node:
    return expression(*collected(multiplied(((1, x), (a, "")), ((1, x), (b, "")))))


def _found(a: int, b: int) -> Step:
    """Return the line that finds the two numbers."""
    first, second = t.num(a), t.Bracket(t.num(b)) if b < 0 else t.num(b)
    return Step(
        f"Find two numbers that multiply to {shown(t.num(a * b))} and add up to "
        f"{shown(t.num(a + b))}: {shown(t.num(a))} and {shown(t.num(b))}.",
        t.equals(t.times(first, second), t.num(a * b)),
    )


def _plain(x: str, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    asked, key = _quadratic(x, a, b), _pair(x, a, b)
    wrong: list[Wrong] = []
    if a > 0 and b > 0:
        wrong.append((AS_PRINTED, _pair(x, a + b, a * b)))
        wrong.append((SUM_ONLY, _pair(x, a + 1, b - 1) if b - 1 != a and b > 1 else None))
        wrong.append((PRODUCT_ONLY, _pair(x, 1, a * b) if a > 1 else None))
        wrong.append((SIGNS, _pair(x, -a, -b)))
    else:
        wrong.append((SIGNS, _pair(x, -a, -b)))
        if a < 0:
            wrong.append((SUM_ONLY, _pair(x, a - 1, b + 1) if abs(a - b) > 1 and b < -1 else None))
            wrong.append((PRODUCT_ONLY, _pair(x, -1, -a * b) if a != -1 else None))
            wrong.append((AS_PRINTED, _pair(x, a + b, a * b)))
        else:
            wrong.append((AS_PRINTED, _pair(x, a + b, a * b)))
            wrong.append((PRODUCT_ONLY, _pair(x, a * -b, -1) if (a, b) != (a * -b, -1) else None))
    return rewritten(
        "factorise",
        prompt("Factorise {e}.", e=asked),
        asked,
        key,
        (_found(a, b), Step("Write one number in each bracket.", t.equals(asked, key))),
        wrong,
        twin,
    )


def _two_numbers(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    total, product = t.Int(a + b), t.Int(a * b)
    key = t.Listing((t.Int(a), t.Int(b)))
    return Draft(
        prompt("Find two numbers whose sum is {s} and whose product is {p}.", s=total, p=product),
        TwoNumbers(total, product),
        key,
        "list",
        (
            Step(
                f"List pairs of factors of {a * b}. Which pair adds up to {a + b}?",
                t.equals(t.times(t.Int(a), t.Int(b)), product),
            ),
            Step("Check the sum.", t.equals(t.add(t.Int(a), t.Int(b)), total)),
            Step("Write both numbers.", key),
        ),
        slips(
            (
                asking(PRODUCT_ONLY, "Add your two numbers. Is that the sum in the question?"),
                t.Listing((t.Int(1), product)),
            ),
            (
                asking(SUM_ONLY, "Multiply your two numbers. Is that the product in the question?"),
                t.Listing((t.Int(a - 1), t.Int(b + 1))),
            ),
            key=key,
        ),
        twin,
    )


def _squares(x: str, p: int, a: int, twin: tuple[object, ...]) -> Draft:
    asked = expression((p * p, x + x), (-a * a, ""))
    key = t.Juxt((bracket((p, x), (a, "")), bracket((p, x), (-a, ""))))
    roots = t.sub(
        t.Power(t.Bracket(term(p, x)) if p > 1 else t.Sym(x), t.Int(2)), t.Power(t.Int(a), t.Int(2))
    )
    half = a * a // 2
    halved = t.Juxt((bracket((p, x), (half, "")), bracket((p, x), (-half, ""))))
    wrong: list[Wrong] = [
        (SQUARE, t.Power(bracket((p, x), (-a, "")), t.Int(2))),
        (NOT_ROOTED, halved if a % 2 == 0 and a > 2 else None),
        (
            asking(SIGNS, f"Expand your brackets. Is the last term −{a * a}?"),
            t.Power(bracket((p, x), (a, "")), t.Int(2)),
        ),
    ]
    return rewritten(
        "factorise",
        prompt("Factorise {e}.", e=asked),
        asked,
        key,
        (
            Step("Write the difference as one of two squares.", t.equals(asked, roots)),
            Step("Write the sum times the difference of what is squared.", t.equals(asked, key)),
        ),
        wrong,
        twin,
    )


def _leading(x: str, p: int, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    asked = expression(*collected(multiplied(((p, x), (a, "")), ((1, x), (b, "")))))
    key = t.Juxt((bracket((p, x), (a, "")), bracket((1, x), (b, ""))))
    open_ = expression((p, x + x), (p * b, x), (a, x), (a * b, ""))
    far = bracket((1, x), (b, ""))
    first, second = t.Juxt((t.Int(p), t.Sym(x), far)), t.Juxt((t.Int(a), far)) if a > 1 else far
    grouped = t.add(first, second)
    return rewritten(
        "factorise",
        prompt("Factorise {e}.", e=asked),
        asked,
        key,
        (
            Step(
                f"Split the middle term by two numbers that multiply to {p} × "
                f"{'(' * (b < 0)}{shown(t.num(a * b))}{')' * (b < 0)}: "
                f"{shown(t.num(p * b))} and {a}.",
                t.equals(asked, open_),
            ),
            Step("Factorise each half.", t.equals(open_, grouped)),
            Step("Take out the bracket that both have.", t.equals(grouped, key)),
        ),
        [
            (CROSSED, t.Juxt((bracket((p, x), (b, "")), bracket((1, x), (a, ""))))),
            (SIGNS, t.Juxt((bracket((p, x), (-a, "")), bracket((1, x), (-b, ""))))),
        ],
        twin,
    )


def _common(x: str, p: int, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    inner = collected(multiplied(((1, x), (a, "")), ((1, x), (-b, ""))))
    asked = expression(*multiplied([(p, "")], inner))
    out = t.Juxt((t.Int(p), bracket(*inner)))
    key = t.Juxt((t.Int(p), *_pair(x, a, -b).factors))
    return rewritten(
        "factorise",
        prompt("Factorise {e} fully.", e=asked),
        asked,
        key,
        (
            Step(f"Take out the common factor {p}.", t.equals(asked, out)),
            _found(a, -b),
            Step("Write one number in each bracket.", t.equals(out, key)),
        ),
        [(NUMBER_LEFT, _pair(x, a, -b)), (SIGNS, t.Juxt((t.Int(p), *_pair(x, -a, b).factors)))],
        twin,
    )


def _length(x: str, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    area, wide = _quadratic(x, a, b), bracket((1, x), (a, ""))
    asked, key = t.Frac(area, wide.of), expression((1, x), (b, ""))
    product = _pair(x, a, b)
    return rewritten(
        "simplify",
        prompt(
            by_turns(_STORIES, a + b)
            + " Write an expression, in metres, for its length in its simplest form.",
            p=t.Bracket(area),
            q=wide,
        ),
        asked,
        key,
        (
            Step(
                f"Factorise the area. One bracket is {shown(wide.of)}.",
                t.equals(area, product),
            ),
            Step("The other bracket is the length.", t.equals(asked, key)),
        ),
        [
            (
                asking(PRODUCT_ONLY, "Multiply your length by the width. Do you get the area?"),
                expression((1, x), (a + b, "")),
            ),
            (
                asking(SIGNS, "Multiply your length by the width. Which sign has the last term?"),
                expression((1, x), (-b, "")),
            ),
        ],
        twin,
    )
