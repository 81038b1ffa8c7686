"""What a class knows, at the desk: figures, pictures, days that make no sense, paper."""

import re

import pytest

RECORD = "/class/8K/lesson/2026-11-30/1/record"
RIGHT = (28, 27, 25, 26, 24, 20, 14, 9)


@pytest.fixture(autouse=True)
def that_day(monkeypatch, on_day):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-30")


def test_a_report_shows_shares_as_words_and_pictures_and_goes_on_paper(desk, home):
    right = {f"right-{n}": str(count) for n, count in enumerate(RIGHT, 1)}
    sent = desk.post(RECORD, data={"how": "right", "pupils": "28", **right}, follow_redirects=False)
    assert sent.status_code == 303
    before = sorted(home.rglob("*.pdf"))
    page = desk.get("/class/8K/report")
    assert page.status_code == 200
    assert "Monday 30 November" in page.text
    assert "77 % (" in page.text  # 173 of 224
    assert page.text.count("<svg") >= 2
    assert "style=" not in page.text
    for link in re.findall(r'href="(/class/8K/[^"]*)"', page.text):
        assert desk.get(link).status_code == 200, link
    paper = desk.get("/class/8K/report.pdf")
    assert paper.content.startswith(b"%PDF-")
    assert sorted(home.rglob("*.pdf")) == before
    assert 'class/8K/report"' in desk.get("/class/8K/lesson/2026-11-30/1").text


def test_where_no_topic_is_known_no_empty_table_is_shown(desk):
    table = {"how": "table", "table": "seat,score\nA1,6\nA2,3"}
    assert desk.post("/class/8K/lesson/2026-11-24/3/record", data=table).status_code == 200
    page = desk.get("/class/8K/report").text
    assert "it is not known what they asked" in page
    assert "Each topic" not in page


@pytest.mark.parametrize(
    ("query", "status", "words"),
    [
        ("", 200, ""),
        ("?since=soon", 400, "is no day"),
        ("?since=2026-11-30&until=2026-11-01", 400, "comes after"),
    ],
)
def test_where_there_is_no_report_the_page_says_why_and_keeps_the_days(
    looking, query, status, words
):
    page = looking.get(f"/class/8K/report{query}")
    assert page.status_code == status
    assert words in page.text
    assert 'class="note"' in page.text
    assert 'name="since"' in page.text


def test_no_such_class(looking):
    page = looking.get("/class/8Z/report")
    assert page.status_code == looking.get("/class/8Z").status_code
    assert page.status_code in (400, 404)
    assert "8Z" in page.text
