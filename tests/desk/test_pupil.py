"""A pupil's page at the desk: linked, for one seat alone, on paper, not found, forgotten."""

import re

import pytest

from itembank.planning.department.department import read_department
from itembank.records.pupils.whom import Whom
from itembank.work.lesson.forget import forget

LESSON = "/class/8K/lesson/2026-11-30/1"


@pytest.fixture(autouse=True)
def that_day(monkeypatch, on_day):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-30")


def test_a_pupils_page_from_the_lesson_to_paper_to_forgetting(desk, home):
    table = "seat,1,2,3,4,5,6,7,8\nA1,1,1,1,1,1,1,1,1\nB3,0,0,1,0,0,0,0,1\n"
    sent = desk.post(
        f"{LESSON}/record", data={"how": "table", "table": table}, follow_redirects=False
    )
    assert sent.status_code == 303, sent.text
    assert 'href="/class/8K/seat/B3"' in desk.get(LESSON).text
    assert 'href="/class/8K/seats"' in desk.get("/class/8K/report").text
    assert 'href="/class/8K/seat/B3"' in desk.get("/class/8K/seats").text
    page = desk.get("/class/8K/seat/B3")
    assert page.status_code == 200
    assert "2 of 8" in page.text
    assert page.text.count("<td>Wrong</td>") == 6
    assert not re.search(r"\b[A-F][1-6]\b", page.text.replace("B3", ""))
    paper = desk.get("/class/8K/seat/B3.pdf")
    assert paper.content.startswith(b"%PDF-")
    assert paper.headers["cache-control"] == "no-store"
    forget(read_department(home, None), Whom("8K", "B3"))
    page = desk.get("/class/8K/seat/B3")
    assert page.status_code == 200
    assert "Nothing is kept of seat B3" in page.text
    assert "Wrong" not in page.text


@pytest.mark.parametrize(
    "address", ["/class/8K/seat/Z9", "/class/8Z/seat/A1", "/class/8Z/report", "/class/8Z/seats"]
)
def test_a_class_or_seat_that_is_not_there(looking, address):
    assert looking.get(address).status_code == 404


@pytest.mark.parametrize("part", ["report", "seats", "seat/A1"])
def test_one_caution_a_page(looking, part):
    text = re.sub(r'<span class="on-paper">.*?</span>', "", looking.get(f"/class/8K/{part}").text)
    assert text.count("not a grade") == 1


def test_before_anything_is_recorded_nothing_is_kept(looking):
    page = looking.get("/class/8K/seat/A1")
    assert page.status_code == 200
    assert "Nothing is kept of seat A1" in page.text
    page = looking.get("/class/8K/seats")
    assert page.status_code == 200
    assert 'href="/class/8K/seat/A1"' in page.text
