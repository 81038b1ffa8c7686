"""Reads a prompt whole: its task, the mathematics it is about, and what it says of the answer.

A prompt is a row of sentences. Each is a command in one of the known wordings (:mod:`.heads`,
:mod:`.sayings`) with phrases about the answer after it (:mod:`.answers.answer_tails`); or it gives
something (:data:`~.leads.GIVENS`); or it is about the answer alone; or an aside that changes
nothing; or it tells a story. A story may stand before a command that points back at its one
piece of mathematics, as long as no word in it could change what is asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.prompt import SLOT, index_of, sentences, slotted
from itembank.wording.tasks.answers.phrases_after import about_the_answer, is_aside
from itembank.wording.tasks.command_said import read_command
from itembank.wording.tasks.leads import GIVENS, LEADS
from itembank.wording.tasks.loose_words import ONE_SLOT, slots_in, unread_in_story
from itembank.wording.tasks.reading_found import Reading
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.story_led import other_measure, strange_in_story
from itembank.wording.tasks.told_then_asked import as_one

_COLON = late(rf": ?(?={SLOT})")


_ROW = late(rf"{SLOT}(?:(?:,? and |, ?){SLOT})*")


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
    if reading.letter and ONE_SLOT.match(reading.letter):
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
    found = {len(slots_in(row[0])) for row in phrase("<Ms>").finditer(said.text)}
    found |= {len(node.parts) for node in said.nodes if isinstance(node, t.Listing | t.Ratio)}
    return frozenset(found - {1})


@lru_cache(maxsize=4096)
def _read(text: str, shown: frozenset[int]) -> Reading:
    text = as_one(_COLON.sub(" ", text))  # Work out: {3 + 4}
    command: Reading | None = None
    loose: list[int] = []  # mathematics that is given before a command points back at it
    told, story, strange = 0, "", ""
    for sentence in sentences(text):
        rest = (
            phrase(LEADS).sub("", sentence, count=1) if phrase(LEADS).match(sentence) else sentence
        )
        if is_aside(rest) or about_the_answer(rest):
            continue
        if (given := _given(rest)) is not None:
            loose += given
            continue
        if command is not None and (asked := _of_several(rest, command.task)):
            command = replace(command, pick=asked if asked != "each" else "")
            continue
        found = read_command(rest, shown)
        if found is not None and not found.unread:
            if command is not None:
                return replace(command, unread=sentence)
            if other_measure(story, rest):
                return replace(found, unread=sentence)
            command = found
            continue
        # A story, or a command that goes on in a way that is not known.
        if found is not None and ONE_SLOT.match(rest):
            found = None  # {3/8} of a cake is eaten
        unread = "" if found is not None else unread_in_story(rest, shown)
        if found is not None:
            return found
        if unread:
            return Reading(unread=unread)
        if command is not None:
            return replace(command, unread=sentence)
        if told or not slots_in(rest):
            return Reading(unread=sentence)  # only one sentence may lead up to a command
        strange = strange or strange_in_story(rest)
        told += 1
        story = rest
        loose += slots_in(rest)
    if command is None:
        if loose and ONE_SLOT.fullmatch(text.strip(" .?!;")):
            return Reading("work-out", tuple(loose))
        return Reading(unread=sentences(text)[-1] if sentences(text) else text)
    if strange:
        return replace(command, unread=strange)
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


def _given(sentence: str) -> list[int] | None:
    if not ONE_SLOT.search(sentence):
        return None
    for wording in GIVENS:
        if phrase(wording).fullmatch(sentence):
            return slots_in(sentence)
    return None


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
        return "" if unread_in_story(each["wild"] or "", frozenset()) else "each"
    wording = {"share": _SIZED_SHARE, "solve": _ONE_SOLUTION, "find-letter": _ONE_SOLUTION}.get(
        task
    )
    match = phrase(wording).fullmatch(sentence) if wording else None
    return match["pick"].lower() if match else ""
