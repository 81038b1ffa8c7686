"""The banks that ship with the tool: the demo department, and banks to start from."""

from __future__ import annotations

from pathlib import Path


def shipped_folder() -> Path:
    """Return the folder of the banks that ship with the tool.

    What is installed holds them inside the package; in a checkout they stand at its top.

    >>> sorted(folder.name for folder in shipped_folder().iterdir() if folder.is_dir())
    ['key-stage-3', 'key-stage-4', 'larkhythe', 'three-years']
    """
    package = Path(__file__).parents[1]
    inside = package / "banks"
    return inside if inside.is_dir() else package.parent / "banks"


def shipped_files() -> dict[str, bytes]:
    """Return the files that ship, by their names with / within that folder.

    What was made in a checkout since (plans, packs, results) is not among them.

    >>> "larkhythe/department.toml" in shipped_files()
    True
    """
    folder = shipped_folder()
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for pattern in ("*/*.toml", "*/questions/*.toml", "*/schemes/*.toml")
        for path in sorted(folder.glob(pattern))
    }
