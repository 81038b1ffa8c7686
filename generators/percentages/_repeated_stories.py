"""Stories in which an amount changes by the same percentage again and again."""

from __future__ import annotations

from typing import NamedTuple


class Story(NamedTuple):
    """A story told forwards and backwards, whose amount changes each `period`.

    `most` is the largest change that is plausible, in tenths of a per cent.
    """

    unit: str
    told: str
    question: str
    period: str
    most: int
    back: str


GROWTH = (
    Story(
        "cm",
        "A bamboo shoot is {n} tall. It grows by {p} each day.",
        "How tall is it after {k} days?",
        "day",
        300,
        "A bamboo shoot grows by {p} each day. After {k} days it is {m} tall. "
        "How tall was it at first?",
    ),
    Story(
        "",
        "A swimming club has {n} members. The number rises by {p} each year.",
        "How many members are there after {k} years?",
        "year",
        300,
        "The number of members of a swimming club rises by {p} each year. After {k} years there "
        "are {m}. How many were there at first?",
    ),
    Story(
        "£",
        "The yearly rent of a workshop is {n}. It rises by {p} each year.",
        "What is the rent after {k} years?",
        "year",
        100,
        "The yearly rent of a workshop rises by {p} each year. After {k} years it is {m}. "
        "What was it at first?",
    ),
    Story(
        "",
        "A bus route has {n} passengers a day. The number rises by {p} each year.",
        "How many passengers a day are there after {k} years?",
        "year",
        300,
        "The number of passengers a day on a bus route rises by {p} each year. After {k} years "
        "there are {m}. How many were there at first?",
    ),
    Story(
        "",
        "The web page of a library has {n} visitors a week. The number rises by {p} each month.",
        "How many visitors a week are there after {k} months?",
        "month",
        500,
        "The number of visitors a week to the web page of a library rises by {p} each month. "
        "After {k} months there are {m}. How many were there at first?",
    ),
)


DECAY = (
    Story(
        "£",
        "A van is worth {n}. It loses {p} of its value each year.",
        "What is it worth after {k} years?",
        "year",
        300,
        "A van loses {p} of its value each year. After {k} years it is worth {m}. "
        "What was it worth at first?",
    ),
    Story(
        "l",
        "A tank holds {n} of water. Each day {p} of the water in it is used.",
        "How much water is left after {k} days?",
        "day",
        500,
        "Each day {p} of the water in a tank is used. After {k} days {m} are left. "
        "How much water was there at first?",
    ),
    Story(
        "",
        "There are {n} weeds in a pond. Each week a gardener takes out {p} of them.",
        "How many are left after {k} weeks?",
        "week",
        500,
        "Each week a gardener takes {p} of the weeds out of a pond. After {k} weeks {m} are left. "
        "How many were there at first?",
    ),
    Story(
        "£",
        "A tractor is worth {n}. It loses {p} of its value each year.",
        "What is it worth after {k} years?",
        "year",
        300,
        "A tractor loses {p} of its value each year. After {k} years it is worth {m}. "
        "What was it worth at first?",
    ),
    Story(
        "",
        "A shop has {n} old maps. Each month it sells {p} of the maps it has.",
        "How many are left after {k} months?",
        "month",
        500,
        "Each month a shop sells {p} of the old maps it has. After {k} months {m} are left. "
        "How many were there at first?",
    ),
)
