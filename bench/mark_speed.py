"""Typed answers marked per second on one core, as a ratio to a unit measured in the same run."""

from __future__ import annotations

import random
import time
from statistics import median

from timing import fraction_sum_seconds, table

from itembank.items.item import Item
from itembank.items.topics.registry import topics
from itembank.marking.mark import mark
from itembank.notation.line import line

EACH = 8
"""Items of every tier of every topic; each is answered by its key, its slips and two others."""
WANTED = 2_000
"""Answers marked per second on one core that the tool must reach on average."""


def answers() -> dict[str, list[tuple[Item, str]]]:
    """Return items and typed answers by topic."""
    rng = random.Random(2)
    found: dict[str, list[tuple[Item, str]]] = {}
    for topic in topics():
        work = found.setdefault(topic.id, [])
        for tier, space in topic.spaces.items():
            for index in space.sample(min(EACH, len(space)), rng):
                item = topic.item(tier, index)
                typed = [line(item.key), *(line(slip.wrong) for slip in item.slips)]
                work += [(item, text) for text in (*typed, "1 7/9", "x = 3 + 4")]
    return found


def report() -> str:
    """Mark every answer three times and return a table."""
    found = answers()
    unit = fraction_sum_seconds()
    first, text = next(iter(found.values()))[0]
    mark(first, text)  # builds the parser
    costs: dict[str, float] = {}
    for name, work in found.items():
        times = []
        for _ in range(3):
            start = time.process_time()
            for item, typed in work:
                mark(item, typed)
            times.append((time.process_time() - start) / len(work))
        costs[name] = median(times)
    mean = sum(costs.values()) / len(costs)
    rows = [("topic", "answers/s", "× average")]
    rows += [(name, f"{1 / cost:,.0f}", f"{mean / cost:.2f}") for name, cost in costs.items()]
    rows.append(("average", f"{1 / mean:,.0f}", "1.00"))
    return "\n".join(
        [
            f"Typed answers marked per second of one core; {sum(map(len, found.values())):,}",
            table(rows),
            f"  The average is {1 / mean / WANTED:.1f} × the {WANTED:,} answers a second wanted;",
            f"  one answer costs as much as {mean / unit:.0f} sums of two fractions.",
        ]
    )
