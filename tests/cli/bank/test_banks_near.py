"""Commands that know the banks near the current folder."""

import json

import pytest

from tests.packs.bank_files import OWN, bank, item, sign, sums

pytestmark = pytest.mark.usefixtures("pages_outlined")

LOT = [*sums(12, "support"), *sums(12, "core", 50), *sums(12, "challenge", 80)]


@pytest.fixture
def near(away):
    """Stand in a department whose bank holds a topic of its own."""
    folder = bank(away / "questions", {OWN: [*LOT, item("person", "Which bed is best?", "12")]})
    sign(folder, "support-20")
    text = f'''school = "Larkhythe School"
banks = ["questions"]

[[classes]]
name = "8K"
year = 8
title = "Beds"
topics = ["{OWN}"]
questions = 4
follow_up = 3
'''
    (away / "department.toml").write_text(text, encoding="utf-8")
    return folder


def test_a_pack_from_the_department_s_bank(said, near):
    done = said("pack", "--date", "2026-11-30")
    assert (done.status, done.err) == (0, "")
    assert "drawn from the bank larkhythe" in done.out
    assert "Of 37 questions there on these topics 1 was left out: 1 needs a person." in done.out
    pack = json.loads((near.parent / "8K-2026-11-30" / "pack.json").read_text(encoding="utf-8"))
    assert pack["drawing"]["questions_from"] == "both"
    again = said("pack", "--from", "8K-2026-11-30/pack.json", "--replace")
    assert again.status == 0


def test_what_a_pack_cannot_be_made_of_is_one_plain_line(said, near):
    done = said("pack", "--date", "2026-11-30", "--signed-only")
    assert done.status == 2
    assert "11 unsigned" in done.err
    assert "Traceback" not in done.err
    assert not (near.parent / "8K-2026-11-30").exists()


@pytest.mark.parametrize("named", [(), ("--bank", "questions")])
def test_topics_lists_those_of_the_bank(said, near, named):
    done = said("topics", *named)
    assert "In the bank larkhythe, Questions of larkhythe:" in done.out
    row = next(line for line in done.out.splitlines() if line.startswith(OWN))
    assert row.split()[-3:] == ["12", "13", "12"]
    assert "ratio.share" in done.out
    strand = said("topics", "--strand", "garden", *named)
    assert OWN in strand.out
    assert "ratio.share" not in strand.out


def test_topics_away_from_banks_are_the_generators(said, away):
    assert "In the bank" not in said("topics").out


def test_marking_an_answer_to_a_bank_s_question(said, near, monkeypatch):
    assert said("mark", "larkhythe:support-20", "61").out.startswith("Right")
    monkeypatch.chdir(near)
    assert said("mark", "larkhythe:support-20", "60").out.startswith("Wrong")
    monkeypatch.chdir(near.parent.parent)
    assert said("mark", "larkhythe:support-20", "61", "--bank", near).out.startswith("Right")


def test_nothing_is_marked_by_a_key_that_is_wrong(said, near):
    for path in near.glob("*.toml"):
        path.write_text(path.read_text().replace('key = "61"', 'key = "62"'))
    status, out, err = said("mark", "larkhythe:support-20", "62", "--bank", near)
    assert (status, out) == (1, "")
    assert "61" in err
    assert "the key says 62" in err


@pytest.mark.parametrize(
    ("address", "words"),
    [
        ("larkhythe:support-2", "Did you mean support-2"),
        ("riverside:support-20", "no bank ‘riverside’ here"),
        ("larkhythe:person", "needs a person"),
    ],
)
def test_an_address_that_cannot_be_marked(said, near, address, words):
    done = said("mark", address, "61")
    assert done.status == 2
    assert words in done.err
    assert "Traceback" not in done.err


def test_showing_questions_of_a_bank(said, near):
    one = said("show", "larkhythe:support-20")
    assert "Work out 20 + 41." in one.out
    assert "HT" in one.out
    some = said("show", OWN, "--tier", "core", "--count", "2")
    assert some.out.count("larkhythe:core-5") == 2
    assert said("show", "ratio.share/core/12").out.count("Key") == 1
