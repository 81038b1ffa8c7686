"""Words that set a condition no model shows, and numbers everybody knows.

A *median*, a *probability* or a *lower bound* is no sum of a model: a person decides. A constant
that a model brings in is one the words name, or one that belongs to what they speak of: 60 to
minutes, 180 to angles, 100 to per cent (common knowledge).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.sentences.numbers_said import ORDINALS, numbers_said

_PERSON = late(
    r"\b(?:median|mode|modal|probab\w*|likely|chance|bounds?|error interval|at random|even number|odd number|"
    r"compound(?:ed)? (?:monthly|quarterly|daily)|twice daily|return journey|there and back|each way|"
    r"deposit|instal?ments?|equal payments?|and back|after the first|after that)\b",
    re.I,
)

_COMMON = (
    ((0, 1), r".*"),
    ((100,), r"%|per ?cent|percent|reduc|increas|decreas|sale|off|tax|vat|interest|profit|loss|cent|metre|gram|litre|pence|pound|£|€"),
    ((60, 3600), r"hour|minute|second|speed|time|long|km/h|m/s|h\b"),
    ((24, 7, 48, 168), r"day|week|hour"),
    ((12, 52, 365, 366, 4), r"year|month|week|annual|monthly"),
    ((30, 31, 28), r"month|april|may|june|july|march|september|november|january|december"),
    ((180, 360, 90, 270), r"angle|triangle|degree|turn|line|quadrilateral|polygon|circle|bearing|°|rectang|square"),
    ((2, 3, 4, 5, 6, 8, 10), r"side|rectang|square|triang|perimeter|area|area|equilateral|isosceles|quadrilateral|pentagon|hexagon|octagon|decagon|cube|cuboid|polygon|angle|edge|face|all the way round|length|wide|trapezium"),
    ((2, 3, 4, 5, 6), r"consecutive|average|mean|numbers|next|both|each|twin|sides|edges|bags?|offer|free"),
    ((10, 1000, 10000, 1000000), r"metre|gram|litre|tonne|\bm\b|\bcm\b|\bkm\b|\bkg\b|\bg\b|\bml\b|\bl\b|million|map|scale|plan"),
    ((14,), r"fortnight"), ((13, 20), r"dozen|score"), ((12,), r"dozen|inch|foot|feet|year|month"),
    ((16, 14, 8, 3, 5280, 1760), r"pound|stone|ounce|pint|gallon|yard|mile|foot|feet"),
)  # fmt: skip


def condition_fault(runs: Sequence[Run], constants: Sequence[int], letters: bool) -> str:
    """Return the word that sets a condition, or the constant that comes from nowhere, or ``""``."""
    words = " ".join(run if isinstance(run, str) else " " for run in runs)
    if found := _PERSON.search(words):
        return f"‘{found[0]}’ is not worked out here: a person has to look."
    shown = words + " " + _signs(runs)
    said = {number.value for number in numbers_said(words)}
    said |= {1 / number.value for number in numbers_said(words) if number.value}
    said |= {
        Fraction(n - 1) for word, n in ORDINALS.items() if re.search(rf"\b{word}\b", words, re.I)
    }
    terms = re.search(r"\bterm|sequence|row|position|pattern\b", words, re.I)
    for constant in constants:
        known = any(
            constant in numbers and re.search(pattern, shown, re.I) for numbers, pattern in _COMMON
        )
        if not known and constant not in said and not terms and not letters:
            return (
                f"The model uses {constant}, which the words do not name: say it in the question, as "
                "in ‘there are 52 weeks in a year’."
            )
    return ""


def _signs(runs: Sequence[Run]) -> str:
    found = set()
    for run in runs:
        if not isinstance(run, str):
            for part in t.walk(run):
                match part:
                    case t.Percent():
                        found.add("%")
                    case t.Money(_, sign):
                        found.add(sign)
                    case t.Quantity(_, unit):
                        found.add(unit)
    return " ".join(sorted(found))
