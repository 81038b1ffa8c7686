"""Stories that tell a percentage and what it comes to, and ask for what there was."""

from __future__ import annotations

PARTS = (
    "{p} of the members of a swimming club are beginners. There are {m} beginners. "
    "How many members are there altogether?",
    "{p} of the buses of a depot are electric. There are {m} electric buses. "
    "How many buses are there altogether?",
    "{p} of the seeds in a tray come up. {m} seedlings come up. How many seeds were sown?",
    "{p} of the maps that a library owns are on loan. {m} maps are on loan. "
    "How many maps does the library own?",
    "{p} of the lunches of a school kitchen are vegetarian. It cooks {m} vegetarian lunches. "
    "How many lunches does it cook?",
)


FALLS = (
    "The number of members of a swimming club falls by {p} to {m}. How many members were there "
    "before?",
    "The number of passengers on a bus route falls by {p} to {m} a day. How many passengers a day "
    "were there before?",
    "The number of seats in a hall is cut by {p} to {m}. How many seats were there before?",
)


RISES = (
    "The number of members of a library rises by {p} to {m}. How many members were there before?",
    "The number of plants on a stall rises by {p} to {m}. How many plants were there before?",
    "The number of bikes mended in a month rises by {p} to {m}. How many were mended the month "
    "before?",
)


REDUCED = (
    "In a sale the price of {thing} is reduced by {p}. The sale price is {m}. What was the price "
    "before the sale?",
    "{Thing} is sold with {p} off for {m}. What is the full price?",
)


RAISED = (
    "The price of {thing} goes up by {p}. It now costs {m}. What did it cost before?",
    "With tax of {p} added, {thing} costs {m}. What does it cost without the tax?",
)


LAND = (
    "In a market garden {p} of the land is planted with beans and {q} with peas. The other {m} are "
    "planted with herbs. How many square metres of land are there altogether?",
    "On a school field {p} of the land is for football and {q} for running. The other {m} are a "
    "garden. How many square metres of land are there altogether?",
    "In a park {p} of the land is grass and {q} is wood. The other {m} are flower beds. "
    "How many square metres of land are there altogether?",
)
