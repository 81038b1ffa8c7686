"""The mistakes that are made with a percentage of an amount."""

from __future__ import annotations

from itembank.items.item import Misconception

DIVIDES = Misconception(
    "percentages.divides-by-the-percentage",
    "divides by the percentage",
    "What is 10% of the amount? Does your answer fit with that?",
)


SUBTRACTS = Misconception(
    "percentages.subtracts-the-percentage",
    "takes the percentage away as if it were an amount",
    "What is 10% of 50? Is that the same as taking 10 away?",
)


STOPS_AT_TEN = Misconception(
    "percentages.stops-at-ten-per-cent",
    "stops after finding 10%",
    "You have found 10%. How many tens are there in the percentage?",
)


REST = Misconception(
    "percentages.gives-the-rest",
    "gives what is left over instead of the percentage asked for",
    "Draw a bar for the whole. Which part of it does the question ask for?",
)


POINT = Misconception(
    "percentages.point-too-far",
    "puts the decimal point one place too far to the right",
    "Write the percentage as hundredths. What is that as a decimal?",
)


AND_UNITS = Misconception(
    "percentages.ten-and-units",
    "works out the tens of the percentage and adds the units as a plain number",
    "You have found so many tens of per cents. What is 1% of the amount?",
)


IGNORES_HUNDRED = Misconception(
    "percentages.ignores-the-hundred",
    "leaves out the whole, which is 100%",
    "Is the percentage more or less than the whole? Is your answer?",
)


ADDS = Misconception(
    "percentages.adds-the-percentage",
    "adds what is over 100 as a plain number",
    "What is 10% of the amount? Is that as much as 10?",
)


STOPS = Misconception(
    "percentages.stops-too-soon",
    "stops at the part, and does not find the rest",
    "Read the last sentence again. Is that what you have found?",
)


LARGEST_PERCENT = Misconception(
    "percentages.compares-the-percentages",
    "compares only the percentages",
    "Is 50% of £2 more than 10% of £100? What else matters?",
)


LARGEST_AMOUNT = Misconception(
    "percentages.compares-the-amounts",
    "compares only the amounts",
    "Is 1% of £100 more than 50% of £20? What else matters?",
)


OF_WHOLE = Misconception(
    "percentages.of-the-whole",
    "takes the second percentage of the whole amount",
    "Read the sentence with the second percentage again. What is it a part of?",
)


REST_OF_ALL = Misconception(
    "percentages.rest-of-all",
    "subtracts the last part from the whole amount",
    "Which group does the last sentence ask about? How large is that group?",
)


AS_ONE_HALF = Misconception(
    "percentages.ignores-the-point",
    "leaves out the decimal point of the percentage",
    "Is the percentage more or less than 1%? What is 1% of the amount?",
)


PART_BEFORE_POINT = Misconception(
    "percentages.leaves-out-a-part",
    "leaves out the half of one per cent",
    "How much is half of one per cent?",
)


SAME_SUM = Misconception(
    "percentages.changes-by-as-much",
    "raises the percentage by as much as the amount goes down",
    "What is each side worth? What percentage of the second amount is that?",
)


GIVES_PART = Misconception(
    "percentages.gives-the-part",
    "gives the worth of the side that is known as the percentage",
    "You know what both sides are worth. What percentage of the second amount is it?",
)
