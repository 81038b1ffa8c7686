"""The outline of a drawn polygon: its corners in order, and what labels and marks each part."""

from __future__ import annotations

from typing import Any

import sympy

from itembank.figures.drawing import Area, Drawing, Mark, Stroke, Text, text_box
from itembank.notation import tree as t
from itembank.notation.symbolic import to_sympy
from itembank.notation.value import NotExact
from itembank.proof.measured.plane.measured_equations import Settled

Spot = tuple[Any, Any]


def _spot(point: tuple[Any, Any]) -> Spot:
    return sympy.Rational(point[0]), sympy.Rational(point[1])


class Outline:
    """What stands on the drawing, each mark at the side or the corner it belongs to."""

    def __init__(self, drawing: Drawing) -> None:
        (area,) = drawing.of("polygon")
        if not isinstance(area, Area):
            raise NotExact("there is no outline")
        self.spots = [_spot(point) for point in area.points]
        self.count = len(self.spots)
        self.names = self._letters(drawing)
        self.dashes = self._on_sides(drawing, "dash")
        self.arrows = self._on_sides(drawing, "arrowhead")
        self.right = self._right(drawing)
        self.side_labels = {
            self._nearest_side(mark): mark.content for mark in _labels(drawing, "side label")
        }
        self.angle_labels = self._angle_labels(drawing)
        self.height = self._height(drawing)
        self.settled = Settled(self._equations())
        self.accurate = not drawing.of("not accurate")

    def ends(self, side: int) -> tuple[Spot, Spot]:
        """Return the ends of a side."""
        return self.spots[side], self.spots[(side + 1) % self.count]

    def square(self, side: int) -> Any:
        """Return the square of a side's length on the drawing."""
        (a, b), (c, d) = self.ends(side)
        return (c - a) ** 2 + (d - b) ** 2

    def _letters(self, drawing: Drawing) -> dict[str, int]:
        found = {}
        for mark in drawing.of("corner"):
            if isinstance(mark, Text):
                x, y = _spot(mark.at)
                far = [(x - a) ** 2 + (y - b) ** 2 for a, b in self.spots]
                found[str(mark.content)] = far.index(min(far))
        if found and sorted(found.values()) != list(range(self.count)):
            raise NotExact("the letters do not stand each at a corner")
        return found

    def _nearest_side(self, mark: Text) -> int:
        """Return the side that a label's box stands nearest to; of two, by its middle."""
        left, bottom, right, top = map(sympy.Rational, text_box(mark))
        x, y = _spot(mark.at)
        box = [(left, bottom), (right, bottom), (right, top), (left, top)]

        def far(side: int) -> tuple[Any, Any]:
            a, b = self.ends(side)
            gaps = [_from_segment(corner, a, b) for corner in box]
            gaps += [_from_segment(end, box[j - 1], box[j]) for end in (a, b) for j in range(4)]
            (ax, ay), (bx, by) = a, b
            return min(gaps), ((ax + bx) / 2 - x) ** 2 + ((ay + by) / 2 - y) ** 2

        return min(range(self.count), key=far)

    def _on_sides(self, drawing: Drawing, role: str) -> dict[int, int]:
        """Return how many marks of a role stand on each side, each across it near its middle."""
        found: dict[int, int] = {}
        for mark in drawing.of(role):
            if not isinstance(mark, Stroke):
                raise NotExact("a mark on a side is no stroke")
            xs, ys = zip(*map(_spot, mark.points), strict=True)
            middle = ((max(xs) + min(xs)) / 2, (max(ys) + min(ys)) / 2)
            far = [_from_segment(middle, *self.ends(side)) for side in range(self.count)]
            if min(far) > sympy.Rational(1, 25):
                raise NotExact("a mark stands on no side")
            side = far.index(min(far))
            found[side] = found.get(side, 0) + 1
        return found

    def _right(self, drawing: Drawing) -> set[int]:
        found = set()
        for mark in drawing.of("right angle"):
            assert isinstance(mark, Stroke)
            x, y = _spot(mark.points[1])
            far = [(x - a) ** 2 + (y - b) ** 2 for a, b in self.spots]
            at = far.index(min(far))
            (ax, ay), (bx, by), (cx, cy) = (
                self.spots[at - 1],
                self.spots[at],
                self.spots[(at + 1) % self.count],
            )
            if (ax - bx) * (cx - bx) + (ay - by) * (cy - by) != 0:
                raise NotExact("a mark of a right angle stands at a corner that is none")
            found.add(at)
        return found

    def _angle_labels(self, drawing: Drawing) -> dict[int, t.Node]:
        """Return the label of each corner: it stands between the corner's sides, over its arc."""
        found: dict[int, t.Node] = {}
        for mark in _labels(drawing, "angle label"):
            at = _spot(mark.at)
            arcs = [(self._corner(arc), arc) for arc in drawing.of("angle")]
            inside = [
                corner for corner, _ in arcs if corner not in found and self._between(corner, at)
            ]
            if not inside:
                raise NotExact("the label of an angle stands in no angle")
            far = {
                c: sum((p - q) ** 2 for p, q in zip(at, self.spots[c], strict=True)) for c in inside
            }
            found[min(inside, key=lambda corner: far[corner])] = mark.content  # type: ignore[assignment]
        return found

    def _corner(self, arc: Mark) -> int:
        centre = _spot(arc.centre)  # type: ignore[union-attr]
        if centre not in self.spots:
            raise NotExact("an arc stands at no corner")
        return self.spots.index(centre)

    def _between(self, corner: int, at: Spot) -> bool:
        before, here = self.spots[corner - 1], self.spots[corner]
        after = self.spots[(corner + 1) % self.count]
        sign = 1 if self.twice_area() > 0 else -1
        first, second = sign * _turn(here, after, at), sign * _turn(here, at, before)
        convex = sign * _turn(before, here, after) > 0
        return bool(first > 0 and second > 0) if convex else bool(first > 0 or second > 0)

    def twice_area(self) -> Any:
        """Return twice the area on the drawing, with its sign."""
        return 2 * sympy.Polygon(*map(sympy.Point, self.spots)).area

    def _height(self, drawing: Drawing) -> tuple[t.Node, Any] | None:
        labels = _labels(drawing, "height label")
        for mark in drawing.of("height"):
            assert isinstance(mark, Stroke)
            (a, b), (c, d) = map(_spot, mark.points)
            bases = []
            for side in range(self.count):
                first, other = self.ends(side)
                wx, wy = other[0] - first[0], other[1] - first[1]
                if _turn(first, other, (c, d)) == 0 and wx * (a - c) + wy * (b - d) == 0:
                    bases.append(side)
            if not bases or (a, b) not in self.spots:
                raise NotExact("the height is at no right angle to a side")
            if labels:
                return labels[0].content, (c - a) ** 2 + (d - b) ** 2  # type: ignore[return-value]
        return None

    # What the marks say, as equations: sides are s0, s1 …, angles a0, a1 ….

    def side(self, side: int) -> Any:
        """Return a side's length by its label, or as an unknown."""
        label = self.side_labels.get(side % self.count)
        if label is None or isinstance(label, str):
            return sympy.Symbol(f"s{side % self.count}")
        return to_sympy(label)

    def angle(self, corner: int) -> Any:
        """Return a corner's angle by its mark or label, or as an unknown."""
        at = corner % self.count
        if at in self.right:
            return sympy.Integer(90)
        return (
            to_sympy(self.angle_labels[at]) if at in self.angle_labels else sympy.Symbol(f"a{at}")
        )

    def _groups(self, found: dict[int, int]) -> list[list[int]]:
        return [
            [side for side in found if found[side] == number]
            for number in sorted({*found.values()})
        ]

    def _equations(self) -> list[Any]:
        n = self.count
        out = [sum(self.angle(k) for k in range(n)) - 180 * (n - 2)]
        for group in self._groups(self.dashes):
            for side in group[1:]:
                gap = abs(float(self.square(side) / self.square(group[0])) - 1)
                if gap > 0.011:
                    raise NotExact("sides marked as equal are not drawn equal")
                out.append(self.side(side) - self.side(group[0]))
                if n == 3:
                    out.append(self.angle(side + 2) - self.angle(group[0] + 2))
        box = n == 4 and len(self.right) >= 3
        pairs = {
            frozenset((i, j))
            for group in self._groups(self.arrows)
            for i in group
            for j in group
            if i != j
        }
        for pair in pairs:
            i, j = pair
            if sympy.Line(*self.ends(i)).direction.unit not in (
                sympy.Line(*self.ends(j)).direction.unit,
                -sympy.Line(*self.ends(j)).direction.unit,
            ):
                raise NotExact("sides marked as parallel are not drawn parallel")
        crossed = [k for k in range(n) if box or frozenset(((k - 1) % n, (k + 1) % n)) in pairs]
        for k in crossed:
            if self._convex(k) and self._convex((k + 1) % n):
                out.append(self.angle(k) + self.angle(k + 1) - 180)
        if n == 4 and len(crossed) == 4:
            out += [self.side(0) - self.side(2), self.side(1) - self.side(3)]
        out += self._balanced()
        return out

    def _convex(self, corner: int) -> bool:
        here, after = self.spots[corner], self.spots[(corner + 1) % self.count]
        return bool(_turn(self.spots[corner - 1], here, after) * self.twice_area() > 0)

    def _balanced(self) -> list[Any]:
        """Return, of a shape with square corners alone, that ways there and back are as long."""
        steps = []
        for side in range(self.count):
            (a, b), (c, d) = self.ends(side)
            steps.append((c - a, d - b))
        square = all(0 in step for step in steps)
        if not square or any(self._convex(k) and k not in self.right for k in range(self.count)):
            return []
        return [
            sum(sympy.sign(step[axis]) * self.side(k) for k, step in enumerate(steps))
            for axis in (0, 1)
        ]

    def scale(self) -> tuple[Any, t.Node]:
        """Return what an em of the drawing is worth, and a label to write amounts like."""
        given: list[tuple[t.Node, Any]] = [
            (label, self.square(side))
            for side, label in self.side_labels.items()
            if not isinstance(label, str)
        ]
        given += [self.height] if self.height is not None else []
        worths = set()
        for label, square in given:
            value = self.settled.value(to_sympy(label))
            if value is not None:
                worths.add(value**2 / square)
        if len(worths) != 1:
            raise NotExact("its lengths are not drawn to one scale")
        return sympy.sqrt(worths.pop()), unit_like(given)


def unit_like(given: list[tuple[t.Node, Any]]) -> t.Node:
    """Return a label with a unit, for a length to be told in it; 1 where none has any."""
    return next((node for node, _ in given if isinstance(node, t.Quantity)), t.Int(1))


def _labels(drawing: Drawing, role: str) -> list[Text]:
    return [
        mark
        for mark in drawing.of(role)
        if isinstance(mark, Text) and not isinstance(mark.content, str)
    ]


def _turn(a: Spot, b: Spot, c: Spot) -> Any:
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])


def _from_segment(at: Spot, a: Spot, b: Spot) -> Any:
    """Return the square of how far a place is from a segment."""
    wx, wy = b[0] - a[0], b[1] - a[1]
    part = ((at[0] - a[0]) * wx + (at[1] - a[1]) * wy) / (wx**2 + wy**2)
    part = max(sympy.Integer(0), min(sympy.Integer(1), part))
    return (a[0] + part * wx - at[0]) ** 2 + (a[1] + part * wy - at[1]) ** 2
