"""Holds what a story's question asks to the model: left over, the larger share, how much more.

The words here change which number is the answer. For each there is something that a model must
do if it answers that question; where it does not, a person decides, and the word is named. The
other way about, a model that takes away at the end must be asked for something that is left,
lost, or a difference.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from itembank.items.item import Run
from itembank.notation.tree import (
    Bracket,
    Frac,
    Int,
    Neg,
    Node,
    Percent,
    Power,
    Product,
    Ratio,
    Relation,
    Root,
    Sum,
    Sym,
    walk,
)
from itembank.wording.prompt import SLOT, asks_with_mark, sentences, slotted

_COMMAND = re.compile(
    r"(?:and |then |so |please |now |hence )*(?:work out|find|calculate|write|give|state|express|"
    r"determine|show|name|say|list|put|solve|complete|choose|estimate|change|convert|use|prove|"
    r"explain|increase|decrease|add|subtract|multiply|divide|round|simplify|expand|factorise|share|"
    r"how (?:much|many|far|long|old|tall|wide|big)|what|which|by how|in how|for how|after how)\b",
    re.I,
)
_SHARE = re.compile(r"(?:share|divide|split)\b.*\bin(?:to)? the ratio\b", re.I)
_ANSWER_ONLY = re.compile(
    r"(?:please )?(?:give|write|leave|express|state|show|round|put|use|include|do not|simplify)\b"
    r"(?: (?:your|the|each|all|any|both))*(?: \w+)? ?(?:answers?|working|results?|solutions?|"
    r"calculator|units?|index notation)?\b",
    re.I,
)


@dataclass(frozen=True, slots=True)
class Modelled:
    """What a model says: its lines, what is to be found, and the key.

    `worth` gives the value of an expression in the model's letters, or None.
    """

    lines: tuple[Node, ...]
    find: Node | None
    key: Node
    worth: Callable[[Node], Fraction | None]

    @property
    def target(self) -> Node | None:
        """Return what is worked out at the end: what is found, or the one expression."""
        if self.find is not None:
            return self.find
        loose = [node for node in self.lines if not isinstance(node, Relation)]
        return loose[0] if len(loose) == 1 else None

    @property
    def inverse(self) -> bool:
        """Whether something is found from relations, so that operations run backwards."""
        return any(isinstance(node, Relation) for node in self.lines)

    def has(self, *kinds: type) -> bool:
        """Whether a node of one of these kinds stands in the model."""
        return any(isinstance(part, kinds) for node in self._all() for part in walk(node))

    def subtracts(self) -> bool:
        """Whether anything is taken away in the model."""
        return any(
            isinstance(part, Sum) and any(op == "-" for op, _ in part.rest)
            for node in self._all()
            for part in walk(node)
        )

    def divides(self) -> bool:
        """Whether anything is divided in the model."""
        return any(
            isinstance(part, Frac)
            or (isinstance(part, Product) and any(op == "÷" for op, _ in part.rest))
            for node in self._all()
            for part in walk(node)
        )

    def ends_by_subtracting(self) -> bool:
        """Whether the last thing the model does is to take away, with no sum after it."""
        target = self.target
        while isinstance(target, Bracket):
            target = target.of
        return isinstance(target, Sum) and target.rest[-1][0] == "-"

    def _all(self) -> tuple[Node, ...]:
        return self.lines if self.find is None else (*self.lines, self.find)


def questions(runs: Sequence[Run]) -> list[str]:
    """Return the sentences of a prompt that ask for something, and not only how to write it.

    >>> questions(("A bus has ", Int(40), " seats. How many are taken? Show your working."))
    ['How many are taken']
    """
    text = slotted(runs).text
    marked = asks_with_mark(text)
    found = []
    for sentence in sentences(text):
        if marked and _SHARE.match(sentence) and sentence not in marked:
            continue  # Share £60 in the ratio 2 : 3. How much …? tells what happens
        if sentence in marked or (
            _COMMAND.match(sentence) and not _only_about_the_answer(sentence)
        ):
            found.append(sentence)
    return found


def _only_about_the_answer(sentence: str) -> bool:
    match = _ANSWER_ONLY.match(sentence)
    return bool(
        match and re.search(r"answer|working|result|solution|calculator|unit|index", match[0])
    )


def asked_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return what the question asks that the model does not do, as a sentence, or ``""``."""
    asking = questions(runs)
    if not asking:
        return "The words do not ask for anything that is understood: end with a question."
    if len(asking) > 1 and not _one_in_two(asking):
        return f"Two things are asked for: ‘{_readable(asking[1])}’ is one too many."
    words = _readable(asking[-1])
    if fault := _other_share(runs, model, words):
        return fault
    for pattern, fits, says in _RULES:
        if (match := pattern.search(words)) and not fits(model, match):
            return f"The words ask for ‘{match[0].strip()}’, but {says}."
    if model.ends_by_subtracting() and not _TAKEN.search(words):
        return (
            "The model ends by taking away, but the question does not say that it asks for what "
            f"is left, or for a difference: ‘{words}’."
        )
    return ""


_OF_TO = r"ratio of (?P<a>[\w' -]+?) to (?P<b>[\w' -]+?)(?: to (?P<c>[\w' -]+?))? (?:is|are|was|in|at|on|=)\b"
_AND_SHARE = (
    r"(?P<a>[\w' -]+?)(?:, (?P<b1>[\w' -]+?))? and (?P<b>[\w' -]+?) (?:share|shared|split|divide|are|is|were|"
    r"in the ratio)\b[^.?!]*\bratio"
)
_NAMED_IN_RATIO = (re.compile(_OF_TO, re.I), re.compile(_AND_SHARE, re.I))


def _other_share(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how another part of a ratio is found than the one the question names, or ``""``.

    The parts of a ratio stand in the order of the names before it: *Ann and Ben share … in the
    ratio 2 : 3*, *the ratio of juniors to seniors is 2 : 3*.
    """
    target = model.target
    if not isinstance(target, Sym):
        return ""
    letters = _letters_of_ratio(model.lines, runs)
    names = _names_in_ratio("".join(run if isinstance(run, str) else "…" for run in runs))
    if len(names) != len(letters) or target not in letters:
        return ""
    asked_for = [place for place, name in enumerate(names) if _mentions(words, name)]
    if len(asked_for) != 1 or letters[asked_for[0]] == target:
        return ""
    return (
        f"The question names {names[asked_for[0]]}, whose part of the ratio is "
        f"{letters[asked_for[0]].name}, but the model finds {target.name}."
    )


def _letters_of_ratio(lines: Sequence[Node], runs: Sequence[Run]) -> tuple[Sym, ...]:
    """Return the letters of the one ratio that the prompt prints, in its order."""
    printed = [run for run in runs if isinstance(run, Ratio)]
    for line in lines:
        match line:
            case Relation(Ratio(parts), (("=", Ratio() as other),)) if printed == [other]:
                if all(isinstance(part, Sym) for part in parts):
                    return tuple(part for part in parts if isinstance(part, Sym))
    return ()


def _names_in_ratio(text: str) -> tuple[str, ...]:
    for pattern in _NAMED_IN_RATIO:
        found = list(pattern.finditer(text))
        if len(found) == 1:
            named = found[0].groupdict()
            parts = (named.get("a"), named.get("b1"), named.get("b"), named.get("c"))
            return tuple(_last_word(part) for part in parts if part)
    return ()


def _last_word(phrase: str) -> str:
    return phrase.strip().split()[-1] if phrase.strip() else ""


def _mentions(words: str, name: str) -> bool:
    stem = re.escape(name.lower().removesuffix("s"))
    return re.search(rf"\b{stem}(?:s|'s|es)?\b", words.lower()) is not None


def _readable(sentence: str) -> str:
    return re.sub(SLOT, "…", sentence)


def _one_in_two(asking: Sequence[str]) -> bool:
    """Whether a second sentence only says again what the first asks: *Give its position*."""
    return len(asking) == 2 and bool(
        re.match(
            r"(?:give|write|state|find|work out) (?:its|this|the) (?:position|term number)",
            asking[1],
            re.I,
        )
    )


def _difference(model: Modelled, _: re.Match[str]) -> bool:
    if not model.ends_by_subtracting():
        return False
    worth = model.worth(model.key)
    return worth is None or worth > 0


def _takes_away(model: Modelled, _: re.Match[str]) -> bool:
    return model.subtracts() or (model.inverse and _found_in_a_sum(model))


def _found_in_a_sum(model: Modelled) -> bool:
    return any(
        isinstance(part, Sum)
        for node in model.lines
        if isinstance(node, Relation)
        for part in walk(node)
    )


def _backwards(model: Modelled, _: re.Match[str]) -> bool:
    return model.inverse or model.divides() or model.subtracts()


def _extreme(model: Modelled, match: re.Match[str]) -> bool:
    """Whether what is found is the largest (or smallest) of the amounts it stands among."""
    target = model.target
    if target is None or not model.inverse:
        return False
    group = _group_of(target, model.lines)
    own = model.worth(target)
    values = [model.worth(node) for node in group]
    if own is None or len(values) < 2 or any(value is None for value in values):
        return False
    known = [value for value in values if value is not None]
    best = max(known) if re.match(_LARGE, match[1].lower()) else min(known)
    return own == best and known.count(best) == 1


def _group_of(target: Node, lines: Sequence[Node]) -> tuple[Node, ...]:
    """Return the amounts of a sum, a ratio or a list of the model that `target` is one of."""
    for node in lines:
        for part in walk(node):
            if isinstance(part, Ratio) and target in part.parts:
                return part.parts
    for node in lines:
        for part in walk(node):
            if isinstance(part, Sum):
                terms = tuple(
                    term.of if isinstance(term, Bracket) else term
                    for term in (part.first, *(term for _, term in part.rest))
                )
                if target in terms and all(op == "+" for op, _ in part.rest):
                    return terms
    return ()


def _is_percent(model: Modelled, _: re.Match[str]) -> bool:
    key = model.key.of if isinstance(model.key, Neg) else model.key
    return isinstance(key, Percent)


def _is_ratio(model: Modelled, _: re.Match[str]) -> bool:
    return isinstance(model.key, Ratio)


def _turns_over(model: Modelled, _: re.Match[str]) -> bool:
    target = model.target
    match target:
        case Frac(Int(1), _):
            return True
        case Product(Int(1), (("÷", _),)):
            return True
    return False


def _never(model: Modelled, match: re.Match[str]) -> bool:
    return False


def _ratio_changes(model: Modelled, _: re.Match[str]) -> bool:
    return model.subtracts() and (model.divides() or model.inverse or model.has(Percent))


_LARGE = r"larg|great|big|high|long|heav|most|more|old|tall|wid|fast|dear|late"
_SIZED = (
    r"(larger|largest|greater|greatest|bigger|biggest|smaller|smallest|lesser|longer|longest|"
    r"shorter|shortest|heavier|heaviest|lighter|lightest|older|oldest|younger|youngest|taller|"
    r"tallest|wider|widest|narrower|higher|highest|lower|lowest|faster|slower)"
)
_ER = (
    r"(?:more|fewer|less|longer|shorter|heavier|lighter|taller|older|younger|warmer|colder|hotter|"
    r"cooler|cheaper|dearer|bigger|smaller|larger|greater|higher|lower|wider|deeper|further|faster|"
    r"slower|earlier|later|quicker)"
)

Rule = tuple[re.Pattern[str], Callable[[Modelled, re.Match[str]], bool], str]


def _rule(pattern: str, fits: Callable[[Modelled, re.Match[str]], bool], says: str) -> Rule:
    return re.compile(pattern, re.I), fits, says


_RULES: tuple[Rule, ...] = (
    _rule(r"\breciprocal\b", _turns_over, "the model does not end with 1 divided by it"),
    _rule(r"\bsquare root\b", lambda m, _: m.has(Root), "there is no root in the model"),
    _rule(r"\b(?:squared|cubed|square of|cube of)\b", lambda m, _: m.has(Power), "there is no power in the model"),
    _rule(r"\b(?:estimat\w*|approximat\w*|roughly|about how)\b", lambda m, _: True, ""),
    _rule(r"\bpercentage (?:increase|decrease|profit|loss|change|rise|fall|reduction|gain)\b", _ratio_changes,
          "the model does not divide a change by what was there before"),
    _rule(r"\b(?:what|which|as a|the) percentage\b", _is_percent, "the key is not a percentage"),
    _rule(r"\b(?:what is|find|give|write|work out|state) the ratio\b", _is_ratio, "the key is not a ratio"),
    _rule(rf"\b(?:how (?:much|many|far|long)|by how (?:much|many)|how many \w+|what)\b[^?]*?\b{_ER}\b(?=.*\bthan\b)",
          _difference, "the model does not end with a difference that the key gives"),
    _rule(rf"\bhow (?:much|many) (?:\w+ )?{_ER}\b(?! than)(?!.*\b(?:needed|need|needs|required)\b)", _difference,
          "the model does not end with a difference that the key gives"),
    _rule(r"\bdifference\b", _difference, "the model does not end with a difference that the key gives"),
    _rule(r"\bhow much change\b|\bwhat change\b|\bthe change\b", _takes_away, "the model takes nothing away"),
    _rule(r"\b(?:left over|left|remain\w*|the rest|unused|unsold|uneaten|spare|still needs?|still to)\b(?! (?:hand|side|of|bus|the))",
          _takes_away, "the model takes nothing away"),
    _rule(r"\b(?:not|n't|never|neither|without|except|other than|apart from)\b", _takes_away,
          "the model takes nothing away"),
    _rule(r"\bremainder\b", _never, "a remainder is not worked out here"),
    _rule(r"\b(?:before the|at first|originally?|to begin with|to start with|at the start)\b", _backwards,
          "the model does not work back to what was there before"),
    _rule(rf"\b{_SIZED} (?:share|part|number|amount|side|piece|angle|one|of the)\b", _extreme,
          "the model does not show that it finds that one"),
    _rule(rf"\bthe {_SIZED}\b", _extreme, "the model does not show that it finds that one"),
    _rule(r"\b(?:at least|at most|minimum|maximum|least|greatest|most|fewest|smallest) (?:possible )?(?:number|amount|length|many)\b",
          _never, "a least or a greatest possible amount is not worked out from a model"),
)  # fmt: skip

_TAKEN = re.compile(
    rf"\b(?:left|remain\w*|rest|difference|change|not|n't|other|others|still|now|empty|unused|unsold|"
    rf"cheaper|{_ER}|decrease\w*|reduc\w*|sale|new|final|end|after|save[sd]?|saving|profit|loss|lose[s]?|"
    r"lost|fall\w*|fell|drop\w*|below|without|short|extra|to go|missing|spare|owe[sd]?|go|stand\w*|"
    r"temperature|third|grow|increase\w*|gain\w*|net|discount\w*|over|free|later|next|remaining|"
    r"need\w*|must|pay\w*|paid|term|position|between|gap|minus|less|age|old|wait\w*|late|early|"
    r"took|take|takes|last|lasts|backs?|return\w*|finish\w*|down|off|out|only|both|neither|angle)\b",
    re.I,
)
"""Words of a question that ask for what is left, or for a difference."""
