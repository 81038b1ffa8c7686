"""Keys on units found a third way: in the smallest unit of a table of its own."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import datetime, timedelta

import pytest
from flint import fmpq

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from itembank.notation import tree as t
from tests.depth import whole
from tests.generators.key_reader import NUMBER, exact, printed, sample
from tests.other_kinds import made_by

# Each unit in the smallest of its kind, written out by hand.
SIZES = {
    **{"mm": 1, "cm": 10, "m": 1000, "km": 1_000_000},
    **{"mg": 1, "g": 1000, "kg": 1_000_000, "t": 1_000_000_000},
    **{"ml": 1, "cl": 10, "l": 1000},
    **{"s": 1, "min": 60, "h": 3600, "day": 86_400, "week": 604_800},
}
NAMES = {
    **{"millimetres": "mm", "centimetres": "cm", "metres": "m", "kilometres": "km"},
    **{"milligrams": "mg", "grams": "g", "kilograms": "kg", "tonnes": "t"},
    **{"millilitres": "ml", "centilitres": "cl", "litres": "l"},
    **{"seconds": "s", "minutes": "min", "hours": "h", "days": "day", "weeks": "week"},
}
UNIT = r"(mm|cm|km|mg|kg|ml|cl|min|m|g|t|l|s|h|days?|weeks?)"


def sizes(text: str) -> list[fmpq]:
    """Return the amounts in a text in the smallest unit of their kind."""
    found = re.findall(rf"({NUMBER}) {UNIT}\b", text)
    return [
        exact(n) * SIZES[unit.removesuffix("s") if len(unit) > 3 else unit] for n, unit in found
    ]


def convert_units(item: Item, text: str) -> str | fmpq:
    if text.startswith("Put"):
        parts = text.split(":  ")[1].split(", ")
        return ", ".join(sorted(parts, key=lambda part: sizes(part)[0]))
    if text.startswith("Change"):
        wanted = NAMES[text.rstrip(".").split()[-1]]
        return sizes(text)[0] / SIZES[wanted]
    if text.startswith("Work out"):
        wanted = NAMES[text.rstrip(".").split()[-1]]
        return sum(sizes(text), fmpq(0)) / SIZES[wanted]
    whole, part = sizes(text)
    return whole / part


# Areas in square millimetres, volumes in cubic millimetres.
CUT = {"mm": 1, "cm": 10, "m": 1000, "km": 1_000_000}
SQUARES = {f"{unit}^2": size**2 for unit, size in CUT.items()} | {"ha": (100 * 1000) ** 2}
CUBES = {f"{unit}^3": size**3 for unit, size in CUT.items()} | {"ml": 1000, "l": 1_000_000}
SHAPES = SQUARES | CUBES
SHAPE_NAMES = {
    **{f"square {name}": f"{unit}^2" for name, unit in NAMES.items() if unit in CUT},
    **{f"cubic {name}": f"{unit}^3" for name, unit in NAMES.items() if unit in CUT},
    **{"hectares": "ha", "litres": "l", "millilitres": "ml"},
}


def area_volume_units(item: Item, text: str) -> str | fmpq:
    found = re.findall(rf"({NUMBER}) (mm\^\d|cm\^\d|km\^\d|m\^\d|ha|ml|l|cm)(?![\w^])", text)
    if "cuboid" in text:
        volume = fmpq(1)
        for edge, unit in found:
            volume *= exact(edge) * CUT[unit]
        return volume / CUBES["l"]
    if "tiles" in text:
        (floor, unit), *edges = found
        tile = fmpq(1)
        for edge, length in edges:
            tile *= exact(edge) * CUT[length]
        return exact(floor) * SQUARES[unit] / tile
    wanted = SHAPE_NAMES[re.split(r" (?:to|in) ", text.rstrip("."))[-1]]
    return sum((exact(n) * SHAPES[unit] for n, unit in found), fmpq(0)) / SHAPES[wanted]


def time(item: Item, text: str) -> str | fmpq:
    """Let the standard library's calendar go on from a day: it knows both clocks and midnight."""
    day = datetime(2026, 11, 2)
    moments = [
        datetime.strptime(shown, "%I:%M %p" if "m" in shown else "%H:%M").replace(
            year=day.year, month=day.month, day=day.day
        )
        for shown in re.findall(r"\b\d\d?:\d\d(?: [ap]m)?", text)
    ]
    rest = re.sub(r"\b\d\d?:\d\d(?: [ap]m)?", "", text)
    spans = [
        timedelta(**{"h": {"hours": int(n)}, "min": {"minutes": int(n)}}[unit])
        for n, unit in re.findall(r"(\d+) (h|min)\b", rest)
    ]
    if text.endswith(("How long does the journey take?", "How long does it last?")):
        minutes = (moments[1] - moments[0]) // timedelta(minutes=1)
        hours, minutes = divmod(minutes, 60)
        return " ".join(f"{n} {unit}" for n, unit in ((hours, "h"), (minutes, "min")) if n)
    way = -1 if text.endswith(("did it leave?", "did it start?")) else 1
    found = moments[0] + way * sum(spans, timedelta())
    if re.search(r"\d [ap]m", text):
        return found.strftime("%I:%M %p").lower().lstrip("0")
    return found.strftime("%H:%M")


def _rows(item: Item) -> dict[str, list[str]]:
    """Return the rows of a timetable from the words for who cannot see it."""
    assert item.figure is not None
    rows = {}
    for name, held in re.findall(r"(?:^|\. )([A-Z][\w ]*): ([^.]+)", words(item.figure)):
        shown = held.replace("the time ", "").replace("oh ", "0").replace("hundred", "00")
        rows[name.lower()] = [re.sub(r"^(\d) ", r"0\1 ", at) for at in shown.split(", ")]
    return rows


def timetables(item: Item, text: str) -> str | fmpq:
    """Try every bus of the timetable, in the order in which they run."""
    rows = _rows(item)
    asked = text.split(". ", 1)[1].lower()
    at = re.search(r"(\d\d?):(\d\d)(?: ([ap]m))?", asked)
    assert at
    hour = int(at[1]) + (12 if at[3] == "pm" and at[1] != "12" else 0)
    told = 60 * hour + int(at[2])
    walk = re.search(r"(\d+) min\b", asked)
    more = int(walk[1]) if walk else 0
    # The two stops in the order in which the question names them.
    first, last = sorted(
        (name for name in rows if re.search(rf"\b{name}\b", asked)), key=asked.index
    )
    buses = [
        [60 * int(time[:2]) + int(time[3:]) for time in pair]
        for pair in zip(rows[first], rows[last], strict=True)
        if "no stop" not in pair
    ]
    if "latest time" in asked:
        left = max(left for left, there in buses if there <= told) - more
        return f"{left // 60:02d}:{left % 60:02d}"
    if asked.startswith("if you get"):
        left, there = min(bus for bus in buses if bus[0] > told)
    else:
        ((left, there),) = (bus for bus in buses if bus[0] == told)
    if "wait" in asked or "from then" in asked or "how long" in asked:
        span = (left if "wait" in asked else there) - (told if "if you" in asked else left)
        hours, minutes = divmod(span, 60)
        return " ".join(f"{n} {unit}" for n, unit in ((hours, "h"), (minutes, "min")) if n)
    return f"{(there + more) // 60:02d}:{(there + more) % 60:02d}"


READERS: dict[str, Callable[[Item, str], str | fmpq]] = {
    "ratio.convert-units": convert_units,
    "measures.area-volume-units": area_volume_units,
    "measures.time": time,
    "measures.timetables": timetables,
}


@whole
@pytest.mark.parametrize("name", READERS)
def test_keys_are_found_again_from_what_is_printed(name: str) -> None:
    for item, text in sample(name):
        found = READERS[name](item, text)
        key = item.key.text if isinstance(item.key, t.Label) else line(item.key)
        said = key if isinstance(found, str) else exact(key)
        assert said == found, (item.address, text, key)


def test_times_by_both_clocks_are_matched_by_the_calendar() -> None:
    topic = find_topic("measures.time")
    space = topic.spaces[Tier.SUPPORT]
    others = made_by(space, lambda make: make.__name__ == "matched")
    assert len(others) > 100
    for index in others:
        item = topic.item(Tier.SUPPORT, index)
        cards = re.findall(r"\(([A-E])\)\s(\d\d:\d\d)", printed(item))
        partners = re.findall(r"\(([P-T])\)\s(\d\d?:\d\d [ap]m)", printed(item))
        by_time = {datetime.strptime(at, "%I:%M %p"): name for name, at in partners}
        right = {name: by_time[datetime.strptime(at, "%H:%M")] for name, at in cards}
        assert len(cards) == 3
        assert len(by_time) == len(partners) == 5
        assert [part.text for part in item.key.parts] == [f"{a}–{b}" for a, b in right.items()]
        for slip in item.slips:
            # Twelve hours out, and noon taken for midnight; or two hours, for 10 and not 12.
            apart = {"twelve-wrong": 12, "ten-for-twelve": 2}[slip.misconception.id[14:]]
            wrong = dict(part.text.split("–") for part in slip.wrong.parts)
            ((card, found),) = wrong.items() - right.items()
            times = {name: datetime.strptime(at, "%I:%M %p") for name, at in partners}
            gap = abs(times[found] - times[right[card]])
            assert gap == timedelta(hours=apart)
