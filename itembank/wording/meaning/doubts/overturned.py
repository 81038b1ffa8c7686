"""Words that make another thing of a story than its numbers say: *a year ago*, *hollow*, *except*.

`ALWAYS` are words that no reader of this folder knows, so that a story with one of them is left to
a person even where its shape looks known. `UNREAD` are words that a reader may know; where none has
read the story whole, a person has to look. Each is a row with what it does, for the message.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Tale
from itembank.wording.sentences.prompt import SLOT


class Turn(NamedTuple):
    """Words that turn a story, and where they do: anywhere, in what is told, in the question."""

    words: str
    where: str


_SHAPE = r"(?:sides?|edges?|corners?|faces?|angles?|diagonals?)"
ALWAYS: tuple[Turn, ...] = (
    Turn(r"(?:last|next) (?:year|month|week)|(?:a|one) (?:year|month|week) (?:ago|later|before|from now)|"
         r"yesterday|tomorrow", "question"),
    Turn(r"should (?:it|he|she|they|the [a-z]+|[A-Z][a-z]+) have|was (?:it|he|she) due", "question"),
    Turn(rf"all (?:of )?(?:its|the|their) {_SHAPE}|{_SHAPE} (?:all )?together", "question"),
    Turn(r"and (?:his|her|their|another|one more|a second) [a-z’']+", "question"),
    Turn(r"(?:which|that) (?:takes in|includes|covers|allows)|(?:including|except) the first", "told"),
    Turn(rf"(?:it|its price|the price) is {SLOT}(?=[.,])", "percent"),
    Turn(r"(?:in|during|of|for) the (?:second|third|fourth|fifth|last) (?:year|month|week|day|hour)", "question"),
    Turn(rf"(?:at|by) {SLOT} (?:on )?the (?:next|following) (?:day|morning)", "anywhere"),
    Turn(rf"(?:interval|break|adverts|trailers|stop|delay)s?(?: of)? {SLOT} (?:in it|included|of it)", "anywhere"),
)  # fmt: skip
UNREAD: tuple[Turn, ...] = (
    # how many of what, and when
    Turn(rf"{SLOT} of (?:each|both)", "question"),
    Turn(rf"{SLOT} (?:more|less|fewer|longer|shorter|older|younger)(?= ?(?:[.,?!]|come|join|arrive|get in|are added))", "told"),
    Turn(r"except|besides|apart from|other than|all but", "anywhere"),
    Turn(r"(?:in|after|for|of) the (?:second|third|last|next|previous) (?:week|day|year|month|hour|one)", "anywhere"),
    Turn(r"every (?:other|second|third) [a-z]+|each other|one another", "anywhere"),
    Turn(r"compound|how much is (?:there )?in the account", "anywhere"),
    Turn(r"loose|not full|half full|half empty", "anywhere"),
    Turn(rf"is {SLOT} full.*\bfill", "anywhere"),
    Turn(r"by how much (?:has|did) (?:it|its|the) (?:[a-z]+ )?changed?", "question"),
    Turn(r"the least that|the most that|at least|at most|the cheapest way", "question"),
    Turn(rf"or {SLOT} each|or {SLOT} a (?:piece|box|pack)", "told"),
    Turn(r"have to give|must [A-Za-z]+ give|have the same|be equal", "question"),
    Turn(rf"{SLOT} of every {SLOT}|for every {SLOT} that", "told"),
    Turn(r"the [a-z]+ and the [a-z]+$", "question"),
    Turn(rf"including {SLOT}|includes {SLOT}|{SLOT} [a-z]+ included", "told"),
    Turn(rf"in (?:every|each) [a-z]+ of {SLOT}|in {SLOT} places|in an? (?:bag|box|tin|jar|bottle|basket|crate) of {SLOT}", "told"),
    Turn(r"(?:until|till|before) (?:it|she|he|they) (?:is|are|has|have) (?:twice|half|double|three times)", "question"),
    Turn(r"real one|the model weighs|(?:their|whose) product is", "told"),
    Turn(rf"is left\..*{SLOT} of the (?!rest|remain)[a-z]+", "told"),
    Turn(r"(?:risen|fallen|grown|gone up|gone down) (?:in all|altogether|in total)", "question"),
    Turn(r"the middle(?: one| number| angle| share)?$|what is the (?:second|third)$", "question"),
    Turn(r"(?:from|at|off|of) (?:each|every) (?:corner|end|side)|the digits", "told"),
    # on the way
    Turn(r"with a stop|stops? for|rests (?:for|of)|a rest of|has a rest|a break|breaks|pauses?|waits?|stands? still|while it moves", "anywhere"),
    Turn(rf"(?:train|lorry|ship|boat) of {SLOT}|(?:passes|crosses) (?:a|the) (?:bridge|tunnel|platform)", "told"),
    Turn(r"as (?:far|much|many|long) again|there and back|both ways|and back|on the way back|returns?", "anywhere"),
    # shapes
    Turn(r"hollow|open (?:box|tank|tin|top)|an open|no lid|without (?:a )?lid|half-full", "anywhere"),
    Turn(r"scale factor|enlarged|enlargement|similar", "anywhere"),
    Turn(r"sum of (?:the|its|all)(?: other| two| interior| exterior)?(?: [a-z]+)? angles|interior angles?", "question"),
    Turn(r"bearing|clockwise|anticlockwise|turns? (?:left|right|back|round|through)", "anywhere"),
    Turn(r"semicircle|quarter circle|the whole way round", "anywhere"),
    Turn(r"edges (?:come|add up) to|edges", "question"),
    Turn(rf"(?:goes )?round {SLOT} (?:of its |of the )?sides", "told"),
    Turn(rf"(?:posts?|poles?|trees?|lights?|lamps?|flags?|stakes?|stops?) (?:stand |are |is |at )?every {SLOT}", "told"),
    Turn(rf"(?:pages?|rooms?|floors?|seats?|numbers?|houses?|chapters?|lockers?|days?) (?:from )?{SLOT} to {SLOT}", "anywhere"),
    # counting
    Turn(r"handshakes?|shake hands|outfits?|arrangements?|how many (?:different )?(?:choices|ways|orders|pairs|games)", "anywhere"),
    Turn(r"neither|nobody|no one|none of them|at least one", "anywhere"),
    Turn(rf"{SLOT} (?:is|are|was|were) left over|remainder", "told"),
)  # fmt: skip


def overturned(tale: Tale, turns: tuple[Turn, ...]) -> str:
    """Return the words of a story that one of the rows knows, as they stand there, or ``""``.

    >>> from itembank.notation.tree import Int
    >>> told = Tale(("A hollow block is ", Int(5), " cm wide. How heavy is it?"))
    >>> overturned(told, UNREAD), overturned(told, ALWAYS)
    ('hollow', '')
    """
    for turn in turns:
        if turn.where == "percent" and not tale.of("percent"):
            continue
        text = {"question": tale.question, "told": tale.told}.get(turn.where, tale.text)
        if found := late(rf"(?<!\w)(?:{turn.words})(?![\w’'-])", re.I).search(text):
            return found[0]
    return ""
