"""Constructions at random: some with a length or an angle given, some with a letter to find."""

from __future__ import annotations

import random

from itembank.figures.kinds.construction.construction import Construction
from itembank.figures.kinds.construction.construction_facts import HALVED, LETTERS, shown
from itembank.notation import tree as t


def example(chance: random.Random) -> Construction:
    """Return a construction, sound or not."""
    shape = chance.choice(sorted(LETTERS))
    halved = chance.randrange(0, 3) if shape in HALVED else 0
    count = 3 + halved if shape in HALVED else 5
    letters = "".join(chance.sample("ABCDEFGHKLMNPQRST", count))
    joined = shape == "perpendicular bisector" and chance.random() < 0.5
    size = (
        chance.randrange(30, 151, 2) if shape == "angle bisector" else chance.randrange(40, 60, 2)
    )
    if shape not in ("angle bisector", "perpendicular bisector"):
        size = 40
    facts = shown(shape, letters, halved, joined)
    given: list[tuple[str, t.Node]] = []
    draw = chance.random()
    if draw < 0.4 and facts.lengths:
        name = chance.choice(sorted(facts.lengths))
        given.append((name, t.Quantity(t.Int(chance.randrange(3, 30)), chance.choice(("cm", "m")))))
    elif draw < 0.8:
        name = chance.choice(sorted(facts.angles))
        degrees, times = facts.angles[name]
        value = degrees + times * size
        if value.denominator == 1:
            x = chance.randrange(2, 12)
            amount: t.Node = t.Int(int(value))
            if chance.random() < 0.4 and value > 4 * x:
                amount = t.add(t.juxt(t.Int(3), t.Sym("x")), t.Int(int(value) - 3 * x))
                amount = t.Bracket(amount)
                given.append((f"angle {name}", t.Quantity(amount, "°")))
            else:
                given.append((f"angle {name}", t.Quantity(amount, "°")))
    turn = chance.randrange(0, 360, 15)
    return Construction(shape, letters, tuple(given), halved, size, joined, turn)
