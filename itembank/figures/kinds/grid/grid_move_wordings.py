"""The ways to ask about transformations on a coordinate grid."""

from __future__ import annotations

import re
from typing import Any

from itembank.figures.figure import Asked, Reading, Said, Wording, asks_reading
from itembank.figures.kinds.grid.grid_moves import MOVE, hold_to_squares
from itembank.notation import tree as t

_THE = r"(?:what (?:is|are)|write down|find|work out|give)"
_TAKES = r"that takes (?:shape )?(?P<first>[a-z]) to (?:shape )?(?P<second>[a-z])"


def _moved(name: str) -> Said:
    """Return what a wording asks of a point and one move or two, in their order."""

    def asks(figure: Any, found: re.Match[str]) -> Asked:
        moves = tuple(found[group] for group in ("move", "then") if found[group])
        hold_to_squares((figure.x_step, figure.y_step), *moves)
        return Asked(t.Sym("r"), (("r", Reading(name, (found["point"].upper(), *moves))),))

    return asks


MOVE_WORDINGS = (
    Wording(
        rf"{_THE} the coordinates of the image of (?:point )?(?P<point>[a-z]) after "
        rf"(?P<move>{MOVE})(?:,? (?:and then|then|followed by) (?P<then>{MOVE}))?",
        _moved("image"),
    ),
    Wording(
        rf"{_THE} the coordinates of the point whose image is (?P<point>[a-z]) after "
        rf"(?P<move>{MOVE})(?:,? (?:and then|then|followed by) (?P<then>{MOVE}))?",
        _moved("object"),
    ),
    Wording(
        rf"{_THE} the coordinates of the image of (?:point )?(?P<point>[a-z]) after the "
        rf"translation {_TAKES}",
        asks_reading("image like", "point", "first", "second"),
    ),
    Wording(
        r"(?:in which line is (?:shape )?(?P<first>[a-z]) reflected to (?:shape )?(?P<second>[a-z])"
        rf"|{_THE} the equation of the mirror line (?:of the reflection )?that takes "
        r"(?:shape )?(?P<third>[a-z]) to (?:shape )?(?P<fourth>[a-z]))",
        lambda figure, found: asks_reading(
            "mirror line", *(("first", "second") if found["first"] else ("third", "fourth"))
        )(figure, found),
    ),
    Wording(
        rf"{_THE} the coordinates of the centre of the rotation {_TAKES}",
        asks_reading("centre of rotation", "first", "second"),
    ),
    Wording(
        rf"{_THE} the coordinates of the centre of the enlargement {_TAKES}",
        asks_reading("centre of enlargement", "first", "second"),
    ),
    Wording(
        rf"{_THE} the scale factor of the enlargement {_TAKES}",
        asks_reading("scale factor", "first", "second"),
    ),
)
