"""Own views over a term: how well they agree with scores, and what fooled the confident.

Pupils are compared within a lesson only, for starters differ in how hard they are; the pairs
of all lessons are then counted together. Counted so, small classes say something after a few
weeks that no one lesson of theirs could.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.records.statistics.interval import Interval, wilson
from itembank.records.statistics.own_view import FEWEST_FOR_AGREEMENT, Pairs, fooled

if TYPE_CHECKING:
    from itembank.records.reports.decision import Decision

FEWEST_SURE = 5
"""Sure answers below which a question is not listed (common practice, no source)."""
FEWEST_SURE_OF_TOPIC = 10
"""Sure answers below which a topic is not listed (common practice, no source)."""
CONFIDENCE = 0.9


@dataclass(frozen=True, slots=True)
class FooledBy:
    """A topic (`address` is empty) or a question that pupils who were sure often had wrong."""

    topic: str
    address: str
    prompt: str
    wrong: int
    sure: int
    interval: Interval


@dataclass(frozen=True, slots=True)
class ViewsOverTime:
    """Own views of a class over its lessons.

    `lessons` had views and scores by seat, `hands` only hands counted. `over` of the `sure`
    scored low, `under` of the `unsure` scored high; each pupil counts at each lesson. Topics
    and questions come the most certainly wrong first; `compared` questions had sure answers
    enough to be listed.
    """

    lessons: int
    hands: int
    agreement: float | None
    over: int
    sure: int
    under: int
    unsure: int
    topics: tuple[FooledBy, ...]
    questions: tuple[FooledBy, ...]
    compared: int

    @property
    def noted(self) -> bool:
        """Tell whether any own view was recorded."""
        return bool(self.lessons or self.hands)


def views_over_time(decisions: Sequence[Decision]) -> ViewsOverTime:
    """Return what the own views of several lessons say together.

    >>> views_over_time([]).noted
    False
    """
    noted = [decision for decision in decisions if decision.views is not None]
    seated = [result.views for result in noted if result.views is not None and result.views.pupils]
    pupils = sum(view.pupils for view in seated)
    pairs = Pairs(
        sum(view.pairs.agree for view in seated), sum(view.pairs.differ for view in seated)
    )
    return ViewsOverTime(
        len(seated),
        len(noted) - len(seated),
        pairs.gamma if pupils >= FEWEST_FOR_AGREEMENT else None,
        sum(len(view.over) for view in seated),
        sum(view.sure for view in seated),
        sum(len(view.under) for view in seated),
        sum(view.unsure for view in seated),
        *_fooled_by(noted),
    )


def _fooled_by(
    decisions: Sequence[Decision],
) -> tuple[tuple[FooledBy, ...], tuple[FooledBy, ...], int]:
    """Return the topics and the questions that fooled the confident, and those compared."""
    topics = _confident(decisions, False, FEWEST_SURE_OF_TOPIC)
    questions = _confident(decisions, True, FEWEST_SURE)
    worst = [
        # The lower end of the interval: four of five wrong say less than thirty of forty.
        sorted(
            (line for line in some if fooled(line.wrong, line.sure)),
            key=lambda line: (-line.interval.low, line.topic, line.address),
        )
        for some in (topics, questions)
    ]
    return tuple(worst[0]), tuple(worst[1]), len(questions)


def _confident(decisions: Iterable[Decision], by_question: bool, fewest: int) -> list[FooledBy]:
    counts: dict[tuple[str, str], list[int]] = defaultdict(lambda: [0, 0])
    prompts: dict[tuple[str, str], str] = {}
    for decision in decisions:
        for question in decision.facts.questions:
            wrong, sure = decision.confident.get(question.number, (0, 0))
            key = (question.topic, question.address if by_question else "")
            counts[key][0] += wrong
            counts[key][1] += sure
            prompts[key] = question.prompt if by_question else ""
    return [
        FooledBy(*key, prompts[key], wrong, sure, wilson(wrong, sure, CONFIDENCE))
        for key, (wrong, sure) in counts.items()
        if sure >= fewest
    ]
