"""What the fields of one item must say together, beyond what each may hold on its own."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from itembank.bank.model.fields import BankItem, GeneratedSet
from itembank.bank.question.as_item import form_of, right_as_well
from itembank.bank.question.given.maths import (
    FieldFault,
    Maths,
    UnreadableMaths,
    read_maths,
    same_worth,
)
from itembank.errors import ItembankError
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Tier
from itembank.items.topics.registry import find_item, find_topic, topic_ids
from itembank.marking.form.policy import accept_fault
from itembank.text.characters import look_alikes
from itembank.wording.tasks.other_kinds.giving import may_be_giving

CANNOT_BE_USED = "The figure cannot be used: "
"""How every fault of a figure begins, where nothing beside it says that it is about one."""


def item_faults(item: BankItem) -> Iterator[FieldFault]:
    """Yield everything wrong with an item that its model alone does not see.

    >>> item = BankItem(id="a-1", tier="core", prompt="Work out {3/4 + }.", key="1")
    >>> [fault.field for fault in item_faults(item)]
    [('prompt',)]
    """
    yield from checked_maths(item)[1]


def checked_maths(item: BankItem) -> tuple[Maths | None, list[FieldFault]]:
    """Return an item's lines as trees, None where they cannot be read, with all of its faults."""
    faults = list(_together(item))
    try:
        maths = read_maths(item)
    except UnreadableMaths as error:
        return None, [*faults, *error.faults]
    if item.misconceptions:
        faults += _blind(item, maths)
    return maths, faults


def new_item_faults(item: BankItem) -> Iterator[FieldFault]:
    r"""Yield everything wrong with an item that comes from no file of a bank.

    What only looks like a letter is told of a file as it is read.

    >>> item = BankItem(id="a-1", tier="core", prompt="Work out {2 + 3} \u0441m.", key="5")
    >>> [fault.field for fault in new_item_faults(item)]
    [('prompt',)]
    """
    for name, value in item.model_dump(mode="json", exclude_none=True).items():
        for text in _texts(value):
            for alike in look_alikes(text):
                yield FieldFault((name,), f"‘{name}’: {alike.says}")
    yield from item_faults(item)


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, cell in value.items():
            yield str(key)
            yield from _texts(cell)
    elif isinstance(value, list | tuple):
        for cell in value:
            yield from _texts(cell)


def _together(item: BankItem) -> Iterator[FieldFault]:
    if item.retired is not None and item.retired_because is None:
        yield FieldFault(("retired",), "A retired item says why: add a line retired_because = “…”.")
    if item.retired_because is not None and item.retired is None:
        yield FieldFault(("retired_because",), "The day is missing: add a line retired = 2026-….")
    if item.retired and item.created and item.retired < item.created:
        yield FieldFault(
            ("retired",), f"It is retired before it was created, on {item.created.isoformat()}."
        )
    if item.find is not None and not item.model:
        yield FieldFault(("find",), "‘find’ is about a model: add ‘model’, or take ‘find’ out.")
    if item.task == "choose" and len(item.options) < 2:
        yield FieldFault(("task",), "To choose takes at least two ‘options’.")
    if item.task == "choose" and item.choose is None:
        yield FieldFault(("task",), "‘choose’ is missing: write least or greatest.")
    if item.options and item.task not in ("choose", None):
        yield FieldFault(("options",), "‘options’ belong to the task choose only.")
    if any(number < 0 for number in item.constants):
        yield FieldFault(("constants",), "‘constants’ are whole numbers, zero or more.")
    for text, why in item.not_needed.items():
        if len(why.split()) < 3:
            yield FieldFault(
                ("not_needed", text),
                f"Say in a few words why the answer does not depend on ‘{text}’, not ‘{why}’.",
            )
        if not stands_in(text, item.prompt):
            yield FieldFault(
                ("not_needed", text), f"‘{text}’ does not stand in the prompt: write it as there."
            )
    if item.figure is not None:
        yield from figure_faults(item.figure)
    for index, word in enumerate(item.accept):
        if fault := accept_fault(word):
            yield FieldFault(("accept", index), fault)
    seen: set[str] = set()
    for index, slip in enumerate(item.misconceptions):
        if slip.id in seen:
            yield FieldFault(
                ("misconceptions", index, "id"), f"This item has two misconceptions ‘{slip.id}’."
            )
        seen.add(slip.id)


def figure_faults(data: Mapping[str, Any]) -> Iterator[FieldFault]:
    """Yield what is wrong with a figure's data, at the key that is at fault."""
    from itembank.figures.figure import FigureError
    from itembank.figures.figure_data import from_data

    try:
        from_data(data)
    except FigureError as error:
        key = getattr(error, "key", "")
        place = ("figure", key) if key in data else ("figure",)
        said = str(error)
        end = "" if said.endswith("?") else "."
        yield FieldFault(place, f"{CANNOT_BE_USED}{said}{end}")


def stands_in(text: str, prompt: str) -> bool:
    """Whether a number of ‘not_needed’ stands in a prompt, spaces and capitals apart.

    >>> stands_in("3 days", "For {3 days} it rains."), stands_in("13", "For {3} days.")
    (True, False)
    """
    plain, within = ("".join(words.split()).casefold() for words in (text, prompt))
    at = within.find(plain)
    while plain and at >= 0:
        before, after = within[at - 1 : at], within[at + len(plain) : at + len(plain) + 1]
        if not (before.isdigit() and plain[0].isdigit()) and not (
            after.isdigit() and plain[-1].isdigit()
        ):
            return True
        at = within.find(plain, at + 1)
    return False


def _blind(item: BankItem, maths: Maths) -> Iterator[FieldFault]:
    for index, (slip, wrong) in enumerate(zip(item.misconceptions, maths.wrong, strict=True)):
        # The form is looked for only where it matters: it takes reading the whole prompt.
        if wrong == maths.key or (
            same_worth(wrong, maths.key) and not form_fault(form_of(item, maths), wrong)
        ):
            yield FieldFault(
                ("misconceptions", index, "wrong"),
                f"‘{slip.wrong}’ is right as well, so this item would hide the mistake "
                f"‘{slip.name}’: change the numbers, or take the misconception out.",
            )
        elif may_be_giving(item.prompt) and right_as_well(item, maths, wrong):
            yield FieldFault(
                ("misconceptions", index, "wrong"),
                f"‘{slip.wrong}’ is not known to be wrong: many answers are right here, and it may "
                f"be one. Give another for ‘{slip.name}’, or take the misconception out.",
            )


def set_fault(made: GeneratedSet, topic: str) -> str:
    """Return what is wrong with a generated set of a file on `topic`, or ``""``.

    >>> set_fault(GeneratedSet(tier="core", count=3, seed=1), "ratio.share")
    ''
    >>> set_fault(GeneratedSet(tier="core", count=3), "ratio.share")
    'A set of so many items needs a ‘seed’, a whole number.'
    """
    if made.addresses:
        if made.count is not None or made.seed is not None:
            return "A set is a ‘count’ with a ‘seed’, or ‘addresses’, not both."
        return " ".join(filter(None, (address_fault(address) for address in made.addresses)))
    if made.count is None:
        return "A set needs ‘count’ and ‘seed’, or ‘addresses’."
    if made.tier is None:
        return "A set of so many items needs a ‘tier’: support, core or challenge."
    if made.seed is None:
        return "A set of so many items needs a ‘seed’, a whole number."
    name = made.topic or topic
    try:
        spaces = find_topic(name).spaces
    except ItembankError as error:
        return str(error)
    if Tier(made.tier) not in spaces:
        return f"{name} has no items of the tier {made.tier}."
    size = len(spaces[Tier(made.tier)])
    if made.count > size:
        return f"{name} has only {size} items of the tier {made.tier}, fewer than {made.count}."
    return ""


def address_fault(address: str) -> str:
    """Return why an address names no generated item, or ``""``.

    >>> address_fault("ratio.share/core/1")
    ''
    """
    try:
        find_item(address)
    except ItembankError as error:
        return str(error)
    return ""


def is_generated(topic: str) -> bool:
    """Whether the tool makes items on a topic itself."""
    return topic in topic_ids()
