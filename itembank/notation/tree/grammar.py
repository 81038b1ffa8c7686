"""The grammar of one-line notation, put together from what each node says of how it is read.

The rules are LALR(1). A level holds what binds as tightly as it, and passes on to the next
tighter one; a node adds its own ways to the levels where it stands
(:class:`~.face.Syntax`).
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from itembank.notation.tree.face import FACES, kept_until_registered
from itembank.notation.tree.line_signs import CLOCK_0, CLOCK_24, DOT, LETTERS

LEVELS: dict[str, str] = {
    "start": "either",
    "either": "listing",
    "listing": "relation",
    "relation": "side",
    "side": "ratio",
    "ratio": "sum",
    "sum": "product",
    "product": "unary",
    "unary": "measure",
    "measure": "compact",
    "compact": "juxt",
    "below": "juxt",
    "juxt": "factor",
    "factor": "base",
    "exponent": "simple | group",
    "base": "simple | group",
    "simple": "",
}
"""The levels, and what each passes on to; `below` is what may stand under a bar.

Any of them but the start gives what stands at it. A node may have a level of its own besides,
by the name under which it is built.
"""


@kept_until_registered
def pence_sign() -> str:
    """Return the pattern of a p that is pence: straight after a number, and no letter of a product.

    >>> bool(re.search(pence_sign(), "3p")), bool(re.search(pence_sign(), "3p^2"))
    (True, False)
    """
    joins = "".join(dict.fromkeys("".join(faces.syntax.joins for faces in FACES.values())))
    return f"(?<=[0-9{DOT}□])p(?![{LETTERS}{re.escape(joins)}])"


def grammar(pence: bool, times: bool) -> str:
    """Return the rules where p may be pence or not, and 14:35 a clock time or not.

    Raises
    ------
    ValueError
        If a node stands at a level that there is not, or two give one sign different patterns.

    >>> "PENCE" in grammar(False, True), "PENCE" in grammar(True, True)
    (False, True)
    """
    ways: dict[str, list[str]] = {level: [on] if on else [] for level, on in LEVELS.items()}
    signs: dict[str, str] = {"PENCE.6": f"/{pence_sign()}/"}
    for kind, faces in FACES.items():
        for level, way in faces.syntax.rules:
            if level not in ways and level not in faces.syntax.build:
                raise ValueError(f"{kind.__name__} is read at {level!r}, which is no level")
            ways.setdefault(level, []).append(way)
        for name, pattern in faces.syntax.signs.items():
            # One sign with two patterns would be read by whichever came last.
            if signs.setdefault(name, pattern) != pattern:
                raise ValueError(f"{name} has two patterns, one of them that of {kind.__name__}")
    if not pence:
        del signs["PENCE.6"]
        ways = {
            level: [way for way in found if "PENCE" not in way] for level, found in ways.items()
        }
    rows = [
        # A ? has lark leave out a level that only passes on, so that no tree is made for it.
        f"{'?' if level in LEVELS and level != 'start' else ''}{level}: {' | '.join(way)}"
        for level, way in ways.items()
    ]
    rows += [f"{name}: {pattern}" for name, pattern in signs.items()]
    rules = "\n".join([*rows, '%ignore " "', ""])
    # Even in a line without times 09:45 is one, since no ratio is written with a leading 0.
    return rules if times else rules.replace(CLOCK_24, CLOCK_0)


@kept_until_registered
def builder() -> object:
    """Return what makes trees: an object with a method for the name of each rule."""
    made: dict[str, Callable[[list[Any]], Any]] = {"start": lambda parts: parts[0]}
    for faces in FACES.values():
        made |= faces.syntax.build
    return type("Builder", (), {name: staticmethod(build) for name, build in made.items()})()
