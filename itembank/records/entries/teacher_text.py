"""What a teacher types after a lesson: counts in a row, own views, a correction."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.people.seats import seat_fault, seat_order
from itembank.records.entries.entries import LEVELS
from itembank.text.whole_number import whole_number

_SHORT = {
    "sure": "sure",
    "s": "sure",
    "yes": "sure",
    "partly": "partly",
    "p": "partly",
    "not sure": "not sure",
    "not": "not sure",
    "n": "not sure",
    "unsure": "not sure",
    "no": "not sure",
}
_COUNTED = re.compile(r"(?<![0-9])([0-9]{1,4})\s+([A-Za-z]+(?:\s+sure)?)\b")
_RIGHT = {"right": True, "r": True, "1": True, "wrong": False, "w": False, "0": False}


def whole_numbers(text: str) -> list[int]:
    """Return the whole numbers in a text, parted by spaces or commas.

    Raises:
        ItembankError: a word of it is no whole number.

    >>> whole_numbers("8 12, 9")
    [8, 12, 9]
    """
    words = text.replace(",", " ").split()
    wrong = [word for word in words if whole_number(word, 4) is None]
    if wrong or not words:
        said = f"‘{wrong[0]}’ is not a number of pupils" if wrong else "There is no number"
        raise ItembankError(f'{said}. Write whole numbers, as in "8 12 9".')
    return [int(word) for word in words]


def view_level(word: str) -> str:
    """Return which of the levels of an own view a word stands for; empty for none of them.

    >>> view_level("Not  sure"), view_level("p"), view_level("maybe")
    ('not sure', 'partly', '')
    """
    return _SHORT.get(" ".join(word.casefold().split()), "")


def read_views(text: str, seats: Collection[str]) -> tuple[dict[str, str], dict[str, int]]:
    """Return own views by seat, or hands counted for each level, from a line of text.

    Three bare numbers are hands for sure, partly and not sure, in that order. Where the class
    has a seat of that name, ``12 sure`` is what seat 12 said.

    Raises:
        ItembankError: says every part that is neither.

    >>> read_views("A1 sure, A2 not sure", ["A1", "A2"])
    ({'A1': 'sure', 'A2': 'not sure'}, {})
    >>> read_views("12 sure 9 partly 6 not", ["A1"])
    ({}, {'sure': 12, 'partly': 9, 'not sure': 6})
    """
    known = {seat.upper() for seat in seats}
    numbers = text.replace(",", " ").split()
    hands = [hand for cell in numbers if (hand := whole_number(cell, 4)) is not None]
    if len(hands) == len(numbers) == len(LEVELS):
        return {}, dict(zip(reversed(LEVELS), hands, strict=True))
    counted = _COUNTED.findall(text)
    rest = _COUNTED.sub("", text).replace(",", " ").replace("and", " ").strip()
    if counted and not rest and not any(number in known for number, _ in counted):
        return {}, _counts(counted)
    found: dict[str, str] = {}
    faults: list[str] = []
    for part in re.split(r"[,;\n]", text):
        if not part.strip():
            continue
        seat, _, word = part.strip().partition(" ")
        level = view_level(word)
        if not level:
            faults.append(f"‘{part.strip()}’ is not a seat and how sure it was, as in A1 sure.")
        elif fault := seat_said(seat, seats):
            faults.append(fault)
        elif seat.upper() in found:
            faults.append(f"Seat {seat} is there twice. Keep one of the two.")
        else:
            found[seat.upper()] = level
    if faults or not found:
        faults = faults or ["There is no own view."]
        if not found:  # it may have been meant as hands, which are asked for first
            faults.append("Hands are three numbers for the class, as in 12 sure 9 partly 6 not.")
        words = join_words([f"‘{level}’" for level in reversed(LEVELS)], "or")
        raise ItembankError("\n".join([*faults, f"An own view is {words}."]))
    return found, {}


def _counts(pairs: Sequence[tuple[str, str]]) -> dict[str, int]:
    found: dict[str, int] = {}
    for number, word in pairs:
        level = view_level(word)
        if not level or level in found:
            said = "is there twice" if level else "is not an own view"
            raise ItembankError(f"‘{word}’ {said}. Write, as in: 12 sure 9 partly 6 not.")
        found[level] = int(number)
    return found


def seat_said(seat: str, seats: Collection[str]) -> str:
    """Return what is wrong with a seat code for a class with these seats, or an empty string.

    A class that lists no seats may have any.

    >>> print(seat_said("A9", ["A1", "B1"]))
    The class has no seat A9. Did you mean A1 or B1?
    """
    if fault := seat_fault(seat):
        return fault
    known = [listed.upper() for listed in seats]
    if not known or seat.upper() in known:
        return ""
    near = near_seats(seat, known)
    advice = f"Did you mean {join_words(near, 'or')}?" if near else "It has none like it."
    return f"The class has no seat {seat}. {advice}"


def near_seats(seat: str, known: Collection[str], most: int = 2) -> list[str]:
    """Return the seats most like a code that is none of them: of its row, and near its number.

    >>> near_seats("A7", ["B6", "A1", "A6"])
    ['A6', 'A1']
    """
    meant = seat_order(seat.upper())

    def apart(known: str) -> tuple[bool, int, tuple[tuple[str, int], ...]]:
        key = seat_order(known)
        return key[0][0] != meant[0][0], abs(key[0][1] - meant[0][1]), key

    return sorted(known, key=apart)[:most] if meant else []


def read_correction(text: str) -> tuple[str, int | None, int | bool]:
    """Return seat, question (None for a whole score) and what is right, from ``B2 q4 right``.

    Raises:
        ItembankError: it is neither a seat with a score nor a seat with a question.

    >>> read_correction("a3 6"), read_correction("B2 q4 right")
    (('A3', None, 6), ('B2', 4, True))
    """
    words = text.replace(",", " ").split()
    if len(words) == 2 and words[1].isascii() and words[1].isdigit() and len(words[1]) < 5:
        return words[0].upper(), None, int(words[1])
    if len(words) == 3 and words[2].casefold() in _RIGHT:
        number = words[1].casefold().lstrip("q")
        if number.isascii() and number.isdigit() and len(number) < 4:
            return words[0].upper(), int(number), _RIGHT[words[2].casefold()]
    raise ItembankError(
        f'‘{text}’ is not a correction. Write a seat and its score, as in "A3 6", or a seat, a '
        'question and right or wrong, as in "B2 q4 right".'
    )
