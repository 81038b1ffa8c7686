"""Lessons that fall out, move or are covered, noted at the desk and taken back."""

import datetime
import re

import pytest

from itembank.desk.replying.desk import Desk
from itembank.work.lesson.decide import decide

WEEK = "/class/8K/week/2026-11-30"
LESSON = "/class/8K/lesson/2026-12-03/2"
GONE = "/class/8K/lesson/2026-12-01/3"
GONE_ON = datetime.date(2026, 12, 1)


@pytest.fixture(autouse=True)
def mid_week(on_day, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-12-02")


def send(desk, where, **fields):
    return desk.post(where, data=fields)


def test_a_lesson_falls_out_and_takes_place_after_all(desk):
    assert f'{LESSON}/otherwise"' in desk.get(LESSON).text
    assert desk.get(f"{LESSON}/otherwise").status_code == 200
    page = send(desk, f"{LESSON}/otherwise", do="cancel", why="school trip")
    assert page.status_code == 200
    assert "8K has no lesson on Thursday 3 December" in page.text
    assert "No lesson: school trip" in page.text
    again = send(desk, f"{LESSON}/otherwise", do="cancel", why="school trip")
    assert again.status_code == 400
    assert "noted already" in again.text
    back = send(desk, "/class/8K/not-cancelled", date="2026-12-03", period="")
    assert "Taken back" in back.text
    assert "school trip" not in back.text


def test_a_lesson_moves_and_moves_back(desk, home):
    before = (home / "department.toml").read_text()
    page = send(desk, f"{LESSON}/otherwise", do="move", to="2026-12-03", to_period="5")
    assert page.status_code == 200, page.text
    assert "Noted: the lesson of" in page.text
    assert (home / "department.toml").read_text() != before
    there = "/class/8K/lesson/2026-12-03/5/otherwise"
    assert "Move it back to" in desk.get(there).text
    page = send(desk, there, do="move", to="2026-12-03", to_period="2")
    assert "back on" in page.text
    assert "moved" not in (home / "department.toml").read_text().split("8K")[1].split("[[")[0]


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"do": "move"}, "Say to which day"),
        ({"do": "move", "to": "soon"}, "is no day"),
        ({"do": "move", "to": "2026-12-05"}, "no lessons on"),
        ({"do": "cover", "topic-1": "no-such", "questions-1": "2"}, "no-such"),
        ({"do": "cover", "topic-1": "ratio.share", "questions-1": "x"}, "whole number"),
        ({"do": "cover", "topic-1": "ratio.share", "questions-1": "0"}, "‘ratio.share 0’"),
        ({"do": "cover"}, "what was asked"),
    ],
)
def test_what_makes_no_sense_is_said_and_what_was_typed_stays(looking, fields, words):
    page = looking.post(f"{GONE}/otherwise", data={**fields, "why": "kept words"})
    assert page.status_code == 400
    assert words in page.text
    assert "kept words" in page.text


def test_a_lesson_was_covered_and_that_is_replaced_only_when_asked(desk):
    fields = {"do": "cover", "topic-1": "ratio.share", "questions-1": "3"}
    page = send(desk, f"{GONE}/otherwise", **fields)
    assert page.status_code == 200
    assert "3 questions on Sharing an amount" in page.text
    fields["questions-1"] = "4"
    asked = send(desk, f"{GONE}/otherwise", **fields)
    assert asked.status_code == 400
    assert 'name="replace"' in asked.text
    page = send(desk, f"{GONE}/otherwise", **fields, replace="yes")
    assert "4 questions on" in page.text
    back = send(desk, f"{GONE}/otherwise", do="uncover")
    assert "What was noted before counts again" in back.text
    assert "asked instead" in desk.get(f"{GONE}/otherwise").text
    assert "Its plan stands" in send(desk, f"{GONE}/otherwise", do="uncover").text
    assert "uncover" not in desk.get(f"{GONE}/otherwise").text
    # Somebody who still sees the button is told, and nothing else is taken back.
    assert send(desk, f"{GONE}/otherwise", do="uncover").status_code == 400


def test_no_more_than_the_note_is_taken_back(desk):
    hands = {"how": "bands", "band-0": "4", "band-1": "9", "band-2": "9"}
    assert send(desk, f"{GONE}/record", **hands).status_code == 200
    assert "uncover" not in desk.get(f"{GONE}/otherwise").text
    refused = send(desk, f"{GONE}/otherwise", do="uncover")
    assert refused.status_code == 400
    assert "hands counted by band, so nothing was taken back" in refused.text


def test_what_was_asked_instead_is_recorded_and_taken_back_one_by_one(desk, home):
    fields = {"do": "cover", "topic-1": "ratio.share", "questions-1": "3"}
    send(desk, f"{GONE}/otherwise", **fields)
    page = desk.get(GONE).text
    assert "3 questions on Sharing an amount" in page
    assert "Asked something else; no scores" in page
    assert "state-recorded" not in page
    assert "Asked something else; no scores" in desk.get(WEEK).text
    assert "How did Tuesday go?" not in desk.get("/").text  # who covered it is not asked
    assert "Show it on the board" not in page  # its own starter was not asked
    assert "Record how it went" in page
    form = desk.get(f"{GONE}/record").text
    assert 'name="right-3"' in form
    assert 'name="right-4"' not in form
    assert "Sharing an amount in a given ratio" in form
    counted = desk.get(f"{GONE}/count").text
    assert "2 to 3" in counted or ">3</span>" in counted  # bands of three marks, not of eight
    right = {"how": "right", "pupils": "20", "right-1": "19", "right-2": "9", "right-3": "2"}
    assert 'state-recorded">Recorded<' in send(desk, f"{GONE}/record", **right).text
    found = decide(Desk(home, home).department, "8K", GONE_ON).decision
    assert [(line.question.topic, line.right) for line in found.questions] == [
        ("ratio.share", count) for count in (19, 9, 2)
    ]
    page = desk.get(GONE).text
    for words, left in (("right answers by question", True), ("asked instead", False)):
        last = re.search(r'name="last" value="([^"]+)">\s*<button[^>]*>([^<]*)', page)
        assert words in last[2]
        page = send(desk, f"{GONE}/take-back", last=last[1]).text
        assert "Taken back" in page
        assert ("3 questions on Sharing" in page) is left
    assert "Take back what was recorded last" not in page
    assert "Show it on the board" in page


def test_of_two_lessons_of_a_day_the_right_one_is_taken_back(desk):
    page = send(desk, f"{LESSON}/otherwise", do="move", to="2026-12-01", to_period="6")
    assert page.status_code == 200, page.text
    fields = {"do": "cover", "topic-1": "ratio.share", "questions-1": "3"}
    later = "/class/8K/lesson/2026-12-01/6"
    for lesson in (GONE, later):
        assert send(desk, f"{lesson}/otherwise", **fields).status_code == 200
    last = re.search(r'name="last" value="([^"]+)"', desk.get(GONE).text)[1]
    back = send(desk, f"{GONE}/take-back", last=last)
    assert "Taken back: the note of what was asked instead" in back.text
    assert "What was planned was not asked" not in back.text
    assert "What was planned was not asked" in desk.get(later).text
    assert "uncover" in desk.get(f"{later}/otherwise").text
    assert "uncover" not in desk.get(f"{GONE}/otherwise").text
    assert send(desk, f"{GONE}/otherwise", do="uncover").status_code == 400
    assert "Its plan stands" in send(desk, f"{later}/otherwise", do="uncover").text
