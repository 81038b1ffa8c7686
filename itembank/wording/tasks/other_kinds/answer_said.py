"""Reads a question that is followed by answers to it, which somebody gives, to be judged.

The words after the question are a frame, read to the last of them; the question before it is
read like any other. What is not in the frame's very words is no such question.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from itembank.items.asks.faulty_line import MOST_LINES
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.tasks.other_kinds.kinds_said import NAME, WHY

_QUESTION = r"(?P<question>(?:.*[.?!:)])?)\s+"
_BEFORE = late(rf"{_QUESTION}(?:{NAME}) says (?:that )?(?:the|an) answer is\s+", re.I | re.S)
_AFTER = late(rf"\. True or false\?{WHY}\s*", re.I)
_PERSON = r"(?!Nobody|None|Who|What|Which|Nothing|Not|Never|No)[A-Z][a-z]+"
_FIRST = late(rf"{_QUESTION}(?P<name>{_PERSON}) says (?:the|an) answer is\s+", re.S)
_NEXT = late(rf"(?:,|,? and) (?P<name>{_PERSON}) says ")
_WHO = late(r"\. Who is right\?\s*")


_WRITES = late(rf"{_QUESTION}(?P<name>{_PERSON}) writes:\s+Line 1:\s+", re.S)
_LINE = late(r"\s*Line (?P<number>\d):\s+")
_WHICH = late(r"Which line is wrong\? What should the answer be\?")


class WorkingSaid(NamedTuple):
    """The question that somebody answers, as it is printed, and the lines of the working."""

    question: tuple[Run, ...]
    lines: tuple[t.Node, ...]


def working_said(runs: Sequence[Run]) -> WorkingSaid | None:
    r"""Return the question and the lines of a prompt that asks which line is wrong.

    None where it is no such prompt, or says more than the frame does.

    >>> from itembank.notation import parse
    >>> runs = (
    ...     "What is the mean of ", parse("3"), " and ", parse("5"), "?\nMei writes:\nLine 1: ",
    ...     parse("3 + 5/2"), "\nLine 2: ", parse("5.5"),
    ...     "\nWhich line is wrong? What should the answer be?",
    ... )
    >>> said = working_said(runs)
    >>> said.question[-1], len(said.lines)
    ('?', 2)
    >>> working_said((*runs[:-1], "\nWhich line is right?")) is None
    True
    """
    if len(runs) < 5 or not isinstance(runs[-1], str):
        return None
    if not _WHICH.fullmatch(" ".join(runs[-1].split())):
        return None
    lines: list[t.Node] = []
    place = len(runs) - 2
    while place >= 1:
        words, node = runs[place - 1], runs[place]
        if not isinstance(words, str) or isinstance(node, str):
            return None
        lines.insert(0, node)
        found = _LINE.fullmatch(words)
        if found is None:
            break
        place -= 2
    asked = _asked(runs[:place], _WRITES, ()) if place >= 1 else None
    if asked is None or not 2 <= len(lines) <= MOST_LINES:
        return None
    numbers = [_LINE.fullmatch(run) for run in runs[place + 1 : -1 : 2] if isinstance(run, str)]
    if [found and found["number"] for found in numbers] != [
        str(number) for number in range(2, len(lines) + 1)
    ]:
        return None
    return WorkingSaid(asked.question, tuple(lines))


class AnswerSaid(NamedTuple):
    """The question that is answered, as it is printed, and the answers, each with its giver.

    Of one answer that is true or false nobody is named.
    """

    question: tuple[Run, ...]
    answers: tuple[tuple[str, t.Node], ...]


def answer_said(runs: Sequence[Run]) -> AnswerSaid | None:
    r"""Return the question and the answers of a prompt that asks what or who is right.

    None where it is no such prompt, or says more than the frame does.

    >>> from itembank.notation import parse
    >>> runs = (
    ...     "Round ", parse("3.47"), " to 1 decimal place.\nMei says the answer is ", parse("3.5"),
    ...     ". True or false? Be ready to say why.",
    ... )
    >>> said = answer_said(runs)
    >>> said.question[-1], said.answers == (("", parse("3.5")),)
    (' to 1 decimal place.', True)
    >>> answer_said((*runs[:2], " to 1 decimal place.\nNobody says the answer is ", *runs[3:]))
    >>> who = (", Omar says ", parse("3.4"), " and Zoe says ", parse("3"), ". Who is right?")
    >>> [name for name, _ in answer_said((*runs[:4], *who)).answers]
    ['Mei', 'Omar', 'Zoe']
    """
    if len(runs) < 3 or not isinstance(runs[-1], str) or isinstance(runs[-2], str):
        return None
    last = " ".join(runs[-1].split())
    if _AFTER.fullmatch(last):
        return _asked(runs[:-2], _BEFORE, (("", runs[-2]),))
    if not _WHO.fullmatch(last):
        return None
    answers: list[tuple[str, t.Node]] = []
    place = len(runs) - 2
    while place >= 1:
        words, node = runs[place - 1], runs[place]
        if not isinstance(words, str) or isinstance(node, str):
            return None
        if found := _NEXT.fullmatch(words):
            answers.append((found["name"], node))
            place -= 2
            continue
        first = _FIRST.fullmatch(words)
        if first is None or not answers:
            return None
        answers.append((first["name"], node))
        names = [name for name, _ in answers]
        if len(set(names)) < len(names):
            return None
        return _asked(runs[:place], _FIRST, tuple(reversed(answers)))
    return None


def _asked(
    runs: Sequence[Run], pattern: re.Pattern[str], answers: tuple[tuple[str, t.Node], ...]
) -> AnswerSaid | None:
    *asked, before = runs
    if not isinstance(before, str) or (found := pattern.fullmatch(before)) is None:
        return None
    question = found["question"]
    # After a piece of mathematics a new line alone may end the question.
    if not question and not (asked and "\n" in before):
        return None
    return AnswerSaid((*asked, question) if question else tuple(asked), answers)
