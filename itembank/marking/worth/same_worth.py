"""Whether an answer is worth the same as the key, part by part where it has several."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from itembank.items.forms.form_rules import number_node
from itembank.marking.worth.worth import quotient, unit_of, worths
from itembank.notation import tree as t
from itembank.notation.value import exact

TURNED: dict[str, t.RelationOp] = {"<": ">", ">": "<", "≤": "≥", "≥": "≤", "=": "=", "≠": "≠"}


def same(given: t.Node, key: t.Node, within: Fraction = Fraction(0), ordered: bool = True) -> bool:
    """Return whether two answers are worth the same; a unit left out is taken as the key's.

    Solutions may stand in any order; lists only where they are not `ordered`. With `within`,
    a number may differ from the key's by that much, in the key's unit.

    >>> from itembank.notation.parse import parse
    >>> pairs = (("2/4", "1/2"), ("5", "5 cm"), ("2(x + 3)", "2x + 6"), ("√12", "2√3"))
    >>> [same(parse(text), parse(other)) for text, other in pairs]
    [True, True, True, True]
    >>> same(parse("7, -4"), parse("x = -4 or x = 7")), same(parse("5"), parse("2, y = 5"))
    (True, False)
    >>> same(parse("y = 5, x = 2"), parse("2, 5")), same(parse("y = 2, x = 5"), parse("2, 5"))
    (True, False)
    >>> same(parse("4 cm : 20 m"), parse("1 : 500")), same(parse("4 cm : 20 kg"), parse("4 : 20"))
    (True, False)
    """
    try:
        return _same(given, key, within, ordered)
    except (t.NotationError, OverflowError):
        return False


def _same(given: t.Node, key: t.Node, within: Fraction, ordered: bool) -> bool:
    if given == key:
        return True
    if isinstance(given, t.Bracket):
        given = given.of
    if isinstance(given, t.Either) and not isinstance(key, t.Either):
        # Several answers to a question with one: right only if they all come to it, as 0.5 or 1/2.
        return all(_same(part, key, within, ordered) for part in given.parts)
    match key:
        case t.Label(text):
            return isinstance(given, t.Label) and _folded(given.text) == _folded(text)
        case t.Either(parts):
            return missing(given, key, within) == 0
        case t.Relation():
            return _same_relation(given, key, within)
        case t.Ratio(parts):
            return _same_ratio(given, parts)
        case t.Listing(parts):
            if unknowns(key):
                return _same_solution(given, key, within)
            if isinstance(given, t.Ratio):
                given = t.Listing(given.parts)
            if not isinstance(given, t.Listing) or len(given.parts) != len(parts):
                return _chain_says(given, key)
            if ordered:
                pairs = zip(_by_axis(given.parts), parts, strict=True)
                return all(_same(left, wanted, within, True) for left, wanted in pairs)
            return _match(given.parts, parts, within)
    if isinstance(given, t.Relation) and len(given.rest) == 1 and given.rest[0][0] == "=":
        # x = 5, 5 = x or T(n) = … where only the value is asked for.
        left, right = given.first, given.rest[0][1]
        # But no letter is worth an expression that holds it: x = 2x + 6 is not 2x + 6.
        if isinstance(left, t.Sym) and left.name not in t.symbols(right):
            return _same(right, key, within, ordered)
        return (
            isinstance(right, t.Sym)
            and right.name not in t.symbols(left)
            and _same(left, key, within, ordered)
        )
    if isinstance(given, t.Relation | t.Ratio | t.Listing | t.Either | t.Label):
        return False
    a, b = worths(given, key)
    if within and isinstance(a, Fraction) and isinstance(b, Fraction):
        unit = unit_of(key)
        return abs(a - b) <= within * (unit[1] if unit else 1)
    return a == b


def _same_ratio(given: t.Node, parts: tuple[t.Node, ...]) -> bool:
    if not isinstance(given, t.Ratio) or len(given.parts) != len(parts):
        return False
    given = _in_one_unit(given, parts)
    pairs = [worths(left, right) for left, right in zip(given.parts, parts, strict=True)]
    lead, wanted = map(quotient, pairs[0])
    # 0 : 0 would agree crosswise with every ratio.
    if not (lead.top and wanted.top):
        return False
    return all(quotient(a) * wanted == quotient(b) * lead for a, b in pairs)


def _in_one_unit(given: t.Ratio, parts: tuple[t.Node, ...]) -> t.Ratio:
    """Return a ratio of amounts, 4 cm : 20 m, as numbers, where the key has no units."""
    kinds = {unit[0] if (unit := unit_of(part)) else "" for part in given.parts}
    # Of several kinds, 4 cm : 20 kg, no number says what it is a ratio of.
    if len(kinds) != 1 or kinds == {""} or any(unit_of(part) for part in parts):
        return given
    return t.Ratio(tuple(number_node(exact(part)) for part in given.parts))


def _match(given: tuple[t.Node, ...], parts: tuple[t.Node, ...], within: Fraction) -> bool:
    left = list(given)
    for part in parts:
        found = next((candidate for candidate in left if same(candidate, part, within)), None)
        if found is None:
            return False
        # Each part that was given counts once: 3, 3 is not 3, 5.
        left.remove(found)
    return not left


def _by_axis(given: tuple[t.Node, ...]) -> tuple[t.Node, ...]:
    """Return coordinates that are named, y = 5, x = 2, with x first; others as they stand."""
    names = []
    for part in given:
        match part:
            case t.Relation(t.Sym(name), (("=", _),)):
                names.append(name.casefold())
    if len(names) < len(given) or sorted(names) != list("xyz")[: len(names)]:
        return given
    return tuple(given[names.index(name)] for name in sorted(names))


def _chain_says(given: t.Node, key: t.Listing) -> bool:
    """Tell whether 1/3 < 1/2 < 3/4 was typed for a list in that order."""
    if not isinstance(given, t.Relation):
        return False
    ops = {op for op, _ in given.rest}
    if ops not in ({"<"}, {">"}):
        return False
    return same(t.Listing((given.first, *(side for _, side in given.rest))), key)


def unknowns(key: t.Node) -> tuple[str, ...]:
    """Return the letters of a solution in several letters, x = 2, y = 5; or nothing.

    >>> from itembank.notation.parse import parse
    >>> unknowns(parse("x = 2, y = 5")), unknowns(parse("2, 5"))
    (('x', 'y'), ())
    """
    names = []
    if isinstance(key, t.Listing):
        for part in key.parts:
            match part:
                case t.Relation(t.Sym(name), (("=", _),)):
                    names.append(name)
                case _:
                    return ()
    return tuple(names) if len(set(names)) == len(names) else ()


def _same_solution(given: t.Node, key: t.Listing, within: Fraction) -> bool:
    """Compare x = 2, y = 5: any order with letters, the letters' order without."""
    if not isinstance(given, t.Listing) or len(given.parts) != len(key.parts):
        return False
    wanted = dict(zip(unknowns(key), key.parts, strict=True))
    bare = []
    for part in given.parts:
        name = _solved_for(part)
        if name is None:
            bare.append(part)
        elif name not in wanted or not _same(part, wanted.pop(name), within, True):
            return False
    # Bare numbers stand for the letters that are left, in the order of the alphabet: (2, 5).
    rest = [wanted[name] for name in sorted(wanted)]
    return len(bare) == len(rest) and all(
        _same(left, right, within, True) for left, right in zip(bare, rest, strict=True)
    )


def _solved_for(part: t.Node) -> str | None:
    match part:
        case t.Relation(t.Sym(name), (("=", _),)) | t.Relation(_, (("=", t.Sym(name)),)):
            return name
    return None


def missing(given: t.Node, key: t.Either, within: Fraction = Fraction(0)) -> int:
    """Return how many of the key's answers were not given; −1 where one that was is wrong.

    >>> from itembank.notation.parse import parse
    >>> key = parse("x = -4 or x = 7")
    >>> [missing(parse(text), key) for text in ("x = 7", "7, -4", "x = 7 or x = 4")]
    [1, 0, -1]
    """
    first = key.parts[0]
    answers = _answers(given, len(first.parts) if isinstance(first, t.Listing) else 0)
    hits = [
        [i for i, part in enumerate(key.parts) if same(answer, part, within)] for answer in answers
    ]
    # A wrong answer beside the right ones spoils them: whoever guesses enough is never wrong.
    if not all(hits):
        return -1
    return len(key.parts) - _matched(hits)


def _matched(hits: Sequence[Sequence[int]]) -> int:
    """Return how many parts of a key were given, each answer standing for one of its `hits`.

    With `within` an answer may lie near two parts. The most that can be matched is found by
    augmenting paths (Berge, 1957; from memory).
    """
    answer_of: dict[int, int] = {}

    def placed(answer: int, tried: set[int]) -> bool:
        for part in hits[answer]:
            if part not in tried:
                tried.add(part)
                if part not in answer_of or placed(answer_of[part], tried):
                    answer_of[part] = answer
                    return True
        return False

    return sum(placed(answer, set()) for answer in range(len(hits)))


def _answers(given: t.Node, letters: int) -> list[t.Node]:
    """Return the answers that were joined by *or*, commas or *and*.

    Each gives values for so many letters; 0 where it is one value without a letter of its own.
    """
    if isinstance(given, t.Either):
        return [answer for part in given.parts for answer in _answers(part, letters)]
    if isinstance(given, t.Listing) and not letters:
        return list(given.parts)
    if isinstance(given, t.Listing) and len(given.parts) % letters == 0:
        # x = 1, y = 2, x = 3, y = 4: a new solution begins where a letter comes again.
        starts = range(0, len(given.parts), letters)
        return [t.Listing(given.parts[start : start + letters]) for start in starts]
    return [given]


def _same_relation(given: t.Node, key: t.Relation, within: Fraction) -> bool:
    if isinstance(given, t.Listing):
        given = _one_chain(given) or given
    if not isinstance(given, t.Relation):
        # 5 stands for x = 5, but only an equals sign may be left out.
        solved = isinstance(key.first, t.Sym) and len(key.rest) == 1 and key.rest[0][0] == "="
        return solved and _same(given, key.rest[0][1], within, True)
    if len(given.rest) != len(key.rest):
        return False
    return any(
        [op for op, _ in way.rest] == [op for op, _ in key.rest]
        # Only a bound may be near the key, never what it is a bound of.
        and _same(way.first, key.first, Fraction(0), True)
        and all(
            _same(left, right, within, True)
            for (_, left), (_, right) in zip(way.rest, key.rest, strict=True)
        )
        for way in (given, turned(given))
    )


def turned(node: t.Relation) -> t.Relation:
    """Return a relation read from right to left: 3 ≤ x as x ≥ 3.

    >>> from itembank.notation.line import line
    >>> from itembank.notation.parse import parse
    >>> line(turned(parse("3 ≤ x < 5")))
    '5 > x ≥ 3'
    """
    sides = [node.first, *(side for _, side in node.rest)][::-1]
    ops = [TURNED[op] for op, _ in node.rest][::-1]
    return t.Relation(sides[0], tuple(zip(ops, sides[1:], strict=True)))


def _one_chain(given: t.Listing) -> t.Relation | None:
    """Return two inequalities in one letter, x > 1 and x ≤ 3, as 1 < x ≤ 3."""
    if len(given.parts) != 2:
        return None
    bounds: dict[str, tuple[t.RelationOp, t.Node]] = {}
    letters = set()
    for part in given.parts:
        if not isinstance(part, t.Relation) or len(part.rest) != 1:
            return None
        if not isinstance(part.first, t.Sym):
            part = turned(part)
        op, side = part.rest[0]
        # Two lower bounds, x > 1 and x > 3, share a place here, and so make no chain.
        bounds["low" if op in (">", "≥") else "high" if op in ("<", "≤") else ""] = (op, side)
        letters.add(part.first)
    if set(bounds) != {"low", "high"} or len(letters) != 1:
        return None
    (low_op, low), (high_op, high) = bounds["low"], bounds["high"]
    return t.Relation(low, ((TURNED[low_op], letters.pop()), (high_op, high)))


def _folded(text: str) -> str:
    return " ".join(text.casefold().split())
