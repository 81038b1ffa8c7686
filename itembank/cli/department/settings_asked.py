"""The part of the conversation about a department in which its settings are changed."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from itembank.cli.department.answering import GoBack, answer
from itembank.cli.words.ask import Check, note, one_of
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.folding import same_name
from itembank.text.whole_number import whole_number
from itembank.work.department.made import read_kept
from itembank.work.department.setting_groups import CALLED, CLASS, WHOLE, Setting, usual_of
from itembank.work.department.setting_text import settings_in
from itembank.work.department.settings import (
    change_settings,
    department_data,
    table_of,
    with_choices,
)

ALL = "all"
USUAL = "usual"
Row = tuple[str, Setting, str]
"""A group of settings, a setting of it, and what it says."""


def change_in_talk(folder: Path) -> None:
    """Ask which settings are to change, of all classes or of one; each is kept at once.

    Raises:
        GoBack, StopHere, KeyboardInterrupt: as :func:`~itembank.cli.department.answering.answer`.
    """
    while True:
        names = [group.name for group in read_kept(folder).answers.classes]
        label = f"Settings of which class? {', '.join(names)}, or {ALL}; Enter when done"
        typed = answer(label, check=_named([ALL, *names]))
        if not typed:
            return
        try:
            _change_some(folder, "" if typed == ALL else typed)
        except GoBack:
            continue


def _named(words: list[str]) -> Check:
    """Return a check that takes one of `words`, however its letters are written."""
    told = one_of(words)

    def check(typed: str) -> str:
        return next((word for word in words if same_name(word, typed)), None) or told(typed)

    return check


def _change_some(folder: Path, name: str) -> None:
    """List the settings of a class, or of all, and change those whose number is typed."""
    while True:
        rows = _list(folder, name)

        def check(typed: str, most: int = len(rows)) -> str:
            number = whole_number(typed)
            if number is None or not 1 <= number <= most:
                raise ItembankError(f"Write a number from 1 to {most}.")
            return str(number)

        typed = answer("Number of the setting to change; Enter when done", check=check)
        if not typed:
            return
        group, setting, now = rows[int(typed) - 1]
        try:
            _change(folder, name, group, setting, now)
        except GoBack:
            continue


def _list(folder: Path, name: str) -> list[Row]:
    """Show the settings of a class, or of all, by number."""
    rows = list(_rows(folder, name))
    before = ""
    for number, (group, setting, now) in enumerate(rows, 1):
        if group != before:
            say(f"{CALLED[group]}:")
            before = group
        said = now.replace("\n", "; ") if now else f"usual: {usual_of(setting, group, name)}"
        note(f"{number}. {setting.called} ({said})")
    return rows


def _rows(folder: Path, name: str) -> Iterator[Row]:
    kept = read_kept(folder)
    table, _ = table_of(department_data(kept), name)
    for group, settings in (CLASS if name else WHOLE).items():
        now = settings_in(table, settings)
        for setting in with_choices(settings, kept):
            yield group, setting, now[setting.name]


def _change(folder: Path, name: str, group: str, setting: Setting, now: str) -> None:
    """Ask for a setting until what is typed can be kept; keep it."""
    if setting.says:
        note(setting.says)
    note(f"‘{USUAL}’ is {usual_of(setting, group, name)}.")
    several = setting.kind in ("lines", "topics", "days of topics")
    while True:
        said = _lines(setting, now) if several else _one_line(setting, now)
        if said == now:
            note("It stays as it is.")
            return
        # Read anew: somebody may have changed the files while this was typed.
        faults = change_settings(
            read_kept(folder), (CLASS if name else WHOLE)[group], {setting.name: said}, name
        )
        if not faults:
            note("Kept.")
            return
        for fault in faults.values():
            note(fault)


def _one_line(setting: Setting, now: str) -> str:
    choices = setting.choices or (("yes", "no") if setting.kind == "yes or no" else ())
    label = f"{setting.called}{': ' + ', '.join(choices) if choices else ''}"
    check = _named([*choices, USUAL]) if choices else None
    typed = answer(label, now, lambda said: said if said == now or not check else check(said))
    return "" if typed.casefold() == USUAL else typed


def _lines(setting: Setting, now: str) -> str:
    """Ask for lines, which are added to those there; ‘usual’ takes those away first."""
    note(f"A line is added to what stands; ‘{USUAL}’ takes all away. Enter when done.")
    lines = now.split("\n") if now else []
    for line in lines:
        note(line)
    while line := answer("Line"):
        if line.casefold() == USUAL:
            lines = []
        elif line not in lines:
            lines.append(line)
    return "\n".join(lines)
