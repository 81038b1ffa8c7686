"""The sizes that a figure is tried at: whether there is room is told without the least size."""

from __future__ import annotations

from collections.abc import Callable

from hypothesis import given
from hypothesis import strategies as st

from itembank.figures.kinds.near_marks import Near
from itembank.figures.kinds.placed_labels import Sheet
from itembank.figures.kinds.tried_sizes import homeless_in_all, least_sheet

Tried = list[tuple[bool, bool]]


def _laid_out(tried: Tried, looked: list[int]) -> Callable[[int], Sheet]:
    """Return how a figure of two labels is laid out: which of them has room at each size."""

    def made(size: int) -> Sheet:
        looked.append(size)
        sheet = Sheet(())
        for name, has_room in zip("AB", tried[size], strict=True):
            places: list[Near] = [(2.0 * ord(name), float(size))] if has_room else []
            sheet.put(name, places, "name")
        return sheet

    return made


@given(st.lists(st.tuples(st.booleans(), st.booleans()), min_size=1, max_size=5))
def test_the_labels_without_a_place_are_those_that_the_drawing_leaves_out(tried: Tried) -> None:
    made, sizes = _laid_out(tried, []), range(len(tried))
    assert homeless_in_all(made, sizes) == least_sheet(made, sizes).homeless


@given(st.lists(st.tuples(st.booleans(), st.booleans()), min_size=1, max_size=5))
def test_a_figure_is_drawn_at_the_first_size_with_room(tried: Tried) -> None:
    looked: list[int] = []
    sheet = least_sheet(_laid_out(tried, looked), range(len(tried)))
    assert looked == [*range(len(looked))]
    fits = [all(size) for size in tried]
    assert not any(fits[: len(looked) - 1])
    assert sheet.crowded != fits[len(looked) - 1]
    assert not sheet.crowded or len(looked) == len(tried)


def test_a_largest_size_with_room_is_the_only_one_looked_at() -> None:
    looked: list[int] = []
    assert homeless_in_all(_laid_out([(True, False)] * 4 + [(True, True)], looked), range(5)) == []
    assert looked == [4]
