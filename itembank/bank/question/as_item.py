"""A hand-written item as an :class:`~itembank.items.item.Item`: proved, printed, marked alike.

>>> from itembank.bank.model.fields import BankItem
>>> item = BankItem(id="garden-1", tier="core", prompt="Work out {3/4 + 1/6}.", key="11/12")
>>> read_item(item, "larkhythe:garden-1", "fractions.add-unlike").form
'value'
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.bank.model.fields import BankItem
from itembank.bank.question.asking import NeedsPerson, question_of
from itembank.bank.question.canonical import canonical
from itembank.bank.question.form_said import fraction_of_unit, misformed, unchecked_form
from itembank.bank.question.given.maths import (
    Maths,
    UnreadableMaths,
    read_maths,
    same_worth,
    words_of,
)
from itembank.bank.question.key_form import default_form, form_like
from itembank.items.asks import (
    Answered,
    Ask,
    Choose,
    WhoIsRight,
    kind_of,
)
from itembank.items.asks.round_reading import figure_asked
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Item, Misconception, Slip, Step, Tier
from itembank.items.marks import usual_marks
from itembank.items.wrong_answers import told_apart
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.wording.sentences.units_said import one_of_two_units

if TYPE_CHECKING:
    from itembank.bank.model.bank import Entry

__all__ = ["NeedsPerson", "UnreadableMaths", "as_item", "form_of", "read_item", "read_with_model"]


def as_item(entry: Entry) -> Item:
    """Return an entry of a bank as an item, its address ``BANK:ID``.

    Raises:
        NeedsPerson: there is no mathematics to prove the key from; the message says why. What
            prints can still be read with :func:`~itembank.bank.question.given.maths.read_maths`.
        UnreadableMaths: a line cannot be read (never for an entry of a bank that loaded).
    """
    return read_item(entry.item, entry.address, entry.topic)


def read_item(item: BankItem, address: str, topic: str) -> Item:
    """Return `item` with the question its prompt asks; raises as :func:`as_item`."""
    return read_with_model(item, address, topic)[0]


def _of_answers(ask: Ask) -> Ask:
    """Return the question that answers are given to, or the question itself."""
    return ask.of if isinstance(ask, Answered | WhoIsRight) else ask


def read_with_model(item: BankItem, address: str, topic: str) -> tuple[Item, bool]:
    """Return `item` as :func:`read_item` does, and whether it rests on a model.

    It does where it is proved from its author's reading of a story. Its words are then held to
    the model as far as :mod:`itembank.wording` knows how; whether the model tells the story is
    for a colleague to read.

    >>> read_with_model(
    ...     BankItem(id="a-1", tier="core", prompt="Solve {2x = 6}.", key="x = 3"), "a:a-1", "t"
    ... )[1]
    False
    """
    maths = read_maths(item)
    question = question_of(item, maths)
    ask = question.ask
    form = item.form or default_form(item, question, maths)
    if fault := unchecked_form(words_of(maths), ask, form) or fraction_of_unit(maths, form):
        raise NeedsPerson(fault)
    if units := one_of_two_units(maths.key, words_of(maths)):
        raise NeedsPerson(f"The words ask for {units}, and the key has one of the two.")
    if fault := misformed(ask, maths):
        raise NeedsPerson(f"The key has not the form that the words ask for: {fault}.")
    slips = told_apart(
        (
            Slip(Misconception(slip.id, slip.name, slip.ask), wrong)
            for slip, wrong in zip(item.misconceptions, maths.wrong, strict=True)
        ),
        lambda first, other: first == other or _seen_as_one(first, other, maths.key),
    )
    steps = tuple(
        Step(say, node) for (say, _), node in zip(item.working, maths.working, strict=True)
    )
    made = Item(
        address,
        topic,
        Tier(item.tier),
        maths.runs,
        ask,
        _named(ask, maths.key),
        form,
        steps,
        slips,
        canonical(ask, form),
        usual_marks(maths.runs, steps) if item.marks is None else item.marks,
        question.constants,
        (*item.accept, "any-order") if question.any_order else item.accept,
        None if (on_figure := figure_asked(_of_answers(ask))) is None else on_figure.figure,
    )
    return made, question.modelled


def form_of(item: BankItem, maths: Maths) -> str:
    """Return the form of an item's key, stated or by its task, whether or not it can be proved.

    >>> item = BankItem(id="a-1", tier="core", prompt="Solve {2x = 6}.", key="x = 3")
    >>> form_of(item, read_maths(item))
    'roots'
    """
    return item.form or form_and_many(item, maths)[0]


def form_and_many(item: BankItem, maths: Maths) -> tuple[str, bool]:
    """Return the form of an item's key, and whether many answers are right.

    >>> item = BankItem(id="a-1", tier="core", prompt="Solve {2x = 6}.", key="x = 3")
    >>> form_and_many(item, read_maths(item))
    ('roots', False)
    """
    try:
        question = question_of(item, maths)
        return item.form or default_form(item, question, maths), kind_of(question.ask).many
    except NeedsPerson:
        return item.form or form_like(maths.key), False


def right_as_well(item: BankItem, maths: Maths, wrong: t.Node) -> bool:
    """Tell whether a wrong answer may be one of many right ones; what cannot be decided may be.

    >>> item = BankItem(
    ...     id="a-1", tier="core", prompt="Write a number between {3} and {5}.", key="4"
    ... )
    >>> maths = read_maths(item)
    >>> [right_as_well(item, maths, t.Int(n)) for n in (3, 4)]
    [False, True]
    """
    try:
        question = question_of(item, maths)
        unmet = marking_of(question.ask).unmet
        if unmet is None or unmet(question.ask, wrong):
            return False
        return not form_fault(item.form or default_form(item, question, maths), wrong)
    except NeedsPerson:
        return False
    except NotExact:
        return True


def _named(ask: Ask, key: t.Node) -> t.Node:
    """Return the key of a choice among printed numbers as the name of one of them."""
    if not isinstance(ask, Choose) or isinstance(key, t.Label):
        return key
    return next((t.Label(name) for name, node in ask.options if node == key), key)


def _seen_as_one(first: t.Node, other: t.Node, key: t.Node) -> bool:
    """Tell whether two wrong answers are marked as one: they are worth the same.

    Those worth the same as the key are wrong in their form alone; marking tells them apart by
    how they are written.
    """
    return same_worth(first, other) and not same_worth(first, key)
