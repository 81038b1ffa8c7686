"""The settings of planning, for a department and for a class, and what is wrong with them."""

import pytest

from itembank.files.faults import FileFaults
from itembank.planning.choosing.week_settings import WeekSettings
from itembank.planning.department.department import read_department

DEPARTMENT = """school = "Larkhythe School"
{top}
[[classes]]
name = "8K"
year = 8
topics = ["ratio.share"]
{own}
[[classes]]
name = "9S"
year = 9
topics = ["ratio.share"]
"""
USUAL = WeekSettings()


def read(tmp_path, top="", own=""):
    path = tmp_path / "department.toml"
    path.write_text(DEPARTMENT.format(top=top, own=own))
    found = read_department(tmp_path)
    return [group.plan.planning for group in found.classes]


def test_the_usual_settings_hold_where_nothing_is_stated(tmp_path):
    assert read(tmp_path) == [USUAL, USUAL]
    assert read(tmp_path, "[planning]") == [USUAL, USUAL]


def test_a_department_states_for_all_and_a_class_for_itself(tmp_path):
    own = "[classes.planning]\nweeks_apart = 3\nrest_days = 1"
    eight, nine = read(tmp_path, "[planning]\nweeks_apart = 9\nrecent_days = 30", own)
    assert (eight.weeks_apart, nine.weeks_apart) == (3, 9)
    assert (eight.choice.rest, nine.choice.rest) == (1, USUAL.choice.rest)
    # What the class leaves open is the department's.
    assert eight.choice.recent == nine.choice.recent == 30


@pytest.mark.parametrize("value", [0, 52])
def test_the_ends_of_the_range(tmp_path, value):
    assert read(tmp_path, f"[planning]\nweeks_apart = {value}")[0].weeks_apart == value


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("weeks_apart = 53", "‘weeks_apart’ must be from 0 to 52, not 53"),
        ("weeks_apart = -1", "‘weeks_apart’ must be from 0 to 52, not -1"),
        ('weeks_apart = "six"', "‘weeks_apart’ must be a whole number from 0 to 52"),
        ("weeks_apart = 1.5", "‘weeks_apart’ must be a whole number"),
        ("weeks_apart = true", "‘weeks_apart’ must be a whole number"),
        ("weeks_appart = 6", "There is no key ‘weeks_appart’ here. Did you mean ‘weeks_apart’?"),
        ("recent_days = 0", "‘recent_days’ must be from 1 to 200, not 0"),
        ("recent_questions = 9", "‘recent_questions’ must be from 0 to 8, not 9"),
        ("older_questions = []", "‘older_questions’ must be a whole number"),
        ("weak = 101", "‘weak’ must be from 0 to 100, not 101"),
        ("rest_days = 15", "‘rest_days’ must be from 0 to 14, not 15"),
    ],
)
def test_each_fault_is_told_with_its_line(tmp_path, line, said):
    with pytest.raises(FileFaults) as caught:
        read(tmp_path, f"[planning]\n{line}")
    assert [(fault.line, said in fault.message) for fault in caught.value.faults] == [(3, True)]


def test_fewest_questions_that_are_too_many_together(tmp_path):
    with pytest.raises(FileFaults, match=r"line 4: .*\(5\) and .*\(4\) come to more than 8"):
        read(tmp_path, "[planning]\nolder_questions = 4\nrecent_questions = 5")


def test_a_table_that_is_none(tmp_path):
    with pytest.raises(FileFaults, match="‘planning’ must be a table, headed"):
        read(tmp_path, "planning = 6")
    with pytest.raises(FileFaults) as caught:
        read(tmp_path, own="[classes.planning]\nweeks_apart = 99")
    assert caught.value.faults[0].line == 8


def test_all_faults_are_told_at_once(tmp_path):
    with pytest.raises(FileFaults) as caught:
        read(tmp_path, "[planning]\nweak = -1\nrest_days = 99", "[classes.planning]\nx = 1")
    assert len(caught.value.faults) >= 3
