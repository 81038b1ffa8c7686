"""Dataclasses that are made quickly are what Python's own are."""

import copy
import dataclasses
import inspect
import pickle
import subprocess
import sys
import typing

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.data_class import dataclass
from itembank.items.item import Item
from itembank.notation import tree as t

NAMES = ["name", "self_", "field_0", "other", "place", "field_1"]
"""Names of fields, those among them that the methods are first written with."""

OWN = {
    "__eq__": lambda self, other: True,
    "__hash__": lambda self: 7,
    "__repr__": lambda self: "shown",
    "__post_init__": lambda self: seen.append(self),
}
"""What a class may say for itself."""

seen: list[object] = []


def both(defaults, own=()):
    """Return two classes with the same fields: as Python makes one, and as one is made here."""
    told = {"__annotations__": dict.fromkeys(NAMES[: len(defaults)], "object")}
    told |= {"__module__": __name__, "__doc__": "Some fields."}
    told |= {n: v for n, v in zip(NAMES, defaults, strict=False) if v is not None}
    told |= {name: OWN[name] for name in own}
    return [
        make(frozen=True, slots=True)(type("Kind", (), dict(told)))
        for make in (dataclasses.dataclass, dataclass)
    ]


@given(
    st.lists(st.one_of(st.none(), st.integers()), max_size=6),
    st.sets(st.sampled_from(sorted(OWN))),
    st.data(),
)
def test_a_class_made_quickly_is_as_pythons_own(defaults, own, data):
    # Those without a default come first, as in any function.
    defaults.sort(key=lambda default: default is not None)
    kinds = plain, quick = both(defaults, own)
    least = sum(default is None for default in defaults)
    count = data.draw(st.integers(least, len(defaults)))
    by_name = data.draw(st.integers(0, count))
    values = data.draw(st.lists(st.integers(0, 2), min_size=count, max_size=count))
    at = values[: count - by_name]
    named = dict(zip(NAMES[count - by_name :], values[count - by_name :], strict=False))
    seen.clear()
    one, other = made = plain(*at, **named), quick(*at, **named)
    assert [id(value) for value in seen] == [id(value) for value in made] * ("__post_init__" in own)
    for tell in (hash, repr, dataclasses.asdict, lambda value: value.__getstate__()):
        assert tell(one) == tell(other)
    for tell in (inspect.signature, lambda kind: kind.__match_args__, dataclasses.is_dataclass):
        assert tell(plain) == tell(quick)
    assert typing.get_type_hints(quick.__init__) == typing.get_type_hints(plain.__init__)
    fields = [[(f.name, f.default, f.type) for f in dataclasses.fields(kind)] for kind in kinds]
    assert fields[0] == fields[1]
    assert (one == other) is ("__eq__" in own)
    if defaults:
        for change in (0, 5):
            changed = [dataclasses.replace(value, **{NAMES[0]: change}) for value in made]
            assert getattr(changed[1], NAMES[0]) == change
            assert (one == changed[0]) is (other == changed[1])
    for wrong in ({"strange": 1}, {NAMES[0]: 1, "strange": 2}):
        with pytest.raises(TypeError):
            quick(**wrong)


@pytest.mark.parametrize("kind", both([None, 1]), ids=("plain", "quick"))
def test_neither_can_be_changed(kind):
    value = kind(1)
    with pytest.raises(dataclasses.FrozenInstanceError, match="cannot assign to field 'name'"):
        value.name = 2
    with pytest.raises(dataclasses.FrozenInstanceError, match="cannot delete field 'name'"):
        del value.name
    assert not hasattr(value, "__dict__")


def test_nodes_and_items_stay_as_they_are_made():
    node = t.Dec("1", "5")
    with pytest.raises(dataclasses.FrozenInstanceError):
        node.whole = "2"
    assert dataclasses.replace(node, recurring="3") == t.Dec("1", "5", "3")
    assert pickle.loads(pickle.dumps(node)) == copy.deepcopy(node) == node
    assert (t.Dec("1", "5") == t.Int(1), t.Int(1) == t.Int(1)) == (False, True)
    with pytest.raises(TypeError, match="missing 1 required positional argument: 'n'"):
        t.Int()
    with pytest.raises(TypeError):
        Item("only", "few")


def test_a_field_without_a_default_comes_first():
    told = {"__annotations__": {"n": "int", "more": "int"}, "n": 1, "__module__": __name__}
    with pytest.raises(TypeError, match="non-default argument 'more' follows default argument"):
        dataclass(frozen=True, slots=True)(type("Kind", (), told))


@pytest.mark.parametrize("make", [dataclasses.dataclass, dataclass])
def test_a_dataclass_may_rest_on_one(make):
    _, base = both([None, 1])
    top = make(frozen=True, slots=True)(
        type("Top", (base,), {"__annotations__": {"more": "int"}, "more": 3})
    )
    assert top(1, 2) == top(1, 2, 3)
    assert top(1, 2) != top(1, 2, 4)
    with pytest.raises(TypeError, match="cannot inherit non-frozen"):
        make(type("Loose", (base,), {"__annotations__": {}}))


@pytest.mark.parametrize(
    ("told", "value"),
    [
        ({"__annotations__": {"n": "list"}, "n": dataclasses.field(default_factory=list)}, []),
        ({"__annotations__": {"n": "int"}, "n": dataclasses.field(default=4, repr=False)}, 4),
        ({"__annotations__": {"_": "KW_ONLY", "n": "int"}, "n": 5}, 5),
    ],
    ids=("made anew", "not shown", "by name alone"),
)
def test_fields_that_are_unusual_are_as_python_makes_them(told, value):
    kind = dataclass(frozen=True, slots=True)(
        type("Kind", (), {"__module__": "dataclasses", **told})
    )
    assert kind() == kind(n=value)
    assert kind().n == value


COUNTED = """
import dataclasses
count = 0
create = dataclasses._create_fn if hasattr(dataclasses, "_create_fn") else None
def counted(*given, **named):
    global count
    count += 1
    return create(*given, **named)
if create:
    dataclasses._create_fn = counted
import itembank.items.item, itembank.figures.kinds.number.bar_model
from itembank.notation import tree
assert dataclasses.is_dataclass(tree.Int)
print(count)
"""


@pytest.mark.skipif(not hasattr(dataclasses, "_create_fn"), reason="Python writes them otherwise")
def test_few_methods_are_written_as_text():
    done = subprocess.run(
        [sys.executable, "-c", COUNTED], capture_output=True, text=True, check=True
    )
    assert int(done.stdout) < 60
