"""Chances: that something does not happen, and that a thing taken at random is of a colour.

Colours alone are told apart here. *Large and red counters* may be the same ones, so that a person
looks at whatever else things are told by.
"""

from __future__ import annotations

import re

from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums.sums import Built, NotBuilt, less

COLOURS = (
    *("red", "blue", "green", "yellow", "white", "black", "orange", "purple", "pink", "brown"),
    *("grey", "silver", "gold"),
)
THINGS = {
    **{"counter": "counters", "ball": "balls", "bead": "beads", "marble": "marbles"},
    **{"cube": "cubes", "tile": "tiles", "sweet": "sweets", "card": "cards", "pen": "pens"},
    **{"sock": "socks", "button": "buttons", "token": "tokens", "disc": "discs"},
}
_COLOUR, _THING = "|".join(COLOURS), "|".join(THINGS)
_MANY = "|".join(THINGS.values())
_HOLDER = r"(?:bag|box|tin|jar|drawer|bowl|hat|tray|packet)"
_TAKEN = r"(?:taken|picked|chosen|drawn|pulled|selected)"
_ROW = rf"{SLOT} (?:{_COLOUR})(?: (?:{_MANY}|{_THING}))?(?:(?:,? and |, ){SLOT} (?:{_COLOUR})(?: (?:{_MANY}|{_THING}))?)+"
_FROM_IT = rf"(?: (?:from|out of) (?:the|this) {_HOLDER})?"

_STORY = (
    rf"^(?:an? {_HOLDER} (?:holds|contains|has)(?: only)? (?P<held>{_ROW})(?: in it)?|"
    rf"there are (?P<there>{_ROW}) in an? {_HOLDER})\. "
    rf"(?:(?:a|one) (?P<one>{_THING}) is {_TAKEN} at random{_FROM_IT}|"
    rf"(?:a|one) (?P<two>{_THING}) is {_TAKEN}{_FROM_IT} at random)\. "
    rf"<FIND> the probability that (?:it|the (?P<again>{_THING})) is (?P<no>not )?(?P<asked>{_COLOUR})"
    r"(?=[ .?!,]|$)"
)
_IS = "is|are|was|were|will|has|have|can"
_DOERS = (
    "bus|train|flight|coach|boat|team|player|swimmer|runner|pupil|driver|boy|girl|seed|plant|bulb|"
    "ticket|parcel|letter|spinner|arrow|light|tyre|phone|shop|club|dog|cat|bike|car"
)
# A name, or a thing by its noun alone: *someone* and *every bus* deny something else with *not*.
_WHO = rf"(?:it|(?-i:[A-Z][a-z]+)|(?:an?|the|his|her|my|your|our) (?P<noun>{_DOERS}))"
_CONTRARY = (
    rf"^the probability (?:that|of) (?P<who>{_WHO}) (?:(?P<is>{_IS}) (?P<what>[a-z ]+)|"
    rf"(?P<does>[a-z]+[^s\W])(?P<s>s)(?P<rest>(?: [a-z]+)*)) is (?P<p>{SLOT})\. "
    r"<FIND> the probability that (?:(?P=who)|it|he|she|they|the (?P=noun)) "
    r"(?:(?P=is) not (?P=what)|does not (?P=does)(?P=rest))(?=[.?!]|$)"
)
_PART = late(rf"({SLOT}) ({_COLOUR})(?: ({_MANY}|{_THING})\b)?")


def contrary_as_one(text: str) -> str:
    r"""Return the question how likely it is that something is not, as one, or the text as it is.

    >>> told = "The probability that it rains is \ue000. "
    >>> contrary_as_one(told + "What is the probability that it does not rain?")[:29]
    'Find the probability of not \ue000'
    >>> contrary_as_one(told + "What is the probability that it does not snow?")[:3]
    'The'
    """
    match = phrase(_CONTRARY).match(text)
    if match is None or _DENIED.search(match[0].partition(". ")[0]):
        return text
    return f"Find the probability of not {match['p']}{text[match.end() :]}"


_DENIED = late(r"\b(?:not|no|never|nobody|nothing|none|neither|only|both|or|and|either|if)\b", re.I)


def colours_as_one(text: str) -> str:
    r"""Return the story of a thing taken at random as one question, or the text as it is.

    >>> told = "A bag holds \ue000 red and \ue001 blue counters. A counter is taken at random. "
    >>> colours_as_one(told + "What is the probability that it is blue?").startswith("Find the prob")
    True
    >>> colours_as_one(told + "Is it blue?") == told + "Is it blue?"
    True
    """
    match = phrase(_STORY).match(text)
    if match is None:
        return text
    parts = _PART.findall((match["held"] or match["there"]).lower())
    counts = {colour: slot for slot, colour, _ in parts}
    thing = match["one"] or match["two"]
    # Each is told by its own colour, and what is taken is what is told: no pen from among beads.
    nouns = {noun for *_, noun in parts if noun} | {match["again"] or thing, thing}
    asked = match["asked"].lower()
    if len(counts) < len(parts) or asked not in counts:
        return text
    if not {noun.lower() for noun in nouns} <= {thing.lower(), THINGS[thing.lower()]}:
        return text
    others = [slot for colour, slot in counts.items() if colour != asked]
    way = "none" if match["no"] else "one"
    said = f"Find the probability of taking {way} of {counts[asked]} out of it and "
    return f"{said}{' and '.join(others)}{text[match.end() :]}"


def _contrary(chance: t.Node) -> Built:
    """Return 1 − p, or 100 % − p."""
    if not isinstance(chance, t.Dec | t.Frac | t.Percent) or not 0 <= exact(chance) <= 1:
        raise NotBuilt("A probability is a number from 0 to 1.")
    whole: t.Node = t.Percent(t.Int(100)) if isinstance(chance, t.Percent) else t.Int(1)
    return less(whole, chance)[0], (100 if isinstance(chance, t.Percent) else 1,)


def _some_of(asked: t.Node, *others: t.Node) -> Built:
    return t.Frac(asked, _all((asked, *others))), ()


def _none_of(asked: t.Node, *others: t.Node) -> Built:
    first, *rest = others
    left = t.Sum(first, tuple(("+", node) for node in rest)) if rest else first
    return t.Frac(left, _all((asked, *others))), ()


def _all(counts: tuple[t.Node, ...]) -> t.Node:
    if not all(isinstance(node, t.Int) and node.n > 0 for node in counts):
        raise NotBuilt("Things are counted in whole numbers.")
    first, *rest = counts
    return t.Sum(first, tuple(("+", node) for node in rest))


_OUT_OF = r"of <M> out of it and <M>(?: and <M>)?(?: and <M>)?(?: and <M>)?"
CHANCE_SAYINGS = (
    Saying(r"find the probability of not <M>", _contrary),
    Saying(rf"find the probability of taking one {_OUT_OF}", _some_of),
    Saying(rf"find the probability of taking none {_OUT_OF}", _none_of),
)
