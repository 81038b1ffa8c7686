"""A topic with few questions rests while others have more; if it comes again, the plan says so."""

import datetime
from collections import Counter

import pytest

from itembank.items.topics.registry import topics
from itembank.planning.department.folder import read_folder
from itembank.planning.week.week_plan import FOLDER, plan_text
from itembank.work.week.new_plan import new_plan
from itembank.work.week.planner import Planner
from itembank.work.week.week_questions import with_questions
from tests.packs.bank_files import bank, sums

pytestmark = pytest.mark.usefixtures("one_core", "pages_outlined", "proved_once")

MONDAY = datetime.date(2026, 11, 16)
DEPARTMENT = """
school = "Larkhythe School"
banks = ["questions"]
questions_from = "bank"
[[classes]]
name = "8K"
year = 8
questions = 4
scheme = "year-8"
lessons = ["Mon 1", "Tue 1", "Wed 1", "Thu 1", "Fri 1"]
topics = ["garden.few"]
"""
CALENDAR = '[[terms]]\nname = "Autumn"\nfirst = 2026-09-03\nlast = 2026-12-18\n'


def department(folder, many, few=2):
    """Write a department with one topic of `few` questions and several of `many`."""
    rich = [f"garden.rich-{n}" for n in range(4)]
    tables = {name: sums(many, "core", 100 + 200 * n) for n, name in enumerate(rich)}
    tables["garden.few"] = sums(few, "core", 20)
    bank(folder / "questions", tables)
    (folder / "department.toml").write_text(DEPARTMENT)
    (folder / "calendar.toml").write_text(CALENDAR)
    (folder / "schemes").mkdir()
    rows = [f'[[topics]]\ntopic = "{name}"\ntaught = 2026-09-21\n' for name in tables]
    (folder / "schemes" / "year-8.toml").write_text("\n".join(["year = 8", *rows]))
    return folder


def plan(folder, week):
    made = list(topics())
    found = read_folder(folder, [topic.id for topic in made], {})
    planner = Planner(found, found.department.find_class("8K"), {t.id: t.title for t in made})
    done = with_questions(planner, new_plan(planner, week, None).plan)
    path = folder / FOLDER / done.file_name
    path.parent.mkdir(exist_ok=True)
    path.write_text(plan_text(done))
    return done


@pytest.fixture(autouse=True)
def own_store(monkeypatch):
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    # These banks are too small for sheets; it is about starters.
    monkeypatch.setattr(
        "itembank.work.week.week_questions._with_sheets", lambda planner, lesson, avoid: lesson
    )


def test_a_topic_rests_once_its_questions_are_used_up(tmp_path):
    folder = department(tmp_path, many=24)
    weeks = [plan(folder, MONDAY + datetime.timedelta(weeks=n)) for n in range(2)]
    asked = Counter(a for week in weeks for lesson in week.lessons for a in lesson.asked)
    assert max(asked.values()) == 1
    assert sum(lesson.counts.get("garden.few", 0) for week in weeks for lesson in week.lessons) <= 2
    assert not any(
        t.reason.again for week in weeks for lesson in week.lessons for t in lesson.topics
    )


def test_where_it_must_come_again_the_plan_says_so_and_the_last_ones_rest(tmp_path):
    folder = department(tmp_path, many=1)  # five topics, six questions, four a day
    made = plan(folder, MONDAY)
    before = {}
    for lesson in made.lessons:
        for topic in lesson.topics:
            said = topic.reason.again
            old = [a for a in lesson.asked if a in before and topic_of(a, folder) == topic.topic]
            assert bool(said) == bool(old)
            if said:
                assert "asks again what" in topic.why
                assert said.date == max(before[address] for address in old)
        before |= dict.fromkeys(lesson.asked, lesson.date)
    few = [set(lesson.asked) for lesson in made.lessons]
    # No two questions of one topic come three days running.
    pair = {f"larkhythe:core-{n}" for n in (20, 21)}
    assert not any(all(pair <= day for day in few[n : n + 3]) for n in range(3))
    assert "asks again what" in plan_text(made)


def topic_of(address, folder):
    number = int(address.rsplit("-", 1)[1])
    return "garden.few" if number < 100 else f"garden.rich-{(number - 100) // 200}"
