"""What a pupil put in the box, or for the letter, of a question typed out in full."""

from __future__ import annotations

from itembank.items.item import Item
from itembank.marking.typing.working.prompt_printed import equation_of
from itembank.marking.worth.same_worth import same
from itembank.notation import tree as t


def filled(item: Item, node: t.Node) -> t.Node | None:
    """Return what a completed question has in its empty box, or None.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("fractions.equivalent/support/112")  # 2/7 = □/42
    >>> filled(item, parse("2/7 = 12/42")), filled(item, parse("12/42")), filled(item, parse("12"))
    (Int(n=12), Int(n=12), None)
    """
    given = [node]
    if isinstance(node, t.Relation):
        if {op for op, _ in node.rest} != {"="}:
            return None
        given = [node.first, *(side for _, side in node.rest)]
    for run in item.prompt:
        if isinstance(run, str):
            continue
        for pattern in _with_box(run):
            # The last side first: what was worked out stands at the end.
            for shown in reversed(given):
                found: list[t.Node] = []
                if _fits(pattern, shown, found) and len(found) == 1:
                    return found[0]
    return None


def _with_box(run: t.Node) -> list[t.Node]:
    """Return the parts of what is printed that hold its box, the largest first: □/42, □%.

    None is the box alone, and none begins with a sign or a bracket: -3 is not 3 in -□.
    """
    return [
        part
        for part in t.walk(run)
        if "□" in t.symbols(part) and not isinstance(part, t.Blank | t.Neg | t.Bracket | t.Relation)
    ]


def embedded(item: Item, node: t.Node) -> str:
    """Return the letter whose right value stands inside the question's equation, or nothing.

    >>> from itembank.items.topics.registry import find_item
    >>> from itembank.notation.parse import parse
    >>> item = find_item("equations.one-step/support/377")  # 6x = 48
    >>> [embedded(item, parse(text)) for text in ("6 × 8 = 48", "6 × 9 = 54", "48 ÷ 6 = 8")]
    ['x', '', '']
    """
    equation = equation_of(item)
    if equation is None or not isinstance(node, t.Relation) or len(node.rest) != 1:
        return ""
    if t.symbols(node):
        return ""
    (letter,) = t.symbols(equation)
    pattern, node = _boxed(equation, letter), _boxed(node, letter)
    if not isinstance(node, t.Relation):
        return ""
    for way in (node, t.Relation(node.rest[0][1], ((node.rest[0][0], node.first),))):
        found: list[t.Node] = []
        # The letter may stand twice, and then has to be worth the same in both places.
        if _fits(pattern, way, found) and len(set(found)) == 1:
            return letter if same(found[0], item.key) else ""
    return ""


def _boxed(node: t.Node, letter: str) -> t.Node:
    """Return an equation with a box for its letter and × between what stands side by side."""
    match node:
        case t.Sym(name) if name == letter:
            return t.Blank()
        case t.Juxt((first, *rest)):
            factors = tuple(("×", _boxed(factor, letter)) for factor in rest)
            return t.Product(_boxed(first, letter), factors)  # type: ignore[arg-type]
        case t.Neg(of):
            return t.Neg(_boxed(of, letter))
        case t.Bracket(of):
            return t.Bracket(_boxed(of, letter))
        case t.Frac(top, bottom):
            return t.Frac(_boxed(top, letter), _boxed(bottom, letter))
        case t.Sum(first, terms):
            return t.Sum(_boxed(first, letter), tuple((op, _boxed(s, letter)) for op, s in terms))
        case t.Relation(first, sides):
            return t.Relation(
                _boxed(first, letter), tuple((op, _boxed(s, letter)) for op, s in sides)
            )
    return node


def _fits(pattern: t.Node, node: t.Node, found: list[t.Node]) -> bool:
    if isinstance(pattern, t.Blank):
        found.append(node)
        return True
    if "□" not in t.symbols(pattern):
        return pattern == node
    if type(pattern) is not type(node):
        return False
    mine, theirs = t.children(pattern), t.children(node)
    if len(mine) != len(theirs) or t.frame(pattern) != t.frame(node):
        return False
    return all(_fits(own, wanted, found) for own, wanted in zip(mine, theirs, strict=True))
