"""The page as HTML: one file, with its scripts, faces and questions in it, that asks for nothing.

What may run is said by a content-security policy: the page's own script, by its hash, and no
other. Every word of a question goes in escaped. The keys stand in the page veiled, which keeps an
honest pupil from seeing one by accident, and no more.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
from collections.abc import Mapping, Sequence
from functools import cache
from html import escape
from importlib.resources import files
from typing import Any

from itembank.items.item import Item
from itembank.notation.browser_brackets import closed_up
from itembank.packs.data.pack import Band, Pack, Sheet
from itembank.packs.data.pack_item import Maths, PackItem, Picture, TextRun
from itembank.packs.pack_checks import stored_items
from itembank.selfmark.questions import question_data
from itembank.selfmark.slip import slip_key
from itembank.text.in_words import long_date

NAME = "self-mark.html"
_HERE = files("itembank.selfmark")
_FACES = (
    ("Board Sans", "normal", "BoardSans-Regular"),
    ("Board Sans", "bold", "BoardSans-Bold"),
    ("Board Math", "normal", "BoardMath-Regular"),
)
_SIGNS = (
    ("/", "fraction bar"),
    ("×", "times"),
    ("÷", "divided by"),
    ("−", "minus"),
    ("=", "equals"),
    ("^", "to the power"),
    ("²", "squared"),
    ("√", "root"),
    ("π", "pi"),
    (":", "ratio colon"),
    ("<", "less than"),
    (">", "more than"),
    ("≤", "at most"),
    ("≥", "at least"),
    ("£", "pounds"),
    ("%", "per cent"),
    ("°", "degrees"),
)


def self_mark_page(
    pack: Pack, stored: bytes, items: Sequence[Item], signs: Mapping[str, str]
) -> bytes:
    """Return the page of a pack: the same bytes for the same pack.

    Parameters
    ----------
    pack
        The pack, proved.
    stored
        The pack's `pack.json`, from which the key of its result slips is made.
    items
        Its questions, in the order of :func:`~itembank.packs.pack_checks.stored_items`.
    signs
        The sign of each band as SVG, by its letter.
    """
    questions = {id(kept): item for (_, kept), item in zip(stored_items(pack), items, strict=True)}
    check = pack.look.self_mark
    data = _data(pack, slip_key(stored), questions, check)
    script, style = page_script(), page_style()
    policy = (
        f"default-src 'none'; script-src '{_hash(script)}'; style-src '{_hash(style)}'; "
        "font-src data:; base-uri 'none'; form-action 'none'"
    )
    title = f"{pack.lesson.title}: mark your own answers"
    return "\n".join(
        [
            "<!DOCTYPE html>",
            '<html lang="en-GB">',
            "<head>",
            '<meta charset="utf-8">',
            f'<meta http-equiv="Content-Security-Policy" content="{escape(policy)}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            '<meta name="referrer" content="no-referrer">',
            f"<title>{escape(title)}</title>",
            f"<style>{style}</style>",
            "</head>",
            "<body>",
            *_body(pack, check, signs),
            f'<script type="text/plain" id="answers">{_veiled(data)}</script>',
            f"<script>{script}</script>",
            "</body>",
            "</html>",
            "",
        ]
    ).encode()


def _hash(text: str) -> str:
    digest = hashlib.sha256(text.encode()).digest()
    return f"sha256-{base64.b64encode(digest).decode()}"


@cache
def page_script() -> str:
    """Return the one script of every page: the tables, the marker, the slip and the page."""
    tables = (_HERE / "tables.json").read_text(encoding="ascii").replace("<", "\\u003c")
    folder = _HERE / "scripts"
    parts = sorted(part.name for part in folder.iterdir() if part.name.endswith(".js"))
    scripts = "".join((folder / part).read_text(encoding="utf-8") for part in parts)
    assert "</" not in scripts, "this would end the script"
    # In a browser too old for what the script needs, the words that say so stay.
    return f"""
(function () {{
"use strict";
try {{
  if (typeof BigInt !== "function") return;
  new RegExp("(?<a>a)\\\\p{{L}}", "u");
}} catch (error) {{ return; }}
document.getElementById("old").hidden = true;
const TABLES = {tables.strip()};
{scripts}
begin();
}})();
"""


@cache
def page_style() -> str:
    """Return the style of every page, its typefaces in it."""
    folder = files("itembank.pages.typefaces")
    faces = []
    for family, weight, name in _FACES:
        data = base64.b64encode((folder / f"{name}.woff2").read_bytes()).decode()
        faces.append(
            f'@font-face {{ font-family: "{family}"; font-weight: {weight}; '
            f"src: url(data:font/woff2;base64,{data}) format('woff2'); }}"
        )
    return "\n".join([*faces, (_HERE / "page" / "page.css").read_text(encoding="utf-8")])


def _data(pack: Pack, key: str, items: dict[int, Item], check: str) -> dict[str, Any]:
    def questions(stored: Sequence[PackItem]) -> list[dict[str, Any]]:
        return [{"marks": kept.marks, **question_data(items[id(kept)])} for kept in stored]

    return {
        "check": check,
        "key": key,
        "versions": [
            {"letter": version.letter, "questions": questions(version.items)}
            for version in pack.versions
        ],
        "sheets": {sheet.tier: questions(_asked(sheet)) for sheet in pack.sheets},
        "bands": [
            {
                "letter": band.letter,
                "lowest": band.lowest,
                "highest": band.highest,
                "tier": band.task.tier,
            }
            for band in pack.bands
        ],
    }


def _veiled(data: dict[str, Any]) -> str:
    """Return data as text that shows nothing at a glance; the page's script lifts the veil."""
    plain = json.dumps(data, ensure_ascii=True, separators=(",", ":")).encode("ascii")
    veil = (_veil() * (len(plain) // len(_veil()) + 1))[: len(plain)]
    # As two whole numbers, which is quicker than byte by byte.
    both = int.from_bytes(plain, "big") ^ int.from_bytes(veil, "big")
    return base64.b64encode(both.to_bytes(len(plain), "big")).decode()


@cache
def _veil() -> bytes:
    """Return the bytes of the veil, which begins anew behind its end."""
    veil, found = 1, bytearray()
    for _ in range(1024):
        veil = (veil * 75 + 74) % 65537
        found.append(veil & 255)
    return bytes(found)


def _body(pack: Pack, check: str, signs: Mapping[str, str]) -> list[str]:
    lesson = pack.lesson
    several = len(pack.versions) > 1
    return [
        "<header>",
        f'<p class="about">{_joined(lesson.school, lesson.class_name, long_date(lesson.date))}</p>',
        f"<h1>{escape(lesson.title)}: mark your own answers</h1>",
        "</header>",
        "<main>",
        "<noscript><p>This page marks your answers with a script, and scripts are switched off "
        "here. Ask your teacher.</p></noscript>",
        '<div id="old" class="notice"><p>If no questions stand below, this browser is too old for '
        "this page. Try another device, or write your answers on paper.</p></div>",
        '<div id="work" hidden>',
        f"<p>{_HOW[check]} You can write your working as well.</p>",
        "<p>Nothing that you type is saved or sent. When you close this page, it is gone.</p>",
        *(_choice(pack) if several else []),
        *[
            part
            for place, version in enumerate(pack.versions)
            for part in _version(version.letter, version.items, place)
        ],
        '<div id="signs" class="signs" role="group" aria-label="Signs to put in" hidden>',
        *[
            f'<button type="button" class="sign plain" data-sign="{escape(sign)}" '
            f'aria-label="{name}">{escape(sign)}</button>'
            for sign, name in _SIGNS
        ],
        "</div>",
        '<div id="notice" class="notice" role="alert" tabindex="-1" hidden></div>',
        f'<button type="button" id="finish">{_FINISH[check]}</button>',
        *_result(pack, signs),
        "</div>",
        "</main>",
        "<footer><p>This page keeps no names. Your slip has your seat code and your score, and "
        "nobody sees it unless you show it.</p></footer>",
    ]


_HOW = {
    "when done": "Type your answer to each question, then check them all at the end.",
    "question by question": "Type your answer to a question, then check it before you go on. "
    "The first check of each question counts.",
}
_FINISH = {"when done": "Check my answers", "question by question": "I have finished"}


def _joined(*texts: str) -> str:
    return " · ".join(escape(text) for text in texts if text)


def _choice(pack: Pack) -> list[str]:
    return [
        "<fieldset><legend>Which version do you have?</legend>",
        *[
            f'<label><input type="radio" name="version" value="{escape(version.letter)}"'
            f"{' checked' if not place else ''}> Version {escape(version.letter)}</label>"
            for place, version in enumerate(pack.versions)
        ],
        "</fieldset>",
    ]


def _version(letter: str, items: Sequence[PackItem], place: int) -> list[str]:
    return [
        f'<section class="version" aria-label="Questions, version {escape(letter)}"'
        f"{' hidden' if place else ''}>",
        "<h2>Questions</h2>",
        '<ol class="questions">',
        *[_question(item, n, f"v{place}q{n}") for n, item in enumerate(items, 1)],
        "</ol>",
        "</section>",
    ]


def _question(item: PackItem, number: int, name: str) -> str:
    worth = "" if item.marks == 1 else f' <span class="small">({item.marks} marks)</span>'
    return (
        f'<li class="question"><h3>Question {number}{worth}</h3>'
        f'<p class="prompt" id="{name}-asks">{_prompt(item)}</p>{_picture(item.picture)}'
        f"{_answer_part(item, name, f'question {number}')}</li>"
    )


def _answer_part(item: PackItem, name: str, what: str) -> str:
    """Return the box for an answer, or what to do with one that is drawn."""
    if not item.drawn:
        return _answer_box(name, what)
    return (
        '<p class="small">Draw your answer on paper. This page cannot see it: your teacher will '
        'look at it.</p><div class="said" role="status" hidden></div>'
    )


def _answer_box(name: str, what: str) -> str:
    return (
        f'<label for="{name}">Your answer to {what}</label>'
        f'<textarea id="{name}" rows="1" maxlength="200" aria-describedby="{name}-asks" '
        'autocapitalize="off" autocomplete="off" spellcheck="false"></textarea>'
        '<div><button type="button" class="check plain">Check '
        f'<span class="small">{what}</span></button></div>'
        '<div class="said" role="status" hidden></div>'
    )


def _prompt(item: PackItem) -> str:
    """Return the words of a question, its rows of cards each on a line, each card by its name."""
    done, name = "", ""
    for run in item.prompt:
        if isinstance(run, TextRun):
            text = f"{name}{escape(run.text)}"
            start = _NAME.search(text)
            name = start[0] if start else ""
            done += text.removesuffix(name).replace("\n", "<br>")
        else:
            done += f'<span class="tied">{name}{_maths(run)}</span>' if name else _maths(run)
            name = ""
    return done + name


_NAME = re.compile(r"(?:(?<=\n)[^\n]{1,12}:|[^\s]+)\u00a0$")
"""The name of a card or a line at the end of words: a browser would leave it alone there."""


def _picture(picture: Picture | None) -> str:
    """Return a figure, drawn as everywhere, with its words for who cannot see it."""
    if picture is None:
        return ""
    from itembank.figures.svg import svg

    return f'<div class="picture">{svg(picture.figure)}</div>'


def _maths(maths: Maths) -> str:
    """Return mathematics with what is said of it, and its line for browsers that set none."""
    said = f'<math aria-label="{escape(maths.words)}" '
    drawn = closed_up(maths.mathml).replace("<math ", said, 1)
    return f'{drawn}<span class="line">{escape(maths.line)}</span>'


def _result(pack: Pack, signs: Mapping[str, str]) -> list[str]:
    return [
        '<div id="result" class="result" hidden>',
        '<h2 id="result-heading" tabindex="-1">How it went</h2>',
        '<p id="score"></p>',
        '<p id="left" hidden></p>',
        *[part for band in pack.bands for part in _band(band, signs[band.letter])],
        '<p class="small">A band says what to do next. It is a teaching aid, not a grade.</p>',
        "<p>Look at what is said under each question. You can change an answer and check it "
        "again; your score stays what it was the first time.</p>",
        "<h3>Your result slip</h3>",
        '<label for="seat">Your seat code, such as A1</label>',
        '<input type="text" id="seat" maxlength="8" autocomplete="off" spellcheck="false" '
        'aria-describedby="seat-fault">',
        '<p id="seat-fault" hidden>A seat code has a number in it, and no spaces or names.</p>',
        '<div><button type="button" id="make-slip">Make my slip</button></div>',
        '<div id="slip" class="slip" tabindex="-1" aria-label="Your result slip" role="group" '
        "hidden>",
        f"<p><strong>{_joined(pack.lesson.class_name, pack.lesson.title)}</strong></p>",
        '<p id="slip-seat"></p>',
        '<svg id="slip-picture" role="img" aria-label="The code below as a picture" '
        'viewBox="0 0 1 1"><path d=""></path></svg>',
        '<p class="code" id="slip-code"></p>',
        "<p>Show this to your teacher, or copy the line.</p>",
        "</div>",
        *[part for sheet in pack.sheets for part in _sheet(sheet)],
        "</div>",
    ]


def _band(band: Band, sign: str) -> list[str]:
    task = band.task
    lines = (
        ("First", task.first),
        ("How", task.how),
        ("Where", task.where),
        ("If you are stuck", task.stuck),
        ("When you have finished", task.finished),
    )
    return [
        f'<div class="band-part" data-band="{escape(band.letter)}" hidden>',
        f'<p class="band">{sign}<span>Your band is {escape(band.name)}.</span></p>',
        f"<h3>What to do next: {escape(task.title)}</h3>",
        *[f"<p><strong>{head}:</strong> {escape(said)}</p>" for head, said in lines if said],
        "</div>",
    ]


def _sheet(sheet: Sheet) -> list[str]:
    return [
        f'<section class="follow-up" data-tier="{escape(sheet.tier)}" '
        'aria-label="Questions of your next task" hidden>',
        "<h2>Your next questions</h2>",
        *(_worked(sheet.worked) if sheet.worked else []),
        *(_to_finish(sheet.part_finished, sheet.tier) if sheet.part_finished else []),
        '<ol class="questions">',
        *[_question(item, n, f"{sheet.tier}-{n}") for n, item in enumerate(sheet.items, 1)],
        "</ol>",
        "</section>",
    ]


def _asked(sheet: Sheet) -> list[PackItem]:
    """Return the questions of a sheet that a pupil answers, in the order of their boxes."""
    return [*filter(None, [sheet.part_finished]), *sheet.items]


def _worked(item: PackItem) -> list[str]:
    return [
        "<h3>Worked example</h3>",
        f'<p class="prompt">{_prompt(item)}</p>{_picture(item.picture)}',
        *_steps(item, 0),
        f"<p><strong>Answer:</strong> {_maths(item.key)}</p>{_picture(item.key_picture)}",
    ]


def _to_finish(item: PackItem, tier: str) -> list[str]:
    """Return an example whose second half is left to the pupil, as on the sheet."""
    name = f"{tier}-finish"
    return [
        '<div class="question"><h3>Now finish this one</h3>',
        f'<p class="prompt" id="{name}-asks">{_prompt(item)}</p>{_picture(item.picture)}',
        *_steps(item, item.left_to_finish),
        _answer_part(item, name, "this one"),
        "</div>",
    ]


def _steps(item: PackItem, hidden: int) -> list[str]:
    """Return the steps of a solution, the mathematics of the last `hidden` left out."""
    with_maths = [place for place, step in enumerate(item.steps) if step.maths is not None]
    left_out = frozenset(with_maths[len(with_maths) - hidden :])
    found = []
    for place, step in enumerate(item.steps):
        shown = f" {_maths(step.maths)}" if step.maths and place not in left_out else ""
        drawn = "" if place in left_out else _picture(step.picture)
        found.append(f"<li>{escape(step.say)}{' …' if place in left_out else shown}{drawn}</li>")
    return ['<ol class="steps">', *found, "</ol>"]
