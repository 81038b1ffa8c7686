"""What the words of questions on number ask, read by the reader of hand-written questions.

The generators state what they ask as data. Here the printed words are read whole, as a colleague's
are, and have to come to the same question; a story is left to the reader of stories, and to the
rules of ``test_number_keys.py``.
"""

from __future__ import annotations

import random
from collections import Counter

from itembank.bank.model.fields import BankItem
from itembank.bank.question.asking import NeedsPerson, question_of
from itembank.bank.question.given.maths import read_maths
from itembank.items.item import Find, Item, Tier
from itembank.items.topics.registry import topics
from itembank.notation import line
from itembank.notation.value import exact
from tests.depth import cases, whole

EACH = cases(8, 25, 25)
READ_WHOLE = frozenset(
    [
        "order-of-operations",
        "negatives-add",
        "negatives-multiply",
        "add-decimals",
        "multiply-decimals",
        "divide-decimals",
        "order-decimals",
        "powers-and-roots",
        "index-laws",
        "prime-factors",
        "hcf",
        "lcm",
        "round-places",
        "round-figures",
        "estimate",
        "standard-form",
        "standard-form-calculate",
    ]
)


def read(item: Item) -> object:
    text = "".join(run if isinstance(run, str) else f"{{{line(run)}}}" for run in item.prompt)
    written = BankItem(
        id="a-1", tier=str(item.tier), prompt=text, key=line(item.key), form=item.form
    )
    return question_of(written, read_maths(written)).ask


def agree(item: Item, said: object) -> bool:
    if said == item.ask:
        return True
    # The same sum may be built in another shape, as 20 × 4 ÷ (1/2) for a fraction.
    if isinstance(said, Find) and isinstance(item.ask, Find) and not said.relations:
        return exact(said.target) == exact(item.ask.target)
    return False


@whole
def test_words_that_are_read_whole_ask_what_is_proved() -> None:
    understood: Counter[str] = Counter()
    seen: Counter[str] = Counter()
    for topic in topics():
        name = topic.id.removeprefix("number.")
        if topic.strand != "number" or name not in READ_WHOLE:
            continue
        for tier in Tier:
            # Cards and statements have words of their own, read elsewhere.
            own = topic.spaces[tier].own
            for index in random.Random(f"{topic.id}/{tier}").sample(own, min(EACH, len(own))):
                item = topic.item(tier, index)
                if item.figure is not None:
                    continue
                seen[name] += 1
                try:
                    said = read(item)
                except NeedsPerson:
                    continue
                understood[name] += 1
                assert agree(item, said), (item.address, said, item.ask)
    few = {
        name: (understood[name], seen[name]) for name in seen if 2 * understood[name] < seen[name]
    }
    assert not few, few
