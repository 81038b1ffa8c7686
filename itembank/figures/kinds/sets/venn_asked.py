"""How a Venn diagram is asked about in words: how many are where, and how likely it is.

Who is counted stands nowhere on the diagram, so that a question may call them as it likes; but
*how many more*, *how many sets* and, of members that are shown, *how many primes* ask other things.
"""

from __future__ import annotations

import re
from typing import Any

from itembank.figures.figure import Asked, FigureError, Reading, Said, Wording
from itembank.figures.kinds.chart.chart_held import COUNTED_PEOPLE
from itembank.notation import tree as t

_MEMBERS = frozenset(("number", "numbers", "member", "members", "element", "elements"))
_OTHER_THINGS = _MEMBERS | frozenset(
    re.findall(
        r"\w+",
        "more fewer less many much sets set circles circle regions region parts sections percent "
        "percentage pairs groups classes lessons teams languages tens hundreds dozens names labels "
        "out times ways most least other others only just also never not no neither always "
        "sometimes perhaps rarely hardly nearly almost exactly half twice",
    )
)
"""What a question may count instead of those who are in the sets; and how they do what they do,
where it does not say who: *how many only play tennis* does not ask how many play it."""
_WHOLE = COUNTED_PEOPLE | frozenset(
    re.findall(r"\w+", "family house houses household households visitor guest animals shops cars")
)
"""Who may be counted where no set is named: *how many pupils are there*, but not *languages*."""
_WITHOUT_S = COUNTED_PEOPLE | frozenset(("staff", "folk", "sheep", "fish", "geese", "mice"))
"""Many who are counted without an s; another word without one (*cannot*, *solely*) is no name of
theirs, but says how they do it."""


def _held(asks: Said, whole: bool = False) -> Said:
    """Return what a wording asks, held to who it counts."""

    def held(figure: Any, found: re.Match[str]) -> Asked:
        who = (found.groupdict().get("who") or "").casefold()
        own = {name.casefold() for name in (figure.first, figure.second)}
        named = {*own, *(name.removesuffix("s") for name in own)}
        if figure.members:
            wrong = bool(who) and who not in _MEMBERS
        else:
            wrong = (
                who in _OTHER_THINGS | named
                or who.removesuffix("s") in own
                or (whole and bool(who) and who not in _WHOLE)
                or not (who == "" or who.endswith("s") or who in _WITHOUT_S)
            )
        if wrong:
            raise FigureError(f"it does not show how many ‘{who}’ there are")
        return asks(figure, found)

    return held


def _reading(what: str) -> Said:
    return lambda figure, found: Asked(t.Sym("r"), (("r", Reading(what)),))


def _of_set(what: str) -> Said:
    def asks(figure: Any, found: re.Match[str]) -> Asked:
        return Asked(t.Sym("r"), (("r", Reading(what, (_named(figure, found["a"]),))),))

    return asks


def _of_two(what: str) -> Said:
    def asks(figure: Any, found: re.Match[str]) -> Asked:
        if _named(figure, found["a"]) == _named(figure, found["b"]):
            raise FigureError("it asks for one set twice")
        return Asked(t.Sym("r"), (("r", Reading(what)),))

    return asks


def _named(figure: Any, text: str) -> str:
    name: str
    for name in (figure.first, figure.second):
        if name.casefold() == text.strip("{} ").casefold():
            return name
    raise FigureError(f"no set of it is called ‘{text}’")


_MANY = r"how many(?: of the)?(?: (?P<who>[a-z]+))?"
_DO = "like|have|study|play|do|take|chose|own"
_WHO = rf"{_MANY} (?:are in|are|is|{_DO})"
_NOT = rf"{_MANY} (?:are not in|are not|do not (?:{_DO}|choose))"
_A, _B = r"(?P<a>\{?[a-z][a-z ]*?\}?)", r"(?P<b>\{?[a-z][a-z ]*?\}?)"


def _wording(pattern: str, asks: Said, whole: bool = False) -> Wording:
    return Wording(pattern, _held(asks, whole))


COUNTS = (
    _wording(
        r"how many(?: (?P<who>[a-z]+))? are (?:there|shown)(?: altogether| in total| in all)?",
        _reading("total"),
        whole=True,
    ),
    _wording(rf"{_WHO} neither {_A} nor {_B}", _of_two("neither")),
    _wording(rf"{_MANY} are in neither(?: set)?", _reading("neither")),
    _wording(rf"{_MANY} are in both(?: sets)?", _reading("both")),
    _wording(rf"{_WHO} (?:both )?{_A} and {_B}", _of_two("both")),
    _wording(rf"{_WHO} {_A} or {_B},? or both", _of_two("either")),
    _wording(rf"{_WHO} only {_A}", _of_set("only in")),
    _wording(rf"{_WHO} {_A} only", _of_set("only in")),
    _wording(rf"{_NOT} {_A}", _of_set("not in")),
    _wording(rf"{_WHO} {_A}", _of_set("in")),
)
"""How it is asked how many are in a set, in both, in neither."""
_VERBS = {
    "is": "are", "likes": "like", "has": "have", "studies": "study", "plays": "play", "does": "do",
    "takes": "take", "chose": "chose", "owns": "own",
}  # fmt: skip
"""The verbs of one, and of many."""


def _chance(figure: Any, found: re.Match[str]) -> Asked:
    """Return how likely it is that one of all of them does what could be counted of many."""
    who = found["who"].casefold()
    if who not in _OTHER_THINGS | _WITHOUT_S and not who.endswith("s"):
        who += "s"  # one of them is told, and many are counted
    count = f"how many {who} {_VERBS[found['verb'].casefold()]} {found['rest']}"
    for wording in COUNTS:
        if match := re.fullmatch(wording.pattern, count, re.IGNORECASE):
            ((_, reading),) = wording.asks(figure, match).readings
            if reading.name == "total":
                break
            parts = (("r", reading), ("n", Reading("total")))
            return Asked(t.Frac(t.Sym("r"), t.Sym("n")), parts)
    raise FigureError(f"‘{found[0]}’ is not understood as a question about its sets")


def chance_of_sets(figure: Any, found: re.Match[str]) -> Asked:
    """Return how likely it is that one of all of them is in a set in symbols."""
    sets = found["sets"] or found["other"]
    parts = (("r", Reading("count", (sets,))), ("n", Reading("total")))
    return Asked(t.Frac(t.Sym("r"), t.Sym("n")), parts)


CHANCE = Wording(
    r"(?:what is|find|work out) the probability that (?:the|a|an|this) (?P<who>[a-z]+) "
    rf"(?P<verb>{'|'.join(_VERBS)}) (?P<rest>.+)",
    _chance,
)
"""How it is asked how likely it is that one of them is where many could be counted."""
