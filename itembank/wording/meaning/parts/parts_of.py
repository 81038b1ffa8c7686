"""A fraction or a percentage of things: how many there are, of the part, of the others, in all."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Number, Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.story.asked.fractions_of_things import stem

_OF = late(
    rf"({SLOT}) of (?P<whole>them|these|those|it|(?:the |its |his |her |their )?{SLOT} [\w' -]+?|(?:the|a|an) [\w' -]+? of {SLOT}(?: [\w' -]+?)?|(?:the|its|his|her|their|all the|a|an) [\w' -]+?) "
    r"(?P<verb>is|are|was|were|have|has|do not|does not|do|come|comes|go|goes|fail|fails|walk|grow|wear|start|cycle|play|like|race|races|leave|leaves|flower|flowers|win|wins|"
    r"can|sing|swim|travel|read|live|pass|passed|failed|walked|die|died|break|broke|eat|own|prefer|choose|chose|use|need|sell)\b"
    r"(?P<what>[^.,;?]*)",
    re.I,
)
_FULL = late(
    rf"({SLOT}) (?:[a-z]+ )?when (?:it is |it's |only )?({SLOT}) full|"
    rf"({SLOT}) full(?:,| and|\.)? (?:it |and )?(?:now )?(?:holds|contains|has)(?: \w+)? ({SLOT})",
    re.I,
)
_THEN_OF_REST = late(
    rf"({SLOT}) of [^.]*?({SLOT})?[^.{{}}]*?(?:\band\b|\bthen\b|\.)[^.]*?({SLOT}) of (?:the|what|his|her|their) (?:rest|remainder|remaining|others?|is left)\b",
    re.I,
)
_NEGATED = r"\b(?:not|no(?! more)|n't|never|none|without|don't|doesn't|other|others|rest|remaining|left|un\w{4,})\b"
_STOP = frozenset(
    stem(word)
    for word in (
        "how", "many", "much", "are", "is", "was", "were", "the", "there", "do", "does", "did",
        "of", "in", "on", "at", "to", "a", "an", "them", "it", "altogether", "total", "all", "have",
        "has", "that", "which", "who", "what", "percentage", "fraction", "be", "being", "been",
        "for", "by", "with", "from", "still", "now", "and", "or", "its", "his", "her", "their",
        "each",
    )
)  # fmt: skip


def content(words: str) -> set[str]:
    """Return the stems of the words that carry the meaning.

    >>> sorted(content("How many of them are electric?"))
    ['electric']
    """
    return {stem(word) for word in re.findall(r"[A-Za-z'-]+", words)} - _STOP


def part_reading(tale: Tale) -> Reading | None:
    """Return what a story of one part of a whole comes to by its words."""
    if full := _FULL.search(tale.told):
        amount = tale.get(full, 1) or tale.get(full, 4)
        part = tale.get(full, 2) or tale.get(full, 3)
        if amount and part and part.value and len(tale.numbers) == 2 and tale.asks_for(r"\bfull\b"):
            return reads("it is part full with the amount that is given", amount.value / part.value)
    return (
        _of_the_rest(tale)
        or _spent_and_left(tale)
        or _out_of(tale)
        or _percentage_of_group(tale)
        or _one_part(tale)
        or _of_the_other_part(tale)
    )


def _of_the_rest(tale: Tale) -> Reading | None:
    """Return what is left after a part is taken, and then a part of the rest."""
    parts, match = tale.of("part", "percent"), _THEN_OF_REST.search(tale.told)
    others = [n for n in tale.numbers if n not in parts]
    if match is None or len(parts) != 2 or len(others) > 1 or any(map(tale.asked, tale.numbers)):
        return None
    left = (1 - parts[0].value) * (1 - parts[1].value)
    if tale.asks_for(r"\b(?:left|remain\w*|still have)\b"):
        if not others:
            return (
                reads("a part of the rest is taken", left)
                if tale.asks_for(r"\bfraction\b|\bpercentage\b")
                else None
            )
        if not tale.asks_for(r"\bfraction\b|\bpercentage\b"):
            return reads("a part of the rest is taken", left * others[0].value)
    return None


def _one_part(tale: Tale) -> Reading | None:
    parts = tale.of("part", "percent")
    others = [n for n in tale.numbers if n not in parts]
    if len(parts) != 1 or len(others) != 1 or tale.asked(parts[0]) or tale.asked(others[0]):
        return None
    (part,), (amount,) = parts, others
    match = next((m for m in _OF.finditer(tale.told) if m[1] == part.char), None)
    if match is None or not 0 < part.value < 1:
        return None
    if tale.asks_for(r"\b(?:fraction|percentage|ratio|more|fewer|difference|than|each|much)\b"):
        return None
    what = content(match["what"]) | (
        content(match["verb"]) if match["verb"] not in ("is", "are") else set()
    )
    negated = late_search(r"\bnot\b|n't", match["verb"] + match["what"])
    share = 1 - part.value if negated else part.value
    if not what or late_search(r"\b(?:and|half|more|less|than|the rest|to)\b", match["what"]):
        return None
    whole = _whole(tale, match, amount, what, share)
    if whole is None:
        return None
    asked = content(tale.question)
    if tale.asks_for(r"^how (?:many|much) (?:is|are|was|were) (?:that|this|these|those)$"):
        return reads("of the part that is told of last", share * whole)
    if asked & what:
        wants = 1 - share if late_search(_NEGATED, tale.question) else share
        return reads("of the part that the question names", wants * whole)
    if tale.asks_for(r"\b(?:altogether|in total|in all|total)\b"):
        return reads("of the whole", whole)
    group = content(match["whole"])
    if (
        asked & group
        and asked <= group | content(amount.after)
        and not late_search(_NEGATED, tale.question)
    ):
        return reads("of the whole", whole)
    if whole == amount.value and tale.asks_for(r"^how many\b"):
        return reads("of those that are not named", (1 - share) * whole)
    return None


def _whole(
    tale: Tale, match: re.Match[str], amount: Number, what: set[str], share: Fraction
) -> Fraction | None:
    """Return the number of all things: the amount, or what it is a part of."""
    clause = tale.clause_of(amount)
    words = content(amount.after)
    if amount.char in match["whole"]:
        return amount.value
    if words & what or (not words and content(clause) & what):
        if late_search(_NEGATED, amount.after):
            return amount.value / (1 - share)
        return amount.value / share
    if late_search(_NEGATED, amount.after):
        return None
    nouns = content(match["whole"])
    asks_all = tale.asks_for(r"\b(?:altogether|in total|in all|total)\b")
    asks_all = asks_all or bool(nouns & content(tale.question))
    if words and not words & nouns and amount.at > match.start() and nouns and asks_all:
        return amount.value / (1 - share)  # the others: 60% are women, and there are 48 men
    if amount.at < match.start() or words & nouns:
        return amount.value
    return None


# Two groups are empty: *noun2*, which _GROUP may fill, and *third*, which tells the two apart.
_SOME_OF = late(
    rf"(?P<part>{SLOT}) of (?:the |these |a class of )?({SLOT}) (?P<noun>[\w'-]+) (?P<what>[^.,;?]+)(?P<third>)(?P<noun2>)",
    re.I,
)
_GROUP = late(
    rf"(?:of (?:the |a class of |a total of )?({SLOT}) (?P<noun>[\w'-]+)|(?:there are|has|have) ({SLOT}) (?P<noun2>[\w'-]+))[^.,]*[.,]? "
    rf"(?P<part>{SLOT})(?: of (?:them|the \w+|these))? (?P<what>[^.,;?]+)",
    re.I,
)


def _percentage_of_group(tale: Tale) -> Reading | None:
    """Return *of the 35 drivers, 21 start early: what percentage start early*, or late."""
    if not tale.asks_for(r"\b(?:what|which) (?:percentage|fraction)\b") or len(tale.numbers) != 2:
        return None
    match = _GROUP.search(tale.told) or _SOME_OF.search(tale.told)
    if match is None or tale.of("percent", "part"):
        return None
    some = "third" in match.groupdict()
    whole = tale.get(match, 2) if some else tale.get(match, 1) or tale.get(match, 3)
    part = tale.get(match, "part")
    if whole is None or part is None or not 0 < part.value < whole.value:
        return None
    nouns = content(match["noun"] or match["noun2"] or "")
    what, asked = content(match["what"]) - nouns, content(tale.question) - nouns
    share = part.value / whole.value
    if not what:
        return None
    named = what <= asked or (what & asked and not asked - what)
    negated = late_search(_NEGATED, tale.question) != late_search(_NEGATED, match["what"])
    return reads("of those that the question names", share if named and not negated else 1 - share)


_SPENT = late(
    rf"\b(?P<did>spends?|spent|uses?|used|eats?|ate|gives? away|gave away|sells?|sold|loses?|lost|drinks?|drank|reads?|read|walk\w*|"
    rf"ran|completed|cuts? off|has done|has read|has run|painted|travelled) (?P<part>{SLOT}) of [^.?!{{}}]*?"
    rf"(?:(?:has|had|have|leaving|with|there (?:is|are|was|were)) ({SLOT})[^.,;?]*\b(?:left|remaining|to go)\b)",
    re.I,
)


def _spent_and_left(tale: Tale) -> Reading | None:
    """Return what was spent, or what there was, where a part is spent and so much is left."""
    match = _SPENT.search(tale.told)
    if match is None or len(tale.numbers) != 2:
        return None
    part, left = tale.get(match, "part"), tale.get(match, 3)
    if (
        part is None
        or left is None
        or not 0 < part.value < 1
        or left.measure in ("part", "percent")
    ):
        return None
    whole = left.value / (1 - part.value)
    asked = {stem(word) for word in re.findall(r"[a-z]+", tale.question.lower())}
    if tale.asks_for(r"\b(?:left|remain\w*)\b"):
        return None
    if stem(match["did"].split()[-1]) in asked:
        return reads("what is left is of the other part", part.value * whole)
    if tale.asks_for(
        r"\bat first\b|\bto (?:start|begin) with\b|\boriginal|\baltogether\b|\b(?:have|long|total|savings)\b"
    ):
        return reads("what is left is of the other part", whole)
    return None


_OUT_OF = late(
    rf"\b(?:scores?|scored|gets?|got|answers?|answered|wins?|won) ({SLOT})(?: [a-z]+)? out of ({SLOT})",
    re.I,
)


def _out_of(tale: Tale) -> Reading | None:
    """Return a score as a part of all the marks, or what was lost."""
    match = _OUT_OF.search(tale.told)
    if match is None or len(tale.numbers) != 2:
        return None
    score, whole = tale.get(match, 1), tale.get(match, 2)
    if score is None or whole is None or not 0 < score.value < whole.value:
        return None
    lost = tale.asks_for(
        r"\b(?:lose|lost|wrong|incorrect\w*|miss(?:ed)?|drop(?:ped)?|not|didn't)\b"
    )
    if tale.asks_for(r"\b(?:percentage|fraction)\b"):
        share = score.value / whole.value
        return reads("of what the question names", 1 - share if lost else share)
    if lost and tale.asks_for(r"\bhow many\b"):
        return reads("what is not scored is lost", whole.value - score.value)
    return None


def _of_the_other_part(tale: Tale) -> Reading | None:
    """Return a part of a part, or of the whole: 25% of the electric buses, 25% of the buses."""
    parts = tale.of("part", "percent")
    others = [n for n in tale.numbers if n not in parts]
    if len(parts) != 2 or len(others) > 1 or any(tale.asked(n) for n in tale.numbers):
        return None
    found = [m for m in _OF.finditer(tale.told) if m[1] in {p.char for p in parts}]
    if len(found) == 2 and not others and tale.asks_for(r"^what (?:fraction|percentage) of\b"):
        return _part_of_part(tale, *found)
    if len(found) != 2 or tale.asks_for(
        r"\b(?:fraction|percentage|ratio|more|fewer|than|not|altogether)\b"
    ):
        return None
    if not others:
        return None
    first, second = found
    (amount,) = others
    single, two = tale.get(first, 1), tale.get(second, 1)
    if (
        single is None
        or two is None
        or (amount.at > first.start() and amount.char not in first["whole"])
    ):
        return None
    if late_search(_NEGATED, first["what"] + second["what"] + tale.question):
        return None
    of_first = content(first["what"]) | content(first["verb"])
    what, asked = content(second["what"]) | content(second["verb"]), content(tale.question)
    if not what & asked:
        return None
    group = content(second["whole"])
    if group & of_first:
        return reads(
            "a part of the part that is named first", single.value * two.value * amount.value
        )
    if group and group <= content(amount.after) and not of_first & asked - what:
        return reads("a part of the whole", two.value * amount.value)
    return None


def _part_of_part(tale: Tale, first: re.Match[str], second: re.Match[str]) -> Reading | None:
    """Return what fraction of the whole a part of a part is, where the question names both."""
    part, of_it = tale.get(first, 1), tale.get(second, 1)
    if part is None or of_it is None:
        return None
    if late_search(_NEGATED, first["what"] + second["what"] + tale.question):
        return None
    of_first, group = content(first["what"]) | content(first["verb"]), content(second["whole"])
    what, asked = content(second["what"]), content(tale.question)
    if group & of_first and what & asked and content(first["whole"]) & asked:
        return reads("a part of the part that is named first", part.value * of_it.value)
    return None
