"""Forming an equation from words or a shape, and solving it."""

from __future__ import annotations

from generators.equations import _misconceptions as m
from generators.equations import _stories_numbers as n
from generators.equations import _stories_shapes as s
from generators.equations._stories_drawn import angles_fit, rectangle_drawn, triangle_drawn
from generators.equations._story import Story
from itembank.items import kinds
from itembank.items.item import Draft, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips


def _support(kind: int, a: int, b: int, x: int) -> bool:
    return (kind not in (2, 4) or b < x) and (kind != 3 or b != a) and x != a


def _core(kind: int, a: int, d: int, x: int) -> bool:
    if kind == 2:  # angles: what is left for the third has to be positive
        size = (a + 2) * (x + 5 * d - 10)
        return size < 175 and size != 90  # at 90 the two mistakes give one answer
    if kind == 5:
        return a > 2 and d % (a + 2) == 0  # 2 would be said as twice
    return a == 2 and (kind != 3 or x >= 5)


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    if a - c < 2:
        return False
    if kind == 0:
        return (a - c) * x > b
    return kind != 4 or (a * x + 5 * b < 88 and a * x + 5 * b != 60)


def _angles_drawn(kind: int, a: int, d: int, x: int) -> bool:
    # So the wrong ways give whole numbers.
    return angles_fit(a, x) and 360 % (a + 2) == 0


def _sides_drawn(kind: int, a: int, b: int, c: int, x: int) -> bool:
    return a - c >= 2 and a * x + b <= 60 and (a + b // 2 + c + x) % 3 == 0


@register
class FormAndSolve(Topic):
    """Numbers, prices, perimeters and angles in words; at the end with letters on both sides."""

    id = "equations.form-and-solve"
    title = "Forming and solving equations"
    statements = ("algebra.modelling", "algebra.linear-equations")
    misconceptions = (
        m.STOPS_EARLY,
        m.SUBTRACTS_MULTIPLIER,
        m.FORGETS_DIFFERENCE,
        m.TWO_SIDES,
        m.FULL_TURN,
        m.SAME_OPERATION,
        m.EXTRA_ONCE,
        m.LETTER_ACROSS,
        m.LETTER_ONLY,
    )
    prerequisites = ("equations.two-step", "equations.both-sides")
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(6), a=range(3, 9), b=range(3, 10), x=range(4, 13)),
        Tier.CORE: Space(
            _core, kind=range(6), a=(2, 3, 4), d=(2, 4, 6, 8, 10, 12), x=range(5, 15)
        ).then(_angles_drawn, kind=(6,), a=(2, 3, 4), d=(0,), x=range(18, 45)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(5),
            a=range(4, 9),
            b=(2, 4, 6, 8, 10),
            c=range(2, 5),
            x=range(3, 10),
        ).then(
            _sides_drawn,
            kind=(5,),
            a=range(4, 9),
            b=(2, 4, 6, 8, 10),
            c=range(2, 5),
            x=range(3, 10),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, a: int, *rest: int) -> Draft:
        """Return the question; `kind` chooses the story, the last parameter the answer."""
        if tier is Tier.CORE and kind == 6:
            return triangle_drawn(a, rest[-1])
        if tier is Tier.CHALLENGE and kind == 5:
            return rectangle_drawn(a, *rest)
        if tier is Tier.SUPPORT:
            b, value = rest
            # A minibus holds more than a box.
            story = n.one_unknown(kind, a, b, value + 4 if kind == 4 else value)
        elif tier is Tier.CORE:
            story = _core_story(kind, a, *rest)
        else:
            b, c, value = rest
            build = (n.two_rules, n.two_clubs, s.opposite_sides, n.two_tanks, s.equal_angles)
            story = build[kind](a, 5 * b if kind in (1, 4) else b, c, value)
        return Draft(
            story.text,
            story.ask,
            story.key,
            story.form,
            story.steps,
            slips(*story.wrong),
            (kind, a, *rest),
            constants=story.constants,
        )


def _core_story(kind: int, a: int, d: int, x: int) -> Story:
    """Return a core story; some turn two of the parameters into one wider range."""
    match kind:
        case 0:
            return n.consecutive(x + 5 * d)
        case 1:
            return s.flower_bed(d, x)
        case 2:
            return s.triangle_angles(a, x + 5 * d - 10)
        case 3:
            return s.isosceles(3 * d // 2, x)
        case 4:
            return n.two_decks(d, x + 10)
        case _:
            return n.bulbs(a, d, x)
