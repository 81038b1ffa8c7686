"""Sets the elements of MathML that school notation is written in, each by a rule of its own.

The rules are those of W3C *MathML Core*, with the sizes that the face's own MATH table gives;
what differs, because small print is read from the back of a room:

* fractions are set in display style wherever they stand;
* powers, and fractions within fractions, are never under a share of the text that may be asked;
* a bracket grows only about what is taller than itself.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple
from xml.etree.ElementTree import Element

from itembank.pages.engine.faces.maths_metrics import Metrics, metrics
from itembank.pages.engine.maths.formula_characters import set_characters, set_sign
from itembank.pages.engine.maths.formula_parts import Part, last_kind
from itembank.pages.engine.maths.formula_signs import (
    GROWING,
    OPENING,
    VERY_THIN,
    ems,
    form_of,
    is_kind,
    italic,
    spaces,
    text_of,
)
from itembank.pages.engine.maths.formula_stacks import fraction, over, power, root, square_root

REFERENCE = 1000.0
"""Size at which every formula is set, in units that make an em 1000."""


class Place(NamedTuple):
    """Where an element stands: what it takes over from those about it."""

    level: int = 0
    script: bool = False
    within: bool = False
    """In a fraction or a script, where a fraction is smaller."""
    reach: tuple[float, float] | None = None
    """How low and high that goes which brackets of the row must close about."""
    measuring: bool = False
    """Brackets do not count while that is found out."""
    after: str = ""
    """The kind of what stands before it in its row."""
    row_after: str = ""
    """The kind of what stands before the row it is part of."""
    form: str = "prefix"
    row_size: float | None = None
    """The size of the row it is part of, where it is."""


class Setter:
    """Sets elements, each where it stands, in the mathematics face."""

    def __init__(self, least_script: float) -> None:
        self.face: Metrics = metrics()
        self.least = least_script
        self.constants = self.face.constants
        self._sizes: dict[int, float] = {}

    def size(self, level: int) -> float:
        """Return the size of what stands so many levels of scripts deep."""
        found = self._sizes.get(level)
        if found is None:
            shrunk = REFERENCE * (self.face.script_percent / 100) ** level
            found = self._sizes[level] = max(shrunk, REFERENCE * self.least)
        return found

    def units(self, part: Part) -> float:
        """Return how much one unit of the font is at a part's size."""
        return part.size / self.face.units

    def set(self, element: Element, place: Place) -> Part:
        """Return an element as it is set.

        Raises:
            ValueError: there is no rule for it.
        """
        make = _KINDS.get(element.tag)
        if make is None:
            kind = element.tag.rpartition("}")[2]
            make = _KINDS.get(kind)
        if make is None:
            raise ValueError(f"no way to set this part of a formula: <{kind}>")
        return make(self, element, place)

    def row(self, element: Element, place: Place) -> Part:
        """Set `<mrow>`, and `<math>`."""
        return self.row_of(list(element), place)

    def row_of(self, children: Sequence[Element], place: Place) -> Part:
        """Set elements side by side on one line."""
        part = Part("mrow", self.size(place.level))
        place = place._replace(after="", row_after=place.after, row_size=part.size)
        shown = [
            (child, form_of(child, n, len(children)))
            for n, child in enumerate(children)
            if not (is_kind(child, "mo") and not text_of(child))
        ]
        # Brackets are as tall as what they enclose, which has to be set first to be known.
        place = place._replace(reach=self.reach_within(shown, place))
        level, script, within, reach, measuring, _, row_after, _, size = place
        x = left = right = 0.0
        # Beyond any ink, and the wrong way round: a row with nothing in it reaches nowhere.
        low, high = 9999.0, -9999.0
        before: Part | None = None
        for n, (child, form) in enumerate(shown):
            after = "" if before is None else last_kind(before)
            # Made outright: to replace what is another in each takes twice as long.
            made = self.set(
                child,
                Place(level, script, within, reach, measuring, after, row_after, form, size),
            )
            part.holds.append((x, 0.0, made))
            if x + made.right > right:
                right = x + made.right
            if n == 0 or x + made.left < left:
                left = x + made.left
            if made.low < low:
                low = made.low
            if made.high > high:
                high = made.high
            x += made.advance
            if n == 0:
                part.first = made.first
            part.last = made.last
            before = made
        part.reach(left, right, low, high)
        part.advance = x
        return part

    def reach_within(
        self, shown: Sequence[tuple[Element, str]], place: Place
    ) -> tuple[float, float]:
        """Return how low and high a row goes without its brackets, if it has any."""
        if not any(is_kind(child, "mo") and text_of(child) in GROWING for child, _ in shown):
            return (0.0, 0.0)
        place = place._replace(measuring=True)
        made = [self.set(child, place._replace(form=form)) for child, form in shown]
        return (min(part.low for part in made), max(part.high for part in made))

    def number(self, element: Element, place: Place) -> Part:
        """Set `<mn>`."""
        written = text_of(element)
        string = written if written.isdecimal() else "".join(map(italic, written))
        return set_characters("mn", string, written, self.size(place.level), True)

    def identifier(self, element: Element, place: Place) -> Part:
        """Set `<mi>`: a letter leans, a name stands, a little off what is beside it."""
        string = written = text_of(element)
        if len(string) == 1:
            string = italic(string) if element.get("mathvariant") != "normal" else string
        else:
            string = written = f"\u2009{string}" + ("" if place.script else "\u2009")
        return set_characters("mi", string, written, self.size(place.level), True)

    def text(self, element: Element, place: Place) -> Part:
        """Set `<mtext>`."""
        size = self.size(place.level)
        if element.get("mathsize"):
            size *= ems(element.get("mathsize", ""))
        string = element.text or ""
        return set_characters("mtext", string, string, size, False)

    def sign(self, element: Element, place: Place) -> Part:
        """Set `<mo>`, with room about it unless it is in a script."""
        string = text_of(element)
        size = self.size(place.level)
        before, after = 0.0, None
        if not place.script:
            early, late = spaces(element, string, element.get("form", place.form))
            before, after = early * size, late * size
        if string not in GROWING:
            return set_sign(string, size, before, after, None, True)
        if place.row_after and string in OPENING:
            before += VERY_THIN * size
        return set_sign(string, size, before, after, place.reach, not place.measuring)


_KINDS: dict[str, Callable[[Setter, Element, Place], Part]] = {
    "math": Setter.row,
    "mrow": Setter.row,
    "mn": Setter.number,
    "mi": Setter.identifier,
    "mtext": Setter.text,
    "mo": Setter.sign,
    "mfrac": fraction,
    "msup": power,
    "msqrt": square_root,
    "mroot": root,
    "mover": over,
}
