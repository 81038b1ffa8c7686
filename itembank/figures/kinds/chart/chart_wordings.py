"""How charts and tables of counts are asked about: one reader for all of them.

>>> import re
>>> from itembank.figures.kinds.chart.pictogram import Pictogram
>>> trays = Pictogram(("Monday", "Tuesday"), (8, 10), 4, "trays")
>>> wording = counts_wording(lambda figure: Shown(figure.categories, (), figure.what))
>>> question = "How many more trays were sold on Tuesday than on Monday"
>>> found = re.fullmatch(wording.pattern, question, re.IGNORECASE)
>>> [reading.of for _, reading in wording.asks(trays, found).readings]
[('Tuesday',), ('Monday',)]
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from itembank.figures.figure import Asked, Wording
from itembank.figures.kinds.chart.chart_names import Shown, asked, with_sizes

SORTS = (
    "day week month year class group kind sort plant fruit flower dish colour sport route way "
    "bar row"
)
"""What the things are that categories name, in a question such as *which day*."""


def counts_wording(shown: Callable[[Any], Shown]) -> Wording:
    """Return the wording that reads a question about counts whole, by what a figure shows."""

    def asks(figure: Any, found: re.Match[str]) -> Asked:
        return with_sizes(figure, asked(shown(figure), found["all"]), found["all"])

    return Wording(
        r"(?P<all>(?:how many|what fraction|what (?:is|was) the (?:total|difference)|which|"
        r"(?:on|in|at|for|by) which|find|work out) .+)",
        asks,
    )
