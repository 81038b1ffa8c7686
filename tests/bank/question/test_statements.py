"""*True or false?* in a bank: what a prompt states of lists, shapes and pictures is judged."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.question.asking import NeedsPerson
from itembank.notation.tree import NotationError
from itembank.proof.outcome import State
from tests.bank.test_guide import CHANGES, judged, with_word
from tests.depth import each

TRIANGLE = {
    "kind": "polygon",
    "corners": [["0", "0"], ["1000", "0"], ["647", "420"]],
    "angles": [["A", "33°"], ["B", "50°"], ["C", "t"]],
}
TRUE = (
    ("True or false? The median of {2, 5, 9} is {5}.", {}),
    ("True or false? The lowest common multiple of {4} and {6} is {12}. Be ready to say why.", {}),
    ("True or false? The area of a rectangle {6 cm} by {4 cm} is {24 cm^2}.", {}),
    ("True or false? The size of angle {t} is {97°}. Be ready to say why.", {"figure": TRIANGLE}),
    ("Work out {3 + 4 × 2}. Mei says the answer is {11}. True or false?", {}),
    (
        "What is the size of angle {t}? Mei says the answer is {97°}. True or false?",
        {"figure": TRIANGLE},
    ),
)


def state(prompt, key, fields):
    """Return what becomes of a question: proved, disproved, or left to a person."""
    try:
        return judged({"prompt": prompt, "key": f'"{key}"', **fields}).state
    except NeedsPerson:
        return State.NEEDS_PERSON


@pytest.mark.parametrize(("prompt", "fields"), TRUE, ids=[prompt for prompt, _ in TRUE])
def test_what_is_true_is_proved_and_its_contrary_is_not(prompt, fields):
    assert state(prompt, "true", fields) is State.PROVED
    assert state(prompt, "false", fields) is State.DISPROVED


@given(st.lists(st.integers(0, 30), min_size=3, max_size=7), st.integers(0, 30))
def test_a_statement_is_true_where_what_it_states_is(numbers, stated):
    listed = ", ".join(map(str, numbers))
    spread = max(numbers) - min(numbers)
    prompt = f"True or false? The range of {{{listed}}} is {{{stated}}}. Be ready to say why."
    is_true = "true" if stated == spread else "false"
    contrary = "false" if stated == spread else "true"
    assert state(prompt, is_true, {}) is State.PROVED
    assert state(prompt, contrary, {}) is State.DISPROVED


@pytest.mark.parametrize("word", each(CHANGES, 5))
def test_no_word_put_into_a_statement_is_passed_over(word):
    for prompt, fields in TRUE:
        for changed in with_word(prompt, word):
            try:
                assert state(changed, "true", fields) is not State.PROVED, changed
            except NotationError:
                continue


def test_a_statement_of_nothing_that_is_asked_for_is_left_to_a_person():
    for prompt in (
        "True or false? The favourite of {2, 5, 9} is {5}.",
        "True or false? The median of {2, 5, 9} is not {5}.",
        "True or false? The median of {2, 5, 9} is {5} or {6}.",
        "True or false? The median of {2, 5, 9} is {5}. The range is {7}.",
    ):
        assert state(prompt, "true", {}) is State.NEEDS_PERSON
