"""What the letter of a model stands for, where the words and the sums of the model tell it.

In *a coach has {24} more seats than a minibus* and 2(m + 24) + 3m, the letter to which 24 is added
is the minibus's, whatever it is called.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.kinds.things_counted import noun_stem
from itembank.wording.meaning.told.tale import late_search
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT, index_of, slotted
from itembank.wording.sentences.question_sentences import questions

_MORE = r"more|older|taller|longer|heavier|dearer|wider|higher|warmer|hotter|further|bigger|larger|deeper"
_LESS = r"less|fewer|younger|shorter|lighter|cheaper|narrower|lower|colder|cooler|smaller"
_GAP = late(
    rf"(?P<a>[A-Za-z'-]+(?: [a-z'-]+)?) (?:is|has|costs?|weighs?|gets|scores?|are|have|earns?|pays?) (?P<gap>{SLOT})(?: [a-z]+)? "
    rf"(?P<way>{_MORE}|{_LESS})(?: [a-z]+)? than (?:(?:an?|the|his|her) )?(?P<b>it is (?:wide|long|high|tall|deep)|[A-Za-z'-]+)",
    re.I,
)
_SIDE = {
    "wide": "width", "long": "length", "high": "height", "tall": "height", "deep": "depth",
    "longer": "length", "shorter": "length", "wider": "width", "narrower": "width",
    "taller": "height", "higher": "height", "deeper": "depth",
}  # fmt: skip
_POSITION = (
    r"\b(?:which (?:term|pattern|row)|(?:what|that|its|this|the|which) position|term number)\b"
)


def letter_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return how the letter that is found stands for something else than is asked, or ``""``."""
    asking = questions(runs)
    if not asking or not model.inverse:
        return ""
    said = slotted(runs)
    words = asking[-1]
    return (
        _other_of_two(said.text, said.nodes, model, words)
        or _so_many_times(said.text, said.nodes, model, words)
        or _position_or_term(said.text, model, words)
        or _half_way_round(said.text, said.nodes, model)
    )


def _other_of_two(text: str, nodes: Sequence[t.Node], model: Modelled, words: str) -> str:
    gap = _GAP.search(text)
    if gap is None:
        return ""
    amount = nodes[index_of(gap["gap"])]
    amounts = {amount, getattr(amount, "amount", amount)}
    found = {
        (term.name, op)
        for part in model.parts()
        if isinstance(part, t.Sum) and isinstance(part.first, t.Sym)
        for term in (part.first,)
        for op, side in part.rest
        if side in amounts and len(part.rest) == 1
    }
    if len(found) != 1:
        return ""
    ((letter, op),) = found
    more = re.fullmatch(_MORE, gap["way"], re.I) is not None
    first, other = _entities(gap, words)
    if not first or not other or first == other:
        return ""
    larger, smaller = (first, other) if more else (other, first)
    # The letter plus the gap is the larger of the two; the letter less the gap the smaller.
    owner = smaller if op == "+" else larger
    target = model.target
    named = [entity for entity in (first, other) if _is_about(words, entity)]
    if len(named) != 1:
        return ""
    if isinstance(target, t.Sym) and target.name == letter and named[0] != owner:
        return f"The question asks for the {named[0]}, and {letter} stands for the {owner}."
    if isinstance(target, t.Sum) and target.first == t.Sym(letter) and named[0] == owner:
        return f"The question asks for the {named[0]}, and the model finds the other of the two."
    return ""


_TIMES = late(
    rf"(?P<a>(?!(?:an?|the|his|her|my|it|he|she)\b)[A-Za-z'-]+)(?: \w+)? (?:is|has|costs?|weighs?|earns?|gets|scores?) (?P<n>{SLOT}|twice|double|three|four) (?:times )?as "
    r"(?:old|much|many|long|heavy|tall|wide|far|high|big)(?: [a-z]+){0,2} as (?:(?:an?|the|his|her|its) )?(?P<b>(?!(?:it|he|she)\b)[A-Za-z'-]+)",
    re.I,
)


def _so_many_times(text: str, nodes: Sequence[t.Node], model: Modelled, words: str) -> str:
    """Return how the smaller of two is found for the one that is so many times as much."""
    match = _TIMES.search(text)
    target = model.target
    if match is None or target is None:
        return ""
    said = {"twice": 2, "double": 2, "three": 3, "four": 4}.get(match["n"].lower())
    count = t.Int(said) if said else nodes[index_of(match["n"])]
    letters = {
        part.factors[1].name
        for part in model.parts()
        if isinstance(part, t.Juxt) and len(part.factors) == 2 and part.factors[0] == count
        if isinstance(part.factors[1], t.Sym)
    }
    if len(letters) != 1:
        return ""
    (letter,) = letters
    larger, smaller = noun_stem(match["a"]), noun_stem(match["b"])
    named = [name for name in (larger, smaller) if _is_about(words, name)]
    if len(named) != 1 or larger == smaller or late_search(r"\bnumber\b", match["b"]):
        return ""
    if target == t.Sym(letter) and named[0] == larger:
        return f"The question asks for the {larger}, and {letter} stands for the {smaller}."
    if isinstance(target, t.Juxt) and target.factors[0] == count and named[0] == smaller:
        return f"The question asks for the {smaller}, and the model finds the {larger}."
    return ""


def _entities(gap: re.Match[str], words: str) -> tuple[str, str]:
    if gap["b"].lower().startswith("it is "):
        return _SIDE.get(gap["way"].lower(), ""), _SIDE[gap["b"].lower().split()[-1]]
    return noun_stem(
        gap["a"].split()[0]
        if gap["a"][0].isupper() and gap["a"].split()[0].lower() not in ("a", "an", "the")
        else gap["a"].split()[-1]
    ), noun_stem(gap["b"])


def _is_about(words: str, entity: str) -> bool:
    names = [entity] + [
        word for word, side in _SIDE.items() if side == entity and not word.endswith("er")
    ]
    return any(late_search(rf"\b{re.escape(name)}(?:s|es|'s)?\b", words) for name in names)


def _position_or_term(text: str, model: Modelled, words: str) -> str:
    """Return how a term is found where its position is asked for, or the other way about."""
    target = model.target
    span = late_search(
        r"^(?:in|after|for) how many (?:years|months|weeks|days|hours|minutes)\b", words
    )
    if span and isinstance(target, t.Sum) and len(t.symbols(target)) == 1:
        return "The question asks how long it takes, and the model finds what there is then."
    if target is None or not late_search(r"\bsequences?\b|\bnth term\b", text):
        return ""
    letter = isinstance(target, t.Sym)
    place = late_search(_POSITION, words)
    if place and not letter and t.symbols(target):
        return "The question asks for a position, and the model finds the term that stands there."
    if (
        letter
        and not place
        and target == t.Sym("n")
        and late_search(
            rf"{SLOT} ?(?:st|nd|rd|th) term\b|\b(?:that|the|this) term\b|\bvalue of the term\b",
            words,
        )
        and not late_search(r"\bwhich\b|\bposition\b|\bhow many\b", words)
    ):
        return "The question asks for a term, and the model finds the position of one."
    return ""


def _half_way_round(text: str, nodes: Sequence[t.Node], model: Modelled) -> str:
    """Return how a perimeter that is given is set equal to two sides only, or ``""``."""
    match = re.search(rf"\bperimeter\b[^.?{{}}]*?({SLOT})", text, re.I)
    if match is None or not late_search(
        r"\brectang\w+|\bplot\b|\bfield\b|\bgarden\b|\blawn\b|\broom\b", text
    ):
        return ""
    given = nodes[index_of(match[1])]
    for line in model.lines:
        if not isinstance(line, t.Relation) or len(line.rest) != 1:
            continue
        sides = [line.first, line.rest[0][1]]
        if given not in sides:
            continue
        unknown = sides[1 - sides.index(given)]
        while isinstance(unknown, t.Bracket):
            unknown = unknown.of
        if (
            isinstance(unknown, t.Sum)
            and len(unknown.rest) == 1
            and not any(map(_doubled, (unknown.first, unknown.rest[0][1])))
        ):
            return "A perimeter goes round every side, and the model adds two sides only."
    return ""


def _doubled(node: t.Node) -> bool:
    match node:
        case t.Juxt(factors):
            return t.Int(2) in factors or any(
                isinstance(f, t.Int) and f.n > 1 and f.n % 2 == 0 for f in factors
            )
        case t.Product(first, rest):
            return t.Int(2) in (first, *(factor for _, factor in rest))
    return False
