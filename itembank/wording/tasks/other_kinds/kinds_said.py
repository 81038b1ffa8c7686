"""Reads the wordings of statements, cards and wrong solutions whole.

Each has a frame of its own, with the cards named by letters and the lines by numbers. What
stands in the frame besides is read to its last word, or the prompt is left to a person.

>>> from itembank.notation import parse
>>> runs = ("True or false? ", parse("2/3 = 4/6"), " Be ready to say why.")
>>> type(kind_said(runs)).__name__
'TrueOrFalse'
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import NamedTuple

from itembank.items.asks import Ask, FaultyLine, Match, OddOneOut, TrueOrFalse
from itembank.items.asks.faulty_line import MOST_LINES
from itembank.items.asks.matching import PARTNERS
from itembank.items.asks.odd_one_out import LETTERS
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import COUNTS
from itembank.wording.sentences.prompt import SLOT, index_of, slotted

WHY = (
    r"(?: (?:(?:be ready to |then |and )?(?:say why|say how you know|explain (?:why|how you know)|"
    r"give (?:a|your) reason)(?: aloud)?)[.!]?)?"
)
_LETTERS = rf"(?:number {SLOT} stands|numbers {SLOT}(?:(?:, | and ){SLOT})+ stand)"
_NOUN = (
    r"(?:cards|expressions|equations|fractions|numbers|ratios|sums|calculations|amounts|"
    r"quantities|decimals|percentages|measurements|lengths|prices)"
)
_SINGLE = (
    r"(?:card|expression|equation|fraction|number|ratio|sum|calculation|amount|quantity|decimal|"
    r"percentage|measurement|length|price|question|product|division|difference|power|root|bracket|"
    r"rule|nth term|sequence|scale|formula|mixed number|improper fraction|fraction of an amount|share|time)"
)
_PARTNER = (
    r"(?:value|answer|solution|result|partner|simplest form|expanded form|factorised form|"
    r"(?:the )?(?:equal|equivalent|same|matching) " + _SINGLE + r"|decimal|fraction|percentage|"
    r"improper fraction|mixed number|ratio|same time by the other clock|"
    r"first terms of its sequence|equation of the same line)"
)
NAME = r"(?:(?!(?:no|not|never|who|nobody|nothing|none|hardly|if|what|which)\b)[a-z]+|an? (?:pupil|friend|gardener|swimmer|driver|cook|mechanic|librarian))"


def _row(letters: str) -> str:
    """Return the pattern of a row of named cards, three at the least but for the last ones."""
    first, *more = (rf"(?:\({letter}\)|{letter}:?) {SLOT}" for letter in letters)
    pattern = ""
    for card in reversed(more):
        pattern = rf"(?:[;,.]? {card}{pattern})?"
    return first + pattern


_CARDS, _OTHERS = _row(LETTERS), _row(PARTNERS)
_LINES = rf"line 1: {SLOT}" + "".join(
    rf"(?:[;,.]? line {n}: {SLOT}" for n in range(2, MOST_LINES + 1)
)
_LINES += ")?" * (MOST_LINES - 1)

_TRUE = late(
    rf"(?:is (?:this|it) )?true or false(?P<always>,? (?:whatever {_LETTERS} for|"
    rf"for every value of {SLOT}))?[?:] "
    rf"(?:(?:when|if|given that) (?P<given>{SLOT}(?:(?:, | and ){SLOT})*), (?:then )?)?"
    rf"(?P<says>{SLOT})[.!]?{WHY}",
    re.I,
    needs="true or false",
)
_ODD = late(
    rf"(?:(?P<count>{'|'.join(COUNTS)}) of these (?P<noun>{_NOUN} )?"
    r"(?P<same>are worth the same|are equal|are equivalent|have the same value|"
    r"have the same answer|have the same solution)[.:] which (?:one )?is the odd one out|"
    rf"which (?:one |of these {_NOUN} )?is the odd one out by value)"
    rf"\? (?P<cards>{_CARDS})[.]?{WHY}",
    re.I,
    needs="odd one out",
)
_FAULTY = late(
    rf"{NAME} (?P<does>works out|solves|simplifies|expands|expands and simplifies|factorises) "
    rf"(?P<question>{SLOT})[.:](?: one line is wrong[.:])? (?P<lines>{_LINES})[.]? "
    r"(?:which line is wrong|in which line is the mistake|which line has the mistake)"
    r"(?:\?|,) (?:and )?what (?:is the right answer|should the answer be)\?",
    re.I,
    needs="ne 1: ",
)
_MATCH = late(
    rf"match (?:each|every) {_SINGLE} (?:with|to) (?:its |the |an? )?{_PARTNER}[.:] "
    rf"(?P<cards>{_CARDS})[.;] (?P<partners>{_OTHERS})[.]?"
    r"(?: one (?:of the (?:answers|cards) )?is left over[.]?)?",
    re.I,
    needs="match ",
)
_BEGINS = late(
    r"(?:is (?:this|it) )?true or false\b|.*\bodd one out\b|"
    rf"match (?:each|every)\b.*\bA[:)]? {SLOT}|.*\bline 1: ",
    re.I,
)


class KindUnread(t.NotationError):
    """Words that begin as one of these wordings do and do not go on so; says what was expected."""


class _Wording(NamedTuple):
    pattern: re.Pattern[str]
    ask: Callable[[re.Match[str], Sequence[t.Node]], Ask]


def kind_said(runs: Sequence[Run]) -> Ask | None:
    """Return what a prompt asks in one of these wordings, or None where it has another.

    Raises
    ------
    KindUnread
        If it begins as one of them does, and is not read whole.

    >>> from itembank.notation import parse
    >>> cards = [parse(text) for text in ("1/2", "2/4", "3/5")]
    >>> named = [run for name, card in zip((" A ", "; B ", "; C "), cards) for run in (name, card)]
    >>> kind_said(("Two of these are equal. Which is the odd one out?", *named)).cards == (*cards,)
    True
    >>> kind_said(("Work out ", cards[0], "."))
    """
    if not any(isinstance(run, str) and _OPENS.search(run) for run in runs):
        return None  # nearly every prompt there is
    said = slotted(runs)
    if not _BEGINS.match(said.text):
        return None
    for wording in _WORDINGS:
        if found := wording.pattern.fullmatch(said.text):
            return wording.ask(found, said.nodes)
    raise KindUnread(
        "the words are not those of a statement, of named cards or of numbered lines, to the last"
    )


_OPENS = late(r"true or false|odd one out|match (?:each|every)|line 1:", re.I)


def _slots(text: str | None, nodes: Sequence[t.Node]) -> tuple[t.Node, ...]:
    return tuple(nodes[index_of(char)] for char in re.findall(SLOT, text or ""))


def _statement(found: re.Match[str], nodes: Sequence[t.Node]) -> Ask:
    (says,) = _slots(found["says"], nodes)
    given = _slots(found["given"], nodes)
    always = {node.name for node in _slots(found["always"], nodes) if isinstance(node, t.Sym)}
    if not isinstance(says, t.Relation) or not all(isinstance(n, t.Relation) for n in given):
        raise KindUnread("a statement needs a sign between its two sides")
    letters = t.symbols(says) - {"π"}
    if (always != letters) if not given else bool(always):
        raise KindUnread("it is not said for which values of its letters the statement is meant")
    return TrueOrFalse(says, tuple(n for n in given if isinstance(n, t.Relation)))


def _odd(found: re.Match[str], nodes: Sequence[t.Node]) -> Ask:
    cards = _slots(found["cards"], nodes)
    if found["count"] and COUNTS[found["count"].lower()] != len(cards) - 1:
        raise KindUnread("the words say how many are the same, and that is not all cards but one")
    same = (found["same"] or "").lower()
    lines = same == "are equivalent" and all(
        isinstance(card, t.Relation) and t.symbols(card) == {"x", "y"} for card in cards
    )
    solved = same.endswith("solution") or lines
    if any(isinstance(card, t.Relation) != solved for card in cards):
        raise KindUnread("equations have a solution, and other cards a value")
    if len(cards) < 3:
        raise KindUnread("an odd one out takes three cards or more")
    return OddOneOut(cards)


def _faulty(found: re.Match[str], nodes: Sequence[t.Node]) -> Ask:
    (question,) = _slots(found["question"], nodes)
    if (found["does"].lower() == "solves") != isinstance(question, t.Relation):
        raise KindUnread("an equation is solved, and nothing else is")
    return FaultyLine(question, _slots(found["lines"], nodes))


def _match(found: re.Match[str], nodes: Sequence[t.Node]) -> Ask:
    cards, partners = _slots(found["cards"], nodes), _slots(found["partners"], nodes)
    if not 2 <= len(cards) <= len(partners):
        raise KindUnread("to match takes two cards or more, and a partner for each")
    return Match(cards, partners)


_WORDINGS = (
    _Wording(_TRUE, _statement),
    _Wording(_ODD, _odd),
    _Wording(_FAULTY, _faulty),
    _Wording(_MATCH, _match),
)
