"""What DEVELOPERS.md names is there: every path, every module, every name of the code."""

import re
from pathlib import Path

import pytest

from itembank.cli.bank.group import COMMANDS as BANK_COMMANDS
from itembank.cli.main import COMMANDS

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "DEVELOPERS.md").read_text("utf-8")
PROSE = re.sub(r"^```.*?^```$", "", TEXT, flags=re.DOTALL | re.MULTILINE)
QUOTED = sorted({name for span in re.findall(r"`([^`]+)`", PROSE) for name in span.split()})
CODE = [
    path
    for part in ("itembank", "generators", "tests", "bench", "installed")
    for path in (ROOT / part).rglob("*")
    if path.suffix == ".py" or path.is_dir()
]
# What a department or a reader makes, and addresses on a network: no files of this project.
MADE = {"TOPIC.toml", "pack.json", "itembank/items/asks/yours.py", "generators/<strand>/"}


def is_a_path(name: str) -> bool:
    return (
        "://" not in name
        and not name.startswith(".venv")
        and ("/" in name or name.endswith((".py", ".toml", ".md", ".txt")))
    )


def is_there(name: str) -> bool:
    """Tell whether a path stands where it says, or a bare file name somewhere in the tree.

    >>> is_there("proof/audit.py"), is_there("proof/nothing.py")
    (True, False)
    """
    path = name.rstrip("/")
    if "*" in path:
        return any(ROOT.glob(path))
    if any((base / path).exists() for base in (ROOT, ROOT / "itembank")):
        return True
    if "/" in path:
        return False
    return any(file.name == path for file in CODE) or any((ROOT / "banks").rglob(path))


def is_a_module(name: str) -> bool:
    """Tell whether ``itembank.x.y`` is a module, or ``module.name`` a name that a module binds."""
    if is_there(name.replace(".", "/") + ".py") or name == "itembank.topics":
        return True
    module, _, inside = name.rpartition(".")
    binds = re.compile(rf"^(?:def|class) {re.escape(inside)}\b|^{re.escape(inside)}\b ?[:=]", re.M)
    return any(
        binds.search(file.read_text("utf-8")) for file in CODE if file.name == f"{module}.py"
    )


def test_every_path_it_names_is_there() -> None:
    named = {name for name in QUOTED if is_a_path(name)}
    assert named
    assert [name for name in sorted(named - MADE) if not is_there(name)] == []


@pytest.mark.parametrize(
    "name",
    [
        name
        for name in QUOTED
        if re.fullmatch(r"[a-z_]+(\.[A-Za-z_]+)+", name)
        and not is_a_path(name)
        and not name.endswith((".json", ".sqlite3"))
        and name not in ("id.hash", "sys.modules", "your.topic")
    ],
)
def test_every_module_it_names_is_there(name: str) -> None:
    assert is_a_module(name)


def test_a_name_that_is_not_there_is_found() -> None:
    assert not is_there("all_or_none.py")
    assert not is_there("packs/all_or_none.py")
    assert not is_a_module("reading.as_item")
    assert not is_a_module("itembank.bank.model.nothing")


def test_the_layout_names_every_part() -> None:
    layout = TEXT.split("\n## Layout\n", 1)[1].split("\n## ", 1)[0]
    parts = [file.parent for file in (ROOT / "itembank").glob("*/__init__.py")]
    assert len(parts) > 10
    assert [part.name for part in parts if f"`itembank/{part.name}/`" not in layout] == []


def test_every_name_of_the_code_that_it_names_is_there() -> None:
    """Classes, constants and functions, as they stand alone in the text."""
    code = {
        word
        for file in CODE
        if file.suffix == ".py" and file != Path(__file__)
        for word in (*re.findall(r"\w+", file.read_text("utf-8")), file.stem)
    }
    named = {
        name
        for name in QUOTED
        if re.fullmatch(r"[A-Z][a-z]+[A-Za-z]*|[A-Z][A-Z_]{2,}|[a-z]+(?:_[a-z]+)+", name)
    }
    assert len(named) > 100
    # FOLDER PACKAGE stand for what a reader types.
    assert sorted(named - code - {"PACKAGE", "FOLDER"}) == []


PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted((ROOT / "docs").glob("*.md"))]


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_every_link_of_a_page_leads_somewhere(page: Path) -> None:
    links = re.findall(r"\]\(([^)#\s]+)", page.read_text("utf-8"))
    assert [link for link in links if "://" not in link and not (page.parent / link).exists()] == []


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_every_command_that_a_page_names_is_one(page: Path) -> None:
    text = page.read_text("utf-8")
    groups = {"bank": BANK_COMMANDS}
    for words in re.findall(r"(?:`|^)(?:\.venv/bin/)?itembank ([a-z][a-z -]*)", text, re.MULTILINE):
        name, *rest = words.split()
        assert name in COMMANDS, words
        if name in groups and rest:
            assert rest[0] in groups[name], words
