"""The one hand through which every mark on a page goes: it tags as it draws.

A mark stands in an element of the structure tree (:meth:`Document.tag`), or in an artifact
(:meth:`Page.artifact`) where it is decoration; anything else is refused. Coordinates are
points from the bottom left corner; colours are ``#RRGGBB``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from functools import lru_cache

from . import formula as formulas
from .fonts import ASCENT, DESCENT, face
from .layout import Formula
from .outline import Heading, add_outline
from .tagging import Element, add_tree, text_string
from .theme import INK

Point = tuple[float, float]

HEADINGS = {f"H{level}": level for level in range(1, 7)}


class UntaggedMarkError(RuntimeError):
    """Something was drawn outside every element and artifact."""


def _n(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


@lru_cache(maxsize=64)
def _rgb(colour: str) -> str:
    return " ".join(_n(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))


class Document:
    """A tagged PDF in the making.

    Args:
        title: shown in the title bar of a reader and read out first.
        language: of all text, as a BCP 47 tag.
    """

    def __init__(self, title: str, language: str = "en-GB", producer: str = "itembank") -> None:
        from reportlab.pdfbase import pdfdoc

        from .pdfraw import Info

        self.title = title
        self.language = language
        self.producer = producer
        self.pdf = pdfdoc.PDFDocument(compression=1, invariant=1, pdfVersion=(1, 7), lang=language)
        self.pdf.info = Info()
        self.pdf.setTitle(title)
        self.pdf.setProducer(producer)
        self.pages: list[Page] = []
        self.root = Element("Document", None)
        self.current = self.root
        self.forms: dict[int, str] = {}
        self.headings: list[Heading] = []
        self.heading: Heading | None = None

    def page(self, size: Point, background: str = "#FFFFFF") -> Page:
        """Start a page of the given width and height, with the colour of its paper."""
        page = Page(self, len(self.pages), size)
        self.pages.append(page)
        if background.upper() != "#FFFFFF":
            with page.artifact():
                page.rect(0, 0, *size, fill=background)
        return page

    @contextmanager
    def tag(self, kind: str, alt: str = "", attributes: str = "") -> Iterator[Element]:
        """Put what is drawn inside into a new element: ``H1``, ``P``, ``L``, ``LI``, ``TD``."""
        outer = self.current
        self.current = Element(kind, outer, alt, attributes)
        if kind in HEADINGS:
            self.heading = Heading(HEADINGS[kind])
            self.headings.append(self.heading)
        try:
            yield self.current
        finally:
            self.current = outer
            if kind in HEADINGS:
                self.heading = None

    @contextmanager
    def back_in(self, element: Element) -> Iterator[Element]:
        """Go on drawing inside an element started earlier, as a list does on its next page."""
        outer, self.current = self.current, element
        try:
            yield element
        finally:
            self.current = outer

    def form(self, glyph: int) -> str:
        """Return the name of the form that draws `glyph`, adding it to the file once."""
        name = self.forms.get(glyph)
        if name is None:
            from .pdfraw import stream

            name = self.forms[glyph] = f"g{glyph}"
            entries = "/Type /XObject /Subtype /Form /BBox [-4000 -4000 6000 6000] /Resources <<>>"
            self.pdf.Reference(
                stream(entries, formulas.outline(glyph).encode("ascii")), f"Form{name}"
            )
        return name

    def finish(self) -> bytes:
        """Return the whole file. The same drawing always gives the same bytes."""
        from reportlab.pdfbase import pdfdoc

        from . import xmp
        from .pdfraw import Raw, TaggedPage, stream

        pdf = self.pdf
        names = []
        for page in self.pages:
            page.close()
            names.append(pdf.thisPageName())
            made = TaggedPage()
            made.pagewidth, made.pageheight = page.size
            content = ("\n".join(page.ops) + "\n").encode("ascii")
            # A ready stream: ReportLab would wrap its own in ASCII85, a quarter larger.
            made.Contents = pdf.Reference(stream("", content))
            made.StructParents = page.number
            made.Tabs = pdfdoc.PDFName("S")
            if page.forms:
                made.XObjects = pdfdoc.PDFDictionary(
                    {form: pdfdoc.PDFObjectReference(f"Form{form}") for form in sorted(page.forms)}
                )
            pdf.updateSignature(content)
            pdf.addPage(made)
        if self.headings:
            add_outline(pdf, self.headings, names)
        catalog = pdf.Catalog
        catalog.StructTreeRoot = add_tree(
            pdf, self.root, names, [page.owners for page in self.pages]
        )
        catalog.MarkInfo = Raw(lambda _doc: "<</Marked true>>")
        catalog.ViewerPreferences = Raw(lambda _doc: "<</DisplayDocTitle true>>")
        catalog.Metadata = stream(
            "/Type /Metadata /Subtype /XML",
            xmp.packet(self.title, self.language, self.producer),
            compress=False,
        )
        return bytes(pdf.GetPDFData(None))


class Page:
    """One page; made by :meth:`Document.page`."""

    def __init__(self, document: Document, number: int, size: Point) -> None:
        self.document = document
        self.number = number
        self.size = size
        self.ops: list[str] = []
        self.forms: set[str] = set()
        self.owners: list[Element] = []
        self._open: Element | str | None = None
        self._artifact = False
        self._fill = ""

    # Marked content

    def _mark(self) -> None:
        """Open marked content for the current element, unless it is open already."""
        if self._artifact:
            if self._open != "artifact":
                self.close()
                self.ops.append("/Artifact BMC")
                self._open = "artifact"
            return
        element = self.document.current
        if element is self._open:
            return
        self.close()
        if element.parent is None:
            raise UntaggedMarkError("a mark must stand in a tag or in an artifact")
        if element.page is None:
            element.page = self.number
        mcid = len(self.owners)
        first = not element.children
        actual = f" /ActualText {text_string(element.actual)}" if element.actual and first else ""
        kind = element.kind if element.kind != "Formula" else "Span"
        self.owners.append(element)
        element.children.append((self.number, mcid))
        self.ops.append(f"/{kind} <</MCID {mcid}{actual}>> BDC")
        self._open = element

    def close(self) -> None:
        """Close the marked content that is open, if any."""
        if self._open is not None:
            self.ops.append("EMC")
            self._open = None

    @contextmanager
    def artifact(self) -> Iterator[None]:
        """Draw decoration: nothing inside is read out."""
        outer, self._artifact = self._artifact, True
        try:
            yield
        finally:
            self._artifact = outer

    @contextmanager
    def figure(self, alt: str, box: tuple[float, float, float, float]) -> Iterator[None]:
        """Draw a picture that means something, with its alternative text and its box."""
        with self.document.tag("Figure", alt=alt) as element:
            element.box = box
            yield

    # Marks

    def _colour(self, fill: str) -> None:
        if fill != self._fill:
            self.ops.append(f"{_rgb(fill)} rg")
            self._fill = fill

    def _shape(self, path: str, fill: str | None, stroke: str | None, width: float) -> None:
        self._mark()
        if fill:
            self._colour(fill)
        if stroke:
            self.ops.append(f"{_rgb(stroke)} RG {_n(width)} w")
        self.ops.append(f"{path} {'B' if fill and stroke else 'f' if fill else 'S'}")

    def rect(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        *,
        fill: str | None = None,
        stroke: str | None = None,
        line: float = 1.0,
        radius: float = 0.0,
    ) -> None:
        """Draw a rectangle from its bottom left corner, with rounded corners if asked."""
        if not radius:
            self._shape(f"{_n(x)} {_n(y)} {_n(width)} {_n(height)} re", fill, stroke, line)
            return
        r, k = radius, radius * 0.4477  # 1 - 4/3·tan(π/8): the cubic nearest to a quarter circle
        right, top = x + width, y + height
        path = (
            f"{_n(x + r)} {_n(y)} m {_n(right - r)} {_n(y)} l "
            f"{_n(right - k)} {_n(y)} {_n(right)} {_n(y + k)} {_n(right)} {_n(y + r)} c "
            f"{_n(right)} {_n(top - r)} l "
            f"{_n(right)} {_n(top - k)} {_n(right - k)} {_n(top)} {_n(right - r)} {_n(top)} c "
            f"{_n(x + r)} {_n(top)} l "
            f"{_n(x + k)} {_n(top)} {_n(x)} {_n(top - k)} {_n(x)} {_n(top - r)} c "
            f"{_n(x)} {_n(y + r)} l "
            f"{_n(x)} {_n(y + k)} {_n(x + k)} {_n(y)} {_n(x + r)} {_n(y)} c h"
        )
        self._shape(path, fill, stroke, line)

    def polygon(
        self,
        points: Sequence[Point],
        *,
        fill: str | None = None,
        stroke: str | None = None,
        line: float = 1.0,
    ) -> None:
        """Draw a closed shape with round joins."""
        first, *rest = points
        path = f"1 j {_n(first[0])} {_n(first[1])} m "
        path += " ".join(f"{_n(x)} {_n(y)} l" for x, y in rest)
        self._shape(path + " h", fill, stroke, line)

    def circle(
        self,
        x: float,
        y: float,
        radius: float,
        *,
        fill: str | None = None,
        stroke: str | None = None,
        line: float = 1.0,
    ) -> None:
        """Draw a circle about (x, y)."""
        self.rect(
            x - radius,
            y - radius,
            2 * radius,
            2 * radius,
            fill=fill,
            stroke=stroke,
            line=line,
            radius=radius,
        )

    def line(
        self, start: Point, end: Point, *, colour: str = INK, width: float = 1.0, dash: str = ""
    ) -> None:
        """Draw a straight line; `dash` is a PDF dash array such as ``4 3``."""
        path = f"{_n(start[0])} {_n(start[1])} m {_n(end[0])} {_n(end[1])} l"
        if dash:
            self._mark()
            self.ops.append(f"[{dash}] 0 d")
        self._shape(path, None, colour, width)
        if dash:
            self.ops.append("[] 0 d")

    def text(
        self,
        x: float,
        y: float,
        text: str,
        size: float,
        *,
        bold: bool = False,
        colour: str = INK,
        align: str = "left",
    ) -> float:
        """Set one line of text on the baseline `y` and return its width.

        `align` says what `x` is: the left end, the centre or the right end. All characters
        must be in the face; :mod:`itembank.pages.text` sees to that for longer texts.
        """
        weight = face(bold)
        width = weight.width(text) * size
        x -= {"left": 0.0, "centre": width / 2, "right": width}[align]
        self._mark()
        self._colour(colour)
        self._show(x, y, text, size, bold)
        return width

    def _show(self, x: float, y: float, text: str, size: float, bold: bool, more: str = "") -> None:
        weight = face(bold)
        document = self.document.pdf
        if self.document.heading is not None and not self._artifact:
            self.document.heading.add(text, self.number, y + ASCENT * size)
        where = f"{_n(x)} {_n(y)} Td"
        shown = []
        for subset, codes in weight.font.splitString(text, document):
            name = weight.font.getSubsetInternalName(subset, document)
            shown.append(f"{name} {_n(size)} Tf <{codes.hex()}> Tj")
        self.ops.append(f"BT {where}{more} {' '.join(shown)} ET")

    def formula(
        self,
        x: float,
        y: float,
        layout: Formula,
        size: float,
        *,
        line: str,
        words: str,
        colour: str = INK,
        read: bool = True,
    ) -> None:
        """Draw a formula from its left edge on the baseline `y`.

        `words` become its alternative text. The one-line text `line` is set over it invisibly,
        so that the page can be searched and copied; `read=False` leaves that out, for the later
        pieces of a formula broken over lines.
        """
        document = self.document
        current = document.current
        nested = current.kind != "Formula"
        element = Element("Formula", current, alt=words) if nested else current
        if nested:
            element.actual = line
        box = (x, y - layout.descent * size, x + layout.width * size, y + layout.ascent * size)
        with document.back_in(element):
            self._mark()
            self._draw_formula(x, y, layout, size, colour)
            if read:
                self._invisible(x, y, line, layout.width * size, size)
        self._grow(element, box)

    def _grow(self, element: Element, box: tuple[float, float, float, float]) -> None:
        """Let the element's box take in `box`."""
        old = element.box
        element.box = (
            (min(old[0], box[0]), min(old[1], box[1]), max(old[2], box[2]), max(old[3], box[3]))
            if old and element.page == self.number
            else box
        )

    def formula_text(
        self, x: float, y: float, text: str, size: float, *, bold: bool, colour: str
    ) -> None:
        """Set a plain number, sum of money or quantity in the text face, as a formula.

        It goes into the formula element that is open, which holds its line and its words.
        """
        width = self.text(x, y, text, size, bold=bold, colour=colour)
        box = (x, y - DESCENT * size, x + width, y + ASCENT * size)
        self._grow(self.document.current, box)

    def borrowed(
        self, x: float, y: float, layout: Formula, size: float, text: str, colour: str
    ) -> None:
        """Draw a word whose characters the text face lacks, from the mathematics font."""
        with self.document.tag("Span") as element:
            element.actual = text
            self._mark()
            self._draw_formula(x, y, layout, size, colour)
            self._invisible(x, y, text, layout.width * size, size)

    def _draw_formula(self, x: float, y: float, layout: Formula, size: float, colour: str) -> None:
        self._colour(colour)
        ops = self.ops
        document = self.document
        for glyph, dx, dy, scale in layout.glyphs:
            name = document.form(glyph)
            self.forms.add(name)
            k = f"{scale * size:.5f}"
            ops.append(f"q {k} 0 0 {k} {_n(x + dx * size)} {_n(y + dy * size)} cm /{name} Do Q")
        if layout.rules:
            bars = " ".join(
                f"{_n(x + dx * size)} {_n(y + dy * size)} {_n(w * size)} {_n(h * size)} re"
                for dx, dy, w, h in layout.rules
            )
            ops.append(f"{bars} f")

    def _invisible(self, x: float, y: float, line: str, width: float, size: float) -> None:
        """Set `line` in rendering mode 3 (neither filled nor stroked), stretched to `width`."""
        from .fonts import plain

        text = plain(line)
        natural = face().width(text) * size
        stretch = 100 * width / natural if natural else 100.0
        self._show(x, y, text, size, False, f" 3 Tr {_n(stretch)} Tz")
        self.ops.append("0 Tr 100 Tz")
