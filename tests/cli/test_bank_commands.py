"""The commands over the bank: topics, show, audit and pack, on the real topics."""

import json
import shutil
from pathlib import Path

import pytest

from itembank.items.topics.registry import topic_ids

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
PDFS = {
    "starter.pdf",
    "answers.pdf",
    "next-tasks.pdf",
    "support.pdf",
    "core.pdf",
    "challenge.pdf",
    "follow-up-answers.pdf",
    "teacher-notes.pdf",
    "self-mark.html",
}


def first_topic(said, strand="fractions"):
    return said("topics", "--strand", strand).out.splitlines()[1].split()[0]


def test_topics_of_a_strand(said, away):
    status, out, _ = said("topics", "--strand", "fractions")
    heads, *rows = out.splitlines()
    assert status == 0
    assert heads.split() == ["topic", "title", "year", "support", "core", "challenge"]
    rows = [row for row in rows if row.startswith("fractions.")]
    assert len(rows) == len([name for name in topic_ids() if name.startswith("fractions.")])
    assert "ratio." not in out
    assert len(said("topics").out.splitlines()) > len(rows)


def test_capitals_do_not_matter_and_a_strand_is_no_topic(said, away):
    plain = said("show", "ratio.share", "--tier", "core")
    assert said("show", "Ratio.Share", "--tier", "CORE") == plain
    assert said("topics", "--strand", "Ratio") == said("topics", "--strand", "ratio")
    assert "‘itembank topics --strand ratio’ lists its topics" in said("show", "ratio").err


def test_show_has_all_that_a_teacher_reads_first(said, away):
    topic = first_topic(said)
    status, out, _ = said("show", topic, "--tier", "core", "--count", "2", "--seed", "3")
    assert status == 0
    for part in ("\n1. ", "\n2. ", "Key", "Working", "Likely", "Ask: ", f"{topic}/core/"):
        assert part in out
    assert "\n3. " not in out
    assert "\x1b" not in out
    assert out == said("show", topic, "--tier", "core", "--count", "2", "--seed", "3").out
    assert out != said("show", topic, "--tier", "core", "--count", "2", "--seed", "4").out


def test_audit_of_one_topic(said, away):
    topic = first_topic(said)
    status, out, err = said("audit", topic, "--sample", "20", "--jobs", "1")
    assert (status, err) == (0, "")
    assert topic in out
    assert "No faults." in out
    found = json.loads(said("audit", topic, "--sample", "20", "--jobs", "1", "--json").out)
    (one,) = found["topics"]
    assert one["topic"] == topic
    assert one["checked"] > 0
    assert one["wrong_keys"] == one["blind"] == one["form_faults"] == 0


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["topics", "--strand", "fractoins"], "no strand"),
        (["show", "ratio.shar"], "ratio.share"),
        (["show", "ratio.share", "--tier", "hard"], "support, core or challenge"),
        (["show", "ratio.share", "--count", "0"], "from 1 to 100, not 0"),
        (["audit", "ratio.shar"], "ratio.share"),
        (["audit", "--sample", "0"], "must be 1 or more"),
        (["audit", "--jobs", "0"], "must be 1 or more"),
        (["pack"], "--department"),
        (["pack", "--topic", "ratio.shar"], "ratio.share"),
        (["pack", "--department", LARKHYTHE, "--class", "8Z"], "The classes are 7M, 8K and 9S."),
        (["pack", "--department", LARKHYTHE, "--date", "2026-02-30"], "not a day"),
        (["pack", "--department", LARKHYTHE, "--questions", "0"], "1 to 20 questions, not 0"),
        (["pack", "--department", LARKHYTHE, "--questions", "50"], "1 to 20 questions, not 50"),
        (["pack", "--plan", "none.toml"], "none.toml"),
        (["pack", "--from", "none.json"], "none.json"),
        (["pack", "--from", "none.json", "--class", "8K"], "--class cannot change"),
    ],
)
def test_faults(said, away, arguments, words):
    status, out, err = said(*arguments)
    assert (status, out) == (2, "")
    assert words in err
    assert "Traceback" not in err
    assert list(away.iterdir()) == []


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """Make the demo class's pack once, with no options, in a copy of its department."""
    from itembank.cli.main import run

    folder = tmp_path_factory.mktemp("larkhythe")
    shutil.copy(LARKHYTHE / "department.toml", folder)
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        with pytest.raises(SystemExit) as end:
            run(["pack", "--date", "2026-11-30"])
    assert not end.value.code
    return folder / "8K-2026-11-30"


def test_a_pack_with_no_options(made):
    assert {file.name for file in made.iterdir()} == PDFS | {"pack.json"}
    held = json.loads((made / "pack.json").read_text(encoding="utf-8"))
    assert held["lesson"]["school"] == "Larkhythe School"
    assert len(held["versions"][0]["items"]) == 8
    assert [band["lowest"] for band in held["bands"]] == [0, 5, 7]


def test_a_pack_made_again_is_the_same(said, made, tmp_path):
    status, out, _ = said("pack", "--from", made / "pack.json", "--output", tmp_path)
    assert status == 0
    again = tmp_path / made.name
    assert str(again) in out
    for file in made.iterdir():
        assert (again / file.name).read_bytes() == file.read_bytes(), file.name


def test_an_older_pack_is_replaced_only_when_asked(said, made, tmp_path):
    shutil.copytree(made, tmp_path / made.name)
    marker = tmp_path / made.name / "starter.pdf"
    marker.write_text("mine")
    status, _, err = said("pack", "--from", made / "pack.json", "--output", tmp_path)
    assert status == 2
    assert "--replace" in err
    assert marker.read_text() == "mine"
    assert said("pack", "--from", made / "pack.json", "--output", tmp_path, "--replace").status == 0
    assert marker.read_bytes() == (made / "starter.pdf").read_bytes()


def test_a_folder_that_cannot_be_written(said, made, tmp_path):
    (tmp_path / "file").write_text("not a folder")
    status, _, err = said("pack", "--from", made / "pack.json", "--output", tmp_path / "file")
    assert status == 2
    assert str(tmp_path / "file") in err


@pytest.mark.parametrize("text", ["", "{", "{}", "[]", '{"schema_version": 99}', "\x00"])
def test_a_damaged_pack(said, away, text):
    (away / "pack.json").write_text(text)
    status, out, err = said("pack", "--from", "pack.json", "--output", "out")
    assert (status, out) == (2, "")
    assert "pack.json" in err
    assert not (away / "out").exists()
