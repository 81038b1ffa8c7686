"""Edits of a bank: what is meant changes, and nothing else does."""

import datetime
import threading
import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.fields import BankItem, MisconceptionText
from itembank.bank.read.load import read_bank
from itembank.bank.write.as_toml import item_toml
from itembank.bank.write.blocks import block_of, with_fields, with_item, without_item
from itembank.bank.write.edit import (
    add_item,
    change_item,
    create_bank,
    make_item,
    move_item,
    retire_item,
)
from itembank.errors import ItembankError

TEXT = """# Sharing, for year 8.
topic = "ratio.share"   # the tool makes these too

# The market garden.
[[items]]
id = "garden-1"   # checked twice
tier = "core"
# shares of seeds
prompt = "Share {£60} in the ratio {2 : 3}."
task = "share"
key = "£24, £36"
working = [  # long
    ["One part is £12", "£60 ÷ 5 = £12"],
    # and then
    ["Shares"],
]

[[items.misconceptions]]
id = "halves"   # often
name = "shares equally"
wrong = "£30, £30"
ask = "Is the ratio 1 : 1?"

[[generated]]
tier = "core"
count = 3
seed = 1

# The bus depot. Its text holds what looks like a header:
[[items]]
id = "bus-1"
tier = "support"
source = '''
[[items]]
id = "not-one"
'''
prompt = "Work out {12 × 4}."
key = "48"

[[items]]
id = "pool-1"
tier = "support"
prompt = "Work out {7 × 8}."
key = "56"   # at the end
"""
IDS = ("garden-1", "bus-1", "pool-1")
TEXTS = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")), min_size=1, max_size=30
)
PRINTABLE = st.text(st.characters(codec="utf-8", exclude_categories=("C", "Zl", "Zp")))
FIELDS = st.fixed_dictionaries(
    {},
    optional={
        "prompt": TEXTS,
        "key": TEXTS,
        "task": st.sampled_from(["share", "solve", None]),
        "marks": st.integers(1, 5),
        "model": st.lists(TEXTS, min_size=1, max_size=9).map(tuple),
        "find": st.none() | TEXTS,
        "working": st.lists(st.tuples(TEXTS, TEXTS), max_size=3).map(tuple),
        "options": st.dictionaries(TEXTS, TEXTS, min_size=1, max_size=3),
        "retired": st.none() | st.dates(),
        "retired_because": st.none() | TEXTS,
        "misconceptions": st.lists(
            st.fixed_dictionaries(
                {"id": st.just("m"), "name": TEXTS, "wrong": TEXTS, "ask": TEXTS}
            ),
            max_size=3,
        ),
    },
)


def data_of(text, id):
    return next(item for item in tomllib.loads(text)["items"] if item["id"] == id)


def around(text, id):
    """Return the text before and after an item's block."""
    block = block_of(text, id)
    before, found, after = text.partition(block)
    assert found
    return before, after


def normal(value):
    if isinstance(value, list | tuple):
        return [normal(part) for part in value]
    return value


@given(st.sampled_from(IDS), FIELDS)
def test_a_change_touches_only_its_item(id, fields):
    changed = with_fields(TEXT, id, fields)
    assert around(changed, id) == around(TEXT, id)
    expected = data_of(TEXT, id) | {
        name: [list(row) for row in value] if name == "working" else normal(value)
        for name, value in fields.items()
    }
    expected = {k: v for k, v in expected.items() if v is not None and v != []}
    assert data_of(changed, id) == expected


@given(FIELDS.map(lambda f: {k: v for k, v in f.items() if k not in ("working", "misconceptions")}))
def test_comments_of_the_item_survive_a_change(fields):
    changed = with_fields(TEXT, "garden-1", fields)
    for comment in ("# checked twice", "# shares of seeds", "# long", "# and then", "# often"):
        assert comment in block_of(changed, "garden-1")


@given(FIELDS)
def test_changing_back_gives_the_same_item(fields):
    old = data_of(TEXT, "garden-1")
    there = with_fields(TEXT, "garden-1", fields)
    back = with_fields(there, "garden-1", {name: old.get(name) for name in fields})
    assert data_of(back, "garden-1") == old


@pytest.mark.parametrize("id", IDS)
def test_removing_leaves_every_other_line(id):
    left = without_item(TEXT, id)
    assert id not in left
    assert [item["id"] for item in tomllib.loads(left)["items"]] == [i for i in IDS if i != id]
    before, after = around(TEXT, id)
    for line in (before + after).split("\n"):
        assert line in left.split("\n")
    assert "\n\n\n" not in left


@pytest.mark.parametrize("id", ["garden-1", "pool-1"])
def test_an_item_taken_out_and_put_back_is_the_same(id):
    item = BankItem.model_validate(data_of(TEXT, id))
    again = with_item(without_item(TEXT, id), item)
    assert BankItem.model_validate(data_of(again, id)) == item


@given(
    st.builds(
        BankItem,
        id=st.just("a-1"),
        tier=st.sampled_from(["support", "core"]),
        prompt=PRINTABLE.map(lambda text: f"x{text}"),
        key=st.just('"a\\b"'),
        options=st.dictionaries(st.sampled_from(["Pack A", "B"]), st.just("£1")),
        working=st.lists(st.tuples(st.just("Say “it”"), st.sampled_from(["", "1 = 1"]))).map(tuple),
        created=st.none() | st.dates(),
        misconceptions=st.lists(
            st.just(MisconceptionText(id="m", name='the "n"', wrong="1", ask="Why?")), max_size=2
        ).map(tuple),
    )
)
def test_an_item_written_reads_back(item):
    assert BankItem.model_validate(tomllib.loads(item_toml(item))["items"][0]) == item


def test_what_is_not_in_one_place_is_left_to_a_person():
    text = 'topic = "a.b"\nitems = [{ id = "a-1", tier = "core" }]\n'
    with pytest.raises(ItembankError, match="by hand"):
        with_fields(text, "a-1", {"tier": "support"})
    spread = "[[items]]\nid = 'a-1'\n[[generated]]\nseed = 1\n[[items.misconceptions]]\nid = 'm'\n"
    with pytest.raises(ItembankError, match="by hand"):
        without_item(spread, "a-1")


@pytest.fixture
def folder(tmp_path):
    return create_bank(tmp_path / "bank", "larkhythe", "Our own", authors={"HT": "head of maths"})


def item(id="garden-1", **more):
    return make_item({"id": id, "tier": "core", "prompt": "Work out {12 × 4}.", "key": "48"} | more)


def test_a_new_bank_with_items_added_changed_moved_retired_and_removed(folder):
    path, _ = add_item(folder, "number.times", item(author="HT"), title="Times tables")
    add_item(folder, "number.times", item("garden-2"))
    change_item(path, "garden-2", {"key": "49", "marks": 2})
    assert read_bank(folder).find("garden-2").item.key == "49"
    retire_item(path, "garden-1", datetime.date(2026, 11, 1), "too easy")
    assert read_bank(folder).find("garden-1").item.retired_because == "too easy"
    moved = move_item(path, "garden-2", "ratio.share")
    assert moved.name == "ratio.share.toml"
    assert read_bank(folder).find("garden-2").topic == "ratio.share"


def test_a_bank_is_not_made_over_another(folder):
    before = (folder / "bank.toml").read_bytes()
    with pytest.raises(ItembankError, match="a bank here already"):
        create_bank(folder, "other", "Other")
    assert (folder / "bank.toml").read_bytes() == before


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("Lark Hythe", "Our own"), "lower-case letters"),
        (("larkhythe", ""), "‘title’ is empty"),
    ],
)
def test_a_bank_with_a_wrong_name_is_not_made(tmp_path, arguments, said):
    with pytest.raises(ItembankError, match=said):
        create_bank(tmp_path / "b", *arguments)
    assert not (tmp_path / "b").exists()


def test_what_would_be_wrong_is_refused_whole_and_nothing_is_written(folder):
    path, _ = add_item(folder, "number.times", item(), title="Times tables")
    before = path.read_bytes()
    with pytest.raises(ItembankError) as caught:
        change_item(path, "garden-1", {"tier": "cor", "form": "decimals"})
    assert "‘core’" in str(caught.value)
    assert "‘decimal’" in str(caught.value)
    with pytest.raises(ItembankError, match="cannot be read as mathematics at column 3"):
        change_item(path, "garden-1", {"key": "4+"})
    with pytest.raises(ItembankError, match="is taken already"):
        add_item(folder, "number.times", item())
    with pytest.raises(ItembankError, match=r"Did you mean ratio\.share"):
        add_item(folder, "ratio.shar", item("garden-2"))
    with pytest.raises(ItembankError, match="no item ‘garden-9’"):
        change_item(path, "garden-9", {"key": "4"})
    assert path.read_bytes() == before
    assert sorted(p.name for p in folder.glob("*.toml")) == ["bank.toml", "number.times.toml"]


def test_twenty_who_add_at_once_all_keep_their_questions(folder):
    start = threading.Barrier(20)
    told = []

    def work(number):
        new = item("times-1", prompt=f"Work out {{{number + 2} × 7}}.", key=str(7 * (number + 2)))
        start.wait()
        _, saved = add_item(folder, "number.times", new, title="Times tables", numbered=True)
        told.append(saved.id)

    threads = [threading.Thread(target=work, args=(number,)) for number in range(20)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    found = {entry.item.id: entry.item.prompt for entry in read_bank(folder).entries()}
    assert sorted(found) == sorted(told) == sorted(f"times-{n}" for n in range(1, 21))
    assert len(set(found.values())) == 20


def test_an_id_of_ones_own_that_is_taken_in_another_topic_is_refused(folder):
    add_item(folder, "number.times", item(), title="Times tables")
    before = {path: path.read_bytes() for path in folder.iterdir()}
    with pytest.raises(ItembankError, match=r"number\.times\.toml: the id ‘garden-1’ is taken"):
        add_item(folder, "ratio.share", item())
    assert {path: path.read_bytes() for path in folder.iterdir()} == before
