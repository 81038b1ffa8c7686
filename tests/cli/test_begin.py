"""``itembank begin``: from nothing to the first week, by files, by rows, and in a conversation."""

import tomllib

import pytest

from itembank.cli.department import answering
from itembank.cli.main import run
from itembank.work.department.made import read_kept
from itembank.work.department.so_far import read_so_far

pytestmark = pytest.mark.usefixtures("pages_outlined")

TERMS = "Autumn\t3 Sep 2026\t18 Dec 2026\nHalf term\t26 Oct\t30 Oct\n"
CLASSES = (
    'Class,Teacher,Lessons,Seats\n8K,HT,"Mon 1, Tue 3, Thu 2",29\n8M,MB,"Mon 2, Fri 1",A1-A6\n'
)


@pytest.fixture
def files(away):
    (away / "terms.txt").write_text(TERMS, "utf-8")
    (away / "classes.csv").write_text(CLASSES, "utf-8")
    return away


BY_FILES = ("--school", "Larkhythe School", "--terms", "terms.txt", "--classes", "classes.csv")


def department(folder):
    return tomllib.loads((folder / "department.toml").read_text("utf-8"))


def test_from_files_to_the_first_week_without_reading_toml(said, files):
    made = said("begin", "maths", *BY_FILES, "--topics", "ready")
    assert made.status == 0, made.err
    assert "8K: Mon 1, Tue 3, Thu 2; 29 seats" in made.out
    command = made.out.splitlines()[-1].removeprefix("Next: itembank ")
    assert command == "week 8K --from 2026-11-30 --department maths"
    week = said(*command.split())
    assert week.status == 0, week.err
    assert (files / "maths" / "8K-2026-11-30" / "starter.pdf").exists()


def test_rows_that_are_typed_add_to_a_department_and_leave_comments(said, files):
    said("begin", "maths", *BY_FILES, "--topics", "ready")
    path = files / "maths" / "department.toml"
    path.write_text(path.read_text("utf-8").replace('name = "8M"', 'name = "8M"  # set 2'), "utf-8")
    added = said("begin", "maths", "--classes", "8P; 8; AB; A Mon 3; 12", "--week-a", "7 Sep 2026")
    assert added.status == 0, added.err
    assert [row["name"] for row in department(files / "maths")["classes"]] == ["8K", "8M", "8P"]
    assert "# set 2" in path.read_text("utf-8")
    same = said("begin", "maths", "--school", "Larkhythe School")
    assert "Nothing was changed." in same.out


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((), "What is the school called?"),
        (("--terms", "none.csv"), "There is no file none.csv."),
        (("--terms", "Autumn: 3 Sep to 31 Nov"), "--terms: Row 1, column A: ‘31 Nov’"),
        (("--classes", "8K; 8; HT; Mon"), "Monday has no period"),
        (("--classes", "Class;Seats\n8K;Sam Larch"), "never by name"),
        (("--bands", "Red 1, Green 5"), "begins at 0"),
    ],
)
def test_what_is_wrong_is_told_and_nothing_is_written(said, away, words, told):
    ended = said("begin", "maths", *words)
    assert ended.status == 2
    assert told in ended.err
    assert not (away / "maths").exists()


def test_topics_nobody_asks_about_are_left_out_when_that_is_said(said, files):
    (files / "topics.csv").write_text("1,Vectors\n2,ratio.share\n", "utf-8")
    refused = said("begin", "maths", *BY_FILES, "--topics", "topics.csv")
    assert refused.status == 2
    assert "--leave-out" in refused.err
    made = said("begin", "maths", *BY_FILES, "--topics", "topics.csv", "--leave-out")
    assert made.status == 0, made.err
    assert "Vectors" in made.out
    scheme = tomllib.loads((files / "maths" / "schemes" / "year-8.toml").read_text("utf-8"))
    assert scheme["topics"] == [{"topic": "ratio.share", "week": 2}]


@pytest.fixture
def talk(monkeypatch, capsys, away):
    """Answer the conversation with lines, each of which may be pasted rows."""

    def start(*lines):
        left = [part for line in lines for part in line.split("\n")]

        def answered(shown=""):
            print(shown)
            if not left:
                raise EOFError
            return left.pop(0)

        monkeypatch.setattr("builtins.input", answered)
        monkeypatch.setattr("itembank.cli.words.ask.can_ask", lambda: True)
        monkeypatch.setattr(answering, "_more_comes", lambda: False)
        with pytest.raises(SystemExit) as end:
            run(["begin", "maths"])
        return end.value.code or 0, capsys.readouterr().out, left

    return start


SCHOOL = "Larkhythe School"
PASTED_TERMS = f"{TERMS}", "yes", "no"  # rows, that is the year, weeks are the same


def test_a_department_is_asked_for_part_by_part(talk, away):
    status, out, left = talk(
        "",
        SCHOOL,
        *PASTED_TERMS,
        "8K",
        "",
        "Ms Larch",
        "ht",
        "Monday",
        "Mon 1, Tue 3",
        "Sam",
        "29",
        "",
        "back",
        "8k",
        "",
        "",
        "Mon 1, Tue 4",
        "",
        "",
        "Pythagors",
        "ready",
        "drop ratio.share",
        "ratio.share 3",
        "",
        "Red 0, Amber 5, Green 7",
        "yes",
    )
    assert (status, left) == (0, []), out
    assert "Monday has no period" in out
    assert "never by name" in out
    made = department(away / "maths")
    assert made["school"] == SCHOOL
    assert made["classes"][0]["lessons"] == ["Mon 1", "Tue 4"]
    assert [band["letter"] for band in made["bands"]["band"]] == ["R", "A", "G"]
    scheme = tomllib.loads((away / "maths" / "schemes" / "year-8.toml").read_text("utf-8"))
    assert {"topic": "ratio.share", "week": 3} in scheme["topics"]
    assert "Next: itembank week 8K" in out
    assert not (away / "maths" / "begun.toml").exists()


@pytest.mark.parametrize(
    "row",
    [
        "8M; 8; MB; Mon 1, Thu 4; 29",
        "8M\t8\tMB\tMon 1, Thu 4\t29",
        '8M,8,MB,"Mon 1, Thu 4",29',
        "class;year;teacher;lessons;seats\n8M;8;MB;Mon 1, Thu 4;29\n",
    ],
)
def test_rows_are_rows_where_a_class_s_name_could_stand(talk, away, row):
    rows = f"{row}\n" if "\t" in row else row
    _, out, left = talk(SCHOOL, *PASTED_TERMS, rows, "stop")
    assert left == [], out
    (group,) = read_so_far(away / "maths").classes
    told = (group.name, group.year, group.teacher, len(group.seats), len(group.lessons))
    assert told == ("8M", 8, "MB", 29, 2)


@pytest.mark.parametrize("ending", ["stop", "Ctrl-C"])
def test_what_was_answered_is_there_another_day_wherever_one_stops(talk, away, ending):
    lines = [SCHOOL, *PASTED_TERMS, "8K", "8", "", "A Mon 1", "", "yes", "2026-09-07", "8M", "8"]
    status, out, _ = talk(*lines, *(["stop"] if ending == "stop" else []))
    assert status == (0 if ending == "stop" else 130)
    assert "To go on: itembank begin maths" in out
    kept = read_so_far(away / "maths")
    assert [group.name for group in kept.classes] == ["8K"]
    assert kept.two_week
    status, out, left = talk("", "ready", "", "yes")
    assert (status, left) == (0, []), out
    assert "Going on from what you answered before" in out
    assert [row["name"] for row in department(away / "maths")["classes"]] == ["8K"]


def test_each_answer_of_a_department_can_be_changed(talk, said, files):
    said("begin", "maths", *BY_FILES, "--topics", "ready")
    status, out, left = talk(
        "classes", "drop 8M", "", "school", "New School", "bands", "5 7", "yes"
    )
    assert (status, left) == (0, []), out
    made = department(files / "maths")
    assert made["school"] == "New School"
    assert [row["name"] for row in made["classes"]] == ["8K"]
    assert made["bands"] == {"out_of": 8, "cuts": [5, 7]}
    status, out, _ = talk("stop")
    assert status == 0
    assert "all is saved" in out
    assert not (files / "maths" / "begun.toml").exists()


def test_each_setting_of_the_set_up_can_be_changed_in_the_conversation(talk, said, files):
    said("begin", "maths", *BY_FILES, "--topics", "ready")
    status, out, left = talk(
        *("school", "New School", "settings"),  # what was answered is saved first
        *("8k", "2", "Sharing an amount in a given ratio: 19 Nov 2026", "nonsense", ""),
        *("Sharing an amount in a given ratio: 19 Nov 2026", "factors: not yet", "usual"),
        *("Sharing an amount in a given ratio: 19 Nov 2026", ""),
        *("99", "5", "many", "6", "1", "year-9", "back", ""),
        *("all", "1", "8m", "back", "", "yes"),
    )
    assert (status, left) == (0, []), out
    made = department(files / "maths")
    assert made["school"] == "New School"
    assert made["default_class"] == "8M"
    row = made["classes"][0]
    assert str(row["taught"]["ratio.share"]) == "2026-11-19"
    assert (row["questions"], row["scheme"]) == (6, "year-8")
    assert "with a colon between, not ‘nonsense’" in out
    assert "Write a number from 1 to" in out
    assert "Write a whole number, not ‘many’" in out
    assert "Write year-8 or usual." in out


def test_a_new_department_is_saved_before_its_settings_are_changed(talk, files):
    lines = (SCHOOL, *PASTED_TERMS, "8K; 8; HT; Mon 1; 29", "", "ready", "", "usual")
    status, out, left = talk(*lines, "settings", "8K", "8", "cream", "", "stop")
    assert (status, left) == (0, []), out
    assert department(files / "maths")["classes"][0]["paper"] == "cream"
    assert "To go on" not in out


def test_topics_of_the_department_s_own_bank_may_be_named(said, files):
    said("begin", "maths", *BY_FILES, "--topics", "ready")
    said("bank", "new", "ours", "--author", "HT=head")
    said(
        *("bank", "add", "--bank", "ours", "--topic", "number.primes", "--title", "Prime numbers"),
        *("--tier", "core", "--prompt", "Work out {2 + 3}.", "--key", "5"),
    )
    path = files / "maths" / "department.toml"
    path.write_text('banks = ["../ours"]\n' + path.read_text("utf-8"), "utf-8")
    (files / "topics.csv").write_text("Week,Topic\n1,Prime numbers\n2,ratio.share\n", "utf-8")
    changed = said("begin", "maths", "--topics", "topics.csv")
    assert changed.status == 0, changed.err
    scheme = tomllib.loads((files / "maths" / "schemes" / "year-8.toml").read_text("utf-8"))
    assert [row["topic"] for row in scheme["topics"]] == ["number.primes", "ratio.share"]


def test_a_class_is_renamed_by_word_and_no_other_name_is_taken(capsys):
    from itembank.cli.department.ask_classes import _renamed
    from itembank.work.department.answered import Answers, ClassAnswer
    from itembank.work.department.class_renamed import Renamed, renamed_in

    answers = Answers(classes=(ClassAnswer(name="8K", was="8K"), ClassAnswer(name="8M", was="8M")))
    assert _renamed(answers, "8K", "8m") == answers
    assert _renamed(answers, "9K", "9X") == answers
    assert renamed_in(_renamed(answers, "8k", "8X")) == (Renamed("8K", "8X"),)
    assert "go along with 8X" in capsys.readouterr().out


def test_days_off_alone_leave_the_terms_and_a_long_row_is_no_file(said, files):
    said("begin", "maths", *BY_FILES, "--topics", "ready")
    terms = read_kept(files / "maths").answers.terms
    off = said("begin", "maths", "--terms", "Inset day\t4 Dec 2026")
    assert off.status == 0, off.err
    answers = read_kept(files / "maths").answers
    assert answers.terms == terms
    assert "Inset day" in [off.why for off in answers.closed]
    row = "8P; 8; AB; A Mon 3; 12" + " " * 300
    added = said("begin", "maths", "--classes", row, "--week-a", "7 Sep 2026")
    assert added.status == 0, added.err
    (files / "topics²=8.csv").write_text("ratio.share\n", "utf-8")
    told = said("begin", "maths", "--topics", "topics²=8.csv")
    assert told.status == 0, told.err
    assert [topic.topic for topic in read_kept(files / "maths").answers.schemes[0].topics] == [
        "ratio.share"
    ]
