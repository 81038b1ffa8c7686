"""What holds for the tests of packs; they share their small topics as ``tests.packs.…``."""

import sys
from pathlib import Path

import pytest

ROOT = str(Path(__file__).parents[2])
if ROOT not in sys.path:
    sys.path.insert(0, ROOT)


@pytest.fixture(autouse=True, scope="module")
def _here(one_core):
    """Let every pack be proved in this process."""
