"""Sentences beside a question about a figure, that only say what it shows.

No proof reads them, so that none may change what is asked: *The height is doubled*, *The scale is
in thousands*. A sentence is let through in one of a few shapes, with no word in it that could
change a thing; all others are left to a person.

>>> [only_tells(words, "A bar chart of trays, and a cylinder.") for words in (
...     "The bar chart shows the trays sold on a stall", "Here is a cylinder",
...     "The height of the cylinder is doubled", "The chart shows thousands of trays")]
[True, True, False, False]
"""

from __future__ import annotations

import re

from itembank.figures.kinds.chart.chart_held import COUNTED_PEOPLE, PEOPLE, done_apart
from itembank.items.asks.told_words import is_headline, strange_word
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

_SHOWN = (
    r"(?:(?:bar|line|pie|scatter|Venn|tree|conversion|distance.time|frequency|two-way|coordinate|"
    r"number|double number|function|probability|sample space|bus) )?"
    r"(?:chart|graph|diagram|table|timetable|pictogram|picture|figure|drawing|sketch|plan|map|"
    r"grid|line|bars?|marks|net|machine|balance|pattern|model|construction)"
)
"""What a picture is called by who speaks of it."""
_WORDS = r"(?P<words>[^.:;?!()<>=]+)"
_IT = (
    r"(?:the|this|these|each) (?:[a-z-]+ )?(?:line|bar|net|shape|pattern|circle|rectangle|square|"
    r"triangle|triangles|solid|prism|chart|diagram|grid|dice|spinner|spinners|coin|coins|balance|"
    r"scale|pieces|counters|figure)"
)
_NOUN = r"[a-z]+(?: [a-z]+)?"
_SHAPES = tuple(
    late(shape, re.I)
    for shape in (
        rf"(?:the|this|these)(?: {_SHOWN})(?: below| above| here| opposite)? "
        rf"(?:shows?|gives?|describes?|(?:is|are) (?:for|of|about)) {_WORDS}",
        rf"(?:this is|here is|here are|look at) {_WORDS}",
        rf"(?:in the {_SHOWN},? )?{_IT} (?:is|are) (?:congruent|fair|level|balanced|a probability "
        r"scale|drawn (?:accurately|to scale|on (?:a )?(?:grid|squared paper|square grid))|"
        r"(?:cut|divided|split) (?:up )?into equal parts|folded (?:up )?to make a cub(?:e|oid))",
        rf"(?:a|an|each|the) (?:fair )?(?P<words>{_NOUN})(?: in the {_SHOWN})? is "
        r"(?:chosen|picked|taken|selected|drawn|thrown|rolled|spun)"
        rf"(?: at random)?(?: from (?:a|the) (?P<from>{_NOUN}))?(?: at random)?"
        r"(?:,? and kept)?(?:,? and then another from (?:a|the)(?: same)? (?P<other>[a-z]+))?",
        r"the (?:lengths|sides|distances|measurements|dimensions) are (?P<words>in [a-z]+)",
    )
)
"""The shapes that a sentence may have which only says what is shown."""
_CHANGES = late(
    r"\b(?:"
    # what is not, or not quite
    r"not|no|nor|none|never|neither|except|without|unless|only|but|if|instead|than|wrong\w*|"
    r"incorrect\w*|mistakes?|errors?|biased|unfair|approximate\w*|estimate\w*|rounded|nearest|"
    r"missing|left|rest|remain\w*|unsold|unshaded|other|others|another|rather|"
    # numbers, and so many times
    r"one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|dozens?|hundreds?|"
    r"thousands?|millions?|pairs?|couples?|half|halv\w*|twice|times|doubl\w*|tripl\w*|trebl\w*|"
    r"quarter\w*|thirds?|fifths?|tenths?|percent\w*|per|average|worth|"
    r"in pence|in cents|stands? for|counts? for|"
    # more and less
    r"more|less|fewer|greater|larger|smaller|longer|shorter|higher|lower|extra|further|"
    # what is done, and when
    r"then|before|after\w*|again|later|until|once|when|while|so|because|since|where|which|"
    r"enlarg\w*|reduc\w*|increas\w*|decreas\w*|rais\w*|los[et]\w*|gain\w*|chang(?:e|es|ed)|mov(?:e|ed|ing)|"
    r"turn\w*|rotat\w*|reflect\w*|translat\w*|revers\w*|backwards|swap\w*|remov\w*|add(?:s|ed)?|"
    r"subtract\w*|multipl(?:y|ied)|divided by|squared|cubed|shift\w*|delay\w*|replac\w*|put|"
    r"rub\w*|cut|stretch\w*|shr[aiu]nk\w*|upside|opposite|inverse|cannot|"
    r"open(?:ed)?|hollow|lids?|inside|outside|empty|tube"
    r")\b",
    re.I,
)
"""Words that could change what is asked, or what the figure says."""
_UNIT_WORDS = {
    name: symbol for symbol, unit in UNITS.items() for name in (unit.singular, unit.many)
}
_ALSO_A_THING = frozenset(
    re.findall(r"\w+", "day week month year hour foot feet yard stone pound degree")
)
"""Units that stories speak of without measuring by them, but after *in*: *in a yard*, *a day*."""
_UNIT = late(
    rf"\b(?P<by>in )?(?P<unit>{'|'.join(sorted(map(re.escape, _UNIT_WORDS), key=len)[::-1])})\b",
    re.I,
)


def only_tells(bare: str, shown: str) -> bool:
    """Tell whether a sentence without its stop only says what a figure shows.

    `shown` is what the figure says of itself: a unit that a sentence names has to stand in it.

    >>> only_tells("The lengths are in metres", "Side AB is 3 centimetres.")
    False
    """
    found = next((match for shape in _SHAPES if (match := shape.fullmatch(bare))), None)
    if found is None:
        return False
    told = " ".join(text for text in found.groupdict().values() if text)
    return (
        not re.search(r"\d", re.sub(r"\b\d{1,2}[A-Z]\b", "", told))  # but class 8K
        and not _CHANGES.search(told)
        and not strange_word(told.casefold() if is_headline(bare) else told, shown)
        and all(_unit_fits(shown, found) for found in _UNIT.finditer(told))
    )


def told_otherwise(told: str, shown: str, question: str) -> str:
    """Return a word by which a question is about something else than is told beside it, or ``""``.

    >>> told_otherwise("The graph shows the journey of a van", "", "how often does the bus stop")
    'bus'
    >>> told_otherwise("The chart shows the trays made", "", "how many trays were sold")
    'made'
    """
    here, there, asked = (_words_of(text) for text in (told, shown, question))
    some: frozenset[str]
    for some, any_of in ((_VEHICLES, _VEHICLES), (COUNTED_PEOPLE - PEOPLE, COUNTED_PEOPLE)):
        strange = (asked & some) - here - there
        if strange and here & any_of:
            return min(strange)
    if other := (here & _LAID) - asked - there if asked & _LAID else set():
        return min(other)
    noun: str
    for noun in re.findall(r"\bhow many ([a-z]+)", question.casefold()):
        inside = rf"\bshows? (?:the |some )?([a-z]+) (?:in|from|with) (?:the |some )?{noun}\b"
        if (found := re.search(inside, told.casefold())) and found[1] not in there:
            return noun  # *plants in trays* are no trays
    letters: list[set[str]] = [{*re.findall(r"\{([a-z])\}", text)} for text in (told, question)]
    if all(letters) and not letters[1] <= letters[0]:
        return min(letters[1] - letters[0])
    return done_apart(here - {"late"}, asked)  # *how late a bus was* lacks nothing


def _words_of(text: str) -> set[str]:
    return {*re.findall(r"[a-z]+", text.casefold())}


_LAID = frozenset(("tiles", "squares", "dots", "counters", "cubes"))
"""What a growing pattern may be laid with."""
_VEHICLES = frozenset(
    re.findall(
        r"\w+",
        "bus coach van lorry car cyclist walker runner swimmer boat tractor tram train hiker",
    )
)


def _unit_fits(shown: str, found: re.Match[str]) -> bool:
    """Tell whether a figure bears the unit that words name, or nothing that is measured so."""
    named = found["unit"].casefold()
    if named.removesuffix("s") in _ALSO_A_THING and not found["by"]:
        return True
    unit = _UNIT_WORDS[named]
    borne = {
        symbol
        for symbol, facts in UNITS.items()
        if facts.dimension == UNITS[unit].dimension
        and any(
            re.search(rf"(?<![a-zA-Z]){re.escape(name)}(?![a-zA-Z])", shown)
            for name in ({symbol} - _LETTERS | {facts.singular, facts.many, f"({symbol})"})
        )
    }
    return borne <= {unit} and (bool(borne) or bool(found["by"]))


_LETTERS = {symbol for symbol in UNITS if len(symbol) < 2 or symbol == "in"}
