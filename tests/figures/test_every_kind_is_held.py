"""No kind of figure goes without its reader of words, its planted lies and its third engine."""

from __future__ import annotations

import pytest

from tests.figures.every_figure import names
from tests.figures.held import LIED, MEASURED, TOLD, held, holds

WRITTEN = {
    "balance",
    "bus timetable",
    "cube plan",
    "frequency table",
    "function machine",
    "probability table",
    "sample space",
    "shaded sets",
    "tree diagram",
    "two-way table",
    "Venn diagram",
}
"""What is read off these is written on them: there is no length, angle or count to measure."""


@pytest.mark.parametrize("what", [TOLD, LIED])
def test_every_kind_has_a_test_of_its_own(what: str) -> None:
    assert held()[what] == {*names()}


def test_every_kind_with_geometry_is_measured_by_a_third_engine() -> None:
    assert held()[MEASURED] == {*names()} - WRITTEN


def test_a_kind_without_a_test_would_be_missed() -> None:
    @holds(LIED, "one kind")
    def test_nothing() -> None:
        """Stand for the only test of a kind."""

    assert test_nothing.holds == [(LIED, "one kind")]
    assert "another kind" not in held()[LIED]
