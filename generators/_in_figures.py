"""Whole numbers in the words of a question's working, as they stand in its mathematics."""

from __future__ import annotations

from itembank.notation.tree.marked_up import THIN, digits


def in_figures(number: int) -> str:
    r"""Return a whole number for a sentence, its thousands parted from five digits up.

    A space that does not break stands between them, since the type of words has no thin one.

    >>> in_figures(250000), in_figures(2500)
    ('250\xa0000', '2500')
    """
    return digits(str(number)).replace(THIN, "\N{NO-BREAK SPACE}")
