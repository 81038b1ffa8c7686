"""Items made and proved per second, for each topic and on average, in one process."""

from __future__ import annotations

import gc
import random
import time
from collections.abc import Callable
from statistics import mean, median

from timing import fraction_sum_seconds, table

from itembank.cli import MOST_NEW
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import topics
from itembank.items.topics.topic import Topic
from itembank.proof import prove_fast, prove_symbolic

FAST = 300
"""Items of each topic sent down the exact road in one pass, shared over its tiers."""
PASSES = 3
"""Passes, each over other items: an item made and proved before is partly remembered."""
WARM = 30
"""Items made and proved before the first pass, which read what every item of the topic needs."""
LEAST = 20
"""Items of a topic with a figure, or without, in one pass, from which they are measured apart."""
SLOW = 15
"""Items of each topic sent down the sympy road, each once: sympy remembers what it has seen."""
WANTED, WANTED_DRAWN = 10_000, 3_000
"""Items made and proved per second per core wanted on average: without a figure, and with one."""

Points = list[tuple[Tier, int]]
Cost = tuple[bool, float]
"""Whether an item has a figure, and the seconds that making and proving it took."""


def points(topic: Topic, count: int, rng: random.Random) -> Points:
    """Return `count` different items of a topic, as tier and index, shared over its tiers."""
    found: Points = []
    for tier, space in topic.spaces.items():
        share = min(-(-count // len(topic.spaces)), len(space))
        found += [(tier, index) for index in space.sample(share, rng)]
    return found


def costs(topic: Topic, chosen: Points, prove: Callable[[Item], None]) -> list[Cost]:
    """Return what making and proving each of the chosen items takes on one core."""
    found = []
    for tier, index in chosen:
        start = time.process_time()
        item = topic.item(tier, index)
        prove(item)
        found.append((item.figure is not None, time.process_time() - start))
    return found


def seconds(passes: list[list[Cost]], drawn: bool | None = None) -> float | None:
    """Return what an item takes, the middle of the passes; of one sort, None if too few are."""
    means = []
    for run in passes:
        kept = [cost for figure, cost in run if drawn is None or figure is drawn]
        if len(kept) < (1 if drawn is None else LEAST):
            return None
        means.append(mean(kept))
    return median(means)


def report() -> str:
    """Measure every topic and return a table."""
    gc.set_threshold(MOST_NEW)  # as in every command
    rng = random.Random(1)
    found = topics()
    start = time.process_time()
    size = sum(len(space) for topic in found for space in topic.spaces.values())
    counting = time.process_time() - start
    unit = fraction_sum_seconds()
    fast: dict[str, float] = {}
    slow: dict[str, float] = {}
    drawn: list[float] = []
    plain: list[float] = []
    prove_symbolic(found[0].item(Tier.CORE, 0))  # imports sympy
    for topic in found:
        chosen = points(topic, WARM + PASSES * FAST, rng)
        rng.shuffle(chosen)
        costs(topic, chosen[:WARM], prove_fast)
        passes = [costs(topic, chosen[WARM + k :: PASSES], prove_fast) for k in range(PASSES)]
        fast[topic.id] = seconds(passes) or 0.0
        for kind, kept in ((True, drawn), (False, plain)):
            if (cost := seconds(passes, kind)) is not None:
                kept.append(cost)
        few = rng.sample(chosen, SLOW)
        slow[topic.id] = mean(cost for _, cost in costs(topic, few, prove_symbolic))
    middle, middle_slow = mean(fast.values()), mean(slow.values())
    rows = [("topic", "items/s", "× average", "by sympy/s", "exact : sympy")]
    for name in fast:
        rows.append(_row(name, fast[name], slow[name], middle))
    rows.append(_row("average", middle, middle_slow, middle))
    return "\n".join(
        [
            f"Items made and proved per second of one core; {len(found)} topics, {size:,} items",
            table(rows),
            _verdict("without a figure", plain, WANTED),
            _verdict("with a figure", drawn, WANTED_DRAWN),
            f"  One item costs as much as {middle / unit:.0f} sums of two fractions by the exact"
            f" road and {middle_slow / unit:,.0f} by sympy.",
            f"  Laying out every space, once a process and not counted above: {counting:.2f} s.",
        ]
    )


def _verdict(which: str, costs: list[float], wanted: int) -> str:
    speed = len(costs) / sum(costs) if costs else 0.0
    return f"  Items {which}: {speed:,.0f} a second, {speed / wanted:.2f} × the {wanted:,} wanted."


def _row(name: str, fast: float, slow: float, middle: float) -> tuple[str, ...]:
    return (
        name,
        f"{1 / fast:,.0f}",
        f"{middle / fast:.2f}",
        f"{1 / slow:,.0f}",
        f"{slow / fast:.0f} : 1",
    )
