"""What this machine has for work in other processes: cores, and a way to start them."""

from __future__ import annotations

import os
import sys


def cores() -> int:
    """Return how many cores this process may use.

    >>> cores() >= 1
    True
    """
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:  # not every system can say which cores a process may use
        return os.cpu_count() or 1


def can_fork() -> bool:
    """Tell whether a second process can be a copy of this one.

    macOS can fork as well, but its own libraries may not be used afterwards.
    """
    return sys.platform == "linux"
