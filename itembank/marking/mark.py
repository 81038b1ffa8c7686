"""The verdict on a typed answer: right, right in another form, a known mistake, or wrong.

No text raises, and none costs much: text past the limits of
:mod:`.typing.read_answer` is refused before it is looked at, and arithmetic is bounded before it
begins (:mod:`.worth.worth`).
"""

from __future__ import annotations

from dataclasses import replace

from itembank.items.item import Item
from itembank.marking.answer_alone import gives_each, verdict_alone
from itembank.marking.typing.answer_setting import Setting, setting
from itembank.marking.typing.filled import embedded
from itembank.marking.typing.goes_on import goes_on
from itembank.marking.typing.parsed_answer import Unreadable
from itembank.marking.typing.part_label import without_part_label
from itembank.marking.typing.read_answer import LONGEST, read_answer
from itembank.marking.typing.sorted_numbers import without_sorted_numbers
from itembank.marking.typing.working.working_lines import letters_named, shows_working
from itembank.marking.verdict import Marked, Verdict
from itembank.marking.with_working import verdict_with_working
from itembank.marking.worth.letters_unknown import is_expression
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from itembank.text.late_pattern import late

_NOTHING_TO_SOLVE = "The expression is right: leave out = 0, for there is no equation to solve."

_DRAWN = "The answer is drawn, not typed: hold it against the drawn answer."

_EQUALS_NOTHING = late(r"[^=]*[A-Za-z][^=]*(?P<end>= *0[ .]*)")


def mark(item: Item, answer: str) -> Marked:
    """Return the verdict on a typed answer. Never raises, whatever was typed.

    Where working is shown with the answer, what it comes to is marked (:mod:`.with_working`).

    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("fractions.improper-mixed/core/0")
    >>> from itembank.notation.line import line
    >>> mark(item, line(item.key)).verdict
    <Verdict.RIGHT: 'right'>
    """
    if len(answer) > LONGEST:
        message = f"The answer is longer than {LONGEST} characters: type the answer alone."
        return Marked(Verdict.UNREADABLE, message)
    if marking_of(item.ask).drawn:
        return Marked(Verdict.UNREADABLE, _DRAWN)
    marked = _marked(item, answer)
    if marked.verdict in (Verdict.RIGHT, Verdict.UNREADABLE):
        return marked
    told = goes_on(item, answer, setting(item), marked.verdict is Verdict.WRONG_FORM)
    return Marked(Verdict.UNREADABLE, told) if told else marked


def _marked(item: Item, answer: str) -> Marked:
    asked = setting(item)
    answer = without_part_label(answer.strip(" \t\r\n"), asked)
    answer = without_sorted_numbers(item, answer)
    if named := letters_named(answer) - asked.letters:
        asked = replace(asked, letters=asked.letters | named)
    if is_expression(item.key) and (found := _EQUALS_NOTHING.fullmatch(answer)):
        alone = _marked(item, answer[: found.start("end")])
        if alone.verdict is Verdict.RIGHT:
            return Marked(Verdict.WRONG_FORM, _NOTHING_TO_SOLVE)
        if alone.verdict is Verdict.KNOWN:
            return alone
    whole, typed = _whole(item, answer, asked)
    settled = whole.verdict in (Verdict.RIGHT, Verdict.KNOWN)
    if settled or marking_of(item.ask).reads or not shows_working(answer):
        return whole
    if typed is not None and isinstance(item.key, t.Listing) and gives_each(item, typed):
        return whole  # 6 × 8 = 48 gives two numbers, and is no working that leads to 48
    if typed is not None and (letter := embedded(item, typed)):
        return Marked(Verdict.WRONG_FORM, f"Right so far: now write what {letter} is.")
    try:
        return verdict_with_working(item, answer, asked, typed) or whole
    except (t.NotationError, RecursionError, OverflowError):
        return whole


def _whole(item: Item, answer: str, asked: Setting) -> tuple[Marked, t.Node | None]:
    """Return the verdict on a text as one answer, and the tree it was read as."""
    try:
        typed = read_answer(", ".join(answer.split("\n")), asked)
    except Unreadable as error:
        return Marked(Verdict.UNREADABLE, str(error)), None
    return verdict_alone(item, typed, answer), typed
