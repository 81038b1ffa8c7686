"""The guard over addresses bites: whatever gives one another question is found and named."""

from __future__ import annotations

import re
from typing import ClassVar

import pytest

from itembank.errors import CheckFailed, ItembankError
from itembank.items.item import Draft, Find, Tier, prompt
from itembank.items.topics.frozen import fault, faults, grown, main
from itembank.items.topics.frozen_files import read, write
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

SUM = Space(lambda a, b: a != b, a=range(2, 30), b=range(2, 20))


def topic(space=SUM, words="Work out {e}.", key=lambda a, b: a + b, tier=Tier.CORE):
    """Return a topic on sums; one thing of it may be another."""

    class Sums(Topic):
        id = "number.sums"
        title = "Adding"
        spaces: ClassVar = {tier: space}
        misconceptions = ()

        def make(self, tier, *values):
            a, b = values
            asked = t.add(t.Int(a), t.Int(b))
            said = words(a, b) if callable(words) else words
            return Draft(
                prompt(said, e=asked), Find(asked), t.Int(key(a, b)), "integer", (), (), values
            )

    return Sums()


FROZEN = grown([topic()], {})


def first_difference(changed):
    """Return the first index that asks something else, found without any fingerprint."""

    def asked(one):
        points = one.spaces[Tier.CORE]
        return [(one.make(Tier.CORE, *p).prompt, one.make(Tier.CORE, *p).key) for p in points]

    old, new = asked(topic()), asked(changed)
    return next(n for n, (one, other) in enumerate(zip(old, new, strict=False)) if one != other)


def test_what_is_frozen_is_found_unchanged_from_a_new_start():
    assert faults([topic()], FROZEN) == []
    assert grown([topic()], FROZEN) == FROZEN


@pytest.mark.parametrize(
    "changed",
    [
        topic(Space(lambda a, b: a != b, a=range(2, 30), b=range(2, 21))),
        topic(Space(lambda a, b: a != b, a=range(3, 30), b=range(2, 20))),
        topic(Space(lambda a, b: a != b and a + b != 25, a=range(2, 30), b=range(2, 20))),
        topic(Space(None, a=range(2, 30), b=range(2, 20))),
        topic(Space(lambda a, b: a != b, a=range(29, 1, -1), b=range(2, 20))),
        topic(words="Find {e}."),
        topic(words=lambda a, b: "Add them: {e}." if a == 17 else "Work out {e}."),
        topic(key=lambda a, b: a + b + (a > 22)),
    ],
    ids=["range", "start", "filter", "no-filter", "order", "wording", "some-wordings", "keys"],
)
def test_a_change_is_named_by_its_first_address(changed):
    held = FROZEN["number.sums/core"]
    found = fault(changed, Tier.CORE, held)
    named = re.match(r"number\.sums/core/(\d+) asks something else", found)
    assert named, found
    assert int(named[1]) == first_difference(changed)
    with pytest.raises(CheckFailed, match="An address names its question for ever"):
        grown([changed], FROZEN)


@pytest.mark.parametrize("index", [0, 199, 200, 317, len(SUM) - 1])
def test_one_changed_question_among_hundreds_is_found(index):
    values = SUM[index]
    changed = topic(key=lambda *point: sum(point) + (point == values))
    found = fault(changed, Tier.CORE, FROZEN["number.sums/core"])
    assert f"/{index} asks" in found or "A question from" in found


def test_a_swap_of_a_word_and_a_number_is_a_change():
    # As plain text the two are the same: only one is set as mathematics.
    one, other = topic(words="Add 2 and {e}."), topic(words=lambda a, b: "Add 2 and {e}.")
    assert grown([one], {}) == grown([other], {})
    text = topic(words=lambda a, b: f"Work out {a} + {b}.")
    assert fault(text, Tier.CORE, FROZEN["number.sums/core"])


def test_growth_at_the_end_is_added_and_nothing_else_touched():
    bigger = topic(SUM.then(None, a=range(2, 30), b=(20, 21)))
    after = grown([bigger], FROZEN)
    held, now = FROZEN["number.sums/core"], after["number.sums/core"]
    assert now[: len(held)] == held
    assert now[-1].stop == len(bigger.spaces[Tier.CORE])
    assert fault(bigger, Tier.CORE, now) == ""
    # Who takes back the growth takes back addresses.
    assert f"/{len(SUM)} is frozen, and there is no such question" in fault(topic(), Tier.CORE, now)


def test_a_topic_or_a_tier_that_is_gone_is_named():
    assert faults([], FROZEN) == ["number.sums is frozen, and there is no such topic any more."]
    assert faults([topic(tier=Tier.SUPPORT)], FROZEN) == [
        "number.sums/core is frozen, and there is no such tier any more."
    ]


def test_files_read_back_as_they_were_written(tmp_path):
    both = grown([topic(), topic(tier=Tier.CHALLENGE)], {})
    write(tmp_path / "new", both)
    assert read(tmp_path / "new") == both
    assert read(tmp_path / "none") == {}


@pytest.mark.parametrize(
    "damage",
    [
        lambda lines: lines[:2] + lines[3:],
        lambda lines: [*lines[:3], lines[3][:-1], *lines[4:]],
        lambda lines: [*lines, "number.sums/core 5"],
        lambda lines: [*lines, "<<<<<<< ours"],
        lambda lines: [*lines, lines[-1]],
    ],
    ids=["line-gone", "character-gone", "half-a-line", "conflict", "line-twice"],
)
def test_a_damaged_file_is_said_with_its_line(tmp_path, damage):
    write(tmp_path, FROZEN)
    path = tmp_path / "number.txt"
    path.write_text("\n".join(damage(path.read_text("ascii").splitlines())), "ascii")
    with pytest.raises(ItembankError, match=r"number\.txt, line \d+: this is not the next stretch"):
        read(tmp_path)


def test_the_command_freezes_once_and_then_has_nothing_to_do(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr("itembank.items.topics.frozen.own_topics", lambda *_: (topic(),))
    main([str(tmp_path)])
    written = (tmp_path / "number.txt").read_bytes()
    main([str(tmp_path)])
    assert (tmp_path / "number.txt").read_bytes() == written
    lines = capsys.readouterr().out.splitlines()
    assert (
        lines[::2] == ["Making every question again, which takes minutes; --topic names one."] * 2
    )
    assert lines[1::2] == [
        f"{tmp_path}: {len(SUM)} questions newly frozen; 0 were, and are what they were.",
        f"{tmp_path}: 0 questions newly frozen; {len(SUM)} were, and are what they were.",
    ]
    monkeypatch.setattr(
        "itembank.items.topics.frozen.own_topics", lambda *_: (topic(words="Do {e}."),)
    )
    with pytest.raises(CheckFailed, match=r"number\.sums/core/0 asks"):
        main([str(tmp_path)])
    assert (tmp_path / "number.txt").read_bytes() == written


def test_one_topic_is_frozen_alone_and_the_others_are_kept(tmp_path, monkeypatch, capsys):
    def has(*found):
        monkeypatch.setattr("itembank.items.topics.frozen.own_topics", lambda *_: found)

    first, second = topic(), topic()
    type(second).id = "number.more-sums"
    has(first)
    main([str(tmp_path)])
    # What is not asked for is not made again: a change of it is not looked for.
    has(topic(words="Do {e}."), second)
    main([str(tmp_path), "--topic", "number.more-sums"])
    held = read(tmp_path)
    assert set(held) == {"number.sums/core", "number.more-sums/core"}
    assert held["number.sums/core"] == FROZEN["number.sums/core"]
    assert f"{len(SUM)} questions newly frozen; 0 were" in capsys.readouterr().out.splitlines()[-1]
    with pytest.raises(ItembankError, match=r"no topic number\.none"):
        main([str(tmp_path), "--topic", "number.none"])
    has(topic(words="Do {e}."), second)
    with pytest.raises(CheckFailed, match=r"number\.sums/core/0 asks"):
        main([str(tmp_path), "--topic", "number.sums"])


def test_the_command_makes_no_folder_where_the_project_is_not(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(ItembankError, match="Run this in the project's folder"):
        main([])
    assert not list(tmp_path.iterdir())
