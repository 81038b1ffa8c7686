"""A geometric sequence in a story."""

from __future__ import annotations

from typing import Any

from generators._turns import by_turns
from generators.sequences._geometric_mistakes import ONE_BACK, ONE_FACTOR_MORE, TIMES_PLACE
from generators.sequences._writing import asking
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_GROWS = (
    "Duckweed covers {a} square metres of a pond. The area that it covers is multiplied by {r} "
    "every week. What area, in square metres, does it cover after {k} weeks?",
    "A gardener has {a} strawberry plants. The number of plants is multiplied by {r} every year. "
    "How many strawberry plants are there after {k} years?",
    "A pot of yeast has a mass of {a} grams. Its mass is multiplied by {r} every hour. What is its "
    "mass, in grams, after {k} hours?",
    "A film has been watched {a} times. The number of times is multiplied by {r} every day. How "
    "many times has it been watched after {k} days?",
)


def repeated(first: t.Node, r: int, times: int) -> t.Node:
    """Return a number multiplied by a ratio so many times, written out."""
    return t.times(first, *[t.Int(r)] * times)


def in_a_story(twin: Any, first: int, r: int) -> Draft:
    """Return the question how many there are after several steps of a story."""
    times = 3 + (first + r) % 3
    asked = repeated(t.Int(first), r, times)
    value = first * r**times
    steps = []
    now = first
    for k in range(1, times + 1):
        after = now * r
        steps.append(
            Step(
                f"Multiply by {r}: step {k}.", t.equals(t.times(t.Int(now), t.Int(r)), t.Int(after))
            )
        )
        now = after
    return Draft(
        prompt(by_turns(_GROWS, first + r), a=t.Int(first), r=t.Int(r), k=t.Int(times)),
        Find(asked),
        t.Int(value),
        "integer",
        tuple(steps),
        slips(
            (asking(ONE_BACK, f"How many times do you multiply by {r}?"), value // r),
            (TIMES_PLACE, first * r * times),
            (ONE_FACTOR_MORE, value * r),
            key=t.Int(value),
        ),
        twin,
    )
