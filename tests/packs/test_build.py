"""A pack as it is built: the same for the same request, and never with an unproved key."""

import dataclasses
import os
from functools import cache

import pytest

from itembank.errors import CheckFailed, ItembankError
from itembank.items.item import Find, Tier
from itembank.items.topics.registry import find_item, find_topic
from itembank.notation import tree as t
from itembank.notation.parse import parse
from itembank.packs import pack_proof as proofs
from itembank.packs.build import build_pack, choose, start_pack
from itembank.packs.data.convert import Faces, pack_item
from itembank.packs.data.pack_files import pack_json
from itembank.packs.data.read_back import Mismatch, read_item, read_maths
from itembank.packs.pack_checks import stored_items
from itembank.packs.pack_proof import Proof
from itembank.packs.proof_ahead import begin_proof
from itembank.planning.department.pack_request import PlannedTopic
from tests.depth import only_whole
from tests.packs.packs import TOPICS, request


@pytest.fixture(scope="module")
def pack():
    return build_pack(request())


def wrong(item):
    """Return the item with the key of another item that has another answer."""
    other = next(
        made for made in find_topic(item.topic).walk(item.tier) if worth(made) != worth(item)
    )
    return dataclasses.replace(item, key=other.key)


def worth(item):
    """Return what the key says; of an equation its last side, so that letters do not matter."""
    return item.key.rest[-1][1] if isinstance(item.key, t.Relation) else item.key


def test_the_same_request_gives_the_same_bytes(pack):
    assert pack_json(build_pack(request())) == pack_json(pack)


def test_another_seed_gives_other_questions(pack):
    other = build_pack(request(seed=8))
    assert [i.address for i in other.versions[0].items] != [
        i.address for i in pack.versions[0].items
    ]


def test_the_starter_is_of_one_mark_questions_and_bands_cover_it(pack):
    assert [item.marks for item in pack.versions[0].items] == [1] * 8
    assert pack.bands[0].lowest == 0
    assert pack.bands[-1].highest == pack.marks == 8


def test_versions_are_lettered_and_sheets_of_each_tier(pack):
    assert [version.letter for version in pack.versions] == ["A", "B"]
    assert [sheet.tier for sheet in pack.sheets] == ["support", "core", "challenge"]
    assert [len(sheet.items) for sheet in pack.sheets] == [6, 6, 6]
    assert [sheet.worked is not None for sheet in pack.sheets] == [True, False, False]


def test_counts_of_the_plan_are_kept():
    topics = (PlannedTopic(TOPICS[0], 5), PlannedTopic(TOPICS[1]), PlannedTopic(TOPICS[2]))
    made = choose(request(topics=topics))
    first = [drawn.item.topic for drawn in made.versions[0]]
    assert [first.count(topic) for topic in TOPICS] == [5, 2, 1]


@cache
def tier_shows(topic: str, tier: str) -> set[str]:
    walked = find_topic(topic).walk(Tier(tier))
    return {slip.misconception.name for item in walked for slip in item.slips}


@only_whole
def test_untested_misconceptions_are_those_other_items_of_the_tier_show(pack):
    for _, item in stored_items(pack):
        shown = {misconception.name for misconception in item.misconceptions}
        assert not shown & set(item.untested)
        assert set(item.untested) <= tier_shows(item.topic, item.tier)
    assert any(item.untested for _, item in stored_items(pack))


@pytest.mark.parametrize("topic", TOPICS)
@pytest.mark.parametrize("tier", list(Tier))
def test_items_come_back_from_their_data(topic, tier):
    source = find_topic(topic)
    for index in range(0, len(source.spaces[tier]), len(source.spaces[tier]) // 5):
        item = source.item(tier, index)
        back = read_item(pack_item(item, source, Faces()))
        assert dataclasses.replace(back, twin=item.twin) == item


@pytest.mark.parametrize("face", ["mathml", "words"])
def test_faces_that_disagree_are_refused(face):
    half, third = (Faces().maths(parse(text)) for text in ("1/2", "1/3"))
    with pytest.raises(Mismatch, match="do not say the same"):
        read_maths(half.model_copy(update={face: getattr(third, face)}))


def test_a_key_wrong_by_the_first_road_stops_the_pack(monkeypatch):
    chosen = choose(request())
    bad = chosen.sheets[0].worked
    object.__setattr__(bad, "item", wrong(bad.item))
    monkeypatch.setattr("itembank.packs.build.choose", lambda *_: chosen)
    monkeypatch.setattr(proofs, "prove_anew", lambda items: None)
    with pytest.raises(CheckFailed) as caught:
        build_pack(request())
    assert bad.item.address in str(caught.value)


@pytest.mark.parametrize("beside", [True, False])
def test_a_key_wrong_by_the_second_road_alone_is_found(two_cores, beside):
    item = choose(request()).sheets[1].items[0].item
    good = choose(request()).sheets[1].items[1].item
    with Proof([good, wrong(item)], beside) as proof, pytest.raises(CheckFailed) as caught:
        proof.result()
    assert item.address in str(caught.value)
    assert good.address not in str(caught.value)


def test_a_second_process_that_dies_is_not_taken_for_a_proof(two_cores, monkeypatch):
    """Where the process ends without a report, the proof is made again here."""
    item = wrong(choose(request()).sheets[1].items[0].item)

    def die(*args):
        os._exit(0)

    real = proofs._faults
    here = os.getpid()
    monkeypatch.setattr(proofs, "_faults", lambda *a: real(*a) if os.getpid() == here else die())
    with Proof([item]) as proof, pytest.raises(CheckFailed, match=item.address):
        proof.result()


def test_a_process_begun_before_anything_is_chosen_proves_as_well(two_cores):
    chosen = choose(request()).sheets[1].items
    good, bad = chosen[1].item, wrong(chosen[0].item)
    with begin_proof() as begun, Proof([good], begun=begun) as proof:
        proof.result()
    with begin_proof() as begun, Proof([good, bad], begun=begun) as proof:
        child = begun._child.pid
        with pytest.raises(CheckFailed, match=bad.address):
            proof.result()
    with pytest.raises(ChildProcessError):
        os.waitpid(child, os.WNOHANG)


def test_a_pack_that_cannot_be_had_leaves_no_process_behind(two_cores):
    unknown = request(topics=(PlannedTopic("ratio.shar"),))
    begun = begin_proof()
    child = begun._child.pid
    with pytest.raises(ItembankError, match=r"ratio\.share"), begun:
        start_pack(unknown, begun)
    with pytest.raises(ChildProcessError):
        os.waitpid(child, os.WNOHANG)


def test_closing_ends_the_second_process(two_cores):
    proof = Proof([drawn.item for drawn in choose(request()).taken()])
    child = proof._work._child.pid
    assert child is not None
    proof.close()
    with pytest.raises(ChildProcessError):
        os.waitpid(child, os.WNOHANG)


def test_many_faults_are_told_in_part():
    items = [wrong(drawn.item) for drawn in choose(request()).taken()[:8]]
    with pytest.raises(CheckFailed, match=r"… and 3 more\."):
        proofs.prove_by_first_road(items)


def test_an_unknown_topic_is_a_plain_error():
    with pytest.raises(ItembankError, match=r"ratio\.share"):
        choose(request(topics=(PlannedTopic("ratio.shar"),)))


def test_a_bank_s_question_is_held_to_all_that_its_proof_takes():
    item = dataclasses.replace(find_item("ratio.share/core/12"), address="made:a-1")
    proofs.prove_anew([item])
    # Both roads agree that 5 is 5; the proof of a bank's item asks what there is left to do.
    five = parse("5")
    idle = dataclasses.replace(item, prompt=("Work out ", five), ask=Find(five), key=five)
    idle = dataclasses.replace(idle, form="value", steps=(), slips=())
    proofs.prove_by_second_road([idle])
    with pytest.raises(CheckFailed, match="made:a-1"):
        proofs.prove_anew([idle])
