"""A balance beside working is refused by its width before it is drawn: as it then is drawn."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generators.equations._pans import MOST, on_pans
from itembank.figures.figure import HIGHEST, WIDEST, FigureError, drawn
from itembank.figures.kinds.number.balance import Balance, balance_width
from itembank.notation import tree as t

X = t.Sym("x")
LETTERS = st.integers(1, MOST - 1).map(lambda count: (X,) * count)
LIGHT = st.integers(1, 9).map(t.Int)
HEAVY = st.lists(st.integers(10, 999).map(t.Int), min_size=1, max_size=MOST).map(tuple)


@given(LETTERS, LIGHT, HEAVY)
def test_the_width_is_that_of_the_drawing(letters, light, heavy):
    balance = Balance((*letters, light), heavy)
    if balance_width(balance) > WIDEST:
        with pytest.raises(FigureError, match=rf"{float(balance_width(balance)):.1f} wide"):
            drawn(balance)
    else:
        assert drawn(balance).width == balance_width(balance)
        assert drawn(balance).height <= HIGHEST


@given(st.integers(1, MOST - 1), LIGHT, st.integers(10, 99_999))
def test_an_equation_stands_on_pans_where_it_can_be_drawn(count, light, heavy):
    left = t.add(X if count == 1 else t.juxt(t.Int(count), X), light)
    balance = on_pans(t.equals(left, t.Int(heavy)))
    if balance is not None:
        assert drawn(balance).width <= WIDEST
    else:
        with pytest.raises(FigureError):
            drawn(Balance((*[X] * count, light), (t.Int(heavy),)))
