"""Questions whose answer is drawn on a figure: a point, a line, a range, a part of a shape."""

from __future__ import annotations

from itembank.figures.figure import Figure
from itembank.items.asks.draw_on import drawn_on, key_of
from itembank.items.item import Draft, Run, Step


def to_draw(
    text: tuple[Run, ...],
    figure: Figure,
    shown: Figure,
    steps: tuple[Step, ...],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question that asks to make of `figure` the figure of the answer, `shown`.

    The last step of its working is the drawing itself.
    """
    ask = drawn_on(figure, shown, text)
    key = key_of(ask)
    *before, last = steps
    return Draft(
        text,
        ask,
        key,
        "drawing",
        (*before, Step(last.say, key)),
        (),
        twin,
        marks=1,
        figure=figure,
        key_figure=shown,
    )
