"""What goes wrong with timetables."""

from __future__ import annotations

from itembank.items.item import Misconception

OTHER_BUS = Misconception(
    "measures.timetable-other-bus",
    "goes over to the column of another bus",
    "Put a finger on the time you start from. Where are the other times of that bus?",
)
OTHER_STOP = Misconception(
    "measures.timetable-other-stop",
    "reads the row of another stop",
    "Which row of the timetable is the stop in?",
)
TOO_LATE = Misconception(
    "measures.timetable-too-late",
    "takes the next bus, which arrives too late",
    "At what time does that bus arrive? Is it in time?",
)
ARRIVAL = Misconception(
    "measures.timetable-arrival",
    "says when the bus arrives, not when it leaves",
    "At which stop does the journey start?",
)
DEPARTURE = Misconception(
    "measures.timetable-departure",
    "says when the bus leaves, not when it arrives",
    "At which stop does the journey end?",
)
GONE = Misconception(
    "measures.timetable-gone",
    "takes the bus that has just gone",
    "Has that bus left already?",
)
LATE_LEFT_OUT = Misconception(
    "measures.timetable-late-left-out",
    "says what is printed for a bus that is late",
    "Does a late bus come at the time in the timetable?",
)
EARLY = Misconception(
    "measures.timetable-early",
    "makes a late bus come early",
    "Does a late bus come before the time in the timetable, or after it?",
)
WALK_LEFT_OUT = Misconception(
    "measures.timetable-walk-left-out",
    "leaves the walk to the stop out",
    "Where are you when the bus leaves?",
)
WALK_ADDED = Misconception(
    "measures.timetable-walk-added",
    "adds the time that the walk takes",
    "Do you leave home before the bus leaves, or after it?",
)
ONLY_WAIT = Misconception(
    "measures.timetable-only-wait",
    "stops when the bus comes",
    "Is the journey over when the bus comes?",
)
BETWEEN = Misconception(
    "measures.timetable-between-buses",
    "says how long it is from one bus to the next",
    "When do you get to the stop? Is the first bus still there?",
)
