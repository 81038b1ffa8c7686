"""Starting: help is light and complete, and faults end in a message and a status."""

import json
import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from itembank.cli.main import run
from tests.depth import left

HEAVY = {
    "sympy",
    "reportlab",
    "lark",
    "rich",
    "generators",
    "pydantic",
    "numpy",
    "scipy",
}
COMMANDS = ("pack", "band", "topics", "show", "audit")


def itembank(*arguments, cwd=None):
    return subprocess.run(
        [sys.executable, "-m", "itembank.cli", *arguments],
        capture_output=True,
        text=True,
        cwd=cwd,
        check=False,
        env={**os.environ, "PYTHONIOENCODING": "utf-8", "COLUMNS": "100"},
    )


LOADED = """
import json, sys
from itembank.cli.main import run
try:
    run({arguments!r})
except SystemExit as end:
    print()
    print(json.dumps([end.code, sorted({{name.partition(".")[0] for name in sys.modules}})]))
"""


@pytest.mark.parametrize(
    "arguments",
    [
        ["--help"],
        ["band", "5"],
        *(left([c, "--help"]) for c in COMMANDS[1:]),
        [COMMANDS[0], "--help"],
    ],
)
def test_help_and_band_import_nothing_heavy(arguments):
    done = subprocess.run(
        [sys.executable, "-c", LOADED.format(arguments=arguments)],
        capture_output=True,
        text=True,
        check=True,
    )
    status, modules = json.loads(done.stdout.splitlines()[-1])
    assert status == 0
    assert "itembank" in modules
    assert not HEAVY & set(modules)


DEMO = Path(__file__).parents[2] / "banks" / "larkhythe"
MATHEMATICS = {"sympy", "mpmath", "lark", "generators", "itembank.notation", "itembank.proof"}
PAGES = {"reportlab", "ziamath", "PIL", "itembank.pages"}
DATABASE = {"sqlalchemy", "alembic", "psycopg"}
NEVER = {
    *("sqlalchemy.orm", "alembic", "psycopg", "tomlkit", "rich", "scipy"),
    *("dask", "distributed", "hypothesis", "unittest"),
}
"""What no command of a day at school loads: tables that stand need no migration, and so on."""
CHOOSING = {"highspy", "numpy", "itembank.planning.choosing.memory"}
RECORDING = MATHEMATICS | PAGES | CHOOSING | {"pydantic"}
"""What nothing loads that records a lesson."""


@pytest.fixture(scope="module")
def department(tmp_path_factory):
    """Return the demo department with what a pack of 8K loads, its results and its bank's index."""
    folder = tmp_path_factory.mktemp("department") / "larkhythe"
    shutil.copytree(DEMO, folder)
    (folder / "right.csv").write_text("seat,1,2,3,4\nA1,1,0,1,1\nA2,0,1,0,1\n")
    few = ["--questions", "4", "--follow-up", "2"]
    packed = loaded_by(["pack", "--class", "8K", "--date", "2026-11-27", *few], folder)
    # What the commands find there is made by this process, which has loaded all it needs.
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        for arguments in ("record 8K --right 9,9,9,9", "bank list", "bank show depot-1"):
            with pytest.raises(SystemExit) as end:
                run([word.replace(",", " ") for word in arguments.split()])
            assert not end.value.code, arguments
    return folder, packed


def loaded_by(arguments, folder):
    """Return the names of what a command loads in its own process."""
    done = subprocess.run(
        [sys.executable, "-c", LOADED_WHOLE.format(arguments=list(arguments))],
        capture_output=True,
        text=True,
        check=True,
        cwd=folder,
    )
    status, modules = json.loads(done.stdout.splitlines()[-1])
    assert not status, done.stderr
    return set(modules)


LOADED_WHOLE = LOADED.replace('name.partition(".")[0] for name in', "*")


@pytest.mark.parametrize(
    ("arguments", "not_loaded"),
    [
        ("record 8K --replace --bands 8,12,9", MATHEMATICS | PAGES | CHOOSING | {"pydantic"}),
        left(
            "record 8K --replace --right 20,20,9,9", MATHEMATICS | PAGES | CHOOSING | {"pydantic"}
        ),
        left(
            "record 8K --replace --sheet right.csv", MATHEMATICS | PAGES | CHOOSING | {"pydantic"}
        ),
        ("decide 8K", MATHEMATICS | PAGES | CHOOSING | {"pydantic", "multiprocessing"}),
        left("cancel 8K --date 2026-11-26", RECORDING),
        ("band 5", MATHEMATICS | PAGES | CHOOSING | DATABASE | {"pydantic", "multiprocessing"}),
        ("topics", PAGES | CHOOSING | DATABASE | {"pydantic", "sympy", "lark"}),
        ("mark ratio.share/core/7 3:4", PAGES | CHOOSING | DATABASE | {"pydantic", "sympy"}),
        left("week 8K --from 2026-11-30 --only mon --questions 4", {"multiprocessing.pool"}),
    ],
)
def test_a_command_loads_only_what_it_works_with(department, arguments, not_loaded):
    words = [word.replace(",", " ") for word in arguments.split()]
    loaded = loaded_by(words, department[0])
    assert "itembank.cli.main" in loaded
    assert loaded & (NEVER | not_loaded) == set()
    others = {name for name in loaded if name.startswith("itembank.cli.bank")}
    assert not others, "a command is not read for another"


@pytest.mark.parametrize(
    ("arguments", "not_loaded"),
    [
        ("bank find garden", MATHEMATICS - {"itembank.proof"} | {"pydantic"}),
        left("bank list", {"sympy", "mpmath", "lark", "generators"}),
        ("bank show depot-1", {"sympy", "mpmath"}),
        left("bank sign depot-1 --by HT", {"sympy", "mpmath", "lark", "generators"}),
    ],
)
def test_a_bank_that_is_known_is_not_worked_out_again(department, arguments, not_loaded):
    loaded = loaded_by(arguments.split(), department[0])
    assert not loaded & (NEVER | PAGES | CHOOSING | DATABASE | not_loaded)


def test_a_pack_loads_no_results_and_no_plan(department):
    assert "itembank.packs" in department[1]
    assert not department[1] & (NEVER | CHOOSING | DATABASE)
    # A pack is drawn without what fetches pages from the net.
    assert not department[1] & {"urllib.request", "http.client", "ssl"}


def test_a_command_looks_for_no_garbage_while_it_starts():
    code = (
        # Its own package is what says so: before it, Python may compile that package first.
        "import gc, itembank.cli; gc.collect(); before = gc.get_stats()[0]['collections']\n"
        "import itembank.cli.main\n"
        "print(gc.get_stats()[0]['collections'] - before)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "0\n"


def test_a_packs_proof_is_begun_before_all_else_is_loaded():
    code = (
        "import sys\n"
        "from itembank.cli.main import run\n"
        "from itembank.packs import proof_ahead\n"
        "def begin():\n"
        "    print(*sys.modules)\n"
        "    raise SystemExit(0)\n"
        "proof_ahead.begin_proof = begin\n"
        "run(['pack'])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = set(done.stdout.split())
    assert "itembank.cli.pack" in loaded
    later = (
        "itembank.items",
        "itembank.planning.calendar",
        "itembank.planning.department.department",
    )
    assert not [name for name in loaded if name.startswith(later)]


def test_a_pack_that_is_made_is_not_checked_as_one_that_is_read(department, tmp_path):
    folder, packed = department
    assert "itembank.packs.data.pack_files" in packed
    assert "pydantic" not in packed
    (made,) = folder.rglob("pack.json")
    assert "pydantic" in loaded_by(["pack", "--from", str(made), "--output", "here"], tmp_path)


def test_recording_loads_no_more_where_there_is_no_bank(tmp_path):
    folder = shutil.copytree(
        DEMO, tmp_path / "larkhythe", ignore=shutil.ignore_patterns("questions")
    )
    words = ["record", "8K", "--date", "2026-11-27", "--out-of", "8", "--bands"]
    loaded = loaded_by([*words, "8 12 9"], folder)
    assert "sqlalchemy" in loaded
    assert not loaded & (NEVER | MATHEMATICS | PAGES | CHOOSING | {"pydantic", "multiprocessing"})


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help_with_examples(said, command):
    done = said(command, "--help")
    assert done.status == 0
    assert f"\n    itembank {command}" in done.out
    assert command in said("--help").out


@pytest.mark.parametrize(
    ("typed", "answer"),
    [
        ("pack --seed abc", "--seed needs a whole number, such as --seed 3."),
        ("show ratio.share --count 2.5", "--count needs a whole number, such as --count 3."),
        ("pack --date", "--date needs a value after it. ‘itembank pack --help’ shows which."),
        ("pack -t", "-t needs a value after it. ‘itembank pack --help’ shows which."),
        ("pack --two-up=yes", "--two-up takes no value. Write it alone."),
        ("pack --large-prnt", "There is no option --large-prnt. Did you mean --large-print?"),
        ("band 5 --x", "There is no option --x. ‘itembank band --help’ shows what there is."),
        ("-x", "There is no option -x. ‘itembank --help’ shows what there is."),
        ("show", "TOPIC is missing. ‘itembank show --help’ shows what there is."),
        ("band -3", "‘-3’ is not a score. Write a whole number, 0 or more."),
        (
            "mark equations.two-step/core/7",
            "Give an address and an answer, as in: itembank mark ratio.share/core/7 "
            '"12 and 18", or a class\'s answers with --pack and --sheet.',
        ),
        ("packs", "There is no command ‘packs’. Did you mean pack?"),
        (
            "pack ratio.share",
            "‘ratio.share’ is not expected there. Did you mean --topic ratio.share?",
        ),
        ("topics rotia", "No topic has the words ‘rotia’. Try fewer words, or others."),
        (
            "show ratio.share (x",
            "‘(x’ is not expected there. ‘itembank show --help’ shows what there is.",
        ),
    ],
)
def test_what_is_mistyped_is_answered_in_one_plain_line(said, typed, answer):
    assert said(*typed.split()) == (2, "", f"{answer}\n")


def test_a_command_like_no_other_lists_them_all(said):
    answer = said("zzz").err
    assert answer.startswith("There is no command ‘zzz’. The commands are pack, ")
    assert all(command in answer for command in COMMANDS)


def test_a_bare_command_shows_its_help(said):
    done = said()
    assert (done.out + done.err).startswith("Usage: itembank")


def test_help_names_arguments_without_a_programs_types(said):
    shown = [said(command, "--help").out for command in ("show", "band", "audit")]
    assert [text.splitlines()[0].removeprefix("Usage: itembank ") for text in shown] == [
        "show [OPTIONS] TOPIC",
        "band [OPTIONS] [SCORE]...",
        "audit [OPTIONS] [TOPIC]...",
    ]
    assert not any(mark in text for text in shown for mark in ("<str>", "list[", "{"))


def test_a_fault_goes_to_the_error_stream_with_status_two():
    done = itembank("band", "9", "--out-of", "8")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == "The score 9 is not between 0 and 8.\n"


def test_a_reader_that_goes_away_is_no_fault():
    read, write = os.pipe()
    os.close(read)
    with os.fdopen(write, "wb") as nowhere:
        done = subprocess.run(
            [sys.executable, "-m", "itembank.cli", "band", "1", "2", "3"],
            stdout=nowhere,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
        )
    assert "Traceback" not in done.stderr


def test_stopping_with_the_keyboard(tmp_path):
    pipe = tmp_path / "scores.csv"
    os.mkfifo(pipe)
    with (
        subprocess.Popen(
            [sys.executable, "-m", "itembank.cli", "band", "--csv", str(pipe)],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        ) as running,
        pipe.open("wb"),
    ):  # opens once the command reads it, and then it waits for rows
        running.send_signal(signal.SIGINT)
        out, err = running.communicate()
    assert running.returncode == 128 + signal.SIGINT
    assert (out, err.strip()) == ("", "Stopped.")


def test_version():
    done = itembank("--version")
    assert done.returncode == 0
    assert done.stdout.startswith("itembank 0.")


def test_a_fault_of_the_program_is_one_plain_sentence(monkeypatch, capsys):
    from itembank.cli import main

    def fail(*given, **named):
        raise IndexError("out of range")

    monkeypatch.setattr(main, "app", fail)
    monkeypatch.delenv("ITEMBANK_TRACEBACK", raising=False)
    with pytest.raises(SystemExit) as ended:
        main.run(["topics"])
    assert ended.value.code == 3
    said = capsys.readouterr().err
    assert "a fault of its own (IndexError: out of range)" in said
    assert "Traceback" not in said
    monkeypatch.setenv("ITEMBANK_TRACEBACK", "1")
    with pytest.raises(IndexError):
        main.run(["topics"])
