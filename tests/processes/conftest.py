"""Both kinds of other processes, and their number."""

import os
import sys
import time
from pathlib import Path

import pytest

from itembank.processes.forked import Forked
from itembank.processes.spawned import Spawned
from tests.children import children

sys.path.insert(0, str(Path(__file__).parent))  # a new interpreter finds `pieces` here


@pytest.fixture(params=[Forked, Spawned], ids=["forked", "spawned"])
def kind(request):
    if request.param is Forked and not hasattr(os, "fork"):
        pytest.skip("this system cannot fork")
    return request.param


@pytest.fixture
def nothing_left():
    """Return a check that no process that the test began is left; the system may take a moment."""
    before = children()

    def check():
        for _ in range(200):
            if children() <= before:
                return True
            time.sleep(0.05)
        return False

    return check
