"""What a line of working has to satisfy in a question with many right answers."""

from __future__ import annotations

from itembank.items.asks import Equivalent, Give, TwoNumbers
from itembank.items.asks.equivalent import not_equivalent
from itembank.items.membership import unmet
from itembank.notation import tree as t
from itembank.notation.value import NotExact
from itembank.proof.exact.reckoning.ranges import first_difference, statement
from itembank.proof.exact.sum_and_product import find_two


def given_fault(ask: Give, line: t.Node) -> str:
    """Return what is wrong with a line that is not true or false by itself, or ``""``.

    A relation in the letter has to say what the question says; numbers have to be an answer.

    Raises:
        NotExact: the line is neither.

    >>> from itembank.notation import parse
    >>> ask = Give((t.Sym("x"),), (parse("1/3 < x < 1/2"),))
    >>> given_fault(ask, parse("2/6 < x < 3/6")), given_fault(ask, parse("2/6 < x < 4/6"))
    ('', 'says something else than the question')
    """
    letters = {given.name for given in ask.letters}
    if isinstance(line, t.Relation) and t.symbols(line) & letters:
        (letter, *more) = t.symbols(line) - {"π"}
        about = [relation for relation in ask.relations if t.symbols(relation) - {"π"} == {letter}]
        if more or not about:
            return "" if line in ask.relations else _neither()
        # Two relations, 1/3 < x and x < 1/2, say together what a chain says.
        says = [links for relation in about for links in statement((relation,), letter)]
        asked = [[link for links in says for link in links]]
        same = first_difference(asked, statement((line,), letter)) is None
        return "" if same else "says something else than the question"
    if not t.symbols(line) and not unmet(ask, line):
        return ""
    return _neither()


def equivalent_fault(ask: Equivalent, line: t.Node) -> str:
    """Return what is wrong with a line that is not true or false by itself, or ``""``.

    Raises:
        NotExact: the line is no answer.
    """
    if not_equivalent(ask, line):
        raise NotExact("it is no fraction equal to the one in the question")
    return ""


def two_fault(ask: TwoNumbers, line: t.Node) -> str:
    """Return what is wrong with a line that is not true or false by itself, or ``""``.

    Raises:
        NotExact: the line is not the two numbers.
    """
    if find_two(ask, line).fault:
        raise NotExact("it is not the two numbers that are asked for")
    return ""


def _neither() -> str:
    raise NotExact("it is neither an answer nor what the question says")
