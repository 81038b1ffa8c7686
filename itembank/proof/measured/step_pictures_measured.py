"""The second road to pictures beside lines of working: what is drawn has to show the line."""

from __future__ import annotations

from itembank.figures.figure import Figure, drawn
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.proof.claim.step_pictures import shown_by
from itembank.proof.measured.measure import disagreement, measured, measuring


def measured_picture_fault(item: Item) -> str:
    """Return how a picture of the working is drawn otherwise than its line says, as a clause."""
    for number, step in enumerate(item.steps, start=1):
        if step.figure is None:
            continue
        if parting := disagreement(step.figure):
            return f"the picture of step {number}: {parting}"
        if step.maths is None or not shown_by(step.figure, step.maths, measured, _equations):
            return f"the picture of step {number} is not drawn as its line says"
    return ""


def _equations(figure: Figure) -> tuple[t.Relation, ...]:
    return measuring(figure).relations(drawn(figure))
