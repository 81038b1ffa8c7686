"""List or count the members of a set that is made of two sets told in words."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Nodes, Stored, detail, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t

RULES: dict[str, tuple[int, str]] = {
    "listed": (0, "the members are told one by one"),
    "multiple": (1, "multiples of {}"),
    "factor": (1, "factors of {}"),
    "even": (0, "even numbers"),
    "odd": (0, "odd numbers"),
    "prime": (0, "prime numbers"),
    "square": (0, "square numbers"),
    "less": (1, "numbers less than {}"),
    "greater": (1, "numbers greater than {}"),
}
"""How a set is told: how many numbers its rule speaks of, and how it is said. Prime and square
numbers and factors are whole numbers above 0 (common practice in schools, no source)."""

UNION, MEET, DASH = "∪", "∩", "′"


@dataclass(frozen=True, slots=True)
class SetSaid:
    """A set with its letter and its rule; `of` holds the rule's number, or all that is listed."""

    name: str
    rule: str
    of: Nodes = ()


@dataclass(frozen=True, slots=True)
class Members(Ask):
    """Which whole numbers from `low` to `high` belong to `asked`, or how many: *list*, *count*.

    `asked` is written with the letters of `sets`, ∩, ∪, ′ for what is not in a set, and brackets.
    """

    low: t.Int
    high: t.Int
    sets: tuple[SetSaid, ...]
    asked: t.Label
    detail: Literal["list", "count"]


def _trees(ask: Members) -> Nodes:
    return (ask.low, ask.high, *(node for named in ask.sets for node in named.of), ask.asked)


def _store(ask: Members) -> Stored:
    return Stored(
        (ask.low, ask.high, ask.asked),
        detail=ask.detail,
        conditions=tuple((f"{named.name} {named.rule}", named.of) for named in ask.sets),
    )


def _restore(stored: Stored) -> Members:
    match stored.target:
        case (t.Int() as low, t.Int() as high, t.Label() as asked):
            sets = tuple(map(_set_said, stored.conditions))
            return Members(low, high, sets, asked, detail(stored, "members", ("list", "count")))
    raise t.NotationError("a set has a least and a greatest number, and is told by letters")


def _set_said(data: tuple[str, tuple[t.Node, ...]]) -> SetSaid:
    name, _, rule = data[0].partition(" ")
    if rule not in RULES or (rule != "listed" and len(data[1]) != RULES[rule][0]):
        raise t.NotationError(f"there is no set told as ‘{data[0]}’")
    return SetSaid(name, rule, data[1])


def _twin(ask: Members, form: str) -> tuple[tuple[str, ...], Nodes, Nodes]:
    """Return what tells a question from others: the letters of its sets do not."""
    letters = {ord(named.name): f"<{place}>" for place, named in enumerate(ask.sets)}
    signs = "".join(ask.asked.text.split()).translate(letters)
    return (
        ("members", ask.detail, signs, *(named.rule for named in ask.sets)),
        _trees(ask)[:-1],
        (),
    )


MEMBERS = register_kind(
    Kind(
        "members",
        Members,
        trees=_trees,
        store=_store,
        restore=_restore,
        twin=_twin,
        does="list or count the members of a set",
        conditions=True,
        layers=Layers(
            first_road="itembank.proof.exact.members_found:find_members",
            second_road="itembank.proof.sympy.sympy_members:members",
            working="itembank.proof.exact.members_found:member_fault",
            bank="itembank.bank.question.key_form:MEMBERS",
            printed="itembank.proof.claim.printed:members_unprinted",
            difficulty="itembank.items.measures.difficulty_by_kind:MEMBERS",
        ),
    )
)
