"""The property that words give to any of many answers, as a question to be proved.

The meanings are those of English school mathematics (common practice, no source): *between* two
numbers leaves both of them out unless *inclusive* is said; two *factors* or two *multiples* are
two different ones; a *pair of factors* multiplies to the number; a two-digit number is a whole
number from 10 to 99.
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.items.asks import Condition, Equivalent, Give, TwoNumbers
from itembank.notation import tree as t
from itembank.notation.value import NotExact, exact
from itembank.wording.sentences.prompt import index_of
from itembank.wording.tasks.other_kinds.giving import Fact, Giving
from itembank.wording.tasks.sums.sums import NotBuilt

X, A, B = t.Sym("x"), t.Sym("a"), t.Sym("b")
_DIGITS = {"two": (10, 99), "three": (100, 999)}
_OF_ONE: dict[str, t.RelationOp] = {"<": "<", ">": ">", "≤": "≤", "≥": "≥", "≠": "≠"}
_PLAIN = (t.Int, t.Dec, t.Frac, t.Mixed, t.Neg, t.Percent, t.Power, t.Bracket)
_MAKING = ("sum", "product", "difference")


def property_asked(
    said: Giving, nodes: Sequence[t.Node], given: Sequence[t.Node] = ()
) -> tuple[Give | Equivalent | TwoNumbers, tuple[int, ...]]:
    """Return the question that words ask of the mathematics of a prompt, and their own numbers.

    Parameters
    ----------
    said
        What the words say.
    nodes
        The prompt's mathematics, all of it: `said` names places in it.
    given
        Relations that were given before.

    Raises
    ------
    NotBuilt
        The words and the mathematics do not make such a question.

    >>> from itembank.notation import line, parse
    >>> from itembank.wording.sentences.prompt import slot
    >>> from itembank.wording.tasks.other_kinds.giving import giving
    >>> said = giving(f"Write a number between {slot(0)} and {slot(1)}")
    >>> [line(node) for node in property_asked(said, (parse("1/2"), parse("1/3")))[0].relations]
    ['1/3 < x < 1/2']
    """
    if any(fact.name == "equal" for fact in said.facts):
        return _equivalent(said, nodes, given), ()
    if (two := _sum_and_product(said, nodes)) and not given:
        return two, ()
    held = [*given, *(nodes[fact.slots[0]] for fact in said.facts if fact.name == "holds")]
    letters = (A, B) if said.numbers == 2 else (_letter(said, nodes, held),)
    relations: list[t.Relation] = []
    conditions = [Condition("whole")] if said.what == "whole" else []
    constants: tuple[int, ...] = ()
    for node in held:
        if not isinstance(node, t.Relation) or t.symbols(node) != {letters[0].name}:
            raise NotBuilt("What has to hold is a relation with the letter that is asked for.")
        relations.append(node)
    for fact in said.facts:
        if fact.name in _DIGITS:
            low, high = _DIGITS[fact.name]
            constants += (low, high)
            conditions.append(Condition("whole"))
            relations += [_within(letter, t.Int(low), t.Int(high), "≤") for letter in letters]
        elif fact.name != "holds":
            numbers = [_number(nodes[place]) for place in fact.slots]
            relations += _relations(fact, letters, numbers)
            conditions += _conditions(fact, numbers)
    names = [fact.name for fact in said.facts]
    if said.numbers == 2 and not {*names} & {*_MAKING, "different"}:
        conditions.append(Condition("different"))
    if not (relations or conditions) or (names == [] and not given):
        raise NotBuilt("It is not said what the answer has to be.")
    return Give(letters, tuple(relations), tuple(dict.fromkeys(conditions))), constants


def _equivalent(said: Giving, nodes: Sequence[t.Node], given: Sequence[t.Node]) -> Equivalent:
    """Return the question for a fraction in another way; one with more to it is not built."""
    if given or said.numbers != 1 or said.what != "fraction" or len(said.facts) > 1:
        raise NotBuilt("Equal to a number is looked at here for one fraction alone.")
    target = _number(nodes[said.facts[0].slots[0]])
    if not exact(target):
        raise NotBuilt("Fractions that are equal to 0 are not looked at here.")
    return Equivalent(target)


def _sum_and_product(said: Giving, nodes: Sequence[t.Node]) -> TwoNumbers | None:
    """Return the question for the two numbers with a sum and a product, if that is all it is."""
    made = {fact.name: fact for fact in said.facts if fact.name != "different"}
    count = sum(fact.name != "different" for fact in said.facts)
    if set(made) != {"sum", "product"} or count != 2 or said.what not in ("number", "whole"):
        return None
    if any(fact.sign != "=" for fact in made.values()):
        return None
    total, product = (_number(nodes[made[name].slots[0]]) for name in ("sum", "product"))
    return TwoNumbers(total, product)


def _letter(said: Giving, nodes: Sequence[t.Node], held: Sequence[t.Node]) -> t.Sym:
    """Return the letter for one number: the one that is said, or that of a relation."""
    names = {name for node in held for name in t.symbols(node)} - {"π"}
    name = said.letter
    if name:
        node = nodes[index_of(name)] if not name.isascii() else t.Sym(name)
        if not isinstance(node, t.Sym):
            raise NotBuilt("The words ask for the value of what is no letter.")
        return node
    if len(names) > 1:
        raise NotBuilt("What has to hold speaks of several letters.")
    return t.Sym(names.pop()) if names else X


def _number(node: t.Node) -> t.Node:
    """Return a node that is one number as it stands, without a unit."""
    if not all(isinstance(part, _PLAIN) for part in t.walk(node)):
        raise NotBuilt("What an answer is held to here is a plain number, without a unit.")
    try:
        exact(node)
    except NotExact:
        raise NotBuilt("What an answer is held to here is a number with an exact value.") from None
    return node


def _within(letter: t.Node, low: t.Node, high: t.Node, sign: t.RelationOp) -> t.Relation:
    return t.Relation(low, ((sign, letter), (sign, high)))


def _relations(
    fact: Fact, letters: tuple[t.Sym, ...], numbers: Sequence[t.Node]
) -> list[t.Relation]:
    if fact.name in ("between", "from"):
        low, high = sorted(numbers, key=exact)
        if exact(low) == exact(high):
            raise NotBuilt("Nothing lies between a number and itself.")
        return [
            _within(letter, low, high, "<" if fact.name == "between" else "≤") for letter in letters
        ]
    if sign := _OF_ONE.get(fact.name):
        return [t.relate(letter, sign, numbers[0]) for letter in letters]
    if fact.name in _MAKING:
        if fact.name == "difference" and fact.sign != "=":
            raise NotBuilt("A difference that is less or more than a number is not looked at here.")
        made = {"sum": t.add(A, B), "product": t.times(A, B), "difference": t.sub(A, B)}
        return [t.relate(made[fact.name], _OF_ONE.get(fact.sign, "="), numbers[0])]
    return []


def _conditions(fact: Fact, numbers: Sequence[t.Node]) -> list[Condition]:
    if fact.name in ("between", "from", *_OF_ONE, *_MAKING):
        return []
    for node in numbers:
        if not isinstance(node, t.Int) or not 0 < node.n <= 10**6:
            raise NotBuilt("Multiples and factors are those of a positive whole number.")
    return [Condition(fact.name, tuple(numbers))]
