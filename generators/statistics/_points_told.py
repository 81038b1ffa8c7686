"""Line graphs that lack a point: what they show, their heights, and which of them can be told."""

from __future__ import annotations

from typing import NamedTuple

from generators._scatter import unlike
from itembank.text.in_words import in_full


class ShownStory(NamedTuple):
    """What goes up, in which unit it is said, what goes along, and what is shown.

    `scale` is the step of the axis; a point stands at a numbered line or halfway between two
    (plausible numbers, no source).
    """

    counts: str
    what: str
    unit: str
    along: str
    places: tuple[str, ...]
    where: str
    shows: str
    scale: int

    def at(self, place: int) -> str:
        """Return a place as a sentence has it: *on Thursday*."""
        return f"{self.where} {self.name(place)}"

    def name(self, place: int) -> str:
        """Return the name of a place whole."""
        return in_full(self.places[place])


_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri")
_SPRING = ("Mar", "Apr", "May", "June", "July")
_AUTUMN = ("Sep", "Oct", "Nov", "Dec")
_MORNING = ("08:00", "10:00", "12:00", "14:00")
_AFTERNOON = ("12:00", "14:00", "16:00", "18:00")
STORIES = (
    ShownStory("Temperature (°C)", "temperature", "degrees", "Time", _MORNING, "at",
           "the temperature in a greenhouse", 8),
    ShownStory("Temperature (°C)", "temperature", "degrees", "Day", _DAYS, "on",
           "the temperature in a garden at noon", 4),
    ShownStory("Rainfall (mm)", "rainfall", "mm", "Month", _SPRING, "in",
           "the rainfall in a garden", 20),
    ShownStory("Depth (cm)", "depth", "cm", "Day", _DAYS, "on",
           "the depth of the water in a rain barrel", 20),
    ShownStory("Height (cm)", "height", "cm", "Time", _AFTERNOON, "at",
           "the height of the water at a jetty", 40),
    ShownStory("Visitors", "number of visitors", "", "Day", _DAYS, "on",
           "the visitors to a garden", 40),
    ShownStory("Passengers", "number of passengers", "", "Time", _MORNING, "at",
           "the passengers on the buses that leave a depot", 8),
    ShownStory("Lengths", "number of lengths", "", "Day", _DAYS, "on",
           "the lengths of a pool that a swimmer swam", 10),
    ShownStory("Trays", "number of trays", "", "Month", _AUTUMN, "in",
           "the trays of plants that a garden sold", 100),
)  # fmt: skip
_LINES, BETWEEN = 4, 2
TIMES_IN_WORDS = {2: "twice", 3: "three times"}
COUNTS_IN_WORDS = {4: "four", 5: "five"}


class Told:
    """By what the missing point is told."""

    CHANGE, TIMES, HALF, TOTAL, MEAN, AS_MUCH = range(6)


def _values(story: int, seed: int) -> list[int]:
    told = STORIES[story]
    steps = unlike(story + len(STORIES) * seed + 3, len(told.places), 1, _LINES * BETWEEN)
    return [step * told.scale // BETWEEN for step in steps]


def two_places(story: int, seed: int) -> tuple[int, int]:
    """Return the place that is missing, and another one."""
    count = len(STORIES[story].places)
    at = seed % count
    return at, (at + 1 + seed // count % (count - 1)) % count


def beside(story: int, seed: int) -> tuple[int, int]:
    """Return the place that is missing, and one next to it."""
    count = len(STORIES[story].places)
    at = seed % count
    other = at + (1 if seed // count % 2 else -1)
    return at, other if 0 <= other < count else 2 * at - other


def three_places(story: int, seed: int) -> tuple[int, int, int]:
    """Return three places side by side, of which the last is missing."""
    at = 2 + seed % (len(STORIES[story].places) - 2)
    return at - 2, at - 1, at


def point_values(told: int, story: int, seed: int) -> tuple[tuple[int, ...], int]:
    """Return the heights of all points, and which of them is missing."""
    values, scale = _values(story, seed), STORIES[story].scale
    at, other = two_places(story, seed)
    match told:
        case Told.TIMES:
            values[at] = values[other] * (2 + seed // 7 % 2)
        case Told.HALF:
            values[at] = values[other] // 2
        case Told.CHANGE:
            at, other = beside(story, seed)
        case Told.AS_MUCH:
            first, second, at = three_places(story, seed)
            values[at] = values[second] + (values[second] - values[first]) * (1 + seed // 3 % 2)
        case Told.MEAN:  # the last one makes the mean a whole number of half steps
            rest = sum(values) - values[at]
            step = len(values) * scale // BETWEEN
            values[at] += -(rest + values[at]) % step
    return tuple(values), at


def _fits(story: int, values: tuple[int, ...], at: int) -> bool:
    """Tell whether the missing point stands on a line of the axis that the others need."""
    scale = STORIES[story].scale
    drawn = [value for place, value in enumerate(values) if place != at]
    lines = -(-max(drawn) // scale)
    return (
        0 < values[at] <= lines * scale
        and 2 < lines <= _LINES
        and values[at] * BETWEEN % scale == 0
        and len({*drawn}) == len(drawn)
    )


def can_be_told(told: int, story: int, seed: int) -> bool:
    """Tell whether a point can be asked for in this way, and no likely mistake finds it too."""
    values, at = point_values(told, story, seed)
    if not _fits(story, values, at):
        return False
    value, scale = values[at], STORIES[story].scale
    if told == Told.CHANGE:
        _, other = beside(story, seed)
        known = values[other]
        return known % scale != 0 and value not in (known, 2 * known) and 2 * known > value
    if told in (Told.TIMES, Told.HALF):
        _, other = two_places(story, seed)
        read = value if told == Told.HALF else values[other]  # the one to be read between lines
        return read % scale != 0 and value != values[other] + (2 + seed // 7 % 2)
    if told == Told.TOTAL:
        rest = sum(values) - value
        halfway = sum(value % scale != 0 for value in values)
        return not STORIES[story].unit and halfway > 1 and rest != value
    if told == Told.MEAN:
        count = len(values)
        rest = sum(values) - value
        return count * value != sum(values) and rest != (count - 1) * value and rest != value
    first, second, at = three_places(story, seed)
    change = values[second] - values[first]
    return change != 0 and value not in (abs(change), 2 * abs(change)) and values[at] % scale != 0
