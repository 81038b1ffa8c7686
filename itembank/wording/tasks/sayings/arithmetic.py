"""Sums that are said in words: *the sum of*, *half of*, *increase … by …*, *the reciprocal of*.

Each wording has a builder that makes the tree to be worked out from the pieces of mathematics it
names. What a word adds of its own (the 2 of *half*, the 1 of *reciprocal*, the 100 % of
*increase*) is a constant the proof may use though no figure of the prompt shows it.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from itembank.wording.sentences.phrases import phrase
from itembank.wording.tasks.sums.list_sums import halfway, mean, median, mode, spread
from itembank.wording.tasks.sums.part_sums import (
    added,
    changed_by,
    part_of,
    part_of_one,
    percent_more,
    percent_off,
    percentage_change,
    percentage_loss,
    share_of,
    whole_first,
    whole_of,
)
from itembank.wording.tasks.sums.sums import (
    Built,
    difference,
    less,
    more,
    over,
    power,
    product,
    ratio_of,
    reciprocal,
    remainder,
    root,
    shared_by,
    times,
    times_in,
    to_the_power,
    total,
    under,
    worth_of_digit,
)


class Saying(NamedTuple):
    """A wording and what it makes of its pieces of mathematics. `form` is the form it asks for.

    `back` says that it may point back at one list, with no mathematics of its own; `any_order` that
    the answer is a list whose order does not matter; `rounds` that what it says of rounding is
    done by the builder, and not to the answer. Where a wording
    has named groups, the builder gets their words first, in a dictionary.
    """

    wording: str
    build: Callable[..., Built]
    form: str = ""
    back: bool = False
    any_order: bool = False
    rounds: bool = False

    @property
    def pattern(self) -> re.Pattern[str]:
        """Return the wording as a pattern, compiled when it is first looked at."""
        return phrase(self.wording)


_MORE = "more|bigger|larger|greater|higher|longer|heavier"
_LESS = "less|smaller|lower|shorter|lighter"

_AMOUNT = r"(?:number|temperature|amount|length|mass|price|value)"
_LESS_THAN = r"(?:less than|lower than|colder than|smaller than|below)"
_MORE_THAN = (
    r"(?:more than|higher than|warmer than|hotter than|greater than|bigger than|larger than|above)"
)
_MUST = (
    r"(?:what|how much|which number|what number)(?: number)? (?:(?:must|should|do|would|can|could|has to|have to|needs? to)(?: (?:you|i|we))?"
    r"(?: (?:have to|need to))?(?: be)?|is|has to be|needs to be)"
)
_TO_MAKE = r"to (?:make|get|give|leave|equal|reach|become)"
_GIVES = r"(?:gives?|makes?|is|equals|is equal to|comes to)"

_ONE = r"(?:an?|one) (?P<unit>hour|minute|day|week|year|metre|kilometre|kilogram|litre|tonne|pound)"

_SAYINGS: tuple[tuple[str, Callable[..., Built], str], ...] = (
    (r"(?:add|add up|add together|find the total of|total) <NPs>", total, ""),
    (r"add <M> (?:to|and|on to|on) <NP>", added, ""),
    (r"take <M> off <NP>", percent_off("-"), ""),
    (r"<FIND> <M> off <NP>", percent_off("-"), ""),
    (r"<FIND> the (?:sum|total) of <NPs>", total, ""),
    (r"<FIND> <M> (?:plus|add) <M>", total, ""),
    (r"(?:subtract|take(?: away)?) <M> (?:away )?from <NP>", lambda a, b: less(b, a), ""),
    (r"<FIND> <M> (?:minus|take away|subtract) <M>", less, ""),
    (r"<NAME> (?:the number (?:that|which) is )?<M> less than <M>", percent_more("-"), ""),
    (r"<NAME> (?:the number (?:that|which) is )?<M> more than <M>", percent_more("+"), ""),
    (rf"(?:what|which) {_AMOUNT} is <M>(?: degrees)? {_LESS_THAN} <M>", percent_more("-"), ""),
    (rf"(?:what|which) {_AMOUNT} is <M>(?: degrees)? {_MORE_THAN} <M>", percent_more("+"), ""),
    (rf"how (?:much|many) (?:{_MORE}) is <M> than <M>", more, ""),
    (rf"how (?:much|many) (?:{_LESS}|fewer) is <M> than <M>", lambda a, b: more(b, a), ""),
    (rf"(?:by how much|how much) is <M> (?:{_LESS}) than <M>", lambda a, b: more(b, a), ""),
    (rf"by how much is <M> (?:{_MORE}) than <M>", more, ""),
    (r"how much is <M> less than <M>", under, ""),
    (rf"how much (?:{_LESS}) than <M> is <M>", more, ""),
    (rf"how much (?:{_MORE}) than <M> is <M>", lambda a, b: more(b, a), ""),
    (
        r"(?:<FIND> )?(?:what|which)? ?(?:number|value)? ?(?:is|lies)? ?(?:exactly )?(?:half[ -]?way|midway) between <M> and <M>",
        halfway,
        "",
    ),
    (
        r"<FIND> the (?:number|value|amount|temperature) (?:that is )?(?:exactly )?(?:half[ -]?way|midway) between <M> and <M>",
        halfway,
        "",
    ),
    (
        r"<FIND> the difference (?:in (?:temperature|length|mass|price|height|age|time|weight|cost) )?between <NPs>",
        difference,
        "",
    ),
    (rf"{_MUST} add(?:ed)? to <M> {_TO_MAKE} <M>", lambda a, b: less(b, a), ""),
    (rf"{_MUST} (?:subtract(?:ed)?|take[n]?(?: away)?) from <M> {_TO_MAKE} <M>", less, ""),
    (rf"{_MUST} multiply <M> by {_TO_MAKE} <M>", lambda a, b: over(b, a), ""),
    (rf"{_MUST} divide <M> by {_TO_MAKE} <M>", over, ""),
    (rf"(?:what|which) number added to <M> {_GIVES} <M>", lambda a, b: less(b, a), ""),
    (rf"(?:what|which) number multiplied by <M> {_GIVES} <M>", lambda a, b: over(b, a), ""),
    (rf"(?:what|which) number divided by <M> {_GIVES} <M>", lambda a, b: product(b, a), ""),
    (
        r"<FIND> (?:the amount |the number )?left (?:when|if|after) <M> is (?:subtracted|taken(?: away)?) from <M>",
        lambda a, b: less(b, a),
        "",
    ),
    (r"<FIND> the remainder when <M> is divided by <M>", remainder, ""),
    (
        r"<FIND> the difference between the (?:largest|greatest|biggest|highest) (?:number |value )?and (?:the )?"
        r"(?:smallest|least|lowest) (?:number |value )?(?:of|in) <NPs>",
        spread,
        "",
    ),
    (r"<FIND> the product of <NPs>", product, ""),
    (r"multiply <NP> by <NP>", product, ""),
    (r"multiply <M> and <M>", product, ""),
    (r"<FIND> <M> (?:times|multiplied by|lots of) <M>", product, ""),
    (
        r"how many times (?:does|will|can) <M> (?:go|fit|divide) into <M>",
        lambda a, b: times_in(b, a),
        "",
    ),
    (
        r"how many times (?:bigger|larger|greater|heavier|longer|as big|as large) (?:is )?<M> (?:than|as) <M>",
        times_in,
        "",
    ),
    (r"divide <NP> by <NP>", over, ""),
    *(
        (
            rf"<FIND> the (?:answer|result|number)(?: you get)? (?:when|if) <M> is {words} <M>",
            build,
            "",
        )
        for words, build in (
            ("multiplied by", product),
            ("divided by", over),
            ("(?:added to|increased by)", lambda a, b: changed_by("+")(a, b)),
            ("(?:subtracted|taken(?: away)?) from", lambda a, b: less(b, a)),
            ("(?:decreased by|reduced by)", lambda a, b: changed_by("-")(a, b)),
        )
    ),
    (r"<FIND> <VALUE><M> to the power(?: of)? <M>", to_the_power, ""),
    (r"<FIND> <M> divided by <M>", over, ""),
    (
        r"how many (?:lots of |groups of )?<M>'?s?(?: coins| notes| pieces)? (?:are (?:there )?in|go into|make(?: up)?|fit into|are "
        r"needed (?:to make|for)|are worth) <M>",
        lambda a, b: times_in(b, a),
        "",
    ),
    (r"(?:double|<FIND> (?:double|twice)) <NP>", times(2), ""),
    (r"(?:treble|triple|<FIND> (?:treble|triple|three times)) <NP>", times(3), ""),
    (r"(?:halve|<FIND> (?:a )?half(?: of)?) <NP>", shared_by(2), ""),
    (r"<FIND> (?:a|one) third of <NP>", shared_by(3), ""),
    (r"<FIND> (?:a|one) quarter of <NP>", shared_by(4), ""),
    (r"<FIND> (?:a|one) fifth of <NP>", shared_by(5), ""),
    (r"<FIND> (?:a|one) tenth of <NP>", shared_by(10), ""),
    (r"square <NP>", power(2), ""),
    (r"<FIND> the square of <NP>", power(2), ""),
    (r"<FIND> <VALUE><M> squared", power(2), ""),
    (r"cube <NP>", power(3), ""),
    (r"<FIND> the cube of <NP>", power(3), ""),
    (r"<FIND> <VALUE><M> cubed", power(3), ""),
    (r"<FIND> the (?:positive )?square root of <NP>", root(2), ""),
    (r"square root <NP>", root(2), ""),
    (r"cube root <NP>", root(3), ""),
    (r"<FIND> the cube root of <NP>", root(3), ""),
    (r"<FIND> the reciprocal of <NP>", reciprocal, ""),
    (r"<FIND> <VALUE><M> of <M>", part_of, ""),
    (r"<M> of <M>", part_of, ""),
    (rf"<FIND> <VALUE><M> of {_ONE}", part_of_one, ""),
    (rf"how many <UNIT> (?:are (?:there )?in|is|are|make(?: up)?) <M> of {_ONE}", part_of_one, ""),
    (r"<FIND> the number of which <M> is <M>", whole_of, ""),
    (r"<FIND> the value of (?:the )?(?:digit )?<M> in(?: the number)? <M>", worth_of_digit, ""),
    (
        r"<FIND> the place value of (?:the )?(?:digit )?<M> in(?: the number)? <M>",
        worth_of_digit,
        "",
    ),
    (r"<FIND> <M> (?:increased|raised) by <M>", changed_by("+"), ""),
    (r"<FIND> <M> (?:decreased|reduced) by <M>", changed_by("-"), ""),
    (r"(?:increase|raise) <NP> by <M>", changed_by("+"), ""),
    (r"(?:decrease|reduce|lower) <NP> by <M>", changed_by("-"), ""),
    (r"what (?:percentage|per cent|percent) of <M> is <M>", whole_first, "percentage"),
    (
        r"(?:what|which) (?:percentage|per cent|percent) is <M> (?:out )?of <M>",
        share_of,
        "percentage",
    ),
    (r"what fraction of <M> is <M>", whole_first, "lowest-terms"),
    (r"what fraction is <M> (?:out )?of <M>", share_of, "lowest-terms"),
    (r"<PUT> <M> as a percentage of <M>", share_of, "percentage"),
    (r"(?:work out|find) <M> as a percentage of <M>", share_of, "percentage"),
    (r"<M> is what (?:percentage|per cent|percent) of <M>", share_of, "percentage"),
    (r"<M> is what fraction of <M>", share_of, "lowest-terms"),
    (r"<PUT> <M> out of <M>", share_of, ""),
    (r"what is <M> out of <M>", share_of, ""),
    (r"<FIND> the ratio(?: of)? <M> to <M>", ratio_of, ""),
    (r"<PUT> the ratio(?: of)? <M> to <M>", ratio_of, ""),
    (r"what is <M> as a percentage of <M>", share_of, "percentage"),
    (r"<PUT> <M> as a fraction of <M>", share_of, "lowest-terms"),
    (r"(?:work out|find) <M> as a fraction of <M>", share_of, "lowest-terms"),
    (r"what is <M> as a fraction of <M>", share_of, "lowest-terms"),
    (
        r"<FIND> the percentage (?:increase|rise|gain|profit) from <M> to <M>",
        percentage_change,
        "percentage",
    ),
    (
        r"<FIND> the percentage (?:decrease|reduction|loss|fall|drop) from <M> to <M>",
        percentage_loss,
        "percentage",
    ),
    (
        r"(?:by|from) what percentage (?:does|did|has|is|must) <M> (?:increased?|rise|risen|go up|gone up|grow)"
        r"(?: to (?:make|become|get|give))?(?: to)? <M>",
        percentage_change,
        "percentage",
    ),
    (
        r"by what percentage (?:does|did|has|is|must) <M> (?:decreased?|fall|fallen|go down|gone down|drop|reduced)"
        r"(?: to (?:make|become|get|give))?(?: to)? <M>",
        percentage_loss,
        "percentage",
    ),
)

_MEASURED = (
    r"(?: (?:time|score|mark|height|length|mass|weight|age|price|temperature|distance|speed|value|cost|"
    r"amount|number))?"
)
_ITS = r"(?:the|their|its)"
_BETWEEN = r"(?: (?:of|between) <THEM>)?"
_OF_A_LIST: tuple[tuple[str, Callable[..., Built]], ...] = (
    (rf"<FIND> {_ITS} (?:mean|average){_MEASURED}<of>", mean),
    (rf"<FIND> {_ITS} median{_MEASURED}<of>", median),
    (rf"<FIND> {_ITS} (?:mode|modal value){_MEASURED}<of>", mode),
    (rf"<FIND> {_ITS} range<of>", spread),
)
"""What is found of a list, which may stand in a sentence before."""

SAYINGS = (
    *(Saying(*row) for row in _SAYINGS),
    *(
        Saying(wording.replace("<of>", of), build, "", "<NPs>" not in of)
        for wording, build in _OF_A_LIST
        for of in (r" (?:of|from) <NPs>", r" (?:of|for) <THEM>", "")
    ),
)
