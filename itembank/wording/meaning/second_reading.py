"""Holds a model to a second reading of its story, where the shape of the story is known whole."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from fractions import Fraction

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.value import exact, exact_or_none
from itembank.wording.meaning.amounts.comparisons import comparison_reading
from itembank.wording.meaning.amounts.one_and_other import one_and_other_reading
from itembank.wording.meaning.amounts.related import related_reading
from itembank.wording.meaning.amounts.shopping import shopping_reading
from itembank.wording.meaning.amounts.so_much_each import each_reading
from itembank.wording.meaning.amounts.two_that_meet import meeting_reading
from itembank.wording.meaning.doubts.common_knowledge import known_fault
from itembank.wording.meaning.doubts.letters import letter_fault
from itembank.wording.meaning.doubts.not_needed import measured_left_out, needed_fault
from itembank.wording.meaning.doubts.overturned import ALWAYS, UNREAD, overturned
from itembank.wording.meaning.doubts.pairs import pair_fault
from itembank.wording.meaning.doubts.ratio_order import order_fault
from itembank.wording.meaning.doubts.turning_words import turning_fault
from itembank.wording.meaning.measures.clocks import clock_reading
from itembank.wording.meaning.measures.clocks_apart import clocks_apart_reading
from itembank.wording.meaning.measures.rates import rate_reading
from itembank.wording.meaning.measures.rectangles import rectangle_reading
from itembank.wording.meaning.measures.scales import scale_reading
from itembank.wording.meaning.measures.shapes import shape_reading
from itembank.wording.meaning.numbers.averages import average_reading
from itembank.wording.meaning.numbers.puzzles import puzzle_reading
from itembank.wording.meaning.numbers.sequences import sequence_reading
from itembank.wording.meaning.parts.equal_parts import equal_reading
from itembank.wording.meaning.parts.parts_and_rest import parts_and_rest_reading
from itembank.wording.meaning.parts.parts_of import part_reading
from itembank.wording.meaning.parts.percentages import percentage_reading
from itembank.wording.meaning.parts.shares import share_reading
from itembank.wording.meaning.parts.states import (
    beyond_reading,
    holds_reading,
    states_reading,
    that_reading,
)
from itembank.wording.meaning.told.tale import Reading, Tale, late_search
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.sentences.question_sentences import questions

READERS: tuple[Callable[[Tale], Reading | None], ...] = (
    percentage_reading,
    part_reading,
    rate_reading,
    scale_reading,
    share_reading,
    sequence_reading,
    puzzle_reading,
    comparison_reading,
    shape_reading,
    average_reading,
    shopping_reading,
    clock_reading,
    equal_reading,
    related_reading,
    each_reading,
    rectangle_reading,
    one_and_other_reading,
    states_reading,
    beyond_reading,
    holds_reading,
    that_reading,
    meeting_reading,
    clocks_apart_reading,
    parts_and_rest_reading,
)
"""In their order for messages alone: where several know a story, the first is told."""


def meaning_fault(
    runs: Sequence[Run],
    model: Modelled,
    reasons: Mapping[str, str] | None,
    found: frozenset[Fraction],
) -> str:
    """Return how a model goes against what its story means, or ``""``.

    `reasons` are the numbers that are said not to be needed; `found` the values that the model
    may come to.
    """
    used = frozenset(_numbers(model))
    return (
        known_fault(runs, model)
        or letter_fault(runs, model)
        or order_fault(runs, model)
        or pair_fault(runs, model)
        or needed_fault(runs, reasons, used)
        or _below_nothing(runs, model)
        or second_reading_fault(runs, found)
        or _trig_fault(runs, model, found)
        or ("" if read_again(runs, found) else measured_left_out(runs, reasons, used))
    )


def _below_nothing(runs: Sequence[Run], model: Modelled) -> str:
    """Return that *how much* asks for no negative amount, where a key is one."""
    worth = exact_or_none(model.key)
    asking = questions(runs)
    if worth is None or worth >= 0 or not asking:
        return ""
    if not re.match(r"(?:by )?how (?:much|many|far|long)\b", asking[-1], re.I):
        return ""
    return "The words ask how much, and the key is less than nothing."


def _trig_fault(runs: Sequence[Run], model: Modelled, found: frozenset[Fraction]) -> str:
    """Return that nothing holds a sine to its words, where one is in a model of a story."""
    printed = any(
        isinstance(part, t.Trig) for run in runs if not isinstance(run, str) for part in t.walk(run)
    )
    if printed or not model.has(t.Trig) or read_again(runs, found):
        return ""
    return (
        "Whether the words mean sine, cosine or tangent is not read: a person has to look which "
        "of them the model takes."
    )


def _numbers(model: Modelled) -> list[Fraction]:
    found = []
    for part in model.parts():
        try:
            found.append(exact(part))
        except t.NotationError:
            continue
    return found


_SPEAKS_OF: dict[Callable[[Tale], Reading | None], tuple[str, ...]] = {
    puzzle_reading: ("number",),
    average_reading: ("mean", "average", "range"),
    equal_reading: ("equal", "even", "identical", "same"),
    scale_reading: ("map", "plan", "scale", "model", "drawing"),
}
"""Words without which a reader says nothing: looked for first, since they are quickly found."""


def _may_read(reader: Callable[[Tale], Reading | None], tale: Tale) -> bool:
    """Whether a reader may know a story, told by what is quickly seen."""
    text = tale.text.lower()
    if words := _SPEAKS_OF.get(reader):
        return any(word in text for word in words)
    if reader is clock_reading:
        return any(isinstance(node, t.ClockTime) for node in tale.said.nodes)
    if reader is share_reading:
        parts = " part" in text or "for every" in text
        return parts or any(isinstance(node, t.Ratio) for node in tale.said.nodes)
    if reader is shopping_reading:
        return bool(tale.of("money"))
    if reader is percentage_reading:
        return "percentage" in text or bool(tale.of("percent"))
    return True


def second_reading_fault(runs: Sequence[Run], found: frozenset[Fraction]) -> str:
    """Return how the words come to something else than the model does, or ``""``.

    `found` are the values that the model may come to, in its own units and in base units; of a
    model with roots or with π there are none, and no reader comes to it.
    """
    tale = Tale(runs)
    if _left_alone(tale):
        return ""
    if strange := overturned(tale, ALWAYS if found else (*ALWAYS, *UNREAD)):
        return (
            f"‘{' '.join(re.sub(SLOT, '…', strange).split())}’ may make another question of this "
            "story, and nothing reads it: a person has to look whether the model takes it so."
        )
    if not found:
        return ""
    readings = _readings(tale)
    if any(reading.values & found for reading in readings):
        return ""
    if not readings:
        return turning_fault(tale)
    return (
        f"The words read another way than the model: {readings[0].says}. "
        "Look at the model, or word the story so that it can be read in one way only."
    )


def read_again(runs: Sequence[Run], found: frozenset[Fraction]) -> bool:
    """Whether a reader knows a story whole, and comes to one of these values by its words."""
    if not found:
        return False
    tale = Tale(runs)
    known = not _left_alone(tale) and not overturned(tale, ALWAYS)
    return known and any(reading.values & found for reading in _readings(tale))


def _left_alone(tale: Tale) -> bool:
    about = r"\b(?:estimat\w*|approximat\w*|roughly)\b"
    return tale.asks != 1 or late_search(about, tale.text)


def _readings(tale: Tale) -> list[Reading]:
    found = []
    for reader in READERS:
        if _may_read(reader, tale):
            # With a nought where a reader divides, its story is none that it knows.
            with suppress(ZeroDivisionError):
                found.append(reader(tale))
    return [reading for reading in found if reading is not None]
