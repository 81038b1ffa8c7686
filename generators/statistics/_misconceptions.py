"""Mistakes with averages and the range, as classrooms know them (from memory)."""

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
OTHER_END = Misconception(
    "statistics.other-end",
    "names the largest for the smallest, or the smallest for the largest",
    "What does the question ask for: the most, or the fewest?",
)
FIRST_IN_LINE = Misconception(
    "statistics.end-of-row",
    "names the one at the end of the row",
    "Does the order in which they stand matter? What does the size tell?",
)
ADDS_FOR_MORE = Misconception(
    "statistics.adds-for-how-many-more",
    "adds the two numbers when asked how many more",
    "Does the question ask for both together, or how far apart they are?",
)
READS_ONE_OF_TWO = Misconception(
    "statistics.reads-one-of-two",
    "reads only the first one named",
    "How many things does the question name? Have you used both?",
)
TOTAL_OF_ALL = Misconception(
    "statistics.total-of-all",
    "adds all of them when only two are asked for",
    "Which ones does the question name?",
)
SUBTRACTS_TO_ADD = Misconception(
    "statistics.subtracts-for-altogether",
    "subtracts when asked how many altogether",
    "Is there more or less when both are taken together?",
)
LARGEST_ONLY = Misconception(
    "statistics.largest-only",
    "gives the largest one for all of them together",
    "Can all of them together be as few as one of them?",
)
LEAVES_OUT_LAST = Misconception(
    "statistics.leaves-out-last",
    "leaves out the last one when adding",
    "How many numbers are there to add? How many have you added?",
)
PART_TO_REST = Misconception(
    "statistics.part-over-rest",
    "writes the part over the rest instead of the whole",
    "How many are there in all? Which number stands for the whole?",
)
EACH_ALIKE = Misconception(
    "statistics.each-part-alike",
    "takes every part for as large as the others",
    "Are all of the parts equally large? How can you tell?",
)
LINE_BELOW = Misconception(
    "statistics.reads-line-below",
    "reads the numbered line below the end of the bar",
    "Does the bar end at that number? How far above it does it end?",
)
LINE_ABOVE = Misconception(
    "statistics.reads-line-above",
    "reads the numbered line above the end of the bar",
    "Does the bar reach that number? How far below it does it end?",
)
ONE_EACH = Misconception(
    "statistics.small-step-is-one",
    "counts each small step of the axis as 1",
    "How many small steps go from one number to the next? What is each worth?",
)
OTHER_SERIES = Misconception(
    "statistics.other-series",
    "reads the bar of the other kind",
    "What does the key below the chart say about the two kinds of bar?",
)
BOTH_SERIES = Misconception(
    "statistics.both-series",
    "takes the two bars together when one of them is asked for",
    "Which of the two kinds of bar does the question name?",
)
IGNORES_KEY = Misconception(
    "statistics.ignores-key",
    "counts the squares and does not use the key",
    "What does the key say that one square stands for?",
)
PART_AS_WHOLE = Misconception(
    "statistics.part-square-as-whole",
    "counts a part of a square as a whole one",
    "What does a whole square stand for? And this part of one?",
)
LEAVES_OUT_PART = Misconception(
    "statistics.leaves-out-part-square",
    "leaves out a part of a square",
    "Which squares have you counted? What does the part of a square stand for?",
)
PART_IS_ONE = Misconception(
    "statistics.part-square-is-one",
    "counts a part of a square as 1",
    "What does a whole square stand for? What is that part of it?",
)
NEXT_ANGLE = Misconception(
    "statistics.next-angle",
    "names the sector that comes next in size",
    "Compare the angles. Is there one that goes further?",
)
TURN_IS_180 = Misconception(
    "statistics.pie-adds-to-180",
    "takes the angles of a pie chart to add up to 180°",
    "What part of a turn is the whole circle? How many degrees is that?",
)
ADDS_ANGLES = Misconception(
    "statistics.adds-angles-and-stops",
    "adds the angles that are known and stops there",
    "How many degrees are there in the whole circle? How many are left?",
)
OUT_OF_100 = Misconception(
    "statistics.degrees-out-of-100",
    "writes the degrees over 100",
    "How many degrees are there in the whole circle?",
)
ANGLE_AS_COUNT = Misconception(
    "statistics.angle-as-count",
    "gives the degrees as the number of things",
    "How many are there in all? Can the sector stand for as many as its degrees?",
)
QUARTER_EACH = Misconception(
    "statistics.quarter-each",
    "takes each of the four sectors for a quarter",
    "Is the angle of the sector 90°? Is it more or less than a quarter?",
)
DIVIDES_BY_ANGLE = Misconception(
    "statistics.divides-360-by-angle",
    "divides 360 by the angle",
    "That says how often the sector fits into the circle. What is that part of all of them?",
)
DEGREES_FOR_MORE = Misconception(
    "statistics.degrees-for-more",
    "subtracts the degrees and gives that as the number",
    "How many degrees stand for all of them? What does one of them have?",
)
OTHER_PART = Misconception(
    "statistics.all-but-sector",
    "gives all the other sectors instead of the one asked for",
    "Which sector does the question ask about?",
)
TOTAL_AS_DEGREES = Misconception(
    "statistics.total-as-degrees",
    "gives the number of things as degrees",
    "How many degrees stand for all of them? Share them out: how many for each?",
)
LINE_BELOW_POINT = Misconception(
    "statistics.line-below-point",
    "reads the numbered line below the point",
    "Is the point at that number? How far above it is the point?",
)
LINE_ABOVE_POINT = Misconception(
    "statistics.line-above-point",
    "reads the numbered line above the point",
    "Is the point at that number? How far below it is the point?",
)
LAST_PLACE = Misconception(
    "statistics.last-place",
    "names a point without reading its height",
    "How high is the graph there? Read across to the axis.",
)
NEXT_PLACE = Misconception(
    "statistics.nearest-height",
    "names the point whose height comes next",
    "How high is the graph there? Is it exactly the number in the question?",
)
END_OF_CHANGE = Misconception(
    "statistics.end-of-change",
    "gives the height at the end instead of the change",
    "Where did it start? How far is it from there?",
)
COUNTS_SMALL_STEPS = Misconception(
    "statistics.counts-small-steps",
    "counts the small steps, each as 1",
    "How many small steps go from one number to the next? What is each worth?",
)
ADDS_FOR_CHANGE = Misconception(
    "statistics.adds-for-change",
    "adds the two heights instead of subtracting",
    "How high was it before, and how high after? How far apart are the two?",
)
SUBTRACTS_FOR_TOTAL = Misconception(
    "statistics.subtracts-for-total",
    "subtracts the cells when asked for their total",
    "Is a total more or less than the cells that make it up?",
)
ONE_CELL = Misconception(
    "statistics.one-cell-for-total",
    "gives one cell for the total",
    "Which cells make up the total? Have you used all of them?",
)
ADDS_TO_TOTAL = Misconception(
    "statistics.adds-to-total",
    "adds to the total instead of subtracting from it",
    "Can one cell be more than the total of its row or column?",
)
GIVES_TOTAL = Misconception(
    "statistics.gives-total-of-line",
    "gives the total of the row or column",
    "What do the cells of that row or column add up to with your number in it?",
)
STOPS_BETWEEN = Misconception(
    "statistics.stops-at-other-cell",
    "finds another missing cell and stops there",
    "Which cell does the question ask for? Which one have you found?",
)
