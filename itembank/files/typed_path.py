"""Paths as a person types them, where what is typed may be no path at all."""

from __future__ import annotations

from pathlib import Path


def typed_path(text: str) -> Path:
    """Return the path that is typed; ``~`` is the home of whoever types it.

    >>> typed_path("bank/bank.toml").name
    'bank.toml'
    """
    path = Path(text)
    try:
        return path.expanduser()
    except RuntimeError:  # ~name, and nobody of that name has a home here
        return path


def is_file(path: Path) -> bool:
    """Tell whether there is such a file; what is too long for a path is none.

    >>> is_file(Path("8K A1 " * 1000))
    False
    """
    try:
        return path.is_file()
    except (OSError, ValueError):
        return False
