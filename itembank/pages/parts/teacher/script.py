"""The script for the repair group: ten minutes, in lines to say, to ask and to do.

It is built from the support sheet's worked and part-finished examples and from the starter's
most telling misconceptions: those that the most questions can show, with the worked example's
own topic first.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from itembank.packs.data.pack import Band, Pack, Sheet
from itembank.packs.data.pack_item import Misconception, PackItem
from itembank.pages.engine.page.signs import interval
from itembank.pages.engine.text.paragraph import Piece
from itembank.pages.parts.questions.answers import key_shown
from itembank.pages.parts.questions.question_cell import asked
from itembank.pages.parts.questions.solutions import chain
from itembank.planning.bands.caution import ON_A_SHEET

Kind = Literal["Say", "Ask", "Do"]


class Line(NamedTuple):
    """One line of the script."""

    kind: Kind
    runs: list[Piece]


class Scene(NamedTuple):
    """A few minutes of the script."""

    title: str
    lines: list[Line]


class Telling(NamedTuple):
    """A misconception with the first starter question that shows it, and how many do."""

    misconception: Misconception
    number: int
    item: PackItem
    shown: int


def mid_sentence(name: str) -> str:
    """Return a misconception's name as it stands inside a sentence.

    >>> mid_sentence("Adds the tops")
    'adds the tops'
    """
    return name[:1].lower() + name[1:] if name[1:2].islower() or name[1:2] == " " else name


def telling(pack: Pack, topic: str) -> list[Telling]:
    """Return the starter's misconceptions, the most telling first."""
    found: dict[str, Telling] = {}
    for number, item in enumerate(pack.versions[0].items, start=1):
        for misconception in item.misconceptions:
            old = found.get(misconception.id)
            count = old.shown + 1 if old else 1
            found[misconception.id] = (
                old._replace(shown=count) if old else Telling(misconception, number, item, count)
            )
    return sorted(found.values(), key=lambda t: (t.item.topic != topic, -t.shown, t.number))


def chosen(pack: Pack, topic: str) -> list[Telling]:
    """Return the two misconceptions to talk about: of two topics where there are two."""
    ranked = telling(pack, topic)
    first = ranked[:1]
    others = (
        [mistake for mistake in ranked[1:] if mistake.item.topic != first[0].item.topic]
        if first
        else []
    )
    others.sort(key=lambda mistake: (-mistake.shown, mistake.number))
    return [*first, *(others or ranked[1:])[:1]]


def repair_bands(pack: Pack) -> list[Band]:
    """Return the bands that work with the teacher, or else the lowest band."""
    return [band for band in pack.bands if band.task.mode == "with the teacher"] or [pack.bands[0]]


def opening(pack: Pack) -> list[Piece]:
    """Return what the script is for and what to have at hand."""
    names = " and ".join(f"{band.name} ({interval(band)})" for band in repair_bands(pack))
    return [
        f"Ten minutes with the pupils whose score shows {names}. At hand: their starters, the "
        f"support sheet and its answers, and a piece of card to cover lines with. {ON_A_SHEET}"
    ]


def scenes(pack: Pack) -> list[Scene]:
    """Return the whole script."""
    sheet = next((sheet for sheet in pack.sheets if sheet.tier == "support"), pack.sheets[0])
    worked = sheet.worked or pack.versions[0].items[0]
    found = [_start(pack, worked, sheet.worked is not None), _example(worked)]
    mistakes = _mistakes(pack, worked.topic)
    found.append(mistakes if mistakes.lines else _own_mistakes(pack))
    found += [_together(sheet), _alone(sheet)]
    return found


def _start(pack: Pack, worked: PackItem, on_sheet: bool) -> Scene:
    place = repair_bands(pack)[0].task.where
    lines = [
        Line("Do", [f"Give each pupil the support sheet. The slide sent them here: “{place}”"]),
        Line(
            "Say",
            [
                "“You have made a start on these. We are going to take one kind of question "
                "apart, a line at a time, and then you will do one without me.”"
            ],
        ),
    ]
    same = [
        (number, item)
        for number, item in enumerate(pack.versions[0].items, start=1)
        if item.topic == worked.topic
    ]
    if same:
        number = same[0][0]
        lines.append(
            Line(
                "Ask",
                [
                    f"“Look at question {number} of the starter. Do not work it out. "
                    "What are you asked to find, and how will your answer look?”"
                ],
            )
        )
    if not on_sheet:
        lines.append(Line("Do", ["Write on the board: ", *asked(worked)]))
    return Scene("Minutes 0 to 2: what is being asked", lines)


_ABOUT = (
    "“What changed from the line above, and what stayed the same?”",
    "“Where did each number in this line come from?”",
    "“Who can say that step in their own words?”",
)


def _example(worked: PackItem) -> Scene:
    if not worked.steps:
        return _without_working(worked)
    lines = [Line("Do", ["Cover the working of the example. Read out: ", *asked(worked)])]
    last = len(worked.steps) - 1
    for number, step in enumerate(worked.steps):
        if number == 0:
            lines.append(Line("Ask", ["“What would you write first?” Take two answers."]))
        said = f" and say: “{step.say}”" if step.say else "."
        runs: list[Piece] = [f"Uncover line {number + 1}{said}"]
        if step.maths is not None:
            runs += [" ", step.maths]
        if step.picture is not None:
            runs.append(step.picture)
        lines.append(Line("Do", runs))
        if number == last:
            lines.append(
                Line(
                    "Ask",
                    [
                        "“How do we know that we can stop here?” The form wanted: "
                        f"{worked.key.form_words}."
                    ],
                )
            )
        else:
            lines.append(Line("Ask", [_ABOUT[number % len(_ABOUT)]]))
    return Scene("Minutes 2 to 4: the worked example", lines)


def _without_working(worked: PackItem) -> Scene:
    """Return the scene for an example whose author gave no working."""
    lines = [
        Line("Do", ["Cover the answer of the example. Read out: ", *asked(worked)]),
        Line("Ask", ["“What would you write first?” Take two answers."]),
        Line("Do", ["Write the working on the board yourself, and say each line as you write it."]),
        Line("Ask", ["“What changed from the line above, and what stayed the same?”"]),
        Line("Do", ["Stop at ", *key_shown(worked), f" ({worked.key.form_words})."]),
    ]
    return Scene("Minutes 2 to 4: the worked example", lines)


def _mistakes(pack: Pack, topic: str) -> Scene:
    lines = []
    for mistake in chosen(pack, topic):
        slip = mistake.misconception
        lines += [
            Line(
                "Say",
                [f"“Somebody answers starter question {mistake.number} with ", slip.wrong, ".”"],
            ),
            Line("Ask", [f"“What did they do?” (The pupil {mid_sentence(slip.name)}.)"]),
            Line("Ask", [f"“{slip.ask}” Wait, and let two pupils answer."]),
            Line(
                "Do",
                [
                    "Have the pupils put it right on their starters. Key: ",
                    *key_shown(mistake.item),
                    ".",
                ],
            ),
        ]
    return Scene("Minutes 4 to 6: mistakes worth talking about", lines)


def _own_mistakes(pack: Pack) -> Scene:
    """Return the scene for a starter of which no likely mistake is known."""
    item = pack.versions[0].items[0]
    lines = [
        Line("Ask", ["“Which question of the starter went wrong for you?” Choose one of them."]),
        Line("Ask", ["“Tell me what you did.” Listen to the end, and write it on the board."]),
        Line("Ask", ["“Which is the first line that is not true?” Let two pupils answer."]),
        Line(
            "Do",
            [
                "Have the pupils put it right on their starters. Key of question 1: ",
                *key_shown(item),
                ".",
            ],
        ),
    ]
    return Scene("Minutes 4 to 6: mistakes worth talking about", lines)


def _together(sheet: Sheet) -> Scene:
    item = sheet.part_finished or sheet.items[0]
    where = "“Now finish this one”" if sheet.part_finished else "question 1 of the sheet"
    lines = [
        Line("Do", [f"Pupils go on with {where}. You watch; the pupils hold the pens."]),
        Line("Ask", ["“Which line of the worked example is this like?”"]),
    ]
    compare: list[Piece] = ["Compare the lines they wrote. Key: ", *key_shown(item)]
    shown = chain(item.steps)[-1:]
    if shown and item.key.line not in (shown[0].line, shown[0].line.rpartition("= ")[2]):
        compare += ["; the last line is ", shown[0]]
    compare.append(".")
    lines.append(Line("Do", compare))
    return Scene("Minutes 6 to 8: one to finish together", lines)


def _alone(sheet: Sheet) -> Scene:
    start = 0 if sheet.part_finished else 1
    item = sheet.items[min(start, len(sheet.items) - 1)]
    number = sheet.items.index(item) + 1
    lines = [
        Line("Say", [f"“Question {number} of the sheet, on your own. Write every line.”"]),
        Line(
            "Do",
            ["Look at each pupil’s first line before the answer. Key: ", *key_shown(item), "."],
        ),
    ]
    if number < len(sheet.items):
        lines.append(
            Line(
                "Do",
                [
                    "Right? The pupil goes on with the next questions and marks them. Not yet? "
                    f"The pupil stays, and you do question {number + 1} together."
                ],
            )
        )
    lines.append(Line("Ask", ["“Which line will you write first the next time?”"]))
    return Scene("Minutes 8 to 10: one alone", lines)
