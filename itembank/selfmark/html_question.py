"""A question of the page as HTML: its words, its mathematics, its picture, and the box beneath."""

from __future__ import annotations

import re
from html import escape

from itembank.notation.browser_brackets import closed_up
from itembank.packs.data.pack_item import Maths, PackItem, Picture, TextRun


def html_question(item: PackItem, number: int, name: str) -> str:
    """Return a question with its number, as an entry of a list."""
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
    """Return the words of a question, its rows of cards each on a line.

    A browser may end a line between a formula and the full stop behind it, so a formula is tied
    to what stands against it, such as the name of a card.
    """
    done, tied = "", ""
    for run in item.prompt:
        if not isinstance(run, TextRun):
            tied += _maths(run)
            continue
        words = run.text
        ends = _SPACE.search(words) if tied else None
        against = words[: ends.start()] if ends else words if tied else ""
        tied += escape(against)
        rest = words[len(against) :]
        if not rest:
            continue
        named = _NAMED_ROW.search(rest)
        begins = max((space.end() for space in _SPACE.finditer(rest)), default=0)
        begins = named.start() if named else begins
        done += _as_one(tied) + escape(rest[:begins]).replace("\n", "<br>")
        tied = escape(rest[begins:])
    return done + _as_one(tied)


_SPACE = re.compile(r"[^\S\u00a0]")
"""Where a line may end: not at a space that holds the name of a card beside it."""
_NAMED_ROW = re.compile(r"(?<=\n)[^\n]{1,12}:\u00a0\Z")
"""The name of a row that a formula goes on: ‘Line 1:’ is read with it."""


def _as_one(tied: str) -> str:
    """Return a formula and what stands against it so that no line ends between them."""
    alone = tied.startswith("<math") and tied.endswith("</span>") and tied.count("<math") == 1
    return tied if alone or "<math" not in tied else f'<span class="tied">{tied}</span>'


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


def worked_example(item: PackItem) -> list[str]:
    """Return an example with its whole solution."""
    return [
        "<h3>Worked example</h3>",
        f'<p class="prompt">{_prompt(item)}</p>{_picture(item.picture)}',
        *_steps(item, 0),
        f"<p><strong>Answer:</strong> {_maths(item.key)}</p>{_picture(item.key_picture)}",
    ]


def example_to_finish(item: PackItem, tier: str) -> list[str]:
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
