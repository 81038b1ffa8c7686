"""Holds what a story's question asks to the model: left over, the larger share, how much more.

The words here change which number is the answer. For each there is something that a model must
do if it answers that question; where it does not, a person decides, and the word is named. The
other way about, a model that takes away at the end must be asked for something that is left,
lost, or a difference.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.clock import times_in
from itembank.text.late_pattern import late
from itembank.wording.kinds.kind_asked import kind_fault
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.story.bound import bound_fault
from itembank.wording.story.conditions import shape_fault
from itembank.wording.story.direction import before_fault, direction_fault
from itembank.wording.story.facts import fact_fault
from itembank.wording.story.named import mentions, other_part, part_named_fault, ratio_order_fault
from itembank.wording.story.parts import asks_other_part, names_what_is_taken, part_fault


def asked_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return what the question asks that the model does not do, as a sentence, or ``""``."""
    asking = questions(runs)
    if not asking:
        return "The words do not ask for anything that is understood: end with a question."
    if len(asking) > 1 and not _one_in_two(asking):
        return f"Two things are asked for: ‘{_readable(asking[1])}’ is one too many."
    words = _readable(asking[-1])
    if _TWO.search(words):
        return f"Two things are asked for in one sentence: ‘{words}’."
    money = any(
        isinstance(part, t.Money)
        for run in runs
        if not isinstance(run, str)
        for part in t.walk(run)
    )
    for fault in (
        other_part(runs, model, _GOES_WITH.sub("", _CONDITION.sub("", words))),
        ratio_order_fault(runs, model, words),
        part_named_fault(runs, model, words),
        part_fault(runs, model, words),
        kind_fault(model.key, words, money),
        bound_fault(runs, model, words),
        _the_rest(runs, model, words),
        shape_fault(runs, model, words),
        fact_fault(runs, model, words),
        direction_fault(runs, model),
        before_fault(runs, model, words),
        _free(runs, model),
    ):
        if fault:
            return fault
    for pattern, fits, says in _RULES:
        if (match := pattern.search(words)) and not fits(model, match):
            return f"The words ask for ‘{match[0].strip()}’, but {says}."
    if (
        _PART_OF.search(words)
        and not _NOT.search(words)
        and not model.inverse
        and (named := names_what_is_taken(runs, model, words))
    ):
        return f"The model takes away what the question asks about: ‘{named}’."
    if (
        model.ends_by_subtracting()
        and not _takes_as_asked(model.target, words)
        and (_is_of_times(model.target) or _asks_for_what_is_taken(runs, model, words))
    ):
        return (
            "The model ends by taking away, but the question does not say that it asks for what "
            f"is left, or for a difference: ‘{words}’."
        )
    return ""


# If there are 21 litres of blue paint, how many litres of red are there: red is asked for.
# How much butter is needed with 400 g of flour: butter is asked for.
_GOES_WITH = late(
    r"\b(?:with|to go with|for|using) (?:every |each )?… of [a-z-]+(?=$| in the\b)", re.I
)
_CONDITION = late(
    r"^(?:if|when|given that|since) [^,]*, (?=(?:how|what|which|find|work out|calculate)\b)", re.I
)
_PART_OF = late(r"\b(?:what|which) (?:fraction|percentage) of\b", re.I)
_NOT = late(r"\b(?:not|n't|never|neither|left|remain\w*|other|others|else|un\w+|without)\b", re.I)
_HOW_LONG = late(
    r"\b(?:how long|how much time|how many (?:hours|minutes|seconds)|(?:length|amount) of time)\b",
    re.I,
)
_BEFORE = late(
    r"\b(?:(?:start|begin|beg[au]n|leave|left|set|go|went|depart)\w*|latest|before)\b", re.I
)


def _is_of_times(target: t.Node | None) -> bool:
    return isinstance(target, t.Sum) and times_in(target) is not None


def _asks_for_what_is_taken(runs: Sequence[Run], model: Modelled, words: str) -> bool:
    if _names_the_rest(runs, words) or asks_other_part(runs, model, words):
        return False
    return bool(names_what_is_taken(runs, model, words))


def _takes_as_asked(target: t.Node | None, words: str) -> bool:
    """Tell whether the words ask for what is left, or of times how long, or when it began."""
    times = times_in(target) if isinstance(target, t.Sum) else None
    pattern = {0: _HOW_LONG, 1: _BEFORE, None: _TAKEN}.get(times, _TAKEN)
    return bool(pattern.search(words))


_TWO = late(
    r"\band (?:also )?(?:how (?:much|many|far|long)|what|which|find|work out|write down|when|where)\b",
    re.I,
)


def _the_rest(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return what is wrong where what *the rest* is, is asked for and nothing is taken away."""
    text = " ".join(run for run in runs if isinstance(run, str))
    match = re.search(r"\bthe (?:rest|others?) (?:is|are|was|were) ([\w-]+)", text, re.I)
    if match and mentions(words, match[1]) and not model.subtracts() and not model.has(t.Ratio):
        return f"The question asks for the rest, which are {match[1]}, and the model takes nothing away."
    return ""


def _names_the_rest(runs: Sequence[Run], words: str) -> bool:
    """Whether the question names what *the rest are* in the story."""
    text = " ".join(run for run in runs if isinstance(run, str))
    found = re.findall(r"\b(?:the )?(?:rest|others?) (?:is|are|was|were) ([\w-]+)", text, re.I)
    return any(mentions(words, name) for name in found)


def _free(runs: Sequence[Run], model: Modelled) -> str:
    """Return what is wrong where something is free and the model leaves nothing out."""
    words = " ".join(run for run in runs if isinstance(run, str))
    if re.search(r"\bfree\b", words, re.I) and not model.subtracts() and not model.divides():
        return "The words say that something is free, and the model takes nothing away for it."
    return ""


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
    if not model.ends_by_subtracting() or _is_complement(model.target):
        return False
    worth = model.worth(model.key)
    return worth is None or worth > 0


def _not_a_total(model: Modelled, _: re.Match[str]) -> bool:
    """Whether what is found is no plain sum of amounts, which is no change."""
    target = model.target
    return not (isinstance(target, t.Sum) and all(op == "+" for op, _ in target.rest))


def _is_complement(target: t.Node | None) -> bool:
    """Whether a target is a whole less a part of itself: what is left, and no difference of two."""
    match target:
        case t.Sum(first, (("-", t.Product() as part),)):
            return first in (part.first, *(factor for _, factor in part.rest))
    return False


def _whole_group(model: Modelled, match: re.Match[str]) -> bool:
    """Whether *altogether* may be what is found: no letter that the model counts several times."""
    target = model.target
    less = re.search(
        r"\b(?:left|remain\w*|change|more|fewer|less|not|save[sd]?)\b|n't", match.string
    )
    if not model.inverse and model.ends_by_subtracting() and not less:
        return not (isinstance(target, t.Sum) and isinstance(target.first, t.Product | t.Bracket))
    if not model.inverse or not isinstance(target, t.Sym):
        return True
    return not any(
        isinstance(part, t.Juxt) and target in t.walk(part) and isinstance(part.factors[0], t.Int)
        for part in model.parts()
    )


def _not_before(model: Modelled, _: re.Match[str]) -> bool:
    """Whether *now* may be what is found: not a letter to which the model adds something."""
    target = model.target
    return not (
        isinstance(target, t.Sym)
        and any(
            isinstance(part, t.Bracket) and isinstance(part.of, t.Sum) and target in t.walk(part)
            for part in model.parts()
        )
    )


def _takes_away(model: Modelled, _: re.Match[str]) -> bool:
    return model.subtracts() or (model.inverse and _found_in_a_sum(model))


def _found_in_a_sum(model: Modelled) -> bool:
    return any(
        isinstance(part, t.Sum)
        for node in model.lines
        if isinstance(node, t.Relation)
        for part in t.walk(node)
    )


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


def _group_of(target: t.Node, lines: Sequence[t.Node]) -> tuple[t.Node, ...]:
    """Return the amounts of a sum, a ratio or a list of the model that `target` is one of."""
    for node in lines:
        for part in t.walk(node):
            if isinstance(part, t.Ratio) and target in part.parts:
                return part.parts
    for node in lines:
        for part in t.walk(node):
            if isinstance(part, t.Sum):
                terms = tuple(
                    term.of if isinstance(term, t.Bracket) else term
                    for term in (part.first, *(term for _, term in part.rest))
                )
                if target in terms and all(op == "+" for op, _ in part.rest):
                    return terms
    return ()


def _is_percent(model: Modelled, _: re.Match[str]) -> bool:
    key = model.key.of if isinstance(model.key, t.Neg) else model.key
    return isinstance(key, t.Percent)


def _is_ratio(model: Modelled, _: re.Match[str]) -> bool:
    return isinstance(model.key, t.Ratio)


def _turns_over(model: Modelled, _: re.Match[str]) -> bool:
    target = model.target
    match target:
        case t.Frac(t.Int(1), _):
            return True
        case t.Product(t.Int(1), (("÷", _),)):
            return True
    return False


def _never(model: Modelled, match: re.Match[str]) -> bool:
    return False


def _ratio_changes(model: Modelled, _: re.Match[str]) -> bool:
    return model.divides() or model.inverse or (model.subtracts() and model.has(t.Percent))


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
    return late(pattern, re.I), fits, says


_RULES: tuple[Rule, ...] = (
    _rule(r"\breciprocal\b", _turns_over, "the model does not end with 1 divided by it"),
    _rule(r"\bsquare root\b", lambda m, _: m.has(t.Root), "there is no root in the model"),
    _rule(r"\b(?:squared|cubed|square of|cube of)\b", lambda m, _: m.has(t.Power), "there is no power in the model"),
    _rule(r"\b(?:estimat\w*|approximat\w*|roughly|about how)\b", lambda m, _: True, ""),
    _rule(r"\bpercentage (?:increase|decrease|profit|loss|change|rise|fall|reduction|gain)\b", _ratio_changes,
          "the model does not divide a change by what was there before"),
    _rule(r"\b(?:what|which|as a|the) percentage\b", _is_percent, "the key is not a percentage"),
    _rule(r"\b(?:what is|find|give|write|work out|state) the ratio\b", _is_ratio, "the key is not a ratio"),
    _rule(rf"\b(?:how (?:much|many|far|long)|by how (?:much|many)|how many \w+|what)\b[^?]*?\b{_ER}\b(?=.*\bthan\b)",
          _difference, "the model does not end with a difference of two amounts that the key gives"),
    _rule(rf"\bhow (?:much|many) (?:\w+ )?{_ER}\b(?! than)(?!.*\b(?:needed|need|needs|required)\b)", _difference,
          "the model does not end with a difference of two amounts that the key gives"),
    _rule(r"\bthe (?:sum|total)\b(?! (?:cost|price|number|amount|length|mass|time|distance)\b)",
          lambda m, _: m.inverse or not m.ends_by_subtracting(), "the model ends by taking away"),
    _rule(r"^by how (?:much|many)\b", _not_a_total, "the model only adds"),
    _rule(r"\bdifference\b", _difference, "the model does not end with a difference of two amounts that the key gives"),
    _rule(r"\b(?:altogether|in total|in all)\b", _whole_group,
          "the model finds one of several that it counts"),
    _rule(r"\b(?:now|afterwards|in the end|at the end)\b", _not_before,
          "the model finds what there was before something was added"),
    _rule(r"\b(?:keeps?|kept|still|other|others|empty|unsold|to spare)\b(?! than)", _takes_away,
          "the model takes nothing away"),
    _rule(r"\bhow much change\b|\bwhat change\b|\bthe change\b", _takes_away, "the model takes nothing away"),
    _rule(r"\b(?:left over|left|remain\w*|the rest|unused|unsold|uneaten|spare|still needs?|still to)\b(?! (?:hand|side|of|bus|the))",
          _takes_away, "the model takes nothing away"),
    _rule(r"\b(?:not|n't|never|neither|without(?! (?:any )?(?:brackets|a calculator|units?|using|simplifying|working))|except|other than|apart from)\b", _takes_away,
          "the model takes nothing away"),
    _rule(r"\bremainder\b", _never, "a remainder is not worked out here"),
    _rule(rf"\b{_SIZED} (?:share|part|number|amount|side|piece|angle|one|of the)\b", _extreme,
          "the model does not show that it finds that one"),
    _rule(rf"\bthe {_SIZED}\b", _extreme, "the model does not show that it finds that one"),
    _rule(r"\b(?:at least|at most|minimum|maximum|least|greatest|most|fewest|smallest) (?:possible )?(?:number|amount|length|many)\b",
          _never, "a least or a greatest possible amount is not worked out from a model"),
)  # fmt: skip

_TAKEN = late(
    rf"\b(?:left|remain\w*|rest|difference|change|not|n't|other|others|still|now|empty|unused|unsold|"
    rf"cheaper|{_ER}|decrease\w*|reduc\w*|sale|new|final|end|after|save[sd]?|saving|profit|loss|lose[s]?|"
    r"lost|fall\w*|fell|drop\w*|below|without|short|extra|to go|missing|spare|owe[sd]?|go|stand\w*|"
    r"temperature|third|fourth|fifth|sixth|grow|increase\w*|gain\w*|net|discount\w*|over|free|later|next|remaining|"
    r"need\w*|must|pay\w*|paid|term|position|between|gap|minus|less|age|old|wait\w*|late|early|"
    r"took|take|takes|last|lasts|backs?|return\w*|finish\w*|down|off|out|only|both|neither|angle)\b",
    re.I,
)
"""Words of a question that ask for what is left, or for a difference."""
