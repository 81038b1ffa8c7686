"""A department in the middle of a week, and where its lessons stand differently."""

import shutil
from pathlib import Path

import pytest

from itembank.work.usual_home import usual_home
from tests.desk.conftest import visitor

MID_WEEK = "2026-12-02"
RECORDED = "/class/8K/lesson/2026-11-30/1"
UNRECORDED = "/class/8K/lesson/2026-12-01/3"
BY_SEATS = "/class/8K/lesson/2026-12-02/2"
COMING = "/class/8K/lesson/2026-12-03/2"
UNPLANNED = "/class/7M/lesson/2026-12-03/4"
STATES = (
    RECORDED,
    UNRECORDED,
    COMING,
    UNPLANNED,
    "/class/8K/week/2026-11-30",
    "/class/8K/week/2027-01-04",
    f"{RECORDED}/board?stage=questions",
    f"{RECORDED}/board?stage=answers",
    f"{RECORDED}/board?stage=next",
)

YEAR = {
    "term-0-name": "Autumn",
    "term-0-first": "3 Sep 2026",
    "term-0-last": "18/12/2026",
    "term-1-name": "Spring",
    "term-1-first": "4 Jan",
    "term-1-last": "25 March 2027",
    "term-2-name": "Summer",
    "off-0-why": "half term",
    "off-0-first": "26 Oct",
    "off-0-last": "30 Oct",
    "two_week": "no",
}
CLASS = {
    "class-0-name": "8K",
    "class-0-year": "8",
    "class-0-teacher": "h.t.",
    "class-0-lessons": "Mon 1, Thu 2",
    "class-0-seats": "29",
}


def script(name):
    """Return a script of this folder that measures a page."""
    return Path(__file__).with_name(name).read_text()


def lived_in(planned_home, at):
    """Return a copy of the planned department whose first lesson is recorded by question."""
    home = at / "larkhythe"
    shutil.copytree(planned_home, home)
    counts = (28, 27, 25, 26, 24, 20, 12, 9)
    right = {f"right-{n}": str(count) for n, count in enumerate(counts, 1)}
    beside = {"view-sure": "12", "view-partly": "9", "unclear": "3", "note": "the box"}
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("ITEMBANK_TODAY", "2026-11-30")
        answer = visitor(home).post(
            f"{RECORDED}/record",
            data={"how": "right", "pupils": "28", **right, **beside},
            follow_redirects=False,
        )
    assert answer.status_code == 303, answer.text
    return home


def by_seats(home):
    """Record of one lesson what two seats answered, question by question."""
    head = ",".join(("seat", *(f"q{n}" for n in range(1, 9))))
    rows = (head, "A1,1,1,0,1,,1,0,0", "A2,1,0,0,0,0,1,1,1")
    answer = visitor(home).post(
        f"{BY_SEATS}/record",
        data={"how": "table", "table": "\n".join(rows)},
        follow_redirects=False,
    )
    assert answer.status_code == 303, answer.text


def first_day():
    """Answer what is asked on the first day of one's own department, all but its topics."""
    desk = visitor(usual_home())
    answers = {"school": {"school": "Larkhythe School"}, "year": YEAR, "classes": CLASS}
    for step, fields in answers.items():
        answer = desk.post(f"/begin/{step}", data={"do": "on", **fields}, follow_redirects=False)
        assert answer.status_code == 303, answer.text
