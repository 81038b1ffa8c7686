"""Words that set a condition no model shows, numbers everybody knows, and what shapes ask.

A *median*, a *probability* or a *lower bound* is no sum of a model: a person decides. A constant
that a model brings in is one the words name, or one that belongs to what they speak of: 60 to
minutes, 180 to angles, 100 to per cent (common knowledge).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.text.late_pattern import late
from itembank.wording.model_summary import Modelled
from itembank.wording.sentences.numbers_said import ORDINALS, numbers_said
from itembank.wording.sentences.prompt import SLOT, index_of, slotted

_PERSON = late(
    r"\b(?:median|mode|modal|probab\w*|likely|chance|bounds?|error interval|at random|even number|odd number|"
    r"compound(?:ed)? (?:monthly|quarterly|daily)|twice daily|return journey|there and back|each way|"
    r"deposit|instal?ments?|equal payments?|and back|after the first|after that)\b",
    re.I,
)
_COMMON = (
    ((0, 1), r".*"),
    ((100,), r"%|per ?cent|percent|reduc|increas|decreas|sale|off|tax|vat|interest|profit|loss|cent|metre|gram|litre|pence|pound|£|€"),
    ((60, 3600), r"hour|minute|second|speed|time|long|km/h|m/s|h\b"),
    ((24, 7, 48, 168), r"day|week|hour"),
    ((12, 52, 365, 366, 4), r"year|month|week|annual|monthly"),
    ((30, 31, 28), r"month|april|may|june|july|march|september|november|january|december"),
    ((180, 360, 90, 270), r"angle|triangle|degree|turn|line|quadrilateral|polygon|circle|bearing|°|rectang|square"),
    ((2, 3, 4, 5, 6, 8, 10), r"side|rectang|square|triang|perimeter|area|area|equilateral|isosceles|quadrilateral|pentagon|hexagon|octagon|decagon|cube|cuboid|polygon|angle|edge|face|all the way round|length|wide|trapezium"),
    ((2, 3, 4, 5, 6), r"consecutive|average|mean|numbers|next|both|each|twin|sides|edges|bags?|offer|free"),
    ((10, 1000, 10000, 1000000), r"metre|gram|litre|tonne|\bm\b|\bcm\b|\bkm\b|\bkg\b|\bg\b|\bml\b|\bl\b|million|map|scale|plan"),
    ((14,), r"fortnight"), ((13, 20), r"dozen|score"), ((12,), r"dozen|inch|foot|feet|year|month"),
    ((16, 14, 8, 3, 5280, 1760), r"pound|stone|ounce|pint|gallon|yard|mile|foot|feet"),
)  # fmt: skip


def condition_fault(runs: Sequence[Run], constants: Sequence[int], letters: bool) -> str:
    """Return the word that sets a condition, or the constant that comes from nowhere, or ``""``."""
    words = " ".join(run if isinstance(run, str) else " " for run in runs)
    if found := _PERSON.search(words):
        return f"‘{found[0]}’ is not worked out here: a person has to look."
    shown = words + " " + _signs(runs)
    said = {number.value for number in numbers_said(words)}
    said |= {1 / number.value for number in numbers_said(words) if number.value}
    said |= {
        Fraction(n - 1) for word, n in ORDINALS.items() if re.search(rf"\b{word}\b", words, re.I)
    }
    terms = re.search(r"\bterm|sequence|row|position|pattern\b", words, re.I)
    for constant in constants:
        known = any(
            constant in numbers and re.search(pattern, shown, re.I) for numbers, pattern in _COMMON
        )
        if not known and constant not in said and not terms and not letters:
            return (
                f"The model uses {constant}, which the words do not name: say it in the question, as "
                "in ‘there are 52 weeks in a year’."
            )
    return ""


def _signs(runs: Sequence[Run]) -> str:
    found = set()
    for run in runs:
        if not isinstance(run, str):
            for part in t.walk(run):
                match part:
                    case t.Percent():
                        found.add("%")
                    case t.Money(_, sign):
                        found.add(sign)
                    case t.Quantity(_, unit):
                        found.add(unit)
    return " ".join(sorted(found))


def shape_fault(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return what an area, a perimeter or interest needs that the model does not do, or ``""``."""
    text = " ".join(run if isinstance(run, str) else "…" for run in runs)
    area = re.search(
        r"\barea\b|\bsquare (?:metre|centimetre|kilometre|millimetre)s?\b", words, re.I
    )
    mean_side = re.search(r"\btrapezi|\bparallel sides\b", text, re.I)
    if area and not model.inverse and not mean_side and not _multiplies(model):
        return "The question asks for an area, and the model multiplies no two lengths."
    if re.search(r"\bperimeter\b", words, re.I) and not model.inverse:
        sides = next((n for name, n in _SIDES if re.search(name, text, re.I)), 0)
        if not _goes_round(model, sides):
            return "The question asks for a perimeter, and the model does not go round every side."
    halves = re.search(r"\barea\b", words, re.I) and re.search(r"\btriang|\btrapezi", text, re.I)
    if halves and not model.inverse and not model.divides():
        return (
            "The area of a triangle or a trapezium is half a product, and the model halves nothing."
        )
    if re.search(r"\bsimple interest\b", text, re.I) and model.has(t.Power):
        return "The words say simple interest, and the model has a power."
    return (
        _part_or_whole(model, words, text)
        or _from_value(runs, model, words)
        or _another_letter(runs, model, words)
    )


_SIDES = (
    ("triang", 3), ("pentagon", 5), ("hexagon", 6), ("octagon", 8), ("decagon", 10), ("square", 4),
)  # fmt: skip


def _goes_round(model: Modelled, sides: int) -> bool:
    numbers = [part.n for part in _multipliers(model) if isinstance(part, t.Int)]
    if sides and sides in numbers:
        return True
    sums = [1 + len(part.rest) for part in model.parts() if isinstance(part, t.Sum)]
    return any(count >= max(3, sides) for count in sums) or (2 in numbers and bool(sums))


def _multipliers(model: Modelled) -> list[t.Node]:
    """Return the factors by which a model multiplies; what it divides by is none."""
    found: list[t.Node] = []
    for part in model.parts():
        match part:
            case t.Product(first, rest):
                found += [first, *(factor for op, factor in rest if op != "÷")]
            case t.Juxt(factors):
                found += factors
    return found


def _multiplies(model: Modelled) -> bool:
    """Whether two amounts are multiplied that are no bare count, or one is squared."""
    if model.has(t.Power, t.Root):
        return True
    for part in model.parts():
        if isinstance(part, t.Juxt) and sum(not _is_count(factor) for factor in part.factors) > 1:
            return True
        if isinstance(part, t.Product):
            factors = [part.first, *(factor for op, factor in part.rest if op == "×")]
            if sum(not _is_count(factor) for factor in factors) > 1:
                return True
    return False


def _is_count(node: t.Node) -> bool:
    while isinstance(node, t.Bracket):
        node = node.of
    return (isinstance(node, t.Sum) and not t.symbols(node)) or node == t.Int(2)


_PART = late(
    r"\b(?:what is|how much is|how much|find|work out)\b[^?]*\b(?:the )?(?:profit|reduction|saved?|saving|"
    r"discount|vat|tax|interest|tip|commission)\b(?! price)",
    re.I,
)
_WITH = late(r"\b(?:after|with|including) (?:the )?(?:discount|vat|tax|interest)\b", re.I)
_WHOLE = late(
    r"\b(?:selling|sale|new|final|reduced|total) (?:price|cost|amount|population|value)\b", re.I
)


def _part_or_whole(model: Modelled, words: str, text: str) -> str:
    """Return how the whole is found where a part is asked for, or a part for the whole."""
    target = model.target
    if target is None or model.inverse:
        return ""
    match = _PART.search(words)
    if match and not _WITH.search(words) and _changes_whole(target):
        return f"‘{match[0]}’ asks for a part, and the model finds the whole after the change."
    if _WHOLE.search(words) and isinstance(target, t.Product) and not _changes_whole(target):
        factors = (target.first, *(factor for _, factor in target.rest))
        if len(factors) == 2 and any(
            isinstance(f, t.Percent) and f.of != t.Int(100) for f in factors
        ):
            return f"‘{words}’ asks for the whole, and the model finds a percentage of it."
    return ""


def _changes_whole(target: t.Node) -> bool:
    match target:
        case t.Sum(first, ((_, t.Product() as part),)):
            return first in (part.first, *(factor for _, factor in part.rest))
        case t.Product(first, rest):
            factors = (first, *(factor for _, factor in rest))
            return any(
                isinstance(f, t.Bracket | t.Power)
                and any(
                    isinstance(p, t.Sum) and p.first in (t.Int(1), t.Percent(t.Int(100)))
                    for p in t.walk(f)
                )
                for f in factors
            )
    return False


_FROM_TO = late(rf"\bfrom ({SLOT}) to ({SLOT})")
_CHANGE = late(
    r"\bpercentage (?:increase|decrease|profit|loss|change|rise|fall|reduction|gain)\b", re.I
)


def _from_value(runs: Sequence[Run], model: Modelled, words: str) -> str:
    """Return whether a percentage change is divided by what the value changed from."""
    said = slotted(runs)
    match = _FROM_TO.search(said.text)
    if not (match and _CHANGE.search(words)) or model.inverse:
        return ""
    before = said.nodes[index_of(match[1])]
    for part in model.parts():
        match part:
            case t.Frac(_, den) if _is(den, before):
                return ""
            case t.Product(_, rest) if any(op == "÷" and _is(node, before) for op, node in rest):
                return ""
    return "A percentage change is of what was there before, and the model does not divide by that."


def _is(node: t.Node, other: t.Node) -> bool:
    while isinstance(node, t.Bracket):
        node = node.of
    return node == other or node == getattr(other, "amount", None)


def _another_letter(runs: Sequence[Run], model: Modelled, words: str) -> str:
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
