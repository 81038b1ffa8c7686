"""Inequalities shown on a number line: written with signs, and the integers that fit.

Key stage 3 (England, 2013): "use the symbols =, ≠, <, >, ≤, ≥" and "understand and use the concepts
and vocabulary of … inequalities" (from memory).
"""

from __future__ import annotations

from generators._drawn import to_draw
from generators._turns import by_turns
from generators.equations._inequality_asked import integer_at_end, list_integers, write_inequality
from generators.equations._inequality_lines import (
    STEPS,
    line_from,
    line_of_halves,
    one_ended,
    two_ended,
)
from generators.equations._line_mistakes import (
    CIRCLES,
    DIRECTION,
    FILLED_LEFT_OUT,
    MARKS_AS_ONES,
    NEXT_INSIDE,
    NOUGHT_LEFT_OUT,
    OPEN_COUNTED,
    WRONG_SIDE,
)
from itembank.figures.figure import Reading, read
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_LETTERS = "xnyw"
_SCALES = (2, 5)
"""What the steps of a line of whole numbers may be worth; halves are told by a kind."""


def _support(kind: int, first: int, at: int, way: int, counts: bool) -> bool:
    """Keep one end, up (`way` 1) or down: the inequality, or the integer nearest to the end."""
    return kind == 0 or 2 < at < 8


def _core(kind: int, first: int, low: int, wide: int, ends: int) -> bool:
    """Keep two ends: the inequality, or the integers."""
    inside = wide - 1 + (ends & 1) + (ends >> 1)
    return low + wide < 10 and (kind == 0 or 2 < inside < 7)


def _challenge(kind: int, first: int, low: int, wide: int, ends: int) -> bool:
    """Keep steps that are no ones: an inequality, or integers between halves."""
    if low + wide > 9:
        return False
    if kind == 0:  # steps of 2 or 5, one end or two between the numbers that are printed
        return first in (0, -10, -20) and (low % 2 == 1 or (low + wide) % 2 == 1)
    if first not in (-4, -3, -2, -1):
        return False
    # Halves: an end at least lies between two integers.
    return (low % 2 == 1 or (low + wide) % 2 == 1) and wide > 3


def _one_end(first: int, at: int, way: int, counts: bool) -> bool:
    return 0 < at < STEPS


def _two_ends(first: int, low: int, wide: int, ends: int) -> bool:
    return low + wide < STEPS


def _to_show(topic: Topic, tier: Tier, first: int, at: int, *more: int) -> Draft:
    """Return an empty line on which an inequality with one end, or with two, is to be shown."""
    if len(more) == 2 and tier is Tier.SUPPORT:
        way, counts = more
        span = one_ended(at, way, counts)
    else:
        wide, ends = more
        span = two_ended(at, wide, ends)
    x = t.Sym(by_turns(_LETTERS, first + at + sum(more)))
    given, shown = line_from(first, 1, None), line_from(first, 1, span)
    wanted = read(shown, Reading("inequality", (x.name,)))
    text = prompt("Show the inequality {e} on the number line.", e=wanted)
    last = (
        "Draw a thick line between the circles."
        if span.low is not None and span.high is not None
        else f"Draw a thick arrow to the {'right' if span.high is None else 'left'}."
    )
    ends_said = tuple(
        Step(
            f"Draw {'a filled' if counts else 'an open'} circle at "
            f"{_number_said(first + place)}: it {'counts' if counts else 'does not count'}."
        )
        for place, counts in ((span.low, span.low_counts), (span.high, span.high_counts))
        if place is not None
    )
    return to_draw(
        text, given, shown, (*ends_said, Step(last)), ("to show", str(tier), first, at, *more)
    )


@register
class InequalitiesOnALine(Topic):
    """One end; two ends, and the integers between; scales that go up by another number than 1."""

    id = "equations.inequalities-on-a-line"
    title = "Inequalities on a number line"
    statements = ("number.ordering",)
    misconceptions = (
        *(CIRCLES, DIRECTION, OPEN_COUNTED, FILLED_LEFT_OUT, NOUGHT_LEFT_OUT, NEXT_INSIDE),
        *(WRONG_SIDE, MARKS_AS_ONES),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            kind=range(2),
            first=(-6, -4, -2, 0),
            at=range(1, 10),
            way=(-1, 1),
            counts=(False, True),
        ).also(
            _to_show,
            _one_end,
            first=(-6, -4, -2, 0),
            at=range(1, 10),
            way=(-1, 1),
            counts=(False, True),
        ),
        Tier.CORE: Space(
            _core,
            kind=range(2),
            first=(-6, -4, -2, 0),
            low=range(1, 8),
            wide=range(2, 8),
            ends=range(4),
        ).also(
            _to_show,
            _two_ends,
            first=(-6, -4, -2, 0),
            low=range(1, 7),
            wide=range(2, 7),
            ends=range(4),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(2),
            first=(-20, -10, 0, -4, -3, -2, -1),
            low=range(1, 8),
            wide=range(2, 9),
            ends=range(4),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, first: int, at: int, *more: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, first, at, *more)
        x = t.Sym(by_turns(_LETTERS, first + at + sum(more)))
        if tier is Tier.SUPPORT:
            way, counts = more
            span = one_ended(at, way, counts)
            line = line_from(first, 1, span)
            return integer_at_end(line, x, twin) if kind else write_inequality(line, x, twin)
        wide, ends = more
        span = two_ended(at, wide, ends)
        if tier is Tier.CORE:
            line = line_from(first, 1, span)
            return list_integers(line, x, twin) if kind else write_inequality(line, x, twin)
        if kind == 0:
            return write_inequality(
                line_from(first, by_turns(_SCALES, at + wide + ends), span), x, twin
            )
        return list_integers(line_of_halves(first, span), x, twin)


def _number_said(number: int) -> str:
    return str(number).replace("-", "−")
