"""Whether 14:35 in a line is a time of day or a ratio, and what is no time by any clock."""

from __future__ import annotations

import re
from collections.abc import Iterable

from itembank.notation.tree.line_signs import CLOCK_12, CLOCK_24
from itembank.text.late_pattern import late

_LENGTH = r"\d[\d.]* (?:h|min|s|day)(?![A-Za-z^/])"
_SURE = late(CLOCK_12 + r"|(?<![\d.:])0\d:[0-5]\d(?![\d.:])")
_PAIR = r"(?<![\d.:])\d\d?:[0-5]\d(?![\d.:])"
_IN_A_SUM = late(
    rf"{_PAIR} ?[-+] ?{_PAIR}"
    rf"|(?<![\d.:])\d+:\d+ ?[-+] ?{_LENGTH}|{_LENGTH} ?\+ ?\d+:\d+(?![\d.:])"
)
_A_LENGTH = late(_LENGTH)
_WITH_LETTER = late(
    rf"{CLOCK_24} ?[-+] ?[A-Za-z](?![A-Za-z])|(?<![A-Za-z])[A-Za-z] ?[-+] ?{CLOCK_24}"
)
A_TIME = late(f"{CLOCK_12}|{CLOCK_24}")
CLOSE_UP = late(
    r"(?<![\d.:])(?:(?P<hour>\d+):(?P<minute>\d+)(?![\d.:])|\d+[.]\d+(?= ?[ap]m))"
    r"(?P<half> ?[ap]m(?![A-Za-z]))?"
)


def no_time_of_day(found: re.Match[str]) -> str:
    """Return what to do about two numbers close up that are no time by any clock."""
    shown = found[0]
    if not found["half"] and re.fullmatch(r"[1-9]:[0-5]\d", shown):
        return (
            f"{shown} among times of day can be read in two ways: "
            f"write 0{shown}, {shown} am or {shown} pm."
        )
    return (
        f"{shown} is no time of day: write 09:45 or 14:35 by the 24-hour clock, or 2:35 pm; "
        "in a ratio put spaces around the colon."
    )


def holds_time(lines: Iterable[str]) -> bool:
    """Tell whether 14:35 can only be a time of day in the lines of one question.

    It is one where a time stands that nothing else could be (09:45 or 2:35 pm), or where it is
    joined by + or - to another or to a length of time, or to a letter where a length of time
    stands in another line; elsewhere it is a ratio.

    >>> [holds_time([text]) for text in ("14:35", "14:35 + 50 min", "16:10 - 14:35", "09:45")]
    [False, True, True, True]
    """
    texts = list(lines)
    timed = [text for text in texts if ":" in text or "m" in text]
    if any(_SURE.search(text) or _IN_A_SUM.search(text) for text in timed):
        return True
    # 14:35 + t alone may be a ratio with a sum in it; a length of time elsewhere settles it.
    with_letters = any(_WITH_LETTER.search(text) for text in timed)
    return with_letters and any(map(_A_LENGTH.search, texts))
