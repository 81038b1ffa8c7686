"""Stories in which one number falls as the other rises."""

from __future__ import annotations

from typing import NamedTuple

from generators._turns import by_turns


class Job(NamedTuple):
    """A job that several share: `unit` of time, and who does it."""

    who: str
    does: str
    asks: str
    unit: str


JOBS = (
    Job("gardeners", "weed a field", "weed the field", "h"),
    Job("pumps", "fill a swimming pool", "fill the pool", "h"),
    Job("mechanics", "repair a row of bikes", "repair the bikes", "h"),
    Job("cleaners", "clean all the buses of a depot", "clean the buses", "min"),
    Job("cooks", "peel a sack of potatoes", "peel the potatoes", "min"),
    Job("printers", "print the books for a school", "print the books", "min"),
    Job("volunteers", "sort a heap of books", "sort the books", "h"),
    Job("painters", "paint the rooms of a club", "paint the rooms", "day"),
)
_TIMES = {"h": (2, 24), "min": (15, 240), "day": (2, 20)}


SUPPLIES = (
    ("A sack of corn feeds {p} hens for {n}. For how long would it feed {q} hens?", "day", 3, 40),
    (
        "A tank of water lasts {p} goats for {n}. For how long would it last {q} goats?",
        "day",
        2,
        30,
    ),
    (
        "Food for a camp lasts {p} children for {n}. For how long would it last {q} children?",
        "day",
        2,
        20,
    ),
)


ROWS = (
    "A gardener plants bulbs in {p} rows with {n} in each row. With {q} bulbs in each row, how "
    "many rows of the same bulbs would there be?",
    "A hall has {p} rows of {n} chairs. The same chairs are put in rows of {q}. How many rows are "
    "there?",
    "A library puts its maps into {p} boxes of {n}. It puts the same maps into boxes of {q}. "
    "How many boxes does it fill?",
)


JOURNEYS = (
    "At {p} a coach journey takes {n}. How many hours does the same journey take at {q}?",
    "A lorry makes a journey in {n} at {p}. How many hours does the same journey take at {q}?",
)


def job_for(first: int, second: int, turn: int) -> Job | None:
    """Return a job for which both times are plausible, another for the next turn."""
    fits = [
        job
        for job in JOBS
        if all(_TIMES[job.unit][0] <= n <= _TIMES[job.unit][1] for n in (first, second))
    ]
    return by_turns(fits, turn) if fits else None
