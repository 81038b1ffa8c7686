"""How pupils write the working of an expression in which one line goes wrong.

Each function takes a question of its topic and gives the wrong solutions by its mistakes: the right
lines are those of the working, the wrong ones what the mistake makes of them.
"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.items.item import Draft, Slip
from itembank.items.kinds.wrong_solutions import WrongSolution
from itembank.notation import tree as t
from itembank.notation.value import exact


def _rows(asked: Draft) -> tuple[t.Node, ...]:
    """Return what each line of the working makes of the line before."""
    return tuple(
        step.maths.rest[-1][1] for step in asked.steps if isinstance(step.maths, t.Relation)
    )


def _flipped(node: t.Node, *places: int) -> t.Sum:
    """Return a sum with the signs before some of its terms changed, counted from the second."""
    assert isinstance(node, t.Sum)
    rest = list(node.rest)
    for place in places:
        op, term = rest[place]
        rest[place] = ("-" if op == "+" else "+", term)
    return t.Sum(node.first, tuple(rest))


def one_bracket(asked: Draft) -> tuple[WrongSolution, ...]:
    """Return wrong solutions of a question to expand one bracket, or two that are added."""
    return tuple(_one_bracket(asked))


def _one_bracket(asked: Draft) -> Iterator[WrongSolution]:
    opened, target = _rows(asked)[0], getattr(asked.ask, "target", None)
    assert isinstance(opened, t.Sum)
    # Brackets that are added are opened first and then collected.
    several = any(isinstance(term, t.Bracket | t.Juxt) for term in _later(target))
    for slip in asked.slips:
        match slip.misconception.id.partition(".")[2]:
            case "joins":
                yield WrongSolution(slip.misconception, (asked.key, slip.wrong), 2)
            case "sign" if several:
                wrong = _flipped(opened, -1)
                yield WrongSolution(slip.misconception, (wrong, slip.wrong), 1)
            case "sign" | "doubles" | "power-lost" if not several:
                yield WrongSolution(slip.misconception, (opened, slip.wrong), 2)
            case "first-only" if isinstance(slip.wrong, t.Sum) and not several:
                wrong = t.Sum(opened.first, slip.wrong.rest)
                yield WrongSolution(slip.misconception, (wrong, slip.wrong), 1)
            case "first-only":
                if (half := _half_opened(target, opened)) is not None:
                    yield WrongSolution(slip.misconception, (half, slip.wrong), 1)
            case "subtracts-first":
                if (product := _less_first(target)) is not None:
                    yield WrongSolution(slip.misconception, (product, slip.wrong), 1)


def _later(target: object) -> tuple[t.Node, ...]:
    return tuple(term for _, term in target.rest) if isinstance(target, t.Sum) else ()


def _half_opened(target: object, opened: t.Sum) -> t.Node | None:
    """Return two brackets opened with the second term of each left as it is."""
    match target:
        case t.Sum(
            t.Juxt((*_, t.Bracket(t.Sum(_, ((_, near),))))),
            ((op, t.Juxt((*_, t.Bracket(t.Sum(_, ((sign, far),)))))),),
        ) if len(opened.rest) == 3:
            last = sign if op == "+" else ("+" if sign == "-" else "-")
            return t.Sum(opened.first, ((opened.rest[0][0], near), opened.rest[1], (last, far)))
    return None


def _less_first(target: object) -> t.Node | None:
    """Return 13 − 2(x − 4) with the subtraction done first: 11(x − 4)."""
    match target:
        case t.Sum(t.Int(first), (("-", t.Juxt((t.Int(front), t.Bracket() as inside))),)):
            return t.juxt(t.Int(first - front), inside)
    return None


def two_brackets(asked: Draft) -> tuple[WrongSolution, ...]:
    """Return wrong solutions of a question to expand the product of two brackets, or a square."""
    rows = _rows(asked)
    opened = rows[-2]
    assert isinstance(opened, t.Sum)
    if len(rows) == 3 and not isinstance(getattr(asked.ask, "target", None), t.Power):
        # The difference of a product and a square: only its first term is subtracted.
        return tuple(
            WrongSolution(slip.misconception, (rows[0], _flipped(opened, -2, -1), slip.wrong), 2)
            for slip in asked.slips
            if slip.misconception.id == "algebra.bracket-signs"
        )
    return tuple(
        WrongSolution(slip.misconception, (line, slip.wrong), 1)
        for slip in asked.slips
        if (line := _product_gone_wrong(asked, slip, opened)) is not None
    )


def _product_gone_wrong(asked: Draft, slip: Slip, opened: t.Sum) -> t.Node | None:
    middles = [place for place, (op, _) in enumerate(opened.rest[:-1]) if op == "-"]
    match slip.misconception.id.partition(".")[2]:
        case "product-sign":
            return _flipped(opened, -1)
        case "sign-middle" if len(middles) == 1:
            return _flipped(opened, *middles)
        case "sign-cross":
            return _flipped(opened, 1)
        case "adds-ends" if isinstance(slip.wrong, t.Sum):
            return t.Sum(opened.first, (*opened.rest[:-1], slip.wrong.rest[-1]))
        case "square-each":
            return _squares_of_terms(asked)
        case "ends-only":
            return _ends(asked)
    return None


def _squares_of_terms(asked: Draft) -> t.Node | None:
    match getattr(asked.ask, "target", None):
        case t.Power(t.Bracket(t.Sum(first, ((op, last),))), two):
            front = t.Bracket(first) if isinstance(first, t.Juxt) else first
            if op == "-":
                last = t.Bracket(t.Neg(last))
            return t.add(t.Power(front, two), t.Power(last, two))
    return None


def _ends(asked: Draft) -> t.Node | None:
    match getattr(asked.ask, "target", None):
        case t.Juxt((t.Bracket(t.Sum(a, ((near, b),))), t.Bracket(t.Sum(c, ((far, d),))))):
            product = t.times(b, t.Bracket(t.Neg(d)) if far == "-" else d)
            if near == "-":  # −2 × (−7) is not written after a plus
                product = t.num(int(exact(b) * exact(d)) * (1 if far == "-" else -1))
            return t.add(t.times(a, c), product)
    return None


def factor(asked: Draft) -> tuple[WrongSolution, ...]:
    """Return wrong solutions of a question to take a common factor out of two terms or three."""
    opened = _rows(asked)[0]
    assert isinstance(opened, t.Sum)
    found = []
    for slip in asked.slips:
        match slip.misconception.id.partition(".")[2], slip.wrong:
            case "takes-away", t.Juxt((*_, t.Bracket(t.Sum(_, ((op, less),))))):
                _, product = opened.rest[0]
                assert isinstance(product, t.Product)
                line = t.Sum(opened.first, ((op, t.times(product.first, less)),))
                found.append(WrongSolution(slip.misconception, (line, slip.wrong), 1))
            case (
                ("divides-first-only" | "letter-left" | "factor-sign-lost" | "leaves-whole"),
                (t.Juxt()),
            ):
                if any(isinstance(part, t.Bracket) for part in t.walk(slip.wrong)):
                    found.append(WrongSolution(slip.misconception, (opened, slip.wrong), 2))
    return tuple(found)


def like_terms(asked: Draft) -> tuple[WrongSolution, ...]:
    """Return wrong solutions of a question whose like terms are first written side by side."""
    grouped, *_ = _rows(asked)
    return tuple(
        WrongSolution(slip.misconception, (grouped, asked.key, slip.wrong), 3)
        if slip.misconception.id == "algebra.unlike"
        else WrongSolution(slip.misconception, (grouped, slip.wrong), 2)
        for slip in asked.slips
        if grouped != asked.key
    )
