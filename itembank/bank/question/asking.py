"""What a hand-written item asks, worked out from its words, its task and its mathematics.

The prompt is read whole (:mod:`itembank.wording`). What it asks of the mathematics it prints, or
of the `model` behind its words, becomes an :data:`~itembank.items.item.Ask`, from which a proof
starts. Where that cannot be done, a person has to check the key: :class:`NeedsPerson` says why.
"""

from __future__ import annotations

import re

from itembank.bank.model.fields import BankItem
from itembank.bank.question.asked_directly import asked_directly
from itembank.bank.question.given.answer_rounded import rounded_reading
from itembank.bank.question.given.maths import Maths, words_of
from itembank.bank.question.given.question import Question
from itembank.bank.question.given.said_aloud import in_small_letters, tells_no_names
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.bank.question.judged_answers import judged_answer, judged_statement
from itembank.bank.question.read_off import hold_reading
from itembank.bank.question.stories.asked_of_story import asked_by_task, asked_of_model
from itembank.bank.question.stories.choosing import choose_ask
from itembank.bank.question.stories.model_held import readable
from itembank.items.item import Ask
from itembank.notation import tree as t
from itembank.wording.sentences.numbers_said import in_number_words
from itembank.wording.tasks.answers.phrases_after import unread_of_answer
from itembank.wording.tasks.other_kinds.answer_said import answer_said
from itembank.wording.tasks.other_kinds.kinds_said import KindUnread, kind_said
from itembank.wording.tasks.other_kinds.members_said import members_said, tells_sets, unread_of_sets
from itembank.wording.tasks.other_kinds.statement_said import statement_said
from itembank.wording.tasks.reader import read_prompt

__all__ = ["NeedsPerson", "Question", "ask_of", "question_of"]


def ask_of(item: BankItem, maths: Maths) -> Ask:
    """Return the question behind the words; raises as :func:`question_of`.

    >>> from itembank.bank.question.given.maths import read_maths
    >>> item = BankItem(id="a-1", tier="core", prompt="Solve {2x = 6}.", key="x = 3")
    >>> type(ask_of(item, read_maths(item))).__name__
    'Solve'
    """
    return question_of(item, maths).ask


def question_of(item: BankItem, maths: Maths) -> Question:
    """Return the question behind the words, with what the words add to it.

    Raises:
        NeedsPerson: there is no mathematics to prove from, it does not fit the task, or words
            that may change the question are not understood; the message names them.
    """
    try:
        question = _question(item, maths)
        if item.figure is None:
            _hold_capitals(item, maths, question)
        return question
    except NeedsPerson:
        raise
    # None of its other errors, such as a division by nought, is to end a command on a whole bank.
    except (t.NotationError, ArithmeticError):
        raise NeedsPerson(
            "What it asks could not be worked out from its words and its mathematics."
        ) from None


def _hold_capitals(item: BankItem, maths: Maths, question: Question) -> None:
    """Hold a question to what its words ask in small letters."""
    quiet = in_small_letters(maths)
    if quiet is maths:
        return
    if tells_no_names(maths) and (maths.model or question.task == "share"):
        raise NeedsPerson(
            "All its words are in capitals, so that it cannot be told which are names: write them "
            "in small letters."
        )
    if _question(item, quiet) != question:
        raise NeedsPerson(
            "A word in capitals is taken for a name, and in small letters it changes what is "
            "asked: write it in small letters."
        )


def _of_figure(item: BankItem, maths: Maths) -> Question:
    """Return the question that the words ask of the item's figure."""
    from itembank.figures.figure import FigureError
    from itembank.figures.figure_data import from_data
    from itembank.items.asks.of_figure import of_figure

    try:
        asked = of_figure(from_data(item.figure), maths.runs)
        hold_reading(asked, maths)
        if unread := unread_of_answer(maths.runs):
            raise NeedsPerson(f"What ‘{readable(unread)}’ says of the answer is not understood.")
        words = words_of(maths)
        return Question(
            rounded_reading(asked, maths, words), (*item.constants, *in_number_words(words))
        )
    except FigureError as error:
        said = str(error)
        raise NeedsPerson(f"{said[:1].upper()}{said[1:]}.") from None


def _question(item: BankItem, maths: Maths) -> Question:
    if (judged := answer_said(maths.runs)) is not None:
        return judged_answer(item, judged)
    if (stated := statement_said(maths.runs)) is not None:
        return judged_statement(item, stated)
    if item.figure is not None:
        return _of_figure(item, maths)
    if item.task == "choose" or (item.task is None and item.options):
        return Question(choose_ask(item, maths), item.constants, task="choose", modelled=True)
    try:
        if (said := kind_said(maths.runs)) is not None:
            return Question(said, item.constants)
    except KindUnread as error:
        told = str(error)
        raise NeedsPerson(f"{told[:1].upper()}{told[1:]}.") from None
    if tells_sets(maths.runs) and not maths.model:
        return _of_sets(item, maths)
    reading = read_prompt(maths.runs)
    printed = any(not isinstance(run, str) for run in maths.runs)
    understood = (reading.giving or reading.saying) and not reading.unread
    if not (maths.model or printed or understood):
        raise NeedsPerson(
            "The prompt prints no mathematics in { } and there is no model of its words."
        )
    if maths.model or maths.find is not None:
        # Words that are understood whole say more surely what is asked than a model does.
        if reading.task and not reading.unread and maths.find is None:
            try:
                return asked_directly(item, maths, reading)
            except NeedsPerson:
                pass
        return asked_of_model(item, maths, reading)
    if reading.unread or not reading.task:
        if item.task in STORIES:
            return asked_by_task(item, maths)
        raise NeedsPerson(_unread(reading.unread))
    return asked_directly(item, maths, reading)


def _of_sets(item: BankItem, maths: Maths) -> Question:
    """Return the question about sets that the words tell by rules or by their members."""
    said = members_said(maths.runs)
    if said is None:
        if unread := unread_of_sets(maths.runs):
            raise NeedsPerson(
                f"‘{readable(unread)}’ is not understood as about sets: word it as in the guide to "
                "writing questions."
            )
        raise NeedsPerson(
            "A question about sets tells the universal set first, then each set once under a "
            "letter of its own, and asks one thing last."
        )
    if item.task:
        raise NeedsPerson("The words say what is asked of the sets: take out ‘task’.")
    return Question(said, item.constants, any_order=said.detail == "list")


STORIES = ("hcf", "lcm", "share")
"""Tasks that may stand for the words of a story that has no model."""


def _unread(words: str) -> str:
    if re.search(r"\d|[+×÷=<>≤≥√%£€$°^*/−]", words):
        return (
            f"‘{readable(words)}’ stands outside {{ }}: put all of a number or a sum in one pair "
            "of braces, or add a model of the words."
        )
    return (
        f"‘{readable(words)}’ is not understood, and may change what is asked: word it as in the "
        "guide to writing questions, or add a model of the words."
    )
