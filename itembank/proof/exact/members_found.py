"""The first road to sets told in words: every number of the universal set is tried."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import isqrt

from itembank.items.asks.members import DASH, MEET, UNION, Members, SetSaid
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.claim.finding import Finding, found

MOST = 1000
"""The most numbers of a universal set."""

Held = frozenset[int]


def find_members(ask: Members, key: t.Node) -> Finding:
    """Return the members of the set that is asked for, or how many, and whether the key is that.

    Raises
    ------
    NotExact
        If the set has no members to list, is written in more than one sense, or a number of a
        rule is none that it can be about.

    >>> from itembank.notation import parse
    >>> from itembank.notation.tree import Int, Label
    >>> sets = (SetSaid("A", "multiple", (Int(3),)), SetSaid("B", "even"))
    >>> ask = Members(Int(1), Int(12), sets, Label("A ∩ B"), "list")
    >>> find_members(ask, parse("12, 6")).fault, find_members(ask, parse("3, 6")).fault
    ('', 'it comes to 6, 12, the key says 3, 6')
    """
    held = members_of(ask)[-1]
    if ask.detail == "count":
        return found(t.Int(len(held)), key, key == t.Int(len(held)))
    if not held:
        raise NotExact("there are no members to list")
    numbers = tuple(map(t.Int, sorted(held)))
    ours = t.Listing(numbers) if len(numbers) > 1 else numbers[0]
    given = numbers_in(key)
    return found(ours, key, given is not None and len(given) == len(held) and {*given} == held)


def numbers_in(answer: t.Node) -> list[int] | None:
    """Return the whole numbers of an answer, or None where it holds anything else."""
    parts = answer.parts if isinstance(answer, t.Listing) and not answer.brackets else (answer,)
    numbers = [part.n for part in parts if isinstance(part, t.Int)]
    return numbers if len(numbers) == len(parts) else None


def members_of(ask: Members) -> list[Held]:
    """Return the members of every set that is told, of the parts of the one asked for, and of it.

    Raises
    ------
    NotExact
        As for :func:`find_members`.
    """
    low, high = ask.low.n, ask.high.n
    if not 0 <= low < high <= low + MOST:
        raise NotExact("the universal set is none that is tried here")
    whole = frozenset(range(low, high + 1))
    told = {named.name: frozenset(filter(_rule(named, whole), whole)) for named in ask.sets}
    parts = [*told.values()]
    signs = [sign for sign in ask.asked.text if not sign.isspace()]
    value, rest = _read(signs, told, whole, parts)
    if rest:
        raise NotExact(f"‘{ask.asked.text}’ is not understood as a set")
    return [*parts, value]


def _rule(told: SetSaid, whole: Held) -> Callable[[int], bool]:
    numbers = [node.n for node in told.of if isinstance(node, t.Int)]
    if len(numbers) < len(told.of):
        raise NotExact("a set is told by whole numbers")
    if told.rule == "listed":
        if not {*numbers} <= whole or len({*numbers}) < len(numbers):
            raise NotExact("what is listed is not in the universal set, or stands there twice")
        return numbers.__contains__
    if told.rule in ("multiple", "factor") and numbers[0] < 1:
        raise NotExact("multiples and factors are those of a whole number above 0")
    tried: dict[str, Callable[[int], bool]] = {
        "multiple": lambda n: n % numbers[0] == 0,
        "factor": lambda n: n > 0 and numbers[0] % n == 0,
        "even": lambda n: n % 2 == 0,
        "odd": lambda n: n % 2 == 1,
        "prime": lambda n: n > 1 and all(n % k for k in range(2, n)),
        "square": lambda n: n > 0 and isqrt(n) ** 2 == n,
        "less": lambda n: n < numbers[0],
        "greater": lambda n: n > numbers[0],
    }
    return tried[told.rule]


def _read(
    signs: list[str], told: dict[str, Held], whole: Held, parts: list[Held]
) -> tuple[Held, list[str]]:
    """Return the members of what the signs begin with, and the signs that are left.

    ∩ and ∪ in one row without brackets have two senses.
    """
    value, rest = _single(signs, told, whole, parts)
    joined = ""
    while rest and rest[0] in (MEET, UNION):
        if joined and rest[0] != joined:
            raise NotExact("∩ and ∪ stand in one row without brackets")
        joined = rest[0]
        parts.append(value)
        following, rest = _single(rest[1:], told, whole, parts)
        parts.append(following)
        value = value & following if joined == MEET else value | following
    return value, rest


def _single(
    signs: list[str], told: dict[str, Held], whole: Held, parts: list[Held]
) -> tuple[Held, list[str]]:
    match signs:
        case ["(", *inside]:
            value, rest = _read(inside, told, whole, parts)
            if not rest or rest[0] != ")":
                raise NotExact("a bracket of a set is not closed")
            rest = rest[1:]
        case [name, *rest] if name in told:
            value = told[name]
        case _:
            raise NotExact("a set is asked for that is not told")
    for _ in _dashes(rest):
        parts.append(value)
        value = whole - value
    return value, rest[len([*_dashes(rest)]) :]


def _dashes(signs: list[str]) -> Iterator[str]:
    for sign in signs:
        if sign != DASH:
            return
        yield sign


def member_fault(ask: Members, line: t.Node) -> str:
    """Return what is wrong with a line of working: a list of one of the sets, or the answer.

    >>> from itembank.notation import parse
    >>> from itembank.notation.tree import Int, Label
    >>> sets = (SetSaid("A", "multiple", (Int(4),)), SetSaid("B", "even"))
    >>> ask = Members(Int(1), Int(9), sets, Label("A′ ∩ B"), "count")
    >>> [member_fault(ask, parse(text)) for text in ("4, 8", "2, 6", "2", "2, 4")]
    ['', '', '', 'is none of the sets of the question']
    """
    sets = members_of(ask)
    numbers = numbers_in(line)
    if ask.detail == "count" and numbers == [len(sets[-1])]:
        return ""
    held = numbers is not None and len({*numbers}) == len(numbers) and {*numbers} in sets
    return "" if held else "is none of the sets of the question"
