"""How short questions about angles, areas and lengths are worked out from the printed text.

Letters are found by trying, areas by counting unit squares or by the corners of a drawn shape
(the shoelace rule), and angles by turning until the whole is full. Hundreds of numbers are tried
for each, so the arithmetic is FLINT's, which is exact and quick.
"""

from __future__ import annotations

from flint import fmpq


def tried(holds):
    """Return the number from 1 to 200, in halves, for which something holds."""
    [found] = [x for n in range(2, 400) if holds(x := fmpq(n, 2))]
    return found


def line_of(a, b, c):
    return tried(lambda x: a * x + b + c * x == 180)


def shoelace(*corners):
    pairs = zip(corners, (*corners[1:], corners[0]), strict=True)
    return abs(sum(x * v - u * y for (x, y), (u, v) in pairs)) / 2


def trapezium(top, bottom, high):
    return shoelace((0, 0), (bottom, 0), (top, high), (0, high))


def rectangle(w, h):
    return shoelace((0, 0), (w, 0), (w, h), (0, h))


def around(w, h):
    return w + h + w + h


LINE = {
    "Two angles make a straight line. One is {}. What is the other?": lambda a: 180 - a,
    "Three angles make a straight line. Two are {} and {}. What is the third?": (
        lambda a, b: 180 - a - b
    ),
    "Angles of ({}x + {})° and {}x° make a straight line. What is x?": line_of,
    "Angles of ({}x + {})° and x° make a straight line. What is x?": (
        lambda a, b: line_of(a, b, 1)
    ),
}
POINT = {
    "Three angles meet at a point. Two are {} and {}. What is the third?": (
        lambda a, b: 360 - a - b
    ),
    "Round a point are angles of {}, {} and two equal ones. How large is each?": (
        lambda a, b: tried(lambda x: a + b + x + x == 360)
    ),
    "Round a point are angles of {}, {} and three equal ones. How large is each?": (
        lambda a, b: tried(lambda x: a + b + x + x + x == 360)
    ),
    "Angles of {}x°, {}x° and {} make a full turn. What is x?": (
        lambda a, c, b: tried(lambda x: a * x + c * x + b == 360)
    ),
    "Angles of x°, {}x° and {} make a full turn. What is x?": (
        lambda c, b: tried(lambda x: x + c * x + b == 360)
    ),
}
TRIANGLE = {
    "Two angles of a triangle are {} and {}. What is the third?": lambda a, b: 180 - a - b,
    "An isosceles triangle has two angles of {} each. What is the third angle?": (
        lambda a: tried(lambda x: a + a + x == 180)
    ),
    "A triangle has an angle of {}. Its other two angles are equal. How large is each?": (
        lambda a: tried(lambda x: a + x + x == 180)
    ),
    "The angles of a triangle are {}x°, {}x° and {}. What is x?": (
        lambda a, c, b: tried(lambda x: a * x + c * x + b == 180)
    ),
    "The angles of a triangle are x°, {}x° and {}. What is x?": (
        lambda c, b: tried(lambda x: x + c * x + b == 180)
    ),
}
QUADRILATERAL = {
    "Three angles of a quadrilateral are {}, {} and {}. What is the fourth?": (
        lambda *known: 360 - sum(known)
    ),
    "Two angles of a quadrilateral are {} and {}. The others are equal. How large is each?": (
        lambda a, b: tried(lambda x: a + b + x + x == 360)
    ),
    "The angles of a quadrilateral are {}x°, {}x°, {} and {}. What is x?": (
        lambda a, c, b, d: tried(lambda x: a * x + c * x + b + d == 360)
    ),
    "The angles of a quadrilateral are x°, {}x°, {} and {}. What is x?": (
        lambda c, b, d: tried(lambda x: x + c * x + b + d == 360)
    ),
}
CROSSING = {
    "Two straight lines cross. One angle is {}. How large is the angle next to it?": (
        lambda a: 180 - a
    ),
    "Two lines cross. Two opposite angles add up to {}. How large is each of the other two?": (
        lambda s: 180 - s / 2
    ),
    "Vertically opposite angles are ({}x + {})° and {}. What is x?": (
        lambda a, b, size: tried(lambda x: a * x + b == size)
    ),
    "Vertically opposite angles are ({}x - {})° and {}. What is x?": (
        lambda a, b, size: tried(lambda x: a * x - b == size)
    ),
    "Two lines cross. Angles next to each other are ({}x + {})° and {}x°. What is x?": line_of,
    "Two lines cross. Angles next to each other are ({}x + {})° and x°. What is x?": (
        lambda a, b: line_of(a, b, 1)
    ),
}
PARALLEL = {
    "One of two co-interior angles between parallel lines is {}. What is the other?": (
        lambda a: 180 - a
    ),
    "{w} angles on parallel lines are {}x° and {}. What is x?": (
        lambda a, size: tried(lambda x: a * x == size)
    ),
    "{w} angles on parallel lines are ({}x + {})° and {}. What is x?": (
        lambda a, b, size: tried(lambda x: a * x + b == size)
    ),
    "{w} angles on parallel lines are ({}x - {})° and {}. What is x?": (
        lambda a, b, size: tried(lambda x: a * x - b == size)
    ),
    "Co-interior angles between parallel lines are ({}x + {})° and {}x°. What is x?": line_of,
    "Co-interior angles between parallel lines are ({}x + {})° and x°. What is x?": (
        lambda a, b: line_of(a, b, 1)
    ),
}
RECTANGLES = {
    "A rectangle is {} long and {} wide. What is its area?": rectangle,
    "A rectangle has a perimeter of {} and a length of {}. What is its area?": (
        lambda edge, w: rectangle(w, tried(lambda h: around(w, h) == edge))
    ),
}
PARALLELOGRAMS = {
    "A parallelogram has a base of {} and a height of {}. What is its area?": (
        lambda b, h: shoelace((0, 0), (b, 0), (b + 3, h), (3, h))
    ),
    "A parallelogram has sides {} and {}. The height on {} is {}. Find the other height.": (
        lambda b, c, base, h: rectangle(b, h) / c if base == b else None
    ),
}
TRAPEZIUMS = {
    "A trapezium has parallel sides of {} and {}. Its height is {}. What is its area?": trapezium,
    "A trapezium of area {} has parallel sides of {} and {}. What is its height?": (
        lambda area, top, bottom: tried(lambda h: trapezium(top, bottom, h) == area)
    ),
    "A trapezium of area {} and height {} has a parallel side of {}. Find the other.": (
        lambda area, h, top: tried(lambda bottom: trapezium(top, bottom, h) == area)
    ),
}
TRIANGLES = {
    "A triangle has a base of {} and a height of {}. What is its area?": (
        lambda b, h: shoelace((0, 0), (b, 0), (2, h))
    ),
    "A triangle is {} times as high as its base is long. Its base is {}. What is its area?": (
        lambda n, b: shoelace((0, 0), (b, 0), (2, n * b))
    ),
}
COMPOUND = {
    "A square of side {} is cut out of a rectangle {} by {}. What area is left?": (
        lambda s, w, h: shoelace((0, 0), (w, 0), (w, h - s), (w - s, h - s), (w - s, h), (0, h))
    ),
    "A shape is made of rectangles {} by {} and {} by {}. What is its area?": (
        lambda w, h, u, v: rectangle(w, h) + rectangle(u, v)
    ),
    "A path {} wide goes all round a lawn {} by {}. What is the area of the path?": (
        lambda s, w, h: sum(
            not (s <= x < s + w and s <= y < s + h)
            for x in range(int(w + 2 * s))
            for y in range(int(h + 2 * s))
        )
    ),
}
PERIMETERS = {
    "A rectangle is {} long and {} wide. What is its perimeter?": around,
    "A rectangle has a perimeter of {} and a length of {}. What is its width?": (
        lambda edge, w: tried(lambda h: around(w, h) == edge)
    ),
    "A square has the same perimeter as a rectangle {} by {}. How long is its side?": (
        lambda w, h: tried(lambda side: around(side, side) == around(w, h))
    ),
}


def turned(from_north, step):
    """Return a bearing after a turn, on a compass of 360 marks."""
    compass = [fmpq(degree) for degree in range(360)]
    return compass[int(from_north + step) % 360]


BEARINGS = {
    "A {w} on a bearing of {} turns {} clockwise. What is its new three-figure bearing?": turned,
    "A {w} on a bearing of {} turns {} anticlockwise. What is its new three-figure bearing?": (
        lambda a, b: turned(a, -b)
    ),
}
TOPICS = {
    "geometry.bearings": BEARINGS,
    "geometry.angles-on-a-line": LINE,
    "geometry.angles-at-a-point": POINT,
    "geometry.angles-in-triangles": TRIANGLE,
    "geometry.angles-in-quadrilaterals": QUADRILATERAL,
    "geometry.vertically-opposite": CROSSING,
    "geometry.parallel-lines": PARALLEL,
    "geometry.area-of-rectangles": RECTANGLES,
    "geometry.area-of-parallelograms": PARALLELOGRAMS,
    "geometry.area-of-trapeziums": TRAPEZIUMS,
    "geometry.area-of-triangles": TRIANGLES,
    "geometry.compound-area": COMPOUND,
    "geometry.perimeter": PERIMETERS,
}
