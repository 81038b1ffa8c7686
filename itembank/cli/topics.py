"""``itembank topics``: what there is to ask about."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.errors import ItembankError


def topics(
    strand: Annotated[
        str | None, typer.Option(metavar="NAME", help="Only this strand, such as ratio.")
    ] = None,
) -> None:
    """List the topics, with the number of different questions each tier can ask.

    \b
    Examples:
      itembank topics
      itembank topics --strand ratio
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.cli.text import fits, table
    from itembank.faults import join_words
    from itembank.items.item import Tier
    from itembank.items.registry import find_topic, strands, topic_ids

    known = list(strands())
    strand = strand.lower() if strand is not None else None
    if strand is not None and strand not in known:
        raise ItembankError(f"There is no strand ‘{strand}’. There are {join_words(known)}.")
    rows = []
    for name in topic_ids():
        topic = find_topic(name)
        if strand in (None, topic.strand):
            counts = [f"{len(topic.spaces[t]):,}" if t in topic.spaces else "–" for t in Tier]
            rows.append([topic.id, topic.title, *counts])
    heads = ["topic", "title", *(tier.value for tier in Tier)]
    shown = table(heads, rows, right={2, 3, 4})
    if not fits(shown):
        # A title under its topic can be read; a row broken at the window's edge cannot.
        short = table([heads[0], *heads[2:]], [[row[0], *row[2:]] for row in rows], {1, 2, 3})
        first, *others = short.splitlines()
        pairs = zip(others, rows, strict=True)
        shown = "\n".join([first, *(f"{line}\n    {row[1]}" for line, row in pairs)])
    typer.echo(shown)
