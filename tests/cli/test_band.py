"""The band command: one score in a line, several in groups, every fault plain."""

from pathlib import Path

import pytest

from itembank.planning.bands.caution import CAUTION

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"


def test_one_score_in_one_line(said, away):
    status, out, err = said("band", "5", "--out-of", "8")
    assert (status, err) == (0, "")
    assert out.startswith("5 out of 8: Secure (S, ring, pink): ")
    assert out.splitlines()[1:] == [CAUTION]
    assert "core sheet" in out


@pytest.mark.parametrize(
    ("options", "name"),
    [
        (["5", "--out-of", "10"], "Rebuild (R, house"),
        (["6", "--out-of", "10"], "Secure (S, ring"),
        (["5", "--cuts", "3,5"], "Extend (E, arch"),
        (["3", "--bands", "4"], "Practise (P, book"),
        (["8", "--bands", "5"], "Deepen (D, leaf"),
        (
            ["5", "--department", LARKHYTHE, "--class", "9S", "--out-of", "10"],
            "Repair (R, leaf",
        ),
    ],
)
def test_chosen_bands(said, away, options, name):
    status, out, _ = said("band", *options)
    assert status == 0
    assert name in out


def test_the_department_around_the_current_folder(said, monkeypatch):
    monkeypatch.chdir(LARKHYTHE)
    assert "Practise (P, book, blue)" in said("band", "6", "--class", "9s", "--out-of", "10").out


def test_a_class_has_the_marks_of_its_usual_starter(said, monkeypatch):
    monkeypatch.chdir(LARKHYTHE)
    assert said("band", "9", "--class", "9S").out.startswith("9 out of 10: Stretch ")
    assert said("band", "6").out.startswith("6 out of 8: Secure ")
    assert said("band", "9", "--class", "9S", "--out-of", "8").status == 2


def test_several_scores_are_counted_and_grouped(said, away):
    status, out, _ = said("band", "3", "8", "6", "6", "0")
    assert status == 0
    lines = [" ".join(line.split()) for line in out.splitlines()]
    assert lines[0] == "5 scores out of 8"
    assert "Rebuild (R, house, blue) 0–4 2 pupils" in lines
    assert "Secure (S, ring, pink) 5–6 2 pupils" in lines
    assert "Extend (E, arch, black) 7–8 1 pupil" in lines
    assert "not a grade" in lines[-1]


def test_a_file_of_scores_names_the_seats(said, away):
    (away / "scores.csv").write_text("seat,score\nB1,3\nA10,4\nA2,7\nA3,\n")
    status, out, _ = said("band", "--csv", "scores.csv")
    lines = [" ".join(line.split()) for line in out.splitlines()]
    assert status == 0
    assert "Seats A10 B1" in lines
    assert "Seats A2" in lines
    assert lines[-1] == "No score: A3"


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ([], "Give a score"),
        (["x"], "not a score"),
        (["9"], "not between 0 and 8"),
        (["5", "--out-of", "0"], "1 to 200 marks, not 0"),
        (["5", "--cuts", "7,5"], "do not rise"),
        (["5", "--cuts", "5,9"], "not between 1 and 8"),
        (["5", "--cuts", "a"], "are not cut scores"),
        (["5", "--cuts", "5,7", "--bands", "2"], "make 3 bands, not 2"),
        (["5", "--bands", "6"], "2 to 5 bands, not 6"),
        (["5", "--class", "8K"], "no department here"),
        (["5", "--class", "8Z", "--department", LARKHYTHE], "The classes are 7M, 8K and 9S."),
        (["5", "--bands", "3", "--class", "8K"], "not both"),
        (["5", "--department", "none"], "no folder none"),
        (["--csv", "none.csv"], "no such file"),
        (["--csv", "."], "a folder, not a file"),
        (["5", "--csv", "none.csv"], "not both"),
    ],
)
def test_faults(said, away, arguments, words):
    status, out, err = said("band", *arguments)
    assert (status, out) == (2, "")
    assert words in err


def test_names_are_refused(said, away):
    (away / "scores.csv").write_text("name,score\nRowan,3\n")
    status, _, err = said("band", "--csv", "scores.csv")
    assert status == 2
    assert "line 1" in err
    assert "no pupils' names" in err


def test_one_score_is_one(said, tmp_path):
    (tmp_path / "scores.csv").write_text("seat,score\nA1,5\n")
    assert said("band", "--csv", tmp_path / "scores.csv").out.startswith("1 score out of 8")
