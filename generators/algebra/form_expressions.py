"""Forming expressions: situations in words, written in letters.

Key stage 3, algebra (England, 2013): "model situations or procedures by translating them into
algebraic expressions or formulae" (from memory).
"""

from __future__ import annotations

from typing import NamedTuple

from generators._turns import by_turns
from generators.algebra._writing import asking, bracket, expression, shown, term
from itembank.items.item import Draft, Find, Misconception, Rewrite, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

REVERSED = Misconception(
    "algebra.expression-reversed",
    "adds where the situation subtracts, or subtracts where it adds",
    "Which word tells you whether to add or to subtract?",
)
TIMES_AS_PLUS = Misconception(
    "algebra.expression-adds",
    "adds the number instead of multiplying by it",
    "Try 10 for the letter. What do you do with 10 to find the answer?",
)
JOINED = Misconception(
    "algebra.unlike",
    "joins terms that are not alike",
    "Which of the terms have just the same letters?",
)
ORDER = Misconception(
    "algebra.expression-order",
    "carries out the operations in the wrong order",
    "What is done first, and what to all of that? Do you need a bracket?",
)
FIXED_TIMES = Misconception(
    "algebra.expression-fixed-multiplied",
    "multiplies the fixed amount by the letter",
    "Which of the amounts is paid once? Which is paid again and again?",
)
SUBTRACTED_WRONG_WAY = Misconception(
    "algebra.expression-subtracts-wrong-way-round",
    "subtracts the wrong way round",
    "Which amount is there at first? What is taken away from it?",
)
LEFT_OUT = Misconception(
    "algebra.expression-part-left-out",
    "leaves out one of the parts",
    "How many parts are to be added? How many have you?",
)
HALF_ROUND = Misconception(
    "algebra.half-way-round",
    "adds only one length and one width",
    "How many sides has a rectangle? How many of them have you added?",
)
FIRST_ONLY = Misconception(
    "algebra.first-only",
    "multiplies only the first term in the bracket",
    "Which terms in the bracket are multiplied?",
)
PLUS_AS_TIMES = Misconception(
    "algebra.expression-more-as-times",
    "multiplies by the number instead of adding it",
    "Is it so many more, or so many times as many?",
)
SUBTRACTS = Misconception(
    "algebra.expression-subtracts",
    "subtracts the number instead of dividing by it",
    "Share 20 things equally among 4. What do you do with 20 and 4?",
)
MULTIPLIES = Misconception(
    "algebra.expression-multiplies",
    "multiplies where the situation divides",
    "Are there more things in each than there were in all?",
)
DIVIDES_WRONG_WAY = Misconception(
    "algebra.expression-divides-wrong-way-round",
    "divides the wrong way round",
    "What is shared out, and into how many parts?",
)


class _Two(NamedTuple):
    """Two things that are counted or paid, with a letter for the worth of each."""

    text: str
    first: str
    second: str


_PRICES = (
    _Two(
        "A pen costs {x} pence and a rubber costs {y} pence. Write an expression for the total "
        "cost, in pence, of {a} pens and {b} rubbers.",
        "n",
        "r",
    ),
    _Two(
        "An adult ticket costs {x} pounds and a child ticket costs {y} pounds. Write an expression "
        "for the total cost, in pounds, of {a} adult tickets and {b} child tickets.",
        "x",
        "y",
    ),
    _Two(
        "A tray of leeks holds {x} plants and a tray of herbs holds {y} plants. Write an "
        "expression for the number of plants in {a} trays of leeks and {b} trays of herbs.",
        "k",
        "h",
    ),
    _Two(
        "A coach has {x} seats and a minibus has {y} seats. Write an expression for the number of "
        "seats in {a} coaches and {b} minibuses.",
        "c",
        "n",
    ),
    _Two(
        "A bike has a mass of {x} kg and a trailer has a mass of {y} kg. Write an expression for "
        "the total mass, in kg, of {a} bikes and {b} trailers.",
        "b",
        "t",
    ),
)

_LESS = (
    "A swimming club has {n} members. {a} of them leave. Write an expression for the number of "
    "members that stay.",
    "A garden has {n} bean plants. A storm spoils {a} of them. Write an expression for the number "
    "of plants that are left.",
    "There are {n} buses in a depot. {a} of them drive out. Write an expression for the number of "
    "buses that stay.",
    "A library shelf has {n} books. {a} of them are on loan. Write an expression for the number of "
    "books on the shelf now.",
)
_SHARED = (
    "A gardener plants {n} bulbs equally in {a} pots. Write an expression for the number of bulbs "
    "in each pot.",
    "A coach divides {n} swimmers equally into {a} groups. Write an expression for the number of "
    "swimmers in each group.",
    "A cook shares {n} rolls equally among {a} baskets. Write an expression for the number of "
    "rolls in each basket.",
    "A librarian puts {n} books equally on {a} shelves. Write an expression for the number of "
    "books on each shelf.",
)
_MORE = (
    "Amir is {n} years old. His aunt is {a} years older. Write an expression for the age of his "
    "aunt, in years.",
    "A green bus has {n} seats. A blue bus has {a} more seats. Write an expression for the number "
    "of seats in the blue bus.",
    "Dana swims {n} lengths. Femi swims {a} more lengths. Write an expression for the number of "
    "lengths that Femi swims.",
    "A library has {n} maths books and {a} more story books. Write an expression for the number of "
    "story books.",
)
_EACH = (
    "A bike workshop repairs {n} bikes each day. Write an expression for the number of bikes that "
    "it repairs in {a} days.",
    "A swimmer swims {n} lengths each morning. Write an expression for the number of lengths that "
    "she swims in {a} mornings.",
    "Each bag of compost has a mass of {n} kg. Write an expression for the mass, in kg, of {a} "
    "bags.",
    "Each crate holds {n} apples. Write an expression for the number of apples in {a} crates.",
)
_FIXED = (
    "Hiring a bike costs {b} pounds plus {a} pounds for each hour. Write an expression for the "
    "cost, in pounds, of hiring a bike for {n} hours.",
    "A swimming club asks for {b} pounds to join plus {a} pounds for each lesson. Write an "
    "expression for the cost, in pounds, of joining and having {n} lessons.",
    "A nursery asks for {b} pounds for a delivery plus {a} pounds for each plant. Write an "
    "expression for the cost, in pounds, of a delivery of {n} plants.",
    "A school kitchen needs {b} minutes to set up and {a} minutes for each tray of rolls. Write an "
    "expression for the time, in minutes, that it needs for {n} trays.",
    "Hiring a hall costs {b} pounds plus {a} pounds for each hour. Write an expression for the "
    "cost, in pounds, of {n} hours in the hall.",
)
_CHANGE = (
    "Amir has {b} pounds. He buys {n} notebooks at {a} pounds each. Write an expression for the "
    "money, in pounds, that he has left.",
    "Beth has {b} metres of string. She cuts off {n} pieces of {a} metres each. Write an "
    "expression for the length, in metres, that is left.",
    "A tank holds {b} litres of water. {n} buckets of {a} litres each are filled from it. Write an "
    "expression for the amount of water, in litres, that is left.",
    "A sack holds {b} kg of flour. A cook uses {a} kg on each of {n} days. Write an expression for "
    "the mass of flour, in kg, that is left.",
)
_GROUPS = (
    "Each of {a} trays has {n} tomato plants and {b} pepper plants in it. Write an expression for "
    "the number of plants in all.",
    "Each of {a} buses carries {n} children and {b} adults. Write an expression for the number of "
    "people in all.",
    "Each of {a} boxes holds {n} pencils and {b} pens. Write an expression for the number of "
    "pencils and pens in all.",
    "Each of {a} rows has {n} red chairs and {b} blue chairs. Write an expression for the number "
    "of chairs in all.",
)
_PACKED = (
    "Chen has {n} eggs and gets {b} more. He packs all of them equally into {a} boxes. Write an "
    "expression for the number of eggs in each box.",
    "Grace has {n} beads and buys {b} more. She shares all of them equally among {a} bags. Write "
    "an expression for the number of beads in each bag.",
    "A club has {n} members and {b} more join. All of them are put into {a} equal teams. Write an "
    "expression for the number in each team.",
)
_TRIOS = (
    "Amir has {n} stickers. Beth has {a} times as many as Amir. Chen has {b} fewer than Beth. "
    "Write an expression for the number of stickers they have altogether in its simplest form.",
    "A small tray holds {n} plants. A large tray holds {a} times as many. A mixed tray holds {b} "
    "fewer than a large one. Write an expression for the number of plants in one tray of each kind "
    "in its simplest form.",
    "Hana swims {n} lengths. Idris swims {a} times as many as Hana. Dana swims {b} fewer than "
    "Idris. Write an expression for the number of lengths they swim altogether in its simplest "
    "form.",
    "Bus A carries {n} people. Bus B carries {a} times as many. Bus C carries {b} fewer than bus "
    "B. Write an expression for the number of people on the three buses in its simplest form.",
)
_FEWER = (
    "A ticket costs {a} pounds for an adult and {c} pounds for a child. A group has {n} adults and "
    "{b} more children than adults. Write an expression for the cost, in pounds, of their tickets "
    "in its simplest form.",
    "A rose bush costs {a} pounds and a herb costs {c} pounds. Ewa buys {n} rose bushes and {b} "
    "more herbs than rose bushes. Write an expression for the cost, in pounds, in its simplest "
    "form.",
    "A helmet costs {a} pounds and a bell costs {c} pounds. A shop sells {n} helmets and {b} more "
    "bells than helmets. Write an expression for the money it takes, in pounds, in its simplest "
    "form.",
)
_RECTANGLES = (
    "A rectangular lawn is {n} metres wide. Its length is {b} metres more than {a} times its "
    "width. Write an expression for its perimeter, in metres, in its simplest form.",
    "A rectangular pool is {n} metres wide. Its length is {b} metres more than {a} times its "
    "width. Write an expression for its perimeter, in metres, in its simplest form.",
    "A rectangular yard is {n} metres wide. Its length is {b} metres more than {a} times its "
    "width. Write an expression for its perimeter, in metres, in its simplest form.",
)


def _support(kind: int, a: int, b: int) -> bool:
    return b == 2 and (a < 17 or kind in (0, 3, 4))


def _core(kind: int, a: int, b: int) -> bool:
    if kind == 0:
        return a != b and 4 < b < 16 and a < 9
    if kind == 1:
        return a < 7 and b >= 20
    if kind == 5:
        return a != b and b < 13
    return a != b and a < 9 and b < 16


def _challenge(kind: int, a: int, b: int, c: int) -> bool:
    if kind == 0:
        return c == 2 and 2 < a < 8 and b != a
    if kind == 1:
        return a > c and len({a, b, c}) == 3 and a + c != c * b
    if kind == 2:
        return c == 2 and 2 < a < 8 and b != a
    # I think of a number n, multiply by a, add b, multiply by c.
    return c < 6 and a < 7 and len({a, b, c}) == 3


@register
class FormExpressions(Topic):
    """One operation or two like ones; fixed and repeated amounts; several parts, made simple."""

    id = "algebra.form-expressions"
    title = "Forming expressions"
    statements = ("algebra.modelling", "algebra.notation")
    prerequisites = ("algebra.collect-terms",)
    misconceptions = (
        *(REVERSED, TIMES_AS_PLUS, JOINED, ORDER, FIXED_TIMES, SUBTRACTED_WRONG_WAY, LEFT_OUT),
        *(HALF_ROUND, FIRST_ONLY, DIVIDES_WRONG_WAY, SUBTRACTS, MULTIPLIES, PLUS_AS_TIMES),
    )
    spare = "one operation with one number: larger numbers would make no other question"
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(5), a=range(2, 31), b=(2,)),
        Tier.CORE: Space(_core, kind=range(6), a=range(2, 13), b=(*range(2, 16), 20, 30, 40, 50)),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(4), a=range(2, 11), b=range(2, 13), c=range(2, 8)
        ),
    }

    def make(self, tier: Tier, kind: int, a: int, b: int, *more: int) -> Draft:
        """Return the question for one point of the tier's space."""
        twin = (str(tier), kind, a, b, *more)
        if tier is Tier.SUPPORT:
            return _single(kind, a, twin)
        if tier is Tier.CORE:
            return _prices(a, b, twin) if kind == 5 else _two(kind, a, b, twin)
        return _many(kind, a, b, *more, twin=twin)


def _asked(
    text: str,
    given: dict[str, t.Node],
    target: t.Node,
    key: t.Node,
    wrong: list[Wrong],
    steps: tuple[Step, ...],
    twin: tuple[object, ...],
    constants: tuple[int, ...] = (),
) -> Draft:
    return Draft(
        prompt(text, **given),
        Find(target),
        key,
        "expression",
        steps,
        slips(*wrong, key=key),
        twin,
        constants=constants,
    )


def _single(kind: int, a: int, twin: tuple[object, ...]) -> Draft:
    x, number = t.Sym(by_turns("nkxw", a)), t.Int(a)
    given: dict[str, t.Node] = {"n": x, "a": number}
    lots, part = t.juxt(number, x), t.Frac(x, number)
    if kind == 0:
        key: t.Node = t.sub(x, number)
        return _asked(
            by_turns(_LESS, a),
            given,
            key,
            key,
            [(REVERSED, t.add(x, number)), (SUBTRACTED_WRONG_WAY, t.sub(number, x))],
            (Step("Subtract what is taken away from what was there.", key),),
            twin,
        )
    if kind == 3:
        key = t.add(x, number)
        return _asked(
            by_turns(_MORE, a),
            given,
            key,
            key,
            [(REVERSED, t.sub(x, number)), (PLUS_AS_TIMES, lots)],
            (Step("Add how much more it is.", key),),
            twin,
        )
    if kind == 4:
        key = t.sub(number, x)
        name = by_turns(("Femi", "Grace", "Jonas", "Leila", "Mo"), a)
        return _asked(
            f"{name} thinks of a number {{n}} and subtracts it from {{a}}. Write an expression for "
            "the result.",
            given,
            key,
            key,
            [(SUBTRACTED_WRONG_WAY, t.sub(x, number)), (REVERSED, t.add(number, x))],
            (Step(f"Start with {a}, and take the number away.", key),),
            twin,
        )
    if kind == 1:
        return _asked(
            by_turns(_SHARED, a),
            given,
            t.divide(x, number),
            part,
            [(DIVIDES_WRONG_WAY, t.Frac(number, x)), (SUBTRACTS, t.sub(x, number))],
            (Step("Divide by the number of equal parts.", t.equals(t.divide(x, number), part)),),
            twin,
        )
    return _asked(
        by_turns(_EACH, a),
        given,
        t.times(number, x),
        lots,
        [(TIMES_AS_PLUS, t.add(x, number)), (DIVIDES_WRONG_WAY, part)],
        (
            Step(
                "Multiply the number in each by how many there are.",
                t.equals(t.times(number, x), lots),
            ),
        ),
        twin,
    )


def _prices(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    story = by_turns(_PRICES, a + b)
    x, y, m, n = t.Sym(story.first), t.Sym(story.second), t.Int(a), t.Int(b)
    asked, key = t.add(t.times(m, x), t.times(n, y)), t.add(t.juxt(m, x), t.juxt(n, y))
    joined = t.juxt(t.Int(a + b), *sorted((x, y), key=lambda letter: letter.name))
    return _asked(
        story.text,
        {"x": x, "y": y, "a": m, "b": n},
        asked,
        key,
        [
            (JOINED, joined),
            (TIMES_AS_PLUS, t.add(x, m, y, n)),
        ],
        (
            Step("Multiply each letter by how many there are, and add.", asked),
            Step("Leave out the times signs.", t.equals(asked, key)),
        ),
        twin,
    )


def _two(kind: int, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    x, m, n = t.Sym(by_turns("nkxw", a + b)), t.Int(a), t.Int(b)
    given: dict[str, t.Node] = {"n": x, "a": m, "b": n}
    lots = t.juxt(m, x)
    if kind == 0:
        asked, key = t.add(t.times(m, x), n), t.add(lots, n)
        return _asked(
            by_turns(_FIXED, a + b),
            given,
            asked,
            key,
            [(FIXED_TIMES, t.add(t.juxt(n, x), m)), (JOINED, t.juxt(t.Int(a + b), x))],
            (
                Step("Multiply what comes again and again.", t.equals(t.times(m, x), lots)),
                Step("Add what comes once.", key),
            ),
            twin,
        )
    if kind == 1:
        asked, key = t.sub(n, t.times(m, x)), t.sub(n, lots)
        return _asked(
            by_turns(_CHANGE, a + b // 10),
            given,
            asked,
            key,
            [(SUBTRACTED_WRONG_WAY, t.sub(lots, n)), (REVERSED, t.add(n, lots))],
            (
                Step("Find what is used.", t.equals(t.times(m, x), lots)),
                Step("Subtract it from what was there.", key),
            ),
            twin,
        )
    if kind == 2:
        inside = t.Bracket(t.add(x, n))
        key = t.Juxt((m, inside))
        return _asked(
            by_turns(_GROUPS, a + b),
            given,
            t.times(m, inside),
            key,
            [(FIRST_ONLY, t.add(lots, n)), (JOINED, t.juxt(t.Int(a * b), x))],
            (
                Step(f"Add what is in each: {shown(inside.of)}."),
                Step(f"Multiply all of it by {a}.", key),
            ),
            twin,
        )
    if kind == 3:
        inside = t.Bracket(t.add(x, n))
        key = t.Frac(inside.of, m)
        return _asked(
            by_turns(_PACKED, a + b),
            given,
            t.divide(inside, m),
            key,
            [(ORDER, t.add(t.Frac(x, m), n)), (MULTIPLIES, t.Juxt((m, inside)))],
            (
                Step(f"Add first: {shown(inside.of)}."),
                Step(f"Divide all of it by {a}.", key),
            ),
            twin,
        )
    subtract = (a + b) % 2
    first = t.sub(x, n) if subtract else t.add(x, n)
    key = t.Juxt((m, t.Bracket(first)))
    verb = "subtract" if subtract else "add"
    name = by_turns(("Femi", "Grace", "Jonas", "Leila", "Mo"), a + 2 * b)
    return _asked(
        f"{name} thinks of a number {{n}}, {verb}s {{b}} and then multiplies by {{a}}. Write an "
        "expression for the result.",
        given,
        t.times(t.Bracket(first), m),
        key,
        [
            (ORDER, t.sub(lots, n) if subtract else t.add(lots, n)),
            (
                asking(TIMES_AS_PLUS, "The result is multiplied. Which sign do you need?"),
                expression((1, x.name), (a + (-b if subtract else b), "")),
            ),
        ],
        (
            Step(f"{verb.capitalize()} first: {shown(first)}."),
            Step(f"Multiply all of it by {a}: put it in a bracket.", key),
        ),
        twin,
    )


def _many(kind: int, a: int, b: int, c: int, *, twin: tuple[object, ...]) -> Draft:
    x, m, n, k = by_turns("nkxw", a + b + c), t.Int(a), t.Int(b), t.Int(c)
    given: dict[str, t.Node] = {"n": t.Sym(x), "a": m, "b": n, "c": k}
    lots = term(a, x)
    if kind == 0:
        del given["c"]
        parts = expression((1, x), (a, x), (a, x), (-b, ""))
        return _simplest(
            by_turns(_TRIOS, a + b),
            given,
            t.Sum(
                t.Sym(x),
                (("+", t.times(m, t.Sym(x))), ("+", t.times(m, t.Sym(x))), ("-", n)),
            ),
            expression((2 * a + 1, x), (-b, "")),
            [
                (LEFT_OUT, expression((2 * a, x), (-b, ""))),
                (REVERSED, expression((2 * a + 1, x), (b, ""))),
            ],
            (Step("Write each of the three parts, and add.", parts),),
            parts,
            twin,
        )
    if kind == 1:
        inside = bracket((1, x), (b, ""))
        asked = t.add(lots, t.Juxt((k, inside)))
        open_ = expression((a, x), (c, x), (b * c, ""))
        return _simplest(
            by_turns(_FEWER, a + b + c),
            given,
            asked,
            expression((a + c, x), (b * c, "")),
            [
                (FIRST_ONLY, expression((a + c, x), (b, ""))),
                (REVERSED, expression((a + c, x), (-b * c, ""))),
            ],
            (
                Step("Write both costs, and add.", asked),
                Step("Expand the bracket.", t.equals(asked, open_)),
            ),
            open_,
            twin,
        )
    if kind == 2:
        del given["c"]
        long = bracket((a, x), (b, ""))
        asked = t.add(t.Sym(x), long, t.Sym(x), long)
        open_ = expression((1, x), (a, x), (b, ""), (1, x), (a, x), (b, ""))
        return _simplest(
            by_turns(_RECTANGLES, a + b),
            given,
            asked,
            expression((2 * a + 2, x), (2 * b, "")),
            [
                (HALF_ROUND, expression((a + 1, x), (b, ""))),
                (LEFT_OUT, expression((a + 2, x), (b, ""))),
            ],
            (Step("Add the widths and the lengths.", open_),),
            open_,
            twin,
        )
    inside = bracket((a, x), (b, ""))
    asked = t.Juxt((k, inside))
    name = by_turns(("Omar", "Priya", "Rosa", "Sam", "Tomasz"), a + b + c)
    return _simplest(
        f"{name} thinks of a number {{n}}, multiplies it by {{a}}, adds {{b}} and then multiplies "
        "the result by {c}. Write an expression without brackets for what comes out.",
        given,
        asked,
        expression((a * c, x), (b * c, "")),
        [
            (FIRST_ONLY, expression((a * c, x), (b, ""))),
            (ORDER, expression((a, x), (b * c, ""))),
        ],
        (Step("Put what is multiplied last in a bracket.", asked),),
        asked,
        twin,
    )


def _simplest(
    text: str,
    given: dict[str, t.Node],
    target: t.Node,
    key: t.Node,
    wrong: list[Wrong],
    steps: tuple[Step, ...],
    last: t.Node,
    twin: tuple[object, ...],
) -> Draft:
    say = "Expand the bracket." if isinstance(last, t.Juxt) else "Collect like terms."
    return Draft(
        prompt(text, **given),
        Rewrite(target, "simplify"),
        key,
        "simplified",
        (*steps, Step(say, t.equals(last, key))),
        slips(*wrong, key=key),
        twin,
    )
