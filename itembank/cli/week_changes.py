"""Reads the changes to a week that a teacher types, such as ``tue ratio.share 3``."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Iterable, Mapping

from itembank.errors import ItembankError, SeveralErrors
from itembank.planning.calendar.days import parse_day
from itembank.planning.week.week_changes import (
    Another,
    Ban,
    Change,
    Instead,
    Length,
    LessonName,
    Order,
    Pin,
    Swap,
)
from itembank.text.whole_number import whole_number

DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
SHORTEST_DAY = 3
"""Letters of a day's name, at the least, that are read as that day."""
_BRITISH = re.compile(r"(\d{1,2}/\d{1,2}/\d{4})(?:/(.+))?")
Words = list[str]


def read_changes(typed: Mapping[str, Iterable[str]], today: datetime.date) -> tuple[Change, ...]:
    """Return the changes in what was typed, by the name of the option.

    Raises:
        SeveralErrors: every text that cannot be read.

    >>> read_changes({"pin": ["tue ratio.share 3"]}, datetime.date(2026, 11, 30))[0].questions
    3
    """
    found: list[Change] = []
    faults = []
    for option, texts in typed.items():
        for text in texts:
            said = f"--{option} ‘{text}’"
            try:
                found.append(_READERS[option](_words(text), said, today))
            except ItembankError as error:
                faults.append(error.within(f"{said}: "))
    if faults:
        raise SeveralErrors(faults)
    return tuple(found)


def read_lesson_name(word: str, today: datetime.date) -> LessonName | None:
    """Return the lesson a word names: ``tue``, ``2026-12-01``, ``tue/3`` for its period.

    None where the word is no day at all.

    Raises:
        ItembankError: it is a date, and no day of the calendar.

    >>> read_lesson_name("tue/3", datetime.date(2026, 11, 30))
    LessonName(text='tue', date=None, weekday=1, period='3')
    """
    british = _BRITISH.fullmatch(word)  # whose own strokes part no period
    text, period = british.groups("") if british else word.partition("/")[::2]
    low = text.casefold()
    if len(low) >= SHORTEST_DAY:
        for weekday, day in enumerate(DAYS):
            if day.startswith(low):
                return LessonName(text, weekday=weekday, period=period)
    if text[:1].isdigit() and (british or "-" in text or len(text) > 4):
        return LessonName(text, parse_day(text, today), period=period)
    return None


def _words(text: str) -> Words:
    """Return the words of a change; a comma parts them too, and topics are in small letters.

    >>> _words("Tue/3A Ratio.Share, 3")
    ['Tue/3A', 'ratio.share', '3']
    """
    words = text.replace(",", " ").split()
    return [word.lower() if "." in word and ":" not in word else word for word in words]


def _lesson(word: str, today: datetime.date, example: str) -> LessonName:
    found = read_lesson_name(word, today)
    if found is None:
        raise ItembankError(f"‘{word}’ is not a day. Write it as in: {example}")
    return found


def _pin(words: Words, said: str, today: datetime.date) -> Pin:
    example = "tue ratio.share, tue ratio.share 3 or tue ratio.share/core/12"
    number = whole_number(words[2]) if len(words) == 3 else None
    if len(words) not in (2, 3) or (len(words) == 3 and number is None):
        raise ItembankError(f"Write a day and a topic or an address: {example}")
    return Pin(_lesson(words[0], today, example), words[1], number, said)


def _ban(words: Words, said: str, today: datetime.date) -> Ban:
    example = "tue ratio.share"
    if len(words) not in (1, 2):
        raise ItembankError(
            f"Write a topic or an address, after a day where it is for one lesson: {example}"
        )
    lesson = _lesson(words[0], today, example) if len(words) == 2 else None
    return Ban(words[-1], lesson, said)


def _swap(words: Words, said: str, today: datetime.date) -> Swap:
    example = "tue ratio.share thu fractions.order"
    if len(words) != 4:
        raise ItembankError(f"Write two days, each with its topic: {example}")
    lesson, swapped = (_lesson(words[place], today, example) for place in (0, 2))
    return Swap(lesson, words[1], swapped, words[3], said)


def _instead(words: Words, said: str, today: datetime.date) -> Instead:
    example = "tue ratio.share fractions.order"
    if len(words) != 3:
        raise ItembankError(f"Write a day, a topic, and the one to come instead: {example}")
    return Instead(_lesson(words[0], today, example), words[1], words[2], said)


def _another(words: Words, said: str, today: datetime.date) -> Another:
    example = (
        "tue 5, or tue ratio.share/core/12, or tue ratio.share/core/12 ratio.share/core/40, "
        "or tue ratio.share/core/12 true or false"
    )
    if len(words) < 2:
        raise ItembankError(
            "Write a day, the number or address of a question, and the one to come, or its kind, "
            f"if you choose: {example}"
        )
    lesson, (address, *rest) = _lesson(words[0], today, example), words[1:]
    by_address = len(rest) == 1 and ("/" in rest[0] or ":" in rest[0])
    new, kind = (rest[0], "") if by_address else ("", " ".join(rest))
    return Another(lesson, address, new, said=said, kind=kind)


def _order(words: Words, said: str, today: datetime.date) -> Order:
    example = "tue 2 1 3 4 5 6 7 8, or tue and all its topics"
    lesson = _lesson(words[0] if words else "", today, example)
    numbers = [whole_number(word) for word in words[1:]]
    told = tuple(number for number in numbers if number is not None)
    if len(told) == len(numbers):
        return Order(lesson, numbers=told, said=said)
    return Order(lesson, topics=tuple(words[1:]), said=said)


def _questions(words: Words, said: str, today: datetime.date) -> Length:
    example = "tue 10"
    number = whole_number(words[-1]) if len(words) in (1, 2) else None
    if number is None:
        raise ItembankError(f"Write a number, after a day where it is for one lesson: {example}")
    lesson = _lesson(words[0], today, example) if len(words) == 2 else None
    return Length(number, lesson, said)


_READERS: Mapping[str, Callable[[Words, str, datetime.date], Change]] = {
    "questions": _questions,
    "ban": _ban,
    "swap": _swap,
    "instead": _instead,
    "pin": _pin,
    "another": _another,
    "order": _order,
}
