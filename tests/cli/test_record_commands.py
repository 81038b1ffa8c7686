"""Record, undo, decide, export and forget, as typed: three depths, and every fault plain."""

import datetime
import json

import pytest

from itembank.cli.main import run
from itembank.cli.words import tell
from itembank.records.entries.lesson_pack import read_pack_facts

pytestmark = pytest.mark.usefixtures("pages_outlined")

DEPARTMENT = """
school = "Larkhythe School"
default_class = "8K"
[deciding]
again_below = 40
on_from = 90
[[classes]]
name = "8K"
year = 8
seats = ["A1-A6", "B1-B4"]
topics = ["ratio.share", "ratio.simplest-form"]
questions = 4
[[classes]]
name = "9S"
year = 9
topics = ["ratio.share"]
"""
DAYS = ("2026-11-16", "2026-11-23")


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """Make a department with two packs once."""
    folder = tmp_path_factory.mktemp("department")
    (folder / "department.toml").write_text(DEPARTMENT)
    (folder / "output").mkdir()
    for day in DAYS:
        where = ["--department", str(folder), "--output", str(folder / "output")]
        with pytest.raises(SystemExit) as end:
            run(["pack", "--date", day, *where])
        assert not end.value.code
    return {
        path.relative_to(folder): path.read_bytes()
        for path in folder.rglob("*")
        if path.name in ("pack.json", "department.toml")
    }


@pytest.fixture
def home(made, tmp_path, monkeypatch):
    for path, data in made.items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_bytes(data)
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return tmp_path


def test_hands_by_band_go_to_the_newest_pack(said, home):
    status, out, err = said("record", "8K", "--bands", "5 3 2")
    assert (status, err) == (0, "")
    lines = out.splitlines()
    assert len(lines) == 3
    assert "8K on 23 November 2026: 10 pupils. Rebuild 5, Secure 3, Extend 2." in lines[0]
    assert "a repair group" in lines[1]
    assert "itembank decide 8K" in lines[2]


def test_right_answers_by_question(said, home):
    assert said("record", "--date", DAYS[0], "--right", "9 3,10 8", "--pupils", "10").status == 0
    out = said("decide", "8k").out
    assert "16 November 2026" in out
    shares = [line.split()[4] for line in out.splitlines() if " of 10 " in line]
    assert shares == ["90", "30", "100", "80"]
    assert "Below 40 % right: teach again to all; from 90 %: go on" in out
    assert "not a grade" in out


SCORES = "seat,score\nA1,4\na2,1\nA3,\n"
ANSWERS = "seat,1,2,3,4\nA1,1,1,1,1\nA2,0,1,0,0\nA3,,,,\n"


@pytest.mark.parametrize("text", [SCORES, ANSWERS])
def test_sheets_by_seat(said, home, text):
    (home / "sheet.csv").write_text(text)
    out = said("record", "--sheet", "sheet.csv").out
    assert out.startswith("Away: A3.\n")
    assert "2 pupils. Rebuild 1, Secure 0, Extend 1." in out
    assert "Only 2 pupils" in out
    assert "A1–A2" in said("decide", "--pairs").out


def test_typed_answers_are_marked_and_show_misconceptions(said, home):
    items = json.loads((home / "output" / f"8K-{DAYS[1]}" / "pack.json").read_text())
    asked = items["versions"][0]["items"]
    right = [one["key"]["line"] for one in asked]
    slip = next(n for n, one in enumerate(asked) if one["misconceptions"])
    wrong = [*right]
    wrong[slip] = asked[slip]["misconceptions"][0]["wrong"]["line"]
    rows = ["seat,1,2,3,4"]
    for seat, answers in (("A1", right), ("A2", wrong)):
        quoted = (answer.replace('"', '""') for answer in answers)
        rows.append(",".join([seat, *(f'"{answer}"' for answer in quoted)]))
    (home / "sheet.csv").write_text("\n".join(rows))
    assert said("record", "--sheet", "sheet.csv").status == 0
    out = said("decide").out
    assert f"{asked[slip]['misconceptions'][0]['name']} (× 1)" in " ".join(out.split())
    assert f"{slip + 1}  1 of 2" in out


def test_twice_warns_and_undo_takes_back(said, home):
    said("record", "--bands", "5 3 2")
    status, out, err = said("record", "--bands", "1 1 1")
    assert (status, out) == (2, "")
    assert "already" in err
    assert "--replace" in err
    assert said("record", "--bands", "1 1 1", "--replace").status == 0
    assert "3 pupils" in said("decide").out
    assert "counts again" in said("undo").out
    assert "10 pupils" in said("decide").out
    assert said("undo", "--yes").status == 0
    assert said("undo").status == 2


def test_one_seat_is_put_right(said, home):
    (home / "sheet.csv").write_text(ANSWERS)
    said("record", "--sheet", "sheet.csv")
    assert "1  1 of 2" in said("decide").out
    assert said("record", "--correct", "a2 q1 right").status == 0
    assert "1  2 of 2" in said("decide").out
    status, _, err = said("record", "--correct", "A9 q1 right", "--correct", "A1 q7 right")
    assert status == 2
    assert "seat A9" in err
    assert "no question 7" in err


def test_own_views_and_clarity(said, home):
    (home / "sheet.csv").write_text(ANSWERS)
    views = "A1 not sure, A2 sure"
    words = ["--unclear", "3", "--note", "which way round"]
    assert said("record", "--sheet", "sheet.csv", "--own-view", views, *words).status == 0
    out = said("decide").out
    assert "Sure, but low: A2" in out
    assert "Not sure, but high: A1" in out
    assert "Asked what to do before they could start: 3 of 10 (which way round)." in out
    assert said("record", "--own-view", "5 sure 3 partly 1 not", "--replace").status == 0
    assert "sure 5, partly 3, not sure 1" in said("decide").out


@pytest.mark.parametrize("note", ["Sam asked twice", "ask Miss Larch", "sent to a@b.example"])
def test_a_note_takes_no_name_as_far_as_it_can_be_told(said, home, note):
    status, _, err = said("record", "--bands", "5 3 2", "--unclear", "1", "--note", note)
    assert status == 2
    assert "looks like the name of a person" in err
    assert "Not every name can be told" in err.replace("\n", " ")
    assert said("decide").status == 2  # nothing at all was recorded
    fine = "what ‘Share’ means; mark the grace note of Pythagoras"
    assert said("record", "--bands", "5 3 2", "--unclear", "1", "--note", fine).status == 0


def test_own_views_of_a_whole_class_by_seat_are_no_file(said, home):
    """A name of a file has 255 bytes at most, and such views have more."""
    seats = [f"{row}{n}" for row in "AB" for n in range(1, 31)]
    text = (home / "department.toml").read_text().replace('"A1-A6", "B1-B4"', '"A1-A30", "B1-B30"')
    (home / "department.toml").write_text(text)
    views = ", ".join(f"{seat} not sure" for seat in seats)
    assert len(views) > 255
    status, _, err = said("record", "--bands", "5 3 2", "--own-view", views)
    assert (status, err) == (0, "")
    assert "not sure 60" in said("decide").out


@pytest.mark.parametrize(
    ("words", "faults"),
    [
        (["--bands", "5 3"], ["2 numbers, but 3 bands"]),
        (["--bands", "5 3 9"], ["17 pupils, but only 10 sit"]),
        (["--bands", "5 x 9"], ["‘x’ is not a number"]),
        (["--bands", "0 0 0"], ["Nobody was counted"]),
        (["--bands", "1 1 1", "--right", "1 1 1 1"], ["Give one of"]),
        (
            ["--right", "9 9 9 9 9", "--pupils", "8"],
            ["5 numbers, but 4", "Question 1 has 9 right of 8"],
        ),
        (["--right", "1 1 1 1", "--pupils", "11"], ["--pupils: 11 pupils, but only 10"]),
        (["--right", "1 1 1", "--asked", "2"], ["3 numbers, but 2 questions were asked"]),
        (["--bands", "1 1 1", "--asked", "5"], ["questions 1 to 4"]),
        (["--bands", "1 1 1", "--asked", "most"], ["‘most’ is not a number of questions"]),
        (["--own-view", "1 1 1", "--asked", "2"], ["--asked goes with"]),
        (["--bands", "9 9 9", "--unclear", "99"], ["27 pupils", "--unclear: 99 pupils"]),
        (["--own-view", "A1 sure, Z9 sure, A2 maybe"], ["no seat Z9", "‘A2 maybe’"]),
        (["--note", "words"], ["goes with --unclear"]),
        (["--date", "2026-11-17", "--bands", "1 1 1"], ["no pack", "--out-of"]),
        (["--date", "2099-01-01", "--bands", "1 1 1"], ["not come yet"]),
        (["--date", "soon"], ["‘soon’ is not a date"]),
        (["--correct", "A1"], ["no results"]),
        ([], ["--bands", "--sheet"]),
    ],
)
def test_faults_are_told_and_nothing_is_recorded(said, home, words, faults):
    status, out, err = said("record", "8K", *words)
    assert (status, out) == (2, "")
    for fault in faults:
        assert fault in err
    assert said("decide").status == 2


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        ("A1,5\nA9,3\nA2,1\nA2,2\n", ["line 1: The score 5", "line 2: The class has no seat A9"]),
        ("name,score\nA1,3\n", ["line 1: A heading speaks of names"]),
        ("seat,born,score\nA1,2014-02-03,3\n", ["dates of birth"]),
        ("seat,1,2,3,4,5\nA1,1,1,1,1,1\n", ["no question 5"]),
        ("Sam,3\n", ["not a seat code"]),
        ("", ["no score"]),
    ],
)
def test_faulty_sheets_tell_their_lines(said, home, text, faults):
    (home / "sheet.csv").write_text(text)
    status, _, err = said("record", "--sheet", "sheet.csv")
    assert status == 2
    for fault in faults:
        assert fault in err


def test_a_starter_without_a_pack(said, home):
    words = ["record", "9S", "--date", "2026-11-17", "--out-of", "10", "--bands"]
    assert said(*words, "1 2 3").status == 0
    assert "6 pupils" in said("decide", "9S").out
    assert "Name the pack" in said("record", "9S", "--out-of", "10", "--right", "3 4").err


def test_three_questions_at_a_terminal(said, home, monkeypatch):
    monkeypatch.setattr("itembank.cli.words.ask.can_ask", lambda: True)
    typed = iter(["5 3", "5 3 2", "4 4 2", "3,"])
    monkeypatch.setattr("builtins.input", lambda _: next(typed))
    out = said("record").out
    assert "Write 3 numbers" in out
    assert "10 pupils. Rebuild 5, Secure 3, Extend 2." in out
    assert "sure 4, partly 4, not sure 2" in said("decide").out


def test_a_copy_that_went_its_own_way_is_told_and_brought_in(said, home):
    """Two teachers record in a shared folder at once; each file holds what the other lacks."""
    assert said("record", "--date", DAYS[0], "--bands", "5 3 2").status == 0
    copy = home / "results (another machine).sqlite3"
    copy.write_bytes((home / "results.sqlite3").read_bytes())
    assert said("record", "--date", DAYS[1], "--bands", "1 2 3").status == 0
    mine = home / "mine"
    (home / "results.sqlite3").rename(mine)
    copy.rename(home / "results.sqlite3")
    assert said("record", "--date", DAYS[1], "--bands", "3 2 1").status == 0
    mine.rename(copy)
    tell._TOLD.clear()
    status, out, err = said("decide")
    assert status == 0
    assert f'itembank unite "{copy}"' in err
    assert "Rebuild (R)" in out
    status, out, err = said("unite", str(copy))
    assert (status, err) == (0, "")
    assert "1 record." in out
    assert "23 November 2026 was recorded differently" in out
    assert "undo 8K --date 2026-11-23" in out
    assert said("undo", "8K", "--date", "2026-11-23").status == 0
    assert "holds all that" in said("unite", str(copy)).out
    status, _, err = said("forget", "--class", "8K", "--yes")
    assert status == 1
    assert copy.name in err
    copy.unlink()
    assert said("forget", "--finish").status == 0
    status, _, err = said("unite", "absent.sqlite3")
    assert status == 2
    assert "absent.sqlite3" in err


def test_export_then_forget(said, home):
    (home / "sheet.csv").write_text(ANSWERS)
    said("record", "--sheet", "sheet.csv")
    assert said("export", "--to", "out").status == 0
    assert said("export", "--to", "out").status == 2
    status, _, err = said("forget", "--seat", "8K/A2")
    assert status == 2
    assert "--yes" in err
    assert "A2" in (home / "out" / "answers.csv").read_text()
    out = said("forget", "--seat", "8K/a2", "--yes").out
    # What is not known is said, not passed over: a pack put elsewhere may name the seat.
    assert "put elsewhere, delete it there" in " ".join(out.split())
    assert "1 record removed from" in out
    assert "Forgotten: seat A2 of 8K." in out
    assert "Written anew without it" in out
    assert "A2" not in (home / "out" / "answers.csv").read_text()
    assert "1 pupil" in said("decide").out
    assert said("forget", "--yes").status == 2
    assert said("forget", "--seat", "A2", "--yes").status == 2
    out = said("forget", "--before", "2026-12-01", "--yes").out
    assert "1 lesson removed" in out
    assert "elsewhere" not in out
    assert said("decide").status == 2


def test_what_was_made_of_results_is_named_when_they_are_forgotten(said, home):
    (home / "sheet.csv").write_text(ANSWERS)
    said("record", "--sheet", "sheet.csv")
    said("record", "9S", "--date", DAYS[0], "--out-of", "10", "--bands", "1 2 3")
    made = {
        "groups.pdf": said("decide", "8K", "--sheet", "groups.pdf"),
        "report.pdf": said("report", "8K", "--pdf", "report.pdf"),
        "tables": said("report", "8K", "--csv", "tables"),
    }
    said("report", "9S", "--pdf", "other.pdf")
    assert all(done.status == 0 and (home / name).exists() for name, done in made.items())
    before = {path: path.read_bytes() for path in home.rglob("*.pdf")}
    status, out, err = said("forget", "--seat", "8K/A2", "--yes")
    assert status == 1
    assert "1 record removed from" in out
    assert "Forgotten" not in out
    for name in made:
        assert name in err
    assert "other.pdf" not in err
    assert {path: path.read_bytes() for path in home.rglob("*.pdf")} == before
    # What is left is named again, however it is asked for, until it is not there any more.
    for words in (("forget", "--seat", "8K/A2", "--yes"), ("forget", "--finish")):
        status, _, again = said(*words)
        assert status == 1
        assert all(name in again for name in made)
    for path in home.rglob("*"):
        if path.suffix == ".pdf" or path.name.startswith("report-"):
            path.unlink()
    assert said("forget", "--finish")[::2] == (0, "")
    assert "Nothing was begun" in said("forget", "--finish").out


def test_lines_for_deciding_must_rise(said, home):
    text = DEPARTMENT.replace("on_from = 90", "on_from = 30")
    (home / "department.toml").write_text(text)
    status, _, err = said("decide")
    assert status == 2
    assert "must be less than ‘on_from’" in err


def test_no_day_is_taken_from_the_future(said, home):
    """A pack made ahead for next week is not the lesson that was."""
    ahead = datetime.date.today() + datetime.timedelta(days=7)
    source = home / "output" / f"8K-{DAYS[1]}"
    source.rename(source.with_name(f"8K-{ahead}"))
    assert "16 November 2026" in said("record", "--bands", "1 1 1").out


def test_groups_are_printed_with_their_seats(said, home):
    import pypdfium2

    (home / "scores.csv").write_text("seat,score\nA1,4\nA2,0\nB1,1\n")
    assert said("record", "8K", "--sheet", "scores.csv").status == 0
    assert said("decide", "8K", "--sheet", "groups.pdf").status == 0
    with pypdfium2.PdfDocument(home / "groups.pdf") as pages:
        texts = [page.get_textpage().get_text_range() for page in pages]
    assert [any(seat in text for text in texts) for seat in ("A1", "A2", "B1")] == [True] * 3
    assert all("not a grade" in text for text in texts)
    lowest = next(text for text in texts if "A2" in text)
    assert "B1" in lowest
    assert "A1" not in lowest


def test_groups_without_seats_are_not_printed(said, home):
    said("record", "8K", "--bands", "5 3 2")
    status, _, err = said("decide", "8K", "--sheet", "groups.pdf")
    assert status == 2
    assert "no results by seat" in err
    assert not (home / "groups.pdf").exists()


def test_of_three_pupils_nothing_is_said_for_certain(said, home):
    assert "Overall: perhaps teach again to all" in said("record", "--bands", "3 0 0").out
    out = said("decide").out
    assert "Only 3 pupils" in out
    assert "Overall: perhaps teach again to all" in out


def test_a_decision_fits_80_columns_and_says_what_was_asked(said, home):
    rows = [f"A{n},{n % 2},{int(n > 1)},0,1" for n in range(1, 7)]
    (home / "sheet.csv").write_text("\n".join(["seat,1,2,3,4", *rows]))
    views = ", ".join(f"A{n} sure" for n in range(1, 7))
    assert said("record", "--sheet", "sheet.csv", "--own-view", views).status == 0
    out = said("decide", "--pairs").out
    assert max(map(len, out.splitlines())) <= 80
    assert "Question 3 fooled the confident: 6 of 6 who were sure" in out
    lines = out.splitlines()
    for question in read_pack_facts(home / "output" / f"8K-{DAYS[1]}").lesson.questions:
        place = next(k for k, line in enumerate(lines) if line.startswith(f"{question.number}  "))
        assert question.prompt
        prompt = " ".join(question.prompt.split())
        assert prompt.startswith(lines[place + 1].strip().removesuffix("…"))
