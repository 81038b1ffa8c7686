"""``itembank topics``: what there is to ask about."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, TypeAlias

import typer

from itembank.errors import ItembankError

Rows: TypeAlias = list[list[str]]
"""A topic's id and title, and the number of questions of each tier."""


def topics(
    strand: Annotated[
        str | None, typer.Option(metavar="NAME", help="Only this strand, such as ratio.")
    ] = None,
    bank: Annotated[
        list[Path] | None,
        typer.Option(metavar="DIR", help="A bank’s folder; those near here are listed too."),
    ] = None,
) -> None:
    """List the topics, with the number of different questions each tier can ask.

    Where a bank is near or named, its topics follow, with the questions it has in use.

    \b
    Examples:
      itembank topics
      itembank topics --strand ratio
      itembank topics --bank questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.find import nearby_banks
    from itembank.faults import join_words
    from itembank.items.item import Tier
    from itembank.items.registry import find_topic, topic_ids

    groups: list[tuple[str, Rows]] = []
    rows: Rows = []
    for name in topic_ids():
        topic = find_topic(name)
        counts = [f"{len(topic.spaces[t]):,}" if t in topic.spaces else "–" for t in Tier]
        rows.append([topic.id, topic.title, *counts])
    groups.append(("", rows))
    if folders := nearby_banks(tuple(bank or ())):
        groups += _in_banks(folders)
    known = sorted({row[0].partition(".")[0] for _, rows in groups for row in rows})
    strand = strand.lower() if strand is not None else None
    if strand is not None and strand not in known:
        raise ItembankError(f"There is no strand ‘{strand}’. There are {join_words(known)}.")
    shown = []
    for head, rows in groups:
        wanted = [row for row in rows if strand in (None, row[0].partition(".")[0])]
        if wanted:
            shown.append("\n".join(filter(None, (head, _table(wanted)))))
    typer.echo("\n\n".join(shown))


def _in_banks(folders: tuple[Path, ...]) -> list[tuple[str, Rows]]:
    """Return a heading and the topics of each bank, with how many questions are in use."""
    from itembank.bank.addresses import read_banks
    from itembank.items.item import Tier

    groups: list[tuple[str, Rows]] = []
    for one in read_banks(folders):
        rows: Rows = []
        for topic in one.topics:
            tiers = [entry.item.tier for entry in topic.entries if entry.item.retired is None]
            rows.append([topic.id, topic.title, *(str(tiers.count(t.value) or "–") for t in Tier)])
        groups.append((f"In the bank {one.name}, {one.title}:", rows))
    return groups


def _table(rows: Rows) -> str:
    from itembank.cli.text import fits, table
    from itembank.items.item import Tier

    heads = ["topic", "title", *(tier.value for tier in Tier)]
    shown = table(heads, rows, right={2, 3, 4})
    if fits(shown):
        return shown
    # A title under its topic can be read; a row broken at the window's edge cannot.
    short = table([heads[0], *heads[2:]], [[row[0], *row[2:]] for row in rows], {1, 2, 3})
    first, *others = short.splitlines()
    pairs = zip(others, rows, strict=True)
    return "\n".join([first, *(f"{line}\n    {row[1]}" for line, row in pairs)])
