"""Where points lie: as far from A as from B, nearer to A than to B, less than so far from A.

England's programme of study for key stage 3 (2013) asks pupils to know "the perpendicular
distance from a point to a line" and to construct perpendicular bisectors (from memory). What is
drawn with compasses is left to a person: here the points are named.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from itertools import combinations
from typing import Any

from generators._scatter import scattered
from generators.geometry._loci_mistakes import (
    ADDS_WAYS,
    CIRCLE,
    FIRST_ONLY,
    HALF_GAP,
    LONGER_WAY,
    MORE,
    ON_LINE,
    SECOND_ONLY,
)
from generators.geometry._loci_told import with_told
from generators.transformations._shapes import Spot, picture
from itembank.figures.figure import fault
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_EDGES = (-5, 5, -4, 4)


def _gap(a: Spot, b: Spot) -> int:
    return (a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2


def _pick(seed: int, taken: list[Spot], fits: Callable[[Spot], bool]) -> Spot | None:
    """Return a place on the grid that fits, not beside those taken: another for each seed."""
    left, right, bottom, top = _EDGES
    every = [(x, y) for x in range(left, right + 1) for y in range(bottom, top + 1)]
    start = scattered(seed, 1, 0, len(every) - 1)[0]
    for at in every[start:] + every[:start]:
        if fits(at) and all(_gap(at, spot) >= 4 for spot in taken):
            return at
    return None


def _found(tier: Tier, seed: int) -> list[Spot] | None:
    """Return A and B, the right point, and the points of two mistakes; None if it will not do."""
    ax, ay, bx, by = scattered(seed, 4, -4, 4)
    a, b = (ax, max(min(ay, 3), -3)), (bx, max(min(by, 3), -3))
    far, n = _gap(a, b), _units(seed)
    if tier is Tier.SUPPORT and (a[0] != b[0] and a[1] != b[1]):
        return None
    if far < 9 or (tier is Tier.CORE and far < 4 * n * n // 3):
        return None
    tests: tuple[Callable[[Spot], bool], ...]
    if tier is Tier.SUPPORT:
        tests = (
            lambda at: _gap(at, a) == _gap(at, b),
            lambda at: _gap(at, a) == far,
            lambda at: _cross(a, b, at) == 0 and _gap(at, a) not in (_gap(at, b), far),
        )
    elif tier is Tier.CORE:
        tests = (
            lambda at: n * n // 2 < _gap(at, a) < n * n and at[0] != a[0] and at[1] != a[1],
            lambda at: _longer(at, a) < n and _gap(at, a) > n * n,
            lambda at: _longer(at, a) > n,
        )
    else:
        tests = (
            lambda at: _gap(at, a) < _gap(at, b) and _gap(at, a) < n * n,
            lambda at: _gap(at, a) < _gap(at, b) and _gap(at, a) > n * n,
            lambda at: _gap(at, a) > _gap(at, b) and _gap(at, a) < n * n,
        )
    spots = [a, b]
    for k, fits in enumerate(tests):
        at = _pick(seed + k, spots, fits)
        if at is None:
            return None
        spots.append(at)
    if any(_gap(p, q) < 4 for p, q in combinations(spots, 2)):
        return None
    return spots


def _units(seed: int) -> int:
    return 3 + seed % 3


def _longer(at: Spot, a: Spot) -> int:
    return max(abs(at[0] - a[0]), abs(at[1] - a[1]))


def _cross(a: Spot, b: Spot, at: Spot) -> int:
    return (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])


def _grid(tier: Tier, spots: list[Spot]) -> tuple[dict[Spot, str], CoordinateGrid]:
    letters = {spots[0]: "A"} if tier is Tier.CORE else dict(zip(spots[:2], "AB", strict=True))
    letters |= dict(zip(sorted(spots[2:]), "PQR", strict=True))
    return letters, picture((), sorted((name, at) for at, name in letters.items()), _EDGES)


_MOST = {Tier.SUPPORT: 9000, Tier.CORE: 1200, Tier.CHALLENGE: 900}
"""So many seeds are tried in each tier: most give no picture with room for its letters."""


@cache
def _seeds(tier: Tier) -> frozenset[int]:
    """Return the seeds that give a picture, each picture once."""
    first: dict[tuple[object, ...], int] = {}
    for seed in range(1, _MOST[tier]):
        spots = _found(tier, seed)
        if spots is not None:
            units = 0 if tier is Tier.SUPPORT else _units(seed)
            # A question is what its picture shows, whichever point is whose.
            shown = spots[:1] if tier is Tier.CORE else spots[:2]
            first.setdefault((units, *shown, *sorted(spots[2:])), seed)
    fitting = [seed for seed in first.values() if not fault(_grid(tier, _spots(tier, seed))[1])]
    return frozenset(fitting)


def _spots(tier: Tier, seed: int) -> list[Spot]:
    found = _found(tier, seed)
    assert found is not None
    return found


@register
class Loci(Topic):
    """As far from A as from B; less than so far from A; both on one side and near enough."""

    id = "geometry.loci"
    title = "Points at a distance"
    statements = ("geometry.terms",)
    prerequisites = ("graphs.coordinates",)
    misconceptions = (
        *(CIRCLE, ON_LINE, LONGER_WAY, MORE, FIRST_ONLY, SECOND_ONLY),
        *(HALF_GAP, ADDS_WAYS),
    )
    spaces = {
        Tier.SUPPORT: Space(
            lambda seed: seed in _seeds(Tier.SUPPORT), seed=range(1, _MOST[Tier.SUPPORT])
        ),
        Tier.CORE: Space(lambda seed: seed in _seeds(Tier.CORE), seed=range(1, _MOST[Tier.CORE])),
        Tier.CHALLENGE: Space(
            lambda seed: seed in _seeds(Tier.CHALLENGE), seed=range(1, _MOST[Tier.CHALLENGE])
        ),
    }
    spaces = with_told(spaces)
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        (seed,) = values
        spots = _spots(tier, seed)
        letters, figure = _grid(tier, spots)
        _, _, right, first, second = spots
        n, key = t.Int(_units(seed)), t.Label(letters[right])
        lead = "Which of the points P, Q and R is "
        if tier is Tier.SUPPORT:
            text = prompt(lead + "as far from A as from B?")
            steps = [Step("Such points are on the line that halves AB at a right angle.", key)]
            mistakes = (CIRCLE, ON_LINE)
        elif tier is Tier.CORE:
            text = prompt(lead + "less than {n} units from A?", n=n)
            steps = [
                Step("Such points are inside a circle round A."),
                Step(
                    "Square the ways along and up, and add: compare with the radius squared.", key
                ),
            ]
            mistakes = (LONGER_WAY, MORE)
        else:
            text = prompt(lead + "nearer to A than to B and less than {n} units from A?", n=n)
            steps = [
                Step("Points nearer to A are on its side of the line that halves AB."),
                Step("Points near enough are inside a circle round A."),
                Step("One point is in both.", key),
            ]
            mistakes = (FIRST_ONLY, SECOND_ONLY)
        wrong = zip(mistakes, (first, second), strict=True)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "name",
            tuple(steps),
            slips(*((mistake, t.Label(letters[at])) for mistake, at in wrong)),
            (str(tier), 0 if tier is Tier.SUPPORT else _units(seed), *letters),
            figure=figure,
        )
