"""Which questions of a starter were asked: a lesson can stop at question 5.

What was not asked is neither right nor wrong, and nothing is known from it. An entry keeps which
questions it is about as a text, a character a question in order: ``1`` asked, ``-`` not asked. An
empty text stands for all of them.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence

from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.records.entries.entries import Answers, Bands, LessonFacts, Questions, Scores, What
from itembank.text.in_words import plural

ASKED, NOT_ASKED = "1", "-"
_RANGE = re.compile(r"([0-9]{1,3})(?:\s*(?:-|–|to)\s*([0-9]{1,3}))?")


def asked_in(what: What, facts: LessonFacts) -> tuple[int, ...]:
    """Return the numbers of the questions that a record of a starter is about, in order.

    Empty where the questions of the starter are not known.

    >>> import datetime
    >>> facts = LessonFacts("8K", datetime.date(2026, 11, 30), 8)
    >>> asked_in(Questions({1: (20, 28), 2: (9, 28)}), facts)
    (1, 2)
    """
    match what:
        case Questions(counts):
            return tuple(sorted(counts))
        case Answers(right):
            return tuple(sorted({number for row in right.values() for number in row}))
        case Scores(_, asked) | Bands(_, asked):
            return asked or tuple(question.number for question in facts.questions)
    return ()


def marks_of(facts: LessonFacts, asked: Collection[int]) -> int:
    """Return the marks of the questions asked; all of the starter's where none are named."""
    worth = {question.number: question.marks for question in facts.questions}
    # Not the sum of the marks: of a starter whose questions nobody knows only the whole is known.
    if not asked or set(worth) <= set(asked):
        return facts.out_of
    return sum(worth.get(number, 1) for number in asked)


def pack_asked(facts: LessonFacts, asked: Collection[int]) -> str:
    """Return the questions asked as text; empty where it was all of them.

    >>> import datetime
    >>> from itembank.records.entries.entries import QuestionFacts
    >>> four = tuple(QuestionFacts(n, "", "ratio.share", "core") for n in range(1, 5))
    >>> pack_asked(LessonFacts("8K", datetime.date(2026, 11, 30), 4, questions=four), (1, 2))
    '11--'
    """
    there = [question.number for question in facts.questions]
    # Most starters are asked whole: then there is nothing to keep.
    if not asked or set(there) <= set(asked):
        return ""
    return "".join(ASKED if n in asked else NOT_ASKED for n in range(1, max(there) + 1))


def unpack_asked(text: str, numbers: Iterable[int]) -> tuple[int, ...]:
    """Return which of the questions `numbers` were asked; the inverse of :func:`pack_asked`.

    >>> unpack_asked("11--", range(1, 5)), unpack_asked("", range(1, 3))
    ((1, 2), (1, 2))
    """
    return tuple(n for n in numbers if not text or text[n - 1 : n] == ASKED)


def read_asked(asked: str | int | Sequence[int], questions: int) -> tuple[int, ...]:
    """Return the questions that a person says were asked, in order.

    A number alone is how many, from the first; otherwise they are listed, as numbers or in a
    text.

    Raises:
        ItembankError: it says neither, or names a question that is not there.

    >>> read_asked("5", 8), read_asked("1-4 6", 8), read_asked("1,3", 8)
    ((1, 2, 3, 4, 5), (1, 2, 3, 4, 6), (1, 3))
    >>> read_asked(2, 8), read_asked([2], 8)
    ((1, 2), (2,))
    """
    if isinstance(asked, str):
        runs = _runs_in(asked)
    else:
        runs = [(1, asked)] if isinstance(asked, int) else [(number, number) for number in asked]
    if not runs:
        raise ItembankError("No question is named.", field="asked")
    found: set[int] = set()
    for first, last in runs:
        if not 1 <= first <= last <= questions:
            said = f"{first} to {last}" if first != last else f"{last}"
            words = f"‘{asked}’ speaks of {said}" if isinstance(asked, str) else f"Not {said}"
            raise ItembankError(
                f"{words}, but there are questions 1 to {questions}.", field="asked"
            )
        found.update(range(first, last + 1))
    return tuple(sorted(found))


def _runs_in(text: str) -> list[tuple[int, int]]:
    """Return the runs of questions that a text names; a number alone is a run from the first."""
    rest = _RANGE.sub("", text).replace(",", " ").replace("and", " ").strip()
    runs = [(int(match[1]), int(match[2] or match[1])) for match in _RANGE.finditer(text)]
    if rest or not runs:
        raise ItembankError(
            f'‘{text}’ is not a number of questions. Write "5" for the first five, or which, as '
            'in "1-4 6".',
            field="asked",
        )
    # “5” is how far the class came; one question alone is written “5-5”, which is hardly ever
    # meant.
    return [(1, runs[0][1])] if len(runs) == 1 and text.strip().isdigit() else runs


def numbers_said(numbers: Collection[int]) -> str:
    """Return numbers of questions in words, runs of them shortened.

    >>> numbers_said([6, 7, 8]), numbers_said([8]), numbers_said([2, 6, 7, 8])
    ('questions 6 to 8', 'question 8', 'questions 2 and 6 to 8')
    """
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    parts: list[str] = []
    for run in runs:
        parts += [f"{run[0]} to {run[-1]}"] if len(run) > 2 else [str(number) for number in run]
    return f"{plural(len(numbers), 'question')} {join_words(parts)}"


def not_asked_said(numbers: Collection[int]) -> str:
    """Return in a sentence which questions were not asked; empty where all were.

    >>> not_asked_said([6, 7, 8]), not_asked_said([])
    ('Questions 6 to 8 were not asked.', '')
    """
    if not numbers:
        return ""
    said = numbers_said(numbers)
    return f"{said[0].upper()}{said[1:]} {'were' if len(numbers) > 1 else 'was'} not asked."
