"""Words of a question that change which number is the answer, each with what a model must do.

*More than*, *altogether*, *the largest*, *a reciprocal*: a row of the table holds the words, a test
of the model, and what is said where it fails.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled


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


def _less_each(model: Modelled, _: re.Match[str]) -> bool:
    """Whether a model of the form 180° less angles takes each of them away."""
    target = model.target
    return not isinstance(target, t.Sum) or all(op == "-" for op, _ in target.rest)


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

MORE_OR_LESS = (
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
    _rule(rf"\b(?:how (?:much|many|far|long)|by how (?:much|many)|how many \w+|what)\b[^?]*?\b{MORE_OR_LESS}\b(?=.*\bthan\b)",
          _difference, "the model does not end with a difference of two amounts that the key gives"),
    _rule(rf"\bhow (?:much|many) (?:\w+ )?{MORE_OR_LESS}\b(?! than)(?!.*\b(?:needed|need|needs|required)\b)", _difference,
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
    _rule(r"\bperimeter\b(?!.*\b(?:more|less|longer|shorter|difference)\b)", lambda m, _: m.inverse or not m.subtracts(),
          "the model takes a length away"),
    _rule(r"\b(?:third|fourth|other|remaining|missing|last) angle\b", _less_each,
          "the model does not take away every angle that is known"),
    _rule(r"\bnext\b.*\b(?:same|together|at once)\b", _never, "that is a common multiple, and no model finds one"),
    _rule(r"\bremainder\b", _never, "a remainder is not worked out here"),
    _rule(rf"\b{_SIZED} (?:share|part|number|amount|side|piece|angle|one|of the)\b", _extreme,
          "the model does not show that it finds that one"),
    _rule(rf"\bthe {_SIZED}\b", _extreme, "the model does not show that it finds that one"),
    _rule(r"\b(?:at least|at most|minimum|maximum|least|greatest|most|fewest|smallest) (?:possible )?(?:number|amount|length|many)\b",
          _never, "a least or a greatest possible amount is not worked out from a model"),
)  # fmt: skip


def rule_fault(model: Modelled, words: str) -> str:
    """Return the word of a question that its model does not fit, with the reason, or ``""``."""
    for pattern, fits, says in _RULES:
        if (match := pattern.search(words)) and not fits(model, match):
            return f"The words ask for ‘{match[0].strip()}’, but {says}."
    return ""
