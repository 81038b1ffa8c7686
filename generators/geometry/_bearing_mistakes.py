"""Mistakes with bearings (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

OTHER_WAY = Misconception(
    "geometry.bearing-other-way-round",
    "turns the other way round",
    "Which way do the hands of a clock go? Show that turn with your arm.",
)
TURN_ALONE = Misconception(
    "geometry.bearing-turn-alone",
    "gives the turn and not the new bearing",
    "From which direction is a bearing measured? Which way was it facing before?",
)
FROM_SOUTH = Misconception(
    "geometry.bearing-from-south",
    "measures the bearing from south",
    "From which direction is every bearing measured?",
)
FROM_FULL_TURN = Misconception(
    "geometry.bearing-from-360",
    "takes the bearing away from 360°",
    "Draw a north line at each end. Which angle do you measure clockwise from north?",
)
SAME_BACK = Misconception(
    "geometry.bearing-same-back",
    "gives the same bearing for the way back",
    "Turn round and face the other way. Is that the same direction?",
)
ADDED_TOGETHER = Misconception(
    "geometry.bearings-added",
    "adds the two bearings",
    "Both are measured from north. What lies between the two directions?",
)
OVER_360 = Misconception(
    "geometry.bearing-over-360",
    "gives more than a full turn",
    "How large can a bearing be? What is left after a full turn?",
)
