"""The wordings of questions that any of many answers will do for, clause by clause.

They are put together from left to right by :mod:`.giving`, which says what each of them means. A
narrower wording stands before a wider one, as *less than or equal to* before *less than*.
"""

from __future__ import annotations

from itembank.wording.sentences.prompt import SLOT

VERB = (
    r"(?:write(?: down)?|give|state|find|name|think of|suggest|choose|pick)(?: me)?"
    r"(?: (?:an|any|one) example of)?"
)
GIVEN = rf"(?:if|when|given(?: that)?) (?P<holds>{SLOT}),?(?: then)? "
ONE = r" (?:any one|an|any|one|a)"
TWO = r" (?:any )?(?:two|2)"
PAIR = r" (?:a|any|one)(?: possible)? pair of"
ADJECTIVE = (
    r"[ ,](?: ?and )? ?(?:(?P<kind>prime|square|cube|even|odd|positive|negative)|"
    r"(?P<unlike>different|distinct)|(?P<digits>two|three|2|3)-digit|possible)(?= |,)"
)
NUMBERS = {
    "whole": r" (?:whole numbers?|integers?)",
    "fraction": r" fractions?",
    "decimal": r" decimals?(?: numbers?)?",
    "percentage": r" percentages?",
    "mixed": r" mixed numbers?",
    "improper": r" (?:improper|top-heavy) fractions?",
    "number": r" numbers?",
}
_WHOLE = r"(?: (?P<whole>integer|whole[- ]number))?"
VALUE = rf"{_WHOLE} values? (?:of|for) <letter>"
SOLUTION = (
    rf"{_WHOLE} solutions? (?:of|to)(?: (?:the|this) (?:inequality|equation))? (?P<holds>{SLOT})"
)
_EACH = rf"(?P<each>{SLOT})(?: and (?P<other>{SLOT}))?"
MULTIPLE = (
    rf"(?:an? )?(?:common )?multiples? of (?P<both>both )?{_EACH}",
    rf"(?:exactly )?divisible by (?P<both>both )?{_EACH}",
    rf"in the (?P<each>{SLOT}) times[- ]tables?",
)
FACTOR = (rf"(?:an? )?(?:common )?(?:factors?|divisors?) of (?P<both>both )?{_EACH}",)
FACTOR_PAIR = rf" factor pair (?:of|for) (?P<each>{SLOT})"
SIGNS = {
    "≤": r"(?:less|smaller) than or equal to|at most|(?:no|not) (?:more|greater|larger|bigger) than",
    "≥": r"(?:greater|more|larger|bigger) than or equal to|at least|(?:no|not) (?:less|smaller) than",
    "<": r"(?:less|smaller|lower) than|below|under",
    ">": r"(?:greater|more|larger|bigger|higher) than|above|over",
}
COMPARED = {"=": "", **SIGNS}
BETWEEN = (
    rf"(?:(?:lies?|lying|somewhere|strictly|in) ?)*between (?P<low>{SLOT}) and (?P<high>{SLOT})"
    r"(?P<ends>,? \(?(?:inclusive|exclusive)\)?)?"
)
FROM = rf"from (?P<low>{SLOT}) to (?P<high>{SLOT})(?:,? \(?inclusive\)?)?"
KIND = (
    r"(?:an? )?(?P<kind>prime|square|cube|even|odd|positive|negative|whole)(?: numbers?)?",
    r"(?:an )?(?P<kind>integer)s?",
)
UNLIKE = r"(?P<kind>different|distinct)(?: from (?:one another|each other))?"
OTHER = (
    rf"(?:other than|apart from|except(?: for)?|not(?: equal to)?) (?P<each>{SLOT})"
    rf"(?: (?:and|or|nor) (?P<other>{SLOT}))?"
)
EQUAL = rf"(?:equivalent|equal)(?: in value)? to (?P<each>{SLOT})"
_TOGETHER = (
    r"(?:(?:have|has|having|with|whose|the|an?|their) )*(?P<what>sum|total|product|difference)"
    r"(?: (?:is|of|equal to|that is))*"
)
MAKING: tuple[tuple[str, str], ...] = (
    (_TOGETHER, ""),
    (r"(?:add|sum)(?: up)?(?: together)? to(?: (?:make|give|get|equal))?|total", "sum"),
    (r"multiply(?: together)? to(?: (?:make|give|get|equal))?", "product"),
    (r"differ by|have a difference of", "difference"),
)
HOLDS = (
    rf"(?:satisf(?:y|ies|ying)|solves?|such that|so that|for which|where) (?P<holds>{SLOT})(?: is true)?",
    rf"makes? (?P<holds>{SLOT}) true",
)
_IS = r"(?:(?:is|are|it is|they are|it|they|both|each|also|must be|whose|with) )*"
FIRST = (
    rf",? (?:that|which) {_IS}",
    r",? (?:(?:both|each)(?: of (?:them|which))? )(?:(?:is|are) )?",
    ", ",
    " (?:with |whose )?",
)
NEXT = (rf",? (?:and|but) (?:(?:that|which) )?{_IS}", rf",? (?:that|which) {_IS}")
