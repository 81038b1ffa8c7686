"""The mathematics face inside a PDF: the glyphs a document uses, by number, as real text.

A formula needs glyphs that no character has (tall brackets, the parts of a root), so the face is
embedded as a composite font whose codes stand for glyphs (ISO 32000-1, 9.7.4.2: a CIDFontType2
with the encoding Identity-H). What each glyph says stands in the font's ToUnicode map, so that
a formula is searched and copied as text.

Importing this module imports ReportLab.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache
from typing import Any

from reportlab.pdfbase.ttfonts import TTFontFile

from itembank.pages.engine.faces.fonts import MATHS
from itembank.pages.engine.pdf.pdf_objects import Raw, stream

NAME = "M"
"""The face's name in the resources of every page."""
POST_NAME = "BoardMath-Regular"
SYMBOLIC = 4
"""Flag of a font whose signs are not those of the Latin alphabet (ISO 32000-1, table 123)."""
_AT_A_TIME = 100
"""Most lines of one block of a ToUnicode map (Adobe Technical Note 5411)."""


@lru_cache(maxsize=1)
def font_file() -> Any:
    """Return the file of the mathematics face, as ReportLab reads it."""
    return TTFontFile(str(MATHS))


@lru_cache(maxsize=1)
def _characters() -> dict[int, str]:
    """Return the character of each glyph that has one: of several, the first in Unicode."""
    found: dict[int, int] = {}
    for code, glyph in font_file().charToGlyph.items():
        found[glyph] = min(code, found.get(glyph, code))
    return {glyph: chr(code) for glyph, code in found.items()}


@lru_cache(maxsize=4096)
def advance(glyph: int) -> int:
    """Return how far a glyph moves the pen, in thousandths of an em."""
    return round(int(font_file().hmetrics[glyph][0]) * 1000 / int(font_file().unitsPerEm))


@lru_cache(maxsize=1)
def _stem() -> int:
    """Return the number of a narrow tall glyph: it takes up room where it is not painted."""
    return int(font_file().charToGlyph[ord("l")])


def _says(glyph: int, character: str) -> str:
    """Return what a glyph says where it is copied: an italic x is an x.

    >>> _says(0, "\N{MATHEMATICAL ITALIC SMALL X}")
    'x'
    """
    return unicodedata.normalize("NFKC", _characters().get(glyph, character))


ROOM = 1
"""The code of room without ink: a glyph that is never painted, and says nothing."""
UNSEEN = "\u2060"
"""What it says: a word joiner. A reader that met a space would leave out that between words."""


class GlyphsUsed:
    """The glyphs of the mathematics face that one document uses, numbered as they come."""

    def __init__(self) -> None:
        self._codes: dict[int, int] = {}
        self._said: dict[int, str] = {}

    def __bool__(self) -> bool:
        return bool(self._codes)

    def code(self, glyph: int, character: str) -> int:
        """Return the code of `glyph` in this document's font; `character` is what it shows."""
        found = self._codes.get(glyph)
        if found is None:
            found = self._codes[glyph] = ROOM + 1 + len(self._codes)
            self._said[found] = _says(glyph, character)
        return found

    def room(self, width: float) -> tuple[str, float]:
        """Return the codes for room of `width` ems, and by how many per cent it is stretched.

        It is made of several glyphs, since readers measure the gap to the next words by the
        width of the last one.
        """
        natural = advance(_stem()) / 1000
        count = max(1, round(width / natural))
        return f"<{f'{ROOM:04X}' * count}>", 100 * width / (natural * count)

    def add_to(self, pdf: Any) -> None:
        """Add the font to a ReportLab document, if any of its glyphs was used."""
        if not self:
            return
        face = font_file()
        # ReportLab cuts a font by characters; here each glyph is one, by its number.
        cut = list(dict.fromkeys([_stem(), *self._codes]))
        whole, face.charToGlyph = face.charToGlyph, {glyph: glyph for glyph in cut}
        try:
            program = face.makeSubset(cut)
        finally:
            face.charToGlyph = whole
        base = f"ITEMBK+{POST_NAME}"
        scale = 1000 / face.unitsPerEm
        box = " ".join(f"{round(edge * scale)}" for edge in _bounds(face))
        program_at = pdf.Reference(stream(f"/Length1 {len(program)}", program), "MathsProgram")
        map_at = pdf.Reference(stream("", self._to_unicode()), "MathsToUnicode")
        described = (
            f"<</Type /FontDescriptor /FontName /{base} /Flags {SYMBOLIC} /FontBBox [{box}]"
            f" /ItalicAngle 0 /Ascent {round(face.ascent)} /Descent {round(face.descent)}"
            f" /CapHeight {round(face.capHeight)} /StemV 80 /FontFile2 %s>>"
        )
        descriptor = pdf.Reference(_referring(described, program_at), "MathsDescriptor")
        by_code = [_stem(), *self._codes]
        widths = " ".join(str(advance(glyph)) for glyph in by_code)
        # The cut font numbers its glyphs from 1 in the order they were asked for.
        numbers = b"".join((1 + cut.index(glyph)).to_bytes(2, "big") for glyph in by_code)
        # Code 0 is the glyph for what is missing, in every font.
        numbers_at = pdf.Reference(stream("", b"\0\0" + numbers), "MathsNumbers")
        cid = pdf.Reference(
            _referring(
                f"<</Type /Font /Subtype /CIDFontType2 /BaseFont /{base} /CIDSystemInfo"
                " <</Registry (Adobe) /Ordering (Identity) /Supplement 0>>"
                f" /CIDToGIDMap %s /DW 1000 /W [1 [{widths}]] /FontDescriptor %s>>",
                numbers_at,
                descriptor,
            ),
            "MathsCID",
        )
        font = _referring(
            f"<</Type /Font /Subtype /Type0 /BaseFont /{base} /Encoding /Identity-H"
            " /DescendantFonts [%s] /ToUnicode %s>>",
            cid,
            map_at,
        )
        pdf.idToObject["BasicFonts"].dict[NAME] = pdf.Reference(font, "MathsFont")

    def _to_unicode(self) -> bytes:
        lines = [
            f"<{code:04X}> <{said.encode('utf-16-be').hex().upper()}>"
            for code, said in ({ROOM: UNSEEN} | self._said).items()
        ]
        blocks = [lines[i : i + _AT_A_TIME] for i in range(0, len(lines), _AT_A_TIME)]
        said = "\n".join(
            f"{len(block)} beginbfchar\n" + "\n".join(block) + "\nendbfchar" for block in blocks
        )
        return (
            "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
            "/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n"
            "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
            "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n"
            f"{said}\nendcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n"
        ).encode("ascii")


def _bounds(face: Any) -> tuple[int, int, int, int]:
    """Return the box of all glyphs, in the font's units (OpenType `head`, xMin to yMax)."""
    face.seek_table("head", 36)
    return (face.read_short(), face.read_short(), face.read_short(), face.read_short())


def _referring(syntax: str, *references: Any) -> Raw:
    """Return an object whose syntax names others, by the numbers they get in the file."""
    return Raw(
        lambda doc: (
            syntax % tuple(reference.format(doc).decode("ascii") for reference in references)
        )
    )
