"""A department in the middle of a week, and where its lessons stand differently."""

import shutil
from pathlib import Path

import pytest

from tests.desk.conftest import visitor

MID_WEEK = "2026-12-02"
RECORDED = "/class/8K/lesson/2026-11-30/1"
UNRECORDED = "/class/8K/lesson/2026-12-01/3"
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
