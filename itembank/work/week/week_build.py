"""Builds the packs of a week beside the rest: in a second process that splits the work in two.

That process is begun first of all. While the week is planned, which loads numpy and HiGHS, it
loads what every pack needs, sympy and the drawing, so that of the two loads only one is waited
for.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from typing import TYPE_CHECKING

from itembank.processes.beside import Ahead
from itembank.processes.work_place import ThisMachine, all_of

if TYPE_CHECKING:
    from itembank.planning.department.pack_request import PackRequest

Files = Mapping[str, bytes]
LOADS = ("itembank.proof.sympy.sympy_road", "itembank.packs.build", "itembank.pages.draw")
"""What every pack needs, and takes long to load."""


class Builder(Ahead):
    """The process that builds packs.

    Use it as a context manager, so that it never outlives its work::

        with Builder() as builder:
            ...                       # plan the week
            builder.build(requests)
            ...                       # draw the overview
            packs = builder.packs()

    Where there is one processor, the packs are built here when asked for.
    """

    def __init__(self) -> None:
        super().__init__(LOADS)

    def build(self, requests: Sequence[PackRequest]) -> None:
        """Have these packs built; each key is proved by both roads, and nothing is written."""
        self.start(partial(build_all, list(requests)))

    def packs(self) -> list[Files]:
        """Return the files of every pack.

        Raises:
            ItembankError: a pack cannot be made.
            CheckFailed: a key is wrong.
        """
        return list(self.result())


def build_all(requests: Sequence[PackRequest]) -> list[Files]:
    """Return the files of every pack, built on as many processes as there are cores."""
    return all_of(ThisMachine(), build_one, requests)


def build_one(request: PackRequest) -> Files:
    """Return the files of one pack."""
    from itembank.packs.build import start_pack
    from itembank.pages.draw import fits_slides
    from itembank.pages.write_pack import drawn

    started = start_pack(request, fits_slides=fits_slides)
    with started.proof:
        files = drawn(started)
        started.proof.result()
    return files
