"""How many faces, edges and vertices a solid of two parts has, added up."""

from __future__ import annotations

from generators.geometry import _solid_shapes as s
from generators.geometry._solids_counted import counted, summed
from itembank.figures.kinds.solid.solid import Solid
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

ONE_LEFT_OUT = Misconception(
    "geometry.solids-one-left-out",
    "leaves out the last of what is to be added",
    "What does the question name? Have you counted each of them?",
)


def has_sum(shape: str, sides: int, height: int, of: tuple[str, ...]) -> bool:
    """Tell whether a solid is drawn clearly; two things are added at every other height alone."""
    clear = s.drawable(shape, sides, height, False)
    return clear and (len(of) == 3 or height % 10 == 0) and height <= 60


def _of(shape: str, sides: int, of: tuple[str, ...]) -> list[int]:
    return [s.count(shape, sides, part) for part in of]


def altogether(
    topic: Topic, tier: Tier, shape: str, sides: int, height: int, of: tuple[str, ...]
) -> Draft:
    """Return the question for several counts of one solid together."""
    figure = Solid(shape, sides, height)  # type: ignore[arg-type]
    *first, last = of
    text = prompt(f"How many {', '.join(first)} and {last} does the solid have altogether?")
    numbers = _of(shape, sides, of)
    key = t.Int(sum(numbers))
    steps = [step for part in of for step in counted(shape, sides, part)]
    twice = [s.doubled(shape, sides, part) for part in of]
    wrongs = [
        (s.INSIDE, sum(number for number in twice if number is not None)),
        (s.HIDDEN, sum(s.seen(figure, part) for part in of)),
        (ONE_LEFT_OUT, sum(numbers[:-1])),
    ]
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (*steps, Step("Add them up.", summed(*numbers))),
        slips(*wrongs, key=key),
        ("altogether", of, shape, sides, height),
        figure=figure,
    )
