"""Statistics of items and of generators (topic and tier), and where they contradict a tier."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import isnan
from types import MappingProxyType
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from sqlalchemy import Connection, func, select

from itembank.records.interval import Interval, wilson
from itembank.records.pooled import Pooled, count_cells, pool_cells, reliabilities
from itembank.records.rasch import FEWEST_EITHER_WAY, TooFew, rasch_of_starters
from itembank.records.starter_answers import (
    Question,
    Scope,
    StarterAnswers,
    starter_answers,
)
from itembank.records.tables import active, entry, lesson, misconception, question, tally

TIERS = ("support", "core", "challenge")
FEWEST_FOR_TIER = 20
"""Answers an item needs before its tier is doubted (common practice, no source)."""
NEWEST = 2000
"""Starters, the newest, that Rasch difficulties are taken from: some 60,000 pupils' answers."""


MOST_ITEMS = 40
"""Items up to which each has a Rasch difficulty; above, each topic and tier has one."""


class Line(NamedTuple):
    """Statistics of an item; of a whole generator where `address` is empty.

    `correlation` and `upper_lower` are None where too few answers by seat are known;
    `misconceptions` gives the share of all answers by seat that showed each.
    """

    address: str
    topic: str
    tier: str
    right: int
    out_of: int
    correlation: float | None
    upper_lower: float | None
    misconceptions: Mapping[str, float] = MappingProxyType({})
    difficulty: float | None = None
    error: float | None = None

    @property
    def interval(self) -> Interval:
        """Return the share right with its Wilson interval, worked out where it is shown."""
        return wilson(self.right, self.out_of)


@dataclass(frozen=True, slots=True)
class Contradiction:
    """An item or generator that is harder or easier than its topic's `other` tier."""

    line: Line
    harder: bool
    other: str
    interval: Interval

    def words(self) -> str:
        """Return the contradiction in one sentence."""
        low, high = (round(100 * end) for end in self.line.interval[1:])
        theirs = round(100 * self.interval.share)
        how = "harder" if self.harder else "easier"
        return (
            f"{self.line.tier}, yet {how} than {self.other}: {low} to {high} % right, where "
            f"{self.other} has {theirs} %"
        )


@dataclass(frozen=True, slots=True)
class StarterLine:
    """How reliable one starter is: KR-20, None where it has no meaning."""

    class_name: str
    date: datetime.date
    kr20: float | None


@dataclass(frozen=True, slots=True)
class ItemReport:
    """All of it; `note` says in plain words what the Rasch difficulties rest on, or lack."""

    items: tuple[Line, ...]
    generators: tuple[Line, ...]
    starters: tuple[StarterLine, ...]
    contradictions: tuple[Contradiction, ...]
    note: str


def item_report(connection: Connection, scope: Scope, topic: str | None = None) -> ItemReport:
    """Return the statistics of what was asked in scope; of one topic where it is named."""
    found = starter_answers(connection, scope)
    known = {one: place for place, one in enumerate(found.items)}
    counted = _counted(connection, scope)
    for one in counted:
        known.setdefault(one, len(known))
    items = list(known)
    extra = np.zeros((len(items), 2))
    for one, pair in counted.items():
        extra[known[one]] = pair
    shown = _misconceptions(connection, scope, found)
    cells = count_cells(found.table, found.starter, found.asked)
    own = pool_cells(cells, found.asked, len(items))
    kinds = {pair: n for n, pair in enumerate(sorted({(q.topic, q.tier) for q in items}))}
    kind = np.array([kinds[one.topic, one.tier] for one in items], dtype=np.intp)
    of_kind = found.asked.copy()
    of_kind[found.asked >= 0] = kind[found.asked[found.asked >= 0]]
    theirs = pool_cells(cells, of_kind, len(kinds))
    more = np.zeros((len(kinds), 2))
    np.add.at(more, kind, extra)
    by_kind: dict[int, dict[str, int]] = defaultdict(lambda: defaultdict(int))
    for item, names in shown.items():
        for name, count in names.items():
            by_kind[int(kind[item])][name] += count
    few = len(items) <= MOST_ITEMS
    hard, note = _difficulties(found, found.asked if few else of_kind, len(items if few else kinds))
    generators = _lines(
        [Question("", *pair) for pair in kinds], theirs, more, by_kind, {} if few else hard
    )
    lines = _lines(items, own, extra, shown, hard if few else {})
    if topic is not None:
        generators = [one for one in generators if one.topic == topic]
        lines = [one for one in lines if one.topic == topic]
    lines.sort(key=lambda one: (one.topic, TIERS.index(one.tier) if one.tier in TIERS else 9))
    what = "questions" if few else "topic and tier"
    return ItemReport(
        tuple(lines),
        tuple(generators),
        tuple(
            StarterLine(one.class_name, one.date, None if isnan(value) else float(value))
            for one, value in zip(
                found.starters,
                reliabilities(found.table, found.starter, found.asked),
                strict=True,
            )
        ),
        tuple(contradictions(lines, generators)),
        note.replace("WHAT", what),
    )


def contradictions(lines: Sequence[Line], generators: Sequence[Line]) -> list[Contradiction]:
    """Return items and generators outside their tier, the clearest first.

    An item is harder than a higher tier where its whole interval lies below the interval of
    that tier of its topic, and easier than a lower tier where it lies above. Two intervals at
    95 % that do not touch are a strict test: of many sound items few are listed by chance.
    """
    whole = {
        (one.topic, one.tier): one.interval
        for one in generators
        if one.tier in TIERS and one.out_of >= FEWEST_FOR_TIER
    }
    found = []
    for one in (*generators, *lines):
        if one.tier not in TIERS or one.out_of < FEWEST_FOR_TIER:
            continue
        place, own = TIERS.index(one.tier), one.interval
        for tier, other in enumerate(TIERS):
            them = whole.get((one.topic, other))
            if them is None or tier == place:
                continue
            if tier > place and own.high < them.low:
                found.append(Contradiction(one, True, other, them))
                break
            if tier < place and own.low > them.high:
                found.append(Contradiction(one, False, other, them))
                break
    return sorted(
        found, key=lambda c: -abs(c.line.interval.share - c.interval.share) - (not c.line.address)
    )


def _lines(
    items: Sequence[Question],
    pooled: Pooled,
    extra: NDArray[np.float64],
    shown: Mapping[int, Mapping[str, int]],
    difficulties: Mapping[int, tuple[float, float]],
) -> list[Line]:
    found = []
    rows = zip(*(values.tolist() for values in pooled), extra.tolist(), strict=True)
    for place, (item, row) in enumerate(zip(items, rows, strict=True)):
        right, seated, correlation, apart, (more_right, more) = row
        out_of = round(seated + more)
        if not out_of:
            continue
        value, error = difficulties.get(place, (None, None))
        names = shown.get(place, {})
        found.append(
            Line(
                item.address,
                item.topic,
                item.tier,
                round(right + more_right),
                out_of,
                None if isnan(correlation) else correlation,
                None if isnan(apart) else apart,
                {name: count / seated for name, count in sorted(names.items())},
                value,
                error,
            )
        )
    return found


def _counted(connection: Connection, scope: Scope) -> dict[Question, tuple[int, int]]:
    """Return right answers and answers given where only counts by question were recorded."""
    rows = connection.execute(
        scope.limit(
            select(
                question.c.address,
                question.c.topic,
                question.c.tier,
                func.sum(tally.c.right),
                func.sum(tally.c.out_of),
            )
            .select_from(entry)
            .join(lesson, lesson.c.id == entry.c.lesson_id)
            .join(tally, tally.c.entry_id == entry.c.id)
            .join(
                question,
                (question.c.lesson_id == lesson.c.id) & (question.c.number == tally.c.number),
            )
            .where(active(), entry.c.kind == "questions")
            .group_by(question.c.address, question.c.topic, question.c.tier)
        )
    )
    return {Question(*row[:3]): (int(row[3]), int(row[4])) for row in rows}


def _misconceptions(
    connection: Connection, scope: Scope, found: StarterAnswers
) -> dict[int, dict[str, int]]:
    place = {one.entry_id: n for n, one in enumerate(found.starters)}
    columns = (misconception.c.entry_id, misconception.c.number, misconception.c.name)
    query = select(*columns, func.count()).group_by(*columns)
    if scope != Scope():
        query = query.where(misconception.c.entry_id.in_(scope.entries()))
    asked = found.asked.tolist()
    shown: dict[int, dict[str, int]] = defaultdict(lambda: defaultdict(int))
    for entry_id, number, name, count in connection.execute(query).all():
        row = asked[place[entry_id]] if entry_id in place else []
        if 0 < number <= len(row) and row[number - 1] >= 0:
            shown[row[number - 1]][name] += count
    return shown


def _difficulties(
    found: StarterAnswers, asked: NDArray[np.intp], number: int
) -> tuple[dict[int, tuple[float, float]], str]:
    """Return difficulty and error of each item or generator, and words on what they rest on."""
    first = max(len(found.starters) - NEWEST, 0)
    total = np.nansum(found.table, axis=1)
    some = (total > 0) & (total < (~np.isnan(found.table)).sum(axis=1))
    rows = (found.starter >= first) & some
    table, starter = found.table[rows], found.starter[rows]
    met = asked[starter]
    right, wrong = (
        np.bincount(met[(met >= 0) & (table == mark)], minlength=number) for mark in (1, 0)
    )
    # Those with hardly a right or a wrong answer are left out, or they would spoil the others.
    kept = np.flatnonzero(np.minimum(right, wrong) >= FEWEST_EITHER_WAY)
    if len(kept) < 2:
        kept = np.arange(number)
    place = np.full(number + 1, -1, dtype=np.intp)
    place[kept] = np.arange(len(kept))
    try:
        fit = rasch_of_starters(table, starter, place[asked], len(kept))
    except TooFew as few:
        return {}, f"No Rasch difficulties yet: {few}"
    newest = f" of the newest {NEWEST:,} starters" if first else ""
    left = number - len(kept)
    more = f" Left out with too few right or wrong answers: {left}." if left else ""
    note = (
        f"Rasch difficulties of WHAT in logits, 0 the mean, from {fit.pupils:,} "
        f"pupils' answers{newest}, each pupil's level left out anew at each starter.{more}"
    )
    pairs = zip(fit.values.tolist(), fit.errors.tolist(), strict=True)
    return dict(zip(kept.tolist(), pairs, strict=True)), note
