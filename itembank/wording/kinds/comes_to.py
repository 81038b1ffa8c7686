"""Whether the answer of a model is of the kind that the question asks for.

*How many kilometres does it go on one litre?* is not answered by litres for each kilometre. The
kinds that the words give to the numbers are carried through the model, and what comes out is held
to the question, to the size of its unit: litres a minute are no litres a second.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.kinds.carried import Carrier, TooMany, answers_of
from itembank.wording.kinds.kind import Kind, kind_words, of_unit
from itembank.wording.kinds.kind_wanted import Wanted, wanted_kinds
from itembank.wording.kinds.story_kinds import StoryKinds, story_kinds
from itembank.wording.kinds.things_counted import plural, unit_at_start
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.sentences.question_sentences import questions


@dataclass(frozen=True, slots=True)
class ComesTo:
    """What a model comes to: a fault in words, or the values it may stand for.

    `values` are what the model comes to, in its own units and in base units; none where it is
    not known.
    """

    fault: str
    values: frozenset[Fraction] = frozenset()


def comes_to(runs: Sequence[Run], model: Modelled, constants: Sequence[int]) -> ComesTo:
    """Return what a model comes to, and how that is another kind of thing than is asked for."""
    target = model.target
    asking = questions(runs)
    if target is None or not asking or isinstance(target, t.Listing):
        return ComesTo("")
    value = model.worth(target)
    own = frozenset() if value is None else frozenset((value,))
    if isinstance(target, t.Ratio) or any(isinstance(part, t.ClockTime) for part in model.parts()):
        return ComesTo("", own)  # times of day are points, and are held to their own rules
    kinds = story_kinds(runs)
    try:
        answers = answers_of(Carrier(kinds, constants).ways(model.lines, target))
    except (TooMany, t.NotationError):
        return ComesTo("", own)
    if not answers:
        return ComesTo(
            "The model adds unlike things, as the words name them: look at what stands beside each "
            "number, or put the units in { } with their numbers."
        )
    question = asking[-1]
    wanted = wanted_kinds(runs, question, model, kinds)
    fitting = answers
    if wanted is not None:
        fitting = [answer for answer in answers if _answers(answer, wanted, question, kinds)]
        if not fitting:
            return ComesTo(_says(answers[0], wanted, _for_each(wanted.kinds, question)))
        faults = [_things_fault(kind, wanted, question, kinds) for kind in fitting]
        if all(faults):
            return ComesTo(faults[0])
    if fault := _crossed(model, Carrier(kinds, constants), kinds):
        return ComesTo(fault)
    sizes = {kind.scale for kind in fitting if not kind.unknowns()}
    if not sizes and wanted is not None and wanted.sized:
        sizes = {kind.scale for kind in wanted.kinds}
    return ComesTo("", own | {value * size for size in sizes for value in own})


def _crossed(model: Modelled, carrier: Carrier, kinds: StoryKinds) -> str:
    """Return how the price of one thing is multiplied by a number of others, or ``""``."""
    for part in model.parts():
        if not isinstance(part, t.Product) or len(part.rest) != 1:
            continue
        try:
            found = answers_of(carrier.of(part))
        except (TooMany, t.NotationError):
            continue
        crossed = [_pair(kind, kinds) for kind in found]
        if crossed and all(kind for kind, _ in crossed):
            left, other = crossed[0]
            return (
                f"The model multiplies what is said for each {left} by a number of {plural(other)}."
            )
    return ""


def _pair(kind: Kind, kinds: StoryKinds) -> tuple[str, str]:
    """Return the thing that a price is for, and another that it is multiplied by."""
    things = kind.things()
    below = [noun for noun, n in things.items() if n < 0 and noun in kinds.nouns]
    above = [noun for noun, n in things.items() if n > 0 and noun in kinds.nouns]
    money = any(name == "money" and n > 0 for name, n in kind.measures())
    return (below[0], above[0]) if below and above and money and not kind.unknowns() else ("", "")


def _answers(kind: Kind, wanted: Wanted, question: str, kinds: StoryKinds) -> bool:
    if kind.unknowns():
        return True
    for asked in (
        *wanted.kinds,
        *_for_each(wanted.kinds, question),
        *_at_rate(wanted.kinds, kinds, question),
    ):
        if kind.measures() == asked.measures() and (not wanted.sized or kind.scale == asked.scale):
            return True
    return False


_FOR_EACH = late(
    r"\b(?:per|an?|each|every|one|the|whole|that) (?=(?P<words>[a-z]+(?: [a-z]+)?))", re.I
)


def _for_each(kinds: Sequence[Kind], question: str) -> list[Kind]:
    """Return the kinds for each of the units that the question names in the singular."""
    names = unit_names()
    found = {unit_at_start(match["words"]).casefold() for match in _FOR_EACH.finditer(question)}
    units = {names[name] for name in found if name}
    return [kind.over(of_unit(unit)) for kind in kinds for unit in units]


def _at_rate(wanted: Sequence[Kind], kinds: StoryKinds, question: str) -> list[Kind]:
    """Return the kinds for each of what amounts are given for, where nothing says for how many.

    *£550 a week* and a rise of 4% make so many pounds a week.
    """
    free = [
        rate
        for rate in kinds.rates
        if rate.measures()
        and not any(amount.measures() == rate.measures() for amount in kinds.amounts)
    ]
    spans = {of_unit(unit).measures() for unit in _spans(question)}
    return [kind.over(rate) for kind in wanted for rate in free if rate.measures() not in spans]


def _spans(question: str) -> set[str]:
    """Return the units of time and the others that a question names by themselves."""
    names = unit_names()
    words = [unit_at_start(match["words"]) for match in _FOR_EACH.finditer(question)]
    words += re.findall(r"\b(?:seconds|minutes|hours|days|weeks|months|years)\b", question, re.I)
    return {names[word.casefold()] for word in words if word}


def _says(kind: Kind, wanted: Wanted, for_each: Sequence[Kind]) -> str:
    if any(kind.measures() == per.measures() for per in (*wanted.kinds, *for_each)):
        return (
            f"The question asks for {wanted.says}, and the model does not come to that unit: a change "
            "of units, as 60 for minutes and hours, is left out or too many."
        )
    return _gives(kind, wanted)


def _gives(kind: Kind, wanted: Wanted) -> str:
    return f"The model gives {kind_words(kind)}; the question asks for {wanted.says}."


_TOGETHER = late(r"\b(?:altogether|in total|in all|total)\b", re.I)


def _things_fault(kind: Kind, wanted: Wanted, question: str, kinds: StoryKinds) -> str:
    """Return how the things that are counted do not fit the question: pounds for each tray."""
    if kind.unknowns():
        return ""
    things = kind.things()
    if wanted.noun and things.get(wanted.noun, 0) < 0:
        return _gives(kind, wanted)
    if squared := [noun for noun, n in things.items() if abs(n) > 1 and noun in kinds.nouns]:
        return f"The model multiplies a number of {plural(squared[0])} by another of them."
    counted_there = [noun for noun, power in things.items() if power == 1 and noun in kinds.nouns]
    if wanted.noun in kinds.nouns and len(things) == 1 and counted_there not in ([], [wanted.noun]):
        return _gives(kind, wanted)  # so many pens, where boxes are counted as well
    for noun, power in things.items():
        stem = re.escape(noun)
        single = re.search(
            rf"\b(?:each|one|per|every|an?|single) (?:\w+ )?{stem}\w*\b", question, re.I
        )
        counted = re.search(rf"{SLOT} (?:[a-z'-]+ )?{stem}\w*\b", question, re.I)
        if (
            power < 0
            and not single
            and (counted or _TOGETHER.search(question))
            and noun in kinds.nouns
        ):
            return (
                f"The model gives {kind_words(kind)}; the question asks for {wanted.says} of all."
            )
        every = re.search(rf"\beach {stem}\b", question, re.I)
        if power > 0 and noun != wanted.noun and every and not counted and Fraction(power) > 0:
            return f"The question asks for one of the {plural(noun)}, and the model finds all together."
    return ""
