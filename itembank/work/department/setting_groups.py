"""The settings that a department's file may have, by group: what each is called and means."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.planning.department.pack_request import SELF_MARK
from itembank.planning.department.papers import PAPERS

Kind = Literal[
    "whole",
    "text",
    "yes or no",
    "choice",
    "lines",
    "copies",
    "topics or all",
    "topics",
    "days of topics",
]


@dataclass(frozen=True, slots=True)
class Setting:
    """One setting: its key in the file, what it is called, and what leaving it out means."""

    key: tuple[str, ...]
    called: str
    usual: str
    kind: Kind = "whole"
    says: str = ""
    choices: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """Return the key as one word."""
        return ".".join(self.key)


def _planning(key: str, called: str, usual: str, says: str = "") -> Setting:
    return Setting(("planning", key), called, usual, says=says)


PRINT = (
    Setting(("title",), "Title of the next single starter", "Starter", "text"),
    Setting(("questions",), "Questions in a starter", "8"),
    Setting(("follow_up",), "Questions on a follow-up sheet", "10"),
    Setting(
        ("large_print",),
        "Large print",
        "none",
        "copies",
        "How many copies, as in 2, or for which seats, as in A3, C5. No names.",
    ),
    Setting(("paper",), "Paper in the tray", "white", "choice", choices=PAPERS),
    Setting(
        ("print_tint",), "Print that tint on white paper", "no", "yes or no", "It covers the page."
    ),
    Setting(
        ("self_mark",),
        "Pupils with a device see how they went",
        "when done",
        "choice",
        choices=SELF_MARK,
    ),
)
SOURCES = (
    Setting(
        ("banks",), "Question banks", "none", "lines", "A folder a line, seen from this department."
    ),
    Setting(
        ("questions_from",),
        "Questions come from",
        "both, where there is a bank",
        "choice",
        choices=("generated", "bank", "both"),
    ),
    Setting(("prefer",), "Take first", "bank", "choice", choices=("bank", "generated")),
    Setting(
        ("signed_only",), "Only questions of a bank that a colleague signed", "no", "yes or no"
    ),
    Setting(
        ("beyond_year",),
        "Also ask what the national curriculum places after the class’s year",
        "no",
        "topics or all",
        "Write yes, no, or the topics, as in equations.inequalities.",
    ),
)
PLANNING = (
    _planning("weeks_apart", "Weeks before a question comes back", "6"),
    _planning("recent_days", "Days for which a topic counts as recent", "28"),
    _planning("recent_questions", "Of eight questions, the fewest on recent topics", "1"),
    _planning("older_questions", "Of eight questions, the fewest on older topics", "3"),
    _planning(
        "weak", "How much weakness weighs", "50", "0 is not at all, 100 as much as time unseen."
    ),
    _planning("rest_days", "Days of rest before a topic comes back", "3"),
)
DECIDING = (
    Setting(("deciding", "again_below"), "Teach again to all, below this per cent right", "50"),
    Setting(("deciding", "on_from"), "Go on, from this per cent right", "80"),
    Setting(("deciding", "confidence"), "How sure the intervals shown are, in per cent", "90"),
)
GENERAL = (
    Setting(
        ("default_class",),
        "The class that is meant where none is named",
        "the first",
        "choice",
        "At the terminal.",
    ),
)
TEACHING = (
    Setting(
        ("scheme",), "The order of topics it follows", "none, and no weeks are planned", "choice"
    ),
    Setting(
        ("taught",),
        "Where it runs ahead of that order, or behind",
        "as the order says",
        "days of topics",
        "A line for each topic, by its name: the day on which it was taught, or not yet. "
        "As in: Sharing an amount in a given ratio: 19 Nov 2026.",
    ),
    Setting(
        ("topics",),
        "Topics of the next single starter",
        "needed",
        "topics",
        "A topic a line, by its name. A week takes its topics from the order instead.",
    ),
)
WHOLE = {"general": GENERAL, "sources": SOURCES, "planning": PLANNING, "deciding": DECIDING}
"""The settings of the whole department, by group."""
CLASS = {"teaching": TEACHING, "print": PRINT, "sources": SOURCES, "planning": PLANNING}
"""The settings that a class may have of its own, by group."""
CALLED = {
    "general": "Which class is meant",
    "teaching": "Topics: its order, where it is in it",
    "print": "Print",
    "sources": "Where questions come from",
    "planning": "How starters are planned",
    "deciding": "When to teach again",
}
"""What each group is called."""


def usual_of(setting: Setting, group: str, class_name: str = "") -> str:
    """Return what leaving a setting out means, for all classes or for one.

    >>> usual_of(PLANNING[0], "planning"), usual_of(PLANNING[0], "planning", "8K")
    ('6', 'as for all classes')
    """
    if class_name and group in WHOLE:
        return "as for all classes"
    return setting.usual
