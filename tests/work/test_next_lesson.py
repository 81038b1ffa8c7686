"""A pack that names no day is for the class's next lesson."""

import datetime
import shutil
from pathlib import Path

import pytest

from itembank.errors import ItembankError
from itembank.planning.department.department import read_department
from itembank.planning.department.pack_request import PackRequest
from itembank.work.next_lesson import next_lesson_day
from itembank.work.pack.make import make_pack

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"

SATURDAY, MONDAY, TRAINING_DAY = "2026-11-28", "2026-11-30", "2026-12-04"


@pytest.fixture
def on_day(monkeypatch):
    return lambda day: monkeypatch.setenv("ITEMBANK_TODAY", day)


def next_day(name, folder=LARKHYTHE):
    department = read_department(folder)
    return next_lesson_day(department, department.find_class(name)).isoformat()


@pytest.mark.parametrize(
    ("today", "lesson"),
    [
        (SATURDAY, MONDAY),
        (MONDAY, MONDAY),
        (TRAINING_DAY, "2026-12-07"),
        ("2026-12-19", "2027-01-04"),
        ("2027-08-20", "2027-08-20"),  # no lesson is left: the calendar ends in July
    ],
)
def test_it_is_today_or_the_first_day_after_with_a_lesson(on_day, today, lesson):
    on_day(today)
    assert next_day("8K") == lesson


@pytest.mark.parametrize("lost", ["calendar.toml", "lessons"])
def test_where_no_lessons_are_known_it_is_today(on_day, tmp_path, lost):
    folder = shutil.copytree(LARKHYTHE, tmp_path / "own")
    if lost == "lessons":
        file = folder / "department.toml"
        kept = [line for line in file.read_text("utf-8").splitlines() if "lessons =" not in line]
        file.write_text("\n".join(kept), "utf-8")
    else:
        (folder / lost).unlink()
    on_day(SATURDAY)
    assert next_day("8K", folder) == SATURDAY


@pytest.mark.parametrize(("day", "folder"), [(None, "8K-2026-11-30"), ("today", "8K-2026-11-28")])
def test_a_pack_without_a_day_is_for_that_lesson(on_day, tmp_path, day, folder):
    on_day(SATURDAY)
    for made in ("8K-2026-11-28", "8K-2026-11-30"):
        (tmp_path / made).mkdir()
    # What would be written there is refused before anything is made.
    with pytest.raises(ItembankError, match=f"There is a pack in .*{folder} already"):
        make_pack(PackRequest(), tmp_path, day=day, department=LARKHYTHE)


def test_a_date_in_the_request_stands(on_day, tmp_path):
    on_day(SATURDAY)
    (tmp_path / "8K-2026-12-02").mkdir()
    asked = PackRequest(date=datetime.date(2026, 12, 2))
    with pytest.raises(ItembankError, match="8K-2026-12-02 already"):
        make_pack(asked, tmp_path, department=LARKHYTHE)
