"""Keys of geometry, found again from the words of each figure by trying every value."""

from __future__ import annotations

from tests.generators.geometry_reader import (
    items,
    letter_asked,
    listed,
    number,
    said,
    tried,
)


def test_angles_on_a_line() -> None:
    for item in items("geometry.angles-on-a-line"):
        forms = [each for each in listed(said(item), "in this order: ") if each is not None]
        assert number(item) == tried([forms], [180], letter_asked(item)), item.address
