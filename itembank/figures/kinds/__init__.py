"""The kinds of figure, one file a kind; :mod:`itembank.figures.figure` says what a kind is.

A kind stands in the table when its file is imported. Most commands meet a kind or two, so that
files are loaded as they are needed: name a new one here.
"""

from itembank.figures.kinds import angles as angles
from itembank.figures.kinds import balance as balance
from itembank.figures.kinds import bar_chart as bar_chart
from itembank.figures.kinds import bar_model as bar_model
from itembank.figures.kinds import circle as circle
from itembank.figures.kinds import coordinate_grid as coordinate_grid
from itembank.figures.kinds import cut_polygon as cut_polygon
from itembank.figures.kinds import double_number_line as double_number_line
from itembank.figures.kinds import frequency_table as frequency_table
from itembank.figures.kinds import function_machine as function_machine
from itembank.figures.kinds import growing_pattern as growing_pattern
from itembank.figures.kinds import line_graph as line_graph
from itembank.figures.kinds import number_line as number_line
from itembank.figures.kinds import pictogram as pictogram
from itembank.figures.kinds import pie_chart as pie_chart
from itembank.figures.kinds import polygon as polygon
from itembank.figures.kinds import prism as prism
from itembank.figures.kinds import probability_table as probability_table
from itembank.figures.kinds import sample_space as sample_space
from itembank.figures.kinds import shaded_shape as shaded_shape
from itembank.figures.kinds import shaded_squares as shaded_squares
from itembank.figures.kinds import tree_diagram as tree_diagram
from itembank.figures.kinds import two_way_table as two_way_table
from itembank.figures.kinds import venn_diagram as venn_diagram
from __future__ import annotations

import re
from importlib import import_module

MODULES = (
    "angles",
    "balance",
    "bar_chart",
    "bar_model",
    "circle",
    "coordinate_grid",
    "double_number_line",
    "frequency_table",
    "function_machine",
    "growing_pattern",
    "line_graph",
    "number_line",
    "pictogram",
    "pie_chart",
    "polygon",
    "prism",
    "probability_table",
    "sample_space",
    "shaded_shape",
    "tree_diagram",
    "two_way_table",
    "venn_diagram",
)
"""The files of this folder that hold a kind, each named as its kind is in files."""


def module_of(name: str) -> str:
    """Return the file that a kind's name stands for.

    >>> module_of("Venn diagram"), module_of("two-way table")
    ('venn_diagram', 'two_way_table')
    """
    return re.sub("[ -]", "_", name.casefold())


def load(name: str) -> None:
    """Load the kind that is called so in files, if there is one."""
    if (module := module_of(name)) in MODULES:
        import_module(f"{__name__}.{module}")


def load_all() -> None:
    """Load every kind."""
    for module in MODULES:
        import_module(f"{__name__}.{module}")
