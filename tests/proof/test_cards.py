"""Questions about statements, cards and lines: right keys are proved, all others found out."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations

import pytest

from itembank.errors import CheckFailed
from itembank.items.item import Draft, Item, Misconception, Step, Tier
from itembank.items.kinds import (
    CardMistake,
    match_pairs,
    odd_one_out,
    spot_the_mistake,
    statement,
)
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.judge import judge
from itembank.proof.outcome import State

M = Misconception("test.slip", "slips", "Where?")


def item(draft: Draft, key: t.Node | None = None) -> Item:
    return Item(
        "test.kinds/core/0", "test.kinds", Tier.CORE, draft.prompt, draft.ask, key or draft.key,
        draft.form, draft.steps, draft.slips, draft.twin, 1, (),
    )  # fmt: skip


def says(text: str, holds: bool, given: str = "", always: str = "") -> Draft:
    relation = parse(text)
    assert isinstance(relation, t.Relation)
    facts = (parse(given),) if given else ()
    return statement(
        relation, holds, mistake=M, steps=(Step("Look.", parse("1 = 1")),), twin=(text,),
        given=facts, always=(t.Sym(always),) if always else (),  # type: ignore[arg-type]
    )  # fmt: skip


STATEMENTS = (
    ("3/4 = 9/12", True, "", ""),
    ("2/3 > 3/4", False, "", ""),
    ("1/2 ≠ 2/4", False, "", ""),
    ("√8 = 2√2", True, "", ""),
    ("√2 < 1.5", True, "", ""),
    ("6 : 9 = 2 : 3", True, "", ""),
    ("6 : 9 = 3 : 2", False, "", ""),
    ("6 : 9 ≠ 3 : 2", True, "", ""),
    ("6 : 9 ≠ 2 : 3", False, "", ""),
    ("3 km = 300 m", False, "", ""),
    ("3x - 2 = 10", True, "x = 4", ""),
    ("3x - 2 > 10", False, "x = 4", ""),
    ("x^2 + 1 = 10", True, "x = -3", ""),
    ("2(x + 3) = 2x + 6", True, "", "x"),
    ("2(x + 3) = 2x + 3", False, "", "x"),
    ("x^2 = x * x", True, "", "x"),
)


@pytest.mark.parametrize(("text", "holds", "given", "always"), STATEMENTS)
def test_a_statement_is_true_or_false_by_both_roads(
    text: str, holds: bool, given: str, always: str
) -> None:
    made = says(text, holds, given, always)
    for prove in (prove_fast, prove_symbolic):
        prove(item(made))
        with pytest.raises(CheckFailed, match="it comes to"):
            prove(item(made, t.Label("false" if holds else "true")))


CARDS = (
    ("3/5", ("1/2", "2/4", "0.5")),
    ("5 : 9", ("2 : 3", "6 : 9", "10 : 15")),
    ("2x + 3", ("2(x + 3)", "2x + 6", "6 + 2x")),
    ("x - 7 = 11", ("x + 2 = 6", "3x = 12", "x - 2 = 2")),
    ("30 g", ("3 kg", "3000 g", "1 kg + 2 kg")),
    ("3√2", ("√8", "2√2", "√2 + √2")),
)


@pytest.mark.parametrize(("odd", "others"), CARDS)
def test_there_is_one_odd_one_out_and_both_roads_find_it(odd: str, others: tuple[str, ...]) -> None:
    same = "solution" if "=" in odd else "value"
    made = odd_one_out(
        parse(odd), [parse(text) for text in others], mistakes=(), twin=(odd,), same=same,  # type: ignore[arg-type]
        steps=(Step("Look.", parse("1 = 1")),),
    )  # fmt: skip
    assert len({slip.wrong for slip in made.slips}) == 2
    for prove in (prove_fast, prove_symbolic):
        prove(item(made))
        for letter in set("ABCD") - {made.key.text}:  # type: ignore[union-attr]
            with pytest.raises(CheckFailed):
                prove(item(made, t.Label(letter)))


@pytest.mark.parametrize(
    ("odd", "others"),
    [
        ("1/2", ("2/4", "3/6", "0.5")),  # none is odd
        ("1/2", ("1/3", "2/6", "1/4")),  # two are
        ("3 kg", ("3 m", "6 m ÷ 2", "3 m")),  # not of one kind
        ("x + 1 = 3", ("y = 3", "2y = 6", "y - 1 = 2")),  # not in one letter
        ("x^2 = 4", ("x = 3", "2x = 6", "x - 1 = 2")),  # two solutions
    ],
)
def test_cards_without_one_odd_one_out_are_refused(odd: str, others: tuple[str, ...]) -> None:
    same = "solution" if "=" in odd else "value"
    made = odd_one_out(
        parse(odd), [parse(text) for text in others], mistakes=((M, 0),), twin=(odd,), same=same,  # type: ignore[arg-type]
        steps=(),
    )  # fmt: skip
    for letter in "ABCD":
        with pytest.raises(CheckFailed):
            prove_fast(item(made, t.Label(letter)))
        assert judge(item(made, t.Label(letter))).state is not State.PROVED


def solution(question: str, lines: list[str], wrong: int, right: str) -> Draft:
    does = "solves" if "=" in question else "works out"
    return spot_the_mistake(
        parse(question), [parse(line) for line in lines], wrong, parse(right), mistake=M,
        steps=(Step("Look.", parse("1 = 1")),), twin=(question,), does=does,  # type: ignore[arg-type]
    )  # fmt: skip


SOLUTIONS = (
    ("1/2 + 1/3", ["3/6 + 2/6", "5/12"], 2, "5/6"),
    ("1/2 + 1/3", ["1/6 + 1/6", "2/6", "1/3"], 1, "5/6"),
    ("2x + 5 = 17", ["2x = 22", "x = 11"], 1, "x = 6"),
    ("5(x - 2) = 20", ["5x - 10 = 20", "5x = 10", "x = 2"], 2, "x = 6"),
    ("12 : 18", ["6 : 9", "2 : 6", "1 : 3"], 2, "2 : 3"),
    ("3(x + 2) + x", ["3x + 2 + x", "4x + 2"], 1, "4x + 6"),
)


@pytest.mark.parametrize(("question", "lines", "wrong", "right"), SOLUTIONS)
def test_the_one_line_that_does_not_follow_is_found_by_both_roads(
    question: str, lines: list[str], wrong: int, right: str
) -> None:
    made = solution(question, lines, wrong, right)
    result = made.key.parts[1]  # type: ignore[union-attr]
    for prove in (prove_fast, prove_symbolic):
        prove(item(made))
        for number in {1, 2, 3} - {wrong}:
            with pytest.raises(CheckFailed):
                prove(item(made, t.Listing((t.Label(f"line {number}"), result))))
        for slip in (parse(lines[-1]), t.Int(999)):
            with pytest.raises(CheckFailed):
                prove(item(made, t.Listing((t.Label(f"line {wrong}"), slip))))


@pytest.mark.parametrize(
    ("question", "lines"),
    [
        ("1/2 + 1/3", ["3/6 + 2/6", "5/6"]),  # no mistake
        ("1/2 + 1/3", ["1/6 + 1/6", "3/6"]),  # two
        ("1/2 + 1/3", ["1/6 + 1/6", "5/6"]),  # wrong, and put right again
    ],
)
def test_a_solution_with_no_mistake_or_with_two_is_refused(question: str, lines: list[str]) -> None:
    for wrong in (1, 2):
        made = solution(question, lines, wrong, "5/6")
        for prove in (prove_fast, prove_symbolic):
            with pytest.raises(CheckFailed, match="lines do not follow"):
                prove(item(made))


def matching(cards: list[tuple[str, str]], spare: list[str]) -> Draft:
    return match_pairs(
        [(parse(text), parse(other)) for text, other in cards], [parse(text) for text in spare],
        card="sum", partner="its answer", twin=(str(cards),),
        steps=(Step("Look.", parse("1 = 1")),),
        mistakes=(CardMistake(M, 0, 1), CardMistake(replace(M, id="test.b", name="b"), 1, 2)),
    )  # fmt: skip


def test_each_card_has_one_partner_and_no_other_pairs_are_proved() -> None:
    made = matching([("1/2 + 1/4", "3/4"), ("1/2 + 1/3", "5/6"), ("1/3 + 1/3", "2/3")], ["2/5"])
    keys = [
        t.Listing(tuple(t.Label(f"{a}–{b}") for a, b in zip("ABC", chosen, strict=True)))
        for chosen in permutations("PQRS", 3)
    ]
    assert made.key in keys
    assert all(slip.wrong in keys and slip.wrong != made.key for slip in made.slips)
    for prove in (prove_fast, prove_symbolic):
        for key in keys:
            if key == made.key:
                prove(item(made, key))
            else:
                with pytest.raises(CheckFailed):
                    prove(item(made, key))


@pytest.mark.parametrize(
    ("cards", "spare"),
    [
        ([("1 + 1", "2"), ("3 - 1", "2")], ["5"]),  # two with one partner each, in two ways
        ([("1 + 1", "3"), ("2 + 2", "4")], ["5"]),  # one has none
        ([("1 + 1", "2"), ("2 + 2", "4")], ["8 ÷ 4"]),  # one has two
    ],
)
def test_cards_that_match_in_no_way_or_in_two_are_refused(
    cards: list[tuple[str, str]], spare: list[str]
) -> None:
    for prove in (prove_fast, prove_symbolic):
        with pytest.raises(CheckFailed):
            prove(item(matching(cards, spare)))


def test_what_is_printed_is_what_is_proved() -> None:
    made = says("3/4 = 9/12", True)
    other = replace(made, prompt=(made.prompt[0], parse("3/4 = 9/13"), *made.prompt[2:]))
    for prove in (prove_fast, prove_symbolic):
        with pytest.raises(CheckFailed, match="does not print"):
            prove(item(other))
    turned = replace(made, prompt=("True or false? It is not so that ", *made.prompt[1:]))
    with pytest.raises(CheckFailed):
        prove_fast(item(turned))
