"""Addresses of any kind: looked up together they are what they are one by one."""

import contextlib
import shutil

import pytest

from itembank.bank.index import any_address
from itembank.bank.index.any_address import find_any, known_topics_of
from itembank.errors import ItembankError
from itembank.files.shipped import shipped_folder
from itembank.items.topics.registry import find_item, topic_at


def one_by_one(addresses, folders):
    found = {}
    for address in addresses:
        with contextlib.suppress(ItembankError):
            found[address] = find_any(address, folders).topic
    return found


@pytest.fixture
def bank(tmp_path):
    return shutil.copytree(shipped_folder() / "larkhythe" / "questions", tmp_path / "ours")


def addresses_of(bank):
    ids = ("pool-1", "pool-2", "depot-1", "garden-4", "nothing-9")
    return [f"larkhythe:{id}" for id in ids] + ["other:pool-1"]


def test_looked_up_together_they_are_the_same_before_and_after(bank, monkeypatch):
    monkeypatch.setattr(any_address, "_read", {})
    addresses = addresses_of(bank)
    wanted = one_by_one(addresses, [bank])
    assert "larkhythe:garden-4" not in wanted  # it needs a person
    assert known_topics_of(addresses, [bank]) == wanted
    path = bank / "ratio.share.toml"
    path.write_text(path.read_text().replace("Two clubs rent", "Two clubs do not rent", 1))
    assert known_topics_of(addresses, [bank]) == one_by_one(addresses, [bank])


def test_two_banks_of_one_name_and_one_with_faults_are_left_to_who_tells_of_them(bank, tmp_path):
    addresses = addresses_of(bank)
    other = shutil.copytree(bank, tmp_path / "other")
    assert known_topics_of(addresses, [bank, other]) == {}
    (other / "ratio.share.toml").write_text("topic = 3")
    assert known_topics_of(addresses, [other]) == {}


@pytest.mark.parametrize(
    "address",
    [
        "ratio.share/core/12",
        "ratio.share/core/99999999",
        "ratio.share/hard/1",
        "x",
        "ratio.x/core/1",
    ],
)
def test_the_topic_at_an_address_is_that_of_its_item(address):
    assert told_by(topic_at, address) == told_by(lambda name: find_item(name).topic, address)


def told_by(look, address):
    try:
        return look(address)
    except ItembankError as error:
        return type(error), str(error)
