"""Sums that are said in words: *the sum of*, *half of*, *increase … by …*, *the reciprocal of*.

Each wording has a builder that makes the tree to be worked out from the pieces of mathematics it
names. What a word adds of its own (the 2 of *half*, the 1 of *reciprocal*, the 100 % of
*increase*) is a constant the proof may use though no figure of the prompt shows it.

The meanings are those of English school mathematics (common practice, no source): *the
difference between* two numbers is the larger less the smaller; *subtract a from b* is b − a.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from itembank.notation.tree import (
    Bracket,
    Dec,
    Frac,
    Int,
    Listing,
    Mixed,
    Money,
    Node,
    NotationError,
    Percent,
    Power,
    Product,
    Quantity,
    Ratio,
    Relation,
    Root,
    Sum,
    Sym,
    symbols,
    walk,
)
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact
from itembank.wording.phrases import phrase

Built = tuple[Node, tuple[int, ...]]
"""A tree to be worked out, and the whole numbers that words put into it."""


class NotBuilt(NotationError):
    """Words and mathematics do not make a sum; the message says why, in a sentence."""


class Saying(NamedTuple):
    """A wording and what it makes of its pieces of mathematics. `form` is the form it asks for."""

    wording: str
    build: Callable[..., Built]
    form: str = ""

    @property
    def pattern(self) -> re.Pattern[str]:
        """Return the wording as a pattern, compiled when it is first looked at."""
        return phrase(self.wording)


def _part(node: Node) -> Node:
    """Return a tree that may stand inside another: a sum or a product in brackets."""
    if isinstance(node, Relation | Listing | Ratio):
        raise NotBuilt("This is worked out with numbers and expressions only.")
    return Bracket(node) if isinstance(node, Sum | Product) else node


def _sum(*nodes: Node) -> Built:
    if len(nodes) == 1 and isinstance(nodes[0], Sum) and all(op == "+" for op, _ in nodes[0].rest):
        return nodes[0], ()  # Add {3/4 + 1/6}: the sum stands there
    first, *rest = map(_part, _alike(_several(nodes)))
    return Sum(first, tuple(("+", node) for node in rest)), ()


def _product(*nodes: Node) -> Built:
    first, *rest = map(_part, _several(nodes))
    return Product(first, tuple(("×", node) for node in rest)), ()


def _several(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """Return the parts of one list, or the pieces themselves, which are two or more."""
    if len(nodes) == 1 and isinstance(nodes[0], Listing):
        nodes = nodes[0].parts
    if len(nodes) < 2:
        raise NotBuilt("This takes two numbers or more; here is one.")
    return nodes


def _alike(nodes: tuple[Node, ...]) -> tuple[Node, ...]:
    """Return things that can be added up: all money, all of one kind of unit, or all bare."""
    if len({_kind(node) for node in nodes}) > 1:
        raise NotBuilt("Amounts of different kinds are not added, taken away or compared.")
    return nodes


def _kind(node: Node) -> str:
    """Return what an amount is an amount of, by the first unit or sign in it."""
    for part in walk(node):
        match part:
            case Money(_, sign):
                return CURRENCY[sign].dimension
            case Quantity(_, unit):
                return UNITS[unit].dimension
            case Percent():
                return "percent"
    return ""


def _less(a: Node, b: Node) -> Built:
    _alike((a, b))
    return Sum(_part(a), (("-", _part(b)),)), ()


def _more(a: Node, b: Node) -> Built:
    """Return a − b, which has to be more than nothing: how much more is 8 than 20 is no question."""
    _alike((a, b))
    if not (symbols(a) or symbols(b)) and exact(a) <= exact(b):
        raise NotBuilt("The first of the two is not more than the second.")
    return _less(a, b)


def _bare(node: Node) -> Node:
    """Return what is added or taken away; a fraction more may mean a fraction of it."""
    if isinstance(node, Frac | Percent | Mixed):
        raise NotBuilt("A fraction more or less may mean that much, or that part of it.")
    return node


def _times_in(a: Node, b: Node) -> Built:
    """Return how many times b goes into a, where that is a whole number of times."""
    if symbols(a) or symbols(b) or (exact(a) / exact(b)).denominator != 1:
        raise NotBuilt("It does not go in a whole number of times: say what is to be done.")
    return _over(a, b)


def _difference(*nodes: Node) -> Built:
    two = _several(nodes)
    if len(two) != 2:
        raise NotBuilt("A difference is between two numbers.")
    a, b = two
    if symbols(a) or symbols(b):
        raise NotBuilt("Which of the two is larger is not known where there are letters.")
    return _less(a, b) if exact(a) >= exact(b) else _less(b, a)


def _over(a: Node, b: Node) -> Built:
    return Product(_part(a), (("÷", _part(b)),)), ()


def _of(a: Node, b: Node) -> Built:
    if not isinstance(a, Frac | Mixed | Dec | Percent):
        raise NotBuilt("A part of a number is a fraction, a decimal or a percentage of it.")
    return Product(_part(a), (("of", _part(b)),)), ()


def _times(n: int) -> Callable[[Node], Built]:
    return lambda node: (Product(Int(n), (("×", _part(node)),)), (n,))


def _shared(n: int) -> Callable[[Node], Built]:
    return lambda node: (Product(_part(node), (("÷", Int(n)),)), (n,))


def _power(n: int) -> Callable[[Node], Built]:
    return lambda node: (
        Power(node if isinstance(node, Int | Sym) else Bracket(node), Int(n)),
        (n,),
    )


def _root(n: int) -> Callable[[Node], Built]:
    return lambda node: (Root(node, n), ())


def _reciprocal(node: Node) -> Built:
    return Product(Int(1), (("÷", Bracket(node)),)), (1,)


def _changed(sign: str) -> Callable[[Node, Node], Built]:
    def build(amount: Node, by: Node) -> Built:
        if isinstance(by, Frac):
            raise NotBuilt("By a fraction may mean by that much, or by that part of it.")
        change = _of(by, amount)[0] if isinstance(by, Percent) else _part(_alike((amount, by))[1])
        return Sum(_part(amount), ((sign, change),)), ()  # type: ignore[arg-type]

    return build


def _share_of(a: Node, b: Node) -> Built:
    """Return a as a part of b; `b` is the whole."""
    return Product(_part(a), (("÷", _part(b)),)), ()


def _whole_first(b: Node, a: Node) -> Built:
    return _share_of(a, b)


def _percentage_change(a: Node, b: Node) -> Built:
    _more(b, a)
    return Product(Bracket(_less(b, a)[0]), (("÷", _part(a)),)), ()


def _percentage_loss(a: Node, b: Node) -> Built:
    _more(a, b)
    return Product(Bracket(_less(a, b)[0]), (("÷", _part(a)),)), ()


def _mean(*nodes: Node) -> Built:
    parts = _several(nodes)
    return Product(Bracket(_sum(*parts)[0]), (("÷", Int(len(parts))),)), (len(parts),)


def _range(*nodes: Node) -> Built:
    parts = sorted(_several(nodes), key=exact)
    return _less(parts[-1], parts[0])


_MORE = "more|bigger|larger|greater|higher|longer|heavier"
_LESS = "less|smaller|lower|shorter|lighter"

_SAYINGS: tuple[tuple[str, Callable[..., Built], str], ...] = (
    (r"(?:add|add up|find the total of|total) <NPs>", _sum, ""),
    (r"add <M> (?:to|and|on to) <NP>", lambda a, b: _sum(b, a), ""),
    (r"<FIND> the (?:sum|total) of <NPs>", _sum, ""),
    (r"<FIND> <M> (?:plus|add) <M>", _sum, ""),
    (r"(?:subtract|take(?: away)?) <M> (?:away )?from <NP>", lambda a, b: _less(b, a), ""),
    (r"<FIND> <M> (?:minus|take away|subtract) <M>", _less, ""),
    (r"<NAME> <M> less than <M>", lambda a, b: _less(b, _bare(a)), ""),
    (r"<NAME> (?:the number that is )?<M> more than <M>", lambda a, b: _sum(b, _bare(a)), ""),
    (r"(?:what|which) number is <M> less than <M>", lambda a, b: _less(b, _bare(a)), ""),
    (r"(?:what|which) number is <M> more than <M>", lambda a, b: _sum(b, _bare(a)), ""),
    (rf"how much (?:{_MORE}) is <M> than <M>", _more, ""),
    (rf"how much (?:{_LESS}) is <M> than <M>", lambda a, b: _more(b, a), ""),
    (r"<FIND> the difference between <NPs>", _difference, ""),
    (r"<FIND> the product of <NPs>", _product, ""),
    (r"multiply <NP> by <NP>", _product, ""),
    (r"multiply <M> and <M>", _product, ""),
    (r"<FIND> <M> (?:times|multiplied by|lots of) <M>", _product, ""),
    (r"divide <NP> by <NP>", _over, ""),
    (r"<FIND> <M> divided by <M>", _over, ""),
    (
        r"how many <M>s? (?:are (?:there )?in|go into|make|fit into) <M>",
        lambda a, b: _times_in(b, a),
        "",
    ),
    (r"(?:double|<FIND> (?:double|twice)) <NP>", _times(2), ""),
    (r"(?:treble|triple|<FIND> (?:treble|triple|three times)) <NP>", _times(3), ""),
    (r"(?:halve|<FIND> (?:a )?half(?: of)?) <NP>", _shared(2), ""),
    (r"<FIND> (?:a|one) third of <NP>", _shared(3), ""),
    (r"<FIND> (?:a|one) quarter of <NP>", _shared(4), ""),
    (r"<FIND> (?:a|one) fifth of <NP>", _shared(5), ""),
    (r"<FIND> (?:a|one) tenth of <NP>", _shared(10), ""),
    (r"square <NP>", _power(2), ""),
    (r"<FIND> the square of <NP>", _power(2), ""),
    (r"<FIND> <M> squared", _power(2), ""),
    (r"cube <NP>", _power(3), ""),
    (r"<FIND> the cube of <NP>", _power(3), ""),
    (r"<FIND> <M> cubed", _power(3), ""),
    (r"<FIND> the (?:positive )?square root of <NP>", _root(2), ""),
    (r"square root <NP>", _root(2), ""),
    (r"<FIND> the cube root of <NP>", _root(3), ""),
    (r"<FIND> the reciprocal of <NP>", _reciprocal, ""),
    (r"<FIND> <VALUE><M> of <M>", _of, ""),
    (r"(?:increase|raise) <NP> by <M>", _changed("+"), ""),
    (r"(?:decrease|reduce|lower) <NP> by <M>", _changed("-"), ""),
    (r"what (?:percentage|per cent|percent) of <M> is <M>", _whole_first, "percentage"),
    (r"what (?:percentage|per cent|percent) is <M> of <M>", _share_of, "percentage"),
    (r"what fraction of <M> is <M>", _whole_first, "lowest-terms"),
    (r"what fraction is <M> of <M>", _share_of, "lowest-terms"),
    (r"(?:<PUT>|work out|find) <M> as a percentage of <M>", _share_of, "percentage"),
    (r"what is <M> as a percentage of <M>", _share_of, "percentage"),
    (r"(?:<PUT>|work out|find) <M> as a fraction of <M>", _share_of, "lowest-terms"),
    (r"what is <M> as a fraction of <M>", _share_of, "lowest-terms"),
    (r"<FIND> the percentage increase from <M> to <M>", _percentage_change, "percentage"),
    (
        r"<FIND> the percentage (?:decrease|reduction|loss) from <M> to <M>",
        _percentage_loss,
        "percentage",
    ),
    (r"<FIND> the (?:mean|average) of <NPs>", _mean, ""),
    (r"<FIND> the range of <NPs>", _range, ""),
)

SAYINGS = tuple(Saying(*row) for row in _SAYINGS)
