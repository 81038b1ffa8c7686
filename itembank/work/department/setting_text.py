"""Settings as they are typed: from what a file says to text, and from text back to it."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any

from itembank.errors import ItembankError
from itembank.planning.calendar.days import parse_day
from itembank.planning.department.class_plan import NOT_YET
from itembank.planning.department.large_copies import typed_large_print
from itembank.text.folding import same_name
from itembank.text.whole_number import whole_number
from itembank.today import today
from itembank.work.department.looked_at import known_topics
from itembank.work.department.setting_groups import Setting


def settings_in(table: Mapping[str, Any], group: tuple[Setting, ...]) -> dict[str, str]:
    """Return each setting as it is typed, empty where it is left out.

    >>> from itembank.work.department.setting_groups import PRINT
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


def value_of(setting: Setting, said: str) -> Any:
    """Return what the file is to say for what was typed."""
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
