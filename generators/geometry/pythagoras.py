"""Pythagoras' theorem: the longest side, a shorter side, its converse, stories and two steps.

England's programme of study for key stage 3 (2013) asks pupils to "use Pythagoras' Theorem and
trigonometric ratios in similar triangles to solve problems involving right-angled triangles"
(from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import isqrt
from typing import Any

from generators._turns import by_turns
from generators.geometry._calculator import PLACE, amount, root_of
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
from generators.geometry._right_drawn import has_room, in_picture
from itembank.items import kinds
from itembank.items.item import Compare, Draft, Find, Misconception, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_BASIC = (
    (3, 4, 5),
    (5, 12, 13),
    (8, 15, 17),
    (7, 24, 25),
    (20, 21, 29),
    (9, 40, 41),
    (12, 35, 37),
    (28, 45, 53),
    (11, 60, 61),
    (16, 63, 65),
    (33, 56, 65),
    (48, 55, 73),
    (13, 84, 85),
    (36, 77, 85),
    (39, 80, 89),
    (65, 72, 97),
)
_TWO = t.Int(2)
_SQUARES = "Pythagoras: the squares of the shorter sides add up to the square of the longest."
_RIGHT = "The two shorter sides of a right-angled triangle are {a} and {b}. "
_LONGEST = ("Work out the length of the longest side.", "How long is the hypotenuse?")
_LEANING = ("ladder", "plank", "pole")
_FIELDS = ("field", "park", "playground", "car park")


def _triple(index: int, k: int) -> tuple[int, int, int]:
    a, b, c = _BASIC[index]
    return a * k, b * k, c * k


def _square(n: int) -> bool:
    return isqrt(n) ** 2 == n


def _support(index: int, k: int, unit: str, box: bool) -> bool:
    c = _triple(index, k)[2]
    if box and unit == "mm":
        return False
    return c <= (50 if unit == "m" else 100)


def _core(kind: str, a: int, b: int, k: int) -> bool:
    if kind == "short":  # a shorter side of a triple: index, which one, and how large
        return a < len(_BASIC) and b < 2 and k >= 1 and _triple(a, k)[2] <= 65
    if kind == "long":  # the longest side, rounded
        return k == 0 and 3 <= a < b <= 20 and not _square(a * a + b * b) and (a + b) % 2 == 0
    if kind == "other":  # a shorter side, rounded: b is the longest
        fits = k == 0 and 4 <= a < b <= 20 and not _square(b * b - a * a)
        return fits and (a + b) % 3 == 0 and 4 * a > b
    # The signs of a triangle with sides a, b and a + b less k.
    c = a + b - k
    fits = kind == "sign" and 1 <= k <= 6 and 4 <= a < b < c <= 20 and a + b > c
    near = abs(a * a + b * b - c * c) <= 40
    return fits and near and (a * a + b * b == c * c or (a + b + k) % 3 == 0)


def _challenge(kind: str, a: int, b: int, k: int) -> bool:
    if kind == "ladder":  # a tenths long, b tenths from the wall
        fits = (
            k == 0
            and 21 <= a <= 60
            and 5 <= b <= 24
            and b * b > 2 * a
            and 5 * b < 2 * a
            and a % 10
            and b % 10
        )
        return bool(fits) and (a + b) % 6 == 0 and not _square(a * a - b * b)
    if kind == "across":  # the diagonal of a field saves so much
        fits = k == 0 and 40 <= a <= 120 and a % 5 == 0 and b % 5 == 0 and a < b <= 120
        return fits and not _square(a * a + b * b)
    if kind == "rectangle":  # a triple: the area from the diagonal and a side
        return a < len(_BASIC) and b < 2 and k >= 1 and _triple(a, k)[2] <= 52
    # an isosceles triangle: half the base is one side of a triple
    return kind == "isosceles" and a < len(_BASIC) and b < 2 and k >= 1 and _triple(a, k)[2] <= 52


def _core_legs(kind: str, a: int, b: int, k: int) -> tuple[Fraction, Fraction]:
    """Return the legs of the triangle of a question of the core tier: level and upright."""
    if kind == "short":
        triple = _triple(a, k)
        return Fraction(triple[b]), Fraction(triple[1 - b])
    if kind == "long":
        return (Fraction(a), Fraction(b)) if a % 2 else (Fraction(b), Fraction(a))
    other = root_of(Fraction(b * b - a * a))
    return (Fraction(a), other) if a % 2 else (other, Fraction(a))


def _drawn_longest(topic: Topic, tier: Tier, index: int, k: int, unit: str) -> Draft:
    """Return the question for the longest side of a triple, drawn."""
    draft = topic.make(tier, index, k, unit, False)
    a, b = _triple(index, k)[:2]
    labels = {"level": amount(b, unit), "upright": amount(a, unit)}
    return in_picture(draft, (b, a), labels, "slope", index + 3 * k + len(unit))


def _drawn_core(topic: Topic, tier: Tier, kind: str, a: int, b: int, k: int) -> Draft:
    """Return the question for a side of a triangle that is drawn, rounded or not."""
    draft = topic.make(tier, kind, a, b, k)
    level, upright = legs = _core_legs(kind, a, b, k)
    if kind == "long":
        labels = {"level": amount(level, "cm"), "upright": amount(upright, "cm")}
        return in_picture(draft, legs, labels, "slope", a + 2 * b)
    if kind == "short":
        known, wanted, longest = "level", "upright", _triple(a, k)[2]
    else:
        known, wanted = ("level", "upright") if a % 2 else ("upright", "level")
        longest = b
    given = {"level": level, "upright": upright}[known]
    labels = {known: amount(given, "cm"), "slope": amount(longest, "cm")}
    return in_picture(draft, legs, labels, wanted, a + 3 * b + 2 * k)


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
            _support,
            index=range(len(_BASIC)),
            k=range(1, 21),
            unit=("cm", "m", "mm"),
            box=(False, True),
        ),
        Tier.CORE: Space(
            _core, kind=("short", "long", "other", "sign"), a=range(20), b=range(21), k=range(14)
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("ladder", "across", "rectangle", "isosceles"),
            a=range(121),
            b=range(121),
            k=range(11),
        ),
    }
    # What sign stands between two lengths is no one amount to state.
    spaces = kinds.with_statements(spaces, only=lambda *values: "sign" not in values)
    spaces[Tier.SUPPORT] = spaces[Tier.SUPPORT].also(
        _drawn_longest,
        lambda index, k, unit: _support(index, k, unit, False) and has_room(_triple(index, k)[:2]),
        index=range(len(_BASIC)),
        k=range(1, 21),
        unit=("cm", "m", "mm"),
    )
    spaces[Tier.CORE] = spaces[Tier.CORE].also(
        _drawn_core,
        lambda kind, a, b, k: _core(kind, a, b, k) and has_room(_core_legs(kind, a, b, k)),
        kind=("short", "long", "other"),
        a=range(20),
        b=range(21),
        k=range(14),
    )

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
            "ladder": self._ladder,
            "across": self._across,
            "rectangle": self._rectangle,
            "isosceles": self._isosceles,
        }
        return make[kind](*rest)

    def _longest(self, index: int, k: int, unit: str, box: bool) -> Draft:
        a, b, c = _triple(index, k)
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
            Find(_root_of_sum(first, second)),
            key,
            "quantity",
            _add_steps(first, second, c * c, unit, key),
            slips(
                (SIDES_ADDED, amount(a + b, unit)),
                (NO_ROOT, amount(c * c, unit)),
            ),
            ("longest", a, b, unit, box),
            constants=(2,),
        )

    def _short(self, index: int, which: int, k: int) -> Draft:
        triple = _triple(index, k)
        known, side, c = triple[which], triple[1 - which], triple[2]
        longest, other, key = (amount(n, "cm") for n in (c, known, side))
        return Draft(
            prompt(
                "The longest side of a right-angled triangle is {c}. One of the shorter sides is "
                "{a}. Work out the length of the third side.",
                c=longest,
                a=other,
            ),
            Find(_root_of_difference(longest, other)),
            key,
            "quantity",
            _subtract_steps(longest, other, side * side, "cm", key),
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
        target = _root_of_sum(first, second)
        return Draft(
            prompt(_RIGHT + by_turns(_LONGEST, a) + " " + PLACE.said("cm"), a=first, b=second),
            Round(target, "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(_SQUARES, t.equals(_sum_of_squares(first, second), amount(square, "cm^2"))),
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
            Round(_root_of_difference(longest, other), "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(
                    "Pythagoras: subtract the square of the known side from that of the longest.",
                    t.equals(_difference_of_squares(longest, other), amount(square, "cm^2")),
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
        left = t.add(t.Power(t.Int(a), _TWO), t.Power(t.Int(b), _TWO))
        right = t.Power(t.Int(c), _TWO)
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

    def _ladder(self, a: int, b: int, _: int) -> Draft:
        long, foot = Fraction(a, 10), Fraction(b, 10)
        longest, other = amount(long, "m"), amount(foot, "m")
        square = long * long - foot * foot
        value = root_of(square)
        return Draft(
            prompt(
                f"A {by_turns(_LEANING, a + b)} {{c}} long leans against a wall. "
                "Its foot is {a} away from the wall. How high up the wall does it reach? "
                f"{PLACE.said('m')}",
                c=longest,
                a=other,
            ),
            Round(_root_of_difference(longest, other), "places", 1),
            PLACE.node(value, "m"),
            "rounded",
            (
                Step("It makes a right-angled triangle with the wall, and is its longest side."),
                Step(
                    "Subtract the squares.",
                    t.equals(_difference_of_squares(longest, other), amount(square, "m^2")),
                ),
                Step("Take the square root.", t.Root(amount(square, "m^2"))),
                *PLACE.steps(value, "m"),
            ),
            slips(
                (ADDED, PLACE.node(root_of(long * long + foot * foot), "m")),
                (SIDES_SUBTRACTED, PLACE.node(long - foot, "m")),
                (NO_ROOT, PLACE.node(square, "m")),
            ),
            ("ladder", a, b),
            constants=(2,),
        )

    def _across(self, a: int, b: int, _: int) -> Draft:
        first, second = amount(b, "m"), amount(a, "m")
        square = Fraction(a * a + b * b)
        way = root_of(square)
        value = a + b - way
        both = t.add(first, second)
        return Draft(
            prompt(
                f"A {by_turns(_FIELDS, a + b)} is a rectangle {{b}} long and {{a}} wide. You can "
                "walk along two sides, or straight across from corner to corner. How many metres "
                f"shorter is the way across? {PLACE.said('m')}",
                b=first,
                a=second,
            ),
            Round(t.sub(t.Bracket(both), _root_of_sum(first, second)), "places", 1),
            PLACE.node(value, "m"),
            "rounded",
            (
                Step("Along two sides.", t.equals(both, amount(a + b, "m"))),
                Step(
                    "Pythagoras gives the square of the way across.",
                    t.equals(_sum_of_squares(first, second), amount(square, "m^2")),
                ),
                Step(
                    "Subtract its square root.",
                    t.sub(amount(a + b, "m"), t.Root(amount(square, "m^2"))),
                ),
                *PLACE.steps(value, "m"),
            ),
            slips(
                (SAVED_NOT_ASKED, PLACE.node(way, "m")),
                (SUBTRACTED, PLACE.node(a + b - root_of(Fraction(b * b - a * a)), "m")),
            ),
            ("across", a, b),
            constants=(2,),
        )

    def _rectangle(self, index: int, which: int, k: int) -> Draft:
        triple = _triple(index, k)
        known, side, c = triple[which], triple[1 - which], triple[2]
        longest, other, found = (amount(n, "cm") for n in (c, known, side))
        key = amount(known * side, "cm^2")
        return Draft(
            prompt(
                "The diagonal of a rectangle is {c} long. One side is {a} long. "
                "Work out the area of the rectangle.",
                c=longest,
                a=other,
            ),
            Find(t.times(other, _root_of_difference(longest, other))),
            key,
            "quantity",
            (
                *_subtract_steps(longest, other, side * side, "cm", found),
                Step("Multiply the two sides.", t.equals(t.times(other, found), key)),
            ),
            slips(
                (STOPS_AT_SIDE, amount(side, "cm^2")),
                (SIDES_SUBTRACTED, amount(known * (c - known), "cm^2")),
                (DIAGONAL_AS_SIDE, amount(known * c, "cm^2")),
            ),
            ("rectangle", known, c),
            constants=(2,),
        )

    def _isosceles(self, index: int, which: int, k: int) -> Draft:
        triple = _triple(index, k)
        half, high, c = triple[which], triple[1 - which], triple[2]
        equal, base, found = amount(c, "cm"), amount(2 * half, "cm"), amount(high, "cm")
        half_base, key = amount(half, "cm"), amount(half * high, "cm^2")
        halved = t.Frac(base, _TWO)
        height = t.Root(t.sub(_squared(equal), _squared(halved)))
        return Draft(
            prompt(
                "An isosceles triangle has two sides of {c} and a base of {b}. Work out its area.",
                c=equal,
                b=base,
            ),
            Find(t.times(t.frac(1, 2), base, height)),
            key,
            "quantity",
            (
                Step(
                    "The height cuts the base in half.", t.equals(t.divide(base, _TWO), half_base)
                ),
                *_subtract_steps(equal, half_base, high * high, "cm", found),
                Step(
                    "The area is half of base times height.",
                    t.equals(t.times(t.frac(1, 2), base, found), key),
                ),
            ),
            slips(
                (SIDE_AS_HEIGHT, amount(half * c, "cm^2")),
                (STOPS_AT_SIDE, amount(high, "cm^2")),
                (NOT_HALVED, amount(2 * half * high, "cm^2")),
            ),
            ("isosceles", half, c),
            constants=(1, 2),
        )


def _squared(side: t.Node) -> t.Node:
    return t.Power(t.Bracket(side), _TWO)


def _sum_of_squares(a: t.Node, b: t.Node) -> t.Node:
    return t.add(_squared(a), _squared(b))


def _difference_of_squares(c: t.Node, a: t.Node) -> t.Node:
    return t.sub(_squared(c), _squared(a))


def _root_of_sum(a: t.Node, b: t.Node) -> t.Node:
    return t.Root(_sum_of_squares(a, b))


def _root_of_difference(c: t.Node, a: t.Node) -> t.Node:
    return t.Root(_difference_of_squares(c, a))


def _add_steps(a: t.Node, b: t.Node, square: int, unit: str, key: t.Node) -> tuple[Step, ...]:
    whole = amount(square, f"{unit}^2")
    return (
        Step(_SQUARES, t.equals(_sum_of_squares(a, b), whole)),
        Step("Take the square root.", t.equals(t.Root(whole), key)),
    )


def _subtract_steps(c: t.Node, a: t.Node, square: int, unit: str, key: t.Node) -> tuple[Step, ...]:
    whole = amount(square, f"{unit}^2")
    return (
        Step(
            "Pythagoras: subtract the square of the known side from that of the longest.",
            t.equals(_difference_of_squares(c, a), whole),
        ),
        Step("Take the square root.", t.equals(t.Root(whole), key)),
    )
