"""Spot the mistake in somebody's working to a question of a picture, a list or a story."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from itembank.items.asks.faulty_line import line_name
from itembank.items.asks.faulty_working import FaultyWorking
from itembank.items.item import Draft, Run, Slip, Step, Tier
from itembank.items.kinds.lot import lot
from itembank.items.kinds.mistakes import OTHER_LINE
from itembank.items.kinds.wrong_lines import NAMES
from itembank.items.kinds.wrong_solutions import GoneWrong, WrongSolution
from itembank.items.wrong_answers import told_apart
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.items.topics.space import Space
    from itembank.items.topics.topic import Topic


def with_working_spotted(
    spaces: Mapping[Tier, Space], name: str, gone_wrong: GoneWrong, count: int = 80
) -> dict[Tier, Space]:
    """Return the spaces of a topic with somebody's wrong working at the end of each.

    `name` is the topic's id. `gone_wrong` gives the wrong workings of a question
    (:func:`~itembank.items.kinds.wrong_workings.working_goes_wrong`); where it gives none the
    question is left out. A mistake is drawn by lot, and then the line in which it is made.

    >>> from itembank.items.topics.registry import find_item
    >>> find_item("geometry.bearings/core/401").key.parts[0].text
    'line 1'
    """

    def spotted(topic: Topic, tier: Tier, of: tuple[Any, ...]) -> Draft:
        asked = topic.make(tier, *of)
        return _spotted(asked, _drawn(gone_wrong(asked), of), of)

    def kept(tier: Tier) -> Any:
        def keep(of: tuple[Any, ...]) -> bool:
            from itembank.items.topics.registry import find_topic

            return bool(gone_wrong(find_topic(name).make(tier, *of)))

        return keep

    return {
        tier: space.also(spotted, kept(tier), of=space.some(count))
        for tier, space in spaces.items()
    }


def _drawn(found: Sequence[WrongSolution], of: tuple[Any, ...]) -> WrongSolution:
    """Draw a mistake by lot, and then one of the workings in which it is made."""
    mistakes = sorted({wrong.mistake.id for wrong in found})
    mistake = mistakes[lot(len(mistakes), of, "mistake")]
    made = [wrong for wrong in found if wrong.mistake.id == mistake]
    return made[lot(len(made), of, "working")]


def _spotted(asked: Draft, solution: WrongSolution, of: tuple[Any, ...]) -> Draft:
    mistake, lines, wrong = solution
    words = "".join(run for run in asked.prompt if isinstance(run, str))
    names = [name for name in NAMES if name not in words]
    runs: list[Run] = [*asked.prompt]
    lead = f"\n{names[lot(len(names), of, 'writes')]} writes:\nLine 1:\u00a0"
    for number, line in enumerate(lines, start=1):
        said = lead if number == 1 else f"\nLine {number}:\u00a0"
        last = runs[-1]
        if isinstance(last, str):
            runs[-1] = last + said
        else:
            runs.append(said)
        runs.append(line)
    blamed = len(lines) if wrong < len(lines) else wrong - 1
    return Draft(
        (*runs, "\nWhich line is wrong? What should the answer be?"),
        FaultyWorking(asked.ask, lines, asked.form),
        t.Listing((line_name(wrong), asked.key)),
        "line-and-result",
        (Step(f"Line {wrong} is wrong. Put right:"), *asked.steps),
        told_apart(
            (
                Slip(mistake, t.Listing((line_name(wrong), lines[-1]))),
                Slip(OTHER_LINE, t.Listing((line_name(blamed), asked.key))),
            )
        ),
        ("working", *asked.twin, mistake.id),
        2,
        asked.constants,
        figure=asked.figure,
    )
