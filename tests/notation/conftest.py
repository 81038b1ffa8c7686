"""Lets the tests here share their strategies, and bounds the memory they may take.

The strategies are imported as ``tests.notation.…``, which is why the root is put on the path.
"""

import sys
from pathlib import Path

import pytest

ROOT = str(Path(__file__).parents[2])
if ROOT not in sys.path:
    sys.path.insert(0, ROOT)

ROOM = 1 << 30
"""Bytes that one test here may take on top of what its process holds already."""


def limited():
    """Tell whether this system can bound the memory of a process, and say what it holds."""
    return Path("/proc/self/statm").exists()


@pytest.fixture(autouse=True)
def _bounded_memory():
    """A strategy or a product that grows without end fails its test, and nobody else's."""
    if not limited():
        yield
        return
    import resource

    pages = int(Path("/proc/self/statm").read_text().split()[0])
    before, hard = resource.getrlimit(resource.RLIMIT_AS)
    wanted = pages * resource.getpagesize() + ROOM
    known = [limit for limit in (wanted, before, hard) if limit != resource.RLIM_INFINITY]
    resource.setrlimit(resource.RLIMIT_AS, (min(known), hard))
    yield
    resource.setrlimit(resource.RLIMIT_AS, (before, hard))
