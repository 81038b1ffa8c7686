"""Stories without a model, whose task says what they ask: equal shares of plants, buses that meet.

Each task may be asked in few ways only; anything else needs a model.
"""

from __future__ import annotations

import re

from itembank.bank.question.maths import Maths
from itembank.bank.question.task_asks import NeedsPerson
from itembank.items.item import Ask, Common, Find, Pick, Which
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.kinds.kind_asked import kind_fault
from itembank.wording.sentences.prompt import SLOT, sentences, slotted
from itembank.wording.sentences.question_sentences import questions

_MOST = r"(?:greatest|largest|highest|biggest|longest|maximum|most)"
_LEAST = r"(?:smallest|least|lowest|fewest|shortest|earliest|soonest|minimum|next|first)"
_HCF = (
    rf"\b(?:the )?{_MOST} (?:possible )?number of (?P<things>[\w' -]+)",
    rf"\b(?:{_MOST} (?:possible )?(?:length|side|size)|length\b.*\bside of the {_MOST}|length of each)\b",
    rf"\bhow (?:long|wide|big) is (?:each|the side of the {_MOST})\b",
)
_LCM = (
    r"\bhow many (?P<things>[a-z]+)\b.*\b(?:next|again|first|together|same time)\b",
    rf"\b(?:the )?{_LEAST} (?:possible )?(?:length|height|distance|amount|number of (?P<things>[\w' -]+))",
    rf"\b(?:the )?{_LEAST} (?:possible )?number that (?:is a multiple of both|both divide into|can be divided by both)",
    r"\bhow long\b.*\b(?:next|again|together)\b",
)
_MORE = late(
    r"\b(?:area|perimeter|altogether|total|in all|in each|in every|in an?|in one|per|packs?|packets?|boxes|"
    r"bags of|pieces|o'clock|what time|(?:second|third|fourth) time|how many of|squares|and (?:how|what)|not|except|left over)\b",
    re.I,
)
_PART_OF_SHARE = late(
    r"\b(?:first|second|third|one|each|more|less|fewer|other|rest|half|per|an? (?:day|week|month|hour))\b",
    re.I,
)
_SIZED: dict[str, Which] = {
    **dict.fromkeys(("larger", "largest", "greater", "bigger", "biggest"), "largest"),
    **dict.fromkeys(("smaller", "smallest"), "smallest"),
}


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
    if re.search(r"\b(?:only|separate\w*|same kind|one kind)\b", slotted(maths.runs).text, re.I):
        raise NeedsPerson("The words set a condition that the task does not know: add a model.")
    patterns = _HCF if ask.detail == "hcf" else _LCM
    match = next((found for p in patterns if (found := re.search(p, words, re.I))), None)
    things = (match.groupdict().get("things") or "") if match else ""
    if not match or _MORE.search(words) or _is_printed_thing(maths, things, ask.detail):
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
    one = rf"(?:how much|what|find|work out|calculate)(?: is)? the ({'|'.join(_SIZED)}) (?:share|part|amount)"
    if sized := re.fullmatch(one, words, re.I):
        return Pick(ask, _SIZED[sized[1].lower()])
    total = re.search(r"\b(?:altogether|in total|in all|total|more|less|difference)\b", words, re.I)
    if total or not re.search(r"\beach\b|\bshares\b|\bevery(?:one|body)?\b", words, re.I):
        raise NeedsPerson(f"‘{words}’ does not ask for every share: add a model of the words.")
    return ask


def _whole_is_shared(maths: Maths) -> None:
    """Raise NeedsPerson where the amount of a share may be one part of it, or a rate."""
    asking = questions(maths.runs)
    told = [s for s in sentences(slotted(maths.runs).text) if s not in asking]
    last = told[-1] if told else ""
    if not re.search(
        rf"\b(?:share|split|divide)[sd]?\b.*\bin(?:to)? the ratio {SLOT}$", last, re.I
    ):
        raise NeedsPerson(
            "That the amount is shared in the ratio has to be said last: … share {£60} in the ratio "
            "{2 : 3}; or add a model of the words."
        )
    if any(not re.search(SLOT, sentence) for sentence in told):
        raise NeedsPerson("A sentence of the story may change what is shared: add a model.")
    for sentence in told:
        if (found := _PART_OF_SHARE.search(sentence)) and not re.search(r"\?$", sentence):
            raise NeedsPerson(
                f"‘{found[0]}’ may mean that not all is shared: add a model of the words."
            )
