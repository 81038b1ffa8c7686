"""Word problems: a model, or a task, says what the words ask."""

from __future__ import annotations

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.agreeing import agree
from itembank.bank.question.given.answer_rounded import rounded
from itembank.bank.question.given.counted_units import counted_as_number
from itembank.bank.question.given.maths import Maths, words_of
from itembank.bank.question.given.plain_numbers import is_number
from itembank.bank.question.given.question import Question
from itembank.bank.question.given.task_given import Given, NeedsPerson, parted
from itembank.bank.question.stories.model_held import checked_story, whole_things
from itembank.bank.question.tasks.task_named import task_named
from itembank.items.item import Ask, Find
from itembank.notation import tree as t
from itembank.proof.claim.finding import text
from itembank.wording.sentences.sizes import order_said
from itembank.wording.tasks.answers.answer_phrases import (
    rounding,
    says_rough,
)
from itembank.wording.tasks.reading_found import Reading


def asked_of_model(item: BankItem, maths: Maths, reading: Reading) -> Question:
    """Return the question of a word problem, from its model, once the words are held to it.

    Raises:
        NeedsPerson: the model is not what the words tell.
    """
    words = words_of(maths)
    lines = list(maths.model)
    if reading.task in _STRONG and not reading.unread and item.task not in (None, reading.task):
        agree(item, reading.task)
    if not lines:
        raise NeedsPerson("‘find’ says what is asked for, but there is no model to find it from.")
    if maths.find is not None:
        ask: Ask = Find(maths.find, _find_relations(lines))
    else:
        given = Given(tuple(lines), (), "", words, modelled=True)
        ask = task_named(item.task or _task_of_model(lines, words))(item, given)
    ask = checked_story(item, maths, ask)
    if (
        isinstance(ask, Find)
        and not ask.relations
        and (counted := counted_as_number([ask.target], words, maths.key))
    ):
        return Question(Find(counted), (*item.constants, 1), "value", item.task or "", True)
    ask = whole_things(rounded(ask, maths, words), maths, words)
    return Question(ask, (*item.constants, 1), "", item.task or "", True)


_STRONG = (
    "hcf",
    "lcm",
    "nth-term",
    "make-subject",
    "prime-factors",
    "expand",
    "factorise",
    "order",
)


def _find_relations(lines: list[t.Node]) -> tuple[t.Relation, ...]:
    relations, others = parted(lines)
    if others:
        raise NeedsPerson(
            f"With ‘find’ every line of the model is an equation; {text(others[0])} is not one."
        )
    return tuple(relations)


def _task_of_model(lines: list[t.Node], words: str) -> str:
    node = lines[0]
    relations, others = parted(lines)
    if len(lines) > 1 and order_said(words, lines) and not relations:
        return "order"
    if len(lines) == 1 and is_number(node) and rounding(words) and not says_rough(words):
        return "round"
    if not others:
        letters = {name for relation in relations for name in t.symbols(relation)}
        return "solve" if letters and "□" not in letters else "work-out"
    if len(lines) == 1 and (isinstance(node, t.Ratio) or t.symbols(node)):
        return "simplify"
    return "work-out"


def asked_by_task(item: BankItem, maths: Maths) -> Question:
    """Return the question of a story whose task says what its words ask."""
    words = words_of(maths)
    nodes = tuple(run for run in maths.runs if not isinstance(run, str))
    assert item.task is not None
    ask = task_named(item.task)(item, Given(nodes, (), "", words))
    ask = checked_story(item, maths, ask)
    return Question(rounded(ask, maths, words), item.constants, "", item.task, True)
