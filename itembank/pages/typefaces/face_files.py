"""The fonts that the typefaces are built from, and the files they are written to."""

from __future__ import annotations

from pathlib import Path
from typing import Any

HERE = Path(__file__).parent

VERSION = "1.000"


def text_source(style: str) -> Any:
    """Return the font that a style of the text face is made from."""
    import fontpkg_atkinson_hyperlegible
    from fontTools.ttLib import TTFont

    folder = Path(str(fontpkg_atkinson_hyperlegible.__file__)).parent / "files"
    return TTFont(folder / f"AtkinsonHyperlegible-{style}.ttf", recalcTimestamp=False)


def give_names(font: Any, family: str, style: str) -> None:
    """Give a font its own names; the licence and whose work it is stay."""
    names = font["name"]
    owners = names.getDebugName(0)
    full = family if style == "Regular" else f"{family} {style}"
    post = f"{family.replace(' ', '')}-{style}"
    keep = {
        0: f"{owners} Changed for itembank.",
        1: family,
        2: style,
        3: f"{VERSION};{post}",
        4: full,
        5: f"Version {VERSION}",
        6: post,
        13: "This Font Software is licensed under the SIL Open Font License, Version 1.1.",
        14: "https://openfontlicense.org",
    }
    names.names = []
    for number, text in keep.items():
        names.setName(text, number, 3, 1, 0x409)
    font["head"].fontRevision = float(VERSION)
    font["OS/2"].achVendID = "NONE"


def take_hints_out(font: Any) -> None:
    """Take out what fits outlines to the dots of a screen: it would not fit changed ones."""
    for table in ("fpgm", "prep", "cvt ", "gasp", "DSIG", "hdmx", "VDMX", "LTSH"):
        if table in font:
            del font[table]
    glyf = font["glyf"]
    for name in font.getGlyphOrder():
        glyf[name].removeHinting()


def save_face(font: Any, name: str) -> list[Path]:
    """Write a font for the PDFs and, from those very bytes, for web pages."""
    from fontTools.ttLib import TTFont

    path = HERE / f"{name}.ttf"
    font["head"].modified = font["head"].created
    font.save(path, reorderTables=True)
    packed = TTFont(path, recalcTimestamp=False)
    packed.flavor = "woff2"
    packed.save(path.with_suffix(".woff2"))
    return [path, path.with_suffix(".woff2")]
