"""Times of day in sums: what they may be added to, and how a day goes round.

A time of day is a point, not an amount. Two of them have a difference, which is a length of
time; one of them and a length of time make another time. Nothing else can be done with them,
so every other place for one is refused.
"""

from __future__ import annotations

from itembank.notation.tree import (
    Bracket,
    ClockTime,
    Dec,
    Frac,
    Int,
    Mixed,
    Money,
    Node,
    Percent,
    Sum,
    symbols,
)

DAY = 86_400
"""The seconds of a day."""
NEXT_DAY = "the time taken away is the later one, so the times are of different days"


def clock_seconds(node: ClockTime) -> int:
    """Return the seconds from midnight to a time of day.

    >>> clock_seconds(ClockTime(14, 35)), clock_seconds(ClockTime(12, 5, "am"))
    (52500, 300)
    """
    hour = node.hour
    if node.half:
        hour = hour % 12 + (12 if node.half == "pm" else 0)
    return 3600 * hour + 60 * (node.minute or 0)


def clock_time(seconds: int, like: ClockTime) -> ClockTime:
    """Return the time of day so many seconds after midnight, by the clock of `like`.

    >>> clock_time(52500, ClockTime(9, 5, "am")), clock_time(300, ClockTime(9, 5))
    (ClockTime(hour=2, minute=35, half='pm'), ClockTime(hour=0, minute=5, half=''))
    """
    hour, minute = divmod(seconds % DAY // 60, 60)
    if not like.half:
        return ClockTime(hour, minute)
    return ClockTime((hour - 1) % 12 + 1, minute, "pm" if hour >= 12 else "am")


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


def is_time(node: Node) -> bool:
    """Tell whether a tree is a time of day, or a sum that comes to one."""
    if isinstance(node, Bracket):
        return is_time(node.of)
    return isinstance(node, ClockTime) or (isinstance(node, Sum) and times_in(node) == 1)


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
