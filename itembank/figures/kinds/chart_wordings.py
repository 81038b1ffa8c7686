"""The ways in which charts and tables of counts are asked about.

>>> import re
>>> from itembank.figures.figure import Reading
>>> found = re.fullmatch(VALUE, "How many trays were sold on Monday", re.IGNORECASE)
>>> found["name"]
'Monday'
"""

from __future__ import annotations

import re
from typing import Any

from itembank.figures.figure import (
    Asked,
    FigureError,
    Reading,
    Wording,
    asks_reading,
    read,
)
from itembank.notation import tree as t
from itembank.notation.value import exact

_TURNS = (
    "more|fewer|less|not|no|altogether|total|all|each|other|than|or|and|except|without|"
    "average|mean|most|least|half|twice|both"
)
"""Words that would make it another question."""
_WORD = rf"(?:(?!(?:{_TURNS})\b)[\w’'-]+ )"
_AT = r"(?:on|in|at|for|from|by|with|chose|choose|like|like the|have|has|had|of)"
_NAME = r"[\w&’' -]{1,24}?"
VALUE = rf"how many {_WORD}{{1,8}}?{_AT} (?:the )?(?P<name>{_NAME})"
_DIFFERENCE = (
    rf"how many (?P<way>more|fewer) {_WORD}{{1,8}}?{_AT} (?:the )?(?P<first>{_NAME}) "
    rf"than (?:{_AT} )?(?:the )?(?P<second>{_NAME})"
)
_TOTAL = (
    rf"how many {_WORD}{{1,8}}?(?:altogether|in total|in all)|"
    rf"(?:what is|work out|find) the total(?: number of {_WORD}{{0,4}}?[\w’'-]+)?"
)
_BEST = (
    rf"(?:{_AT} )?which \w+ {_WORD}{{0,6}}?(?:the )?(?P<way>most|fewest|least|highest|lowest|"
    r"largest|smallest|greatest)(?: [\w’' -]{1,40})?"
)


def _both(figure: Any, found: re.Match[str]) -> Asked:
    """Return a difference: by how much the first is more, or fewer, than the second."""
    first, second = (Reading("value", (found[name],)) for name in ("first", "second"))
    apart = exact(read(figure, first)) - exact(read(figure, second))
    more = found["way"].casefold() == "more"
    if (apart > 0) != more or not apart:
        raise FigureError(
            f"it does not show {found['way']} of ‘{found['first']}’ than of the other"
        )
    a, b = t.Sym("a"), t.Sym("b")
    target = t.add(a, t.Neg(b)) if more else t.add(b, t.Neg(a))
    return Asked(target, (("a", first), ("b", second)))


_LOW = frozenset({"fewest", "least", "lowest", "smallest"})


def _best(figure: Any, found: re.Match[str]) -> Asked:
    name = "smallest" if found["way"].casefold() in _LOW else "largest"
    return Asked(t.Sym("r"), (("r", Reading(name)),))


CHART_WORDINGS = (
    Wording(_DIFFERENCE, _both),
    Wording(_TOTAL, asks_reading("total")),
    Wording(_BEST, _best),
    Wording(VALUE, asks_reading("value", "name")),
)
"""Tried in this order: what asks for more than one value comes first."""
