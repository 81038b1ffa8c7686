"""Whether a key only says the question again: with its terms in another order, or respelled.

27/3 is worth what {27/3} comes to, and is no answer. Two trees are held for the same writing
where they differ in the order of terms and factors, in brackets around the whole of a part, or
in the spelling of one operation (27 ÷ 3 and 27/3). Whatever takes a step of work is not: x^2 for
x × x, 2x − 3y for 2x + (−3y), 0.75 for 75%.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import replace
from typing import Any

from itembank.items.asks import (
    Answered,
    Ask,
    FaultyWorking,
    Find,
    Handlers,
    Inequality,
    Order,
    Pick,
    Rewrite,
    Round,
    Solve,
    Subject,
    WhoIsRight,
)
from itembank.items.forms.number_forms import bare
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.proof.claim.key_solutions import value_given

REPEATS = "the key only repeats the question"
_OF_FRACTIONS = ("fraction", "lowest-terms", "improper", "simplest", "number")
_TURNED = {">": "<", "≥": "≤"}

Writing = Hashable
"""A tree as it is written, but for what does not count; equal for two that say the same."""


def repeats(item: Item) -> bool:
    """Tell whether the key of `item` is the printed question over again.

    That may be right (a list that is in order already, a fraction that is in its lowest terms),
    but it is for a person to say.

    >>> from itembank.items.item import Tier
    >>> from itembank.notation import parse
    >>> def asked(question, key):
    ...     target = parse(question)
    ...     return Item("a:b", "a.b", Tier.CORE, ("Work out ", target), Find(target), parse(key),
    ...         "value", (), (), (), 1, ())
    >>> [repeats(asked("27/3", key)) for key in ("27/3", "27 ÷ 3", "9")]
    [True, True, False]
    """
    return REPEATING.of(item.ask)(item.ask, item)


REPEATING: Handlers[Callable[[Any, Item], bool]] = Handlers(
    "repeating", "repeats", otherwise=lambda ask, item: False
)
"""Whether a key only says the question again, for each kind of question; by itself none does."""


def found_repeats(ask: Find, item: Item) -> bool:
    """Tell whether the key is what is to be worked out, or is told outright."""
    if ask.relations:
        return any(_told(relation, ask.target, _value(item.key)) for relation in ask.relations)
    if not _is_printed(ask.target, item):
        return False  # the sum is said in words: the reciprocal of 5
    if item.form in _OF_FRACTIONS and _is_division(ask.target):
        return False  # 3 ÷ 4 as a fraction
    return _same(ask.target, _value(item.key))


def order_repeats(ask: Order, item: Item) -> bool:
    """Tell whether the key has the numbers in the order in which they are printed."""
    parts = item.key.parts if isinstance(item.key, t.Listing) else ()
    return len(parts) == len(ask.things) and all(map(_same, ask.things, parts))


def rewriting_repeats(ask: Rewrite, item: Item) -> bool:
    """Tell whether the key is the expression as it is printed."""
    return _is_printed(ask.target, item) and _same(ask.target, item.key)


def rounding_repeats(ask: Round, item: Item) -> bool:
    """Tell whether the key is the number as it is printed: 3.50 rounds to 3.5, a zero counts."""
    return bare(ask.target) == bare(item.key)


def range_repeats(ask: Inequality, item: Item) -> bool:
    """Tell whether the key is the inequality as it is printed."""
    return _same(ask.relation, item.key)


def solution_repeats(ask: Solve, item: Item) -> bool:
    """Tell whether the key is what the equations say outright."""
    return _solved(ask.relations, item.key)


def pick_repeats(ask: Pick, item: Item) -> bool:
    """Tell whether the key repeats the question of which one answer is picked."""
    return repeats(replace(item, ask=ask.of))


def subject_repeats(ask: Subject, item: Item) -> bool:
    """Tell whether the key is the formula, with its subject already alone."""
    return any(_told(ask.relation, ask.letter, case) for case in _cases(item.key))


def answer_repeats(ask: Answered, item: Item) -> bool:
    """Tell whether the answer that is judged repeats its question."""
    return _given(ask.of, ask.form, item, ask.answer)


def working_repeats(ask: FaultyWorking, item: Item) -> bool:
    """Tell whether the answer in the key repeats the question that was worked out."""
    parts = item.key.parts[1:] if isinstance(item.key, t.Listing) else ()
    return any(_given(ask.of, ask.form, item, part) for part in parts)


def answers_repeat(ask: WhoIsRight, item: Item) -> bool:
    """Tell whether one of the answers that are judged repeats their question."""
    return any(_given(ask.of, ask.form, item, answer) for _, answer in ask.answers)


def _given(of: Ask, form: str, item: Item, answer: t.Node) -> bool:
    return repeats(replace(item, ask=of, form=form, key=answer))


def _is_printed(target: t.Node, item: Item) -> bool:
    # Most often it stands there whole, and no part has to be looked at.
    return target in item.prompt or any(
        target in t.walk(run) for run in item.prompt if not isinstance(run, str)
    )


def _value(key: t.Node) -> t.Node:
    try:
        return value_given(key)
    except t.NotationError:
        return key


def _cases(key: t.Node) -> tuple[t.Node, ...]:
    cases = key.parts if isinstance(key, t.Either) else (key,)
    return tuple(_value(case) for case in cases)


def _is_division(node: t.Node) -> bool:
    return isinstance(node, t.Product) and [op for op, _ in node.rest] == ["÷"]


def _told(relation: t.Relation, target: t.Node, value: t.Node) -> bool:
    """Tell whether a relation of the question says outright that `target` is `value`."""
    sides = (relation.first, *(side for _, side in relation.rest))
    return any(bare(side) == bare(target) for side in sides) and any(
        _same(side, value) for side in sides if bare(side) != bare(target)
    )


def _solved(relations: tuple[t.Relation, ...], key: t.Node) -> bool:
    if len(relations) == 1:
        (relation,) = relations
        # x = 3 as the key to x = 3.
        if _same(relation, key):
            return True
        letters = [t.Sym(name) for name in t.symbols(relation)]
        return len(letters) == 1 and _told(relation, letters[0], _value(key))
    parts = key.parts if isinstance(key, t.Listing) else ()
    return len(parts) == len(relations) and {writing(part) for part in parts} == {
        writing(relation) for relation in relations
    }


def _same(first: t.Node, other: t.Node) -> bool:
    # The letters and numbers are looked at first: most keys have others than the question.
    return _leaves(first) == _leaves(other) and writing(first) == writing(other)


def _leaves(node: t.Node) -> frozenset[t.Node]:
    return frozenset(part for part in t.walk(node) if isinstance(part, t.Int | t.Sym))


def writing(node: t.Node) -> Writing:
    """Return a tree as it is written, without the order of its terms and factors.

    >>> from itembank.notation import parse
    >>> pairs = (("3(x + 2)", "(2 + x)3"), ("27 ÷ 3", "27/3"), ("3 × x", "3x"), ("1/2 × x", "x/2"))
    >>> [writing(parse(text)) == writing(parse(other)) for text, other in pairs]
    [True, True, False, False]
    """
    node = bare(node)
    match node:
        case t.Neg(of):
            return ("minus", writing(of))
        case t.Sum(first, rest):
            lead = bare(first)
            start = ("-", writing(lead.of)) if isinstance(lead, t.Neg) else ("+", writing(lead))
            return ("sum", *_sorted([start, *((op, writing(term)) for op, term in rest)]))
        case t.Juxt() | t.Product() | t.Frac():
            return _product(node)
        case t.Power(base, exponent):
            return ("power", writing(base), writing(exponent))
        case t.Root(of, index):
            return ("root", writing(of), index)
        case t.Percent(of):
            return ("per cent", writing(of))
        case t.Money(amount, sign):
            return ("money", writing(amount), sign)
        case t.Quantity(amount, unit):
            return ("quantity", writing(amount), unit)
        case t.Ratio(parts) | t.Listing(parts):
            return (type(node).__name__, *map(writing, parts))
        case t.Either(parts):
            return ("or", *_sorted([writing(part) for part in parts]))
        case t.Relation(first, rest):
            return _relation(first, rest)
        case t.Dec(whole, places, ""):
            # 0.50 and 0.5 are one number with one writing. Where the zeros count, as in rounding,
            # the kind of question has its own rule.
            places = places.rstrip("0")
            return t.Dec(whole.lstrip("0") or "0", places) if places else t.Int(int(whole))
    if below := t.children(node):
        return (t.frame(node), *map(writing, below))
    return node


def _relation(first: t.Node, rest: tuple[tuple[str, t.Node], ...]) -> Writing:
    ops = [op for op, _ in rest]
    sides = [writing(first), *(writing(side) for _, side in rest)]
    # These two mean the same read from either end; the others are turned to point one way.
    if set(ops) <= {"=", "≠"}:
        return ("relation", tuple(ops), *_sorted(sides))
    if any(op in _TURNED for op in ops):
        turned = [_TURNED.get(op, {"<": ">", "≤": "≥"}.get(op, op)) for op in reversed(ops)]
        return ("relation", tuple(turned), *reversed(sides))
    return ("relation", tuple(ops), *sides)


def _product(node: t.Node) -> Writing:
    """Return a product or quotient as its factors, over and under.

    With letters or roots, 3 × x and 3x are two writings: to leave out the times sign is what a
    pupil is asked to do there.
    """
    algebraic = any(isinstance(part, t.Sym | t.Root) for part in t.walk(node))
    signed = algebraic and isinstance(node, t.Product)
    factors: list[tuple[str, Writing]] = []
    minus = _gather(node, "over", factors, algebraic)
    # One minus is written in many places, (−a)/b or −(a/b), and is one writing. To see that two
    # of them are a plus is a step of work, so two are kept.
    if minus == 1:
        return ("minus", ("times" if signed else "product", *_sorted(factors)))
    return ("times" if signed else "product", *_sorted(factors), *(["minus"] * minus))


def _gather(node: t.Node, side: str, into: list[tuple[str, Writing]], algebraic: bool) -> int:
    """Add the factors of a tree to `into`; return how many minus signs stand before them."""
    node = bare(node)
    other = "under" if side == "over" else "over"
    match node:
        # A minus before a sum is left where it is: −(a + b) and −a − b are a step apart.
        case t.Neg(of) if not isinstance(bare(of), t.Sum):
            return 1 + _gather(of, side, into, algebraic)
        case t.Frac(top, bottom):
            return _gather(top, side, into, algebraic) + _gather(bottom, other, into, algebraic)
        case t.Juxt(factors):
            return sum(_gather(factor, side, into, algebraic) for factor in factors)
        case t.Product(first, rest):
            return _gather(first, side, into, algebraic) + sum(
                _gather(factor, other if op == "÷" else side, into, algebraic)
                for op, factor in rest
            )
    into.append((side, writing(node)))
    return 0


def _sorted(parts: list[Writing] | list[tuple[str, Writing]]) -> list[Writing]:
    # By their text, since parts of different kinds have no order among themselves.
    return sorted(parts, key=repr)
