"""The recipe of DEVELOPERS.md works: the topic it prints is found, sound and shown.

The test does what the page tells a reader to do, with the text of the page: the block of Python
under “Adding a topic” becomes a module of another package, and the entry point of the block of
TOML is what installing that package would record.
"""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from tests.depth import left, only_whole

ROOT = Path(__file__).parents[1]
GROUP = "itembank.topics"


def _section() -> str:
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    return text.split("\n## Adding a topic\n", 1)[1].split("\n## ", 1)[0]


def _block(language: str) -> str:
    blocks = re.findall(rf"^```{language}\n(.*?)^```$", _section(), re.DOTALL | re.MULTILINE)
    assert len(blocks) == 1, f"DEVELOPERS.md shows {len(blocks)} blocks of {language}, not 1"
    return str(blocks[0])


def _topic_id() -> str:
    (name,) = re.findall(r'^    id = "(.+)"$', _block("python"), re.MULTILINE)
    return str(name)


def _install(folder: Path, code: str) -> None:
    """Write what installing the reader's package would leave on the path."""
    points = tomllib.loads(_block("toml"))["project"]["entry-points"][GROUP]
    ((name, module),) = points.items()
    package, _, file = module.partition(".")
    (folder / package).mkdir()
    (folder / package / "__init__.py").write_text("", "utf-8")
    (folder / package / f"{file}.py").write_text(code, "utf-8")
    record = folder / f"{package}-1.0.dist-info"
    record.mkdir()
    (record / "METADATA").write_text(f"Metadata-Version: 2.1\nName: {package}\nVersion: 1.0\n")
    (record / "entry_points.txt").write_text(f"[{GROUP}]\n{name} = {module}\n", "utf-8")


def _itembank(folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    path = os.pathsep.join((str(folder), str(ROOT)))
    return subprocess.run(
        [sys.executable, "-m", "itembank.cli", *words],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": path, "PYTHONIOENCODING": "utf-8"},
        encoding="utf-8",
        capture_output=True,
        timeout=300,
        check=False,
    )


@pytest.fixture
def package(tmp_path: Path) -> Path:
    _install(tmp_path, _block("python"))
    return tmp_path


def test_the_topic_is_not_one_of_ours(tmp_path: Path) -> None:
    done = _itembank(tmp_path, "show", _topic_id())
    assert done.returncode == 2
    assert _topic_id() in done.stderr


def test_the_topic_is_listed(package: Path) -> None:
    done = _itembank(package, "topics")
    assert done.returncode == 0, done.stderr
    assert _topic_id() in done.stdout
    assert "fractions.add-unlike" in done.stdout


def test_the_topic_is_sound(package: Path) -> None:
    done = _itembank(package, "audit", _topic_id(), "--json")
    assert done.returncode == 0, done.stdout + done.stderr
    (report,) = json.loads(done.stdout)["topics"]
    assert report["topic"] == _topic_id()
    assert report["checked"] == report["items"] > 100
    for fault in ("wrong_keys", "blind", "form_faults", "step_faults", "repeats"):
        assert report[fault] == 0, fault
    assert not report["faults"]


@pytest.mark.parametrize("tier", [left("support"), "core", left("challenge")])
def test_the_topic_is_shown(package: Path, tier: str) -> None:
    done = _itembank(package, "show", _topic_id(), "--tier", tier, "--count", "2")
    assert done.returncode == 0, done.stderr
    assert done.stdout.count(f"{_topic_id()}/{tier}/") == 2


def test_an_audit_would_find_a_mistake_in_the_topic(tmp_path: Path) -> None:
    """A wrong key in the same file does not pass: the audit above can fail."""
    code, changed = re.subn(
        r"^        key = num\((.+)\)$",
        r"        key = num(\1 + 1)",
        _block("python"),
        flags=re.MULTILINE,
    )
    assert changed == 1
    _install(tmp_path, code)
    done = _itembank(tmp_path, "audit", _topic_id())
    assert done.returncode == 1, done.stdout + done.stderr
    assert f"{_topic_id()}/support/0" in done.stdout + done.stderr


@only_whole
def test_the_word_problem_of_the_page_is_sound_and_stopped_when_it_lies(tmp_path: Path) -> None:
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    section = text.split("\n## Adding a word problem\n", 1)[1].split("\n## ", 1)[0]
    (code,) = re.findall(r"^```python\n(.*?)^```$", section, re.DOTALL | re.MULTILINE)
    (name,) = re.findall(r'^    id = "(.+)"$', code, re.MULTILINE)
    sound, lying = tmp_path / "sound", tmp_path / "lying"
    for folder in (sound, lying):
        folder.mkdir()
    _install(sound, code)
    done = _itembank(sound, "audit", name)
    assert done.returncode == 0, done.stdout + done.stderr
    # A key that forgets what the story says is sold.
    wrong = code.replace(
        "sums, key, wrong = t.sub(filled, sold), left",
        "sums, key, wrong = t.sub(filled, sold), first",
        1,
    )
    assert wrong != code
    _install(lying, wrong)
    done = _itembank(lying, "audit", name)
    assert done.returncode == 1, done.stdout + done.stderr
