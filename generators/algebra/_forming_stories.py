"""Stories of which an expression is to be formed."""

from __future__ import annotations

from typing import NamedTuple


class Two(NamedTuple):
    """Two things that are counted or paid, with a letter for the worth of each."""

    text: str
    first: str
    second: str


PRICES = (
    Two(
        "A pen costs {x} pence and a rubber costs {y} pence. Write an expression for the total "
        "cost, in pence, of {a} pens and {b} rubbers.",
        "n",
        "r",
    ),
    Two(
        "An adult ticket costs {x} pounds and a child ticket costs {y} pounds. Write an expression "
        "for the total cost, in pounds, of {a} adult tickets and {b} child tickets.",
        "x",
        "y",
    ),
    Two(
        "A tray of leeks holds {x} plants and a tray of herbs holds {y} plants. Write an "
        "expression for the number of plants in {a} trays of leeks and {b} trays of herbs.",
        "k",
        "h",
    ),
    Two(
        "A coach has {x} seats and a minibus has {y} seats. Write an expression for the number of "
        "seats in {a} coaches and {b} minibuses.",
        "c",
        "n",
    ),
    Two(
        "A bike has a mass of {x} kg and a trailer has a mass of {y} kg. Write an expression for "
        "the total mass, in kg, of {a} bikes and {b} trailers.",
        "b",
        "t",
    ),
)


LESS = (
    "A swimming club has {n} members. {a} of them leave. Write an expression for the number of "
    "members that stay.",
    "A garden has {n} bean plants. A storm spoils {a} of them. Write an expression for the number "
    "of plants that are left.",
    "There are {n} buses in a depot. {a} of them drive out. Write an expression for the number of "
    "buses that stay.",
    "A library shelf has {n} books. {a} of them are on loan. Write an expression for the number of "
    "books on the shelf now.",
)


SHARED = (
    "A gardener plants {n} bulbs equally in {a} pots. Write an expression for the number of bulbs "
    "in each pot.",
    "A coach divides {n} swimmers equally into {a} groups. Write an expression for the number of "
    "swimmers in each group.",
    "A cook shares {n} rolls equally among {a} baskets. Write an expression for the number of "
    "rolls in each basket.",
    "A librarian puts {n} books equally on {a} shelves. Write an expression for the number of "
    "books on each shelf.",
)


MORE = (
    "Amir is {n} years old. His aunt is {a} years older. Write an expression for the age of his "
    "aunt, in years.",
    "A green bus has {n} seats. A blue bus has {a} more seats. Write an expression for the number "
    "of seats in the blue bus.",
    "Dana swims {n} lengths. Femi swims {a} more lengths. Write an expression for the number of "
    "lengths that Femi swims.",
    "A library has {n} maths books and {a} more story books. Write an expression for the number of "
    "story books.",
)


EACH = (
    "A bike workshop repairs {n} bikes each day. Write an expression for the number of bikes that "
    "it repairs in {a} days.",
    "A swimmer swims {n} lengths each morning. Write an expression for the number of lengths that "
    "she swims in {a} mornings.",
    "Each bag of compost has a mass of {n} kg. Write an expression for the mass, in kg, of {a} "
    "bags.",
    "Each crate holds {n} apples. Write an expression for the number of apples in {a} crates.",
)


FIXED = (
    "Hiring a bike costs {b} pounds plus {a} pounds for each hour. Write an expression for the "
    "cost, in pounds, of hiring a bike for {n} hours.",
    "A swimming club asks for {b} pounds to join plus {a} pounds for each lesson. Write an "
    "expression for the cost, in pounds, of joining and having {n} lessons.",
    "A nursery asks for {b} pounds for a delivery plus {a} pounds for each plant. Write an "
    "expression for the cost, in pounds, of a delivery of {n} plants.",
    "A school kitchen needs {b} minutes to set up and {a} minutes for each tray of rolls. Write an "
    "expression for the time, in minutes, that it needs for {n} trays.",
    "Hiring a hall costs {b} pounds plus {a} pounds for each hour. Write an expression for the "
    "cost, in pounds, of {n} hours in the hall.",
)


CHANGE = (
    "Amir has {b} pounds. He buys {n} notebooks at {a} pounds each. Write an expression for the "
    "money, in pounds, that he has left.",
    "Beth has {b} metres of string. She cuts off {n} pieces of {a} metres each. Write an "
    "expression for the length, in metres, that is left.",
    "A tank holds {b} litres of water. {n} buckets of {a} litres each are filled from it. Write an "
    "expression for the amount of water, in litres, that is left.",
    "A sack holds {b} kg of flour. A cook uses {a} kg on each of {n} days. Write an expression for "
    "the mass of flour, in kg, that is left.",
)


GROUPS = (
    "Each of {a} trays has {n} tomato plants and {b} pepper plants in it. Write an expression for "
    "the number of plants in all.",
    "Each of {a} buses carries {n} children and {b} adults. Write an expression for the number of "
    "people in all.",
    "Each of {a} boxes holds {n} pencils and {b} pens. Write an expression for the number of "
    "pencils and pens in all.",
    "Each of {a} rows has {n} red chairs and {b} blue chairs. Write an expression for the number "
    "of chairs in all.",
)


PACKED = (
    "Chen has {n} eggs and gets {b} more. He packs all of them equally into {a} boxes. Write an "
    "expression for the number of eggs in each box.",
    "Grace has {n} beads and buys {b} more. She shares all of them equally among {a} bags. Write "
    "an expression for the number of beads in each bag.",
    "A club has {n} members and {b} more join. All of them are put into {a} equal teams. Write an "
    "expression for the number in each team.",
)


TRIOS = (
    "Amir has {n} stickers. Beth has {a} times as many as Amir. Chen has {b} fewer than Beth. "
    "Write an expression for the number of stickers they have altogether in its simplest form.",
    "A small tray holds {n} plants. A large tray holds {a} times as many. A mixed tray holds {b} "
    "fewer than a large one. Write an expression for the number of plants in one tray of each kind "
    "in its simplest form.",
    "Hana swims {n} lengths. Idris swims {a} times as many as Hana. Dana swims {b} fewer than "
    "Idris. Write an expression for the number of lengths they swim altogether in its simplest "
    "form.",
    "Bus A carries {n} people. Bus B carries {a} times as many. Bus C carries {b} fewer than bus "
    "B. Write an expression for the number of people on the three buses in its simplest form.",
)


FEWER = (
    "A ticket costs {a} pounds for an adult and {c} pounds for a child. A group has {n} adults and "
    "{b} more children than adults. Write an expression for the cost, in pounds, of their tickets "
    "in its simplest form.",
    "A rose bush costs {a} pounds and a herb costs {c} pounds. Ewa buys {n} rose bushes and {b} "
    "more herbs than rose bushes. Write an expression for the cost, in pounds, in its simplest "
    "form.",
    "A helmet costs {a} pounds and a bell costs {c} pounds. A shop sells {n} helmets and {b} more "
    "bells than helmets. Write an expression for the money it takes, in pounds, in its simplest "
    "form.",
)


RECTANGLES = (
    "A rectangular lawn is {n} metres wide. Its length is {b} metres more than {a} times its "
    "width. Write an expression for its perimeter, in metres, in its simplest form.",
    "A rectangular pool is {n} metres wide. Its length is {b} metres more than {a} times its "
    "width. Write an expression for its perimeter, in metres, in its simplest form.",
    "A rectangular yard is {n} metres wide. Its length is {b} metres more than {a} times its "
    "width. Write an expression for its perimeter, in metres, in its simplest form.",
)
