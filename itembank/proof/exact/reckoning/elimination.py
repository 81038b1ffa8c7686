"""Linear relations solved exactly: elimination over the rationals, without sympy."""

from __future__ import annotations

from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.linear import Form, Known, constant, form_of
from itembank.notation.value import NotExact, exact, fraction_of, over, sides


def answer(target: t.Node, relations: tuple[t.Relation, ...]) -> tuple[Fraction, ...]:
    """Return the value of `target`, or of each of its parts, given the relations.

    Letters are solved for by exact elimination. If the relations are homogeneous (ratios
    only) they fix the letters up to one common scale; the answer must then not depend on it.

    Raises
    ------
    NotExact
        If the relations do not settle the answer, or contradict one another.

    >>> from itembank.notation.parse import parse
    >>> x = t.Sym("x")
    >>> answer(x, (parse("2x + 3 = 11"),))
    (Fraction(4, 1),)
    """
    pieces = target.parts if isinstance(target, t.Ratio | t.Listing) else (target,)
    if not relations:
        return tuple(exact(piece) for piece in pieces)
    known = known_letters(relations)
    equations = [form for relation in relations for form in equations_of(relation, known)]
    free = eliminate(equations, known)
    if not free:
        _meaningful(relations, known)
        return tuple(evaluate(piece, known) for piece in pieces)
    # One letter free and no number on its own: the solutions are the multiples of one of them.
    if len(free) > 1 or any(form.get("") for form in equations):
        raise NotExact(f"the question does not settle {', '.join(sorted(free))}")
    answers = []
    # In the scale, a target with n bars over letters is a quotient of polynomials of degree n at
    # most. One that has the same value at n + 1 scales has it at all of them.
    bars = sum(isinstance(node, t.Frac) and bool(t.symbols(node)) for node in t.walk(target))
    for n in range(max(2, bars + 1)):
        scale = Fraction(4 * n + 3, 3)
        at = dict(known)
        eliminate([*equations, {free[0]: Fraction(1), "": -scale}], at)
        _meaningful(relations, at)
        values = tuple(evaluate(piece, at) for piece in pieces)
        answers.append(
            tuple(v / values[0] for v in values) if isinstance(target, t.Ratio) else values
        )
    if any(found != answers[0] for found in answers[1:]):
        raise NotExact("the question settles only a ratio, not this amount")
    return answers[0]


def known_letters(relations: tuple[t.Relation, ...]) -> dict[str, Fraction]:
    """Return the letters that a relation gives outright, as ``l = 4`` does.

    >>> from itembank.notation.parse import parse
    >>> known_letters((parse("x = 3"), parse("x + y = 5")))
    {'x': Fraction(3, 1)}
    """
    # These go in first: with l = 4 given, l × w = 20 is linear.
    known = {}
    for relation in relations:
        if len(relation.rest) == 1 and isinstance(relation.first, t.Sym):
            try:
                known[relation.first.name] = exact(relation.rest[0][1])
            except NotExact:
                continue
    return known


def equations_of(relation: t.Relation, known: dict[str, Fraction]) -> list[Form]:
    """Return a relation as linear forms that have to be zero.

    Ratios are multiplied crosswise, and so is a fraction with a letter in its denominator.

    >>> from itembank.notation.parse import parse
    >>> len(equations_of(parse("x = y = 3"), {}))
    2
    """
    forms: list[Form] = []
    for left, op, right in sides(relation):
        if op != "=":
            raise NotExact(f"the sign {op} is not an equation")
        if isinstance(left, t.Ratio) and isinstance(right, t.Ratio):
            if len(left.parts) != len(right.parts):
                raise NotExact("two ratios of different lengths are said to be equal")
            for i in range(1, len(left.parts)):
                forms.append(
                    _cross(left.parts[0], left.parts[i], right.parts[0], right.parts[i], known)
                )
        elif _letter_below(left) or _letter_below(right):
            a, b = _as_fraction(left)
            c, d = _as_fraction(right)
            forms.append(_cross(a, b, c, d, known))
        else:
            forms.append(minus(form_of(left, known), form_of(right, known)))
    return forms


def _meaningful(relations: tuple[t.Relation, ...], known: dict[str, Fraction]) -> None:
    """Refuse values at which a relation says nothing.

    Cross products are true where a denominator is zero too, and where a ratio is 0 : 0.
    """
    for relation in relations:
        for side in (relation.first, *(node for _, node in relation.rest)):
            if _letter_below(side) and not evaluate(_as_fraction(side)[1], known):
                raise NotExact("this divides by zero")
            if isinstance(side, t.Ratio) and not any(evaluate(p, known) for p in side.parts):
                raise NotExact("0 : 0 is no ratio")


def _letter_below(node: t.Node) -> bool:
    return isinstance(node, t.Frac) and any(
        isinstance(n, t.Sym | t.Blank) for n in t.walk(node.den)
    )


def _as_fraction(node: t.Node) -> tuple[t.Node, t.Node]:
    return (node.num, node.den) if isinstance(node, t.Frac) else (node, t.Int(1))


def _cross(a: t.Node, b: t.Node, c: t.Node, d: t.Node, known: dict[str, Fraction]) -> Form:
    """Return a : b = c : d as the linear form a × d − b × c."""
    return minus(_times(a, d, known), _times(b, c, known))


def _times(a: t.Node, b: t.Node, known: dict[str, Fraction]) -> Form:
    x, y = form_of(a, known), form_of(b, known)
    # The product of two linear forms is linear only where one of them is a number.
    if any(x) and any(y):
        raise NotExact("letters are multiplied together")
    if any(x):
        x, y = y, x
    factor = x.get("", 0)
    return {name: c * factor for name, c in y.items()}


def minus(a: Known, b: Known) -> Form:
    """Return the difference of two linear forms."""
    out = dict(a)
    for name, c in b.items():
        out[name] = out[name] - c if name in out else -c
    return out


def eliminate(equations: list[Form], known: dict[str, Fraction]) -> list[str]:
    """Solve linear equations exactly (Gauss–Jordan); add what is settled to `known`.

    Returns the letters that stay free. Raises NotExact on a contradiction.

    >>> known = {}
    >>> eliminate([{"x": Fraction(2), "": Fraction(-6)}], known), known
    ([], {'x': Fraction(3, 1)})
    """
    # In a fixed order: which letter stays free must not depend on how a set is hashed.
    letters = sorted({name for form in equations for name in form if name})
    rows = [dict(form) for form in equations]
    pivots: dict[str, Form] = {}
    for letter in letters:
        row = next((r for r in rows if r.get(letter)), None)
        if row is None:
            continue
        rows.remove(row)
        lead = row[letter]
        row = {name: over(c, lead) for name, c in row.items()}
        # The rows above are cleared too (Jordan): at the end a row with no letter but its pivot
        # settles that letter, even where others stay free.
        for above in (*rows, *pivots.values()):
            c = above.get(letter)
            if c:
                for name, value in row.items():
                    taken = c * value
                    above[name] = above[name] - taken if name in above else -taken
        pivots[letter] = row
    # What is left has no letter any more, and says that a number is zero.
    if any(form.get("") for form in rows):
        raise NotExact("what is given contradicts itself")
    for letter, row in pivots.items():
        if not any(c for name, c in row.items() if name not in ("", letter)):
            known[letter] = fraction_of(-row.get("", 0))
    return [letter for letter in letters if letter not in pivots]


def evaluate(node: t.Node, known: dict[str, Fraction]) -> Fraction:
    """Return the value of `node` with its letters replaced by their known values.

    >>> from itembank.notation.parse import parse
    >>> evaluate(parse("2x + 1"), {"x": Fraction(3)})
    Fraction(7, 1)
    """
    if isinstance(node, t.Frac):
        # A linear form has no letter under a bar, so top and bottom are worked out apart.
        bottom = evaluate(node.den, known)
        if not bottom:
            raise NotExact("this divides by zero")
        return evaluate(node.num, known) / bottom
    return constant(form_of(node, known))
