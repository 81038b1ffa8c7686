"""A kind of question is a slice: one registration, and every layer has what it needs."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

import pytest

from itembank.bank.question.canonical import canonical
from itembank.bank.question.key_form import ANSWERS
from itembank.cli.words.wrapped import item_text
from itembank.errors import CheckFailed
from itembank.items.asks import (
    KINDS,
    Ask,
    Find,
    Handlers,
    Kind,
    Layers,
    Order,
    Stored,
    asked,
    kind_of,
    register_kind,
)
from itembank.items.asks.ask_kind import only
from itembank.items.asks.handlers import forget_kind
from itembank.items.item import Item, Misconception, Slip, Step, Tier
from itembank.items.topics.registry import find_topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.packs.data.convert import Faces, pack_item
from itembank.packs.data.pack_item import PackItem
from itembank.packs.data.read_back import read_item
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.claim.finding import Finding, found
from itembank.proof.exact.exact_road import ROAD as EXACT
from itembank.proof.item_audit import TopicAudit, check_item
from itembank.proof.lines.line_rules import RULES
from itembank.proof.sympy.sympy_road import ROAD as SYMPY

REQUIRED = ("first_road", "second_road", "working", "bank")


@pytest.mark.parametrize("layer", REQUIRED)
def test_every_kind_has_a_handler_in_every_layer_that_cannot_do_without(layer: str) -> None:
    table = {"first_road": EXACT, "second_road": SYMPY, "working": RULES, "bank": ANSWERS}[layer]
    assert list(table.without()) == []
    assert table.otherwise is None


def test_every_wording_of_a_bank_sets_a_task_that_there_is() -> None:
    from itembank.bank.model.tasks import TASKS as STATED
    from itembank.bank.question.tasks.task_named import task_names
    from itembank.wording.tasks.heads import HEADS

    # Which of several is largest is made a choice before any task is looked up.
    assert {head.task for head in HEADS} - {"extreme"} <= set(task_names())
    assert set(STATED) - {"choose"} <= set(task_names())
    assert len(task_names()) == len(set(task_names()))


def test_every_kind_is_named_once_and_comes_back_from_its_data() -> None:
    topics = ("fractions.between", "equations.inequalities", "ratio.best-value", "fractions.order")
    seen = set()
    for name in topics:
        item = find_topic(name).item(Tier.CORE, 3)
        kind = kind_of(item.ask)
        assert kind.restore(kind.store(item.ask)) == item.ask
        seen.add(kind.name)
    assert seen == {"give", "inequality", "choose", "order"}
    assert [kind.name for kind in KINDS.values()] == list(KINDS)


# A kind that exists in this test only.


@dataclass(frozen=True, slots=True)
class Remainder(Ask):
    """What is left over when one whole number is divided by another."""

    left: t.Node
    right: t.Node


def left_over(ask: Remainder, key: t.Node) -> Finding:
    ours = t.Int(int(exact(ask.left) % exact(ask.right)))
    return found(ours, key, ours == key)


def left_over_by_sympy(ask: Remainder, key: t.Node) -> Finding:
    import sympy

    from itembank.notation.symbolic import to_sympy

    ours = sympy.Mod(to_sympy(ask.left), to_sympy(ask.right))
    return found(str(ours), key, bool(ours == to_sympy(key)))


def line_fault(ask: Remainder, line: t.Node) -> str:
    raise t.NotationError("only true lines of numbers are lines of working here")


def _restored(stored: Stored) -> Remainder:
    left, right = only(stored, 2)
    return Remainder(left, right)


REMAINDER = Kind(
    "remainder",
    Remainder,
    trees=lambda ask: (ask.left, ask.right),
    store=lambda ask: Stored((ask.left, ask.right)),
    restore=_restored,
    twin=lambda ask, form: (("remainder",), (ask.left, ask.right), ()),
    does="find a remainder",
    layers=Layers(
        first_road=f"{__name__}:left_over",
        second_road=f"{__name__}:left_over_by_sympy",
        working=f"{__name__}:line_fault",
        bank="itembank.bank.question.key_form:COMMON",
    ),
)


def naming(**names: str) -> Kind:
    """Return the kind with other names for what layers do with it."""
    return replace(REMAINDER, layers=replace(REMAINDER.layers, **names))


@pytest.fixture(autouse=True)
def _none_is_left() -> Iterator[None]:
    yield
    if "remainder" in KINDS:
        forget_kind("remainder")


@pytest.fixture
def remainder() -> Kind:
    return register_kind(REMAINDER)


def _item(key: str = "2") -> Item:
    left, right = t.Int(17), t.Int(5)
    slips = (
        Slip(Misconception("test.quotient", "gives the quotient", "What is left over?"), t.Int(3)),
        Slip(Misconception("test.other", "takes one away", "What is left over?"), t.Int(12)),
    )
    working = t.equals(left, t.add(t.times(t.Int(3), right), t.Int(2)))
    return Item(
        "test.left-over/core/0",
        "test.left-over",
        Tier.CORE,
        ("Find the remainder when ", left, " is divided by ", right, "."),
        Remainder(left, right),
        parse(key),
        "integer",
        (Step("Three fives are 15.", working),),
        slips,
        ("17 by 5",),
        1,
        (),
    )


def test_a_new_kind_works_from_end_to_end(remainder: Kind) -> None:
    item = _item()
    prove_fast(item)
    prove_symbolic(item)
    report = TopicAudit("test.left-over")
    check_item(item, report, symbolic=True)
    assert report.sound, report.faults
    assert "Find the remainder when 17 is divided by 5." in item_text(1, item)
    assert [mark(item, text).verdict for text in ("2", "3", "4")] == [
        Verdict.RIGHT,
        Verdict.KNOWN,
        Verdict.WRONG,
    ]
    assert canonical(item.ask) == canonical(Remainder(t.Int(17), t.Int(5)))
    assert canonical(item.ask) != canonical(Remainder(t.Int(5), t.Int(17)))


def test_a_new_kind_is_written_to_a_pack_and_read_back(remainder: Kind) -> None:
    item = _item()
    packed = pack_item(item, find_topic("ratio.share"), Faces(), title="Remainders")
    stored = PackItem.model_validate_json(packed.model_dump_json())
    assert stored.ask.kind == "remainder"
    assert read_item(stored).ask == item.ask
    prove_fast(read_item(stored))


def test_a_wrong_key_of_a_new_kind_is_found_by_each_road(remainder: Kind) -> None:
    for prove in (prove_fast, prove_symbolic):
        with pytest.raises(CheckFailed, match="it comes to 2, the key says 3"):
            prove(_item("3"))


def test_what_a_new_kind_is_about_has_to_be_printed(remainder: Kind) -> None:
    item = replace(_item(), prompt=("Find the remainder when ", t.Int(17), " is divided."))
    with pytest.raises(CheckFailed, match="uses 5, which the prompt does not print"):
        prove_fast(item)


@pytest.mark.parametrize(
    ("road", "prove", "says"),
    [("first_road", prove_fast, "exact arithmetic"), ("second_road", prove_symbolic, "sympy")],
)
def test_a_kind_without_a_road_is_refused_and_named(
    road: str, prove: Callable[[Item], None], says: str
) -> None:
    register_kind(naming(**{road: ""}))
    with pytest.raises(CheckFailed, match=f"{says} cannot do questions to find a remainder"):
        prove(_item())
    assert "remainder" in {"first_road": EXACT, "second_road": SYMPY}[road].without()


def test_a_kind_that_is_taken_out_leaves_nothing(remainder: Kind) -> None:
    prove_fast(_item())
    forget_kind("remainder")
    for table in (EXACT, RULES):
        with pytest.raises(t.NotationError, match="Remainder is no kind of question"):
            table.of(_item().ask)


@pytest.mark.parametrize(
    ("name", "why"),
    [
        (f"{__name__}:left_ovr", "has no attribute 'left_ovr'"),
        ("itembank.proof.exact.remaindres:left_over", "No module named"),
        ("left_over", "has no attribute"),
    ],
)
@pytest.mark.parametrize("road", [EXACT, SYMPY])
def test_a_name_that_is_not_there_is_told_with_its_kind(
    road: Handlers[Any], name: str, why: str
) -> None:
    register_kind(naming(first_road=name, second_road=name))
    with pytest.raises(ImportError, match=f"the kind 'remainder' names '{name}' as its") as told:
        road.of(_item().ask)
    assert road.name in str(told.value)


def test_two_kinds_cannot_have_one_name() -> None:
    find = KINDS["find"]
    with pytest.raises(ValueError, match="two kinds of question are called 'find'"):
        register_kind(replace(find, ask=Order))
    assert asked(Find(t.Int(2))) == (t.Int(2),)
