"""The mistakes that are made with simple interest."""

from __future__ import annotations

from itembank.items.item import Misconception

ONE_YEAR = Misconception(
    "percentages.interest-of-one-year",
    "finds the interest of one year only",
    "For how long is the money saved? What have you found so far?",
)


TOTAL = Misconception(
    "percentages.interest-and-savings",
    "gives the interest and the savings together",
    "Does the question ask for the interest alone, or for all there is?",
)


INTEREST_ONLY = Misconception(
    "percentages.interest-alone",
    "gives the interest alone",
    "How much was in the account at first? Is it still there?",
)


POUNDS = Misconception(
    "percentages.interest-as-pounds",
    "takes each per cent to be one pound",
    "How much is 1% of the savings?",
)


MONTHS = Misconception(
    "percentages.months-as-years",
    "takes the months to be years",
    "The rate is for a year. What fraction of a year is this time?",
)


WHOLE_YEAR = Misconception(
    "percentages.interest-of-a-whole-year",
    "gives the interest of a whole year",
    "Is the money saved for more or less than a year?",
)


NO_TIME = Misconception(
    "percentages.interest-time-forgotten",
    "leaves out the number of years",
    "In how many years was the interest earned? How much was it in one year?",
)


YEARLY_AS_RATE = Misconception(
    "percentages.interest-pounds-as-rate",
    "gives the pounds of one year as the percentage",
    "What percentage of the savings is the interest of one year?",
)


YEARLY_AS_TIME = Misconception(
    "percentages.interest-pounds-as-years",
    "gives the pounds of one year as the number of years",
    "You have found the interest of one year. How many times does it go into all of it?",
)


BY_RATE = Misconception(
    "percentages.interest-divided-by-the-rate",
    "divides the interest by the number before the per cent sign",
    "How much interest is there in one year? How many times does that go into it?",
)


OF_INTEREST = Misconception(
    "percentages.percentage-of-the-interest",
    "takes the percentage of the interest",
    "The rate is a percentage of which amount? Is that larger than the interest?",
)
