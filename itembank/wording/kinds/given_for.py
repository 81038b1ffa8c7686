"""What the words of a story say that its amounts are for: £9 an hour, {12} eggs in each box."""

from __future__ import annotations

import re
from collections.abc import Sequence

from itembank.notation.tree import (
    Dec,
    Int,
    Money,
    Node,
    Quantity,
)
from itembank.text.late_pattern import late
from itembank.wording.kinds.kind import Kind, of_thing, of_unit
from itembank.wording.kinds.things_counted import SMALL_WORDS, noun_before, noun_stem
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.prompt import SLOT, index_of

_PER_NOUN = r"(?:of (?:the|its|these|those) )?(?P<per>(?:square |cubic )?[a-z'-]+(?: [a-z'-]+)?)"

_PER = late(
    rf"(?P<amount>{SLOT})[ -]?(?:(?:of )?[a-z'-]+[ -]){{0,3}}?"
    rf"(?:per|(?<!\bin )(?<!\bon )(?<!\bat )(?<!\bof )(?<!\bby )(?<!\bas )(?<!\bis )(?<!\bto )(?<!\bor )"
    r"(?<!\bfor )(?<!\bwas )(?<!\band )(?<!\bwith )(?<!\bfrom )(?<!\binto )(?<!\bthan )an?|"
    rf"each|every|(?:for|to|in|on|with|at|from) (?:each|every)|to the) {_PER_NOUN}",
    re.I,
)
"""What an amount is for, in so many words: £9 an hour, 12 eggs in each box."""

_MAY_BE_PER = late(
    rf"(?P<amount>{SLOT})[ -]?(?:(?:of )?[a-z'-]+[ -]){{0,4}}?(?:in|on|for|with|by) (?:an?|one) {_PER_NOUN}",
    re.I,
)
"""What an amount may be for: 60 km in an hour, but £45 for one day and £12 for each extra day."""

_EACH = late(
    rf"(?P<amount>{SLOT})(?: [a-z'-]+){{0,2}}? (?:each|apiece|for (?:any|each) one)\b(?! (?:[a-z]|{SLOT}))",
    re.I,
)

_EACH_OF = late(
    rf"(?P<amount>{SLOT})(?-i:[^.,\ue000-\uf8ff])*\b(?:each|every one) of (?:its |the |her |his |their |these )?{SLOT} "
    r"(?P<per>[a-z'-]+)",
    re.I,
)

_EACH_SPAN = late(
    rf"\b(?:each|every) (?P<per>second|minute|hour|day|week|month|year)\b(?:[^.?!;,\ue000-\uf8ff])*(?P<amount>{SLOT})",
    re.I,
)

_IN_PACKS = late(
    rf"\b(?P<per>boxes|packs|packets|bags|bunches|crates|trays|rows|teams|groups|cartons|sets|tins|bundles|stacks|"
    rf"batches|tables|cases|sacks|strips|sheets|piles) of (?P<amount>{SLOT})(?! ?(?:by|cm|m|kg|g|ml)\b)",
    re.I,
)

_COSTS = (
    r"(?:costs?|weighs?|holds?|uses?|needs?|takes?|has|seats?|carr(?:y|ies)|makes?|is|measures?|earns?|"
    r"gives?|covers?|contains?|can (?:hold|carry|seat|take)|lasts?|serves?|feeds?|produces?|sells? for|"
    r"is sold for|is bought for|charges?|fills?|eats?|drinks?)"
)

_SUBJECT = late(
    rf"(?:^|[.?!,;] ?|\band |\bif |\bthat )(?:an?|each|every|one) (?P<per>(?:square |cubic )?[a-z'-]+(?: [a-z'-]+)?)"
    rf"(?: of [a-z'-]+(?: [a-z'-]+)?)?(?: [a-z'-]+)? {_COSTS} (?:an? |about |exactly )?(?P<amount>{SLOT})",
    re.I,
)

_PAIR = late(
    rf"(?P<one>{SLOT}) ?(?:of [a-z'-]+ )?(?:stands? for|represents?|shows?|is worth|are worth|is equal to|equals|buys?|"
    rf"costs?|gets?|to|for|=|is|means?) (?:about |every |each )?(?P<many>{SLOT})",
    re.I,
)

_TO_ONE = late(rf"(?P<one>{SLOT}) to the (?P<per>pound|euro|dollar)\b", re.I)


class GivenFor:
    """What the amounts of a story are given for, by their place among its numbers.

    `rates` holds what an amount is for in so many words, `may_rate` what it may be for;
    `in_packs` are the places in the text of the sizes of packs, *boxes of {6}*.
    """

    def __init__(self, text: str, nodes: Sequence[Node]) -> None:
        self.text, self.nodes = text, nodes
        self.rates: dict[int, list[Kind]] = {}
        self.may_rate: dict[int, list[Kind]] = {}
        self.in_packs: set[int] = set()
        self._find_rates()

    def _find_rates(self) -> None:
        for match in _PER.finditer(self.text):
            self._rate(match["amount"], _per(match["per"]))
        for match in _MAY_BE_PER.finditer(self.text):
            self._may_rate(match["amount"], _per(match["per"]))
        for match in _SUBJECT.finditer(self.text):
            per = _per(match["per"])
            # A litre costs £1.20: used as it stands where one litre is bought.
            (self._may_rate if per and per.measures() else self._rate)(match["amount"], per)
        for match in _EACH_SPAN.finditer(self.text):
            self._may_rate(match["amount"], _per(match["per"]))
        for match in _IN_PACKS.finditer(self.text):
            self.in_packs.add(match.start("amount"))
            self._rate(match["amount"], of_thing(noun_stem(match["per"])))
        for match in _EACH_OF.finditer(self.text):
            self._rate(match["amount"], _per(match["per"]))
        for match in _EACH.finditer(self.text):
            if noun := noun_before(self.text, match.start()):
                self._rate(match["amount"], of_thing(noun))
        for match in _PAIR.finditer(self.text):
            single, many = (self.nodes[index_of(match[name])] for name in ("one", "many"))
            for this, other, char in ((single, many, match["many"]), (many, single, match["one"])):
                if isinstance(this, Quantity | Money) and this.amount == Int(1):
                    unit = this.unit if isinstance(this, Quantity) else this.sign
                    if isinstance(other, Quantity | Money | Int | Dec):
                        self._may_rate(char, of_unit(unit))
        for match in _TO_ONE.finditer(self.text):
            self._may_rate(match["one"], of_unit(unit_names()[match["per"].lower()]))

    def _rate(self, char: str, per: Kind | None) -> None:
        if per is not None:
            self.rates.setdefault(index_of(char), []).append(per)

    def _may_rate(self, char: str, per: Kind | None) -> None:
        if per is not None:
            self.may_rate.setdefault(index_of(char), []).append(per)


def _per(words: str) -> Kind | None:
    names = unit_names()
    tokens = words.split()
    for size in (len(tokens), *range(1, len(tokens))):
        for start in range(len(tokens) - size + 1):
            name = " ".join(tokens[start : start + size]).lower().removesuffix("'s")
            if name in names and (len(name) > 1) and name not in ("in", "st", "pt"):
                return of_unit(names[name])
    noun = noun_stem(tokens[0]) if tokens and tokens[0].lower() not in SMALL_WORDS else ""
    return of_thing(noun) if noun else None
