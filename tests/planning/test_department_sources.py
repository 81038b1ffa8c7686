"""Where a department's questions come from: what it says, and what its classes say."""

from pathlib import Path

import pytest

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.planning.department.department import read_department
from itembank.planning.department.plan_file import read_plan
from itembank.planning.department.question_sources import QuestionSources, StatedSources
from tests.planning.department_samples import GOOD, KNOWN, department, faults

OWN = GOOD.replace('["ratio.share"]', '["ratio.share", "garden.beds"]')
BANK = """name = "larkhythe"
title = "Larkhythe School’s own questions"
"""
BEDS = """topic = "garden.beds"
title = "Garden beds"

[[items]]
id = "bed-1"
tier = "core"
prompt = "Work out {3 + 4}."
key = "7"
"""


def a_bank(folder: Path, topic: str = BEDS) -> Path:
    folder.mkdir(parents=True)
    (folder / "bank.toml").write_text(BANK, encoding="utf-8")
    (folder / "garden.beds.toml").write_text(topic, encoding="utf-8")
    return folder


def test_without_banks_nothing_is_stated_and_all_is_generated(tmp_path):
    one = department(tmp_path, GOOD).find_class()
    assert one.stated_sources == StatedSources()
    assert one.stated_sources.settle() == QuestionSources()


def test_a_class_overrides_what_the_department_says(tmp_path):
    a_bank(tmp_path / "questions")
    text = GOOD.replace(
        "\n[[classes]]",
        'banks = ["questions"]\nquestions_from = "both"\nsigned_only = true\n[[classes]]',
    )
    found = department(tmp_path, text + 'prefer = "generated"\nsigned_only = false\n')
    assert found.stated_sources.settle() == QuestionSources(
        (tmp_path / "questions",), "both", "bank", True
    )
    settled = found.find_class().stated_sources.settle()
    assert settled == QuestionSources((tmp_path / "questions",), "both", "generated", False)


def test_a_topic_of_a_bank_is_known_where_the_bank_is_named(tmp_path):
    a_bank(tmp_path / "questions")
    named = 'banks = ["questions"]\n'
    assert department(tmp_path, OWN + named).find_class().topics == ("ratio.share", "garden.beds")
    assert department(tmp_path, named + OWN).find_class().topics == ("ratio.share", "garden.beds")
    ((_, message),) = faults(tmp_path, OWN)
    assert "no topic ‘garden.beds’" in message
    ((_, message),) = faults(tmp_path, OWN.replace("beds", "beps") + named)
    assert "Did you mean garden.beds" in message


def test_banks_are_read_only_where_a_topic_is_unknown_otherwise(tmp_path):
    a_bank(tmp_path / "questions", "topic = ")
    named = 'banks = ["questions"]\n'
    assert department(tmp_path, GOOD + named).find_class().topics == ("ratio.share",)
    found = faults(tmp_path, OWN + named)
    assert all("no topic" not in message for _, message in found)
    with pytest.raises(FileFaults, match=r"garden\.beds\.toml"):
        department(tmp_path, OWN + named)
    assert read_department(tmp_path).school == "Larkhythe School"  # topics are not looked at


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('banks = ["none"]', "There is no folder"),
        ('banks = ["."]', "holds no bank.toml"),
        ('banks = ["questions", "questions"]', "listed twice"),
        ("banks = [3]", "its folder in quotation marks"),
        ('banks = "questions"', "list in square brackets"),
        ('questions_from = "banks"', "must be generated, bank or both, not ‘banks’"),
        ('prefer = "both"', "must be bank or generated"),
        ("signed_only = 1", "true or false"),
        ('question_from = "bank"', "Did you mean ‘question"),
    ],
)
def test_faults_of_the_source(tmp_path, text, words):
    a_bank(tmp_path / "questions")
    for place in (GOOD + text + "\n", text + "\n" + GOOD):
        ((line, message),) = faults(tmp_path, place)
        assert words in message
        assert line == place.splitlines().index(text) + 1


@pytest.mark.parametrize(
    ("stated", "words"),
    [
        (StatedSources(questions_from="bank"), "no bank is named"),
        (StatedSources(questions_from="both"), "no bank is named"),
        (StatedSources(signed_only=True), "carry no sign-off"),
        (StatedSources((Path("q"),), "generated", None, True), "carry no sign-off"),
        (StatedSources((Path("q"),), "banks"), "cannot come from ‘banks’"),
        (StatedSources((Path("q"),), "both", "mine"), "no preference ‘mine’"),
    ],
)
def test_settings_that_contradict_each_other(stated, words):
    with pytest.raises(ItembankError, match=words):
        stated.settle()


def test_who_asks_for_generated_questions_is_not_held_to_signed_ones():
    class_ = StatedSources((Path("q"),), "bank", None, True)
    assert StatedSources(questions_from="generated").over(class_).settle().signed_only is False
    assert StatedSources(prefer="bank").over(class_).settle().signed_only is True


def test_a_plan_names_banks_from_its_own_folder(tmp_path):
    a_bank(tmp_path / "plans" / "questions")
    path = tmp_path / "plans" / "plan.toml"
    path.write_text('topics = ["garden.beds"]\nbanks = ["questions"]\n', encoding="utf-8")
    plan = read_plan(path, KNOWN)
    assert plan.stated_sources.settle().banks == (path.parent / "questions",)
    path.write_text('topics = ["garden.beds"]\n', encoding="utf-8")
    with pytest.raises(FileFaults, match="no topic"):
        read_plan(path, KNOWN)
    assert read_plan(path, KNOWN, (path.parent / "questions",)).topic_ids == ("garden.beds",)
