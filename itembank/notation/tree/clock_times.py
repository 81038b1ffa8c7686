"""Times of day. A sum may hold one, with a length of time or another time; nothing else may.

14:35 is close up, where a ratio is 14 : 35.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, cast

from itembank.data_class import dataclass
from itembank.notation.tree.face import Faces, Part, Rank, Syntax, register_node
from itembank.notation.tree.fractions import Frac, Mixed
from itembank.notation.tree.line_signs import CLOCK_12, CLOCK_24
from itembank.notation.tree.measures import Money, Percent
from itembank.notation.tree.numbers import Dec, Int
from itembank.notation.tree.parsed import start_of
from itembank.notation.tree.walking import symbols
from itembank.notation.tree.written import refuse
from itembank.text.late_pattern import late

if TYPE_CHECKING:
    from itembank.notation.tree.sum_of_terms import Sum

ALONE = "A time of day stands alone, or in a sum with lengths of time or another time."
_CLOCK = late(r"(\d\d?)(?:[:.](\d\d))? ?([ap]m)?")


@dataclass(frozen=True, slots=True)
class ClockTime:
    """A time of day: 14:35 by the 24-hour clock, or 2:35 pm with `half` as ``am`` or ``pm``.

    `minute` is None where none is shown, as in 2 pm.
    """

    hour: int
    minute: int | None
    half: Literal["", "am", "pm"] = ""


def _line(node: ClockTime) -> str:
    hour, minute, half = node.hour, node.minute, node.half
    if minute is not None and not 0 <= minute < 60:
        refuse("A time of day has 0 to 59 minutes.")
    if half not in ("", "am", "pm"):
        refuse("A time of day is am, pm, or by the 24-hour clock.")
    if not half:
        if minute is None or not 0 <= hour < 24:
            refuse("A time by the 24-hour clock is from 00:00 to 23:59.")
        return f"{hour:02d}:{minute:02d}"
    if not 1 <= hour <= 12:
        refuse("Before am and pm there is an hour from 1 to 12.")
    return f"{hour} {half}" if minute is None else f"{hour}:{minute:02d} {half}"


def _words(node: ClockTime) -> str:
    """Return a time as it is called out: the time 14 35, 9 oh 5 am, 14 hundred.

    >>> _words(ClockTime(14, 0)), _words(ClockTime(9, 5, "am")), _words(ClockTime(2, None, "pm"))
    ('the time 14 hundred', '9 oh 5 am', '2 pm')
    """
    minute = node.minute
    if minute is None:
        phrase = str(node.hour)
    elif minute == 0:
        phrase = f"{node.hour} o’clock" if node.half else f"{node.hour} hundred"
    else:
        phrase = f"{node.hour} {'oh ' if minute < 10 else ''}{minute}"
    return f"{phrase} {node.half}" if node.half else f"the time {phrase}"


def _read(parts: list[Any]) -> Part:
    hour, minute, half = cast(Any, _CLOCK.fullmatch(parts[0])).groups()
    shown = None if minute is None else int(minute)
    return Part(ClockTime(int(hour), shown, half or ""), start_of(parts))


register_node(
    ClockTime,
    Faces(
        rank=Rank.SIDE,
        line=_line,
        confined=lambda node: ALONE,
        words=_words,
        mathml=lambda node: f"<mtext>{_line(node).replace(' ', chr(0xA0))}</mtext>",
        syntax=Syntax(
            rules=(("measure", "TIME -> clock"),),
            signs={"TIME.7": f"/{CLOCK_12}|{CLOCK_24}/"},
            build={"clock": _read},
        ),
    ),
)


def times_in(node: Sum) -> int | None:
    """Return how many times of day a sum comes to: 1 a time, 0 a length of time; None has none.

    >>> from itembank.notation.tree import add, sub
    >>> nine, ten = ClockTime(9, 0, "am"), ClockTime(10, 0, "am")
    >>> times_in(sub(ten, nine)), times_in(add(nine, Int(1))), times_in(add(Int(1), Int(2)))
    (0, 1, None)
    """
    count, any_ = 0, False
    if type(node.first) is ClockTime:
        count, any_ = 1, True
    for op, term in node.rest:
        if type(term) is ClockTime:
            count += 1 if op == "+" else -1
            any_ = True
    return count if any_ else None


def clock_fault(node: Sum) -> str:
    """Return what cannot be done with times of day in a sum, or ``""``.

    >>> from itembank.notation.tree import add
    >>> clock_fault(add(ClockTime(9, 0, "am"), ClockTime(10, 0, "am")))
    'Two times of day cannot be added: only their difference has a meaning.'
    """
    count = times_in(node)
    if count is None:
        return ""
    # A letter may be a time: x - 14:35 = 50 min.
    if count not in (0, 1) and not symbols(node):
        return "Two times of day cannot be added: only their difference has a meaning."
    for term in (node.first, *(term for _, term in node.rest)):
        if isinstance(term, Int | Dec | Mixed | Frac | Percent | Money):
            return "To a time of day only a length of time can be added, such as 35 min or 2 h."
    return ""
