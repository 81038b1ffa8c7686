"""Pythagoras' theorem: the longest side, a shorter side, its converse, stories and two steps.

England's programme of study for key stage 3 (2013) asks pupils to "use Pythagoras' Theorem and
trigonometric ratios in similar triangles to solve problems involving right-angled triangles"
(from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry._calculator import PLACE, amount, root_of
from generators.geometry._pythagoras_drawn import drawn_longest, drawn_side
from generators.geometry._pythagoras_mistakes import (
    ADDED,
    ALWAYS_EQUAL,
    BY_SIDES,
    DIAGONAL_AS_SIDE,
    DOUBLED,
    NO_ROOT,
    NOT_HALVED,
    SAVED_NOT_ASKED,
    SIDE_AS_HEIGHT,
    SIDES_ADDED,
    SIDES_SUBTRACTED,
    SMALLEST_SIGN,
    STOPS_AT_SIDE,
    SUBTRACTED,
)
from generators.geometry._pythagoras_twice import (
    across_a_field,
    area_of_isosceles,
    area_of_rectangle,
    ladder,
)
from generators.geometry._right_drawn import has_room
from generators.geometry._right_triangles import (
    BASIC,
    challenge_fits,
    core_fits,
    core_legs,
    support_fits,
    triple_of,
)
from generators.geometry._right_triangles_in_brief import BRIEF
from generators.geometry._roots_matched import with_roots
from generators.geometry._squares_of_sides import (
    SQUARES,
    TWO,
    add_steps,
    difference_of_squares,
    root_of_difference,
    root_of_sum,
    subtract_steps,
    sum_of_squares,
)
from itembank.items import kinds
from itembank.items.item import Compare, Draft, Find, Misconception, Round, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_RIGHT = "The two shorter sides of a right-angled triangle are {a} and {b}. "
_LONGEST = ("Work out the length of the longest side.", "How long is the hypotenuse?")


@register
class Pythagoras(Topic):
    """The longest side of a triple; a shorter side, roundings, the converse; two steps."""

    id = "geometry.pythagoras"
    title = "Pythagoras’ theorem"
    statements = ("geometry.right-angled",)
    misconceptions = (
        SIDES_ADDED,
        NO_ROOT,
        SUBTRACTED,
        ADDED,
        SIDES_SUBTRACTED,
        DOUBLED,
        BY_SIDES,
        SMALLEST_SIGN,
        ALWAYS_EQUAL,
        DIAGONAL_AS_SIDE,
        SIDE_AS_HEIGHT,
        NOT_HALVED,
        STOPS_AT_SIDE,
        SAVED_NOT_ASKED,
    )
    spare = "right-angled triangles with whole sides up to 100: there are few more"
    spaces = {
        Tier.SUPPORT: Space(
            support_fits,
            index=range(len(BASIC)),
            k=range(1, 21),
            unit=("cm", "m", "mm"),
            box=(False, True),
        ),
        Tier.CORE: Space(
            core_fits,
            kind=("short", "long", "other", "sign"),
            a=range(20),
            b=range(21),
            k=range(14),
        ),
        Tier.CHALLENGE: Space(
            challenge_fits,
            kind=("ladder", "across", "rectangle", "isosceles"),
            a=range(121),
            b=range(121),
            k=range(11),
        ),
    }
    # What sign stands between two lengths is no one amount to state.
    spaces = kinds.with_statements(spaces, only=lambda *values: "sign" not in values)
    spaces[Tier.SUPPORT] = spaces[Tier.SUPPORT].also(
        drawn_longest,
        lambda index, k, unit: (
            support_fits(index, k, unit, False) and has_room(triple_of(index, k)[:2])
        ),
        index=range(len(BASIC)),
        k=range(1, 21),
        unit=("cm", "m", "mm"),
    )
    spaces[Tier.CORE] = spaces[Tier.CORE].also(
        drawn_side,
        lambda kind, a, b, k: core_fits(kind, a, b, k) and has_room(core_legs(kind, a, b, k)),
        kind=("short", "long", "other"),
        a=range(20),
        b=range(21),
        k=range(14),
    )
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.pythagoras",
        kinds.working_goes_wrong(
            {
                SIDES_ADDED: (e.root_by_root,),
                SIDES_SUBTRACTED: (e.root_by_root,),
                NOT_HALVED: (e.left_out,),
            }
        ),
    )
    spaces = with_brief(spaces, BRIEF)
    spaces = with_roots(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._longest(*values)
        kind, *rest = values
        make: dict[str, Callable[..., Draft]] = {
            "short": self._short,
            "long": self._long,
            "other": self._other,
            "sign": self._sign,
            "ladder": ladder,
            "across": across_a_field,
            "rectangle": area_of_rectangle,
            "isosceles": area_of_isosceles,
        }
        return make[kind](*rest)

    def _longest(self, index: int, k: int, unit: str, box: bool) -> Draft:
        a, b, c = triple_of(index, k)
        if (index + k) % 2:
            a, b = b, a
        first, second, key = (amount(side, unit) for side in (a, b, c))
        asks = (
            "A rectangle is {a} long and {b} wide. How long is its diagonal?"
            if box
            else _RIGHT + by_turns(_LONGEST, a)
        )
        if box and a < b:
            first, second = second, first
        return Draft(
            prompt(asks, a=first, b=second),
            Find(root_of_sum(first, second)),
            key,
            "quantity",
            add_steps(first, second, c * c, unit, key),
            slips(
                (SIDES_ADDED, amount(a + b, unit)),
                (NO_ROOT, amount(c * c, unit)),
            ),
            ("longest", a, b, unit, box),
            constants=(2,),
        )

    def _short(self, index: int, which: int, k: int) -> Draft:
        triple = triple_of(index, k)
        known, side, c = triple[which], triple[1 - which], triple[2]
        longest, other, key = (amount(n, "cm") for n in (c, known, side))
        return Draft(
            prompt(
                "The longest side of a right-angled triangle is {c}. One of the shorter sides is "
                "{a}. Work out the length of the third side.",
                c=longest,
                a=other,
            ),
            Find(root_of_difference(longest, other)),
            key,
            "quantity",
            subtract_steps(longest, other, side * side, "cm", key),
            slips(
                (SIDES_SUBTRACTED, amount(c - known, "cm")),
                (NO_ROOT, amount(side * side, "cm")),
            ),
            ("short", known, c),
            constants=(2,),
        )

    def _long(self, a: int, b: int, _: int) -> Draft:
        first, second = amount(a, "cm"), amount(b, "cm")
        square = Fraction(a * a + b * b)
        value = root_of(square)
        target = root_of_sum(first, second)
        return Draft(
            prompt(_RIGHT + by_turns(_LONGEST, a) + " " + PLACE.said("cm"), a=first, b=second),
            Round(target, "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(SQUARES, t.equals(sum_of_squares(first, second), amount(square, "cm^2"))),
                Step("Take the square root.", t.Root(amount(square, "cm^2"))),
                *PLACE.steps(value, "cm"),
            ),
            slips(
                (SIDES_ADDED, PLACE.node(Fraction(a + b), "cm")),
                (SUBTRACTED, PLACE.node(root_of(Fraction(b * b - a * a)), "cm")),
                (DOUBLED, PLACE.node(root_of(Fraction(2 * a + 2 * b)), "cm")),
            ),
            ("long", a, b),
            constants=(2,),
        )

    def _other(self, a: int, c: int, _: int) -> Draft:
        other, longest = amount(a, "cm"), amount(c, "cm")
        square = Fraction(c * c - a * a)
        value = root_of(square)
        return Draft(
            prompt(
                "The longest side of a right-angled triangle is {c}. One of the shorter sides is "
                f"{{a}}. Work out the length of the third side. {PLACE.said('cm')}",
                c=longest,
                a=other,
            ),
            Round(root_of_difference(longest, other), "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(
                    "Pythagoras: subtract the square of the known side from that of the longest.",
                    t.equals(difference_of_squares(longest, other), amount(square, "cm^2")),
                ),
                Step("Take the square root.", t.Root(amount(square, "cm^2"))),
                *PLACE.steps(value, "cm"),
            ),
            slips(
                (ADDED, PLACE.node(root_of(Fraction(c * c + a * a)), "cm")),
                (SIDES_SUBTRACTED, PLACE.node(Fraction(c - a), "cm")),
            ),
            ("other", a, c),
            constants=(2,),
        )

    def _sign(self, a: int, b: int, k: int) -> Draft:
        c = a + b - k
        left = t.add(t.Power(t.Int(a), TWO), t.Power(t.Int(b), TWO))
        right = t.Power(t.Int(c), TWO)
        total, square = a * a + b * b, c * c
        sign: t.RelationOp = "<" if total < square else ">" if total > square else "="
        key = t.Relation(left, ((sign, right),))
        turned: dict[str, t.RelationOp] = {"<": ">", ">": "<", "=": "<"}
        wrong: list[tuple[Misconception, t.RelationOp]] = (
            [(BY_SIDES, ">"), (SMALLEST_SIGN, "<")]
            if sign == "="
            else [(ALWAYS_EQUAL, "="), (SMALLEST_SIGN, turned[sign])]
        )
        return Draft(
            prompt(
                "A triangle has sides of {a}, {b} and {c}. Is it right-angled? "
                "Put <, > or = between {l} and {r} to show it.",
                a=amount(a, "cm"),
                b=amount(b, "cm"),
                c=amount(c, "cm"),
                l=left,
                r=right,
            ),
            Compare(left, right),
            key,
            "sign",
            (
                Step("Add the squares of the two shorter sides.", t.equals(left, t.Int(total))),
                Step("Square the longest side.", t.equals(right, t.Int(square))),
                Step("It is right-angled." if sign == "=" else "It is not right-angled.", key),
            ),
            slips(*((mistake, t.Relation(left, ((op, right),))) for mistake, op in wrong)),
            ("sign", a, b, c),
        )
