"""Places for the labels of a figure of lines: each where it touches nothing.

A label comes with the places it may stand at, the best first; it takes the first that is free.
What a place is free of is judged in ordinary numbers, with a gap much wider than their error; the
places themselves are exact.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from itembank.figures.drawing import Arc, Area, Content, Mark, Stroke, Text
from itembank.figures.kinds.labels.near_marks import (
    GAP,
    Box,
    Curve,
    Near,
    Path,
    Track,
    edges_of,
    exactly,
    holds,
    track_of,
)
from itembank.figures.label_room import room
from itembank.notation.line import shown_line

APART = 0.4
"""How far side by side labels keep from each other: 91° 85° is not to be read as one number."""


@lru_cache(maxsize=4096)
def half_size(content: Content) -> Near:
    """Return half the width and half the height of a label."""
    need = room(content)
    return float(need.width) / 2, float(need.height) / 2


class Sheet:
    """Marks with labels put between them."""

    def __init__(self, marks: Iterable[Mark | Track]) -> None:
        self._drawn: list[Text | Track] = [
            track_of(mark) if isinstance(mark, Stroke | Area | Arc) else mark for mark in marks
        ]
        self._tracks = [mark for mark in self._drawn if not isinstance(mark, Text)]
        self._blocking: Track | None = None
        self._labels: list[tuple[Content, str]] = []
        self._boxes: list[Box] = []
        self._homeless: list[Content] = []

    @property
    def marks(self) -> list[Mark]:
        """Return all that is drawn, the labels last: each label has been put."""
        marks = [mark if isinstance(mark, Text) else mark.made() for mark in self._drawn]
        for (content, role), (left, bottom, right, top) in zip(
            self._labels, self._boxes, strict=True
        ):
            at = exactly((left + right) / 2, (bottom + top) / 2)
            marks.append(Text(at, content, role=role))
        return marks

    @property
    def crowded(self) -> bool:
        """Tell whether a label has found no place."""
        return bool(self._homeless)

    @property
    def homeless(self) -> list[str]:
        """Return the labels that have found no place, and are not drawn."""
        return [label if isinstance(label, str) else shown_line(label) for label in self._homeless]

    def put(self, content: Content, places: Iterable[Near], role: str) -> None:
        """Put a label with its middle at the first place where it touches nothing."""
        w, h = half_size(content)
        for x, y in places:
            # Numbers as exact as the places they stand for, to far less than the gap.
            x, y = round(x * 1000) / 1000, round(y * 1000) / 1000
            box = (x - w, y - h, x + w, y + h)
            if self._free(box):
                self._labels.append((content, role))
                self._boxes.append(box)
                return
        self._homeless.append(content)

    def _free(self, box: Box) -> bool:
        left, bottom, right, top = box
        for a, b, c, d in self._boxes:
            if left < c + APART and a < right + APART and bottom < d + GAP and b < top + GAP:
                return False
        # What was in the way of the place before is mostly in the way of this one too.
        if self._blocking is not None and self._blocking.meets(box):
            return False
        for track in self._tracks:
            if track.meets(box):
                self._blocking = track
                return False
        return True

    def below(self, content: Content, role: str) -> None:
        """Put a label under the middle of all there is."""
        points = [
            spot for track in self._tracks if isinstance(track, Path) for spot in track.points
        ]
        around = edges_of(points) if points else None
        for line in self._tracks:
            # An arc that lies in the midst of the lines says nothing new.
            if isinstance(line, Curve) and (around is None or not holds(around, line.edges)):
                points += line.points
        left, bottom, right, _ = edges_of(points)
        lowest = min([bottom, *(box[1] for box in self._boxes)])
        _, h = half_size(content)
        self.put(content, [((left + right) / 2, lowest - h - 2 * GAP)], role)
