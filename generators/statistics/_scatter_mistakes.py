"""The mistakes that are made with scatter graphs."""

from __future__ import annotations

from itembank.items.item import Misconception

NEAREST_POINT = Misconception(
    "statistics.scatter-nearest-point",
    "reads off the nearest point instead of the line",
    "What does the line of best fit say there? Go to the line, not to a point.",
)


OTHER_WAY = Misconception(
    "statistics.scatter-other-way",
    "counts those on the other side",
    "Which side of the line or of the number is asked for? Point at it.",
)


ALL_POINTS = Misconception(
    "statistics.scatter-all-points",
    "counts all the points",
    "Does every point belong to it? Cover those that do not.",
)


ONE_TOO_MANY = Misconception(
    "statistics.scatter-on-the-edge",
    "counts the point that is on the number, too",
    "Is a number more than itself?",
)


OTHER_AXIS = Misconception(
    "statistics.scatter-other-axis",
    "starts from the wrong axis",
    "Which axis shows what you know? Which shows what you want?",
)


COUNTS_SQUARES = Misconception(
    "statistics.scatter-counts-squares",
    "counts squares, and does not look at the scale",
    "How much is one square worth on this axis?",
)


SWAPPED = Misconception(
    "statistics.scatter-swapped",
    "gives the coordinates in the wrong order",
    "Which number comes first: how far along, or how far up?",
)


HIGHEST = Misconception(
    "statistics.scatter-highest-point",
    "takes the highest point for the outlier",
    "Which point is farthest from the line of best fit?",
)


WRONG_SIGN = Misconception(
    "statistics.scatter-wrong-sign",
    "mixes up positive and negative correlation",
    "As one goes up, does the other go up or down?",
)


LINE_MISSING = Misconception(
    "statistics.scatter-cannot-say",
    "says that there is no correlation where the points do not lie on one line",
    "Do the points need to be on a line to rise together?",
)


PART_TO_REST = Misconception(
    "statistics.scatter-part-to-rest",
    "compares the part with the rest instead of all",
    "How many points are there in all?",
)
