"""docs/department.md is true: its examples are read without a fault, and it names every key."""

import re
from pathlib import Path

import pytest

from itembank import toml_file
from itembank.items.registry import topic_ids
from itembank.planning.deciding import Deciding
from itembank.planning.folder import read_folder
from itembank.planning.week_settings import WeekSettings

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "department.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```toml\n(.*?)```", PAGE, re.S)
ROWS = dict(re.findall(r"^\| `(\w+)` \|.*\| ([^|]*?) \|$", PAGE, re.M))


def read(folder, department, calendar, scheme):
    (folder / "department.toml").write_text(department)
    (folder / "calendar.toml").write_text(calendar)
    (folder / "schemes").mkdir()
    (folder / "schemes" / "year-8.toml").write_text(scheme)
    return read_folder(folder, topic_ids(), {})


@pytest.mark.parametrize("department", BLOCKS[:2])
def test_its_examples_are_a_whole_department(tmp_path, department):
    found = read(tmp_path, department, *BLOCKS[2:])
    assert found.department.school == "Larkhythe School"
    assert len(found.schemes["year-8"].topics) == 2
    assert found.calendar.terms


def test_it_names_every_key_that_is_read(tmp_path, monkeypatch):
    asked = set()
    close = toml_file.Table.close

    def closing(table):
        asked.update(table._asked)
        close(table)

    monkeypatch.setattr(toml_file.Table, "close", closing)
    for example in ("department.toml", "calendar.toml", "schemes/year-8.toml"):
        source = ROOT / "banks" / "larkhythe" / example
        (tmp_path / example).parent.mkdir(exist_ok=True)
        (tmp_path / example).write_text(source.read_text(encoding="utf-8"))
    text = (tmp_path / "department.toml").read_text(encoding="utf-8")
    text = re.sub(r'^scheme = "year-[79]"\n', "", text, flags=re.M)
    text += "\n[deciding]\nagain_below = 40\n\n[planning]\nweeks_apart = 5\n"
    (tmp_path / "department.toml").write_text(text)
    read_folder(tmp_path, topic_ids(), {})
    assert len(asked) > 50
    assert {key for key in asked if f"`{key}`" not in PAGE and f"[{key}]" not in PAGE} == set()
    # And none that is not: a key of the tables would be refused in the file.
    assert set(ROWS) - asked == set()


def test_what_is_left_out_is_as_the_page_says():
    usual, lines = WeekSettings(), Deciding()
    choice = usual.choice
    assert {key: ROWS[key] for key in ("again_below", "on_from", "confidence")} == {
        "again_below": f"{100 * lines.again_below:.0f}",
        "on_from": f"{100 * lines.on_from:.0f}",
        "confidence": f"{100 * lines.confidence:.0f}",
    }
    assert ROWS["weeks_apart"] == str(usual.weeks_apart)
    assert ROWS["recent_days"] == str(choice.recent)
    assert ROWS["recent_questions"] == str(choice.fewest_recent)
    assert ROWS["older_questions"] == str(choice.fewest_older)
    assert ROWS["weak"] == f"{100 * choice.weak:.0f}"
    assert ROWS["rest_days"] == str(choice.rest)
