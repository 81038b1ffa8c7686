"""The teacher's hand: each change does what it says, and leaves everything else as it was."""

import datetime
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.cli.week_changes import read_changes, read_lesson_name
from itembank.errors import ItembankError
from itembank.items.topics.registry import find_item
from itembank.planning.calendar.scheme import Scheme, Taught
from itembank.planning.week.earlier_weeks import topic_states
from itembank.planning.week.lesson_meant import find_lesson, find_question
from itembank.planning.week.week_changes import Another, Instead
from itembank.planning.week.week_choice import Hold, Known, choose_week
from itembank.planning.week.week_edit import Editor
from itembank.planning.week.week_plan import PlannedLesson, WeekPlan

DAY = datetime.date
MONDAY = DAY(2026, 11, 16)
TAUGHT = (
    "fractions.equivalent",
    "fractions.lowest-terms",
    "fractions.order",
    "fractions.add-like",
    "equations.one-step",
    "equations.substitution",
    "fractions.of-quantity",
    "ratio.simplest-form",
)
SCHEME = Scheme(
    "year-8",
    8,
    tuple(Taught(name, DAY(2026, 9, 7) + 7 * n * DAY.resolution) for n, name in enumerate(TAUGHT)),
)
EVERY = (*TAUGHT, "ratio.share", "ratio.combine")
STATES = topic_states(SCHEME, {}, {}, (), MONDAY)
KNOWN = Known(STATES, SCHEME, {})


def topic_of(address):
    return find_item(address).topic


def base():
    """Return a week of three lessons of six questions, two of them on one day."""
    places = [(MONDAY, "1"), (DAY(2026, 11, 17), "3"), (DAY(2026, 11, 17), "5")]
    lessons = [PlannedLesson(date, period, "Order", 6, 9) for date, period in places]
    made = choose_week(lessons, [Hold({})] * 3, KNOWN)
    return WeekPlan(
        "8K",
        MONDAY,
        tuple(
            replace(lesson, asked=tuple(f"{name}/core/{n}" for name in lesson.counts for n in (3,)))
            for lesson in made
        ),
    )


PLAN = base()
MON = PLAN.lessons[0]
MON_TOPICS = tuple(MON.counts)
FREE = next(name for name in TAUGHT if name not in MON.counts)


def edited(plan=PLAN, **texts):
    """Return a plan with changes as a teacher types them."""
    typed = {name: (text,) if isinstance(text, str) else text for name, text in texts.items()}
    return Editor(plan, KNOWN, EVERY, topic_of).apply(read_changes(typed, MONDAY))


def others_stay(made, *changed):
    """Assert that no lesson but those in `changed` has changed at all."""
    for place, (new, old) in enumerate(zip(made.lessons, PLAN.lessons, strict=True)):
        assert (new == old) == (place not in changed), place


def test_the_week_to_begin_with():
    assert [sum(lesson.counts.values()) for lesson in PLAN.lessons] == [6, 6, 6]
    assert all(len(lesson.counts) > 2 for lesson in PLAN.lessons)


def test_pin_a_topic():
    made = edited(pin=f"mon {FREE}")
    others_stay(made, 0)
    (pinned,) = [topic for topic in made.lessons[0].topics if topic.pinned]
    assert (pinned.topic, pinned.count) == (FREE, 1)
    assert "pinned by you" in pinned.why
    # One of the others makes room; those that stay keep their order and their reasons.
    rest = [topic for topic in made.lessons[0].topics if not topic.pinned]
    assert sum(one.count for one in rest) == 5
    assert [topic for topic in MON.topics if topic in rest] == rest


def test_pin_a_number_of_questions_and_one_from_outside_the_scheme():
    made = edited(pin=f"mon {FREE} 3").lessons[0]
    assert made.counts[FREE] == 3
    assert sum(made.counts.values()) == 6
    outside = edited(pin="mon ratio.combine").lessons[0]
    why = next(topic.why for topic in outside.topics if topic.topic == "ratio.combine")
    assert why == "your choice, not in the scheme"


def test_a_topic_from_outside_comes_in_no_lesson_but_the_one_it_was_wanted_in():
    few = replace(KNOWN, topics=KNOWN.topics[:2])  # so that every other topic would be welcome
    holds = [Hold({"ratio.combine": 1}), Hold({}), Hold({})]
    mon, *others = choose_week(PLAN.lessons, holds, few)
    assert mon.counts["ratio.combine"] == 1
    assert all(set(lesson.counts) == set(TAUGHT[:2]) for lesson in others)


def test_pin_what_is_there_already_keeps_it():
    made = edited(pin=f"mon {MON_TOPICS[0]}")
    assert made.lessons[0].counts == MON.counts
    assert [topic.topic for topic in made.lessons[0].topics if topic.pinned] == [MON_TOPICS[0]]
    others_stay(made, 0)


def test_pin_an_item():
    address = f"{FREE}/core/12"
    made = edited(pin=f"mon {address}")
    others_stay(made, 0)
    assert made.lessons[0].items == (address,)
    assert made.lessons[0].counts[FREE] == 1
    again = edited(made, pin=f"mon {address}")
    assert again.lessons[0].items == (address,)
    two = edited(made, pin=f"mon {FREE}/core/13").lessons[0]
    assert two.items == (address, f"{FREE}/core/13")
    assert two.counts[FREE] == 2


def test_a_pin_lifts_a_ban():
    banned = edited(ban=f"mon {FREE}")
    assert banned.lessons[0].never == (FREE,)
    made = edited(banned, pin=f"mon {FREE}").lessons[0]
    assert (made.never, made.counts[FREE]) == ((), 1)


def test_pins_that_leave_no_room():
    with pytest.raises(ItembankError, match="6 questions, so there is no room for 7 on"):
        edited(pin=f"mon {FREE} 7")
    with pytest.raises(ItembankError, match="4 of them pinned to other topics, so there is no"):
        edited(pin=(f"mon {FREE} 4", "mon ratio.share 3"))


def test_ban_a_topic_for_a_lesson_and_for_the_week():
    name = MON_TOPICS[1]
    made = edited(ban=f"mon {name}")
    others_stay(made, 0)
    assert name not in made.lessons[0].counts
    assert sum(made.lessons[0].counts.values()) == 6
    kept = [topic for topic in MON.topics if topic.topic != name]
    assert [topic for topic in made.lessons[0].topics if topic.topic in MON.counts] == [
        next(new for new in made.lessons[0].topics if new.topic == one.topic) for one in kept
    ]
    week = edited(ban=name)
    for new, old in zip(week.lessons, PLAN.lessons, strict=True):
        assert name not in new.counts
        assert new.never == (name,)
        if name not in old.counts:
            assert new.counts == old.counts


def test_ban_an_item():
    address = MON.asked[2]
    made = edited(ban=f"mon {address}")
    others_stay(made, 0)
    one = made.lessons[0]
    assert one.never == (address,)
    assert one.asked == tuple(a for a in MON.asked if a != address)
    assert one.counts == MON.counts  # the topic stays, with another question
    pinned = edited(pin=f"mon {FREE}/core/12")
    assert edited(pinned, ban=f"mon {FREE}/core/12").lessons[0].items == ()
    assert edited(pinned, ban=f"mon {FREE}").lessons[0].items == ()


def test_a_ban_of_everything_is_told():
    with pytest.raises(ItembankError):
        edited(ban=EVERY)


def test_swap_topics_of_two_lessons():
    one = next(name for name in MON.counts if name not in PLAN.lessons[1].counts)
    other = next(name for name in PLAN.lessons[1].counts if name not in MON.counts)
    made = edited(swap=f"mon {one} tue/3 {other}")
    others_stay(made, 0, 1)
    for new, old, gone, come in (
        (made.lessons[0], MON, one, other),
        (made.lessons[1], PLAN.lessons[1], other, one),
    ):
        places = [come if name == gone else name for name in old.counts]
        assert list(new.counts) == places  # in the place of the one that went
        assert next(row for row in new.topics if row.topic == come).pinned
        assert [row for row in new.topics if row.topic != come] == [
            row for row in old.topics if row.topic != gone
        ]
        assert new.counts[come] == old.counts[gone]


def test_instead():
    made = edited(instead=f"mon {MON_TOPICS[0]} ratio.share")
    others_stay(made, 0)
    assert list(made.lessons[0].counts) == ["ratio.share", *MON_TOPICS[1:]]
    assert made.lessons[0].topics[0].pinned


@given(st.permutations(range(len(MON.asked))))
@settings(max_examples=20, deadline=None)
def test_order_of_questions(places):
    made = edited(order=f"mon {' '.join(str(place + 1) for place in places)}")
    assert made.lessons[0].asked == tuple(MON.asked[place] for place in places)
    assert replace(made.lessons[0], asked=MON.asked) == MON
    assert made.lessons[1:] == PLAN.lessons[1:]


@given(st.permutations(MON_TOPICS))
@settings(max_examples=20, deadline=None)
def test_order_of_topics(names):
    made = edited(order=f"mon {' '.join(names)}")
    assert tuple(made.lessons[0].counts) == tuple(names)
    assert replace(made.lessons[0], topics=MON.topics) == MON
    assert made.lessons[1:] == PLAN.lessons[1:]


@pytest.mark.parametrize("number", [1, 4, 6, 9])
def test_more_or_fewer_questions(number):
    made = edited(questions=f"mon {number}")
    one = made.lessons[0]
    assert one.questions == sum(one.counts.values()) == number
    others_stay(made, *([0] if number != 6 else []))
    if number < 6:
        assert set(one.counts) <= set(MON.counts)  # none but those that were there
    else:
        assert all(one.counts[name] >= count for name, count in MON.counts.items())
    week = edited(questions=str(number))
    assert [lesson.questions for lesson in week.lessons] == [number] * 3


def test_fewer_questions_keep_what_is_pinned():
    pinned = edited(pin=f"mon {FREE} 2")
    made = edited(pinned, questions="mon 3").lessons[0]
    assert made.counts[FREE] == 2
    with pytest.raises(ItembankError):
        edited(pinned, questions="mon 1")


def test_changes_together_follow_one_another():
    made = edited(questions="mon 4", ban=f"mon {MON_TOPICS[0]}", pin="mon ratio.share 2")
    others_stay(made, 0)
    one = made.lessons[0]
    assert one.questions == sum(one.counts.values()) == 4
    assert one.counts["ratio.share"] == 2
    assert MON_TOPICS[0] not in one.counts


def test_changes_that_contradict_one_another():
    # What is pinned wins over what is banned in the same breath, as it is done last.
    made = edited(ban=f"mon {FREE}", pin=f"mon {FREE}").lessons[0]
    assert made.counts[FREE] == 1
    with pytest.raises(ItembankError, match="has no"):
        edited(ban=f"mon {MON_TOPICS[0]}", instead=f"mon {MON_TOPICS[0]} ratio.share")


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        (
            "pin",
            "wed ratio.share",
            "no such lesson on Wednesday 18 November. The lessons are Mon 16",
        ),
        (
            "pin",
            "tue ratio.share",
            "There are 2 lessons on Tuesday 17 November. Add the period, as",
        ),
        ("pin", "tue/4 ratio.share", "no such lesson on Tuesday"),
        ("pin", "2026-11-23 ratio.share", "no such lesson on Monday 23 November"),
        ("pin", "2026-13-01 ratio.share", "is not a day of the calendar"),
        ("pin", "ratio.share", "Write a day and a topic or an address"),
        ("pin", "ratio.share mon", "‘ratio.share’ is not a day. Write it as in: tue"),
        ("pin", "mon ratio.shar", "Did you mean ratio.share"),
        ("pin", "mon ratio.share many", "Write a day and a topic"),
        ("pin", "mon ratio.share 0", "1 question on ratio.share is the least"),
        ("pin", "mon ratio.share/core/99999", "there is no such item"),
        ("ban", "", "Write a topic or an address"),
        ("ban", "mon ratio.shar", "Did you mean ratio.share"),
        ("ban", "mon ratio.share/hard/1", "the tiers are"),
        ("swap", "mon ratio.share", "Write two days"),
        ("swap", "mon ratio.share mon fractions.order", "Both are in the same lesson"),
        (
            "swap",
            "mon ratio.combine tue/3 ratio.share",
            "Monday 16 November, period 1 has no ratio.",
        ),
        ("instead", "mon ratio.share", "Write a day, a topic, and the one to come instead"),
        ("instead", f"mon {MON_TOPICS[0]} {MON_TOPICS[1]}", f"has {MON_TOPICS[1]} already"),
        ("instead", f"mon {MON_TOPICS[0]} ratio.shar", "Did you mean ratio.share"),
        ("order", "mon 1 2", "Write each number from 1 to 6 once"),
        ("order", "mon 1 1 2 3 4 5", "Write each number from 1 to 6 once"),
        ("order", "mon 1 2 3 4 5 6 x", "Write each number from 1 to 6 once"),
        ("order", "", "is not a day"),
        ("questions", "mon", "Write a number"),
        ("questions", "mon 0", "A starter has 1 to 20 questions"),
        ("questions", "21", "A starter has 1 to 20 questions"),
        ("questions", "mon tue 3", "Write a number"),
    ],
)
def test_what_makes_no_sense_is_told_with_what_was_typed(name, text, said):
    with pytest.raises(ItembankError) as caught:
        edited(**{name: text})
    message = str(caught.value)
    assert message.startswith(f"--{name} ‘{text}’: ")
    assert said in message


def test_all_that_makes_no_sense_is_told_at_once():
    with pytest.raises(ItembankError) as caught:
        edited(pin=("mon ratio.shar", "wed ratio.share"), ban="nothing", questions="0")
    assert len(str(caught.value).splitlines()) == 4


@pytest.mark.parametrize(
    ("word", "place"),
    [
        ("mon", 0),
        ("Monday", 0),
        ("MON/1", 0),
        ("2026-11-16", 0),
        ("16/11/2026", 0),
        ("tue/5", 2),
        ("17/11/2026/5", 2),
        ("2026-11-17/3", 1),
        ("mo", None),
        ("ratio.share", None),
        ("8", None),
    ],
)
def test_words_for_a_day(word, place):
    name = read_lesson_name(word, MONDAY)
    assert (None if name is None else find_lesson(PLAN, name)) == place


def test_commas_and_capitals_are_as_good():
    assert edited(order="mon 2,1,3, 4,5,6") == edited(order="mon 2 1 3 4 5 6")
    assert edited(pin="Mon Ratio.Share") == edited(pin="mon ratio.share")


def test_nothing_to_change():
    assert edited() == PLAN


def test_another_question_comes_in_its_own_place_and_stays():
    old, new = MON.asked[2], MON.asked[2].replace("/3", "/8")
    made = edited(another=f"mon {old} {new}")
    others_stay(made, 0)
    lesson = made.lessons[0]
    assert lesson.asked == (*MON.asked[:2], new, *MON.asked[3:])
    assert lesson.items == (new,)
    assert lesson.counts == MON.counts
    assert [topic.topic for topic in lesson.topics if topic.pinned] == [topic_of(new)]


def test_another_question_may_be_on_another_topic():
    old, new = MON.asked[0], f"{FREE}/core/8"
    lesson = edited(another=f"mon {old} {new}").lessons[0]
    assert lesson.asked == (new, *MON.asked[1:])
    assert topic_of(old) not in lesson.counts
    assert lesson.counts[FREE] == 1
    assert sum(lesson.counts.values()) == 6


def test_another_question_lifts_a_ban_of_the_one_that_is_wanted():
    old, new = MON.asked[1], MON.asked[1].replace("/3", "/8")
    assert edited(ban=f"mon {new}", another=f"mon {old} {new}").lessons[0].never == ()


def test_a_question_is_named_by_its_number_or_its_topic_too():
    new = MON.asked[2].replace("/3", "/8")
    by_address = edited(another=f"mon {MON.asked[2]} {new}")
    assert edited(another=f"mon 3 {new}") == by_address
    assert edited(another=f"mon {topic_of(new).title()} {new}") == by_address
    # On a topic with two questions only a number says which is meant.
    two = replace(MON, asked=(*MON.asked[:5], new))
    assert find_question(two, "6", topic_of) == new
    with pytest.raises(ItembankError, match=r"asks 2 questions on .* by its number, 3 or 6\."):
        find_question(two, topic_of(new), topic_of)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (f"mon {MON.asked[0]} {MON.asked[1]}", f"asks {MON.asked[1]} already"),
        (f"mon {FREE}/core/3 {FREE}/core/4", f"does not ask {FREE}/core/3"),
        (f"mon {FREE} {FREE}/core/4", f"does not ask {FREE}"),
        (f"mon 7 {FREE}/core/4", r"does not ask question 7\."),
        (f"mon 0 {FREE}/core/4", r"does not ask question 0\."),
        (f"mon {MON.asked[0]} {FREE}/core/99999999", "99999999"),
        ("mon", "Write a day, the number or address of a question"),
    ],
)
def test_another_question_that_makes_no_sense(text, said):
    with pytest.raises(ItembankError, match=said):
        edited(another=text)


def test_a_pin_of_a_question_lifts_the_ban_of_its_topic():
    banned = edited(ban=f"mon {FREE}")
    made = edited(banned, pin=f"mon {FREE}/core/12").lessons[0]
    assert (made.never, made.items, made.counts[FREE]) == ((), (f"{FREE}/core/12",), 1)


def test_a_topic_that_comes_instead_of_another_is_barred_no_more():
    banned = edited(ban=f"mon {FREE}")
    old = next(iter(banned.lessons[0].counts))
    change = Instead(read_lesson_name("mon", MONDAY), old, FREE)
    made = Editor(banned, KNOWN, EVERY, topic_of).apply([change]).lessons[0]
    assert (made.never, made.counts[FREE]) == ((), banned.lessons[0].counts[old])


def test_pins_may_fill_a_starter_to_its_last_question():
    made = edited(pin=f"mon {FREE} 6").lessons[0]
    assert made.counts == {FREE: 6}


def test_what_stands_for_a_question_that_was_held_is_held_as_well():
    held = edited(pin=f"mon {FREE}/core/12")
    asked = replace(held.lessons[0], asked=(*held.lessons[0].asked, f"{FREE}/core/12"))
    held = replace(held, lessons=(asked, *held.lessons[1:]))
    monday = read_lesson_name("mon", MONDAY)
    change = Another(monday, f"{FREE}/core/12", f"{FREE}/core/14", held=False)
    made = Editor(held, KNOWN, EVERY, topic_of).apply([change]).lessons[0]
    assert made.items == (f"{FREE}/core/14",)
    # And what nobody chose is not held by giving way.
    loose = Another(monday, MON.asked[0], MON.asked[0].replace("/3", "/5"), held=False)
    assert Editor(PLAN, KNOWN, EVERY, topic_of).apply([loose]).lessons[0].items == ()


def test_the_same_changes_make_the_same_week_however_they_were_stated():
    changes = read_changes({"ban": (f"mon {FREE}",), "pin": (f"mon {FREE}",)}, MONDAY)
    made = [Editor(PLAN, KNOWN, EVERY, topic_of).apply(order) for order in (changes, changes[::-1])]
    assert made[0] == made[1]
    assert made[0].lessons[0].counts[FREE] == 1
