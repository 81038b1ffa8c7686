"""Holds on to a bank while the plans of a class's coming weeks ask its questions."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from itembank.errors import ItembankError
from itembank.planning.calendar.calendar import monday
from itembank.planning.week.plans_asking import plans_asking
from itembank.text.folding import same_name
from itembank.today import today


def refuse_lost_banks(home: Path, before: str, after: str) -> None:
    """Refuse a change of a department's file that takes a bank from under a plan.

    `before` and `after` are the file's text. Plans of weeks that are over do not count, nor do
    classes that go.

    Raises:
        ItembankError: a plan of this week or a later one asks a question of a bank that its
            class would not draw on any more.
    """
    from itembank.work.bank.banks_at_hand import name_and_title

    there, becomes = tomllib.loads(before), tomllib.loads(after)
    if "banks" not in before or there == becomes:
        return
    for group in becomes.get("classes", []):
        old = next((row for row in there["classes"] if same_name(row["name"], group["name"])), None)
        if old is None:
            continue
        for folder in _banks(home, there, old) - _banks(home, becomes, group):
            name, title = name_and_title(folder)
            for asking in plans_asking(home, lambda text, n=name: text.startswith(f"{n}:")):  # type: ignore[misc]
                if asking.week >= monday(today()) and same_name(asking.class_name, group["name"]):
                    raise ItembankError(
                        f"{group['name']} is asked {asking.address} by {asking.path.name}, so its "
                        f"plans have to draw on {title}. Take it out of that week first. Nothing "
                        "was changed.",
                        field="banks",
                    )


def _banks(home: Path, data: dict[str, Any], group: dict[str, Any]) -> set[Path]:
    return {(home / name).resolve() for name in group.get("banks", data.get("banks", []))}
