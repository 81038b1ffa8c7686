"""The body of the page: what it says before the questions, the questions, and the result after."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape

from itembank.packs.data.pack import Band, Pack, Sheet
from itembank.packs.data.pack_item import PackItem
from itembank.selfmark.html_question import example_to_finish, html_question, worked_example
from itembank.text.in_words import long_date

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


def page_body(pack: Pack, check: str, signs: Mapping[str, str]) -> list[str]:
    """Return what stands in the page, line by line."""
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
        *[html_question(item, n, f"v{place}q{n}") for n, item in enumerate(items, 1)],
        "</ol>",
        "</section>",
    ]


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
        *(worked_example(sheet.worked) if sheet.worked else []),
        *(example_to_finish(sheet.part_finished, sheet.tier) if sheet.part_finished else []),
        '<ol class="questions">',
        *[html_question(item, n, f"{sheet.tier}-{n}") for n, item in enumerate(sheet.items, 1)],
        "</ol>",
        "</section>",
    ]
