"""Which kind of other process is the best on this system."""

from __future__ import annotations

from itembank.processes.child import Kind
from itembank.processes.machine import can_fork


def best_kind() -> Kind:
    """Return the kind of process that is best on this system.

    >>> best_kind().inherits == can_fork()
    True
    """
    if can_fork():
        from itembank.processes.forked import Forked

        return Forked
    from itembank.processes.spawned import Spawned

    return Spawned
