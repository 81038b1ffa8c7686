"""Units of area and volume against their definitions, and times of day against an almanac.

BIPM, *The International System of Units*, 9th ed., 2019, table 8 (from memory): a hectare is
10 000 m², a litre is a cubic decimetre.
"""

from __future__ import annotations

import pytest

from generators.measures._clocks import clock, length
from generators.measures.area_volume_units import AreaVolumeUnits
from itembank.figures.kinds.table.bus_timetable import Timetable
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.items.item import Tier
from itembank.notation import line
from itembank.notation import tree as t
from itembank.notation.parse import parse_written
from itembank.notation.symbolic import to_sympy
from itembank.proof.measured.measure import as_measured


def test_a_hectare_and_a_litre_are_what_they_are_defined_as() -> None:
    topic = AreaVolumeUnits()
    assert line(topic.make(Tier.SUPPORT, "down", 3, 30).key) == "30000 m^2"
    assert line(topic.make(Tier.CORE, "down", 2, 20).key) == "2000 cm^3"
    assert line(topic.make(Tier.CHALLENGE, "litres", 50, 20, 10).key) == "10 l"


@pytest.mark.parametrize(
    ("rises", "sets", "day"),
    [
        # London on the longest and the shortest day: sunrise, sunset and the length of the day to
        # the minute, as almanacs give them (from memory).
        ("04:43", "21:21", 16 * 60 + 38),
        ("08:04", "15:53", 7 * 60 + 49),
    ],
)
def test_the_length_of_a_day_is_the_one_of_almanacs(rises, sets, day) -> None:
    (hour, minute), (late, after) = (map(int, shown.split(":")) for shown in (rises, sets))
    apart = to_sympy(t.sub(t.ClockTime(late, after), t.ClockTime(hour, minute)))
    assert apart == 60 * day == to_sympy(length(day))
    start = 60 * hour + minute
    assert line(clock(start)) == rises
    assert line(clock(start + day)) == sets


@pytest.mark.parametrize(
    ("rises", "noon", "sets", "day"),
    [
        # The same almanac as a timetable of the sun, and when it stands due south.
        ("04:43", "13:02", "21:21", "16 h 38 min"),
        ("08:04", "11:58", "15:53", "7 h 49 min"),
    ],
)
def test_a_timetable_of_the_sun_gives_the_length_of_the_day(rises, noon, sets, day) -> None:
    times = [parse_written(shown) for shown in (rises, noon, sets)]
    names = ("Sunrise", "South", "Sunset")
    figure = Timetable(tuple((name, (time,)) for name, time in zip(names, times, strict=True)))
    question = ("How long does the ", times[0], " bus from Sunrise take to get to Sunset?")
    ask = of_figure(figure, question)
    for found in (as_find(ask), as_measured(ask)):
        assert to_sympy(found.target) == to_sympy(parse_written(day))
