"""Where the desk stands: a department's folder, the folder for packs, and what is read of them.

Files are the truth, and the terminal writes the same ones: what is kept in memory is kept with
what the files looked like, and read anew as soon as one of them looks otherwise.
"""

from __future__ import annotations

import os
import threading
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError, NotFound
from itembank.files.faults import join_words

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.planning.department.folder import Folder
    from itembank.work.week.planner import Planner

Look = tuple[tuple[str, int, int], ...]
"""What files look like from outside: path, time of change and size of each."""
LONGEST_NAME = 255
"""Bytes a file's name has at most, on every file system that a desk stands on (from memory)."""


@dataclass
class Desk:
    """What all pages share.

    Parameters
    ----------
    home
        The department's folder.
    packs
        The folder in which packs go, as for the commands of the terminal.
    """

    home: Path
    packs: Path
    _lock: threading.Lock = field(default_factory=threading.Lock, repr=False)
    _read: tuple[Look, Folder] | None = field(default=None, repr=False)

    def move_to(self, home: Path) -> None:
        """Be the desk of another department; its packs go where the terminal would put them."""
        from itembank.work.places import packs_place

        with self._lock:
            self.home, self.packs, self._read = home, packs_place(home), None

    def folder(self) -> Folder:
        """Return the department with its calendar and schemes, as its files have it now.

        Raises:
            FileFaults: every fault of every file, each with file and line.
        """
        # Looked at before it is read: what changes in between is read again at the next page.
        look = look_of(self.home)
        with self._lock:
            if self._read is not None and self._read[0] == look:
                return self._read[1]
        from itembank.work.week.begin import folder_of

        read = folder_of(self.home)
        with self._lock:
            self._read = look, read
        return read

    @property
    def department(self) -> Department:
        """Return the department."""
        return self.folder().department

    def group(self, name: str) -> SchoolClass:
        """Return a class.

        Raises:
            NotFound: there is no such class.
        """
        return _class_at(self.department, name)

    def planner(self, name: str) -> Planner:
        """Return what plans the weeks of a class.

        Raises:
            NotFound: there is no such class.
        """
        from itembank.work.week.begin import planner_in

        folder = self.folder()
        return planner_in(folder, _class_at(folder.department, name))

    def inside(self, *names: str) -> Path:
        """Return a path in the folder for packs; nothing outside of it can be named.

        Raises:
            ItembankError: the names lead out of that folder.
        """
        nowhere = NotFound("There is no such file here.")
        if any(not name or name != os.path.basename(name) or "\0" in name for name in names):
            raise nowhere
        if any(len(os.fsencode(name)) > LONGEST_NAME for name in names):
            raise nowhere
        home = self.packs.resolve()
        path = home.joinpath(*names).resolve()  # a link may lead out of the folder, too
        if home not in path.parents:
            raise nowhere
        return path


def _class_at(department: Department, name: str) -> SchoolClass:
    """Return the class that an address names.

    Raises:
        NotFound: there is none.
    """
    try:
        return department.find_class(name)
    except ItembankError:
        known = join_words([group.name for group in department.classes])
        raise NotFound(f"There is no class ‘{name[:40]}’ here, only {known}.") from None


def look_of(home: Path) -> Look:
    """Return what the files of a department look like that a plan is made from."""
    found = []
    for path in sorted([*home.glob("*.toml"), *home.glob("schemes/*.toml")]):
        try:
            facts = path.stat()
        except OSError:  # taken away between two looks
            continue
        found.append((str(path), facts.st_mtime_ns, facts.st_size))
    return tuple(found)
