"""A question with many right answers in a pack: kept as data, and its key shown as an example."""

from __future__ import annotations

import pytest

from itembank.cli.words.wrapped import key_text
from itembank.items.asks import Condition, Give, Pick, kind_of
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.tree import Int, NotationError
from itembank.packs.data.convert import Faces, pack_item
from itembank.packs.data.pack_item import PackItem
from itembank.packs.data.read_back import read_item
from itembank.pages.parts.questions.answers import key_on_slide, key_shown
from itembank.proof import prove_fast


def _packed(item: Item) -> PackItem:
    packed = pack_item(item, find_topic(item.topic), Faces())
    return PackItem.model_validate_json(packed.model_dump_json())


@pytest.mark.parametrize("name", ["fractions.between", "number.factor-pairs"])
@pytest.mark.parametrize("tier", list(Tier))
def test_it_comes_back_from_a_pack_and_is_proved_again(name: str, tier: Tier) -> None:
    item = find_topic(name).item(tier, 5)
    stored = _packed(item)
    assert stored.ask.kind == "give"
    back = read_item(stored)
    assert (back.ask, back.key, back.form) == (item.ask, item.key, item.form)
    prove_fast(back)


def test_its_conditions_are_written_by_name() -> None:
    item = find_topic("number.factor-pairs").item(Tier.SUPPORT, 0)
    assert isinstance(item.ask, Give)
    assert item.ask.conditions == (Condition("factor", (Int(12),)),)
    (condition,) = _packed(item).ask.conditions
    assert (condition.name, condition.of) == ("factor", ["12"])


@pytest.mark.parametrize(
    "change",
    [
        {"target": []},
        {"target": ["12"]},
        {"relations": ["y > 2"]},
        {"conditions": [{"name": "lucky", "of": []}]},
        {"conditions": [{"name": "factor", "of": []}]},
        {"relations": [], "conditions": []},
        {"kind": "solve"},
        {"pick": "largest"},
    ],
)
def test_data_that_makes_no_sense_is_refused(change: dict[str, object]) -> None:
    stored = _packed(find_topic("number.factor-pairs").item(Tier.SUPPORT, 0)).model_dump()
    stored["ask"] |= change
    with pytest.raises(NotationError):
        read_item(PackItem.model_validate(stored))


def test_pages_and_commands_say_that_the_key_is_an_example() -> None:
    many = find_topic("fractions.between").item(Tier.CORE, 0)
    shown = key_shown(_packed(many))
    assert [piece for piece in shown if isinstance(piece, str)] == [
        "for\u00a0example ",
        " (others\u00a0are\u00a0right)",
    ]
    assert key_text(many) == "for example 6/10 (others are right)"
    item = find_topic("ratio.share").item(Tier.CORE, 0)
    assert len(key_shown(_packed(item))) == 1
    assert "example" not in key_text(item)


JUDGED = {"Answered", "FaultyWorking", "WhoIsRight"}


@pytest.mark.parametrize("name", ["fractions.between", "number.factor-pairs", "number.estimate"])
def test_an_answer_that_is_judged_has_one_verdict(name: str) -> None:
    """Pages said *e.g. true*, and that other answers were right too."""
    seen = set()
    for tier, space in find_topic(name).spaces.items():
        for index in range(0, len(space), 7):
            item = find_topic(name).item(tier, index)
            kind, packed = kind_of(item.ask), _packed(item)
            assert packed.many is kind.many
            assert packed.ask.asked_kind == (kind_of(item.ask.of) if plain(item) else kind).name
            if type(item.ask).__name__ in JUDGED:
                seen.add(kind.name)
                assert packed.told == kind.told
                assert key_on_slide(packed) == [packed.key]
    assert seen


def plain(item: Item) -> bool:
    """Tell whether it is a question of which one of several answers is wanted."""
    return isinstance(item.ask, Pick)
