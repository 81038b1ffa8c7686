"""What a prompt's words ask is read in one part: nobody else looks for words in a prompt."""

import ast
import re
from pathlib import Path

import itembank

ROOT = Path(itembank.__file__).parent
OTHERS = (
    "bank",
    "desk",
    "selfmark",
    "proof",
    "items",
    "packs",
    "pages",
    "work",
    "cli",
    "marking/form",
    "marking/worth",
)
NO_PROMPT = {
    # What is asked of a figure is read here, whole, by the wordings of its kind.
    "items/asks/of_figure.py",
    # And here what is told beside it, so that nothing else is said than the question knows.
    "items/asks/told_beside.py",
    "items/asks/told_words.py",
    # These look for words in what a pupil typed, in what the tool itself says of a form, in tags,
    # or in a school's table of dates that somebody pasted.
    "marking/form/form_told.py",
    "marking/form/units_beside.py",
    "marking/worth/marked_by_kind.py",
    "pages/engine/maths/formula.py",
    "work/department/pasted/pasted_days.py",
    "work/department/pasted/pasted_year.py",
}
MAY_HAVE = re.compile(r"\blate\(|\bre\.")
"""What a module that has patterns has in it: only these are parsed."""
WORDS = re.compile(r"\\b[^\\]*[a-z]{4,}")


def patterns(path):
    """Yield the patterns that a module has, wherever it hands one to `re` or keeps it for later."""
    source = path.read_text(encoding="utf-8")
    for node in ast.walk(ast.parse(source)) if MAY_HAVE.search(source) else ():
        if isinstance(node, ast.Call) and node.args:
            called = ast.unparse(node.func)
            if called == "late" or called.startswith("re."):
                for part in ast.walk(node.args[0]):
                    if isinstance(part, ast.Constant) and isinstance(part.value, str):
                        yield node.lineno, part.value


def test_no_other_part_looks_for_words_in_a_prompt():
    found = [
        f"{path.relative_to(ROOT)}:{line}: {pattern}"
        for part in OTHERS
        for path in sorted((ROOT / part).rglob("*.py"))
        if str(path.relative_to(ROOT)) not in NO_PROMPT
        for line, pattern in patterns(path)
        if WORDS.search(pattern)
    ]
    assert found == []


def test_the_guard_sees_a_pattern_of_words():
    assert any(
        WORDS.search(pattern)
        for _, pattern in patterns(ROOT / "wording/tasks/answers/written_how.py")
    )
