"""The second road to sets told in words: sympy's sets, and the asked one put together inside out.

Importing this module imports sympy.
"""

from __future__ import annotations

import re
from typing import Any

import sympy
from sympy.ntheory import divisors, primerange

from itembank.items.asks.members import Members, SetSaid
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found

_DASHED = re.compile(r"<(\d+)>′")
_IN_BRACKETS = re.compile(r"\(<(\d+)>\)")
_MET = re.compile(r"(?<!∪)<(\d+)>∩<(\d+)>(?![′∪])")
_JOINED = re.compile(r"(?<!∩)<(\d+)>∪<(\d+)>(?![′∩])")


def members(ask: Members, key: t.Node) -> Finding:
    """Return the members of the set that is asked for, or how many, and whether the key is that."""
    low, high = ask.low.n, ask.high.n
    if not 0 <= low < high:
        raise NotExact("the universal set is none that is worked out here")
    whole = sympy.FiniteSet(*range(low, high + 1))
    values = [sympy.Intersection(whole, _told(named, high)) for named in ask.sets]
    text = "".join(ask.asked.text.split())
    for number, named in enumerate(ask.sets):
        text = text.replace(named.name, f"<{number}>")
    value = values[_put_together(text, values, whole)]
    if ask.detail == "count":
        return found(str(len(value)), key, key == t.Int(len(value)))
    if value.is_empty:
        raise NotExact("there are no members to list")
    ours = ", ".join(map(str, sorted(value)))
    nodes = key.parts if isinstance(key, t.Listing) and not key.brackets else (key,)
    given = [sympy.Integer(node.n) for node in nodes if isinstance(node, t.Int)]
    right = len(given) == len(nodes) == len(value) and sympy.FiniteSet(*given) == value
    return found(ours, key, bool(right))


def _told(told: SetSaid, high: int) -> Any:
    numbers = [sympy.Integer(node.n) for node in told.of if isinstance(node, t.Int)]
    if len(numbers) < len(told.of) or any(number < 0 for number in numbers):
        raise NotExact("a set is told by whole numbers")
    number = numbers[0] if numbers else None
    match told.rule:
        case "listed":
            if len({*numbers}) < len(numbers) or max(numbers) > high:
                raise NotExact("what is listed is not in the universal set, or stands there twice")
            return sympy.FiniteSet(*numbers)
        case "multiple":
            return sympy.FiniteSet(*sympy.Range(0, high + 1, number))
        case "factor":
            return sympy.FiniteSet(*divisors(number))
        case "even":
            return sympy.FiniteSet(*sympy.Range(0, high + 1, 2))
        case "odd":
            return sympy.FiniteSet(*sympy.Range(1, high + 1, 2))
        case "prime":
            return sympy.FiniteSet(*primerange(high + 1))
        case "square":
            return sympy.FiniteSet(*(sympy.Integer(k) ** 2 for k in range(1, high + 1)))
        case "less":
            return sympy.Interval.Ropen(0, number)
        case "greater":
            return sympy.Interval.Lopen(number, sympy.oo)
    raise NotExact(f"there is no set told as ‘{told.rule}’")


def _put_together(text: str, values: list[Any], whole: Any) -> int:
    """Return the place of the set that a text comes to, in which <2> is the set at place 2."""
    while (single := re.fullmatch(r"<(\d+)>", text)) is None:
        for pattern in (_IN_BRACKETS, _DASHED, _MET, _JOINED):
            if match := pattern.search(text):
                places = [int(place) for place in match.groups()]
                if pattern is not _IN_BRACKETS:
                    values.append(_made(pattern, [values[place] for place in places], whole))
                    places = [len(values) - 1]
                text = f"{text[: match.start()]}<{places[0]}>{text[match.end() :]}"
                break
        else:
            raise NotExact("the set that is asked for is not understood")
    place = int(single[1])
    if place >= len(values):
        raise NotExact("a set is asked for that is not told")
    return place


def _made(pattern: re.Pattern[str], parts: list[Any], whole: Any) -> Any:
    if pattern is _DASHED:
        return sympy.Complement(whole, *parts)
    return (sympy.Intersection if pattern is _MET else sympy.Union)(*parts)
