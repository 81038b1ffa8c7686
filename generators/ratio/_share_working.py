"""How a whole is shared: the line to the value of one part."""

from __future__ import annotations

from generators._bars import shares as bars_of
from itembank.items.item import Step
from itembank.notation import tree as t


def worth_of_a_part(
    parts: tuple[int, ...], total: t.Node, part_worth: t.Node, names: tuple[str, ...] = ()
) -> tuple[Step, Step]:
    """Return the lines that lead to the value of one part, with bars where shares have names."""
    count = t.Int(sum(parts))
    figure = bars_of(zip(names, parts, strict=True), total) if names else None
    return (
        Step("Add to find the number of parts.", t.equals(t.add(*map(t.Int, parts)), count)),
        Step(
            "Divide to find what one part is worth.",
            t.equals(t.divide(total, count), part_worth),
            figure,
        ),
    )
