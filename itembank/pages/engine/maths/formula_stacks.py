"""Sets what stands above or below something else: fractions, powers, roots, and marks over it.

Each takes the setter, which sets what it is made of; the sizes are those that the face's own MATH
table gives.
"""

from __future__ import annotations

from typing import TYPE_CHECKING
from xml.etree.ElementTree import Element

from itembank.pages.engine.maths.formula_parts import Ink, Part, Rule
from itembank.pages.engine.maths.formula_signs import THIN, VERY_THIN, text_of

if TYPE_CHECKING:
    from itembank.pages.engine.maths.formula_setter import Place, Setter


def fraction(setter: Setter, element: Element, place: Place) -> Part:
    """Set `<mfrac>`, its bar upon the axis of the row and as thick as a minus."""
    constants = setter.constants
    level = place.level + (1 if place.within else 0)
    part = Part("mfrac", setter.size(level))
    inside = place._replace(
        level=level,
        within=True,
        script=False,
        after="",
        row_after="",
        row_size=None,
        form="prefix",
    )
    top, bottom = (setter.set(child, inside) for child in element)
    unit = setter.units(part)
    # As thick as a minus of the row it stands in, which is one level larger.
    thick = setter.size(max(0, level - 1)) / setter.face.units * constants["fraction_rule"]
    size = part.size if place.row_size is None else place.row_size
    # By the size of the row, and not its own: the bar goes on from the minus beside it.
    axis = constants["axis_height"] * (size / setter.face.units)
    up = min(
        -constants["numerator_display_shift_up"] * unit,
        -(axis + constants["numerator_display_gap_min"] * unit - top.low + thick / 2),
    )
    down = max(
        constants["denominator_display_shift_down"] * unit,
        -axis + constants["denominator_display_gap_min"] * unit + bottom.high + thick / 2,
    )
    x = 0.0
    if place.after:
        x = (VERY_THIN if place.after == "mfrac" else THIN) * part.size
    width = max(top.right, bottom.right)
    part.holds = [
        (x + (width - (top.right - top.left)) / 2, up, top),
        (x + (width - (bottom.right - bottom.left)) / 2, down, bottom),
        (x, -axis - thick / 2, Rule(width, thick)),
    ]
    part.first = top.first
    part.reach(0.0, x + width + THIN * part.size, bottom.low - down, top.high - up)
    return part


def power(setter: Setter, element: Element, place: Place) -> Part:
    """Set `<msup>`."""
    constants = setter.constants
    part = Part("msup", setter.size(place.level))
    alone = place._replace(after="", row_after="", row_size=None, form="prefix")
    base = setter.set(element[0], alone)
    level = place.level + 1
    index = setter.set(element[1], alone._replace(level=level, script=True, within=True))
    unit = setter.units(base)
    shift = 0.0
    if base.last is not None:
        shift = setter.face.italics.get(base.last.number, 0) * unit
    # The three rules of MathML Core, 3.4.1: the usual height, clear of the base's line, and not
    # too far below the top of a tall base.
    raised = max(
        constants["superscript_shift_up"],
        -index.first.low + constants["superscript_bottom_min"] if index.first else 0,
        base.high / unit - constants["superscript_baseline_drop_max"],
    )
    up = -raised * unit
    ahead = shift + index.right
    if base.kind == "mi" and len(text_of(element[0])) > 1:
        ahead += VERY_THIN * base.size
    x = base.advance
    part.holds = [(0.0, 0.0, base), (x + shift, up, index)]
    part.first, part.last = base.first, index.last
    # Else the base is a row with nothing in it, and only the index leaves ink.
    if base.high > base.low:
        part.reach(
            min(base.left, x + shift + index.left),
            max(x + ahead, base.right, x + shift + index.right),
            min(base.low, -up + index.low),
            max(base.high, -up + index.high),
        )
    else:
        part.reach(index.left, x + ahead, -up, -up + index.high)
    return part


def square_root(setter: Setter, element: Element, place: Place) -> Part:
    """Set `<msqrt>`."""
    within = place._replace(after="", row_after="", row_size=None)
    children = list(element)
    if len(children) == 1:
        under = setter.set(children[0], within._replace(form="prefix"))
    else:
        under = setter.row_of(children, within)
    return _root(setter, under, None, place)


def root(setter: Setter, element: Element, place: Place) -> Part:
    """Set `<mroot>`."""
    within = place._replace(after="", row_after="", row_size=None, form="prefix")
    under = setter.set(element[0], within)
    degree = setter.set(element[1], within._replace(level=place.level + 2))
    return _root(setter, under, degree, place)


def _root(setter: Setter, under: Part, degree: Part | None, place: Place) -> Part:
    constants = setter.constants
    part = Part("mroot", setter.size(place.level))
    unit = setter.units(part)
    sign = setter.face.as_tall_as(setter.face.number("√"), (under.high - under.low) / unit)
    gap, rule = constants["radical_display_gap"] * unit, constants["radical_rule"] * unit
    y = 0.0
    share = setter.face.degree_percent / 100
    if (
        under.high > sign.high * unit - gap
        or under.low <= (sign.low + constants["radical_rule"]) * unit
    ):
        y = -(under.high + gap + rule - sign.high * unit)
        # The degree stands at a share of the sign's height, which the face's MATH table names.
        at = y - sign.low * unit - (sign.high - sign.low) * unit * share
    else:
        at = y - sign.high * unit * share
    x = 0.0
    part.first = sign
    if degree is not None:
        x += constants["radical_kern_before_degree"] * unit
        at += degree.low
        part.holds.append((x, at, degree))
        part.first = degree.first
        x += degree.advance
        x += constants["radical_kern_after_degree"] * unit
    part.holds.append((x, y, Ink(sign, part.size, "√")))
    x += sign.advance * unit
    part.holds.append((x, 0.0, under))
    width = under.right
    if under.last is not None:
        width += setter.face.italics.get(under.last.number, 0) * unit
    part.holds.append((x, y - sign.high * unit, Rule(width, rule)))
    high = -y + sign.high * unit
    if degree is not None:
        high = max(high, -at + degree.high)
    part.reach(sign.left * unit, x + width, min(-y + sign.low * unit, under.low), high)
    return part


def over(setter: Setter, element: Element, place: Place) -> Part:
    """Set `<mover>`: a mark in the middle above what it belongs to."""
    part = Part("mover", setter.size(place.level))
    within = place._replace(after="", row_after="", row_size=None, form="prefix")
    base, mark = (setter.set(child, within) for child in element)
    x = ((base.right - base.left) - (mark.right - mark.left)) / 2 - mark.left
    y = -base.high - setter.constants["overbar_gap"] * setter.units(base) + mark.low
    # A mark wider than what it stands over begins where that did, and that moves to its middle.
    moved, x = (-x, 0.0) if x < 0 else (0.0, x)
    part.holds = [(moved, 0.0, base), (x, y, mark)]
    part.first, part.last = base.first, base.last
    part.reach(
        min(x + mark.left, moved + base.left),
        max(x + mark.right, moved + base.right),
        base.low,
        -y + mark.high,
    )
    part.advance = moved + base.advance
    return part
