"""What a person states, as it is typed at a terminal: the words for each matter of a message."""

from __future__ import annotations

from itembank.errors import ItembankError

WORDS = {
    "questions": "--questions",
    "follow-up": "--follow-up",
    "variants": "--variants",
    "title": "one with --title",
    "topic": "a topic with --topic",
    "day": "--date",
    "elsewhere": " with --output",
    "replace": "Add --replace",
    "department": " with --department",
    "bank": " with --bank",
    "both": " (--questions-from both)",
    "beyond-year": "use --beyond-year",
    "topic-list": "‘itembank topics’",
}
"""By the name of the matter; some commands have other options, and add theirs."""


def at_terminal(error: ItembankError) -> str:
    """Return the message of an error with the options of the commands in it.

    >>> from itembank.matters import QUESTIONS
    >>> at_terminal(ItembankError("There are too few. Change ", QUESTIONS, "."))
    'There are too few. Change --questions.'
    """
    return error.told(WORDS)
