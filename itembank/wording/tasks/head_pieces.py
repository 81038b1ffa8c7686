"""Pieces that the wordings of tasks are put together from."""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.sentences.sizes import SIZES

BOX = (
    r"(?:the |an? )?(?:missing |unknown )?(?:number|digit|fraction|decimal|value|amount|mixed number|percentage)"
    r"(?: (?:that|which) (?:goes|should go|belongs|fits) in(?:to)? the (?:empty )?box"
    r"| in the (?:empty )?box| (?:that|which) makes (?:this|it|the statement|the calculation) "
    r"(?:true|correct))?"
)
SHARES = r"(?:share|divide|split)"
COMMON = {
    "hcf": r"(?:highest|greatest|largest) common (?:factor|divisor)(?: \(?hcf\)?)?|hcf|h\.c\.f\.?",
    "lcm": r"(?:lowest|least|smallest) common multiple(?: \(?lcm\)?)?|lcm|l\.c\.m\.?",
}
COMMON_SAID = (
    (
        "lcm",
        "(?:smallest|lowest|least)",
        r"is (?:a multiple of|divisible by|in the times tables of) both",
    ),
    (
        "hcf",
        "(?:largest|greatest|biggest|highest)",
        r"(?:is a factor of|divides|divides into|goes into) both",
    ),
)
IN_ORDER = (
    r"in (?:ascending|descending|increasing|decreasing|size)?(?: ?order)?(?: of (?:size|value|length|"
    r"mass|weight|height|temperature|price|cost|age|distance))?"
)
PRIMES = r"(?:(?:its|their|the) )?(?:powers of )?(?:(?:its|their|the) )?(?:prime factors|primes|prime numbers)"
TERM = r"(?:(?:an expression|a formula|the rule|a rule) for )?(?:the|its) n\s?th term"
SEQUENCE = (
    r"(?: (?:of|for)(?: the| this| a)?(?: (?:linear|quadratic|arithmetic|number|following))? sequence:?"
    r"| of| for)?"
    r"(?: (?:that|which) (?:begins|starts|goes)(?: with)?:?)?"
)
KIND_OF_NUMBER = r"(?:decimal|fraction|percentage|mixed number|(?:improper|top-heavy) fraction)"
THING = (
    r"(?:one of (?:these|the following)(?: [a-z]+)?|one|(?:of these )?(?:numbers?|fractions?|decimals?|"
    r"percentages?|values?|amounts?|ratios?|lengths?|mass(?:es)?|times?|temperatures?|distances?|"
    r"speeds?|heights?|weights?|scores?|marks?|prices?|ages?|years?))"
)
THINGS = (
    r"(?:numbers|fractions|decimals|percentages|values|amounts|lengths|masses|times|temperatures|distances|speeds|"
    r"heights|weights|scores|marks|prices|ages|years|angles|areas|volumes|capacities)"
)
LARGEST_OF = rf"the (?P<size>{SIZES})(?: {THING})?(?: (?:of|out of|from|in))?[:,]? <NEither>"
SIGN = r"(?:<, >,? or =|<, = or >|=, < or >|=, > or <|>, < or =|one of <, > or =|<, >, =)"
_SHARING = late(
    r"\b(?:between|among) (?P<names>[A-Z][a-z]+(?:(?:, and |, | and )[A-Z][a-z]+)*) in(?:to)? the ratio"
)


def names_sharing(words: str) -> int:
    """Return how many people are named who share an amount in a ratio, 0 where none is.

    >>> names_sharing("Share £40 between Ann, Bo and Cy in the ratio 3 : 5.")
    3
    >>> names_sharing("Share £40 between two clubs in the ratio 3 : 5.")
    0
    """
    found = _SHARING.search(words)
    return len(re.findall(r"[A-Z][a-z]+", found["names"])) if found else 0
