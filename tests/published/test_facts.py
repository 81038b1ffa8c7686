"""What the tool shows and counts, against values that others published.

Each value names its source beside the check; "from memory" and "common practice, no source"
say how sure we are.
"""

from __future__ import annotations

import io
from collections import Counter
from fractions import Fraction
from itertools import pairwise

import pikepdf
import pytest

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.value import exact
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.theme import contrast, luminance
from itembank.planning.bands.bands import band_of, cut_scores, default_scheme

MM = 72 / 25.4
"""Points in a millimetre: a point is 1/72 inch, and an inch is 25.4 mm."""

# M. Okabe and K. Ito, "Color Universal Design", 2008, from memory.
OKABE_ITO = {
    *("#000000", "#E69F00", "#56B4E9", "#009E73"),
    *("#F0E442", "#0072B2", "#D55E00", "#CC79A7"),
}

# OEIS A005728, from memory: terms of the Farey sequence of order n, for n = 1 … 10. They are
# the fractions in lowest terms from 0/1 to 1/1 with denominators up to n.
FAREY = dict(enumerate((2, 3, 5, 7, 11, 13, 19, 23, 29, 33), start=1))

# OEIS A000010, from memory: Euler's totient, for n = 1 … 12.
TOTIENT = dict(enumerate((1, 1, 2, 2, 4, 2, 6, 4, 6, 4, 10, 4), start=1))


# Paper and contrast


def test_a4_is_210_by_297_millimetres() -> None:
    # ISO 216.
    width, height = theme.A4
    assert width == pytest.approx(210 * MM, abs=0.01)
    assert height == pytest.approx(297 * MM, abs=0.01)


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # WCAG 2.2, definition of contrast ratio: it runs from 1 to 21.
        ("#000000", "#FFFFFF", "21.00"),
        ("#FFFFFF", "#FFFFFF", "1.00"),
        # The greys on either side of the 4.5 : 1 of WCAG 2.2, 1.4.3.
        ("#767676", "#FFFFFF", "4.54"),
        ("#777777", "#FFFFFF", "4.48"),
    ],
)
def test_contrast_ratios(one: str, other: str, ratio: str) -> None:
    assert f"{contrast(one, other):.2f}" == ratio
    assert f"{contrast(other, one):.2f}" == ratio


def test_luminance_weighs_the_primaries_as_wcag_does() -> None:
    # WCAG 2.2, "relative luminance": L = 0.2126 R + 0.7152 G + 0.0722 B.
    primaries = ("#FF0000", "#00FF00", "#0000FF")
    assert [luminance(primary) for primary in primaries] == pytest.approx([0.2126, 0.7152, 0.0722])


@pytest.mark.parametrize("paper", theme.PAPERS)
def test_text_has_the_contrast_wcag_asks_for_on_every_paper(paper: str) -> None:
    # WCAG 2.2, 1.4.3 (minimum): 4.5 : 1.
    for colour in (theme.INK, theme.QUIET, theme.ACCENT):
        assert contrast(colour, theme.PAPERS[paper]) >= 4.5
    # WCAG 2.2, 1.4.11 (non-text contrast): 3 : 1 for what has to be seen to answer.
    for colour in (theme.WRITING, theme.RULE):
        assert contrast(colour, theme.PAPERS[paper]) >= 3


# Type


def test_type_sizes_of_clear_and_large_print() -> None:
    # UKAAF guidance G003 (2019): clear print at least 12 pt, ideally 14; large print at least
    # 16 pt, ideally 18.
    assert theme.PAPER_LEAST >= 12
    assert theme.PAPER_TEXT >= 14
    assert theme.LARGE_TEXT >= 18


@pytest.fixture(scope="module", params=[False, True], ids=["clear print", "large print"])
def sheets(request: pytest.FixtureRequest) -> tuple[bool, dict[str, pikepdf.Pdf]]:
    """The A4 documents of a real pack, in clear print and in large print."""
    import datetime

    from itembank.packs.build import build_pack
    from itembank.pages.draw import draw_pack
    from itembank.planning.department.large_copies import LargePrint
    from itembank.planning.department.pack_request import PackRequest, PlannedTopic

    names = ("fractions.add-unlike", "ratio.share", "equations.both-sides")
    pack = build_pack(
        PackRequest(
            school="Larkhythe School",
            class_name="8K",
            date=datetime.date(2026, 11, 30),
            title="Sharing in a ratio",
            topics=tuple(PlannedTopic(name) for name in names),
            questions=8,
            seed=5,
            follow_up=10,
            variants=1,
            large_print=LargePrint.copies(int(request.param)),
            paper="white",
            print_tint=False,
            slips=False,
            self_mark="when done",
            bands=default_scheme(),
        )
    )
    slides = ("starter.pdf", "answers.pdf", "next-tasks.pdf")
    return request.param, {
        name: pikepdf.open(io.BytesIO(data))
        for name, data in draw_pack(pack).items()
        if name not in slides and name.endswith("-large.pdf") == request.param
    }


def test_sheets_and_notes_are_drawn_on_a4(sheets: tuple[bool, dict[str, pikepdf.Pdf]]) -> None:
    large, documents = sheets
    every = ("starter", "support", "core", "challenge", "follow-up-answers")
    usual = {*(f"{name}.pdf" for name in every[1:]), "teacher-notes.pdf"}
    assert set(documents) == ({f"{name}-large.pdf" for name in every} if large else usual)
    for pdf in documents.values():
        for page in pdf.pages:
            box = [float(edge) for edge in page.mediabox]
            assert box == pytest.approx([0, 0, 210 * MM, 297 * MM], abs=0.1)


def test_no_sheet_sets_type_smaller_than_the_guidance(
    sheets: tuple[bool, dict[str, pikepdf.Pdf]],
) -> None:
    large, documents = sheets
    # UKAAF guidance G003 (2019), as above: the least size for each kind of print.
    least = 16 if large else 12
    checked = 0
    for name, pdf in documents.items():
        for page in pdf.pages:
            figure = False
            for operands, operator in pikepdf.parse_content_stream(page):
                if str(operator) == "BDC":
                    figure = operands[0] == "/Figure"  # the letter inside a sign is a drawing
                elif str(operator) == "Tf" and not figure:
                    checked += 1
                    assert float(operands[1]) >= least, name
    assert checked


# Bands


@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_band_colours_are_of_the_okabe_ito_palette(count: int) -> None:
    colours = [sign.colour for sign in default_scheme(count).signs]
    assert set(colours) <= OKABE_ITO
    # WCAG 2.2, 1.4.1 (use of colour): each band has more than its colour to tell it by.
    for what in ("shape", "letter", "name", "colour"):
        assert len({getattr(sign, what) for sign in default_scheme(count).signs}) == count


def test_cut_scores_out_of_eight() -> None:
    # Common practice in classrooms, no source: 0–4 lowest, 5–6 middle, 7–8 top.
    assert cut_scores(8) == (5, 7)
    # A success rate of about 80 % shows material is being learnt (Rosenshine, "Principles of
    # Instruction", American Educator, Spring 2012; from memory): above it, the highest band.
    assert [band_of(score, default_scheme().bands(10)).letter for score in (8, 9)] == ["S", "E"]
    letters = [band_of(score, default_scheme().bands(8)).letter for score in range(9)]
    assert letters == ["R"] * 5 + ["S"] * 2 + ["E"] * 2


# Counting fractions


def _keys(tier: Tier) -> set[Fraction]:
    """Every answer of the topic on lowest terms to its own kind of question, not to cards."""
    topic = find_topic("fractions.lowest-terms")
    return {exact(topic.item(tier, index).key) for index in topic.spaces[tier].own}


@pytest.mark.parametrize("order", range(3, 11))
def test_the_space_of_proper_fractions_has_farey_counts(order: int) -> None:
    found = {key for key in _keys(Tier.SUPPORT) if key.denominator <= order}
    # The sequence also has 0/1 and 1/1, and the topic leaves out the unit fractions 1/2 … 1/n.
    assert len(found) == FAREY[order] - 2 - (order - 1)


@pytest.mark.parametrize("order", range(3, 11))
def test_neighbours_in_the_space_are_neighbours_in_the_farey_sequence(order: int) -> None:
    # G. H. Hardy and E. M. Wright, An Introduction to the Theory of Numbers, theorem 28, from
    # memory: neighbours a/b < c/d have bc − ad = 1. The ends and unit fractions are put back.
    found = {key for key in _keys(Tier.SUPPORT) if key.denominator <= order}
    whole = sorted({Fraction(0), *(Fraction(1, n) for n in range(1, order + 1)), *found})
    for low, high in pairwise(whole):
        assert high.numerator * low.denominator - low.numerator * high.denominator == 1


def test_each_denominator_has_as_many_fractions_as_its_totient() -> None:
    proper = Counter(key.denominator for key in _keys(Tier.SUPPORT))
    for bottom in range(3, 13):
        assert proper[bottom] == TOTIENT[bottom] - 1  # less the unit fraction


def test_fractions_up_to_two_are_twice_the_totient() -> None:
    below_two = Counter(key.denominator for key in _keys(Tier.CORE))
    for bottom in range(3, 11):
        assert below_two[bottom] == 2 * TOTIENT[bottom] - 1  # less the unit fraction
