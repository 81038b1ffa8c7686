"""What a person ought to know of something that was done, besides that it was done."""

from __future__ import annotations

from typing import Any


class Remark:
    """A whole sentence, and what it is about as data.

    Like an :class:`~itembank.errors.ItembankError` it knows nothing of options or buttons: by
    its :attr:`matter` and what it is :attr:`about`, whoever shows it adds what can be done.

    >>> remark = Remark("Taken as out of 29 pupils.", matter="pupils guessed", pupils=29)
    >>> str(remark), remark.matter, remark.about
    ('Taken as out of 29 pupils.', 'pupils guessed', {'pupils': 29})
    """

    __slots__ = ("about", "matter", "words")

    def __init__(self, words: str, *, matter: str = "", **about: Any) -> None:
        self.words = words
        self.matter = matter
        self.about = about

    def __str__(self) -> str:
        """Return the sentence."""
        return self.words

    def __repr__(self) -> str:
        """Return what makes the same remark."""
        more = {**({"matter": self.matter} if self.matter else {}), **self.about}
        return f"Remark({', '.join([repr(self.words), *(f'{k}={v!r}' for k, v in more.items())])})"

    def __eq__(self, other: object) -> bool:
        """Tell whether another remark says the same of the same."""
        if not isinstance(other, Remark):
            return NotImplemented
        mine, theirs = ((r.words, r.matter, r.about) for r in (self, other))
        return mine == theirs

    __hash__ = None  # type: ignore[assignment]  # what it is about may be a list
