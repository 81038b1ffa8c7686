"""Measures a Venn diagram: which circles a number stands in, by its distance from each centre."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from typing import Any

import sympy

from itembank.figures.drawing import Arc, Area, Drawing, Text, text_box
from itembank.figures.figure import Reading
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.measure import Measuring, number_tree

_Rule = Callable[[bool, bool], bool]
_WANTED: dict[str, _Rule] = {
    "both": lambda a, b: a and b,
    "either": lambda a, b: a or b,
    "neither": lambda a, b: not (a or b),
    "total": lambda a, b: True,
}
_OF_SET: dict[str, _Rule] = {
    "in": lambda own, other: own,
    "not in": lambda own, other: not own,
    "only in": lambda own, other: own and not other,
}


def _inside(box: Any, circle: Arc) -> bool:
    """Tell whether a number is inside a circle: all corners of its box are, or none is."""
    x, y = circle.centre
    inside = {
        sympy.Rational(a - x) ** 2 + sympy.Rational(b - y) ** 2 < sympy.Rational(circle.radius) ** 2
        for a in (box.left, box.right)
        for b in (box.bottom, box.top)
    }
    # By all corners: a number with its middle inside may still be cut by the rim.
    if len(inside) != 1:
        raise NotExact("a number stands on the rim of a set")
    return bool(inside.pop())


@lru_cache(maxsize=64)
def _regions(drawing: Drawing) -> tuple[list[str], dict[tuple[bool, bool], Any]]:
    """Return the names of the sets, and how many are inside and outside of each."""
    names, counts, _ = _held(drawing)
    return names, counts


@lru_cache(maxsize=64)
def _held(
    drawing: Drawing,
) -> tuple[list[str], dict[tuple[bool, bool], Any], dict[tuple[bool, bool], list[Any]]]:
    """Return names, counts, and the numbers that stand inside and outside of each set."""
    circles = [mark for mark in drawing.of("set") if isinstance(mark, Arc) and mark.whole]
    frames = [mark for mark in drawing.of("all") if isinstance(mark, Area)]
    if len(circles) != 2 or len(frames) != 1:
        raise NotExact("it does not show two sets in one rectangle")
    xs, ys = zip(*frames[0].points, strict=True)
    if len({*xs}) != 2 or len({*ys}) != 2:
        raise NotExact("what stands for all is no rectangle")
    names = ["", ""]
    for mark in drawing.of("name"):
        if isinstance(mark, Text):
            gaps = [abs(Fraction(mark.at.x - circle.centre.x)) for circle in circles]
            # Across the page: a name belongs to the circle whose middle it is nearer to.
            names[gaps.index(min(gaps))] = str(mark.content).casefold()
    held: dict[tuple[bool, bool], list[Any]] = {
        (a, b): [] for a in (True, False) for b in (True, False)
    }
    for mark in drawing.of("number"):
        if isinstance(mark, Text) and not isinstance(mark.content, str):
            box = text_box(mark)
            out = box.left < min(xs) or box.right > max(xs) or box.bottom < min(ys)
            if out or box.top > max(ys):
                raise NotExact("a number stands outside of everything")
            first, second = (_inside(box, circle) for circle in circles)
            held[(first, second)].append(to_sympy(mark.content))
    total = None
    for mark in drawing.of("total"):
        if isinstance(mark, Text):
            total = sympy.Integer(str(mark.content).split()[-1])
    if drawing.of("kind"):
        # Where the numbers are the members themselves, how many there are is what is counted.
        counts = {place: sympy.Integer(len(numbers)) for place, numbers in held.items()}
    else:
        lacking = [place for place, numbers in held.items() if not numbers]
        if any(len(numbers) > 1 for numbers in held.values()) or len(lacking) > 1:
            raise NotExact("a region shows no single number")
        counts = {place: sum(numbers, sympy.Integer(0)) for place, numbers in held.items()}
        # One region may be left open for the pupil: only the total then says what belongs there.
        if lacking:
            if total is None:
                raise NotExact("nothing says how many are in a region")
            counts[lacking[0]] = total - sum(counts.values())
    if total is not None and sum(counts.values()) != total:
        raise NotExact("the regions do not come to the total")
    return names, counts, held


_PLACES = ((True, False), (True, True), (False, True), (False, False))
"""The regions by whether they are in the first and in the second set; they are counted from 0."""


def _set_of(text: str, names: list[str]) -> Any:
    """Return a set in symbols as a finite set of sympy, of the numbers of regions.

    Brackets and signs are taken off a stack (Dijkstra's shunting yard, from memory).
    """
    whole = sympy.FiniteSet(0, 1, 2, 3)
    letters = {
        names[0].upper(): sympy.FiniteSet(0, 1),
        names[1].upper(): sympy.FiniteSet(1, 2),
    }
    signs: list[str] = []
    found: list[Any] = []

    def join() -> None:
        right, left = found.pop(), found.pop()
        found.append(left.intersect(right) if signs.pop() == "∩" else left.union(right))

    for sign in text.replace(" ", "").replace("'", "′").replace("’", "′"):
        match sign:
            case "(" | "∩" | "∪":
                signs.append(sign)
            case ")":
                while signs[-1] != "(":
                    join()
                signs.pop()
            case "′":
                found.append(whole - found.pop())
            case _:
                if sign not in letters:
                    raise NotExact(f"it shows no set {sign}")
                found.append(letters[sign])
    while signs:
        join()
    # Two sets without a sign between them leave two: that is no set, and stops here.
    (only,) = found
    return only


def places_of(text: str, names: list[str]) -> frozenset[tuple[bool, bool]]:
    """Return the regions of a set in symbols, by whether they are in the first and the second."""
    return frozenset(_PLACES[int(place)] for place in _set_of(text, names))


def _of_sets(drawing: Drawing, what: str, text: str) -> t.Node:
    names, counts, held = _held(drawing)
    wanted = [_PLACES[int(place)] for place in _set_of(text, names)]
    if what == "count":
        return number_tree(sum((counts[place] for place in wanted), sympy.Integer(0)))
    if not drawing.of("kind"):
        raise NotExact("its numbers are not the members themselves")
    members = sympy.FiniteSet(*(number for place in wanted for number in held[place]))
    return t.Listing(tuple(number_tree(number) for number in members))


def _measure(drawing: Drawing, reading: Reading) -> t.Node:
    if reading.name in ("count", "members") and len(reading.of) == 1:
        return _of_sets(drawing, reading.name, *reading.of)
    names, counts = _regions(drawing)
    if reading.name in _WANTED and not reading.of:
        rule, turned = _WANTED[reading.name], False
    elif len(reading.of) == 1 and reading.of[0].casefold() in names and reading.name in _OF_SET:
        rule, turned = _OF_SET[reading.name], names.index(reading.of[0].casefold()) == 1
    else:
        raise NotExact("the drawing does not show it")
    chosen = [n for place, n in counts.items() if rule(*(place[::-1] if turned else place))]
    return number_tree(sum(chosen, sympy.Integer(0)))


MEASURING = Measuring(_measure)
