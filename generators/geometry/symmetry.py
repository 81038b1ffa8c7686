"""Symmetry: lines of symmetry, the order of rotational symmetry, and what makes a pattern so.

England's programme of study for key stage 3 (2013) asks pupils to use the terms "reflection and
rotation symmetries" of polygons (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._scatter import scattered, unlike
from generators.geometry import _patterns as p
from generators.geometry._symmetric_shapes import SHAPES, SLANTED, UPRIGHT
from generators.transformations._shapes import Spot, inside, outline, picture, placed
from itembank.figures.kinds.cut_polygon import NAMES, CutPolygon
from itembank.figures.kinds.shaded_squares import ShadedSquares
from itembank.figures.kinds.symmetry_found import Symmetry, of_cells, of_cells_alone, of_turn
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Run, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted

DIAGONALS = Misconception(
    "geometry.symmetry-diagonals",
    "counts both diagonals as lines of symmetry",
    "Fold the paper along that diagonal. Do the two halves match?",
)
NO_DIAGONALS = Misconception(
    "geometry.symmetry-no-diagonals",
    "looks for upright and level lines of symmetry alone",
    "Turn the paper so that a corner points at you. Is there a line of symmetry now?",
)
UPRIGHT_ALONE = Misconception(
    "geometry.symmetry-upright-alone",
    "looks for an upright line of symmetry alone",
    "Turn the paper on its side. Is there another line of symmetry?",
)
TWICE = Misconception(
    "geometry.symmetry-lines-twice",
    "counts each line of symmetry once from each of its ends",
    "Draw each line right through the shape. How many have you drawn?",
)
CORNERS_ALONE = Misconception(
    "geometry.symmetry-corners-alone",
    "counts the lines through corners alone",
    "Is there a line of symmetry through the middle of a side?",
)
ORDER_FOR_LINES = Misconception(
    "geometry.symmetry-order-for-lines",
    "gives the order of rotational symmetry for the number of lines",
    "Do you turn the shape or fold it to find that out?",
)
LINES_FOR_ORDER = Misconception(
    "geometry.symmetry-lines-for-order",
    "gives the number of lines of symmetry for the order of rotational symmetry",
    "Do you turn the shape or fold it to find that out?",
)
FULL_TURN_LEFT_OUT = Misconception(
    "geometry.symmetry-full-turn-left-out",
    "does not count the full turn",
    "After a full turn, does it look the same? Does your count go as far as that?",
)
WHOLE_GRID = Misconception(
    "geometry.symmetry-whole-grid",
    "counts the lines of symmetry of the grid, whatever is shaded",
    "Fold along each of your lines. Does each shaded square fall on a shaded one?",
)
ALL_QUARTERS = Misconception(
    "geometry.symmetry-all-quarters",
    "counts all quarter turns, whether it looks the same or not",
    "Turn it by a quarter. Is every shaded part where a shaded part was?",
)
HALF_TURNS_ALONE = Misconception(
    "geometry.symmetry-half-turns-alone",
    "tries half turns alone",
    "Does it look the same even before it is upside down?",
)
SIDES = Misconception(
    "geometry.symmetry-sides",
    "gives the number of sides",
    "Trace the shape, with its shading. How often does it fall on itself?",
)
TURNED = Misconception(
    "geometry.symmetry-turned",
    "turns a square by half a turn instead of reflecting it",
    "Fold the paper along the line. On which square does the shaded one fall?",
)
OTHER_LINE = Misconception(
    "geometry.symmetry-other-line",
    "reflects a square in another line",
    "Where does the line of symmetry have to go? Which squares have no partner yet?",
)
REFLECTED_ACROSS = Misconception(
    "geometry.symmetry-reflected-across",
    "reflects a square in the upright line instead of turning it by half a turn",
    "Turn the paper upside down. Where is the shaded square now?",
)
REFLECTED_OVER = Misconception(
    "geometry.symmetry-reflected-over",
    "reflects a square in the level line instead of turning it by half a turn",
    "Turn the paper upside down. Is the shaded square still as far from the left?",
)
CHANGED_LETTER = Misconception(
    "geometry.symmetry-changed-letter",
    "takes a line x = a for level, and a line y = b for upright",
    "Name some points where x is that number. What line do they make?",
)
EDGE = Misconception(
    "geometry.symmetry-edge",
    "takes a line at the edge of the shape",
    "Fold along that line. Do the two halves match?",
)
ALWAYS_Y_X = Misconception(
    "geometry.symmetry-always-y-x",
    "takes every line that slants like y = x for y = x",
    "Does the line go through the origin? Name two points on it.",
)
GRADIENT_SIGN = Misconception(
    "geometry.symmetry-gradient-sign",
    "takes a line that falls for one that rises",
    "When x grows by 1 on that line, does y grow or get less?",
)

# Which moves leave a pattern as it is, what symmetry that makes, and how a teacher says it.
UPRIGHT_LINE = ((p.across,), Symmetry(1, 1))
LEVEL_LINE = ((p.over,), Symmetry(1, 1))
BOTH = ((p.across, p.over), Symmetry(2, 2))
HALF = ((p.half,), Symmetry(0, 2))
QUARTER = ((p.quarter,), Symmetry(0, 4))
DIAGONAL = ((p.swap,), Symmetry(1, 1))
OTHER_DIAGONAL = ((p.swap_back,), Symmetry(1, 1))
TWO_DIAGONALS = ((p.swap, p.swap_back), Symmetry(2, 2))
ALL = ((p.quarter, p.swap), Symmetry(4, 4))

_EASY = (UPRIGHT_LINE, LEVEL_LINE, BOTH)
_LINES = (DIAGONAL, OTHER_DIAGONAL, TWO_DIAGONALS, ALL, HALF, QUARTER)
_ORDERS = (HALF, QUARTER, BOTH, TWO_DIAGONALS, ALL)

_LINES_ASKED = ("How many lines of symmetry does the pattern have?",)
_ORDER_ASKED = ("What is the order of rotational symmetry of the pattern?",)


class _Core:
    """What is asked in the core tier."""

    LINES, ORDER, CUT_LINES, CUT_ORDER, SHAPE_LINES, SHAPE_ORDER = range(6)


def _support(kind: int, grid: int, way: int, seed: int) -> bool:
    """Keep patterns with upright and level lines alone, and regular polygons, each once."""
    if kind == 1:
        return grid == way == 0 and seed in NAMES
    moves, wanted = _EASY[way]
    return p.asked(p.GRIDS[grid], moves, seed, wanted)


def _cut(sides: int, seed: int) -> tuple[int, ...]:
    """Return triangles of a polygon that repeat round it, as far as its sides allow."""
    steps = [k for k in range(2, sides + 1) if sides % k == 0]
    step = steps[seed % len(steps)]
    row = scattered(seed, step, 0, 1)
    return tuple(k for k in range(sides) if row[k % step])


def _turns(sides: int, seed: int) -> Symmetry:
    dark = _cut(sides, seed)
    return of_turn([k in dark for k in range(sides)])


def _core(kind: int, which: int, way: int, seed: int) -> bool:
    if kind in (_Core.LINES, _Core.ORDER):
        rows = _LINES if kind == _Core.LINES else _ORDERS
        if which >= len(p.GRIDS) or way >= len(rows) or seed > 30:
            return False
        moves, wanted = rows[way]
        if which >= p.SQUARE and (kind == _Core.LINES or way not in (0, 2)):
            return False  # a rectangle has neither quarter turns nor diagonals
        return p.asked(p.GRIDS[which], moves, seed, wanted)
    if kind in (_Core.CUT_LINES, _Core.CUT_ORDER):
        if which not in (4, 5, 6, 8, 9, 10) or way:
            return False
        dark, found = _cut(which, seed), _turns(which, seed)
        # A row of triangles twice as long has the same shading: it is met with its first seed.
        new = all(_cut(which, before) != dark for before in range(1, seed))
        mixed = 1 < len(dark) < which - 1 and found.order > 1
        return new and mixed and (kind == _Core.CUT_ORDER or found.lines != which)
    if which >= len(SHAPES) or seed > 40:
        return False
    shape, (x, y) = SHAPES[which], _where(seed)
    corners = placed(shape.corners, (x, y))
    return (
        way == 0
        and inside(corners, gap=1)
        and (kind == _Core.SHAPE_LINES or shape.symmetry.order > 1)
    )


def _where(seed: int) -> Spot:
    x, y = unlike(seed, 2, -5, 5)
    return x, y


class _Hard:
    """What is asked in the challenge tier."""

    SQUARE, STRAIGHT, SLANTING = range(3)


_TO_MEND = (UPRIGHT_LINE, LEVEL_LINE, DIAGONAL, OTHER_DIAGONAL, HALF)
_MOVES = (p.across, p.over, p.swap, p.swap_back, p.half)


def _mended(which: int, way: int, seed: int) -> tuple[p.Cells, tuple[p.Cell, ...]] | None:
    """Return a shading that lacks one square, and four squares of which that is the first.

    The others are where the partner of the missing square goes by half a turn and by another
    reflection, and one more. None, where it cannot be asked.
    """
    grid = p.GRIDS[which]
    moves, wanted = _TO_MEND[way]
    whole = p.shading(grid, moves, seed)
    if not p.asked(grid, moves, seed, wanted):
        return None
    down, right = grid[0] - 1, grid[1] - 1
    gone = sorted(at for at in whole if moves[0](at, down, right) != at)
    free = [divmod(k, grid[1]) for k in range(grid[0] * grid[1])]
    free = [at for at in free if at not in whole]
    if not gone or len(free) < 3:
        return None
    lost = gone[seed % len(gone)]
    partner = moves[0](lost, down, right)
    turned = (p.across if way == 4 else p.half)(partner, down, right)
    other = p.over if way in (0, 4) else p.across
    reflected = other(partner, down, right)
    rest = [at for at in free if at not in (turned, reflected)]
    if turned == reflected or not {turned, reflected} <= {*free} or not rest:
        return None
    names = (lost, turned, reflected, rest[seed % len(rest)])
    cells = whole - {lost}
    for at in names[1:]:
        more = cells | {at}
        found, alone = of_cells(*grid, more), of_cells_alone(more)
        reached = (2 if way == 4 else 1) in (
            (found.order, alone.order) if way == 4 else (found.lines, alone.lines)
        )
        if reached:
            return None
    return cells, names


def _challenge(kind: int, which: int, way: int, seed: int) -> bool:
    if kind == _Hard.SQUARE:
        if which >= len(p.GRIDS) or seed > 70 or (which >= p.SQUARE and way in (2, 3)):
            return False
        return _mended(which, way, seed) is not None
    shapes = UPRIGHT if kind == _Hard.STRAIGHT else SLANTED
    if which >= len(shapes) or way > 1 or seed > 30:
        return False
    corners = _on_line(kind, which, way, seed)
    at = _rest(kind, way, seed)
    return at != 0 and inside(corners) and all(abs(y - x) < 11 for x, y in corners)


def _on_line(kind: int, which: int, way: int, seed: int) -> tuple[Spot, ...]:
    """Return a shape with one line of symmetry, which `way` turns over."""
    dx, dy = _where(seed)
    if kind == _Hard.STRAIGHT:
        shape = UPRIGHT[which]
        return placed(shape if way == 0 else tuple((y, x) for x, y in shape), (dx, dy))
    shape = SLANTED[which]
    return placed(shape if way == 0 else tuple((-x, y) for x, y in shape), (dx, dy))


def _rest(kind: int, way: int, seed: int) -> int:
    """Return the number in the equation of a line of symmetry: x or y = it, or y = ±x + it."""
    dx, dy = _where(seed)
    if kind == _Hard.STRAIGHT:
        return (dx, dy)[way]
    return dy - dx if way == 0 else dy + dx


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
            way=range(len(_EASY)),
            seed=range(1, 40),
        ),
        Tier.CORE: Space(
            _core, kind=range(6), which=range(len(SHAPES)), way=range(6), seed=range(1, 100)
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            which=range(max(len(UPRIGHT), len(SLANTED), len(p.GRIDS))),
            way=range(len(_TO_MEND)),
            seed=range(1, 100),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, which, way, seed = values
        if tier is Tier.SUPPORT:
            return _polygon(seed) if kind else _easy(which, way, seed)
        if tier is Tier.CORE:
            if kind in (_Core.LINES, _Core.ORDER):
                return _pattern(kind, which, way, seed)
            if kind in (_Core.CUT_LINES, _Core.CUT_ORDER):
                return _cut_polygon(kind, which, seed)
            return _shape(kind, which, seed)
        if kind == _Hard.SQUARE:
            return _square(which, way, seed)
        return _mirror(kind, which, way, seed)


def _easy(grid: int, way: int, seed: int) -> Draft:
    moves, found = _EASY[way]
    rows, columns = p.GRIDS[grid]
    figure = ShadedSquares(
        rows, columns, p.places(p.GRIDS[grid], p.shading(p.GRIDS[grid], moves, seed))
    )
    told = (
        "Only the upright line through the middle does.",
        "Only the level line through the middle does.",
        "The upright and the level line through the middle do.",
    )[way]
    return Draft(
        _LINES_ASKED,
        of_figure(figure, _LINES_ASKED),
        t.Int(found.lines),
        "integer",
        (Step(f"Which folds put each shaded square on a shaded one? {told}", t.Int(found.lines)),),
        slips(
            (DIAGONALS, found.lines + 2),
            (UPRIGHT_ALONE, 1 if way == 2 else None),
            (TWICE, 2 * found.lines),
            key=t.Int(found.lines),
        ),
        (rows, columns, *figure.shaded),
        figure=figure,
    )


def _polygon(sides: int) -> Draft:
    figure = CutPolygon(sides)
    text = (f"How many lines of symmetry does the {NAMES[sides]} have?",)
    told = (
        "Half of them go through two corners, half through the middles of two sides."
        if sides % 2 == 0
        else "Each goes through a corner and the middle of the side opposite."
    )
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(sides),
        "integer",
        (Step(f"A regular polygon has as many as it has sides. {told}", t.Int(sides)),),
        slips(
            (TWICE, 2 * sides),
            (CORNERS_ALONE, None if sides % 2 else sides // 2),
            (UPRIGHT_ALONE, 1),
        ),
        ("polygon", sides),
        figure=figure,
    )


_TOLD_LINES = (
    (0, 1, "One diagonal does, and the other does not."),
    (0, 1, "One diagonal does, and the other does not."),
    (0, 2, "Both diagonals do."),
    (2, 2, "Both diagonals do."),
    (0, 0, "Neither diagonal does."),
    (0, 0, "Neither diagonal does."),
)
"""How many upright and level lines, and how many diagonals, each of `_LINES` has."""


def _pattern(kind: int, grid: int, way: int, seed: int) -> Draft:
    lines = kind == _Core.LINES
    moves, found = (_LINES if lines else _ORDERS)[way]
    size = p.GRIDS[grid]
    figure = ShadedSquares(*size, p.places(size, p.shading(size, moves, seed)))
    text = _LINES_ASKED if lines else _ORDER_ASKED
    if lines:
        straight, slanting, told = _TOLD_LINES[way]
        first = (
            "The upright and the level line through the middle both do."
            if straight
            else "Neither the upright nor the level line through the middle does."
        )
        steps = [
            Step(f"Which lines fold the pattern onto itself? {first}"),
            Step(
                f"{told} Add them up.",
                t.equals(t.add(t.Int(straight), t.Int(slanting)), t.Int(found.lines)),
            ),
        ]
        wrong: list[tuple[Misconception, int | None]] = [
            (NO_DIAGONALS, straight),
            (DIAGONALS, straight + 2),
            (ORDER_FOR_LINES, found.order),
            (TWICE, 2 * found.lines),
            (WHOLE_GRID, 4),
        ]
        key = found.lines
    else:
        key = found.order
        steps = (
            [
                Step("It looks the same after each quarter of a turn."),
                Step("There are 4 of them in a full turn.", t.Int(4)),
            ]
            if key == 4
            else [
                Step("After a quarter of a turn it does not look the same, after half a turn yes."),
                Step("There are 2 half turns in a full turn.", t.Int(2)),
            ]
        )
        wrong = [
            (LINES_FOR_ORDER, found.lines),
            (FULL_TURN_LEFT_OUT, key - 1),
            (ALL_QUARTERS, 4),
            (HALF_TURNS_ALONE, 2),
        ]
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(key),
        "integer",
        tuple(steps),
        slips(*wrong, key=t.Int(key)),
        (kind, *size, *figure.shaded),
        figure=figure,
    )


def _cut_polygon(kind: int, sides: int, seed: int) -> Draft:
    figure, found = CutPolygon(sides, _cut(sides, seed)), _turns(sides, seed)
    # The upright line goes through the corner at the top, and through a square's middle.
    turn = 3 if sides == 4 else sides
    upright = all(((turn - 1 - k) % sides in figure.shaded) for k in figure.shaded)
    text = _LINES_ASKED if kind == _Core.CUT_LINES else _ORDER_ASKED
    if kind == _Core.CUT_LINES:
        key = found.lines
        works = (
            "On none of them does shading fall on shading."
            if not key
            else f"On {counted(key, 'line')} of them shading falls on shading."
        )
        steps = [
            Step(f"Try each line of symmetry of the polygon: there are {sides}."),
            Step(works, t.Int(key)),
        ]
        wrong: list[tuple[Misconception, int | None]] = [
            (SIDES, sides),
            (TWICE, 2 * key),
            (ORDER_FOR_LINES, found.order),
            (UPRIGHT_ALONE, int(upright)),
        ]
    else:
        key = found.order
        each = sides // key
        steps = [
            Step(f"The shading repeats every {counted(each, 'triangle')}."),
            Step(
                f"How often does that fit into {sides}?",
                t.equals(t.divide(t.Int(sides), t.Int(each)), t.Int(key)),
            ),
        ]
        wrong = [
            (SIDES, sides),
            (FULL_TURN_LEFT_OUT, key - 1),
            (LINES_FOR_ORDER, found.lines),
        ]
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(key),
        "integer",
        tuple(steps),
        slips(*wrong, key=t.Int(key)),
        (kind, sides, *figure.shaded),
        figure=figure,
    )


def _upright(corners: tuple[Spot, ...]) -> int:
    """Return 1 where the corners have an upright line of symmetry, else 0."""
    ends = min(x for x, _ in corners) + max(x for x, _ in corners)
    return int({(ends - x, y) for x, y in corners} == {*corners})


def _shape(kind: int, which: int, seed: int) -> Draft:
    shape = SHAPES[which]
    corners = placed(shape.corners, _where(seed))
    figure = picture((outline(corners, "P"),))
    lines, order = shape.symmetry
    if kind == _Core.SHAPE_LINES:
        text: tuple[Run, ...] = ("How many lines of symmetry does shape P have?",)
        key, why = lines, shape.why
        wrong: list[tuple[Misconception, int | None]] = [
            (ORDER_FOR_LINES, order),
            (TWICE, 2 * lines),
            (DIAGONALS, 2 if len(corners) == 4 and not lines else None),
            (DIAGONALS, 4 if "rectangle" in shape.name else None),
            (SIDES, len(corners)),
            (UPRIGHT_ALONE, _upright(corners)),
        ]
    else:
        text = ("What is the order of rotational symmetry of shape P?",)
        key, why = order, shape.turn
        wrong = [
            (LINES_FOR_ORDER, lines),
            (FULL_TURN_LEFT_OUT, order - 1),
            (SIDES, len(corners)),
            (HALF_TURNS_ALONE, 2),
        ]
    return Draft(
        text,
        of_figure(figure, text),
        t.Int(key),
        "integer",
        (Step(f"P is {shape.name}."), Step(why, t.Int(key))),
        slips(*wrong, key=t.Int(key)),
        (kind, corners),
        figure=figure,
    )


def _square(which: int, way: int, seed: int) -> Draft:
    made = _mended(which, way, seed)
    assert made is not None
    cells, names = made
    size = p.GRIDS[which]
    letters = dict(zip(sorted(names), "ABCD", strict=True))
    lettered = tuple((letters[at], at[0] * size[1] + at[1]) for at in sorted(letters))
    figure = ShadedSquares(*size, p.places(size, cells), lettered)
    lost, turned, reflected, _ = names
    partner = _MOVES[way](lost, size[0] - 1, size[1] - 1)
    if way == 4:
        text = prompt(
            "Which square should be shaded as well, so that the pattern has rotational symmetry "
            "of order {n}?",
            n=t.Int(2),
        )
        wrong = slips(
            (REFLECTED_ACROSS, t.Label(letters[turned])),
            (REFLECTED_OVER, t.Label(letters[reflected])),
        )
        by, goes = "half a turn", "turns to"
    else:
        text = prompt(
            "Which square should be shaded as well, so that the pattern has exactly {n} line of "
            "symmetry?",
            n=t.Int(1),
        )
        wrong = slips((TURNED, t.Label(letters[turned])), (OTHER_LINE, t.Label(letters[reflected])))
        by = (
            "a fold along the upright line through the middle",
            "a fold along the level line through the middle",
            "a fold along the diagonal from the top left corner",
            "a fold along the diagonal from the top right corner",
        )[way]
        goes = "falls on"
    key = t.Label(letters[lost])
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        (
            Step(f"By {by} all shaded squares but one get a shaded partner."),
            Step(
                f"The one without is square {partner[1] + 1} of row {partner[0] + 1}, "
                "counted from the top left."
            ),
            Step(f"That one {goes} square {letters[lost]}.", key),
        ),
        wrong,
        (way, *size, *figure.shaded, *lettered),
        figure=figure,
    )


def _mirror(kind: int, which: int, way: int, seed: int) -> Draft:
    corners = _on_line(kind, which, way, seed)
    figure = picture((outline(corners, "P"),))
    text = ("Write down the equation of the line of symmetry of shape P.",)
    rest, x, y = _rest(kind, way, seed), t.Sym("x"), t.Sym("y")
    if kind == _Hard.STRAIGHT:
        own, other = (x, y) if way == 0 else (y, x)
        key = t.equals(own, t.num(rest))
        edge = min(corner[way] for corner in corners)
        wrong = slips(
            (CHANGED_LETTER, t.equals(other, t.num(rest))), (EDGE, t.equals(own, t.num(edge)))
        )
        upright = "upright" if way == 0 else "level"
        steps = (
            Step("Fold P so that its halves match: corners fall on corners or stay."),
            Step(f"The fold is {'an' if way == 0 else 'a'} {upright} line."),
            Step(f"The corners that stay have {'xy'[way]} = {rest}.".replace("-", "−"), key),
        )
    else:
        sign = way == 0

        def line(rising: bool, at: int) -> t.Relation:
            first: t.Node = x if rising else t.Neg(x)
            if not at:
                return t.equals(y, first)
            size = t.Int(abs(at))
            return t.equals(y, t.add(first, size) if at > 0 else t.sub(first, size))

        key = line(sign, rest)
        wrong = slips((GRADIENT_SIGN, line(not sign, rest)), (ALWAYS_Y_X, line(sign, 0)))
        steps = (
            Step("Fold P so that its halves match: corners fall on corners or stay."),
            Step(
                "Going along the fold, y grows by 1 when x grows by 1."
                if sign
                else "Going along the fold, y gets less by 1 when x grows by 1."
            ),
            Step(f"It crosses the y-axis at {str(rest).replace('-', '−')}.", key),
        )
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "subject",
        steps,
        wrong,
        (kind, way, corners),
        figure=figure,
    )
