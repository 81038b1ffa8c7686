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
from typing import Any

from itembank.errors import ItembankError

HERE = Path(__file__).parent
TEXT, MATHS = "Board Sans", "Board Math"
VERSION = "1.000"
SOURCES = {"fontpkg-atkinson-hyperlegible": "1.006", "ziamath": "0.13", "brotli": "1.2.1"}
"""The packages that the sources come from, and that which packs them, with the versions used."""

_DIGITS = "0123456789"
_UPRIGHT = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
_SIGNS = "+−×÷=<>≤≥≠±≈.,:;%£€$°/|()[]!?'’‘“”–-"
_ITALIC = {letter: 0x1D434 + n for n, letter in enumerate(_UPRIGHT[:26])} | {
    letter: 0x1D44E + n for n, letter in enumerate(_UPRIGHT[26:])
}
_ITALIC["h"] = 0x210E  # Planck's constant: U+1D455 is not assigned
_BRACKETS = "()[]|"
_PI = {"π": 0x03C0, "\U0001d70b": 0x03C0}
_KEPT = (
    "αβγδεθλμπρσφωΔΣΩ𝜃𝛼𝛽𝜋𝜆𝜇𝛾𝛿𝜑𝜔∑√∛∜∞·∙⋅→⇒⇔≡∈∝□✓′″{}‖⌊⌋⌈⌉⟨⟩∣∪∩∅∠⊥∥△⅓¼½¾"
    "\u0304\u0307\u0305\u00af\u02d9…\u0020\u00a0\u2061\u2062\u2063\u2064\u200b\u2009\u200a\u2003"
)
"""Signs that keep the drawing of STIX Two Math: seldom used, or tall."""
SUPERSCRIPT = 75
"""Per cent of a script's size: powers are read from the back of the room too."""


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


def _source(style: str) -> Any:
    import fontpkg_atkinson_hyperlegible
    from fontTools.ttLib import TTFont

    folder = Path(str(fontpkg_atkinson_hyperlegible.__file__)).parent / "files"
    return TTFont(folder / f"AtkinsonHyperlegible-{style}.ttf", recalcTimestamp=False)


def _stix() -> Any:
    import ziamath
    from fontTools.ttLib import TTFont

    path = Path(str(ziamath.__file__)).parent / "fonts" / "STIXTwoMath-Regular.ttf"
    return TTFont(path, recalcTimestamp=False)


def _plain_nought(font: Any) -> Any:
    """Return the nought without its stroke: its outline about the counter of the letter O.

    The counter is set so far within the outline as it is in the O, so that the nought has the
    weight of the letters, whatever the weight of the face.
    """
    from fontTools.pens.ttGlyphPen import TTGlyphPen

    glyf = font["glyf"]
    outer, inner = _contours(glyf, "zero")[0], _contours(glyf, "O")[1]
    whole, letter = _contours(glyf, "zero")[0], _contours(glyf, "O")[0]
    stem = min(x for x, _, _ in inner) - min(x for x, _, _ in letter)
    left = min(x for x, _, _ in whole) + stem
    right = max(x for x, _, _ in whole) - stem
    low, high = min(x for x, _, _ in inner), max(x for x, _, _ in inner)
    scale = (right - left) / (high - low)
    counter = [(round(left + (x - low) * scale), y, on) for x, y, on in inner]
    pen = TTGlyphPen(None)
    for contour in (outer, counter):
        _draw(pen, contour)
    return pen.glyph()


Contour = list[tuple[int, int, bool]]


def _contours(glyf: Any, name: str) -> list[Contour]:
    points, ends, flags = glyf[name].getCoordinates(glyf)
    drawn = [(x, y, bool(flag & 1)) for (x, y), flag in zip(points, flags, strict=True)]
    starts = [0, *(end + 1 for end in ends)]
    return [drawn[start : end + 1] for start, end in zip(starts, ends, strict=False)]


def _draw(pen: Any, contour: Contour) -> None:
    """Draw a closed TrueType contour; points that are off it are those of quadratic curves."""
    first = next(n for n, (_, _, on) in enumerate(contour) if on)
    turned = contour[first:] + contour[:first]
    pen.moveTo(turned[0][:2])
    off: list[tuple[int, int]] = []
    for x, y, on in [*turned[1:], turned[0]]:
        if not on:
            off.append((x, y))
        elif off:
            pen.qCurveTo(*off, (x, y))
            off = []
        else:
            pen.lineTo((x, y))
    pen.closePath()


def _named(font: Any, family: str, style: str) -> None:
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


def _unhinted(font: Any) -> None:
    for table in ("fpgm", "prep", "cvt ", "gasp", "DSIG", "hdmx", "VDMX", "LTSH"):
        if table in font:
            del font[table]
    glyf = font["glyf"]
    for name in font.getGlyphOrder():
        glyf[name].removeHinting()


def _save(font: Any, name: str) -> list[Path]:
    """Write a font for the PDFs and, from those very bytes, for web pages."""
    from fontTools.ttLib import TTFont

    path = HERE / f"{name}.ttf"
    font["head"].modified = font["head"].created
    font.save(path, reorderTables=True)
    packed = TTFont(path, recalcTimestamp=False)
    packed.flavor = "woff2"
    packed.save(path.with_suffix(".woff2"))
    return [path, path.with_suffix(".woff2")]


def build_text(style: str) -> list[Path]:
    """Build a weight of the text face; returns its files."""
    font = _source(style)
    glyph = _plain_nought(font)
    _unhinted(font)
    font["glyf"]["zero"] = glyph
    wide = font["hmtx"]["zero"][0]
    for name, advance in (("zero", wide), ("zero.tf", font["hmtx"]["zero.tf"][0])):
        moved = _moved(glyph, font["glyf"], (advance - wide) // 2)
        font["glyf"][name] = moved
        font["hmtx"][name] = (advance, moved.xMin)
    for table in ("GSUB", "GPOS", "GDEF"):
        if table in font:
            del font[table]
    _named(font, TEXT, style)
    return _save(font, f"BoardSans-{style}")


def _moved(glyph: Any, glyf: Any, x: int) -> Any:
    from copy import deepcopy

    made = deepcopy(glyph)
    made.coordinates.translate((x, 0))
    made.recalcBounds(glyf)
    return made


def build_maths() -> list[Path]:
    """Build the mathematics face; returns its files."""
    from fontTools import subset

    font = _stix()
    kept = set(_DIGITS + _UPRIGHT + _SIGNS + _KEPT) | set(map(chr, _ITALIC.values()))
    options = subset.Options()
    options.layout_features = []
    options.name_IDs = ["*"]
    options.notdef_outline = True
    options.recalc_timestamp = False
    options.hinting = False
    options.drop_tables = ["DSIG", "GSUB", "GPOS", "GDEF"]
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=map(ord, kept))
    cutter.subset(font)
    _unhinted(font)
    upright, slanted = _source("Regular"), _source("Italic")
    nought = _plain_nought(upright)
    cmap = font.getBestCmap()
    grafted: dict[str, tuple[Any, str]] = {}
    for character in _DIGITS + _UPRIGHT + _SIGNS:
        grafted[cmap[ord(character)]] = (upright, upright.getBestCmap()[ord(character)])
    for letter, code in _ITALIC.items():
        grafted[cmap[code]] = (slanted, slanted.getBestCmap()[ord(letter)])
    for letter, code in _PI.items():
        grafted[cmap[ord(letter)]] = (upright, upright.getBestCmap()[code])
    for name, (source, other) in grafted.items():
        _graft(font, name, source, other)
    _reach_descenders(font)
    font["glyf"][cmap[ord("0")]] = nought
    _fit_maths(font, set(grafted))
    font["GSUB"] = _no_substitutions()
    _named(font, MATHS, "Regular")
    return _save(font, "BoardMath-Regular")


def _graft(font: Any, name: str, source: Any, other: str) -> None:
    """Put a glyph of another font, its parts made one outline, in the place of one of `font`."""
    from fontTools.pens.recordingPen import DecomposingRecordingPen
    from fontTools.pens.ttGlyphPen import TTGlyphPen

    glyphs = source.getGlyphSet()
    recording = DecomposingRecordingPen(glyphs)
    glyphs[other].draw(recording)
    pen = TTGlyphPen(None)
    recording.replay(pen)
    glyph = pen.glyph()
    glyph.recalcBounds(font["glyf"])
    font["glyf"][name] = glyph
    font["hmtx"][name] = (source["hmtx"][other][0], getattr(glyph, "xMin", 0))


def _reach_descenders(font: Any) -> None:
    """Make brackets as tall as a line of figures and letters, about the axis.

    A bracket that fell short of a y or an 8 within it would be set from the next size, and one
    that holds an x would not: two sizes beside each other.
    """
    glyf, cmap = font["glyf"], font.getBestCmap()
    minus = glyf[cmap[ord("−")]]
    axis = (minus.yMin + minus.yMax) / 2
    inside = [glyf[cmap[ord(character)]] for character in "08" + "gjpqy"]
    inside += [glyf[cmap[code]] for letter, code in _ITALIC.items() if letter in "bdfhklgjpqy"]
    half = max(max(glyph.yMax - axis, axis - glyph.yMin) for glyph in inside) + 1
    for character in _BRACKETS:
        glyph = glyf[cmap[ord(character)]]
        low, high = glyph.yMin, glyph.yMax
        scale = 2 * half / (high - low)
        points = glyph.coordinates
        for n, (x, y) in enumerate(points):
            points[n] = (x, round(axis - half + (y - low) * scale))
        glyph.recalcBounds(glyf)


def _fit_maths(font: Any, grafted: set[str]) -> None:
    """Bring the MATH table to the new glyphs: the axis through the minus, its weight for bars."""
    glyf, cmap = font["glyf"], font.getBestCmap()
    minus = glyf[cmap[ord("−")]]
    table = font["MATH"].table
    constants = table.MathConstants
    constants.AxisHeight.Value = round((minus.yMin + minus.yMax) / 2)
    bar = minus.yMax - minus.yMin
    for rule in ("FractionRuleThickness", "OverbarRuleThickness", "RadicalRuleThickness"):
        getattr(constants, rule).Value = min(bar, 72)
    constants.ScriptPercentScaleDown = constants.ScriptScriptPercentScaleDown = SUPERSCRIPT
    info = table.MathGlyphInfo
    for part, values in (
        ("MathItalicsCorrectionInfo", "ItalicsCorrection"),
        ("MathTopAccentAttachment", "TopAccentAttachment"),
    ):
        found = getattr(info, part, None)
        coverage = getattr(found, "Coverage", None) or getattr(found, "TopAccentCoverage", None)
        if not coverage:
            continue
        rows = list(zip(coverage.glyphs, getattr(found, values), strict=True))
        rows = [(glyph, value) for glyph, value in rows if glyph not in grafted]
        coverage.glyphs = [glyph for glyph, _ in rows]
        setattr(found, values, [value for _, value in rows])
        setattr(found, f"{values}Count", len(rows))
    if getattr(info, "MathKernInfo", None):
        info.MathKernInfo = None


def _no_substitutions() -> Any:
    """Return a table that names the scripts and changes nothing: some typesetters ask for one."""
    from fontTools.ttLib import newTable
    from fontTools.ttLib.tables import otTables as ot

    table = newTable("GSUB")
    made = table.table = ot.GSUB()
    made.Version = 0x00010000
    made.ScriptList, made.FeatureList, made.LookupList = (
        ot.ScriptList(),
        ot.FeatureList(),
        ot.LookupList(),
    )
    made.FeatureList.FeatureRecord, made.LookupList.Lookup = [], []
    made.ScriptList.ScriptRecord = []
    for tag in ("DFLT", "latn", "math"):
        record = ot.ScriptRecord()
        record.ScriptTag, record.Script = tag, ot.Script()
        record.Script.LangSysRecord = []
        usual = record.Script.DefaultLangSys = ot.DefaultLangSys()
        usual.LookupOrder, usual.ReqFeatureIndex, usual.FeatureIndex = None, 0xFFFF, []
        made.ScriptList.ScriptRecord.append(record)
    return table


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
