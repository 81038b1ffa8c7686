"""Two sets at random, with any of their regions shaded."""

from __future__ import annotations

import random

from itembank.figures.kinds.sets.shaded_sets import REGIONS, ShadedSets


def example(chance: random.Random) -> ShadedSets:
    """Return two sets with some regions shaded."""
    first, second = chance.sample("ABCDEFST", 2)
    dark = [region for region in REGIONS if chance.random() < 0.5]
    return ShadedSets(first, second, tuple(dark))
