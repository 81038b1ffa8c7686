"""The mistakes that are made with distance–time graphs."""

from __future__ import annotations

from itembank.items.item import Misconception

COUNTS_SQUARES = Misconception(
    "graphs.journey-counts-squares",
    "counts squares, and does not look at the scale",
    "How much is one square worth along this axis?",
)


END_READ = Misconception(
    "graphs.journey-end-read",
    "reads off the end of the journey",
    "Which part of the journey is the question about? Put your finger on it.",
)


STOP_ENDS = Misconception(
    "graphs.journey-stop-ends",
    "says when the stop ends, not how long it lasts",
    "When does the stop begin? When does it end? How long is that?",
)


STOP_BEGINS = Misconception(
    "graphs.journey-stop-begins",
    "says when the stop begins, not how long it lasts",
    "When does the stop begin? When does it end? How long is that?",
)


MINUTES_KEPT = Misconception(
    "graphs.journey-minutes-kept",
    "divides by minutes and calls it an hour",
    "Your speed is for each minute. How far is that in an hour?",
)


DISTANCE_GIVEN = Misconception(
    "graphs.journey-distance-given",
    "gives the distance as the speed",
    "How long did it take to go that far? How far is it in one unit of time?",
)


SINCE_START = Misconception(
    "graphs.journey-time-since-start",
    "divides by the time since the start",
    "When does this stage begin, and when does it end?",
)


FROM_PLACE = Misconception(
    "graphs.journey-distance-from-start",
    "takes the distance from the start for the length of the stage",
    "How far is it from the start when this stage begins?",
)


ONE_WAY = Misconception(
    "graphs.journey-one-way",
    "counts the way there and not the way back",
    "Where does the journey end? How did it get there?",
)


OTHER_AXIS = Misconception(
    "graphs.journey-other-axis",
    "reads the other axis",
    "Which axis shows what you are asked for?",
)


SINCE_LATER_START = Misconception(
    "graphs.journey-since-later-start",
    "counts the time from when the second one sets off",
    "From when does the axis count the time?",
)


STOP_LEFT_OUT = Misconception(
    "graphs.journey-stop-left-out",
    "leaves the stop out of the time",
    "How long is it from the start to the end? Does the clock stop when the journey does?",
)


MEAN_OF_SPEEDS = Misconception(
    "graphs.journey-mean-of-speeds",
    "finds the mean of the two speeds",
    "How far is it in all? How long does it all take?",
)
