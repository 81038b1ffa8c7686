"""Whether the letter that a model finds is the one the question asks about."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.wording.model_summary import Modelled


def another_letter_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return how the question names what another letter of the model begins, or ``""``.

    With letters *a* and *s* for Ann and Sam, *How old is Sam?* is no question about *a*.
    """
    target = model.target
    if not isinstance(target, t.Sym) or not model.inverse:
        return ""
    if target in runs:
        return ""  # the prompt asks for the letter by its name
    if fault := _another_name(runs, target, words):
        return fault
    letters = {name for part in model.parts() for name in t.symbols(part)} - {"x", "n", "π", "□"}
    if target.name not in letters or len(letters) < 2:
        return ""
    story = " ".join(run for run in runs if isinstance(run, str)).replace(words, " ")
    nouns = {w.lower() for w in re.findall(r"[A-Za-z'-]{3,}", words)} & {
        w.lower() for w in re.findall(r"[A-Za-z'-]{3,}", story)
    }
    nouns -= _SMALL
    own = [word for word in nouns if word[0] == target.name.lower()]
    others = [
        word for word in nouns if word[0] in {name.lower() for name in letters - {target.name}}
    ]
    if others and not own:
        return f"The question names {others[0]}, and the model finds {target.name}."
    return ""


_DIMENSIONS = {
    "wide": "width",
    "long": "length",
    "high": "height",
    "tall": "height",
    "deep": "depth",
}


def _another_name(runs: Sequence[Run], target: t.Sym, words: str) -> str:
    """Return how the question names someone else than the one the letter is the initial of.

    *Sam is {4} years older than Ann … How old is Sam?* is not answered by a letter a.
    """
    text = " ".join(run if isinstance(run, str) else "…" for run in runs)
    names = set(re.findall(r"(?<![.?!] )(?<!^)\b([A-Z][a-z]+)\b", text)) | set(
        re.findall(r"\b([A-Z][a-z]+) (?:is|has|and|gets|pays|buys)\b", text)
    )
    own = [name for name in names if name[0].lower() == target.name]
    asked = [name for name in names if re.search(rf"\b{name}\b", words)]
    if own and asked and not set(own) & set(asked):
        return f"The question is about {asked[0]}, and {target.name} stands for {own[0]}."
    sizes = [size for size in _DIMENSIONS if re.search(rf"\bhow {size}\b", words, re.I)]
    if (
        sizes
        and target.name in "wlhd"
        and not any(name[0] == target.name for name in (sizes[0], _DIMENSIONS[sizes[0]]))
    ):
        return f"The question asks how {sizes[0]}, and the model finds {target.name}."
    counted = re.findall(r"\b(?:two|three|four|five|…) ([a-z]+)", text)
    mine = [noun for noun in counted if noun[0] == target.name]
    others = [noun for noun in counted if noun[0] != target.name and _names(words, noun)]
    if mine and others and not any(_names(words, noun) for noun in mine):
        return f"The question is about {others[0]}, and {target.name} may stand for {mine[0]}."
    return ""


def _names(words: str, noun: str) -> bool:
    stem = re.escape(noun.removesuffix("es").removesuffix("s"))
    return re.search(rf"\b(?:a|an|one|each|the) {stem}(?:es|s)?\b", words, re.I) is not None


_SMALL = frozenset(
    (
        "how", "many", "much", "what", "which", "is", "are", "was", "were", "the", "and", "for",
        "does", "did", "has", "have", "had", "there", "they", "each", "all", "she", "them", "their",
        "his", "her", "its", "been", "long", "cost", "costs", "altogether", "than", "more", "when",
        "where", "with", "will", "would", "should", "term", "value", "number", "less", "first",
        "second", "old", "years", "year", "work", "out", "find", "calculate",
    )
)  # fmt: skip
