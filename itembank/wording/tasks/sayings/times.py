"""Times of day said in words: how long from one to another, and what time is so long after."""

from __future__ import annotations

from collections.abc import Callable

from itembank.notation import tree as t
from itembank.notation.clock import times_in
from itembank.notation.value import exact
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums.sums import Built, NotBuilt


def _time_between(start: t.Node, end: t.Node) -> Built:
    if not isinstance(start, t.ClockTime) or not isinstance(end, t.ClockTime):
        raise NotBuilt("How long it is takes two times of day.")
    if exact(end) <= exact(start):
        raise NotBuilt("The second time is not after the first on the same day.")
    return t.Sum(end, (("-", start),)), ()


def _time_moved(sign: str) -> Callable[[t.Node, t.Node], Built]:
    def build(by: t.Node, start: t.Node) -> Built:
        moved = t.Sum(start, ((sign, by),))  # type: ignore[arg-type]
        if not isinstance(start, t.ClockTime) or times_in(moved) != 1:
            raise NotBuilt("What time it is takes a length of time and a time of day.")
        return moved, ()

    return build


_FROM_TO = r"(?:(?:between|from) <M> (?:and|to|until|till) <M>)"
_THERE = r"(?: (?:is it|are there|is there|are|pass|passes))?"


TIME_SAYINGS = (
    Saying(rf"how long(?: is it| is there| passes)? {_FROM_TO}", _time_between),
    Saying(rf"how (?:much time|many (?:minutes|hours|seconds)){_THERE} {_FROM_TO}", _time_between),
    Saying(
        rf"<FIND> the (?:time|length of time|number of minutes|time difference) {_FROM_TO}",
        _time_between,
    ),
    Saying(r"what(?: time is| is the time)(?: it)? <M> (?:after|later than) <M>", _time_moved("+")),
    Saying(
        r"what(?: time is| is the time)(?: it)? <M> (?:before|earlier than) <M>", _time_moved("-")
    ),
)
