"""Fractions of things in a story: of the rest, of all of them, and of those that are not."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT, index_of, sentences, slotted

_OF_REST = late(
    r"\bof (?:the|his|her|their|what) (?:rest|remainder|remaining|others?|is left)\b", re.I
)
_ALL_BUT = late(r"\ball but\b|\ball except\b|\bother than\b", re.I)
_OF_THE_NUMBER = late(rf"({SLOT}) of (?:the |his |her |its |these |those |a total of )?({SLOT})")
_OF_THEM = late(
    rf"({SLOT})(?: of (?:them|these|those|it|(?:the |its |his |her |their )?[\w' -]+?))? "
    r"(?:is|are|was|were|have|has|come|comes|came|go|goes|went|do|does) (?P<what>[\w' -]+)",
    re.I,
)
_AND_THE_REST = late(r"\band (?:the )?(?:rest|others?)\b", re.I)
_THEY = late(rf"({SLOT}) (?P<what>(?:do not |don't )?[a-z]+)(?=[.,]|$)", re.I)
_VERB_OF_THEM = late(
    rf"(?P<what>\w+) (?:off |out |up )?({SLOT}) of (?:them|these|those|it|(?:the|his|her|its|their) \w+)",
    re.I,
)


def part_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how a fraction of something is taken of something else, or ``""``."""
    said = slotted(runs)
    if _ALL_BUT.search(said.text):
        return "‘All but’ is not understood: say what part is meant."
    if _OF_REST.search(said.text) and not _of_a_rest(model):
        return "The words take a part of the rest, and the model takes no part of a rest."
    for match in _OF_THE_NUMBER.finditer(said.text):
        part, whole = (nodes_at(said.nodes, char) for char in match.groups())
        if isinstance(part, t.Frac | t.Percent) and not _multiplied(model, part, whole):
            return "The words take a part of a number that the model does not take it of."
    return _other_part(said.text, said.nodes, model, words)


def nodes_at(nodes: Sequence[t.Node], char: str) -> t.Node:
    """Return the mathematics that stands in a slot."""
    return nodes[index_of(char)]


def _of_a_rest(model: Modelled) -> bool:
    """Whether the model multiplies by something that is left: 1 − 1/4, or an amount less a part."""
    for part in model.parts():
        if isinstance(part, t.Product):
            factors = [part.first, *(factor for _, factor in part.rest)]
            if any(_is_rest(factor) for factor in factors):
                return True
    return model.inverse


def _is_rest(node: t.Node) -> bool:
    while isinstance(node, t.Bracket):
        node = node.of
    return isinstance(node, t.Sum) and any(op == "-" for op, _ in node.rest)


def _multiplied(model: Modelled, part: t.Node, whole: t.Node) -> bool:
    for node in model.parts():
        if isinstance(node, t.Product):
            factors = {node.first, *(factor for _, factor in node.rest)}
            if whole in factors and (part in factors or any(part in t.walk(f) for f in factors)):
                return True
    return False


_IRREGULAR = {
    "sold": "sell", "kept": "keep", "eaten": "eat", "ate": "eat", "gave": "give", "given": "give",
    "spent": "spend", "taken": "take", "took": "take", "lost": "lose", "bought": "buy",
    "paid": "pay", "left": "leave", "grown": "grow", "grew": "grow", "drunk": "drink",
    "went": "go", "gone": "go", "came": "come", "won": "win", "cut": "cut", "made": "make",
    "swam": "swim", "swum": "swim", "broke": "break", "broken": "break", "sent": "send",
}  # fmt: skip
_STOP = frozenset(
    ["a", "an", "the", "of", "in", "on", "at", "to", "for", "and", "or", "is", "are", "was", "were", "be", "been", "being", "it", "they", "them", "there", "this", "that", "up", "off", "out", "by", "with", "from", "his", "her", "its", "their", "how", "many", "much", "what", "do", "does", "did", "has", "have", "had", "not", "no"]
)  # fmt: skip


def stem(word: str) -> str:
    """Return a word without its ending, so that sells, sold and selling agree.

    >>> stem("sells"), stem("sold"), stem("planted"), stem("plants")
    ('sell', 'sell', 'plant', 'plant')
    """
    word = word.lower().removesuffix("'s")
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    for ending in ("ing", "ed", "es", "s"):
        if word.endswith(ending) and len(word) >= len(ending) + 2:
            return word.removesuffix(ending).removesuffix("e")
    return word.removesuffix("e")


def _content(words: str) -> set[str]:
    return {stem(word) for word in re.findall(r"[A-Za-z'-]+", words)} - {stem(w) for w in _STOP}


def _other_part(text: str, nodes: Sequence[t.Node], model: Modelled, words: str) -> str:
    """Return how the question asks for the part that the model does not find, or ``""``.

    *{3/4} of them are taken. How many are taken?* is 3/4 of them; *How many are empty?* is not.
    """
    target = model.target
    if target is None or model.inverse:
        return ""
    takes = _plain_part(target)
    if takes is None:
        return ""
    part, complement = takes
    asked = _content(words)
    for sentence in sentences(text):
        for match in _told(sentence):
            slot_char = next(char for char in match.groups() if char and re.fullmatch(SLOT, char))
            if nodes_at(nodes, slot_char) != part:
                continue
            # 3/8 are blue and the rest are black: the rest is said of the others.
            said = _content(_AND_THE_REST.split(match["what"])[0])
            named = bool(said & asked)
            negated = bool(
                re.search(
                    r"\b(?:not|n't|never|un\w+|left|other|else|still|remain\w*)\b", words, re.I
                )
            )
            if not complement and (not named or negated):
                return (
                    f"The model finds the part that is ‘{match['what'].strip()}’, and the question "
                    f"does not ask for that: ‘{words}’."
                )
            if complement and named and not negated:
                return (
                    f"The model finds what is not ‘{match['what'].strip()}’, but the question asks "
                    f"for what is: ‘{words}’."
                )
    return ""


def asks_other_part(runs: Sequence[Run], model: Modelled, words: str) -> bool:
    """Whether a model finds what is left of a part, and the question does not name the part.

    *{45%} of them are boys. How many are girls?*
    """
    target = model.target
    takes = None if target is None or model.inverse else _plain_part(target)
    if takes is None or not takes[1]:
        return False
    said = slotted(runs)
    for sentence in sentences(said.text):
        for match in _told(sentence):
            char = next(c for c in match.groups() if c and re.fullmatch(SLOT, c))
            if nodes_at(said.nodes, char) == takes[0]:
                what = _AND_THE_REST.split(match["what"])[0]
                return not (_content(what) & _content(words))
    return False


def _told(sentence: str) -> list[re.Match[str]]:
    """Return what a sentence says of each part: {3/4} of them are taken, he sells {5/8} of it."""
    return [
        match
        for pattern in (_OF_THEM, _VERB_OF_THEM, _THEY)
        for match in pattern.finditer(sentence)
    ]


def _over_a_whole(target: t.Node | None) -> t.Node | None:
    """Return what is divided by a whole: 8 − 3 of (8 − 3)/8."""
    match target:
        case t.Frac(top, _) | t.Product(top, (("÷", _),)):
            target = top
    while isinstance(target, t.Bracket):
        target = target.of
    return target


def names_what_is_taken(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return the word of a question that asks for the very amount which the model takes away.

    *{17} of the seats are taken. How many are taken?* is not 40 − 17.
    """
    target = model.target
    if re.search(r"\b(?:what|which) (?:fraction|percentage) of\b", words, re.I):
        target = _over_a_whole(target)
    if not isinstance(target, t.Sum):
        return ""
    said = slotted(runs)
    for op, term in target.rest:
        if op != "-":
            continue
        numbers = set(t.walk(term))
        for sentence in sentences(said.text):
            for clause in re.split(r", | and | but | then ", sentence):
                slots = re.findall(SLOT, clause)
                if len(slots) == 1 and nodes_at(said.nodes, slots[0]) in numbers:
                    predicate = (
                        clause[clause.index(slots[0]) + 1 :] + " " + clause.split(slots[0])[0]
                    )
                    shared = _verbs(predicate) & _content(words)
                    if shared and sentence.strip() != words.strip():
                        return sorted(shared)[0]
    return ""


def _verbs(clause: str) -> set[str]:
    """Return the stems of words in a clause that look like what happens: taken, sells, lost."""
    found = re.findall(r"\b(?:is|are|was|were|be|been|gets?|got) ([a-z]+)", clause)
    found += re.findall(r"\b([a-z]+(?:s|ed|en))\b", clause)
    return {stem(word) for word in found if len(word) > 3} - {stem(w) for w in _STOP}


def _plain_part(target: t.Node) -> tuple[t.Node, bool] | None:
    """Return the fraction of a target such as 3/4 × 60, or 60 − 3/4 × 60 as its complement."""
    match target:
        case t.Product(first, rest) if all(op in ("×", "of") for op, _ in rest):
            factors = [first, *(factor for _, factor in rest)]
            for factor in factors:
                match factor:
                    case t.Bracket(t.Sum(t.Int(1), (("-", (t.Frac() | t.Percent()) as taken),))):
                        return taken, True
            fractions = [f for f in factors if isinstance(f, t.Frac | t.Percent)]
            if fractions and all(
                isinstance(f, t.Frac | t.Percent | t.Int | t.Dec | t.Mixed) or _amount(f)
                for f in factors
            ):
                return fractions[0], False
        case t.Sum(first, (("-", t.Product() as taken),)):
            inner = _plain_part(taken)
            if inner is not None and first in (taken.first, *(factor for _, factor in taken.rest)):
                return inner[0], True
        case t.Sum(t.Int(1), (("-", t.Frac() as taken),)):
            return taken, True
    return None


def _amount(node: t.Node) -> bool:
    return not t.symbols(node) and not isinstance(node, t.Sum | t.Product | t.Bracket)
