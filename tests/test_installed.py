"""What a colleague gets who installs the tool: the demo to try, and versions that are named."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from installed.lowest import lowest, pins
from installed.tour import walks
from itembank.cli.main import run
from itembank.files.shipped import shipped_files, shipped_folder

ROOT = Path(__file__).parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]


def test_every_requirement_names_its_lowest_version():
    wanted = [*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["test"]]
    assert [lowest(one).replace("==", ">=") for one in wanted] == [
        one.replace("==", ">=") for one in wanted
    ]
    assert pins() == [dependency.replace(">=", "==") for dependency in PROJECT["dependencies"]]
    assert pins(["pytest"]) == [lowest(PROJECT["optional-dependencies"]["test"][0])]


@pytest.mark.parametrize("requirement", ["typer", "typer<1", "typer>=0.20,<1", "typer~=0.20"])
def test_a_requirement_that_names_no_lowest_version_alone_is_refused(requirement):
    with pytest.raises(ValueError, match="no lowest version alone"):
        lowest(requirement)


def test_the_tour_walks_every_command_of_readme_that_needs_no_checkout():
    sections = walks()
    assert len(sections["A quick tour"]) > 5
    assert {words[0] for lines in sections.values() for words in lines} <= {
        "itembank",
        ".venv/bin/itembank",
        "cp",
    }


@pytest.fixture
def demo(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)

    def call(*words):
        with pytest.raises(SystemExit) as end:
            run(["demo", *words])
        shown = capsys.readouterr()
        return end.value.code or 0, shown.out, shown.err

    return call


def test_the_demo_writes_the_files_that_ship_and_says_what_comes_next(demo, tmp_path):
    status, out, _ = demo()
    assert status == 0
    assert "itembank pack --department banks/larkhythe" in out
    written = {
        path.relative_to(tmp_path / "banks").as_posix(): path.read_bytes()
        for path in (tmp_path / "banks").rglob("*")
        if path.is_file()
    }
    assert written == shipped_files()
    assert {name.partition("/")[0] for name in written} == {
        "larkhythe",
        "key-stage-3",
        "key-stage-4",
        "three-years",
    }
    assert (
        written["larkhythe/department.toml"]
        == (shipped_folder() / "larkhythe" / "department.toml").read_bytes()
    )


def test_the_demo_writes_over_nothing(demo, tmp_path):
    (tmp_path / "trial").mkdir()
    (tmp_path / "trial" / "mine.txt").write_text("mine")
    status, out, err = demo("trial")
    assert (status, out) == (2, "")
    assert "trial is there already. Nothing was written." in " ".join(err.split())
    assert [path.name for path in (tmp_path / "trial").iterdir()] == ["mine.txt"]


def test_what_was_made_in_a_checkout_since_does_not_ship():
    """The banks ship as version control has them: no results, no plans of weeks, no packs."""
    names = shipped_files()
    assert not [name for name in names if "/plans/" in name or not name.endswith(".toml")]
    assert len(names) > 50
