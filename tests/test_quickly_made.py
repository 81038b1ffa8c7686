"""Values that are made quickly are the values that a frozen dataclass makes."""

import copy
import inspect
import pickle
from dataclasses import FrozenInstanceError, dataclass, field, fields, make_dataclass, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.quickly_made import quickly_made

NAMES = [f"part_{place}" for place in range(6)]


@given(st.lists(st.one_of(st.none(), st.integers()), min_size=1, max_size=6), st.data())
def test_a_class_made_quickly_holds_what_a_dataclass_holds(defaults, data):
    # Those without a default come first, as in any function.
    defaults.sort(key=lambda default: default is not None)
    spec = [
        (name, object) if default is None else (name, object, field(default=default))
        for name, default in zip(NAMES, defaults, strict=False)
    ]
    plain = make_dataclass("Plain", spec, frozen=True, slots=True)
    quick = quickly_made(make_dataclass("Plain", spec, frozen=True, slots=True))
    least = sum(default is None for default in defaults)
    count = data.draw(st.integers(least, len(spec)))
    by_name = data.draw(st.integers(0, count))
    given_values = [object() for _ in range(count)]
    at = given_values[: count - by_name]
    named = dict(zip(NAMES[count - by_name :], given_values[count - by_name :], strict=False))
    one, other = plain(*at, **named), quick(*at, **named)
    assert [getattr(one, f.name) for f in fields(one)] == [
        getattr(other, f.name) for f in fields(other)
    ]
    assert hash(one) == hash(other)
    assert repr(one) == repr(other)
    assert inspect.signature(plain) == inspect.signature(quick)
    for wrong in ({"strange": 1}, {NAMES[0]: 1, "strange": 2}):
        with pytest.raises(TypeError):
            quick(**wrong)


def test_nodes_and_items_stay_as_they_are_made():
    node = t.Dec("1", "5")
    with pytest.raises(FrozenInstanceError):
        node.whole = "2"
    assert replace(node, recurring="3") == t.Dec("1", "5", "3")
    assert pickle.loads(pickle.dumps(node)) == copy.deepcopy(node) == node
    assert node.__class__.__init__ is not t.Int.__init__
    with pytest.raises(TypeError):
        Item("only", "few")


@pytest.mark.parametrize(
    "kind",
    [
        dataclass(frozen=True)(type("NoSlot", (), {"__annotations__": {"n": int}})),
        make_dataclass("Factory", [("n", list, field(default_factory=list))], slots=True),
        make_dataclass("Named", [("n", int)], slots=True, kw_only=True),
        make_dataclass(
            "After", [("n", int)], slots=True, namespace={"__post_init__": lambda self: None}
        ),
    ],
    ids=lambda kind: kind.__name__,
)
def test_a_class_that_needs_more_is_refused(kind):
    with pytest.raises(TypeError, match="cannot be made quickly"):
        quickly_made(kind)
