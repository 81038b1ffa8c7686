"""Packs that draw on banks: what may stand in them, and what they say of it."""

import dataclasses
import datetime
import json
import re

import pytest

from itembank.bank.read.load import read_bank
from itembank.errors import CheckFailed, ItembankError
from itembank.files.faults import FileFaults
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.packs.build import build_pack, choose
from itembank.packs.data.pack import Provenance
from itembank.packs.data.pack_files import pack_json
from itembank.packs.data.read_back import read_item
from itembank.packs.pack_checks import read_pack, stored_items
from itembank.packs.sources.banks import Banks, same_question
from itembank.packs.sources.sources_in_words import left_out_words, provenance_words, source_words
from itembank.planning.department.pack_request import PlannedTopic
from itembank.planning.department.question_sources import QuestionSources, StatedSources
from tests.packs.bank_files import DAY, OWN, bank, item, sign, sums
from tests.packs.packs import request

SHARE = "ratio.share"


def plenty():
    return [*sums(12, "support"), *sums(12, "core", 50), *sums(12, "challenge", 80)]


def ask(folders, topics=(OWN,), questions_from="bank", prefer="bank", signed_only=False, **more):
    usual = {"questions": 4, "follow_up": 3, "variants": 1}
    return request(
        topics=tuple(PlannedTopic(topic) for topic in topics),
        stated_sources=StatedSources(tuple(folders), questions_from, prefer, signed_only),
        **(usual | more),
    )


def everything(pack):
    return [question for _, question in stored_items(pack)]


def addresses(pack):
    return [item.address for item in everything(pack)]


@pytest.fixture(scope="module")
def own(tmp_path_factory):
    return bank(tmp_path_factory.mktemp("banks") / "questions", {OWN: plenty()})


def test_a_pack_from_a_bank_holds_its_questions_alone_and_says_so(own):
    pack = build_pack(ask([own]))
    assert {item.source.kind for item in everything(pack)} == {"bank"}
    assert all(item.address == f"larkhythe:{item.source.id}" for item in everything(pack))
    entries = {entry.address: entry for entry in read_bank(own).entries()}
    for one in everything(pack):
        entry = entries[one.address]
        assert one.key.line == entry.item.key
        assert one.tier == entry.item.tier
        assert re.fullmatch("[0-9a-f]{64}", one.source.hash)
    assert pack.topics[0].title == f"Title of {OWN}"
    assert pack.drawing.questions_from == "bank"
    assert [bank.name for bank in pack.drawing.banks] == ["larkhythe"]
    assert pack.drawing.offered == 36
    assert "All 36 questions there on these topics could be used." in provenance_words(pack)


def test_it_is_the_same_every_time_and_comes_back_as_it_was(own, tmp_path):
    pack = build_pack(ask([own]))
    assert pack_json(build_pack(ask([own]))) == pack_json(pack)
    (tmp_path / "pack.json").write_bytes(pack_json(pack))
    assert read_pack(tmp_path) == pack


def test_without_banks_every_question_says_that_it_was_generated():
    pack = build_pack(request(follow_up=3))
    assert {item.source.kind for item in everything(pack)} == {"generated"}
    assert {item.source.sign_off for item in everything(pack)} == {"none"}
    assert pack.drawing.questions_from == "generated"
    assert pack.drawing.banks == []


def test_naming_a_bank_changes_nothing_where_questions_are_generated(own):
    topics = (SHARE,)
    generated = build_pack(ask([own], topics, "generated"))
    assert generated.versions == build_pack(ask([], topics, "generated")).versions


def test_only_proved_questions_in_use_are_drawn_and_the_rest_is_counted(tmp_path):
    wrong = item("wrong", "Work out {7 + 8}.", "16")
    person = item("person", "Which bed is the sunniest?", "12")
    old = item("old", "Work out {70 + 8}.", "78", retired=DAY, retired_because="Too easy.")
    folder = bank(tmp_path / "b", {OWN: [*plenty(), wrong, person, old]})
    pack = build_pack(ask([folder], questions=8, follow_up=8))
    used = set(addresses(pack))
    assert not used & {"larkhythe:wrong", "larkhythe:person", "larkhythe:old"}
    left = {part.why: part.count for part in pack.drawing.left_out}
    assert left == {"retired": 1, "disproved": 1, "needs a person": 1}
    assert "Of 39 questions there on these topics 3 were left out" in provenance_words(pack)


def test_a_disproved_question_never_reaches_a_pack_though_it_is_signed(tmp_path):
    wrong = [item(f"wrong-{n}", f"Work out {{{n} + 8}}.", f"{n + 9}") for n in range(20, 30)]
    folder = bank(tmp_path / "b", {OWN: [*sums(9, "support"), *wrong, *sums(9, "challenge", 80)]})
    sign(folder, *(f"wrong-{n}" for n in range(20, 30)))
    with pytest.raises(ItembankError, match="10 more cannot be used: 10 disproved"):
        build_pack(ask([folder]))


def test_signed_only_leaves_out_what_is_unsigned_or_stale(tmp_path):
    folder = bank(tmp_path / "b", {OWN: plenty()})
    ids = [entry.item.id for entry in read_bank(folder).entries()]
    sign(folder, *ids[:-1])
    path = folder / f"{OWN}.toml"
    stale = ids[0]
    text = path.read_text(encoding="utf-8").replace("Work out {20 + 41}", "Add up {20 + 41}")
    path.write_text(text, encoding="utf-8")
    pack = build_pack(ask([folder], signed_only=True, questions=8, follow_up=8))
    assert {item.source.sign_off for item in everything(pack)} == {"signed"}
    assert {(s.by, s.on) for item in everything(pack) for s in item.source.signed} == {("HT", DAY)}
    assert f"larkhythe:{stale}" not in addresses(pack)
    assert {part.why: part.count for part in pack.drawing.left_out} == {
        "unsigned": 1,
        "sign-off stale": 1,
    }


def test_signed_only_keeps_generated_questions_out_of_both(tmp_path):
    folder = bank(tmp_path / "b", {SHARE: plenty()}, titles=False)
    sign(folder, *[entry.item.id for entry in read_bank(folder).entries()])
    pack = build_pack(ask([folder], (SHARE,), "both", "generated", signed_only=True))
    assert {item.source.kind for item in everything(pack)} == {"bank"}


@pytest.mark.parametrize(("prefer", "expected"), [("bank", {"bank"}), ("generated", {"generated"})])
def test_from_both_the_preferred_comes_first(tmp_path, prefer, expected):
    folder = bank(tmp_path / "b", {SHARE: plenty()}, titles=False)
    pack = build_pack(ask([folder], (SHARE,), "both", prefer))
    assert {item.source.kind for item in everything(pack)} == expected
    assert pack.drawing.prefer == prefer


def test_from_both_the_other_fills_up_where_the_bank_ends(tmp_path):
    folder = bank(tmp_path / "b", {SHARE: sums(2, "core")}, titles=False)
    pack = build_pack(ask([folder], (SHARE,), "both", follow_up=6))
    kinds = [item.source.kind for item in everything(pack)]
    assert kinds.count("bank") == 2
    assert len(kinds) == 4 + 3 * 6 + 2


def test_a_bank_may_name_generated_sets_and_pinned_questions(tmp_path):
    addresses_ = ["ratio.share/core/5", "ratio.share/core/9"]
    made = [
        f"[[generated]]\naddresses = {json.dumps(addresses_)}\n",
        '[[generated]]\ntier = "support"\ncount = 9\nseed = 3\n',
        '[[generated]]\ntier = "challenge"\ncount = 6\nseed = 3\n',
        '[[pinned]]\naddress = "ratio.share/core/12"\n',
    ]
    folder = bank(tmp_path / "b", {SHARE: [*sums(3, "core"), *made]}, titles=False)
    pack = build_pack(ask([folder], (SHARE,), "bank", follow_up=4))
    core = {item.address for item in everything(pack) if item.tier == "core"}
    named = {*addresses_, "ratio.share/core/12"}
    assert core <= named | {f"larkhythe:core-{n}" for n in range(20, 23)}
    assert core & named
    for one in everything(pack):
        if one.address in named:
            assert (one.source.kind, one.source.bank) == ("generated", "larkhythe")
            assert one.key.line == read_key(one.address)
    assert all(item.source.bank == "larkhythe" for item in everything(pack))


def read_key(address):
    from itembank.items.topics.registry import find_item
    from itembank.notation.line import line

    return line(find_item(address).key)


def test_no_question_twice_though_the_bank_has_the_generator_s_own(tmp_path):
    """The bank holds the twins of a whole tier, with letters and wording of its own."""
    topic = find_topic("equations.one-step")
    copies = []
    for index in topic.spaces[Tier.CORE].own[::4]:
        made = topic.item(Tier.CORE, index)
        from itembank.notation.line import line

        copies.append((index, made, line(made.ask.relations[0]), line(made.key)))
    tables = [
        item(f"copy-{index}", f"Find the letter: {{{asked}}}.", key, task="solve")
        for index, _, asked, key in copies
    ]
    folder = bank(tmp_path / "b", {topic.id: tables}, titles=False)
    banks = Banks(QuestionSources((folder,), "both"), [topic.id])
    marks = {same_question(made) for _, made, _, _ in copies}
    source = banks.source(topic.id).sources[0]
    held = {same_question(source.item(Tier.CORE, n)) for n in range(len(source.spaces[Tier.CORE]))}
    assert held == marks, "a copy is not seen as the twin of what it copies"
    for prefer in ("bank", "generated"):
        chosen = choose(ask([folder], (topic.id,), "both", prefer, questions=12, follow_up=12))
        found = [same_question(drawn.item) for drawn in chosen.taken()]
        assert len(set(found)) == len(found)


def test_a_question_twice_in_a_bank_is_drawn_once(tmp_path):
    twins = [
        item("a", "Work out {3 + 40}.", "43", "support"),
        item("b", "Add {40 + 3}.", "43", "support", task="work-out"),
    ]
    tables = [*twins, *sums(9, "core", 50), *sums(9, "challenge", 80)]
    folder = bank(tmp_path / "b", {OWN: tables})
    with pytest.raises(ItembankError, match="only 1 support question"):
        build_pack(ask([folder]))


def test_a_tier_that_ends_gives_way_to_the_nearest_and_sheets_are_shorter(tmp_path):
    tables = [*sums(6, "support"), *sums(5, "core", 50), *sums(1, "challenge", 80)]
    pack = build_pack(ask([bank(tmp_path / "b", {OWN: tables})], questions=3, follow_up=9))
    lengths = {sheet.tier: len(sheet.items) for sheet in pack.sheets}
    assert lengths == {"support": 2, "core": 4, "challenge": 1}
    assert "Instead of 9 questions there are 2 on the support sheet" in provenance_words(pack)


def test_another_topic_fills_the_sheet_where_one_ends(tmp_path):
    tables = [*sums(3, "support"), *sums(2, "core", 50), *sums(1, "challenge", 80)]
    folder = bank(tmp_path / "b", {OWN: tables})
    pack = build_pack(ask([folder], (OWN, SHARE), "both", questions=2, follow_up=8))
    assert {len(sheet.items) for sheet in pack.sheets} == {8}
    assert {question.topic for sheet in pack.sheets for question in sheet.items} == {OWN, SHARE}


@pytest.mark.parametrize(
    ("topic", "questions_from", "said"),
    [
        (SHARE, "bank", "the bank larkhythe has none on ratio.share.*Let questions come from both"),
        ("garden.sheds", "both", "the bank larkhythe has none on garden.sheds"),
    ],
)
def test_a_topic_that_no_bank_has_is_told(own, topic, questions_from, said):
    with pytest.raises(ItembankError, match=said):
        build_pack(ask([own], (topic,), questions_from))


def test_too_few_in_a_bank_says_what_to_do(tmp_path):
    folder = bank(tmp_path / "b", {SHARE: sums(3, "support")}, titles=False)
    with pytest.raises(ItembankError, match=r"ratio\.share has .*Let questions come from both"):
        build_pack(ask([folder], (SHARE,), questions=8))


def test_faults_of_every_bank_are_told_at_once(tmp_path):
    path, other = (
        bank(tmp_path / name, {OWN: [item("a", "Work out {1 +}.", "2")]}, name) for name in "ab"
    )
    with pytest.raises(FileFaults) as caught:
        build_pack(ask([path, other]))
    assert all(str(folder) in str(caught.value) for folder in (path, other))


def test_two_banks_of_one_name_are_refused(tmp_path, own):
    other = bank(tmp_path / "b", {OWN: plenty()})
    with pytest.raises(ItembankError, match="both called larkhythe"):
        build_pack(ask([own, other]))


def test_how_an_answer_may_be_marked_goes_into_the_pack_and_back(tmp_path):
    tiers = (("support", 20), ("core", 50), ("challenge", 80))
    marked = [text for tier, start in tiers for text in sums(9, tier, start, accept=["within 1"])]
    folder = bank(tmp_path / "b", {OWN: marked})
    pack = build_pack(ask([folder]))
    assert {tuple(item.accept) for item in everything(pack)} == {("within 1",)}
    assert {read_item(item).accept for item in everything(pack)} == {("within 1",)}


def test_two_banks_serve_one_topic(tmp_path):
    path = bank(tmp_path / "a", {OWN: plenty()[:18]}, "one")
    other = bank(tmp_path / "b", {OWN: plenty()[18:]}, "two")
    pack = build_pack(ask([path, other], questions=8, follow_up=6))
    assert {item.source.bank for item in everything(pack)} == {"one", "two"}


def test_a_word_problem_says_that_it_was_proved_from_its_model(tmp_path):
    words = [
        item(
            f"words-{n}",
            f"A bed holds {{{n}}} lettuces. A grower adds {{7}}. How many lettuces are in the bed?",
            str(n + 7),
            model=[f"{n} + 7"],
        )
        for n in range(30, 40)
    ]
    folder = bank(tmp_path / "b", {OWN: [*words, *sums(9, "support"), *sums(9, "challenge", 80)]})
    pack = build_pack(ask([folder]))
    said = {item.tier: source_words(item.source) for item in everything(pack)}
    assert said["core"] == "proved from its model, unsigned"
    assert said["support"] == "proved, unsigned"


def test_who_signed_and_when_is_told_whether_or_not_it_is_stale(tmp_path):
    folder = bank(tmp_path / "b", {OWN: plenty()})
    ids = [entry.item.id for entry in read_bank(folder).entries()]
    sign(folder, *ids)
    sign(folder, *ids, by="KS", on=datetime.date(2026, 10, 2))
    said = {source_words(item.source) for item in everything(build_pack(ask([folder])))}
    assert {text.replace("\u00a0", " ") for text in said} == {
        "proved, signed by HT on 14 Sep 2026 and KS on 2 Oct 2026"
    }
    path = folder / f"{OWN}.toml"
    path.write_text(path.read_text(encoding="utf-8").replace("Work out", "Add up"), "utf-8")
    path.write_text(
        path.read_text(encoding="utf-8").replace("tier =", 'task = "work-out"\ntier ='), "utf-8"
    )
    said = {source_words(item.source) for item in everything(build_pack(ask([folder])))}
    assert {text.replace("\u00a0", " ") for text in said} == {
        "proved, sign-off by HT on 14 Sep 2026 and KS on 2 Oct 2026 is stale"
    }


# Read back


@pytest.fixture
def data(own):
    return json.loads(pack_json(build_pack(ask([own]))))


def first(data):
    return data["versions"][0]["items"][0]


@pytest.mark.parametrize(
    ("harm", "said"),
    [
        (lambda d: first(d).update(address="other:core-50"), "not of the bank and id"),
        (lambda d: first(d).update(address="garden.beds/core/1"), "not of the bank and id"),
        (lambda d: first(d)["source"].update(id=""), "not of the bank and id"),
        (lambda d: first(d)["source"].update(kind="generated"), "not of this topic and tier"),
        (lambda d: first(d)["source"].update(sign_off="signed"), "does not agree with sign_off"),
        (lambda d: first(d).update(source=None), "not of this topic and tier"),
        (lambda d: first(d).update(accept=["gladly"]), "‘gladly’ is not a way to accept"),
        (lambda d: d["drawing"].update(banks=[]), "not one of the banks"),
        (lambda d: d["drawing"].update(questions_from="generated"), "in a generated pack"),
        (lambda d: d["drawing"].update(signed_only=True), "an unsigned question"),
    ],
)
def test_what_does_not_agree_about_sources_is_refused(data, harm, said, tmp_path):
    harm(data)
    path = tmp_path / "pack.json"
    path.write_text(json.dumps(data), encoding="utf-8")
    with pytest.raises(ItembankError, match=said):
        read_pack(path)


def test_a_pack_of_version_1_is_still_read(tmp_path):
    """It says nothing of sources; what the older tool wrote is left out here."""
    data = json.loads(pack_json(build_pack(request(follow_up=3, variants=1))))
    data["schema_version"] = 1
    del data["drawing"]
    items = [*data["versions"][0]["items"]]
    for sheet in data["sheets"]:
        items += [*sheet["items"], *filter(None, (sheet["worked"], sheet["part_finished"]))]
    for one in items:
        del one["source"]
    path = tmp_path / "pack.json"
    path.write_text(json.dumps(data), encoding="utf-8")
    pack = read_pack(path)
    assert pack.schema_version == 1
    assert pack.drawing is None
    assert provenance_words(pack) == ""


def test_a_key_changed_in_a_bank_s_pack_fails_the_check(data, tmp_path):
    one, other = data["versions"][0]["items"][:2]
    one["key"] = other["key"]
    path = tmp_path / "pack.json"
    path.write_text(json.dumps(data), encoding="utf-8")
    with pytest.raises(CheckFailed, match=one["address"]):
        read_pack(path)


def test_a_question_whose_proof_is_made_void_stops_the_pack(own, monkeypatch):
    """The states of a bank are not taken on trust: each key is proved again as it is printed."""
    real = Banks._offered

    def harmed(self, topics):
        found = real(self, topics)
        for questions in found.values():
            for question in questions:
                question.item = dataclasses.replace(question.item, key=questions[0].item.key)
        return found

    monkeypatch.setattr(Banks, "_offered", harmed)
    with pytest.raises(CheckFailed, match="larkhythe:"):
        build_pack(ask([own]))


def test_banks_without_a_question_on_the_topics_are_not_said_to_have_been_used():
    nothing = Provenance(questions_from="both")
    assert left_out_words(nothing) == "There are none there on these topics."
