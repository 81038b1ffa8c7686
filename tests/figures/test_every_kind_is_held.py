"""No kind of figure goes without its reader of words, its planted lies and its third engine."""

from __future__ import annotations

import pytest

from tests.figures.every_figure import names
from tests.figures.held import LIED, MEASURED, TOLD, held, holds


@pytest.mark.parametrize("what", [TOLD, LIED, MEASURED])
def test_every_kind_has_a_test_of_its_own(what: str) -> None:
    assert held()[what] == {*names()}


def test_a_kind_without_a_test_would_be_missed() -> None:
    @holds(LIED, "one kind")
    def test_nothing() -> None:
        """Stand for the only test of a kind."""

    assert test_nothing.holds == [(LIED, "one kind")]
    assert "another kind" not in held()[LIED]
