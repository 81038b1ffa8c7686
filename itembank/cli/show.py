"""``itembank show``: some questions of a topic, to read before using them."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.complete import complete_topic
from itembank.errors import ItembankError
from itembank.planning.bands.next_tasks import TIERS
from itembank.text.in_words import counted

if TYPE_CHECKING:
    from itembank.bank.model.bank import Bank
    from itembank.items.item import Item, Tier
    from itembank.items.topics.topic import Topic

MOST = 100
"""Questions of a tier shown at once."""


def show(
    topic: Annotated[
        str,
        typer.Argument(
            metavar="TOPIC",
            help="A topic, such as ratio.share, or one question by its address.",
            autocompletion=complete_topic,
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
    kind: Annotated[
        str | None,
        typer.Option(metavar="KIND", help="One kind alone, as in “true or false”."),
    ] = None,
    bank: Annotated[
        list[Path] | None,
        typer.Option(metavar="DIR", help="A bank’s folder; those near here are known."),
    ] = None,
    pictures: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Draw the questions’ pictures there, as SVG files."),
    ] = None,
) -> None:
    """Show sample questions of a topic with key, working and likely mistakes.

    Of a topic that is in a bank alone, the questions are the bank's, in its own order.

    \b
    Examples:
      itembank show ratio.share
      itembank show fractions.divide --tier challenge --count 5 --seed 2
      itembank show ratio.simplest-form --kind "true or false"
      itembank show ratio.share/core/12
      itembank show larkhythe:garden-12 --bank questions
    """  # noqa: D301 - typer keeps the lines after \b as they are
    import random

    from itembank.items.item import Tier
    from itembank.items.topics.registry import find_topic, topic_ids
    from itembank.work.places import find_address

    banks = tuple(bank or ())
    if ":" in topic:
        _show_entry(topic, banks)
        return
    if "/" in topic:
        _tell(1, find_address(topic), pictures)
        return
    tier = tier.lower() if tier is not None else None
    if tier is not None and tier not in TIERS:
        raise ItembankError(f"There is no tier ‘{tier}’. Write support, core or challenge.")
    if not 1 <= count <= MOST:
        raise ItembankError(f"--count must be from 1 to {MOST}, not {count}.")
    if topic.lower() not in topic_ids() and (held := _banks_with(topic.lower(), banks)):
        if kind is not None:
            raise ItembankError("--kind is for topics that are generated; leave it out.")
        for held_in in held:
            _show_bank(held_in, topic.lower(), tier, count)
        return
    found = find_topic(topic)
    levels = [step for step in Tier if step in found.spaces and tier in (None, step.value)]
    if kind is not None:
        _show_kind(found, levels, kind, count, seed, pictures)
        return
    typer.echo(f"{found.title}  ({found.id})")
    for level in levels:
        size = len(found.spaces[level])
        typer.echo(f"\n{level.value}: {size:,} different questions")
        # Seeded by a text that names the tier: the same on every machine, and each tier its own.
        chosen = random.Random(f"{found.id}/{level.value}/{seed}").sample(
            range(size), min(count, size)
        )
        for number, index in enumerate(chosen, 1):
            typer.echo()
            _tell(number, found.item(level, index), pictures)


def _show_kind(
    topic: Topic, levels: list[Tier], kind: str, count: int, seed: int, pictures: Path | None
) -> None:
    """Show questions of one kind, of the tiers that have some."""
    import random

    from itembank.items.topics.of_kind import of_kind, the_kind

    kind = the_kind(kind, topic, levels, topic.title)
    typer.echo(f"{topic.title}  ({topic.id}): {kind}")
    for level in levels:
        rng = random.Random(f"{topic.id}/{level.value}/{seed}/{kind}")
        if chosen := of_kind(topic, level, kind, count, rng):
            typer.echo(f"\n{level.value}")
        for number, (_, item) in enumerate(chosen, 1):
            typer.echo()
            _tell(number, item, pictures)


def _tell(number: int, item: Item, pictures: Path | None) -> None:
    """Show a question, and where its picture was drawn."""
    from itembank.cli.words.wrapped import item_text, paragraph

    typer.echo(item_text(number, item))
    if pictures is not None and item.figure is not None:
        from itembank.work.pack.picture_file import draw_picture_file

        typer.echo(paragraph("   Drawn    ", str(draw_picture_file(item, pictures))))


def _show_entry(address: str, named: tuple[Path, ...]) -> None:
    """Show one question of a bank, with all that is known about it."""
    from itembank.bank.index.any_address import find_bank
    from itembank.cli.bank.show import show as show_entry
    from itembank.work.places import nearby_banks

    bank = find_bank(address, nearby_banks(named))
    show_entry([address.partition(":")[2]], bank.folder)


def _banks_with(topic: str, named: tuple[Path, ...]) -> list[Bank]:
    """Return the banks near here that hold a topic."""
    from itembank.work.places import nearby_banks

    if not (folders := nearby_banks(named)):
        return []
    from itembank.bank.index.any_address import read_banks

    return [bank for bank in read_banks(folders) if topic in (held.id for held in bank.topics)]


def _show_bank(bank: Bank, topic: str, tier: str | None, count: int) -> None:
    """Show the first questions of a bank on a topic that are in use, and where to read more."""
    from itembank.bank.index.kept_words import Shown
    from itembank.bank.index.rows.question_rows import shown
    from itembank.cli.bank.showing.question_text import shown_lines

    held = next(kept for kept in bank.topics if kept.id == topic)
    typer.echo(f"{held.title}  ({topic}), in the bank {bank.name}")
    for level in TIERS:
        if tier not in (None, level):
            continue
        entries = [e for e in held.entries if e.item.tier == level and e.item.retired is None]
        typer.echo(f"\n{level}: {counted(len(entries), 'question')}")
        for entry in entries[:count]:
            lines = shown_lines(Shown(**shown(entry.item)))
            typer.echo("\n" + "\n".join([entry.address, *lines]))
