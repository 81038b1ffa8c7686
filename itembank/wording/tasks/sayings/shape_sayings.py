"""What is asked of a shape by its name and sizes: *the area of a rectangle* {6 cm} *by* {4 cm}.

A wording names every size it uses: *a triangle with base* {6 cm} *and slant height* {4 cm} is in
none of them, so that a person looks at it.
"""

from __future__ import annotations

from collections.abc import Callable

from itembank.notation import tree as t
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums import shape_sums as sums
from itembank.wording.tasks.sums.sums import Built, NotBuilt, over

_WITH = r"(?:(?:with|of|that has|which has|having) )?(?:an? |the )?"
_IS = r"(?:of |that is |which is |that measures |which measures |measuring )?"
_AREA, _PERIMETER = r"<FIND> the (?:total )?area of", r"<FIND> the perimeter of"
_VOLUME, _SURFACE = r"<FIND> the volume of", r"<FIND> the (?:total )?surface area of"
_ROUND = r"<FIND> the circumference of"

_TWO_SIDES = (
    rf"(?:{_IS}<M>(?: long)?,? (?:by|and) <M>(?: wide)?|{_IS}<M>(?: wide)?,? (?:by|and) <M>(?: long)?|"
    rf"{_WITH}(?:length|width)(?: of)? <M> and (?:an? |the )?(?:width|length)(?: of)? <M>|"
    rf"{_WITH}(?:sides|dimensions)(?: of)? <M> (?:and|by) <M>)"
)
_SIDE = rf"{_WITH}(?:side|sides|side length|sides of length)(?: of)? <M>"
_EDGE = rf"{_WITH}(?:edge|edges|side|sides|edge length|side length)(?: of)? <M>"
_HEIGHT = r"(?:perpendicular |vertical )?height(?: of)?"
_BASE = rf"{_WITH}base(?: of)? <M> and (?:an? |the )?{_HEIGHT} <M>"
_PARALLEL = (
    rf"{_WITH}parallel sides(?: of)? <M> and <M> and (?:an? |the )?"
    rf"(?:{_HEIGHT}|perpendicular distance between them(?: of)?) <M>"
)
_THREE_EDGES = (
    rf"(?:{_IS}<M> (?:by|×) <M> (?:by|×) <M>|{_IS}<M> long, <M> wide,? and <M> high|"
    rf"{_WITH}length(?: of)? <M>, (?:an? )?width(?: of)? <M>,? and (?:an? )?height(?: of)? <M>|"
    rf"{_WITH}(?:edges|sides|dimensions)(?: of)? <M>, <M>,? and <M>)"
)
_RADIUS, _DIAMETER = rf"{_WITH}radius(?: of)? <M>", rf"{_WITH}diameter(?: of)? <M>"
_TALL = rf" and (?:an? |the )?{_HEIGHT} <M>"
_RIGHT_ANGLED = r"(?:an?|the) right[- ]angled triangle"

_NAMED = {
    **{"triangle": 3, "quadrilateral": 4, "pentagon": 5, "hexagon": 6, "heptagon": 7},
    **{"octagon": 8, "nonagon": 9, "decagon": 10},
}
_POLYGON = rf"(?P<name>{'|'.join(_NAMED)})"
_SIDES = r"polygon (?:with|that has) <M> sides"
MOST_SIDES = 360

_SHAPES: tuple[tuple[str, Callable[..., Built]], ...] = (
    (rf"{_AREA} (?:an?|the) rectangle {_TWO_SIDES}", sums.rectangle_area),
    (rf"{_PERIMETER} (?:an?|the) rectangle {_TWO_SIDES}", sums.rectangle_perimeter),
    (rf"{_AREA} (?:an?|the) square {_SIDE}", sums.square_area),
    (rf"{_PERIMETER} (?:an?|the) square {_SIDE}", sums.regular_perimeter(4)),
    (rf"{_PERIMETER} an? equilateral triangle {_SIDE}", sums.regular_perimeter(3)),
    (rf"{_AREA} (?:an?|the) triangle {_BASE}", sums.triangle_area),
    (rf"{_AREA} (?:an?|the) parallelogram {_BASE}", sums.rectangle_area),
    (rf"{_AREA} (?:an?|the) trapezium {_PARALLEL}", sums.trapezium_area),
    (rf"{_AREA} (?:an?|the) circle {_RADIUS}", sums.circle_area),
    (rf"{_AREA} (?:an?|the) circle {_DIAMETER}", sums.circle_area_across),
    (rf"{_ROUND} (?:an?|the) circle {_RADIUS}", sums.circumference),
    (rf"{_ROUND} (?:an?|the) circle {_DIAMETER}", sums.circumference_across),
    (rf"{_VOLUME} (?:an?|the) cuboid {_THREE_EDGES}", sums.cuboid_volume),
    (rf"{_SURFACE} (?:an?|the) cuboid {_THREE_EDGES}", sums.cuboid_surface),
    (rf"{_VOLUME} (?:an?|the) cube {_EDGE}", sums.cube_volume),
    (rf"{_SURFACE} (?:an?|the) cube {_EDGE}", sums.cube_surface),
    (rf"{_VOLUME} (?:an?|the) cylinder {_RADIUS}{_TALL}", sums.cylinder_volume),
    (rf"{_VOLUME} (?:an?|the) cylinder {_DIAMETER}{_TALL}", sums.cylinder_volume_across),
    (
        rf"<FIND> the (?:length of the )?hypotenuse of {_RIGHT_ANGLED} {_WITH}(?:two )?"
        r"(?:shorter|short|other) sides(?: of)? <M> and <M>",
        sums.hypotenuse,
    ),
)

_ANGLES = r"(?:with|that has|which has|whose) (?:two |three )?(?:other )?angles(?: of| are)?"
_REST = r"(?:size of the )?(?:third|fourth|last|missing|remaining|other) angle"


def _sides(words: dict[str, str], counted: tuple[t.Node, ...]) -> tuple[t.Node, int]:
    """Return how many sides a polygon has, as it is printed or said."""
    if not counted:
        count = _NAMED[words["name"]]
        return t.Int(count), count
    match counted:
        case (t.Int(count),) if 3 <= count <= MOST_SIDES:
            return t.Int(count), count
    raise NotBuilt("A polygon has a whole number of sides, 3 or more.")


def _angle_sum(words: dict[str, str], *counted: t.Node) -> Built:
    """Return (n − 2) × 180°, the sum of a polygon's angles."""
    number, count = _sides(words, counted)
    inner = t.Bracket(t.Sum(number, (("-", t.Int(2)),)))
    return sums.times(inner, _degrees(180)), (2, 180, count)


def _exterior(words: dict[str, str], *counted: t.Node) -> Built:
    """Return 360° ÷ n, an exterior angle of a regular polygon."""
    number, count = _sides(words, counted)
    return over(_degrees(360), number)[0], (360, count)


def _interior(words: dict[str, str], *counted: t.Node) -> Built:
    """Return 180° − 360° ÷ n, an angle of a regular polygon."""
    number, count = _sides(words, counted)
    outside = t.Bracket(over(_degrees(360), number)[0])
    return t.Sum(_degrees(180), (("-", outside),)), (180, 360, count)


def _degrees(number: int) -> t.Node:
    return t.Quantity(t.Int(number), sums.DEGREES)


_SIZE_OF = r"(?:the size of )?(?:each|one|every|an)"
_REGULAR = rf"a regular (?:{_POLYGON}|{_SIDES})"
_POLYGONS: tuple[tuple[str, Callable[..., Built]], ...] = (
    (
        rf"<FIND> the (?:sum|total) of the (?:interior )?angles (?:of|in) an? (?:{_POLYGON}|{_SIDES})",
        _angle_sum,
    ),
    (rf"<FIND> {_SIZE_OF} exterior angle of {_REGULAR}", _exterior),
    (rf"<FIND> {_SIZE_OF} interior angle of {_REGULAR}", _interior),
)

SHAPE_SAYINGS = (
    *(Saying(*row) for row in _SHAPES),
    *(Saying(*row) for row in _POLYGONS),
    Saying(rf"<FIND> the {_REST} of a triangle {_ANGLES} <M> and <M>", sums.left_of(180)),
    Saying(
        rf"<FIND> the {_REST} of a quadrilateral {_ANGLES} <M>, <M>,? and <M>", sums.left_of(360)
    ),
)
