"""Pressure: a force on an area, told or found."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.ratio._density_mistakes import EDGES_ADDED, PRESSURE_TIMES, PRESSURE_UPSIDE
from generators.ratio._density_numbers import face_wrong, pressure_wrong
from generators.ratio._parts import amount
from generators.ratio._rates import by_formula, wrong_amounts
from itembank.items.item import Draft, Find, Step, prompt
from itembank.notation import tree as t

_THINGS = ("A crate", "A tool box", "A water tank", "A stack of books", "A sack of soil")
_X = t.Sym("x")


def on_an_area(kind: str, area: int, tenths: int) -> Draft:
    """Return the question for a pressure or a force, at tenths of a newton on each unit of area."""
    name = by_turns(_THINGS, area // 5 + tenths)
    force, room, each = (
        t.Int(area * tenths // 10),
        t.Int(area),
        amount(Fraction(tenths, 10), ""),
    )
    if kind == "pressure":
        text = (
            f"{name} presses on {{a}} square centimetres of the floor with a force of {{f}} "
            "newtons. What is the pressure, in newtons per square centimetre?"
        )
        shown: dict[str, t.Node] = {"a": room, "f": force}
        asked: t.Node = t.divide(force, room)
        key: t.Node = each
        say, value = "Pressure is force divided by area.", Fraction(tenths, 10)
    else:
        text = (
            f"{name} stands on {{a}} square centimetres of the floor. The pressure there is "
            "{p} newtons per square centimetre. How many newtons is the force altogether?"
        )
        shown, asked, key = {"a": room, "p": each}, t.times(each, room), force
        say, value = "Force is pressure times area.", Fraction(area * tenths, 10)
    first = PRESSURE_TIMES if kind == "pressure" else PRESSURE_UPSIDE
    wrong = pressure_wrong(kind, area, tenths)
    likely = wrong_amounts("", value, (first, PRESSURE_UPSIDE), wrong)
    return by_formula(text, shown, asked, key, say, likely, (kind, area, tenths), "decimal")


def on_a_face(a: int, b: int, c: int) -> Draft:
    """Return the question for the pressure of 10a newtons on a face of b by c centimetres."""
    name = by_turns(_THINGS, a + b // 5 + c)
    edges, force, area = (t.Int(b), t.Int(c)), t.Int(10 * a), t.Int(b * c)
    pressure = Fraction(10 * a, b * c)
    return Draft(
        prompt(
            f"{name} presses on the floor with a force of {{f}} newtons. Its base is a "
            "rectangle, {b} centimetres long and {c} centimetres wide. What is the pressure, "
            "in newtons per square centimetre?",
            f=force,
            b=edges[0],
            c=edges[1],
        ),
        Find(_X, (t.equals(_X, t.divide(force, t.Bracket(t.times(*edges)))),)),
        amount(pressure, ""),
        "decimal",
        (
            Step("Find the area of the base.", t.equals(t.times(*edges), area)),
            Step(
                "Pressure is force divided by area.",
                t.equals(t.divide(force, area), amount(pressure, "")),
            ),
        ),
        wrong_amounts(
            "",
            pressure,
            (PRESSURE_TIMES, PRESSURE_UPSIDE, EDGES_ADDED),
            face_wrong(a, b, c),
        ),
        ("face", a, b, c),
    )
