"""Two-way tables: a missing cell, found by totals of rows and columns, in one step or several.

England's programme of study for key stage 3 (2013) asks pupils to "construct and interpret
frequency tables", and to enumerate sets "systematically, using tables" (from memory).
"""

from __future__ import annotations

from typing import Any, NamedTuple

from generators._scatter import unlike
from generators.statistics import _chart_mistakes as m
from generators.statistics._charts import Wrongs
from generators.statistics._tables_in_brief import BRIEF
from itembank.figures.kinds.table.two_way_table import TwoWayTable
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import in_full


class _Story(NamedTuple):
    """Rows and columns, what is shown, and how a cell and the total of a row are asked for."""

    rows: tuple[str, str]
    columns: tuple[str, str, str]
    shows: str
    cell: str
    row: str
    column: str


_STORIES = (
    _Story(
        ("juniors", "adults"), ("Mon", "Tue", "Wed"), "who came to a swimming club",
        "How many {r} came on {c}?", "How many {r} came altogether?",
        "How many people came on {c} altogether?",
    ),
    _Story(
        ("novels", "comics"), ("Mon", "Tue", "Wed"), "the books that a library lent",
        "How many {r} were lent on {c}?", "How many {r} were lent altogether?", "",
    ),
    _Story(
        ("7M", "8K"), ("bus", "car", "bike"), "how pupils came to school",
        "How many pupils in {r} came by {c}?", "How many pupils are in {r}?",
        "How many pupils came by {c} altogether?",
    ),
    _Story(
        ("red", "pink"), ("roses", "tulips", "daisies"), "the flowers in a garden",
        "How many {r} {c} are there?", "", "How many {c} are there altogether?",
    ),
    _Story(
        ("boys", "girls"), ("chess", "choir", "drama"), "the clubs that children chose",
        "How many {r} chose {c}?", "How many {r} are there altogether?",
        "How many children chose {c} altogether?",
    ),
)  # fmt: skip

_NARROW = (2, 3, 4)
"""The stories whose names are short enough for a larger table."""

_Cell = tuple[int, int]
_Along = tuple[str, int, int]
"""A row or a column, and the cell in it that it settles."""


class _Pattern(NamedTuple):
    """The cells that are given, and how the last one is found: row 2 and column n are totals.

    A table of three columns is printed with rows and columns changed over, since it is narrower so.
    """

    columns: int
    given: tuple[_Cell, ...]
    steps: tuple[_Along, ...]


_ONE = (
    _Pattern(2, ((0, 0), (0, 2), (1, 0), (1, 1), (1, 2), (2, 0), (2, 1), (2, 2)), (("row", 0, 1),)),
    _Pattern(2, ((0, 0), (0, 1), (0, 2), (1, 1), (1, 2), (2, 0), (2, 1), (2, 2)), (("row", 1, 0),)),
    _Pattern(2, ((0, 0), (0, 1), (1, 0), (1, 1), (1, 2), (2, 0), (2, 1), (2, 2)), (("row", 0, 2),)),
    _Pattern(2, ((0, 0), (0, 1), (0, 2), (1, 0), (1, 1), (1, 2), (2, 0), (2, 2)), (("col", 1, 2),)),
)
_TWO = (
    _Pattern(2, ((0, 2), (2, 2), (1, 0)), (("col", 2, 1), ("row", 1, 1))),
    _Pattern(2, ((0, 0), (0, 1), (1, 2)), (("row", 0, 2), ("col", 2, 2))),
    _Pattern(2, ((2, 0), (2, 2), (0, 1)), (("row", 2, 1), ("col", 1, 1))),
    _Pattern(3, ((0, 0), (0, 1), (0, 3), (1, 2)), (("row", 0, 2), ("col", 2, 2))),
    _Pattern(3, ((2, 0), (2, 1), (2, 3), (0, 2)), (("row", 2, 2), ("col", 2, 1))),
)
_MANY = (
    _Pattern(2, ((2, 2), (0, 2), (0, 0), (2, 0)), (("col", 0, 1), ("col", 2, 1), ("row", 1, 1))),
    _Pattern(
        3,
        ((2, 3), (0, 3), (0, 0), (0, 1), (2, 2), (1, 0)),
        (("row", 0, 2), ("col", 2, 1), ("col", 3, 1), ("row", 1, 1)),
    ),
    _Pattern(
        3,
        ((2, 3), (1, 3), (0, 0), (0, 1), (1, 2)),
        (("col", 3, 0), ("row", 0, 2), ("col", 2, 2)),
    ),
)
_PATTERNS = {Tier.SUPPORT: _ONE, Tier.CORE: _TWO, Tier.CHALLENGE: _MANY}


def _grid(columns: int, story: int, seed: int) -> list[list[int]]:
    """Return a table with its totals."""
    numbers = unlike(story + len(_STORIES) * seed, 2 * columns, 6, 29)
    rows = [list(numbers[:columns]), list(numbers[columns:])]
    rows.append([a + b for a, b in zip(*rows, strict=True)])
    return [[*row, sum(row)] for row in rows]


def _cells(pattern: _Pattern, along: _Along) -> tuple[list[_Cell], _Cell, _Cell]:
    """Return the parts of a row or column, its total, and the cell it settles."""
    kind, place, at = along
    if kind == "row":
        parts = [(place, c) for c in range(pattern.columns)]
        return parts, (place, pattern.columns), (place, at)
    return [(r, place) for r in range(2)], (2, place), (at, place)


def _kept(tier: Tier, which: int, story: int, seed: int) -> bool:
    patterns = _PATTERNS[tier]
    if which >= len(patterns):
        return False
    pattern = patterns[which]
    if pattern.columns == 3 and story not in _NARROW:
        return False
    grid = _grid(pattern.columns, story, seed)
    target = _cells(pattern, pattern.steps[-1])[2]
    if tier is Tier.SUPPORT:
        told = _STORIES[story]
        if (target[1] == 2 and not told.row) or (target[0] == 2 and not told.column):
            return False
    value = grid[target[0]][target[1]]
    wrong = [w for _, w in _wrongs(pattern, grid)]
    return value not in wrong and len({*wrong}) == len(wrong) >= 2


def _wrongs(pattern: _Pattern, grid: list[list[int]]) -> list[tuple[Any, int]]:
    parts, total, target = _cells(pattern, pattern.steps[-1])
    known = [grid[r][c] for r, c in parts if (r, c) != target]
    found: list[tuple[Any, int]]
    if target == total:
        found = [(m.SUBTRACTS_FOR_TOTAL, abs(known[0] - known[1])), (m.ONE_CELL, max(known))]
    else:
        whole = grid[total[0]][total[1]]
        found = [(m.ADDS_TO_TOTAL, whole + sum(known)), (m.GIVES_TOTAL, whole)]
    if len(pattern.steps) > 1:
        before = _cells(pattern, pattern.steps[-2])[2]
        between = grid[before[0]][before[1]]
        if between not in [w for _, w in found]:
            found.append((m.STOPS_BETWEEN, between))
    return found


@register
class TwoWayTables(Topic):
    """A cell found from its row or column; then by way of one other cell, and of several."""

    id = "statistics.two-way-tables"
    title = "Two-way tables"
    statements = ("statistics.charts", "probability.sets")
    misconceptions = (
        *(m.SUBTRACTS_FOR_TOTAL, m.ONE_CELL, m.ADDS_TO_TOTAL, m.GIVES_TOTAL, m.STOPS_BETWEEN),
    )
    spaces = {
        Tier.SUPPORT: Space(
            lambda which, story, seed: _kept(Tier.SUPPORT, which, story, seed),
            which=range(4),
            story=range(len(_STORIES)),
            seed=range(1, 24),
        ),
        Tier.CORE: Space(
            lambda which, story, seed: _kept(Tier.CORE, which, story, seed),
            which=range(5),
            story=range(len(_STORIES)),
            seed=range(1, 26),
        ),
        Tier.CHALLENGE: Space(
            lambda which, story, seed: _kept(Tier.CHALLENGE, which, story, seed),
            which=range(3),
            story=range(len(_STORIES)),
            seed=range(1, 40),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_brief(spaces, BRIEF)
    spaces = kinds.with_working_spotted(
        spaces,
        "statistics.two-way-tables",
        kinds.working_goes_wrong(
            {m.ADDS_TO_TOTAL: (e.turned,), m.SUBTRACTS_FOR_TOTAL: (e.turned,)}
        ),
    )
    spaces = kinds.with_people_asked(spaces, "statistics.two-way-tables", 20)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        which, story, seed = values
        pattern, told = _PATTERNS[tier][which], _STORIES[story]
        grid = _grid(pattern.columns, story, seed)
        row, column = _cells(pattern, pattern.steps[-1])[2]
        x = t.Sym("x")
        letter = None if tier is Tier.SUPPORT else x
        cells: list[list[t.Node | None]] = [
            [t.Int(n) if (r, c) in pattern.given else None for c, n in enumerate(line)]
            for r, line in enumerate(grid)
        ]
        cells[row][column] = letter
        columns = told.columns[: pattern.columns]
        figure = (
            TwoWayTable(told.rows, columns, tuple(map(tuple, cells)))
            if pattern.columns == 2
            else TwoWayTable(columns, told.rows, tuple(zip(*cells, strict=True)))
        )
        lead = f"The table shows {told.shows}."
        if tier is Tier.SUPPORT:
            ask = told.row if column == pattern.columns else told.column if row == 2 else told.cell
            ask = ask.replace("{r}", (*told.rows, "")[row]).replace(
                "{c}", in_full((*columns, "")[column])
            )
            text = prompt(f"{lead} {ask}")
        else:
            text = prompt(f"{lead} Work out the value of {{x}}.", x=x)
        value = grid[row][column]
        key = t.Int(value) if tier is Tier.SUPPORT else t.equals(x, t.Int(value))
        steps = [_step(pattern, told, grid, along) for along in pattern.steps]
        wrongs: Wrongs = [
            (mistake, wrong if tier is Tier.SUPPORT else t.equals(x, t.Int(wrong)))
            for mistake, wrong in _wrongs(pattern, grid)
        ]
        if tier is not Tier.SUPPORT:
            steps.append(Step("This is the cell with x.", key))
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "integer" if tier is Tier.SUPPORT else "solution",
            tuple(steps),
            slips(*wrongs, key=key),
            (which, story, *(n for line in grid for n in line)),
            figure=figure,
        )


def _step(pattern: _Pattern, told: _Story, grid: list[list[int]], along: _Along) -> Step:
    """Return how one row or column settles one of its cells."""
    kind, place, _ = along
    parts, total, target = _cells(pattern, along)
    names = (*told.rows, "Total") if kind == "row" else (*told.columns[: pattern.columns], "Total")
    known = [t.Int(grid[r][c]) for r, c in parts if (r, c) != target]
    value, whole = t.Int(grid[target[0]][target[1]]), t.Int(grid[total[0]][total[1]])
    across = (kind == "row") == (pattern.columns == 2)
    where = f"{'Row' if across else 'Column'} {names[place]}"
    if target == total:
        return Step(f"{where}: add to find the total.", t.equals(t.add(*known), value))
    return Step(f"{where}: subtract from the total.", t.equals(t.sub(whole, *known), value))
