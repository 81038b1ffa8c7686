"""``itembank topics``: what there is to ask about."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, TypeAlias

import typer

from itembank.cli.options.usual_options import DepartmentOption
from itembank.errors import ItembankError
from itembank.files.faults import join_words

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Sequence

    from itembank.items.topics.listing import Listed

Rows: TypeAlias = list[list[str]]
"""A topic's id and title, the year from which it suits, the number of questions of each tier."""


ORDERS = ("strand", "year", "statement")
"""By what the topics can stand together."""


def topics(
    words: Annotated[
        list[str] | None, typer.Argument(metavar="WORDS", help="Only topics about this.")
    ] = None,
    strand: Annotated[
        str | None, typer.Option(metavar="NAME", help="Only this strand, such as ratio.")
    ] = None,
    by: Annotated[
        str,
        typer.Option(metavar="ORDER", help="‘strand’, ‘year’ of your schemes, or ‘statement’."),
    ] = "strand",
    bank: Annotated[
        list[Path] | None,
        typer.Option(metavar="DIR", help="A bank’s folder; those near here are listed too."),
    ] = None,
    department: DepartmentOption = None,
) -> None:
    """List the topics, with the number of different questions each tier can ask.

    The year is the first that a topic suits by the national curriculum; a class meets nothing
    of a later year unless its department asks for it (beyond_year). Words are looked for in
    titles, statements of the programme of study and names of misconceptions.
    Where a bank is near or named, its topics follow, with the questions it has in use.

    \b
    Examples:
      itembank topics
      itembank topics circle area
      itembank topics --strand ratio
      itembank topics --by statement
      itembank topics --by year
      itembank topics --bank questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.items.topics.registry import listed_topics
    from itembank.work.places import nearby_banks

    if by.lower() not in ORDERS:
        raise ItembankError(f"There is no order ‘{by}’. Write strand, year or statement.")
    banks = nearby_banks(tuple(bank or ()))
    in_banks = _in_banks(banks) if banks else []
    known = listed_topics()
    if strand is not None:
        strand = strand.lower()
        strands = {topic.strand for topic in known.values()}
        strands |= {row[0].partition(".")[0] for _, rows in in_banks for row in rows}
        if strand not in strands:
            there = join_words(sorted(strands))
            raise ItembankError(f"There is no strand ‘{strand}’. There are {there}.")
    wanted, in_banks = _about(words or [], strand, known.values(), in_banks)
    if by.lower() == "statement":
        typer.echo(_by_statement(wanted, whole=not words and strand is None))
    elif by.lower() == "year":
        typer.echo(_by_year(department, wanted))
    else:
        typer.echo("\n\n".join(_by_strand(wanted, in_banks)))


Groups: TypeAlias = "list[tuple[str, Rows]]"
"""A heading, and the rows under it."""


def _about(
    words: Sequence[str], strand: str | None, known: Iterable[Listed], in_banks: Groups
) -> tuple[tuple[Listed, ...], Groups]:
    """Return the topics of a strand that are about words, and the rows of banks that are."""
    from itembank.text.folding import folded
    from itembank.work.topics.topics_found import topics_found

    def of_strand(name: str) -> bool:
        return strand in (None, name.partition(".")[0])

    rows = [
        (
            head,
            [
                row
                for row in rows
                if of_strand(row[0]) and all(folded(w) in folded(" ".join(row[:2])) for w in words)
            ],
        )
        for head, rows in in_banks
    ]
    kept = [(head, rows) for head, rows in rows if rows]
    mine = {topic.id: topic for topic in known if of_strand(topic.id)}
    try:
        return topics_found(words, mine), kept
    except ItembankError:
        if not kept:
            raise
        return (), kept


def _by_strand(wanted: Sequence[Listed], in_banks: Groups) -> list[str]:
    """Return the table of topics, a gap between strands, what is to be said of them, and banks."""
    from itembank.cli.words.wrapped import paragraph
    from itembank.text.in_words import plural

    shown = []
    if wanted:
        told = [_parted(_table([_row(topic) for topic in wanted]), wanted)]
        told += [paragraph("", sentence) for topic in wanted for sentence in _notes(topic)]
        count = sum(sum(topic.sizes.values()) for topic in wanted)
        noun = plural(len(wanted), "topic", "topics")
        told.append(f"{len(wanted)} {noun}, {count:,} different questions.")
        shown.append("\n".join(told))
    return [*shown, *(f"{head}\n{_table(rows)}" for head, rows in in_banks)]


def _parted(table: str, wanted: Sequence[Listed]) -> str:
    """Return a table with a gap before each strand but the first."""
    starts = {
        topic.id
        for topic, before in zip(wanted[1:], wanted, strict=False)
        if topic.strand != before.strand
    }
    lines = []
    for line in table.splitlines():
        lines += ["", line] if line.partition(" ")[0] in starts else [line]
    return "\n".join(lines)


def _row(topic: Listed) -> list[str]:
    from itembank.items.tier import Tier

    counts = [f"{topic.sizes[t]:,}" if t in topic.sizes else "–" for t in Tier]
    return [topic.id, topic.title, years_text(topic.years), *counts]


def _by_statement(wanted: Sequence[Listed], whole: bool) -> str:
    """Return the programme of study with the topics that serve each statement."""
    from itembank.cli.words.wrapped import paragraph
    from itembank.items.topics.programme_of_study import STATEMENTS

    lines: list[str] = []
    domain = ""
    for statement in STATEMENTS:
        serving = [topic for topic in wanted if statement.id in topic.statements]
        if not serving and not whole:
            continue
        if statement.domain != domain:
            domain = statement.domain
            lines += ["", domain.capitalize()]
        lines.append(paragraph("  ", f"{statement.text} ({statement.id})"))
        lines += [f"      {topic.id}  {topic.title}" for topic in serving]
        if not serving:
            lines.append(
                f"      left out: it {statement.left_out}" if statement.left_out else "      none"
            )
    return "\n".join(lines[1:])


def _by_year(department: Path | None, wanted: Sequence[Listed]) -> str:
    """Return what a department's schemes teach, year by year, and what none of them does."""
    from itembank.planning.department.department import find_department
    from itembank.work.topics.taught_by_year import taught_by_year

    by_id = {topic.id: topic for topic in wanted}
    found = taught_by_year(find_department(department), tuple(by_id))
    parts = []
    for year in found.years:
        rows = [
            [when, name, by_id[name].title if name in by_id else ""]
            for when, name in year.rows
            if name in by_id
        ]
        head = f"Year {year.year}, by the scheme {year.scheme}:"
        parts.append("\n".join([head, *_lines(rows)]) if rows else f"{head} none of them.")
    if found.untaught:
        rows = [[name, by_id[name].title] for name in found.untaught]
        parts.append("\n".join(["In no scheme of work here:", *_lines(rows)]))
    return "\n\n".join(parts)


def _lines(rows: Rows) -> list[str]:
    from itembank.cli.words.wrapped import table

    heads, *others = rows
    return ["  " + line for line in table(heads, others).splitlines()]


def _in_banks(folders: tuple[Path, ...]) -> Groups:
    """Return a heading and the topics of each bank, with how many questions are in use."""
    from itembank.bank.index.any_address import read_banks
    from itembank.bank.question.year import entry_year
    from itembank.items.tier import Tier

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


def _notes(topic: Listed) -> list[str]:
    """Return a sentence for each tier of which only a part is of a later year."""
    return [
        f"Of {topic.id}, {part.questions} of {part.of} {part.tier} questions are from year "
        f"{part.from_year}: {part.content}."
        for part in topic.later
    ]


def _table(rows: Rows) -> str:
    from itembank.cli.words.wrapped import fits, table
    from itembank.items.tier import Tier

    heads = ["topic", "title", "year", *(tier.value for tier in Tier)]
    shown = table(heads, rows, right={3, 4, 5})
    if fits(shown):
        return shown
    # A title under its topic can be read; a row broken at the window's edge cannot.
    short = table([heads[0], *heads[2:]], [[row[0], *row[2:]] for row in rows], {2, 3, 4})
    first, *others = short.splitlines()
    pairs = zip(others, rows, strict=True)
    return "\n".join([first, *(f"{line}\n    {row[1]}" for line, row in pairs)])
