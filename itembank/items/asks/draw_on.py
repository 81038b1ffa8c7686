"""Add something to a figure: mark a number, plot a point, draw a line or an image, shade a part."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.figures.figure import Figure, FigureError, Reading, ToDraw, kind_of, sound
from itembank.figures.figure_data import to_data
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, register_kind
from itembank.items.asks.layers import Layers
from itembank.items.asks.of_figure import beside_the_question, sentences
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Draw(Ask):
    """Draw on `figure` what the words ask, so that it becomes `shown`, the figure of the answer.

    `wanted` says what has to be read from `shown`, and which part of the figure grows: all else
    stays as it is. The key is a word or two beside the drawing, as *as drawn* or *any 3 parts*.
    """

    figure: Figure
    shown: Figure
    wanted: ToDraw


def to_draw(figure: Figure, prompt: Sequence[str | t.Node]) -> ToDraw:
    """Return what the words of a prompt ask to draw on a figure: they are read whole.

    Raises
    ------
    FigureError
        If a sentence is not understood, or none asks for anything.

    >>> from itembank.figures.kinds.number.shaded_shape import ShadedShape
    >>> bar = ShadedShape("rectangle", 1, 8, ())
    >>> to_draw(bar, ("Shade ", t.frac(3, 4), " of the rectangle.")).told
    'any 6 parts'
    """
    found: ToDraw | None = None
    for sentence in sentences(prompt):
        bare = sentence.rstrip(".?! ")
        asked = None
        for wording in kind_of(figure).drawn_answers:
            if match := re.fullmatch(wording.pattern, bare, re.IGNORECASE):
                asked = wording.asks(figure, match)
                break
        if asked is not None:
            if found is not None:
                raise FigureError("its words ask for two things")
            found = asked
        elif not beside_the_question(figure, bare):
            raise FigureError(
                f"‘{sentence}’ is not understood as something to draw on a {kind_of(figure).name}"
            )
    if found is None:
        raise FigureError("its words ask for nothing to be drawn")
    return found


def drawn_on(figure: Figure, shown: Figure, prompt: Sequence[str | t.Node]) -> Draw:
    """Return the question to draw on a figure what makes it another; raises FigureError."""
    return Draw(sound(figure), sound(shown), to_draw(figure, prompt))


def key_of(ask: Draw) -> t.Label:
    """Return what stands beside the figure of the answer."""
    return t.Label(ask.wanted.told)


def _store(ask: Draw) -> Stored:
    adds, holds, told = ask.wanted
    return Stored(
        tuple(node for _, node in holds),
        detail=adds,
        labels=(told,),
        figure=ask.figure,
        key_figure=ask.shown,
        readings=tuple(("r", reading) for reading, _ in holds),
    )


def _restore(stored: Stored) -> Draw:
    if stored.figure is None or stored.key_figure is None:
        raise t.NotationError("a question to draw has a figure, and one with its answer")
    if len(stored.readings) != len(stored.target) or len(stored.labels) != 1:
        raise t.NotationError("a question to draw says what is to be read from its answer")
    readings: tuple[Reading, ...] = tuple(reading for _, reading in stored.readings)
    holds = tuple(zip(readings, stored.target, strict=True))
    return Draw(stored.figure, stored.key_figure, ToDraw(stored.detail, holds, stored.labels[0]))


def _twin(ask: Draw, form: str) -> Twin:
    figures = [to_data(figure) for figure in (ask.figure, ask.shown)]
    drawn = json.dumps(figures, sort_keys=True, ensure_ascii=False)
    return ("draw", drawn, form), (), ()


DRAW = register_kind(
    Kind(
        "draw",
        Draw,
        trees=lambda ask: (),
        store=_store,
        restore=_restore,
        twin=_twin,
        does="draw on a figure",
        told="draw on a picture",
        wrong_answers=0,
        layers=Layers(
            first_road="itembank.proof.exact.drawn_answers:find_drawn",
            second_road="itembank.proof.measured.drawn_answers_measured:measure_drawn",
            working="itembank.proof.lines.line_of_drawing:drawn_fault",
            bank="itembank.bank.question.key_form:DRAWING",
            printed="itembank.proof.claim.printed:drawing_unprinted",
            marking="itembank.marking.worth.marked_by_kind:DRAW",
            difficulty="itembank.items.measures.difficulty_by_kind:DRAW",
        ),
    )
)
