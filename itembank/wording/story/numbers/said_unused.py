"""The numbers a story says outside braces, in figures or words, that its model does not use."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.value import exact_or_none
from itembank.text.late_pattern import late
from itembank.wording.sentences.numbers_said import CARDINALS, numbers_said
from itembank.wording.story.numbers.story import Story
from itembank.wording.tasks.reader import counts


def _spare(story: Story) -> Counter[Fraction]:
    """Return the numbers the model has beyond those the prompt prints, and the constants.

    A number in words needs one of its own: the {2} of *{2} adult tickets* is not the *two* of
    *two child tickets*.
    """
    printed = _standing(run for run in story.runs if not isinstance(run, str))
    spare = _standing(story.used) - printed
    for constant in map(Fraction, story.constants):
        spare[constant] = max(spare[constant], 1)
    return spare


def _standing(nodes: Iterable[t.Node]) -> Counter[Fraction]:
    """Return the numbers that stand by themselves: 3/4 is one, and its 3 and 4 are none."""
    found: Counter[Fraction] = Counter()
    waiting = list(nodes)
    while waiting:
        node = waiting.pop()
        if isinstance(node, t.Int | t.Dec | t.Mixed) or (
            isinstance(node, t.Frac) and isinstance(node.num, t.Int) and isinstance(node.den, t.Int)
        ):
            if (value := exact_or_none(node)) is not None:
                found[value] += 1
        else:
            waiting.extend(t.children(node))
    return found


# Work out one of the other angles: any of them, where the model shares equally.
_ONE_OF_ALIKE = late(
    r"\b(?:find|work out|calculate|what is|(?:size|value|length) of) one of the (?:other|equal|two)\b",
    re.I,
)


def _divides(story: Story) -> bool:
    return any(
        isinstance(part, t.Frac)
        or (isinstance(part, t.Product) and any(op == "÷" for op, _ in part.rest))
        for node in story.used
        for part in t.walk(node)
    )


def said_fault(story: Story) -> str:
    """Return what is to be done about a number outside braces that nothing accounts for."""
    left = _spare(story)
    shown = counts(story.runs)
    for number in numbers_said(story.words):
        if story.excuses(number.text):
            continue
        stands_for = [number.value]
        if 0 < number.value < 1:
            stands_for.append(1 / number.value)
        if used := next((value for value in stands_for if left[value] > 0), None):
            left[used] -= 1
            continue
        if number.text.lower() in CARDINALS and number.value in shown:
            continue
        if number.text.lower() == "one" and _ONE_OF_ALIKE.search(story.words) and _divides(story):
            continue
        unknown = {name for node in story.used for name in t.symbols(node)} - {"π", "□"}
        if number.value == len(unknown) and re.search(
            rf"\b{number.text} (?:\w+ )?numbers\b", story.words
        ):
            continue
        if number.figures:
            return (
                f"{number.text} stands outside {{ }}: put it in {{ }} and use it in the model, or "
                "say in ‘not_needed’ why not."
            )
        return (
            f"The words say ‘{number.text}’, which the model does not use: use it and put it "
            "among the ‘constants’, or say in ‘not_needed’ why it is not needed."
        )
    return ""
