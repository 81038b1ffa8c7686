"""Every sample pack drawn once for all tests of the pages."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path

import pytest

# Lets tests here share modules as ``tests.pages.…``.
ROOT = str(Path(__file__).parents[2])
if ROOT not in sys.path:
    sys.path.insert(0, ROOT)


def _samples():
    if "pages_samples" not in sys.modules:
        path = Path(__file__).with_name("samples.py")
        spec = importlib.util.spec_from_file_location("pages_samples", path)
        module = importlib.util.module_from_spec(spec)
        sys.modules["pages_samples"] = module
        spec.loader.exec_module(module)
    return sys.modules["pages_samples"]


@pytest.fixture(scope="session")
def samples():
    """The module of sample packs (test folders are not packages)."""
    return _samples()


@pytest.fixture(scope="session")
def drawn(samples):
    """All files of all sample packs: {(pack, file): bytes}."""
    from itembank.pages.draw import draw_pack

    return {
        (name, file): data
        for name, pack in samples.PACKS.items()
        for file, data in draw_pack(pack).items()
    }
