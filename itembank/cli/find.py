"""What several commands look up: the department, its topics, names to complete."""

from __future__ import annotations

from pathlib import Path

from itembank.planning.department import (
    FILE_NAME,
    Department,
    find_department,
    read_department,
)


def nearby_department(folder: Path | None, known: tuple[str, ...] | None) -> Department | None:
    """Return the named department, or the one around the current folder, or None.

    Raises:
        ItembankError: the named folder is no department, or its file has faults.
    """
    if folder is None:
        here = Path.cwd()
        if not any((one / FILE_NAME).is_file() for one in (here, *here.parents)):
            return None
    return read_department(find_department(folder), known)


def complete_topic(incomplete: str) -> list[str]:
    """Return the topics that begin as typed, for the shell's completion."""
    from itembank.items.registry import topic_ids

    return [topic for topic in topic_ids() if topic.startswith(incomplete)]
