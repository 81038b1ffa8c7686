"""Questions with many right answers: what the words hold an answer to, and its form."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.maths import Maths, words_of
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.items.asks import Equivalent, Give, TwoNumbers
from itembank.items.forms.number_forms import unsigned
from itembank.items.membership import given_values
from itembank.notation import tree as t
from itembank.notation.value import NotExact, exact
from itembank.proof.claim.finding import text
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.tasks.answers.answer_phrases import (
    form_in_words,
    says_rough,
    says_rounded,
    says_simplest,
)
from itembank.wording.tasks.answers.forms_said import says_form
from itembank.wording.tasks.answers.written_how import asks_units, names_a_form
from itembank.wording.tasks.other_kinds.given_property import property_asked
from itembank.wording.tasks.other_kinds.giving import Giving
from itembank.wording.tasks.sums.sums import NotBuilt

_FORMS = {"fraction": "fraction", "decimal": "decimal", "percentage": "percentage"}
_SIMPLEST = {"fraction": "lowest-terms", "mixed": "mixed", "improper": "improper"}
_WHOLE = frozenset(["whole", "even", "odd", "prime", "square", "cube", "multiple", "factor"])


def give_ask(
    item: BankItem, maths: Maths, said: Giving, given: Sequence[t.Node]
) -> tuple[Give | Equivalent | TwoNumbers, tuple[int, ...], str]:
    """Return the question, the whole numbers that its words stand for, and the form of its key.

    Raises:
        NeedsPerson: the words ask for more than an answer can be held to here.
    """
    if item.task is not None:
        raise NeedsPerson(
            f"The words ask for any of many answers, but the task is ‘{item.task}’: take it out."
        )
    nodes = [run for run in maths.runs if not isinstance(run, str)]
    try:
        ask, constants = property_asked(said, nodes, given)
    except NotBuilt as error:
        raise NeedsPerson(str(error)) from error
    form = _form(said, ask, words_of(maths))
    if item.form is not None and form not in ("value", item.form):
        raise NeedsPerson(f"The words ask for the form ‘{form}’: take out the form ‘{item.form}’.")
    if said.numbers == 2 and not isinstance(maths.key, t.Listing):
        raise NeedsPerson("Give the example as a list of its numbers, as 4, 6.")
    if form == "decimal" and not isinstance(unsigned(maths.key), t.Dec):
        raise NeedsPerson(f"Whether {text(maths.key)} is a decimal is not agreed on.")
    if isinstance(ask, TwoNumbers) and said.what == "whole" and not _all_whole(maths.key):
        raise NeedsPerson("The words ask for whole numbers, and the key has another.")
    if isinstance(ask, Give):
        _not_disputed(said, ask, maths.key)
    return ask, constants, form


def _form(said: Giving, ask: Give | Equivalent | TwoNumbers, words: str) -> str:
    """Return the form that the words give to an answer."""
    if says_rounded(words) or says_rough(words) or says_form(words) or names_a_form(words):
        raise NeedsPerson("The words say how to write an answer in a way it is not held to here.")
    if asks_units(words) or unit_said(words):
        raise NeedsPerson("Only plain numbers are given here, and the words ask for a unit.")
    if isinstance(ask, Equivalent):
        if says_simplest(words) or form_in_words(words) not in ("", "lowest-terms"):
            raise NeedsPerson("Only one fraction in its simplest form is equal to a number.")
        return "fraction"
    if isinstance(ask, TwoNumbers):
        if says_simplest(words) or form_in_words(words):
            raise NeedsPerson("The form of two numbers is not looked at here.")
        return "amounts"
    asked = form_in_words(words)
    what = {"lowest-terms": "fraction", "": said.what, "integer": "whole"}.get(asked, asked)
    if said.what not in ("number", "pair", what):
        raise NeedsPerson("The words ask for two forms of an answer.")
    if asked == "integer" and not any(condition.name in _WHOLE for condition in ask.conditions):
        raise NeedsPerson("Say ‘a whole number’ at the beginning, where a whole number is wanted.")
    if said.numbers == 2:
        if what not in ("number", "pair", "whole"):
            raise NeedsPerson(f"Two answers that are each a {what} are not looked at here.")
        return "amounts"
    if says_simplest(words):
        if what not in _SIMPLEST:
            raise NeedsPerson("The simplest form is looked at here for fractions only.")
        return _SIMPLEST[what]
    if what in ("number", "whole"):
        whole = any(condition.name in _WHOLE for condition in ask.conditions)
        return "integer" if whole else "value"
    if what not in _FORMS:
        raise NeedsPerson("Say ‘in its simplest form’ where mixed numbers or such are given.")
    return _FORMS[what]


def _all_whole(key: t.Node) -> bool:
    return isinstance(key, t.Listing) and all(
        isinstance(unsigned(part), t.Int) for part in key.parts
    )


def _not_disputed(said: Giving, ask: Give, key: t.Node) -> None:
    """Raise NeedsPerson for an example that some would call right and others wrong."""
    names = {condition.name for condition in ask.conditions}
    letter = ask.letters[0]
    for part in key.parts if isinstance(key, t.Listing) else (key,):
        if isinstance(part, t.Relation) and t.symbols(part) - {letter.name}:
            raise NeedsPerson(f"The example is about another letter than {letter.name}.")
    try:
        values = [exact(node) for node in given_values(ask, key)]
    except NotExact:
        return
    # Books do not agree on 0 and on negative numbers here, and pupils are taught neither.
    if min(values) < 0 and names & {"multiple", "whole"} and not _may_be_negative(ask):
        raise NeedsPerson(_DISPUTED.format("a negative number"))
    if 0 in values and names & {"multiple", "square", "cube"}:
        raise NeedsPerson(_DISPUTED.format("0"))
    if min(values) < 0 and "cube" in names:
        raise NeedsPerson(_DISPUTED.format("a negative number"))
    if len({*values}) < len(values) and said.what != "pair" and "different" not in names:
        raise NeedsPerson(
            f"Whether {text(key)} is two numbers is not said: write ‘two different numbers’ or "
            "‘a pair of factors’, or give another example."
        )


_DISPUTED = "Whether {} may be given here is not agreed on: give another example."


def _may_be_negative(ask: Give) -> bool:
    """Tell whether the question itself says on which side of 0 an answer is."""
    if any(condition.name in ("negative", "positive") for condition in ask.conditions):
        return True
    numbers = (
        side for relation in ask.relations for side in t.children(relation) if not t.symbols(side)
    )
    return any(exact(side) < 0 for side in numbers)
