"""Conversion graphs: read both ways, and past the end of the graph in proportion.

England's programme of study for key stage 3 (2013) asks pupils to "find approximate solutions to
contextual problems from given graphs of a variety of functions" and to "change freely between
related standard units" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.graphs._conversion_mistakes import ADDS, SAME_NUMBER, STOPS, WRONG_AXIS
from generators.graphs._conversion_units import UNITS, Units
from generators.graphs._conversions_told import with_told
from generators.graphs._grids import number
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridLine
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _rate(units: Units) -> Fraction:
    return Fraction(units.top, units.right)


def _whole(at: int) -> bool:
    """Tell whether the line goes through corners of squares, one after the other."""
    units = UNITS[at]
    return _rate(units) == Fraction(units.y_step, units.x_step)


def _read(at: int, half: int) -> bool:
    return _whole(at) and half % 2 == 0 and half > 2


def _back(at: int, half: int) -> bool:
    """Keep amounts of the upright axis, in whole squares or halves."""
    return _whole(at) and (half * UNITS[at].y_step) % 2 == 0


def _beyond(at: int, times: int, half: int) -> bool:
    units = UNITS[at]
    amount = half * units.x_step
    # Twenty times an amount is ten times the double, which is asked where that is on the graph.
    asked = times == 20 and 2 * half < 10
    return _whole(at) and half > 1 and amount * times > units.right and not asked


@register
class Conversion(Topic):
    """Amounts read off a straight line from one unit to another."""

    id = "graphs.conversion"
    title = "Conversion graphs"
    statements = ("algebra.real-life-graphs", "ratio.units", "ratio.linear")
    prerequisites = ("graphs.coordinates",)
    misconceptions = (WRONG_AXIS, SAME_NUMBER, ADDS, STOPS)
    spare = "Ten squares of a dozen graphs: what stands between cannot be read exactly."
    spaces = {
        Tier.SUPPORT: Space(_read, at=range(len(UNITS)), half=range(2, 20)),
        Tier.CORE: Space(_back, at=range(len(UNITS)), half=range(2, 20)),
        Tier.CHALLENGE: Space(
            _beyond, at=range(len(UNITS)), times=(10, 20, 100), half=range(1, 10)
        ),
    }
    spaces = with_told(kinds.with_statements(spaces))
    spaces = kinds.with_people_asked(spaces, "graphs.conversion")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._scaled(*values)
        at, half = values
        units = UNITS[at]
        back = tier is Tier.CORE
        known = Fraction(half * (units.y_step if back else units.x_step), 2)
        rate = 1 / _rate(units) if back else _rate(units)
        source, target = (units.up, units.along) if back else (units.along, units.up)
        text = _asked(target, source, known)
        key = number(known * rate)
        other = known / rate
        return Draft(
            text,
            of_figure(_graph(units), text),
            key,
            "value",
            (
                Step(f"Start at {_said(known)} on the axis for {source}, and go to the line."),
                Step(f"From there go to the axis for {target}.", key),
            )
            if back
            else (Step(f"Go from {_said(known)} {source} to the line, and to {target}.", key),),
            slips(
                (SAME_NUMBER, number(known)),
                (WRONG_AXIS, number(other) if (other * 100).denominator == 1 else None),
                (ADDS, number(known + units.y_step - units.x_step)),
                key=key,
            ),
            ("read", at, half, back),
            figure=_graph(units),
        )

    def _scaled(self, at: int, times: int, half: int) -> Draft:
        units = UNITS[at]
        part = half * units.x_step
        known = Fraction(part * times)
        read = part * _rate(units)
        key = number(known * _rate(units))
        text = _asked(units.up, units.along, known)
        steps = (
            Step(
                f"{_said(known)} is off the graph. Read off {part} {units.along}: "
                f"{_said(read)} {units.up}."
            ),
            Step(
                f"{_said(known)} is {times} times {part}.",
                t.equals(t.times(number(read), t.Int(times)), key),
            ),
        )
        return Draft(
            text,
            of_figure(_graph(units), text),
            key,
            "value",
            steps,
            slips((STOPS, number(read)), (ADDS, number(known + read - part)), key=key),
            ("beyond", at, times, half),
            constants=(times,),
            figure=_graph(units),
        )


def _graph(units: Units) -> CoordinateGrid:
    return CoordinateGrid(
        0,
        units.right,
        0,
        units.top,
        units.x_step,
        units.y_step,
        lines=(GridLine((t.Int(0), t.Int(0)), (t.Int(units.right), t.Int(units.top))),),
        x_title=units.along.capitalize(),
        y_title=units.up.capitalize(),
    )


def _asked(target: str, source: str, known: Fraction) -> tuple[Any, ...]:
    return prompt(f"How many {target} are {{n}} {source}?", n=number(known))


def _said(value: Fraction) -> str:
    return str(float(value)).removesuffix(".0")
