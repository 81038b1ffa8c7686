"""What people read names a day in words; only what is typed or stands in a file has figures."""

import ast
import re
from pathlib import Path

import itembank

ROOT = Path(itembank.__file__).parents[1]
DAYS = {"date", "since", "until", "monday"}
IN_FIGURES = {
    "itembank/cli/unite.py",  # a command to type
    "itembank/planning/calendar/scheme.py",  # a fault of a file, which has its days in figures
    "itembank/planning/department/folder.py",  # so has this one
    "itembank/planning/department/folder_checks.py",  # and what clashes in such files
    "itembank/planning/week/week_file.py",  # and this
}
MAY_HAVE = re.compile(rf"\b(?:{'|'.join(DAYS)})\b[\s)]*(?:\}}|![ars]|=\}})")
"""What a file that writes a day has in it: only these are parsed."""
OTHERWISE = {"itembank/bank/proof/signoff.py"}
"""What is called `since` there is no day, but what has changed."""


def days_in_figures(source):
    """Return the f-strings, docstrings aside, that would write a day as 2026-11-30."""
    for text in ast.walk(ast.parse(source)) if MAY_HAVE.search(source) else ():
        if not isinstance(text, ast.JoinedStr):
            continue
        for part in text.values:
            if not isinstance(part, ast.FormattedValue) or part.format_spec is not None:
                continue
            name = getattr(part.value, "attr", getattr(part.value, "id", None))
            if name in DAYS:
                yield ast.unparse(text)


def test_days_stand_in_words_wherever_a_person_reads_them():
    files = list((ROOT / "itembank").rglob("*.py"))
    assert len(files) > 300
    found = {
        path.relative_to(ROOT).as_posix()
        for path in files
        if any(days_in_figures(path.read_text(encoding="utf-8")))
    }
    assert found == IN_FIGURES | OTHERWISE


def test_the_search_tells_figures_from_words():
    assert list(days_in_figures('f"recorded on {lesson.date}"'))
    assert list(days_in_figures('f"there are {packs[0].date} of them"'))
    assert not list(days_in_figures('f"on {long_day(lesson.date)}, {lesson.date:%d}"'))
    assert not list(days_in_figures('"/class/{name}/lesson/{date}"'))
