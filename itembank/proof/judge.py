"""The outcome of proving one item: proved, disproved, or left to a person.

A pack stops at the first key that is not proved; a bank wants to hear about every one of its
items. So :func:`judge` answers for any item and raises nothing.
"""

from __future__ import annotations

from itembank.items.asks import asked
from itembank.items.forms.factor_forms import TOO_LARGE
from itembank.items.forms.form_rules import form_words
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.clock import DAY
from itembank.notation.parse import parse_written
from itembank.notation.value import exact
from itembank.proof.claim.dimensions import unlike_things
from itembank.proof.claim.finding import Finding
from itembank.proof.claim.key_fits import mismatched
from itembank.proof.claim.key_solutions import value_given
from itembank.proof.claim.not_understood import not_understood
from itembank.proof.claim.printed import unprinted
from itembank.proof.claim.reach import out_of_reach
from itembank.proof.claim.repeats import REPEATS, repeats
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.exact.judged_form import form_left_open
from itembank.proof.exact.key_forms import key_form_fault
from itembank.proof.outcome import Outcome, State


def judge(item: Item) -> Outcome:
    """Return what both roads make of the key of `item`; never raises.

    >>> from itembank.items.item import Find, Tier
    >>> from itembank.notation import parse
    >>> target = parse("3/4 + 1/6")
    >>> def asked(key):
    ...     return Item(
    ...         "larkhythe:a", "fractions", Tier.CORE, ("Work out ", target, "."), Find(target),
    ...         parse(key), "lowest-terms", (), (), (), 1, (),
    ...     )
    >>> judge(asked("11/12")).state
    <State.PROVED: 'proved'>
    >>> judge(asked("4/10")).state
    <State.DISPROVED: 'disproved'>
    """
    try:
        return _judged(item)
    except t.NotationError as error:
        return Outcome(State.NEEDS_PERSON, _sentence(f"this cannot be proved: {error}"))
    except Exception:  # an item of a bank must not stop the proof of the others
        says = f"the proof broke off at {not_understood(item.ask)}"
        return Outcome(State.NEEDS_PERSON, _sentence(says))


def _judged(item: Item) -> Outcome:
    fault = unprinted(item)
    if fault:
        return Outcome(State.NEEDS_PERSON, _sentence(fault))
    if unlike := unlike_things(asked(item.ask)):
        return Outcome(State.NEEDS_PERSON, _sentence(unlike))
    if large := out_of_reach(item):
        return Outcome(State.NEEDS_PERSON, _sentence(large))
    first = by_first_road(item)
    if loose := form_left_open(item, first.answer):
        return Outcome(State.NEEDS_PERSON, _sentence(loose))
    # sympy sees only what is small and what the first road could settle.
    second = _by_second_road(item)
    answers = (first.shown, second.shown)
    # Before anything is said of the key: where the roads part, one of them has a fault.
    if bool(first.fault) != bool(second.fault):
        says = f"the two roads do not agree: {first.fault or second.fault}"
        return Outcome(State.NEEDS_PERSON, _sentence(says), *answers)
    if first.fault and _other_day(item, first):
        return Outcome(State.NEEDS_PERSON, "The times are of different days.", *answers)
    # Of a length that was to be an area there is no saying what it should be worth.
    fault = mismatched(item) or first.fault
    if fault:
        return Outcome(State.DISPROVED, _sentence(fault), *answers)
    # The form comes last. To say that 22/24 is not in lowest terms is right only where it is
    # worth the right amount.
    fault = key_form_fault(item)
    if TOO_LARGE in fault:
        return Outcome(State.NEEDS_PERSON, _sentence(fault), *answers)
    if fault:
        says = f"the key is worth the right amount but is not {form_words(item.form)}: {fault}"
        return Outcome(State.DISPROVED, _sentence(says), *answers)
    if repeats(item):
        says = f"{REPEATS}: look whether anything is left to do"
        return Outcome(State.NEEDS_PERSON, _sentence(says), *answers)
    return Outcome(State.PROVED, "", *answers)


def _other_day(item: Item, first: Finding) -> bool:
    """Tell whether a key differs from what equations with times of day come to by whole days.

    From t + 50 min = 00:20 follows a time before midnight, so that the key is 23:30.
    """
    parts = {type(part) for node in asked(item.ask) for part in t.walk(node)}
    if not {t.ClockTime, t.Sym} <= parts:
        return False
    try:
        answer = parse_written(first.shown)
        apart = exact(value_given(answer)) - exact(value_given(item.key))
    except t.NotationError:
        return False
    return apart != 0 and apart % DAY == 0


def _by_second_road(item: Item) -> Finding:
    from itembank.proof.sympy.sympy_road import by_second_road

    return by_second_road(item)


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:] + ("" if text.endswith(".") else ".")
