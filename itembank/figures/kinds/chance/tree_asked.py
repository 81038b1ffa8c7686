"""How a tree diagram is asked about: one way along its branches, two ways, what is left out."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from itembank.figures.figure import Asked, FigureError, Reading, Said, Wording, asks_reading
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.figures.kinds.chance.tree_diagram import TreeDiagram


def _path(*groups: str) -> Said:
    """Return what a wording asks that wants one way along the branches, named by its groups."""

    def asks(figure: TreeDiagram, found: re.Match[str]) -> Asked:
        names = tuple(_outcome(figure, found[group]) for group in groups)
        return Asked(t.Sym("r"), (("r", Reading("probability", names)),))

    return asks


def _in_any_order(figure: TreeDiagram, found: re.Match[str]) -> Asked:
    first, second = _outcome(figure, found["a"]), _outcome(figure, found["b"])
    if first == second:
        raise FigureError("it asks for one outcome twice")
    return Asked(
        t.add(t.Sym("a"), t.Sym("b")),
        (
            ("a", Reading("probability", (first, second))),
            ("b", Reading("probability", (second, first))),
        ),
    )


def _outcome(figure: TreeDiagram, text: str) -> str:
    """Return the outcome that a word of a question names: also *two reds*, *a red*."""
    known = {twig.outcome.casefold(): twig.outcome for _, some in figure.sets for twig in some}
    plain = re.sub(r"^(?:an? |the )", "", text.casefold())
    for spelled in (plain, plain.removesuffix("s")):
        if spelled in known:
            return known[spelled]
    raise FigureError(f"no branch of it is called ‘{text}’")


_IS = r"(?:what is|find|work out|write down) the probability"
_A, _B = r"(?P<a>[a-z0-9][a-z0-9 ]*?)", r"(?P<b>[a-z0-9][a-z0-9 ]*?)"

TREE_WORDINGS = (
    Wording(
        r"(?:what is|find|work out|write down) the (?:missing probability"
        r"|probability (?:that is missing|missing from the (?:tree )?diagram))",
        asks_reading("missing"),
    ),
    Wording(rf"{_IS} of one {_A} and one {_B}(?:,? in (?:any|either) order)?", _in_any_order),
    Wording(rf"{_IS} of {_A},? (?:and then|then|followed by) {_B}", _path("a", "b")),
    Wording(rf"{_IS} (?:that both are|of two|of both being) {_A}", _path("a", "a")),
    Wording(rf"{_IS} that the first is {_A} and the second is {_B}", _path("a", "b")),
    Wording(rf"{_IS} that the first is {_A}", _path("a")),
)
"""The ways to ask about a tree diagram."""
