"""What a department's file may say beyond the answers: print, sources, planning, deciding.

Every setting may be left out; an empty field is that. What a value may be is said by the readers
of the file alone: a changed file is read in memory first, and their faults stand beside the
settings that they are about.
"""

from __future__ import annotations

import copy
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.files.toml_edit import with_data
from itembank.planning.department import department as departments
from itembank.planning.department.folder import read_folder
from itembank.text.folding import same_name
from itembank.work.department.looked_at import known_topics
from itembank.work.department.made import Kept, write_changed
from itembank.work.department.setting_groups import Setting
from itembank.work.department.setting_text import settings_in, value_of

Data = dict[str, Any]


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
            _put(table, setting, value_of(setting, said) if said else None)
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
