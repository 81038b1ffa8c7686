"""Sign-offs: written, read back, stale after any edit, and refused where they would mislead."""

import datetime
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.content import content_hash, printed_on
from itembank.bank.model.item_changes import changes
from itembank.bank.model.signed import SignOff
from itembank.bank.proof.signing import sign
from itembank.bank.proof.signoff import (
    Signing,
    read_signoffs,
    sign_state,
    signoff_of,
    signoffs_text,
)
from itembank.bank.read.load import read_bank
from itembank.errors import CheckFailed, ItembankError
from itembank.files.faults import FileFaults
from tests.bank.bankfolder import item, make_bank

TOPIC = "fractions.add-unlike"
DAY = datetime.date(2026, 9, 14)
LATER = datetime.date(2026, 10, 5)


@pytest.fixture
def bank(tmp_path):
    return make_bank(
        tmp_path / "bank",
        {
            TOPIC: item("sum-1")
            + item("sum-2", "Work out {1/2 + 1/3}.", "2/5")
            + item("tale-1", "How many lengths make a mile in our pool?", "64")
            + item(
                "old-1",
                "Work out {1/2 + 1/5}.",
                "7/10",
                retired="2026-10-01",
                retired_because='"replaced"',
            )
        },
    )


def edited(bank, old, new):
    """Return the bank after an edit of its topic file."""
    path = bank.folder / f"{TOPIC}.toml"
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    return read_bank(bank.folder)


def state(bank, id):
    return sign_state(bank.find(id), read_signoffs(bank.folder))


def test_nothing_is_signed_at_first(bank):
    assert read_signoffs(bank.folder) == ()
    assert state(bank, "sum-1").state is Signing.UNSIGNED
    assert state(bank, "sum-1").says == "not signed"


def test_a_signed_item_says_who_and_when(bank):
    (signed,) = sign(bank, ["sum-1"], "HT", DAY)
    assert (signed.says, signed.proved) == ("signed", True)
    assert state(bank, "sum-1").says == "signed by HT on 14 September 2026"
    assert state(bank, "tale-1").state is Signing.UNSIGNED


def test_several_reviewers(bank):
    sign(bank, ["larkhythe:sum-1"], "HT", DAY)
    sign(bank, ["sum-1"], "NT", LATER)
    assert state(bank, "sum-1").says == (
        "signed by HT on 14 September 2026 and NT on 5 October 2026"
    )


def test_a_sign_off_read_back_is_the_one_that_was_written(bank):
    (signed,) = sign(bank, ["sum-1"], "HT", DAY)
    (read,) = read_signoffs(bank.folder)
    assert read == signed.signoff == SignOff("sum-1", "HT", DAY, content_hash(bank.find("sum-1")))
    assert read.was == printed_on(bank.find("sum-1").item, TOPIC)


def test_signing_again_changes_nothing(bank):
    sign(bank, ["sum-1"], "HT", DAY)
    before = (bank.folder / "signoffs.toml").read_bytes()
    (again,) = sign(bank, ["sum-1", "sum-1"], "HT", LATER)
    assert (again.new, again.signoff.on) == (False, DAY)
    assert (bank.folder / "signoffs.toml").read_bytes() == before


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("Work out {3/4", "Find {3/4", "prompt: was ‘Work out {3/4 + 1/6}.’"),
        ('key = "11/12"', 'key = "22/24"', "key: was ‘11/12’, is now ‘22/24’"),
        ('tier = "core"', 'tier = "support"', "tier: was ‘core’, is now ‘support’"),
        ('key = "11/12"', 'key = "11/12"\nmarks = 2', "marks: was ‘1’, is now ‘2’"),
        (
            'key = "11/12"',
            'key = "11/12"\nworking = [["Add", "3/4 + 1/6 = 11/12"]]',
            "working, line 1: added ‘Add: 3/4 + 1/6 = 11/12’",
        ),
        ('key = "11/12"', 'key = "11/12"\nform = "lowest-terms"', "form: added ‘lowest-terms’"),
    ],
)
def test_any_edit_of_what_prints_makes_a_sign_off_stale_and_is_told(bank, old, new, told):
    sign(bank, ["sum-1"], "HT", DAY)
    found = state(edited(bank, old, new), "sum-1")
    assert found.state is Signing.STALE
    assert found.says.startswith("stale: signed by HT on 14 September 2026; changed since: ")
    assert told in found.says
    assert len(found.changed) == 1


def test_what_does_not_print_leaves_a_sign_off_standing(bank):
    sign(bank, ["sum-1"], "HT", DAY)
    later = edited(bank, 'key = "11/12"', 'created = 2026-09-01\nkey = "11/12"  # checked')
    assert state(later, "sum-1").state is Signing.SIGNED


def test_an_edit_undone_and_an_edit_signed_make_the_item_signed_again(bank):
    sign(bank, ["sum-1"], "HT", DAY)
    later = edited(bank, "Work out {3/4", "Find {3/4")
    sign(later, ["sum-1"], "NT", LATER)
    assert state(later, "sum-1").says == "signed by NT on 5 October 2026"
    back = edited(later, "Find {3/4", "Work out {3/4")
    assert state(back, "sum-1").says == "signed by HT on 14 September 2026"


def test_a_disproved_item_cannot_be_signed_and_nothing_is(bank):
    with pytest.raises(
        CheckFailed, match=r"larkhythe:sum-2 cannot be signed.* disproved"
    ) as caught:
        sign(bank, ["sum-1", "sum-2"], "HT", DAY)
    assert caught.value.exit_status == 1
    assert read_signoffs(bank.folder) == ()


def test_a_person_may_vouch_for_what_cannot_be_proved(bank):
    (signed,) = sign(bank, ["tale-1"], "HT", DAY)
    assert signed.says == "signed, not proved"
    assert not signed.proved


@pytest.mark.parametrize(
    ("ids", "by", "told"),
    [
        (["sum-1"], "HTT", "There is no author ‘HTT’ in the bank larkhythe. Did you mean HT?"),
        (["sum-9"], "HT", "There is no item ‘sum-9’"),
        (["old-1"], "HT", "larkhythe:old-1 is retired"),
    ],
)
def test_what_cannot_be_signed_is_refused_plainly(bank, ids, by, told):
    with pytest.raises(ItembankError, match=re.escape(told)) as caught:
        sign(bank, ids, by, DAY)
    assert caught.value.exit_status == 2
    assert not (bank.folder / "signoffs.toml").exists()


def test_everything_against_signing_is_told_at_once(bank):
    with pytest.raises(ItembankError) as caught:
        sign(bank, ["sum-2", "sum-9", "old-1"], "XX", DAY)
    for told in ("‘XX’", "‘sum-9’", "old-1 is retired", "sum-2 cannot be signed"):
        assert told in str(caught.value)


def test_comments_of_the_file_are_kept(bank):
    sign(bank, ["sum-1"], "HT", DAY)
    path = bank.folder / "signoffs.toml"
    path.write_text(path.read_text() + "# looked at twice\n", encoding="utf-8")
    sign(bank, ["tale-1"], "NT", LATER)
    text = path.read_text(encoding="utf-8")
    assert "# looked at twice" in text
    assert [signoff.item for signoff in read_signoffs(bank.folder)] == ["sum-1", "tale-1"]


def test_a_sign_off_changed_by_hand_vouches_for_nothing(bank):
    sign(bank, ["sum-1"], "HT", DAY)
    path = bank.folder / "signoffs.toml"
    path.write_text(path.read_text().replace("{3/4 + 1/6}", "{3/4 + 1/5}"), encoding="utf-8")
    with pytest.raises(FileFaults, match=r"signoffs\.toml, line \d+: .*changed by hand"):
        read_signoffs(bank.folder)


def test_all_faults_of_the_file_are_told_at_once(bank):
    (bank.folder / "signoffs.toml").write_text(
        '[[signoffs]]\nitem = "a"\nby = "HT"\non = "today"\ncontent = "x"\n\n'
        '[[signoffs]]\nby = "HT"\non = 2026-09-14\ncontent = "x"\nwas = {}\nwen = 3\n'
    )
    with pytest.raises(FileFaults) as caught:
        read_signoffs(bank.folder)
    text = str(caught.value)
    for told in ("‘on’ must be a date", "‘was’ is missing", "‘item’ is missing", "no key ‘wen’"):
        assert told in text


TEXTS = st.text(st.characters(exclude_categories=["Cc", "Cs"]), min_size=1, max_size=8)
SIGNOFFS = st.builds(
    SignOff,
    st.from_regex(r"[a-z0-9]+(-[a-z0-9]+)?(\.[0-9a-f]{4})?", fullmatch=True),
    st.sampled_from(["HT", "NT"]),
    st.dates(),
    TEXTS,
)


@given(st.lists(SIGNOFFS, max_size=5), st.lists(SIGNOFFS, max_size=5))
def test_the_text_holds_exactly_what_it_should_whatever_it_held(before, after):
    import tomllib

    text = signoffs_text([*before[:2], *after], signoffs_text(before))
    read = [
        SignOff(one["item"], one["by"], one["on"], one["content"])
        for one in tomllib.loads(text).get("signoffs", [])
    ]
    assert len(read) == len(set(read))
    assert set(read) == {*before[:2], *after}
    assert signoffs_text(read, text) == text


DATA = st.dictionaries(
    st.sampled_from(["key", "form", "working", "options", "misconceptions"]),
    st.none() | TEXTS | st.lists(st.lists(TEXTS, max_size=2), max_size=3),
)


@given(DATA, DATA)
def test_changes_are_told_exactly_where_data_differ(was, now):
    def filled(data):
        return {key: value for key, value in data.items() if value not in (None, [], "")}

    plain = [
        {key: value for key, value in data.items() if key != "misconceptions"}
        for data in (was, now)
    ]
    assert bool(changes(*plain)) == (filled(plain[0]) != filled(plain[1]))
    named = {change.field.partition(",")[0] for change in changes(*plain)}
    assert named == {
        key
        for key in {*plain[0], *plain[1]}
        if filled(plain[0]).get(key) != filled(plain[1]).get(key)
    }


def test_changed_misconceptions_are_told_by_their_ids():
    one = {"id": "adds-across", "name": "adds tops and bottoms", "wrong": "4/10", "ask": "Why?"}
    other = one | {"wrong": "2/5"}
    assert [str(c) for c in changes({"misconceptions": [one]}, {"misconceptions": [other]})] == [
        "misconception adds-across, wrong: was ‘4/10’, is now ‘2/5’"
    ]
    (gone,) = changes({"misconceptions": [one]}, {})
    assert str(gone) == "misconception adds-across: taken out, was ‘adds tops and bottoms’"


def test_a_sign_off_of_another_item_is_not_this_ones(bank):
    other = signoff_of(bank.find("tale-1"), "HT", DAY)
    assert sign_state(bank.find("sum-1"), [other]).state is Signing.UNSIGNED
