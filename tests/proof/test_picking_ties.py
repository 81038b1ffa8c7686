"""A question that picks one of several solutions has to have just one such."""

import pytest

from itembank.notation.value import NotExact
from itembank.proof.exact.picking import only


@pytest.mark.parametrize(
    ("values", "which"),
    [
        ([24, 24], "largest"),
        ([24, 24, 30], "smallest"),
        ([3, 5], "positive"),
        ([-3, -5], "negative"),
        ([3, 0], "negative"),
        ([7], "largest"),
        ([], "smallest"),
    ],
)
def test_a_tie_or_none_is_not_picked(values, which):
    with pytest.raises(NotExact, match=f"answers that are the {which} one"):
        only(values, which)
