"""The ways to ask about a shape on a coordinate grid by itself."""

from __future__ import annotations

from itembank.figures.figure import Wording, asks_reading
from itembank.figures.kinds.symmetry_asked import LINES, ORDER

_SHAPE = r"(?:the )?shape (?P<name>[a-z])"

SHAPE_WORDINGS = (
    Wording(rf"{LINES} {_SHAPE} have", asks_reading("lines of symmetry", "name")),
    Wording(rf"(?:{ORDER}) {_SHAPE}(?: have)?", asks_reading("order of rotation", "name")),
    Wording(
        r"(?:what is|write down|find|give) the equation of the line of symmetry of "
        rf"{_SHAPE}",
        asks_reading("line of symmetry", "name"),
    ),
)
