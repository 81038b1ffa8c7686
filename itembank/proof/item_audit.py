"""What an audit finds on single items: their keys, forms, steps and likely mistakes."""

from __future__ import annotations

from dataclasses import dataclass, field

from itembank.errors import CheckFailed
from itembank.items.asks import kind_of
from itembank.items.item import Item
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.claim.finding import WrongKey
from itembank.proof.likely_mistakes import blind_slip, rivals
from itembank.proof.lines.steps import step_fault
from itembank.proof.lines.writing import writing_fault

KEPT = 5

FAULTS = ("wrong_keys", "blind", "rivals", "form_faults", "step_faults", "repeats")
"""The counts of a report that are nought where a topic is sound."""


@dataclass
class TopicAudit:
    """What an audit found on one topic; `faults` holds the first few in words."""

    topic: str
    items: int = 0
    checked: int = 0
    symbolic: int = 0
    wrong_keys: int = 0
    blind: int = 0
    rivals: int = 0
    form_faults: int = 0
    step_faults: int = 0
    repeats: int = 0
    difficulty: dict[str, float] = field(default_factory=dict)
    """The median of each tier, over :data:`MEASURED` of its items."""
    faults: list[str] = field(default_factory=list)

    @property
    def sound(self) -> bool:
        """Return whether no fault was found."""
        return not self.faults and not any(getattr(self, name) for name in FAULTS)

    def note(self, fault: str) -> None:
        """Keep a fault in words, where there are few yet."""
        if len(self.faults) < KEPT:
            self.faults.append(fault)

    def add(self, part: TopicAudit) -> None:
        """Add what was found on some of the topic's items."""
        for name in ("checked", "symbolic", *FAULTS):
            setattr(self, name, getattr(self, name) + getattr(part, name))
        for fault in part.faults:
            self.note(fault)


def check_item(item: Item, report: TopicAudit, *, symbolic: bool) -> None:
    """Check one item and add what is found to `report`."""
    try:
        prove_fast(item)
        if symbolic:
            prove_symbolic(item)
    except WrongKey as error:
        report.wrong_keys += 1
        report.note(str(error))
    except CheckFailed as error:
        report.form_faults += 1
        report.note(str(error))
    name = blind_slip(item)
    if name:
        report.blind += 1
        report.note(f"{item.address}: the misconception {name!r} gives the right answer")
    least = kind_of(item.ask).wrong_answers
    if len({slip.wrong for slip in item.slips}) < least:
        report.blind += 1
        fewer = "fewer than two different likely wrong answers" if least > 1 else "no wrong answer"
        report.note(f"{item.address}: {fewer}")
    if pair := rivals(item):
        report.rivals += 1
        report.note(
            f"{item.address}: two misconceptions give one answer: {pair[0]!r} and {pair[1]!r}",
        )
    if fault := writing_fault(item):
        report.form_faults += 1
        report.note(f"{item.address}: {fault}")
    fault = step_fault(item)
    if fault:
        report.step_faults += 1
        report.note(f"{item.address}: {fault}")
