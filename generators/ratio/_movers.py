"""What moves, with plausible speeds: common practice, without a source."""

from __future__ import annotations

from typing import NamedTuple

from generators._turns import by_turns


class Mover(NamedTuple):
    """Something that moves, with plausible speeds: common practice, without a source."""

    name: str
    slow: int
    fast: int


BY_ROAD = (
    Mover("A bus", 18, 60),
    Mover("A coach", 40, 90),
    Mover("A lorry", 40, 80),
    Mover("A tractor", 12, 40),
    Mover("A cyclist", 10, 30),
    Mover("A train", 60, 160),
    Mover("A ferry", 16, 40),
    Mover("A minibus", 30, 80),
    Mover("A walker", 3, 6),
)


ON_FOOT = (
    Mover("A swimmer", 1, 2),
    Mover("A runner", 3, 8),
    Mover("A cyclist", 3, 10),
    Mover("A pigeon", 12, 25),
    Mover("A scooter rider", 2, 6),
)


def mover_at(speed: int, unit: str, turn: int) -> str | None:
    """Return something that moves at a speed, another for the next turn, or None.

    >>> mover_at(5, "km/h", 0), mover_at(500, "km/h", 0)
    ('A walker', None)
    """
    movers = BY_ROAD if unit == "km/h" else ON_FOOT
    fits = [mover.name for mover in movers if mover.slow <= speed <= mover.fast]
    return by_turns(fits, turn) if fits else None


def mover_at_both(first: int, second: int, turn: int) -> str | None:
    """Return something that moves at either of two speeds in km/h, or None.

    >>> mover_at_both(20, 90, 0) is None
    True
    """
    fits = [
        mover.name
        for mover in BY_ROAD
        if mover.slow <= min(first, second) and max(first, second) <= mover.fast
    ]
    return by_turns(fits, turn) if fits else None
