"""The second road to a figure that is an answer: from the two drawings alone.

Every mark of the drawing that is given stands in that of the answer; what comes to it is of the
roles that such an answer has; and what the words ask is measured.
"""

from __future__ import annotations

from collections import Counter

from itembank.figures.drawing import Arc, Area, Drawing, Mark, Point, Text
from itembank.figures.figure import drawn
from itembank.items.asks.draw_on import Draw
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.proof.claim.finding import Finding, found
from itembank.proof.measured.measure import disagreement, measured, same_measured

ROLES: dict[str, tuple[str, ...]] = {
    "letter": ("pointer", "point", "letter"),
    "line with equation": ("line", "letter"),
    "inequality": ("span", "end of span"),
    "shaded": ("shaded",),
    "image shape": ("shape", "letter"),
}
"""The roles of the marks that an answer may add, by what is read of it."""
MOST = {"letter": 1, "pointer": 1, "point": 2, "line": 1, "shape": 1, "span": 1, "end of span": 2}
"""How many marks of a role one thing that is drawn has; of parts there may be any number."""


def measure_drawn(ask: Draw, key: t.Node) -> Finding:
    """Return how the drawing of an answer differs from what its words ask."""
    for figure in (ask.figure, ask.shown):
        if parting := disagreement(figure):
            return Finding("", parting)
    added, missing = _compared(drawn(ask.figure), drawn(ask.shown))
    if missing:
        return Finding("", f"the drawing of the answer leaves out a {missing[0].role} mark")
    allowed = {role for reading, _ in ask.wanted.holds for role in ROLES.get(reading.name, ())}
    if strange := [mark.role for mark in added if mark.role not in allowed]:
        return Finding("", f"the drawing of the answer adds a {strange[0]} mark")
    counts = Counter(mark.role for mark in added)
    if any(counts[role] > most for role, most in MOST.items()):
        return Finding("", "the drawing of the answer adds more than one thing")
    for reading, wanted in ask.wanted.holds:
        shown = measured(ask.shown, reading)
        if not same_measured(wanted, shown):
            return Finding(
                "",
                f"on the drawing of the answer the {reading.name} measures {shown_line(shown)}, "
                f"and {shown_line(wanted)} is asked for",
            )
    # What stands beside the drawing says nothing that could be measured but how many parts.
    told = t.Label(ask.wanted.told)
    return found(told, key, key == told)


def _compared(given: Drawing, shown: Drawing) -> tuple[list[Mark], list[Mark]]:
    """Return the marks that came, and those that went; letters may make room for others."""
    before, after = Counter(map(_plain, given.marks)), Counter(map(_plain, shown.marks))
    parts = {_bare(mark): mark for mark in given.marks if mark.role == "part"}
    added = list((after - before).elements())
    missing = list((before - after).elements())
    # A part that is shaded now stands where it stood.
    for mark in [mark for mark in added if mark.role == "shaded"]:
        if (part := parts.get(_bare(mark))) in missing:
            missing.remove(part)
    return added, missing


def _plain(mark: Mark) -> Mark:
    """Return a mark as it is compared: of a label, what it says and not where it stands."""
    if isinstance(mark, Text):
        return Text(Point(0, 0), mark.content, role=mark.role)
    return mark


def _bare(mark: Mark) -> object:
    """Return where a part of a shape is, whether it is shaded or not."""
    if isinstance(mark, Area):
        return mark.points
    if isinstance(mark, Arc):
        return mark.centre, mark.radius, mark.start, mark.end
    return mark
