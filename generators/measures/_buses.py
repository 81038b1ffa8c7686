"""Timetables of the bus depot: their stops, and times that buses could keep."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from generators._scatter import scattered
from generators.measures._clocks import clock
from itembank.figures.kinds.table.bus_timetable import Timetable


class Stop(NamedTuple):
    """A stop as the timetable has it, and as it is called in a sentence."""

    name: str
    said: str


def _the(name: str) -> Stop:
    return Stop(name, f"the {name.lower()}")


def _road(name: str) -> Stop:
    return Stop(name, name)


ROUTES = (
    (_the("Depot"), _road("Mill Lane"), _the("Market"), _the("Pool")),
    (_the("Station"), _road("Elm Road"), _the("Library"), _the("Depot")),
    (_the("Harbour"), _the("Church"), _road("Low Road"), _the("School")),
    (_the("Village"), _the("Orchard"), _the("Bridge"), _the("Market")),
    (_the("Depot"), _the("Park"), _road("Ash Lane"), _the("Garden")),
    (_the("Pool"), _road("Hill Road"), _the("Farm"), _the("Station")),
)
"""Places that no town lacks."""

BUSES = 3


class Buses(NamedTuple):
    """A route, and for each bus the minutes after midnight at each stop, None where it goes past.

    Buses come every 25 to 65 minutes, and take 4 to 19 minutes from a stop to the next (plausible
    for a country route, no source).
    """

    stops: tuple[Stop, ...]
    times: tuple[tuple[int | None, ...], ...]

    def at(self, bus: int, stop: int) -> int:
        """Return when a bus is at a stop that it makes."""
        found = self.times[bus][stop]
        if found is None:
            raise ValueError("it goes past")
        return found

    def calls(self, bus: int, *stops: int) -> bool:
        """Tell whether a bus makes some stops."""
        return all(self.times[bus][stop] is not None for stop in stops)

    @property
    def figure(self) -> Timetable:
        """The timetable as it is printed."""
        return Timetable(
            tuple(
                (
                    stop.name,
                    tuple(
                        None if bus[place] is None else clock(bus[place])  # type: ignore[arg-type]
                        for bus in self.times
                    ),
                )
                for place, stop in enumerate(self.stops)
            )
        )


@lru_cache(maxsize=4096)
def buses(route: int, seed: int, past: bool) -> Buses:
    """Return the timetable that a number stands for; where `past`, one bus leaves a stop out."""
    lot = scattered(97 * seed + route, 12, 0, 9999)
    left = 6 * 60 + 30 + lot[0] % (12 * 60)
    legs = [4 + number % 16 for number in lot[1:4]]
    rows = []
    for bus in range(BUSES):
        at, row = left, [left]
        for place, leg in enumerate(legs):
            # Traffic: a minute or two more on some journeys.
            at += leg + lot[4 + bus] // 3**place % 3
            row.append(at)
        rows.append(row)
        left += 25 + lot[7 + bus] % 41
    shown: list[list[int | None]] = [list(row) for row in rows]
    if past:
        shown[lot[10] % BUSES][1 + lot[11] % 2] = None
    return Buses(ROUTES[route], tuple(map(tuple, shown)))


READ, TAKES, LATEST, WAIT, LATE, NEXT, UNTIL, HOME = range(8)
"""What is asked for."""


class Case(NamedTuple):
    """A question's numbers: which bus, from which stop to which; a time told; so many minutes."""

    table: Buses
    bus: int
    start: int
    end: int
    told: int = 0
    minutes: int = 0

    @property
    def leaves(self) -> int:
        """When the bus leaves."""
        return self.table.at(self.bus, self.start)

    @property
    def arrives(self) -> int:
        """When it is there."""
        return self.table.at(self.bus, self.end)

    def other(self, step: int, stop: int) -> int | None:
        """Return when the bus so many columns on is at a stop, None where there is none."""
        bus = self.bus + step
        return self.table.times[bus][stop] if 0 <= bus < BUSES else None

    @property
    def way(self) -> dict[str, str]:
        """The two stops as a sentence calls them."""
        return {"from": self.table.stops[self.start].said, "to": self.table.stops[self.end].said}
