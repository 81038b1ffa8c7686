"""``itembank bank find``: questions by their words, and by what is known of them."""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.bank.list import listing, tell_of_none
from itembank.cli.bank.showing.bank_meant import (
    AuthorMeant,
    BankOption,
    KindMeant,
    StatesOption,
    TierMeant,
    TopicOrStrand,
    bank_folder,
)
from itembank.cli.bank.showing.bank_screen import with_bar
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.text.in_words import counted


def find(
    words: Annotated[
        list[str] | None,
        typer.Argument(
            metavar="WORDS", help="Words that all stand in the question, its key or working."
        ),
    ] = None,
    topic: TopicOrStrand = None,
    tier: TierMeant = None,
    kind: KindMeant = None,
    author: AuthorMeant = None,
    state: StatesOption = None,
    bank: BankOption = None,
) -> None:
    """Find questions by words, topic, tier, kind, author or state.

    Capitals do not matter. Words in quotation marks have to stand together. ‘itembank bank
    list’ says of each question what is known of it, too.

    \b
    Examples:
      itembank bank find minibus seats
      itembank bank find "market garden" --tier core
      itembank bank find --state stale --topic ratio
      itembank bank find --kind "word problem"
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.work.bank.looking import find_questions
    from itembank.work.bank.wanted import Wanted, known_kind, known_states, known_tier

    states = known_states(state or [])
    sought = tuple(word for word in words or () if word.strip())
    wanted = Wanted(tuple(topic or ()), known_tier(tier), author, sought, states, known_kind(kind))
    if wanted == Wanted():
        raise ItembankError(
            "What is to be found? Give words, as in: itembank bank find minibus. "
            "Or a topic, a tier, a kind, an author or a state."
        )
    folder = bank_folder(bank)
    found = with_bar(lambda bar: find_questions(folder, wanted, bar))
    if tell_of_none(found):
        return
    typer.echo(listing(found))
    typer.echo()
    say(f"{len(found.lines):,} of {counted(found.holds, 'question')}.")
