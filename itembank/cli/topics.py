"""``itembank topics``: what there is to ask about."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, TypeAlias

import typer

from itembank.errors import ItembankError
from itembank.files.faults import join_words

if TYPE_CHECKING:
    from collections.abc import Collection

    from itembank.items.topics.topic import Topic

Rows: TypeAlias = list[list[str]]
"""A topic's id and title, the year from which it suits, the number of questions of each tier."""


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

    The year is the first that a topic suits by the national curriculum; a class meets nothing
    of a later year unless its department asks for it (beyond_year).
    Where a bank is near or named, its topics follow, with the questions it has in use.

    \b
    Examples:
      itembank topics
      itembank topics --strand ratio
      itembank topics --bank questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.words.wrapped import paragraph
    from itembank.items.item import Tier
    from itembank.items.topics.registry import find_topic, topic_ids
    from itembank.packs.sources.within_year import first_years
    from itembank.work.places import nearby_banks

    groups: list[tuple[str, Rows]] = []
    rows: Rows = []
    notes: list[tuple[str, str]] = []
    for name in topic_ids():
        topic = find_topic(name)
        counts = [f"{len(topic.spaces[t]):,}" if t in topic.spaces else "–" for t in Tier]
        rows.append([topic.id, topic.title, years_text(first_years(topic)), *counts])
        notes += _notes(topic)
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
            told = [
                paragraph("", text) for part, text in notes if not head and strand in (None, part)
            ]
            shown.append("\n".join(filter(None, (head, _table(wanted), *told))))
    typer.echo("\n\n".join(shown))


def _in_banks(folders: tuple[Path, ...]) -> list[tuple[str, Rows]]:
    """Return a heading and the topics of each bank, with how many questions are in use."""
    from itembank.bank.index.any_address import read_banks
    from itembank.bank.question.year import entry_year
    from itembank.items.item import Tier

    groups: list[tuple[str, Rows]] = []
    for bank in read_banks(folders):
        rows: Rows = []
        for topic in bank.topics:
            used = [entry for entry in topic.entries if entry.item.retired is None]
            tiers = [entry.item.tier for entry in used]
            years = years_text({entry_year(entry) for entry in used})
            counts = [str(tiers.count(t.value) or "–") for t in Tier]
            rows.append([topic.id, topic.title, years, *counts])
        groups.append((f"In the bank {bank.name}, {bank.title}:", rows))
    return groups


def years_text(years: Collection[int]) -> str:
    """Return the first year of a topic, and the later ones of which only some of it is.

    >>> years_text({7}), years_text({10}), years_text({7, 10}), years_text(())
    ('7', '10', '7, some 10', '–')
    """
    first, *later = [str(year) for year in sorted(years)] or ["–"]
    return f"{first}, some {join_words(later)}" if later else first


def _notes(topic: Topic) -> list[tuple[str, str]]:
    """Return the strand and a sentence for each tier of which only a part is of a later year."""
    found = []
    for tier, parts in topic.later.items():
        for part in parts:
            if part.holds is None:
                continue
            space, content = topic.spaces[tier], part.content
            count = sum(topic.content(tier, *values) is content for values in space)
            found.append(
                (
                    topic.strand,
                    f"Of {topic.id}, {count} of {len(space)} {tier} questions are from year "
                    f"{content.from_year}: {content}.",
                )
            )
    return found


def _table(rows: Rows) -> str:
    from itembank.cli.words.wrapped import fits, table
    from itembank.items.item import Tier

    heads = ["topic", "title", "year", *(tier.value for tier in Tier)]
    shown = table(heads, rows, right={3, 4, 5})
    if fits(shown):
        return shown
    # A title under its topic can be read; a row broken at the window's edge cannot.
    short = table([heads[0], *heads[2:]], [[row[0], *row[2:]] for row in rows], {2, 3, 4})
    first, *others = short.splitlines()
    pairs = zip(others, rows, strict=True)
    return "\n".join([first, *(f"{line}\n    {row[1]}" for line, row in pairs)])
