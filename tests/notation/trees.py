"""Well-formed trees for hypothesis, built from the rules written in `itembank.notation.line`.

The rules are stated here a second time, by construction. Only what depends on how letters
happen to spell a unit or a word (``5kg``, ``3p``) is left to `line` to refuse.
"""

from hypothesis import reject
from hypothesis import strategies as st

from itembank.notation.line import line
from itembank.notation.tree import (
    Blank,
    Bracket,
    ClockTime,
    Dec,
    Either,
    Frac,
    Int,
    Juxt,
    Label,
    Listing,
    Mixed,
    MixedUnits,
    Money,
    Neg,
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
from itembank.notation.units import TOGETHER, UNITS

digits = st.text("0123456789", min_size=1, max_size=4)
some_digits = st.text("0123456789", max_size=3)

ints = st.builds(Int, st.integers(0, 30) | st.integers(0, 10**9))
decs = st.builds(Dec, digits, digits) | st.builds(Dec, digits, some_digits, digits)
syms = st.builds(Sym, st.sampled_from("xyzabnpmofkgstABπθΩσ"))
simple = ints | decs | syms | st.just(Blank())
positive = st.integers(1, 40)
mixeds = st.builds(Mixed, positive, positive, positive)
labels = st.builds(
    Label,
    st.sampled_from(["Pack B", "the bus depot", "3/4", "½ & “x” <y>", "Fig. (a), x = 2", "é  −"]),
)


def _joined(kind, ops, part):
    rest = st.lists(st.tuples(st.sampled_from(ops), part), min_size=1, max_size=3)
    return st.builds(lambda first, others: kind(first, tuple(others)), part, rest)


def _several(kind, part):
    return st.builds(lambda parts: kind(tuple(parts)), st.lists(part, min_size=2, max_size=3))


def _starts_with_digit(node):
    return type(node) in (Int, Dec) or (type(node) is Power and type(node.base) in (Int, Dec))


@st.composite
def juxts(draw, factor, expression):
    """Factors side by side: a digit leads or follows a bracket, a fraction leads letters."""
    factors = [draw(factor)]
    for _ in range(draw(st.integers(1, 3))):
        following = draw(factor)
        if _starts_with_digit(following) and type(factors[-1]) is not Bracket:
            following = Bracket(draw(expression))
        factors.append(following)
    letters_follow = any(symbols(f) for f in factors[1:]) and not _starts_with_digit(factors[1])
    if letters_follow and draw(st.booleans()):
        lead = draw(mixeds | st.builds(Frac, expression, expression))
        factors[0] = draw(st.sampled_from([lead, Bracket(lead), Bracket(Bracket(lead))]))
    return Juxt(tuple(factors))


@st.composite
def _mixed_units(draw):
    unit = draw(st.sampled_from(sorted(TOGETHER)))
    parts = [Quantity(draw(ints | st.just(Blank())), unit)]
    while unit in TOGETHER and (len(parts) < 2 or draw(st.booleans())):
        unit = draw(st.sampled_from(TOGETHER[unit]))
        parts.append(Quantity(draw(ints | st.just(Blank())), unit))
    last = draw(ints | decs | mixeds)
    return MixedUnits((*parts[:-1], Quantity(last, unit)))


mixed_units = _mixed_units()
clock_times = st.builds(ClockTime, st.integers(0, 23), st.integers(0, 59)) | st.builds(
    ClockTime, st.integers(1, 12), st.none() | st.integers(0, 59), st.sampled_from(["am", "pm"])
)
lengths_of_time = mixed_units.filter(
    lambda node: UNITS[node.parts[0].unit].dimension == "time"
) | st.builds(Quantity, ints | decs | mixeds, st.sampled_from(["s", "min", "h", "day"]))
time_sums = st.builds(
    lambda time, op, length: Sum(time, ((op, length),)),
    clock_times,
    st.sampled_from(["+", "-"]),
    lengths_of_time,
)
between_times = st.builds(lambda a, b: Sum(a, (("-", b),)), clock_times, clock_times)


def _level(depth):
    """Return the strategies of one nesting level: expressions with at most `depth` inside."""
    if depth == 0:
        return simple | mixeds
    inner = _level(depth - 1)
    base = simple | st.builds(Bracket, inner)
    factor = (
        base | st.builds(Power, base, inner) | st.builds(Root, inner, st.sampled_from([2, 3, 4]))
    )
    amount = factor | mixeds | st.builds(Frac, inner, inner) | juxts(factor, inner)
    unsigned = (
        amount
        | st.builds(Percent, amount)
        | st.builds(Money, amount, st.sampled_from("£€$"))
        | st.builds(Money, ints | decs | st.just(Blank()), st.just("p"))
        | st.builds(Quantity, amount, st.sampled_from(sorted(UNITS)))
        | mixed_units
    )
    signed = unsigned | st.builds(Neg, unsigned)
    term = signed | _joined(Product, ["×", "÷", "of"], signed)
    return term | _joined(Sum, ["+", "-"], term) | between_times


expressions = _level(2)
ratios = _several(Ratio, expressions)
sides = expressions | ratios | labels | clock_times | time_sums
relations = _joined(Relation, list("=<>≤≥≠"), sides)
cells = sides | relations
listings = _several(Listing, cells)
choices = _several(Either, expressions | ratios | relations | listings)


def pence_free(node):
    """Return `node` without sums of pence, for lines in which p is a letter."""
    if any(type(part) is Money and part.sign == "p" for part in walk(node)):
        reject()
    try:
        line(node, pence=False)
    except NotationError as error:
        if "as one word" in str(error):
            reject()
        raise
    return node


def _keep(node):
    """Return `node`, or turn it down where its letters happen to spell something else."""
    try:
        line(node)
    except NotationError as error:
        if "as one word" in str(error):
            reject()
        raise
    return node


# Not .map(): what is turned down inside it makes hypothesis write out the whole strategy, which
# fills the memory for one as deep as these.


@st.composite
def _trees(draw):
    return _keep(draw(cells | listings | choices))


@st.composite
def _algebra_trees(draw):
    return pence_free(draw(expressions | choices))


@st.composite
def _values(draw):
    return _keep(draw(expressions | ratios))


trees, algebra_trees, values = _trees(), _algebra_trees(), _values()
