"""What the pupils of each band do after the starter, in words a twelve-year-old can follow.

Each sentence is at most 45 characters, so that three bands fit one slide that can be read
from the back of the room.

The words are data: a department may put its own in place of any of them. Field names are
those of the pack's own model, so that a task converts to it by keyword.
"""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass

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
    where="Tables nearest the board. Bring your starter.",
    first="Read the worked example, line by line.",
    how="We do one together, then you try one.",
    stuck="Point to the last line that makes sense.",
    finished="Put right a starter question you got wrong.",
)

PRACTISE = NextTask(
    title="Practise with an example",
    tier="support",
    mode="in pairs",
    worked_example=True,
    where="Your seat. Take a support sheet each.",
    first="Read the example. Cover it. Say each step.",
    how="Take turns: one works, the other checks.",
    stuck="Find the line of the example most like yours.",
    finished="Check. Then try core questions 1 to 3.",
)

SECURE = NextTask(
    title="Make it stick",
    tier="core",
    mode="in pairs",
    worked_example=False,
    where="Your seat. Take a core sheet each.",
    first="Put right a starter question you got wrong.",
    how="Work alone, then compare and agree.",
    stuck="Starter, then partner, then teacher.",
    finished="Check. Then try challenge questions 1 to 3.",
)

EXTEND = NextTask(
    title="Take it further",
    tier="challenge",
    mode="on your own",
    worked_example=False,
    where="Your seat. Take a challenge sheet.",
    first="Read all of question 1. What must you find?",
    how="On your own. Write every step.",
    stuck="Draw it, or try it with easier numbers.",
    finished="Check. Then write a question to swap.",
)

DEEPEN = NextTask(
    title="Say why it works",
    tier="challenge",
    mode="on your own",
    worked_example=False,
    where="Your seat. Challenge sheet, plain paper.",
    first="Pick the question that looks hardest.",
    how="Solve it, then write why it works.",
    stuck="Try a drawing, a table, or working back.",
    finished="Write a question that catches a mistake.",
)
