"""What a pack is asked to be: typed before planned before the class's own."""

import datetime
from dataclasses import replace
from pathlib import Path

import pytest

from itembank.cli.pack import refuse_with_from
from itembank.desk.serving.start import desk_at
from itembank.errors import ItembankError
from itembank.planning.calendar.days import usual_seed
from itembank.planning.department.department import read_department
from itembank.planning.department.large_copies import LargePrint
from itembank.planning.department.pack_request import PackRequest, PlannedTopic
from itembank.planning.department.question_sources import QuestionSources, StatedSources
from itembank.work.pack import settled_request as settling
from itembank.work.pack.make import folder_of, make_pack
from itembank.work.places import output_home, packs_place
from itembank.work.usual_home import home_near
from tests.packs.bank_files import OWN, bank, sums

LARKHYTHE = read_department(Path(__file__).parents[2] / "banks" / "larkhythe")
KNOWN = tuple({topic for group in LARKHYTHE.classes for topic in group.topics})
TODAY = datetime.date(2026, 11, 30)
PLAN = PackRequest(
    topics=(PlannedTopic("ratio.share"), PlannedTopic("ratio.combine", 2)),
    class_name="9S",
    title="Planned",
    questions=6,
    seed=3,
    large_print=LargePrint.copies(1),
)


def typed(topics=(), banks=(), questions_from=None, signed_only=None, **stated):
    """Return a request as somebody types it."""
    stated_sources = StatedSources(tuple(banks) or None, questions_from, None, signed_only)
    return PackRequest(
        topics=tuple(map(PlannedTopic, topics)), stated_sources=stated_sources, **stated
    )


def settle(given=None, plan=None, department=LARKHYTHE):
    return settling.settle(given or typed(), plan, department, KNOWN, TODAY)


def test_with_nothing_typed_the_department_says_all():
    found = settle()
    assert (found.school, found.class_name, found.date) == ("Larkhythe School", "8K", TODAY)
    assert found.title == "Sharing in a ratio"
    assert [topic.id for topic in found.topics] == list(LARKHYTHE.find_class("8K").topics)
    assert (found.questions, found.follow_up, found.variants) == (8, 10, 1)
    assert found.seed == usual_seed("8K", TODAY, "Sharing in a ratio")
    assert folder_of(found) == "8K-2026-11-30"


@pytest.mark.parametrize(
    ("topics", "title"),
    [
        (("equations.one-step",), "One-step equations"),
        (("fractions.add-unlike",), "Fractions"),  # its own title is too long for a slide
        (("ratio.share", "equations.one-step", "ratio.combine"), "Ratio and equations"),
    ],
)
def test_a_class_s_title_is_not_put_over_other_topics(topics, title):
    assert settle(typed(topics=topics)).title == title
    assert settle(typed(topics=topics, title="Mine")).title == "Mine"
    assert settle(typed(topics=topics), PLAN).title == "Planned"


def test_typed_before_planned_before_the_class():
    planned = settle(plan=PLAN)
    assert (planned.class_name, planned.title, planned.questions) == ("9S", "Planned", 6)
    assert (planned.seed, planned.large_print, planned.paper) == (3, PLAN.large_print, "cream")
    assert planned.topics == PLAN.topics
    found = settle(
        typed(class_name="7m", title="Typed", topics=("ratio.share",), questions=4, seed=9), PLAN
    )
    assert (found.class_name, found.title, found.questions, found.seed) == ("7M", "Typed", 4, 9)
    assert found.topics == (PlannedTopic("ratio.share"),)


def test_what_a_class_says_of_paper_is_in_each_of_its_packs():
    found = settle(typed(class_name="9S"))
    assert (found.large_print.seats, found.paper, found.print_tint) == (
        ("A3", "C5"),
        "cream",
        False,
    )
    other = settle(typed(class_name="9S", large_print=LargePrint.copies(1), print_tint=True))
    assert (other.large_print.seats, other.print_tint) == (("",), True)


def test_a_topic_typed_twice_or_in_capitals_is_one_topic():
    found = settle(typed(topics=("ratio.share", "Ratio.Share")))
    assert found.topics == (PlannedTopic("ratio.share"),)


def test_without_a_department_topics_are_enough():
    found = settle(typed(topics=("ratio.share",)), department=None)
    assert (found.school, found.class_name, found.questions) == ("", "Class", 8)
    with pytest.raises(ItembankError, match="no class to take topics from"):
        settle(department=None)


def test_a_plan_whose_topics_are_all_counted_needs_no_number_of_questions():
    counted = (PlannedTopic("ratio.share", 3), PlannedTopic("ratio.combine", 2))
    assert settle(plan=PackRequest(topics=counted)).questions == 5


@pytest.mark.parametrize(
    ("given", "words"),
    [
        (typed(class_name="8Z"), "no class 8Z"),
        (typed(topics=("ratio.shar",)), "Did you mean ratio.share"),
        (typed(questions=0), "1 to 20 questions, not 0"),
        (typed(questions=50), "1 to 20 questions, not 50"),
        (typed(questions=3), "need at least 4 questions, not 3"),
        (typed(follow_up=0), "follow-up sheet has 1 to 20"),
        (typed(variants=0), "1 to 6 versions, not 0"),
        (typed(seed=-1), "seed must be from 0"),
        (typed(paper="mauve"), "no paper ‘mauve’"),
        (typed(title=" "), "title is empty"),
        (typed(large_print=LargePrint(("A3", "G7"))), "seat G7, which the class does not have"),
        (typed(print_tint=True), "The paper is white"),
    ],
)
def test_faults(given, words):
    with pytest.raises(ItembankError, match=words):
        settle(given)


@pytest.mark.parametrize(
    ("day", "words"),
    [("31/11/2026", "not a day of the calendar"), ("next week", "not a date")],
)
def test_a_day_that_is_none(day, words, tmp_path):
    with pytest.raises(ItembankError, match=words):
        make_pack(typed(), tmp_path, day=day, department=LARKHYTHE.folder)
    assert not [*tmp_path.iterdir()]


def test_topics_that_do_not_fit_the_number_of_questions():
    with pytest.raises(ItembankError, match="need at least 3 questions, not 2"):
        settle(typed(questions=2), PLAN)
    only = replace(PLAN, topics=(PlannedTopic("ratio.share", 3),), questions=None)
    with pytest.raises(ItembankError, match="need exactly 3 questions, not 5"):
        settle(typed(questions=5), only)


def test_a_class_name_that_is_no_folder_name():
    for name in ("../8K", "", ".8K", "a class with a long name", "8K\u200b", "８K"):
        with pytest.raises(ItembankError, match="cannot be a class's name"):
            settle(typed(class_name=name, topics=("ratio.share",)), department=None)


def test_a_pack_made_again_is_not_changed():
    refuse_with_from(typed(), None, None, None)
    with pytest.raises(ItembankError, match="--class and --topic cannot change"):
        refuse_with_from(typed(class_name="8K", topics=("ratio.share",)), None, None, None)
    with pytest.raises(ItembankError, match="--plan"):
        refuse_with_from(typed(), None, Path("plan.toml"), None)


def test_where_packs_go(tmp_path):
    project = tmp_path / "project"
    inside = project / "banks" / "larkhythe"
    inside.mkdir(parents=True)
    (tmp_path / "output").mkdir()
    assert output_home(inside) == inside
    (project / ".git").mkdir()
    assert output_home(inside) == inside
    (project / "output").mkdir()
    assert output_home(inside) == project / "output"
    (inside / "output").mkdir()
    assert output_home(inside) == inside / "output"


def test_terminal_and_desk_put_packs_in_one_place_wherever_they_are_started(tmp_path, monkeypatch):
    home = tmp_path / "maths"
    (home / "schemes").mkdir(parents=True)
    (home / "department.toml").touch()
    elsewhere = tmp_path / "elsewhere"
    (elsewhere / "output").mkdir(parents=True)
    for folder, named in (
        (home, None),
        (home / "schemes", None),
        (tmp_path, Path("maths")),
        (tmp_path, Path("maths/department.toml")),
        (elsewhere, home),
    ):
        monkeypatch.chdir(folder)
        assert packs_place(named) == desk_at(home_near(named)).packs == home
    (tmp_path / "output").mkdir()  # as in a copy of this project that is no checkout
    monkeypatch.chdir(tmp_path)
    assert packs_place(Path("maths")) == desk_at(home).packs == tmp_path / "output"
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("USERPROFILE", str(tmp_path))
    assert packs_place(Path("maths")) == desk_at(home).packs == home
    monkeypatch.chdir(elsewhere)
    assert packs_place() == elsewhere / "output"  # no department, as for a pack of one's own topics


# Where questions come from


def test_what_is_typed_about_the_source_comes_first(tmp_path):
    own = bank(tmp_path / "own", {OWN: sums(3, "core")})
    other = bank(tmp_path / "other", {OWN: sums(3, "core")}, "other")
    group = replace(
        LARKHYTHE.classes[0], name="8K", stated_sources=StatedSources((own,), "both", "bank")
    )
    department = replace(
        LARKHYTHE, classes=(group,), stated_sources=StatedSources(prefer="generated")
    )
    assert settle(department=department).sources == QuestionSources((own,), "both", "bank", year=7)
    plan = PackRequest(stated_sources=StatedSources(prefer="generated"))
    assert settle(plan=plan, department=department).sources.prefer == "generated"
    given = typed(banks=(other,), questions_from="bank", signed_only=True)
    alone = QuestionSources((other,), "bank", "generated", True, year=7)
    assert settle(given, plan, department).sources == alone
    assert settle(typed(questions_from="generated"), None, department).sources.banks == (own,)


def test_a_topic_of_a_bank_may_be_typed_and_gives_its_title(tmp_path):
    own = bank(tmp_path / "own", {OWN: sums(3, "core")})
    found = settle(typed(banks=(own,), topics=(OWN,)), department=None)
    assert found.title == f"Title of {OWN}"
    with pytest.raises(ItembankError, match=f"Did you mean {OWN}"):
        settle(typed(banks=(own,), topics=("garden.bed",)), department=None)
    with pytest.raises(ItembankError, match=f"no topic ‘{OWN}’"):
        settle(typed(topics=(OWN,)), department=None)


def test_a_folder_that_is_no_bank_is_told():
    with pytest.raises(ItembankError, match="There is no folder"):
        settle(typed(banks=(Path("no-such-bank"),)))


def test_banks_do_not_change_a_pack_made_again(tmp_path):
    with pytest.raises(ItembankError, match="--bank and --signed-only cannot change"):
        refuse_with_from(typed(banks=(tmp_path,), signed_only=True), None, None, None)


def test_a_title_takes_no_name_of_a_person():
    with pytest.raises(ItembankError, match="‘Sam’ looks like the name"):
        settle(typed(title="Ratio with Sam", topics=("ratio.share",)), department=None)
