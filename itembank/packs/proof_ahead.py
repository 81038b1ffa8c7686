"""Begins the process that proves a pack's keys before its items are chosen.

Loading sympy takes longer than anything else about a pack, and needs to know nothing of it. This
module itself loads next to nothing, so that the second process is there at once.
"""

from __future__ import annotations

from itembank.processes.beside import Ahead

LOADS = (
    "itembank.packs.pack_proof",
    "itembank.proof.sympy.sympy_road",
    "itembank.proof.exact.exact_road",
)
"""What a process loads that is to prove keys."""


def begin_proof() -> Ahead:
    """Return a second process that gets ready to prove keys.

    Use it as a context manager about all that may go wrong before a proof is started with it.
    """
    return Ahead(LOADS)
