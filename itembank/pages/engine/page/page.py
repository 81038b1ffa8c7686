"""The one hand through which every mark on a page goes: it tags as it draws.

A mark stands in an element of the structure tree (:meth:`Document.tag`), or in an artifact
(:meth:`Page.artifact`) where it is decoration; anything else is refused. Coordinates are
points from the bottom left corner; colours are ``#RRGGBB``.
"""

from __future__ import annotations

from itertools import groupby

from itembank.packs.data.pack_item import Maths
from itembank.pages.engine.faces.fonts import ASCENT, DESCENT, face
from itembank.pages.engine.maths.formula_layout import Formula
from itembank.pages.engine.page.surface import Point, Surface, UntaggedMarkError, pt
from itembank.pages.engine.page.theme import INK
from itembank.pages.engine.pdf.outline import Heading, add_outline
from itembank.pages.engine.pdf.tagging import Element, add_tree
from itembank.text.characters import without_hidden

__all__ = ["Document", "Page", "Point", "UntaggedMarkError"]

HEADINGS = {f"H{level}": level for level in range(1, 7)}


class Document:
    """A tagged PDF in the making.

    Args:
        title: shown in the title bar of a reader and read out first.
        language: of all text, as a BCP 47 tag.
    """

    def __init__(self, title: str, language: str = "en-GB", producer: str = "itembank") -> None:
        from itembank.pages.engine.faces.maths_face import GlyphsUsed
        from itembank.pages.engine.pdf.compact_file import CompactDocument
        from itembank.pages.engine.pdf.pdf_objects import Info

        self.title = title = without_hidden(title)
        self.language = language
        self.producer = producer
        self.pdf = CompactDocument(compression=1, invariant=1, pdfVersion=(1, 7), lang=language)
        self.pdf.info = Info()
        self.pdf.setTitle(title)
        self.pdf.setProducer(producer)
        self.pages: list[Page] = []
        self.root = Element("Document", None)
        self.current = self.root
        self.glyphs = GlyphsUsed()
        self.attached: dict[str, str] = {}
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

    def tag(self, kind: str, alt: str = "", attributes: str = "") -> Within:
        """Put what is drawn inside into a new element: ``H1``, ``P``, ``L``, ``LI``, ``TD``."""
        return Within(self, None, (kind, alt, attributes))

    def back_in(self, element: Element) -> Within:
        """Go on drawing inside an element started earlier, as a list does on its next page."""
        return Within(self, element)

    def formula(self, maths: Maths) -> Element:
        """Start an element for a formula, which has its words, its line and its MathML."""
        element = Element("Formula", self.current, alt=maths.words)
        # A line marks names with quotation marks, for whoever types it; none are printed.
        element.actual = maths.line.replace('"', "")
        element.file = self.attached.get(maths.mathml)
        if element.file is None:
            from itembank.pages.engine.pdf.attached import attach

            number = len(self.attached) + 1
            element.file = self.attached[maths.mathml] = attach(self.pdf, maths.mathml, number)
        return element

    def finish(self) -> bytes:
        """Return the whole file. The same drawing always gives the same bytes."""
        from reportlab.pdfbase import pdfdoc

        from itembank.pages.engine.pdf import xmp
        from itembank.pages.engine.pdf.pdf_objects import Raw, TaggedPage, stream

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
            # The tab key goes by the structure (ISO 14289-1, 7.18.3).
            made.Tabs = pdfdoc.PDFName("S")
            pdf.updateSignature(content)
            pdf.addPage(made)
        self.glyphs.add_to(pdf)
        if self.headings:
            add_outline(pdf, self.headings, names)
        catalog = pdf.Catalog
        catalog.StructTreeRoot = add_tree(
            pdf, self.root, names, [page.owners for page in self.pages]
        )
        catalog.MarkInfo = Raw(lambda _doc: "<</Marked true>>")
        # The window shows the title and not the name of the file (ISO 14289-1, 7.1).
        catalog.ViewerPreferences = Raw(lambda _doc: "<</DisplayDocTitle true>>")
        # Uncompressed, so that programs that know no PDF can find it (ISO 32000-1, 14.3.2).
        catalog.Metadata = stream(
            "/Type /Metadata /Subtype /XML",
            xmp.packet(self.title, self.language, self.producer),
            compress=False,
        )
        return bytes(pdf.GetPDFData(None))


class Within:
    """What is drawn in this context goes into an element: a new one, or one started earlier.

    A pack opens thousands of them, so this is a class, which costs a third of a generator.
    """

    __slots__ = ("document", "element", "new", "outer")

    def __init__(
        self, document: Document, element: Element | None, new: tuple[str, str, str] = ("", "", "")
    ) -> None:
        self.document, self.element, self.new = document, element, new

    def __enter__(self) -> Element:
        document = self.document
        outer = self.outer = document.current
        element = self.element
        if element is None:
            kind, alt, attributes = self.new
            element = Element(kind, outer, alt, attributes)
            if kind in HEADINGS:
                document.heading = Heading(HEADINGS[kind])
                document.headings.append(document.heading)
        document.current = element
        return element

    def __exit__(self, *_fault: object) -> None:
        self.document.current = self.outer
        if self.new[0] in HEADINGS:
            self.document.heading = None


class Page(Surface):
    """One page; made by :meth:`Document.page`."""

    def __init__(self, document: Document, number: int, size: Point) -> None:
        super().__init__(document, number)
        self.document = document
        self.size = size

    # Text and formulas

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
    ) -> None:
        """Set one line of text on the baseline `y`.

        `align` says what `x` is: the left end, the centre or the right end. All characters
        must be in the face; :mod:`itembank.pages.engine.text.paragraph` sees to that for longer
        texts.
        """
        if align != "left":
            width = face(bold).width(text) * size
            x -= width / 2 if align == "centre" else width
        self.mark()
        self.colour(colour)
        self._show(x, y, text, size, bold)

    def _show(self, x: float, y: float, text: str, size: float, bold: bool) -> None:
        weight = face(bold)
        document = self.document.pdf
        if self.document.heading is not None and not self._artifact:
            self.document.heading.add(text, self.number, y + ASCENT * size)
        where = f"{pt(x)} {pt(y)} Td"
        shown = []
        # A subset holds 256 signs at most, so one line may need several.
        for subset, codes in weight.codes(text, document):
            name = weight.font.getSubsetInternalName(subset, document)
            shown.append(f"{name} {pt(size)} Tf <{codes.hex()}> Tj")
        self.ops.append(f"BT {where} {' '.join(shown)} ET")

    def formula(
        self,
        x: float,
        y: float,
        layout: Formula,
        size: float,
        *,
        colour: str = INK,
    ) -> None:
        """Draw a formula, or a piece of one broken over lines, in the element that is open.

        `x` is its left edge, `y` its baseline. The element holds its words, its line and its
        MathML (:meth:`Document.formula`).
        """
        element = self.document.current
        box = (x, y - layout.descent * size, x + layout.width * size, y + layout.ascent * size)
        self.mark()
        self._draw_formula(x, y, layout, size, colour)
        self._grow(element, box)

    def label_formula(self, x: float, y: float, layout: Formula, size: float) -> None:
        """Draw a formula as a label of the figure that is open, which holds its words."""
        self.mark()
        self._draw_formula(x, y, layout, size, INK)

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
        self.text(x, y, text, size, bold=bold, colour=colour)
        width = face(bold).width(text) * size
        box = (x, y - DESCENT * size, x + width, y + ASCENT * size)
        self._grow(self.document.current, box)

    def borrowed(
        self, x: float, y: float, layout: Formula, size: float, text: str, colour: str
    ) -> None:
        """Draw a word whose characters the text face lacks, from the mathematics font."""
        with self.document.tag("Span") as element:
            element.actual = text
            self.mark()
            self._draw_formula(x, y, layout, size, colour)

    def _draw_formula(self, x: float, y: float, layout: Formula, size: float, colour: str) -> None:
        self.colour(colour)
        self._set_glyphs(x, y, layout, size)
        if layout.rules:
            bars = " ".join(
                f"{pt(x + dx * size)} {pt(y + dy * size)} {pt(w * size)} {pt(h * size)} re"
                for dx, dy, w, h in layout.rules
            )
            self.ops.append(f"{bars} f")

    def _set_glyphs(self, x: float, y: float, layout: Formula, size: float) -> None:
        """Set the glyphs of a formula as text: a run for each size and height they stand at."""
        from itembank.pages.engine.faces.maths_face import NAME, advance

        glyphs = self.document.glyphs
        shown: list[str] = []
        for (dy, scale), run in groupby(layout.glyphs, key=lambda glyph: (glyph.y, glyph.scale)):
            of_this = list(run)
            own = scale * size
            start = pen = of_this[0].x
            codes = ""
            for glyph in of_this:
                # Room beyond what the glyph before moved the pen, in thousandths of an em.
                back = round((pen - glyph.x) / scale * 1000)
                codes += f"> {back} <" if back else ""
                codes += f"{glyphs.code(glyph.number, glyph.character):04X}"
                pen += (advance(glyph.number) - back) / 1000 * scale
            where = f"1 0 0 1 {pt(x + start * size)} {pt(y + dy * size)} Tm"
            shown.append(f"/{NAME} {pt(own)} Tf {where} [<{codes}>] TJ")
        if len(shown) > 1:
            # Readers put the line of a formula where its first text stands, and what follows it
            # after its last: room without ink, on the baseline, as wide as the formula.
            code, stretch = glyphs.room(layout.width)
            where = f"/{NAME} {pt(size)} Tf 1 0 0 1 {pt(x)} {pt(y)} Tm"
            room = f"{where} 3 Tr {pt(stretch)} Tz {code} Tj 0 Tr 100 Tz"
            shown = [room, *shown, room]
        if shown:
            self.ops.append(f"BT {' '.join(shown)} ET")
