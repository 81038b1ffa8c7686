"""Stories that ask what percentage of a whole a part is."""

from __future__ import annotations

STORIES = (
    "Of the {n} drivers at a bus depot, {m} start work early. What percentage of the drivers "
    "start work early?",
    "A library has {n} desks. {m} of them are taken. What percentage of the desks are taken?",
    "A gardener plants {n} bulbs. {m} of them flower. What percentage of the bulbs flower?",
    "A bike workshop has {n} bikes. {m} of them need new tyres. What percentage of the bikes "
    "need new tyres?",
    "A school kitchen cooks {n} lunches. {m} of them are vegetarian. What percentage of the "
    "lunches are vegetarian?",
    "There are {n} lockers at a swimming pool. {m} of them are in use. What percentage of the "
    "lockers are in use?",
    "A market garden sows {n} seeds. {m} of them come up. What percentage of the seeds come up?",
)


GROUPS = (
    "A swimming club has {m} adults and {r} children as members. What percentage of the members "
    "are adults?",
    "A bus depot has {m} electric buses and {r} diesel buses. What percentage of the buses are "
    "electric?",
    "A gardener plants {m} tulips and {r} daffodils. What percentage of the bulbs are tulips?",
    "A kitchen buys {m} apples and {r} pears. What percentage of the pieces of fruit are apples?",
    "A shelf holds {m} story books and {r} fact books. What percentage of the books are story "
    "books?",
)


TEAMS = (
    ("Amira", "Ben", "Chloe"),
    ("Dan", "Esi", "Farah"),
    ("Gita", "Harry", "Idris"),
    ("Jin", "Kofi", "Lena"),
    ("Maya", "Noah", "Omar"),
)
