"""A simulated school year: the planner against two simple ways to choose starter topics.

The class forgets by another model than the planner's: the activation of a memory is the
logarithm of the sum of its past occasions, each fading as a power of time, and fading faster
the more active the memory was at the time, so that massed practice is soon lost (Pavlik &
Anderson, *Cognitive Science* 29, 2005; its form and its constants c and a from memory, the
threshold chosen so that random topics leave recall between a half and two thirds). Pupils and
topics differ by chance. A pupil who is wrong sees the answer, which counts as half an
occasion. The planner sees only how many were right.

Two figures are compared a fortnight after the last lesson: the share of the class expected to
answer a question on a topic of the year, and the share of topics asked in the last ten weeks.
"""

from __future__ import annotations

import datetime
import random
import statistics
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from itembank.planning.choose_topics import LessonWish, TopicState, choose_topics
from itembank.planning.memory import Seen, remember

WEEKS, LESSONS, QUESTIONS, TOPICS, PUPILS = 39, (0, 1, 3, 4), 8, 30, 27
STEEPEST, GENTLEST = 0.217, 0.177
THRESHOLD, NOISE = 0.6, 0.45
START = datetime.date(2026, 9, 7)
LATER = 14


@dataclass
class Year:
    """A class under way: its topics, what was asked when, and what is really remembered."""

    seed: int
    taught: list[datetime.date] = field(init=False)
    seen: list[list[Seen]] = field(init=False)

    def __post_init__(self) -> None:
        self.rng = np.random.default_rng(self.seed)
        self.taught = [
            START + datetime.timedelta(days=round(7 * (WEEKS - 3) * k / TOPICS))
            for k in range(TOPICS)
        ]
        self.seen = [[] for _ in range(TOPICS)]
        spread = self.rng.normal(0, 0.5, TOPICS)[:, None] + self.rng.normal(0, 0.5, PUPILS)
        self.ease = spread
        # Teaching a topic is worth two occasions; each later one has a weight for each pupil.
        self.occasions: list[list[tuple[datetime.date, np.ndarray, np.ndarray]]] = [
            [(day, np.full(PUPILS, 2.0), np.full(PUPILS, GENTLEST + STEEPEST))]
            for day in self.taught
        ]

    def activation(self, topic: int, date: datetime.date) -> np.ndarray:
        """Return how active a topic is in each pupil's memory."""
        total = np.zeros(PUPILS)
        for day, weight, decay in self.occasions[topic]:
            # Half a day at the least: a memory is not infinitely active on its own day.
            total += weight * max((date - day).days, 0.5) ** -decay
        return np.log(total)

    def recall(self, topic: int, date: datetime.date) -> np.ndarray:
        """Return each pupil's chance of being right on a topic."""
        active = self.activation(topic, date) + self.ease[topic]
        return 1 / (1 + np.exp((THRESHOLD - active) / NOISE))

    def ask(self, topic: int, date: datetime.date) -> None:
        """Ask one question on a topic, and let what happened count."""
        right = self.rng.random(PUPILS) < self.recall(topic, date)
        # A cap keeps the eighth question of one starter from overflowing; it is lost by then.
        decay = GENTLEST + np.minimum(STEEPEST * np.exp(self.activation(topic, date)), 20)
        self.occasions[topic].append((date, np.where(right, 1.0, 0.5), decay))
        self.seen[topic].append(Seen(date, float(right.sum()), PUPILS))


Policy = Callable[[Year, list[datetime.date], random.Random], list[list[int]]]


def planner(year: Year, dates: list[datetime.date], lot: random.Random) -> list[list[int]]:
    """Choose as ``itembank week`` does."""
    states = [
        TopicState(str(k), str(k), day, remember(day, year.seen[k]), tuple(year.seen[k]))
        for k, day in enumerate(year.taught)
    ]
    wishes = [LessonWish(date, QUESTIONS) for date in dates]
    chosen = choose_topics(wishes, states, {}, seed=year.seed)
    return [
        [int(one.topic) for one in lesson.topics for _ in range(one.count)] for lesson in chosen
    ]


def at_random(year: Year, dates: list[datetime.date], lot: random.Random) -> list[list[int]]:
    """Take topics taught so far by lot, none twice where there are enough."""
    rows = []
    for date in dates:
        there = [k for k, day in enumerate(year.taught) if day < date]
        rounds = -(-QUESTIONS // len(there))
        rows.append([k for _ in range(rounds) for k in lot.sample(there, len(there))][:QUESTIONS])
    return rows


def last_three(year: Year, dates: list[datetime.date], lot: random.Random) -> list[list[int]]:
    """Take the three topics taught last, in turn."""
    rows = []
    for date in dates:
        there = [k for k, day in enumerate(year.taught) if day < date][-3:]
        rows.append([there[i % len(there)] for i in range(QUESTIONS)])
    return rows


def simulate(policy: Policy, seed: int) -> tuple[float, float]:
    """Return expected recall after the year, and the share of topics asked in its last weeks."""
    year, lot = Year(seed), random.Random(seed)
    last = START
    for week in range(WEEKS):
        monday = START + datetime.timedelta(weeks=week)
        dates = [monday + datetime.timedelta(days=day) for day in LESSONS]
        dates = [date for date in dates if date > year.taught[0]]
        for date, topics in zip(dates, policy(year, dates, lot), strict=True):
            for topic in topics:
                year.ask(topic, date)
            last = date
    end = last + datetime.timedelta(days=LATER)
    recalled = float(np.mean([year.recall(k, end) for k in range(TOPICS)]))
    lately = last - datetime.timedelta(weeks=10)
    asked = sum(any(one.date > lately for one in seen) for seen in year.seen)
    return recalled, asked / TOPICS


def compare(seeds: int = 30) -> dict[str, dict[str, float]]:
    """Return the mean figures of each policy, and the planner's lead with its standard error."""
    policies = {"planner": planner, "random taught topic": at_random, "last three": last_three}
    found = {
        name: [simulate(policy, seed) for seed in range(seeds)] for name, policy in policies.items()
    }
    table = {}
    for name, rows in found.items():
        leads = [ours[0] - theirs[0] for ours, theirs in zip(found["planner"], rows, strict=True)]
        table[name] = {
            "recall": statistics.fmean(row[0] for row in rows),
            "coverage": statistics.fmean(row[1] for row in rows),
            "lead": statistics.fmean(leads),
            "error": statistics.stdev(leads) / seeds**0.5 if name != "planner" else 0.0,
        }
    return table


def report() -> str:
    """Return the comparison as a table."""
    lines = [
        f"A school year of {WEEKS} weeks, {TOPICS} topics, {PUPILS} pupils, 30 seeds:",
        f"{'':22}{'recall':>8}{'coverage':>10}{'planner leads by':>20}",
    ]
    for name, row in compare().items():
        lead = f"{row['lead']:.3f} ± {row['error']:.3f}" if name != "planner" else ""
        lines.append(f"{name:22}{row['recall']:8.3f}{row['coverage']:10.2f}{lead:>20}".rstrip())
    return "\n".join(lines)


if __name__ == "__main__":
    print(report())
