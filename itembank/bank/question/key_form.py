"""The form of the key of a hand-written item, where the item states none."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NamedTuple

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.maths import Maths, words_of
from itembank.bank.question.given.question import Question
from itembank.figures.figure import read
from itembank.items.asks import (
    Ask,
    Find,
    Give,
    Handlers,
    OfFigure,
)
from itembank.items.asks.of_figure import is_range, relations_in
from itembank.items.forms.number_forms import unsigned
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.exact.key_forms import form_asked
from itembank.wording.tasks.answers.answer_phrases import form_in_words, says_simplest
from itembank.wording.tasks.answers.written_how import asks_what_fraction
from itembank.wording.tasks.sums.list_sums import as_sum


def default_form(item: BankItem, question: Question, maths: Maths) -> str:
    """Return the form a key takes where the item states none."""
    if asked := form_asked(words_of(maths), question.ask, maths.key):
        return asked
    return ANSWERS.of(question.ask).form(question.ask, item, question, maths)


class Answers(NamedTuple):
    """What the answers to one kind of question are, as far as a bank has to know.

    `form` is the form a key takes where the item states none; `plain` says that words about the
    form of powers or fractions are not about such an answer; `whole` that it is a whole number;
    `solutions` that each number of the answer is held by itself to the form that words ask for.
    """

    form: Callable[[Any, BankItem, Question, Maths], str]
    plain: bool = False
    whole: bool = False
    solutions: bool = False


def _solved(ask: Ask, item: BankItem, question: Question, maths: Maths) -> str:
    # A bare number is a solution too, where there is one letter.
    return "roots" if isinstance(maths.key, t.Relation | t.Either | t.Listing) else "value"


def _picked(ask: Ask, item: BankItem, question: Question, maths: Maths) -> str:
    return "roots" if isinstance(maths.key, t.Relation) else "value"


def _rounded(ask: Ask, item: BankItem, question: Question, maths: Maths) -> str:
    words = form_in_words(words_of(maths))
    return words if words in ("percentage", "standard-form") else "rounded"


def _common(ask: Ask, item: BankItem, question: Question, maths: Maths) -> str:
    return "simplified" if t.symbols(maths.key) else "integer"


def _found(ask: Find, item: BankItem, question: Question, maths: Maths) -> str:
    return question.form or _form_of_result(item, question.task, ask.target, maths)


def _read_off(ask: OfFigure, item: BankItem, question: Question, maths: Maths) -> str:
    if isinstance(maths.key, t.Label):
        return "name"
    if isinstance(maths.key, t.Relation):
        return question.form or ("inequality" if is_range(maths.key) else "subject")
    if relations_in(maths.key):
        return question.form or "roots"
    found = [read(ask.figure, reading) for _, reading in ask.readings]
    # What is read has a letter of its own: the rule of a pattern.
    if any(t.symbols(node) - {"π"} for node in found):
        return question.form or "nth-term"
    form = question.form or _form_of_result(item, question.task, maths.key, maths)
    # Where an axis says the unit, what is read off it is a bare number.
    bare = found and not any(isinstance(part, _SIZED) for node in found for part in t.walk(node))
    return "value" if form == "quantity" and bare else form


_SIZED = (t.Quantity, t.Money, t.MixedUnits, t.ClockTime)


def _given(ask: Give, item: BankItem, question: Question, maths: Maths) -> str:
    words = form_in_words(words_of(maths))
    if isinstance(maths.key, t.Listing):
        return "amounts"
    return question.form or (words if words != "quantity" else "") or "value"


def _always(form: str) -> Callable[[Any, BankItem, Question, Maths], str]:
    return lambda ask, item, question, maths: form


_REWRITTEN = {"simplify": "simplified", "expand": "expanded", "factorise": "factorised"}
ANSWERS: Handlers[Answers] = Handlers("bank", "a bank")
"""What the answers to each kind of question are."""
REWRITTEN = Answers(lambda ask, *_: _REWRITTEN[ask.detail])
SOLVED = Answers(_solved, solutions=True)
PICKED = Answers(_picked, solutions=True)
RANGE = Answers(_always("inequality"), plain=True)
FORMULA = Answers(_always("subject"))
IN_ORDER = Answers(_always("list"), plain=True)
SIGN = Answers(_always("sign"), plain=True)
NAME = Answers(_always("name"), plain=True)
NTH_TERM = Answers(_always("nth-term"), plain=True)
COMMON = Answers(_common, plain=True, whole=True)
ROUNDED = Answers(_rounded)
FOUND = Answers(_found)
READ_OFF = Answers(_read_off)
DRAWING = Answers(_always("drawing"), plain=True)
GIVEN = Answers(_given)
TWO_AMOUNTS = Answers(_always("amounts"))
FRACTION = Answers(_always("fraction"))
SUMMARY = Answers(lambda ask, *about: _found(Find(as_sum(ask)), *about))
TRUTH = Answers(_always("true-or-false"), plain=True)
# The question that is answered is held to its words by itself.
TRUTH_OF_ANSWER = Answers(_always("true-or-false"), solutions=True)
NAME_OF_SOLVER = Answers(_always("name"), solutions=True)
LINE_AND_RESULT = Answers(_always("line-and-result"), plain=True)
LINE_OF_WORKING = Answers(_always("line-and-result"), solutions=True)
PAIRS = Answers(_always("pairs"), plain=True)
MEMBERS = Answers(lambda ask, *_: "amounts" if ask.detail == "list" else "integer", plain=True)


def _form_of_result(item: BankItem, task: str, target: t.Node, maths: Maths) -> str:
    if task == "prime-factors":
        return "prime-factors"
    if task == "share":
        return "amounts"
    words = form_in_words(words_of(maths))
    if words and (task == "convert" or words != "quantity" or _all_said(item)):
        return words
    if isinstance(target, t.Listing):
        return "amounts"
    if isinstance(target, t.Ratio):
        return "ratio"
    if task == "simplify" or says_simplest(words_of(maths)):
        if any(isinstance(part, t.Root) for part in t.walk(target)):
            return "surd"
        key = unsigned(maths.key)
        if isinstance(target, t.Frac) or isinstance(key, t.Frac | t.Mixed):
            # The key may be another kind of number, but then a finished one of that kind; a
            # decimal only of decimals: 0.75 is worth 18/24, but is no simplified fraction.
            kinds: dict[type[t.Node], str] = {t.Mixed: "mixed"}
            if any(isinstance(part, t.Dec) for part in t.walk(target)):
                kinds[t.Dec] = "decimal"
            return "integer" if _whole(target) else kinds.get(type(key), "lowest-terms")
    if isinstance(maths.key, t.Relation):
        return "solution"
    if "π" in t.symbols(maths.key):
        return "simplified"
    if asks_what_fraction(words_of(maths)):
        return "fraction"
    return "value"


def _all_said(item: BankItem) -> bool:
    return item.task is None and not item.model


def _whole(node: t.Node) -> bool:
    try:
        return exact(node).denominator == 1
    except t.NotationError:
        return False


def form_like(key: t.Node) -> str:
    """Return the form of a key for which nothing says more than the key itself."""
    match key:
        case t.Label():
            return "name"
        case t.Listing(parts) if all(isinstance(part, t.Relation) for part in parts):
            return "roots"
        case t.Listing():
            return "list"
        case t.Either():
            return "roots"
        case t.Ratio():
            return "ratio"
        case t.Relation(_, rest):
            return "roots" if rest[0][0] == "=" else "inequality"
    return "value"
