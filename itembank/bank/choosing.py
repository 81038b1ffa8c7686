"""Questions that are answered by naming one of several: the best buy, the larger number."""

from __future__ import annotations

import re

from itembank.bank.maths import Maths
from itembank.bank.model import BankItem
from itembank.bank.modelled import checked_options
from itembank.bank.tasks import NeedsPerson
from itembank.checking.finding import text
from itembank.items.item import Choose
from itembank.notation.tree import Listing, Node, Relation, symbols
from itembank.wording.answer import LARGEST
from itembank.wording.questions import questions

_LEAST = re.compile(
    r"\b(?:less|least|lowest|lower|cheap\w*|small\w*|short\w*|light\w*|few\w*|narrow\w*|cold\w*|"
    r"young\w*|under|near\w*|close\w*)\b",
    re.I,
)
_GREATEST = re.compile(
    r"\b(?:more|most|great\w*|larg\w*|big\w*|high\w*|long\w*|heav\w*|dear\w*|expensive|tall\w*|"
    r"wid\w*|hot\w*|warm\w*|old\w*|over)\b",
    re.I,
)
_EITHER = re.compile(
    r"\b(?:best|better|good|worst|worse|fast\w*|slow\w*|quick\w*|early|earli\w*|late\w*|value|win\w*|"
    r"first|last)\b",
    re.I,
)
"""Words that may mean the least or the greatest: the fastest has the least time, or most speed."""


def choose_ask(item: BankItem, maths: Maths) -> Choose:
    """Return the question to choose among the options of an item.

    Raises:
        NeedsPerson: the options or the way are missing, or the words ask for the other way.
    """
    if not maths.options or item.choose is None:
        raise NeedsPerson("To choose takes ‘options’ and ‘choose’, which is least or greatest.")
    asking = questions(maths.runs)
    if len(asking) != 1:
        raise NeedsPerson("To choose takes one question, which says what is chosen by.")
    words = asking[0]
    if re.search(
        r"\b(?:not|n't|never|difference|how much|how many|both|neither|second)\b", words, re.I
    ):
        raise NeedsPerson(f"‘{words}’ asks for more than to choose the {item.choose}.")
    low, high = _LEAST.search(words), _GREATEST.search(words)
    said = {"least": low, "greatest": high}[item.choose]
    other = {"least": high, "greatest": low}[item.choose]
    if not said and not _EITHER.search(words):
        found = f"‘{other[0]}’" if other else "neither"
        raise NeedsPerson(
            f"The options are chosen by the {item.choose}, but the words say {found}."
        )
    checked_options(item, maths)
    return Choose(maths.options, item.choose)


def extreme_ask(args: list[Node], size: str) -> Choose:
    """Return the question which of some printed numbers is the largest or the smallest.

    Raises:
        NeedsPerson: there are not two numbers or more.

    >>> from itembank.notation import parse
    >>> extreme_ask([parse("2/3"), parse("3/5")], "larger").detail
    'greatest'
    """
    things = args[0].parts if len(args) == 1 and isinstance(args[0], Listing) else tuple(args)
    if len(things) < 2 or any(isinstance(one, Relation) or symbols(one) for one in things):
        raise NeedsPerson("To find the largest or the smallest takes two numbers or more.")
    named = tuple((text(one), one) for one in things)
    return Choose(named, "greatest" if re.fullmatch(LARGEST, size, re.I) else "least")
