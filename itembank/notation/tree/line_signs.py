"""The signs of one-line notation, and the limits within which text is read at all.

The patterns are shared by what reads a line and what refuses to write a line that would read
back as something else.
"""

from __future__ import annotations

import re

from itembank.notation.units import AS_WORDS, NEEDS_SPACE, UNITS
from itembank.text.late_pattern import late

# Far past any line that is typed: no text can make reading it take for ever.
MAX_TEXT = 2_000
MAX_NESTING = 40
MAX_DIGITS = 200

LETTERS = "A-Za-zΑ-ΡΣ-Ωα-ω"
DOT = "\u0307"
UNIT_SIGNS: dict[str, str] = {
    **{unit: unit for unit in UNITS if unit != "°"},
    **{UNITS[unit].many: unit for unit in sorted(AS_WORDS)},
}
"""How a unit may stand in a line, and the unit it is."""
_BY_LENGTH = sorted(UNIT_SIGNS, key=len, reverse=True)
_SPACED = "|".join(re.escape(sign) for sign in _BY_LENGTH)
_GLUED = "|".join(
    re.escape(sign)
    for sign in _BY_LENGTH
    if len(sign.partition("^")[0]) > 1 and UNIT_SIGNS[sign] not in NEEDS_SPACE
)
_UNIT_END = f"(?![{LETTERS}^])(?!\\d)"
# Straight after a digit, several letters that name a unit are that unit: 5kg, not 5·k·g.
GLUED_NAMES = f"(?:{_GLUED}){_UNIT_END}"
GLUED_UNIT = f"(?<=[0-9{DOT}□]){GLUED_NAMES}"
AMOUNT_ENDS = f"0-9{DOT}{LETTERS}□)"
"""The characters with which what has a unit may end; a node with an end of its own adds it."""
# After a number and a space even one letter that names a unit is that unit: 5 m.
SPACED_UNIT = f"(?<=[{AMOUNT_ENDS}] )(?:{_SPACED}){_UNIT_END}"
OF = f"(?<![{LETTERS}])of(?![{LETTERS}])"
OR = f"(?<![{LETTERS}])or(?![{LETTERS}])"
# A clock time is written close up: 14:35 and 2:35 pm, where a ratio is 14 : 35.
CLOCK_12 = rf"(?<![\d.:])(?:1[0-2]|0?[1-9])(?:[:.][0-5]\d ?| )[ap]m(?![{LETTERS}])"
CLOCK_0 = r"(?<![\d.:])0\d:[0-5]\d(?![\d.:])"
CLOCK_24 = r"(?<![\d.:])(?:[01]\d|2[0-3]):[0-5]\d(?![\d.:])"
ROOT_WORD = f"(?<![{LETTERS}])sqrt(?= ?\\()"
# Of a number: sin(x + y) is a function of letters, which cannot be read.
TRIG_WORD = f"(?<![{LETTERS}])(?:sin|cos|tan)(?:\\^-1|\\^\\(-1\\))?(?= ?\\([^{LETTERS}]*\\))"

_NUMBER = late(rf"[0-9.{DOT}]+")
_QUOTED = late(r'"[^"]*"')


def check_limits(text: str) -> tuple[int, str] | None:
    """Return where `text` goes past a limit (an offset) and a sentence saying so, or None.

    >>> check_limits("3/4") is None
    True
    >>> check_limits("(" * 41)
    (40, 'Brackets may be nested at most 40 deep.')
    """
    if len(text) <= MAX_NESTING:  # too short to go past any of them, as most lines are
        return None
    if len(text) > MAX_TEXT:
        return MAX_TEXT, f"Mathematics on one line may have at most {MAX_TEXT:,} characters."
    # A name may hold any digits and brackets: they are no mathematics.
    text = _QUOTED.sub(lambda label: " " * len(label.group()), text)
    for number in _NUMBER.finditer(text):
        if sum(char.isdigit() for char in number.group()) > MAX_DIGITS:
            return number.start(), f"A number may have at most {MAX_DIGITS} digits."
    depth = 0
    for offset, char in enumerate(text):
        depth += (char == "(") - (char == ")")
        if depth > MAX_NESTING:
            return offset, f"Brackets may be nested at most {MAX_NESTING} deep."
    return None
