"""Statistics of items and of generators (topic and tier), and where they contradict a tier."""

from __future__ import annotations

import datetime
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from math import inf, isnan
from types import MappingProxyType
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from sqlalchemy import Connection, String, cast, func, select

from itembank.data_class import dataclass
from itembank.records.results.rearranged import Rearranged
from itembank.records.results.scope import Scope
from itembank.records.statistics.interval import Interval, wilson
from itembank.records.statistics.item_difficulty import Measured, measure
from itembank.records.statistics.pooled import Pooled, count_cells, pool_cells, reliabilities
from itembank.records.statistics.starter_answers import Question, StarterAnswers, starter_answers
from itembank.records.store.store_tables import (
    active,
    counted_answers,
    entry,
    misconception,
    question,
    tally,
)
from itembank.text.folding import same_name

TIERS = ("support", "core", "challenge")
FEWEST_FOR_TIER = 20
"""Answers an item needs before its tier is doubted (common practice, no source)."""
NORMAL_95 = 1.96
"""Standard errors on each side of a difficulty that 95 % of intervals reach."""


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
    """An item or generator that is harder or easier than `other`, another tier of its topic.

    `by_difficulty` says that Rasch difficulties were compared; otherwise shares right were.
    `clear` is the distance of the two in halves of their intervals together: above 1.
    """

    line: Line
    harder: bool
    other: Line
    by_difficulty: bool
    clear: float

    def words(self) -> str:
        """Return the contradiction in one sentence."""
        line, other = self.line, self.other
        said = f"{line.tier}, yet {'harder' if self.harder else 'easier'} than {other.tier}: "
        if self.by_difficulty:
            return (
                f"{said}difficulty {_logits(line)} whoever answered, where {other.tier} has "
                f"{_logits(other)}"
            )
        low, high = (round(100 * end) for end in line.interval[1:])
        share = round(100 * other.interval.share)
        return f"{said}{low} to {high} % right, where {other.tier} has {share} %"


def _logits(line: Line) -> str:
    return f"{line.difficulty:.2f} ±{line.error:.2f}".replace("-", "−")


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
    known = {item: place for place, item in enumerate(found.items)}
    counted = _counted(connection, scope)
    for counted_item in counted:
        known.setdefault(counted_item, len(known))
    items = list(known)
    # What was counted by question has no pupils behind it: it adds to shares and to nothing else.
    extra = np.zeros((len(items), 2))
    for counted_item, pair in counted.items():
        extra[known[counted_item]] = pair
    shown = _misconceptions(connection, scope, found)
    cells = count_cells(found.table, found.starter, found.asked)
    own = pool_cells(cells, found.asked, len(items))
    kinds = {pair: n for n, pair in enumerate(sorted({(q.topic, q.tier) for q in items}))}
    kind = np.array([kinds[item.topic, item.tier] for item in items], dtype=np.intp)
    of_kind = found.asked.copy()
    of_kind[found.asked >= 0] = kind[found.asked[found.asked >= 0]]
    theirs = pool_cells(cells, of_kind, len(kinds))
    more = np.zeros((len(kinds), 2))
    np.add.at(more, kind, extra)
    by_kind: dict[int, dict[str, int]] = defaultdict(lambda: defaultdict(int))
    for item, names in shown.items():
        for name, count in names.items():
            by_kind[int(kind[item])][name] += count
    hard = measure(found, kind, len(kinds))
    generators = _lines([Question("", *pair) for pair in kinds], theirs, more, by_kind, hard.kinds)
    lines = _lines(items, own, extra, shown, hard.items)
    if topic is not None:
        generators = [generator for generator in generators if generator.topic == topic]
        lines = [line for line in lines if line.topic == topic]
    for some in (lines, generators):
        some.sort(key=_order)
    return ItemReport(
        tuple(lines),
        tuple(generators),
        tuple(
            StarterLine(starter.class_name, starter.date, None if isnan(value) else float(value))
            for starter, value in zip(
                found.starters,
                reliabilities(found.table, found.starter, found.asked),
                strict=True,
            )
            # Of another class's starter only those who came from it are here.
            if scope.class_name is None or same_name(starter.class_name, scope.class_name)
        ),
        tuple(contradictions(lines, generators)),
        hard.note,
    )


def _order(line: Line) -> tuple[str, int, int, str]:
    """Return what lines are sorted by: topic, tier from easy to hard, number."""
    tier = TIERS.index(line.tier) if line.tier in TIERS else len(TIERS)
    return line.topic, tier, len(line.address), line.address


def contradictions(lines: Sequence[Line], generators: Sequence[Line]) -> list[Contradiction]:
    """Return items and generators outside their tier, the clearest first.

    What is compared is Rasch difficulty where it is known of both, for a share right depends on
    which classes answered: strong classes make a support item look easier, and weak ones a
    challenge item harder, than they are. Elsewhere shares right stand in. An item is harder than
    a higher tier of its topic where their two intervals at 95 % do not touch, and easier than a
    lower tier likewise: a strict test, so that of many sound items few are listed by chance.
    """
    whole: dict[str, list[tuple[int, Line, Ends | None, Interval]]] = defaultdict(list)
    for generator in generators:
        if generator.tier in TIERS and generator.out_of >= FEWEST_FOR_TIER:
            place = TIERS.index(generator.tier)
            whole[generator.topic].append((place, generator, _ends(generator), generator.interval))
    found = []
    for generator in (*generators, *lines):
        if generator.tier not in TIERS or generator.out_of < FEWEST_FOR_TIER:
            continue
        place, own = TIERS.index(generator.tier), _ends(generator)
        for tier, name, theirs, share in whole[generator.topic]:
            if tier == place:
                continue
            if own is not None and theirs is not None:
                wrong_way = own[0] > theirs[1] if tier > place else own[1] < theirs[0]
            else:
                mine = generator.interval
                wrong_way = mine.high < share.low if tier > place else mine.low > share.high
            if wrong_way:
                by_difficulty = own is not None and theirs is not None
                # Both in logits or both in shares: where one is not known neither is used.
                ends = (own, theirs) if own and theirs else (generator.interval[1:], share[1:])
                found.append(
                    Contradiction(generator, tier > place, name, by_difficulty, _clear(*ends))
                )
                break
    return sorted(found, key=lambda pair: (bool(pair.line.address), -pair.clear))


Ends = tuple[float, float]
"""Both ends of an interval."""


def _ends(line: Line) -> Ends | None:
    """Return the ends of the interval at 95 % of a line's difficulty, where it is known."""
    if line.difficulty is None or line.error is None:
        return None
    room = NORMAL_95 * line.error
    return line.difficulty - room, line.difficulty + room


def _clear(mine: Ends, other: Ends) -> float:
    """Return how far the middles of two intervals are apart, in halves of both together."""
    apart = abs(mine[0] + mine[1] - other[0] - other[1])
    wide = mine[1] - mine[0] + other[1] - other[0]
    return apart / wide if wide else inf


def _lines(
    items: Sequence[Question],
    pooled: Pooled,
    extra: NDArray[np.float64],
    shown: Mapping[int, Mapping[str, int]],
    difficulties: Measured,
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
            .select_from(counted_answers())
            .where(active(), entry.c.kind == "questions", question.c.address != "")
            .group_by(question.c.address, question.c.topic, question.c.tier)
        )
    )
    return {Question(*row[:3]): (int(row[3]), int(row[4])) for row in rows}


def _misconceptions(
    connection: Connection, scope: Scope, found: StarterAnswers
) -> dict[int, dict[str, int]]:
    place = {starter.entry_id: n for n, starter in enumerate(found.starters)}
    # A text an entry, to be counted here, comes across in half the time of a row a question.
    pair = cast(misconception.c.number, String) + " " + misconception.c.name
    query = select(misconception.c.entry_id, func.aggregate_strings(pair, "\n"))
    if scope.class_name:
        moved = Rearranged(connection, scope.class_name, scope.last)
        query = query.where(moved.seated(misconception, scope))
    elif scope != Scope():
        query = query.where(misconception.c.entry_id.in_(scope.entries()))
    asked = found.asked.tolist()
    shown: dict[int, dict[str, int]] = defaultdict(lambda: defaultdict(int))
    for entry_id, text in connection.execute(query.group_by(misconception.c.entry_id)).all():
        row = asked[place[entry_id]] if entry_id in place else []
        for said, count in Counter(text.split("\n")).items():
            number, _, name = said.partition(" ")
            if 0 < int(number) <= len(row) and row[int(number) - 1] >= 0:
                shown[row[int(number) - 1]][name] += count
    return shown
