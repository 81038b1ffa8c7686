"""Checks that what is proved is what is printed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from itembank.figures.figure import FigureError, printed_on
from itembank.items.asks import (
    Answered,
    Ask,
    Choose,
    Draw,
    ErrorInterval,
    FaultyWorking,
    Handlers,
    Members,
    OfFigure,
    Order,
    RoundReading,
    Summary,
    WhoIsRight,
    asked,
)
from itembank.items.asks.draw_on import to_draw
from itembank.items.asks.of_figure import asked_in
from itembank.items.item import Item, Run
from itembank.notation import tree as t
from itembank.proof.claim.finding import text
from itembank.proof.claim.key_fits import mismatched
from itembank.wording.sentences.sizes import order_said
from itembank.wording.tasks.answers.answer_phrases import (
    ORDER_WORDS,
    rounding,
    rounding_way,
    says_bounds,
    says_rounded,
)
from itembank.wording.tasks.answers.phrases_after import unread_of_answer
from itembank.wording.tasks.other_kinds.answer_said import answer_said, working_said
from itembank.wording.tasks.other_kinds.kinds_said import KindUnread, kind_said
from itembank.wording.tasks.other_kinds.members_said import members_said
from itembank.wording.tasks.other_kinds.statement_said import statement_said
from itembank.wording.tasks.summary_asked import summary_asked

PRINTED: Handlers[Callable[[Any, Item], str]] = Handlers(
    "printed", "print", otherwise=lambda ask, item: ""
)
"""What else a prompt has to print for each kind of question: returns what is lacking, or ``""``."""


def unprinted(item: Item) -> str:
    """Return what the proof would use that the prompt does not print, or ``""``.

    A tree of the question is printed if it stands in the prompt, whole. If it does not, the
    question is a model of a word problem, and then each of its numbers has to be printed or
    be one of the constants the item declares.

    >>> from itembank.items.topics.registry import find_item
    >>> unprinted(find_item("ratio.share/core/3"))
    ''
    """
    if item.key_figure is not None and not isinstance(item.ask, Draw):
        return "no words ask for the figure of the answer"
    # A letter that stands for a reading of a figure is held to its words instead; and most
    # questions stand in the prompt whole, so that no part of them has to be looked for.
    used = [node for node in asked(item.ask) if not isinstance(node, t.Sym)]
    if used := [node for node in used if node not in item.prompt]:
        shown = _shown(item)
        for node in used:
            missing = _missing(node, shown, item.constants)
            if missing is not None:
                return f"the proof uses {text(missing)}, which the prompt does not print"
    return PRINTED.of(item.ask)(item.ask, item)


def order_unprinted(ask: Order, item: Item) -> str:
    """Hold the direction to the words of the prompt."""
    said = "".join(run for run in item.prompt if isinstance(run, str))
    if order_said(said, ask.things) != ask.detail:
        return f"the prompt does not say {ORDER_WORDS[ask.detail]!r}"
    return ""


def summary_unprinted(ask: Summary, item: Item) -> str:
    """Hold the question to what the words of the prompt ask, and to the list that they name."""
    said = summary_asked(item.prompt)
    if said is None:
        return "the words are not understood as a question about one list"
    if said.detail != ask.detail:
        return f"the prompt asks for the {said.detail}, the proof finds the {ask.detail}"
    if said.numbers != ask.numbers:
        return "the proof starts from another list than the one that is printed"
    return ""


def members_unprinted(ask: Members, item: Item) -> str:
    """Hold the sets and what is asked of them to the words of the prompt, read whole."""
    said = members_said(item.prompt)
    if said is None:
        return "the words are not understood as a question about the members of a set"
    return "" if said == ask else "the words ask for something else than the proof finds"


def interval_unprinted(ask: ErrorInterval, item: Item) -> str:
    """Hold how the number was rounded to the words of the prompt."""
    said = "".join(run for run in item.prompt if isinstance(run, str))
    if not says_bounds(said):
        return "the prompt does not ask for an error interval"
    if rounding(said) != (ask.detail, ask.amount) or rounding_way(said) != ask.way:
        return "the prompt does not say how the number was rounded"
    return ""


def _of_figure(ask: OfFigure, item: Item) -> str:
    """Hold the question to the figure that is printed, and to what the words ask of it."""
    if ask.figure != item.figure:
        return "the proof starts from another figure than the one that is printed"
    if unread := unread_of_answer(item.prompt):
        return f"what ‘{unread}’ says of the answer is not understood"
    try:
        said = asked_in(ask.figure, item.prompt)
    except FigureError as error:
        return str(error)
    if (said.target, said.readings) != (ask.target, ask.readings):
        return "the words ask for something else than the proof finds"
    return ""


def reading_unprinted(ask: OfFigure, item: Item) -> str:
    """Hold what is read to the figure and the words, which ask for no rounding."""
    if says_rounded(_words(item)):
        return "the words ask for a rounded answer, and the proof finds the exact one"
    return _of_figure(ask, item)


def rounded_reading_unprinted(ask: RoundReading, item: Item) -> str:
    """Hold what is read, and how it is rounded, to the figure and the words."""
    words = _words(item)
    if rounding(words) != (ask.detail, ask.amount) or rounding_way(words) != ask.way:
        return "the prompt does not say how the answer is to be rounded"
    return _of_figure(ask.of, item)


def _words(item: Item) -> str:
    return "".join(run for run in item.prompt if isinstance(run, str))


def drawing_unprinted(ask: Draw, item: Item) -> str:
    """Hold what is to be drawn to the figures that are printed, and to what the words ask."""
    if (ask.figure, ask.shown) != (item.figure, item.key_figure):
        return "the proof starts from other figures than those that are printed"
    try:
        said = to_draw(ask.figure, item.prompt)
    except FigureError as error:
        return str(error)
    return "" if said == ask.wanted else "the words ask for something else than the proof finds"


def frame_unprinted(ask: Ask, item: Item) -> str:
    """Hold a question about a statement, cards or lines to what its words ask, read whole."""
    try:
        said = kind_said(item.prompt)
    except KindUnread as error:
        return str(error)
    return "" if said == ask else "the words ask for something else than the proof finds"


def answers_unprinted(ask: Answered | WhoIsRight, item: Item) -> str:
    """Hold answers to those that are printed, and the question to the words before them."""
    said, stated = answer_said(item.prompt), statement_said(item.prompt)
    questions: tuple[tuple[Run, ...], ...]
    if said is not None:
        answers, questions = said.answers, (said.question,)
    elif stated is not None:
        answers, questions = (("", stated.answer),), stated.questions
    else:
        return "the words do not ask whether an answer is right, or whose"
    if answers != (ask.answers if isinstance(ask, WhoIsRight) else (("", ask.answer),)):
        return "the proof judges other answers than those that are printed"
    given = tuple(answer for _, answer in answers)
    first = ""
    for words in questions:
        fault = _not_asked(ask, item, words, given)
        if not fault:
            return ""
        first = first or fault
    return first


def working_unprinted(ask: FaultyWorking, item: Item) -> str:
    """Hold the lines to those that are printed, and the question to the words before them."""
    said = working_said(item.prompt)
    if said is None:
        return "the words do not ask which line of a working is wrong"
    if said.lines != ask.lines:
        return "the proof looks at other lines than those that are printed"
    result = item.key.parts[1:] if isinstance(item.key, t.Listing) else ()
    return _not_asked(ask, item, said.question, result)


def _not_asked(
    ask: Answered | FaultyWorking | WhoIsRight,
    item: Item,
    words: tuple[Run, ...],
    answers: tuple[t.Node, ...],
) -> str:
    for answer in answers:
        inner = replace(item, prompt=words, ask=ask.of, key=answer, form=ask.form)
        if fault := unprinted(inner) or mismatched(inner):
            return fault
    return ""


def choices_unprinted(ask: Choose, item: Item) -> str:
    """Hold the names of the choices to those that are printed."""
    runs = [run for run in item.prompt if not isinstance(run, str)]
    shown = {part for run in runs for part in t.walk(run)}
    # {3} cans are named 3 cans.
    page = "".join(run if isinstance(run, str) else text(run) for run in item.prompt)
    for label, _ in ask.options:
        named = label in page or t.Label(label) in shown
        if not named and not any(text(node) == label for node in shown):
            return f"the choice {label!r} is not named in the prompt"
    return ""


def _shown(item: Item) -> set[t.Node]:
    """Return every piece of mathematics that is printed, down to its parts."""
    shown: set[t.Node] = set()
    for run in item.prompt:
        if not isinstance(run, str):
            _gather(run, shown)
    if item.figure is not None:
        for node in printed_on(item.figure):
            _gather(node, shown)
    return shown


def _gather(node: t.Node, into: set[t.Node]) -> None:
    into.add(node)
    for child in t.children(node):
        _gather(child, into)


def _missing(node: t.Node, shown: set[t.Node], constants: tuple[int, ...]) -> t.Node | None:
    if node in shown or isinstance(node, t.Sym):
        return None
    if isinstance(node, t.Int) and node.n in constants:
        return None
    if isinstance(node, t.Int | t.Dec | t.Mixed):
        return node
    # A fraction or ratio of numbers is one number on the page; parts of two others are not it.
    if isinstance(node, t.Frac | t.Ratio) and all(isinstance(c, t.Int) for c in t.children(node)):
        loose = [c for c in t.children(node) if _missing(c, shown, constants) is not None]
        return node if loose else None
    for child in t.children(node):
        missing = _missing(child, shown, constants)
        if missing is not None:
            return missing
    return None
