"""Symmetry: lines of symmetry, the order of rotational symmetry, and what makes a pattern so.

England's programme of study for key stage 3 (2013) asks pupils to use the terms "reflection and
rotation symmetries" of polygons (from memory).
"""

from __future__ import annotations

from typing import Any

from generators.geometry import _patterns as p
from generators.geometry._symmetric_shapes import SHAPES, SLANTED, UPRIGHT
from generators.geometry._symmetry_asked import Core, Hard, place_of
from generators.geometry._symmetry_mended import TO_MEND, mended, missing_square
from generators.geometry._symmetry_mirrors import mirror_line, rest_of_line, shape_on_line
from generators.geometry._symmetry_mistakes import (
    ALL_QUARTERS,
    ALWAYS_Y_X,
    CHANGED_LETTER,
    CORNERS_ALONE,
    DIAGONALS,
    EDGE,
    FULL_TURN_LEFT_OUT,
    GRADIENT_SIGN,
    HALF_TURNS_ALONE,
    LINES_FOR_ORDER,
    NO_DIAGONALS,
    ORDER_FOR_LINES,
    OTHER_LINE,
    REFLECTED_ACROSS,
    REFLECTED_OVER,
    SIDES,
    TURNED,
    TWICE,
    UPRIGHT_ALONE,
    WHOLE_GRID,
)
from generators.geometry._symmetry_patterns import EASY, LINES, ORDERS, easy_pattern, pattern
from generators.geometry._symmetry_polygons import (
    cut_polygon,
    cut_triangles,
    regular_polygon,
    shape_on_grid,
    turns_of,
)
from generators.geometry._symmetry_told import with_told
from generators.transformations._shapes import inside, placed
from itembank.figures.kinds.symmetry.cut_polygon import NAMES
from itembank.items import kinds
from itembank.items.item import Draft, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic


def _support(kind: int, grid: int, way: int, seed: int) -> bool:
    """Keep patterns with upright and level lines alone, and regular polygons, each once."""
    if kind == 1:
        return grid == way == 0 and seed in NAMES
    moves, wanted = EASY[way]
    return p.asked(p.GRIDS[grid], moves, seed, wanted)


def _core(kind: int, which: int, way: int, seed: int) -> bool:
    if kind in (Core.LINES, Core.ORDER):
        rows = LINES if kind == Core.LINES else ORDERS
        if which >= len(p.GRIDS) or way >= len(rows) or seed > 30:
            return False
        moves, wanted = rows[way]
        if which >= p.SQUARE and (kind == Core.LINES or way not in (0, 2)):
            return False  # a rectangle has neither quarter turns nor diagonals
        return p.asked(p.GRIDS[which], moves, seed, wanted)
    if kind in (Core.CUT_LINES, Core.CUT_ORDER):
        if which not in (4, 5, 6, 8, 9, 10) or way:
            return False
        dark, found = cut_triangles(which, seed), turns_of(which, seed)
        # A row of triangles twice as long has the same shading: it is met with its first seed.
        new = all(cut_triangles(which, before) != dark for before in range(1, seed))
        mixed = 1 < len(dark) < which - 1 and found.order > 1
        return new and mixed and (kind == Core.CUT_ORDER or found.lines != which)
    if which >= len(SHAPES) or seed > 40:
        return False
    shape, (x, y) = SHAPES[which], place_of(seed)
    corners = placed(shape.corners, (x, y))
    return (
        way == 0
        and inside(corners, gap=1)
        and (kind == Core.SHAPE_LINES or shape.symmetry.order > 1)
    )


def _challenge(kind: int, which: int, way: int, seed: int) -> bool:
    if kind == Hard.SQUARE:
        if which >= len(p.GRIDS) or seed > 70 or (which >= p.SQUARE and way in (2, 3)):
            return False
        return mended(which, way, seed) is not None
    shapes = UPRIGHT if kind == Hard.STRAIGHT else SLANTED
    if which >= len(shapes) or way > 1 or seed > 30:
        return False
    corners = shape_on_line(kind, which, way, seed)
    at = rest_of_line(kind, way, seed)
    return at != 0 and inside(corners) and all(abs(y - x) < 11 for x, y in corners)


@register
class SymmetryTopic(Topic):
    """Lines of symmetry and turns: of patterns, regular polygons and shapes on a grid."""

    id = "geometry.symmetry"
    title = "Line and rotational symmetry"
    statements = ("geometry.terms", "geometry.properties")
    prerequisites = ("graphs.coordinates",)
    misconceptions = (
        *(DIAGONALS, NO_DIAGONALS, UPRIGHT_ALONE, TWICE, CORNERS_ALONE, ORDER_FOR_LINES),
        *(
            WHOLE_GRID,
            ALL_QUARTERS,
            HALF_TURNS_ALONE,
            LINES_FOR_ORDER,
            FULL_TURN_LEFT_OUT,
            SIDES,
            TURNED,
            OTHER_LINE,
            REFLECTED_ACROSS,
            REFLECTED_OVER,
        ),
        *(CHANGED_LETTER, EDGE, ALWAYS_Y_X, GRADIENT_SIGN),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            kind=range(2),
            grid=range(len(p.GRIDS)),
            way=range(len(EASY)),
            seed=range(1, 40),
        ),
        Tier.CORE: Space(
            _core, kind=range(6), which=range(len(SHAPES)), way=range(6), seed=range(1, 100)
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            which=range(max(len(UPRIGHT), len(SLANTED), len(p.GRIDS))),
            way=range(len(TO_MEND)),
            seed=range(1, 100),
        ),
    }
    spaces = with_told(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, which, way, seed = values
        if tier is Tier.SUPPORT:
            return regular_polygon(seed) if kind else easy_pattern(which, way, seed)
        if tier is Tier.CORE:
            if kind in (Core.LINES, Core.ORDER):
                return pattern(kind, which, way, seed)
            if kind in (Core.CUT_LINES, Core.CUT_ORDER):
                return cut_polygon(kind, which, seed)
            return shape_on_grid(kind, which, seed)
        if kind == Hard.SQUARE:
            return missing_square(which, way, seed)
        return mirror_line(kind, which, way, seed)
