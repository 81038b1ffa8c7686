"""A bank's items as text for the terminal: what prints, what is known of it, where it is."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.cli.words.printed_item import Printed
from itembank.cli.words.wrapped import paragraph, question_lines
from itembank.text.in_words import day_month_year

if TYPE_CHECKING:
    from itembank.bank.model.fields import BankItem
    from itembank.bank.proof.state import EntryState
    from itembank.proof.outcome import Outcome
    from itembank.work.bank.looking import InFull


def printed(item: BankItem) -> Printed:
    """Return what prints of an item, whether or not the tool can work its answer out.

    Raises:
        UnreadableMaths: lines of the item cannot be read.
    """
    from itembank.bank.question.as_item import form_and_many
    from itembank.bank.question.maths import read_maths
    from itembank.items.item import Misconception, Slip, Step
    from itembank.items.marks import usual_marks

    maths = read_maths(item)
    form, many = form_and_many(item, maths)
    steps = tuple(
        Step(words, node) for (words, _), node in zip(item.working, maths.working, strict=True)
    )
    return Printed(
        maths.runs,
        maths.key,
        form,
        steps,
        tuple(
            Slip(Misconception(slip.id, slip.name, slip.ask), wrong)
            for slip, wrong in zip(item.misconceptions, maths.wrong, strict=True)
        ),
        usual_marks(maths.runs, steps) if item.marks is None else item.marks,
        many,
    )


def item_lines(item: BankItem) -> list[str]:
    """Return the lines of an item as it will print, indented like a topic's questions."""
    return question_lines("   ", printed(item))


def sentence(words: str) -> str:
    """Return words as a sentence: with a capital first and a full stop last.

    >>> sentence("the key is wrong")
    'The key is wrong.'
    """
    words = words.strip()
    return f"{words[:1].upper()}{words[1:]}{'' if words.endswith(('.', '?', '!')) else '.'}"


def proof_line(outcome: Outcome) -> str:
    """Return the line that says whether a key is proved, and if not, why."""
    from itembank.proof.outcome import State

    said = outcome.state.value
    if outcome.says and outcome.state is not State.PROVED:
        said = f"{said}. {sentence(outcome.says)}"
    elif outcome.modelled:
        said = f"{said}, as its model reads the words"
    return labelled("Proof", said)


def state_lines(state: EntryState) -> list[str]:
    """Return the lines that say whether a key is proved, and who has signed the item."""
    lines = [proof_line(state.outcome), *_signed(state)]
    if state.retired is not None:
        lines.append(labelled("Retired", state.retired_says.removeprefix("retired on ")))
    return lines


def _signed(state: EntryState) -> list[str]:
    """Return who has signed an item; where that is stale, what has changed, a line each."""
    from itembank.bank.proof.signoff import Signing

    if state.sign.state is Signing.UNSIGNED:
        return [labelled("Signed", "by nobody yet")]
    who = state.sign.who
    if state.sign.state is Signing.SIGNED:
        return [labelled("Signed", f"by {who}")]
    changed = state.sign.changed
    head = f"stale: by {who}, before this was changed"
    return [labelled("Signed", head), *(labelled("", str(change)) for change in changed)]


def place(found: InFull) -> str:
    """Return where an item stands, who wrote it and under which terms, its own or its bank's."""
    stated = found.stated
    author, created = stated.get("author"), stated.get("created")
    parts = [f"{found.path.name}, line {found.line}"]
    if author or created:
        wrote = f"written by {author}" if author else "written"
        day = day_month_year(datetime.date.fromisoformat(created)) if created else ""
        parts.append(f"{wrote} on {day}" if day else wrote)
    parts += [part for part in (stated.get("source"), stated.get("licence") or found.terms) if part]
    return "; ".join(parts)


def labelled(label: str, text: str) -> str:
    """Return a line that stands beside Key and Working in an item's text."""
    return paragraph(f"   {label:<9}", text)
