"""A mark of everything that decides what is read out of a bank's files, and how it is proved.

What an index keeps was worked out by this program with these libraries on this Python. Another
version of any of them may read a line otherwise, or prove what could not be proved, so nothing
is taken over from one to another.
"""

from __future__ import annotations

import hashlib
import importlib.util
import os
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

ABOVE = frozenset({"planning", "packs", "pages", "records", "work", "desk", "cli", "__pycache__"})
"""Parts that stand above the bank, which imports none of them: they decide nothing here."""
LIBRARIES = ("lark", "mpmath", "pydantic", "pydantic_core", "sympy")
GROUP = "itembank.topics"
"""Under which other packages name topics of theirs (:mod:`itembank.items.topics.registry`)."""


@cache
def code_mark() -> bytes:
    """Return the mark: 16 bytes that are the same while program and libraries are.

    Source files are told apart by size and times, as an installation sets them.

    >>> code_mark() == code_mark(), len(code_mark())
    (True, 16)
    """
    found = hashlib.blake2b(digest_size=16)
    found.update(f"{sys.version_info} {sys.implementation.cache_tag}".encode())
    for line in (*_sources("itembank"), *_sources("generators"), *_installed()):
        found.update(os.fsencode(f"{line}\n"))
    return found.digest()


def _sources(package: str) -> Iterator[str]:
    spec = importlib.util.find_spec(package)
    for place in (spec.submodule_search_locations or ()) if spec else ():
        yield from _files(Path(place), "")


def _files(folder: Path, name: str) -> Iterator[str]:
    with os.scandir(folder) as entries:
        for entry in sorted(entries, key=lambda entry: entry.name):
            if entry.is_dir():
                if entry.name not in ABOVE:
                    yield from _files(folder / entry.name, f"{name}{entry.name}/")
            elif not entry.name.endswith(".pyc"):
                about = entry.stat()
                yield f"{name}{entry.name} {about.st_size} {about.st_mtime_ns} {about.st_ctime_ns}"


def _installed() -> Iterator[str]:
    """Yield the libraries with their versions, and the packages that bring topics.

    The folders that say what is installed are listed here: asking for a version as one usually
    does loads a reader of mail.
    """
    seen: set[str] = set()
    for place in dict.fromkeys(sys.path):
        try:
            names = sorted(os.listdir(place or "."))
        except OSError:  # a path that is not there, or an archive
            continue
        for name in names:
            stem, dot, kind = name.rpartition(".")
            if kind not in ("dist-info", "egg-info") or not dot:
                continue
            library = stem.partition("-")[0].lower().replace(".", "_")
            if library in LIBRARIES:
                seen.add(library)
                yield name
            yield from _topics_of(Path(place, name))
    for library in sorted(set(LIBRARIES) - seen):
        yield f"{library} {_version(library)}"


def _version(library: str) -> str:
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version(library)
    except PackageNotFoundError:
        return "not installed"


def _topics_of(about: Path) -> Iterator[str]:
    """Yield the files of a package that brings topics of its own."""
    try:
        text = (about / "entry_points.txt").read_text(encoding="utf-8")
    except (OSError, ValueError):
        return
    _, here, rest = text.partition(f"[{GROUP}]")
    if not here:
        return
    yield about.name
    for line in rest.partition("\n[")[0].splitlines():
        module = line.partition("=")[2].partition(":")[0].strip()
        spec = importlib.util.find_spec(module.partition(".")[0]) if module else None
        if spec is None:
            continue
        if spec.submodule_search_locations:
            yield from _sources(spec.name)
        elif spec.origin and os.path.exists(spec.origin):
            about_file = os.stat(spec.origin)
            yield f"{spec.name} {about_file.st_size} {about_file.st_mtime_ns}"
