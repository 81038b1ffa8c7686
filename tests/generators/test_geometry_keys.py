"""Keys of geometry, found again from the words of each figure by trying every value."""

from __future__ import annotations

import pytest

from tests.generators.geometry_reader import (
    items,
    letter_asked,
    listed,
    number,
    said,
    tried,
)


@pytest.mark.parametrize(
    ("name", "whole"),
    [("geometry.angles-on-a-line", 180), ("geometry.angles-at-a-point", 360)],
)
def test_angles_that_make_a_line_or_a_turn(name: str, whole: int) -> None:
    for item in items(name):
        forms = [each for each in listed(said(item), "in this order: ") if each is not None]
        assert number(item) == tried([forms], [whole], letter_asked(item)), item.address


def test_where_two_lines_cross() -> None:
    for item in items("geometry.vertically-opposite"):
        forms = listed(said(item), "in order round the crossing, are ")
        wanted, known = letter_asked(item), None
        if wanted == "y" and any(form and form[1] not in ("", "y") for form in forms):
            # The letter of the two opposite angles first, then the angle beside them.
            for value in range(1, 180):
                sizes = {c * value + n for c, name, n in filter(None, forms) if name != "y"}
                if len(sizes) == 1:
                    known = value, sizes.pop()
            assert known
            assert number(item) == 180 - known[1], item.address
            continue
        found = [
            value
            for value in range(1, 180)
            for first in range(1, 180)
            if all(
                form is None or form[0] * value + form[2] == (first, 180 - first)[k % 2]
                for k, form in enumerate(forms)
            )
        ]
        assert found == [number(item)], item.address
