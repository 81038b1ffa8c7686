"""Twins in a bank, across banks, and among the generated items a bank holds."""

from itembank.bank.model.fields import GeneratedSet
from itembank.bank.question.generated_sets import made_addresses, set_addresses
from itembank.bank.question.twins import bank_twins, twins
from itembank.items.item import Tier
from itembank.items.topics.registry import find_item, find_topic
from itembank.notation.line import line
from tests.bank.bankfolder import item, make_bank

TOPIC = "fractions.add-unlike"


def test_twins_in_one_bank(tmp_path):
    bank = make_bank(
        tmp_path / "one",
        {
            TOPIC: item("a-1")
            + item("a-2", "Add {1/6 + 3/4} and give the answer in lowest terms.")
            + item("a-3", "Work out {3/4 + 1/5}.", "19/20")
        },
    )
    assert twins(bank.entries()) == [("larkhythe:a-1", "larkhythe:a-2")]


def test_twins_across_banks_and_topics(tmp_path):
    one = make_bank(tmp_path / "one", {TOPIC: item("a-1")})
    two = make_bank(
        tmp_path / "two", {"fractions.add-like": item("z-1", "Find {1/6 + 3/4}.")}, "riverside"
    )
    assert bank_twins(one, two) == [("larkhythe:a-1", "riverside:z-1")]
    assert bank_twins(one) == bank_twins(two) == []


def test_word_problems_are_twins_by_their_models(tmp_path):
    def story(id, words, model):
        return item(id, words, "16", model=model, find='"n"')

    bank = make_bank(
        tmp_path / "one",
        {
            TOPIC: story(
                "a-1", "{24} of {40} seats are taken. How many are empty?", '["n + 24 = 40"]'
            )
            + story("a-2", "Of {40} plants {24} are sold. How many are left?", '["40 = 24 + n"]')
            + story("a-3", "Of {24} lengths {40} are left.", '["n + 40 = 24"]')
        },
    )
    assert twins(bank.entries()) == [("larkhythe:a-1", "larkhythe:a-2")]


def test_copies_of_a_question_that_only_a_person_can_check(tmp_path):
    bank = make_bank(
        tmp_path / "one",
        {
            TOPIC: item("a-1", "How many lengths are in the pool's record?", "40")
            + item("a-2", "How many lengths are in the pool’s other record?", "40")
            + item("a-3", "how many lengths are in  the pool's record", "40")
        },
    )
    assert twins(bank.entries()) == [("larkhythe:a-1", "larkhythe:a-3")]


def test_a_written_item_is_the_twin_of_a_generated_one_the_bank_holds(tmp_path):
    address = f"{TOPIC}/core/148"
    generated = find_item(address)
    first, ((_, second),) = generated.ask.target.first, generated.ask.target.rest
    text = item("a-1", f"Add {{{line(second)} + {line(first)}}}.", line(generated.key))
    alone = make_bank(tmp_path / "one", {TOPIC: text})
    pinned = text + f'[[pinned]]\naddress = "{address}"\n'
    both = make_bank(tmp_path / "two", {TOPIC: pinned})
    assert bank_twins(alone) == []
    assert bank_twins(both) == [(address, "larkhythe:a-1")]
    assert bank_twins(both, generated=False) == []


def test_a_set_is_the_same_every_time_and_holds_no_item_twice(tmp_path):
    made = GeneratedSet(tier="core", count=10, seed=3)
    found = set_addresses(made, TOPIC)
    assert found == set_addresses(made, TOPIC)
    assert len(set(found)) == 10
    assert all(address.startswith(f"{TOPIC}/core/") for address in found)
    assert set(found) != set(set_addresses(GeneratedSet(tier="core", count=10, seed=4), TOPIC))


def test_a_set_of_so_many_stays_what_it_is_when_its_tier_grows(monkeypatch):
    made = GeneratedSet(tier="core", count=10, seed=3)
    before = set_addresses(made, TOPIC)
    topic = find_topic(TOPIC)
    space = topic.spaces[Tier.CORE]
    grown = space.then(None, **space.axes)
    assert len(grown) > len(space)
    monkeypatch.setattr(type(topic), "spaces", {**topic.spaces, Tier.CORE: grown})
    assert set_addresses(made, TOPIC) == before


def test_the_generated_items_of_a_file_come_once_each(tmp_path):
    text = (
        f'[[generated]]\naddresses = ["{TOPIC}/core/1", "{TOPIC}/core/2"]\n\n'
        f'[[pinned]]\naddress = "{TOPIC}/core/2"\n\n[[pinned]]\naddress = "{TOPIC}/core/3"\n'
    )
    (topic,) = make_bank(tmp_path / "one", {TOPIC: text}).topics
    assert made_addresses(topic) == tuple(f"{TOPIC}/core/{n}" for n in (1, 2, 3))
