"""Whether a key has the form that is asked for: by its name, by the words and by the question.

The form an item names is a rule of its own (:mod:`itembank.items.forms.form_rules`). Here the rest
is held against the question: the digits of a rounded number, a power of the base that is named, and
what the words ask beside the form (*as a single fraction*, *with positive indices*).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Any, NamedTuple

from itembank.items.asks import (
    Ask,
    Find,
    Handlers,
    Order,
    Rewrite,
    Solve,
    Subject,
)
from itembank.items.forms.form_rules import form_fault
from itembank.items.forms.number_forms import (
    bare,
    integer,
    unsigned,
    whole_parts,
)
from itembank.items.forms.power_forms import factors_of
from itembank.items.forms.value_forms import is_prime, value
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.proof.exact.forms_in_words import can_have, fault_by_words, value_of_key
from itembank.proof.exact.rounding import rounding_fault
from itembank.wording.tasks.answers.forms_said import (
    ANY_FORM,
    FORMS_SAID,
    PRIME_POWERS,
    PRIMES,
    PRODUCT,
    SIMPLIFY,
)


def key_form_fault(item: Item) -> str:
    """Return what keeps the key from the form that is asked for, or an empty string.

    >>> from itembank.items.topics.registry import find_item
    >>> key_form_fault(find_item("fractions.lowest-terms/core/3"))
    ''
    """
    fault, rules = form_fault(item.form, item.key), RULES.of(item.ask)
    if fault and all(
        form_fault(item.form, spelling) for spelling in rules.respelled(item.ask, item)
    ):
        # To write −5 as a fraction, (−5)/1 is the answer, which is no lowest form of any number.
        over_one = rules.over_one and _whole_as_fraction(item, rules.target(item.ask))
        return "" if over_one else fault
    words = "".join(run if isinstance(run, str) else HOLE for run in item.prompt)
    asked = fault_by_words(item, words) if rules.words and _names_a_form(words) else ""
    return asked or rules.finished(item.ask, item)


@lru_cache(maxsize=1024)
def _names_a_form(words: str) -> bool:
    """Tell whether words may name a form. Read once for all the items of a topic."""
    return ANY_FORM.search(words) is not None


class FormRules(NamedTuple):
    """How the form of a key is held to the question, for one kind of question.

    `respelled` yields the key in other spellings that may be meant, where the question leaves no
    doubt; `finished` returns what keeps the key from being finished that only the question can
    tell; `words` says whether words of the prompt name a form of powers, products or fractions;
    `target` is the one expression that they are about, if there is one; `over_one` says that the
    key may be a whole number over 1 where the target is one.
    """

    respelled: Callable[[Any, Item], Iterator[t.Node]] = lambda ask, item: iter(())
    finished: Callable[[Any, Item], str] = lambda ask, item: ""
    words: bool = False
    target: Callable[[Any], t.Node | None] = lambda ask: None
    over_one: bool = False


def form_asked(words: str, ask: Ask, key: t.Node) -> str:
    """Return the form of powers, products or fractions that the words of a prompt ask, or ``""``.

    >>> from itembank.notation import parse
    >>> def asked(words, target, key):
    ...     return form_asked(words, Find(parse(target)), parse(key))
    >>> asked("Write as a single power.", "2^3 × 2^4", "2^7")
    'power'
    >>> asked("Work out.", "2^3 × 2^4", "2^7"), asked("Write as a product.", "5^3", "5 × 5 × 5")
    ('', 'product')
    """
    target = RULES.of(ask).target(ask)
    # With relations the words may be about any of them, so that they bind no one expression.
    if target is None:
        return ""
    if PRIMES.search(words):
        return "prime-powers" if PRIME_POWERS.search(words) else ""
    for form, pattern in FORMS_SAID:
        if pattern.search(words) and can_have(form, "", value_of_key(key)):
            return form
    target = bare(target)
    if isinstance(target, t.Power) and PRODUCT.search(words):
        return "product"
    powers = [part for part in t.walk(target) if isinstance(part, t.Power) and not t.symbols(part)]
    if powers and isinstance(unsigned(key), t.Power) and SIMPLIFY.search(words):
        return "power"
    return ""


_FRACTIONS = ("fraction", "lowest-terms", "improper", "number", "value")
HOLE = "\0"
"""Stands for a piece of mathematics among the words."""


def _subject_turned(ask: Subject, item: Item) -> Iterator[t.Node]:
    key = item.key
    # (y − 2)/3 = x
    if isinstance(key, t.Relation) and len(key.rest) == 1 and bare(key.rest[0][1]) == ask.letter:
        yield t.Relation(ask.letter, ((key.rest[0][0], key.first),))


def _with_letter(ask: Find, item: Item) -> Iterator[t.Node]:
    solved = ask.relations and item.form in ("roots", "solution")
    bare_value = not isinstance(item.key, t.Relation | t.Listing | t.Either)
    if solved and bare_value and isinstance(ask.target, t.Sym):
        yield t.Relation(ask.target, (("=", item.key),))


def _with_letters(ask: Solve, item: Item) -> Iterator[t.Node]:
    """Yield 2, 3 as x = 2 or x = 3, where there is one letter they can be about."""
    if item.form not in ("roots", "solution"):
        return
    letters = frozenset[str]().union(*map(t.symbols, ask.relations))
    values = item.key.parts if isinstance(item.key, t.Listing | t.Either) else (item.key,)
    if len(letters) == 1 and not any(isinstance(v, t.Relation) for v in values):
        letter = t.Sym(next(iter(letters)))
        yield t.Listing(tuple(t.Relation(letter, (("=", v),)) for v in values))


def _whole_as_fraction(item: Item, target: t.Node | None) -> bool:
    """Tell whether the question prints a whole number and the key is it over 1: −5 as (−5)/1."""
    if target is not None and not integer(target) and item.form in _FRACTIONS:
        parts = whole_parts(item.key)
        return isinstance(parts, tuple) and parts[1] == 1
    return False


def _order_finished(ask: Order, item: Item) -> str:
    parts = item.key.parts if isinstance(item.key, t.Listing) else ()
    printed = {bare(thing) for thing in ask.things}
    # A number may be copied as it is printed; one that is written anew is held to be a value.
    loose = [part for part in parts if bare(part) not in printed and not t.symbols(part)]
    return next((fault for fault in map(value, loose) if fault), "")


def _factors_finished(ask: Find | Rewrite, item: Item) -> str:
    if item.form not in ("product", "powers") or (isinstance(ask, Find) and ask.relations):
        return ""
    return _other_factors(ask.target, item.key, item.form)


RULES: Handlers[FormRules] = Handlers("forms", "forms", otherwise=FormRules())
"""How the form of a key is held to each kind of question."""

FOUND = FormRules(
    _with_letter,
    _factors_finished,
    words=True,
    target=lambda ask: None if ask.relations else ask.target,
    over_one=True,
)
IN_WORDS = FormRules(words=True)
REWRITTEN = FormRules(finished=_factors_finished, words=True, target=lambda ask: ask.target)
SOLVED = FormRules(_with_letters)
TURNED = FormRules(_subject_turned)
ROUNDED = FormRules(
    finished=lambda ask, item: rounding_fault(ask.detail, ask.amount, bare(item.key))
)
IN_ORDER = FormRules(finished=_order_finished)


def _other_factors(target: t.Node, key: t.Node, form: str) -> str:
    """Return a sentence if the factors of a product are worked out further than the question's.

    5^4 written out is 5 × 5 × 5 × 5, not 25 × 25; in index form 5 × 5 × 5 × 5 is 5^4, not 625.
    """
    inner = unsigned(key)
    factors = factors_of(inner)
    if not isinstance(factors, tuple) or not isinstance(bare(target), t.Power | t.Product | t.Juxt):
        return ""
    printed = set(_bases(target))
    for factor in map(bare, factors):
        base = bare(factor.base) if isinstance(factor, t.Power) else factor
        # Index form may go on to primes: 4 × 8 is 2^5.
        prime = form == "powers" and isinstance(base, t.Int) and is_prime(base.n)
        if base not in printed and not prime:
            return f"{shown_line(base)} is not a factor that the question shows"
    return ""


def _bases(node: t.Node) -> Iterator[t.Node]:
    """Yield every part of a tree but the exponents."""
    yield bare(node)
    for child in (node.base,) if isinstance(node, t.Power) else t.children(node):
        yield from _bases(child)
