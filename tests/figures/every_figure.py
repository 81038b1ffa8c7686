"""Figures of every kind, drawn at random within what each kind allows.

A kind's examples come from ``example`` of the module in ``examples/`` that is named as the kind's
own, which makes a figure from a source of random numbers.
"""

from __future__ import annotations

import importlib
import random
from collections.abc import Callable, Iterator
from functools import lru_cache
from pathlib import Path

from itembank.figures import kinds
from itembank.figures.figure import KINDS, Figure, FigureError, drawn, fault

Maker = Callable[[random.Random], Figure]

kinds.load_all()


def maker(name: str) -> Maker:
    """Return what makes examples of a kind."""
    module = importlib.import_module(f"tests.figures.examples.{kinds.file_of(name)}")
    made: Maker = module.example
    return made


def names() -> list[str]:
    """Return the names of all kinds."""
    return list(KINDS)


def examples(name: str, count: int, seed: int = 1) -> Iterator[Figure]:
    """Yield so many sound figures of a kind, the same ones for a seed."""
    yield from _examples(name, count, seed, maker(name))


@lru_cache(maxsize=256)
def _examples(name: str, count: int, seed: int, make: Maker) -> tuple[Figure, ...]:
    """Make them once for all tests that ask the same of every kind: figures do not change."""
    return tuple(_sound(name, count, seed, make))


def _sound(name: str, count: int, seed: int, make: Maker) -> Iterator[Figure]:
    chance = random.Random(f"{name} {seed}")
    found = tried = 0
    while found < count:
        tried += 1
        assert tried < 50 * count, f"hardly any example of a {name} is sound"
        figure = make(chance)
        if not fault(figure) and _fits(figure):
            found += 1
            yield figure


def _fits(figure: Figure) -> bool:
    try:
        drawn(figure)
    except FigureError:
        return False
    return True


def lacking() -> list[str]:
    """Return the kinds that have no examples."""
    made = Path(__file__).parent / "examples"
    return [name for name in KINDS if not (made / f"{kinds.file_of(name)}.py").exists()]
