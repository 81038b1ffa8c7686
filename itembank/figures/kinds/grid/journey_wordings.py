"""How a distance–time graph is asked about, and what a question may not ask of one."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import TYPE_CHECKING

from itembank.figures.figure import Asked, FigureError, Reading, Said, Wording
from itembank.figures.kinds.grid.grid_journeys import journey, meeting, own_axes, steep
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid


_N = r"\{?(?P<n>\d{1,5}(?:\.\d{1,2})?)\}?"
_T = r"(?P<time>hours|minutes|seconds)"
_U = r"(?P<unit>kilometres|metres|miles)"
_FROM = r"from (?:the )?(?P<place>[a-z]+)"
_NOUNS = "bus|coach|van|lorry|car|cyclist|walker|runner|swimmer|boat|tractor|tram|train|hiker"
_WHO = rf"(?:the )?(?:{_NOUNS})(?: (?P<who>[a-z]))?"
_GOES = "travel|go|drive|walk|run|swim|cycle|ride"


def _reads(name: str, *groups: str) -> Said:
    """Return what a wording asks of one journey; its units and its place are those shown."""

    def asks(figure: CoordinateGrid, found: re.Match[str]) -> Asked:
        _held_to_axes(figure, found)
        of = ((found["who"] or "").upper(), *(found[group] for group in groups))
        return Asked(t.Sym("r"), (("r", Reading(name, of)),))

    return asks


def _held_to_axes(figure: CoordinateGrid, found: re.Match[str]) -> None:
    axes, groups = own_axes(figure), found.groupdict()
    for group, shown in (("time", axes.time), ("place", axes.place), ("unit", axes.unit)):
        if groups.get(group) is not None and groups[group].casefold() != shown.casefold():
            raise FigureError(f"its axes show {shown}, not {groups[group]}")


def _speed_asked(figure: CoordinateGrid, found: re.Match[str]) -> Asked:
    _held_to_axes(figure, found)
    average, called = bool(found["average"]), found["stage"].casefold()
    if average != called.startswith("for"):
        raise FigureError("an average speed is of a whole journey, and another of one stage")
    if average:
        called = "all the way"
    elif found["n"]:
        called = f"{'first' if 'first' in called else 'last'} {found['n']}"
    unit, per = found["unit"].casefold(), found["each"].casefold()
    of = ((found["who"] or "").upper(), called, unit, per)
    return Asked(t.Sym("r"), (("r", Reading("speed", of)),))


def _hold_overtaking(figure: CoordinateGrid, first: str, second: str) -> None:
    """Refuse *A overtakes B* where A was ahead, or came towards B."""
    meets = meeting(figure, (first, second))[0]
    speeds = []
    for name in (first, second):
        stages = pairwise(journey(figure, name))
        speeds.append(next((steep(a, b) for a, b in stages if a[0] < meets <= b[0]), None))
    fast, slow = speeds
    if fast is None or slow is None or not fast > slow >= 0:
        raise FigureError(f"{first} does not overtake {second}")


def _meets(name: str) -> Said:
    def asks(figure: CoordinateGrid, found: re.Match[str]) -> Asked:
        _held_to_axes(figure, found)
        names = tuple(shape.name for shape in figure.shapes if not shape.closed)
        if len(names) != 2:
            raise FigureError("it does not show two journeys")
        groups = found.groupdict()
        if groups.get("first") and {groups["first"].upper(), groups["second"].upper()} != {*names}:
            raise FigureError("it does not show which journeys are meant")
        if groups.get("how") and groups["how"].casefold() in ("overtake", "catch up with"):
            _hold_overtaking(figure, groups["first"].upper(), groups["second"].upper())
        return Asked(t.Sym("r"), (("r", Reading(name, names)),))

    return asks


_MANY = "buses|coaches|lorries|" + "|".join(f"{noun}s" for noun in _NOUNS.split("|"))
_BOTH = rf"(?:do|did) the two (?:{_MANY}) meet"
_PAIR = (
    rf"(?:do(?:es)?|did) (?:{_NOUNS}) (?P<first>[a-z]) (?P<how>meet|overtake|pass|catch up with) "
    rf"(?:{_NOUNS}) (?P<second>[a-z])"
)
JOURNEY_WORDINGS = (
    Wording(
        rf"how many {_U} {_FROM} (?:is|was) {_WHO} after {_N} {_T}",
        _reads("distance at", "n"),
    ),
    Wording(
        rf"after how many {_T} (?:is|was) {_WHO} {_N} {_U} {_FROM}",
        _reads("time at", "n"),
    ),
    Wording(
        rf"for how many {_T} (?:does|did) {_WHO} (?:stop|rest|wait|stand still)",
        _reads("stopped"),
    ),
    Wording(rf"how many times (?:does|did) {_WHO} stop", _reads("stops")),
    Wording(
        rf"how many {_U} (?:does|did) {_WHO} (?:{_GOES}) (?:altogether|in total|in all)",
        _reads("travelled"),
    ),
    Wording(
        rf"what (?:is|was) the greatest distance of {_WHO} {_FROM},? in {_U}",
        _reads("farthest"),
    ),
    Wording(
        rf"what (?:is|was) the (?P<average>average )?speed of {_WHO},? in {_U} per "
        r"(?P<each>hour|minute|second),? (?P<stage>for the whole journey|before the stop|"
        rf"after the stop|on the way back|in the (?:first|last) {_N} {_T})",
        _speed_asked,
    ),
    Wording(rf"after how many {_T} (?:{_PAIR}|{_BOTH})", _meets("time of meeting")),
    Wording(rf"how many {_U} {_FROM} {_BOTH}", _meets("distance of meeting")),
)
"""The ways to ask about a distance–time graph."""
