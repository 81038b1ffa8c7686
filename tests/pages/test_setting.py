"""Formulas are set so that each sign stands where mathematics has it, whatever is within what."""

from itertools import pairwise

import pytest
from hypothesis import given, settings

from itembank.notation import parse
from itembank.notation.mathml import mathml
from itembank.pages.engine.faces.maths_metrics import metrics
from itembank.pages.engine.maths.setting import set_formula
from tests.depth import cases
from tests.notation.trees import trees


def made(text, **options):
    return set_formula(mathml(parse(text)), **options)


def reach(formula, glyph):
    """Return left, right, low and high of a glyph as it stands, in ems."""
    shape, unit = metrics().shape(glyph.number), glyph.scale / metrics().units
    x, y = glyph.x, glyph.y
    return (
        x + shape.left * unit,
        x + shape.right * unit,
        y + shape.low * unit,
        y + shape.high * unit,
    )


def said(formula):
    return "".join(glyph.character for glyph in formula.glyphs)


@settings(deadline=None, max_examples=cases(25, 60))
@given(trees)
def test_the_layout_holds_its_ink_and_no_more(tree):
    formula = set_formula(mathml(tree))
    boxes = [reach(formula, glyph) for glyph in formula.glyphs]
    boxes += [(x, x + w, y, y + h) for x, y, w, h in formula.rules]
    assert min(box[0] for box in boxes) == pytest.approx(0.03, abs=1e-4)
    assert max(box[1] for box in boxes) == pytest.approx(formula.width - 0.03, abs=1e-4)
    assert min(box[2] for box in boxes) == pytest.approx(-formula.descent, abs=1e-4)
    assert max(box[3] for box in boxes) == pytest.approx(formula.ascent, abs=1e-4)


@settings(deadline=None, max_examples=cases(25, 60))
@given(trees)
def test_no_sign_stands_on_another(tree):
    formula = set_formula(mathml(tree))
    boxes = [(glyph, reach(formula, glyph)) for glyph in formula.glyphs if glyph.character != "√"]
    for n, (one, a) in enumerate(boxes):
        for other, b in boxes[n + 1 :]:
            across = min(a[1], b[1]) - max(a[0], b[0])
            up = min(a[3], b[3]) - max(a[2], b[2])
            together = min(across, up)
            assert together < 0.03 or "\u2060" in (one.character, other.character), (
                one.character,
                other.character,
            )


def test_the_parts_of_a_fraction_stand_clear_above_and_below_its_bar_in_its_middle():
    formula = made("37/5")
    ((x, y, wide, thick),) = formula.rules
    three, seven, five = (reach(formula, glyph) for glyph in formula.glyphs)
    assert three[2] > y + thick + 0.1
    assert seven[2] > y + thick + 0.1
    assert five[3] < y - 0.1
    assert (three[0] + seven[1]) / 2 == pytest.approx(x + wide / 2, abs=0.03)
    assert (five[0] + five[1]) / 2 == pytest.approx(x + wide / 2, abs=0.03)


def test_a_power_is_smaller_and_raised_and_as_large_as_asked():
    base, index = made("x^2").glyphs
    assert (index.scale, index.y) > (0.7, 0.3)
    assert index.scale < base.scale == 1
    assert {glyph.scale for glyph in made("x^2", least_script=1.0).glyphs} == {1.0}


def test_letters_lean_and_say_what_they_are():
    formula = made("2x + h")
    assert said(formula) == "2x+h"
    upright = metrics().number("x")
    assert formula.glyphs[1].number not in (0, upright)
    assert formula.glyphs[3].number == metrics().number("ℎ")


def test_brackets_about_what_is_taller_than_any_drawing_of_them_are_built_of_parts():
    tower = "<mn>1</mn>"
    for _ in range(9):
        tower = f"<mfrac><mn>2</mn><mrow><mn>1</mn><mo>+</mo>{tower}</mrow></mfrac>"
    formula = set_formula(f"<math><mrow><mo>(</mo>{tower}<mo>)</mo></mrow></math>", 1.0)
    opening = [glyph for glyph in formula.glyphs if glyph.x < formula.rules[0][0]]
    assert len(opening) > 3
    assert said(formula).count("(") == said(formula).count(")") == 1
    spans = sorted(reach(formula, glyph)[2:] for glyph in opening)
    inside = [reach(formula, glyph) for glyph in formula.glyphs if glyph not in opening]
    assert spans[0][0] <= min(box[2] for box in inside)
    assert max(high for _, high in spans) >= max(box[3] for box in inside) - 0.01
    for (_, high), (low, _) in pairwise(spans):
        assert low <= high, "the parts of a bracket meet"


def test_a_root_reaches_over_all_of_what_is_under_it():
    formula = made("√(3x + 12)")
    ((x, y, wide, _),) = formula.rules
    root, *under = (reach(formula, glyph) for glyph in formula.glyphs)
    assert x == pytest.approx(root[1], abs=0.04)
    assert x + wide >= max(box[1] for box in under)
    assert y > max(box[3] for box in under)
    assert root[2] <= min(box[2] for box in under) + 0.01


def test_the_dots_of_a_recurring_decimal_stand_over_the_middle_of_their_digits():
    formula = made("0.1̇42857̇")
    dots = [reach(formula, glyph) for glyph in formula.glyphs if glyph.character == "˙"]
    digits = [reach(formula, glyph) for glyph in formula.glyphs if glyph.character in "17"]
    for dot, digit in zip(dots, digits, strict=True):
        assert dot[2] > digit[3]
        assert (dot[0] + dot[1]) / 2 == pytest.approx((digit[0] + digit[1]) / 2, abs=0.02)


@pytest.mark.parametrize("text", ["3 - 2", "3 + 2", "5 = 2", "3 × 2", "6 ÷ 2", "1 < 2"])
def test_a_sign_between_two_numbers_has_room_on_both_sides_and_evenly(text):
    formula = made(text)
    before, sign, _ = (metrics().shape(glyph.number).advance / 1000 for glyph in formula.glyphs)
    first, middle, last = formula.glyphs
    left, right = middle.x - first.x - before, last.x - middle.x - sign
    assert left == pytest.approx(right, abs=0.01)
    assert left > 0.2


def test_a_prefix_minus_stands_close_to_its_number():
    minus, number = made("-3").glyphs
    assert number.x - minus.x - metrics().shape(minus.number).advance / 1000 < 0.1


def test_what_is_not_set_here_is_refused():
    with pytest.raises(ValueError, match="no way to set this part of a formula: <mtable>"):
        set_formula("<math><mtable/></math>")
    with pytest.raises(ValueError, match="is said in em"):
        set_formula('<math><mo lspace="3px">+</mo></math>')
    with pytest.raises(ValueError, match="not well-formed"):
        set_formula("<math><mn>1</math>")


@pytest.mark.parametrize(
    "text", ["3/4", "2 3/4 = 2.75", "√(x + 1)", "(2/3)(x + 1)", "3(x - 2) = 12", "x^2 + 5x - 6"]
)
def test_another_typesetter_chooses_the_same_glyphs_in_the_same_order(text):
    """ziamath sets any MathML, with spaces of its own: the signs, their sizes and heights agree."""
    import ziamath
    from ziamath.drawable import Glyph
    from ziamath.nodes.mnode import Mnode

    from itembank.pages.engine.faces.fonts import MATHS

    drawn = ziamath.Math(mathml(parse(text)), size=1000, font=str(MATHS))
    found = []

    def walk(node, y):
        for (_, dy), child in zip(node.nodexy, node.nodes, strict=False):
            if isinstance(child, Mnode):
                walk(child, y + dy)
            elif isinstance(child, Glyph) and child.glyph.operators:
                found.append(
                    (child.glyph.index, round(child.size / 1000, 3), round(-(y + dy) / 1000, 3))
                )

    walk(drawn.node, 0)
    ours = [(glyph.number, round(glyph.scale, 3), round(glyph.y, 3)) for glyph in made(text).glyphs]
    assert ours == [(a, b, pytest.approx(c, abs=0.002)) for a, b, c in found]
