"""Paragraphs of the terminal end their lines where a reader rests."""

import pytest

from itembank.cli.words.wrapped import paragraph


@pytest.mark.parametrize("columns", range(40, 101))
def test_no_line_begins_with_the_sign_of_a_percentage(monkeypatch, columns):
    """‘0 of 1 (0’ ended a line of a class's report, and ‘%) scored low’ began the next."""
    monkeypatch.setenv("COLUMNS", str(columns))
    told = "Of those sure, 0 of 1 (0 %) scored low; of those not sure, 7 of 12 (58 %) scored high."
    text = paragraph("", told)
    assert " ".join(text.split("\n")) == told
    assert not any(line.startswith("%") for line in text.split("\n"))
