"""Equations that are rearranged to y = mx + c: pairs to match, and the odd one out.

England's programme of study for key stage 3 (2013) asks pupils to "reduce a given linear equation
in two variables to the standard form y = mx + c" (from memory).
"""

from __future__ import annotations

from fractions import Fraction

from generators.graphs._lines import X, Y, equation
from itembank.items.item import Draft, Misconception, Tier
from itembank.items.kinds.equal_ways import Way, odd_way_out, ways_matched
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

DIVIDES_ONE_TERM = Misconception(
    "graphs.rearranging-one-term",
    "divides one term of a side, and leaves the others",
    "If 2y = 4x + 6, what is y when x = 0? Does your equation say so too?",
)
SIGN_KEPT = Misconception(
    "graphs.rearranging-sign-kept",
    "takes a term to the other side with the sign it had",
    "Put x = 1 into both equations. Do they give the same y?",
)
MISTAKES = (DIVIDES_ONE_TERM, SIGN_KEPT)

_Line = tuple[Fraction, int]


def _lots(number: int, of: t.Sym) -> t.Node:
    """Return so many times a letter, without a 1 before it."""
    if abs(number) == 1:
        return of if number > 0 else t.Neg(of)
    lots = t.juxt(t.Int(abs(number)), of)
    return lots if number > 0 else t.Neg(lots)


def _joined(first: t.Node, number: int, other: t.Node) -> t.Node:
    """Return a sum of a term and so many times another, which has its sign from the number."""
    return t.add(first, other) if number > 0 else t.sub(first, other)


def _multiple(line: _Line, by: int) -> t.Relation:
    """Return 2y = 4x + 6, its right side in whole numbers."""
    m, c = line
    whole, rest = int(m * by), c * by
    side = _joined(_lots(whole, X), rest, t.Int(abs(rest)))
    return t.equals(_lots(by, Y), side)


def _together(line: _Line, by: int) -> t.Relation:
    """Return y − 2x = 3, or 3y + 2x = 12 where the gradient is −2/3: both letters on one side."""
    m, c = line
    whole = int(m * by)
    return t.equals(_joined(_lots(by, Y), -whole, _lots(abs(whole), X)), t.num(c * by))


def _from_zero(line: _Line, by: int) -> t.Relation:
    """Return 2y − 4x − 6 = 0."""
    m, c = line
    whole, rest = int(m * by), c * by
    first = _joined(_lots(by, Y), -whole, _lots(abs(whole), X))
    return t.equals(_joined(first, -rest, t.Int(abs(rest))), t.Int(0))


def _wrong(line: _Line, by: int) -> tuple[Misconception, t.Relation]:
    """Return what comes of dividing one term alone, or of a sign that is kept."""
    m, c = line
    if by > 1:
        return DIVIDES_ONE_TERM, equation(m, c * by)
    return SIGN_KEPT, equation(-m, c)


def _lines(tier: Tier, m: int, c: int) -> tuple[tuple[_Line, int, int], ...]:
    """Return three lines, each with what both sides are multiplied by, and how it is written."""
    if tier is Tier.CORE:
        return (
            ((Fraction(m), c), 2 + abs(c) % 2, 0),
            ((Fraction(-m), c), 1, 1),
            ((Fraction(m), -c), 1, 1),
        )
    by = 2 + abs(c) % 3
    slope = Fraction(m, by)
    return (
        ((slope, c), by, 0),
        ((-slope, c), by, 1),
        ((slope, -c), by, 2),
    )


_WAYS = (_multiple, _together, _from_zero)


def _fits(tier: Tier, m: int, c: int, which: int) -> bool:
    lines = _lines(tier, m, c)
    if 0 in (m, c) or abs(m) == abs(c) or (m + 2 * c + which) % 3:
        return False
    if tier is Tier.CHALLENGE and (lines[0][0][0].denominator != lines[0][1] or abs(c) > 6):
        return False
    if tier is Tier.CORE and m == 1:
        return False
    _, spare = _wrong(*lines[which][:2])
    return spare not in [equation(*line) for line, _, _ in lines]


def lines_matched(topic: Topic, tier: Tier, m: int, c: int, which: int) -> Draft:
    """Return three equations to match with those of the same lines, as y = mx + c."""
    lines = _lines(tier, m, c)
    mistake, spare = _wrong(*lines[which][:2])
    pairs: list[tuple[t.Node, t.Node]] = [
        (_WAYS[way](line, by), equation(*line)) for line, by, way in lines
    ]
    return ways_matched(
        pairs,
        spare,
        called=("equation", "the equation of the same line"),
        mistake=(mistake, which),
        say=lambda n: _SAY[lines[n][2]],
        twin=("lines", tier.value, m, c, which),
        lines=[same for _, same in pairs],
    )


_SAY = (
    "divide every term by the number before y.",
    "take the x term to the other side, then divide by the number before y.",
    "leave y alone on its side, then divide by the number before it.",
)


def odd_line(topic: Topic, tier: Tier, m: int, c: int, which: int) -> Draft:
    """Return one line in three equations, and another line by a common mistake."""
    line = (Fraction(m), c)
    key = equation(*line)
    by = 2 + abs(m + c) % 3
    mistake, odd = _wrong(line, by if which == 0 else 1)
    others = (
        Way(_multiple(line, by), "Divide every term by the number before y.", key),
        Way(key),
        Way(_together(line, 1), "Take the x term to the other side.", key),
    )
    if which:
        others = others[::-1]
    return odd_way_out(Way(odd), others, mistake, ("odd line", m, c, which), "form")


def _odd_fits(m: int, c: int, which: int) -> bool:
    return 0 not in (m, c) and abs(m) > 1 and m != c and (m + 2 * c + 3 * which) % 5 == 0


def with_rearranged(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with equations to rearrange at the ends of core and beyond."""
    axes = {"m": range(1, 8), "c": range(-9, 10), "which": range(3)}
    return {
        **spaces,
        Tier.CORE: spaces[Tier.CORE]
        .also(lines_matched, lambda *point: _fits(Tier.CORE, *point), **axes)
        .also(odd_line, _odd_fits, m=range(-6, 7), c=range(-9, 10), which=(0, 1)),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            lines_matched, lambda *point: _fits(Tier.CHALLENGE, *point), **axes
        ),
    }
