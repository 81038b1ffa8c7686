"""The first day: from nothing to a planned week by forms alone, pasted, and mistyped everywhere."""

import html

import pytest

from itembank.work.department.made import read_kept
from itembank.work.usual_home import demo_home, own_home, usual_home
from tests.desk.conftest import visitor
from tests.desk.states import CLASS, YEAR

AGAIN = {"class-1-name": "8k"}
SHARE = {"topic-0-name": "ratio.share"}
TWO = {"own": "yes", "band-0-name": "Red", "band-1-name": "Green"}


@pytest.fixture(autouse=True)
def nobody(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def desk():
    return visitor(usual_home())


def keep(desk, step, do="on", **fields):
    return desk.post(f"/begin/{step}", data={"do": do, **fields}, follow_redirects=False)


def to(answer):
    return answer.headers["location"].partition("?")[0]


def answer_all(desk):
    assert to(keep(desk, "school", school="Larkhythe School")) == "/begin/year"
    assert to(keep(desk, "year", **YEAR)) == "/begin/classes"
    assert to(keep(desk, "classes", **CLASS)) == "/begin/topics-year-8"
    assert to(keep(desk, "topics-year-8", do="ready")) == "/begin/topics-year-8"


def test_from_nothing_to_a_planned_week(desk, nobody):
    assert 'href="/begin"' in desk.get("/welcome").text
    assert to(desk.get("/begin", follow_redirects=False)) == "/begin/school"
    assert not list(nobody.iterdir())  # looking makes nothing
    answer_all(desk)
    page = desk.get("/begin/topics-year-8").text
    assert "week 2, from 7 Sep" in page
    whole = desk.get("/begin/whole").text
    assert "Make this department" in whole
    assert "half term" in whole
    made = desk.post("/begin/make").text
    assert "Plan its first week" in made
    kept = read_kept(own_home()).answers
    assert (kept.school, kept.classes[0].teacher, len(kept.classes[0].seats)) == (
        "Larkhythe School",
        "HT",
        29,
    )
    assert [path.name for path in own_home().glob("begun*")] == []
    first = made.partition('action="/class/8K/week/')[2][:10]
    assert first == "2026-11-30"
    planned = desk.post("/class/8K/week/2026-11-30/plan")
    assert planned.status_code == 200
    assert "proved" in planned.text
    assert "Ready" in planned.text


def test_what_answers_mean_is_told_once_they_mean_something(desk):
    keep(desk, "school", school="Larkhythe School")
    assert "What it means" not in desk.get("/begin/year").text
    keep(desk, "year", **YEAR)
    assert "What it means" in desk.get("/begin/year").text


def test_what_is_answered_is_there_when_the_browser_was_closed(desk):
    keep(desk, "school", school="Larkhythe School")
    keep(desk, "year", do="to:bands", **YEAR)
    again = visitor(usual_home())
    assert to(again.get("/begin", follow_redirects=False)) == "/begin/classes"
    page = again.get("/begin/year").text
    assert 'value="26 Oct 2026"' in page
    assert "Friday 18 December 2026" in page


def test_going_back_keeps_what_was_typed(desk):
    keep(desk, "school", school="Larkhythe School")
    assert to(keep(desk, "year", do="back", **YEAR)) == "/begin/school"
    assert 'value="3 Sep 2026"' in desk.get("/begin/year").text


@pytest.mark.parametrize(
    ("step", "fields", "beside", "said"),
    [
        ("school", {"school": " "}, "school", "What is the school called?"),
        ("year", {"term-0-first": "3 Spt 2026"}, "term-0-first", "is not a day"),
        ("year", {"term-0-first": "31 Sep 2026"}, "term-0-first", "31"),
        ("year", {"term-0-last": ""}, "term-0-last", "When does it end?"),
        ("year", {"term-1-first": "1 Dec 2026"}, "term-1-first", "Autumn"),
        ("year", {"two_week": "yes", "week_a": ""}, "week_a", "Which week is a week A?"),
        ("year", {"off-1-why": "training day"}, "off-1-first", "Which day"),
        ("classes", {"class-0-lessons": "Monday first thing"}, "class-0-lessons", "‘first’ is not"),
        ("classes", {"class-0-seats": "Sam, Alex"}, "class-0-seats", "not a seat code"),
        ("classes", {"class-0-year": "eight"}, "class-0-year", "number from 1 to 13"),
        ("classes", {"class-0-lessons": ""}, "class-0-lessons", "When does 8K have"),
        ("classes", {"class-0-lessons": "A Mon 1"}, "class-0-lessons", "same every week"),
        ("classes", {**AGAIN, "class-1-lessons": "Tue 1"}, "class-1-name", "two classes"),
        ("classes", {"class-0-name": ""}, "class-0-name", "no name"),
        ("topics-year-8", {"topic-0-name": "ratoi.share"}, "topic-0-name", "(ratio.share)"),
        ("topics-year-8", {"topic-0-name": "Vectors"}, "topic-0-name", "No topic is called"),
        ("topics-year-8", {**SHARE, "topic-0-when": "week 99"}, "topic-0-when", "99"),
        ("topics-year-8", {"topic-1-when": "3"}, "topic-1-name", "Which topic"),
        ("bands", {**TWO, "band-1-low": "9"}, "band-0-name", "8"),
        ("bands", {**TWO, "band-1-low": "x"}, "band-1-low", "whole number"),
        ("bands", {"own": "yes", "band-0-name": "Red"}, "band-0-name", "2"),
    ],
)
def test_a_fault_stands_beside_its_answer_and_nothing_typed_is_lost(
    desk, step, fields, beside, said
):
    keep(desk, "school", school="Larkhythe School")
    keep(desk, "year", **YEAR)
    keep(desk, "classes", **CLASS)
    usual = {"year": YEAR, "classes": CLASS}.get(step, {})
    answer = keep(desk, step, **{**usual, **fields})
    assert answer.status_code == 400
    text = html.unescape(answer.text)
    assert said in text.partition(f'id="f-{beside}"')[2].partition("</span>")[0]
    for name, value in fields.items():
        if value.strip() and name not in ("two_week", "own"):
            assert f'name="{name}" value="{value}"' in text


def test_a_messy_spreadsheet(desk):
    keep(desk, "school", school="Larkhythe School")
    year = "Event\tFrom\tTo\r\nAutumn term\t03/09/2026\t18/12/2026\r\n\r\nINSET\tFri 4 Dec\t\r\n"
    year += "Half Term\t26-Oct-26\t30-Oct-26\r\nSpring term\t4 Jan 2027\t25 Mar 2027"
    assert to(keep(desk, "year", do="paste", pasted=year)) == "/begin/year"
    classes = "Set\tNor\tLessons\tStaff\r\n8K\t29\tMon P1\tHT\r\n\t\tThu P2\t\r\n9S\t24\tTue 1\tMB"
    assert to(keep(desk, "classes", do="paste", pasted=classes)) == "/begin/classes"
    bad = "Wk\tTopic\n1\tEquivalent fractions\n2\tTudor kings"
    answer = keep(desk, "topics-year-8", do="paste", pasted=bad)
    assert answer.status_code == 400
    assert "Tudor kings" in answer.text.partition('id="f-pasted"')[2]
    assert "leave_out" in answer.text
    left = keep(desk, "topics-year-8", do="paste", pasted=bad, leave_out="yes")
    assert "Left out" in desk.get(left.headers["location"]).text
    keep(desk, "topics-year-9", do="ready")
    assert "Row 2" in html.unescape(
        keep(desk, "classes", do="paste", pasted="Class\tLessons\n7M\tMoonday 1").text
    )
    desk.post("/begin/make")
    kept = read_kept(own_home()).answers
    assert [(group.name, len(group.seats)) for group in kept.classes] == [("8K", 29), ("9S", 24)]
    assert [off.why for off in kept.closed] == ["Half Term", "INSET"]


def test_what_is_missing_is_told_with_the_way_to_it(desk):
    keep(desk, "school", school="Larkhythe School")
    whole = desk.get("/begin/whole").text
    assert 'href="/begin/year"' in whole
    assert "Make this department" not in whole
    assert desk.post("/begin/make").status_code == 400
    assert not (own_home() / "department.toml").exists()


def test_beside_the_demo_and_when_there_is_one_already(nobody):
    desk = visitor(demo_home())
    assert 'href="/begin"' in desk.get("/set-up").text
    answer_all(desk)
    desk.post("/begin/make")
    assert "Larkhythe School" in desk.get("/").text
    assert (demo_home() / "department.toml").exists()
    assert 'href="/begin"' not in desk.get("/set-up").text
    other = visitor(demo_home())
    assert "You have a department already" in other.get("/begin").text
    assert other.get("/begin/school").status_code == 400


@pytest.mark.parametrize(
    "address", ["/begin/nonsense", "/begin/topics-year-12", "/begin/topics-.."]
)
def test_an_address_that_leads_nowhere(desk, address):
    assert desk.get(address).status_code == 404


def test_a_file_of_answers_that_is_broken_is_told(desk):
    keep(desk, "school", school="Larkhythe School")
    (own_home() / "begun.toml").write_text("classes = [3]\n")
    for address in ("/begin", "/begin/year"):
        answer = desk.get(address)
        assert answer.status_code == 400
        assert "Take the file away to begin again" in answer.text


def test_a_class_is_taken_out(desk):
    answer_all(desk)
    keep(desk, "classes", do="look", **CLASS, **{"class-0-was": "8K", "class-0-out": "yes"})
    assert 'value="8K"' not in desk.get("/begin/classes").text
