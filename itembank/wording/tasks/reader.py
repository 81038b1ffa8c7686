"""Reads a prompt whole: its task, the mathematics it is about, and what it says of the answer.

A prompt is a row of sentences. Each is a command in one of the known wordings (:mod:`.heads`,
:mod:`.arithmetic`) with phrases about the answer after it (:mod:`.answer`); or it gives
something (:data:`~.heads.GIVENS`); or it is about the answer alone; or an aside that changes
nothing; or it tells a story. A story may stand before a command that points back at its one
piece of mathematics, as long as no word in it could change what is asked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache, partial

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.sentences.numbers_said import counting_words, strange_signs
from itembank.wording.sentences.phrases import begins, phrase
from itembank.wording.sentences.prompt import SLOT, index_of, sentences, slotted
from itembank.wording.sentences.sizes import SIZES
from itembank.wording.tasks.answer_phrases import (
    ASIDES,
    GLUE,
    GLUE_AND_ANSWER,
    METHODS,
    TAILS,
)
from itembank.wording.tasks.arithmetic import SAYINGS, Saying
from itembank.wording.tasks.estimates import ESTIMATES
from itembank.wording.tasks.giving import Giving, giving
from itembank.wording.tasks.heads import GIVENS, HEADS, LEADS
from itembank.wording.tasks.nested import Nested, nested
from itembank.wording.tasks.terms import TERM_SAYINGS
from itembank.wording.tasks.times import TIME_SAYINGS
from itembank.wording.tasks.whole_numbers import WHOLE_NUMBER_SAYINGS

_SLOT = late(SLOT)
_COLON = late(rf": ?(?={SLOT})")
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
)
_ROW = late(rf"{SLOT}(?:(?:,? and |, ?){SLOT})*")
_COUNT_OF_PLACES = late(rf"({SLOT}) (?:decimal places?|dp|significant figures?|sf)\b", re.I)


@dataclass(frozen=True, slots=True)
class Reading:
    """What a prompt's words ask, as far as they are understood.

    `task` is empty where no command was read. `args`, `where` and `letter` are places in the
    prompt's mathematics: what the task is about, what is given, and the letter that is asked
    for (a letter may stand among the words instead). `saying` is the sum that is said in words,
    of the pieces in `args`; `giving` the property that any of many answers has. `unread` is the first stretch of words that was not understood and
    may change what is asked; nothing is proved where it is not empty.
    """

    task: str = ""
    args: tuple[int, ...] = ()
    where: tuple[int, ...] = ()
    letter: str = ""
    pick: str = ""
    saying: Saying | Nested | None = None
    giving: Giving | None = None
    unread: str = ""


def read_prompt(runs: Sequence[Run]) -> Reading:
    """Return what the words of a prompt ask.

    >>> from itembank.notation.tree import Int
    >>> read_prompt(("Halve ", Int(36), ".")).saying.pattern.match("Halve \ue000") is not None
    True
    >>> read_prompt(("Solve ", Int(36), " and guess 2x.")).unread
    'and guess 2x'
    """
    said = slotted(runs)
    reading = _read(said.text, counts(runs))
    if reading.letter and _SLOT.match(reading.letter):
        node = said.nodes[index_of(reading.letter)]
        name = node.name if isinstance(node, t.Sym) else ""
        unread = reading.unread or ("" if name else "the letter that is asked for")
        reading = replace(reading, letter=name, unread=unread)
    return reading


def counts(runs: Sequence[Run]) -> frozenset[int]:
    """Return how many things the mathematics lists: in a list, in a ratio, or in a row of pieces.

    A number among the words that says no more than this (*two clubs*, of a ratio of two parts)
    is used.

    >>> from itembank.notation.tree import Int
    >>> sorted(counts(("Three swim in ", Int(40), ", ", Int(50), " and ", Int(60), " seconds")))
    [3]
    """
    said = slotted(runs)
    found = {len(_slots(row[0])) for row in phrase("<Ms>").finditer(said.text)}
    found |= {len(node.parts) for node in said.nodes if isinstance(node, t.Listing | t.Ratio)}
    return frozenset(found - {1})


@lru_cache(maxsize=4096)
def _read(text: str, shown: frozenset[int]) -> Reading:
    text = _COLON.sub(" ", text)  # Work out: {3 + 4}
    command: Reading | None = None
    loose: list[int] = []  # mathematics that is given before a command points back at it
    told = 0
    for sentence in sentences(text):
        rest = (
            phrase(LEADS).sub("", sentence, count=1) if phrase(LEADS).match(sentence) else sentence
        )
        if _aside(rest) or _about_the_answer(rest):
            continue
        if (given := _given(rest)) is not None:
            loose += given
            continue
        if command is not None and (asked := _of_several(rest, command.task)):
            command = replace(command, pick=asked if asked != "each" else "")
            continue
        found = _command(rest, shown)
        if found is not None and not found.unread:
            if command is not None:
                return replace(command, unread=sentence)
            command = found
            continue
        # A story, or a command that goes on in a way that is not known.
        if found is not None and _SLOT.match(rest):
            found = None  # {3/8} of a cake is eaten
        unread = "" if found is not None else _unread_in_story(rest, shown)
        if found is not None:
            return found
        if unread:
            return Reading(unread=unread)
        if command is not None:
            return replace(command, unread=sentence)
        if told or not _slots(rest):
            return Reading(unread=sentence)  # only one sentence may lead up to a command
        told += 1
        loose += _slots(rest)
    if command is None:
        if loose and _SLOT.fullmatch(text.strip(" .?!;")):
            return Reading("work-out", tuple(loose))
        return Reading(unread=sentences(text)[-1] if sentences(text) else text)
    rows = len(_ROW.findall(text)) if loose else 0
    return _settled(command, loose, told, rows)


def _settled(command: Reading, loose: list[int], told: int, rows: int) -> Reading:
    """Return a command with what it points back at, and what was given before or after it."""
    if not loose:
        return command
    saying = command.saying
    if isinstance(saying, Saying) and saying.back and not command.args:
        if told > 1 or rows != 1:
            return replace(command, unread=_place(loose))
        return replace(command, args=tuple(loose))
    if command.args or saying or command.giving:
        # What was given besides is a fact to use: Find(…) with relations decides if it may be.
        if told:
            return replace(command, unread=_place(loose))
        return replace(command, where=(*command.where, *loose))
    if command.task in ("find-letter",) and not command.where:
        return replace(command, where=tuple(loose))
    return replace(command, args=tuple(loose))


def _place(loose: Sequence[int]) -> str:
    return f"what stands in {{ }} number {loose[0] + 1}"


def _aside(sentence: str) -> bool:
    return any(phrase(aside).fullmatch(sentence) for aside in ASIDES)


def _given(sentence: str) -> list[int] | None:
    if not _SLOT.search(sentence):
        return None
    for wording in GIVENS:
        if phrase(wording).fullmatch(sentence):
            return _slots(sentence)
    return None


def _about_the_answer(sentence: str) -> bool:
    """Whether a sentence is nothing but phrases about the answer."""
    at = 0
    words = " " + sentence
    while at < len(words):
        end = _tail(words, at)
        if end is None:
            return False
        at = end
    return True


def _tail(text: str, at: int, task: str = "") -> int | None:
    """Return where the longest phrase about the answer that starts at `at` ends, or None."""
    starts = {
        match.end() for glue in (GLUE, GLUE_AND_ANSWER) if (match := phrase(glue).match(text, at))
    }
    ends = [
        match.end()
        for tail in (*TAILS, *(METHODS if task in ("solve", "find-letter") else ()))
        for start in starts
        if (match := phrase(tail).match(text, start)) and match.end() > at
    ]
    return max(ends, default=None)


def _slots(text: str) -> list[int]:
    return [index_of(char) for char in _SLOT.findall(text)]


def _command(sentence: str, shown: frozenset[int]) -> Reading | None:
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
    for saying in _ALL_SAYINGS:
        if not begins(saying.wording, sentence):
            continue
        if match := saying.pattern.match(sentence):
            if not _bounded(sentence, match.end()):
                continue
            args = tuple(place for group in _unnamed(match) for place in _slots(group))
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
    for head in HEADS:
        if not begins(head.wording, sentence):
            continue
        match = head.pattern.match(sentence)
        if not match or not _bounded(sentence, match.end()):
            continue
        if head.task == "order" and not _SAYS_ORDER.search(sentence):
            continue
        named = match.groupdict()
        letter, where = named.get("letter") or "", named.get("where") or ""
        args = tuple(place for group in _unnamed(match) for place in _slots(group))
        pick = (named.get("pick") or named.get("size") or "").lower()
        reading = Reading(head.task, args, tuple(_slots(where)), letter, pick)
        if not args and not where and not head.back and not letter:
            continue
        wild = named.get("wild") or ""
        if strange := _unread_in_story(wild, shown):
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
        end = _tail(sentence, at, reading.task)
        if end is not None and _bounded(sentence, end):
            counted = _COUNT_OF_PLACES.search(sentence[at:end])
            if counted and index_of(counted[1]) in reading.args:
                return replace(reading, unread=sentence[at:].strip())
            at = end
        elif where := phrase(_WHERE).match(sentence, at):
            reading = replace(reading, where=(*reading.where, *_slots(where[0])))
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
            reading = replace(reading, args=tuple(_slots(listed[0])))
            at = listed.end()
        elif chained := phrase(_CHAINED).match(sentence, at):
            at = chained.end() - 1
            if _tail(sentence, at, reading.task) is None:
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
_EITHER = f"(?:{SIZES})"
_ORDER = (
    rf"[,:]? ?(?:and )?(?:in order(?: of (?:size|value|length|mass|weight|height|temperature|price|cost|age|distance))?|"
    rf"{_EITHER}(?: (?:one|number|value|fraction|time|length|amount|temperature))? (?:first|last)|"
    rf"from (?:the )?{_EITHER} to (?:the )?{_EITHER}|(?:from )?{_EITHER} to (?:the )?{_EITHER}|"
    rf"(?:(?:starting|beginning|start|begin) (?:with|from)|(?:ending|finishing|end|finish) with) the {_EITHER}"
    r"(?: (?:one|number|value|fraction|time|length|amount|temperature))?|of size|"
    r"(?:in )?(?:ascending|descending|increasing|decreasing) order)"
)


_CHANGES = (
    r"(?:.*\W)?(?:more|less|fewer|than|left|remain\w*|rest|other|others|not|no|never|except|without|"
    r"twice|double\w*|halve[sd]?|treble\w*|triple\w*|(?<!these )(?<!the )(?<!their )times|plus|minus|add\w*|subtract\w*|"
    r"increase\w*|decrease\w*|rise\w*|rose|fall\w*|fell|reduce\w*|discount\w*|off|extra|change\w*|"
    r"multipl\w*|divid\w*|square[sd]?|cube[sd]?|root|reciprocal|opposite|negative|positive|"
    r"before|after|difference|total|sum|product|each|every|per|both|all|half|halves|quarter\w*|"
    r"third\w*|percent\w*|per cent|average|mean|nearest|round\w*|estimat\w*|approximat\w*|about|"
    r"digits?|revers\w*|rearrang\w*|swap\w*|some|first|second|last|next|previous|ignor\w*|over|under|least|most|prime|inverse|every|"
    r"greatest|largest|smallest|equal\w*|same|plus|instead|but|unless|larger|smaller|bigger|greater|another|again|also|only|wrong|mistake\w*)(?:\W.*)?"
)


def _unread_in_story(sentence: str, shown: frozenset[int]) -> str:
    """Return the word of a story that may change what a later command points at, or ``""``."""
    if found := strange_signs(sentence) or counting_words(sentence, shown):
        return found
    if phrase(_CHANGES).fullmatch(sentence):
        return sentence
    return ""


_EACH = (
    r"(?:how much|how many(?P<wild> \w+)?|what) (?:does|do|will|is|are) (?:each|they each|each of them)"
    r"(?: (?:person|one|club|child|pupil|class|part|share|of them))?(?: (?:get|gets|receive|pay|worth))?"
)
_SIZED_SHARE = (
    r"(?:(?:how much|how many|what|how big|how large) (?:is|are)|<FIND>) the <pick> "
    r"(?:share|part|amount)"
)


_ONE_SOLUTION = (
    r"(?:give|state|write down|find|write) (?:only )?(?:the )?(?:only )?<pick> "
    r"(?:solution|root|answer|value|one)(?: only)?"
)


def _of_several(sentence: str, task: str) -> str:
    """Return which share or solution a sentence after the command asks for, or ``""``."""
    if task == "share" and (each := phrase(_EACH).fullmatch(sentence)):
        return "" if _unread_in_story(each["wild"] or "", frozenset()) else "each"
    wording = {"share": _SIZED_SHARE, "solve": _ONE_SOLUTION, "find-letter": _ONE_SOLUTION}.get(
        task
    )
    match = phrase(wording).fullmatch(sentence) if wording else None
    return match["pick"].lower() if match else ""
