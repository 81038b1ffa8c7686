"""Where a department stands for someone who names none: a folder of their own, or the demo in it.

A colleague who installs the tool and opens it has no folder in mind. What they make then goes to
``itembank/school`` in their home folder, where they find it again; the demo school, which they
may look round, stands beside it in ``itembank/demo``.
"""

from __future__ import annotations

from pathlib import Path

from itembank.errors import ItembankError
from itembank.planning.department.department import FILE_NAME, find_department

OWN = "school"
DEMO = "demo"
DEMO_SCHOOL = "larkhythe"


def usual_folder() -> Path:
    """Return the folder that holds both, which may not be there yet."""
    return Path.home() / "itembank"


def usual_home() -> Path:
    """Return the department to open: the person's own, else the demo, else where theirs will be."""
    own, demo = own_home(), _demo()
    return demo if is_department(demo) and not is_department(own) else own


def own_home() -> Path:
    """Return where a person's own department is or will be."""
    return usual_folder() / OWN


def is_demo(home: Path) -> bool:
    """Tell whether a department is the demo school in the person's folder."""
    return home == _demo()


def _demo() -> Path:
    return usual_folder() / DEMO / DEMO_SCHOOL


def home_near(named: Path | None) -> Path:
    """Return the department that is named, or the one around the current folder, or the usual one.

    Raises:
        ItembankError: the folder that is named holds none.
    """
    if named is not None:
        return find_department(named)
    try:
        return find_department()
    except ItembankError:
        return usual_home()


def is_department(folder: Path) -> bool:
    """Tell whether a folder holds a department."""
    return (folder / FILE_NAME).is_file()


def demo_home() -> Path:
    """Return the demo school in the person's folder, written there if it was not.

    Raises:
        ItembankError: something else is there, or it cannot be written.
    """
    from itembank.files.shipped import shipped_files
    from itembank.files.together import Together

    folder = usual_folder() / DEMO
    home = _demo()
    if is_department(home):
        return home
    try:
        with Together() as change:
            change.folder(folder, shipped_files(), free=True)
    except FileExistsError:
        raise ItembankError(
            f"{folder} is there already and holds no demo school. Move it away first."
        ) from None
    except OSError as error:
        reason = error.strerror or str(error)
        raise ItembankError(f"{folder} cannot be written: {reason}.") from None
    return home
