"""Numbers, signs and quantities that stand among the words of a prompt, outside braces.

>>> counting_words("Two boxes and half of the rest"), counting_words("Two boxes of 12")
('Two', '12')
>>> [(said.text, str(said.value)) for said in numbers_said("Twice as many, 12 more, or a quarter")]
[('12', '12'), ('Twice', '2'), ('quarter', '1/4')]
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from itembank.text.late_pattern import late
from itembank.wording.sentences.prompt import SLOT

CARDINALS = {
    word: Fraction(n)
    for n, word in enumerate(
        ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"]
    )
} | {
    word: Fraction(n)
    for word, n in (
        ("thirty", 30), ("forty", 40), ("fifty", 50), ("sixty", 60), ("seventy", 70),
        ("eighty", 80), ("ninety", 90), ("hundred", 100), ("thousand", 1000), ("million", 10**6),
        ("dozen", 12), ("fortnight", 14), ("quarterly", 4), ("nought", 0), ("nil", 0),
    )
}  # fmt: skip
MULTIPLES = {
    "twice": 2, "double": 2, "doubles": 2, "doubled": 2, "doubling": 2, "thrice": 3, "treble": 3,
    "trebles": 3, "trebled": 3, "triple": 3, "triples": 3, "tripled": 3, "quadruple": 4,
    "quadruples": 4, "quadrupled": 4, "couple": 2, "pair": 2, "pairs": 2,
}  # fmt: skip
PARTS = {
    "half": 2, "halves": 2, "halve": 2, "halved": 2, "halving": 2, "quarter": 4, "quarters": 4,
    "thirds": 3, "fifths": 5, "sixths": 6, "sevenths": 7, "eighths": 8, "ninths": 9, "tenths": 10,
    "hundredths": 100, "thousandths": 1000,
}  # fmt: skip
# After a, one or of these an ordinal is a part: a third of the bed, but the third bed.
_PART_ORDINAL = (
    r"(?:a|one|two|three|four|five|\d) (third|fifth|sixth|seventh|eighth|ninth|tenth|twelfth)"
)
_ORDINAL_PARTS = {
    "third": 3, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9, "tenth": 10,
    "twelfth": 12,
}  # fmt: skip
ORDINALS = {
    word: n
    for n, word in enumerate(
        [
            "first",
            "second",
            "third",
            "fourth",
            "fifth",
            "sixth",
            "seventh",
            "eighth",
            "ninth",
            "tenth",
            "eleventh",
            "twelfth",
        ],
        1,
    )
}

_WORDS = (
    CARDINALS
    | {word: Fraction(n) for word, n in MULTIPLES.items()}
    | {word: Fraction(1, n) for word, n in PARTS.items()}
)
_NUMBER_WORD = late(rf"\b({'|'.join(sorted(_WORDS, key=len, reverse=True))})\b", re.I)
_DIGITS = late(r"\d+(?:[.,]\d+)*(?:st|nd|rd|th)?(?![a-z\d])|\d+(?:[.,]\d+)*", re.I)
_PART = late(rf"\b{_PART_ORDINAL}\b", re.I)
# A name such as 7M, Year 8, Bus 14 or Pack A1 is no number to reckon with.
_NAME = late(
    r"\b(?:year|class|room|route|bus|lane|set|row|page|question|number|gate|bay|stop|platform|"
    r"table|lesson|week|day) \d{1,3}[a-z]?\b|\b\d{1,2}[A-Z]\b"
)
_PLURAL_THIRD = late(r"\b(?:quarter past|quarter to|half past)\b", re.I)


class Said(NamedTuple):
    """A number said outside braces: as it stands, its value, and whether it is in figures."""

    text: str
    value: Fraction
    figures: bool


def numbers_said(words: str) -> list[Said]:
    """Return every number among the words, figures first; *one* alone is not counted.

    Roundings (*to 2 decimal places*, *to the nearest 10*) are not numbers of the question and
    are left out.
    """
    plain = _HARMLESS.sub(" ", _pairs_out(_ROUNDINGS.sub(" ", words)))
    found = []
    for match in _DIGITS.finditer(plain):
        found.append(Said(match[0], _value(match[0]), True))
    for match in _NUMBER_WORD.finditer(plain):
        word = match[1].lower()
        if word != "one":
            found.append(Said(match[1], _WORDS[word], False))
    for match in _ONE_THAT_COUNTS.finditer(plain):
        if "the other" not in plain[match.end() :].partition(".")[0].lower():
            found.append(Said(match[0].split()[0], Fraction(1), False))
    for match in _PART.finditer(plain):
        found.append(Said(match[1], Fraction(1, _ORDINAL_PARTS[match[1].lower()]), False))
    return found


def in_number_words(words: str) -> tuple[int, ...]:
    """Return each whole number that a word stands for: for a wording that is read to its last word.

    A part is told by how many of it make the whole.

    >>> in_number_words("the mean on the four days was half of that, and twice this")
    (4, 2, 2)
    """
    return tuple(
        value.numerator if value.denominator == 1 else value.denominator
        for match in _NUMBER_WORD.finditer(words)
        for value in (_WORDS[match[1].lower()],)
    )


_HARMLESS = late(
    # The two halls, all three swimmers: things that were named before.
    r"\b(?:the|these|those|all|their|its|his|her|both) (?:two|three|four|five|six|seven|eight)\b"
    # Before six: a time of day.
    r"|\b(?:before|after|at|until|till|by|past) (?:one|two|three|four|five|six|seven|eight|nine|ten|"
    r"eleven|twelve)(?: o'clock)?(?=\s*[.,;?!]|$)"
    r"|\b(?:double|triple|two|three|four)-(?:deck\w*|storey|sided|seater|bedroom)\b"
    r"|\btwo \w+ (?:are|stand|lie)\b(?=[^.?!]* apart\b)",
    re.I,
)
_ONE_THING = frozenset(
    ("goggles", "scissors", "trousers", "glasses", "shorts", "tights", "jeans", "pliers", "shears")
)
"""Things of which a pair is one."""
_PAIR_OF = late(r"\b(?:pair|pairs) of (\w+)", re.I)


def _pairs_out(words: str) -> str:
    """Return words without *pairs of goggles* where nothing asks about single ones.

    >>> _pairs_out("5 pairs of caps. How many caps?"), _pairs_out("5 pairs of caps. What is paid?")
    ('5 pairs of caps. How many caps?', '5  . What is paid?')
    """
    alone = _PAIR_OF.sub(" ", words)
    nouns = {match[1].lower() for match in _PAIR_OF.finditer(words)} - _ONE_THING
    return words if any(noun in alone.lower() for noun in nouns) else alone


def _value(text: str) -> Fraction:
    digits = re.sub(r"(?:st|nd|rd|th)\Z", "", text, flags=re.I).replace(",", "")
    try:
        return Fraction(digits)
    except ValueError:
        return Fraction(0)  # 1.2.3 stands there all the same, and is said to


_ONE_THAT_COUNTS = late(
    r"\b(?:one (?:of (?:the|them|these|his|her)|more|is|was|breaks?|gets?|got|dies|died|goes|went|leaves?|left|"
    r"falls?|fell|free|extra|fewer|less)\b|someone\b|somebody\b|another (?:gets?|got|is|one|joins?|leaves?)\b)",
    re.I,
)
"""One as a number: one of them breaks, one more gets on; *one roll*, *the one with* count nothing."""
_ROUNDINGS = late(
    r"\b(?:\d{1,2}|one|two|three|four|five|six|seven|eight)\s*"
    r"(?:decimal places?|places of decimals|dp\b|d\.\s?p|significant (?:figures?|digits?)|sf\b|s\.\s?f)"
    r"|\bnearest (?:\d{1,3}(?:[ ,]?000)*\b|whole number|half|tenth|hundredth|ten thousand|hundred "
    r"thousand|ten|hundred|thousand|million|one)"
    r"|\bin the form (?:1 ?: ?n|n ?: ?1)\b|\bn ?th\b",
    re.I,
)


def counting_words(words: str, shown: frozenset[int] = frozenset()) -> str:
    """Return the first number among the words, in figures or not, or ``""``; *one* counts here.

    A number word for one of the numbers in `shown` is passed over.
    """
    plain = _ROUNDINGS.sub(" ", words)
    if match := _DIGITS.search(plain):
        return match[0]
    for match in _NUMBER_WORD.finditer(plain):
        if match[1].lower() not in CARDINALS or _WORDS[match[1].lower()] not in shown:
            return match[0]
    return ""


_NEAR = rf"(?:{SLOT}|\d[\d.,]*|\b[A-Za-z]\b)?"
_SIGN = late(
    rf"{_NEAR} ?[+×÷=<>≤≥≠√∛^%£€$°*/] ?{_NEAR}"
    rf"|(?:{SLOT}|\d[\d.,]*)\s?[-−–]\s?(?:{SLOT}|\d[\d.,]*)|(?:^|\s)[-−]\s?(?:{SLOT}|\d[\d.,]*)|(?<![A-Za-z])−|−(?![A-Za-z])"
)
_ALLOWED = late(r"<, >,? or =|<, = or >|=, < or >|and/or|(?<=[a-z])/(?=[a-z])", re.I)


def strange_signs(words: str) -> str:
    """Return a sign that works on numbers but stands outside braces, with what is near it.

    >>> from itembank.wording.sentences.prompt import slot
    >>> strange_signs(f"Work out 10 − {slot(0)}") != ""
    True
    >>> strange_signs("A well-kept bed – and a 240-litre tank")
    ''
    """
    match = _SIGN.search(_ALLOWED.sub(" ", words))
    return match[0].strip() if match else ""
