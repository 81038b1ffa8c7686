"""Factorising into one bracket: taking out the highest common factor.

Key stage 3, algebra (England, 2013): "simplify and manipulate algebraic expressions to maintain
equivalence by taking out common factors" (from memory).
"""

from __future__ import annotations

from math import gcd

from generators._turns import by_turns
from generators.algebra._factorising_mistakes import (
    ADDS_UP,
    FIRST_ONLY,
    LEAVES_WHOLE,
    LETTER_LEFT,
    ONE_LESS,
    SIGN_LOST,
    TAKES_AWAY,
    TWICE,
)
from generators.algebra._rewritten import rewritten
from generators.algebra._worked_wrongly import factor
from generators.algebra._writing import (
    Term,
    asking,
    bracket,
    expression,
    letter,
    multiplied,
    shown,
    term,
    trying,
    two_letters,
)
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t


def _support(kind: int, g: int, p: int, q: int) -> bool:
    """Keep g(px + q), g(px − q) and gpx + g, with nothing common left in the bracket."""
    if kind == 2:
        return q == 1 and p > 1
    return q > 1 and gcd(p, q) == 1 and g * q <= 60 and g != q


def _core(kind: int, g: int, p: int, q: int) -> bool:
    if kind == 0:  # px² + qx or px² − qx
        return g < 4 and gcd(p, q) == 1 and q > 1 and p != q
    if kind in (1, 2):  # gx(p + qy), gx(py − qx)
        return gcd(p, q) == 1 and p > 1 and q > 1 and g < 8
    # An area of gpx + gq, g wide.
    return gcd(p, q) == 1 and p > 1 and q > 1 and g < 7 and q != g


def _challenge(kind: int, g: int, p: int, q: int) -> bool:
    if kind == 0:  # gxy(px + qy − 1)
        return gcd(p, q) == 1 and p > 1 and g < 6 and p != q
    if kind == 1:  # px(y + q) − g(y + q)
        return gcd(p, g) == 1 and g > 1 and p < 4
    if kind == 2:  # gxy(px − qy)
        return gcd(p, q) == 1 and p > 1 and q > 1 and g < 8
    # An area of gpx² + gqx, gx wide.
    return gcd(p, q) == 1 and p > 1 and q > 1 and g < 7 and q != g


_STORIES = (
    "The area of a rectangular flower bed is {p} square metres. It is {g} metres wide.",
    "The area of a rectangular playground is {p} square metres. It is {g} metres wide.",
    "The area of a rectangular swimming pool is {p} square metres. It is {g} metres wide.",
    "The area of a rectangular bus park is {p} square metres. It is {g} metres wide.",
    "The area of a rectangular school hall is {p} square metres. It is {g} metres wide.",
)


@register
class Factorise(Topic):
    """A common number; a common letter, or both; then three terms or a bracket in common."""

    id = "algebra.factorise"
    title = "Factorising into one bracket"
    statements = ("algebra.manipulation",)
    prerequisites = ("algebra.expand-one-bracket",)
    misconceptions = (
        *(FIRST_ONLY, ADDS_UP, TAKES_AWAY, LEAVES_WHOLE, LETTER_LEFT, SIGN_LOST, TWICE),
        ONE_LESS,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(_support, kind=range(3), g=range(2, 13), p=range(1, 10), q=range(1, 12))
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(_core, kind=range(4), g=range(2, 10), p=range(1, 8), q=range(1, 12)),
            only=lambda kind, *_: kind < 3,
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(_challenge, kind=range(4), g=range(2, 10), p=range(1, 8), q=range(1, 10)),
            only=lambda kind, *_: kind < 3,
        ),
    }
    spaces = kinds.with_working_gone_wrong(
        spaces,
        factor,
        only={
            Tier.CORE: lambda kind, *_: kind < 3,
            Tier.CHALLENGE: lambda kind, *_: kind in (0, 2),
        },
    )

    def make(self, tier: Tier, kind: int, g: int, p: int, q: int) -> Draft:
        """Return the question for one point of the tier's space; `g` is the common number."""
        twin = (str(tier), kind, g, p, q)
        x, (a, b) = letter(g, p, q), two_letters(g, p, q)
        if tier is Tier.SUPPORT:
            return _take_out((g, ""), ((p, x), (-q if kind == 1 else q, "")), twin)
        if kind == 3:
            return _length(x, g, p, q, tier is Tier.CHALLENGE, twin)
        if tier is Tier.CORE:
            if kind == 0:
                return _take_out((1, x), ((p, x), (q if g == 2 else -q, "")), twin, fully=True)
            inside = ((p, ""), (q, b)) if kind == 1 else ((p, b), (-q, a))
            return _take_out((g, a), inside, twin, fully=True)
        if kind == 0:
            return _three(a, b, g, p, q, twin)
        if kind == 1:
            return _bracket(a, b, g, p, q, twin)
        return _take_out((g, a + b), ((p, a), (-q, b)), twin, fully=True)


def _product(factor: Term, inside: tuple[Term, ...]) -> t.Node:
    front = term(*factor)
    below = front.factors if isinstance(front, t.Juxt) else (front,)
    return t.Juxt((*below, bracket(*inside)))


def _as_products(factor: Term, inside: tuple[Term, ...]) -> t.Node:
    """Return each term as the factor times what is left of it."""
    first, *others = inside
    front = term(*factor)
    rest = [
        ("-" if value < 0 else "+", t.times(front, term(-value if value < 0 else value, letters)))
        for value, letters in others
    ]
    return t.Sum(t.times(front, term(*first)), tuple(rest))  # type: ignore[arg-type]


def _steps(asked: t.Node, factor: Term, inside: tuple[Term, ...]) -> tuple[Step, ...]:
    name, open_ = shown(term(*factor)), _as_products(factor, inside)
    return (
        Step(f"The highest common factor of the terms is {name}.", t.equals(asked, open_)),
        Step("Write it in front of a bracket.", t.equals(open_, _product(factor, inside))),
    )


def _take_out(
    factor: Term,
    inside: tuple[tuple[int, str], ...],
    twin: tuple[object, ...],
    fully: bool = False,
) -> Draft:
    whole = multiplied([factor], inside)
    asked, key = expression(*whole), _product(factor, inside)
    (first, second), (whole_first, last) = inside, whole
    value, letters = factor
    names = tuple(dict.fromkeys(letters + first[1] + second[1]))
    size = abs(int(last[0]))
    wrong: list[Wrong] = [(FIRST_ONLY, _product(factor, (first, last)))]
    if not letters:
        divided = f"What is {size} ÷ {value}? Is it {size - int(value)}?"
        less = size - int(value)
        if less and abs(second[0]) != 1:
            taken = (less if second[0] > 0 else -less, "")
            wrong.append((asking(TAKES_AWAY, divided), _product(factor, (first, taken))))
        if abs(second[0]) == 1:
            wrong.append((LEAVES_WHOLE, term(*whole_first)))
        elif second[0] > 0:
            wrong.append((trying(ADDS_UP, *names), term(whole_first[0] + last[0], names[0])))
    else:
        left = (second[0], "".join(sorted(second[1] + letters)))
        wrong.append((LETTER_LEFT, _product(factor, (first, left))))
        if not second[1] and second[0] > 0 and len(names) == 1:
            total = term(first[0] + second[0], letters + first[1])
            wrong.append((trying(ADDS_UP, *names), total))
    if second[0] < 0:
        wrong.append((SIGN_LOST, _product(factor, (first, (-second[0], second[1])))))
    return rewritten(
        "factorise",
        prompt("Factorise {e} fully." if fully else "Factorise {e}.", e=asked),
        asked,
        key,
        _steps(asked, factor, inside),
        wrong,
        twin,
    )


def _three(a: str, b: str, g: int, p: int, q: int, twin: tuple[object, ...]) -> Draft:
    factor, inside = (g, a + b), ((p, a), (q, b), (-1, ""))
    asked, key = expression(*multiplied([factor], inside)), _product(factor, inside)
    name = shown(term(*factor))
    return rewritten(
        "factorise",
        prompt("Factorise {e} fully.", e=asked),
        asked,
        key,
        _steps(asked, factor, inside),
        [
            (
                asking(LEAVES_WHOLE, f"What is {name} divided by {name}? Is it nothing?"),
                _product(factor, inside[:2]),
            ),
            (SIGN_LOST, _product(factor, (*inside[:2], (1, "")))),
        ],
        twin,
    )


def _bracket(a: str, b: str, g: int, p: int, q: int, twin: tuple[object, ...]) -> Draft:
    """Return px(y + q) − g(y + q)."""
    common = bracket((1, b), (q, ""))
    front = term(p, a)
    first = t.Juxt((*(front.factors if isinstance(front, t.Juxt) else (front,)), common))
    asked = t.sub(first, t.Juxt((t.Int(g), common)))
    key = t.Juxt((common, bracket((p, a), (-g, ""))))
    name = shown(common.of)
    return rewritten(
        "factorise",
        prompt("Factorise {e} fully.", e=asked),
        asked,
        key,
        (
            Step(
                f"The bracket {name} is a factor of each term, so take it out.",
                t.equals(asked, key),
            ),
        ),
        [
            (
                asking(TWICE, f"How many times is {name} a factor of each term?"),
                t.Juxt((t.Power(common, t.Int(2)), bracket((p, a), (-g, "")))),
            ),
            (
                asking(SIGN_LOST, f"You divide −{g}({name}) by {name}. What is left?"),
                t.Juxt((common, bracket((p, a), (g, "")))),
            ),
        ],
        twin,
    )


def _length(x: str, g: int, p: int, q: int, with_letter: bool, twin: tuple[object, ...]) -> Draft:
    width: Term = (g, x) if with_letter else (g, "")
    inside = ((p, x), (q, ""))
    whole = multiplied([width], inside)
    wide, area = term(*width), expression(*whole)
    asked, key = t.Frac(area, wide), expression(*inside)
    product = _product(width, inside)
    last: Term = whole[1]
    check = "Multiply your length by the width. Do you get the area?"
    wrong: list[Wrong] = [(asking(FIRST_ONLY, check), expression(inside[0], last))]
    if with_letter:
        wrong.append((asking(LETTER_LEFT, check), expression(inside[0], (q, x))))
    else:
        wrong.append((ONE_LESS, expression(whole[0], (last[0] - g, "")) if q > 1 else None))
    return rewritten(
        "simplify",
        prompt(
            by_turns(_STORIES, g + p + q)
            + " Write an expression, in metres, for its length in its simplest form.",
            p=t.Bracket(area),
            g=wide,
        ),
        asked,
        key,
        (
            Step("Factorise the area, with the width in front.", t.equals(area, product)),
            Step("Divide by the width.", t.equals(asked, key)),
        ),
        wrong,
        twin,
    )
