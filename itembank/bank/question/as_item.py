"""A hand-written item as an :class:`~itembank.items.item.Item`: proved, printed, marked alike.

>>> from itembank.bank.model.fields import BankItem
>>> item = BankItem(id="garden-1", tier="core", prompt="Work out {3/4 + 1/6}.", key="11/12")
>>> read_item(item, "larkhythe:garden-1", "fractions.add-unlike").form
'value'
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.bank.model.fields import BankItem
from itembank.bank.question.asking import NeedsPerson, Question, question_of
from itembank.bank.question.canonical import canonical
from itembank.bank.question.maths import Maths, UnreadableMaths, read_maths, same_worth, words_of
from itembank.items.asks import (
    Ask,
    Choose,
    Common,
    Compare,
    Equivalent,
    Find,
    Give,
    Handlers,
    Inequality,
    Order,
    Pick,
    Rewrite,
    Round,
    Sequence,
    Solve,
    Subject,
    kind_of,
)
from itembank.items.forms.form_rules import form_fault, form_words
from itembank.items.forms.number_forms import unsigned
from itembank.items.item import Item, Misconception, Slip, Step, Tier
from itembank.items.marks import usual_marks
from itembank.items.wrong_answers import told_apart
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.notation.value import NotExact, exact
from itembank.proof.exact.key_forms import form_asked
from itembank.wording.sentences.units_said import one_of_two_units
from itembank.wording.tasks.answer_phrases import form_in_words, says_simplest
from itembank.wording.tasks.forms_said import says_form
from itembank.wording.tasks.written_how import asks_what_fraction

if TYPE_CHECKING:
    from itembank.bank.model.bank import Entry

__all__ = ["NeedsPerson", "UnreadableMaths", "as_item", "form_of", "read_item", "read_with_model"]


def as_item(entry: Entry) -> Item:
    """Return an entry of a bank as an item, its address ``BANK:ID``.

    Raises:
        NeedsPerson: there is no mathematics to prove the key from; the message says why. What
            prints can still be read with :func:`~itembank.bank.question.maths.read_maths`.
        UnreadableMaths: a line cannot be read (never for an entry of a bank that loaded).
    """
    return read_item(entry.item, entry.address, entry.topic)


def read_item(item: BankItem, address: str, topic: str) -> Item:
    """Return `item` with the question its prompt asks; raises as :func:`as_item`."""
    return read_with_model(item, address, topic)[0]


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
    if fault := _unchecked_form(words_of(maths), ask, form):
        raise NeedsPerson(fault)
    if units := one_of_two_units(maths.key, words_of(maths)):
        raise NeedsPerson(f"The words ask for {units}, and the key has one of the two.")
    if fault := _misformed(ask, maths):
        raise NeedsPerson(f"The key has not the form that the words ask for: {fault}.")
    slips = told_apart(
        (
            Slip(Misconception(slip.id, slip.name, slip.ask), wrong)
            for slip, wrong in zip(item.misconceptions, maths.wrong, strict=True)
        ),
        lambda one, other: one == other or _seen_as_one(one, other, maths.key),
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
        return item.form or _form_like(maths.key), False


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


def _given(ask: Give, item: BankItem, question: Question, maths: Maths) -> str:
    words = form_in_words(words_of(maths))
    if isinstance(maths.key, t.Listing):
        return "amounts"
    return question.form or (words if words != "quantity" else "") or "value"


def _always(form: str) -> Callable[[Any, BankItem, Question, Maths], str]:
    return lambda ask, item, question, maths: form


_REWRITTEN = {"simplify": "simplified", "expand": "expanded", "factorise": "factorised"}

ANSWERS: Handlers[Answers] = Handlers("a bank")
"""What the answers to each kind of question are."""

ANSWERS.by_kind |= {
    Rewrite: Answers(lambda ask, *_: _REWRITTEN[ask.detail]),
    Solve: Answers(_solved, solutions=True),
    Pick: Answers(_picked, solutions=True),
    Inequality: Answers(_always("inequality"), plain=True),
    Subject: Answers(_always("subject")),
    Order: Answers(_always("list"), plain=True),
    Compare: Answers(_always("sign"), plain=True),
    Choose: Answers(_always("name"), plain=True),
    Sequence: Answers(_always("nth-term"), plain=True),
    Common: Answers(_common, plain=True, whole=True),
    Round: Answers(_rounded),
    Find: Answers(_found),
    Give: Answers(_given),
    Equivalent: Answers(_always("fraction")),
}


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


def _misformed(ask: Ask, maths: Maths) -> str:
    """Return how the solutions of equations have not the form that the words ask for, or ``""``."""
    words = form_in_words(words_of(maths))
    if not isinstance(ask, Solve) or words not in _OF_NUMBERS:
        return ""
    parts = maths.key.parts if isinstance(maths.key, t.Either | t.Listing) else (maths.key,)
    values = [part.rest[0][1] if isinstance(part, t.Relation) else part for part in parts]
    return next((fault for fault in (form_fault(words, value) for value in values) if fault), "")


_OF_NUMBERS = ("percentage", "mixed", "improper", "lowest-terms", "decimal", "standard-form")


_FITS = {
    "lowest-terms": (
        *("mixed", "improper", "surd", "single-fraction", "positive-indices", "simplest"),
        *("fraction", "number", "integer", "roots", "solution", "value"),
    ),
    "decimal": ("rounded", "standard-form", "number", "integer"),
    "percentage": ("rounded",),
    "mixed": ("simplest",),
    "integer": ("rounded", "value", "number", "amount"),
}
"""Forms that words ask for, each with the forms of a key that hold it to them as well."""


def _seen_as_one(one: t.Node, other: t.Node, key: t.Node) -> bool:
    """Tell whether two wrong answers are marked as one: they are worth the same.

    Those worth the same as the key are wrong in their form alone; marking tells them apart by
    how they are written.
    """
    return same_worth(one, other) and not same_worth(one, key)


def _unchecked_form(words: str, ask: Ask, form: str) -> str:
    """Return which form the words ask for that the key is not held to, as a sentence, or ``""``."""
    asked, answers = form_in_words(words), ANSWERS.of(ask)
    if asked in ("", "quantity") or asked == form or answers.solutions:
        # Solutions are held to it one by one, by _misformed.
        asked = ""
    if asked and form not in _FITS.get(asked, ()):
        return f"The words ask for {form_words(asked)}, which is not checked for this task."
    if asked not in ("", "integer") and answers.whole:
        return f"The words ask for {form_words(asked)}, and the answer is a whole number."
    powers = ("powers", "prime-powers", "power", "product")
    if answers.plain and says_form(words) and form not in powers:
        return "The words ask for a form of powers or fractions that is not checked for this task."
    return ""


def _whole(node: t.Node) -> bool:
    try:
        return exact(node).denominator == 1
    except t.NotationError:
        return False


def _form_like(key: t.Node) -> str:
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
