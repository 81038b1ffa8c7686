"""Made-up questions, results and answers, in every state that the parts of pages can show."""

from __future__ import annotations

import datetime
from types import SimpleNamespace as Some
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable

    from itembank.desk.replying.banks_asked import InBank
    from itembank.work.department.outlook import Outlook
    from itembank.work.lesson.decide import Decided

DAY = datetime.date(2026, 11, 30)
TOPIC = "fractions.add-unlike"
_LINE = {"kind": "number line", "first": 0, "last": 1, "steps": 4, "points": {"A": 3}}
_PICTURE = {"data": _LINE, "words": "A number line from 0 to 1 with A marked on it."}


def _text(words: str) -> dict[str, str]:
    return {"kind": "text", "text": words}


def _maths(line: str) -> dict[str, str]:
    return {"kind": "math", "mathml": f"<math><mn>{line}</mn></math>", "line": line, "words": line}


def questions() -> list[dict[str, Any]]:
    """Return questions as a pack holds them: with and without picture, working and sign-off."""
    plain: dict[str, Any] = {
        "address": f"{TOPIC}/core/1",
        "topic_title": "Adding fractions",
        "tier": "core",
        "prompt": [_text("Double "), _maths("8"), _text(".")],
        "key": {**_maths("16"), "form_words": "a whole number"},
        "ask": {"kind": "find", "target": ["2 × 8"]},
        "steps": [],
        "misconceptions": [],
        "source": None,
    }
    full = {
        "steps": [
            {"say": "Add 8 and 8.", "maths": _maths("16"), "picture": None},
            {"say": "Look at the line.", "maths": None, "picture": _PICTURE},
        ],
        "misconceptions": [{"wrong": _maths("10"), "name": "adds 2", "ask": "What is 2 × 8?"}],
    }
    cards = [_text("Match each sum with its answer.\n(A)\u00a0"), _maths("1"), _text(".")]
    return [
        plain,
        {**plain, "many": True, **full, "prompt": cards, "ask": {"kind": "match", "target": []}},
        {**plain, "many": False, "picture": _PICTURE, "key_picture": _PICTURE},
        *({**plain, "source": _source(state)} for state in ("none", "signed", "stale", "unsigned")),
    ]


def _source(state: str) -> dict[str, Any]:
    signed = [{"by": "HT"}, {"by": "BK"}] if state != "unsigned" else []
    return {"proved": "from a model", "sign_off": state, "signed": signed}


def in_banks() -> list[InBank]:
    """Return where questions stand in their bank: signed and not, and said otherwise by now."""
    from itembank.desk.replying.banks_asked import InBank
    from itembank.work.bank.signed_now import SignedNow

    signs = (SignedNow("signed", ("HT",), True), SignedNow("unsigned", (), False))
    return [InBank("/questions", sign, sign.state != "signed") for sign in signs]


def decisions() -> list[Decided]:
    """Return what lessons came to: hands, marked work with all that can be said of it, and less."""
    from itembank.records.entries.entries import LessonFacts, QuestionFacts
    from itembank.records.reports.advice import Thresholds, advise
    from itembank.records.reports.decision import BandGroup, Decision, QuestionAdvice
    from itembank.records.statistics.own_view import OwnView, Pairs
    from itembank.work.lesson.decide import Decided

    facts = LessonFacts("8K", DAY, 8, "Fractions")
    asked = QuestionFacts(1, f"{TOPIC}/core/1", TOPIC, "core", "Work out 1/2 − 1/3.")
    hands = tuple(
        BandGroup(name[0], name, low, high, pupils)
        for name, low, high, pupils in (
            ("Rebuild", 0, 4, 9),
            ("Secure", 5, 6, 12),
            ("Extend", 8, 8, 1),
        )
    )
    seats = (BandGroup("R", "Rebuild", 0, 4, 2, ("A1", "B3")), BandGroup("E", "Extend", 7, 8, 1))
    lines = (
        QuestionAdvice(asked, 1, 3, advise(1, 3), ("A1", "B3"), {"fractions.across": 2}),
        QuestionAdvice(QuestionFacts(2, "", TOPIC, "core"), 27, 28, advise(27, 28)),
    )
    views = OwnView(Pairs(0, 0), ("A1",), ("B3",), {"sure": 12, "partly": 9, "unsure": 7})
    quiet = OwnView(Pairs(0, 0), (), (), {"sure": 2})
    known = [
        Decision(facts, "bands", 22, hands, None, (), {}, None, (), None),
        Decision(facts, "answers", 3, seats, advise(20, 28), lines, {}, views, (), (3, 28, "box")),
        Decision(facts, "", 0, (), None, (), {}, quiet, (), (1, None, "")),
        Decision(facts, "", 0, (), None, (), {}, None, (), (2, 28, "")),
    ]
    return [Decided(decision, Thresholds(), ()) for decision in known]


def mistake(topic: str, name: str) -> str:
    """Return the words for the one mistake that :func:`decisions` names."""
    return "adds tops and bottoms"


def outlooks() -> list[Outlook]:
    """Return what answers mean: none yet, some, and all of them."""
    from itembank.work.department.outlook import (
        ClassOutlook,
        Outlook,
        SchemeOutlook,
        TopicOutlook,
    )

    term = "Autumn: Thursday 3 September 2026 to Friday 18 December 2026"
    groups = (
        ClassOutlook("8K", "Monday 1, Thursday 2", "29 seats", (("Autumn", 28), ("Spring", 22))),
        ClassOutlook("7M", "no lessons yet", "no seats yet", ()),
    )
    topics = (TopicOutlook(TOPIC, "Adding fractions", "from Monday 7 September"),)
    schemes = (SchemeOutlook("year-8", 8, topics), SchemeOutlook("year-9", 9, ()))
    return [
        Outlook("", (), (), (), ()),
        Outlook("Larkhythe School", (term,), groups, schemes, ("Rebuild: 0 to 4 of 8",)),
    ]


def steps() -> Iterable[Any]:
    """Yield the steps of the conversation about a department, each with its scheme."""
    for part in ("school", "year", "classes", "topics", "bands"):
        yield Some(part=part, scheme=Some(name="year-8", year=8))
