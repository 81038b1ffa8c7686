"""Answers about statements, cards and wrong lines, as pupils type them; by both markers."""

from __future__ import annotations

import pytest

from itembank.items.item import Item, Misconception, Tier
from itembank.items.kinds import (
    CardMistake,
    match_pairs,
    odd_one_out,
    spot_the_mistake,
    statement,
)
from itembank.items.topics.registry import find_topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.text.in_words import DAYS

M, N = Misconception("test.slip", "slips", "Where?"), Misconception("test.b", "b", "How?")
R, K, W, U = Verdict.RIGHT, Verdict.KNOWN, Verdict.WRONG, Verdict.UNREADABLE


def item(draft) -> Item:
    return Item(
        "test.kinds/core/0", "test.kinds", Tier.CORE, draft.prompt, draft.ask, draft.key,
        draft.form, draft.steps, draft.slips, draft.twin, draft.marks, (),
    )  # fmt: skip


FALSE = item(statement(parse("1/2 + 1/3 = 2/5"), False, mistake=M, steps=(), twin=(1,)))
ODD = item(
    odd_one_out(
        parse("3/5"),
        [parse(x) for x in ("1/2", "2/4", "4/8")],
        mistakes=((M, 0),),
        steps=(),
        twin=(4,),
    )
)
C = next(letter for letter, card in zip("ABCD", ODD.ask.cards, strict=True) if card == parse("3/5"))
X = next(letter for letter, card in zip("ABCD", ODD.ask.cards, strict=True) if card == parse("1/2"))
LINE = item(
    spot_the_mistake(
        parse("1/2 + 1/3"),
        [parse("3/6 + 2/6"), parse("5/12")],
        2,
        parse("5/6"),
        mistake=M,
        steps=(),
        twin=(1,),
    )
)
SOLVED = item(
    spot_the_mistake(
        parse("2x + 5 = 17"),
        [parse("2x = 22"), parse("x = 11")],
        1,
        parse("x = 6"),
        mistake=M,
        steps=(),
        twin=(1,),
        does="solves",
    )
)
MATCH = item(
    match_pairs(
        [
            (parse("1/2 + 1/4"), parse("3/4")),
            (parse("1/2 + 1/3"), parse("5/6")),
            (parse("1/3 + 1/3"), parse("2/3")),
        ],
        [parse("2/5")],
        card="sum",
        partner="its answer",
        mistakes=(CardMistake(M, 1, 3), CardMistake(N, 0, 2)),
        steps=(),
        twin=(3,),
    )
)
PAIRS = [pair.text.split("–") for pair in MATCH.key.parts]
TYPED = (
    *(
        (FALSE, text, R)
        for text in ("false", "False.", "F", "f", "no", "wrong", "not true", "It's false", "✗")
    ),
    (FALSE, "False because 1/2 + 1/3 = 5/6, which is not 2/5", R),
    *((FALSE, text, K) for text in ("true", "T", "yes", "True, you add them")),
    *((FALSE, text, U) for text in ("true or false", "maybe", "5/6", "")),
    *((ODD, text, R) for text in (C, C.lower(), f"({C})", f"{C} because it is 3/5", "3/5")),
    *((ODD, text, K) for text in (X, "1/2")),
    (ODD, "7", W),
    *(
        (LINE, text, R)
        for text in (
            "2, 5/6",
            "line 2, 5/6",
            "Line 2: 5/6",
            "2 5/6",
            "line 2 should be 5/6",
            "second line 5/6",
            "2nd, 5/6",
            "2 and 5/6",
        )
    ),
    (LINE, "2, 10/12", R),
    (LINE, "2, 5/12", K),
    (LINE, "1, 5/6", K),
    (LINE, "1, 5/12", W),
    (LINE, "2, 1/6", W),
    *((LINE, text, U) for text in ("5/6", "2", "line 2", "line two")),
    *((SOLVED, text, R) for text in ("1, x = 6", "1, 6", "line 1: x=6", "Line 1, 6 = x")),
    (SOLVED, "1, x = 11", K),
    (SOLVED, "2, x = 6", K),
    *(
        (MATCH, text, R)
        for text in (
            ", ".join("".join(pair) for pair in PAIRS),
            " ".join(f"{one}-{other}" for one, other in PAIRS).lower(),
            ", ".join(f"{one} with {other}" for one, other in reversed(PAIRS)),
            "; ".join(f"{other} = {one}" for one, other in PAIRS),
            " ".join(other for _, other in PAIRS),
        )
    ),
    (MATCH, f"A{PAIRS[1][1]} B{PAIRS[0][1]} C{PAIRS[2][1]}", W),
    *((MATCH, text, U) for text in ("AP", "AP BP CQ", "3/4, 5/6, 2/3", "A1 B2 C3")),
)


@pytest.mark.parametrize(("asked", "text", "verdict"), TYPED)
def test_a_typed_answer_is_read_as_it_is_meant(asked: Item, text: str, verdict: Verdict) -> None:
    assert mark(asked, text).verdict is verdict, mark(asked, text)


def test_likely_mistakes_are_known_and_hints_do_not_tell_the_answer() -> None:
    swapped = dict(PAIRS) | {"A": PAIRS[2][1], "C": PAIRS[0][1]}
    found = mark(MATCH, " ".join(f"{one}{other}" for one, other in swapped.items()))
    assert (found.verdict, found.misconception) == (K, N)
    two = mark(MATCH, f"A{PAIRS[1][1]} B{PAIRS[0][1]} C{PAIRS[2][1]}").says
    assert two == "1 of the 3 pairs is right: look again at the rest."
    assert "5/6" not in mark(LINE, "2, 1/6").says
    assert mark(LINE, "1, 1/6").says.startswith("Check each line")


def test_the_self_marking_page_says_the_same(browser) -> None:
    from itembank.selfmark.questions import question_data
    from tests.selfmark.test_same_verdict import MARK_ALL, marker_page, said

    page = marker_page(browser)
    cases = [[question_data(asked), [text]] for asked, text, _ in TYPED]
    found = [one[0] for one in page.evaluate(MARK_ALL, cases)]
    assert found == [said(asked, text) for asked, text, _ in TYPED]


@pytest.mark.parametrize("text", ["{short}", "{full}", "on {full}", "It was {full}.", "{FULL}"])
def test_a_day_may_be_written_whole_where_the_chart_cuts_it_short(text):
    topic = find_topic("statistics.bar-charts")
    tried = 0
    for index in range(0, 236, 5):
        item = topic.item(Tier.SUPPORT, index)
        if not isinstance(item.key, t.Label) or item.key.text not in ("Mon", "Tue", "Wed", "Thu"):
            continue
        tried += 1
        full = {day[:3]: day for day in DAYS}
        right = full.pop(item.key.text)
        typed = text.format(short=item.key.text, full=right, FULL=right.upper())
        assert mark(item, typed).verdict is Verdict.RIGHT, (item.address, typed)
        for other in ("Mon", "Tue", "Wed", "Thu"):
            if other in full:
                assert mark(item, full[other]).verdict is not Verdict.RIGHT
    assert tried > 5
