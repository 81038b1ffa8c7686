"""What a department's file may say beyond the answers: print, sources, planning, deciding.

Every setting may be left out; an empty field is that. What a value may be is said by the readers
of the file alone: a changed file is read in memory first, and their faults stand beside the
settings that they are about.
"""

from __future__ import annotations

import copy
import datetime
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Literal

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.files.toml_edit import with_data
from itembank.planning.calendar.days import parse_day
from itembank.planning.department import department as departments
from itembank.planning.department.class_plan import NOT_YET
from itembank.planning.department.department import PAPERS
from itembank.planning.department.folder import read_folder
from itembank.planning.department.large_copies import typed_large_print
from itembank.planning.department.pack_request import SELF_MARK
from itembank.text.folding import same_name
from itembank.text.whole_number import whole_number
from itembank.today import today
from itembank.work.department.looked_at import known_topics
from itembank.work.department.made import Kept, write_changed

Kind = Literal[
    "whole",
    "text",
    "yes or no",
    "choice",
    "lines",
    "copies",
    "topics or all",
    "topics",
    "days of topics",
]
Data = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Setting:
    """One setting: its key in the file, what it is called, and what leaving it out means."""

    key: tuple[str, ...]
    called: str
    usual: str
    kind: Kind = "whole"
    says: str = ""
    choices: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """Return the key as one word."""
        return ".".join(self.key)


def _planning(key: str, called: str, usual: str, says: str = "") -> Setting:
    return Setting(("planning", key), called, usual, says=says)


PRINT = (
    Setting(("title",), "Title of the next single starter", "Starter", "text"),
    Setting(("questions",), "Questions in a starter", "8"),
    Setting(("follow_up",), "Questions on a follow-up sheet", "10"),
    Setting(
        ("large_print",),
        "Large print",
        "none",
        "copies",
        "How many copies, as in 2, or for which seats, as in A3, C5. No names.",
    ),
    Setting(("paper",), "Paper in the tray", "white", "choice", choices=PAPERS),
    Setting(
        ("print_tint",), "Print that tint on white paper", "no", "yes or no", "It covers the page."
    ),
    Setting(
        ("self_mark",),
        "Pupils with a device see how they went",
        "when done",
        "choice",
        choices=SELF_MARK,
    ),
)
SOURCES = (
    Setting(
        ("banks",), "Question banks", "none", "lines", "A folder a line, seen from this department."
    ),
    Setting(
        ("questions_from",),
        "Questions come from",
        "both, where there is a bank",
        "choice",
        choices=("generated", "bank", "both"),
    ),
    Setting(("prefer",), "Take first", "bank", "choice", choices=("bank", "generated")),
    Setting(
        ("signed_only",), "Only questions of a bank that a colleague signed", "no", "yes or no"
    ),
    Setting(
        ("beyond_year",),
        "Also ask what the national curriculum places after the class’s year",
        "no",
        "topics or all",
        "Write yes, no, or the topics, as in equations.inequalities.",
    ),
)
PLANNING = (
    _planning("weeks_apart", "Weeks before a question comes back", "6"),
    _planning("recent_days", "Days for which a topic counts as recent", "28"),
    _planning("recent_questions", "Of eight questions, the fewest on recent topics", "1"),
    _planning("older_questions", "Of eight questions, the fewest on older topics", "3"),
    _planning(
        "weak", "How much weakness weighs", "50", "0 is not at all, 100 as much as time unseen."
    ),
    _planning("rest_days", "Days of rest before a topic comes back", "3"),
)
DECIDING = (
    Setting(("deciding", "again_below"), "Teach again to all, below this per cent right", "50"),
    Setting(("deciding", "on_from"), "Go on, from this per cent right", "80"),
    Setting(("deciding", "confidence"), "How sure the intervals shown are, in per cent", "90"),
)
GENERAL = (
    Setting(
        ("default_class",),
        "The class that is meant where none is named",
        "the first",
        "choice",
        "At the terminal.",
    ),
)
TEACHING = (
    Setting(
        ("scheme",), "The order of topics it follows", "none, and no weeks are planned", "choice"
    ),
    Setting(
        ("taught",),
        "Where it runs ahead of that order, or behind",
        "as the order says",
        "days of topics",
        "A line for each topic, by its name: the day on which it was taught, or not yet. "
        "As in: Sharing an amount in a given ratio: 19 Nov 2026.",
    ),
    Setting(
        ("topics",),
        "Topics of the next single starter",
        "needed",
        "topics",
        "A topic a line, by its name. A week takes its topics from the order instead.",
    ),
)
WHOLE = {"general": GENERAL, "sources": SOURCES, "planning": PLANNING, "deciding": DECIDING}
"""The settings of the whole department, by group."""
CLASS = {"teaching": TEACHING, "print": PRINT, "sources": SOURCES, "planning": PLANNING}
"""The settings that a class may have of its own, by group."""
CALLED = {
    "general": "Which class is meant",
    "teaching": "Topics: its order, where it is in it",
    "print": "Print",
    "sources": "Where questions come from",
    "planning": "How starters are planned",
    "deciding": "When to teach again",
}
"""What each group is called."""


def usual_of(setting: Setting, group: str, class_name: str = "") -> str:
    """Return what leaving a setting out means, for all classes or for one.

    >>> usual_of(PLANNING[0], "planning"), usual_of(PLANNING[0], "planning", "8K")
    ('6', 'as for all classes')
    """
    if class_name and group in WHOLE:
        return "as for all classes"
    return setting.usual


def with_choices(group: tuple[Setting, ...], kept: Kept) -> tuple[Setting, ...]:
    """Return settings with what a department's own files offer to choose from."""
    data = department_data(kept)
    own = {
        "default_class": tuple(row["name"] for row in data.get("classes", [])),
        "scheme": tuple(
            sorted(Path(name).stem for name in kept.files if name.startswith("schemes/"))
        ),
    }
    return tuple(
        replace(setting, choices=own[setting.name]) if setting.name in own else setting
        for setting in group
    )


def department_data(kept: Kept) -> Data:
    """Return what the department's file says."""
    return tomllib.loads(kept.files[departments.FILE_NAME])


def table_of(data: Data, class_name: str = "") -> tuple[Data, tuple[str | int, ...]]:
    """Return the table of a class, or the whole file's without one, and its place in the file.

    Raises:
        ItembankError: there is no such class.
    """
    if not class_name:
        return data, ()
    for place, row in enumerate(data.get("classes", [])):
        if same_name(row["name"], class_name):
            return row, ("classes", place)
    raise ItembankError(f"There is no class {class_name}.")


def settings_in(table: Mapping[str, Any], group: tuple[Setting, ...]) -> dict[str, str]:
    """Return each setting as it is typed, empty where it is left out.

    >>> settings_in({"questions": 6, "large_print": ["A3", "C5"], "print_tint": True}, PRINT[1:6])
    {'questions': '6', 'follow_up': '', 'large_print': 'A3, C5', 'paper': '', 'print_tint': 'yes'}
    """
    found = {}
    for setting in group:
        value: Any = table
        for key in setting.key:
            value = value.get(key) if isinstance(value, Mapping) else None
        found[setting.name] = _shown(setting, value)
    return found


def _shown(setting: Setting, value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        if setting.kind == "copies":
            return "1" if value else ""
        return "yes" if value else "no"
    if setting.kind == "topics":
        return "\n".join(_title(name) for name in value)
    if setting.kind == "days of topics":
        return "\n".join(f"{_title(name)}: {day}" for name, day in _flat(value).items())
    if isinstance(value, list):
        return ("\n" if setting.kind == "lines" else ", ").join(map(str, value))
    return str(value)


def with_settings(
    table: Data, group: tuple[Setting, ...], typed: Mapping[str, str]
) -> dict[str, str]:
    """Change settings in a table to what is typed; return what cannot be read, by its name.

    What is typed as it stands there already is left as it is written.
    """
    faults = {}
    was = settings_in(table, group)
    for setting in group:
        said = typed.get(setting.name, was[setting.name]).replace("\r\n", "\n").strip()
        if said == was[setting.name]:
            continue
        try:
            _put(table, setting, _value(setting, said) if said else None)
        except ItembankError as error:
            faults[setting.name] = str(error)
    return faults


def _put(table: Data, setting: Setting, value: Any) -> None:
    *above, key = setting.key
    for name in above:
        if value is None and name not in table:
            return
        table = table.setdefault(name, {})
    if value is None:
        table.pop(key, None)
    else:
        table[key] = value


def _value(setting: Setting, said: str) -> Any:
    match setting.kind:
        case "whole":
            number = whole_number(said)
            if number is None:
                raise ItembankError(f"Write a whole number, not ‘{said[:40]}’.")
            return number
        case "copies":
            copies = typed_large_print(said)
            return list(copies.seats) if any(copies.seats) else len(copies.seats)
        case "lines":
            return [line.strip() for line in said.split("\n") if line.strip()]
        case "yes or no":
            return _yes(said)
        case "topics":
            return [_topic(line) for line in _filled(said)]
        case "days of topics":
            return dict(_taught(line) for line in _filled(said))
        case "topics or all":
            if said.casefold() in ("yes", "no"):
                return _yes(said)
            return [name.strip() for name in said.replace("\n", ",").split(",") if name.strip()]
        case _:
            return said


def _filled(said: str) -> list[str]:
    return [line.strip() for line in said.split("\n") if line.strip()]


def _flat(taught: Mapping[str, Any], before: str = "") -> dict[str, Any]:
    """Return days by topic: without quotation marks, ratio.share is a table in a table."""
    found: dict[str, Any] = {}
    for name, value in taught.items():
        whole = f"{before}{name}"
        found |= _flat(value, f"{whole}.") if isinstance(value, Mapping) else {whole: value}
    return found


def _title(topic: str) -> str:
    """Return what a topic is called, where no other is called the same; else its id."""
    titles = known_topics()[0]
    title = titles.get(topic, topic)
    return title if _topic(title) == topic else topic


def _topic(typed: str) -> str:
    """Return the id of the topic that somebody named by it or by its title."""
    titles = known_topics()[0]
    called = [id for id, title in titles.items() if same_name(title, typed)]
    return typed if typed in titles or len(called) != 1 else called[0]


def _taught(line: str) -> tuple[str, datetime.date | str]:
    name, colon, when = (part.strip() for part in line.rpartition(":"))
    if not colon or not name:
        raise ItembankError(f"Write a topic and its day, with a colon between, not ‘{line[:60]}’.")
    if when.casefold() == NOT_YET:
        return _topic(name), NOT_YET
    return _topic(name), parse_day(when, today(), past=True)


def _yes(said: str) -> bool:
    if said.casefold() not in ("yes", "no"):
        raise ItembankError(f"Write yes or no, not ‘{said[:40]}’.")
    return said.casefold() == "yes"


def change_settings(
    kept: Kept, group: tuple[Setting, ...], typed: Mapping[str, str], class_name: str = ""
) -> dict[str, str]:
    """Change settings in a department's file; return what is wrong, by a setting's name.

    Where anything is wrong nothing is written; what is about none of these stands under "".

    Raises:
        ItembankError: there is no such class, somebody changed the file meanwhile, or it cannot
            be written.
    """
    data = copy.deepcopy(department_data(kept))
    table, place = table_of(data, class_name)
    faults = with_settings(table, group, typed)
    if not faults:
        for path, message in write_data(kept, data):
            inner = path[len(place) :] if path[: len(place)] == place else ()
            name = next((s.name for s in group if inner[: len(s.key)] == s.key), "")
            if not name and inner:  # of a table that holds several, its first
                name = next((s.name for s in group if s.key[0] == inner[0]), "")
            faults.setdefault(name, message)
    return faults


def write_data(kept: Kept, data: Data) -> list[tuple[tuple[str | int, ...], str]]:
    """Have the department's file say `data`, and return what its readers find wrong.

    Each fault has its place in the file. Where there is one nothing is written.

    Raises:
        ItembankError: somebody changed the file meanwhile, or it cannot be written.
    """
    name = departments.FILE_NAME
    files = {**kept.files, name: with_data(kept.files[name], _without_empty(data))}
    titles, prerequisites = known_topics()
    try:
        read_folder(kept.folder, tuple(titles), prerequisites, files)
    except FileFaults as error:
        # As where it was read: a calendar that is not there yet is no fault of this.
        found = [(f.path, f.message) for f in error.faults if f.line or f.path]
        if found:
            return found
    try:
        write_changed(kept, files)
    except ItembankError as error:
        if not error.field:
            raise
        return [((error.field,), str(error))]
    return []


def _without_empty(data: Data) -> Data:
    """Return data without tables from which the last setting was taken."""
    for table in (data, *data.get("classes", [])):
        for name in ("planning", "deciding"):
            if table.get(name) == {}:
                del table[name]
    return data
