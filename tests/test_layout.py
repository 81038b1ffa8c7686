"""The folders of the tool: no circle among them, a sentence for each, names that are one."""

import ast
import contextlib
import re
from collections import Counter, defaultdict
from pathlib import Path

import pytest

import itembank

ROOT = Path(itembank.__file__).parents[1]
MODULES = {
    ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__"): path
    for part in ("itembank", "generators")
    for path in sorted((ROOT / part).rglob("*.py"))
}
PACKAGES = {name for name, path in MODULES.items() if path.name == "__init__.py"}


def folder(module):
    return module if module in PACKAGES else module.rpartition(".")[0]


IMPORT = re.compile(r"^ *((?:from|import) [^(\n]+(?:\([^)]*\))?)", re.MULTILINE)
"""What may be a statement that imports: it begins a line, and the rest of a file is not read."""


def statements(source):
    """Yield the statements of some code that import; a sentence that begins as one is none."""
    for text in IMPORT.findall(source):
        with contextlib.suppress(SyntaxError):
            yield from ast.parse(text.strip()).body


def imports(source):
    """Yield the modules that some code imports, wherever in it."""
    for node in statements(source):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            for name in node.names:
                whole = f"{node.module}.{name.name}"
                yield whole if whole in MODULES else node.module


def arrows():
    found = defaultdict(set)
    for module, path in MODULES.items():
        if path.name == "__main__.py":
            continue
        for other in imports(path.read_text(encoding="utf-8")):
            if other in MODULES and folder(other) != folder(module):
                found[folder(module)].add(folder(other))
    return found


def reached(start, found):
    seen, waiting = set(), [start]
    while waiting:
        for other in found[waiting.pop()] - seen:
            seen.add(other)
            waiting.append(other)
    return seen


def test_no_folder_leads_back_to_itself():
    found = arrows()
    assert len(found) > 40
    assert [name for name in sorted(found) if name in reached(name, found)] == []


def test_an_import_is_seen_wherever_it_stands():
    inside = "match a:\n case 1:\n  try:\n   f\n  except E:\n   import {}\n  finally:\n   import {}"
    source = "def f():\n" + "".join(
        f" {line}\n"
        for line in (
            "if a:",
            " pass",
            "else:",
            " with b:",
            "  from itembank.text import in_words",
            "while a:",
            " import itembank.errors",
            *inside.format("itembank.packs.build", "itembank.files.disk").splitlines(),
        )
    )
    assert set(imports(source)) == {
        *("itembank.text.in_words", "itembank.errors"),
        *("itembank.packs.build", "itembank.files.disk"),
    }


def test_the_search_for_circles_finds_one():
    found = defaultdict(set, {"a": {"b"}, "b": {"c"}, "c": {"a"}, "d": {"a"}})
    assert [name for name in sorted(found) if name in reached(name, found)] == ["a", "b", "c"]


def test_no_two_files_have_one_name():
    """A command, a page and what they do may share theirs: they are sides of one thing."""
    names = Counter(
        path.name
        for path in MODULES.values()
        if path.relative_to(ROOT).parts[1] != "cli"
        and path.relative_to(ROOT).parts[1:3] != ("desk", "pages")
        and not path.name.startswith("__")
        and path.relative_to(ROOT).parts[0] == "itembank"
    )
    assert [name for name, count in names.items() if count > 1] == []


@pytest.mark.parametrize("package", sorted(PACKAGES))
def test_every_folder_says_what_it_holds(package):
    assert ast.get_docstring(ast.parse(MODULES[package].read_text(encoding="utf-8")))


MOST_FILES = 24
NAMED_ALIKE = {
    "itembank.cli": "a command",
    "itembank.desk.pages": "a page, and a template of the same name",
    "itembank.items.asks": "a kind of question",
}
"""The folders that may hold any number of files, and what each file of them is."""


def test_no_folder_is_so_full_that_it_hides_its_order():
    """What belongs together stands in a folder of its own, which says what it holds."""
    counts = Counter(folder(module) for module in MODULES if module not in PACKAGES)
    full = {name: count for name, count in counts.items() if count > MOST_FILES}
    assert {name for name in full if name.startswith("itembank")} <= set(NAMED_ALIKE)


NO_NOUNS = ("one", "each", "other")
"""What says nothing of what it is. *Each* may be an amount that each has, *other* the second of
two, so that these are looked for only where something is looped over."""
MAY_BIND = re.compile(r"\bone\b\s*(?![\w\s.])|\b(?:one|each|other)\s+in\b|\beach,|, each\b")
"""The names where they may be bound, outside of what is said."""
SAID = re.compile(r'^ *"""[\s\S]*?"""|^ *#.*|  # .*', re.MULTILINE)
"""Docstrings and comments, where they are words of a sentence."""


def called_no_noun(source):
    """Return the lines that bind the name ``one``, or loop over something by another of these."""
    if not MAY_BIND.search(SAID.sub("", source)):
        return []  # most files are not worth parsing
    found = []
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.For | ast.comprehension):
            names = [node.target, *getattr(node.target, "elts", ())]
            # (first, other) are a pair.
            words = NO_NOUNS if len(names) == 1 else ("each",)
            found += [
                name.lineno for name in names if isinstance(name, ast.Name) and name.id in words
            ]
        if isinstance(node, ast.Name) and node.id == "one" and isinstance(node.ctx, ast.Store):
            found.append(node.lineno)
        if isinstance(node, ast.arg) and node.arg == "one":
            found.append(node.lineno)
    return sorted(set(found))


def test_variables_are_nouns():
    found = {}
    for name, path in MODULES.items():
        if lines := called_no_noun(path.read_text(encoding="utf-8")):
            found[name] = lines
    assert found == {}


def test_the_search_for_names_that_are_no_nouns_finds_each_binding():
    text = "# one of many. And one.\n"
    text += "for one in a:\n    b = [one for c in d]\nlambda one: 1\none = 'one'\nf(one=2)\n"
    text += "[each for each in a]\n{k: 1 for k, each in a}\nfor other in a:\n    pass\n"
    text += "for first, other in a:\n    each = 3\n"
    assert called_no_noun(text) == [2, 4, 5, 7, 8, 9]
