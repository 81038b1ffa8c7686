"""What a department's files were before each change of its set-up, to take changes back.

Each change is a file in ``plans/earlier/set-up`` under a number, the highest the last. It holds
the text of every file that the change replaced, and what each became: a file that a person has
edited since is not touched.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from itembank.errors import ItembankError
from itembank.files.snapshot import take
from itembank.files.together import Together
from itembank.files.toml_document import toml_document
from itembank.files.toml_table import TomlFile
from itembank.planning.department.department import FILE_NAME
from itembank.text.whole_number import whole_number
from itembank.work.department.banks_lost import refuse_lost_banks
from itembank.work.department.class_renamed import Renamed

FOLDER = Path("plans") / "earlier" / "set-up"
MOST = 20
"""How many changes can be taken back."""


def earlier_set_ups(home: Path) -> list[Path]:
    """Return the files of the changes that can be taken back, the oldest first."""
    found = [
        (number, path)
        for path in (home / FOLDER).glob("*.toml")
        if (number := whole_number(path.stem)) is not None
    ]
    return [path for _, path in sorted(found)]


def note_change(
    change: Together,
    home: Path,
    was: Mapping[str, str | None],
    now: Mapping[str, str | None],
    renamed: Iterable[Renamed] = (),
) -> None:
    """Have a change also keep what files were before it, and which classes it renamed.

    None stands for no file.
    """
    there = earlier_set_ups(home)
    number = int(there[-1].stem) + 1 if there else 1
    rows: list[dict[str, Any]] = []
    for name, text in was.items():
        row: dict[str, Any] = {"name": name, "became": digest(now[name])}
        rows.append(row if text is None else {**row, "text": text})
    names = [{"was": new.was, "name": new.name} for new in renamed]
    data = toml_document({"files": rows} | ({"renamed": names} if names else {}))
    change.file(home / FOLDER / f"{number:04}.toml", data.encode())


def clear_oldest_set_ups(home: Path) -> None:
    """Take away what is beyond the number of changes that can be taken back."""
    for path in earlier_set_ups(home)[:-MOST]:
        path.unlink(missing_ok=True)


def forget_earlier_set_ups(home: Path) -> None:
    """Take away all that the set-up was before: no change of it can be taken back any more."""
    for path in earlier_set_ups(home):
        path.unlink(missing_ok=True)


def take_back_set_up(home: Path) -> tuple[Path, ...]:
    """Put a department's files back to what they were before the last change of its set-up.

    Raises:
        ItembankError: no change is known, a file was edited since, a plan asks a question of a
            bank that would go, or it cannot be written.
    """
    there = earlier_set_ups(home)
    if not there:
        raise ItembankError("No change of the set-up is known that can be taken back.")
    noted = TomlFile(there[-1]).data
    rows = noted["files"]
    # Plans and results are not in these files: they would stay under the new name.
    for moved in noted.get("renamed", ()):
        raise ItembankError(
            f"{moved['was']} was renamed {moved['name']} then, and its plans and results went with "
            "it. Give it its old name back under Classes: they follow. Nothing was changed."
        )
    changed = []
    try:
        with Together() as change:
            for row in rows:
                path = home / row["name"]
                now = take(path)
                if digest(None if now.raw is None else now.text) != row["became"]:
                    raise ItembankError(
                        f"{path} was edited since that change, so it is not put back. "
                        "Nothing was changed."
                    )
                if "text" in row:
                    if row["name"] == FILE_NAME:
                        refuse_lost_banks(home, now.text, row["text"])
                    change.file(path, now.encode(row["text"]), was=now)
                else:
                    change.take_away(now)
                changed.append(path)
            # With the files or not at all, so that no change is taken back twice.
            change.take_away(take(there[-1]))
    except OSError as error:
        reason = error.strerror or str(error)
        raise ItembankError(f"{home} cannot be written: {reason}. Nothing was changed.") from None
    return tuple(changed)


def digest(text: str | None) -> str:
    """Return a short name for just this text; "" for no file."""
    return "" if text is None else hashlib.sha256(text.encode()).hexdigest()


def digest_of(files: Mapping[str, str]) -> str:
    """Return a short name for just these texts of files."""
    return digest("".join(f"{name}\0{digest(text)}\0" for name, text in sorted(files.items())))
