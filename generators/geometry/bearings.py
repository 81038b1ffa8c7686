"""Bearings: turning from a compass direction, the angle between two, and the way back.

Bearings are angles measured clockwise from north. England's programme of study names them for
key stage 4; schools meet them with angles and maps in key stage 3 (from memory). Every bearing
that is printed, or asked for, has three figures without a nought in front.
"""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.geometry._angles import deg
from generators.geometry._bearing_mistakes import (
    ADDED_TOGETHER,
    FROM_FULL_TURN,
    FROM_SOUTH,
    OTHER_WAY,
    OVER_360,
    SAME_BACK,
    TURN_ALONE,
)
from generators.geometry._bearings_in_brief import BRIEF
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_DIRECTIONS = (
    ("east", 90),
    ("south-east", 135),
    ("south", 180),
    ("south-west", 225),
    ("west", 270),
    ("north-west", 315),
)
_WALKERS = (
    ("A hiker walks", "The hiker turns"),
    ("A boat sails", "The boat turns"),
    ("A cyclist rides", "The cyclist turns"),
    ("A drone flies", "The drone turns"),
    ("A runner runs", "The runner turns"),
)
_PLACES = (
    ("the library", "the school"),
    ("the bus depot", "the station"),
    ("the mill", "the church"),
    ("the pond", "the barn"),
    ("the lighthouse", "the harbour"),
    ("the farm", "the bridge"),
)


def _support(way: int, turn: int, right: int) -> bool:
    _, start = _DIRECTIONS[way]
    end = start + turn if right else start - turn
    return 100 <= end < 360 and turn % 45 != 0


def _core(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # the way back
        return b == 140 and (100 <= a < 180 or 280 <= a < 360) and a % 2 == 1
    gap = a - b  # the angle between two directions
    return 100 <= b < a < 360 and 20 <= gap < 180 and a % 7 == 3 and gap != 90


def _challenge(kind: int, a: int, b: int) -> bool:
    if kind == 0:  # a turn past north
        return 20 <= b < 180 and 460 <= a + b < 700 and a >= 200 and (a + 2 * b) // 5 % 3 == 1
    if kind == 1:  # turned, then back
        end = a + b
        return a < 280 and b < 100 and 280 <= end < 360
    # the angle between two directions on either side of north
    return a >= 270 and 100 <= b < 180 and 360 - a + b < 180 and (a + b) // 5 % 2 == 1


@register
class Bearings(Topic):
    """Directions as angles clockwise from north."""

    id = "geometry.bearings"
    title = "Bearings"
    statements = ("geometry.angles",)
    misconceptions = (
        *(OTHER_WAY, TURN_ALONE, FROM_SOUTH, FROM_FULL_TURN, SAME_BACK, ADDED_TOGETHER),
        OVER_360,
    )
    prerequisites = ("geometry.angles-at-a-point",)
    spaces = {
        Tier.SUPPORT: Space(
            _support, way=range(len(_DIRECTIONS)), turn=range(10, 171, 5), right=(0, 1)
        ),
        Tier.CORE: Space(_core, kind=(0, 1), a=range(100, 360), b=range(100, 340, 20)),
        Tier.CHALLENGE: Space(_challenge, kind=range(3), a=range(110, 350, 5), b=range(25, 180, 5)),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.bearings",
        kinds.working_goes_wrong(
            {
                OTHER_WAY: (e.turned,),
                ADDED_TOGETHER: (e.turned,),
                OVER_360: (e.cut_short,),
                SAME_BACK: (e.cut_short,),
            }
        ),
    )
    spaces = with_brief(spaces, BRIEF)
    spare = "turns by fives, so that a protractor would show them"

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _turned(*values)
        kind, a, b = values
        if tier is Tier.CORE:
            return (_back, _between)[kind](a, b)
        return (_past_north, _turned_back, _round_north)[kind](a, b)


def _draft(
    text: str,
    target: t.Node,
    key: int,
    steps: list[Step],
    wrong: list[Wrong],
    twin: tuple[object, ...],
    constants: tuple[int, ...],
    **shown: t.Node,
) -> Draft:
    return Draft(
        prompt(text, **shown),
        Find(target),
        deg(key),
        "quantity",
        tuple(steps),
        slips(*wrong, write=lambda size: deg(int(size)), key=deg(key)),
        twin,
        constants=constants,
    )


def _turned(way: int, turn: int, right: int) -> Draft:
    name, start = _DIRECTIONS[way]
    who, turns = by_turns(_WALKERS, way + turn // 5)
    given = deg(turn)
    end = start + turn if right else start - turn
    target = t.add(deg(start), given) if right else t.sub(deg(start), given)
    other = start - turn if right else start + turn
    clock = "clockwise" if right else "anticlockwise"
    wrong: list[Wrong] = [
        (OTHER_WAY, other % 360 if other % 360 != end else None),
        (TURN_ALONE, turn),
        (FROM_SOUTH, (end + 180) % 360 or None),
    ]
    return _draft(
        f"{who} {name}. {turns} {{turn}} {clock}. What is the new three-figure bearing?",
        target,
        end,
        [
            Step(
                f"The bearing of {name} is {start}°. Going {clock}, "
                f"{'add' if right else 'subtract'} the turn.",
                t.equals(target, deg(end)),
            )
        ],
        wrong,
        ("turn", way, turn, right),
        (start,),
        turn=given,
    )


def _back(a: int, b: int) -> Draft:
    there, here = by_turns(_PLACES, a)
    given = deg(a)
    end = a + 180 if a < 180 else a - 180
    target = t.add(given, deg(180)) if a < 180 else t.sub(given, deg(180))
    return _draft(
        f"The bearing of {there} from {here} is {{a}}. "
        f"Work out the bearing of {here} from {there}.",
        target,
        end,
        [
            Step(
                "The way back is half a turn from the way there: "
                f"{'add' if a < 180 else 'subtract'} 180°.",
                t.equals(target, deg(end)),
            )
        ],
        [(FROM_FULL_TURN, 360 - a), (SAME_BACK, a)],
        ("back", a),
        (180,),
        a=given,
    )


def _between(a: int, b: int) -> Draft:
    there, here = by_turns(_PLACES, a)
    other = by_turns(("a windmill", "a water tower", "a radio mast", "a monument"), a + b)
    first, second = deg(b), deg(a)
    target = t.sub(second, first)
    return _draft(
        f"From {here}, {there} is on a bearing of {{b}} and {other} is on a bearing of {{a}}. "
        "Work out the angle between the two directions.",
        target,
        a - b,
        [Step("Both are measured clockwise from north. Subtract.", t.equals(target, deg(a - b)))],
        [(ADDED_TOGETHER, a + b), (FROM_FULL_TURN, 360 - a + b), (TURN_ALONE, b)],
        ("between", a, b),
        (),
        a=second,
        b=first,
    )


def _past_north(a: int, b: int) -> Draft:
    who, turns = by_turns(_WALKERS, (a + b) // 5)
    first, second = deg(a), deg(b)
    target = t.Sum(first, (("+", second), ("-", deg(360))))
    end = a + b - 360
    return _draft(
        f"{who} on a bearing of {{a}}. {turns} {{b}} clockwise. "
        "What is the new three-figure bearing?",
        target,
        end,
        [
            Step("Going clockwise, add the turn.", t.equals(t.add(first, second), deg(a + b))),
            Step(
                "That is past north. Take away a full turn.",
                t.equals(t.sub(deg(a + b), deg(360)), deg(end)),
            ),
        ],
        [(OVER_360, a + b), (OTHER_WAY, a - b)],
        ("past", a, b),
        (360,),
        a=first,
        b=second,
    )


def _turned_back(a: int, b: int) -> Draft:
    who, turns = by_turns(_WALKERS, (a + b) // 5)
    first, second = deg(a), deg(b)
    end = a + b
    target = t.Sum(first, (("+", second), ("-", deg(180))))
    return _draft(
        f"{who} on a bearing of {{a}}. {turns} {{b}} clockwise and goes straight on. "
        "Work out the bearing of the way straight back.",
        target,
        end - 180,
        [
            Step("Going clockwise, add the turn.", t.equals(t.add(first, second), deg(end))),
            Step(
                "The way back is half a turn from that.",
                t.equals(t.sub(deg(end), deg(180)), deg(end - 180)),
            ),
        ],
        [(SAME_BACK, end), (FROM_FULL_TURN, 360 - end)],
        ("turned back", a, b),
        (180,),
        a=first,
        b=second,
    )


def _round_north(a: int, b: int) -> Draft:
    there, here = by_turns(_PLACES, a // 5)
    other = by_turns(("a windmill", "a water tower", "a radio mast", "a monument"), (a + b) // 5)
    first, second = deg(a), deg(b)
    target = t.add(t.Bracket(t.sub(deg(360), first)), second)
    end = 360 - a + b
    return _draft(
        f"From {here}, {there} is on a bearing of {{a}} and {other} is on a bearing of {{b}}. "
        "Work out the smaller angle between the two directions.",
        target,
        end,
        [
            Step(
                "Find the angle from the first direction on to north.",
                t.equals(t.sub(deg(360), first), deg(360 - a)),
            ),
            Step(
                "Add the angle from north to the second direction.",
                t.equals(t.add(deg(360 - a), second), deg(end)),
            ),
        ],
        [(FROM_FULL_TURN, a - b), (ADDED_TOGETHER, a + b)],
        ("round", a, b),
        (360,),
        a=first,
        b=second,
    )
