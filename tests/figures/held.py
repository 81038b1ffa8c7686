"""What each kind of figure is held to by a test of its own, and which test that is.

A test names the kinds it is about by a decorator; `test_every_kind_is_held.py` gathers them, so
that a kind nobody wrote such a test for is named.
"""

from __future__ import annotations

import importlib
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

from tests.depth import cases, whole

TOLD = "its facts are rebuilt from its words"
LIED = "planted lies are found out"
MEASURED = "200 random figures are measured by a third engine"

COUNT = cases(40, 200, 200)
"""Random figures of a kind that a third engine measures: forty show each shape of most kinds."""

Test = TypeVar("Test", bound=Callable[..., Any])


def holds(what: str, *kinds: str) -> Callable[[Test], Test]:
    """Say that a test holds kinds of figure to something."""

    def kept(test: Test) -> Test:
        test.__dict__.setdefault("holds", []).extend((what, kind) for kind in kinds)
        return whole(test) if what == MEASURED else test

    return kept


def held() -> dict[str, set[str]]:
    """Return the kinds that the tests of this folder, and of those in it, hold to each thing."""
    found: dict[str, set[str]] = {TOLD: set(), LIED: set(), MEASURED: set()}
    here = Path(__file__).parent
    for path in sorted(here.rglob("test_*.py")):
        inside = ".".join(path.relative_to(here).with_suffix("").parts)
        module = importlib.import_module(f"tests.figures.{inside}")
        for name, test in vars(module).items():
            if name.startswith("test_"):
                for what, kind in getattr(test, "holds", ()):
                    found[what].add(kind)
    return found
