"""The first road to a figure that is an answer: from the data of both figures.

What the words ask is read from the figure of the answer, and all else in it is as it was given.
"""

from __future__ import annotations

from dataclasses import fields

from itembank.figures.figure import fault, read
from itembank.items.asks.draw_on import Draw, key_of
from itembank.items.asks.of_figure import is_range
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.notation.value import exact
from itembank.proof.claim.finding import Finding, found


def find_drawn(ask: Draw, key: t.Node) -> Finding:
    """Return how the figure of an answer differs from what its words ask."""
    for figure in (ask.figure, ask.shown):
        if clause := fault(figure):
            return Finding("", clause)
    if clause := _otherwise_changed(ask):
        return Finding("", clause)
    for reading, wanted in ask.wanted.holds:
        shown = read(ask.shown, reading)
        if not _same(shown, wanted):
            of = " of " + " and ".join(reading.of) if reading.of else ""
            return Finding(
                "",
                f"on the figure of the answer the {reading.name}{of} is {shown_line(shown)}, and "
                f"{shown_line(wanted)} is asked for",
            )
    return found(key_of(ask), key, key == key_of(ask))


def _otherwise_changed(ask: Draw) -> str:
    """Return what else differs between the two figures, as a clause, or ``""``."""
    if type(ask.figure) is not type(ask.shown):
        return "the figure of the answer is of another kind"
    adds = ask.wanted.adds
    for field in fields(ask.figure):  # type: ignore[arg-type]
        given, shown = getattr(ask.figure, field.name), getattr(ask.shown, field.name)
        if field.name != adds:
            if given != shown:
                return f"the figure of the answer has another {field.name}"
            continue
        if given is None:
            continue
        if not isinstance(given, tuple) or not {*given} <= {*shown}:
            return f"the figure of the answer leaves out some of the {field.name} that were given"
        # What is read settles how much is shaded; of all else just one thing is to be drawn.
        if adds != "shaded" and len(shown) != len(given) + 1:
            return f"the figure of the answer adds more than one thing to its {field.name}"
    return ""


def _same(shown: t.Node, wanted: t.Node) -> bool:
    if isinstance(shown, t.Label) or isinstance(wanted, t.Label):
        return shown == wanted
    if isinstance(shown, t.Relation) and isinstance(wanted, t.Relation):
        return is_range(shown) and _turned(shown) == _turned(wanted)
    return exact(shown) == exact(wanted)


_TURN: dict[str, str] = {"<": ">", ">": "<", "≤": "≥", "≥": "≤", "=": "="}


def _turned(relation: t.Relation) -> tuple[object, ...]:
    """Return an inequality as its signs and sides, the letter or the lesser number first."""
    sides = [relation.first, *(side for _, side in relation.rest)]
    signs = [op for op, _ in relation.rest]
    values = [side.name if isinstance(side, t.Sym) else exact(side) for side in sides]
    number_first = len(sides) == 2 and not isinstance(sides[0], t.Sym)
    if number_first or (len(sides) == 3 and signs[0] in (">", "≥")):
        return (*[_TURN[op] for op in signs[::-1]], *values[::-1])
    return (*signs, *values)
