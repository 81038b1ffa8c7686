"""Timetables at random: some stops left out, now and then times that no bus could keep."""

from __future__ import annotations

import random

from itembank.figures.kinds.table.bus_timetable import Timetable
from itembank.notation import tree as t

STOPS = ("Depot", "Mill Lane", "Market", "Pool", "Harbour", "Farm Shop")


def example(chance: random.Random) -> Timetable:
    """Return a timetable, sound or not."""
    stops = chance.sample(STOPS, chance.randrange(2, 6))
    legs = [chance.randrange(3, 40) for _ in stops]
    left, buses = chance.randrange(300, 900), []
    for _ in range(chance.randrange(1, 5)):
        at, bus = left, []
        for leg in legs:
            at += leg
            bus.append(t.ClockTime(at // 60, at % 60) if chance.random() < 0.85 else None)
        buses.append(bus)
        left += chance.randrange(10, 80)
    rows = zip(*buses, strict=True)
    return Timetable(tuple((name, tuple(row)) for name, row in zip(stops, rows, strict=True)))
