"""Breaking text and formulas into lines."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.notation import parse
from itembank.notation.mathml import mathml
from itembank.notation.parse import parse_written
from itembank.packs.data.pack_item import Maths
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.faces.maths_metrics import metrics
from itembank.pages.engine.maths.formula import formula, pieces
from itembank.pages.engine.text.line_breaking import FRACTIONS_APART
from itembank.pages.engine.text.paragraph import Flow, as_text, measure
from tests.depth import cases

WORDS = st.lists(st.text("abcdefgh£½×", min_size=1, max_size=14), min_size=1, max_size=40)


@settings(max_examples=cases(25, 60), deadline=None)
@given(WORDS, st.integers(80, 600), st.integers(12, 40))
def test_lines_hold_all_words_and_fit(words, width, size):
    block = measure(Flow(" ".join(words)), width, size)
    shown = " ".join(placed.atom.text for line in block.lines for placed in line.placed)
    assert shown.replace(" ", "").replace("\u00a0", "") == "".join(words)
    assert all(line.width <= width + 0.01 for line in block.lines)
    baselines = [line.baseline for line in block.lines]
    gaps = [b - a for a, b in pairwise(baselines)]
    assert all(gap >= 1.2 * size for gap in gaps)
    assert block.height > baselines[-1]


def lines(block):
    return [
        "".join(p.atom.text or (p.atom.maths.line if p.atom.first else "…") for p in line.placed)
        for line in block.lines
    ]


def test_a_number_keeps_its_unit():
    for width in range(60, 400, 7):
        text = lines(measure(Flow("A lane is 25 m long and 12 kg heavy"), width, 12))
        assert not any(line.rstrip().endswith(("25", "12")) for line in text)


def test_a_full_stop_stays_with_its_formula(samples):
    flow = Flow(samples.runs("Work out what is meant by $3/4 + 1/6$."))
    for width in range(110, 420, 9):
        for line in lines(measure(flow, width, 20)):
            assert line.strip() != "."


def test_fractions_of_two_lines_stand_apart_however_close_the_lines(samples):
    """2 thirteenths above 11 thirteenths, set close, could be read as 13 elevenths."""
    size = 24

    def step(text, gap):
        block = measure(Flow(samples.runs(text)), 150, size, gap)
        assert len(block.lines) == 2
        return block.lines[1].baseline - block.lines[0].baseline

    fractions, words = "it is $2/13$ or $11/13$ of it", "it is a word or it is more"
    assert step(fractions, 0.08) == pytest.approx(step(fractions, FRACTIONS_APART))
    assert step(fractions, 0.5) > step(fractions, FRACTIONS_APART)
    assert step(words, 0.08) == pytest.approx(step(words, 0.3) - 0.22 * size)
    assert FRACTIONS_APART >= 0.3


def test_a_line_is_as_tall_as_its_fraction(samples):
    flat = measure(Flow("Work out 3 now"), 400, 20)
    tall = measure(Flow(samples.runs("Work out $3/4$ now")), 400, 20)
    assert tall.height > flat.height * 1.5


def test_a_wide_formula_breaks_at_its_relation_first(samples):
    wide = "a + b + c + d + e = f + g + h + k + m"
    flow = Flow(samples.runs(f"${wide}$"))
    whole = measure(flow, 2000, 20)
    assert len(whole.lines) == 1
    halves = measure(flow, whole.width * 0.7, 20)
    assert len(halves.lines) == 2
    assert not halves.cramped
    quarters = measure(flow, whole.width * 0.3, 20)
    assert len(quarters.lines) > 3
    assert not quarters.cramped


def test_pieces_keep_brackets_fractions_and_prefixes_whole(samples):
    mathml = samples.faces("-(x + 1)/2 = 3(x - 4) + 5")[0]
    found = pieces(mathml)
    assert len(found) == 3
    assert found[0].count("<mfrac>") == 1
    assert all(part.startswith("<math>") and part.endswith("</math>") for part in found)
    total = sum(len(formula(part).glyphs) for part in found)
    assert total == len(formula(mathml).glyphs)


def test_a_formula_too_wide_to_break_is_shrunk_and_says_so(samples):
    flow = Flow(samples.runs("$(123456789 + 987654321)/(123456789 × 987654321)$"))
    block = measure(flow, 100, 20)
    assert block.cramped
    assert block.width <= 100.01


def test_characters_the_face_lacks_come_from_the_mathematics_font():
    block = measure(Flow("A → B ✓ □ ′"), 400, 20)
    borrowed = [p.atom for line in block.lines for p in line.placed if p.atom.layout is not None]
    assert [atom.text.strip("\u00a0") for atom in borrowed] == ["→", "✓", "□", "′"]
    assert all(len(atom.layout.glyphs) == 1 for atom in borrowed)


@pytest.mark.parametrize(
    ("line", "text"),
    [("12345", "12\u00a0345"), ("-4", "−4"), ("£3.50", "£3.50"), ("4.5 kg", "4.5\u00a0kg")],
)
def test_plain_numbers_are_set_as_text(samples, line, text):
    assert as_text(samples.faces(line)[0]) == text


@pytest.mark.parametrize("line", ["3/4", "x", "2 + 3", "4 cm^2", "0.1̇6̇", "□", "3 : 4"])
def test_everything_else_is_a_formula(samples, line):
    assert as_text(samples.faces(line)[0]) == ""


def test_not_xml_is_a_plain_error():
    with pytest.raises(ValueError, match="not well-formed MathML"):
        formula("<math><mn>1</math>")


def test_bold_and_plain_words_stand_a_space_apart():
    from itembank.pages.engine.faces.fonts import face
    from itembank.pages.engine.text.paragraph import Strong

    block = measure(Flow([Strong("Add up your marks:"), " out of 10"]), 600, 1)
    bold, regular = block.lines[0].placed
    assert bold.atom.text == "Add up your marks: "
    assert regular.x == pytest.approx(face(True).width(bold.atom.text), abs=1e-3)


@pytest.mark.parametrize(
    ("words", "whole"),
    [
        ("The exchange rate is $£1$ = $€1.10$. A bus part costs a lot.", "£1 = €1.10."),
        ("Which is better? Pack A: $500 g$ for $£2.30$. Or none?", "Pack A: 500 g for £2.30."),
    ],
)
def test_a_rate_and_a_pack_with_its_price_stay_on_one_line(samples, words, whole):
    flow = Flow(samples.runs(words))
    room = max(cluster.width for cluster in flow.clusters) * 12
    assert room < 160
    for width in range(int(room) + 1, 400, 7):
        shown = [line.replace("\u00a0", " ") for line in lines(measure(flow, width, 12))]
        assert any(whole.replace(" ", "") in line.replace(" ", "") for line in shown)
    # Where even that is too wide, it is broken and does not run over the edge.
    narrow = measure(flow, 60, 12)
    assert max(line.width for line in narrow.lines) <= 60.01


def test_a_number_that_ends_a_sentence_does_not_stand_alone():
    for width in range(60, 400, 7):
        text = lines(measure(Flow("Divide both by 7, so that the first part is 1."), width, 12))
        assert text[-1].strip() != "1."


@pytest.mark.parametrize("line", ["20 cm", "7 kg", "100 ml", "3.5 litres"])
def test_a_number_stands_as_far_from_its_unit_in_a_formula_as_in_text(samples, line):
    written = samples.maths(line).mathml
    apart = face().width(as_text(written)) - face().width(line.replace(" ", ""))
    assert apart == pytest.approx(face().width(" "))
    joined = written.replace("\u2009", "").replace("\u00a0", "")
    assert formula(written).width - formula(joined).width == pytest.approx(apart, abs=0.05)


def test_a_stop_stands_clear_of_a_fraction_and_close_after_a_letter(samples):
    gaps = {}
    for formula_, name in (("3/4", "fraction"), ("x", "letter")):
        (line,) = measure(Flow(samples.runs(f"Work out ${formula_}$.")), 400, 20).lines
        shown, stop = line.placed[-2:]
        assert stop.atom.text == "."
        gaps[name] = stop.x - shown.x - 20 * shown.atom.layout.width
    assert gaps["letter"] == pytest.approx(0, abs=0.01)
    assert gaps["fraction"] > 1


@pytest.mark.parametrize(
    ("words", "kept"),
    [
        ("A gardener sows seeds. $4/5$ of them come up. How many?", "4/5 of"),
        ("Work out the size of angle $x$ in the figure yesterday.", "angle x"),
    ],
)
def test_a_fraction_keeps_its_of_and_a_name_its_letter(samples, words, kept):
    flow = Flow(samples.runs(words))
    for width in range(90, 500, 7):
        shown = [line.replace("\u00a0", " ") for line in lines(measure(flow, width, 12))]
        assert any(kept in line for line in shown), width


@pytest.mark.parametrize("written", ["12345", "1234567", "3 kg", "25 cm^2", "12345 m"])
def test_thousands_and_units_stand_as_far_apart_in_a_formula_as_in_running_text(written):
    number = mathml(parse(written))
    plain_text = as_text(number)
    digits = re.sub(r"[^0-9a-z]", "", re.sub(r"<[^>]*>", "", number))
    spaces = sum(sign in "\u2009\u00a0" for sign in re.sub(r"<[^>]*>", "", number))
    ours = formula(number)
    gaps = room_beside(ours)
    assert spaces == sum(gap > 0.15 for gap in gaps)
    assert [gap for gap in gaps if gap > 0.15] == [
        pytest.approx(face().width(" "), abs=0.05)
    ] * spaces
    if plain_text:
        assert ours.width == pytest.approx(face().width(plain_text), abs=0.2)
    assert len(ours.glyphs) == len(digits)


def room_beside(layout):
    """Return how far each glyph is from where the one before moved the pen, in ems."""
    ends = [
        glyph.x + metrics().shape(glyph.number).advance / 1000 * glyph.scale
        for glyph in layout.glyphs
    ]
    return [after.x - end for end, after in zip(ends, layout.glyphs[1:], strict=False)]


def test_a_name_with_an_apostrophe_is_printed_with_it():
    written = mathml(parse_written("\"Amy's & Tom's\""))
    assert as_text(written) == "Amy's & Tom's"
    block = measure(Flow([Maths(mathml=written, line='"Amy\'s"', words="Amy's")]), 400, 20)
    assert [placed.atom.text for placed in block.lines[0].placed] == ["Amy's & Tom's"]
