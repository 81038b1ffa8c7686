"""The simulated year at each depth of recording: what planning loses, and what intervals hold.

A class is recorded by question (answers by seat and right answers counted say the same of a
topic), by scores of each pupil, or by hands counted in the usual bands. For each depth are
reported: what the class is expected to know a fortnight after the year and on average in it,
when planned from that alone; and on how many Sundays the interval at 90 % of a topic held the
share of the class that really knew it, over every topic taught by then.

    python bench/simulate_depths.py
"""

from __future__ import annotations

import datetime
import statistics

import numpy as np
from simulate_year import (
    PLAIN,
    SEEDS,
    USUAL,
    Record,
    Setting,
    Year,
    by_question,
    planner,
    simulate,
)

from itembank.planning.bands.bands import default_scheme
from itembank.planning.choosing.class_memory import Scored
from itembank.planning.choosing.memory import Seen, interval_on
from itembank.records.results.whole_scores import Whole, of_bands, of_scores


def by_scores(year: Year, date: datetime.date, topics: list[int], rights: list[np.ndarray]) -> None:
    """Record each pupil's score."""
    scores = np.sum(rights, axis=0)
    _whole(year, date, topics, of_scores(scores.tolist(), len(topics)))


def by_bands(year: Year, date: datetime.date, topics: list[int], rights: list[np.ndarray]) -> None:
    """Record the hands counted in each of the usual bands."""
    scores = np.sum(rights, axis=0)
    counts = [
        (band.lowest, band.highest, int(((scores >= band.lowest) & (scores <= band.highest)).sum()))
        for band in default_scheme().bands(len(topics))
    ]
    _whole(year, date, topics, of_bands(counts, len(topics)))


def _whole(year: Year, date: datetime.date, topics: list[int], whole: Whole) -> None:
    marks = {str(topic): topics.count(topic) for topic in topics}
    for topic in marks:
        year.seen[int(topic)].append(Seen(date, 0, 0, scored=True))
    year.scored.append(Scored(date, whole.share, whole.variance, marks))


DEPTHS: dict[str, Record] = {
    "by question": by_question,
    "by scores": by_scores,
    "by bands": by_bands,
}


def measure(
    setting: Setting, record: Record, seed: int, every: int = 1
) -> tuple[float, float, list[bool]]:
    """Return what is known after the year and on average, and which intervals held what is true.

    Intervals are looked at on each Sunday, or on one in `every`.
    """
    held: list[bool] = []
    weeks = 0

    def look(year: Year, sunday: datetime.date) -> None:
        nonlocal weeks
        weeks += 1
        if weeks % every:
            return
        for k, memory in enumerate(year.memories()):
            if year.taught[k] < sunday:
                low, high = interval_on(memory, sunday)
                held.append(low <= float(year.recall(k, sunday).mean()) <= high)

    after, during, _ = simulate(setting, planner, seed, record, look)
    return after, during, held


def report(seeds: range = SEEDS) -> str:
    """Return the figures of each depth as a table; shares are per cent."""
    lines = []
    for setting in (USUAL, PLAIN):
        lines += [
            f"The {setting.name} school year, {len(seeds)} seeds:",
            f"{'':14}{'after':>8}{'during':>9}{'of intervals at 90 % hold':>27}{'seeds':>14}",
        ]
        for name, record in DEPTHS.items():
            rows = [measure(setting, record, seed) for seed in seeds]
            shares = [statistics.fmean(held) for *_, held in rows]
            share = statistics.fmean(covers for *_, held in rows for covers in held)
            after, during = (statistics.fmean(row[k] for row in rows) for k in (0, 1))
            lines.append(
                f"{name:14}{100 * after:7.2f} %{100 * during:7.2f} %{100 * share:25.1f} %"
                f"{100 * min(shares):8.0f}–{100 * max(shares):.0f} %"
            )
        lines.append("")
    return "\n".join(lines[:-1])


if __name__ == "__main__":
    print(report())
