"""Calendar, schemes and timetables: what a folder says, and every fault told with its line."""

import datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.planning.calendar.calendar import Calendar, Closed, Term, monday
from itembank.planning.calendar.timetable import WeeklyLesson, lessons_between, parse_lesson
from itembank.planning.department.class_plan import spread_seats
from itembank.planning.department.folder import read_folder
from itembank.planning.department.folder_checks import find_cycle

DAY = datetime.date
LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
TERMS = (
    Term("Autumn", DAY(2026, 9, 3), DAY(2026, 12, 18)),
    Term("Spring", DAY(2027, 1, 4), DAY(2027, 3, 25)),
)
HALF_TERM = Closed(DAY(2026, 10, 26), DAY(2026, 10, 30), "half term")
YEAR = Calendar(TERMS, (HALF_TERM,), DAY(2026, 9, 7))
dates = st.dates(DAY(2026, 8, 1), DAY(2027, 4, 30))

DEPARTMENT = """school = "Larkhythe School"
[[classes]]
name = "8K"
year = 8
topics = ["ratio.share"]
scheme = "year-8"
teacher = "HT"
seats = ["A1-A3", "B1"]
lessons = ["Mon 1", "B Thu 2"]
"""
CALENDAR = """two_week = true
week_a = 2026-09-07
[[terms]]
name = "Autumn"
first = 2026-09-03
last = 2026-12-18
"""
SCHEME = """year = 8
[[topics]]
topic = "ratio.share"
week = 2
"""
KNOWN = ("ratio.share", "ratio.simplest-form")


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "schemes").mkdir()
    (tmp_path / "department.toml").write_text(DEPARTMENT)
    (tmp_path / "calendar.toml").write_text(CALENDAR)
    (tmp_path / "schemes" / "year-8.toml").write_text(SCHEME)
    return tmp_path


def faults(folder, prerequisites=None):
    with pytest.raises(FileFaults) as caught:
        read_folder(folder, KNOWN, prerequisites or {})
    return [f"{Path(f.file).name}:{f.line} {f.message}" for f in caught.value.faults]


@given(dates)
def test_a_day_is_closed_for_one_reason_or_has_a_week(date):
    reason = YEAR.closed_reason(date)
    assert bool(reason) == (date not in list(YEAR.teaching_days(date, date)))
    if not reason:
        number = YEAR.week_number(date)
        assert YEAR.week_letter(date) in ("A", "B")
        assert monday(YEAR.week_start(number)) == monday(date)


@given(st.integers(1, YEAR.weeks - 1))
def test_weeks_of_teaching_alternate(number):
    date, other = YEAR.week_start(number), YEAR.week_start(number + 1)
    assert {YEAR.week_letter(date), YEAR.week_letter(other)} == {"A", "B"}


def test_a_half_term_does_not_count_as_a_week():
    before, after = DAY(2026, 10, 19), DAY(2026, 11, 2)
    assert YEAR.week_number(after) == YEAR.week_number(before) + 1
    assert YEAR.week_number(DAY(2026, 10, 28)) is None
    assert YEAR.closed_reason(DAY(2026, 12, 25)) == "holiday between Autumn and Spring"


@given(
    st.lists(
        st.builds(
            WeeklyLesson,
            st.integers(0, 4),
            st.sampled_from("123456"),
            st.sampled_from(["", "A", "B"]),
        ),
        max_size=8,
        unique=True,
    ),
    dates,
    st.integers(0, 60),
)
def test_lessons_are_held_or_skipped_in_order(weekly, first, days):
    last = first + datetime.timedelta(days=days)
    held, skipped = lessons_between(weekly, YEAR, first, last)
    assert list(held) == sorted(held, key=lambda one: (one.date, one.period))
    assert all(not YEAR.closed_reason(lesson.date) for lesson in held)
    assert all(YEAR.closed_reason(lesson.date) == lesson.why for lesson in skipped)
    every_week = [lesson for lesson in weekly if not lesson.letter]
    spread = [first + datetime.timedelta(days=d) for d in range(days + 1)]
    expected = sum(d.weekday() == one.weekday for d in spread for one in every_week)
    counted = [
        one
        for one in (*held, *skipped)
        if any((one.date.weekday(), one.period) == (w.weekday, w.period) for w in every_week)
    ]
    assert len(counted) >= expected


@pytest.mark.parametrize("text", ["Mon", "Mon 1 2", "X Mon 1", "Sat 1", "T 1", "", "C Fri 2"])
def test_what_is_not_a_lesson(text):
    assert parse_lesson(text) is None


@pytest.mark.parametrize(
    ("text", "seats"),
    [
        ("A1-A3", ["A1", "A2", "A3"]),
        ("A1–3", ["A1", "A2", "A3"]),
        ("F5", ["F5"]),
        ("A1-B3", []),
        ("A09-A11", ["A09", "A10", "A11"]),
    ],
)
def test_rows_of_seats(text, seats):
    assert spread_seats(text) == seats


def test_larkhythes_own_folder_is_sound():
    from itembank.items.topics.registry import topic_ids, topics

    found = read_folder(
        LARKHYTHE, tuple(topic_ids()), {topic.id: topic.prerequisites for topic in topics()}
    )
    assert set(found.schemes) == {"year-7", "year-8", "year-9"}
    group = found.department.find_class("8K")
    held, skipped = lessons_between(
        group.plan.lessons, found.calendar, DAY(2026, 11, 30), DAY(2026, 12, 4)
    )
    assert len(held) == 4
    assert [lesson.why for lesson in skipped] == ["training day"]


def test_no_topic_is_said_to_be_missing_where_the_banks_are_not_known(folder):
    (folder / "schemes" / "year-8.toml").write_text(SCHEME.replace("ratio.share", "ours.own"))
    assert any("There is no topic ‘ours.own’" in said for said in faults(folder))
    (folder / "department.toml").write_text(f"bankz = []\n{DEPARTMENT}")
    assert [said.partition(" ")[0] for said in faults(folder)] == ["department.toml:1"]


def test_a_sound_folder_is_read(folder):
    found = read_folder(folder, KNOWN, {})
    first = found.schemes["year-8"].topics[0]
    assert (first.topic, first.date) == ("ratio.share", DAY(2026, 9, 7))
    group = found.department.classes[0]
    assert group.plan.seats == ("A1", "A2", "A3", "B1")
    assert found.scheme_of(group).year == 8


@pytest.mark.parametrize(
    ("file", "old", "new", "said"),
    [
        ("calendar.toml", "last = 2026-12-18", "last = 2026-08-18", "calendar.toml:6 It ends on"),
        ("calendar.toml", "first = 2026-09-03", "first = 3", "calendar.toml:5 ‘first’ must be a"),
        ("calendar.toml", "name", "nmae", "calendar.toml:4 There is no key ‘nmae’"),
        ("calendar.toml", "week_a = 2026-09-07\n", "", "calendar.toml:1 A two-week"),
        ("calendar.toml", "2026-09-07", "2026-08-24", "calendar.toml:2 There are no lessons in"),
        (
            "calendar.toml",
            CALENDAR,
            CALENDAR + "[[closed]]\nfirst = 2026-12-25\nwhy = 'x'\n",
            "calendar.toml:8 ‘x’, 2026-12-25",
        ),
        ("calendar.toml", CALENDAR, CALENDAR + CALENDAR[36:], "calendar.toml:9 Autumn begins"),
        (
            "calendar.toml",
            CALENDAR,
            CALENDAR + CALENDAR[36:].replace("2026-09-03", "2026-12-18"),
            "calendar.toml:9 Autumn begins on 2026-12-18, but Autumn ends on 2026-12-18",
        ),
        (
            "calendar.toml",
            "last = 2026-12-18",
            "last = 2028-12-18",
            "calendar.toml:3 The terms span",
        ),
        ("calendar.toml", "2026-12-18", "2026-12-32", "calendar.toml:6 This line cannot be read"),
        ("calendar.toml", "two_week = true", "two_week = 1", "calendar.toml:1 ‘two_week’ must be"),
        ("calendar.toml", CALENDAR, "two_week = false\n", "calendar.toml:0 There is no term"),
        (
            "calendar.toml",
            "two_week = true\nweek_a = 2026-09-07\n",
            "",
            "department.toml:9 B Thu 2 is a lesson of week B, but calendar.toml has no two-week",
        ),
        ("schemes/year-8.toml", "week = 2", "week = 0", "year-8.toml:4 ‘week’ must be from 1 to"),
        (
            "schemes/year-8.toml",
            "week = 2",
            "week = 2\ntaught = 2026-10-05",
            "year-8.toml:3 This topic has both ‘taught’ and ‘week’",
        ),
        (
            "schemes/year-8.toml",
            "week = 2",
            'taught = "5 Oct"',
            "year-8.toml:4 ‘taught’ must be a day",
        ),
        ("schemes/year-8.toml", "week = 2", "weak = 2", "year-8.toml:4 There is no key ‘weak’"),
        ("schemes/year-8.toml", SCHEME, "year = 8\n", "year-8.toml:0 There are no topics"),
        ("schemes/year-8.toml", "week = 2", "week = ", "year-8.toml:4 This line cannot be read"),
        ("schemes/year-8.toml", "week = 2", "", "year-8.toml:3 This topic has neither"),
        ("schemes/year-8.toml", "week = 2", "week = 99", "year-8.toml:4 ‘week’ must be from"),
        ("schemes/year-8.toml", "week = 2", "taught = 2020-01-06", "year-8.toml:4 2020-01-06 is"),
        ("schemes/year-8.toml", "ratio.share", "ratio.shar", "Did you mean ratio.share"),
        ("schemes/year-8.toml", SCHEME, SCHEME + SCHEME[9:], "year-8.toml:6 The topic ratio.share"),
        ("schemes/year-8.toml", "year = 8", "year = 9", "department.toml:6 8K is in year 8"),
        ("department.toml", "year-8", "yaer-8", "Did you mean year-8?"),
        ("department.toml", "B Thu 2", "Thurs", "department.toml:9 ‘Thurs’ is not a lesson"),
        ("department.toml", "B Thu 2", "A Mon 1", "department.toml:9 The class has two lessons"),
        ("department.toml", "B1", "A2", "department.toml:8 The seat A2 is listed twice"),
        ("department.toml", "B1", "Sam", "takes no pupils' names"),
    ],
)
def test_each_fault_is_told_with_its_place(folder, file, old, new, said):
    path = folder / file
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new, 1))
    found = faults(folder)
    assert any(said in one for one in found), found


def test_all_faults_of_all_files_are_told_at_once(folder):
    for name in ("department.toml", "calendar.toml"):
        path = folder / name
        path.write_text(path.read_text() + "\nwhatever = 1\n")
    found = faults(folder)
    assert {one.partition(":")[0] for one in found} == {"department.toml", "calendar.toml"}


def test_a_teacher_is_not_in_two_rooms_at_once(folder):
    path = folder / "department.toml"
    second = DEPARTMENT.partition("[[classes]]")[2].replace("8K", "8L").replace("B Thu", "A Thu")
    path.write_text(DEPARTMENT + "[[classes]]" + second)
    found = faults(folder)
    assert [one for one in found if "at the same time, on Mon 1" in one]
    assert not [one for one in found if "Thu" in one]  # week A and week B do not clash


def test_topics_that_rest_on_one_another_in_a_circle(folder):
    found = faults(folder, {"a": ("b",), "b": ("a",)})
    assert any("a → b → a" in one for one in found)
    assert find_cycle({"a": ("b", "c"), "b": ("c",), "c": ()}) == ()


def test_missing_files_are_named(folder):
    (folder / "calendar.toml").unlink()
    assert any("calendar.toml:0 There is no such file" in fault for fault in faults(folder))


def test_a_class_without_plan_is_told_what_to_add(folder):
    path = folder / "department.toml"
    path.write_text(DEPARTMENT.replace('lessons = ["Mon 1", "B Thu 2"]\n', ""))
    found = read_folder(folder, KNOWN, {})
    with pytest.raises(ItembankError, match="has no lessons"):
        found.scheme_of(found.department.classes[0])


def test_what_is_taught_before_what_it_rests_on_is_remarked(folder):
    path = folder / "schemes" / "year-8.toml"
    path.write_text(SCHEME + '[[topics]]\ntopic = "ratio.simplest-form"\nweek = 5\n')
    found = read_folder(folder, KNOWN, {"ratio.share": ("ratio.simplest-form",)})
    assert len(found.remarks) == 1
    assert "before ratio.simplest-form" in found.remarks[0]


def test_topics_that_rest_on_themselves_or_on_what_is_not_there(folder):
    assert any("in a circle: a → a." in fault for fault in faults(folder, {"a": ("a",)}))
    # What nobody teaches cannot be in a circle, nor before anything.
    assert read_folder(folder, KNOWN, {"ratio.share": ("ratio.gone",)}).remarks == ()


def test_a_long_circle_is_told_without_what_leads_to_it():
    chain = {str(n): (str(n + 1),) for n in range(200)} | {"200": ("150",)}
    circle = find_cycle(chain)
    assert circle[0] == circle[-1]
    assert set(circle) == {str(n) for n in range(150, 201)}


def test_two_lessons_in_a_half_day_and_none_in_the_other_half():
    # The school closes at noon: a closed time is whole days, so both lessons of the day stand.
    weekly = [WeeklyLesson(4, "2"), WeeklyLesson(4, "1"), WeeklyLesson(1, "5")]
    held, skipped = lessons_between(weekly, YEAR, DAY(2026, 11, 30), DAY(2026, 12, 6))
    assert [(lesson.date, lesson.period) for lesson in held] == [
        (DAY(2026, 12, 1), "5"),
        (DAY(2026, 12, 4), "1"),
        (DAY(2026, 12, 4), "2"),
    ]
    assert skipped == ()


def test_letters_turn_at_a_holiday_and_lessons_with_them():
    weekly = [WeeklyLesson(0, "1", "A"), WeeklyLesson(0, "1", "B"), WeeklyLesson(1, "2", "B")]
    held, skipped = lessons_between(weekly, YEAR, DAY(2026, 10, 19), DAY(2026, 11, 10))
    # 19 October is a week A; half term has no letter; 2 November is a week B, 9 November an A.
    assert [lesson.date for lesson in held] == [
        DAY(2026, 10, 19),
        DAY(2026, 11, 2),
        DAY(2026, 11, 3),
        DAY(2026, 11, 9),
    ]
    assert {lesson.why for lesson in skipped} == {"half term"}


def test_a_closed_day_over_another_and_one_on_a_weekend():
    day = Closed(DAY(2026, 10, 28), DAY(2026, 10, 28), "inspection")
    year = Calendar(TERMS, (HALF_TERM, day), None)
    assert year.closed_reason(DAY(2026, 10, 28)) == "half term"  # what stands first is told
    assert year.closed_reason(DAY(2026, 10, 31)) == "weekend"
    assert year.week_letter(DAY(2026, 11, 2)) == ""


def test_a_term_that_begins_in_the_middle_of_a_week_counts_that_week():
    assert YEAR.week_number(DAY(2026, 9, 3)) == 1
    assert YEAR.week_start(1) == DAY(2026, 9, 3)
    assert YEAR.week_number(DAY(2026, 9, 7)) == 2
    assert YEAR.week_start(YEAR.weeks + 1) is None
    assert YEAR.week_start(0) is None


def test_a_topic_is_current_until_the_next_begins(folder):
    path = folder / "schemes" / "year-8.toml"
    path.write_text(SCHEME + '[[topics]]\ntopic = "ratio.simplest-form"\ntaught = 2026-10-05\n')
    scheme = read_folder(folder, KNOWN, {}).schemes["year-8"]
    assert scheme.current(DAY(2026, 9, 4)) is None
    assert scheme.current(DAY(2026, 10, 4)) == "ratio.share"
    assert scheme.current(DAY(2026, 10, 5)) == "ratio.simplest-form"
    assert scheme.coming(DAY(2026, 9, 7), DAY(2026, 9, 30)) == ("ratio.share",)


def test_schemes_that_nobody_follows_are_checked_as_well(folder):
    (folder / "schemes" / "year-9.toml").write_text(SCHEME.replace("ratio.share", "ratio.shar"))
    assert any("year-9.toml:3 There is no topic ‘ratio.shar’" in fault for fault in faults(folder))
