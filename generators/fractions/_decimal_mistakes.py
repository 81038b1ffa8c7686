"""The mistakes that are made between fractions, decimals and percentages."""

from __future__ import annotations

from itembank.items.item import Misconception

BAR_AS_POINT = Misconception(
    "fractions.convert-bar-as-point",
    "reads the bar of a fraction as a decimal point",
    "Is 1/2 more or less than 1? What about 1.2?",
)
NUMERATOR_AFTER_POINT = Misconception(
    "fractions.convert-numerator-after-point",
    "writes the numerator after the decimal point, whatever the denominator",
    "Is 1/2 the same as 1/10? Which of them is 0.1?",
)
DENOMINATOR_PERCENT = Misconception(
    "fractions.convert-denominator-as-percent",
    "takes the denominator of the fraction as the percentage",
    "What percentage is a half? Is it 2%?",
)
NUMERATOR_PERCENT = Misconception(
    "fractions.convert-numerator-as-percent",
    "takes the numerator of the fraction as the percentage, whatever the denominator",
    "What percentage is a half? Is it 1%?",
)
TIMES_TEN = Misconception(
    "fractions.convert-times-ten",
    "multiplies by 10 instead of 100 to get the percentage",
    "A half is 50%. What do you multiply 0.5 by to get 50?",
)
OVER_TEN_DECIMAL = Misconception(
    "fractions.convert-divides-by-ten",
    "divides the percentage by 10 instead of 100",
    "50% is a half. What do you divide 50 by to get 0.5?",
)
WRONG_WAY = Misconception(
    "fractions.convert-wrong-way",
    "divides by 100 where it should multiply",
    "0.5 is a half. What percentage is a half?",
)
SIGN_DROPPED = Misconception(
    "fractions.convert-sign-dropped",
    "leaves out the per cent sign and keeps the number",
    "Is 50% of a cake the same as 50 cakes?",
)
TOO_FEW_NOUGHTS = Misconception(
    "fractions.convert-too-few-noughts",
    "puts the digits over a number with one nought too few",
    "What does the last digit stand for: tenths, hundredths or thousandths?",
)
OVER_TEN = Misconception(
    "fractions.convert-percentage-over-ten",
    "puts the percentage over 10 instead of 100",
    "How many per cent make the whole? So what does per cent mean?",
)
ONE_OVER = Misconception(
    "fractions.convert-one-over",
    "puts 1 over the number",
    "Is 1/75 more or less than a half? What about 0.75, or 75%?",
)
STOPS = Misconception(
    "fractions.convert-recurring-stops",
    "cuts the number off, as if its digits did not go on for ever",
    "Is 0.33, or 33%, exactly a third? What do three of them make?",
)
ALL_RECUR = Misconception(
    "fractions.convert-all-recur",
    "takes every digit after the point to recur",
    "Which digits have a dot? Write the number out to six decimal places.",
)
NINES = Misconception(
    "fractions.convert-wrong-nines",
    "puts the digits over the wrong number of nines",
    "How many digits recur? How many nines does that make in the denominator?",
)
