"""Where two travellers on one graph meet."""

from __future__ import annotations

from fractions import Fraction

from generators.graphs._distance_time_mistakes import END_READ, OTHER_AXIS, SINCE_LATER_START
from generators.graphs._journey_asked import Asked
from generators.graphs._journeys import TRAVELLERS, Spot, graph, number
from itembank.items.item import Step


def meeting(who: int, at: int, high: int, late: int, longer: int) -> Asked:
    """Ask when two meet that set off one after the other."""
    traveller = TRAVELLERS[who]
    end = high * longer // 2
    first: tuple[Spot, ...] = ((0, 0), (at * longer // 2, end))
    second: tuple[Spot, ...] = ((late, 0), (late + (at - late) * longer // 2, end))
    key = Fraction(at * traveller.x_step)
    name = traveller.who
    return Asked(
        f"The graph shows the journeys of {name} A and {name} B from the {traveller.place}. "
        f"After how many {traveller.time} does {name} B overtake {name} A?",
        {},
        graph(traveller, ("A", first), ("B", second)),
        key,
        [
            Step("They are at one place at one time where the graphs of A and B cross."),
            Step("Read the time there.", number(key)),
        ],
        [
            (OTHER_AXIS, high * traveller.y_step),
            (END_READ, (late + (at - late) * longer // 2) * traveller.x_step),
            (SINCE_LATER_START, (at - late) * traveller.x_step),
        ],
    )
