"""The week on one page: whole titles, nothing over anything else, tagged, the same each time."""

import io

import pypdfium2
import pytest

from itembank.pages.documents.week_overview import WeekData, week_overview
from itembank.pages.engine.page import theme
from itembank.pages.parts.teacher.week_table import LessonColumn, TopicRow
from tests.pages.checkers import assert_accessible
from tests.pages.marks import overlapping, recorded

LONG = "Adding and subtracting fractions with the same denominator"
DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday")


def week(lessons=5, topics=12, title=LONG, skipped=(), star=True):
    two = lessons > 5
    columns = [
        LessonColumn(
            (DAYS[n // (1 + two) % 5][:3], str(n // (1 + two) + 1)), f"p{n}" if two else "", 8
        )
        for n in range(lessons)
    ]
    rows = [
        TopicRow(
            f"{title} {n}" if n % 3 == 0 else f"Ordering fractions {n}",
            "taught 19 Oct, last seen 12 days ago, 54 % right then",
            tuple("1*" if star and n == k else "2" if (n + k) % 3 else "" for k in range(lessons)),
            "19 Oct, 12 days ago, 54 %",
        )
        for n in range(topics)
    ]
    return WeekData(
        "8K: the week of 30 November 2026",
        "8K",
        "Larkhythe School. What the starters of the week bring back, and why.",
        [f"{day} 1 December, period 2: {title}" for day in DAYS[:lessons]],
        [f"{title}: Mon 1, Tue 3 and Wed 2."],
        columns,
        rows,
        skipped,
        ["Bands out of 8: Rebuild (R) 0 to 4; Secure (S) 5 to 6; Extend (E) 7 to 8."],
    )


WEEKS = {
    "usual": week(),
    "holiday": week(3, 10, skipped=["No lesson on Friday 4 December: training day."] * 2),
    "ten lessons": week(10, 11),
    "one lesson": week(1, 1, "Fractions", star=False),
    "two pages": week(16, 14),
    "the year's end": week(5, 26),
}


def text_of(data):
    pdf = pypdfium2.PdfDocument(data)
    return [page.get_textpage().get_text_bounded() for page in pdf]


@pytest.mark.parametrize("name", WEEKS)
def test_nothing_lies_over_anything_else_or_is_small(name, monkeypatch):
    with recorded(monkeypatch) as found:
        week_overview(WEEKS[name])
    # It is drawn in smaller type until it fits; the last drawing is the one that is kept.
    found = found[max(place for place, mark in enumerate(found) if mark.kind == "H1") :]
    assert list(overlapping(found)) == []
    assert min(mark.size for mark in found) >= theme.PAPER_LEAST
    edge = theme.PAPER_MARGIN
    assert all(edge - 1 <= one.x0 and one.x1 <= theme.A4[0] - edge + 1 for one in found)
    assert all(one.y0 > 0 for one in found)


@pytest.mark.parametrize(
    "name", ["usual", "holiday", "ten lessons", "one lesson", "the year's end"]
)
def test_it_is_one_page(name):
    assert len(pypdfium2.PdfDocument(week_overview(WEEKS[name]))) == 1


def test_it_is_as_large_as_the_page_allows(monkeypatch):
    sizes = {}
    for name in ("one lesson", "two pages"):
        with recorded(monkeypatch) as found:
            week_overview(WEEKS[name])
        sizes[name] = [one.size for one in found if one.text.startswith("Bands out of")][-1]
    assert sizes == {"one lesson": theme.PAPER_TEXT, "two pages": theme.PAPER_LEAST}


def test_titles_and_reasons_stand_whole_and_everything_is_told():
    data = WEEKS["ten lessons"]
    (text,) = text_of(week_overview(data))
    words = " ".join(text.split())
    assert words.count(LONG) == sum(LONG in title for title in data.titles) + sum(
        LONG in topic.title for topic in data.topics
    )
    assert words.count("54 % right then") == len(data.topics)
    assert all(" ".join(title.split()) in words for title in data.titles)
    assert all(lesson.period in words.split() for lesson in data.lessons)
    assert "…" not in words
    assert "The topic of that lesson rests on it" in words
    assert "rests on it" not in text_of(week_overview(WEEKS["one lesson"]))[0]


def test_where_topics_are_many_the_reasons_are_in_few_words():
    (text,) = text_of(week_overview(WEEKS["the year's end"]))
    words = " ".join(text.split())
    assert words.count("19 Oct, 12 days ago, 54 %") == 26
    assert "last seen 12" not in words
    assert words.count(LONG) == 1 + 9


def test_a_holiday_is_told_at_the_top():
    (text,) = text_of(week_overview(WEEKS["holiday"]))
    assert text.index("No lesson on Friday 4 December") < text.index("Lessons")


@pytest.mark.parametrize("name", WEEKS)
def test_an_accessibility_checker_has_nothing_to_say(name, tmp_path):
    assert_accessible(week_overview(WEEKS[name]), tmp_path / "week.pdf")


def test_the_same_week_gives_the_same_bytes():
    assert week_overview(week()) == week_overview(week())
    assert week_overview(week()) != week_overview(week(star=False))


def test_each_cell_of_the_table_is_tagged():
    import pikepdf

    from tests.pages.test_tagging import elements

    data = WEEKS["usual"]
    with pikepdf.open(io.BytesIO(week_overview(data))) as pdf:
        kinds = [str(element["/S"]) for element in elements(pdf)]
    rows = len(data.topics) + 2  # and the head and the sum
    assert kinds.count("/Table") == 1
    assert kinds.count("/TR") == rows
    assert kinds.count("/TH") == len(data.lessons) + rows
    assert kinds.count("/TD") == len(data.lessons) * (rows - 1)
