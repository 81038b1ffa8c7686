"""A bank is read whole, or every fault of it is told in one run with its place."""

import datetime
import re
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from itembank.bank.read.load import read_bank
from itembank.bank.read.topic_text import load_topic_text
from itembank.errors import ItembankError
from itembank.files import toml_read
from itembank.files.faults import FileFaults
from itembank.items.topics.registry import find_topic

FACTS = 'name = "larkhythe"\ntitle = "Our own"\n[authors]\nHT = "head of mathematics"\n'
ITEM = """[[items]]
id = "garden-1"
tier = "core"
prompt = "Work out {3/4 + 1/6}."
key = "11/12"
"""
SLIP = """[[items.misconceptions]]
id = "adds-across"
name = "adds tops and bottoms"
wrong = "4/10"
ask = "Is it more than 3/4?"
"""


def bank(folder, facts=FACTS, **topics):
    (folder / "bank.toml").write_text(facts, encoding="utf-8")
    for name, text in topics.items():
        path = folder / f"{name.replace('_', '.', 1).replace('_', '-')}.toml"
        path.write_text(text, encoding="utf-8")
    return folder


def share(text):
    return f'topic = "ratio.share"\n{text}'


def faults(folder, **how):
    with pytest.raises(FileFaults) as caught:
        read_bank(folder, **how)
    return [(Path(f.file).name, f.line, f.column, f.message) for f in caught.value.faults]


def fault(tmp_path, text):
    """Return the line and the message of the one fault of a topic file."""
    (found,) = faults(bank(tmp_path, ratio_share=share(text)))
    return found[1], found[3]


def test_a_bank_as_it_stands(tmp_path):
    folder = bank(
        tmp_path,
        ratio_share=share(ITEM + 'created = 2026-09-14\nauthor = "HT"\n' + SLIP)
        + '[[generated]]\ntier = "core"\ncount = 5\nseed = 3\n'
        + '[[pinned]]\naddress = "ratio.scale/core/7"\n',
        depot_times='topic = "depot.times"\ntitle = "Bus times"\nprerequisites = ["ratio.share"]\n',
    )
    found = read_bank(folder)
    assert (found.name, found.title, found.terms) == ("larkhythe", "Our own", None)
    assert found.authors == {"HT": "head of mathematics"}
    assert [(t.id, t.title) for t in found.topics] == [
        ("depot.times", "Bus times"),
        ("ratio.share", find_topic("ratio.share").title),
    ]
    (entry,) = found.entries()
    assert entry.address == "larkhythe:garden-1"
    assert (entry.topic, entry.line, entry.path.name) == ("ratio.share", 2, "ratio.share.toml")
    assert entry.item.created == datetime.date(2026, 9, 14)
    assert found.topics[1].generated[0].seed == 3
    assert found.topics[1].pinned[0].address == "ratio.scale/core/7"
    assert found.topics[0].prerequisites == ("ratio.share",)


def test_a_bank_names_its_licence_and_who_grants_it(tmp_path):
    stated = 'licence = "CC0-1.0"\nlicensor = "Larkhythe School"\n[authors]'
    found = read_bank(bank(tmp_path, facts=FACTS.replace("[authors]", stated)))
    assert found.terms == "CC0-1.0, granted by Larkhythe School"
    (tmp_path / "bank.toml").write_text(FACTS.replace("[authors]", 'licensor = "HT"\n[authors]'))
    with pytest.raises(FileFaults) as caught:
        read_bank(tmp_path)
    (fault,) = caught.value.faults
    assert (fault.line, "state both, or neither" in fault.message) == (3, True)


def test_finding_an_item_by_id_or_address(tmp_path):
    found = read_bank(bank(tmp_path, ratio_share=share(ITEM)))
    assert found.find("larkhythe:garden-1") == found.find("garden-1")
    with pytest.raises(ItembankError, match="Did you mean garden-1"):
        found.find("garden-l")


@pytest.mark.parametrize(
    ("text", "line", "column", "said"),
    [
        ('title = "T\n', 2, 11, "a quotation mark is expected"),
        ("title\n", 2, 6, "an = is expected after the key"),
        ("title = \n", 2, 9, "a value is expected"),
        ("title = T\n", 2, 9, "a value is expected"),
        ('title = "a" b\n', 2, 13, "nothing more may stand on this line"),
        ('topic = "x.y"\n', 2, 14, "given twice"),
        ("created = 2026-02-30\n", 2, 11, "no such day"),
        ("[[items]\n", 2, 8, "]] is expected"),
        ('prerequisites = ["a.b"\n[[items]]\n', 2, 0, "the list that begins here is left open"),
    ],
)
def test_what_is_not_toml_is_told_with_line_and_column(tmp_path, text, line, column, said):
    found = faults(bank(tmp_path, ratio_share=share(text)))
    assert [entry[1:3] for entry in found if "cannot be read as TOML" in entry[3]] == [
        (line, column)
    ]
    assert said in found[0][3]


def test_a_block_that_is_not_toml_hides_nothing_further_down(tmp_path):
    text = share(ITEM.replace('"core"', '"core')) + "\n" + ITEM.replace("core", "cor")
    found = faults(bank(tmp_path, ratio_share=text))
    assert [entry[1] for entry in found] == [4, 10]
    assert "quotation mark" in found[0][3]
    assert "Did you mean ‘core’?" in found[1][3]


def test_many_blocks_that_are_not_toml_are_all_told_and_giving_up_is_told_too(
    tmp_path, monkeypatch
):
    found = faults(bank(tmp_path, ratio_share=share("[[items]]\nid = \n" * 60)))
    assert [entry[1] for entry in found] == [3 + 2 * n for n in range(60)]
    monkeypatch.setattr(toml_read, "REPAIR_CHARS", toml_read.REPAIR_CHARS // 20)
    large = share("[[items]]\nid = \n" * 1_000)
    found = faults(bank(tmp_path, ratio_share=large))
    assert 20 < len(found) < 200
    assert "There is more after this" in found[-1][3]


def test_a_name_without_end_is_refused(tmp_path):
    (found,) = faults(bank(tmp_path, ratio_share=share("a." * 100_000 + "a = 1\n")))
    assert (found[1], "more than 100 parts" in found[3]) == (2, True)


@pytest.mark.parametrize(
    ("change", "line", "said"),
    [
        (("tier", "teir"), 4, "no key ‘teir’ here. Did you mean ‘tier’?"),
        (('"core"', '"cor"'), 4, "not ‘cor’. Did you mean ‘core’?"),
        (('id = "garden-1"', 'id = "Garden 1"'), 3, "lower-case letters"),
        (('key = "11/12"', "key = 11"), 6, "must be text in quotation marks, not 11"),
        (('key = "11/12"\n', ""), 2, "‘key’ is missing here"),
        (("11/12", "11/"), 6, "‘key’ cannot be read as mathematics at column 4 of ‘11/’"),
        (("1/6}", "}"), 5, "at column 7 of ‘3/4 + ’"),
        (("1/6}", "1/6"), 5, "column 10 of it: This { is not closed"),
        (("{3/4", "3/4"), 5, "This } closes nothing"),
        (("{3/4 + 1/6}", "{}"), 5, "nothing between { and }"),
        (("Work out", "Work\\nout"), 5, "must be one line"),
        (("Work out", "Work \\u202Eout"), 5, "(U+202E), which nobody can see"),
    ],
)
def test_a_fault_of_a_field(tmp_path, change, line, said):
    found = [
        entry for entry in faults(bank(tmp_path, ratio_share=share(ITEM.replace(*change))))
        if said in entry[3]
    ]  # fmt: skip
    assert [entry[1] for entry in found] == [line]


@pytest.mark.parametrize(
    ("extra", "said"),
    [
        ('task = "workout"', "not ‘workout’. Did you mean ‘work-out’?"),
        ('form = "lowest-term"', "not ‘lowest-term’. Did you mean ‘lowest-terms’?"),
        ('form = "xyzzy"', "‘form’ must be "),
        ("marks = 0", "‘marks’ must be from 1 to 20, not 0"),
        ("marks = true", "‘marks’ must be a whole number from 1 to 20, not true"),
        ('marks = "2"', "must be a whole number"),
        ('created = "2026-09-14"', "must be a day such as 2026-09-14, without quotation marks"),
        ("created = 2026-09-14T10:00:00", "must be a day"),
        ('find = "x"', "‘find’ is about a model"),
        ('model = ["x = "]', "line 1 of ‘model’ cannot be read"),
        ('model = "x = 1"', "‘model’ must be a list in square brackets"),
        ('working = [["a", "b", "c"]]', "words and the mathematics, and nothing more"),
        ('working = [["Add", "1 +"]]', "line 1 of ‘working’ cannot be read"),
        ('working = [[""]]', "neither words nor mathematics"),
        ("retired = 2026-11-01", "A retired item says why"),
        ('retired_because = "x"', "The day is missing"),
        ('author = "XX"', "no author ‘XX’ in bank.toml"),
        ('author = "Not A Code"', "must be a code"),
        ('task = "choose"\nchoose = "least"', "at least two ‘options’"),
        ('task = "solve"\noptions = { A = "1", B = "2" }', "belong to the task choose"),
        ("constants = [-1]", "zero or more"),
        ('misconceptions = ["x"]', "tables, each headed [[items.misconceptions]]"),
        (SLIP.replace("4/10", "4/"), "‘wrong’ cannot be read as mathematics"),
        (SLIP.replace("4/10", "22/24"), "is right as well"),
        (SLIP.replace("wrong", "wrongs"), "Did you mean ‘wrong’?"),
        (SLIP + SLIP, "two misconceptions ‘adds-across’"),
    ],
)
def test_a_fault_of_a_field_that_may_be_left_out(tmp_path, extra, said):
    found = faults(bank(tmp_path, ratio_share=share(ITEM + extra + "\n")))
    told = [entry for entry in found if said in entry[3]]
    assert len(told) == 1
    assert told[0][1] >= 7
    assert all(line >= 7 for _, line, _, _ in found)


def test_lists_over_several_lines_do_not_look_like_headers_or_keys(tmp_path):
    rows = (
        '\nworking = [  # [[items]]\n  ["[[items]]", "1 = 1"],\n  ["id", "1 = 1"]\n]\nmarks = 0\n'
    )
    found = faults(bank(tmp_path, ratio_share=share(ITEM + rows + SLIP + "x = 1\n" + ITEM)))
    assert [entry[1] for entry in found] == [12, 18, 20]
    assert "no key ‘x’" in found[1][3]


def test_a_wrong_answer_in_a_wrong_form_is_not_blind(tmp_path):
    text = share(ITEM.replace("11/12", "10/24") + 'form = "fraction"\n' + SLIP)
    read_bank(bank(tmp_path, ratio_share=text))
    lowest = ITEM + 'form = "lowest-terms"\n' + SLIP.replace("4/10", "22/24")
    read_bank(bank(tmp_path, ratio_share=share(lowest)))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ('tier = "core"\ncount = 5', "needs a ‘seed’"),
        ("count = 5\nseed = 1", "needs a ‘tier’"),
        ('tier = "core"', "needs ‘count’ and ‘seed’, or ‘addresses’"),
        ('tier = "core"\ncount = 5\nseed = 1\naddresses = ["ratio.share/core/1"]', "not both"),
        ('tier = "core"\ncount = 5\nseed = 1\ntopic = "ratio.shar"', "ratio.share"),
        ('tier = "cor"\ncount = 5\nseed = 1', "Did you mean ‘core’?"),
        ('addresses = ["ratio.share/core/99999999"]', "there is no such item"),
        ('addresses = ["ratio.share-core-1"]', "is not an address"),
        ('tier = "core"\ncount = 501\nseed = 1', "from 1 to 500, not 501"),
    ],
)
def test_a_fault_of_a_generated_set(tmp_path, text, said):
    line, message = fault(tmp_path, f"\n[[generated]]\n{text}\n")
    assert said in message
    assert line >= 3


def test_a_pin_that_names_nothing(tmp_path):
    line, message = fault(tmp_path, '[[pinned]]\naddress = "ratio.share/top/1"\n')
    assert (line, "the tiers are" in message) == (2, True)


def test_an_id_used_twice_is_told_with_both_places(tmp_path):
    other = 'topic = "ratio.scale"\n\n' + ITEM
    found = faults(bank(tmp_path, ratio_share=share(ITEM + ITEM), ratio_scale=other))
    assert [entry[:2] for entry in found] == [("ratio.share.toml", 3), ("ratio.share.toml", 8)]
    assert all("in ratio.scale.toml, line 4" in entry[3] for entry in found)


def test_topics_that_are_not_known_or_not_in_their_own_file(tmp_path):
    found = faults(
        bank(
            tmp_path,
            ratio_shar='topic = "ratio.shar"\n',
            other='\ntopic = "ratio.share"\n',
            ratio_share='topic = "ratio.share"\n',
        )
    )
    assert [entry[:2] for entry in found] == [
        ("other.toml", 2),
        ("ratio.shar.toml", 1),
        ("ratio.share.toml", 1),
    ]
    assert "has to be called ratio.share.toml" in found[0][3]
    assert "Did you mean ratio.share" in found[1][3]
    assert "other.toml is on the topic" in found[2][3]


def test_a_prerequisite_is_a_topic_of_the_tool_or_of_the_bank(tmp_path):
    own = 'topic = "bus.times"\ntitle = "Bus times"\n'
    line, message = faults(
        bank(
            tmp_path,
            bus_times=own,
            ratio_share=share('prerequisites = [\n"bus.times", "ratio.scale", "bus.tmes"]\n'),
        )
    )[0][1::2]
    assert line == 2
    assert "no topic ‘bus.tmes’" in message
    assert "Did you mean bus.times?" in message


def test_facts_of_the_bank(tmp_path):
    found = faults(bank(tmp_path, 'name = "Lark Hythe"\ntitel = "T"\n[authors]\n"H T" = ""\n'))
    assert [entry[1] for entry in found] == [0, 1, 2, 4, 4]
    assert "Did you mean ‘title’?" in found[2][3]


def test_a_folder_that_is_no_bank(tmp_path):
    (tmp_path / "larkhythe").mkdir()
    (found,) = faults(tmp_path / "larkhythe")
    assert "not a bank" in found[3]
    (found,) = faults(tmp_path / "larkhyth")
    assert "Did you mean larkhythe?" in found[3]
    (tmp_path / "file").write_text("", encoding="utf-8")
    (found,) = faults(tmp_path / "file")
    assert "a bank is a folder" in found[3]


def test_encodings(tmp_path):
    bank(tmp_path)
    text = share(ITEM)
    (tmp_path / "ratio.share.toml").write_bytes(text.encode("utf-8-sig").replace(b"\n", b"\r\n"))
    assert [entry.line for entry in read_bank(tmp_path).entries()] == [2]
    (tmp_path / "ratio.scale.toml").write_bytes(text.encode("utf-16"))
    (tmp_path / "ratio.mix.toml").write_bytes(b'topic = "ratio.mix"\ntitle = "caf\xe9"\n')
    found = faults(tmp_path)
    assert [entry[:2] for entry in found] == [("ratio.mix.toml", 2), ("ratio.scale.toml", 0)]
    assert "UTF-8" in found[0][3]
    assert "UTF-16" in found[1][3]


def test_more_faults_than_twenty_are_all_listed(tmp_path):
    items = "".join(
        ITEM.replace("garden-1", f"garden-{n}").replace("11/12", "11/") for n in range(45)
    )
    with pytest.raises(FileFaults) as caught:
        read_bank(bank(tmp_path, ratio_share=share(items)))
    lines = [int(found) for found in re.findall(r"line (\d+): ‘key’ cannot", str(caught.value))]
    assert lines == [6 + 5 * n for n in range(45)]


def test_several_processes_tell_the_same_as_one(tmp_path):
    items = "".join(
        ITEM.replace("garden-1", f"garden-{n}").replace("11/12", "11/" if n % 7 == 3 else "11/12")
        for n in range(600)
    )
    bank(tmp_path, ratio_share=share(items), ratio_scale='topic = "ratio.scale"\n')
    alone, together = faults(tmp_path, processes=1), faults(tmp_path, processes=2)
    assert alone == together
    assert len(alone) == len(range(3, 600, 7))
    whole = items.replace('"11/"', '"11/12"')
    bank(tmp_path, ratio_share=share(whole))
    assert read_bank(tmp_path, processes=1) == read_bank(tmp_path, processes=2)


PIECES = st.sampled_from(
    [
        *("[[items]]", "[[generated]]", "[[items.misconceptions]]", "[items]", "items = [", "]"),
        *('topic = "ratio.share"', 'id = "a-1"', 'tier = "core"', 'prompt = "{1/2}"', "{", "}"),
        *('key = "1"', "key = [[]]", 'working = [["a", "1"]]', "working = 1", '"""', "'''", '"'),
        *("model = [", '"x = 1",', "id = 1e999", "created = 2026-01-01", "x = 0x", "= 1", "a.b=1"),
        *("items.x = 1", "options = { a = 1 }", "misconceptions = [1]", "[authors]", "\x00", "\r"),
        *("tier = []", "[[pinned]]", 'address = "ratio.share/core/1"', "marks = 10000000000000000"),
    ]
)


@given(st.lists(PIECES | st.text(max_size=8), max_size=14).map("\n".join) | st.text())
@example("a=" + "[" * 5_000)
@example("a=" + "9" * 5_000)
@example("[[items]]\n[items]\n")
@example("items = 1\n[[items]]\n")
@example("'\n\r0")
def test_any_text_at_all_is_read_or_refused_with_lines_that_are_there(text):
    found = ()
    try:
        read = load_topic_text(text)
    except FileFaults as error:
        found = error.faults
    else:
        assert read.head is not None
    assert all(0 <= one.line <= text.count("\n") + 1 for one in found)
