"""Sets that a bank's question tells by rules or by their members: read whole, proved, marked."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import NeedsPerson, as_item
from itembank.bank.question.given.maths import UnreadableMaths
from itembank.items.topics.registry import find_topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import line
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from itembank.wording.tasks.other_kinds.members_said import members_said

TO_20 = "The universal set is the whole numbers from {1} to {20}."
RULES = {
    "even numbers": lambda n: n in range(2, 21, 2),
    "odd numbers": lambda n: n in range(1, 20, 2),
    "prime numbers": lambda n: n in (2, 3, 5, 7, 11, 13, 17, 19),
    "square numbers": lambda n: n in (1, 4, 9, 16),
    "multiples of {3}": lambda n: n in range(3, 20, 3),
    "factors of {18}": lambda n: n in (1, 2, 3, 6, 9, 18),
    "numbers less than {7}": lambda n: n in range(1, 7),
    "numbers greater than {14}": lambda n: n in range(15, 21),
}
ASKED = {
    "A": lambda a, b: a,
    "B'": lambda a, b: not b,
    "A ∩ B": lambda a, b: a and b,
    "A∪B": lambda a, b: a or b,
    "(A ∩ B)′": lambda a, b: not (a and b),
    "A′ ∪ B": lambda a, b: not a or b,
    "(A′ ∩ B')'": lambda a, b: a or b,
}


def item(prompt, key, **more):
    entry = BankItem(id="a-1", tier="core", prompt=prompt, key=key, **more)
    return as_item(Entry(entry, "probability.sets", "try", Path("probability.sets.toml"), 1))


@given(
    st.sampled_from(sorted(RULES)),
    st.sampled_from(sorted(RULES)),
    st.sampled_from(sorted(ASKED)),
    st.sampled_from(["List", "How many members has {}?", "What is n({})?"]),
    st.integers(-2, 2),
)
def test_a_question_is_proved_with_the_right_key_and_with_no_other(first, second, sign, way, off):
    held = [n for n in range(1, 21) if ASKED[sign](RULES[first](n), RULES[second](n))]
    told = f"{TO_20} A is the set of {first}. B is the set of {second}."
    if way == "List":
        if not held:
            return
        given_key = held if not off else [*held[:-1], held[-1] + off]
        found = item(f"{told} List the members of {sign}.", ", ".join(map(str, given_key)))
    else:
        found = item(f"{told} {way.format(sign)}", str(len(held) + off))
    assert judge(found).state is (State.DISPROVED if off else State.PROVED)


def test_a_question_of_the_generated_topic_is_read_in_a_bank_as_it_stands():
    topic = find_topic("probability.sets")
    read = 0
    for tier, space in topic.spaces.items():
        for index in range(len(space) - 1, 0, -97):
            made = topic.item(tier, index)
            if members_said(made.prompt) is None:
                continue
            runs = (run if isinstance(run, str) else f"{{{line(run)}}}" for run in made.prompt)
            found = item("".join(runs), line(made.key))
            assert (found.ask, found.form, found.accept) == (made.ask, made.form, made.accept)
            read += 1
    assert read > 10


def test_members_are_marked_in_any_order():
    found = item(f"{TO_20} A is the set of square numbers. List the members of A.", "1, 4, 9, 16")
    assert mark(found, "16, 9, 4, 1").verdict is Verdict.RIGHT
    assert mark(found, "16, 9, 4").verdict is not Verdict.RIGHT


def test_the_same_question_under_other_letters_is_a_twin_and_another_set_is_not():
    rules = "{} is the set of even numbers. {} is the set of multiples of {{3}}."
    first, other, apart = (
        item(f"{TO_20} {rules.format(*letters)} {asks}", "3")
        for letters, asks in (
            ("AB", "What is n(A ∩ B)?"),
            ("PQ", "How many members are in P∩Q?"),
            ("AB", "What is n(B ∩ A′)?"),
        )
    )
    assert first.twin == other.twin != apart.twin


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ("A is the set of even prime numbers. What is n(A)?", "even prime numbers’ is not"),
        ("A is the set of multiples of 3. What is n(A)?", "multiples of 3’ is not"),
        ("A is the set of even numbers. What is not in A?", "What is not in A’ is not"),
        ("A is the set of odd numbers. A is the set of even numbers. What is n(A)?", "once"),
        ("What is n(A)? A is the set of even numbers.", "universal set first"),
    ],
)
def test_words_that_are_not_understood_are_named(told, said):
    with pytest.raises(NeedsPerson, match=said):
        item(f"{TO_20} {told}", "3")


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ("A is the set of even numbers. What is n(C)?", "not told"),
        ("A is the set of even numbers. What is n(A ∩ A ∪ A)?", "without brackets"),
        ("A has the members {3, 40}. What is n(A)?", "not in the universal set"),
        ("A has the members {3, 3}. What is n(A)?", "twice"),
    ],
)
def test_a_set_that_means_nothing_is_left_to_a_person(told, said):
    found = judge(item(f"{TO_20} {told}", "3"))
    assert found.state is State.NEEDS_PERSON
    assert said in found.says


def test_a_set_between_braces_says_what_to_do():
    with pytest.raises(UnreadableMaths, match="without braces"):
        item(f"{TO_20} A is the set of even numbers. List the members of {{A′ ∩ A}}.", "3")
