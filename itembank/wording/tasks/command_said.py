"""One sentence as a command: the wording it begins with, and the phrases that follow it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache, partial

from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import Openings, phrase
from itembank.wording.sentences.prompt import SLOT, index_of
from itembank.wording.sentences.sizes import SIZES
from itembank.wording.tasks.answers.phrases_after import end_of_phrase
from itembank.wording.tasks.heads import HEADS
from itembank.wording.tasks.loose_words import slots_in, unread_in_story
from itembank.wording.tasks.other_kinds.giving import giving
from itembank.wording.tasks.reading_found import Reading
from itembank.wording.tasks.sayings.arithmetic import SAYINGS, Saying
from itembank.wording.tasks.sayings.chance_sayings import CHANCE_SAYINGS
from itembank.wording.tasks.sayings.estimates import ESTIMATES
from itembank.wording.tasks.sayings.motion_sayings import MOTION_SAYINGS
from itembank.wording.tasks.sayings.nested import Nested, nested
from itembank.wording.tasks.sayings.point_sayings import POINT_SAYINGS
from itembank.wording.tasks.sayings.shape_sayings import SHAPE_SAYINGS
from itembank.wording.tasks.sayings.terms import TERM_SAYINGS
from itembank.wording.tasks.sayings.times import TIME_SAYINGS
from itembank.wording.tasks.sayings.whole_numbers import WHOLE_NUMBER_SAYINGS

_WHERE = (
    r",? ?(?:and )?(?:if|when|where|given(?: that)?|for|with|by using|using) <where>(?: and <Ms>)?"
)
_TO_FIND = r" (?:to find|for)(?: the value of)? <letter>"
_LIST = r",?:? ?<Ms>"
_CHAINED = r",? (?:and|then|and then) (?=(?:give|write|leave|express|state|round|simplify|check)\b)"
_ALL_SAYINGS = (
    *SAYINGS,
    *TERM_SAYINGS,
    *WHOLE_NUMBER_SAYINGS,
    *TIME_SAYINGS,
    *ESTIMATES,
    *SHAPE_SAYINGS,
    *POINT_SAYINGS,
    *MOTION_SAYINGS,
    *CHANCE_SAYINGS,
)
_SAYINGS_OPENING = Openings(saying.wording for saying in _ALL_SAYINGS)
_HEADS_OPENING = Openings(head.wording for head in HEADS)
_COUNT_OF_PLACES = late(rf"({SLOT}) (?:decimal places?|dp|significant figures?|sf)\b", re.I)


def read_command(sentence: str, shown: frozenset[int]) -> Reading | None:
    """Return a sentence read as a command; its `unread` is what no wording goes on to read.

    None where it begins like no command.
    """
    best: Reading | None = None
    for reading in _commands(sentence, shown):
        if not reading.unread:
            return reading
        if best is None or len(reading.unread) < len(best.unread):
            best = reading
    return best


def _commands(sentence: str, shown: frozenset[int]) -> Iterator[Reading]:
    for place in _SAYINGS_OPENING.of(sentence):
        saying = _ALL_SAYINGS[place]
        if match := saying.pattern.match(sentence):
            if not _bounded(sentence, match.end()):
                continue
            args = tuple(place for group in _unnamed(match) for place in slots_in(group))
            bound: Saying | Nested = saying
            if said := match.groupdict():
                words = {name: (word or "").lower() for name, word in said.items()}
                bound = saying._replace(build=partial(saying.build, words))
            yield _after(Reading("work-out", args, saying=bound), sentence, match.end())
    if (inner := nested(sentence)) and _bounded(sentence, inner.end):
        yield _after(Reading("work-out", inner.slots, saying=inner), sentence, inner.end)
    if (any_of := giving(sentence)) and _bounded(sentence, any_of.end):
        reading = Reading("give", any_of.slots, giving=any_of)
        yield _after(reading, sentence, any_of.end)
    for place in _HEADS_OPENING.of(sentence):
        head = HEADS[place]
        match = head.pattern.match(sentence)
        if not match or not _bounded(sentence, match.end()):
            continue
        if head.task == "order" and not _SAYS_ORDER.search(sentence):
            continue
        named = match.groupdict()
        letter, where = named.get("letter") or "", named.get("where") or ""
        args = tuple(place for group in _unnamed(match) for place in slots_in(group))
        pick = (named.get("pick") or named.get("size") or "").lower()
        reading = Reading(head.task, args, tuple(slots_in(where)), letter, pick)
        if not args and not where and not head.back and not letter:
            continue
        wild = named.get("wild") or ""
        selects = _SELECTS.search(wild) if head.task == "order" else None
        if strange := (selects[0] if selects else unread_in_story(wild, shown)):
            yield replace(reading, unread=strange)
        else:
            yield _after(reading, sentence, match.end())


def _unnamed(match: re.Match[str]) -> Iterator[str]:
    """Yield the groups of a match that are mathematics the task is about."""
    named = _named_groups(match.re)
    for number, group in enumerate(match.groups(), 1):
        if group and number not in named:
            yield group


@lru_cache(maxsize=1024)
def _named_groups(pattern: re.Pattern[str]) -> frozenset[int]:
    return frozenset(pattern.groupindex.values())


def _after(reading: Reading, sentence: str, at: int) -> Reading:
    """Return a command with the phrases that follow its wording."""
    while at < len(sentence):
        if sentence[at] == " " and not sentence[at:].strip(" ,:"):
            break
        if sentence[at:].strip() in ("", ",", ":", "..."):
            break
        end = end_of_phrase(sentence, at, reading.task)
        if end is not None and _bounded(sentence, end):
            counted = _COUNT_OF_PLACES.search(sentence[at:end])
            if counted and index_of(counted[1]) in reading.args:
                return replace(reading, unread=sentence[at:].strip())
            at = end
        elif where := phrase(_WHERE).match(sentence, at):
            reading = replace(reading, where=(*reading.where, *slots_in(where[0])))
            at = where.end()
        elif (
            reading.task == "solve"
            and not reading.letter
            and (aim := phrase(_TO_FIND).match(sentence, at))
            and _bounded(sentence, aim.end())
        ):
            reading = replace(reading, letter=aim["letter"])
            at = aim.end()
        elif (
            not reading.args
            and (listed := phrase(_LIST).match(sentence, at))
            and _bounded(sentence, listed.end())
        ):
            reading = replace(reading, args=tuple(slots_in(listed[0])))
            at = listed.end()
        elif chained := phrase(_CHAINED).match(sentence, at):
            at = chained.end() - 1
            if end_of_phrase(sentence, at, reading.task) is None:
                return replace(reading, unread=sentence[at:].strip())
        else:
            order = phrase(_ORDER).match(sentence, at)
            if reading.task in ("order", "extreme") and order and order.end() > at:
                at = order.end()
            else:
                return replace(reading, unread=sentence[at:].strip(" ,:"))
    return reading


def _bounded(sentence: str, end: int) -> bool:
    """Whether a phrase ends where a word ends."""
    return end >= len(sentence) or not (sentence[end].isalnum() and sentence[end - 1].isalnum())


_SAYS_ORDER = late(
    r"\b(?:order|first|descending|ascending)\b| to (?:the )?(?!nearest)\w+est\b", re.I
)
_SELECTS = late(
    r"\b(?:odd|even|whole|top|bottom|upper|lower|left|right|middle|inner|outer|shaded|winning|"
    r"losing|qualifying|correct|missing|unknown|common|old|new|original|final|median|mean|modal|"
    r"fractional|rational|irrational|real|natural|triangular|consecutive|distinct|different|unlike|"
    r"unit|digit|end|start|index|power|and|or|in|of|to|with|by|for|from|almost|back|below|above|"
    r"real|true|false|lap|split|saved|lost|won|gained)\b",
    re.I,
)
"""Words that may say which of some numbers are meant, or that other numbers are."""
_EITHER = f"(?:{SIZES})"
_ORDER = (
    rf"[,:]? ?(?:and )?(?:in order(?: of (?:size|value|length|mass|weight|height|temperature|price|cost|age|distance))?|"
    rf"{_EITHER}(?: (?:one|number|value|fraction|time|length|amount|temperature))? (?:first|last)|"
    rf"from (?:the )?{_EITHER} to (?:the )?{_EITHER}|(?:from )?{_EITHER} to (?:the )?{_EITHER}|"
    rf"(?:(?:starting|beginning|start|begin) (?:with|from)|(?:ending|finishing|end|finish) with) the {_EITHER}"
    r"(?: (?:one|number|value|fraction|time|length|amount|temperature))?|of size|"
    r"(?:in )?(?:ascending|descending|increasing|decreasing) order)"
)
