"""The parts of a question from what was typed: lines with | between, pairs with =, numbers."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.text.whole_number import whole_number

if TYPE_CHECKING:
    from itembank.work.bank.question_fields import Fields


def working_line(text: str) -> list[str]:
    """Return a line of working from ``WORDS | MATHEMATICS``.

    >>> working_line("Add | 9/12 + 2/12 = 11/12"), working_line("Look for a common factor.")
    (['Add', '9/12 + 2/12 = 11/12'], ['Look for a common factor.', ''])
    """
    words, _, line = (part.strip() for part in text.partition("|"))
    return [words, line]


def mistake(text: str, taken: Iterable[str] = ()) -> Fields:
    """Return a likely mistake from ``WRONG ANSWER | WHAT THEY DO | WHAT TO ASK``.

    Its id is made from what they do, unlike those in `taken`.

    Raises:
        ItembankError: a part is missing.

    >>> mistake("4/10 | adds across | Is it more than 3/4?")["name"]
    'adds across'
    """
    from itembank.work.bank.question_fields import mistake_fields

    parts = [part.strip() for part in text.split("|")]
    if len(parts) != 3 or not all(parts):
        raise ItembankError(
            f"‘{text}’ is not a likely mistake. Write the wrong answer, what they do and what to "
            "ask, with | between: 4/10 | adds tops and bottoms | Is it more than 3/4?"
        )
    wrong, name, question = parts
    return mistake_fields(wrong, name, question, taken)


def mistakes(texts: Iterable[str]) -> list[Fields]:
    """Return likely mistakes, each with an id of its own; as :func:`mistake`."""
    found: list[Fields] = []
    for text in texts:
        found.append(mistake(text, [earlier["id"] for earlier in found]))
    return found


def pair(text: str, shape: str) -> tuple[str, str]:
    """Return the two sides of a text such as ``NAME=WORTH``; `shape` says how to write it.

    Raises:
        ItembankError: there are not two sides.
    """
    name, sign, worth = (part.strip() for part in text.partition("="))
    if not (name and sign and worth):
        raise ItembankError(f"‘{text}’ has to be written as {shape}.")
    return name, worth


def whole_numbers(values: Sequence[str], option: str) -> list[int]:
    """Return the whole numbers that were typed for an option.

    Raises:
        ItembankError: one is none.
    """
    for value in values:
        if whole_number(value) is None:
            raise ItembankError(f"{option} needs a whole number, such as {option} 180.")
    return [int(value) for value in values]
