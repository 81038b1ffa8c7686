"""Topics with more questions than a pack could need: only what is asked is proved."""

import random
import re
import sqlite3

import pytest

from itembank.bank.index.item_standing import prove_missing
from itembank.bank.index.opened import open_bank
from itembank.bank.index.store.index_place import index_path
from itembank.errors import ItembankError
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.packs.build import askable, build_pack, rested_questions, starter_addresses
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.data.pack_files import pack_json
from itembank.packs.data.source import InOrder
from itembank.packs.pack_checks import stored_items
from itembank.packs.sources import banks
from itembank.packs.sources.sources_in_words import provenance_words
from itembank.planning.department.pack_request import PlannedTopic
from itembank.planning.department.question_sources import StatedSources
from tests.packs.bank_files import DAY, OWN, bank, item, sign, sums
from tests.packs.packs import request


@pytest.fixture(autouse=True)
def _every_topic_is_large(monkeypatch):
    monkeypatch.setattr(banks, "FEW_QUESTIONS", 2)


def ask(folder, signed_only=False, **more):
    usual = {"questions": 4, "follow_up": 3, "variants": 1}
    return request(
        topics=(PlannedTopic(OWN),),
        stated_sources=StatedSources((folder,), "bank", "bank", signed_only),
        **(usual | more),
    )


def proved(folder):
    with sqlite3.connect(index_path(folder)) as db:
        return db.execute("SELECT COUNT(*) FROM proof").fetchone()[0]


def in_it(pack):
    return [question.address for _, question in stored_items(pack)]


def address_of(table):
    return "larkhythe:" + re.search('id = "(.*)"', table)[1]


def many(wrong=(), words=()):
    """Return sums of each tier, of which some have a wrong key and some none that can be proved."""
    tables = [*sums(40, "support"), *sums(40, "core", 80), *sums(40, "challenge", 140)]
    for number, table in enumerate(tables):
        if number % 5 in wrong:
            tables[number] = re.sub(r'key = "\d+"', 'key = "1"', table)
        if number % 5 in words:
            tables[number] = re.sub('Work out [^"]*', f"Which bed is bed {number}?", table)
    return tables


def test_only_what_is_asked_is_proved_and_the_pack_says_so(tmp_path):
    folder = bank(tmp_path / "b", {OWN: many()})
    pack = build_pack(ask(folder))
    assert proved(folder) == len(in_it(pack))
    left = 120 - len(in_it(pack))
    assert f"Of 120 questions there on these topics {left} were left out: {left} not needed." in (
        provenance_words(pack)
    )


@pytest.mark.parametrize("seed", range(4))
def test_a_pack_is_the_same_whatever_was_proved_before(tmp_path, seed):
    tables = {OWN: many(wrong=(1, 3), words=(2,))}
    cold, warm = (bank(tmp_path / name, tables) for name in ("cold", "warm"))
    prove_missing(open_bank(warm), "1", [])
    assert proved(warm) == 120
    asking = {"seed": seed, "questions": 6, "follow_up": 5, "variants": 2}
    pack = build_pack(ask(cold, **asking))
    assert pack_json(pack) == pack_json(build_pack(ask(warm, **asking)))
    good = {address_of(table) for table in [*many()[::5], *many()[4::5]]}
    assert set(in_it(pack)) <= good
    assert proved(cold) < 120
    assert starter_addresses(ask(cold, **asking)) == tuple(
        question.address for question in pack.versions[0].items
    )


def test_a_tier_of_which_nothing_can_be_used_gives_way_to_the_nearest(tmp_path):
    wrong = [item(f"wrong-{n}", f"Work out {{{n} + 8}}.", f"{n + 9}") for n in range(20, 90)]
    tables = {OWN: [*sums(9, "support"), *wrong, *sums(9, "challenge", 80)]}
    cold, warm = (bank(tmp_path / name, tables) for name in ("cold", "warm"))
    prove_missing(open_bank(warm), "1", [])
    for folder in (cold, warm):
        starter = starter_addresses(ask(folder))
        assert len(starter) == 4
        assert not any("wrong" in address for address in starter)
    assert starter_addresses(ask(cold)) == starter_addresses(ask(warm))
    with pytest.raises(ItembankError, match="none there; 70 more cannot be used: 70 disproved"):
        build_pack(ask(cold))


def test_who_signed_counts_as_ever(tmp_path):
    folder = bank(tmp_path / "b", {OWN: many(wrong=(1,))})
    ids = [address_of(table).partition(":")[2] for table in many()]
    sign(folder, *ids[:100])
    pack = build_pack(ask(folder, signed_only=True))
    signed = {f"larkhythe:{id}" for id in ids[:100]}
    assert set(in_it(pack)) <= signed
    assert {question.source.sign_off for _, question in stored_items(pack)} == {"signed"}
    assert {(s.by, s.on) for _, question in stored_items(pack) for s in question.source.signed} == {
        ("HT", DAY)
    }
    left = {part.why: part.count for part in pack.drawing.left_out}
    assert left == {"unsigned": 20, "not needed": 100 - len(in_it(pack))}


def test_a_question_that_must_be_asked_is_proved_and_a_wrong_one_refused(tmp_path):
    folder = bank(tmp_path / "b", {OWN: many(wrong=(1,))})
    right, wrong = "larkhythe:support-20", "larkhythe:support-21"
    assert askable(ask(folder), [wrong, right, "larkhythe:gone"]) == (right,)
    assert right in in_it(build_pack(ask(folder, items=(right,))))
    with pytest.raises(ItembankError, match="support-21 cannot be asked"):
        build_pack(ask(folder, items=(wrong,)))


def test_how_many_there_are_is_counted_only_where_that_is_asked(tmp_path):
    folder = bank(tmp_path / "b", {OWN: many(wrong=(1,))})
    avoid = frozenset({"larkhythe:support-20"})
    assert rested_questions(ask(folder, avoid=avoid)) == {OWN: (119, 120)}
    assert proved(folder) == 0
    assert rested_questions(ask(folder, avoid=avoid), exact=True) == {OWN: (95, 96)}


def test_what_cannot_be_measured_is_passed_over(tmp_path):
    odd = [item(f"odd-{n}", f"Work out {{{n}/0}}.", f"{n}", "core") for n in range(1, 60)]
    folder = bank(tmp_path / "b", {OWN: [*many(), *odd]})
    for seed in range(3):
        assert not any("odd" in address for address in in_it(build_pack(ask(folder, seed=seed))))


def test_where_all_that_one_source_offers_is_dear_the_next_is_looked_at_too():
    first, second = find_topic("ratio.share"), find_topic("ratio.combine")
    both = InOrder(first, second)

    def cost(candidate, dear, cheap):
        return dear if candidate.source is first else cheap

    for dear, cheap, wanted in ((60, 40, second), (60, 70, first), (40, 0, first)):
        picked = Pool().pick(
            both, Tier.CORE, random.Random(1), lambda c, d=dear, e=cheap: cost(c, d, e)
        )
        assert picked.source is wanted
