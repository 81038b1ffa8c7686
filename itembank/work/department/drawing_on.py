"""Has the plans of a department draw on one more bank, as its file then says."""

from __future__ import annotations

import copy
import os
from pathlib import Path

from itembank.errors import ItembankError
from itembank.work.department.made import Kept
from itembank.work.department.settings import department_data, table_of, write_data


def draw_on(kept: Kept, bank: Path, class_name: str = "") -> bool:
    """Have plans draw on a bank too; tell whether the department's file had to change.

    The bank goes to those of the whole department; with a class that names banks of its own, to
    these. Its place is written as it is seen from the department's folder.

    Raises:
        ItembankError: the class takes generated questions alone, there is no such class, the
            file changed meanwhile or cannot be written.
    """
    data = copy.deepcopy(department_data(kept))
    table, _ = table_of(data, class_name)
    if table.get("questions_from", data.get("questions_from")) == "generated":
        who = class_name or "The department"
        raise ItembankError(
            f"{who} takes only questions that the tool makes. Let its questions come from banks "
            "too, in the set-up."
        )
    place = table if "banks" in table else data
    named = place.setdefault("banks", [])
    if bank.resolve() in {(kept.folder / name).resolve() for name in named}:
        return False
    named.append(_seen_from(kept.folder, bank))
    if faults := write_data(kept, data):
        raise ItembankError("\n".join(message for _, message in faults))
    return True


def _seen_from(home: Path, bank: Path) -> str:
    try:
        return Path(os.path.relpath(bank.resolve(), home.resolve())).as_posix()
    except ValueError:  # on another drive
        return bank.resolve().as_posix()
