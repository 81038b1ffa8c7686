"""Statistics of questions on screen."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from statistics import median
from typing import TYPE_CHECKING, TypeAlias

from itembank.cli.words.wrapped import paragraph, table
from itembank.work.report.figures import figure, share_words

if TYPE_CHECKING:
    from itembank.records.entries.entries import QuestionFacts
    from itembank.records.reports.item_report import ItemReport, Line
    from itembank.work.report.titles import Titles

MOST = 20
"""Questions, and contradictions, shown on screen."""
_HEADS = ("answers", "right", "r", "U−L", "Rasch")


Asked: TypeAlias = "Sequence[QuestionFacts]"
"""The questions of one starter, in order; empty for a report on more than one."""


def items_text(result: ItemReport, titles: Titles, head: str, asked: Asked = ()) -> list[str]:
    """Return the statistics of items as lines under a head; of one starter, its questions."""
    lines = [head, ""]
    by_question = bool(asked)
    if not by_question:
        lines += ["By topic and tier:", *_by_topic(result.generators, titles)]
    reliable = sorted(starter.kr20 for starter in result.starters if starter.kr20 is not None)
    if reliable:
        what = "this starter" if len(reliable) == 1 else "a starter, the median"
        value = figure(median(reliable))
        lines += [*([""] if lines[-1] else []), f"Reliability of {what} (KR-20): {value}."]
    shown = list(result.items)
    words = "Questions:"
    if not by_question and len(shown) > MOST:
        shown = sorted(shown, key=lambda item: -item.out_of)[:MOST]
        words = f"The {MOST} questions with most answers, of {len(result.items):,} (--csv: all):"
    rows = _by_number(shown, asked) if by_question else _by_topic(shown, titles)
    lines += [*([""] if lines[-1] else []), words, *rows]
    if by_question:
        known = {item.address: item for item in shown}
        named = [(f"Question {q.number}", known[q.address]) for q in asked if q.address in known]
    else:
        named = [(_called(generator, titles), generator) for generator in result.generators]
    mistakes = [line for name, item in named for line in _mistakes(name, item, titles)]
    if mistakes:
        lines += ["", "Mistakes that showed, of all answers by seat:", *mistakes]
    lines += ["", *paragraph("", result.note).splitlines(), *_doubted(result, titles)]
    return [
        *lines,
        *paragraph(
            "",
            "Right: Wilson interval at 95 %. r: correlation with the rest of the starter. U−L: "
            "best 27 % less weakest 27 %. –: too few answers by seat.",
        ).splitlines(),
    ]


def _by_topic(lines: Sequence[Line], titles: Titles) -> list[str]:
    """Return a table in which the title of each topic stands above its rows."""
    if not lines:
        return []
    # In the order in which the topics first come, each topic's rows together.
    order = list(dict.fromkeys(line.topic for line in lines))
    rows = sorted(lines, key=lambda item: order.index(item.topic))
    made = table(("", *_HEADS), [_row(row) for row in rows], right={1, 3, 4, 5}).splitlines()
    found, at = made[:1], 1
    for topic, some in groupby(rows, key=lambda item: item.topic):
        found += paragraph("", f"{titles.of(topic)} ({topic})").splitlines()
        count = len(list(some))
        found += made[at : at + count]
        at += count
    return found


def _by_number(lines: Sequence[Line], asked: Asked) -> list[str]:
    """Return the table of one starter: each question by its number, with what it asked."""
    known = {item.address: item for item in lines}
    met = [question for question in asked if question.address in known]
    rows = [
        (f"{question.number}  {question.tier}", *_row(known[question.address])[1:])
        for question in met
    ]
    first, *figures = table(("", *_HEADS), rows, right={1, 3, 4, 5}).splitlines()
    found = [first]
    for question, line in zip(met, figures, strict=True):
        where = f"[{question.address}]"
        words = f"{question.prompt} {where}" if question.prompt else where
        found += [line, *paragraph("   ", words).splitlines()]
    return found


def _row(item: Line) -> tuple[str, ...]:
    name = item.address.removeprefix(f"{item.topic}/") or item.tier
    hard = figure(item.difficulty)
    if item.error is not None:
        hard += f" ±{item.error:.2f}"
    apart = (figure(item.correlation), figure(item.upper_lower))
    return (f"  {name}", f"{item.out_of:,}", share_words(item.interval), *apart, hard)


def _called(item: Line, titles: Titles) -> str:
    title = titles.of(item.topic)
    return f"{title}, {item.address.removeprefix(f'{item.topic}/') or item.tier}"


def _mistakes(who: str, item: Line, titles: Titles) -> list[str]:
    names = sorted(item.misconceptions.items(), key=lambda pair: -pair[1])
    text = "; ".join(
        f"{titles.mistake(item.topic, name)} {round(100 * share)}\N{NO-BREAK SPACE}%"
        for name, share in names
    )
    return paragraph("  ", f"{who}: {text}.").splitlines() if text else []


def _doubted(result: ItemReport, titles: Titles) -> list[str]:
    if not result.contradictions:
        return ["No item with enough answers contradicts its tier."]
    lines = ["", f"Against their tier ({len(result.contradictions)}):"]
    for contradiction in result.contradictions[:MOST]:
        who = _called(contradiction.line, titles)
        if not contradiction.line.address:
            who += " (all of its questions)"
        lines += paragraph("  ", f"{who}: {contradiction.words()}.").splitlines()
    if len(result.contradictions) > MOST:
        lines.append(f"  and {len(result.contradictions) - MOST} more (--csv: all)")
    return lines
