"""Mistakes with plans and elevations (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

COUNTS_SQUARES = Misconception(
    "geometry.plans-counts-squares",
    "counts the squares of the plan, one cube on each",
    "What does the number on a square say? How many cubes stand there?",
)
FRONT_ROW = Misconception(
    "geometry.plans-front-row",
    "takes the row at the front alone",
    "Does anything stand behind that is higher, or that is hidden?",
)
ALL_CUBES = Misconception(
    "geometry.plans-all-cubes",
    "counts all the cubes, hidden ones too",
    "Stand in front of it: can you see a cube that stands behind another?",
)
OTHER_SIDE = Misconception(
    "geometry.plans-other-side",
    "looks at it from the other side",
    "Where is the front on the plan? In which direction do you look?",
)
WHOLE_CUBOID = Misconception(
    "geometry.plans-whole-cuboid",
    "gives the cubes of the whole cuboid",
    "Which of these cubes are there already?",
)
ONE_LAYER = Misconception(
    "geometry.plans-one-layer-less",
    "fills up to one cube below the highest tower",
    "How high is the highest tower? Can the cuboid be lower?",
)
ADDED = Misconception(
    "geometry.plans-added",
    "adds the two numbers instead of comparing them",
    "How many more is it? Which sum tells you?",
)
ONLY_FIRST = Misconception(
    "geometry.plans-only-first",
    "answers how many there are, and not how many more",
    "Which two numbers are to be compared?",
)
SEEN_FROM_FRONT = Misconception(
    "geometry.plans-other-view",
    "takes the plan for the front elevation, or the front elevation for the plan",
    "From where do you look at it: from above, or from the front?",
)
WHOLE_SOLID = Misconception(
    "geometry.plans-times-width",
    "multiplies the plan by the width",
    "The plan is seen from above. How far does the cuboid go up from there?",
)
