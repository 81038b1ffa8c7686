"""What a hand-written item asks, worked out from its task and the mathematics it prints.

The prompt's mathematics (or the `model` behind its words) becomes an
:data:`~itembank.items.item.Ask`, from which a proof starts. Where that cannot be done, a
person has to check the key: :class:`NeedsPerson` says why.
"""

from __future__ import annotations

from itembank.bank.maths import Maths, words_of
from itembank.bank.model import BankItem
from itembank.bank.tasks import TASKS, NeedsPerson, is_short, parted
from itembank.bank.wording import (
    form_in_words,
    order_detail,
    rounding,
    says_rough,
    says_rounded,
    task_in_words,
    task_stated,
)
from itembank.checking.finding import text
from itembank.items.item import (
    Ask,
    Choose,
    Find,
    Round,
    Solve,
)
from itembank.notation.tree import (
    Listing,
    Money,
    Node,
    Ratio,
    Relation,
    symbols,
)

__all__ = ["NeedsPerson", "ask_of"]


def ask_of(item: BankItem, maths: Maths) -> Ask:
    """Return the question behind the words.

    Raises:
        NeedsPerson: there is no mathematics to prove from, or it does not fit the task.

    >>> from itembank.bank.maths import read_maths
    >>> item = BankItem(id="a-1", tier="core", prompt="Solve {2x = 6}.", key="x = 3")
    >>> type(ask_of(item, read_maths(item))).__name__
    'Solve'
    """
    given = list(maths.model) or [run for run in maths.runs if not isinstance(run, str)]
    if item.task == "choose" or (item.task is None and item.options):
        return _choose(item, maths)
    if not given:
        raise NeedsPerson(
            "The prompt prints no mathematics in { } and there is no model of its words."
        )
    words = words_of(maths)
    stated = task_stated(words)
    also = _ALSO.get(item.task or "", ())
    if item.task == "simplify" and not any(symbols(node) for node in given):
        also = ("expand",)  # a surd multiplied out has no brackets left to simplify
    if item.task and stated and stated not in (item.task, *also):
        raise NeedsPerson(f"The words say to {_SAID[stated]}, but the task is ‘{item.task}’.")
    if maths.find is not None:
        ask: Ask = Find(maths.find, _relations(given, "find"))
    else:
        ask = TASKS[item.task or _task_of(item, maths, given)](item, maths, given)
    return _rounded(ask, maths, words)


def _rounded(ask: Ask, maths: Maths, words: str) -> Ask:
    """Return the question with its answer rounded, where the words say so."""
    if not isinstance(ask, Find | Solve) or not (says_rounded(words) or says_rough(words)):
        return ask
    if says_rough(words):
        if maths.model:
            return ask
        raise NeedsPerson("The words ask for an estimate or a bound: add a model of what is meant.")
    found = rounding(words)
    if isinstance(ask, Solve) or ask.relations or found is None:
        raise NeedsPerson("The words speak of rounding in a way that is not worked out here.")
    if isinstance(ask.target, Listing | Ratio) or symbols(ask.target):
        raise NeedsPerson("Only a number is rounded here.")
    if "penny" in words and isinstance(maths.key, Money) and maths.key.sign == "p":
        raise NeedsPerson("Give a key to the nearest penny in pounds, as £0.45.")
    return Round(ask.target, *found)


def _task_of(item: BankItem, maths: Maths, given: list[Node]) -> str:
    """Return the task that the mathematics, and a verb where it leaves a choice, says."""
    node = given[0]
    words = words_of(maths)
    listed = len(given) > 1 or isinstance(node, Listing)
    stated = task_stated(words)
    if stated and (listed or stated not in _OF_LISTS) and not maths.model:
        return stated
    if listed and order_detail(words) and not any(isinstance(n, Relation) for n in given):
        return "order"
    form = form_in_words(words)
    if len(given) == 1 and isinstance(node, Ratio) and form in ("one-to-n", "n-to-one"):
        return "convert"
    if len(given) == 1 and _is_number(node) and rounding(words) and not says_rough(words):
        return "round"
    if len(given) == 1 and form and _is_number(node) and not maths.model:
        return "convert"
    relations, others = parted(given)
    if not others:
        letters = {name for relation in relations for name in symbols(relation)}
        return "solve" if letters and "□" not in letters else "work-out"
    if len(given) == 1 and (isinstance(node, Ratio) or symbols(node)):
        task = task_in_words(words)
        if not task and not (item.model or item.form or is_short(maths)):
            raise NeedsPerson(f"The words do not say what to do with {text(node)}: add ‘task’.")
        return task or "simplify"
    return "work-out"


_OF_LISTS = ("hcf", "lcm", "nth-term")
# A question may name one thing on the way to another: a rounded answer, a factorised quadratic.
_ALSO = {
    "work-out": ("round", "share", "hcf", "lcm", "nth-term"),
    "solve": ("factorise", "expand", "round"),
    "hcf": ("prime-factors",),
    "lcm": ("prime-factors",),
    "convert": ("round",),
}
_SAID = {
    "hcf": "find the highest common factor",
    "lcm": "find the lowest common multiple",
    "prime-factors": "write a product of primes",
    "nth-term": "find the nth term",
    "make-subject": "change the subject",
    "expand": "expand",
    "factorise": "factorise",
    "share": "share in a ratio",
    "round": "round",
}


def _is_number(node: Node) -> bool:
    return not isinstance(node, Relation | Ratio | Listing) and not symbols(node)


def _relations(given: list[Node], why: str) -> tuple[Relation, ...]:
    relations, others = parted(given)
    if others:
        raise NeedsPerson(
            f"With ‘{why}’ every line of the model is an equation; {text(others[0])} is not one."
        )
    return tuple(relations)


def _choose(item: BankItem, maths: Maths) -> Ask:
    if not maths.options or item.choose is None:
        raise NeedsPerson("To choose takes ‘options’ and ‘choose’, which is least or greatest.")
    return Choose(maths.options, item.choose)
