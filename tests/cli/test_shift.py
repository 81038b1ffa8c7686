"""``itembank shift``: a lesson that is moved is recorded where it is."""

import shutil

import pytest

from itembank.files.shipped import shipped_folder

pytestmark = pytest.mark.usefixtures("pages_outlined")


@pytest.fixture
def home(away):
    folder = away / "larkhythe"
    shutil.copytree(
        shipped_folder() / "larkhythe", folder, ignore=shutil.ignore_patterns("plans", "*.sqlite3")
    )
    return folder


def test_a_lesson_is_moved_recorded_and_cannot_be_moved_then(said, home, on_day):
    told = said("shift", "8K", "--date", "2026-12-01", "--to-period", "6", "--department", home)
    assert told.status == 0, told.err
    assert "on Tuesday 1 December, period 3 is on Tuesday 1 December, period 6." in told.out
    assert "--from 2026-11-30 --replace’" in told.out
    on_day("2026-12-01")
    had = said("cover", "8K", "--date", "2026-12-01", "-t", "ratio.share 4", "--department", home)
    assert had.status == 0, had.err
    back = said("shift", "8K", "--date", "2026-12-01", "--to-period", "3", "--department", home)
    assert back.status == 2
    assert "noted" in back.err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((), "Say which lesson"),
        (("--date", "2026-12-01"), "where it goes"),
        (("--date", "2026-12-01", "--to", "soon"), "‘soon’ is not a date"),
        (("--date", "2026-12-05", "--to", "2026-12-07"), "There is nothing to move."),
    ],
)
def test_what_is_typed_wrongly_is_told(said, home, words, told):
    before = (home / "department.toml").read_text("utf-8")
    ended = said("shift", "8K", *words, "--department", home)
    assert ended.status == 2
    assert told in ended.err
    assert (home / "department.toml").read_text("utf-8") == before
