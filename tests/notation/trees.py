"""Well-formed trees for hypothesis, built from the rules written in `itembank.notation.line`.

The rules are stated here a second time, by construction. Only what depends on how letters
happen to spell a unit or a word (``5kg``, ``3p``) is left to `line` to refuse.

A tree is drawn out of a purse of nodes (`MOST_NODES`): who draws pays a node, and once the purse
is empty only leaves are drawn. So the size of a tree is bounded as it grows, and nothing large is
ever made and thrown away. Everything is drawn by functions, not by strategies put into
strategies: those write out all they hold when hypothesis names them, which for trees as deep as
these fills any memory.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import IntEnum
from functools import cache

from hypothesis import reject
from hypothesis import strategies as st

from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.units import TOGETHER, UNITS

MOST_NODES = 24
"""The nodes a tree may pay for."""
MOST_IN_ALL = 55
"""The most nodes a tree is ever made of: what was begun is finished, with leaves alone."""
DEEPEST = 2
"""How many expressions may stand inside each other, brackets and the like not counted."""
LARGEST = 10**9

digits = st.text("0123456789", min_size=1, max_size=4)
some_digits = st.text("0123456789", max_size=3)

ints = st.builds(t.Int, st.integers(0, 30) | st.integers(0, LARGEST))
decs = st.builds(t.Dec, digits, digits) | st.builds(t.Dec, digits, some_digits, digits)
syms = st.builds(t.Sym, st.sampled_from("xyzabnpmofkgstABπθΩσ"))
blanks = st.just(t.Blank())
simple = ints | decs | syms | blanks
positive = st.integers(1, 40)
mixeds = st.builds(t.Mixed, positive, positive, positive)
numbers_or_blanks = ints | decs | blanks
some_or_mixed = simple | mixeds
amounts = ints | decs | mixeds
ints_or_blanks = ints | blanks
labels = st.builds(
    t.Label,
    st.sampled_from(["Pack B", "the bus depot", "3/4", "½ & “x” <y>", "Fig. (a), x = 2", "é  −"]),
)


@cache
def one_of_these(*choices):
    """Return a strategy that draws one of these: made once, since making it takes longest."""
    return st.sampled_from(choices)


@cache
def _largest(dimension):
    kinds = (dimension,) if dimension else {unit.dimension for unit in UNITS.values()}
    return one_of_these(*sorted(u for u in TOGETHER if UNITS[u].dimension in kinds))


@st.composite
def mixed_units(draw, dimension=""):
    """Two or more units of one kind, the largest first; of `dimension` where one is named."""
    unit = draw(_largest(dimension))
    parts = [t.Quantity(draw(ints_or_blanks), unit)]
    while unit in TOGETHER and (len(parts) < 2 or draw(st.booleans())):
        unit = draw(one_of_these(*TOGETHER[unit]))
        parts.append(t.Quantity(draw(ints_or_blanks), unit))
    last = draw(amounts)
    return t.MixedUnits((*parts[:-1], t.Quantity(last, unit)))


clock_times = st.builds(t.ClockTime, st.integers(0, 23), st.integers(0, 59)) | st.builds(
    t.ClockTime,
    st.integers(1, 12),
    st.none() | st.integers(0, 59),
    st.sampled_from(["am", "pm"]),
)
lengths_of_time = mixed_units("time") | st.builds(
    t.Quantity, ints | decs | mixeds, st.sampled_from(["s", "min", "h", "day"])
)
time_sums = st.builds(
    lambda time, op, length: t.Sum(time, ((op, length),)),
    clock_times,
    st.sampled_from(["+", "-"]),
    lengths_of_time,
)
between_times = st.builds(lambda a, b: t.Sum(a, (("-", b),)), clock_times, clock_times)


class Rank(IntEnum):
    """How tightly something is bound: where one rank may stand, so may those before it."""

    BASE = 0
    FACTOR = 1
    AMOUNT = 2
    UNSIGNED = 3
    SIGNED = 4
    TERM = 5
    EXPRESSION = 6


def _starts_with_digit(node):
    return type(node) in (t.Int, t.Dec) or (
        type(node) is t.Power and type(node.base) in (t.Int, t.Dec)
    )


@dataclass
class Growing:
    """One tree as it grows: what draws its choices, the nodes left to pay, how deep it may go."""

    draw: Callable
    left: int = MOST_NODES
    depth: int = DEEPEST

    def of(self, rank):
        """Return a node that may stand where one of `rank` may."""
        self.left -= 1
        if self.left <= 0:
            return self.draw(simple)
        if not self.depth:
            return self.draw(some_or_mixed)
        return self.draw(_MAKERS[rank])(self)

    def leaf(self, strategy):
        """Return something that holds no expression, paid for whole."""
        node = self.draw(strategy)
        self.left -= sum(1 for _ in t.walk(node))
        return node

    def inside(self):
        """Return an expression one level down, for the inside of something."""
        self.depth -= 1
        node = self.of(Rank.EXPRESSION)
        self.depth += 1
        return node

    def several(self, part, least=2):
        """Return two or three parts, fewer once nothing is left to pay with."""
        self.left -= 1
        parts = [part() for _ in range(least)]
        while self.left > 0 and len(parts) < 3 and self.draw(st.booleans()):
            parts.append(part())
        return tuple(parts)

    def joined(self, kind, signs, part):
        """Return two to four parts with signs between them."""
        self.left -= 1
        first = part()
        rest = [(self.draw(one_of_these(*signs)), part())]
        while self.left > 0 and len(rest) < 3 and self.draw(st.booleans()):
            rest.append((self.draw(one_of_these(*signs)), part()))
        return kind(first, tuple(rest))

    def bracket(self):
        return t.Bracket(self.inside())

    def power(self):
        return t.Power(self.of(Rank.BASE), self.inside())

    def root(self):
        return t.Root(self.inside(), self.draw(one_of_these(2, 3, 4)))

    def trig(self):
        name = self.draw(one_of_these("sin", "cos", "tan"))
        of = self.leaf(amounts | st.builds(t.Quantity, amounts, st.just("°")))
        return t.Trig(name, of, self.draw(st.booleans()))

    def fraction(self):
        return t.Frac(self.inside(), self.inside())

    def juxt(self):
        """Factors side by side: a digit leads or follows a bracket, a fraction leads letters."""
        factors = [self.of(Rank.FACTOR)]
        for _ in range(self.draw(st.integers(1, 3)) if self.left > 0 else 1):
            following = self.of(Rank.FACTOR)
            if _starts_with_digit(following) and type(factors[-1]) is not t.Bracket:
                self.left -= 1
                following = self.bracket()
            factors.append(following)
        letters = any(t.symbols(factor) for factor in factors[1:])
        if letters and not _starts_with_digit(factors[1]) and self.draw(st.booleans()):
            lead = self.draw(mixeds) if self.draw(st.booleans()) else self.fraction()
            self.left -= 2
            shown = [lead, t.Bracket(lead), t.Bracket(t.Bracket(lead))]
            factors[0] = self.draw(st.sampled_from(shown))
        return t.Juxt(tuple(factors))

    def percent(self):
        return t.Percent(self.of(Rank.AMOUNT))

    def money(self):
        return t.Money(self.of(Rank.AMOUNT), self.draw(one_of_these(*"£€$")))

    def pence(self):
        return t.Money(self.draw(numbers_or_blanks), "p")

    def quantity(self):
        return t.Quantity(self.of(Rank.AMOUNT), self.draw(one_of_these(*sorted(UNITS))))

    def negative(self):
        return t.Neg(self.of(Rank.UNSIGNED))

    def product(self):
        return self.joined(t.Product, ["×", "÷", "of"], lambda: self.of(Rank.SIGNED))

    def sum(self):
        return self.joined(t.Sum, ["+", "-"], lambda: self.of(Rank.TERM))

    def expression(self):
        return self.of(Rank.EXPRESSION)

    def ratio(self):
        return t.Ratio(self.several(self.expression))

    def side(self):
        if self.left <= 0:
            return self.expression()
        kind = self.draw(one_of_these(*["expression"] * 3, "ratio", "other"))
        if kind == "other":
            return self.leaf(labels | clock_times | time_sums)
        return self.expression() if kind == "expression" else self.ratio()

    def relation(self):
        return self.joined(t.Relation, list("=<>≤≥≠"), self.side)

    def cell(self):
        alone = self.left <= 0 or self.draw(st.booleans())
        return self.side() if alone else self.relation()

    def listing(self):
        if self.draw(one_of_these(False, False, True)):
            return t.pair(self.expression(), self.expression())
        return t.Listing(self.several(self.cell))

    def choice(self):
        made = one_of_these(Growing.expression, Growing.ratio, Growing.relation, Growing.listing)
        return t.Either(self.several(lambda: self.draw(made)(self)))


def _drawn(strategy):
    """Return a maker that draws from a strategy of leaves."""
    return lambda growing: growing.leaf(strategy)


def _makers():
    """Return what may be made for each rank; numbers and letters as often as all of a rank."""
    made = [_drawn(simple)] * 5
    ranks = {}
    for rank, more in {
        Rank.BASE: [Growing.bracket],
        Rank.FACTOR: [Growing.power, Growing.root],
        Rank.AMOUNT: [_drawn(mixeds), Growing.fraction, Growing.juxt],
        Rank.UNSIGNED: [
            Growing.percent,
            Growing.money,
            Growing.pence,
            Growing.quantity,
            Growing.trig,
            _drawn(mixed_units()),
        ],
        Rank.SIGNED: [Growing.negative],
        Rank.TERM: [Growing.product],
        Rank.EXPRESSION: [Growing.sum, _drawn(between_times)],
    }.items():
        made = ranks[rank] = made + more
    return ranks


_MAKERS = {rank: st.sampled_from(made) for rank, made in _makers().items()}


def pence_free(node):
    """Return `node` without sums of pence, for lines in which p is a letter."""
    if any(type(part) is t.Money and part.sign == "p" for part in t.walk(node)):
        reject()
    return _keep(node, pence=False)


def _keep(node, *, pence=True):
    """Return `node`, or turn it down where its letters happen to spell something else."""
    try:
        line(node, pence=pence)
    except t.NotationError as error:
        if "as one word" in str(error):
            reject()
        raise
    return node


@st.composite
def _trees(draw):
    growing = Growing(draw)
    made = draw(one_of_these(Growing.cell, Growing.listing, Growing.choice))
    return _keep(made(growing))


@st.composite
def _algebra_trees(draw):
    growing = Growing(draw)
    return pence_free(draw(one_of_these(Growing.expression, Growing.choice))(growing))


@st.composite
def _values(draw):
    growing = Growing(draw)
    return _keep(draw(one_of_these(Growing.expression, Growing.ratio))(growing))


trees, algebra_trees, values = _trees(), _algebra_trees(), _values()
