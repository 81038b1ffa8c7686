"""A story that stands before a command which points back at its mathematics.

*Seven pupils scored* {5, 9, 7} *in a test. What was the median score?* Nobody reads the story but
for its mathematics, so that it may have plain words only: a word that nobody looked at could
change what the numbers are, as in *The frequencies of five marks are* {…}, or *a year ago*.

>>> [strange_in_story(words) for words in (
...     "Seven pupils scored \ue000 in a test", "Seven pupils dropped \ue000 marks in a test")]
['', 'dropped']
"""

from __future__ import annotations

import re

from itembank.figures.kinds.chart.chart_held import COUNTED_PEOPLE
from itembank.text.plain_words import PLAIN
from itembank.wording.sentences.numbers_said import CARDINALS
from itembank.wording.sentences.phrases import unit_names

_STORY = frozenset(
    re.findall(
        r"\w+",
        "lends gardener counts different serves salads mends bike cold store night here below her his their he she completes complete completed training programme hiring hire per "
        "pounds instructors formula finish finishes race order list used uses uses fuel holds hold "
        "held scored score scores test quiz exam film lasts lasted jug rope ribbon string plank "
        "path wall fence star planet away long wide tall high deep old full empty crowd match "
        "chance ratio cats cat dogs dog girls girl boys boy uneaten eaten part cake pizza pie loaf "
        "bread flour sugar rice salt milk juice cordial water petrol paint oil sand soil sequence "
        "pattern begins begin starts start goes go term terms nth weighs weigh weighed measures "
        "measure measured contains contain costs bottle sack bucket can kettle mug cup glass pond "
        "aquarium parcel baby person adult athlete length lengths heights height age ages mass "
        "masses weight weights price prices temperature temperatures time times distance distances "
        "speed speeds cost mark marks depth depths width widths data set results result following "
        "are is car train plane flies flew drives drove runs ran swims travels cycles flight lesson "
        "journey takes took turn turns map drawing tap hose",
    )
)
"""Words of stories that lead up to a question, beyond those that are plain anywhere."""
_MEASURES = {
    word: measure
    for measure, words in {
        "age": "age ages old aged",
        "height": "height heights tall high",
        "length": "length lengths long",
        "mass": "mass masses weight weights weigh weighs weighed heavy",
        "price": "price prices cost costs",
        "temperature": "temperature temperatures",
        "distance": "distance distances",
        "speed": "speed speeds",
        "time": "time times took finish",
        "score": "score scores scored mark marks",
    }.items()
    for word in words.split()
}
_ASKED = re.compile(rf"\b(?:mean|average|median|mode|range)(?: of the)? ({'|'.join(_MEASURES)})\b")


def strange_in_story(sentence: str) -> str:
    """Return a word of a story that is not known to be plain, or ``""``.

    A name begins with a capital, and has one of the plain words after it where it begins all.
    """
    words: list[str] = re.findall(r"[A-Za-z][a-z’'-]*", sentence)
    for place, word in enumerate(words):
        plain = word.casefold().removesuffix("’s").removesuffix("'s").strip("’'-")
        if _is_plain(plain) or (word[0].isupper() and place):
            continue
        if word[0].isupper() and len(words) > 1 and words[1] in _AFTER_A_NAME:
            continue
        if len(word) == 1:
            continue  # n instructors
        return word
    return ""


_AFTER_A_NAME = PLAIN - frozenset(re.findall(r"\w+", "a an the some this these of and to from"))


def _is_plain(word: str) -> bool:
    people = {word, f"{word}s"} & COUNTED_PEOPLE
    return bool(people) or word in PLAIN | _STORY or word in CARDINALS or word in unit_names()


def other_measure(told: str, asked: str) -> str:
    """Return what a question of a list asks for where its story measures another thing, or ``""``.

    >>> other_measure("The ages of five swimmers are …", "Find the median height")
    'height'
    """
    found = _ASKED.search(asked.casefold())
    here = {_MEASURES[word] for word in re.findall(r"[a-z]+", told.casefold()) if word in _MEASURES}
    return found[1] if found and here and _MEASURES[found[1]] not in here else ""
