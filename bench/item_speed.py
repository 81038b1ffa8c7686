"""Items made and proved per second, for each topic and on average, in one process."""

from __future__ import annotations

import random
import time
from collections.abc import Callable
from statistics import median

from timing import fraction_sum_seconds, table

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import topics
from itembank.items.topics.topic import Topic
from itembank.proof import prove_fast, prove_symbolic

FAST = 300
"""Items of each topic sent down the exact road, shared over its tiers; three passes."""
LEAST = 20
"""Items of a topic with a figure, or without, from which they are measured apart."""
SLOW = 15
"""Items of each topic sent down the sympy road, each once: sympy remembers what it has seen."""
WANTED, WANTED_DRAWN = 10_000, 3_000
"""Items made and proved per second per core wanted on average: without a figure, and with one."""

Points = list[tuple[Tier, int]]


def points(topic: Topic, count: int, rng: random.Random) -> Points:
    """Return `count` different items of a topic, as tier and index, shared over its tiers."""
    found: Points = []
    for tier, space in topic.spaces.items():
        share = min(-(-count // len(topic.spaces)), len(space))
        found += [(tier, index) for index in space.sample(share, rng)]
    return found


def seconds(topic: Topic, chosen: Points, prove: Callable[[Item], None]) -> float:
    """Return the time on one core that making and proving each of the chosen items takes."""
    start = time.process_time()
    for tier, index in chosen:
        prove(topic.item(tier, index))
    return (time.process_time() - start) / len(chosen)


def report() -> str:
    """Measure every topic and return a table."""
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
        chosen = points(topic, FAST, rng)
        seconds(topic, chosen[::10], prove_fast)
        fast[topic.id] = median(seconds(topic, chosen, prove_fast) for _ in range(3))
        for kind, costs in ((True, drawn), (False, plain)):
            of_kind = [p for p in chosen if (topic.item(*p).figure is not None) is kind]
            if len(of_kind) >= LEAST:
                costs.append(median(seconds(topic, of_kind, prove_fast) for _ in range(3)))
        few = rng.sample(chosen, SLOW)
        slow[topic.id] = seconds(topic, few, prove_symbolic)
    mean, mean_slow = (sum(costs.values()) / len(costs) for costs in (fast, slow))
    rows = [("topic", "items/s", "× average", "by sympy/s", "exact : sympy")]
    for name in fast:
        rows.append(_row(name, fast[name], slow[name], mean))
    rows.append(_row("average", mean, mean_slow, mean))
    return "\n".join(
        [
            f"Items made and proved per second of one core; {len(found)} topics, {size:,} items",
            table(rows),
            _verdict("without a figure", plain, WANTED),
            _verdict("with a figure", drawn, WANTED_DRAWN),
            f"  One item costs as much as {mean / unit:.0f} sums of two fractions by the exact road"
            f" and {mean_slow / unit:,.0f} by sympy.",
            f"  Laying out every space, once a process and not counted above: {counting:.2f} s.",
        ]
    )


def _verdict(which: str, costs: list[float], wanted: int) -> str:
    speed = len(costs) / sum(costs) if costs else 0.0
    return f"  Items {which}: {speed:,.0f} a second, {speed / wanted:.2f} × the {wanted:,} wanted."


def _row(name: str, fast: float, slow: float, mean: float) -> tuple[str, ...]:
    return (
        name,
        f"{1 / fast:,.0f}",
        f"{mean / fast:.2f}",
        f"{1 / slow:,.0f}",
        f"{slow / fast:.0f} : 1",
    )
