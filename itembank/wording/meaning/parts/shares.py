"""Ratios: the whole, a part or a difference is given, and one of them is asked for."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Number, Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT, index_of
from itembank.wording.story.asked.parts_named import mentions, names_in_ratio

_MIXED = late(
    r"\b(?:mix(?:es|ed)?|blends?|combines?|made (?:from|of|with)|contains?|of)(?: from| of| with)? ([\w-]+)(?: \w+)? and ([\w-]+)(?: \w+)?,? (?:are )?"
    r"(?:mixed )?in (?:the|a) ratio\b",
    re.I,
)
_THREE = late(
    r"\b(?:has|have|contains?|of|mixes|sells|holds) ([\w-]+), ([\w-]+),? and ([\w-]+),? (?:are )?in the ratio\b",
    re.I,
)
_ORDINALS = ("first", "second", "third", "fourth")
_ALL = r"\b(?:how much (?:is|was|were) (?:the|their) (?:whole |full |total )?(?:prize|reward|bonus|bill|winnings)|altogether|in total|in all|total|mixture|members|pupils|people|together|whole|(?:do|did) they (?:share|have|get|collect|win))\b"


def share_reading(tale: Tale) -> Reading | None:
    """Return what a story of one ratio comes to by its words."""
    found = [
        m
        for m in re.finditer(SLOT, tale.text)
        if isinstance(tale.said.nodes[index_of(m[0])], t.Ratio)
    ]
    if not found:
        return _in_parts(tale)
    if len(found) != 1 or tale.asks_for(r"\b(?:ratio|fraction|percentage|area|perimeter|angle)\b"):
        return None
    node = tale.said.nodes[index_of(found[0][0])]
    if not isinstance(node, t.Ratio) or t.symbols(node) or found[0][0] in tale.question:
        return None
    parts = [exact(part) for part in node.parts]
    amounts = [n for n in tale.numbers if not (n.in_words and n.value == len(parts))]
    if len(amounts) != 1 or late_search(r"\b(?:map|plan|scale|model|angles?)\b", tale.text):
        return None
    if late_search(r"\b(?:perimeter|sides?|rectang\w+|gives?|spends?|then|now|after)\b", tale.text):
        return None
    (amount,) = amounts
    words = re.sub(SLOT, "…", tale.told)
    names = names_in_ratio(words)
    if not names and (three := _THREE.search(words)):
        names = three.groups()
    if not names and (mixed := _MIXED.search(words)):
        names = (mixed[1], mixed[2])
    if len(names) != len(parts):
        names = ()
    unit = _unit(tale, amount, parts, names)
    if unit is None:
        return None
    value = _asked(tale, parts, names, unit)
    return None if value is None else reads("the parts stand in the order of their names", value)


_PARTS = late(
    rf"for every ({SLOT}) ([a-z]+)[^.]*?,? there (?:are|is) ({SLOT}) ([a-z]+)|"
    rf"({SLOT}) parts? (?:of )?([a-z]+)[\w ]*? (?:to|and|with|for every) ({SLOT}) parts? (?:of )?([a-z]+)",
    re.I,
)


def _in_parts(tale: Tale) -> Reading | None:
    """Return what is asked of a mixture of so many parts to so many parts."""
    match = _PARTS.search(tale.told)
    if match is None or tale.asks_for(r"\b(?:ratio|fraction|percentage)\b"):
        return None
    first, two = (tale.get(match, a) or tale.get(match, b) for a, b in ((1, 5), (3, 7)))
    others = [n for n in tale.numbers if n not in (first, two)]
    if first is None or two is None or len(others) != 1:
        return None
    parts, names = [first.value, two.value], (match[2] or match[6], match[4] or match[8])
    (amount,) = others
    after = re.sub(r"^(?:\w+ )?of (?:the |this )?", "", amount.after)
    places = _place(after, names, 2)
    if len(places) == 1:
        unit = amount.value / parts[places[0]]
    elif not places and after:
        unit = amount.value / sum(parts)
    else:
        return None
    asked = tale.question.replace(amount.char + " " + amount.after, " ")
    wanted = _place(asked.split(amount.char)[0], names, 2)
    if not wanted and tale.asks_for(r"\b(?:altogether|in total|in all|total|people)\b"):
        return reads("the parts make the whole together", sum(parts, Fraction(0)) * unit)
    if len(wanted) == 1:
        return reads("the parts make the whole together", parts[wanted[0]] * unit)
    return None


def _place(words: str, names: tuple[str, ...], count: int) -> list[int]:
    named = [i for i, name in enumerate(names) if mentions(words, name)]
    if named:
        return named
    return [i for i in range(min(count, 4)) if late_search(rf"\bthe {_ORDINALS[i]}\b", words)]


def _unit(
    tale: Tale, amount: Number, parts: list[Fraction], names: tuple[str, ...]
) -> Fraction | None:
    """Return how much one part is: the amount is of all, of one, or of a difference."""
    clause = tale.question if tale.asked(amount) else tale.clause_of(amount)
    sized = re.search(
        r"\bthe (shorter|smaller|lesser|lighter|longer|larger|bigger|greater|heavier) (?:piece|part|share|amount|one)\b",
        clause,
        re.I,
    )
    if len(parts) == 2 and sized and not tale.asked(amount):
        low = sized[1].lower() in ("shorter", "smaller", "lesser", "lighter")
        return amount.value / (min(parts) if low else max(parts))
    if len(parts) == 2 and late_search(
        r"^(?:\w+ ){0,2}(?:more|fewer|less|older|longer|heavier)\b", amount.after
    ):
        return amount.value / abs(parts[0] - parts[1])
    of_all = re.match(r"(?:\w+ )?of (?:the|this) ([\w-]+)", amount.after)
    if tale.asked(amount) and of_all and names and not _place(of_all[1], names, len(parts)):
        return amount.value / sum(parts)
    made = rf"\b(?:to make|make|to mix) {amount.char}"
    of_none = names and not _place(amount.after, names, len(parts))
    if tale.asked(amount) and of_none and late_search(made, tale.question):
        return amount.value / sum(parts)
    if tale.asked(amount):
        places = _place(amount.after, names, len(parts))
        return amount.value / parts[places[0]] if len(places) == 1 else None
    sentence = tale.sentence_of(amount)
    if late_search(r"\bratio\b", sentence) and late_search(r"\b(?:share|divid|split)", sentence):
        return amount.value / sum(parts)
    of_what = re.match(r"(?:\w+ )?of (?:the|this) ([\w-]+)", amount.after)
    if of_what and names and not _place(of_what[1], names, len(parts)):
        return amount.value / sum(parts)
    places = _place(clause, names, len(parts))
    if len(places) == 1 and not late_search(_ALL, clause):
        return amount.value / parts[places[0]]
    if re.match(
        r"(?:it|they|this) (?:weighs?|holds?|costs?|is|has|have|contains?|makes?|measures?)\b",
        sentence.strip(),
        re.I,
    ):
        return amount.value / sum(parts)
    whole = names and re.match(r"(?:there are|it has|they have)\b", sentence.strip(), re.I)
    if not places and (
        late_search(_ALL, clause)
        or (whole and amount.after)
        or late_search(r"\b(?:share|divid|split)", clause)
    ):
        return amount.value / sum(parts)
    return None


def _asked(
    tale: Tale, parts: list[Fraction], names: tuple[str, ...], unit: Fraction
) -> Fraction | None:
    words = tale.question
    amount_chars = re.sub(SLOT + r" (?:of )?[\w'-]+(?: of [\w'-]+)?", " ", words)
    if late_search(r"\bhow (?:much|many) (?:\w+ )?(?:more|fewer|less)\b|\bdifference\b", words):
        if len(parts) == 2:
            return abs(parts[0] - parts[1]) * unit
        places = _place(amount_chars, names, len(parts))
        return abs(parts[places[0]] - parts[places[1]]) * unit if len(places) == 2 else None
    if late_search(r"\b(?:larger|largest|bigger|greater|greatest|biggest)\b", words):
        return max(parts) * unit
    if late_search(r"\b(?:smaller|smallest|least|lesser)\b", words):
        return min(parts) * unit
    if late_search(r"\beach\b.*\bon average\b|\bmean\b", words):
        return sum(parts, Fraction(0)) * unit / len(parts)
    sized = (
        r"\b(?:how long (?:was|is|were)|what (?:was|is) the length of) the (?!shorter|longer)\w+"
    )
    if late_search(sized, words) and late_search(r"\bpieces?\b", tale.told):
        return sum(parts, Fraction(0)) * unit
    places = _place(amount_chars, names, len(parts))
    if late_search(_ALL, amount_chars) and len(places) != 1:
        return sum(parts, Fraction(0)) * unit
    if len(places) == 1 and not late_search(r"\bnot\b|n't|\bother|\beach\b", words):
        if late_search(
            r"\b(?:altogether|in total|in all|mixture)\b", amount_chars
        ) and not late_search(r"\bin\b", amount_chars):
            return sum(parts, Fraction(0)) * unit
        return parts[places[0]] * unit
    return None
