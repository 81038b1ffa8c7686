"""Every fault of a week's plan file is told, once and with its line."""

import pytest

from itembank.files.faults import FileFaults
from itembank.planning.week.week_plan import (
    plan_text,
)
from tests.planning.week_plans import ORDER, faults, lesson, made_sheets, plan, read, written


@pytest.mark.parametrize(
    ("old", "new", "at", "said"),
    [
        (ORDER, 'topic = "fractions.ordr"', "fractions.ordr", "Did you mean fractions.order?"),
        (ORDER, 'topic = "ratio.share"', "{ topic", "is listed twice. Give it a larger count"),
        (ORDER, "topic = 3", "topics = [", "‘topic’ must be text"),
        (ORDER, 'topik = "fractions.order"', "topik", "Did you mean ‘topic’?"),
        ("count = 1", "count = 2", "questions = 3", "ask for 4 questions, but ‘questions’ is 3"),
        ("questions = 3", "questions = 4", "questions = 4", "ask for 3 questions, but"),
        ("questions = 3", "questions = 21", "questions = 21", "must be from 1 to 20"),
        ("questions = 3", "questions = 3.0", "questions = 3.0", "must be a whole number"),
        ("questions = 3", "qestions = 3", "qestions", "Did you mean ‘questions’?"),
        ("count = 2", "count = 0", "count = 0", "must be from 1 to 20, not 0"),
        ("count = 1", "count = true", "count = true", "must be a whole number"),
        ('why = "taught', 'pinned = "yes", why = "taught', "ratio.share", "must be true or false"),
        ("seed = 7", "seed = -7", "seed = -7", "must be from 0 to"),
        ('period = "1"', "period = 1", "period = 1", "must be text in quotation marks"),
        ('period = "1"', 'period = "1/2"', "1/2", "‘1/2’ is no period"),
        ('title = "Sharing"', f'title = "{"x" * 61}"', "xxx", "is too long"),
        (
            "date = 2026-11-16",
            "date = 2026-11-23",
            "2026-11-23",
            "is not in the week of 2026-11-16",
        ),
        ("date = 2026-11-16", "date = 2026-11-21", "2026-11-21", "no lessons on 2026-11-21: week"),
        ("date = 2026-11-16", 'date = "30 Nov"', "30 Nov", "must be a day such as 2026-11-30"),
        ("date = 2026-11-16", "", "[[lessons]]", "‘date’ is missing"),
        ("week = 2026-11-16", "week = 2026-11-17", "2026-11-17", "is no Monday. Write 2026-11-16"),
        ('class = "8K"', 'class = "8X"', "8X", "There is no class 8X. The classes are 7M, 8K"),
        ('class = "8K"', 'klass = "8K"', "klass", "Did you mean ‘class’?"),
        ("items = []", 'items = ["ratio.share"]', "items", "is not an address"),
        ("items = []", 'items = ["ratio.share/core/99999"]', "items", "there is no such item"),
        ("items = []", 'items = ["ratio.share/hard/1"]', "items", "the tiers are"),
        (
            "items = []",
            'items = ["equations.one-step/core/1"]',
            "items",
            "which is not among the topics",
        ),
        (
            "items = []",
            'items = ["fractions.order/core/1", "fractions.order/core/2"]',
            "items",
            "more items than questions on fractions.order",
        ),
        ("items = []", "items = [3]", "items", "holds names in quotation marks, not 3"),
        (
            "items = []",
            'items = ["ratio.share/core/1", "ratio.share/core/1"]',
            "items",
            "is listed twice",
        ),
        ("never = []", 'never = ["ratio.share"]', "never", "is among the topics as well"),
        ("never = []", 'never = ["ratio.shar"]', "never", "Did you mean ratio.share"),
        ("never = []", 'never = "ratio.share"', "never", "must be a list"),
        ("asked = []", 'asked = ["nothing/core/1"]', "asked", "There is no topic ‘nothing’"),
        ("[[lessons]]", "[[lesson]]", "lesson", "Did you mean ‘lessons’?"),
    ],
)
def test_every_fault_is_told_with_its_line(tmp_path, old, new, at, said):
    path = written(tmp_path)
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new, 1))
    found = faults(path)
    assert [line for line, message in found if said in message and at in line], found


def test_one_slip_brings_one_fault(tmp_path):
    path = written(tmp_path)
    text = path.read_text()
    for old, new in ((ORDER, 'topic = "fractions.ordr"'), ("questions = 3", 'questions = "3"')):
        path.write_text(text.replace(old, new, 1))
        assert len(faults(path)) == 1


def test_all_faults_are_told_at_once(tmp_path):
    path = written(tmp_path)
    text = path.read_text().replace(ORDER, 'topic = "fractions.ordr"').replace("8K", "8X")
    path.write_text(text.replace("seed = 7", "seed = -1"))
    assert len(faults(path)) == 1 + 2 * 2  # the class, and a topic and a seed in each lesson


def test_two_lessons_in_one_period_and_two_on_one_day(tmp_path):
    twice = plan(lesson(), lesson())
    assert "two lessons on Monday 16 November, period 1" in faults(written(tmp_path, twice))[0][1]
    fine = plan(lesson(period="1"), lesson(period="2"))
    assert read(written(tmp_path, fine)) == fine


def test_a_plan_of_another_class(tmp_path):
    path = written(tmp_path)
    (at, said) = faults(path, "9S")[0]
    assert ("class" in at, said) == (True, "This is a plan for 8K, not for 9S.")
    assert read(path, "8k").class_name == "8K"
    # A name that says one class while the file says another would be overlooked later.
    path = written(tmp_path, name="week-9S-2026-11-16.toml")
    assert "The file's name says 9S, but the plan is for 8K" in faults(path)[0][1]


def test_a_plan_that_is_no_toml_says_where(tmp_path):
    path = written(tmp_path)
    path.write_text(path.read_text().replace('title = "Sharing"', 'title = "Sharing'))
    with pytest.raises(FileFaults) as caught:
        read(path)
    (fault,) = caught.value.faults
    assert "title" in path.read_text().splitlines()[fault.line - 1]


def test_a_plan_without_lessons_or_topics(tmp_path):
    path = tmp_path / "plan.toml"
    path.write_text('class = "8K"\nweek = 2026-11-16\n')
    assert "There are no lessons" in faults(path)[0][1]
    text = plan_text(plan(lesson()))
    start = text.index("topics = [")
    path.write_text(text[:start] + "topics = []\n" + text[text.index("items = ") :])
    assert "The lesson has no topics" in faults(path)[0][1]
    with pytest.raises(FileFaults, match="There is no such file"):
        read(tmp_path / "none.toml")


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("ratio.share/core/1", "ratio.shar/core/1", "There is no topic ‘ratio.shar’"),
        ('core = [\n    "ratio.share/core/1",\n]', "core = 3", "must be a list"),
        ('core = [\n    "ratio.share/core/1",\n]', "core = [3]", "holds names in quotation marks"),
        ("challenge = [", "chalenge = [", "Did you mean ‘challenge’?"),
    ],
)
def test_faults_in_sheets(tmp_path, old, new, said):
    path = written(tmp_path, plan(lesson(sheets=made_sheets("ratio.share/TIER/1"))))
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new))
    assert any(said in message for _, message in faults(path))
