"""Expanding one bracket, and sums of two.

Key stage 3, algebra (England, 2013): "simplify and manipulate algebraic expressions to maintain
equivalence by multiplying a single term over a bracket" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators.algebra._areas_with_brackets import (
    area_of_plot,
    asking_for_lots,
    rest_of_area,
    trays,
)
from generators.algebra._one_bracket_mistakes import (
    ADDS,
    DOUBLES,
    FIRST_ONLY,
    JOINS,
    PERIMETER,
    POWER_LOST,
    SIGN,
    SUBTRACTS_FIRST,
    WHOLE_AREA,
)
from generators.algebra._one_bracket_numbers import challenge_fits, core_fits, support_fits
from generators.algebra._rewritten import rewritten
from generators.algebra._worked_wrongly import one_bracket
from generators.algebra._writing import (
    Term,
    asking,
    bracket,
    collected,
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


@register
class ExpandOneBracket(Topic):
    """A bracket a(bx + c); a minus or a letter outside, two brackets; then one taken away."""

    id = "algebra.expand-one-bracket"
    title = "Expanding one bracket"
    statements = ("algebra.manipulation",)
    prerequisites = ("algebra.collect-terms",)
    misconceptions = (
        *(FIRST_ONLY, JOINS, ADDS, SIGN, DOUBLES, POWER_LOST, SUBTRACTS_FIRST),
        *(WHOLE_AREA, PERIMETER),
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(support_fits, kind=range(5), a=range(2, 10), b=range(2, 7), c=range(1, 12)),
            only=lambda kind, *_: kind < 4,
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(
                core_fits, kind=range(4), a=range(2, 8), b=range(2, 8), c=range(1, 9), d=range(1, 7)
            ),
            only=lambda kind, *_: kind < 3,
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(
                challenge_fits,
                kind=range(4),
                a=range(2, 8),
                b=range(1, 8),
                c=range(1, 6),
                d=range(1, 8),
            ),
            only=lambda kind, *_: kind < 3,
        ),
    }
    spaces = kinds.with_working_gone_wrong(
        spaces,
        one_bracket,
        only={
            Tier.SUPPORT: lambda kind, *_: kind < 4,
            Tier.CORE: lambda kind, *_: kind < 3,
            Tier.CHALLENGE: lambda kind, *_: kind < 3,
        },
    )

    def make(self, tier: Tier, kind: int, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, *values)
        if tier is Tier.SUPPORT:
            return trays(twin, *values) if kind == 4 else _single(twin, kind, *values)
        if tier is Tier.CORE:
            if kind == 2:
                return _two(twin, 1, *values)
            if kind == 3:
                return area_of_plot(twin, *values)
            return _signed(twin, kind, *values)
        if kind == 0:
            return _two(twin, -1, *values)
        build = {1: _letters, 2: _from_number, 3: rest_of_area}[kind]
        return build(twin, *values)


def _expand(
    outside: Term, inside: tuple[Term, ...], wrong: list[Wrong], twin: tuple[object, ...]
) -> Draft:
    """Return the question to expand one bracket."""
    asked = _product(outside, inside)
    key = expression(*multiplied([outside], inside))
    front, (value, letters) = term(*outside), inside[1]
    second_size = term(-value if value < 0 else value, letters)
    minus = inside[1][0] < 0
    last = t.times(front, second_size)
    if outside[0] < 0:
        last = t.times(front, t.Bracket(term(*inside[1])) if minus else second_size)
        open_ = t.Sum(t.times(front, term(*inside[0])), (("+", last),))
        if isinstance(front, t.Neg):
            bare = t.times(front.of, t.Bracket(term(*inside[1])) if minus else second_size)
            open_ = t.Sum(t.times(front, term(*inside[0])), (("-", bare),))
    else:
        open_ = t.Sum(t.times(front, term(*inside[0])), (("-" if minus else "+", last),))
    name, second = shown(front), shown(term(*inside[1]))
    return rewritten(
        "expand",
        prompt("Expand {e}.", e=asked),
        asked,
        key,
        (
            Step(
                f"Multiply {shown(term(*inside[0]))} by {name}, and {second} by {name}.",
                t.equals(asked, open_),
            ),
            Step("Work out each product.", t.equals(open_, key)),
        ),
        wrong,
        twin,
    )


def _product(outside: Term, inside: tuple[Term, ...]) -> t.Node:
    value, letters = outside
    front = term(value, letters)
    factors = front.factors if isinstance(front, t.Juxt) else (front,)
    if isinstance(front, t.Neg):
        below = front.of.factors if isinstance(front.of, t.Juxt) else (front.of,)
        return t.Neg(t.Juxt((*below, bracket(*inside))))
    return t.Juxt((*factors, bracket(*inside)))


def _single(twin: tuple[object, ...], kind: int, a: int, b: int, c: int) -> Draft:
    x = letter(a, b, c)
    lead = b if kind >= 2 else 1
    number = -c if kind % 2 else c
    wrong: list[Wrong] = [
        (asking_for_lots(a, (c, "")), expression((a * lead, x), (number, ""))),
        (ADDS, expression((a + lead if kind >= 2 else a, x), (a + number, ""))),
        (trying(JOINS, x), term(a * lead + a * number, x) if lead + number else None),
    ]
    return _expand((a, ""), ((lead, x), (number, "")), wrong, twin)


def _signed(twin: tuple[object, ...], kind: int, a: int, b: int, c: int, d: int) -> Draft:
    x = letter(a, b, c, d)
    number = c if d == 2 else -c
    if kind == 0:
        wrong: list[Wrong] = [
            (
                asking(SIGN, f"What is −{a} × {f'(−{c})' if number < 0 else c}?"),
                expression((-a * b, x), (a * number, "")),
            ),
            (
                asking(FIRST_ONLY, f"Which terms in the bracket does the −{a} multiply?"),
                expression((-a * b, x), (number, "")),
            ),
        ]
        return _expand((-a, ""), ((b, x), (number, "")), wrong, twin)
    # x(bx + c), or ax(x − c): the letter outside.
    front, lead = (1, b) if d == 2 else (a, 1)
    wrong = [
        (DOUBLES, expression((2 * front * lead + front * number, x))),
        (POWER_LOST, expression((front * lead, x), (front * number, ""))),
        (FIRST_ONLY, expression((front * lead, x + x), (number, ""))),
    ]
    if 2 * front * lead + front * number == 0:
        wrong = wrong[1:]
    return _expand((front, x), ((lead, x), (number, "")), wrong, twin)


def _two(twin: tuple[object, ...], sign: int, a: int, b: int, c: int, d: int) -> Draft:
    """Return a(x + b) + c(x − d), or the same with a minus between."""
    x = letter(a, b, c, d)
    near, far = ((1, x), (b, "")), ((1, x), (-d, ""))
    first = multiplied([(a, "")], near)
    second = multiplied([(sign * c, "")], far)
    asked = t.Sum(_product((a, ""), near), (("+" if sign > 0 else "-", _product((c, ""), far)),))
    open_ = expression(*first, *second)
    key = expression(*collected((*first, *second)))
    wrong: list[Wrong] = [
        (
            asking(SIGN, f"What is {'' if sign > 0 else '−'}{c} × (−{d})?"),
            expression(*collected((*first, second[0], (-second[1][0], "")))),
        ),
        (
            asking(FIRST_ONLY, f"What is {a} × {b}? What is {c} × {d}? Where are they?"),
            expression(*collected(((a, x), (b, ""), (sign * c, x), (-sign * d, "")))),
        ),
    ]
    say = "Expand each bracket."
    if sign < 0:
        say = f"Expand each bracket; −{c} × (−{d}) is {c * d}."
    return rewritten(
        "expand",
        prompt("Expand and simplify {e}.", e=asked),
        asked,
        key,
        (Step(say, t.equals(asked, open_)), Step("Collect like terms.", t.equals(open_, key))),
        wrong,
        twin,
    )


def _letters(twin: tuple[object, ...], a: int, b: int, c: int, d: int) -> Draft:
    x, y = two_letters(a, b, c, d)
    first = multiplied([(a, x)], ((b, x), (-1, y)))
    second = multiplied([(-1, x)], ((c, x), (-d, y)))
    asked = t.Sum(
        _product((a, x), ((b, x), (-1, y))), (("-", _product((1, x), ((c, x), (-d, y)))),)
    )
    open_ = expression(*first, *second)
    key = expression(*collected((*first, *second)))
    return rewritten(
        "expand",
        prompt("Expand and simplify {e}.", e=asked),
        asked,
        key,
        (
            Step("Expand each bracket.", t.equals(asked, open_)),
            Step("Collect like terms.", t.equals(open_, key)),
        ),
        [
            (
                asking(SIGN, f"What is −{x} × (−{shown(term(d, y))})?"),
                expression((a * b - c, x + x), (-a - d, x + y)),
            ),
            (
                asking(POWER_LOST, f"If {x} is 3, what is {x} × {x}? Is it 3?"),
                expression((a * b - c, x), (d - a, x + y)),
            ),
        ],
        twin,
    )


def _from_number(twin: tuple[object, ...], a: int, b: int, c: int, d: int) -> Draft:
    """Return a − b(cx − d): the product comes before the subtraction."""
    x = letter(a, b, c, d)
    inside: tuple[Term, ...] = ((c, x), (-d, ""))
    first = 10 + a
    asked = t.sub(t.Int(first), _product((b, ""), inside))
    open_ = expression((first, ""), (-b * c, x), (b * d, ""))
    key = expression((first + b * d, ""), (-b * c, x))
    return rewritten(
        "expand",
        prompt("Expand and simplify {e}.", e=asked),
        asked,
        key,
        (
            Step(
                f"Multiply each term in the bracket by −{b}; −{b} × (−{d}) is {b * d}.",
                t.equals(asked, open_),
            ),
            Step("Collect like terms.", t.equals(open_, key)),
        ),
        [
            (
                asking(SIGN, f"What is −{b} × (−{d})?"),
                expression((first - b * d, ""), (-b * c, x)),
            ),
            (SUBTRACTS_FIRST, expression(((first - b) * c, x), (-(first - b) * d, ""))),
        ],
        twin,
    )
