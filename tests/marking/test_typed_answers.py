"""Answers as pupils type them, over many topics and forms, with a fair teacher's verdict."""

from __future__ import annotations

import importlib.util
import re
from dataclasses import replace
from pathlib import Path

from itembank.items.item import (
    Choose,
    Common,
    Compare,
    Find,
    Inequality,
    Item,
    Misconception,
    Order,
    Rewrite,
    Round,
    Sequence,
    Slip,
    Solve,
    Subject,
)
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import tree as t
from itembank.notation.parse import parse

_spec = importlib.util.spec_from_file_location(
    "questions", Path(__file__).with_name("questions.py")
)
_module = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(_module)
question = _module.question

VERDICTS = {
    "right": Verdict.RIGHT,
    "form": Verdict.WRONG_FORM,
    "known": Verdict.KNOWN,
    "wrong": Verdict.WRONG,
    "unread": Verdict.UNREADABLE,
}


def _ask(kind: str, maths: list, key: object) -> object:
    word, *rest = kind.split()
    each = tuple(
        part for math in maths for part in (math.parts if isinstance(math, t.Listing) else (math,))
    )
    match word:
        case "solve":
            return Solve(tuple(maths))
        case "inequality":
            return Inequality(maths[0])
        case "expand" | "factorise" | "simplify":
            return Rewrite(maths[0], word)
        case "subject":
            return Subject(maths[1], maths[0])
        case "sequence":
            return Sequence(each)
        case "hcf" | "lcm":
            return Common(each, word)
        case "round":
            return Round(maths[0], rest[0], int(rest[1]))
        case "compare":
            return Compare(maths[0], maths[1])
        case "order":
            return Order(each)
        case "choose":
            return Choose((("Pack A", maths[0]), ("Pack B", maths[2])), "least")
        case "T":
            return Find(t.Sym("T"), tuple(math for math in maths if isinstance(math, t.Relation)))
    raise AssertionError(kind)


def _item(line: str) -> Item:
    prompt, key, form, *kind = (part.strip() for part in line[1:].split(" ; "))
    ask = (lambda maths: _ask(kind[0], maths, key)) if kind else None
    return question(key, form, prompt, ask)


def cases():
    """Yield each answer with its item, its verdict and the words that must be said."""
    item = None
    lines = Path(__file__).with_name("typed_answers.txt").read_text(encoding="utf-8").splitlines()
    rows = []
    for line in lines:
        if line.startswith("?"):
            item = _item(line)
        elif line.startswith("slip:"):
            slip = Slip(Misconception("made.one", "made", "Why?"), parse(line[5:].strip()))
            for row in rows:
                if row[0] == item:
                    row[0] = replace(item, slips=(slip,))
        elif line and not line.startswith("#"):
            found = re.fullmatch(r'(\w+)(?: "(.+?)")?: (.*)', line)
            for typed in found[3].split(" | "):
                said = found[2] or ""
                rows.append([item, typed.replace("\\n", "\n"), VERDICTS[found[1]], said])
    return rows


CASES = cases()


def test_there_are_many():
    assert len(CASES) > 800
    assert not any(isinstance(item.key, t.Label) for item, *_ in CASES[:50])


def test_the_verdict_is_a_fair_teachers():
    unfair = []
    for item, typed, verdict, says in CASES:
        marked = mark(item, typed)
        fair = marked.verdict is verdict and says in marked.says
        if not fair or not (marked.says or verdict is Verdict.RIGHT):
            unfair.append((item.prompt, typed, verdict, says, marked))
    assert unfair == []
