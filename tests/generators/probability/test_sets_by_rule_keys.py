"""Sets told by rules or members: keys found again from the print, each set as bits of one number.

Primes and divisors are python-flint's, which neither road of the proofs uses.
"""

from __future__ import annotations

import random
import re
from dataclasses import replace

import pytest
from flint import fmpz

from itembank.items.asks import Members, kind_of
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.items.topics.space_part import is_other_kind
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import line, parse
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.claim.finding import WrongKey
from itembank.proof.exact.members_found import find_members
from itembank.proof.sympy.sympy_members import members
from itembank.wording.tasks.other_kinds.members_said import members_said
from tests.depth import cases

TOPIC = find_topic("probability.sets")
EACH = cases(30, 200, 80)


def items(tier: Tier, maker: str) -> list[Item]:
    there = [
        index
        for index, point in enumerate(TOPIC.spaces[tier])
        if is_other_kind(point) and point[0].make.__name__ == maker
    ]
    chosen = random.Random(f"{tier} {maker}").sample(there, min(EACH, len(there)))
    return [TOPIC.item(tier, index) for index in chosen]


def printed(item: Item) -> str:
    return "".join(
        run if isinstance(run, str) else line(run).strip('"') for run in item.prompt
    ).strip()


def bits(said: str, last: int) -> int:
    """Return the set that a sentence tells: bit n stands for n."""
    numbers = [int(n) for n in re.findall(r"\d+", said)]
    if "has the members" in said:
        return sum(1 << n for n in numbers)
    tests = {
        "multiples": lambda n: fmpz(n) % numbers[0] == 0,
        "factors": lambda n: fmpz(numbers[0]) % n == 0,
        "even": lambda n: not n & 1,
        "odd": lambda n: n & 1,
        "prime": lambda n: fmpz(n).is_prime(),
        "square": lambda n: (
            fmpz(n).is_square() if hasattr(fmpz, "is_square") else int(n**0.5) ** 2 == n
        ),
    }
    (name,) = [name for name in tests if f"set of {name}" in said]
    return sum(1 << n for n in range(1, last + 1) if tests[name](n))


def solved(text: str) -> tuple[list[int], bool]:
    """Return the members that a question asks for, and whether they are to be counted."""
    head = re.match(r"The universal set is the whole numbers from 1 to (\d+)\. ", text)
    assert head is not None
    last = int(head[1])
    told = {
        found[1]: bits(found[0], last)
        for found in re.finditer(r"([A-Z]) (?:is the set of|has the members) [^.]*\.", text)
    }
    asked = re.search(r"(?:List the members of (.+)\.|How many members has (.+)\?)$", text)
    assert asked is not None
    sign = asked[1] or asked[2]
    whole = sum(1 << n for n in range(1, last + 1))
    names = [*told]
    a, b = told[names[0]], told[names[-1]]
    plain = sign.translate({ord(names[0]): "a", ord(names[-1]): "b"}) if len(names) > 1 else sign
    plain = plain if len(names) > 1 else plain.replace(names[0], "a")
    value = {
        "a": a,
        "a ∩ b": a & b,
        "a ∪ b": a | b,
        "a′": whole & ~a,
        "a ∩ b′": a & ~b,
        "a′ ∩ b": b & ~a,
        "(a ∪ b)′": whole & ~(a | b),
    }[plain]
    return [n for n in range(1, last + 1) if value >> n & 1], bool(asked[2])


@pytest.mark.parametrize("tier", list(Tier))
@pytest.mark.parametrize("maker", ["_by_rule", "_listed"])
def test_a_key_is_found_again_from_the_words(tier: Tier, maker: str) -> None:
    found = items(tier, maker)
    assert len(found) >= 30
    for item in found:
        numbers, counted = solved(printed(item))
        key = str(len(numbers)) if counted else ", ".join(map(str, numbers))
        assert line(item.key) == key, item.address
        assert kind_of(item.ask).restore(kind_of(item.ask).store(item.ask)) == item.ask


def test_each_road_finds_a_wrong_key_and_words_that_ask_for_something_else() -> None:
    for item in items(Tier.CHALLENGE, "_by_rule")[:8]:
        for slip in item.slips[:2]:
            wrong = replace(item, key=slip.wrong)
            for prove in (prove_fast, prove_symbolic):
                with pytest.raises(WrongKey):
                    prove(wrong)
        runs = tuple(
            run.replace("The universal set", "Not the universal set")
            if isinstance(run, str)
            else run
            for run in item.prompt
        )
        assert members_said(item.prompt) == item.ask
        assert members_said(runs) is None


WORDS = "The universal set is the whole numbers from {l} to {h}. "


def asked(sets: str, sign: str) -> Members | None:
    """Return what is asked of sets that are told in words, numbers up to 12."""
    runs: list[str | t.Node] = []
    text = f"{WORDS}{sets} List the members of {{s}}."
    for piece in re.split(r"(\{\w+\}|\d+)", text):
        match piece:
            case "{l}":
                runs.append(t.Int(1))
            case "{h}":
                runs.append(t.Int(12))
            case "{s}":
                runs.append(t.Label(sign))
            case _:
                runs.append(t.Int(int(piece)) if piece.isdigit() else piece)
    return members_said(runs)


@pytest.mark.parametrize(
    ("sets", "sign", "key"),
    [
        ("A is the set of numbers less than 5. B is the set of prime numbers.", "A ∩ B", "2, 3"),
        (
            "A is the set of numbers greater than 9. B is the set of odd numbers.",
            "A ∪ B",
            "1, 3, 5, 7, 9, 10, 11, 12",
        ),
        (
            "A is the set of square numbers. B is the set of even numbers.",
            "(A ∩ B)′",
            "1, 2, 3, 5, 6, 7, 8, 9, 10, 11, 12",
        ),
        ("A is the set of factors of 8. B is the set of multiples of 4.", "(A′ ∪ B)′", "1, 2"),
    ],
)
def test_both_roads_work_sets_out_as_done_by_hand(sets: str, sign: str, key: str) -> None:
    ask = asked(sets, sign)
    assert ask is not None
    for road in (find_members, members):
        assert road(ask, parse(key)).fault == ""
        assert road(ask, parse("5, 7")).fault
        assert road(ask, parse(f"{key}, 4.5")).fault


@pytest.mark.parametrize(
    "sign", ["A ∩ B ∪ A", "A B", "A(B)", "A ∩", "C", "A ∩ ∪ B", "(A ∩ B", "′A"]
)
def test_a_set_that_is_written_in_two_senses_or_in_none_is_left_to_a_person(sign: str) -> None:
    ask = asked("A is the set of even numbers. B is the set of odd numbers.", sign)
    assert ask is not None
    for road in (find_members, members):
        with pytest.raises(NotExact):
            road(ask, parse("2, 4"))


@pytest.mark.parametrize(
    "sets",
    [
        "A is not the set of even numbers.",
        "A is the set of even numbers and of 9.",
        "A is the set of even prime numbers.",
        "A is the set of even numbers. A is the set of odd numbers.",
        "A is the set of multiples of 3 and 4.",
        "A is the set of even numbers. Then 4 is taken out.",
    ],
)
def test_words_that_change_a_set_are_not_read(sets: str) -> None:
    assert asked(sets, "A") is None


def test_members_are_marked_in_any_order() -> None:
    item = next(item for item in items(Tier.CORE, "_listed") if item.form == "amounts")
    numbers = line(item.key).split(", ")
    assert mark(item, ", ".join(reversed(numbers))).verdict is Verdict.RIGHT
    assert mark(item, ", ".join(numbers[1:])).verdict is not Verdict.RIGHT
