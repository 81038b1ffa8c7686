"""The lines of working in what was typed, parted as pupils part them.

Lines are parted by line breaks, arrows, semicolons, commas and words such as *so*.
"""

from __future__ import annotations

import re

from itembank.text.late_pattern import late

_BREAKS = late(
    r"[\r\n;]+|[→⇒⟹➔➜⟶∴∵]|[-=]{1,2}>(?=\s)|(?<=\s)(?:-->?|->|=>)(?=\S)|"
    r",? *\b(?:so|therefore|hence|thus|then|giving|gives|which means|this means)\b[ ,:]*(?:that )?",
    re.I,
)

# A comma parts lines unless it groups the digits of a number or stands in a bracket.
_COMMAS = late(r",(?!\d{3}(?!\d))(?![^(]*\))|(?<=[\w)%°]) +and +(?=[^,=<>]*[=<>≤≥])", re.I)

_RUN_ON = late(r"(?:(?<=[\d)])|(?<=\d[A-Za-z])) +(?=[A-Za-z] ?[=<>≤≥])")

_GOES_ON = late(r"\s*[=≈]")

_DONE_TO_BOTH = late(
    r"^\s*(?:[-+−–×÷*/]\s*\w+|.*\b(?:both sides?|add|subtract|take|divide|times|multiply|share|"
    r"expand|collect|simplify|cancel|factorise|square|root|so|working|check)\b[^=<>]*)\s*$",
    re.I,
)

_NAMED = late(
    r"(?<![\w)°%] )(?<![\w)°%^√])(?P<first>[a-z]) ?=(?: ?[\d.]+ ?(?P<unit>[a-z])(?![A-Za-z]))?"
    r"|(?<=\d) ?= ?(?P<last>[a-z])(?![\w(^ ])"
)

_SHOWS = late(
    r"[=≈\n→⇒;]|[<>≤≥].*,|->|^\s*[÷×]|\b(?:so|is|equals|therefore|hence|gives|because)\b", re.I
)


def shows_working(text: str) -> bool:
    """Tell whether there may be more in a typed text than an answer alone.

    >>> [shows_working(text) for text in ("7 + 15 = 22", "22", "x = 7")]
    [True, False, True]
    """
    return bool(_SHOWS.search(text))


def letters_named(text: str) -> frozenset[str]:
    """Return the small letters that working gives a value, which are then no units in it.

    >>> sorted(letters_named("30 + 8h = 54 + 5h, h = 8")), sorted(letters_named("p = 45p"))
    (['h'], [])
    """
    return frozenset(
        found["first"] or found["last"]
        for found in _NAMED.finditer(text)
        if found["last"] or found["first"] != found["unit"]  # p = 45p
    )


def lines_of(text: str, commas: bool = True) -> list[str]:
    r"""Return the lines of working in a text; a line that begins with = goes on with the last.

    >>> lines_of("2x = 14, x = 7"), lines_of("2x = 14 → x = 7")
    (['2x = 14', 'x = 7'], ['2x = 14', 'x = 7'])
    >>> lines_of("7 + 15\n= 22"), lines_of("1,200 + 1 = 1,201"), lines_of("2x = 14 x = 7")
    (['7 + 15 = 22'], ['1,200 + 1 = 1,201'], ['2x = 14', 'x = 7'])
    >>> lines_of("6=3y y=2")
    ['6=3y', 'y=2']
    """
    found: list[str] = []
    for part in _BREAKS.split(text):
        if part is None or not part.strip(" ,.;"):
            continue
        # A line that begins with = has its left side on the line before.
        if found and _GOES_ON.match(part):
            found[-1] = f"{found[-1].strip()} {part.strip()}"
            continue
        found.append(part.strip())
    if not commas:
        return found
    parted: list[str] = []
    for part in found:
        for piece in _COMMAS.split(part):
            if not piece or not piece.strip():
                continue
            if parted and _GOES_ON.match(piece):
                parted[-1] = f"{parted[-1]} {piece.strip()}"
                continue
            run = _RUN_ON.split(piece)
            # 2x = 6 x = 3 is two lines run together; 2 x = 6 is one.
            if len(run) > 1 and all("=" in line for line in run):
                parted += [line.strip() for line in run]
            else:
                parted.append(piece.strip())
    return parted


def says_what_was_done(text: str) -> bool:
    """Tell whether a line says what is done to the line before, as *÷ 2* or *take 3 away* do.

    >>> says_what_was_done("÷2"), says_what_was_done("take 3 from both sides")
    (True, True)
    >>> says_what_was_done("x is 8")
    False
    """
    return bool(_DONE_TO_BOTH.match(text))
