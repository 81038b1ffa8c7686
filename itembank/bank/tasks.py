"""Each task as the question it makes of the mathematics that is given.

A task gets the item, its lines, and the trees it is about (the model's, or the prompt's), and
returns an :data:`~itembank.items.item.Ask`, or raises :class:`NeedsPerson`.
"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.bank.maths import Maths, words_of
from itembank.bank.model import BankItem
from itembank.bank.wording import letter_said, order_detail, rounding, subject_letter
from itembank.checking.finding import text
from itembank.items.item import (
    Ask,
    Common,
    Compare,
    Find,
    Inequality,
    Order,
    Rewrite,
    Round,
    Sequence,
    Solve,
    Subject,
)
from itembank.notation.tree import (
    Blank,
    Bracket,
    ClockTime,
    Dec,
    Either,
    Int,
    Listing,
    Mixed,
    MixedUnits,
    Money,
    Neg,
    Node,
    NotationError,
    Percent,
    Quantity,
    Ratio,
    Relation,
    Sym,
    add,
    equals,
    symbols,
)

MOST_BARE_WORDS = 4
"""As in ‘What is {12 : 18}?’; with more words, it may be a word problem."""


class NeedsPerson(NotationError):
    """The tool cannot work out this item's answer; the message says why, in a sentence."""


def is_short(maths: Maths) -> bool:
    """Whether there are so few words that the mathematics is all of the question."""
    words = " ".join(run for run in maths.runs if isinstance(run, str))
    return len(words.split()) <= MOST_BARE_WORDS


def _flat(given: list[Node]) -> Iterator[Node]:
    """Yield the nodes; a list of relations, as in x = 5, y = 2, is each of them."""
    for node in given:
        if isinstance(node, Listing) and all(isinstance(part, Relation) for part in node.parts):
            yield from node.parts
        else:
            yield node


def parted(given: list[Node]) -> tuple[list[Relation], list[Node]]:
    """Return the relations among the nodes, and the others."""
    relations: list[Relation] = []
    others: list[Node] = []
    for node in _flat(given):
        if isinstance(node, Relation):
            relations.append(node)
        else:
            others.append(node)
    return relations, others


def _one(given: list[Node], task: str) -> Node:
    if len(given) != 1:
        raise NeedsPerson(
            f"To {task} takes one piece of mathematics in {{ }}; here are {len(given)}. "
            "Give a model that says what is worked out."
        )
    if isinstance(given[0], Either):
        raise NeedsPerson(f"To {task}, there is more than one expression here, joined by or.")
    return given[0]


def _work_out(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    relations, others = parted(given)
    if not relations:
        target = _one(others, "work this out")
        if isinstance(target, Listing) and not maths.model:
            raise NeedsPerson(f"The words do not say what to do with {text(target)}: add ‘task’.")
        if symbols(target):
            return Rewrite(target, "simplify")
        if not (maths.model or is_short(maths)) and _is_plain(target):
            raise NeedsPerson(
                f"{text(target)} alone leaves nothing to work out: add a model of the words."
            )
        return Find(target)
    if others:
        return Find(_one(others, "work this out"), tuple(relations))
    letters = sorted({name for relation in relations for name in symbols(relation)})
    if len(letters) != 1:
        raise NeedsPerson("The model does not say which letter is asked for: add ‘find’.")
    return Find(Blank() if letters[0] == "□" else Sym(letters[0]), tuple(relations))


def _is_plain(node: Node) -> bool:
    """Whether a tree is one number as it stands, with no sum to work out in it.

    A fraction is not: 28/9 is a whole number and a fraction, to be worked out.
    """
    match node:
        case Neg(of) | Percent(of) | Money(of, _) | Quantity(of, _) | Bracket(of):
            return _is_plain(of)
        case Int() | Dec() | Mixed() | MixedUnits() | ClockTime():
            return True
    return False


def _simplify(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    target = _expression(given, "simplify")
    return Rewrite(target, "simplify") if symbols(target) else Find(target)


def _expand(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    return Rewrite(_expression(given, "expand"), "expand")


def _factorise(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    return Rewrite(_expression(given, "factorise"), "factorise")


def _expression(given: list[Node], task: str) -> Node:
    target = _one(given, task)
    if isinstance(target, Relation | Listing):
        raise NeedsPerson(f"To {task} takes an expression, and {text(target)} is not one.")
    return target


def _solve(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    relations, others = parted(given)
    letters = {name for relation in relations for name in symbols(relation)}
    if not relations or not letters:
        raise NeedsPerson("To solve takes an equation or an inequality with a letter in it.")
    # "Solve {2x + 1 = 7} for {x}": the letter is named again, which changes nothing.
    if any(not (isinstance(node, Sym) and node.name in letters) for node in others):
        raise NeedsPerson("To solve takes equations or one inequality, and there is more here.")
    signs = {op for relation in relations for op, _ in relation.rest}
    letter = letter_said(words_of(maths))
    if letter and letter not in letters:
        raise NeedsPerson(f"The words ask for {letter}, which is not in the mathematics.")
    if letter and len(letters) > 1 and signs == {"="}:
        return Find(Sym(letter), tuple(relations))
    if signs == {"="}:
        return Solve(tuple(relations))
    if len(relations) == 1 and "=" not in signs and "≠" not in signs:
        return Inequality(relations[0])
    raise NeedsPerson("Several inequalities, or equations among them, are not solved here.")


def _make_subject(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    relations, others = parted(given)
    if len(relations) != 1:
        raise NeedsPerson("To make a letter the subject takes one formula.")
    named = [node for node in others if isinstance(node, Sym)]
    if len(named) == 1 and len(others) == 1:
        return Subject(relations[0], named[0])
    letter = subject_letter(words_of(maths))
    if others or not letter:
        raise NeedsPerson(
            "The prompt does not say which letter becomes the subject: put it in { }."
        )
    return Subject(relations[0], Sym(letter))


def _share(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    shares = [node for node in given if isinstance(node, Ratio)]
    wholes = [node for node in given if not isinstance(node, Ratio | Relation | Listing)]
    if len(shares) != 1 or len(wholes) != 1 or len(given) != 2:
        raise NeedsPerson("To share takes one amount and one ratio.")
    count = len(shares[0].parts)
    if count > 6:
        raise NeedsPerson("A share in more than six parts is not worked out here.")
    letters = tuple(Sym(name) for name in "abcdef"[:count])
    total = equals(_joined(letters), wholes[0])
    return Find(Listing(letters), (total, equals(Ratio(letters), shares[0])))


def _joined(letters: tuple[Sym, ...]) -> Node:
    return add(letters[0], *letters[1:])


def _things(given: list[Node], task: str) -> tuple[Node, ...]:
    """Return the parts of a list, or several pieces of mathematics, as things."""
    if len(given) == 1 and isinstance(given[0], Listing):
        return given[0].parts
    if len(given) > 1 and not any(isinstance(node, Listing | Relation) for node in given):
        return tuple(given)
    raise NeedsPerson(f"{task} takes a list, {{1, 2, 3}}, or several pieces of mathematics.")


def _order(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    detail = order_detail(words_of(maths))
    if detail is None:
        raise NeedsPerson("The prompt says neither ‘smallest first’ nor ‘largest first’.")
    return Order(_things(given, "To order"), detail)


def _compare(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    things = _things(given, "To compare")
    if len(things) != 2:
        raise NeedsPerson(f"To compare takes two numbers; here are {len(things)}.")
    return Compare(things[0], things[1])


def _convert(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    from itembank.bank.wording import form_in_words

    if item.form is None and not form_in_words(words_of(maths)):
        raise NeedsPerson("It is not said what to convert to: add ‘form’.")
    return Find(_expression(given, "convert"))


def _nth_term(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    terms = _things(given, "The nth term")
    if len(terms) < 3:
        raise NeedsPerson("The nth term takes at least three terms.")
    return Sequence(terms)


def _hcf(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    return Common(_things(given, "The highest common factor"), "hcf")


def _lcm(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    return Common(_things(given, "The lowest common multiple"), "lcm")


def _prime_factors(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    return Find(_expression(given, "write as a product of primes"))


def _round(item: BankItem, maths: Maths, given: list[Node]) -> Ask:
    found = rounding(words_of(maths))
    if found is None:
        raise NeedsPerson(
            "It is not said what to round to: write ‘to 2 decimal places’, "
            "‘to 1 significant figure’ or ‘to the nearest 10’."
        )
    detail, amount = found
    target = given[0] if maths.model or len(given) > 1 else _one(given, "round")
    if isinstance(target, Relation | Listing | Ratio | Either):
        raise NeedsPerson(f"To round takes a number, and {text(target)} is not one.")
    return Round(target, detail, amount)


TASKS = {
    "work-out": _work_out,
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
