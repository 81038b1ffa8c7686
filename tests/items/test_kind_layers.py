"""What the kinds name for each layer is there, is what it needs, and lies where it belongs."""

from __future__ import annotations

import inspect
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import fields, replace
from typing import Any, NamedTuple, get_args, get_type_hints

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.task_given import Given
from itembank.bank.question.key_form import Answers
from itembank.items.asks import KINDS, Ask, Kind, Layers
from itembank.items.asks.handlers import TABLES, resolved
from itembank.items.item import Item
from itembank.items.measures.difficulty_by_kind import Asking
from itembank.items.measures.later_content import LATER
from itembank.items.measures.years import Content
from itembank.marking.telling.tried import TRYING
from itembank.marking.worth.marked_by_kind import MARKING, Marking
from itembank.notation import tree as t
from itembank.proof import likely_mistakes
from itembank.proof.claim import finding, key_fits, printed, repeats
from itembank.proof.exact import exact_road
from itembank.proof.exact.key_forms import FormRules
from itembank.proof.lines import line_rules
from itembank.proof.sympy import sympy_road


class Needed(NamedTuple):
    """What a layer needs: something in one of its folders, a value or a function."""

    folders: tuple[str, ...]
    gives: object
    """What the function returns, or the class of the value; None where it may be anything."""
    beside: object = None
    """What the function gets beside the question; None for a value."""


NEEDED = {
    "first_road": Needed(("proof.exact",), finding.Finding, t.Node),
    "second_road": Needed(("proof.sympy", "proof.measured"), finding.Finding, t.Node),
    "working": Needed(("proof.lines", "proof.exact"), str, t.Node),
    "bank": Needed(("bank.question",), Answers),
    "printed": Needed(("proof.claim",), str, Item),
    "fitting": Needed(("proof.claim",), str, t.Node),
    "measuring": Needed(("proof.claim",), str, t.Node),
    "repeating": Needed(("proof.claim",), bool, Item),
    "forms": Needed(("proof.exact",), FormRules),
    "worth": Needed(("proof",), None, t.Node),
    "marking": Needed(("marking",), Marking),
    "trying": Needed(("marking",), str, t.Node),
    "difficulty": Needed(("items.measures",), Asking),
    "later": Needed(("items.measures",), Content | None, Item),
}


def named(kind: Kind) -> Iterator[tuple[str, str]]:
    """Yield each layer that a kind names something for, and the name."""
    for layer in NEEDED:
        if name := getattr(kind.layers, layer):
            yield layer, name


def outside(name: str, folders: tuple[str, ...]) -> str:
    """Return a sentence where a name lies in none of some folders, or ``""``."""
    module = name.partition(":")[0]
    if any(module.startswith(f"itembank.{folder}.") for folder in folders):
        return ""
    return f"{name} lies outside {' and '.join(folders)}"


def signature_fault(function: Any, gets: tuple[object, ...], gives: object) -> str:
    """Return how a function is not one from what it gets to what it gives, or ``""``.

    What mypy cannot see through a name, it has seen at the function, which says what it takes.
    """
    if not inspect.isfunction(function):
        return "is no function"
    hints = get_type_hints(function)
    returned = hints.pop("return", None)
    if len(hints) != len(gets) or len(inspect.signature(function).parameters) != len(gets):
        return f"does not take {len(gets)} arguments of a type that it states"
    for told, given in zip(hints.values(), gets, strict=True):
        taken = get_args(told) or (told,)
        fits = isinstance(given, type) and any(issubclass(given, kind) for kind in taken)
        if told != given and not fits:
            return f"takes {told}, and gets {given}"
    return "" if gives is None or returned == gives else f"returns {returned}, not {gives}"


def fault_of(kind: Kind, layer: str, name: str) -> str:
    """Return what is wrong with what a kind names for a layer, or ``""``."""
    needed = NEEDED[layer]
    if parting := outside(name, needed.folders):
        return parting
    try:
        handler = resolved(name)
    except (ImportError, AttributeError) as error:
        return f"{name} is not there: {error}"
    if needed.beside is None:
        assert isinstance(needed.gives, type)
        return "" if isinstance(handler, needed.gives) else f"{name} is no {needed.gives.__name__}"
    fault = signature_fault(handler, (kind.ask, needed.beside), needed.gives)
    return fault and f"{name} {fault}"


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_what_a_kind_names_is_what_its_layer_needs(kind: Kind) -> None:
    assert [fault for layer, name in named(kind) if (fault := fault_of(kind, layer, name))] == []
    for task, name in kind.layers.tasks:
        assert outside(name, ("bank.question",)) == "", task
        assert signature_fault(resolved(name), (BankItem, Given), Ask) == "", task


@pytest.mark.parametrize(
    ("layer", "name", "fault"),
    [
        ("first_road", "itembank.proof.exact.cards:find_od", "is not there"),
        ("first_road", "itembank.proof.exact.card:find_odd", "is not there"),
        ("first_road", "itembank.proof.sympy.sympy_cards:odd_one_out", "lies outside"),
        ("second_road", "itembank.proof.exact.cards:find_odd", "lies outside"),
        ("first_road", "itembank.proof.exact.cards:find_pairs", "and gets"),
        ("first_road", "itembank.proof.exact.cards:odd_place", "does not take 2 arguments"),
        ("first_road", "itembank.proof.exact.key_forms:FOUND", "is no function"),
        ("working", "itembank.proof.exact.cards:find_odd", "returns"),
        ("bank", "itembank.bank.question.key_form:default_form", "is no Answers"),
        ("printed", "itembank.proof.claim.key_fits:found_measures", "and gets"),
    ],
)
def test_a_name_that_does_not_do_is_told(layer: str, name: str, fault: str) -> None:
    kind = KINDS["odd one out"]
    wrong = replace(kind, layers=replace(kind.layers, **{layer: name}))
    assert fault in fault_of(wrong, layer, getattr(wrong.layers, layer))
    right = getattr(kind.layers, layer)
    assert not right or fault_of(kind, layer, right) == ""


def test_every_layer_that_a_kind_may_name_has_a_table_that_reads_it() -> None:
    tables = (
        *(exact_road.ROAD, sympy_road.ROAD, line_rules.RULES, printed.PRINTED),
        *(key_fits.FITTING, key_fits.MEASURING, repeats.REPEATING, likely_mistakes.WORTH),
        *(MARKING, TRYING, LATER),
    )
    for table in tables:
        assert TABLES[table.name] is table
    assert set(TABLES) == set(NEEDED)
    assert {field.name for field in fields(Layers)} == {*NEEDED, "tasks"}


def test_the_two_roads_share_no_module() -> None:
    first, second = (
        {getattr(kind.layers, road).partition(":")[0] for kind in KINDS.values()}
        for road in ("first_road", "second_road")
    )
    assert first & second == set()


def test_no_first_road_loads_sympy_or_measures_a_drawing() -> None:
    """A name is no import that a contract sees, so this is looked at in a process of its own."""
    program = """
import sys
from itembank.items.asks import KINDS
from itembank.items.asks.handlers import resolved
for kind in KINDS.values():
    resolved(kind.layers.first_road), resolved(kind.layers.working)
second = ("sympy", "itembank.proof.sympy.", "itembank.proof.measured.")
print([name for name in sys.modules if name.startswith(second)])
"""
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"


def test_to_know_the_kinds_loads_no_layer() -> None:
    program = """
import sys
import itembank.items.asks
above = ("itembank.proof", "itembank.marking", "itembank.bank", "itembank.items.measures")
print([name for name in sys.modules if name.startswith(above)])
"""
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
