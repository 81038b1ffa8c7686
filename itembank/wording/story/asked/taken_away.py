"""Whether a model that ends by taking away is asked for what is left, or for a difference.

And the other way about: where the question asks for *the rest*, or something is free, the model
takes something away.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.clock import times_in
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled
from itembank.wording.story.asked.fractions_of_things import asks_other_part, names_what_is_taken
from itembank.wording.story.asked.parts_named import mentions
from itembank.wording.story.asked.question_rules import MORE_OR_LESS

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


def rest_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
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


def free_fault(runs: Sequence[Run], model: Modelled) -> str:
    """Return what is wrong where something is free and the model leaves nothing out."""
    words = " ".join(run for run in runs if isinstance(run, str))
    if re.search(r"\bfree\b", words, re.I) and not model.subtracts() and not model.divides():
        return "The words say that something is free, and the model takes nothing away for it."
    return ""


_TAKEN = late(
    rf"\b(?:left|remain\w*|rest|difference|change|not|n't|other|others|still|now|empty|unused|unsold|"
    rf"cheaper|{MORE_OR_LESS}|decrease\w*|reduc\w*|sale|new|final|end|after|save[sd]?|saving|profit|loss|lose[s]?|"
    r"lost|fall\w*|fell|drop\w*|below|without|short|extra|to go|missing|spare|owe[sd]?|go|stand\w*|"
    r"temperature|third|fourth|fifth|sixth|grow|increase\w*|gain\w*|net|discount\w*|over|free|later|next|remaining|"
    r"need\w*|must|pay\w*|paid|term|position|between|gap|minus|less|age|old|wait\w*|late|early|"
    r"took|take|takes|last|lasts|backs?|return\w*|finish\w*|down|off|out|only|both|neither|angle)\b",
    re.I,
)
"""Words of a question that ask for what is left, or for a difference."""


def taken_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how a model ends by taking away what the question does not say to take, or ``""``."""
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
