"""The fingerprints of frozen questions in files, one a strand: lines are added, never changed."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from itembank.errors import ItembankError
from itembank.files.together import write_whole
from itembank.items.item import Tier

_LINE = re.compile(
    rf"(?P<name>[a-z0-9.-]+/(?:{'|'.join(Tier)}))/(?P<start>[0-9]+)"
    r" (?P<digest>[\w-]{22}) (?P<each>[\w-]+)",
    re.ASCII,
)
_HEAD = """\
# What the addresses of this strand ask, as fingerprints. Lines are added, never changed:
# python -m itembank.items.topics.frozen
"""


class Stretch(NamedTuple):
    """The fingerprint of some questions of a tier that follow one another."""

    start: int
    digest: str
    each: str
    """One character a question, from the 64 of base64url."""

    @property
    def stop(self) -> int:
        """Return the index after the last."""
        return self.start + len(self.each)


Frozen = Mapping[str, tuple[Stretch, ...]]
"""The stretches of each tier in order, by ``topic/tier``; none is missing before the last."""


def read(folder: Path) -> Frozen:
    """Return the fingerprints that the files of a folder hold; none where there is no folder.

    Raises
    ------
    ItembankError
        If a line is not one of a file that this module wrote, or lines are missing before it.
    """
    found: dict[str, tuple[Stretch, ...]] = {}
    for path in sorted(folder.glob("*.txt")):
        for number, text in enumerate(
            path.read_text("utf-8", errors="replace").splitlines(), start=1
        ):
            if text.startswith("#"):
                continue
            match = _LINE.fullmatch(text)
            name = match["name"] if match else ""
            before = found.get(name, ())
            if match is None or int(match["start"]) != (before[-1].stop if before else 0):
                raise ItembankError(
                    f"{path}, line {number}: this is not the next stretch of a tier. "
                    "Take the file as it was last committed."
                )
            found[name] = (*before, Stretch(int(match["start"]), match["digest"], match["each"]))
    return found


def write(folder: Path, frozen: Frozen) -> None:
    """Write the fingerprints, a file a strand, topics and tiers in order."""
    folder.mkdir(parents=True, exist_ok=True)
    order = {str(tier): place for place, tier in enumerate(Tier)}
    files: dict[str, list[str]] = {}
    for name in sorted(frozen, key=lambda name: (name.split("/")[0], order[name.split("/")[1]])):
        lines = files.setdefault(name.partition(".")[0], [])
        lines += [f"{name}/{held.start} {held.digest} {held.each}\n" for held in frozen[name]]
    for strand, lines in files.items():
        write_whole(folder / f"{strand}.txt", (_HEAD + "".join(lines)).encode("ascii"))
