"""Somebody's answer to a question is judged, or left to a person where the words say more."""

from __future__ import annotations

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import read_item
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.items.asks import Answered
from itembank.proof.judge import judge
from itembank.proof.outcome import State

ASKS = " True or false?"
JUDGED = (
    ("Round {3.47} to 1 decimal place. Mei says the answer is {3.5}.", True),
    ("Round {3.47} to 1 decimal place. Mei says the answer is {3.4}.", False),
    ("Round {3.47} to 1 decimal place. Mei says the answer is {3}.", False),
    ("Find the highest common factor of {12} and {18}. Omar says the answer is {6}.", True),
    ("Find the lowest common multiple of {4} and {6}. Omar says that the answer is {24}.", False),
    ("Work out {15% of £40}. A friend says the answer is {£6}.", True),
    ("Work out {2/3 + 1/4}. Zoe says the answer is {3/7}.", False),
    ("Write {34000} in standard form. Sam says the answer is {3.4 × 10^3}.", False),
    ("Find the nth term of the sequence that begins {5, 8, 11, 14}. Ewa says the answer is "
     "{3n + 2}.", True),
    ("Simplify {a^2 × a^5}. Dev says the answer is {a^10}.", False),
    ("Write a prime number between {8} and {14}. Ben says an answer is {13}.", True),
    ("Write a prime number between {8} and {14}. Ben says an answer is {9}.", False),
    ("Change {2.5 kg} to grams. Ivan says the answer is {250 g}.", False),
    # one of two solutions is not the answer; both are
    ("Solve {x^2 = 9}. Mei says the answer is {x = 3}.", False),
    ("Solve {x^2 = 9}. Mei says the answer is {x = 3 or x = -3}.", True),
)  # fmt: skip
HOSTILE = (
    # words that change who says what, or what is said of it
    "Round {3.47} to 1 decimal place. Nobody says the answer is {3.5}. True or false?",
    "Round {3.47} to 1 decimal place. Mei says the answer is not {3.5}. True or false?",
    "Round {3.47} to 1 decimal place. Mei never says the answer is {3.5}. True or false?",
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.5}. Is she wrong? True or false?",
    "Round {3.47} to 1 decimal place. Mei says the answer is about {3.5}. True or false?",
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.5} or {3.4}. True or false?",
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.5} metres. True or false?",
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.5}. False or true?",
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.5}. True or false? Swap them.",
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.5}. This is false. True or false?",
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.5} more. True or false?",
    "Round {3.47} to 1 decimal place. Mei says twice the answer is {3.5}. True or false?",
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.5}. She lies. True or false?",
    "Round {3.47} to 1 decimal place, then double it. Mei says the answer is {3.5}. True or false?",
    "Round {3.47} down to 1 decimal place, or up. Mei says the answer is {3.5}. True or false?",
    "Do not round {3.47} to 1 decimal place. Mei says the answer is {3.5}. True or false?",
    "Mei says the answer is {3.5}. True or false?",
    # the right value in another form, and half of what is asked for
    "Round {3.47} to 1 decimal place. Mei says the answer is {3.50}. True or false?",
    "Write {8/12} in its lowest terms. Mei says the answer is {4/6}. True or false?",
    "Simplify {2x + 3x}. Mei says the answer is {2x + 3x}. True or false?",
    "Work out {3 + 4}. Mei says the answer is {3 + 4}. True or false?",
    "Write {34000} in standard form. Mei says the answer is {34 × 10^3}. True or false?",
    "Share {£20} in the ratio {2 : 3}. Mei says the answer is {£8, £12}. True or false?",
    "Change {2.5 kg} to grams. Mei says the answer is {2.5 kg}. True or false?",
)


def proved(prompt: str, key: str) -> State:
    try:
        item = read_item(BankItem(id="a-1", tier="core", prompt=prompt, key=f'"{key}"'), "a:1", "t")
    except NeedsPerson:
        return State.NEEDS_PERSON
    return judge(item).state


@pytest.mark.parametrize(("prompt", "right"), JUDGED, ids=[prompt[-30:] for prompt, _ in JUDGED])
def test_an_answer_is_judged_and_the_other_verdict_disproved(prompt: str, right: bool) -> None:
    verdict, other = ("true", "false") if right else ("false", "true")
    assert proved(prompt + ASKS, verdict) is State.PROVED
    assert proved(prompt + ASKS + " Be ready to say why.", verdict) is State.PROVED
    assert proved(prompt + ASKS, other) is State.DISPROVED


@pytest.mark.parametrize("prompt", HOSTILE)
def test_words_that_say_more_leave_it_to_a_person(prompt: str) -> None:
    assert {proved(prompt, key) for key in ("true", "false")} == {State.NEEDS_PERSON}


ROUND = "Round {3.47} to 1 decimal place. Mei says the answer is "
WHO = ROUND + "{3.4}, Omar says {3.5} and Zoe says {4}."
HOSTILE_WHO = (
    ROUND + "{3.4} and Omar says {3.5}. Who is wrong?",
    ROUND + "{3.4} and Omar says {3.5}. Who is not right?",
    ROUND + "{3.4} and Omar denies {3.5}. Who is right?",
    ROUND + "{3.4} and Omar says not {3.5}. Who is right?",
    ROUND + "{3.4} and Nobody says {3.5}. Who is right?",
    ROUND + "{3.4} or Omar says {3.5}. Who is right?",
    ROUND + "{3.4} and Mei says {3.5}. Who is right?",
    ROUND + "{3.5} and Omar says {3.5}. Who is right?",
    ROUND + "{3.4} and Omar says {3.6}. Who is right?",
    ROUND + "{3.4} and Omar says {3.50}. Who is right?",
    ROUND + "{3.4} and Omar says {3.5} more. Who is right?",
    ROUND + "{3.4} and Omar says {3.5}. Who is right? Not Mei.",
    ROUND + "{3.4} and Omar says {3.5} metres. Who is right?",
    ROUND + "{3.4} and, wrongly, Omar says {3.5}. Who is right?",
    "Change {2 kg} to grams. Mei says the answer is {2 kg} and Omar says {200 g}. Who is right?",
    "Solve {x^2 = 9}. Mei says the answer is {x = 3} and Omar says {x = 9}. Who is right?",
)


def test_whose_answer_is_right_is_proved_by_name() -> None:
    asked = WHO + " Who is right?"
    verdicts = [proved(asked, name) for name in ("Omar", "Mei", "Zoe")]
    assert verdicts == [State.PROVED, State.DISPROVED, State.DISPROVED]
    assert proved(asked, "Ben") is not State.PROVED


@pytest.mark.parametrize("prompt", HOSTILE_WHO)
def test_other_words_about_who_is_right_are_left_to_a_person(prompt: str) -> None:
    assert {proved(prompt, key) for key in ("Mei", "Omar")} == {State.NEEDS_PERSON}


def test_the_question_that_is_judged_holds_its_own_question() -> None:
    prompt = "Work out {2/3 + 1/4}. Zoe says the answer is {11/12}. True or false?"
    item = read_item(BankItem(id="a-1", tier="core", prompt=prompt, key='"true"'), "a:1", "t")
    assert isinstance(item.ask, Answered)
    assert item.form == "true-or-false"
