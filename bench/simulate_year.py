"""Simulated school years: the planner against three simple ways to choose starter topics.

The class forgets by another model than the planner's: the activation of a memory is the
logarithm of the sum of its past occasions, each fading as a power of time, and fading faster
the more active the memory was at the time, so that massed practice is soon lost (Pavlik &
Anderson, *Cognitive Science* 29, 2005; its form and its constants c and a from memory). Pupils
and topics differ by chance. A pupil who is wrong sees the answer, which counts as half an
occasion. The planner sees only what is recorded: how many were right on each question, or (in
``simulate_depths.py``) how many pupils had each score or landed in each band.

Two years are simulated. The *plain* one has four lessons in each of 39 weeks, eight questions
a lesson and 30 topics: every topic can come every week, and pupils forget so fast (28 % know a
topic a week after its teaching) that little is to be gained. The *usual* one is nearer to a
school: the holidays of an English year, three lessons a week, six questions, 60 topics that
differ more in difficulty; its threshold is set so that a topic never brought back is known by
about 88 % on the day, 60 % after ten days and a third after a term. Nothing else differs.

Compared are what the class is expected to know a fortnight after the last lesson, what it knew
on average over the year's Sundays of the topics taught by then, and the share of topics asked
in the last ten weeks. The planner's constants were chosen on other seeds than these.
"""

from __future__ import annotations

import datetime
import random
import statistics
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from itembank.planning.choosing.choose_topics import LessonWish, TopicState, choose_topics
from itembank.planning.choosing.class_memory import Scored, remember_class
from itembank.planning.choosing.memory import Memory, Seen

PUPILS = 27
STEEPEST, GENTLEST, NOISE = 0.217, 0.177, 0.45
START = datetime.date(2026, 9, 7)
LATER = 14
SEEDS = range(6000, 6030)
HOLIDAYS = (  # half terms, Christmas, Easter and a bank holiday of an invented English calendar
    ("2026-10-26", "2026-10-30"),
    ("2026-12-21", "2027-01-01"),
    ("2027-02-15", "2027-02-19"),
    ("2027-03-26", "2027-04-09"),
    ("2027-05-03", "2027-05-03"),
    ("2027-05-31", "2027-06-04"),
)


@dataclass(frozen=True)
class Setting:
    """What a school year is like."""

    name: str
    topics: int
    questions: int
    days: tuple[int, ...]
    weeks: int
    threshold: float
    spread: float
    """How far topics differ in difficulty: a standard deviation on the scale of activation."""
    holidays: tuple[tuple[str, str], ...] = ()

    def lessons(self) -> list[list[datetime.date]]:
        """Return the days with lessons, week by week."""
        closed = [tuple(map(datetime.date.fromisoformat, holiday)) for holiday in self.holidays]
        weeks = []
        for week in range(self.weeks):
            dates = [START + datetime.timedelta(days=7 * week + day) for day in self.days]
            weeks.append([d for d in dates if not any(a <= d <= b for a, b in closed)])
        return [week for week in weeks if week]

    def taught(self) -> list[datetime.date]:
        """Return when each topic is taught: spread over the year but for its last three weeks."""
        days = [day for week in self.lessons() for day in week]
        days = [day for day in days if day <= days[-1] - datetime.timedelta(weeks=3)]
        return [days[round(k * (len(days) - 1) / (self.topics - 1))] for k in range(self.topics)]


PLAIN = Setting("plain", 30, 8, (0, 1, 3, 4), 39, threshold=0.6, spread=0.5)
USUAL = Setting("usual", 60, 6, (0, 2, 3), 45, threshold=-0.5, spread=0.8, holidays=HOLIDAYS)


@dataclass
class Year:
    """A class under way: its topics, what was asked when, and what is really remembered."""

    setting: Setting
    seed: int
    seen: list[list[Seen]] = field(init=False)
    scored: list[Scored] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.rng = np.random.default_rng(self.seed)
        self.taught = self.setting.taught()
        topics = self.setting.topics
        self.seen = [[] for _ in range(topics)]
        self.ease = self.rng.normal(0, self.setting.spread, topics)[:, None]
        self.ease = self.ease + self.rng.normal(0, 0.5, PUPILS)
        # Teaching a topic is worth two occasions; each later one has a weight for each pupil.
        self.occasions: list[list[tuple[datetime.date, np.ndarray, np.ndarray]]] = [
            [(day, np.full(PUPILS, 2.0), np.full(PUPILS, GENTLEST + STEEPEST))]
            for day in self.taught
        ]

    def activation(self, topic: int, date: datetime.date) -> np.ndarray:
        """Return how active a topic is in each pupil's memory."""
        days, weights, decays = zip(*self.occasions[topic], strict=True)
        # Half a day at the least: a memory is not infinitely active on its own day.
        ages = np.array([max((date - day).days, 0.5) for day in days])[:, None]
        return np.log((np.array(weights) * ages ** -np.array(decays)).sum(axis=0))

    def recall(self, topic: int, date: datetime.date) -> np.ndarray:
        """Return each pupil's chance of being right on a topic."""
        active = self.activation(topic, date) + self.ease[topic]
        return 1 / (1 + np.exp((self.setting.threshold - active) / NOISE))

    def known(self, date: datetime.date) -> float:
        """Return the share of the class expected to be right, over the topics taught by a day."""
        there = [k for k, day in enumerate(self.taught) if day < date]
        return float(np.mean([self.recall(k, date) for k in there]))

    def ask(self, topic: int, date: datetime.date) -> np.ndarray:
        """Ask one question on a topic, and return which pupils were right."""
        right = self.rng.random(PUPILS) < self.recall(topic, date)
        # A cap keeps the eighth question of one starter from overflowing; it is lost by then.
        decay = GENTLEST + np.minimum(STEEPEST * np.exp(self.activation(topic, date)), 20)
        self.occasions[topic].append((date, np.where(right, 1.0, 0.5), decay))
        return right

    def memories(self) -> list[Memory]:
        """Return what is expected of each topic from all that is recorded."""
        taught = {str(k): day for k, day in enumerate(self.taught)}
        seen = {str(k): rows for k, rows in enumerate(self.seen)}
        return list(remember_class(taught, seen, self.scored).values())


Record = Callable[[Year, datetime.date, list[int], list[np.ndarray]], None]
"""Writes what is recorded of a starter: its day, its topics, and who was right on each."""


def by_question(
    year: Year, date: datetime.date, topics: list[int], rights: list[np.ndarray]
) -> None:
    """Record how many were right on each question."""
    for topic, right in zip(topics, rights, strict=True):
        year.seen[topic].append(Seen(date, float(right.sum()), PUPILS))


Policy = Callable[[Year, list[datetime.date], random.Random], list[list[int]]]


def planner(year: Year, dates: list[datetime.date], lot: random.Random) -> list[list[int]]:
    """Choose as ``itembank week`` does."""
    memories = year.memories()
    states = [
        TopicState(str(k), str(k), day, memories[k], tuple(year.seen[k]))
        for k, day in enumerate(year.taught)
    ]
    wishes = [LessonWish(date, year.setting.questions) for date in dates]
    chosen = choose_topics(wishes, states, {}, seed=year.seed)
    return [
        [int(topic.topic) for topic in lesson.topics for _ in range(topic.count)]
        for lesson in chosen
    ]


def at_random(year: Year, dates: list[datetime.date], lot: random.Random) -> list[list[int]]:
    """Take topics taught so far by lot, none twice where there are enough."""
    rows = []
    for date in dates:
        there = [k for k, day in enumerate(year.taught) if day < date]
        rounds = -(-year.setting.questions // len(there))
        row = [k for _ in range(rounds) for k in lot.sample(there, len(there))]
        rows.append(row[: year.setting.questions])
    return rows


def last_three(year: Year, dates: list[datetime.date], lot: random.Random) -> list[list[int]]:
    """Take the three topics taught last, in turn."""
    rows = []
    for date in dates:
        there = [k for k, day in enumerate(year.taught) if day < date][-3:]
        rows.append([there[i % len(there)] for i in range(year.setting.questions)])
    return rows


def longest_unseen(year: Year, dates: list[datetime.date], lot: random.Random) -> list[list[int]]:
    """Take the topics not seen for longest, by lot where that is alike: strict rotation."""
    rows = []
    last = [max([day, *(seen.date for seen in year.seen[k])]) for k, day in enumerate(year.taught)]
    for date in dates:
        there = [k for k, day in enumerate(year.taught) if day < date]
        there.sort(key=lambda k: (last[k], lot.random()))
        rows.append([there[i % len(there)] for i in range(year.setting.questions)])
        for k in rows[-1]:
            last[k] = date
    return rows


def simulate(
    setting: Setting,
    policy: Policy,
    seed: int,
    record: Record = by_question,
    each_week: Callable[[Year, datetime.date], None] | None = None,
) -> tuple[float, float, float]:
    """Return recall after the year and on average in it, and the share of topics asked lately.

    `each_week` is shown the year on each Sunday.
    """
    year, lot = Year(setting, seed), random.Random(seed)
    last, sundays = START, []
    for week in setting.lessons():
        dates = [date for date in week if date > year.taught[0]]
        for date, topics in zip(dates, policy(year, dates, lot), strict=True):
            record(year, date, topics, [year.ask(topic, date) for topic in topics])
            last = date
        sunday = week[0] + datetime.timedelta(days=6 - week[0].weekday())
        sundays.append(year.known(sunday))
        if each_week is not None:
            each_week(year, sunday)
    lately = last - datetime.timedelta(weeks=10)
    asked = sum(any(ask.date > lately for ask in seen) for seen in year.seen)
    end = last + datetime.timedelta(days=LATER)
    return year.known(end), statistics.fmean(sundays), asked / setting.topics


POLICIES: dict[str, Policy] = {
    "planner": planner,
    "longest unseen": longest_unseen,
    "random taught topic": at_random,
    "last three": last_three,
}


def compare(setting: Setting, seeds: range = SEEDS) -> dict[str, dict[str, float]]:
    """Return the mean figures of each policy, and the planner's leads with standard errors."""
    found = {
        name: [simulate(setting, policy, seed) for seed in seeds]
        for name, policy in POLICIES.items()
    }
    table = {}
    for name, rows in found.items():
        table[name] = {"coverage": statistics.fmean(row[2] for row in rows)}
        for place, figure in enumerate(("after", "during")):
            leads = [a[place] - b[place] for a, b in zip(found["planner"], rows, strict=True)]
            table[name] |= {
                figure: statistics.fmean(row[place] for row in rows),
                f"lead {figure}": statistics.fmean(leads),
                f"error {figure}": statistics.stdev(leads) / len(seeds) ** 0.5,
            }
    return table


def report() -> str:
    """Return the comparisons as tables; leads are in points of a hundred."""
    lines = []
    for setting in (PLAIN, USUAL):
        lessons = sum(map(len, setting.lessons()))
        lines += [
            f"The {setting.name} school year: {lessons} lessons, {setting.questions} questions "
            f"each, {setting.topics} topics, {PUPILS} pupils, {len(SEEDS)} seeds:",
            f"{'':21}{'after':>7}{'planner leads':>16}{'during':>9}{'planner leads':>16}"
            f"{'coverage':>10}",
        ]
        for name, row in compare(setting).items():
            cells = [f"{name:21}"]
            for figure, width in (("after", 7), ("during", 9)):
                lead = f"{100 * row[f'lead {figure}']:.2f} ± {100 * row[f'error {figure}']:.2f}"
                cells.append(f"{100 * row[figure]:{width - 2}.1f} %")
                cells.append(f"{lead if name != 'planner' else '':>16}")
            lines.append("".join(cells) + f"{100 * row['coverage']:8.0f} %")
        lines.append("")
    return "\n".join(lines[:-1])


if __name__ == "__main__":
    print(report())
