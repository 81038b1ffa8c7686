"""Items out to a table and in again: nothing is lost, and every fault is told with its line."""

import datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.read.load import read_bank
from itembank.bank.table.item_table import import_table, parse_table, table_text
from itembank.bank.write.edit import create_bank
from itembank.errors import ItembankError
from itembank.files.faults import FileFaults

WORDS = st.text(
    st.sampled_from(" |\\,;\"'=:£½−abc\t".replace("\t", "")), min_size=1, max_size=12
).filter(str.strip)
MATHS = st.sampled_from(["1/2", "x = 3", "£4.50", "3 : 4", "-3"])
DAYS = st.dates()


def present(**fields):
    """Return fields of which any may be left out."""
    return st.fixed_dictionaries({}, optional=fields)


ITEMS = st.builds(
    lambda id, tier, words, key, more: BankItem.model_validate(
        {"id": id, "tier": tier, "prompt": f"{words}{{1/7}}", "key": key} | more
    ),
    st.from_regex(r"[a-z]{1,3}(-[0-9]{1,2})?(\.[0-9a-f]{4})?", fullmatch=True),
    st.sampled_from(["support", "core", "challenge"]),
    WORDS,
    MATHS,
    present(
        task=st.sampled_from(["work-out", "solve"]),
        form=st.just("value"),
        marks=st.integers(1, 20),
        model=st.lists(MATHS, min_size=1, max_size=3),
        constants=st.lists(st.integers(0, 400), max_size=3),
        accept=st.lists(st.sampled_from(["no-unit", "any-order", "within 0.1"]), max_size=2),
        working=st.lists(st.tuples(WORDS, st.just("") | MATHS) | st.tuples(st.just(""), MATHS)),
        misconceptions=st.lists(
            st.fixed_dictionaries(
                {
                    "id": st.from_regex(r"[a-z]{1,4}", fullmatch=True),
                    "name": WORDS,
                    "wrong": st.sampled_from(["77", "78"]),
                    "ask": WORDS,
                }
            ),
            max_size=3,
            unique_by=lambda slip: slip["id"],
        ),
        author=st.sampled_from(["HT", "N-2"]),
        licence=WORDS,
        source=WORDS,
        created=DAYS,
    )
    | st.fixed_dictionaries(
        {
            "task": st.just("choose"),
            "choose": st.sampled_from(["least", "greatest"]),
            "options": st.dictionaries(WORDS, MATHS, min_size=2, max_size=3),
        }
    )
    | st.fixed_dictionaries(
        {
            "created": st.just(datetime.date(1, 1, 1)),
            "retired": DAYS,
            "retired_because": WORDS,
            "model": st.just(["x = 3"]),
            "find": st.just("x"),
        }
    ),
)


@given(st.lists(ITEMS, max_size=4, unique_by=lambda item: item.id))
def test_what_goes_out_comes_in_again(items):
    entries = [Entry(item, "ratio.share", "b", Path("x.toml"), 1) for item in items]
    rows = parse_table(table_text(entries, {"ratio.share": "Our sharing"}), "t.csv")
    assert [row.item for row in rows] == items
    assert {(row.topic, row.title) for row in rows} <= {("ratio.share", "Our sharing")}


def faults(text, taken=()):
    with pytest.raises(FileFaults) as caught:
        parse_table(text, "t.csv", taken)
    return [(fault.line, fault.message) for fault in caught.value.faults]


HEAD = "topic,tier,prompt,key,id,marks,created,working,misconceptions\n"
GOOD = "ratio.share,core,Find {2 + 3}.,5,"


def test_every_fault_is_told_with_its_line():
    found = faults(
        HEAD
        + "ratio.share,cor,Find {2 + }.,5,a-1,two,,,\n"
        + 'ratio.share,core,"Find {2 + 3},\nplease.",5,a-2,,,,\n'
        + GOOD
        + "a-1,1,14/09/2026,a | b | c,x | y\n"
        + GOOD
        + "a-1,,,Add | 2 +,\n"
        + GOOD
        + "a-5,,,,,,,,\n"
        + ",core,Find {2 + 3}.,,A 6,,,,\n"
    )
    told = {line: [m for at, m in found if at == line] for line, _ in found}
    assert "Did you mean ‘core’?" in " ".join(told[2])
    assert "‘marks’ must be a whole number, not ‘two’" in " ".join(told[2])
    assert "must be one line" in " ".join(told[3])
    assert 4 not in told  # a row is told by the line on which it begins
    assert len(told[5]) == 4
    assert "2026-09-14, not ‘14/09/2026’" in " ".join(told[5])
    assert "words | mathematics" in " ".join(told[5])
    assert "what to ask" in " ".join(told[5])
    assert any("taken already" in message for message in told[6])
    assert any("line 1 of ‘working’" in message for message in told[6])
    assert "13 cells, and there are 9 columns" in told[7][0]
    assert any("‘topic’ is empty" in message for message in told[8])
    assert any("‘key’ is missing" in message for message in told[8])
    assert any("lower-case letters" in message for message in told[8])


def test_columns():
    found = faults("topik,tier,prompt,key,key\n")
    assert found == [
        (1, "There is no column ‘topik’. Did you mean ‘topic’?"),
        (1, "There are two columns ‘key’. Take one of them out."),
        (1, "The column ‘topic’ is missing."),
    ]
    assert "empty" in faults("")[0][1]


@pytest.mark.parametrize(
    ("column", "cell", "says"),
    [
        ("options", "Pack A | 40p ÷ 8\nPack A | 60p ÷ 12", "two lines for ‘Pack A’"),
        ("not_needed", "5 | it is only the age\n5 | it is a number of the house", "two lines"),
        ("figure", "null", "as JSON"),
        ("figure", "[1]", "as JSON"),
    ],
)
def test_nothing_of_a_cell_is_left_out_unsaid(column, cell, says):
    found = faults(f'topic,tier,prompt,key,{column}\n{GOOD[:-1]},"{cell}"\n')
    assert says in " ".join(message for _, message in found)


def test_a_quotation_mark_left_open():
    assert faults(HEAD + GOOD + '"a\nb\n')[0][0] == 2


@pytest.mark.parametrize("between", [",", ";", "\t"])
def test_other_marks_between_cells_and_other_line_ends(between):
    text = (HEAD + GOOD + "a-1,2,2026-09-14,,\n").replace(",", between).replace("\n", "\r\n")
    (row,) = parse_table(text, "t.csv")
    assert (row.item.marks, row.item.created) == (2, datetime.date(2026, 9, 14))


def test_ids_are_given_where_there_are_none_and_never_twice():
    rows = parse_table(
        HEAD + (GOOD + ",,,,\n") * 2 + GOOD + "share-3,,,,\n" + GOOD + ",,,,\n",
        "t.csv",
        {"share-1"},
    )
    assert [row.item.id for row in rows] == ["share-2", "share-4", "share-3", "share-5"]
    assert faults(HEAD + GOOD + "share-1,,,,\n", {"share-1"})[0][0] == 2


@given(
    st.text() | st.lists(st.sampled_from([HEAD, GOOD, ",", '"', "\n", "x", "\0", "|"])).map("".join)
)
def test_any_text_at_all_is_read_or_refused(text):
    try:
        parse_table(text, "t.csv")
    except FileFaults as error:
        told = error.faults
    else:
        told = ()
    assert all(0 <= fault.line <= text.count("\n") + text.count("\r") + 1 for fault in told)


@pytest.fixture
def folder(tmp_path):
    return create_bank(tmp_path / "bank", "larkhythe", "Our own", authors={"HT": "head of maths"})


def test_importing_is_all_or_nothing(folder, tmp_path):
    table = tmp_path / "t.csv"
    head = "topic,title,tier,prompt,key,author\n"
    good = "ratio.share,,core,Find {2 + 3}.,5,HT\nbus.times,Bus times,core,Find {4 + 5}.,9,\n"
    table.write_text(head + good + "bus.fares,,core,Find {4 + 5}.,9,XX\n", encoding="utf-8-sig")
    with pytest.raises(FileFaults) as caught:
        import_table(folder, table)
    assert [fault.line for fault in caught.value.faults] == [4, 4]
    assert [path.name for path in folder.iterdir()] == ["bank.toml"]
    table.write_text(head + good, encoding="utf-8-sig")
    assert [row.item.id for row in import_table(folder, table)] == ["share-1", "times-1"]
    assert [row.item.id for row in import_table(folder, table)] == ["share-2", "times-2"]
    bank = read_bank(folder)
    assert [entry.item.id for entry in bank.entries()] == [
        "times-1",
        "times-2",
        "share-1",
        "share-2",
    ]
    assert bank.topics[0].title == "Bus times"


def test_a_table_that_is_not_there(folder, tmp_path):
    with pytest.raises(ItembankError, match="no such file"):
        import_table(folder, tmp_path / "none.csv")
