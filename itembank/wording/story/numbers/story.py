"""A word problem as it is held to its model: what is printed, and the mathematics that stands for it."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.value import exact


@dataclass(frozen=True, slots=True)
class Story:
    """A prompt with the mathematics that stands for it.

    `used` are the lines of the model, what it is to find, and the options; `constants` the whole
    numbers it may use though none is printed; `not_needed` maps a number of the prompt, as it
    stands there, to the reason why the answer does not depend on it.
    """

    runs: tuple[Run, ...]
    used: tuple[t.Node, ...]
    constants: tuple[int, ...] = ()
    not_needed: Mapping[str, str] | None = None

    @property
    def words(self) -> str:
        """Return the words alone, a gap where mathematics stands."""
        return "".join(run if isinstance(run, str) else " " for run in self.runs)

    def excuses(self, text: str) -> bool:
        """Whether a reason is given why a number of the prompt is not needed."""
        return text in (self.not_needed or {})


def values_used(story: Story) -> set[Fraction]:
    """Return the values of all numbers that the model uses, and of the constants."""
    values = {Fraction(n) for n in story.constants}
    for node in story.used:
        for part in t.walk(node):
            if isinstance(part, t.Int | t.Dec | t.Mixed | t.Frac | t.Percent):
                try:
                    values.add(exact(part))
                except t.NotationError:
                    continue
    return values
