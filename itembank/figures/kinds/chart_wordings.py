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
VALUE = rf"how many (?P<text>{_WORD}{{1,8}}?){_AT} (?:the )?(?P<name>{_NAME})"
_DIFFERENCE = (
    rf"how many (?P<way>more|fewer) (?P<text>{_WORD}{{1,8}}?){_AT} (?:the )?(?P<first>{_NAME}) "
    rf"than (?:{_AT} )?(?:the )?(?P<second>{_NAME})"
)
_TOTAL = (
    rf"how many (?P<text>{_WORD}{{1,5}}?)(?:altogether|in total|in all)|"
    r"(?:what is|work out|find) the total(?: number of (?P<of>[\w’' -]{1,40}))?"
)
_BEST = (
    r"(?:on |in |at )?which \w+ (?:has |had |sold |shows |was |is |were |did )?(?:the )?"
    r"(?P<way>most|fewest|least|highest|lowest|largest|smallest|greatest)"
    r"(?: (?P<text>[\w’' -]{1,40}))?"
)


_BINDING = (
    "a and are at be been by came choose chose counted did do each for from had has have "
    "in is it like liked made many number of on pick picked planted seen shown sold swam "
    "swim taken that the there they this used walk was were which who with worked"
)
BINDING = frozenset(_BINDING.split())
"""Words that may stand in a question and change nothing in it."""


def _own(figure: Any) -> frozenset[str]:
    """Return the words with which a figure says what it counts."""
    said = [getattr(figure, name, "") for name in ("counts", "title", "what", "heading")]
    return frozenset(re.findall(r"[\w’'-]+", " ".join(said).casefold()))


def held(figure: Any, text: str) -> None:
    """Refuse a question that counts something else than its figure, or says more than is known.

    Raises
    ------
    FigureError
        If the first word is none that the figure has for what it counts, or another word could
        make it another question.
    """
    own = _own(figure)
    noun, *others = re.findall(r"[\w’'-]+", text.casefold()) or [""]
    if noun not in own:
        raise FigureError(f"it does not say that it counts ‘{noun}’")
    strange = [word for word in others if word not in own and word not in BINDING]
    if strange:
        raise FigureError(f"‘{strange[0]}’ is not understood in a question about it")


def _both(figure: Any, found: re.Match[str]) -> Asked:
    """Return a difference: by how much the first is more, or fewer, than the second."""
    held(figure, found["text"])
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


def _total(figure: Any, found: re.Match[str]) -> Asked:
    if said := found["text"] or found["of"]:
        held(figure, said)
    if len(getattr(figure, "series", ())) > 1:
        raise FigureError("it is not clear which of its series the total is of")
    return Asked(t.Sym("r"), (("r", Reading("total")),))


def _value(figure: Any, found: re.Match[str]) -> Asked:
    held(figure, found["text"])
    return Asked(t.Sym("r"), (("r", Reading("value", (found["name"],))),))


def _best(figure: Any, found: re.Match[str]) -> Asked:
    if found["text"]:
        held(figure, found["text"])
    name = "smallest" if found["way"].casefold() in _LOW else "largest"
    return Asked(t.Sym("r"), (("r", Reading(name)),))


CHART_WORDINGS = (
    Wording(_DIFFERENCE, _both),
    Wording(_TOTAL, _total),
    Wording(_BEST, _best),
    Wording(VALUE, _value),
)
"""Tried in this order: what asks for more than one value comes first."""
