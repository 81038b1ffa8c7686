"""Wherever a band is shown, it is said there that a band is no grade.

A class with bands of unusual names goes through a week: whatever page, table or line then holds
one of those names must hold the caution too. Nothing here lists the pages, so that a new one
that shows bands is held to it as well.
"""

import json
import re
import shutil
from pathlib import Path

import pypdfium2
import pytest

from itembank.cli.main import COMMANDS

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
NAMES = {"Repair": "Zinnia", "Practise": "Yarrow", "Stretch": "Xenia"}
SHOWN = re.compile("|".join(NAMES.values()))
SAID = re.compile(r"not a\s+grade")
DATA = {"pack.json", "department.toml", "results.sqlite3"}
"""Files of the tool's own, which nobody reads for a result."""
SHOW_NONE = {"topics", "map", "show", "audit", "bank", "demo", "forget", "unite", "shift"}
"""Commands that know of no class's bands."""
IN_THE_BROWSER = {"desk"}
"""Commands whose pages are held to it by the tests of the desk."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    home = tmp_path_factory.mktemp("caution") / "larkhythe"
    shutil.copytree(LARKHYTHE, home, ignore=shutil.ignore_patterns("*.sqlite3", "plans"))
    text = (home / "department.toml").read_text(encoding="utf-8")
    for old, new in NAMES.items():
        text = text.replace(f'name = "{old}"', f'name = "{new}"')
    text = text.replace('default_class = "8K"', 'default_class = "9S"')
    (home / "department.toml").write_text(text, encoding="utf-8")
    return home


def texts(path):
    """Yield what a reader takes in at once, with its place: a slide, a document, or a file."""
    if path.suffix == ".pdf":
        with pypdfium2.PdfDocument(path) as document:
            pages = [page.get_textpage().get_text_range() for page in document]
            slides = document[0].get_width() > document[0].get_height()
        yield from (
            [(f"{path.name}, slide {n}", text) for n, text in enumerate(pages, 1)]
            if slides
            else [(path.name, "\n".join(pages))]
        )
    elif path.suffix in (".csv", ".txt", ".md", ".html", ".toml", ".json"):
        yield path.name, path.read_text(encoding="utf-8-sig")


def test_the_caution_stands_wherever_a_band_is_shown(said, folder, monkeypatch):
    monkeypatch.chdir(folder)
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-12-18")
    seats = [f"{row}{number}" for row in "ABCD" for number in range(1, 6)]
    rows = [
        f"{seat},{','.join('1' if k < 5 + i % 6 else '0' for k in range(10))}"
        for i, seat in enumerate(seats)
    ]
    Path("sheet.csv").write_text(
        "seat," + ",".join(map(str, range(1, 11))) + "\n" + "\n".join(rows) + "\n"
    )
    Path("scores.csv").write_text("".join(f"{seat},{i % 11}\n" for i, seat in enumerate(seats)))
    pack = ("--date", "2026-11-30", "--pack", "9S-2026-11-30")
    commands = [
        ("week", "9S", "--from", "2026-11-30", "--only", "mon", "--output", "."),
        ("band", "7", "--class", "9S"),
        ("band", "7", "3", "10", "--class", "9S"),
        ("band", "--csv", "scores.csv", "--class", "9S"),
        ("record", "9S", *pack, "--sheet", "sheet.csv"),
        ("decide", "9S", "--date", "2026-11-30", "--pairs", "--sheet", "groups.pdf"),
        (
            "report",
            "9S",
            "--since",
            "2026-11-01",
            "--until",
            "2026-12-31",
            "--csv",
            "tables",
            "--pdf",
            "report.pdf",
        ),
        ("report", "9S", "--lesson", "2026-11-30"),
        ("report", "--items", "--since", "2026-11-01", "--until", "2026-12-31"),
        ("report", "--since", "2026-11-01", "--until", "2026-12-31"),
        ("record", "9S", "--date", "2026-12-02", "--out-of", "10", "--bands", "9 8 6"),
        ("export", "--to", "all"),
        ("mark", "--pack", "9S-2026-11-30", "--sheet", "answers.csv", "--output", "marks.csv"),
        ("cover", "9S", "--date", "2026-12-08", "--topic", "ratio.share 4", "--yes"),
        ("cancel", "9S", "--date", "2026-12-09", "--why", "school trip"),
        ("move", "9S/A1", "away", "--date", "2026-12-17"),
        ("undo", "9S"),
        ("pack", "--class", "9S", "--date", "2026-12-16", "--output", "."),
        ("begin", ".", "--bands", "Zinnia 0, Yarrow 5, Xenia 7"),
    ]
    # A new command is walked too: add it to the commands above, or to those that show no bands.
    assert {command[0] for command in commands} | SHOW_NONE | IN_THE_BROWSER == set(COMMANDS)
    showing = set()
    for command in commands:
        if command[0] == "mark":
            starter = json.loads(Path("9S-2026-11-30/pack.json").read_text(encoding="utf-8"))
            count = len(starter["versions"][0]["items"])
            head = ",".join(["seat", *map(str, range(1, count + 1))])
            Path("answers.csv").write_text(f"{head}\nA1,{','.join(['1'] * count)}\n")
        status, out, err = said(*command)
        assert status == 0, (command, err)
        # A report counts bands by their letters, so its names do not give it away.
        if SHOWN.search(out + err) or command[0] == "report":
            showing.add(command[0])
            assert SAID.search(out + err), (command, out)
    for path in sorted(folder.rglob("*")):
        # What was there before a change is the tool's own, too.
        if path.is_file() and path.name not in DATA and "earlier" not in path.parts:
            for place, text in texts(path):
                if SHOWN.search(text) or path.name == "report-lessons.csv":
                    showing.add(path.name)
                    assert SAID.search(text), place
    # The walk is worth nothing where it meets no bands: it must have met these at least.
    assert showing >= {
        *("band", "decide", "report", "record", "mark", "begin"),
        *("answers.pdf", "next-tasks.pdf", "support.pdf", "teacher-notes.pdf"),
        *("groups.pdf", "report.pdf", "marks.csv", "bands.csv", "report-lessons.csv"),
    }
