"""Speed, distance and time said in words: *how far does a bus travel in* {2 h} *at* {40 km/h}.

What moves is one of a few things that only move: a train that waits or a boat in a current is in
no wording here.
"""

from __future__ import annotations

from itembank.notation import tree as t
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums.sums import Built, NotBuilt, as_part, kind, over

MOVES = "car|bus|train|coach|lorry|van|tram|cyclist|runner|walker|swimmer|tractor|drone|ferry"
"""What travels."""

TRAVELS = "travels|goes|drives|cycles|runs|walks|swims|flies|sails"


def _held(node: t.Node, wanted: str) -> t.Node:
    if kind(node) != wanted:
        raise NotBuilt(f"This takes a {wanted} with its unit, as {{40 km/h}} or {{2 h}}.")
    return node


def _speed(far: t.Node, long: t.Node) -> Built:
    """Return distance over time."""
    return over(_held(far, "length"), _held(long, "time"))


def _time(far: t.Node, fast: t.Node) -> Built:
    """Return distance over speed."""
    return over(_held(far, "length"), _held(fast, "speed"))


def _distance(long: t.Node, fast: t.Node) -> Built:
    """Return time times speed."""
    speed = as_part(_held(fast, "speed"))
    return t.Product(speed, (("×", as_part(_held(long, "time"))),)), ()


_STEADY = r"(?:(?:a|an) (?:steady |constant |average )?speed of )?"
_TRAVEL = "(?:travel|go|cover)"

MOTION_SAYINGS = (
    Saying(
        rf"<FIND> the (?:average |mean )?speed of an? (?:{MOVES}) that (?:{TRAVELS}) <M> in <M>",
        _speed,
    ),
    Saying(
        rf"how long (?:does|will|would) (?:it|an? (?:{MOVES})) take to {_TRAVEL} <M> at "
        rf"{_STEADY}<M>",
        _time,
    ),
    Saying(
        rf"how far (?:does|will|would|can) (?:an? (?:{MOVES})|you) {_TRAVEL} in <M> at {_STEADY}<M>",
        _distance,
    ),
)
