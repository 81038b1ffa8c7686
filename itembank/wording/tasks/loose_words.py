"""Words of a story that may change what a later command points at, and pieces of mathematics."""

from __future__ import annotations

from itembank.text.late_pattern import late
from itembank.wording.sentences.numbers_said import counting_words, strange_signs
from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.prompt import SLOT, index_of

ONE_SLOT = late(SLOT)


def slots_in(text: str) -> list[int]:
    """Return the places of the mathematics in a stretch of words, in order.

    >>> from itembank.wording.sentences.prompt import slot
    >>> slots_in(f"{slot(2)} and {slot(0)}")
    [2, 0]
    """
    return [index_of(char) for char in ONE_SLOT.findall(text)]


_CHANGES = (
    r"(?:.*\W)?(?:more|less|fewer|than|left|remain\w*|rest|other|others|not|no|never|except|without|"
    r"twice|double\w*|halve[sd]?|treble\w*|triple\w*|(?<!these )(?<!the )(?<!their )times|plus|minus|add\w*|subtract\w*|"
    r"increase\w*|decrease\w*|rise\w*|rose|fall\w*|fell|reduce\w*|discount\w*|off|extra|change\w*|"
    r"multipl\w*|divid\w*|square[sd]?|cube[sd]?|root|reciprocal|opposite|negative|positive|"
    r"before|after|difference|total|sum|product|each|every|per|both|all|half|halves|quarter\w*|"
    r"third\w*|percent\w*|per cent|average|mean|nearest|round\w*|estimat\w*|approximat\w*|about|"
    r"digits?|revers\w*|rearrang\w*|swap\w*|some|first|second|last|next|previous|ignor\w*|over|under|least|most|prime|inverse|every|"
    r"greatest|largest|smallest|backwards|upwards|downwards|equal\w*|same|plus|instead|but|unless|larger|smaller|bigger|greater|another|again|also|only|wrong|mistake\w*)(?:\W.*)?"
)


def unread_in_story(sentence: str, shown: frozenset[int]) -> str:
    """Return the word of a story that may change what a later command points at, or ``""``."""
    if found := strange_signs(sentence) or counting_words(sentence, shown):
        return found
    if phrase(_CHANGES).fullmatch(sentence):
        return sentence
    return ""
