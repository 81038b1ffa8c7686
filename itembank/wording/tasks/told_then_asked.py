"""Two sentences that are one question: *A circle has a radius of* {5 cm}, and *Find its area*.

What the first tells is put into the second, word by word, and read there: *Find the area of a
circle that has a radius of* {5 cm}. So nothing is passed over that would not be in one sentence.
"""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.tasks.motion_sayings import MOVES, TRAVELS

_SHAPE = (
    r"rectangle|square|triangle|parallelogram|trapezium|circle|cuboid|cube|cylinder|"
    r"right[- ]angled triangle"
)
_SIZE = r"(?:total )?(?:surface )?area|perimeter|volume|circumference|(?:length of the )?hypotenuse"
_OF_IT = (
    rf"^(?P<a>an?) (?P<shape>{_SHAPE}) (?P<told>(?:has|is) [^.?!;:]*)\. (?P<find><FIND>) "
    rf"(?:its (?P<size>{_SIZE})|the (?P<the>{_SIZE})(?: of (?:the|this) (?P=shape))?)(?=[ .?!,]|$)(?! of\b)"
)
_ANGLES = (
    rf"^(?:two|three) (?:of the )?angles (?:of|in) (?P<shape>a triangle|a quadrilateral) are (?P<told>"
    rf"{SLOT}(?:,? and |, )[^.?!;:]*)\. (?P<find><FIND>) the (?P<size>(?:size of the )?"
    r"(?:third|fourth|last|missing|remaining|other) angle)(?=[ .?!,]|$)(?! of\b)"
)
_SPEED = (
    rf"^(?P<what>an? (?:{MOVES})) (?P<told>(?:{TRAVELS}) [^.?!;:]*)\. (?P<find><FIND>) "
    r"(?:its|the) (?P<size>(?:average |mean )?speed)(?=[ .?!,]|$)(?! of\b)"
)
_OF_A_NUMBER = late(
    rf"^(?P<part>{SLOT}) of (?:a|some) (?:number|amount) is (?P<made>{SLOT})\. ", re.IGNORECASE
)
_NUMBER = r"(?:<FIND>|what was) the (?:original |whole )?(?:number|amount)(?=[ .?!,]|$)(?! of\b)"


def as_one(text: str) -> str:
    """Return a prompt whose first two sentences are one question as that question.

    >>> as_one("A cube has edges of \ue000. Find its volume.")
    'Find the volume of a cube that has edges of \ue000.'
    >>> as_one("A cube is heavy. Find its mass.")
    'A cube is heavy. Find its mass.'
    """
    if match := phrase(_OF_IT).match(text):
        size = match["size"] or match["the"]
        said = f"{match['a'].lower()} {match['shape']} that {match['told']}"
        return f"{match['find']} the {size} of {said}{text[match.end() :]}"
    if match := phrase(_ANGLES).match(text):
        said = f"{match['shape']} with angles {match['told']}"
        return f"{match['find']} the {match['size']} of {said}{text[match.end() :]}"
    if match := phrase(_SPEED).match(text):
        said = f"{match['what'].lower()} that {match['told']}"
        return f"{match['find']} the {match['size']} of {said}{text[match.end() :]}"
    if (match := _OF_A_NUMBER.match(text)) and (asked := phrase(_NUMBER).match(text, match.end())):
        said = f"Find the number of which {match['part']} is {match['made']}"
        return f"{said}{text[asked.end() :]}"
    return text
