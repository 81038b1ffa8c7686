"""Times of day in sums: what they may be added to, and how a day goes round.

A time of day is a point, not an amount. Two of them have a difference, which is a length of
time; one of them and a length of time make another time. Nothing else can be done with them,
so every other place for one is refused.
"""

from __future__ import annotations

from itembank.notation.tree import Bracket, ClockTime, Node, Sum
from itembank.notation.tree.clock_times import times_in as times_in

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
        # 12 am is midnight and 12 pm is noon, so 12 counts as 0 in its half.
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
    # Hours by the 12-hour clock go 12, 1, …, 11.
    return ClockTime((hour - 1) % 12 + 1, minute, "pm" if hour >= 12 else "am")


def is_time(node: Node) -> bool:
    """Tell whether a tree is a time of day, or a sum that comes to one."""
    if isinstance(node, Bracket):
        return is_time(node.of)
    return isinstance(node, ClockTime) or (isinstance(node, Sum) and times_in(node) == 1)
