"""Questions written in line notation, for the tests of marking."""

from __future__ import annotations

import re

from itembank.items.item import Find, Item, Misconception, Slip, Tier
from itembank.notation.parse import parse_together

ADDS = Misconception("made.adds", "adds", "Why add?")


def question(key, form, prompt="?", ask=None, accept=(), wrong=()):
    """Return an item; the runs of mathematics in `prompt` stand in braces."""
    pieces = [piece for piece in re.split(r"(\{[^}]*\})", prompt) if piece]
    lines = [piece[1:-1] for piece in pieces if piece.startswith("{")]
    nodes = parse_together([*lines, key, *wrong])
    maths, answer, slips = nodes[: len(lines)], nodes[len(lines)], nodes[len(lines) + 1 :]
    left = iter(maths)
    return Item(
        address="made:one",
        topic="made.one",
        tier=Tier.CORE,
        prompt=tuple(next(left) if piece.startswith("{") else piece for piece in pieces),
        ask=ask(maths) if ask else Find(answer),
        key=answer,
        form=form,
        steps=(),
        slips=tuple(Slip(ADDS, node) for node in slips),
        twin=(),
        marks=1,
        constants=(),
        accept=tuple(accept),
    )
