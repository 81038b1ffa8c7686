"""Answers, and the folder of files that says them: each leads back to the other."""

import datetime
import shutil
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from itembank.errors import ItembankError
from itembank.files.shipped import shipped_folder
from itembank.files.snapshot import ChangedSince
from itembank.planning.calendar.timetable import parse_lesson
from itembank.planning.department.folder import read_folder
from itembank.work.department.answered import Answers, BandsAnswer, ClassAnswer, settled
from itembank.work.department.answers_read import answers_in
from itembank.work.department.as_files import files_of
from itembank.work.department.looked_at import known_topics, look_at
from itembank.work.department.made import change_department, make_department, read_kept
from itembank.work.department.outlook import outlook_lines, outlook_on
from itembank.work.department.ready import ready_scheme, topics_by_strand
from itembank.work.department.so_far import keep_so_far, read_so_far
from tests.work.department.some_answers import DAY, TERMS, answers

QUICK = settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))


@QUICK
@given(answers())
def test_files_say_the_answers_back(given_):
    assert answers_in(files_of(given_)) == settled(given_)


@QUICK
@given(answers())
def test_what_is_found_sound_is_what_the_commands_read(given_):
    look = look_at(given_)
    files = files_of(given_)
    titles, prerequisites = known_topics()
    if look.ready:
        read = read_folder(Path("nowhere"), tuple(titles), prerequisites, files)
        assert read.department.school == given_.school
        assert read.calendar == settled(given_).calendar
        told = [(row.name, row.plan.seats, row.plan.lessons) for row in read.department.classes]
        assert told == [(row.name, row.seats, row.lessons) for row in given_.classes]
    else:
        with pytest.raises(ItembankError):
            read_folder(Path("nowhere"), tuple(titles), prerequisites, files)


@QUICK
@given(answers(), answers())
def test_changed_files_say_the_new_answers_and_keep_comments(first, second):
    before = {
        name: f"# Ours: {name}\n\n{text}# the end of it\n" for name, text in files_of(first).items()
    }
    after = files_of(second, before)
    assert answers_in(after) == settled(second)
    for name, text in after.items():
        if name in before:
            assert f"# Ours: {name}" in text
            assert "# the end of it" in text


@QUICK
@given(answers())
def test_answers_are_kept_until_one_goes_on(tmp_path_factory, given_):
    folder = tmp_path_factory.mktemp("begun")
    keep_so_far(folder, given_)
    assert read_so_far(folder) == given_


def test_open_answers_are_kept_too(tmp_path):
    begun = Answers(school="Larkhythe School", classes=(ClassAnswer("8K"), ClassAnswer("8L", 8)))
    keep_so_far(tmp_path, begun)
    assert read_so_far(tmp_path) == begun
    assert read_so_far(tmp_path / "other") is None


@pytest.fixture
def larkhythe(tmp_path):
    folder = tmp_path / "larkhythe"
    shutil.copytree(
        shipped_folder() / "larkhythe", folder, ignore=shutil.ignore_patterns("plans", "*.sqlite3")
    )
    return folder


def test_the_demo_department_answers_and_nothing_changes(larkhythe):
    kept = read_kept(larkhythe)
    assert files_of(kept.answers, kept.files) == kept.files
    assert look_at(kept.answers, larkhythe, kept.files).ready
    assert change_department(kept, kept.answers) == ()


def test_one_answer_changes_one_line(larkhythe):
    kept = read_kept(larkhythe)
    before = kept.files["department.toml"]
    classes = list(kept.answers.classes)
    classes[1] = replace(classes[1], teacher="MB")
    changed = change_department(kept, replace(kept.answers, classes=tuple(classes)))
    assert changed == (larkhythe / "department.toml",)
    now = (larkhythe / "department.toml").read_text("utf-8").split("\n")
    differ = [(a, b) for a, b in zip(before.split("\n"), now, strict=True) if a != b]
    assert differ == [('teacher = "HT"', 'teacher = "MB"')]


def test_a_renamed_class_keeps_what_no_answer_says(larkhythe):
    kept = read_kept(larkhythe)
    classes = [replace(row, name="9T") if row.name == "9S" else row for row in kept.answers.classes]
    change_department(kept, replace(kept.answers, classes=tuple(classes)))
    row = tomllib.loads((larkhythe / "department.toml").read_text("utf-8"))["classes"][2]
    assert row["name"] == "9T"
    assert row["paper"] == "cream"
    assert row["bands"]["band"][0]["name"] == "Repair"


def test_a_default_class_goes_along_with_its_name_or_goes(larkhythe):
    kept = read_kept(larkhythe)
    classes = [replace(row, name="8L") if row.name == "8K" else row for row in kept.answers.classes]
    renamed = files_of(replace(kept.answers, classes=tuple(classes)), kept.files)
    assert 'default_class = "8L"' in renamed["department.toml"]
    gone = files_of(replace(kept.answers, classes=tuple(classes[2:])), kept.files)
    assert "default_class" not in gone["department.toml"]


def test_a_file_that_somebody_changed_meanwhile_stays_theirs(larkhythe):
    kept = read_kept(larkhythe)
    path = larkhythe / "calendar.toml"
    theirs = path.read_text("utf-8") + "# mine\n"
    path.write_text(theirs, "utf-8")
    with pytest.raises(ChangedSince):
        change_department(kept, replace(kept.answers, school="Another"))
    assert path.read_text("utf-8") == theirs
    assert "Another" not in (larkhythe / "department.toml").read_text("utf-8")


def sound():
    group = ClassAnswer("8K", 8, "HT", ("A1", "A2"), (parse_lesson("Mon 1"), parse_lesson("Thu 2")))
    whole = Answers("Larkhythe School", TERMS, two_week=False, classes=(group,))
    return replace(whole, schemes=(ready_scheme(8, whole.calendar),))


def test_a_department_is_made_whole_and_never_over_another(tmp_path):
    folder = tmp_path / "ours"
    made = make_department(folder, sound())
    assert {path.name for path in made} == {"department.toml", "calendar.toml", "year-8.toml"}
    assert read_kept(folder).answers == settled(sound())
    with pytest.raises(ItembankError) as error:
        make_department(folder, sound())
    assert error.value.matter == "department there"
    for name in ("calendar.toml", "schemes"):
        other = tmp_path / name.replace(".", "-")
        other.mkdir()
        (other / name).mkdir() if name == "schemes" else (other / name).write_text("# mine\n")
        with pytest.raises(ItembankError) as error:
            make_department(other, sound())
        assert "is there already" in str(error.value)
        assert [path.name for path in other.iterdir()] == [name]


def test_nothing_is_written_while_something_is_missing(tmp_path):
    with pytest.raises(ItembankError) as error:
        make_department(tmp_path / "ours", replace(sound(), terms=(), school=""))
    assert {part.about["answer"] for part in error.value.errors} >= {("school",), ("terms",)}
    assert not list(tmp_path.iterdir())


def test_what_was_kept_goes_when_the_department_is_there(tmp_path):
    keep_so_far(tmp_path / "ours", sound())
    make_department(tmp_path / "ours", read_so_far(tmp_path / "ours"))
    assert read_so_far(tmp_path / "ours") is None


@pytest.mark.parametrize(
    ("change", "field", "word"),
    [
        ({"school": "X" * 70}, ("school",), "60"),
        ({"terms": (TERMS[0], replace(TERMS[1], first=DAY(2026, 12, 1)))}, ("terms", 1), "ends on"),
        ({"two_week": True, "week_a": DAY(2026, 12, 29)}, ("week_a",), "no lessons"),
        ({"bands": BandsAnswer((), (7, 5))}, ("bands",), "do not rise"),
        ({"bands": BandsAnswer(("Red", "Green"), (5, 7))}, ("bands",), "2 bands need 1"),
        ({"bands": BandsAnswer(("Red", "Red"))}, ("bands",), "Red"),
    ],
)
def test_what_is_wrong_is_told_at_its_answer(change, field, word):
    look = look_at(replace(sound(), **change))
    assert [row.field[: len(field)] for row in look.wrong] == [field]
    assert word in look.wrong[0].message
    assert not look.ready


@pytest.mark.parametrize(
    ("change", "field", "word"),
    [
        ({"name": "8K" * 8}, ("classes", 1, "name"), "12 characters"),
        ({"name": "8k"}, ("classes", 1, "name"), "two classes"),
        ({"teacher": "HT"}, ("classes", 1, "lessons"), "same time"),
        ({"teacher": "Mr Larch"}, ("classes", 1, "teacher"), "initials"),
        ({"seats": ("A1", "a1")}, ("classes", 1, "seats"), "twice"),
        ({"lessons": (parse_lesson("A Mon 1"),)}, ("classes", 1, "lessons"), "week A"),
    ],
)
def test_what_is_wrong_of_a_class_is_told_there(change, field, word):
    whole = sound()
    other = replace(whole.classes[0], name="8L", teacher="", **{})
    look = look_at(replace(whole, classes=(whole.classes[0], replace(other, **change))))
    assert [row.field for row in look.wrong][:1] == [field] or field in [
        row.field for row in look.wrong
    ]
    assert word in " ".join(row.message for row in look.wrong)


def test_an_unfinished_class_hides_no_fault_of_another():
    whole = sound()
    open_ = ClassAnswer("", None)
    wrong = replace(whole.classes[0], seats=("A1", "A1"))
    look = look_at(replace(whole, classes=(open_, wrong)))
    assert [row.field for row in look.wrong] == [("classes", 1, "seats")]
    assert {row.field for row in look.missing} == {
        ("classes", 0, "name"),
        ("classes", 0, "year"),
        ("classes", 0, "lessons"),
    }


def test_the_outlook_counts_lessons_as_the_calendar_holds_them():
    seen = outlook_on(sound())
    autumn = sum(
        TERMS[0].first <= day <= TERMS[0].last and day.weekday() in (0, 3)
        for day in (TERMS[0].first + datetime.timedelta(n) for n in range(200))
    )
    assert seen.classes[0].by_term[0] == ("Autumn", autumn)
    lines = "\n".join(outlook_lines(seen))
    assert "8K: Mon 1, Thu 2; 2 seats: A1-A2" in lines
    assert "week 1, from 31 Aug: Equivalent fractions" not in lines
    assert "Rebuild 0–4, Secure 5–6 and Extend 7–8, of 8 marks" in lines


@pytest.mark.parametrize("year", range(7, 14))
def test_a_ready_scheme_can_be_used_as_it_is(year):
    group = replace(sound().classes[0], name=f"{year}K", year=year)
    whole = replace(sound(), classes=(group,), schemes=(ready_scheme(year, sound().calendar),))
    look = look_at(whole)
    assert look.ready
    assert look.remarks == ()  # nothing comes before what it rests on
    suits = {row.topic for rows in topics_by_strand().values() for row in rows if row.year <= year}
    assert {topic.topic for topic in whole.schemes[0].topics} <= suits
