"""Whether the options of a choice compute what the question compares: a price each, a time, a speed."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.wording.kinds.carried import Carrier, TooMany, answers_of
from itembank.wording.kinds.kind import Kind, of_thing, of_unit
from itembank.wording.kinds.story_kinds import story_kinds
from itembank.wording.kinds.things_counted import noun_stem
from itembank.wording.meaning.told.tale import late_search
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import slotted
from itembank.wording.sentences.question_sentences import questions

_COST = r"\b(?:cost\w*|cheap\w*|expensive|dear\w*|price\w*)\b"
_EACH = r"\b(?:each|per|every|for an?|one|an? \w+ (?:cheaper|dearer|costs?)|(?:makes?) an? \w+|value|buy|unit|of an? \w+)\b"
_FOR_MONEY = (
    r"\b(?:for|to) (?:each|every|the|a|one) (?:pound|penny|euro|£1)\b|\bper (?:pound|penny)\b"
)


def choice_fault(
    runs: Sequence[Run], options: Mapping[str, t.Node], constants: Sequence[int]
) -> str:
    """Return how the options compute another kind of thing than is compared, or ``""``."""
    asking = questions(runs)
    words = asking[-1] if asking else ""
    text = slotted(runs).text
    values = []
    for node in options.values():
        try:
            values.append(exact(node))
        except t.NotationError:
            return ""
    if any(value < 0 for value in values) and not _prints_minus(runs):
        return "An option comes to less than nothing, and the prompt prints no minus."
    if fault := _taken_off(words, text, options):
        return fault
    kinds = story_kinds(runs)
    carrier = Carrier(kinds, constants)
    found: list[list[Kind]] = []
    for node in options.values():
        try:
            answers = answers_of(carrier.ways((), node))
        except (TooMany, t.NotationError):
            return ""
        if not answers or any(answer.unknowns() for answer in answers):
            return ""
        found.append(answers)
    return _money_fault(words, found) or _measure_fault(words, found)


def _money_fault(words: str, found: list[list[Kind]]) -> str:
    if late_search(_FOR_MONEY, words):
        if all(dict(kind.powers).get("money", 0) >= 0 for kinds in found for kind in kinds):
            return "The question asks for so many for each pound, and the options do not divide by money."
        return ""
    if not late_search(_COST, words):
        return ""
    if not any(dict(kind.powers).get("money", 0) > 0 for kinds in found for kind in kinds):
        return (
            ""
            if any(not kind.powers for kinds in found for kind in kinds)
            else ("The question compares what things cost, and the options are no sums of money.")
        )
    every = late_search(_EACH, words)
    divided = all(any(n < 0 for _, n in kind.powers) for kinds in found for kind in kinds)
    if divided and not every:
        return "The options are prices for each, and the question does not say for each of what."
    return ""


def _taken_off(words: str, text: str, options: Mapping[str, t.Node]) -> str:
    """Return how an option leaves out what its own words take off, or ``""``."""
    if not late_search(_COST, words):
        return ""
    for name, node in options.items():
        own = re.search(rf"{re.escape(name)}\b([^.?!]*)", text)
        takes = any(
            isinstance(part, t.Sum) and any(op == "-" for op, _ in part.rest)
            for part in t.walk(node)
        )
        off = own and re.search(r"\boff\b|\bdiscount\b", own[1], re.I)
        if own and off and not takes and not late_search(r"\bfree\b", own[1]):
            return f"Something is taken off for ‘{name}’, and its option takes nothing away."
    return ""


_WAYS = (
    (
        r"\btakes? (?:longer|the longest|less time|more time|least time|shorter)\b|\blonger time\b|\bmore time\b",
        ({"time": 1},),
    ),
    (
        r"\b(?:faster|fastest|slower|slowest|quicker|quickest)\b",
        ({"length": 1, "time": -1}, {"time": 1}, {"time": -1}, {"time": 1, "length": -1}),
    ),
    (r"\b(?:heavier|heaviest|lighter|lightest)\b", ({"mass": 1},)),
    (r"\b(?:taller|tallest|wider|widest|further|furthest|farther)\b", ({"length": 1},)),
)


def _measure_fault(words: str, found: list[list[Kind]]) -> str:
    for pattern, wanted in _WAYS:
        if not late_search(pattern, words) or late_search(r"\b(?:per|each|every)\b", words):
            continue
        for kinds in found:
            measured = [dict(kind.measures()) for kind in kinds]
            if all(amount and amount not in wanted for amount in measured):
                return "The options are of another kind than the question compares."
    rate = re.search(
        r"\b(?:more|most|fewer|fewest|less|least) (\w+) (?:each|per|every|an?|for each|for every) (\w+)",
        words,
        re.I,
    )
    if rate:
        top, bottom = (_kind(word) for word in rate.groups())
        ratio = top.over(bottom).measures()
        for kinds in found:
            if top.measures() and bottom.measures():
                if all(kind.measures() and kind.measures() != ratio for kind in kinds):
                    return f"The question asks for {rate[1]} for each {rate[2]}, and the options are of another kind."
            elif all(_of(kind, top) < 0 or _of(kind, bottom) > 0 for kind in kinds):
                return f"The question asks for {rate[1]} for each {rate[2]}, and the options are the other way about."
    more = re.search(r"\bmore ([a-z'-]+)\b", words, re.I)
    if more and not late_search(r"\b(?:per|each|every|for)\b", words):
        noun = noun_stem(more[1])
        for kinds in found:
            if any(noun in kind.things() for kind in kinds) and all(
                kind.things().get(noun, 0) < 0 for kind in kinds
            ):
                return f"The question asks for more {more[1]}, and the options divide by them."
    return ""


def _kind(word: str) -> Kind:
    unit = unit_names().get(word.casefold())
    return of_unit(unit) if unit else of_thing(noun_stem(word))


def _of(kind: Kind, base: Kind) -> int:
    """Return the exponent in a kind of what another is made of."""
    (name, size), *_ = base.powers
    return dict(kind.powers).get(name, 0) * (1 if size > 0 else -1)


def _prints_minus(runs: Sequence[Run]) -> bool:
    for run in runs:
        if not isinstance(run, str):
            try:
                if exact(run) < 0:
                    return True
            except t.NotationError:
                return True
    return False
