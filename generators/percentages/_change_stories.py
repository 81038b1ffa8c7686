"""Stories of amounts that go up or down."""

from __future__ import annotations

GROWS = (
    ("", "The number of members of a swimming club goes up from {a} to {b}.", 20, 900),
    ("£", "The price of a term of swimming lessons goes up from {a} to {b}.", 40, 250),
    ("cm", "A sunflower grows from {a} to {b} in June.", 20, 150),
    ("", "The number of passengers on a bus route goes up from {a} a day to {b} a day.", 60, 990),
    ("kg", "The potato harvest of an allotment goes up from {a} to {b}.", 20, 250),
    ("", "The number of children's books in a library goes up from {a} to {b}.", 150, 990),
)


SHRINKS = (
    ("", "On Monday {a} people catch the early bus. On Friday {b} people catch it.", 12, 80),
    ("kg", "A sack of compost holds {a}. After a week there are {b} in it.", 20, 60),
    ("£", "The heating of a greenhouse cost {a} in January and {b} in March.", 60, 300),
    ("", "The number of visitors to a market garden goes down from {a} to {b}.", 60, 900),
    ("cm", "The water in a pond is {a} deep in May and {b} deep in August.", 40, 150),
    ("min", "A bus journey took {a}. On a new road it takes {b}.", 12, 90),
)


SALES = (
    "{Thing} costs {n}. In a sale the price is reduced by {p}. What is the sale price?",
    "{Thing} costs {n}. Members of a club get {p} off. What does a member pay?",
    "{Thing} costs {n}. Next year the price will go up by {p}. What will it cost then?",
    "A shop buys {thing} for {n} and sells it for {p} more. What is the selling price?",
)


GOODS = (
    ("tomato plants", "plants", 110),
    ("herb pots", "pots", 90),
    ("strawberry plants", "plants", 80),
    ("bread rolls", "rolls", 30),
    ("bus badges", "badges", 120),
    ("swimming caps", "caps", 240),
)
