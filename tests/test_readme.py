"""Every command that README.md prints works, in a copy of the checkout, in the order printed.

`itembank` lines really run. Lines that would set up an environment (`make …`, `pip …`) are
checked as far as they can be without a network: the targets exist, what they name exists, and
the demo's own `itembank` line runs.
"""

from __future__ import annotations

import io
import os
import re
import shlex
import shutil
import subprocess
import sys
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path

import pytest

from installed.open_desk import first_page
from itembank.cli.main import run as itembank
from tests.depth import WHOLE, only_whole
from tests.readme import README, blocks

pytestmark = pytest.mark.usefixtures("one_core", "pages_outlined", "proved_once")

ROOT = Path(__file__).parents[1]
MAKE = shutil.which("make")
TODAY = "2026-11-28"  # as README.md says

NOT_COPIED = shutil.ignore_patterns(
    *(".git", ".venv", "venv", "output", "tests", ".*_cache", ".hypothesis"),
    *("*.egg-info", ".coverage*", "build", "dist"),
)


LATER = ("Plan a week, record it, decide",)
"""Sections that `make test` leaves to `make whole`: *A quick tour* has commands of each kind."""


def walks() -> list[object]:
    """The commands as a reader goes through them, one walk to a section.

    Blocks of a section go on from one another; a block that makes an environment is another
    way to begin and starts afresh.
    """
    found: dict[str, list[str]] = {}
    for heading, lines in blocks():
        fresh = any("-m venv" in line for line in lines)
        found.setdefault(f"{heading}, by pip" if fresh else heading, []).extend(lines)
    return [
        pytest.param(tuple(lines), id=name, marks=[only_whole] if name in LATER else [])
        for name, lines in found.items()
    ]


@pytest.fixture(scope="module")
def original(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A checkout as a reader has it: no environment, an empty output folder."""
    copy = tmp_path_factory.mktemp("readme") / "original"
    shutil.copytree(ROOT, copy, ignore=NOT_COPIED)
    (copy / "output").mkdir()
    return copy


@pytest.fixture(autouse=True)
def own_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Keep what a reader would find on their desktop out of the tester's."""
    monkeypatch.setenv("HOME", str(tmp_path))


def _copied(source: str, target: str) -> None:
    """Copy a file that commands may write; give one of the program a second name, in less time."""
    if source.endswith((".py", ".png", ".ttf", ".woff2")):
        os.link(source, target)
    else:
        shutil.copy2(source, target)


@pytest.fixture
def checkout(original: Path, tmp_path: Path) -> Path:
    copy = tmp_path / "itembank"
    shutil.copytree(original, copy, copy_function=_copied)
    return copy


def run_itembank(checkout: Path, *words: str) -> str:
    """Run one `itembank` command in the copy; return what it prints.

    It runs in this process, which has loaded what it needs. With processes of their own, and
    with nothing but what is installed, `installed/tour.py` walks the same way.
    """
    out, err = io.StringIO(), io.StringIO()
    with pytest.MonkeyPatch.context() as patch, redirect_stdout(out), redirect_stderr(err):
        patch.chdir(checkout)
        patch.setenv("ITEMBANK_TODAY", TODAY)
        with pytest.raises(SystemExit) as end:
            itembank(words)
    told = f"itembank {shlex.join(words)}\n{out.getvalue()}{err.getvalue()}"
    assert not end.value.code, told
    return out.getvalue()


def run_itembank_anew(checkout: Path, *words: str) -> str:
    """Run one `itembank` command of the copy's code by a new Python; return what it prints."""
    done = subprocess.run(
        [sys.executable, "-m", "itembank.cli", *words],
        cwd=checkout,
        env={
            **os.environ,
            "PYTHONPATH": str(checkout),
            "PYTHONIOENCODING": "utf-8",
            "ITEMBANK_TODAY": TODAY,
        },
        encoding="utf-8",
        capture_output=True,
        timeout=300,
        check=False,
    )
    assert done.returncode == 0, f"itembank {shlex.join(words)}\n{done.stdout}{done.stderr}"
    return done.stdout


def desk_page(checkout: Path, *options: str) -> str:
    """Return the first page of the desk that the copy's code opens."""
    environment = os.environ | {"PYTHONPATH": str(checkout), "ITEMBANK_TODAY": TODAY}
    command = [sys.executable, "-m", "itembank.cli", "desk", *options]
    return first_page(command, checkout, environment)


def recipe(checkout: Path, target: str) -> list[list[str]]:
    """Return the commands that `make TARGET` would run."""
    if MAKE is None:
        pytest.skip("make is not installed")
    done = subprocess.run(
        [MAKE, "--no-print-directory", "-n", target],
        cwd=checkout,
        env={k: v for k, v in os.environ.items() if not k.startswith(("MAKE", "MFLAGS"))},
        encoding="utf-8",
        capture_output=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return [shlex.split(line) for line in done.stdout.splitlines()]


def check_pip(checkout: Path, words: list[str]) -> None:
    """Check that what a `pip install` line names is there to be installed."""
    assert words[:1] == ["install"]
    flags = ("--quiet", "--disable-pip-version-check", "--no-compile")
    rest = [word for word in words[1:] if word not in flags]
    named = dict(zip(rest[::2], rest[1::2], strict=True))
    # Python would load a finder of modules at each start else, longer than what it finds.
    assert named.pop("--config-settings", None) == "editable_mode=compat"
    assert set(named) == {"-c", "-e"}
    pinned = (checkout / named["-c"]).read_text("utf-8").splitlines()
    assert [line for line in pinned if "==" in line]
    folder, _, extra = named["-e"].partition("[")
    project = (checkout / folder / "pyproject.toml").read_text("utf-8")
    assert not extra or re.search(rf"^{extra.rstrip(']')} = \[", project, re.MULTILINE)


def run(checkout: Path, words: list[str]) -> None:
    """Run one line of README.md, or check it where running it would need a network."""
    program, *rest = words
    if program.startswith(".venv/bin/"):
        program = program.removeprefix(".venv/bin/")
    match program, rest:
        case "itembank", ["desk", *options] if "--shortcut" not in options:
            assert "<h1>" in desk_page(checkout, *options)
        case "itembank", ["audit", topic] if not WHOLE:
            # A thousand and more questions else; the audit's tests and `installed/tour.py` do it.
            assert run_itembank(checkout, "audit", topic, "--sample", "20").strip()
        case "itembank", _:
            assert run_itembank(checkout, *rest).strip()
        case "python", ["-m", "venv", ".venv"]:
            pass  # Python's own
        case "python", ["-m", "pip", *pip]:
            check_pip(checkout, pip)
        case "cp", ["-r", source, target]:
            shutil.copytree(checkout / source, checkout / target)
        case "make", [target]:
            check_target(checkout, target)
        case _:
            pytest.fail(f"no way to check this line of README.md: {shlex.join(words)}")


def check_target(checkout: Path, target: str) -> None:
    """Check what `make TARGET` would run, from a fresh checkout; run what is ours and quick."""
    lines = recipe(checkout, target)
    assert [line[1:] for line in lines if line[1:3] == ["-m", "venv"]] == [["-m", "venv", ".venv"]]
    pips = [line[3:] for line in lines if line[1:3] == ["-m", "pip"]]
    assert pips, f"make {target} installs nothing"
    for pip in pips:
        check_pip(checkout, pip)
    ours = [line[1:] for line in lines if line[0] == ".venv/bin/itembank"]
    scripts = [line[1] for line in lines if line[0].endswith("python") and line[1].endswith(".py")]
    if target == "demo":
        assert len(ours) == 1
        assert not list((checkout / "output").iterdir())
        run_itembank_anew(checkout, *ours[0])
        assert len(list((checkout / "output").iterdir())) == 1
    if target == "test":
        assert any(line[1:3] == ["-m", "pytest"] for line in lines)
    for script in scripts:
        assert (checkout / script).is_file()


def test_readme_opens_with_the_demo_and_the_test_command() -> None:
    lines = [line for _, block in blocks() for line in block]
    assert lines[:2] == ["make demo", "make test"]


@pytest.mark.parametrize("lines", walks())
def test_the_commands_of_a_section_work_one_after_another(
    checkout: Path, lines: tuple[str, ...]
) -> None:
    for line in lines:
        run(checkout, shlex.split(line))


def test_a_pack_holds_the_files_that_readme_lists(checkout: Path) -> None:
    rows = [line for line in README.splitlines() if line.startswith("| `") and ".pdf" in line]
    others = ("| `self-mark.html`", "| `pack.json`")
    rows += [line for line in README.splitlines() if line.startswith(others)]
    named = {name for row in rows for name in re.findall(r"`([\w-]+\.\w+)`", row)}
    assert "starter.pdf" in named
    run_itembank(checkout, "pack", "--department", "banks/larkhythe")
    (folder,) = (checkout / "output").iterdir()
    assert {file.name for file in folder.iterdir()} == named


def test_what_readme_links_to_is_there() -> None:
    links = re.findall(r"\]\(([^)#]+)\)", README)
    assert links
    missing = [link for link in links if "://" not in link and not (ROOT / link).is_file()]
    assert not missing


@pytest.mark.parametrize("target", ["demo", "test", "whole", "check", "floors", "bench"])
def test_the_make_targets_that_developers_use_exist(original: Path, target: str) -> None:
    assert f"`make {target}`" in (ROOT / "DEVELOPERS.md").read_text("utf-8")
    assert recipe(original, target)
