"""The kinds of figure, one file a kind; :mod:`itembank.figures.figure` says what a kind is.

Each family has a folder. What several families use stands above them: how labels are placed
(``labels``), symmetry, a letter that is asked for and what follows from equations. Charts stand on
the grid, tables on charts, chance on both, sets on charts; no other family knows another.

A kind stands in the table when its file is imported. Most commands meet a kind or two, so that
files are loaded as they are needed: name a new one here.
"""

from __future__ import annotations

import re
from importlib import import_module

MODULES = (
    "plane.angles",
    "number.balance",
    "chart.bar_chart",
    "number.bar_model",
    "table.bus_timetable",
    "plane.circle",
    "construction.construction",
    "grid.coordinate_grid",
    "solid.cube_plan",
    "symmetry.cut_polygon",
    "solid.cylinder",
    "number.double_number_line",
    "table.frequency_table",
    "number.function_machine",
    "number.growing_pattern",
    "chart.line_graph",
    "solid.net",
    "number.number_line",
    "chart.pictogram",
    "chart.pie_chart",
    "plane.polygon",
    "solid.prism",
    "chance.probability_table",
    "chance.sample_space",
    "chart.scatter_graph",
    "sets.shaded_sets",
    "number.shaded_shape",
    "symmetry.shaded_squares",
    "solid.solid",
    "chance.tree_diagram",
    "plane.two_triangles",
    "table.two_way_table",
    "sets.venn_diagram",
)
"""The files below this folder that hold a kind, each named as its kind is in files."""
_BY_NAME = {module.rpartition(".")[2]: module for module in MODULES}


def file_of(name: str) -> str:
    """Return what the file of a kind is called, in whatever folder it stands.

    >>> file_of("Venn diagram")
    'venn_diagram'
    """
    return re.sub("[ -]", "_", name.casefold())


def module_of(name: str) -> str:
    """Return the file that a kind's name stands for, by its family, or ``""``.

    >>> module_of("Venn diagram"), module_of("two-way table"), module_of("picture")
    ('sets.venn_diagram', 'table.two_way_table', '')
    """
    return _BY_NAME.get(file_of(name), "")


def load(name: str) -> None:
    """Load the kind that is called so in files, if there is one."""
    if module := module_of(name):
        import_module(f"{__name__}.{module}")


def load_all() -> None:
    """Load every kind."""
    for module in MODULES:
        import_module(f"{__name__}.{module}")
