"""What this machine has for work in other processes: cores, and a way to start them."""

from __future__ import annotations

import os
import sys

_keeps_to_itself = False


def keep_to_this_process() -> None:
    """From now on do here what else would be done in other processes.

    A process with many threads cannot be copied safely: the copy has the locks that other
    threads held at that moment, and nobody to let go of them.
    """
    global _keeps_to_itself
    _keeps_to_itself = True


def cores() -> int:
    """Return how many cores this process may use; one where it is to keep to itself.

    >>> cores() >= 1
    True
    """
    if _keeps_to_itself:
        return 1
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:  # not every system can say which cores a process may use
        return os.cpu_count() or 1


def can_fork() -> bool:
    """Tell whether a second process can be a copy of this one.

    macOS can fork as well, but its own libraries may not be used afterwards.
    """
    return sys.platform == "linux"
