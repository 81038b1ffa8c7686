"""A results store as a school of 1,200 pupils fills it in five years: about two million marks."""

from __future__ import annotations

import datetime
import sqlite3
from collections.abc import Iterator
from pathlib import Path

import numpy as np

from itembank.records.store.store import open_store
from itembank.text.folding import folded

CLASSES = tuple(f"{year}{letter}" for year in range(7, 12) for letter in "KLMNPRST")
PUPILS, QUESTIONS, YEARS, LESSONS = 30, 8, 5, 42
TIERS = ("support", "core", "challenge")
TOPICS = tuple(f"{strand}.t{n}" for strand in ("number", "algebra", "ratio") for n in range(10))
NUMBERS = 400
"""Items of each topic and tier that starters draw from."""
FIRST = 2022
SEATS = tuple(f"{row}{n}" for row in "ABCDE" for n in range(1, 7))
KINDS = ("answers", "own-view", "clarity")
LEVELS = ("not sure", "partly", "sure")

Rows = dict[str, list[tuple[object, ...]]]


def make_store(path: Path, years: int = YEARS, classes: tuple[str, ...] = CLASSES) -> int:
    """Fill a new store and return the number of marks in it."""
    open_store(str(path)).close()
    rng = np.random.default_rng(11)
    ease = {topic: rng.normal(0, 0.5) for topic in TOPICS}
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA synchronous = OFF")
    marks = 0
    for rows in _lessons(rng, ease, years, classes):
        for table, values in rows.items():
            if not values:
                continue
            places = ", ".join("?" * len(values[0]))
            connection.executemany(f"INSERT INTO {table} VALUES ({places})", values)
        marks += sum(len(str(row[3])) for row in rows["score"])
    connection.commit()
    connection.close()
    return marks


def _lessons(
    rng: np.random.Generator, ease: dict[str, float], years: int, classes: tuple[str, ...]
) -> Iterator[Rows]:
    lesson = entry = 0
    for year in range(FIRST, FIRST + years):
        for name in classes:
            ability = rng.normal(0.7, 0.9, PUPILS)
            for week in range(LESSONS):
                lesson += 1
                date = datetime.date(year, 9, 5) + datetime.timedelta(days=6 * week)
                topics = rng.choice(TOPICS, QUESTIONS, replace=False)
                tiers = rng.integers(0, 3, QUESTIONS)
                numbers = rng.integers(1, NUMBERS, QUESTIONS)
                hard = np.array([ease[t] for t in topics]) + 0.8 * (tiers - 1)
                chance = 1 / (1 + np.exp(hard - ability[:, None]))
                right = (rng.random((PUPILS, QUESTIONS)) < chance).astype(int)
                entry += 3
                made = f"{date} 09:20:00.000000"
                levels = np.clip(ability + 1.5 + rng.normal(0, 0.8, PUPILS), 0, 2).astype(int)
                yield {
                    "lesson": [(lesson, name, str(date), "", "A starter", QUESTIONS, folded(name))],
                    "question": [
                        (lesson, k + 1, f"{t}/{TIERS[tier]}/{n}", str(t), TIERS[tier], 1, "")
                        for k, (t, tier, n) in enumerate(zip(topics, tiers, numbers, strict=True))
                    ],
                    "entry": [
                        (number, lesson, kind, made, None, None, "", QUESTIONS, f"{number:016x}")
                        for number, kind in enumerate(KINDS, entry - 2)
                    ],
                    "score": [
                        (entry - 2, seat, int(row.sum()), "".join(map(str, row)))
                        for seat, row in zip(SEATS, right, strict=True)
                    ],
                    "misconception": [
                        (entry - 2, seat, k + 1, f"{topics[k]}.slip")
                        for seat, row in zip(SEATS, right, strict=True)
                        for k in range(QUESTIONS)
                        if not row[k] and rng.random() < 0.3
                    ],
                    "tally": [
                        (entry - 2, k + 1, int(right[:, k].sum()), PUPILS) for k in range(QUESTIONS)
                    ],
                    "own_view": [
                        (entry - 1, seat, LEVELS[level], 1)
                        for seat, level in zip(SEATS, levels, strict=True)
                    ],
                    "clarity": [(entry, int(rng.integers(0, 6)), PUPILS, "")],
                }
