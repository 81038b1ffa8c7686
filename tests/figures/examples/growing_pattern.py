"""Growing patterns at random."""

from __future__ import annotations

import random

from itembank.figures.kinds.number.growing_pattern import GrowingPattern


def example(chance: random.Random) -> GrowingPattern:
    """Return a growing pattern, sound or not."""
    return GrowingPattern(
        chance.randrange(1, 8),
        chance.randrange(1, 7),
        chance.choice(("squares", "dots")),
        chance.choice((3, 3, 4)),
    )
