"""What last year taught can come back this year, as old as it is."""

import datetime

import pytest

from itembank.files.faults import FileFaults
from itembank.planning.calendar.scheme import Scheme, Taught, with_earlier
from itembank.planning.department.department import read_department
from itembank.planning.department.folder import read_folder
from itembank.planning.department.taught import taught_dates

TOPICS = ("a.b", "c.d", "e.f", "g.h")
DAY = datetime.date


def folder(at, seven="", eight="", nine=""):
    (at / "schemes").mkdir(exist_ok=True)
    (at / "department.toml").write_text(
        'school = "Larkhythe School"\n[[classes]]\nname = "9S"\nyear = 9\nscheme = "year-9"\n'
        'lessons = ["Mon 1", "Thu 2"]\ntopics = ["a.b"]\n'
    )
    (at / "calendar.toml").write_text(
        '[[terms]]\nname = "Autumn"\nfirst = 2026-09-07\nlast = 2026-12-18\n'
    )
    rows = {"year-7": ("a.b", 2), "year-8": ("c.d", 3), "year-9": ("e.f", 4)}
    heads = {"year-7": seven, "year-8": eight, "year-9": nine}
    for name, (topic, week) in rows.items():
        (at / "schemes" / f"{name}.toml").write_text(
            f'year = {name[-1]}\n{heads[name]}\n[[topics]]\ntopic = "{topic}"\nweek = {week}\n'
        )
    return at


def read(at):
    return read_folder(at, TOPICS, {})


def test_topics_of_both_years_before_are_as_old_as_they_are(tmp_path):
    found = read(folder(tmp_path, eight='after = "year-7"', nine='after = "year-8"'))
    group = found.department.find_class("9S")
    taught = {topic.topic: topic.date for topic in found.scheme_of(group).topics}
    assert taught == {
        "a.b": DAY(2026, 9, 14) - datetime.timedelta(weeks=104),
        "c.d": DAY(2026, 9, 21) - datetime.timedelta(weeks=52),
        "e.f": DAY(2026, 9, 28),
    }
    assert taught_dates(read_department(tmp_path, TOPICS), group) == taught


def test_what_a_lesson_teaches_is_of_this_year(tmp_path):
    found = read(folder(tmp_path, eight='after = "year-7"', nine='after = "year-8"'))
    scheme = found.scheme_of(found.department.find_class("9S"))
    assert scheme.current(DAY(2026, 9, 10)) is None
    assert scheme.current(DAY(2026, 9, 28)) == "e.f"


def test_a_topic_taught_again_counts_from_then():
    before = Scheme("y", 7, (Taught("a.b", DAY(2026, 9, 7)),))
    now = Scheme("z", 8, (Taught("a.b", DAY(2026, 10, 5)),), "y")
    assert with_earlier(now, before).known == now.topics


@pytest.mark.parametrize(
    ("heads", "says"),
    [
        ({"nine": 'after = "year-88"'}, "Did you mean year-8 or year-7?"),
        ({"nine": 'after = "lower school"'}, "There is no scheme of work ‘lower school’"),
        ({"seven": 'after = "year-8"'}, "year-7 is for year 7, so it cannot follow year-8"),
        ({"eight": 'after = "year-8"'}, "year-8 is for year 8, so it cannot follow year-8"),
        ({"nine": "after = 8"}, "after"),
    ],
)
def test_a_wrong_year_before_is_told_with_its_line(tmp_path, heads, says):
    with pytest.raises(FileFaults) as caught:
        read(folder(tmp_path, **heads))
    (fault,) = caught.value.faults
    assert says in str(fault)
    assert fault.line == 2
    # Commands that can do without a scheme go on without it.
    group = read_department(tmp_path, TOPICS).find_class("9S")
    assert "e.f" in taught_dates(read_department(tmp_path, TOPICS), group) or "nine" in heads
