"""Every part that pages are made of, in every state it can have: for those who build the desk.

No page links here. The tests of all pages hold it to the same as the others, so a state that
hardly ever comes about is looked at too.
"""

from __future__ import annotations

import datetime
from types import SimpleNamespace as Some
from typing import Any

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from itembank.desk.replying import made_up
from itembank.desk.replying.band_plot import band_bar, band_patterns, pattern_patch
from itembank.desk.replying.replies import page
from itembank.work.report.lesson_words import asked_line, overall_line

DAY = made_up.DAY
COLOURS = {"R": "#0072B2", "S": "#CC79A7", "E": "#000000"}


def show(request: Request) -> Response:
    """Show all parts."""
    return page(
        request,
        "shown_parts",
        now=DAY,
        lessons=_lessons(),
        proofs=_proofs(),
        signs=_signs(),
        faces=_faces(),
        looked=_looked(),
        weeks=_weeks(),
        bands=_weeks()[0].bands,
        at=Some(url=lambda *parts: "/questions"),
        band_bar=band_bar,
        band_patterns=lambda letters: band_patterns(letters, COLOURS),
        pattern_patch=pattern_patch,
        questions=made_up.questions(),
        in_banks=made_up.in_banks(),
        decisions=made_up.decisions(),
        overall=overall_line,
        asked_line=asked_line,
        mistakes=made_up.mistake,
        title_of=str,
        outlooks=made_up.outlooks(),
        steps=list(made_up.steps()),
    )


def _lessons() -> list[Any]:
    told = dict.fromkeys(("recorded", "scored", "covered"), False)
    usual = {"gone": "", **told, "folder": "x", "as_planned": True, "planned": True, "early": False}
    return [
        Some(**{**usual, "date": DAY, **differs})
        for differs in (
            {},
            {"gone": "school trip"},
            {"recorded": True, "scored": True},
            {"recorded": True, "covered": True},
            {"recorded": True},
            {"as_planned": False},
            {"date": DAY - datetime.timedelta(days=1)},
            {"folder": None},
            {"folder": None, "planned": None},
            {"folder": None, "planned": None, "early": True},
        )
    ]


def _proof(state: str, *, modelled: bool = False, says: str = "", **roads: str) -> Any:
    known = {"first": "20, 40", "second": "20, 40", **roads}
    return Some(state=state, modelled=modelled, says=says, **known)


def _proofs() -> list[Any]:
    return [
        None,
        _proof("proved"),
        _proof("proved", modelled=True),
        _proof("disproved", says="It comes to 20, 40.", first=""),
        _proof("disproved", says="It comes to 20, 40.", second=""),
        _proof("disproved", says="It comes to 20, 40."),
        _proof("needs-a-person", says="The words ask for a reason.", first="", second=""),
    ]


def _signs() -> list[Any]:
    return [
        Some(state="unsigned", signoffs=[]),
        Some(state="signed", signoffs=[Some(by="HT")]),
        Some(state="signed", signoffs=[Some(by="HT"), Some(by="BK")]),
        Some(state="stale", signoffs=[Some(by="HT")]),
    ]


def _text(words: str) -> dict[str, str]:
    return {"kind": "text", "text": words}


def _faces() -> list[Any]:
    prompt, key = [_text("Share £60 in the ratio 1 : 2.")], _text("£20, £40")
    plain = {"prompt": prompt, "key": key, "form": "in order"}
    return [
        Some(**plain, many=False, marks=1, steps=[], slips=[]),
        Some(
            **plain,
            many=True,
            marks=2,
            steps=[("Add the parts.", _text("1 + 2 = 3")), ("Say what each is.", None)],
            slips=[(_text("£30, £30"), "shares equally", "How many parts has each?")],
        ),
    ]


def _looked() -> list[Any]:
    face = _faces()[1]
    trials = [Some(outcome=proof, twins=[], changes=[]) for proof in _proofs()[1:]]
    trials.append(
        Some(outcome=_proofs()[1], twins=["pool-1", "pool-2"], changes=["tier: was core"])
    )
    tried = [Some(trial=trial, face=face, prompt="", faults={}) for trial in trials]
    return [
        *tried,
        Some(trial=None, face=None, prompt="", faults={}),
        Some(
            trial=None,
            face=None,
            prompt=[_text("Share £60")],
            faults={"key": ["No key yet."]},
        ),
    ]


def _weeks() -> list[Any]:
    names = {"R": "Rebuild", "S": "Secure", "E": "Extend"}
    counts = [(9, 12, 7), (1, 26, 1), (0, 0, 28)]
    return [
        Some(
            monday=DAY - datetime.timedelta(days=7 * place),
            lessons=place + 1,
            bands=[
                Some(letter=letter, name=name, pupils=count)
                for (letter, name), count in zip(names.items(), some, strict=True)
            ],
        )
        for place, some in enumerate(counts)
    ]


ROUTES = [Route("/shown-parts", show)]
