"""Expanding the product of two brackets.

Key stage 3, algebra (England, 2013): "simplify and manipulate algebraic expressions to maintain
equivalence by expanding products of two or more binomials" (from memory).
"""

from __future__ import annotations

from typing import TypeAlias

from generators._turns import by_turns
from generators.algebra._rewritten import rewritten
from generators.algebra._two_brackets_mistakes import (
    ADDS_ENDS,
    ADDS_SIDES,
    BRACKET_SIGNS,
    ENDS_ONLY,
    HOLE_LEFT,
    ONE_CROSS,
    SIGN,
    SIGN_CROSS,
    SIGN_MIDDLE,
    SQUARE_EACH,
    TWO_DROPPED,
)
from generators.algebra._two_brackets_numbers import challenge_fits, core_fits, support_fits
from generators.algebra._worked_wrongly import two_brackets
from generators.algebra._writing import (
    asking,
    bracket,
    collected,
    expression,
    less,
    letter,
    multiplied,
    shown,
    term,
)
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

Pair: TypeAlias = tuple[tuple[int, str], tuple[int, str]]


_STORIES = (
    "A rectangular garden is {p} metres long and {q} metres wide.",
    "A rectangular playground is {p} metres long and {q} metres wide.",
    "A rectangular allotment is {p} metres long and {q} metres wide.",
    "A rectangular bus yard is {p} metres long and {q} metres wide.",
)
_HOLES = (
    ("allotment", "shed"),
    ("garden", "pond"),
    ("playground", "sand pit"),
    ("hall", "stage"),
    ("yard", "cycle store"),
)


@register
class ExpandTwoBrackets(Topic):
    """Two brackets (x + a)(x ± b); two minuses, squares, a number in front; then differences."""

    id = "algebra.expand-two-brackets"
    title = "Expanding two brackets"
    statements = ("algebra.manipulation",)
    prerequisites = ("algebra.expand-one-bracket",)
    misconceptions = (
        *(ENDS_ONLY, ADDS_ENDS, SIGN, SIGN_MIDDLE, SQUARE_EACH, ONE_CROSS, TWO_DROPPED),
        *(SIGN_CROSS, BRACKET_SIGNS, ADDS_SIDES, HOLE_LEFT),
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(support_fits, kind=range(2), a=range(1, 16), b=range(2, 13))
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(core_fits, kind=range(5), a=range(1, 14), b=range(1, 10), c=(2, 3, 5)),
            only=lambda kind, *_: kind < 4,
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(
                challenge_fits,
                kind=range(4),
                a=range(1, 7),
                b=range(1, 9),
                c=range(2, 6),
                d=range(1, 10),
            ),
            only=lambda kind, *_: kind < 3,
        ),
    }
    spaces = kinds.with_working_gone_wrong(
        spaces,
        two_brackets,
        only={
            Tier.CORE: lambda kind, *_: kind < 4,
            Tier.CHALLENGE: lambda kind, *_: kind < 3,
        },
    )

    def make(self, tier: Tier, kind: int, a: int, b: int, *more: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, a, b, *more)
        x = letter(a, b, *more)
        if tier is Tier.SUPPORT:
            return _expand(((1, x), (a, "")), ((1, x), (b if kind == 0 else -b, "")), twin)
        if tier is Tier.CORE:
            (c,) = more
            if kind in (1, 2):
                pair = ((1, x), (a if kind == 1 else -a, ""))
                return _expand(pair, pair, twin)
            if kind == 4:
                return _area(x, a, b, twin)
            lead, sign = (c, 1) if kind == 3 else (1, -1)
            return _expand(((lead, x), (sign * a, "")), ((1, x), (sign * b, "")), twin)
        c, d = more
        if kind == 0:
            return _expand(((a, x), (-b, "")), ((c, x), (-d, "")), twin)
        if kind == 1:
            same = ((a, x), (b if d == 1 else -b, ""))
            return _expand(same, same, twin)
        return _difference(x, a, b, c, twin) if kind == 2 else _rest(x, a, b, d, twin)


def _expand(near: Pair, far: Pair, twin: tuple[object, ...]) -> Draft:
    """Return the question to expand a product of two brackets, or a square."""
    square = near == far
    product = t.Juxt((bracket(*near), bracket(*far)))
    asked: t.Node = t.Power(bracket(*near), t.Int(2)) if square else product
    four = multiplied(near, far)
    open_, key = expression(*four), expression(*collected(four))
    steps = [Step("The square is the bracket times itself.", t.equals(asked, product))]
    steps = steps if square else []
    return rewritten(
        "expand",
        prompt("Expand and simplify {e}.", e=asked),
        asked,
        key,
        (
            *steps,
            Step("Multiply each term by each term.", t.equals(product, open_)),
            Step("Collect like terms.", t.equals(open_, key)),
        ),
        _wrong(near, far),
        twin,
    )


def _wrong(near: Pair, far: Pair) -> list[Wrong]:
    (a, x), (b, _) = near
    (c, _), (d, _) = far
    xx = x + x
    cross, lead, end = a * d + b * c, a * c, b * d

    def wrong(middle: int, last: int) -> t.Node:
        return expression((lead, xx), (middle, x), (last, ""))

    out = shown(t.Int(abs(b))), shown(t.Int(abs(d)))
    found: list[Wrong] = []
    if near == far:
        found.append((SQUARE_EACH, wrong(0, end)))
        found.append((ONE_CROSS, wrong(a * d, end)))
        return found
    found.append((ENDS_ONLY, wrong(0, end)))
    if b > 0 and d > 0:
        found.append((asking(ADDS_ENDS, f"What is {out[0]} × {out[1]}?"), wrong(cross, b + d)))
        if a > 1:
            found.append((TWO_DROPPED, wrong(d + b, end)))
        else:
            found.append((ONE_CROSS, wrong(a * d, end)))
    elif b < 0 and d < 0:
        question = f"What is −{out[0]} × (−{out[1]})?"
        found.append((asking(SIGN, question), wrong(cross, -end)))
        if a > 1 or c > 1:
            found.append((SIGN_CROSS, wrong(a * d - b * c, end)))
        else:
            found.append((asking(ADDS_ENDS, question), wrong(cross, b + d)))
    else:
        found.append((asking(SIGN, f"What is {out[0]} × (−{out[1]})?"), wrong(cross, -end)))
        question = f"What is {x} × (−{out[1]})?"
        found.append((asking(SIGN_MIDDLE, question), wrong(a * abs(d) + abs(b) * c, end)))
    return found


def _area(x: str, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    near, far = ((1, x), (a, "")), ((1, x), (-b, ""))
    asked = t.Juxt((bracket(*near), bracket(*far)))
    four = multiplied(near, far)
    open_, key = expression(*four), expression(*collected(four))
    return rewritten(
        "expand",
        prompt(
            by_turns(_STORIES, a + b) + " Write an expression, in square metres, for its area "
            "without brackets.",
            p=bracket(*near),
            q=bracket(*far),
        ),
        asked,
        key,
        (
            Step("The area is the length times the width.", asked),
            Step("Multiply each term by each term.", t.equals(asked, open_)),
            Step("Collect like terms.", t.equals(open_, key)),
        ),
        [*_wrong(near, far)[:2], (ADDS_SIDES, expression(*collected((*near, *far))))],
        twin,
    )


def _difference(x: str, a: int, b: int, c: int, twin: tuple[object, ...]) -> Draft:
    near, far, square = ((1, x), (a, "")), ((1, x), (-b, "")), ((1, x), (-c, ""))
    product = t.Juxt((bracket(*near), bracket(*far)))
    asked = t.sub(product, t.Power(bracket(*square), t.Int(2)))
    first, second = collected(multiplied(near, far)), collected(multiplied(square, square))
    middle = less(expression(*first), bracket(*second))
    minus = tuple((-value, letters) for value, letters in second)
    open_ = expression(*first, *minus)
    key = expression(*collected((*first, *minus)))
    return rewritten(
        "expand",
        prompt("Expand and simplify {e}.", e=asked),
        asked,
        key,
        (
            Step("Expand each product.", t.equals(asked, middle)),
            Step("Subtract every term of the bracket.", t.equals(middle, open_)),
            Step("Collect like terms.", t.equals(open_, key)),
        ),
        [
            (
                asking(
                    BRACKET_SIGNS,
                    f"The minus stands before the whole bracket. What happens to −{2 * c}{x}?",
                ),
                expression(*collected((*first, minus[0], *second[1:]))),
            ),
            (
                SQUARE_EACH,
                expression(*collected((*first, (-1, x + x), (-c * c, "")))),
            ),
        ],
        twin,
    )


def _rest(x: str, a: int, b: int, d: int, twin: tuple[object, ...]) -> Draft:
    near, far = ((1, x), (d, "")), ((1, x), (b, ""))
    place, thing = by_turns(_HOLES, a + b + d)
    product = t.Juxt((bracket(*near), bracket(*far)))
    hole = term(a, x)
    asked = t.sub(product, hole)
    four = multiplied(near, far)
    open_ = expression(*four, (-a, x))
    key = expression(*collected((*four, (-a, x))))
    wide = "1 metre" if a == 1 else "{a} metres"
    return rewritten(
        "expand",
        prompt(
            f"A rectangular {place} is {{p}} metres long and {{q}} metres wide. A rectangular "
            f"{thing} takes up part of it. It is {{x}} metres long and {wide} wide. Write an "
            "expression, in square metres, for the area of the rest without brackets.",
            p=bracket(*near),
            q=bracket(*far),
            x=t.Sym(x),
            a=t.Int(a),
        ),
        asked,
        key,
        (
            Step("Take the smaller area from the larger one.", asked),
            Step("Multiply each term by each term.", t.equals(asked, open_)),
            Step("Collect like terms.", t.equals(open_, key)),
        ),
        [
            (HOLE_LEFT, expression(*collected(four))),
            (ENDS_ONLY, expression((1, x + x), (-a, x), (b * d, ""))),
        ],
        twin,
    )
