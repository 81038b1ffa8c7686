"""Mistakes with averages and the range, of lists and of tables, known in class (from memory)."""

from __future__ import annotations

from itembank.items.item import Misconception

TOTAL_ONLY = Misconception(
    "statistics.total-for-mean",
    "adds the numbers and does not divide",
    "Is your answer larger than all of the values? Could an average be that large?",
)


MEDIAN_FOR_MEAN = Misconception(
    "statistics.median-for-mean",
    "gives the middle number instead of the mean",
    "Which average did you find? What do you do with all of the numbers to find the mean?",
)


HALVES_TOTAL = Misconception(
    "statistics.halves-total",
    "divides the total by 2, however many numbers there are",
    "How many numbers are there? What would each be if they were all the same?",
)


LEAVES_OUT_ZERO = Misconception(
    "statistics.leaves-out-zero",
    "does not count a 0 as one of the numbers",
    "How many numbers are in the list? Is 0 one of them?",
)


ROUNDS_MEAN = Misconception(
    "statistics.rounds-mean",
    "leaves out the part of the mean after the whole number",
    "Multiply your answer by how many numbers there are. Do you get the total?",
)


MEAN_AGAIN = Misconception(
    "statistics.mean-as-missing",
    "gives the mean as the missing number",
    "Put your number in and find the mean. Does it come to what the question says?",
)


STOPS_AT_TOTAL = Misconception(
    "statistics.stops-at-total",
    "finds the total of all and stops there",
    "That is the total of all of them. What is the total of those you know?",
)


MEAN_OF_MEANS = Misconception(
    "statistics.mean-of-means",
    "finds the mean of the two numbers, as if each stood for as many",
    "How many values does the first mean stand for? How many does the other number stand for?",
)


OLD_COUNT = Misconception(
    "statistics.old-count",
    "adds the new value to the total and divides by the old number of values",
    "How many values are there now?",
)


RISE_ONLY = Misconception(
    "statistics.adds-rise-once",
    "adds the rise of the mean once",
    "By how much does the total change when every value goes up to the new mean?",
)


NOT_IN_ORDER = Misconception(
    "statistics.median-not-in-order",
    "takes the middle of the list as it is printed",
    "Which number is smallest? Write the numbers in order first. Which is in the middle now?",
)


MEAN_FOR_MEDIAN = Misconception(
    "statistics.mean-for-median",
    "gives the mean instead of the median",
    "Which average did you find? Which of them is the one in the middle?",
)


LOWER_MIDDLE = Misconception(
    "statistics.lower-middle",
    "takes the smaller of the two middle numbers",
    "How many numbers lie below your answer, and how many above it?",
)


UPPER_MIDDLE = Misconception(
    "statistics.upper-middle",
    "takes the larger of the two middle numbers",
    "How many numbers lie above your answer, and how many below it?",
)


IGNORES_SIGN = Misconception(
    "statistics.order-ignores-sign",
    "orders negative numbers by their size without the sign",
    "Which is colder, −5 or −2? Where do they lie on a number line?",
)


MEDIAN_AGAIN = Misconception(
    "statistics.median-as-missing",
    "gives the median as the missing number",
    "Put your number in and find the median. Does it come to what the question says?",
)


DOUBLES_MEDIAN = Misconception(
    "statistics.doubles-median",
    "doubles the median and stops there",
    "That is what the two middle numbers add up to. What is the other one of them?",
)


PLACE_FOR_VALUE = Misconception(
    "statistics.place-for-median",
    "gives the place of the middle number instead of the number",
    "That says where the median stands. Which number stands there?",
)


FREQUENCY_FOR_MODE = Misconception(
    "statistics.frequency-for-mode",
    "gives how often the mode comes instead of the mode",
    "That is how often it comes. Which number is it that comes so often?",
)


LARGEST_FOR_MODE = Misconception(
    "statistics.largest-for-mode",
    "gives the largest number instead of the most frequent",
    "How often does your number come? Does another come more often?",
)


MEDIAN_FOR_MODE = Misconception(
    "statistics.median-for-mode",
    "gives the middle number instead of the most frequent",
    "Which average did you find? How often does each number come?",
)


ENDS_OF_LIST = Misconception(
    "statistics.range-of-ends",
    "subtracts the first and the last number as they are printed",
    "Which number is the largest? Which is the smallest?",
)


LARGEST_FOR_RANGE = Misconception(
    "statistics.largest-for-range",
    "gives the largest number as the range",
    "The range tells how far apart the numbers lie. What do you do with the smallest?",
)


SIGN_LOST = Misconception(
    "statistics.range-loses-sign",
    "subtracts a negative number as if it had no minus sign",
    "Where do the two numbers lie on a number line? How far is it from one to the other?",
)


LONGER_IS_LARGER = Misconception(
    "statistics.longer-decimal",
    "takes a decimal with more digits for the larger one",
    "Write all of the numbers with two decimal places. Which is the largest now?",
)


RANGE_AGAIN = Misconception(
    "statistics.range-as-missing",
    "gives the range as the missing number",
    "Put your number in and find the range. Does it come to what the question says?",
)


WRONG_END = Misconception(
    "statistics.range-from-wrong-end",
    "goes by the range from the wrong number of the list",
    "The missing number is at one end. Which number is at the other end?",
)


FREQUENCY_FOR_MODE_OF_TABLE = Misconception(
    "statistics.largest-frequency-for-mode",
    "gives the largest frequency instead of the value it belongs to",
    "What does that frequency count? Which value comes so often?",
)


LARGEST_VALUE = Misconception(
    "statistics.largest-value",
    "gives the largest value",
    "What does the second row of the table tell? How does it help here?",
)


RANGE_OF_FREQUENCIES = Misconception(
    "statistics.range-of-frequencies",
    "finds the range of the frequencies",
    "Which row holds the values, and which says how often they come?",
)


ADDS_VALUES = Misconception(
    "statistics.adds-values",
    "adds the values in the first row",
    "How often does each value come? Have you used the second row?",
)


COUNTS_COLUMNS = Misconception(
    "statistics.counts-columns",
    "counts the columns of the table",
    "What does each column stand for? How many are in each of them?",
)


MIDDLE_OF_VALUES = Misconception(
    "statistics.middle-of-values",
    "takes the middle value of the first row",
    "Write the first few values out as a list. How often does each one stand in it?",
)


MEDIAN_OF_FREQUENCIES = Misconception(
    "statistics.median-of-frequencies",
    "finds the median of the frequencies",
    "Which row holds the values? Write them out as a list.",
)


FREQUENCIES_ALONE = Misconception(
    "statistics.frequencies-alone",
    "adds the frequencies alone",
    "What do the frequencies count? What does the question ask for?",
)


DIVIDES_BY_COLUMNS = Misconception(
    "statistics.divides-by-columns",
    "divides the total by the number of columns",
    "How many values are there in all? Which row tells?",
)


MEAN_OF_VALUES = Misconception(
    "statistics.mean-of-values",
    "finds the mean of the values in the first row",
    "Do all of the values come equally often? Which row tells?",
)


MEAN_OF_FREQUENCIES = Misconception(
    "statistics.mean-of-frequencies",
    "finds the mean of the frequencies",
    "Which row holds the values? Which one says how often they come?",
)
