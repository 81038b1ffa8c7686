"""The ways to ask for a point, a line or an image to be drawn on a coordinate grid."""

from __future__ import annotations

import re
from typing import Any

from itembank.figures.figure import DrawWording, Figure, Reading, ToDraw
from itembank.figures.kinds.grid.grid_moves import MOVE, hold_to_squares
from itembank.notation import tree as t


def _plot(figure: Figure, found: re.Match[str]) -> ToDraw:
    name = t.Label(found["name"].upper())
    return ToDraw("points", ((Reading("letter", (found["at"],)), name),))


def _line(figure: Figure, found: re.Match[str]) -> ToDraw:
    name = t.Label(found["name"].upper())
    return ToDraw("lines", ((Reading("line with equation", (found["equation"],)), name),))


def _image(figure: Any, found: re.Match[str]) -> ToDraw:
    hold_to_squares((figure.x_step, figure.y_step), found["move"])
    reading = Reading("image shape", (found["shape"].upper(), found["move"]))
    return ToDraw("shapes", ((reading, t.Label(found["name"].upper())),))


_LABEL = r"(?: on the grid)?(?: and|,) label it (?P<name>[a-z])"

GRID_DRAWN_ANSWERS = (
    DrawWording(rf"plot the point \{{(?P<at>\([^{{}}]*\))\}}{_LABEL}", _plot),
    DrawWording(
        rf"draw the (?:straight )?(?:line|graph) (?:with (?:the )?equation |of )?"
        rf"\{{(?P<equation>[^{{}}=]*=[^{{}}=]*)\}}{_LABEL}",
        _line,
    ),
    DrawWording(
        rf"draw the image of shape (?P<shape>[a-z]) after (?P<move>{MOVE}){_LABEL}", _image
    ),
)
"""Each says which letter the point, line or shape is to have."""
