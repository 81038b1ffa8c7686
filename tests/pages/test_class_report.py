"""The class report: tagged, apart, large enough, and readable in grey."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.pages.documents.class_report_pages import BandRow, ReportData, TopicRow, class_report
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.page import theme
from itembank.pages.engine.paper import TOP
from itembank.pages.parts.teacher.heat_map import FROM, STEPS, shade
from itembank.pages.parts.teacher.views_part import (
    ClarityPart,
    FooledRow,
    UnclearRow,
    ViewRow,
    ViewsPart,
)
from tests.depth import each
from tests.pages.checkers import assert_accessible
from tests.pages.marks import overlapping, recorded


def data(topics=6, weeks=9, lessons=8, title="ratio.share", views=True, missing=()):
    rng = np.random.default_rng(3)
    rows = []
    for n in range(topics):
        now = float(rng.random())
        cells = [float(rng.random()) if rng.random() < 0.4 else None for _ in range(weeks)]
        cells[n % weeks] = 1.0
        interval = (now * 0.8, now + (1 - now) * 0.3)
        share = now if n != 1 else None
        measured = interval if n else None
        rows.append(TopicRow(f"{title}{n}", cells, share, interval, now, measured, "by 29 Nov"))
    bands = (("R", 8), ("S", 12), ("E", 0))
    days = [BandRow(f"{n + 1} Nov", bands, 0.63) for n in range(lessons)]
    names = (("R", "Rebuild"), ("S", "Secure"), ("E", "Extend"))
    columns = [(str(n % 28 + 1), "Nov") for n in range(weeks)]
    said = ViewsPart(
        ["8 lessons with own views and scores by seat."],
        [
            ViewRow(f"{n + 1} Nov", "−0.25", "3 of 12 (25 %)", "1 of 4 (25 %)")
            for n in range(lessons)
        ],
        [FooledRow(f"{title} {title}", "12 of 30", "40 % (27–55)")],
        [
            FooledRow(
                "Share £60 in the ratio 2 : 3 : 7 between three clubs. (a/core/1)", "4 of 5", "80 %"
            )
        ],
        "Wrong: of the answers by pupils who were sure.",
    )
    unclear = ClarityPart(
        "Clarity was noted in 8 lessons.",
        [UnclearRow("3 Nov", "Fractions of the market garden", "6 of 20", "what a part is")],
    )
    return ReportData(
        title="Class report: 8K",
        intro="Larkhythe School.",
        class_name="8K",
        asked_on="29 Nov",
        weeks=columns,
        topics=rows,
        bands=days,
        by_week=lessons > 100,
        band_names=names,
        views=said if views and lessons else ViewsPart(),
        clarity=unclear if views and lessons else ClarityPart(),
        missing=missing,
    )


LONG = "Adding and subtracting fractions with the same denominator, or with unlike ones "
CASES = {
    "usual": data(),
    "year": data(topics=32, weeks=39, lessons=150),
    "long names": data(title="a.topic.with.a.very.long.name.that.goes.on.and.on"),
    "long titles, a term": data(title=LONG, topics=14, weeks=13),
    "one lesson": data(topics=1, weeks=1, lessons=1),
    "no lessons": data(lessons=0),
    "nothing": data(topics=0, lessons=0, missing=("Own views: none were recorded.",)),
    "hands only": replace(data(views=False), views=ViewsPart(["In 2 lessons hands were counted."])),
}


def text_of(pdf):
    return [" ".join(page.get_textpage().get_text_range().split()) for page in pdf]


@pytest.mark.parametrize("name", CASES)
def test_marks_are_apart_inside_the_margins_and_large_enough(name, monkeypatch):
    with recorded(monkeypatch) as marks:
        class_report(CASES[name])
    for one, other in overlapping(marks):
        raise AssertionError(f"{one} and {other}")
    for mark in marks:
        assert mark.x0 >= theme.PAPER_MARGIN - 0.6, mark
        assert mark.x1 <= theme.A4[0] - theme.PAPER_MARGIN + 0.6, mark
        assert mark.y1 <= TOP + 0.6, mark
        assert mark.size >= theme.PAPER_LEAST - 1e-6, mark


@pytest.mark.parametrize("name", each(CASES, 3))
def test_a_screen_reader_can_read_it(name, tmp_path):
    # Over a year, rows of the long tables that differ only in their figures look like a running
    # head to outloud where they are the first of their pages.
    heads = (r"\d+ (Nov|Dec|Jan|Feb|Mar|Apr|May|Jun|Jul|Sep|Oct) ",) if name == "year" else ()
    assert_accessible(class_report(CASES[name]), tmp_path / "report.pdf", heads)


def test_every_figure_stands_as_text():
    shown = CASES["usual"]
    text = " ".join(text_of(pypdfium2.PdfDocument(class_report(shown))))
    for row in shown.topics:
        assert f"{row.title} " in text
        assert row.share is None or f"{round(100 * row.share)} (" in text
        for share in row.weeks:
            assert share is None or str(round(100 * share)) in text
    for words in ("6 of 20 what a part is", "−0.25", "3 of 12 (25 %)", "12 of 30", "4 of 5"):
        assert words in text
    for step in ("0–39", "40–59", "60–74", "75–89", "90–100"):
        assert step in text
    assert "not a grade" in text


def test_figures_read_on_every_step_and_steps_part_in_grey():
    # WCAG 2.2, success criterion 1.4.3: 4.5 : 1 for text.
    for fill, ink in STEPS:
        assert theme.contrast(fill, ink) >= 4.5
    light = [theme.luminance(fill) for fill, _ in STEPS]
    for darker, lighter in pairwise(light):
        assert (lighter + 0.05) / (darker + 0.05) > 1.3
    shades = [light[STEPS.index(shade(n / 100))] for n in range(101)]
    assert shades == sorted(shades)
    assert len(set(shades)) == len(FROM)


@given(st.floats(0, 1))
def test_a_cell_is_as_light_as_the_legend_says_of_its_figure(share):
    assert shade(share) == shade(round(100 * share) / 100)


def test_a_letter_that_the_face_lacks_is_no_empty_box_in_the_bars(monkeypatch):
    strange = replace(
        data(), bands=[BandRow("1 Nov", (("★", 8), ("S", 2)), 0.4)], band_names=(("★", "Star"),)
    )
    with recorded(monkeypatch) as marks:
        class_report(strange)
    assert all(face().has(sign) for mark in marks for sign in mark.text)


def test_a_title_is_never_cut_in_the_map():
    text = " ".join(text_of(pypdfium2.PdfDocument(class_report(CASES["long titles, a term"]))))
    assert text.count(f"{LONG.strip()} 3 ") + text.count(f"{LONG.strip()} 3") >= 2
    assert "…" not in text


def test_the_same_data_give_the_same_bytes():
    assert class_report(CASES["usual"]) == class_report(data())
    assert class_report(CASES["usual"]) != class_report(data(topics=5))
