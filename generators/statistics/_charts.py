"""What charts are about: the names on them, what is counted, and how it is asked and worked out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any, NamedTuple

from generators.statistics import _chart_mistakes as m
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Step
from itembank.notation import tree as t
from itembank.text.in_words import in_full


class Story(NamedTuple):
    """A thing that is counted by names: the words for its chart and for its questions.

    `thing` is what is counted, `verb` what was done with it (*were sold*), `where` stands before a
    name (*on*), and `which` asks for a name. `shows` says what is shown; numbers up to `most` are
    likely (plausible, no source).
    """

    names: tuple[str, ...]
    thing: str
    verb: str
    where: str
    which: str
    shows: str
    most: int

    def lead(self, chart: str) -> str:
        """Return the sentence that says what a chart shows."""
        return f"The {chart} shows {self.shows}."

    def counts(self) -> str:
        """Return the title of the axis."""
        return f"Number of {self.thing}"

    def of(self, name: str) -> str:
        """Return a phrase for one of the names."""
        return f"{self.where} {in_full(name)}".strip()


DAYS = ("Mon", "Tue", "Wed", "Thu")
STORIES = (
    Story(
        DAYS, "trays", "were sold", "on", "On which day were the {most} trays sold?",
        "the trays of plants sold on a stall", 60,
    ),
    Story(
        DAYS, "swimmers", "came", "on", "On which day did the {most} swimmers come?",
        "the swimmers who came to a club", 60,
    ),
    Story(
        ("rose", "tulip", "iris", "daisy"), "pupils", "chose", "",
        "Which flower did the {most} pupils choose?",
        "the flower that pupils chose for a garden", 60,
    ),
    Story(
        ("bus", "car", "bike", "train"), "people", "came by", "",
        "Which way did the {most} people come by?", "how people came to a gala", 100,
    ),
    Story(
        DAYS, "books", "were lent", "on", "On which day were the {most} books lent?",
        "the books that a library lent", 100,
    ),
    Story(
        ("soup", "pasta", "curry", "salad"), "pupils", "chose", "",
        "Which dish did the {most} pupils choose?", "the dish that pupils chose", 100,
    ),
    Story(
        DAYS, "bikes", "were mended", "on", "On which day were the {most} bikes mended?",
        "the bikes mended in a workshop", 40,
    ),
)  # fmt: skip

VALUE, MOST, FEWEST, MORE, FEWER, TWO, ALL, FRACTION = range(8)
"""What is asked of a chart."""

Wrongs = list[tuple[Any, int | Fraction | t.Node | None]]


class Question(NamedTuple):
    """What is asked of a chart, with its answer."""

    text: str
    key: t.Node
    form: str
    steps: list[Step]
    wrongs: Wrongs


def asked_of(kind: int, story: Story, values: Sequence[int], first: int, second: int) -> Question:
    """Return a question about the rows `first` and `second` of a chart, and its answer."""
    names, thing = story.names, f"{story.thing} {story.verb}"
    a, b = values[first], values[second]
    if kind == VALUE:
        text = f"How many {thing} {story.of(names[first])}?"
        return Question(text, t.Int(a), "integer", [], [])
    if kind in (MOST, FEWEST):
        pick, other = (max, min) if kind == MOST else (min, max)
        best = names[values.index(pick(values))]
        word, size = ("most", "largest") if kind == MOST else ("fewest", "smallest")
        steps = [Step(f"Look for the {size}.", t.Label(best))]
        wrongs: Wrongs = [
            (m.OTHER_END, t.Label(names[values.index(other(values))])),
            (m.FIRST_IN_LINE, t.Label(names[0 if best != names[0] else -1])),
        ]
        return Question(story.which.replace("{most}", word), t.Label(best), "name", steps, wrongs)
    if kind in (MORE, FEWER):
        high, low = max(a, b), min(a, b)
        large, small = (first, second) if a > b else (second, first)
        if kind == MORE:
            text = f"How many more {thing} {story.of(names[large])} than {story.of(names[small])}?"
        else:
            text = f"How many fewer {thing} {story.of(names[small])} than {story.of(names[large])}?"
        steps = [Step("Subtract.", t.equals(t.sub(t.Int(high), t.Int(low)), t.Int(high - low)))]
        asked_first = high if kind == MORE else low
        return Question(
            text,
            t.Int(high - low),
            "integer",
            steps,
            [(m.ADDS_FOR_MORE, high + low), (m.READS_ONE_OF_TWO, asked_first)],
        )
    total = sum(values)
    if kind == TWO:
        text = f"How many {thing} {story.of(names[first])} and {in_full(names[second])} altogether?"
        steps = [Step("Add the two.", t.equals(t.add(t.Int(a), t.Int(b)), t.Int(a + b)))]
        return Question(
            text,
            t.Int(a + b),
            "integer",
            steps,
            [(m.READS_ONE_OF_TWO, a), (m.TOTAL_OF_ALL, total), (m.SUBTRACTS_TO_ADD, abs(a - b))],
        )
    added = Step("Add all of them.", t.equals(t.add(*map(t.Int, values)), t.Int(total)))
    if kind == ALL:
        return Question(
            f"How many {story.thing} are there altogether?",
            t.Int(total),
            "integer",
            [added],
            [(m.LARGEST_ONLY, max(values)), (m.LEAVES_OUT_LAST, total - values[-1])],
        )
    text = (
        f"What fraction of the {thing} {story.of(names[first])}? "
        "Give your answer in its simplest form."
    )
    key = number_node(Fraction(a, total))
    unlike = t.frac(a, total)
    line = Step(
        "Write the part over the whole.", unlike if unlike == key else t.equals(unlike, key)
    )
    return Question(
        text,
        key,
        "lowest-terms",
        [added, line],
        [
            (m.PART_TO_REST, Fraction(a, total - a)),
            (m.EACH_ALIKE, Fraction(1, len(values))),
        ],
    )
