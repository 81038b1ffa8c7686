"""The verdict on one answer, read already: its value, its form, the mistake that it shows."""

from __future__ import annotations

from itembank.items.item import Item
from itembank.marking.form.completed import completed
from itembank.marking.form.missing_form import asked_for, form_of
from itembank.marking.form.policy import Policy, policy
from itembank.marking.form.rounded_answer import NOT_ROUNDED, unrounded
from itembank.marking.form.units_beside import (
    STANDS_BESIDE,
    counted_wrongly,
    in_another_unit,
    without_unit,
)
from itembank.marking.telling.hints import hint
from itembank.marking.telling.nearly import wrong_unit
from itembank.marking.typing.filled import filled
from itembank.marking.verdict import Marked, Verdict
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.marking.worth.same_worth import same
from itembank.marking.worth.typed_maths import alike, tidy
from itembank.notation import tree as t
from itembank.notation.units import UNITS

_PLAIN_NUMBERS = "That cannot be checked here: give whole numbers, fractions or decimals."

_PER_CENT = "The number is right: give the per cent sign as well."

_NO_VALUE = "That has no value that can be compared with the answer: type the answer alone."


def verdict_alone(item: Item, typed: t.Node, answer: str) -> Marked:
    """Return the verdict on an answer without its working; `answer` is the text it stood in."""
    try:
        marked = _verdict(item, typed)
    except (t.NotationError, RecursionError, OverflowError):
        # An answer that arithmetic cannot follow is not worth what any key is worth.
        return Marked(Verdict.WRONG, _NO_VALUE)
    if marked.verdict is Verdict.RIGHT and (fault := counted_wrongly(item, answer)):
        return Marked(Verdict.WRONG_FORM, fault)
    return marked


def _verdict(item: Item, typed: t.Node) -> Marked:
    how = policy(item)
    given, unit_fault = without_unit(item, tidy(typed))
    kind = marking_of(item.ask)
    if kind.unmet is not None:
        marked = _one_of_many(item, how, typed, given)
        # £9 for a factor of 18: a right number of nothing that was asked.
        wrong = marked.verdict is Verdict.RIGHT and unit_fault
        return Marked(Verdict.WRONG, unit_fault) if wrong else marked
    if kind.repeated and isinstance(given, t.Listing):
        given = _once(given, item.key)
    right = same(given, item.key, how.within, how.ordered) and not _other_letter(item, given)
    # 12 g for 12 kg: the right number of the wrong thing, and no matter of form.
    if right and unit_fault:
        beside = unit_fault == STANDS_BESIDE
        return Marked(Verdict.WRONG_FORM if beside else Verdict.WRONG, unit_fault)
    if right:
        fault = form_of(item, how, typed, given)
        if not fault:
            return Marked(Verdict.RIGHT)
        # By its writing: a fraction cancelled too little is worth what the key is worth.
        return _known(item, given, exactly=True) or Marked(
            Verdict.WRONG_FORM, asked_for(item, how, fault)
        )
    # As typed: what is given has lost its unit by now.
    if unit := in_another_unit(item, tidy(typed)):
        return Marked(Verdict.WRONG_FORM, f"Right value: give it in {unit}.")
    # Known mistakes before hints: what a teacher wrote of one says more than any hint.
    known = None if unit_fault else _known(item, given, exactly=False)
    if known:
        return known
    if not unit_fault and not wrong_unit(given, item.key) and unrounded(how, given, item.key):
        return Marked(Verdict.WRONG_FORM, asked_for(item, how, NOT_ROUNDED))
    if isinstance(item.key, t.MixedUnits) and isinstance(given, t.Int | t.Dec | t.Mixed):
        last = item.key.parts[-1].unit
        if same(t.Quantity(given, last), item.key):
            in_last = f"The number is right in {UNITS[last].many}"
            return Marked(Verdict.WRONG_FORM, f"{in_last}: give the unit as well.")
    percent = isinstance(item.key, t.Percent) and not unit_fault
    if percent and isinstance(given, t.Int | t.Dec | t.Mixed):
        if same(t.Percent(given), item.key):
            return Marked(Verdict.WRONG_FORM, _PER_CENT)
        given = t.Percent(given)  # a per cent sign is left out more often than not
        if known := _known(item, given, exactly=False):
            return known
    if (box := filled(item, given)) is not None:
        if same(box, item.key):
            return Marked(Verdict.WRONG_FORM, "Right so far: give only what goes in the box.")
        if known := _known(item, box, exactly=False):
            return known
        given = box
    if isinstance(item.key, t.Product | t.Power) and isinstance(given, t.Listing):
        made = _made(given, item.key)
    else:
        made = False
    if made:
        return Marked(
            Verdict.WRONG_FORM, "Right value: now write the numbers as a product, with × between."
        )
    return Marked(Verdict.WRONG, hint(item, given))


def gives_each(item: Item, typed: t.Node) -> bool:
    """Tell whether an answer to a question with many right ones gives each of its numbers."""
    numbers = marking_of(item.ask).numbers
    try:
        return numbers is not None and len(numbers(item.ask, typed)) == len(t.children(item.key))
    except t.NotationError:  # 1 : 2 = 1 : 2 gives no number
        return False


def _one_of_many(item: Item, how: Policy, typed: t.Node, given: t.Node) -> Marked:
    """Return the verdict where many answers are right: whether it meets what is asked, and why not.

    The sentence says which condition is not met; the key is only an example, and is not told.
    """
    kind = marking_of(item.ask)
    assert kind.unmet is not None
    assert kind.numbers is not None
    try:
        fault = kind.unmet(item.ask, given)
    except t.NotationError:
        return Marked(Verdict.UNREADABLE, _PLAIN_NUMBERS)
    numbers = kind.numbers(item.ask, given)
    if len(numbers) == (len(item.key.parts) if isinstance(item.key, t.Listing) else 1):
        # Held to the form without what was typed about it: 8 of 3 < 8, 4 and 6 of 4 × 6 = 24.
        typed = given = t.Listing(numbers) if len(numbers) > 1 else numbers[0]
    if fault:
        known = _known(item, given, exactly=False, ordered=False)
        return known or Marked(Verdict.WRONG, f"{fault[:1].upper()}{fault[1:]}.")
    if missing := form_of(item, how, typed, given):
        return Marked(Verdict.WRONG_FORM, asked_for(item, how, missing))
    return Marked(Verdict.RIGHT)


def _made(given: t.Listing, key: t.Node) -> bool:
    """Tell whether the numbers of a list multiply to the key: 2, 2, 5 for 2² × 5."""
    first, *rest = given.parts
    return same(t.Product(first, tuple(("×", part) for part in rest)), key)


def _once(given: t.Listing, key: t.Node) -> t.Node:
    """Return a repeated root, 3 and 3, as the one solution that it is."""
    if isinstance(key, t.Relation) and all(same(part, key) for part in given.parts):
        return given.parts[0]
    return given


def _other_letter(item: Item, given: t.Node) -> bool:
    """Tell whether an answer names another letter of the question than the one asked for."""
    match marking_of(item.ask).target(item.ask), given:
        case t.Sym(asked), t.Relation(t.Sym(name), (("=", _),)):
            return name != asked and any(
                name in t.symbols(run) for run in item.prompt if not isinstance(run, str)
            )
    return False


def _known(item: Item, given: t.Node, exactly: bool, ordered: bool = True) -> Marked | None:
    """Return the misconception an answer shows: by its value, or `exactly` as it is written.

    A mistake of form alone, such as cancelling too little, is worth the same as the key; only
    what is written tells it from other forms.
    """
    for slip in item.slips:
        wrong = tidy(slip.wrong)
        if (
            alike(completed(given, wrong), wrong)
            if exactly
            else same(given, wrong, ordered=ordered)
        ):
            return Marked(Verdict.KNOWN, slip.misconception.ask, slip.misconception)
    return None
