"""The wordings in which a sentence relates one amount to another, as patterns.

*Ann has £7 more than Ben*, *twice as many buses as coaches*, *in 3 years he will be 20*, *three pens
and two rulers cost £2.60*.
"""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.sentences.prompt import SLOT

MORE = (
    r"more|older|taller|longer|heavier|dearer|wider|higher|warmer|hotter|further|farther|bigger|"
    r"larger|greater|deeper|thicker"
)
LESS = (
    r"less|fewer|younger|shorter|lighter|cheaper|narrower|lower|colder|cooler|smaller|thinner|"
    r"shallower"
)
TOGETHER = r"(?:altogether|together|in total|in all|between them|combined|as a total|all together)"
VERB = (
    r"(?:is|are|was|were|has|have|had|weighs?|weighed|costs?|scores?|scored|gets?|got|earns?|earned|saves?|saved|"
    r"sells?|sold|picks?|picked|collects?|collected|swims|swam|runs|ran|walks|walked|holds?|owns?|owned|plants?|"
    r"planted|contains?|measures?|makes?|made|grows?|grew|reads?|cycles|cycled|bakes?|baked|counts?|counted)"
)
TIMES = rf"(?:(?P<k>{SLOT}) times|(?P<word>twice|double|half))"
AS = (
    r"(?:as (?:many|much|old|long|heavy|tall|high|wide|far|deep|big|large|expensive|dear|fast|thick)|"
    r"the (?:age|number|amount|price|cost|mass|length|height|weight|score|size) of)"
)


def _clause_splits() -> str:
    subject = r"(?:[A-Z][a-z]+|[Tt]he \w+|[Hh]er \w+|[Hh]is \w+|there|an? \w+|he|she|it|they)"
    return rf"(?:;|,? (?:and|but|while|whereas)|,) (?={subject} {VERB}\b)|, (?=which (?:is|was|are|were)\b)"


SPLIT = late(_clause_splits())
OPENING = late(rf"^(?:and|but) |^(?:At|In|On) (?:the|a) [a-z]+(?: [a-z]+)? (?={SLOT})")
HAS_VERB = late(rf"\b{VERB}\b")
COMPARED = late(
    rf"(?P<a>.+?) {VERB} (?P<n>{SLOT})(?: (?P<mid>[a-z]+(?: of [a-z]+)?))? (?P<way>{MORE}|{LESS})"
    rf"(?: (?P<thing>[a-z'-]+(?: [a-z'-]+)?))? than (?P<b>.+?)(?: {VERB}| do| does| did)?",
)
TIMES_OF = late(
    rf"(?P<a>.+?) {VERB} {TIMES} {AS}(?: (?P<thing>[a-z'-]+(?: [a-z'-]+)?))?(?: as)? (?P<b>.+?)(?: {VERB}| do| does| did)?",
)
TIMES_SHORT = late(rf"(?P<a>.+?) {VERB} {TIMES} as (?:old|long|heavy|tall|much|many|big|large)")
THERE_MORE = late(
    rf"there (?:are|were) (?P<n>{SLOT}) (?P<way>{MORE}|{LESS}) (?P<a>[a-z'-]+(?: [a-z'-]+)?) than (?P<b>[a-z'-]+(?: [a-z'-]+)?)(?P<tail>(?: (?:in|at|on) .+)?)",
    re.I,
)
THERE_TIMES = late(
    rf"there (?:are|were) {TIMES} as many (?P<a>[a-z'-]+(?: [a-z'-]+)?) as (?P<b>[a-z'-]+(?: [a-z'-]+)?)(?P<tail>(?: (?:in|at|on) .+)?)",
    re.I,
)
WHICH = late(
    rf"which (?:is|was) (?:(?P<n>{SLOT})(?: [a-z]+)? (?P<way>{MORE}|{LESS}) than|{TIMES} (?:as (?:many|much|old|long) as|what)?) ?(?P<b>.+?)(?: {VERB}| do| does| did)?"
)
IN_YEARS = late(
    rf"in (?P<n>{SLOT}) years?(?:' time|'s time| time)?,? (?P<a>.+?) will be (?P<m>{SLOT})(?: years old)?|"
    rf"(?P<a2>.+?) will be (?P<m2>{SLOT})(?: years old)? in (?P<n2>{SLOT}) years?(?:' time|'s time| time)?",
    re.I,
)
YEARS_AGO = late(
    rf"(?P<n>{SLOT}) years? ago,? (?P<a>.+?) was (?P<m>{SLOT})(?: years old)?|"
    rf"(?P<a2>.+?) was (?P<m2>{SLOT})(?: years old)? (?P<n2>{SLOT}) years? ago",
    re.I,
)
_TERM = rf"(?:{SLOT}|an?|one) [a-z'-]+(?: (?:tickets?|bars?|cards?|bags?|boxes|tins?|packs?))?"
SUM_OF_MANY = late(
    rf"(?P<terms>{_TERM}(?:(?:, | and |, and ){_TERM})+)(?: together)? (?:is|are|has|have|weighs?|costs?|holds?|contains?|measures?) "
    rf"(?P<m>{SLOT})(?: [a-z'-]+){{0,3}}",
    re.I,
)
SUM_OF = late(
    rf"(?:the )?(?:sum|total) (?:of (?:their ages|these numbers|the (?:two|three|{SLOT}) numbers)|cost|mass|length|weight|age|number)? ?(?:is|was) (?P<m>{SLOT}).*|"
    rf"(?:.+? )?add up to (?P<m2>{SLOT})(?: [a-z]+)?|"
    rf"{TOGETHER},? (?:they|there|.+?) (?:are|have|has|weigh|cost|get|earn|score) (?P<m3>{SLOT})(?: [a-z]+)?|"
    rf".+? {VERB} (?P<m4>{SLOT})(?: [a-z'-]+){{0,2}} {TOGETHER}(?:, all [a-z ]+)?|"
    rf".+? (?:{TOGETHER}) {VERB} (?P<m5>{SLOT})(?: [a-z'-]+)?",
    re.I,
)
SIMPLE = late(
    rf"(?:only )?(?P<a>.+?) {VERB} (?:only |now )?(?P<n>{SLOT})(?P<thing>(?: years old)?|(?: [a-z'-]+){{0,2}}(?: (?:in|at|on) [^,]+)?)"
)
