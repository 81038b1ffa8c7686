"""Pairs of questions judged one by one for which is harder, and the questions themselves.

`judged_pairs.csv` holds them: a reading made for this project of prompt and working alone,
before any measure was looked at. No pupils' answers stand behind it, and no teacher has checked
it yet. The questions were drawn at random from the generated topics
and from the bank to start from: some pairs on one topic, in one tier or across tiers, some on
two topics of a strand, some across strands. `much` marks a pair that was
clear at sight; `used` says whether the weights were fitted to it or it was held out, by lot.

A question is known by its prompt; one that stands at its address in other words but with the
same mathematics has only been reworded. Where an address has come to mean another question, the
tiers are searched for the prompt. A pair one of whose questions is gone is left out.
"""

from __future__ import annotations

import csv
import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from itembank.bank.question.as_item import NeedsPerson, as_item
from itembank.bank.read.load import read_bank
from itembank.cli.words.wrapped import prompt_text
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic, topic_ids

FILE = Path(__file__).parent / "judged_pairs.csv"
STORY = 8
"""Words from which a prompt is more than an instruction."""
BANKS = Path(__file__).parents[2] / "banks"


@dataclass(frozen=True)
class Pair:
    """Two questions, which is harder (1 the first, −1 the second, 0 neither), and why."""

    number: int
    across: str
    """one topic, one strand or two strands"""
    first: Item
    second: Item
    harder: int
    much: bool
    held_out: bool
    reason: str


def rows() -> list[dict[str, str]]:
    """Return the rows of the file as text."""
    with FILE.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@cache
def pairs() -> tuple[Pair, ...]:
    """Return every pair both of whose questions still stand as they were judged."""
    found = []
    for row in rows():
        first = find(row["first"], row["first_prompt"])
        second = find(row["second"], row["second_prompt"])
        if first is not None and second is not None:
            harder = {"first": 1, "second": -1, "neither": 0}[row["harder"]]
            much, held_out = row["much"] == "yes", row["used"] == "held out"
            found.append(
                Pair(
                    int(row["number"]),
                    row["pair"],
                    first,
                    second,
                    harder,
                    much,
                    held_out,
                    row["reason"],
                )
            )
    return tuple(found)


def find(address: str, prompt: str) -> Item | None:
    """Return the question with this prompt, at its address or elsewhere, or None."""
    if ":" in address:
        item = bank_items().get(address.partition(":")[2])
        return item if item is not None and reworded(item, prompt) else None
    name, tier, index = address.split("/")
    if name not in topic_ids():
        return None
    topic = find_topic(name)
    if int(index) < len(topic.spaces[Tier(tier)]):
        item = topic.item(Tier(tier), int(index))
        if reworded(item, prompt):
            return item
    tiers = [Tier(tier), *(one for one in Tier if one is not Tier(tier))]
    return next(
        (item for tier in tiers for item in topic.walk(tier) if plain(item) == prompt), None
    )


def reworded(item: Item, prompt: str) -> bool:
    """Tell whether an item asks a prompt's question, perhaps in other words.

    Bare mathematics has to be the same to the letter; in a story every number.
    """
    now = plain(item)
    if now == prompt:
        return True
    numbers = [sorted(re.findall(r"[0-9]+(?:[.][0-9]+)?", text)) for text in (now, prompt)]
    story = min(len(re.findall(r"[a-z]{2,}", text)) for text in (now, prompt)) >= STORY
    return story and numbers[0] == numbers[1]


def plain(item: Item) -> str:
    """Return an item's prompt as one line, with plain spaces."""
    return prompt_text(item.prompt).replace("\N{NO-BREAK SPACE}", " ")


@cache
def bank_items() -> dict[str, Item]:
    """Return the questions of the banks that ship with the tool, by their ids."""
    found = {}
    for folder in sorted(path.parent for path in BANKS.glob("**/bank.toml")):
        for topic in read_bank(folder).topics:
            for entry in topic.entries:
                try:
                    found.setdefault(entry.item.id, as_item(entry))
                except NeedsPerson:
                    continue
    return found
