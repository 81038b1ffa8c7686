"""Function machines at random: one to three boxes, forwards and backwards."""

from __future__ import annotations

import random

from itembank.figures.kinds.number.function_machine import Does, FunctionMachine
from itembank.notation import tree as t


def example(chance: random.Random) -> FunctionMachine:
    """Return a function machine, sound or not."""
    does = tuple(
        Does(chance.choice("+−×÷"), t.num(chance.randrange(0, 13)))  # type: ignore[arg-type]
        for _ in range(chance.randrange(1, 4))
    )
    number = chance.choice((t.num(chance.randrange(-20, 100)), t.Dec("2", "5")))
    if chance.random() < 0.5:
        return FunctionMachine(does, input=number)
    return FunctionMachine(does, output=number)
