"""``itembank show``: some questions of a topic, to read before using them."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.find import complete_topic
from itembank.errors import ItembankError
from itembank.planning.next_tasks import TIERS

MOST = 100


def show(
    topic: Annotated[
        str,
        typer.Argument(
            metavar="TOPIC", help="A topic, such as ratio.share.", autocompletion=complete_topic
        ),
    ],
    tier: Annotated[
        str | None,
        typer.Option(metavar="TIER", help="support, core or challenge; all three if left out."),
    ] = None,
    count: Annotated[int, typer.Option(metavar="N", help="Questions to show of each tier.")] = 3,
    seed: Annotated[
        int, typer.Option(metavar="N", help="Another number shows other questions.")
    ] = 1,
) -> None:
    """Show sample questions of a topic with key, working and likely mistakes.

    \b
    Examples:
      itembank show ratio.share
      itembank show fractions.divide --tier challenge --count 5 --seed 2
    """  # noqa: D301 - typer keeps the lines after \b as they are
    import random

    from itembank.cli.text import item_text
    from itembank.items.item import Tier
    from itembank.items.registry import find_topic

    tier = tier.lower() if tier is not None else None
    if tier is not None and tier not in TIERS:
        raise ItembankError(f"There is no tier ‘{tier}’. Write support, core or challenge.")
    if not 1 <= count <= MOST:
        raise ItembankError(f"--count must be from 1 to {MOST}, not {count}.")
    found = find_topic(topic)
    typer.echo(f"{found.title}  ({found.id})")
    for one in Tier:
        if one not in found.spaces or tier not in (None, one.value):
            continue
        size = len(found.spaces[one])
        typer.echo(f"\n{one.value}: {size:,} different questions")
        chosen = random.Random(f"{found.id}/{one.value}/{seed}").sample(
            range(size), min(count, size)
        )
        for number, index in enumerate(chosen, 1):
            typer.echo(f"\n{item_text(number, found.item(one, index))}")
