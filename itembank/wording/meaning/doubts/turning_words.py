"""Words that turn a story round: where nobody has read them a second time, a person has to.

*Seven more than Ben has*, *twice as many buses as coaches*, *taken away from a number*, *each extra
hour*, *if you spend more than £20*: such a word says which way a number goes, or whether it counts
at all, and a model that takes it the other way is as good mathematics. So a model is proved only
where a reader of this folder comes to the same by the words alone.
"""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.meaning.doubts.overturned import UNREAD, overturned
from itembank.wording.meaning.told.relation_wordings import LESS, MORE
from itembank.wording.meaning.told.tale import Tale
from itembank.wording.sentences.prompt import SLOT

_TOLD = late(
    rf"(?:{SLOT}|\b(?:a|one|two|three) )(?: [a-z]+){{0,2}}? (?:{MORE}|{LESS})(?: [a-z'-]+){{0,3}} than\b|"
    rf"(?:{SLOT} times|\b(?:twice|half|double|three times)) (?:as|the (?:age|number|amount|price|cost|length|size|width|height)|what)\b(?! (?:it|she|he|they) )|"
    r"\bhalf price\b|\bfor nothing\b|\b(?:gets?|buy|buys|offer)\b[^.]*\bfree\b|"
    rf"\bgets? {SLOT} off\b|"
    r"\b(?:extra|additional|further) (?:hour|day|minute|week|month|kilometre|mile|person|night|item|page|copy)\b|"
    rf"\b(?:if|when|unless|provided|as long as) (?:you|they|he|she|it|an? \w+|the \w+|[A-Z]\w+) [^.,?]*?\b(?:more than|at least|over|less than|fewer than|under|up to) (?:{SLOT})|"
    rf"\b(?:taken away|taken|subtracted) from (?:{SLOT}|an? \w+|the \w+)|\bfrom (?:a|the|my) number\b",
    re.I,
)
_ASKED = late(
    r"\bpercentage (?:increase|decrease|change|rise|fall|reduction|profit|loss)\b|\bby what percentage\b|"
    r"\bas a percentage of\b",
    re.I,
)
_IN_YEARS = late(rf"\b(?:in|after) {SLOT} years?\b|{SLOT} years? ago\b", re.I)
_PART_OF_IT = late(
    rf"({SLOT}) of (?:it|them|these|those) (?:is|are|was|were) (?:under|above|below|over|behind|in|inside|outside|on|not)\b",
    re.I,
)


def turning_word(tale: Tale) -> str:
    """Return the words of a story that turn it round, as they stand there, or ``""``."""
    for pattern, text in ((_TOLD, tale.told), (_ASKED, tale.question), (_PART_OF_IT, tale.told)):
        if match := pattern.search(text):
            return _shown(match[0])
    if strange := overturned(tale, UNREAD):
        return _shown(strange)
    if re.search(r"\b(?:age|old|older|younger)\b", tale.text) and (
        match := _IN_YEARS.search(tale.told)
    ):
        return _shown(match[0])
    return ""


def _shown(words: str) -> str:
    return " ".join(re.sub(SLOT, "…", words).split())


def turning_fault(tale: Tale) -> str:
    """Return why a story that no reader knows is left to a person, or ``""``."""
    word = turning_word(tale)
    if not word:
        return ""
    return (
        f"‘{word}’ may change what a number does, and this story is not read a second time: "
        "a person has to look whether the model takes it so."
    )
