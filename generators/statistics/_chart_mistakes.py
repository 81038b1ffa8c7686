"""Mistakes with charts, graphs and two-way tables, as classrooms know them (from memory)."""

from __future__ import annotations

from itembank.items.item import Misconception

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
SUM_OF_SHOWN = Misconception(
    "statistics.sum-of-shown",
    "gives all that is drawn in place of what is missing",
    "What do all of them come to, with the one that is missing?",
)
TOTAL_FOR_MISSING = Misconception(
    "statistics.total-for-missing",
    "gives the number of all for the one that is missing",
    "Which of them are drawn already? How many do they stand for?",
)
OTHER_WAY = Misconception(
    "statistics.more-for-fewer",
    "takes away where there are more, or adds where there are fewer",
    "Which of the two stands for more? Should the new one be longer or shorter?",
)
SAME_AS_OTHER = Misconception(
    "statistics.same-as-other",
    "gives what the other one stands for",
    "Are the two alike? What does the question say about them?",
)
DIFFERENCE_ALONE = Misconception(
    "statistics.difference-alone",
    "gives how many more or fewer there are, and not how many",
    "More than what?",
)
THINGS_FOR_SQUARES = Misconception(
    "statistics.things-for-squares",
    "gives how many things there are, and not how many squares",
    "How many things does one square stand for? So how many squares are needed?",
)
