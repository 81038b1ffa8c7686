"""Pupils who were asked fewer questions than others stand in a band all the same."""

import pytest

from itembank.planning.bands.bands import default_scheme, own_scheme
from itembank.records.reports.decision import _groups


@pytest.mark.parametrize("scheme", [own_scheme([3, 4], 8), own_scheme([5, 7], 8), default_scheme()])
def test_nobody_falls_out_between_bands(scheme):
    for out_of in range(1, 13):
        for total in range(1, out_of + 1):
            for marks in range(total + 1):
                groups = _groups({"A1": marks}, {"A1": total}, scheme, out_of)
                assert [group.seats for group in groups if group.pupils] == [("A1",)]


def test_a_band_without_a_score_out_of_the_most_is_told_by_the_share():
    # Cuts 3 and 4 of 8: out of 5 a band holds 2 alone, out of 6 it holds no score.
    scheme = own_scheme([3, 4], 8)
    assert [band.letter for band in scheme.bands(5)] == ["R", "S", "E"]
    assert [band.letter for band in scheme.bands(6)] == ["R", "E"]
    groups = _groups({"A1": 2, "A2": 4}, {"A1": 5, "A2": 6}, scheme, 6)
    assert {group.letter: group.seats for group in groups} == {"R": ("A1",), "E": ("A2",)}
