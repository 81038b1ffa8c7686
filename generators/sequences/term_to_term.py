"""Sequences with a rule from term to term.

Key stage 3, algebra (England, 2013): "generate terms of a sequence from either a term-to-term or a
position-to-term rule" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.sequences._gaps_in_sequences import one_gap, two_gaps
from generators.sequences._rules_from_terms import next_value, rule_found, rule_in_words
from generators.sequences._step_mistakes import (
    ADDS_GAP,
    ADDS_MULTIPLIER,
    COUNTS_TERMS,
    FORWARDS,
    FROM_FIRST,
    HALF_WAY,
    ONE_MORE,
    ONE_PART,
    ORDER,
    STEP_GIVEN,
    WRONG_SIGN,
)
from generators.sequences._writing import asking, ending, listed
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_HOW = ("add", "subtract")


def _support(kind: int, first: int, m: int, c: int) -> bool:
    """Keep sequences by adding or subtracting, by multiplying, and one with a gap."""
    if kind == 0:  # add
        return m == 2 and c != first and first < 40
    if kind == 1:  # subtract
        return m == 2 and first > 4 * c and c > 1
    if kind == 2:  # multiply
        return c == 3 and first < 12 and first != m and m < 6
    return m in (2, 3) and c > 2 and c != first  # a gap at place 2 or 3


def _core(kind: int, first: int, m: int, c: int) -> bool:
    if kind in (0, 1):  # multiply and add, multiply and subtract
        return first < 12 and len({first, m, c}) == 3 and (kind == 0 or m * first - c > first)
    if kind == 2:  # two terms are missing
        return m == 2 and c > 2 and first < 30 and c != first
    # down through 0
    return m == 2 and c > 3 and first < 3 * c and first != c and first % c != 0


def _challenge(kind: int, first: int, m: int, c: int) -> bool:
    if kind in (0, 1):  # backwards from the third term
        if first > 11 or len({first, m, c}) < 3:
            return False
        return kind == 0 or m * first - c > first
    if kind == 2:  # a number of the rule is missing
        return first < 10 and len({first, m, c}) == 3
    return (
        first < 9 and m < 5 and len({first, m, c}) == 3 and m * first != c
    )  # by a negative number


@register
class TermToTerm(Topic):
    """Add, subtract or multiply; two parts and gaps; backwards, a rule to find, a negative one."""

    id = "sequences.term-to-term"
    title = "Term-to-term rules"
    statements = ("algebra.sequences",)
    misconceptions = (
        *(FROM_FIRST, ONE_MORE, ORDER, ONE_PART, WRONG_SIGN, FORWARDS, STEP_GIVEN, HALF_WAY),
        *(COUNTS_TERMS, ADDS_GAP, ADDS_MULTIPLIER),
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                _support,
                kind=range(4),
                first=(*range(1, 16), 20, 27, 34, 48, 60),
                m=range(2, 6),
                c=range(2, 12),
            ),
            only=lambda kind, *_: kind == 3,
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(_core, kind=range(4), first=range(1, 30), m=(2, 3, 4, 5), c=range(1, 13)),
            only=lambda kind, *_: kind != 3,
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(_challenge, kind=range(4), first=range(1, 12), m=range(2, 7), c=range(1, 12))
        ),
    }
    spaces = kinds.with_working_spotted(
        spaces,
        "sequences.term-to-term",
        kinds.working_goes_wrong(
            {
                STEP_GIVEN: (e.cut_short,),
                WRONG_SIGN: (e.turned,),
                HALF_WAY: (e.everywhere(e.divided_by_two),),
                ONE_MORE: (e.cut_short,),
            }
        ),
    )

    def make(self, tier: Tier, kind: int, first: int, m: int, c: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, first, m, c)
        if tier is Tier.SUPPORT:
            if kind == 3:
                return one_gap(twin, first, m, c)
            return _next(twin, first, m if kind == 2 else 1, (c, -c, 0)[kind])
        if tier is Tier.CORE:
            if kind < 2:
                return _two_parts(twin, first, m, c if kind == 0 else -c, 3)
            return two_gaps(twin, first, c) if kind == 2 else _next(twin, first, 1, -c)
        if kind < 2:
            return _back(twin, first, m, c if kind == 0 else -c)
        if kind == 2:
            return rule_found(twin, first, m, c)
        return _two_parts(twin, first, -m, c, 4)


def _written(value: t.Node, m: int, c: int) -> t.Node:
    """Return what the rule makes of a term: × m, then + c."""
    node = value
    if m != 1:
        node = t.times(t.Bracket(value) if isinstance(value, t.Sum) else value, _factor(m))
    if c:
        node = t.add(node, t.Int(c)) if c > 0 else t.sub(node, t.Int(-c))
    return node


def _factor(m: int) -> t.Node:
    return t.Int(m) if m > 0 else t.Bracket(t.num(m))


def _steps(first: int, m: int, c: int, count: int) -> tuple[list[int], list[Step]]:
    values, steps = [first], []
    for place in range(2, count + 1):
        before = values[-1]
        values.append(next_value(before, m, c))
        line = t.equals(_written(t.num(before), m, c), t.num(values[-1]))
        steps.append(Step(f"The {place}{ending(place)} term.", line))
    return values, steps


def _next(twin: Any, first: int, m: int, c: int) -> Draft:
    """Return the question for the next three terms after the first."""
    values, steps = _steps(first, m, c, 4)
    rest = values[1:]
    terms: list[t.Node] = []
    node: t.Node = t.Int(first)
    for _ in range(3):
        node = (
            _written(node, m, c) if not isinstance(node, t.Sum | t.Product) else _again(node, m, c)
        )
        terms.append(node)
    key = listed(rest)
    other = -c if m == 1 else 0
    turned = (
        [first + other * k for k in range(1, 4)] if m == 1 else [first + m * k for k in range(1, 4)]
    )
    if m == 1:
        name = asking(WRONG_SIGN, f"Use the rule on {first}. What comes next?")
    else:
        name = asking(ADDS_MULTIPLIER, f"Does the rule say to add {m} or to multiply by {m}?")
    return Draft(
        prompt(
            "The first term of a sequence is {f}. The rule to get the next term is: "
            + rule_in_words(m, c)
            + ". Write the next three terms.",
            f=t.Int(first),
            m=t.Int(m),
            c=t.Int(abs(c)),
        ),
        Find(t.Listing(tuple(terms))),
        key,
        "list",
        (*steps, Step("List the terms in order.", key)),
        slips((FROM_FIRST, listed([rest[0]] * 3)), (name, listed(turned)), key=key),
        twin,
    )


def _again(node: t.Node, m: int, c: int) -> t.Node:
    """Return the rule once more on what it has made already, without needless brackets."""
    if m == 1:
        more: tuple[t.SumOp, t.Node] = ("+", t.Int(c)) if c > 0 else ("-", t.Int(-c))
        assert isinstance(node, t.Sum)
        return t.Sum(node.first, (*node.rest, more))
    if isinstance(node, t.Product):
        return t.Product(node.first, (*node.rest, ("×", _factor(m))))
    return _written(node, m, c)


def _two_parts(twin: Any, first: int, m: int, c: int, count: int) -> Draft:
    values, steps = _steps(first, m, c, count)
    node: t.Node = t.Int(first)
    for _ in range(count - 1):
        node = _written(node, m, c)
    other = first
    for _ in range(count - 1):
        other = m * (other + c)
    return Draft(
        prompt(
            f"The first term of a sequence is {{f}}. The rule to get the next term is: "
            f"{rule_in_words(m, c)}. Work out the {{k}}{ending(count)} term.",
            f=t.Int(first),
            m=t.num(m),
            c=t.Int(abs(c)),
            k=t.Int(count),
        ),
        Find(node),
        t.num(values[-1]),
        "integer",
        tuple(steps),
        slips(
            (
                asking(ORDER, f"Which comes first: to multiply, or to {_HOW[c < 0]} {abs(c)}?"),
                other,
            ),
            (ONE_PART, first * m ** (count - 1)),
            (ONE_MORE, next_value(values[-1], m, c)),
            key=t.num(values[-1]),
        ),
        twin,
    )


def _back(twin: Any, first: int, m: int, c: int) -> Draft:
    """Return the question for the first term, from the third."""
    second = next_value(first, m, c)
    third = next_value(second, m, c)
    x = t.Sym("x")
    inner = _written(x, m, c)
    relation = t.equals(_written(inner, m, c), t.num(third))
    undo = t.sub if c > 0 else t.add
    size = t.Int(abs(c))

    def back(value: int) -> t.Node:
        return undo(t.num(value), size)

    say = f"{'Subtract' if c > 0 else 'Add'} {abs(c)}, then divide by {m}."
    return Draft(
        prompt(
            f"The rule to get the next term of a sequence is: {rule_in_words(m, c)}. The third "
            "term is {v}. Work out the first term.",
            m=t.Int(m),
            c=size,
            v=t.num(third),
        ),
        Find(x, (relation,)),
        t.Int(first),
        "integer",
        (
            Step(
                f"Undo the rule to find the second term. {say}",
                t.equals(t.Frac(back(third), t.Int(m)), t.num(second)),
            ),
            Step(
                f"Undo the rule again. {say}",
                t.equals(t.Frac(back(second), t.Int(m)), t.Int(first)),
            ),
        ),
        slips(
            (ONE_MORE, second),
            (FORWARDS, next_value(next_value(third, m, c), m, c)),
            (
                asking(
                    ORDER,
                    f"Which part was done last? Undo {'adding' if c > 0 else 'subtracting'} "
                    f"{abs(c)} first.",
                ),
                _wrong_back(third, m, c),
            ),
            key=t.Int(first),
        ),
        twin,
    )


def _wrong_back(third: int, m: int, c: int) -> Fraction:
    value = Fraction(third)
    for _ in range(2):
        value = value / m - c
    return value
