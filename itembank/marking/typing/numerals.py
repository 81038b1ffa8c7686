"""Numbers written out in words, brought to digits: *twenty-two*, *three quarters*, *a half*.

Names of numbers are those of British English, up to millions. Words that are not part of a
number are left where they stand.
"""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late

_UNITS = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
]
_TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
_SMALL = {word: n for n, word in enumerate(_UNITS)} | {
    word: 10 * n for n, word in enumerate(_TENS, start=2)
}
_SMALL |= {"nought": 0, "nil": 0, "fourty": 40, "ninty": 90}
_LARGE = {"hundred": 100, "thousand": 1_000, "million": 1_000_000}
_PARTS = {
    "half": 2,
    "halve": 2,
    "third": 3,
    "quarter": 4,
    "fourth": 4,
    "fifth": 5,
    "sixth": 6,
    "seventh": 7,
    "eighth": 8,
    "ninth": 9,
    "tenth": 10,
    "eleventh": 11,
    "twelfth": 12,
    "thirteenth": 13,
    "fourteenth": 14,
    "fifteenth": 15,
    "sixteenth": 16,
    "eighteenth": 18,
    "twentieth": 20,
    "thirtieth": 30,
    "fortieth": 40,
    "fiftieth": 50,
    "hundredth": 100,
    "thousandth": 1000,
}
_NUMBER = "|".join(sorted((*_SMALL, *_LARGE), key=len, reverse=True))
_WORDS = late(
    rf"(?<![A-Za-z])(?:an? (?=hundred|thousand|million))?(?:{_NUMBER})"
    rf"(?:(?:[ -]|,? and )(?:{_NUMBER}))*(?![A-Za-z])",
    re.I,
)
_PART = "|".join(_PARTS) + "|halves"
_FRACTION = late(
    rf"(?<![A-Za-z\d.])(?:(?P<whole>\d+),? (?:and|&) )?"
    rf"(?:(?P<top>\d+)[ -]|(?:an? ))?(?P<part>{_PART})(?P<many>s?)(?![A-Za-z])",
    re.I,
)
_DIGITS_LARGE = late(rf"(?<![\d.,])(\d{{1,6}}(?:\.\d{{1,6}})?) ({'|'.join(_LARGE)})s?\b", re.I)
_POINT = late(r"(?<![\d.])(\d+) point (\d(?: ?\d){0,5})(?! ?\d)", re.I)
_HAS_WORD = late(
    r"\b(?:zero|nought|nil|one|two|three|fou?r|five|six|seven|eigh|nin|ten|ele|twe|thir|fif|"
    r"for|half|hal|quarter|hund|thou|mill|a )",
    re.I,
)


def in_digits(text: str) -> str:
    """Return a text with the numbers in words written in digits.

    >>> [in_digits(text) for text in ("twenty-two buses", "seven", "one hundred and five")]
    ['22 buses', '7', '105']
    >>> [in_digits(text) for text in ("three quarters", "half", "3 and a half", "a third of 9")]
    ['3/4', '1/2', '3 1/2', '1/3 of 9']
    >>> in_digits("one and two"), in_digits("1.5 million"), in_digits("75 thousand")
    ('1 and 2', '1500000', '75000')
    >>> in_digits("three hundred and two hundred"), in_digits("two thousand and three thousand")
    ('300 and 200', '2000 and 3000')
    >>> in_digits("seven point three one"), in_digits("minus nought point five")
    ('7.31', 'minus 0.5')
    """
    if not _HAS_WORD.search(text) and not _FRACTION.search(text):
        return text
    text = _WORDS.sub(_number, _DIGITS_LARGE.sub(_scaled, text))
    text = _POINT.sub(lambda found: f"{found[1]}.{found[2].replace(' ', '')}", text)
    return _FRACTION.sub(_fraction, text)


def _scaled(found: re.Match[str]) -> str:
    """Return 75 thousand as 75000; what does not come to a whole number stays."""
    worth = Fraction(found[1]) * _LARGE[found[2].lower()]
    return str(worth) if worth.denominator == 1 else found[0]


def _number(found: re.Match[str]) -> str:
    """Return a run of number words as one number, or as several where it reads as several."""
    words = re.split(r",? and |[ -]+", found[0].lower())
    joins = re.findall(r",? and |[ -]+", found[0].lower())
    told: list[str] = []
    total = group = 0
    last, before_group = 10**9, ""
    least = 10**9  # the smallest of thousand and million in the number so far
    for place, word in enumerate(words):
        join = joins[place - 1] if place else ""
        if word in ("a", "an"):
            continue
        if word in _LARGE:
            size = _LARGE[word]
            # Hundreds belong to their group, two hundred thousand; thousands end one.
            if size == 100:
                group = max(group, 1) * 100
            else:
                # Thousands come once in a number: two thousand and three thousand are two.
                if size >= least:
                    told += (str(total), before_group)
                    total = 0
                total += max(group, 1) * size
                group, least = 0, size
            last = size
            continue
        n = _SMALL[word]
        # So do the hundreds of a group: three hundred and two hundred are two numbers.
        again = group >= 100 and words[place + 1 : place + 2] == ["hundred"]
        joined = place and (
            (last >= 100 and (group or total) and not again)
            or (20 <= last < 100 and 0 < n < 10 and "and" not in join)
        )
        between = " and " if "and" in join else " "
        if place and not joined:
            told += (str(total + group), between)
            total = group = 0
            least = 10**9
        if not group:
            before_group = between
        group += n
        last = n
    told.append(str(total + group))
    return "".join(told)


def _fraction(found: re.Match[str]) -> str:
    part = found["part"].lower()
    bottom = 2 if part == "halves" else _PARTS[part]
    # Thirds with no number before it says how it was cut, and not how many there are.
    if found["top"] is None and found["many"]:
        return found[0]
    top = found["top"] or "1"
    whole = f"{found['whole']} " if found["whole"] else ""
    return f"{whole}{top}/{bottom}"
