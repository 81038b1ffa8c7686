"""Whether an installed package names anything for this tool, told without reading all of them.

The standard library's way to ask (:mod:`importlib.metadata`) takes a fortieth of a pack's time to
load, for an answer that is nearly always no.
"""

from __future__ import annotations

import os
import sys
from importlib.machinery import PathFinder


def may_be_named(group: str) -> bool:
    """Tell whether an installed package may have something under a group of entry points.

    Where it says no, :func:`importlib.metadata.entry_points` has nothing of that group. It looks
    through folders alone: where packages come from an archive, or by a finder of their own, it
    says yes.

    >>> may_be_named("console_scripts")  # pip names itself a script, where it is installed
    True
    """
    finders = [finder for finder in sys.meta_path if finder is not PathFinder]
    return any(hasattr(finder, "find_distributions") for finder in finders) or any(
        _named_in(place or os.curdir, group.encode()) for place in sys.path
    )


def _named_in(place: str, group: bytes) -> bool:
    try:
        names = os.listdir(place)
    except NotADirectoryError:
        return True
    except OSError:  # it is not there, or not to be read
        return False
    for name in names:
        if name.lower().endswith((".dist-info", "egg-info")):
            try:
                with open(os.path.join(place, name, "entry_points.txt"), "rb") as file:
                    if group in file.read():
                        return True
            except OSError:  # most packages name nothing
                continue
    return False
