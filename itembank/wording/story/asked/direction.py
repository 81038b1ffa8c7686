"""Which way a printed amount moves something: it has risen by 11 degrees, £30 is paid out."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT, index_of, sentences, slotted

_UP = (
    r"ris(?:e|es|en|ing)|rose|increas\w*|gain\w*|warmer|hotter|grow\w*|grew|added|adds|deposit\w*|"
    r"profit|vat|interest|pa(?:ys?|id) in|g(?:e|o)ts? on|joins?|joined|brought in|lets? in|flows? in|more \w+ (?:are|come|join|arrive|get)|earn\w*|receiv\w*|climb\w*|up by|goes up|went up"
)
_DOWN = (
    r"f(?:a|e)ll(?:s|en)?|drop\w*|decreas\w*|los(?:e|es|t|ing)|cooler|colder|shr(?:i|u)nk\w*|"
    r"withdr(?:a|e)w\w*|pa(?:ys?|id) (?:out|back)|spend\w*|spent|g(?:e|o)ts? off|leaves|left|reduced by|"
    r"reduced|reduction|discount|off|sale|loss|taken out|takes out|used|uses|given away|gives away|sold|sells|eaten|eats|down by|goes down|went down|burns? (?:down|away)|lets? out|flows? out|melts|ago"
)
_ABSENT = late(
    r"\b(?:are|were|is|was|went) (?:empty|absent|missing|unsold|away|broken|rotten|cracked|ill|off sick|bruised|"
    r"damaged|faulty|unripe|spoilt|thrown away|closed|not used)\b|\bpaid from\b",
    re.I,
)
"""What is not there, or no good: it is taken away, unless the whole is asked for."""
_OF_ITSELF = late(r"\b(?:weighs?|mass|holds?|costs?)\b", re.I)
"""A box that weighs 350 g when it is empty is no box that is missing."""
_WHOLE = late(
    r"\bhow many\b.*\b(?:altogether|in all|in total|were there|are there|at first|to (?:begin|start) with)\b",
    re.I,
)
_UP_WORD, _DOWN_WORD = late(rf"\b(?:{_UP})\b", re.I), late(rf"\b(?:{_DOWN})\b", re.I)


def direction_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return how an amount is added that the words take away, or the other way, or ``""``.

    The sums of the model are looked at whose first part is a letter, 100 %, 1, or what is printed:
    they run forwards, as the story does.
    """
    said = slotted(runs)
    signs = _signs(model)
    if not signs or re.search(r"\b(?:below|under|depth|deep|owes?|debt)\b", said.text, re.I):
        return ""
    for sentence in sentences(said.text):
        for clause in _moved(sentence):
            number = said.nodes[index_of(re.findall(SLOT, clause)[-1])]
            op = signs.get(bare(number))
            up, down = _UP_WORD.search(clause), _DOWN_WORD.search(clause)
            if op == "-" and up and not down:
                return f"The words say ‘{up[0]}’, and the model takes that amount away."
            if op == "+" and down and not up:
                return f"The words say ‘{down[0]}’, and the model adds that amount."
            absent = None if _OF_ITSELF.search(clause) else _ABSENT.search(clause)
            if op == "+" and absent and not _WHOLE.search(said.text):
                return f"The words say ‘{absent[0]}’, and the model adds that amount."
    return ""


_BY = late(rf"[\w' -]*\bby (?:a further |another )?{SLOT}")


_NO_VERB = late(
    rf"{SLOT}(?: (?:of|on|in|for|before|after|to|from|at|a|an|the|his|her|its|full|more) .*)"
)


def _moved(sentence: str) -> Iterator[str]:
    """Yield the clauses that say how one amount moves: the amount stands last among the slots."""
    before = ""
    for clause in re.split(r",| and | but | then ", sentence):
        if before and _NO_VERB.match(clause):  # spends £4 on a book and £6 on lunch
            clause = f"{before} {clause}"
        moves = _DOWN_WORD.search(clause) or _UP_WORD.search(clause)
        before = moves[0] if moves else ""
        slots = re.findall(SLOT, clause)
        if len(slots) == 1:
            yield clause
        elif slots:  # a town of {8000} people shrinks by {5%}
            yield from _BY.findall(clause)


_BEFORE = late(
    r"\b(?:before the|before it|at first|originally?|to begin with|to start with|at the start)\b",
    re.I,
)


def before_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how the model does not work back to what was there before, or ``""``."""
    match = _BEFORE.search(words)
    if not match or model.inverse or model.divides():
        return ""
    text = slotted(runs).text
    up, down = _UP_WORD.search(text), _DOWN_WORD.search(text)
    adds = any(isinstance(p, t.Sum) and any(op == "+" for op, _ in p.rest) for p in model.parts())
    if (up and not down and model.subtracts()) or (down and not up and adds):
        return ""
    return f"The words ask for ‘{match[0]}’, and the model does not work back to that."


def _signs(model: Modelled) -> dict[t.Node, str]:
    """Return the sign with which the model puts each amount to what was there before."""
    signs: dict[t.Node, str] = {}
    sums = [part for part in model.parts() if isinstance(part, t.Sum)]
    if not model.inverse and not isinstance(model.target, t.Sum):
        sums = [part for part in sums if part.first in (t.Int(1), t.Percent(t.Int(100)))]
    for part in sums:
        if model.inverse and not (t.symbols(part.first) or part.first == t.Percent(t.Int(100))):
            continue
        for op, term in part.rest:
            node = bare(term)
            factors = [node]
            if isinstance(node, t.Product):  # 15% of £72, 5 × 3 cm
                factors = [node.first, *(factor for sign, factor in node.rest if sign != "÷")]
            for factor in factors:
                signs[factor] = op if signs.get(factor, op) == op else ""
    return signs


def bare(node: t.Node) -> t.Node:
    """Return a tree without the brackets around it."""
    return bare(node.of) if isinstance(node, t.Bracket) else node


def says_up(words: str) -> str:
    """Return a word that says that something rises or is added, or ``""``.

    >>> says_up("It has risen by 3 degrees."), says_up("It is eaten.")
    ('risen', '')
    """
    match = _UP_WORD.search(words)
    return match[0] if match else ""


def says_down(words: str) -> str:
    """Return a word that says that something falls or is taken away, or ``""``.

    >>> says_down("Half of it is eaten.")
    'eaten'
    """
    match = _DOWN_WORD.search(words)
    return match[0] if match else ""
