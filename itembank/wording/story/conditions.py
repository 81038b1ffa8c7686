"""Words that set a condition no model shows, and numbers everybody knows.

A *median*, a *probability* or a *lower bound* is no sum of a model: a person decides. A constant
that a model brings in is one the words name, or one that belongs to what they speak of: 60 to
minutes, 180 to angles, 100 to per cent (common knowledge).
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late
from itembank.wording.sentences.numbers_said import ORDINALS, numbers_said

_PERSON = late(
    r"\b(?:median|mode|modal|probab\w*|likely|chance|bounds?|error interval|at random|even number|odd number|"
    r"compound(?:ed)? (?:monthly|quarterly|daily)|twice daily|return journey|there and back|each way|"
    r"deposit|instal?ments?|equal payments?|and back|after the first|after that)\b",
    re.I,
)

_COMMON = (
    ((0, 1), r""),
    ((100,), r"(?:per ?cent|percent|reduc|increas|decreas)\w*|sales?|off|tax|vat|interest|profits?|loss(?:es)?|"
             r"cents?|pence|p|pounds?|cm|\w*metres?|(?:kilo|milli)?grams?|\w*litres?|%|£|€"),
    ((60, 3600), r"hours?|minutes?|seconds|(?:a|an|per|each|every|one) second|speeds?|time|how long|am|pm|o'clock|km/h|m/s|h|mins?|s"),
    ((24, 7, 48, 168), r"days?|daily|weeks?|weekly|hours?|\w+day to \w+day"),
    ((12, 52, 365, 4), r"years?|yearly|months?|monthly|weeks?|weekly|annual\w*"),
    ((29, 366), r"leap years?"),
    ((30, 31, 28), r"months?|january|february|(?-i:March|May)|april|june|july|august|september|october|november|december"),
    ((180, 360, 90, 270), r"(?:tri|rect)?ang(?:l|ul)\w*|degrees?|turn(?:s|ed|ing)?|(?:straight )?lines?|quadrilaterals?|"
                          r"polygons?|\w*circles?|bearings?|squares?|°"),
    ((2, 3, 4, 5, 6, 8, 10), r"sides?|(?:tri|rect)?ang(?:l|ul)\w*|squares?|perimeters?|areas?|equilateral|isosceles|"
                             r"quadrilaterals?|(?:pent|hex|hept|oct|non|dec)agon(?:s|al)?|cubes?|cuboids?|polygons?|edges?|\w*faces?|all the way round|"
                             r"lengths?|wide|trapeziums?"),
    ((2, 3, 4, 5, 6), r"consecutive|averages?|mean|numbers?|next|both|each|twins?|sides|edges|bags?|offers?|free"),
    ((10, 1000, 10000, 1000000), r"\w*metres?|(?:kilo|milli)?grams?|\w*litres?|tonnes?|m|cm|km|kg|g|ml|l|millions?|maps?|scales?|plans?"),
    ((14,), r"fortnights?"), ((13,), r"dozens?"), ((20,), r"score of [a-z]+"),
    ((12,), r"dozens?|inch(?:es)?|foot|feet|years?|months?"),
    ((16, 14, 8, 3, 5280, 1760), r"pounds?|stones?|ounces?|pints?|gallons?|yards?|miles?|foot|feet"),
)  # fmt: skip
"""Numbers that everybody knows, with the words and signs that call for them."""


@lru_cache(maxsize=len(_COMMON))
def _called_for(words: str) -> re.Pattern[str]:
    # Whole words: every ‘each’ ends in the h of hours, and there is an ‘off’ in coffee.
    return re.compile(rf"(?<![^\W_])(?<!['’])(?:{words})(?![^\W_])", re.I)


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
    terms = re.search(r"\b(?:terms?|sequences?|rows?|positions?|patterns?)\b", words, re.I)
    for constant in constants:
        known = any(
            constant in numbers and _called_for(pattern).search(shown)
            for numbers, pattern in _COMMON
        )
        if not known and constant not in said and not terms and not letters:
            return (
                f"The model uses {constant}, which the words do not name: say it in the question, as "
                "in ‘there are 52 weeks in a year’."
            )
    return ""


def _signs(runs: Sequence[Run]) -> str:
    """Return the signs of what is printed that call for a constant.

    One unit of a length, a mass or a time calls for none: 5 m × 100 is 500 m. Two of a kind do,
    as hours and minutes.
    """
    found: set[str] = set()
    units: set[str] = set()
    for run in runs:
        if not isinstance(run, str):
            for part in t.walk(run):
                match part:
                    case t.Percent():
                        found.add("%")
                    case t.Money(_, sign):
                        found.add(sign)
                    case t.Quantity(_, "°"):
                        found.add("°")
                    case t.Quantity(_, unit):
                        units.update(name for name in unit.split("/") if name in UNITS)
    kinds = Counter(UNITS[unit].dimension for unit in units)
    return " ".join(sorted(found | {unit for unit in units if kinds[UNITS[unit].dimension] > 1}))
