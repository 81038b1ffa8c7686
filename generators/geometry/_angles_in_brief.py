"""Short questions about angles where lines meet, in words, without a picture."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _misconceptions as m
from generators.geometry._angle_drafts import (
    X,
    keep_two,
    rest_of,
    valued,
)
from generators.geometry._angles import deg, degrees_of, solving
from generators.geometry._area_drafts import shortened
from itembank.items.item import Draft, Find, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t


def equal_angles(
    text: str, first: tuple[int, int], size: int, x: int, wrongs: Sequence[Wrong]
) -> Draft:
    """Return the question for the letter in an angle that is as large as another."""
    shown, other = degrees_of(first[0], X, first[1]), deg(size)
    return told(
        text,
        Find(X, (t.equals(shown, other),)),
        t.equals(X, t.Int(x)),
        "solution",
        [(step.say, step.maths) for step in solving("The two are equal.", X, (first,), size)],
        wrongs,
        (text.partition("{")[0], x, first, size),
        x=X,
        a=shown,
        b=other,
    )


def _line(topic: Topic, tier: Tier, a: int) -> Draft:
    return rest_of(
        "Two angles make a straight line. One is {a}. What is the other?",
        "The angles on a straight line add up to 180°.",
        180,
        (a,),
        [(m.LINE_FULL_TURN, 360 - a), (m.COPIED, a), (m.LINE_RIGHT_ANGLE, abs(90 - a))],
    )


def _line_of_three(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    return rest_of(
        "Three angles make a straight line. Two are {a} and {b}. What is the third?",
        "The angles on a straight line add up to 180°.",
        180,
        (a, b),
        [(m.LINE_FULL_TURN, 360 - a - b), (m.LEFT_OUT, 180 - a)],
    )


def _line_letters(topic: Topic, tier: Tier, a: int, c: int, x: int) -> Draft:
    b = 180 - (a + c) * x
    return valued(
        "Angles of {a} and {b} make a straight line. What is {x}?",
        "The angles on a straight line add up to 180°.",
        ((a, b), (c, 0)),
        x,
        [
            (m.NUMBERS_LEFT_OUT, shortened(Fraction(180, a + c))),
            (m.ANGLE_NOT_LETTER, c * x),
            (m.NUMBERS_WRONG_WAY, shortened(Fraction(180 + b, a + c))),
            (m.SET_EQUAL, shortened(Fraction(b, c - a)) if c > a else None),
        ],
    )


def _point(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    return rest_of(
        "Three angles meet at a point. Two are {a} and {b}. What is the third?",
        "The angles round a point add up to 360°.",
        360,
        (a, b),
        [
            (m.POINT_HALF_TURN, 180 - a - b if a + b < 180 else None),
            (m.LEFT_OUT, 360 - a),
            (m.COPIED, a),
        ],
    )


def _point_shared(topic: Topic, tier: Tier, a: int, b: int, shares: int) -> Draft:
    left = 360 - a - b
    count = {2: "two", 3: "three"}[shares]
    return rest_of(
        f"Round a point are angles of {{a}}, {{b}} and {count} equal ones. How large is each?",
        "The angles round a point add up to 360°.",
        360,
        (a, b),
        [
            (m.NOT_SHARED, left),
            (m.LEFT_OUT, shortened(Fraction(360 - a, shares))),
            (m.COPIED, a),
            (m.POINT_HALF_TURN, abs(180 - a - b)),
        ],
        shares,
    )


def _point_letters(topic: Topic, tier: Tier, a: int, c: int, x: int) -> Draft:
    b = 360 - (a + c) * x
    return valued(
        "Angles of {a}, {b} and {c} make a full turn. What is {x}?",
        "The angles round a point add up to 360°.",
        ((a, 0), (c, 0), (0, b)),
        x,
        [
            (m.NUMBERS_LEFT_OUT, shortened(Fraction(360, a + c))),
            (m.ANGLE_NOT_LETTER, c * x),
            (m.NUMBERS_WRONG_WAY, shortened(Fraction(360 + b, a + c))),
        ],
        360,
    )


def _next_to(topic: Topic, tier: Tier, a: int) -> Draft:
    return rest_of(
        "Two straight lines cross. One angle is {a}. How large is the angle next to it?",
        "The two angles make a straight line: 180°.",
        180,
        (a,),
        [(m.COPIED, a), (m.REST_OF_TURN, 360 - a), (m.LINE_RIGHT_ANGLE, abs(90 - a))],
    )


def _other_pair(topic: Topic, tier: Tier, s: int) -> Draft:
    return rest_of(
        "Two lines cross. Two opposite angles add up to {a}. How large is each of the other two?",
        "All four angles make a full turn: 360°.",
        360,
        (s,),
        [
            (m.NOT_SHARED, 360 - s),
            (m.OTHER_ANGLE, Fraction(s, 2)),
            (m.OPPOSITE_AS_LINE, abs(180 - s)),
        ],
        2,
    )


def _opposite(topic: Topic, tier: Tier, a: int, b: int, x: int) -> Draft:
    size = a * x + b
    return equal_angles(
        "Vertically opposite angles are {a} and {b}. What is {x}?",
        (a, b),
        size,
        x,
        [
            (m.OPPOSITE_AS_LINE, shortened(Fraction(180 - size - b, a))),
            (m.NUMBERS_WRONG_WAY, shortened(Fraction(size + b, a))),
            (m.ANGLE_NOT_LETTER, size),
            (m.NOT_DIVIDED, a * x),
        ],
    )


def _next_letters(topic: Topic, tier: Tier, a: int, c: int, x: int) -> Draft:
    b = 180 - (a + c) * x
    return valued(
        "Two lines cross. Angles next to each other are {a} and {b}. What is {x}?",
        "The two angles make a straight line: 180°.",
        ((a, b), (c, 0)),
        x,
        [
            (m.NUMBERS_WRONG_WAY, shortened(Fraction(180 + b, a + c))),
            (m.ANGLE_NOT_LETTER, c * x),
            (m.LINE_FULL_TURN, shortened(Fraction(360 - b, a + c))),
            (m.NUMBERS_LEFT_OUT, Fraction(180, a + c)),
        ],
    )


def _co_interior(topic: Topic, tier: Tier, a: int) -> Draft:
    return rest_of(
        "One of two co-interior angles between parallel lines is {a}. What is the other?",
        "Co-interior angles add up to 180°.",
        180,
        (a,),
        [(m.PARALLEL_ALL_EQUAL, a), (m.REST_OF_TURN, 360 - a), (m.LINE_RIGHT_ANGLE, abs(90 - a))],
    )


def _alternate(topic: Topic, tier: Tier, a: int, b: int, x: int) -> Draft:
    size = a * x + b
    name = by_turns(("Alternate", "Corresponding"), a + b + x)
    return equal_angles(
        f"{name} angles on parallel lines are {{a}} and {{b}}. What is {{x}}?",
        (a, b),
        size,
        x,
        [
            (m.EQUAL_AS_LINE, shortened(Fraction(180 - size - b, a))),
            (m.NUMBERS_WRONG_WAY, shortened(Fraction(size + b, a))),
            (m.ANGLE_NOT_LETTER, size),
            (m.NUMBERS_LEFT_OUT, shortened(Fraction(size, a))),
            (m.REST_OF_TURN, shortened(Fraction(360 - size - b, a))),
        ],
    )


def _co_interior_letters(topic: Topic, tier: Tier, a: int, c: int, x: int) -> Draft:
    b = 180 - (a + c) * x
    return valued(
        "Co-interior angles between parallel lines are {a} and {b}. What is {x}?",
        "Co-interior angles add up to 180°.",
        ((a, b), (c, 0)),
        x,
        [
            (m.NUMBERS_LEFT_OUT, shortened(Fraction(180, a + c))),
            (m.ANGLE_NOT_LETTER, c * x),
            (m.NUMBERS_WRONG_WAY, shortened(Fraction(180 + b, a + c))),
            (m.SET_EQUAL, shortened(Fraction(b, c - a)) if c > a else None),
        ],
    )


def _keep_letters(a: int, c: int, x: int) -> bool:
    b = 180 - (a + c) * x
    return a != c and a + c != 7 and 5 <= b < 100 and b not in (c * x, x)


def _keep_equal(a: int, b: int, x: int) -> bool:
    return 30 < a * x + b < 150 and a * x + b != 90 and b != x and (a != 3 or b % 3 == 0)


_ONE = {"a": range(34, 147)}

_LETTERS = {"a": (2, 3, 4, 5), "c": (1, 2, 3, 4, 6), "x": (10, 11, 13, 15, 16, 17, 20, 22, 25)}

_TURN = {"a": (1, 2, 3, 4, 5), "c": (1, 2, 3, 4, 6), "x": range(20, 61)}

_EQUAL = {"a": (2, 3, 4, 5), "b": (-15, -10, 5, 8, 12, 20, 25), "x": (13, 16, 18, 21, 24, 27)}

ON_A_LINE = {
    Tier.SUPPORT: (Brief(_line, lambda a: a not in (60, 90, 120, 135, 45), {"a": range(28, 157)}),),
    Tier.CORE: (Brief(_line_of_three, keep_two, {"a": range(33, 96, 4), "b": range(28, 122, 6)}),),
    Tier.CHALLENGE: (Brief(_line_letters, _keep_letters, {**_LETTERS, "x": range(10, 33)}),),
}

AT_A_POINT = {
    Tier.SUPPORT: (
        Brief(
            _point,
            lambda a, b: a < b and a + b < 330 and 2 * a + b != 360 and a + 2 * b != 360,
            {"a": range(42, 130, 8), "b": range(55, 150, 9)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _point_shared,
            lambda a, b, shares: (360 - a - b) % shares == 0 and a < b and 2 * a != 360 - b,
            {"a": range(42, 96, 4), "b": range(64, 130, 6), "shares": (2, 3)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _point_letters,
            lambda a, c, x: (
                a < c and a + c not in (7, 11) and 30 <= 360 - (a + c) * x < 200 and c * x < 180
            ),
            _TURN,
        ),
    ),
}

CROSSING = {
    Tier.SUPPORT: (Brief(_next_to, lambda a: a not in (60, 90, 120), _ONE),),
    Tier.CORE: (Brief(_other_pair, lambda s: s not in (180, 120, 240), {"s": range(48, 300, 2)}),),
    Tier.CHALLENGE: (
        Brief(_opposite, _keep_equal, _EQUAL),
        Brief(_next_letters, _keep_letters, {**_LETTERS, "x": range(10, 33)}),
    ),
}

PARALLEL = {
    Tier.SUPPORT: (Brief(_co_interior, lambda a: a not in (60, 90, 120), _ONE),),
    Tier.CORE: (
        Brief(
            _alternate,
            lambda a, b, x: 40 < a * x < 140 and a * x != 90 and a != x,
            {"a": (2, 4, 5), "b": (0,), "x": range(11, 60)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(_alternate, _keep_equal, {**_EQUAL, "x": (14, 17, 19, 23)}),
        Brief(_co_interior_letters, _keep_letters, {**_LETTERS, "x": range(10, 33)}),
    ),
}
