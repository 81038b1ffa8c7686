"""Questions of a bank as text for the terminal: what prints, what is known of them, and where."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.cli.bank.showing.bank_screen import asked_text
from itembank.cli.words.wrapped import example_key, face_lines, paragraph, tied
from itembank.text.in_words import day_month_year

if TYPE_CHECKING:
    from itembank.bank.index.kept_words import Shown
    from itembank.bank.proof.state import EntryState
    from itembank.proof.outcome import Outcome
    from itembank.work.bank.looking import InFull
    from itembank.work.bank.trying import Trial


def shown_lines(shown: Shown) -> list[str]:
    """Return the lines of what prints of a question, indented like a topic's questions."""
    key = example_key(tied(shown.key)) if shown.many else tied(shown.key)
    lines = face_lines(
        "   ",
        asked_text(shown.prompt),
        shown.marks,
        f"{key}  ({shown.form})",
        [(words, tied(line)) for words, line in shown.steps],
        [(tied(wrong), name, ask) for wrong, name, ask in shown.slips],
    )
    if shown.picture is not None:
        lines.insert(1, paragraph("   Picture  ", shown.picture["words"]))
    return lines


def trial_text(trial: Trial) -> str:
    """Return what came of trying a question: how it prints, its proof, what it is a twin of."""
    from itembank.files.faults import join_words

    lines = [*shown_lines(trial.shown), proof_line(trial.outcome)]
    if trial.twins:
        lines.append(labelled("Twin", f"asks the same as {join_words(list(trial.twins))}"))
    label = "Changed"
    for change in trial.changes:
        lines.append(labelled(label, str(change)))
        label = ""
    return "\n".join(lines)


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
