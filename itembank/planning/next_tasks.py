"""What the pupils of each band do after the starter, in words a twelve-year-old can follow.

The words are data: a department may put its own in place of any of them. Field names are
those of the pack's own model, so that a task converts to it by keyword.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

TierName = Literal["support", "core", "challenge"]
ModeName = Literal["with the teacher", "in pairs", "on your own"]
TIERS: tuple[TierName, ...] = ("support", "core", "challenge")
MODES: tuple[ModeName, ...] = ("with the teacher", "in pairs", "on your own")


@dataclass(frozen=True, slots=True)
class NextTask:
    """What pupils of a band do after the starter."""

    title: str
    tier: TierName
    mode: ModeName
    worked_example: bool
    where: str
    first: str
    how: str
    stuck: str
    finished: str


REBUILD = NextTask(
    title="Build it again together",
    tier="support",
    mode="with the teacher",
    worked_example=True,
    where="Bring your starter to the tables nearest the board. The support sheets are there.",
    first="Read the worked example on the support sheet, one line at a time.",
    how="We do one together. Then you fill in the next one. Then you try one and we check it.",
    stuck="Point to the last line of the worked example that makes sense. Ask about the next one.",
    finished="Choose a starter question you got wrong and put it right. Mark the step you changed.",
)

PRACTISE = NextTask(
    title="Practise with an example",
    tier="support",
    mode="in pairs",
    worked_example=True,
    where="Stay in your seat with the person beside you. Take a support sheet each.",
    first="Cover the worked example and uncover it a line at a time. Say what comes next.",
    how="Take turns: one of you works and says each step aloud, the other checks it.",
    stuck="Go back to the worked example and find the line that looks like yours. Then ask us.",
    finished="Check your answers. Then try the first three questions on the core sheet.",
)

SECURE = NextTask(
    title="Make it stick",
    tier="core",
    mode="in pairs",
    worked_example=False,
    where="Stay in your seat with the person beside you. Take a core sheet each.",
    first="Look at a starter question you got wrong. Find the step to change and put it right.",
    how="Do each question by yourself, then compare. If you differ, explain until you agree.",
    stuck="Look back at the starter question most like it. Then ask your partner. Then ask us.",
    finished="Check your answers. Then try the first three questions on the challenge sheet.",
)

EXTEND = NextTask(
    title="Take it further",
    tier="challenge",
    mode="on your own",
    worked_example=False,
    where="Stay in your seat. Take a challenge sheet.",
    first="Read all of question 1 before you write anything. What do you need to find?",
    how="Work by yourself. Write every step so that someone else could follow it.",
    stuck="Draw it, or try the same question with easier numbers. Still stuck? Ask us.",
    finished="Check your answers. Then write a question like these, with an answer, to swap.",
)

DEEPEN = NextTask(
    title="Say why it works",
    tier="challenge",
    mode="on your own",
    worked_example=False,
    where="Stay in your seat. Take a challenge sheet and some plain paper.",
    first="Choose the three questions on the sheet that look hardest. Start with one of those.",
    how="Solve each one, then write a sentence that says why your method works.",
    stuck="Look for a second way in: a drawing, a table, or working back from the end.",
    finished="Write a question that catches a common mistake. Then write how to put it right.",
)
