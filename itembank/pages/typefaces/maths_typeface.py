"""The mathematics face: STIX Two Math with the figures, letters and signs of the text face."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from itembank.pages.typefaces.face_files import give_names, save_face, take_hints_out, text_source
from itembank.pages.typefaces.glyphs import graft, plain_nought

MATHS = "Board Math"

DIGITS = "0123456789"

UPRIGHT = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"

SIGNS = "+−×÷=<>≤≥≠±≈.,:;%£€$°/|()[]!?'’‘“”–-"

ITALIC = {letter: 0x1D434 + n for n, letter in enumerate(UPRIGHT[:26])} | {
    letter: 0x1D44E + n for n, letter in enumerate(UPRIGHT[26:])
}

ITALIC["h"] = 0x210E  # Planck's constant: U+1D455 is not assigned

BRACKETS = "()[]|"

_PI = {"π": 0x03C0, "\U0001d70b": 0x03C0}

_KEPT = (
    "αβγδεθλμπρσφωΔΣΩ𝜃𝛼𝛽𝜋𝜆𝜇𝛾𝛿𝜑𝜔∑√∛∜∞·∙⋅→⇒⇔≡∈∝□✓′″{}‖⌊⌋⌈⌉⟨⟩∣∪∩∅∠⊥∥△⅓¼½¾"
    "\u0304\u0307\u0305\u00af\u02d9…\u0020\u00a0\u2061\u2062\u2063\u2064\u200b\u2009\u200a\u2003"
)
"""Signs that keep the drawing of STIX Two Math: seldom used, or tall."""

SUPERSCRIPT = 75
"""Per cent of a script's size: powers are read from the back of the room too."""


def _stix() -> Any:
    import ziamath
    from fontTools.ttLib import TTFont

    path = Path(str(ziamath.__file__)).parent / "fonts" / "STIXTwoMath-Regular.ttf"
    return TTFont(path, recalcTimestamp=False)


def build_maths() -> list[Path]:
    """Build the mathematics face; returns its files."""
    from fontTools import subset

    font = _stix()
    kept = set(DIGITS + UPRIGHT + SIGNS + _KEPT) | set(map(chr, ITALIC.values()))
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
    take_hints_out(font)
    upright, slanted = text_source("Regular"), text_source("Italic")
    nought = plain_nought(upright)
    cmap = font.getBestCmap()
    grafted: dict[str, tuple[Any, str]] = {}
    for character in DIGITS + UPRIGHT + SIGNS:
        grafted[cmap[ord(character)]] = (upright, upright.getBestCmap()[ord(character)])
    for letter, code in ITALIC.items():
        grafted[cmap[code]] = (slanted, slanted.getBestCmap()[ord(letter)])
    for letter, code in _PI.items():
        grafted[cmap[ord(letter)]] = (upright, upright.getBestCmap()[code])
    for name, (source, other) in grafted.items():
        graft(font, name, source, other)
    # A number stands as far from its unit in a formula as in running text.
    for space in " \u00a0":
        own, advance = cmap[ord(space)], upright["hmtx"][upright.getBestCmap()[ord(" ")]][0]
        font["hmtx"][own] = (advance, font["hmtx"][own][1])
    _reach_descenders(font)
    font["glyf"][cmap[ord("0")]] = nought
    _fit_maths(font, set(grafted))
    font["GSUB"] = _no_substitutions()
    give_names(font, MATHS, "Regular")
    return save_face(font, "BoardMath-Regular")


def _reach_descenders(font: Any) -> None:
    """Make brackets as tall as a line of figures and letters, about the axis.

    A bracket that fell short of a y or an 8 within it would be set from the next size, and one
    that holds an x would not: two sizes beside each other.
    """
    glyf, cmap = font["glyf"], font.getBestCmap()
    minus = glyf[cmap[ord("−")]]
    axis = (minus.yMin + minus.yMax) / 2
    inside = [glyf[cmap[ord(character)]] for character in "08" + "gjpqy"]
    inside += [glyf[cmap[code]] for letter, code in ITALIC.items() if letter in "bdfhklgjpqy"]
    half = max(max(glyph.yMax - axis, axis - glyph.yMin) for glyph in inside) + 1
    for character in BRACKETS:
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
