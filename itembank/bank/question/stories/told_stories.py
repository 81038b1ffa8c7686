"""Stories without a model, whose task says what they ask: equal shares of plants, buses that meet.

Each task may be asked in few ways only; anything else needs a model.
"""

from __future__ import annotations

import re

from itembank.bank.question.given.maths import Maths
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.items.item import Ask, Common, Find, Pick
from itembank.notation import tree as t
from itembank.wording.kinds.kind_asked import kind_fault
from itembank.wording.sentences.prompt import SLOT, sentences, slotted
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.story.told_by_task import (
    asks_every_share,
    common_asked,
    keeps_kinds_apart,
    part_of_share,
    share_of_size,
    shares_in_ratio,
)


def told_by_task(maths: Maths, ask: Ask) -> Ask:
    """Return the question of a story that its task stands for, as its last sentence asks it.

    Raises:
        NeedsPerson: the sentence asks for something else, or for more.
    """
    asking = questions(maths.runs)
    shares = isinstance(ask, Find) and isinstance(ask.target, t.Listing)
    if not asking and shares:
        _whole_is_shared(maths)
        return ask  # Two clubs share £40 in the ratio 3 : 5: to say how is all there is to ask
    if len(asking) != 1:
        raise NeedsPerson("A story with a task and no model asks one thing, in one sentence.")
    words = re.sub(SLOT, "…", asking[0])
    money = any(
        isinstance(part, t.Money)
        for run in maths.runs
        if not isinstance(run, str)
        for part in t.walk(run)
    )
    if fault := kind_fault(maths.key, words, money):
        raise NeedsPerson(fault)
    if isinstance(ask, Common):
        return _common(maths, ask, words)
    if shares:
        assert isinstance(ask, Find)
        return _shared(maths, ask, words)
    return ask


def _common(maths: Maths, ask: Common, words: str) -> Ask:
    if any(
        isinstance(part, t.Quantity | t.Money) for number in ask.numbers for part in t.walk(number)
    ):
        raise NeedsPerson(
            "Common factors and multiples are of whole numbers: write the units after the braces, "
            "as {36} cm."
        )
    if keeps_kinds_apart(slotted(maths.runs).text):
        raise NeedsPerson("The words set a condition that the task does not know: add a model.")
    things = common_asked(words, ask.detail)
    if things is None or _is_printed_thing(maths, things, ask.detail):
        raise NeedsPerson(
            f"The task is {ask.detail}, but ‘{words}’ does not ask for that alone: add a model, or "
            "ask as the guide to writing questions does."
        )
    return ask


def _is_printed_thing(maths: Maths, things: str, detail: str) -> bool:
    """Whether the question counts what the prompt counts: bean plants, where {48} are printed.

    For a common multiple it is the other way about: it counts the very minutes that are printed.
    """
    text = slotted(maths.runs).text
    counted = {
        word.lower().removesuffix("s")
        for match in re.finditer(rf"{SLOT} ((?:[a-z-]+ ){{0,2}}[a-z-]+)", text)
        for word in match[1].split()
    }
    asked = {word.lower().removesuffix("s") for word in things.split()}
    return bool(asked & counted) is (detail == "hcf") if things else False


def _shared(maths: Maths, ask: Find, words: str) -> Ask:
    _whole_is_shared(maths)
    if sized := share_of_size(words):
        return Pick(ask, sized)
    if not asks_every_share(words):
        raise NeedsPerson(f"‘{words}’ does not ask for every share: add a model of the words.")
    return ask


def _whole_is_shared(maths: Maths) -> None:
    """Raise NeedsPerson where the amount of a share may be one part of it, or a rate."""
    asking = questions(maths.runs)
    stated = [s for s in sentences(slotted(maths.runs).text) if s not in asking]
    if not stated or not shares_in_ratio(stated[-1]):
        raise NeedsPerson(
            "That the amount is shared in the ratio has to be said last: … share {£60} in the ratio "
            "{2 : 3}; or add a model of the words."
        )
    if any(not re.search(SLOT, sentence) for sentence in stated):
        raise NeedsPerson("A sentence of the story may change what is shared: add a model.")
    for sentence in stated:
        if part := part_of_share(sentence):
            raise NeedsPerson(
                f"‘{part}’ may mean that not all is shared: add a model of the words."
            )
