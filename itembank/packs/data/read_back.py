"""The pack's data back into items: lines become trees again, and have to be what was printed."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from itembank.figures.figure import Figure
from itembank.items import item as items
from itembank.items.forms.form_rules import FORMS, form_words
from itembank.items.item import Item, Tier
from itembank.marking.form.policy import accept_fault
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.mathml import mathml
from itembank.notation.parse import ParseError, parse_written, reading_of_written
from itembank.notation.words import words
from itembank.packs.data.asks import read_ask
from itembank.packs.data.pack_data import Data
from itembank.packs.data.pack_item import Maths, PackItem, Picture, TextRun


class Mismatch(t.NotationError):
    """A stored piece of mathematics whose faces do not say the same thing."""


def read_picture(stored: Picture | None) -> Figure | None:
    """Return the figure that a pack holds.

    Raises:
        NotationError: its data makes no sense, or its words do not say what it shows.
    """
    if stored is None:
        return None
    from itembank.figures.figure import words as figure_words

    figure = stored.figure
    if figure_words(figure) != stored.words:
        raise Mismatch("the words of a figure do not say what its data shows")
    return figure


def read_maths(maths: Maths, pence: bool = True) -> t.Node:
    """Return the tree that a stored line writes; with `pence` false, p is a letter in it.

    Raises:
        NotationError: the line cannot be read, or another face says something else.
    """
    try:
        node = parse_written(maths.line, pence=pence)
    except ParseError as error:
        raise t.NotationError(f"the line ‘{maths.line}’ cannot be read: {error}") from None
    if line(node, pence=pence) != maths.line:
        written = line(node, pence=pence)
        raise Mismatch(f"the line ‘{maths.line}’ should be written ‘{written}’")
    for face, written in (("MathML", mathml(node)), ("words", words(node))):
        if getattr(maths, face.lower()) != written:
            raise Mismatch(f"the {face} and the line ‘{maths.line}’ do not say the same")
    return node


def said_now(stored: PackItem) -> PackItem:
    """Return a stored item whose mathematics is said as it is said today.

    How a line is said aloud was bettered more than once, and follows from the line alone: a pack
    of an earlier day is as good as ever. A line that cannot be read stays, for :func:`read_item`
    to refuse.
    """
    pence = not _letter_p(stored)
    updated: PackItem = _words_anew(stored, pence)
    return updated


def _words_anew(value: Any, pence: bool) -> Any:
    """Return stored data with the words of each piece of mathematics in it taken from its line."""
    if isinstance(value, list | tuple):
        return type(value)([_words_anew(part, pence) for part in value])
    if not isinstance(value, Data):
        return value
    parts = {name: _words_anew(getattr(value, name), pence) for name in type(value).model_fields}
    if isinstance(value, Maths):
        with suppress(ParseError, t.NotationError):
            parts["words"] = words(parse_written(value.line, pence=pence))
    return value.model_copy(update=parts)


def read_item(stored: PackItem) -> Item:
    """Return a stored item as an item that can be proved again.

    The proofs start from what is stored, not from the address: what is printed is what counts.

    Raises:
        NotationError: a line cannot be read, faces differ, or the question makes no sense.
    """
    if stored.key.form not in FORMS:
        raise t.NotationError(f"there is no form called ‘{stored.key.form}’")
    if stored.key.form_words != form_words(stored.key.form):
        raise Mismatch(f"form_words does not describe the form ‘{stored.key.form}’")
    for word in stored.accept:
        if fault := accept_fault(word):
            raise t.NotationError(fault)
    earned = sum(step.marks for step in stored.steps)
    if earned not in (0, stored.marks):
        raise Mismatch(f"its steps earn {earned} marks, and it is worth {stored.marks}")
    if any(step.marks for step in stored.steps if step.maths is None):
        raise Mismatch("a step without mathematics earns marks")
    pence = not _letter_p(stored)
    figure, key_figure = read_picture(stored.picture), read_picture(stored.key_picture)
    return Item(
        address=stored.address,
        topic=stored.topic,
        tier=Tier(stored.tier),
        prompt=tuple(
            run.text if isinstance(run, TextRun) else read_maths(run, pence)
            for run in stored.prompt
        ),
        ask=read_ask(stored.ask, pence, figure, key_figure),
        key=read_maths(stored.key, pence),
        form=stored.key.form,
        steps=tuple(
            items.Step(
                step.say,
                None if step.maths is None else read_maths(step.maths, pence),
                read_picture(step.picture),
            )
            for step in stored.steps
        ),
        slips=tuple(
            items.Slip(
                items.Misconception(misconception.id, misconception.name, misconception.ask),
                read_maths(misconception.wrong, pence),
            )
            for misconception in stored.misconceptions
        ),
        twin=(stored.address,),
        marks=stored.marks,
        constants=tuple(stored.ask.constants),
        accept=tuple(stored.accept),
        figure=figure,
        key_figure=key_figure,
    )


def _letter_p(stored: PackItem) -> bool:
    """Tell whether p is a letter in a stored item; as :func:`~.parse.reading` finds it."""
    lines = [run.line for run in stored.prompt if not isinstance(run, TextRun)]
    lines += [stored.key.line, *stored.ask.target, *stored.ask.relations]
    lines += [step.maths.line for step in stored.steps if step.maths is not None]
    lines += [misconception.wrong.line for misconception in stored.misconceptions]
    return not reading_of_written(lines).pence
