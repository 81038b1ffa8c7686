"""The frames of statements, cards and wrong solutions are read to the last word, or refused."""

from __future__ import annotations

import pytest

from itembank.bank.question.given.maths import split_prompt
from itembank.items.asks import FaultyLine, Match, OddOneOut, TrueOrFalse
from itembank.items.item import Run
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.wording.tasks.other_kinds.kinds_said import KindUnread, kind_said


def runs(prompt: str) -> tuple[Run, ...]:
    return tuple(parse(text) if maths else text for text, maths, _ in split_prompt(prompt))


def nodes(*texts: str) -> tuple[t.Node, ...]:
    return tuple(map(parse, texts))


ODD = "Two of these have the same value. Which is the odd one out? A {1/2}; B {2/4}; C {2/3}."
SPOT = (
    "Dev solves {2x + 1 = 9}. Line 1: {2x = 10}; Line 2: {x = 5}. "
    "Which line is wrong? What should the answer be?"
)
READ = (
    ("True or false? {1/2 + 1/3 = 2/5}.", TrueOrFalse(parse("1/2 + 1/3 = 2/5"))),  # type: ignore[arg-type]
    (
        "True or false? When {x = 3}, {2x + 1 = 9}. Be ready to say why.",
        TrueOrFalse(parse("2x + 1 = 9"), nodes("x = 3")),  # type: ignore[arg-type]
    ),
    (
        "True or false, whatever number {x} stands for? {2(x + 1) = 2x + 1}. Say why.",
        TrueOrFalse(parse("2(x + 1) = 2x + 1")),  # type: ignore[arg-type]
    ),
    (ODD, OddOneOut(nodes("1/2", "2/4", "2/3"))),
    (
        "Which is the odd one out by value? A {3 : 6}; B {4 : 8}; C {2 : 3}",
        OddOneOut(nodes("3 : 6", "4 : 8", "2 : 3")),
    ),
    (
        "Two of these equations have the same solution. Which is the odd one out?\n"
        "A {x + 1 = 3}; B {2x = 4}; C {x - 1 = 3}.",
        OddOneOut(nodes("x + 1 = 3", "2x = 4", "x - 1 = 3")),
    ),
    (SPOT, FaultyLine(parse("2x + 1 = 9"), nodes("2x = 10", "x = 5"))),
    (
        "Match each sum with its answer.\nA {1/2 + 1/4}; B {1/2 + 1/3}.\n"
        "P {5/6}; Q {2/5}; R {3/4}.",
        Match(nodes("1/2 + 1/4", "1/2 + 1/3"), nodes("5/6", "2/5", "3/4")),
    ),
    (
        "Match each time with the same time by the other clock.\nA {14:35}; B {00:05}.\n"
        "P {12:05 am}; Q {4:35 pm}; R {2:35 pm}.",
        Match(nodes("14:35", "00:05"), nodes("12:05 am", "4:35 pm", "2:35 pm")),
    ),
)


@pytest.mark.parametrize(("prompt", "ask"), READ, ids=[prompt[:40] for prompt, _ in READ])
def test_a_wording_is_read(prompt: str, ask: object) -> None:
    assert kind_said(runs(prompt)) == ask


REFUSED = (
    "True or false? {1/2 + 1/3}.",  # no statement
    "True or false? {x + 3 = 5}.",  # for which x
    "True or false, whatever number {y} stands for? {x + 3 = 3 + x}.",
    "True or false? {1/2 = 2/4}. Then work out half of it.",
    "True or false? It is not so that {1/2 = 2/4}.",
    "Say the opposite of the answer. True or false? {1/2 = 2/4}.",
    ODD.replace("Two", "Three"),
    ODD.replace("value", "solution"),
    ODD.replace("; C {2/3}", ""),
    ODD.replace("Which is", "Which is not"),
    "Which is the odd one out? A {1/2}; B {2/4}; C {2/3}.",  # odd in what way?
    "Which is the odd one out by value? A {1/2}; C {2/4}; B {2/3}.",  # out of order
    SPOT.replace("solves", "works out"),
    SPOT.replace("Line 2", "Line 3"),
    SPOT.replace("is wrong", "is right"),
    SPOT.replace("Dev", "Nobody"),
    "Match each sum with a wrong answer. A {1 + 1}; B {1 + 2}. P {3}; Q {2}.",
    "Match each sum with its answer. A {1 + 1}; B {1 + 2}. P {3}.",
    "Match each time with the same time an hour later. A {14:35}; B {00:05}. P {1 pm}; Q {2 pm}.",
    "Match each sum with its answer plus 1. A {1 + 1}; B {1 + 2}. P {3}; Q {2}.",
)


@pytest.mark.parametrize("prompt", REFUSED)
def test_words_that_change_the_question_are_refused(prompt: str) -> None:
    try:
        said = kind_said(runs(prompt))
    except KindUnread:
        return
    assert said is None


@pytest.mark.parametrize(("prompt", "ask"), READ, ids=[prompt[:40] for prompt, _ in READ])
@pytest.mark.parametrize("word", ["not ", "twice ", "7 ", "except B "])
def test_no_word_slips_into_a_frame(prompt: str, ask: object, word: str) -> None:
    """A word put into any gap is refused, or the question is what it was without it."""
    places = [
        place
        for place, sign in enumerate(prompt)
        if sign == " " and prompt.count("{", 0, place) == prompt.count("}", 0, place)
    ]
    for place in places:
        changed = f"{prompt[: place + 1]}{word}{prompt[place + 1 :]}"
        try:
            said = kind_said(runs(changed))
        except KindUnread:
            continue
        assert said is None, changed


def test_other_prompts_are_left_to_the_reader_of_commands() -> None:
    assert kind_said(runs("Match the speed: {3} km in {2} h.")) is None
    assert kind_said(runs("Work out {1/2 + 1/3}.")) is None
