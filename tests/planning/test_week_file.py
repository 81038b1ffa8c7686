"""A week's plan file: what is written is read back, and every fault is told with its line."""

import datetime
import tomllib
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.items.item import Tier
from itembank.items.topics.registry import find_item, find_topic
from itembank.planning.calendar.calendar import read_calendar
from itembank.planning.calendar.days import usual_seed
from itembank.planning.choosing.topic_reason import Again, Cause, Occasion, Reason
from itembank.planning.department.department import MOST_QUESTIONS, read_department
from itembank.planning.department.plan_file import MOST_SEED
from itembank.planning.department.sheet_items import LessonSheets, SheetItems
from itembank.planning.week.week_file import read_week_plan
from itembank.planning.week.week_plan import (
    PlannedLesson,
    WeekPlan,
    WeekTopic,
    plan_text,
    written_anew,
)
from itembank.text.characters import hidden, look_alikes
from tests.planning.test_any_text import PIECES

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
DEPARTMENT = read_department(LARKHYTHE)
CALENDAR = read_calendar(LARKHYTHE)
DAY = datetime.date
WEEK = DAY(2026, 11, 16)
TOPICS = ("ratio.share", "fractions.order", "equations.one-step", "ratio.simplest-form")
slow = settings(
    max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None
)


def topic_of(address):
    return find_item(address).topic


def read(path, class_name=None):
    return read_week_plan(path, DEPARTMENT, CALENDAR, TOPICS, topic_of, class_name)


def lesson(date=WEEK, period="1", topics=(("ratio.share", 2), ("fractions.order", 1)), **more):
    why = Reason(date, Cause.PAST, DAY(2026, 9, 7))
    rows = tuple(WeekTopic(name, count, why) for name, count in topics)
    made = PlannedLesson(date, period, "Sharing", sum(n for _, n in topics), 7, rows)
    return replace(made, **more)


def plan(*lessons, name="8K"):
    return WeekPlan(name, WEEK, lessons or (lesson(), lesson(DAY(2026, 11, 17), "3")))


def written(tmp_path, made=None, name="plan.toml"):
    path = tmp_path / name
    path.write_text(plan_text(made or plan()), encoding="utf-8")
    return path


words = st.text(
    st.characters(codec="utf-8", exclude_characters="\r\n", exclude_categories=("Cs",)),
    min_size=1,
    max_size=60,
).filter(lambda text: text == text.strip() and not [*hidden(text), *look_alikes(text)])


@st.composite
def addresses(draw, topic, tier=None):
    tier = draw(st.sampled_from(list(Tier))) if tier is None else tier
    index = draw(st.integers(0, len(find_topic(topic).spaces[tier]) - 1))
    return f"{topic}/{tier.value}/{index}"


@st.composite
def sheets(draw, topics):
    if draw(st.booleans()):
        return LessonSheets()
    made, seen = [], set()
    for tier in Tier:
        found = draw(
            st.lists(
                st.sampled_from(topics).flatmap(lambda one, tier=tier: addresses(one, tier)),
                min_size=3,
                max_size=6,
                unique=True,
            )
        )
        assert not seen & set(found)
        seen |= set(found)
        opens = draw(st.integers(0, 2))
        made.append(SheetItems(tier.value, tuple(found[:opens]), tuple(found[opens:])))
    return LessonSheets(tuple(topics), tuple(made), draw(st.integers(0, 20)))


days = st.dates(DAY(2026, 1, 1), DAY(2027, 12, 31))
occasions = st.builds(Occasion, days, scored=st.booleans()) | st.builds(
    Occasion, days, st.integers(0, 100), st.integers(1, 40), st.booleans()
)


def reasons(date):
    """Return every kind of reason for a topic in a lesson, with a teacher's words or without."""
    return st.builds(
        Reason,
        st.just(date),
        st.sampled_from(Cause),
        st.none() | days,
        st.none() | occasions,
        st.none() | occasions,
        st.lists(words, max_size=2).map(tuple),
        st.none() | st.builds(Again, days, st.integers(0, 20)),
        st.just("") | words,
    )


@st.composite
def lessons(draw, date, period):
    names = draw(st.lists(st.sampled_from(TOPICS), min_size=1, unique=True))
    pinned = st.booleans()
    rows = tuple(
        WeekTopic(name, draw(st.integers(1, 4)), draw(reasons(date)), draw(pinned))
        for name in names
    )
    asked, items = [], []
    for row in rows:
        own = addresses(row.topic)
        some = draw(st.lists(own, max_size=row.count, unique=True))
        asked += some
        items += [one for one in some if draw(st.booleans())]
    others = [name for name in TOPICS if name not in names]
    never = draw(st.lists(st.sampled_from(others), unique=True)) if others else []
    extra = draw(st.lists(addresses("ratio.share"), max_size=2, unique=True))
    never += [one for one in extra if one not in asked]
    return PlannedLesson(
        date,
        period,
        draw(words),
        sum(row.count for row in rows),
        draw(st.integers(0, MOST_SEED)),
        rows,
        tuple(items),
        tuple(never),
        tuple(draw(st.permutations(asked))),
        draw(sheets(names)),
    )


@st.composite
def plans(draw):
    places = draw(
        st.lists(
            st.tuples(st.integers(0, 4), st.sampled_from("12345")),
            min_size=1,
            max_size=4,
            unique=True,
        )
    )
    made = [draw(lessons(WEEK + datetime.timedelta(days=day), p)) for day, p in sorted(places)]
    return WeekPlan("8K", WEEK, tuple(made))


@slow
@given(made=plans())
def test_what_is_written_is_read_back(tmp_path, made):
    assert read(written(tmp_path, made)) == made


@slow
@given(made=plans(), data=st.data())
def test_a_damaged_plan_is_read_or_refused_with_lines(tmp_path, made, data):
    path = written(tmp_path, made)
    text = path.read_text(encoding="utf-8")
    start = data.draw(st.integers(0, len(text)))
    length = data.draw(st.integers(0, 12))
    text = text[:start] + data.draw(PIECES) + text[start + length :]
    path.write_bytes(text.encode())
    try:
        assert isinstance(read(path), WeekPlan)
    except FileFaults as error:
        for fault in error.faults:
            assert fault.message
            assert 0 <= fault.line <= len(text.splitlines()) + 1


def faults(path, class_name=None):
    with pytest.raises(FileFaults) as caught:
        read(path, class_name)
    assert {fault.file for fault in caught.value.faults} == {str(path)}
    lines = path.read_text().splitlines()
    return [(lines[one.line - 1] if one.line else "", one.message) for one in caught.value.faults]


ORDER = 'topic = "fractions.order"'


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


def test_what_the_teacher_leaves_out_has_a_usual_value(tmp_path):
    path = tmp_path / "plan.toml"
    path.write_text(
        'class = "8k"\nweek = 2026-11-16\n[[lessons]]\ndate = 2026-11-18\nquestions = 2\n'
        'topics = ["ratio.share", "fractions.order"]\n'
    )
    found = read(path)
    assert found.class_name == "8K"
    (one,) = found.lessons
    assert (one.period, one.title) == ("1", "Starter")
    assert one.seed == usual_seed("8K", DAY(2026, 11, 18), "Starter")
    # What has no reason was written by the teacher, so it stays when the week is planned anew.
    chosen = Reason(DAY(2026, 11, 18))
    assert one.topics == tuple(
        WeekTopic(name, 1, chosen, True) for name in ("ratio.share", "fractions.order")
    )


def test_what_no_longer_fits_of_what_was_asked_makes_room(tmp_path):
    asked = ("ratio.share/core/1", "ratio.share/core/2", "fractions.order/core/3")
    made = plan(lesson(asked=asked))
    text = plan_text(made)
    path = tmp_path / "plan.toml"
    path.write_text(text.replace("never = []", 'never = ["ratio.share/core/2"]'))
    assert read(path).lessons[0].asked == (asked[0], asked[2])
    text = text.replace("count = 2", "count = 1").replace("questions = 3", "questions = 2")
    path.write_text(text)
    assert read(path).lessons[0].asked == (asked[0], asked[2])
    # A question the teacher wants stands whatever the others were.
    path.write_text(text.replace("items = []", 'items = ["ratio.share/core/2"]'))
    assert read(path).lessons[0].asked == (asked[1], asked[2])


def made_sheets(*questions):
    rows = [
        SheetItems(tier.value, (), tuple(q.replace("TIER", tier.value) for q in questions))
        for tier in Tier
    ]
    return LessonSheets(("ratio.share", "fractions.order"), tuple(rows))


def test_sheets_of_a_lesson_that_was_taken_out_do_no_harm(tmp_path):
    both = plan(
        lesson(sheets=made_sheets("ratio.share/TIER/1")),
        lesson(DAY(2026, 11, 17), "3", sheets=made_sheets("ratio.share/TIER/2")),
    )
    path = tmp_path / "plan.toml"
    text = plan_text(both)
    start, end = text.index("[[lessons]]"), text.index("[[lessons]]\ndate = 2026-11-17")
    path.write_text(text[:start] + text[end:])
    assert read(path).lessons == both.lessons[1:]


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


def test_sheets_that_do_not_hold_together_are_left_to_be_chosen_anew(tmp_path):
    path = written(tmp_path, plan(lesson(sheets=made_sheets("ratio.share/TIER/1"))))
    text = path.read_text()
    path.write_text(text.replace("ratio.share/core/1", "ratio.share/support/1"))  # one twice
    assert not read(path).lessons[0].sheets
    path.write_text(text + text[text.rindex("[[sheets]]") :])
    assert "There are two [[sheets]] tables for 2026-11-16" in faults(path)[0][1]


def test_the_most_questions_are_allowed(tmp_path):
    full = plan(lesson(topics=(("ratio.share", MOST_QUESTIONS),)))
    assert read(written(tmp_path, full)) == full


def test_topic_of_is_asked_only_for_addresses(tmp_path):
    def none(address):
        raise ItembankError(f"{address} is gone.")

    path = written(tmp_path, plan(lesson(asked=("ratio.share/core/1",))))
    with pytest.raises(FileFaults, match=r"ratio.share/core/1 is gone"):
        read_week_plan(path, DEPARTMENT, CALENDAR, TOPICS, none)


KNOWN = Reason(
    WEEK, Cause.PAST, DAY(2026, 9, 7), Occasion(DAY(2026, 11, 9), 54, 26), needed_for=("Ratio",)
)


def with_reasons(tmp_path):
    """Return a plan's path and its text; two topics have different pasts."""
    topics = (
        WeekTopic("ratio.share", 2, KNOWN),
        WeekTopic("fractions.order", 1, replace(KNOWN, last=None, needed_for=())),
    )
    path = written(tmp_path, plan(replace(lesson(), topics=topics)))
    return path, path.read_text(encoding="utf-8")


def test_words_a_teacher_writes_stand_in_the_place_of_ours_and_are_never_read(tmp_path):
    path, text = with_reasons(tmp_path)
    ours = "taught 7 Sep, last seen 7 days ago, 54 % right then, needed today for Ratio"
    mine = "needed today for nothing, pinned by you, asks again what Tue asked: ask me"
    assert ours in text
    path.write_text(text.replace(ours, mine), encoding="utf-8")
    made = read(path).lessons[0].topics[0]
    assert made.reason == replace(KNOWN, own=mine)
    assert (made.why, made.pinned) == (mine, False)
    assert read(written(tmp_path, read(path))) == read(path)


def test_a_line_that_is_written_over_does_not_keep_the_reason_of_another_topic(tmp_path):
    path, text = with_reasons(tmp_path)
    line = next(row for row in text.splitlines() if "needed today for Ratio" in row)
    path.write_text(text.replace(line, line.replace("ratio.share", "equations.one-step")))
    made = read(path).lessons[0].topics[0]
    assert (made.topic, made.reason, made.pinned) == ("equations.one-step", Reason(WEEK), True)


def test_a_topic_that_is_pinned_by_hand_keeps_its_facts(tmp_path):
    path, text = with_reasons(tmp_path)
    path.write_text(text.replace("count = 2, why", "count = 2, pinned = true, why"))
    made = read(path).lessons[0].topics[0]
    assert (made.reason, made.pinned) == (KNOWN, True)


def test_a_plan_of_an_older_version_keeps_its_sentences(tmp_path):
    path, text = with_reasons(tmp_path)
    path.write_text(text[: text.index("\n# Below is why")], encoding="utf-8")
    before = read(path)
    assert before.lessons[0].topics[0].why.startswith("taught 7 Sep, last seen 7 days ago")
    assert not any(topic.pinned for topic in before.lessons[0].topics)
    assert read(written(tmp_path, before, "again.toml")) == before


def test_a_fault_in_what_is_kept_of_a_reason_has_its_line(tmp_path):
    path, text = with_reasons(tmp_path)
    path.write_text(text.replace("right = 54", "right = 540"), encoding="utf-8")
    with pytest.raises(FileFaults, match="must be from 0 to 100, not 540") as caught:
        read(path)
    (fault,) = caught.value.faults
    assert fault.line > text[: text.index("[[reasons]]")].count("\n")


NOTES = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Zl", "Zp"]), max_size=20)


@given(st.lists(st.tuples(st.integers(0, 400), NOTES, st.booleans()), max_size=6))
def test_what_a_person_noted_stays_when_a_plan_is_written_anew(notes):
    text = plan_text(plan(lesson()))
    lines = text.split("\n")
    noted = [f"# Note {k}: {note}".rstrip() for k, (_, note, _) in enumerate(notes)]
    for words, (place, _, beside) in zip(noted, notes, strict=True):
        place %= len(lines) - 1
        if beside and lines[place] and "#" not in lines[place]:
            lines[place] += f"  {words}"
        else:
            lines.insert(place, words)
    was = "\n".join(lines)
    # Where nothing else changed, the file is the same to the byte.
    assert written_anew(text, was) == was
    other = plan_text(plan(replace(lesson(), title="Another title", never=("ratio.share",))))
    found = written_anew(other, was)
    assert tomllib.loads(found) == tomllib.loads(other)
    assert all(words in found for words in noted)
    assert written_anew(other, found) == found
