"""Lines of working in letters, held to the question and its key.

Working follows if it stays true where the key is true: an expression that is rewritten keeps
its value, an equation holds at every solution, a formula holds once its subject is put in.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from itembank.items.item import Item, Rewrite, Solve, Subject
from itembank.notation.algebra import Quotient, algebra
from itembank.notation.tree import Either, Listing, Node, Relation, Sym, children, symbols
from itembank.notation.value import NotExact, sides

Known = Mapping[str, Quotient]


def algebra_fault(item: Item, line: Node) -> str:
    """Return how a line of working departs from a question about letters, or ``""``.

    The key is taken as right: that is proved elsewhere.

    Raises:
        NotExact: the line holds something that cannot be compared exactly.

    >>> from itembank.items.item import Tier
    >>> from itembank.notation import parse
    >>> target, key = parse("3(x + 4)"), parse("3x + 12")
    >>> ask = Rewrite(target, "expand")
    >>> item = Item("b:1", "t", Tier.CORE, (target,), ask, key, "expanded", (), (), (), 1, ())
    >>> algebra_fault(item, parse("3(x + 4) = 3x + 12"))
    ''
    >>> algebra_fault(item, parse("3(x + 4) = 3x + 4"))
    'is worth something else than the question'
    """
    match item.ask:
        case Rewrite(target, _):
            pieces = (line,) if not isinstance(line, Relation) else children(line)
            if any(symbols(piece) and algebra(piece) != algebra(target) for piece in pieces):
                return "is worth something else than the question"
            return ""
        case Solve():
            if all(_holds(line, known) for known in _solutions(item.key)):
                return ""
            return "is not true at a solution of the question"
        case Subject(_, letter):
            (known,) = _solutions(item.key)
            if known.keys() != {letter.name} or _holds(line, known):
                return ""
            return "does not follow from the formula"
    return ""


def _holds(line: Node, known: Known) -> bool:
    """Whether a line is true with these values; a bare expression says nothing."""
    match line:
        case Either(parts):
            return any(_holds(part, known) for part in parts)
        case Listing(parts):
            return all(_holds(part, known) for part in parts)
        case Relation():
            if any(op != "=" for op, _ in line.rest):
                raise NotExact("a sign other than = stands in the working of an equation")
            return all(algebra(a, known) == algebra(b, known) for a, _, b in sides(line))
    return True


def _solutions(key: Node) -> Iterator[dict[str, Quotient]]:
    """Yield what each solution in a key says its letters are worth."""
    for case in key.parts if isinstance(key, Either) else (key,):
        known = {}
        for part in case.parts if isinstance(case, Listing) else (case,):
            if isinstance(part, Relation) and isinstance(part.first, Sym):
                known[part.first.name] = algebra(part.rest[0][1])
        yield known
