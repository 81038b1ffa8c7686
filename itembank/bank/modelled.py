"""Holds a word problem's model to its words before anything is proved from it."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.bank.maths import Maths
from itembank.bank.model import BankItem
from itembank.bank.tasks import NeedsPerson
from itembank.checking.elimination import answer
from itembank.items.item import Ask, Common, Find, Pick, Round
from itembank.notation.tree import (
    Int,
    Listing,
    Money,
    Node,
    NotationError,
    Quantity,
    Relation,
    walk,
)
from itembank.notation.value import exact
from itembank.wording.asked import asked_fault
from itembank.wording.modelled import Modelled
from itembank.wording.prompt import SLOT
from itembank.wording.questions import questions
from itembank.wording.story import Story, story_fault


def readable(words: str) -> str:
    """Return words with an ellipsis where mathematics stands."""
    return re.sub(SLOT, "…", words)


def checked_story(item: BankItem, maths: Maths, ask: Ask) -> Ask:
    """Return the question of a word problem once its model is held to the words.

    Raises:
        NeedsPerson: a number is not used, units do not agree, or the question asks for more.
    """
    if maths.model:
        used: tuple[Node, ...] = maths.model if maths.find is None else (*maths.model, maths.find)
    else:
        used = tuple(run for run in maths.runs if not isinstance(run, str))
    story = Story(maths.runs, used, item.constants, item.not_needed)
    if fault := story_fault(story):
        raise NeedsPerson(fault)
    if not maths.model:
        return _told(maths, ask)
    relations = tuple(node for node in maths.model if isinstance(node, Relation))

    def worth(node: Node) -> Fraction | None:
        try:
            return answer(node, relations)[0]
        except (NotationError, IndexError):
            return None

    model = Modelled(maths.model, maths.find or _found(ask), maths.key, worth)
    if fault := asked_fault(maths.runs, model):
        raise NeedsPerson(fault)
    return ask


def _found(ask: Ask) -> Node | None:
    return ask.target if isinstance(ask, Find) and ask.relations else None


def checked_options(item: BankItem, maths: Maths) -> None:
    """Raise NeedsPerson where the options of a choice leave out a number that is printed."""
    used = tuple(node for _, node in maths.options)
    if fault := story_fault(Story(maths.runs, used, item.constants, item.not_needed)):
        raise NeedsPerson(fault)


_FACTOR = re.compile(r"\b(?:greatest|largest|most|highest|biggest|longest|maximum)\b", re.I)
_MULTIPLE = re.compile(
    r"\b(?:next|first|again|smallest|least|lowest|fewest|soonest|earliest|shortest|minimum)\b", re.I
)
_SIZED = {"larger": "largest", "largest": "largest", "greater": "largest", "bigger": "largest",
          "biggest": "largest", "smaller": "smallest", "smallest": "smallest"}  # fmt: skip


def _told(maths: Maths, ask: Ask) -> Ask:
    """Return the question of a story that its task stands for, as its last sentence asks it."""
    asking = questions(maths.runs)
    words = readable(asking[-1]) if asking else ""
    if not asking and isinstance(ask, Find) and isinstance(ask.target, Listing):
        return ask  # Two clubs share £40 in the ratio 3 : 5: to say how is all there is to ask
    if len(asking) != 1:
        raise NeedsPerson("A story with a task and no model asks one thing, in one sentence.")
    if isinstance(ask, Common):
        wanted = _FACTOR if ask.detail == "hcf" else _MULTIPLE
        if not wanted.search(words):
            kind = "greatest" if ask.detail == "hcf" else "least or first"
            raise NeedsPerson(
                f"The task is {ask.detail}, but ‘{words}’ does not ask for the {kind}."
            )
    if isinstance(ask, Find) and isinstance(ask.target, Listing):
        sized = re.search(rf"\bthe ({'|'.join(_SIZED)}) (?:share|part|amount)\b", words, re.I)
        if sized:
            return Pick(ask, _SIZED[sized[1].lower()])  # type: ignore[arg-type]
        if not re.search(r"\beach\b|\bshares?\b|\bevery(?:one|body)?\b|\bboth\b", words, re.I):
            raise NeedsPerson(f"‘{words}’ does not ask for every share: add a model of the words.")
    return ask


_UP = re.compile(
    r"\b(?:needed|needs?|required|requires?|must|at least|minimum|fewest|least)\b", re.I
)
_DOWN = re.compile(
    r"\b(?:full|complete|whole|can|could|maximum|at most|most|afford|fits?|filled|made|cut)\b", re.I
)
_HOW_MANY = re.compile(r"\bhow many (?:\w+ )?(\w+)", re.I)


def whole_things(ask: Ask, maths: Maths, words: str) -> Ask:
    """Return a question *how many* of things that come whole, rounded as its words mean.

    Raises:
        NeedsPerson: the answer is not whole, and the words do not say which way it goes.
    """
    if not isinstance(ask, Find) or isinstance(ask.target, Listing):
        return ask
    asking = questions(maths.runs)
    if not asking or not (named := _HOW_MANY.search(asking[-1])):
        return ask
    if _is_measure(named) or any(isinstance(part, Quantity | Money) for part in walk(maths.key)):
        return ask
    try:
        worth = answer(ask.target, ask.relations)[0] if ask.relations else exact(ask.target)
    except (NotationError, IndexError):
        return ask
    if worth.denominator == 1:
        return ask
    up, down = _UP.search(asking[-1]), _DOWN.search(asking[-1])
    if bool(up) == bool(down) or ask.relations or worth < 0 or not isinstance(maths.key, Int):
        raise NeedsPerson(
            f"The model comes to {worth}, which is not a whole number of things: "
            "say that they are needed, or how many full ones there can be."
        )
    return Round(ask.target, "nearest", 1, "up" if up else "down")


def _is_measure(named: re.Match[str]) -> bool:
    from itembank.wording.phrases import unit_names

    names = unit_names()
    words = re.findall(r"\w+", named[0])
    return any(word.casefold() in names for word in words)
