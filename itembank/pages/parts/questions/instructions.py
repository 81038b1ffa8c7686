"""What several questions of a starter ask of their answers, said once at the foot of the slide.

The pack's prompts stay whole: the proof of each question counts its instruction, and so do
sheets and notes. Only the slide moves it, and names the questions it belongs to.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.files.faults import join_words
from itembank.packs.data.pack_item import PackItem, Run, TextRun
from itembank.wording.tasks.answers import written_how

FEWEST = 2
"""Questions that must share an instruction before it is worth a line at the foot."""


class Instruction(NamedTuple):
    """A sentence, and the numbers of the questions it belongs to."""

    sentence: str
    numbers: tuple[int, ...]

    def words(self, of: Sequence[int]) -> str:
        """Return it with the questions it belongs to, of those that stand on a slide.

        >>> told = Instruction("Give your answer in its simplest form.", (2, 3, 7))
        >>> told.words(range(1, 5)), told.words([7]), told.words([1, 4])
        ('Questions 2 and 3: give your answer in its simplest form.', \
'Question 7: give your answer in its simplest form.', '')
        """
        here = [str(number) for number in self.numbers if number in of]
        if not here:
            return ""
        whose = "Question" if len(here) == 1 else "Questions"
        said = self.sentence[0].lower() + self.sentence[1:]
        return f"{whose} {join_words(here, 'and')}: {said}"


def last_instruction(item: PackItem) -> str:
    """Return the sentence that ends the prompt and says how the answer is to be given, or ""."""
    last = item.prompt[-1]
    return written_how.last_instruction(last.text) if isinstance(last, TextRun) else ""


def without(item: PackItem, sentence: str) -> list[Run]:
    """Return the prompt without the sentence that ends it."""
    last = item.prompt[-1]
    assert isinstance(last, TextRun)
    rest = last.text.rstrip().removesuffix(sentence).rstrip()
    return [*item.prompt[:-1], *([TextRun(text=rest)] if rest else [])]


def shared(items: Sequence[PackItem]) -> list[Instruction]:
    """Return the instructions that several of a starter's questions share, the first used first."""
    found: dict[str, list[int]] = {}
    for number, item in enumerate(items, start=1):
        if said := last_instruction(item):
            found.setdefault(said, []).append(number)
    return [
        Instruction(said, tuple(numbers))
        for said, numbers in found.items()
        if len(numbers) >= FEWEST
    ]
