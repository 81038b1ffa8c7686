"""What results rest on, so that two machines can tell whether they would come to the same."""

from __future__ import annotations

import hashlib
import importlib.util
import sys
from collections.abc import Mapping
from importlib.metadata import PackageNotFoundError, entry_points, version
from pathlib import Path

PACKAGES = ("itembank", "generators")
LIBRARIES = ("sympy", "lark", "pydantic")
"""What proofs are made with: another version of one may come to another verdict."""
TOPICS = "itembank.topics"
"""The entry points of packages that bring topics of their own."""


def code() -> dict[str, str]:
    """Return what results rest on, by name: versions, and a digest of the tool's own code.

    >>> sorted(code())[:3]
    ['Python', 'itembank', 'its code']
    """
    found = {"itembank": _version("itembank"), "its code": digest()}
    found["Python"] = ".".join(map(str, sys.version_info[:2]))
    found |= {name: _version(name) for name in LIBRARIES}
    for point in entry_points(group=TOPICS):
        name = point.dist.name if point.dist else point.value
        found[f"topics of {name}"] = _version(name)
    return found


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return "none"


def digest() -> str:
    """Return a digest of the tool's own modules: ten letters and figures.

    How lines end is no difference: a copy from elsewhere may end them otherwise.
    """
    found = hashlib.sha256()
    for package in PACKAGES:
        spec = importlib.util.find_spec(package)
        for place in sorted(spec.submodule_search_locations or ()) if spec else ():
            folder = Path(place)
            for path in sorted(folder.rglob("*.py")):
                text = path.read_bytes().replace(b"\r\n", b"\n")
                name = path.relative_to(folder).as_posix()
                found.update(f"{package}/{name}:{len(text)}:".encode() + text)
    return found.hexdigest()[:10]


def differences(ours: Mapping[str, str], theirs: Mapping[str, str]) -> list[str]:
    """Return what differs, in words about them.

    >>> differences({"sympy": "1.14", "its code": "ab"}, {"sympy": "1.12", "its code": "cd"})
    ['its code differs', 'sympy is 1.12 there and 1.14 here']
    """
    found = []
    for name in sorted({*ours, *theirs}):
        here, there = ours.get(name, "none"), theirs.get(name, "none")
        if here != there:
            plain = f"{name} is {there} there and {here} here"
            found.append("its code differs" if name == "its code" else plain)
    return found
