"""Sequences: a term, its position, a sum or a difference of terms, the step."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise

from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.numbers_said import ORDINALS
from itembank.wording.sentences.prompt import SLOT

_PLACE = late(
    rf"({SLOT}) ?(?:st|nd|rd|th) (?:term|pattern|shape|row|number|picture|day|week)\b", re.I
)
_ORDINAL = late(rf"\b({'|'.join(ORDINALS)}) (?:term|pattern|shape|row|number|picture)\b", re.I)
_ROW = late(rf"\b(?:row|pattern|position|rows|patterns|term) ({SLOT})", re.I)
_UP = r"(?:goes|going|go|increases|rises) up by|(?:rule|rule is|by) (?:is )?(?:to )?add(?:ing)?|adds?|adding|increases by|common difference (?:is|of)"
_DOWN = r"(?:goes|going|go) down by|(?:rule is )?(?:to )?(?:subtract(?:ing)?|take away|taking away)|decreases by"
_TIMES = r"(?:rule is )?(?:to )?(?:multipl(?:y|ying) by|times by)|each term is"
_START = late(
    rf"\b(?:starts?(?: at| with| from)?|first term (?:of [\w ]+ )?is|first number is|begins? (?:at|with)) ({SLOT})",
    re.I,
)


def sequence_reading(tale: Tale) -> Reading | None:
    """Return the term, position or step that a story of a sequence asks for."""
    if (extra := _extra(tale) or _each_more(tale)) is not None:
        return extra
    if not late_search(r"\b(?:sequence|terms?|nth|row n|pattern n|rows?|pattern)\b", tale.text):
        return None
    return _listed(tale) or _by_rule(tale) or _by_step(tale) or _by_two_terms(tale)


_FIRST = late(
    rf"\b(?:the )?first (?:\w+ )?(?:\w+ )?(?:is|costs?|has|uses|takes|needs|seats|holds) ({SLOT})|\b(?:one|a single) \w+ (?:is|costs?|has|uses|takes|needs|seats|holds) ({SLOT})|({SLOT})(?: [a-z]+){{0,4}} for (?:the first|one)\b",
    re.I,
)
_EXTRA = late(
    rf"\b(?:each|every) (?:extra|other|further|additional|more|new) \w+ (?:adds|costs?|is|uses|takes|needs|has) (?:another |a further |an extra )?({SLOT})|"
    rf"({SLOT})(?: [a-z]+){{0,2}} for (?:each|every) (?:extra|further|additional|other|one after)",
    re.I,
)


def _extra(tale: Tale) -> Reading | None:
    """Return so much for the first and so much more for each extra one: the first is no extra."""
    first, extra = _FIRST.search(tale.told), _EXTRA.search(tale.told)
    if first is None or extra is None or len(tale.numbers) != 3:
        return None
    start, step = (
        tale.get(first, 1) or tale.get(first, 2) or tale.get(first, 3),
        tale.get(extra, 1) or tale.get(extra, 2),
    )
    count = next((n for n in tale.numbers if n not in (start, step)), None)
    if start is None or step is None or count is None or start.measure != step.measure:
        return None
    if not tale.asked(count) or tale.asks_for(r"\b(?:extra|more|which|each)\b"):
        return None
    span = {"time": 86400, "calendar time": 12}.get(count.measure, 1)
    if count.measure == "time" and not count.after.startswith("day"):
        return None
    n = count.value / span
    return reads("the first is no extra one", start.value + (n - 1) * step.value)


_IN_FIRST = late(
    rf"({SLOT}) [a-z]+ (?:in|on|for) (?:the first (?P<a>\w+)|(?P<b>row|pattern|stage|shape|level|line|term) (?:1|{SLOT}))\b",
    re.I,
)
_EACH_MORE = late(
    rf"\beach (?:\w+ )?(?:has|uses|needs|is made of|contains) ({SLOT}) more\b[^.]*\bthan\b", re.I
)


def _each_more(tale: Tale) -> Reading | None:
    """Return a term where the first is given, and each has so many more than the one before."""
    first, more = _IN_FIRST.search(tale.told), _EACH_MORE.search(tale.told)
    if first is None or more is None:
        return None
    start, step = tale.get(first, 1), tale.get(more, 1)
    places = _places(tale, tale.question)
    if start is None or step is None or len(places) != 1:
        return None
    if tale.asks_for(r"\b(?:total|altogether|sum|in all|which)\b"):
        return None
    return reads("the first has no step before it", start.value + (places[0] - 1) * step.value)


def _places(tale: Tale, words: str) -> list[Fraction]:
    found = [
        (m.start(), tale.by_char[m[1]].value)
        for m in _PLACE.finditer(words)
        if m[1] in tale.by_char
    ]
    found += [
        (m.start() + 1, tale.by_char[m[1]].value)
        for m in re.finditer(
            rf"\b(?:rows|patterns|terms|positions) {SLOT} (?:to|and) ({SLOT})", words
        )
        if m[1] in tale.by_char
    ]
    found += [
        (m.start(), tale.by_char[m[1]].value) for m in _ROW.finditer(words) if m[1] in tale.by_char
    ]
    found += [(m.start(), Fraction(ORDINALS[m[1].lower()])) for m in _ORDINAL.finditer(words)]
    return [value for _, value in sorted(found)]


_POSITION = r"\b(?:which (?:term|position|pattern|row)|what position|position\b|term number)\b"


def _by_rule(tale: Tale) -> Reading | None:
    rules = [
        node
        for node in tale.said.nodes
        if t.symbols(node) and not isinstance(node, t.Relation | t.Sym)
    ]
    if len(rules) != 1 or not late_search(
        rf"(?:\bn\s?|{SLOT})th term\b|\brow n\b|\bpattern n\b|\bterm n\b", tale.text
    ):
        return None
    (rule,) = rules
    if len(t.symbols(rule)) != 1:
        return None
    places = _places(tale, tale.question)
    values = [n.value for n in tale.numbers]
    if tale.asks_for(
        r"\bfirst\b.*\b(?:greater|more|bigger|larger|over|exceed\w*|above|less|below|negative|under)\b|\blast\b"
    ):
        return _first_beyond(tale, rule, values)
    if len(places) == 2:
        a, b = (_at(rule, n) for n in places)
        if a is None or b is None:
            return None
        if tale.asks_for(r"\b(?:sum|total|altogether|in all|added|rows \S+ to)\b"):
            if tale.asks_for(r"\b(?:rows|terms|patterns) \S+ to \S+"):
                low, high = sorted(places)
                every = [
                    _at(rule, Fraction(n))
                    for n in range(int(low), min(int(high), int(low) + 500) + 1)
                ]
                known = [value for value in every if value is not None]
                return reads("all of the terms from the one to the other", sum(known, Fraction(0)))
            return reads("the terms added", a + b)
        if tale.asks_for(r"\b(?:more|fewer|difference|less)\b"):
            return reads("the one term less the other", abs(a - b))
        return None
    if len(places) == 1 and not tale.asks_for(_POSITION):
        if len(values) != (0 if late_search(_ORDINAL_ONLY, tale.question) else 1):
            return None
        return reads("the term that stands in that place", _at(rule, places[0]))
    if not places and tale.asks_for(_POSITION) and len(values) == 1:
        return reads("the place of the term that is given", _place_of(rule, values[0]))
    return None


_ORDINAL_ONLY = rf"\b(?:{'|'.join(ORDINALS)}) (?:term|pattern|row)\b"


def _at(rule: t.Node, n: Fraction) -> Fraction | None:
    from itembank.notation.linear import linear
    from itembank.notation.value import NotExact

    try:
        form = linear(rule, {next(iter(t.symbols(rule))): n})
    except NotExact:
        return None
    return (
        form.get("", Fraction(0)) if not any(name for name in form if name and form[name]) else None
    )


def _place_of(rule: t.Node, value: Fraction) -> Fraction | None:
    zero, first, two = (_at(rule, Fraction(n)) for n in (0, 1, 2))
    if zero is None or first is None or two is None or two - first != first - zero or first == zero:
        return None
    return (value - zero) / (first - zero)


def _first_beyond(tale: Tale, rule: t.Node, values: list[Fraction]) -> Reading | None:
    bound = values[0] if len(values) == 1 else Fraction(0)
    if len(values) > 1 or not tale.asks_for(r"\bfirst\b"):
        return None
    up = tale.asks_for(r"\b(?:greater|more|bigger|larger|over|exceed\w*|above)\b")
    for n in range(1, 2000):
        term = _at(rule, Fraction(n))
        if term is None:
            return None
        if (term > bound) if up else (term < bound):
            asks_place = tale.asks_for(_POSITION)
            return reads("the first that goes beyond it", Fraction(n) if asks_place else term)
    return None


def _by_step(tale: Tale) -> Reading | None:
    start = _START.search(tale.told)
    if start is None or any(t.symbols(node) for node in tale.said.nodes):
        return None
    first = tale.get(start, 1)
    steps = [
        (sign, tale.by_char[m[1]].value)
        for sign, pattern in ((1, _UP), (-1, _DOWN), (0, _TIMES))
        for m in re.finditer(rf"\b(?:{pattern}) ({SLOT})", tale.told, re.I)
        if m[1] in tale.by_char
    ]
    steps += [
        (1 if m["way"].lower() == "more" else -1, tale.by_char[m[1]].value)
        for m in re.finditer(
            rf"each (?:term|number) is ({SLOT}) (?P<way>more|less) than", tale.told, re.I
        )
        if m[1] in tale.by_char
    ]
    if first is None or len(steps) != 1:
        return None
    sign, step = steps[0]
    places = _places(tale, tale.question)
    count = len(tale.numbers)
    if len(places) == 1 and not tale.asks_for(_POSITION) and count in (2, 3):
        n = places[0]
        if (
            n.denominator != 1
            or not 0 < n < 200
            or tale.asks_for(r"\b(?:sum|more|difference|add)\b")
        ):
            return None
        value = (
            first.value * step ** int(n - 1) if sign == 0 else first.value + sign * step * (n - 1)
        )
        return reads("the first term has no step before it", value)
    if not places and tale.asks_for(_POSITION) and count == 3 and sign:
        value = tale.numbers[-1].value
        return reads(
            "the place of the term that is given", (value - first.value) / (sign * step) + 1
        )
    return None


_LIST = late(rf"\bsequence\b[^.?]*?({SLOT}), ({SLOT}), ({SLOT})((?:, {SLOT})*)", re.I)


def _listed(tale: Tale) -> Reading | None:
    """Return a later term of a sequence whose first terms are listed and go up by one step."""
    match = _LIST.search(tale.told)
    places = _places(tale, tale.question)
    if match is None or len(places) != 1 or tale.asks_for(r"\b(?:sum|more|difference|which)\b"):
        return None
    terms = [tale.by_char.get(char) for char in re.findall(SLOT, match[0])]
    values = [term.value for term in terms if term is not None]
    steps = {b - a for a, b in pairwise(values)}
    if len(values) != len(terms) or len(steps) != 1:
        return None
    return reads("the first term has no step before it", values[0] + (places[0] - 1) * steps.pop())


_TERM_IS = late(rf"({SLOT}) ?(?:st|nd|rd|th) (?:term|number) is ({SLOT})", re.I)


def _by_two_terms(tale: Tale) -> Reading | None:
    found = [(tale.get(m, 1), tale.get(m, 2)) for m in _TERM_IS.finditer(tale.told)]
    if len(found) != 2 or not late_search(
        r"\bsame amount\b|\barithmetic\b|\blinear\b|\bconstant", tale.told
    ):
        return None
    (a, x), (b, y) = found
    if a is None or b is None or x is None or y is None or a.value == b.value:
        return None
    step = (y.value - x.value) / (b.value - a.value)
    if tale.asks_for(r"\b(?:step|common difference|goes? up by|amount)\b"):
        return reads("the step from each term to the next", step)
    places = _places(tale, tale.question)
    if len(places) == 1:
        return reads("the term that stands in that place", x.value + (places[0] - a.value) * step)
    return None
