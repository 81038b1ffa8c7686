"""Tree diagrams at random: one event or two, fractions or decimals, one left out or none."""

from __future__ import annotations

import random

from itembank.figures.kinds.chance.tree_diagram import Branch, TreeDiagram, Twig
from itembank.notation import tree as t

NAMES = (("red", "blue", "green"), ("win", "lose", "draw"), ("late", "not late", "away"))


def example(chance: random.Random) -> TreeDiagram:
    """Return a tree diagram, sound or not."""
    decimals = chance.random() < 0.5

    def parts(count: int) -> list[t.Node | None]:
        whole = 10 if decimals else chance.randrange(4, 13)
        cuts = sorted(chance.sample(range(1, whole), count - 1))
        sizes = [b - a for a, b in zip((0, *cuts), (*cuts, whole), strict=True)]
        out: list[t.Node | None] = [
            t.Dec("0", str(size)) if decimals else t.frac(size, whole) for size in sizes
        ]
        if chance.random() < 0.3:
            out[chance.randrange(count)] = None
        return out

    names = chance.choice(NAMES)
    count, deep = chance.choice((2, 2, 3)), chance.random() < 0.8

    def branch(name: str, chance_of: t.Node | None) -> Branch:
        twigs = zip(names, parts(2), strict=False) if deep else ()
        return Branch(name, chance_of, tuple(Twig(*twig) for twig in twigs))

    return TreeDiagram(tuple(branch(*each) for each in zip(names, parts(count), strict=False)))
