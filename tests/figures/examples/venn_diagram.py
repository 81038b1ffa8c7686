"""Venn diagrams at random: counts with a total or without, one left out, and members."""

from __future__ import annotations

import random

from itembank.figures.kinds.sets.venn_diagram import VennDiagram


def example(chance: random.Random) -> VennDiagram:
    """Return a Venn diagram, sound or not."""
    names = chance.choice((("A", "B"), ("French", "Spanish"), ("football", "swimming")))
    if chance.random() < 0.4:
        numbers = chance.sample(range(-5, 60), 12)
        cuts = [chance.randrange(4) for _ in range(4)]
        held = [tuple(numbers[3 * n : 3 * n + cut]) for n, cut in enumerate(cuts)]
        total = sum(cuts) if chance.random() < 0.3 else None
        return VennDiagram(*names, *held, members=True, total=total)
    most = chance.choice((10, 100, 1000))
    counts = [chance.randrange(most) for _ in range(4)]
    held = [(count,) for count in counts]
    total = sum(counts) if chance.random() < 0.6 else None
    if total is not None and chance.random() < 0.4:
        held[chance.randrange(4)] = ()  # type: ignore[assignment]
    return VennDiagram(*names, *held, total=total)
