"""Tasks with numbers, each as the question it makes of the mathematics that is given.

A kind of question names the tasks that ask it (:mod:`.task_named` finds them). A task gets the
item and what is :class:`Given`: the trees it is about (the model's, or those the words point at),
what holds besides, and the words. It returns an :data:`~itembank.items.item.Ask`, or raises
:class:`NeedsPerson`.
"""

from __future__ import annotations

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.task_given import (
    Given,
    NeedsPerson,
    is_negative,
    only_expression,
    only_one,
    parted,
    things_given,
)
from itembank.items.item import (
    Ask,
    Common,
    Compare,
    Find,
    Order,
    Rewrite,
    Round,
)
from itembank.items.item import (
    Sequence as Terms,
)
from itembank.notation import tree as t
from itembank.proof.claim.finding import text
from itembank.wording.sentences.sizes import order_said
from itembank.wording.sentences.units_said import several_units, unit_said
from itembank.wording.tasks.answers.answer_phrases import (
    form_in_words,
    rounding,
    rounding_way,
)
from itembank.wording.tasks.answers.forms_said import says_form
from itembank.wording.tasks.answers.written_how import speaks_of_digits, truncates
from itembank.wording.tasks.head_pieces import names_sharing


def work_out(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for what the mathematics comes to.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    relations, others = parted(given.all)
    if not relations:
        target = only_one(others, "work this out")
        if isinstance(target, t.Listing) and not given.modelled:
            raise NeedsPerson(f"The words do not say what to do with {text(target)}: add ‘task’.")
        if t.symbols(target) - {"π"}:
            return Rewrite(target, "simplify")
        if not given.modelled and _is_plain(target) and not form_in_words(given.words):
            raise NeedsPerson(
                f"{text(target)} alone leaves nothing to work out: add a model of the words."
            )
        return Find(target)
    if others:
        target = only_one(others, "work this out")
        loose = (
            t.symbols(target)
            - {name for relation in relations for name in t.symbols(relation)}
            - {"π"}
        )
        if loose:
            raise NeedsPerson(f"Nothing says what {min(loose)} is worth.")
        return Find(target, tuple(relations))
    letters = sorted({name for relation in relations for name in t.symbols(relation)})
    if len(letters) != 1:
        raise NeedsPerson("The model does not say which letter is asked for: add ‘find’.")
    return Find(t.Blank() if letters[0] == "□" else t.Sym(letters[0]), tuple(relations))


def missing(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for the number in an empty box.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    relations, others = parted(given.all)
    if (
        not relations
        or others
        or "□" not in {n for relation in relations for n in t.symbols(relation)}
    ):
        raise NeedsPerson("A missing number takes an equation with a □ in it.")
    if speaks_of_digits(given.words) and any(
        isinstance(part, t.Juxt) for relation in relations for part in t.walk(relation)
    ):
        raise NeedsPerson(
            "A digit of a number is not found here: a □ beside a digit multiplies it."
        )
    return Find(t.Blank(), tuple(relations))


def _is_plain(node: t.Node) -> bool:
    """Whether a tree is one number as it stands, with no sum to work out in it.

    A fraction is not: 28/9 is a whole number and a fraction, to be worked out.
    """
    match node:
        case t.Neg(of) | t.Percent(of) | t.Money(of, _) | t.Quantity(of, _) | t.Bracket(of):
            return _is_plain(of)
        case t.Int() | t.Dec() | t.Mixed() | t.MixedUnits() | t.ClockTime():
            return True
    return False


def share(item: BankItem, given: Given) -> Ask:
    """Return the question that shares an amount in a ratio.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    nodes = given.all
    shares = [node for node in nodes if isinstance(node, t.Ratio)]
    wholes = [node for node in nodes if not isinstance(node, t.Ratio | t.Relation | t.Listing)]
    if len(shares) != 1 or len(wholes) != 1 or len(nodes) != 2:
        raise NeedsPerson("To share takes one amount and one ratio.")
    count = len(shares[0].parts)
    if count > 6:
        raise NeedsPerson("A share in more than six parts is not worked out here.")
    names = names_sharing(given.words)
    if names and names != count:
        raise NeedsPerson(f"{names} are named to share, and the ratio has {count} parts.")
    letters = tuple(t.Sym(name) for name in "abcdef"[:count])
    total = t.equals(_joined(letters), wholes[0])
    return Find(t.Listing(letters), (total, t.equals(t.Ratio(letters), shares[0])))


def _joined(letters: tuple[t.Sym, ...]) -> t.Node:
    return t.add(letters[0], *letters[1:])


def order(item: BankItem, given: Given) -> Ask:
    """Return the question that puts numbers in the order that the words say.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    things = things_given(given.all, "To order")
    detail = order_said(given.words, things)
    if detail is None:
        raise NeedsPerson("The prompt says neither ‘smallest first’ nor ‘largest first’.")
    return Order(things, detail)


def compare(item: BankItem, given: Given) -> Ask:
    """Return the question for the sign between two numbers.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    things = things_given(given.all, "To compare")
    if len(things) != 2:
        raise NeedsPerson(f"To compare takes two numbers; here are {len(things)}.")
    return Compare(things[0], things[1])


def convert(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for a number in another form or unit.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    words = given.words
    if item.form is None and not (form_in_words(words) or unit_said(words) or says_form(words)):
        raise NeedsPerson("It is not said what to convert to: add ‘form’.")
    if any(isinstance(node, t.Ratio) for node in given.args) and form_in_words(words) in _PARTS:
        raise NeedsPerson(
            "A ratio as a fraction may be one part over the other, or over the whole: say which."
        )
    if several_units(words):
        raise NeedsPerson("The words name several units to convert to: say which is meant.")
    # {1 : n} or {a^n} names the form, and is not what is written in it.
    if any(not t.symbols(node) for node in given.args[1:]):
        raise NeedsPerson("More than one thing may be what is to be converted: add a model.")
    return Find(only_expression(given.args[:1], "convert"))


_PARTS = ("lowest-terms", "percentage", "decimal", "mixed", "improper")
"""Forms of one number, which a ratio of two is none of."""


def nth_term(item: BankItem, given: Given) -> Ask:
    """Return the question for the nth term of a sequence.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    terms = things_given(given.all, "The nth term")
    if len(terms) < 3:
        raise NeedsPerson("The nth term takes at least three terms.")
    return Terms(terms)


def hcf(item: BankItem, given: Given) -> Ask:
    """Return the question for a highest common factor.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    return Common(things_given(given.all, "The highest common factor"), "hcf")


def lcm(item: BankItem, given: Given) -> Ask:
    """Return the question for a lowest common multiple.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    return Common(things_given(given.all, "The lowest common multiple"), "lcm")


def prime_factors(item: BankItem, given: Given) -> Ask:
    """Return the question for a number as a product of primes.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    return Find(only_expression(given.all, "write as a product of primes"))


def round_number(item: BankItem, given: Given) -> Ask:
    """Return the question that rounds a number as the words say.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    found, way = rounding(given.words), rounding_way(given.words)
    if found is None or way is None:
        raise NeedsPerson(
            "It is not said what to round to: write ‘to 2 decimal places’, "
            "‘to 1 significant figure’ or ‘to the nearest 10’."
        )
    detail, amount = found
    truncated = truncates(given.words)
    target = given.args[0] if given.modelled else only_one(given.all, "round")
    if isinstance(target, t.Relation | t.Listing | t.Ratio | t.Either):
        raise NeedsPerson(f"To round takes a number, and {text(target)} is not one.")
    if way != "nearest" and not truncated and is_negative(target):
        raise NeedsPerson("Which way is up, or down, for a negative number is not said.")
    return Round(target, detail, amount, way)
