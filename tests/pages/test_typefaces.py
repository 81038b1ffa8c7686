"""One face for prose and mathematics: the same on any machine, nothing missing, no stroke."""

import random
import re
import unicodedata
from importlib.metadata import version
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from itembank.bank.question.as_item import as_item
from itembank.bank.read.load import read_bank
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.notation import parse
from itembank.notation.mathml import mathml
from itembank.pages.engine.faces.fonts import FOLDER, MATHS, face
from itembank.pages.engine.maths.formula import formula
from itembank.pages.engine.page.page import Document
from itembank.pages.typefaces import build_typefaces as build
from itembank.pages.typefaces import face_files, maths_typeface
from tests.depth import only_whole

ROOT = Path(__file__).parents[2]
FILES = ("BoardSans-Regular.ttf", "BoardSans-Bold.ttf", "BoardMath-Regular.ttf")
WEB = [name.replace(".ttf", ".woff2") for name in FILES]


@pytest.fixture(scope="module")
def fonts():
    return {name: TTFont(FOLDER / name) for name in FILES}


def test_the_files_are_what_the_program_builds(tmp_path, monkeypatch):
    monkeypatch.setattr(face_files, "HERE", tmp_path)
    assert build.main() == 0
    for name in (*FILES, *WEB):
        assert (tmp_path / name).read_bytes() == (FOLDER / name).read_bytes(), name


def test_another_version_of_a_source_is_refused(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(face_files, "HERE", tmp_path)
    monkeypatch.setattr(build, "SOURCES", {**build.SOURCES, "ziamath": "0.1"})
    assert build.main() == 2
    assert f"ziamath 0.1; {version('ziamath')} is installed" in capsys.readouterr().err
    assert not list(tmp_path.iterdir())


def test_a_source_that_is_not_installed_is_one_plain_error(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(face_files, "HERE", tmp_path)
    monkeypatch.setattr(build, "SOURCES", {**build.SOURCES, "no-such-face": "1.0"})
    assert build.main() == 2
    said = capsys.readouterr().err
    assert "no-such-face 1.0, which is not installed. Install no-such-face==1.0." in said
    assert len(said.splitlines()) == 1
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("name", FILES)
def test_web_pages_get_the_same_glyphs(fonts, name):
    packed = TTFont(FOLDER / name.replace(".ttf", ".woff2"))
    assert packed.flavor == "woff2"
    assert packed.getGlyphOrder() == fonts[name].getGlyphOrder()
    assert packed.getBestCmap() == fonts[name].getBestCmap()
    assert packed["hmtx"].metrics == fonts[name]["hmtx"].metrics
    for glyph in packed.getGlyphOrder():
        outlines = [
            font["glyf"][glyph].getCoordinates(font["glyf"]) for font in (packed, fonts[name])
        ]
        assert [list(part) for part in outlines[0]] == [list(part) for part in outlines[1]], glyph


def test_a_browser_finds_what_it_sets_mathml_from():
    # MathML Core, 5: constants, italic letters by their own code points, and signs that grow.
    packed = TTFont(FOLDER / "BoardMath-Regular.woff2")
    table, cmap = packed["MATH"].table, packed.getBestCmap()
    assert table.MathConstants.AxisHeight.Value > 0
    assert table.MathConstants.FractionRuleThickness.Value > 0
    grown = set(table.MathVariants.VertGlyphCoverage.glyphs)
    assert {cmap[ord(sign)] for sign in "()[]{}|√∛"} <= grown
    built = [c for c in table.MathVariants.VertGlyphConstruction if c.GlyphAssembly]
    assert built, "nothing grows further than its largest drawing"
    assert all(code in cmap for code in maths_typeface.ITALIC.values())


@pytest.mark.parametrize("name", FILES)
def test_noughts_have_no_stroke(fonts, name):
    # Two outlines: the nought and its counter. A stroke would part the counter in two.
    assert fonts[name]["glyf"][fonts[name].getBestCmap()[ord("0")]].numberOfContours == 2


def test_a_character_is_the_same_in_prose_and_in_mathematics(fonts):
    text, maths = fonts["BoardSans-Regular.ttf"], fonts["BoardMath-Regular.ttf"]
    for character in maths_typeface.DIGITS + maths_typeface.UPRIGHT + maths_typeface.SIGNS:
        one, other = (font.getBestCmap()[ord(character)] for font in (text, maths))
        assert text["hmtx"][one][0] == maths["hmtx"][other][0], character
        if character not in maths_typeface.BRACKETS:
            assert text["glyf"][one].xMax == maths["glyf"][other].xMax, character
    for space in " \u00a0":
        own = maths.getBestCmap()[ord(space)]
        assert maths["hmtx"][own][0] == text["hmtx"][text.getBestCmap()[ord(" ")]][0]
    assert text["head"].unitsPerEm == maths["head"].unitsPerEm


def test_the_names_are_ours_and_the_licence_is_theirs(fonts):
    licence = (FOLDER / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
    for font in fonts.values():
        names = font["name"]
        assert names.getDebugName(1) in ("Board Sans", "Board Math")
        assert "SIL Open Font License" in names.getDebugName(13)
        owner = re.match(r"(Copyright [^(.]*?)[ .,(]", names.getDebugName(0))
        assert owner
        assert owner[1] in licence
    assert not any("Reserved Font Name" in font["name"].getDebugName(0) for font in fonts.values())


def italic(letter):
    name = unicodedata.name(letter).replace("LATIN ", "").replace("GREEK ", "")
    name = name.replace(" LETTER", "")
    return "ℎ" if letter == "h" else unicodedata.lookup(f"MATHEMATICAL ITALIC {name}")


def trees():
    """Return the mathematics of some items of every tier of every topic, and of the banks."""
    for name in topic_ids():
        topic = find_topic(name)
        for tier, space in topic.spaces.items():
            for index in range(0, len(space), max(1, len(space) // 7)):
                yield topic.item(Tier(tier), index)
    for folder in ("key-stage-3", "key-stage-4"):
        yield from map(as_item, read_bank(ROOT / "banks" / folder).entries())


@only_whole
def test_no_character_of_any_question_is_missing():
    missing = set()
    cmap = TTFont(MATHS).getBestCmap()
    for item in trees():
        nodes = [run for run in (*item.prompt, item.key) if not isinstance(run, str)]
        nodes += [step.maths for step in item.steps if step.maths is not None]
        for node in nodes:
            marked = mathml(node)
            said = re.sub(r"<[^>]*>", "", marked)
            # A letter alone is set in italic, by the code point of the italic letter.
            said += "".join(map(italic, re.findall(r"<mi>(.)</mi>", marked)))
            missing |= {text for text in said if ord(text) not in cmap and text not in "&;\n"}
        for run in item.prompt:
            if isinstance(run, str):
                shown = run.replace("\n", "")
                missing |= {c for c in shown if not face().has(c) and ord(c) not in cmap}
    assert missing == set()


def test_a_bracket_grows_only_about_what_is_tall():
    def heights(text):
        made = formula(mathml(parse(text)))
        return round(made.ascent + made.descent, 3)

    flat = heights("3(x - 2) + 4(2y + 8)")
    assert heights("(8 - 2)(g + 7)") == flat
    assert heights("(2/3)(x + 1)") > flat + 0.5


def test_codes_of_a_line_are_those_that_reportlab_gives():
    """A line of known characters is looked up at once: new ones, and a second subset, are not."""
    weight = face()
    characters = [chr(code) for code in weight.font.face.charToGlyph if code not in (0x20, 0xA0)]
    assert len(characters) > 300, "more than one subset holds"
    rng = random.Random(3)
    texts = ["", " ", "a\u00a0b", "a b"]
    texts += ["".join(rng.choices(characters[:end], k=9)) for end in range(9, len(characters), 5)]
    texts += ["".join([*rng.sample(characters, 7), " \u00a0\u2603"]) for _ in range(100)]
    quick, slow = Document("A").pdf, Document("B").pdf
    for text in (*texts, *texts):
        assert weight.codes(text, quick) == weight.font.splitString(text, slow), text
    assert weight.font.state[quick].assignments == weight.font.state[slow].assignments
