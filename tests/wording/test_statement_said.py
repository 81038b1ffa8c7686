"""A statement is read with the question that it answers, to the last word, or not at all."""

from __future__ import annotations

import pytest

from itembank.bank.question.given.maths import split_prompt
from itembank.items.item import Run
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.wording.tasks.other_kinds.statement_said import statement_said


def runs(prompt: str) -> tuple[Run, ...]:
    return tuple(parse(text) if maths else text for text, maths, _ in split_prompt(prompt))


READ = (
    ("True or false? The area of it is {9 cm^2}.", "9 cm^2", "What is the area of it?"),
    (
        "Here is a wall. True or false? Its height is {4 m}. Be ready to say why.",
        "4 m",
        "Here is a wall. What is its height?",
    ),
    (
        "True or false? The coordinates of A are {(2, 3)}. Say why.",
        "(2, 3)",
        "What are the coordinates of A?",
    ),
    (
        "True or false? The size of angle {x} is {65°}.",
        "65°",
        ("What is the size of angle ", t.Sym("x"), "?"),
    ),
)


@pytest.mark.parametrize(("prompt", "answer", "question"), READ, ids=[row[0][:50] for row in READ])
def test_a_statement_is_read_and_the_question_that_it_answers(
    prompt: str, answer: str, question: str | tuple[Run, ...]
) -> None:
    said = statement_said(runs(prompt))
    assert said is not None
    assert said.answer == parse(answer)
    assert said.questions[0] == ((question,) if isinstance(question, str) else question)


HOSTILE = (
    "True or false? The area of the shape is not {9 cm^2}.",
    "True or false? The area of the shape is more than {9 cm^2}.",
    "True or false? The area of the shape is about {9 cm^2}.",
    "True or false? The area of the shape is {9 cm^2} or more.",
    "True or false? The area of the shape is {9 cm^2}, to the nearest whole number.",
    "True or false? The area of the shape is {9 cm^2}. Say what is false.",
    "True or false? The area of the shape is {9 cm^2}. Give the right area.",
    "True or false? The area of the shape was {9 cm^2}.",
    "True or false? The shape is blue. The area is {9 cm^2}.",
    "True or false? The shape has four sides; the area is {9 cm^2}.",
    "True or false? {9 cm^2} is the area of the shape.",
    "Not true or false? The area of the shape is {9 cm^2}.",
    "True or false? True or false? The area of the shape is {9 cm^2}.",
    "The area, true or false? It is {9 cm^2}, is it not?",
    "True or false: the area of the shape is {9 cm^2}.",
    "True or false? The area of the shape is {9 cm^2} and that of the next is 9 too.",
)


@pytest.mark.parametrize("prompt", HOSTILE)
def test_words_that_could_change_a_statement_are_not_read(prompt: str) -> None:
    assert statement_said(runs(prompt)) is None
