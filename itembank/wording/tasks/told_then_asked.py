"""Two sentences that are one question: *A circle has a radius of* {5 cm}, and *Find its area*.

What the first tells is put into the second, word by word, and read there: *Find the area of a
circle that has a radius of* {5 cm}. So nothing is passed over that would not be in one sentence.
"""

from __future__ import annotations

import re

from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.tasks.sayings.chance_sayings import colours_as_one, contrary_as_one
from itembank.wording.tasks.sayings.motion_sayings import MOVES, TRAVELS

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
_MOVED = (
    r"^(?:the point )?<M> is (?P<how>reflected|rotated|translated|enlarged) (?P<told>[^.?!;:]*)\. "
    r"(?:where is (?:its|the) image|where does it go|<FIND> (?:the coordinates of )?(?:its|the) image|"
    r"<FIND> its new (?:coordinates|position))(?=[ .?!,]|$)(?! of\b)"
)
_MOVE = (
    r"^(?P<move>(?:reflect|rotate|translate|enlarge) (?:the point )?<M> [^.?!;:]*)\. "
    r"(?:<FIND> (?:the coordinates of )?(?:its|the) image|<FIND> (?:its|the) new coordinates)"
    r"(?=[ .?!,]|$)(?! of\b)"
)
_NUMBER = r"(?:<FIND>|what was) the (?:original |whole )?(?:number|amount)(?=[ .?!,]|$)(?! of\b)"


_COMMANDS = {
    "reflected": "Reflect",
    "rotated": "Rotate",
    "translated": "Translate",
    "enlarged": "Enlarge",
}


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
    if match := phrase(_MOVED).match(text):
        how = _COMMANDS[match["how"].lower()]
        return f"{how} the point {match[1]} {match['told']}{text[match.end() :]}"
    if match := phrase(_MOVE).match(text):
        return f"{match['move']}{text[match.end() :]}"
    if (match := _OF_A_NUMBER.match(text)) and (asked := phrase(_NUMBER).match(text, match.end())):
        said = f"Find the number of which {match['part']} is {match['made']}"
        return f"{said}{text[asked.end() :]}"
    return colours_as_one(contrary_as_one(text))
