"""How long a week takes: a class's five packs from cold, and a school's year of plans."""

from __future__ import annotations

import datetime
import os
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from itembank.planning.choosing.choose_topics import LessonWish, TopicState, choose_topics
from itembank.planning.choosing.memory import Seen, remember
from itembank.planning.choosing.week_settings import ChoiceSettings

LARKHYTHE = Path(__file__).parents[1] / "banks" / "larkhythe"
CLASSES, WEEKS, MEASURED = 40, 39, 4
COLD_LIMIT, YEAR_LIMIT = 3.0, 60.0
SIZES, RESTS = (30, 60), (0, 2, 4, 7, 14)


def from_cold() -> float:
    """Return the seconds that one week of five lessons takes, the best of three."""
    best = float("inf")
    env = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    for _ in range(3):
        with tempfile.TemporaryDirectory() as folder:
            home = Path(folder) / "larkhythe"
            shutil.copytree(LARKHYTHE, home)
            command = [sys.executable, "-m", "itembank.cli", "week", "8K", "--from", "2026-11-23"]
            start = time.perf_counter()
            subprocess.run(
                [*command, "--department", str(home), "--output", folder],
                check=True,
                capture_output=True,
                env=env,
            )
            best = min(best, time.perf_counter() - start)
    return best


def plans(topics: int = 30, rest: int = ChoiceSettings().rest) -> float:
    """Return the seconds that a year of plans takes for one class, results fed back each week."""
    start = datetime.date(2026, 9, 7)
    taught = [start + datetime.timedelta(days=240 * k // topics) for k in range(topics)]
    settings = ChoiceSettings(rest=rest)
    seen: list[list[Seen]] = [[] for _ in taught]
    began = time.perf_counter()
    for week in range(WEEKS):
        monday = start + datetime.timedelta(weeks=week, days=7)
        states = [
            TopicState(str(k), str(k), day, remember(day, seen[k]), tuple(seen[k]))
            for k, day in enumerate(taught)
        ]
        days = [monday + datetime.timedelta(days=day) for day in range(5)]
        lessons = [LessonWish(day, 8) for day in days]
        for choice in choose_topics(lessons, states, {}, settings, seed=week):
            for topic in choice.topics:
                seen[int(topic.topic)].append(Seen(choice.date, 20, 29))
    return time.perf_counter() - began


def _listed(numbers: tuple[int, ...]) -> str:
    return ", ".join(map(str, numbers[:-1])) + f" or {numbers[-1]}"


def report() -> str:
    """Return both figures with their limits."""
    cold = from_cold()
    plans()  # HiGHS is loaded now
    year = sum(plans() for _ in range(MEASURED)) / MEASURED * CLASSES
    settings = [plans(topics, rest) * CLASSES for topics in SIZES for rest in RESTS]
    return "\n".join(
        [
            f"A week of five lessons, all packs, from cold: {cold:.2f} s, "
            f"{cold / COLD_LIMIT:.2f} of its limit",
            f"Planning {CLASSES} classes for {WEEKS} weeks: {year:.0f} s, "
            f"{year / YEAR_LIMIT:.2f} of its limit ({MEASURED} classes measured)",
            f"with {SIZES[0]} and with {SIZES[1]} topics, topics resting {_listed(RESTS)} days: "
            f"{min(settings):.0f} to {max(settings):.0f} s, "
            f"{max(settings) / YEAR_LIMIT:.2f} of its limit at the most",
        ]
    )
