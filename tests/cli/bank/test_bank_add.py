"""Adding a question in a conversation: what is asked, what is refused, what is saved."""

import os
import pty
import select
import signal
import sys
import time
import tomllib

import pytest

from itembank.cli.bank.writing import conversation
from itembank.cli.main import run
from itembank.work.bank.question_fields import likely_task
from tests.cli.forked import ended, fork


@pytest.fixture
def bank(said, tmp_path):
    folder = tmp_path / "questions"
    said("bank", "new", folder, "--name", "larkhythe", "--author", "HT=head", "--author", "T9=nine")
    return folder


class Talk:
    """A terminal with ``itembank bank add`` in it."""

    def __init__(self, *arguments):
        self.ours, theirs = pty.openpty()

        def command():
            os.setsid()
            os.close(self.ours)
            for number, name in enumerate(("stdin", "stdout", "stderr")):
                os.dup2(theirs, number)
                how = {"encoding": "utf-8", "closefd": False, "buffering": 1}
                setattr(sys, name, open(number, "w" if number else "r", **how))  # noqa: SIM115
            os.environ["TERM"] = "dumb"
            run(["bank", "add", *map(str, arguments)])

        self.child = fork(command)
        os.close(theirs)
        self.seen = ""

    def until(self, words):
        """Read until the terminal shows `words`; return what it showed up to there."""
        end = time.monotonic() + 60  # only so that a failure ends
        while words not in self.seen:
            assert time.monotonic() < end, self.seen
            if select.select([self.ours], [], [], 0.2)[0]:
                try:
                    self.seen += os.read(self.ours, 4096).decode(errors="replace")
                except OSError:
                    raise AssertionError(f"ended before {words!r}:\n{self.seen}") from None
        before, _, self.seen = self.seen.partition(words)
        return before + words

    def answer(self, question, typed):
        """Wait for a question (none where it was waited for already), and answer it."""
        shown = self.until(question) if question else ""
        os.write(self.ours, f"{typed}\n".encode())
        return shown

    def status(self):
        """Return the status with which the command ends."""
        found = ended(self.child)
        os.close(self.ours)
        return found


def items(bank, topic):
    return tomllib.loads((bank / f"{topic}.toml").read_text(encoding="utf-8"))["items"]


@pytest.mark.skipif(os.name == "nt", reason="there are no pseudo-terminals")
def test_a_word_problem_is_asked_for_mended_and_saved(bank):
    talk = Talk("--bank", bank)
    talk.answer("Topic: ", "ratio")
    said = " ".join(talk.until("Topic: ").split())  # however its lines are broken
    assert "as in ratio.share." in said  # it is no topic's id: no title is asked for
    talk.answer("", "ratio.shar")
    assert "Did you mean ratio.share" in talk.until("write the topic again: ")
    talk.answer("", "ratio.share")  # the topic again, and not a title
    talk.answer("Tier [core]: ", "ch")
    talk.answer("Question: ", "Share {90} lanes, {1 : 4")
    assert "is not closed" in talk.until("Question: ")
    talk.answer(
        "", "A coach splits {90} minutes in the ratio {1 : 4}. How long is the longer part?"
    )
    talk.answer("Picture 1: ", "")
    talk.answer("Task [as it reads]: ", "")
    talk.answer("Key: ", "71")
    talk.answer("Model 1: ", "s + t = 90")
    talk.answer("Model 2: ", "s : t = 1 : 4")
    talk.answer("Model 3: ", "")
    talk.answer("What is asked for, such as b: ", "t")
    talk.answer("Form [", "")
    talk.answer("Marks [by its working]: ", "0")
    talk.answer("Write a whole number from 1 to 20.", "2")
    talk.answer("Line 1: ", "Add the parts | 1 + 4 = 5")
    talk.answer("Line 2: ", "")
    talk.answer("Mistake 1: ", "18 | takes the other part")
    assert "is not a likely mistake" in talk.until("Mistake 1: ")
    talk.answer("", "18 | takes the other part | Which part is longer?")
    talk.answer("Mistake 2: ", "")
    talk.answer("Author [HT]: ", "T9")
    talk.answer("Id [share-1]: ", "pool-3")
    shown = talk.answer("Save it? yes, change or no [change]: ", "")
    assert "disproved" in shown
    assert "72" in shown
    talk.answer("Change [key]: ", "")
    talk.answer("Key [71]: ", "72")
    assert "proved" in talk.answer("Save it? yes, change or no [yes]: ", "yes")
    talk.until("Saved pool-3 in")
    assert talk.status() == 0
    (item,) = items(bank, "ratio.share")
    assert item.pop("created")
    assert item == {
        "id": "pool-3",
        "tier": "challenge",
        "prompt": "A coach splits {90} minutes in the ratio {1 : 4}. How long is the longer part?",
        "key": "72",
        "marks": 2,
        "model": ["s + t = 90", "s : t = 1 : 4"],
        "find": "t",
        "working": [["Add the parts", "1 + 4 = 5"]],
        "author": "T9",
        "misconceptions": [
            {
                "id": "takes-the-other-part",
                "name": "takes the other part",
                "wrong": "18",
                "ask": "Which part is longer?",
            }
        ],
    }


@pytest.mark.skipif(os.name == "nt", reason="there are no pseudo-terminals")
def test_a_picture_is_asked_for_and_a_fault_of_it_told_with_its_line(bank):
    lines = ['kind = "number line"', "first = 0", "last = 1", "steps = 4", "points = { A = 3 }"]
    talk = Talk("--bank", bank, "-t", "fractions.shaded", "--prompt", "What number is at A?")
    talk.answer("Topic [fractions.shaded]: ", "")
    talk.answer("Tier [core]: ", "")
    talk.answer("Question [What number is at A?]: ", "")
    for last, said in (("points = { A = 9 }", "cannot be used"), ("stepps = 4", "Line 5")):
        for number, line in enumerate([*lines[:4], last, ""], 1):
            talk.answer(f"Picture {number}: ", line)
        assert said in talk.until("Write it")
    for number, line in enumerate([*lines, ""], 1):
        talk.answer(f"Picture {number}: ", line)
    talk.answer("Task [as it reads]: ", "")
    talk.answer("Key: ", "3/4")
    for question in ("Form [", "Marks [by its working]: ", "Line 1: ", "Mistake 1: "):
        talk.answer(question, "")
    talk.answer("Author [HT]: ", "")
    talk.answer("Id [shaded-1]: ", "")
    assert "proved" in talk.answer("Save it? yes, change or no [yes]: ", "yes")
    talk.until("Saved shaded-1 in")
    assert talk.status() == 0
    (item,) = items(bank, "fractions.shaded")
    assert item["figure"]["points"] == {"A": 3}
    assert item["key"] == "3/4"


@pytest.mark.skipif(os.name == "nt", reason="there are no pseudo-terminals")
@pytest.mark.parametrize("how", ["ctrl-c", "ctrl-d", "no"])
def test_stopping_saves_nothing(bank, how):
    given = ("--topic", "ratio.share", "--prompt", "Simplify {4 : 6}.")
    talk = Talk("--bank", bank, *given)
    talk.answer("Topic [ratio.share]: ", "")
    if how == "no":
        talk.answer("Tier [core]: ", "")
        talk.answer("Question [Simplify {4 : 6}.]: ", "")
        talk.answer("Picture 1: ", "")
        talk.answer("Task [simplify]: ", "")
        talk.answer("Key: ", "2 : 3")
        for question in ("Form [ratio]: ", "Marks [by its working]: ", "Line 1: ", "Mistake 1: "):
            talk.answer(question, "")
        talk.answer("Author [HT]: ", "")
        talk.answer("Id [share-1]: ", "")
        talk.answer("Save it? yes, change or no [yes]: ", "no")
        talk.until("It was not saved.")
        assert talk.status() == 0
    else:
        talk.until("Tier [core]: ")
        if how == "ctrl-c":
            # Sent again where it came before the terminal's line was waited for.
            while not select.select([talk.ours], [], [], 0.5)[0]:
                os.kill(talk.child, signal.SIGINT)
        else:
            os.write(talk.ours, b"\x04")
        talk.until("Stopped.")
        assert talk.status() == 128 + signal.SIGINT
    assert [file.name for file in bank.iterdir()] == ["bank.toml"]


def test_by_options_everything_is_written_in_the_usual_order(said, bank):
    status, out, _ = said(
        *("bank", "add", "--bank", bank, "-t", "Ratio.Share", "--tier", "Core"),
        *("--prompt", "Share {£60} in the ratio {2 : 3}.", "--key", "£24, £36"),
        *("--task", "share", "--author", "HT", "--source", "written for this bank"),
        *("--working", "Add the parts | 2 + 3 = 5", "--working", "Look at one part."),
        *("--mistake", "£30, £30 | shares equally | What does the 3 tell you?"),
    )
    assert status == 0
    assert "Proof    proved" in out
    (item,) = items(bank, "ratio.share")
    order = "id tier task prompt key working author source created misconceptions"
    assert " ".join(item) == order
    assert item["working"] == [["Add the parts", "2 + 3 = 5"], ["Look at one part."]]
    assert item["id"] == "share-1"


def test_a_topic_of_one_s_own_needs_a_title(said, bank):
    new = ("bank", "add", "-b", bank, "--tier", "core", "--prompt", "Work out {2 + 3}.", "--key", 5)
    assert "takes a title" in said(*new, "--topic", "shape.area").err
    assert said(*new, "--topic", "shape.area", "--title", "Area of shapes").status == 0
    assert said(*new, "--topic", "shape.area").status == 0
    text = (bank / "shape.area.toml").read_text(encoding="utf-8")
    assert tomllib.loads(text)["title"] == "Area of shapes"
    assert [item["id"] for item in items(bank, "shape.area")] == ["area-1", "area-2"]
    assert "Twin     asks the same as area-1" in said("bank", "show", "area-2", "-b", bank).out


def test_a_choice_is_written_with_its_options(said, bank):
    status, _, err = said(
        *("bank", "add", "-b", bank, "-t", "ratio.best-value", "--tier", "core"),
        *("--title", "Best value", "--task", "choose", "--choose", "least"),
        *("--prompt", "Pack A costs {£3} for {5}, Pack B {£4} for {8}. Which is better value?"),
        *("--choice", "Pack A=£3/5", "--choice", "Pack B = £4/8", "--key", "Pack B"),
    )
    assert (status, err) == (0, "")
    (item,) = items(bank, "ratio.best-value")
    assert item["options"] == {"Pack A": "£3/5", "Pack B": "£4/8"}


@pytest.mark.parametrize(
    ("prompt", "task"),
    [
        ("Factorise {x^2 + 5x + 6}.", "factorise"),
        ("Share {£60} in the ratio {2 : 3}.", "share"),
        ("Share {60} sweets among {4} children.", ""),
        ("Find the highest common factor of {12, 18}.", "hcf"),
        ("A bus has {50} seats.", ""),
    ],
)
def test_the_task_that_words_set(prompt, task):
    assert likely_task(prompt) == task


def test_an_author_s_code_may_be_typed_in_small_letters(said, bank):
    new = ("bank", "add", "-b", bank, "-t", "ratio.share", "--tier", "core", "--key", "5")
    assert said(*new, "--prompt", "Work out {2 + 3}.", "--author", "ht").status == 0
    assert items(bank, "ratio.share")[0]["author"] == "HT"
    assert said("bank", "change", "share-1", "-b", bank, "--author", "t9").status == 0
    assert items(bank, "ratio.share")[0]["author"] == "T9"
    assert "Signed by HT" in said("bank", "sign", "share-1", "-b", bank, "--by", "ht").out
    assert "Did you mean HT or T9?" in said(*new, "--prompt", "{2}", "--author", "TX").err


def test_an_import_says_what_it_proved(said, bank, tmp_path):
    (tmp_path / "new.csv").write_text(
        "topic,tier,prompt,key\n"
        "ratio.share,core,Find {2 + 3}.,5\n"
        "ratio.share,core,Find {2 × 3}.,5\n",
        encoding="utf-8",
    )
    planned = said("bank", "import", tmp_path / "new.csv", "-b", bank, "--dry-run")
    assert "2 questions could be added" in planned.out
    assert [file.name for file in bank.iterdir()] == ["bank.toml"]
    out = said("bank", "import", tmp_path / "new.csv", "-b", bank).out
    assert "Added 2 questions on 1 topic" in out
    assert "2 questions: 1 proved and 1 disproved; signed by nobody yet." in out
    assert f"itembank bank prove {bank}" in out


def test_lines_that_are_given_are_not_asked_for_and_so_not_lost(monkeypatch):
    asked = []
    steps = {name: lambda _, name=name: asked.append(name) for name in conversation.STEPS}
    monkeypatch.setattr(conversation, "STEPS", steps)
    given = {"working": ["a line"], "misconceptions": [{"id": "adds"}]}
    draft = conversation.Draft(None, given)
    conversation.converse(draft)
    assert not {"working", "mistakes"} & set(asked)
    assert {"topic", "question", "picture", "key"} <= set(asked)
    assert draft.record["working"] == ["a line"]
