"""Holds a word problem's model to its words before anything is proved from it."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.maths import Maths
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.bank.question.stories.told_stories import told_by_task
from itembank.bank.question.stories.unit_of_key import with_unit_of_key
from itembank.items.item import Ask, Find, Round
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.exact.reckoning.elimination import answer
from itembank.wording.kinds.comes_to import comes_to
from itembank.wording.meaning.second_reading import meaning_fault, read_again
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.story.asked.question_fits import asked_fault
from itembank.wording.story.conditions import condition_fault
from itembank.wording.story.numbers.story import Story
from itembank.wording.story.numbers.story_numbers import story_fault
from itembank.wording.story.turned_models import turned_models
from itembank.wording.story.whole_things import how_many_whole


def readable(words: str) -> str:
    """Return words with an ellipsis where mathematics stands."""
    return re.sub(SLOT, "…", words)


def checked_story(item: BankItem, maths: Maths, ask: Ask) -> Ask:
    """Return the question of a word problem once its model is held to the words.

    Raises:
        NeedsPerson: a number is not used, units do not agree, or the question asks for more.
    """
    if maths.model:
        used: tuple[t.Node, ...] = maths.model if maths.find is None else (*maths.model, maths.find)
    else:
        used = tuple(run for run in maths.runs if not isinstance(run, str))
    story = Story(maths.runs, used, item.constants, item.not_needed)
    if fault := story_fault(story):
        raise NeedsPerson(fault)
    algebra = any(t.symbols(run) for run in maths.runs if not isinstance(run, str))
    if maths.model and (fault := condition_fault(maths.runs, item.constants, algebra)):
        raise NeedsPerson(fault)
    if not maths.model:
        return told_by_task(maths, ask)
    ask = with_unit_of_key(ask, maths, used)
    fault, found = _held(item, maths, maths.model, maths.find or _found(ask))
    if fault:
        raise NeedsPerson(fault)
    if not read_again(maths.runs, found) and (fault := _either_way(item, maths, ask, found)):
        raise NeedsPerson(fault)
    return ask


def _held(
    item: BankItem,
    maths: Maths,
    lines: tuple[t.Node, ...],
    find: t.Node | None,
    *,
    taken: bool = True,
) -> tuple[str, frozenset[Fraction]]:
    """Return how a model goes against its words, or ``""``, and the values it may come to.

    `taken` says to ask as well that a model which ends by taking away is asked for what is left;
    a story that is read a second time says so itself.
    """
    relations = tuple(node for node in lines if isinstance(node, t.Relation))

    def worth(node: t.Node) -> Fraction | None:
        try:
            return answer(node, relations)[0]
        except (t.NotationError, IndexError):
            return None

    model = Modelled(lines, find, maths.key, worth)
    worked_out = comes_to(maths.runs, model, item.constants)
    taken = taken and not read_again(maths.runs, worked_out.values)
    if fault := asked_fault(maths.runs, model, taken=taken):
        return fault, frozenset()
    fault = worked_out.fault or meaning_fault(maths.runs, model, item.not_needed, worked_out.values)
    return fault, worked_out.values


def _either_way(item: BankItem, maths: Maths, ask: Ask, found: frozenset[Fraction]) -> str:
    """Return which sign of a model no check holds to the words, or ``""``."""
    for lines, find, says in turned_models(maths.runs, maths.model, maths.find or _found(ask)):
        fault, others = _held(item, maths, lines, find, taken=False)
        if fault or not others or others & found:
            continue
        # Nobody's count comes to nothing by a slip; change may.
        least = min(others)
        if least < 0 or (least == 0 and not isinstance(maths.key, t.Money)):
            continue
        return (
            f"The story is not read a second time, and a model with {says} would fit its words as "
            "well: a person has to look which of the two they mean."
        )
    return ""


def _found(ask: Ask) -> t.Node | None:
    return ask.target if isinstance(ask, Find) and ask.relations else None


def checked_options(item: BankItem, maths: Maths) -> None:
    """Raise NeedsPerson where the options of a choice leave out a number that is printed."""
    used = tuple(node for _, node in maths.options)
    if fault := story_fault(Story(maths.runs, used, item.constants, item.not_needed)):
        raise NeedsPerson(fault)


def whole_things(ask: Ask, maths: Maths, words: str) -> Ask:
    """Return a question *how many* of things that come whole, rounded as its words mean.

    Raises:
        NeedsPerson: the answer is not whole, and the words do not say which way it goes.
    """
    if not isinstance(ask, Find) or isinstance(ask.target, t.Listing):
        return ask
    asking = questions(maths.runs)
    if not asking or (asked := how_many_whole(asking[-1])) is None:
        return ask
    if any(isinstance(part, t.Quantity | t.Money) for part in t.walk(maths.key)):
        return ask
    try:
        worth = answer(ask.target, ask.relations)[0] if ask.relations else exact(ask.target)
    except (t.NotationError, IndexError):
        return ask
    if worth.denominator == 1:
        return ask
    if asked.measure and not asked.whole:
        # How many weeks may be 13 1/3 weeks; a whole number beside it counts whole ones.
        if isinstance(maths.key, t.Int) and abs(maths.key.n - worth) < 1:
            raise NeedsPerson(_not_whole(worth))
        return ask
    if not asked.way or ask.relations or worth < 0 or not isinstance(maths.key, t.Int):
        raise NeedsPerson(_not_whole(worth))
    return Round(ask.target, "nearest", 1, asked.way)


def _not_whole(worth: Fraction) -> str:
    return (
        f"The model comes to {worth}, which is not a whole number of things: "
        "say that they are needed, or how many full ones there can be."
    )
