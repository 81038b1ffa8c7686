"""What a worker of a cluster does: some pieces of work, in a process of its own.

A worker's threads cannot be stopped. So it has the pieces done by another interpreter, which can
be ended when a piece goes on without end, and is used again for the next pieces.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

from itembank.processes.answer import Answer, attempt
from itembank.processes.child import Child
from itembank.processes.lost import Lost
from itembank.processes.parcel import packed, unpacked
from itembank.processes.same_code import code
from itembank.processes.spawned import Spawned
from itembank.processes.team import Team

_idle: list[Child] = []
_known: dict[str, str] = {}


def tell() -> dict[str, str]:
    """Return what results rest on here; see :mod:`.same_code`."""
    return code()


def run(wanted: Mapping[str, str], parcel: bytes) -> bytes:
    """Do what a parcel asks, if this machine would come to what the asking one would.

    The parcel holds what is done, the pieces, and the seconds that one may take. The one that is
    returned holds how many seconds it took in all, and of each piece, in order, its answer or
    how it was lost; or None where the code here is another.
    """
    if not _known or not _idle:  # a new interpreter loads what stands on the disk now
        _known.clear()
        _known.update(code())
    if _known != dict(wanted):
        return packed(None)
    how, pieces, longest = unpacked(parcel, work=True)
    found: dict[int, Answer | Lost] = {}
    begun = time.monotonic()
    team = Team(partial(_tried, how), pieces, 1, longest, Spawned, _idle)
    try:
        found.update(team.work(_look))
    finally:
        team.end()
    for place in team.left:  # no other interpreter begins here
        found[place] = attempt(partial(how, pieces[place]))
    return packed((time.monotonic() - begun, [found[place] for place in range(len(pieces))]))


class _Unwanted(Exception):
    """Whoever asked for the work has taken it back, or is gone."""


def _look() -> None:
    """Raise if nobody wants what this thread is at any more.

    Dask lets a task that was begun run to its end; ours may be at a proof without end.
    """
    try:
        from distributed import worker

        here: Any = worker
        task = here.get_worker().state.tasks.get(here.thread_state.key)
        state = "released" if task is None else str(task.state)
    except (ImportError, AttributeError, ValueError):
        return  # no task of Dask's, or of a version that tells nothing of it
    if state in ("cancelled", "released", "forgotten"):
        raise _Unwanted


def _tried(how: Callable[[Any], Any], piece: Any) -> Answer:
    return attempt(partial(how, piece))
