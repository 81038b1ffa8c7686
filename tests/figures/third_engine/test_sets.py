"""A third engine over sets: which region a label or a shade is in, by rational coordinates.

A place is in a circle where it is nearer to the centre than the radius, and under a shade where a
ray from it cuts the edge an odd number of times. Sets in symbols are worked out by Python's own.
"""

from __future__ import annotations

from fractions import Fraction

from flint import fmpq

from itembank.figures.drawing import Arc, Area, Drawing, Point, Text
from itembank.figures.figure import drawn, kind_of, read
from itembank.notation import tree as t
from itembank.notation.value import exact
from tests.figures.every_figure import examples
from tests.figures.held import COUNT, MEASURED, holds
from tests.figures.third_engine.test_lines_and_charts import texts, value_of, worth
from tests.figures.third_engine.test_measures import q


def _holding(picture: Drawing, at: Point) -> frozenset[int]:
    """Return which circles, counted from the left, a place is inside of."""
    circles = sorted((mark for mark in picture.of("set") if isinstance(mark, Arc)), key=_across)
    return frozenset(
        k
        for k, circle in enumerate(circles)
        if q(at.x - circle.centre.x) ** 2 + q(at.y - circle.centre.y) ** 2 < q(circle.radius) ** 2
    )


def _across(mark: Arc | Text) -> Fraction:
    return Fraction(mark.centre.x if isinstance(mark, Arc) else mark.at.x)


EVERY = [frozenset({0}), frozenset({0, 1}), frozenset({1}), frozenset()]


def _regions_of(sets: str, names: list[str]) -> set[frozenset[int]]:
    """Return the regions that a set in symbols is made of; a bar is a prime."""
    inside = {name: {region for region in EVERY if k in region} for k, name in enumerate(names)}
    if sets.startswith("(") and sets.endswith(")′"):
        return {*EVERY} - _regions_of(sets[1:-2], names)
    for sign in "∩∪":
        if f" {sign} " in sets:
            one, other = (_regions_of(part, names) for part in sets.split(f" {sign} "))
            return one & other if sign == "∩" else one | other
    return {*EVERY} - inside[sets[:-1]] if sets.endswith("′") else inside[sets]


@holds(MEASURED, "Venn diagram")
def test_venn_diagrams() -> None:
    counted = listed = 0
    for figure in examples("Venn diagram", COUNT, 3):
        picture = drawn(figure)
        names = [str(mark.content) for mark in sorted(texts(picture, "name"), key=_across)]
        held: dict[frozenset[int], list[int]] = {region: [] for region in EVERY}
        for mark in texts(picture, "number"):
            held[_holding(picture, mark.at)].append(int(worth(mark.content)))
        total = [int(str(mark.content).split()[1]) for mark in texts(picture, "total")]
        if picture.of("kind"):
            sizes = {region: len(numbers) for region, numbers in held.items()}
        else:
            shown = sum(map(sum, held.values()))
            sizes = {
                region: numbers[0] if numbers else total[0] - shown
                for region, numbers in held.items()
            }
        assert not total or sum(sizes.values()) == total[0]
        for reading in kind_of(figure).readings(figure):
            of = [*reading.of]
            if reading.name in ("in", "not in", "only in"):
                inside = _regions_of(of[0], names) if of[0] in names else set()
                wanted = {
                    "in": inside,
                    "not in": {*EVERY} - inside,
                    "only in": inside - {frozenset({0, 1})},
                }[reading.name]
            elif reading.name in ("both", "either", "neither", "total"):
                wanted = {
                    "both": {EVERY[1]},
                    "either": {*EVERY[:3]},
                    "neither": {EVERY[3]},
                    "total": {*EVERY},
                }[reading.name]
            else:
                wanted = _regions_of(of[0], names)
            if reading.name == "members":
                numbers = sorted(n for region in wanted for n in held[region])
                said = read(figure, reading)
                assert isinstance(said, t.Listing)
                assert [exact(part) for part in said.parts] == numbers
                listed += 1
                continue
            assert value_of(figure, reading) == sum(sizes[region] for region in wanted), (
                figure,
                reading,
            )
            counted += 1
    assert counted > COUNT
    assert listed > COUNT // 10


@holds(MEASURED, "shaded sets")
def test_shaded_sets() -> None:
    """Each region has a place of its own, inside of it; what is shaded there is counted."""
    for figure in examples("shaded sets", COUNT, 3):
        picture = drawn(figure)
        names = [str(mark.content) for mark in sorted(texts(picture, "name"), key=_across)]
        circles = sorted((m for m in picture.of("set") if isinstance(m, Arc)), key=_across)
        left, right = (Fraction(circle.centre.x) for circle in circles)
        high, radius = Fraction(circles[0].centre.y), Fraction(circles[0].radius)
        places = [
            Point(left - radius / 2, high),
            Point((left + right) / 2, high),
            Point(right + radius / 2, high),
            Point(Fraction(1, 10), Fraction(1, 10)),
        ]
        assert [_holding(picture, place) for place in places] == EVERY
        areas = [m for m in picture.of("shaded") if isinstance(m, Area) and m.fill != "none"]
        dark = {
            region
            for region, place in zip(EVERY, places, strict=True)
            if sum(_inside(area, place) for area in areas) % 2
        }
        for reading in kind_of(figure).readings(figure):
            wanted = _regions_of(reading.of[0], names)
            found = wanted & dark if reading.name == "shaded" else {*EVERY} - wanted - dark
            assert value_of(figure, reading) == len(found), (figure, reading)


def _inside(area: Area, at: Point) -> bool:
    """Tell whether a place is inside of an area: a ray to the right cuts its edge an odd time."""
    cuts = False
    points = [(q(x), q(y)) for x, y in area.points]
    x, y = q(at.x), q(at.y) + fmpq(1, 10**6)  # past every corner
    for (a, b), (c, d) in zip(points, (*points[1:], points[0]), strict=True):
        if (b > y) != (d > y) and x < a + (y - b) * (c - a) / (d - b):
            cuts = not cuts
    return cuts
