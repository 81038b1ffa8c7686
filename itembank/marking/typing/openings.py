"""What leads up to an answer in its own question: a point's name, a side, a probability.

*A = (3, -1)*, *QR = 49.5 cm*, *P(both late) = 12/35*, *×6* and *sf 6* for a scale factor, *x: 3*
and *(0, 2)* for where a line crosses an axis are common in English classrooms; no source.
"""

from __future__ import annotations

import re

from itembank.marking.typing.answer_setting import Setting
from itembank.notation import tree as t
from itembank.text.late_pattern import late

_POINT_NAME = late(r"([A-Z])['’′]? ?=? ?(?=\()")
_SIDE_NAME = late(r"(?:the )?(?:angle |side |length |∠ ?)?([A-Z]{2,3}) ?= ?(?=[-√(\d£])")
_CHANCE_OF = late(r"[Pp](?:rob(?:ability)?)? ?\([^()=]*\) ?= ?(?=[-\d(.])")
_FACTOR = late(r"(?:s\.? ?f\.?|scale factor) ?[=:]? ?(?=[-\d(])|[x×] ?(?=-?[\d.])", re.I)
_TIMES_AFTER = late(r"(?<=\d) ?× ?$")
_ON_AXIS = late(r"\( ?0 ?, ?([^(),]+)\)")
_COLON = late(r"(?<![\w)])([A-Za-z]) ?: ?(?=[-\d£√])")
_PI = late(r"(?<![A-Za-z])pie?(?![A-Za-z])", re.I)
_RING = late(r"(?<=\d) ?o$")
_NUMBERS_APART = late(r"\(?-?[\d./]+(?: -?[\d./]+)* -[\d./]+(?: -?[\d./]+)*\)?")
_GAP = late(r"(?<=\d) +(?=-?\d)")


def without_opening(plain: str, asked: Setting) -> str:
    """Return an answer without what only leads up to it in a question with this setting.

    >>> from itembank.notation import parse_written
    >>> point, length = Setting(parse_written("3, -1")), Setting(parse_written("49.5 cm"))
    >>> without_opening("A'=(3, -1)", point), without_opening("3 -1", point)
    ('(3, -1)', '3, -1')
    >>> without_opening("QR = 49.5 cm", length), without_opening("P(red) = 1/2", length)
    ('49.5 cm', '1/2')
    >>> factor = Setting(t.Int(6), prompt=("What is the scale factor of the enlargement?",))
    >>> [without_opening(text, factor) for text in ("×6", "sf 6", "6 × ", "6")]
    ['6', '6', '6', '6']
    """
    key, letters = asked.key, asked.letters
    words = " ".join(run for run in asked.prompt if isinstance(run, str))
    several = isinstance(key, t.Listing | t.Either)
    if several and (found := _POINT_NAME.match(plain)) and found[1] not in letters:
        plain = plain[found.end() :]
    if (found := _SIDE_NAME.match(plain)) and not set(found[1]) <= letters:
        plain = plain[found.end() :]
    if not letters & {"p", "P"} and (found := _CHANCE_OF.match(plain)):
        plain = plain[found.end() :]
    if "scale factor" in words and not letters & {"x", "X"} and (found := _FACTOR.match(plain)):
        plain = plain[found.end() :]
    plain = _TIMES_AFTER.sub("", plain)
    if not several and ("intercept" in words or "cross" in words):
        plain = _ON_AXIS.sub(r"\1", plain)
    if not any(isinstance(part, t.Ratio) for part in t.walk(key)):
        plain = _COLON.sub(lambda f: f"{f[1]} = " if f[1] in letters else f[0], plain)
    if "π" in letters:
        plain = _PI.sub("π", plain)
    if any(isinstance(part, t.Quantity) and part.unit == "°" for part in t.walk(key)):
        plain = _RING.sub("°", plain)
    if isinstance(key, t.Listing) and _NUMBERS_APART.fullmatch(plain):
        plain = _GAP.sub(", ", plain)
    return plain
