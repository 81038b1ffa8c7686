"""What a class knows of all its topics, from answers by question and from scores."""

from __future__ import annotations

import datetime
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from itembank.planning.memory import (
    Memory,
    Seen,
    after_asking,
    after_teaching,
    by_day,
    estimate,
    logit,
    share_at,
    slope,
)

DAY = 0.0
BETWEEN = 4.0


@dataclass(frozen=True, slots=True)
class Scored:
    date: datetime.date
    share: float
    variance: float
    questions: Mapping[str, int]


def remember_class(
    taught: Mapping[str, datetime.date],
    seen: Mapping[str, Sequence[Seen]],
    scored: Iterable[Scored] = (),
) -> dict[str, Memory]:
    memories = {topic: after_teaching(day) for topic, day in taught.items()}
    days: dict[datetime.date, dict[str, Seen]] = defaultdict(dict)
    for topic in taught:
        for one in by_day(seen.get(topic, ())):
            days[one.date][topic] = one
    starters: dict[datetime.date, list[Scored]] = defaultdict(list)
    for each in scored:
        starters[each.date].append(each)
    for date in sorted(days):
        known: dict[str, tuple[float, float]] = {}
        at = {t: max(date, memories[t].last) for t in days[date]}
        for topic, one in days[date].items():
            known[topic] = estimate(memories[topic], at[topic], one.share, one.out_of)
        for each in starters[date]:
            _share_out(each, known)
        for topic, (right, doubt) in known.items():
            alone = days[date][topic].share is not None
            memories[topic] = after_asking(memories[topic], at[topic], right, doubt, alone)
    return memories


def _share_out(scored: Scored, known: dict[str, tuple[float, float]]) -> None:
    there = {t: n for t, n in scored.questions.items() if t in known}
    total = sum(there.values())
    if not total or total < sum(scored.questions.values()):
        return
    for t in there:
        right, doubt = known[t]
        near = 1 / (1 / doubt + 1 / BETWEEN)
        known[t] = share_at(near * (logit(right) / doubt + logit(scored.share) / BETWEEN)), near
    weight = {t: n / total for t, n in there.items()}
    expected = sum(w * known[t][0] for t, w in weight.items())
    pull = {t: w * known[t][1] * slope(known[t][0]) for t, w in weight.items()}
    spread = sum(w * slope(known[t][0]) * pull[t] for t, w in weight.items())
    whole = spread + scored.variance + DAY
    for t in there:
        right, doubt = known[t]
        value = logit(right) + pull[t] / whole * (scored.share - expected)
        known[t] = share_at(value), doubt - pull[t] ** 2 / whole
