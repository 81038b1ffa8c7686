"""Builds the typefaces in this folder: one family for prose and for mathematics.

    python -m itembank.pages.typefaces.build_typefaces

The text face is Atkinson Hyperlegible with a plain nought: in a fraction a stroke means
*cancelled*, and from the back of a room a struck nought looks like an eight. The mathematics
face is STIX Two Math (its MATH table, roots, tall brackets and rare signs) with the figures,
letters and everyday signs of the text face in place of its own, so that a number looks the
same wherever it stands. Both sources are under the SIL Open Font Licence 1.1 and reserve no
name; `OFL.txt` beside this file goes with what is built from them.

Each is written twice: as TrueType, for the PDFs, and as WOFF2 (W3C, *WOFF File Format 2.0*), for
web pages: the same glyphs and the same MATH table, from which a browser sets MathML.

The result is the same bytes on every machine. Hints are left out: nothing that draws a PDF at
these sizes uses them, and they would not fit the changed outlines.
"""

from __future__ import annotations

import sys
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from itembank.errors import ItembankError
from itembank.pages.typefaces.face_files import (
    give_names,
    save_face,
    take_hints_out,
    text_source,
)
from itembank.pages.typefaces.glyphs import moved, plain_nought
from itembank.pages.typefaces.maths_typeface import build_maths

TEXT = "Board Sans"
SOURCES = {"fontpkg-atkinson-hyperlegible": "1.006", "ziamath": "0.13", "brotli": "1.2.1"}
"""The packages that the sources come from, and that which packs them, with the versions used."""


def _packages() -> None:
    for name, wanted in SOURCES.items():
        try:
            there = version(name)
        except PackageNotFoundError:
            raise ItembankError(
                f"The typefaces are built with {name} {wanted}, which is not installed. "
                f"Install {name}=={wanted}."
            ) from None
        if there != wanted:
            raise ItembankError(
                f"The typefaces are built with {name} {wanted}; {there} is installed. "
                f"Install {name}=={wanted}, or build with the new one and look at every page."
            )


def build_text(style: str) -> list[Path]:
    """Build a weight of the text face; returns its files."""
    font = text_source(style)
    glyph = plain_nought(font)
    take_hints_out(font)
    font["glyf"]["zero"] = glyph
    wide = font["hmtx"]["zero"][0]
    for name, advance in (("zero", wide), ("zero.tf", font["hmtx"]["zero.tf"][0])):
        placed = moved(glyph, font["glyf"], (advance - wide) // 2)
        font["glyf"][name] = placed
        font["hmtx"][name] = (advance, placed.xMin)
    for table in ("GSUB", "GPOS", "GDEF"):
        if table in font:
            del font[table]
    give_names(font, TEXT, style)
    return save_face(font, f"BoardSans-{style}")


def main() -> int:
    """Build every file and say how large it is."""
    try:
        _packages()
        for path in (*build_text("Regular"), *build_text("Bold"), *build_maths()):
            print(f"{path.name}: {path.stat().st_size / 1024:.0f} KB")
    except ItembankError as error:
        print(error, file=sys.stderr)
        return error.exit_status
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
