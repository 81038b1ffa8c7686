"""Sequences in which each term is the sum of the two before it."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.sequences._special_mistakes import (
    ADDED_BACK,
    ADDS_LAST_STEP,
    DOUBLES_LAST,
    EQUAL_SHARES,
    HALF_WAY,
    ONE_FEWER,
    ONE_MORE,
    ONE_ONLY,
)
from generators.sequences._writing import ending, listed
from itembank.items.item import Draft, Find, Rewrite, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def terms_from(a: int, b: int, count: int) -> list[int]:
    """Return so many terms of the sequence that begins with a and b.

    >>> terms_from(1, 1, 6)
    [1, 1, 2, 3, 5, 8]
    """
    terms = [a, b]
    while len(terms) < count:
        terms.append(terms[-1] + terms[-2])
    return terms


_RULE = "Each term of a sequence is the sum of the two terms before it."


def next_terms(twin: Any, a: int, b: int) -> Draft:
    """Return the question for the fifth term, where four are printed."""
    terms = terms_from(a, b, 5)
    *given, value = terms
    asked = t.add(t.Int(given[2]), t.Int(given[3]))
    return Draft(
        prompt(_RULE + " Find the next term: {s}.", s=listed(given)),
        Find(asked),
        t.Int(value),
        "integer",
        (Step("Add the last two terms.", t.equals(asked, t.Int(value))),),
        slips(
            (ADDS_LAST_STEP, 2 * given[3] - given[2]),
            (DOUBLES_LAST, 2 * given[3]),
            key=t.Int(value),
        ),
        twin,
    )


def further_term(twin: Any, a: int, b: int) -> Draft:
    """Return the question for a term further on, where two are told."""
    place = 5 + (a + b) % 3
    terms = terms_from(a, b, place + 1)
    nodes: list[t.Node] = [t.Int(a), t.Int(b)]
    for _ in range(place - 2):
        high, low = nodes[-1], nodes[-2]
        nodes.append(t.Sum(*_flat(low, high)))
    steps = []
    for k in range(2, place):
        line = t.equals(t.add(t.Int(terms[k - 2]), t.Int(terms[k - 1])), t.Int(terms[k]))
        steps.append(Step(f"The {k + 1}{ending(k + 1)} term.", line))
    value = terms[place - 1]
    return Draft(
        prompt(
            "The first two terms of a sequence are {a} and {b}. Each of the next terms is the sum "
            f"of the two terms before it. Work out the {{k}}{ending(place)} term.",
            a=t.Int(a),
            b=t.Int(b),
            k=t.Int(place),
        ),
        Find(nodes[place - 1]),
        t.Int(value),
        "integer",
        tuple(steps),
        slips(
            (ONE_FEWER, terms[place - 2]),
            (ONE_MORE, terms[place]),
            (ADDS_LAST_STEP, a + (place - 1) * (b - a)),
            key=t.Int(value),
        ),
        twin,
    )


def _flat(low: t.Node, high: t.Node) -> Any:
    """Return the parts of a sum of two sums, in one row."""
    first = low.first if isinstance(low, t.Sum) else low
    rest: tuple[tuple[t.SumOp, t.Node], ...] = low.rest if isinstance(low, t.Sum) else ()
    rest = (*rest, ("+", high.first if isinstance(high, t.Sum) else high))
    return first, (*rest, *(high.rest if isinstance(high, t.Sum) else ()))


def missing_term(twin: Any, a: int, b: int) -> Draft:
    """Return the question for a term that is missing between others."""
    box = t.Blank()
    terms = terms_from(a, b, 4)
    place = (a + b) % 2 + 1
    parts = tuple(box if k == place else t.Int(value) for k, value in enumerate(terms))
    before, value, after = terms[place - 1], terms[place], terms[place + 1]
    relation = t.equals(t.add(t.Int(before), box), t.Int(after))
    return Draft(
        prompt(_RULE + " Find the missing term: {s}.", s=t.Listing(parts)),
        Find(box, (relation,)),
        t.Int(value),
        "integer",
        (
            Step("The missing term and the one before it add up to the one after it.", relation),
            Step(
                "Subtract the term before it from the term after it.",
                t.equals(t.sub(t.Int(after), t.Int(before)), t.Int(value)),
            ),
        ),
        slips(
            (ADDED_BACK, before + after),
            (HALF_WAY, Fraction(before + after, 2)),
            key=t.Int(value),
        ),
        twin,
    )


def with_letters(twin: Any, a: int, b: int) -> Draft:
    """Return the question for a term of a sequence that begins with two letters."""
    x, y = (t.Sym(name) for name in ("xy", "kn", "tw")[(a + b) % 3])
    place = 5 + (a + b) % 2
    first, second = t.juxt(t.Int(a), x), t.juxt(t.Int(b), y)
    rows = [(a, 0), (0, b)]
    nodes: list[t.Node] = [first, second]
    steps = []
    for k in range(2, place):
        rows.append((rows[-1][0] + rows[-2][0], rows[-1][1] + rows[-2][1]))
        nodes.append(t.add(t.juxt(t.Int(rows[-1][0]), x), t.juxt(t.Int(rows[-1][1]), y)))
        if k < place - 1:
            steps.append(Step(f"The {k + 1}{ending(k + 1)} term is {_said(nodes[-1])}."))
    before, last = nodes[-3], nodes[-2]
    added = t.Sum(*_flat(before, last))
    sums: list[t.Node] = [first, second]
    for _ in range(place - 2):
        sums.append(t.Sum(*_flat(sums[-2], sums[-1])))
    key = nodes[-1]
    times = rows[-1][1] // b
    return Draft(
        prompt(
            "The first two terms of a sequence are {a} and {b}. Each of the next terms is the sum "
            f"of the two terms before it. Write an expression for the {{k}}{ending(place)} term in "
            "its simplest form.",
            a=first,
            b=second,
            k=t.Int(place),
        ),
        Rewrite(sums[-1], "simplify"),
        key,
        "simplified",
        (*steps, Step("Add the last two terms.", t.equals(added, key))),
        slips(
            (ONE_FEWER, last),
            (EQUAL_SHARES, t.add(t.juxt(t.Int(a * times), x), t.juxt(t.Int(b * times), y))),
            key=key,
        ),
        twin,
    )


def _said(node: t.Node) -> str:
    from itembank.notation.line import shown_line

    return shown_line(node)


def second_term(twin: Any, a: int, b: int) -> Draft:
    """Return the question for the second term, where the first and a later one are told."""
    place = 4 + (a + b) % 2
    terms = terms_from(a, b, place)
    x = t.Sym("x")
    m, n = (1, 2) if place == 4 else (2, 3)
    value = terms[-1]
    nodes: list[t.Node] = [t.Int(a), x]
    for _ in range(place - 2):
        nodes.append(t.Sum(*_flat(nodes[-2], nodes[-1])))
    relation = t.equals(nodes[-1], t.Int(value))
    lots = t.equals(t.add(t.juxt(t.Int(n), x), t.Int(m * a)), t.Int(value))
    return Draft(
        prompt(
            "In a sequence each term from the third on is the sum of the two terms before it. The "
            f"first term is {{a}} and the {{k}}{ending(place)} term is {{v}}. Work out the second "
            "term.",
            a=t.Int(a),
            k=t.Int(place),
            v=t.Int(value),
        ),
        Find(x, (relation,)),
        t.Int(b),
        "integer",
        (
            Step(
                f"Write x for the second term. The third is {a} + x. Go on to the "
                f"{place}{ending(place)} term.",
                lots,
            ),
            Step(
                f"Subtract {m * a} from both sides.",
                t.equals(t.juxt(t.Int(n), x), t.Int(value - m * a)),
            ),
            Step(f"Divide both sides by {n}.", t.equals(x, t.Int(b))),
        ),
        slips(
            (ONE_ONLY, value - m * a),
            (HALF_WAY, Fraction(a + value, 2)),
            key=t.Int(b),
        ),
        twin,
    )
