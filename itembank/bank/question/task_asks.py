"""Each task as the question it makes of the mathematics that is given.

A task gets the item and what is :class:`Given`: the trees it is about (the model's, or those the
words point at), what holds besides, and the words. It returns an
:data:`~itembank.items.item.Ask`, or raises :class:`NeedsPerson`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from itembank.bank.model.fields import BankItem
from itembank.items.item import (
    Ask,
    Common,
    Compare,
    Find,
    Inequality,
    Order,
    Rewrite,
    Round,
    Solve,
    Subject,
)
from itembank.items.item import (
    Sequence as Terms,
)
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.claim.finding import text
from itembank.wording.sentences.sizes import order_said
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.tasks.answer_phrases import (
    form_in_words,
    letter_said,
    rounding,
    rounding_way,
)
from itembank.wording.tasks.forms_said import says_form
from itembank.wording.tasks.written_how import speaks_of_digits, truncates


class NeedsPerson(t.NotationError):
    """The tool cannot work out this item's answer; the message says why, in a sentence."""


@dataclass(frozen=True, slots=True)
class Given:
    """What a task is about: its trees, what holds besides, the letter asked for, the words."""

    args: tuple[t.Node, ...]
    where: tuple[t.Node, ...]
    letter: str
    words: str
    modelled: bool = False

    @property
    def all(self) -> tuple[t.Node, ...]:
        """Return every tree, what holds besides among them."""
        return (*self.args, *self.where)


def _flat(given: Sequence[t.Node]) -> Iterator[t.Node]:
    """Yield the nodes; a list of relations, as in x = 5, y = 2, is each of them."""
    for node in given:
        if isinstance(node, t.Listing) and all(isinstance(part, t.Relation) for part in node.parts):
            yield from node.parts
        else:
            yield node


def parted(given: Sequence[t.Node]) -> tuple[list[t.Relation], list[t.Node]]:
    """Return the relations among the nodes, and the others."""
    relations: list[t.Relation] = []
    others: list[t.Node] = []
    for node in _flat(given):
        if isinstance(node, t.Relation):
            relations.append(node)
        else:
            others.append(node)
    return relations, others


def _one(given: Sequence[t.Node], task: str) -> t.Node:
    if len(given) != 1:
        raise NeedsPerson(
            f"To {task} takes one piece of mathematics in {{ }}; here are {len(given)}. "
            "Give a model that says what is worked out."
        )
    if isinstance(given[0], t.Either):
        raise NeedsPerson(f"To {task}, there is more than one expression here, joined by or.")
    return given[0]


def _work_out(item: BankItem, given: Given) -> Ask:
    relations, others = parted(given.all)
    if not relations:
        target = _one(others, "work this out")
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
        target = _one(others, "work this out")
        loose = t.symbols(target) - {name for one in relations for name in t.symbols(one)} - {"π"}
        if loose:
            raise NeedsPerson(f"Nothing says what {min(loose)} is worth.")
        return Find(target, tuple(relations))
    letters = sorted({name for relation in relations for name in t.symbols(relation)})
    if len(letters) != 1:
        raise NeedsPerson("The model does not say which letter is asked for: add ‘find’.")
    return Find(t.Blank() if letters[0] == "□" else t.Sym(letters[0]), tuple(relations))


def _missing(item: BankItem, given: Given) -> Ask:
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


def _find_letter(item: BankItem, given: Given) -> Ask:
    relations, others = parted(given.all)
    letters = {name for relation in relations for name in t.symbols(relation)} - {"π"}
    if given.letter not in letters or others:
        raise NeedsPerson(f"The words ask for {given.letter}, and nothing says what it is worth.")
    signs = {op for relation in relations for op, _ in relation.rest}
    if len(relations) == 1 and len(letters) == 1 and not signs & {"=", "≠"}:
        return Inequality(relations[0])
    if signs != {"="}:
        raise NeedsPerson("A letter is found from equations, and there is another sign here.")
    if len(letters) == 1:
        return Solve(tuple(relations))
    return Find(t.Sym(given.letter), tuple(relations))


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


def _simplify(item: BankItem, given: Given) -> Ask:
    relations, others = parted(given.where)
    if relations and not others and len(given.args) == 1 and isinstance(given.args[0], t.Ratio):
        return Find(given.args[0], tuple(relations))
    target = _expression(given.all, "simplify")
    return Rewrite(target, "simplify") if t.symbols(target) else Find(target)


def _expand(item: BankItem, given: Given) -> Ask:
    return Rewrite(_expression(given.all, "expand"), "expand")


def _factorise(item: BankItem, given: Given) -> Ask:
    return Rewrite(_expression(given.all, "factorise"), "factorise")


def _expression(given: Sequence[t.Node], task: str) -> t.Node:
    target = _one(given, task)
    if isinstance(target, t.Relation | t.Listing):
        raise NeedsPerson(f"To {task} takes an expression, and {text(target)} is not one.")
    return target


def _solve(item: BankItem, given: Given) -> Ask:
    relations, others = parted(given.all)
    letters = {name for relation in relations for name in t.symbols(relation)}
    if not relations or not letters:
        raise NeedsPerson("To solve takes an equation or an inequality with a letter in it.")
    # "Solve {2x + 1 = 7} for {x}": the letter is named again, which changes nothing.
    if any(not (isinstance(node, t.Sym) and node.name in letters) for node in others):
        raise NeedsPerson("To solve takes equations or one inequality, and there is more here.")
    signs = {op for relation in relations for op, _ in relation.rest}
    letter = given.letter or letter_said(given.words)
    if letter and letter not in letters:
        raise NeedsPerson(f"The words ask for {letter}, which is not in the mathematics.")
    if letter and len(letters) > 1 and signs == {"="}:
        return Find(t.Sym(letter), tuple(relations))
    if signs == {"="}:
        return Solve(tuple(relations))
    if len(relations) == 1 and "=" not in signs and "≠" not in signs:
        return Inequality(relations[0])
    raise NeedsPerson("Several inequalities, or equations among them, are not solved here.")


def _make_subject(item: BankItem, given: Given) -> Ask:
    relations, others = parted(given.all)
    if len(relations) != 1:
        raise NeedsPerson("To make a letter the subject takes one formula.")
    named = [node for node in others if isinstance(node, t.Sym)]
    if len(named) == 1 and len(others) == 1 and given.letter in ("", named[0].name):
        return Subject(relations[0], named[0])
    if others or not given.letter:
        raise NeedsPerson(
            "The prompt does not say which letter becomes the subject: put it in { }."
        )
    return Subject(relations[0], t.Sym(given.letter))


def _share(item: BankItem, given: Given) -> Ask:
    nodes = given.all
    shares = [node for node in nodes if isinstance(node, t.Ratio)]
    wholes = [node for node in nodes if not isinstance(node, t.Ratio | t.Relation | t.Listing)]
    if len(shares) != 1 or len(wholes) != 1 or len(nodes) != 2:
        raise NeedsPerson("To share takes one amount and one ratio.")
    count = len(shares[0].parts)
    if count > 6:
        raise NeedsPerson("A share in more than six parts is not worked out here.")
    letters = tuple(t.Sym(name) for name in "abcdef"[:count])
    total = t.equals(_joined(letters), wholes[0])
    return Find(t.Listing(letters), (total, t.equals(t.Ratio(letters), shares[0])))


def _joined(letters: tuple[t.Sym, ...]) -> t.Node:
    return t.add(letters[0], *letters[1:])


def _things(given: Sequence[t.Node], task: str) -> tuple[t.Node, ...]:
    """Return the parts of a list, or several pieces of mathematics, as things."""
    if len(given) == 1 and isinstance(given[0], t.Listing):
        return given[0].parts
    if len(given) > 1 and not any(isinstance(node, t.Listing | t.Relation) for node in given):
        return tuple(given)
    raise NeedsPerson(f"{task} takes a list, {{1, 2, 3}}, or several pieces of mathematics.")


def _order(item: BankItem, given: Given) -> Ask:
    things = _things(given.all, "To order")
    detail = order_said(given.words, things)
    if detail is None:
        raise NeedsPerson("The prompt says neither ‘smallest first’ nor ‘largest first’.")
    return Order(things, detail)


def _compare(item: BankItem, given: Given) -> Ask:
    things = _things(given.all, "To compare")
    if len(things) != 2:
        raise NeedsPerson(f"To compare takes two numbers; here are {len(things)}.")
    return Compare(things[0], things[1])


def _convert(item: BankItem, given: Given) -> Ask:
    words = given.words
    if item.form is None and not (form_in_words(words) or unit_said(words) or says_form(words)):
        raise NeedsPerson("It is not said what to convert to: add ‘form’.")
    # {1 : n} or {a^n} names the form, and is not what is written in it.
    if any(not t.symbols(node) for node in given.args[1:]):
        raise NeedsPerson("More than one thing may be what is to be converted: add a model.")
    return Find(_expression(given.args[:1], "convert"))


def _nth_term(item: BankItem, given: Given) -> Ask:
    terms = _things(given.all, "The nth term")
    if len(terms) < 3:
        raise NeedsPerson("The nth term takes at least three terms.")
    return Terms(terms)


def _hcf(item: BankItem, given: Given) -> Ask:
    return Common(_things(given.all, "The highest common factor"), "hcf")


def _lcm(item: BankItem, given: Given) -> Ask:
    return Common(_things(given.all, "The lowest common multiple"), "lcm")


def _prime_factors(item: BankItem, given: Given) -> Ask:
    return Find(_expression(given.all, "write as a product of primes"))


def _round(item: BankItem, given: Given) -> Ask:
    found, way = rounding(given.words), rounding_way(given.words)
    if found is None or way is None:
        raise NeedsPerson(
            "It is not said what to round to: write ‘to 2 decimal places’, "
            "‘to 1 significant figure’ or ‘to the nearest 10’."
        )
    detail, amount = found
    truncated = truncates(given.words)
    target = given.args[0] if given.modelled else _one(given.all, "round")
    if isinstance(target, t.Relation | t.Listing | t.Ratio | t.Either):
        raise NeedsPerson(f"To round takes a number, and {text(target)} is not one.")
    if way != "nearest" and not truncated and is_negative(target):
        raise NeedsPerson("Which way is up, or down, for a negative number is not said.")
    return Round(target, detail, amount, way)


def is_negative(node: t.Node) -> bool:
    """Whether a number is less than nothing; False where it has no exact value.

    >>> is_negative(t.Neg(t.Int(3))), is_negative(t.Int(3))
    (True, False)
    """
    try:
        return exact(node) < 0
    except t.NotationError:
        return False


TASKS = {
    "work-out": _work_out,
    "missing": _missing,
    "find-letter": _find_letter,
    "simplify": _simplify,
    "expand": _expand,
    "factorise": _factorise,
    "solve": _solve,
    "make-subject": _make_subject,
    "share": _share,
    "order": _order,
    "compare": _compare,
    "convert": _convert,
    "nth-term": _nth_term,
    "hcf": _hcf,
    "lcm": _lcm,
    "prime-factors": _prime_factors,
    "round": _round,
}
