"""Where things stand: nothing overlaps, nothing leaves the margins, nothing is too small."""

from __future__ import annotations

import io
from itertools import chain

import numpy as np
import pikepdf
import pypdfium2
import pytest

from itembank.pages.documents.slides import TOP, _slides, bottom_of
from itembank.pages.engine.page import theme
from itembank.pages.parts.slide.slide_board import LEFT, RIGHT

DOTS = 1.5


def ink(page) -> np.ndarray:
    """Return where the page is darker than its paper, a dot being 1/1.5 point."""
    image = np.asarray(page.render(scale=DOTS, grayscale=True).to_numpy()).squeeze()
    return image < image[3, 3] - 12


def slides_of(pack):
    """Return the slides as they are drawn: where that was the pack drawn last, the very same."""
    return list(chain.from_iterable(_slides(pack)))


def boxes(slide):
    for spot in slide.spots:
        cell = spot.cell
        right = spot.x + cell.indent + max(line.width for line in cell.question.lines)
        yield spot.number, (spot.x, spot.top - cell.height, right, spot.top)


def test_questions_do_not_overlap_and_stay_inside(samples):
    for name, pack in samples.PACKS.items():
        bottom = bottom_of(pack)
        for slide in slides_of(pack):
            placed = list(boxes(slide))
            for number, (x0, y0, x1, y1) in placed:
                assert x0 >= LEFT, (name, number)
                assert x1 <= RIGHT + 0.01, (name, number)
                assert bottom - 0.01 <= y0, (name, number)
                assert y1 <= TOP + 0.01, (name, number)
                for other, (a0, b0, a1, b1) in placed:
                    if other != number:
                        apart = x1 <= a0 or a1 <= x0 or y1 <= b0 + 0.01 or b1 <= y0 + 0.01
                        assert apart, (name, number, other)


def test_ink_stays_in_the_measured_boxes(samples, drawn):
    """Rendered ink of the starter lies in the boxes the layout measured, and nowhere else."""
    for name, pack in samples.PACKS.items():
        pdf = pypdfium2.PdfDocument(drawn[name, "starter.pdf"])
        slides = list(slides_of(pack))
        assert len(slides) == len(pdf)
        bottom = bottom_of(pack)
        for page, slide in zip(pdf, slides, strict=True):
            dark = ink(page)
            height = theme.SLIDE[1]
            middle = dark[round((height - TOP - 6) * DOTS) : round((height - bottom) * DOTS)].copy()
            assert middle.any()
            for number, (x0, y0, x1, y1) in boxes(slide):
                rows = slice(
                    max(0, round((TOP + 6 - y1 - 2) * DOTS)), round((TOP + 6 - y0 + 2) * DOTS)
                )
                columns = slice(round((x0 - 2) * DOTS), round((x1 + 3) * DOTS))
                assert middle[rows, columns].any(), (name, number)
                middle[rows, columns] = False
            for y in slide.rules:
                middle[round((TOP + 6 - y - 2) * DOTS) : round((TOP + 6 - y + 2) * DOTS)] = False
            assert not middle.any(), name


def test_nothing_is_drawn_outside_the_margins(drawn):
    for (name, file), data in drawn.items():
        for page in pypdfium2.PdfDocument(data):
            dark = ink(page)
            edge = round(11 * DOTS)
            dark[edge:-edge, edge:-edge] = False
            assert not dark.any(), (name, file)


def test_places_are_the_same_on_both_slides(samples, drawn):
    """Every dark dot of a question on the starter is dark on the answer slide too."""
    for name, pack in samples.PACKS.items():
        asked = pypdfium2.PdfDocument(drawn[name, "starter.pdf"])
        marked = pypdfium2.PdfDocument(drawn[name, "answers.pdf"])
        for before, after, slide in zip(asked, marked, slides_of(pack), strict=True):
            one, two = ink(before), ink(after)
            for _, (x0, y0, x1, y1) in boxes(slide):
                part = (
                    slice(round((540 - y1) * DOTS), round((540 - y0) * DOTS)),
                    slice(round(x0 * DOTS), round(x1 * DOTS)),
                )
                # Quieter grey loses the faintest edge dots of a glyph.
                assert (one[part] & ~two[part]).sum() <= 0.05 * one[part].sum() + 2, name


SLIDES = ("starter.pdf", "answers.pdf", "next-tasks.pdf")
SCRIPT = 0.75
"""The size of a power against the text on paper."""


@pytest.mark.parametrize(
    ("file", "usual"),
    [
        ("starter.pdf", theme.SLIDE_SMALL),
        ("answers.pdf", theme.SLIDE_SMALL),
        ("next-tasks.pdf", theme.SLIDE_SMALL),
        ("slips.pdf", theme.PAPER_LEAST),
        ("core.pdf", theme.PAPER_LEAST),
    ],
)
def test_type_is_never_too_small(drawn, file, usual):
    checked = 0
    for key, data in drawn.items():
        if key[1] != file:
            continue
        paper = file not in SLIDES
        for page in pikepdf.open(io.BytesIO(data)).pages:
            figure = False
            for operands, operator in pikepdf.parse_content_stream(page):
                if str(operator) == "BDC":
                    figure = operands[0] == "/Figure"  # the letter inside a sign
                if str(operator) == "Tf" and not figure:
                    checked += 1
                    assert float(operands[1]) >= usual * (SCRIPT if paper else 1), key
    assert checked


def test_question_text_is_at_least_24_points(samples):
    # Design: question text at least 24 point on a 960 × 540 slide, to be read from 8 m.
    for name, pack in samples.PACKS.items():
        for slide in slides_of(pack):
            assert slide.size >= 24, name


def test_eight_plain_questions_fit_on_one_slide(samples):
    assert len(list(slides_of(samples.PACKS["plain"]))) == 1


def test_a_question_too_long_for_a_slide_is_a_plain_error(samples):
    from itembank.errors import ItembankError

    item = samples.item("Read this. " * 400 + "What is $1/2$?", "1/2", number=99)
    with pytest.raises(ItembankError, match=r"Question 1 .*core/99.* is too long for a slide"):
        list(slides_of(samples.pack([item])))


def test_page_sizes(drawn):
    # ISO 216: A4 is 210 mm × 297 mm; a point is 1/72 inch.
    for (_, file), data in drawn.items():
        for page in pypdfium2.PdfDocument(data):
            width, height = page.get_size()
            if file == "slips.pdf":
                assert (width, height) == pytest.approx((297 / 25.4 * 72, 210 / 25.4 * 72), abs=0.1)
            elif file in ("starter.pdf", "answers.pdf", "next-tasks.pdf"):
                assert width / height == pytest.approx(16 / 9)
            else:
                assert (width, height) == pytest.approx((210 / 25.4 * 72, 297 / 25.4 * 72), abs=0.1)
