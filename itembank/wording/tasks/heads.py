"""How each task is asked: the wordings teachers use, as data.

A wording begins a sentence; what may follow (a form, a rounding, *when x = 3*) stands in
:mod:`.answer` and :mod:`.read`. Groups are the mathematics the task is about, in order. The
first wording that reads a whole sentence counts, so a narrower one stands before a wider one.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.sizes import SIZES


class Head(NamedTuple):
    """A wording that sets a task. `back` says that it may point back, with no mathematics."""

    task: str
    wording: str
    back: bool = False

    @property
    def pattern(self) -> re.Pattern[str]:
        """Return the wording as a pattern, compiled when it is first looked at."""
        return phrase(self.wording)


_BOX = (
    r"(?:the |an? )?(?:missing |unknown )?(?:number|digit|fraction|decimal|value|amount|mixed number|percentage)"
    r"(?: (?:that|which) (?:goes|should go|belongs|fits) in(?:to)? the (?:empty )?box"
    r"| in the (?:empty )?box| (?:that|which) makes (?:this|it|the statement|the calculation) "
    r"(?:true|correct))?"
)
_SHARES = r"(?:share|divide|split)"
_COMMON = {
    "hcf": r"(?:highest|greatest|largest) common (?:factor|divisor)(?: \(?hcf\)?)?|hcf|h\.c\.f\.?",
    "lcm": r"(?:lowest|least|smallest) common multiple(?: \(?lcm\)?)?|lcm|l\.c\.m\.?",
}
_COMMON_SAID = (
    (
        "lcm",
        "(?:smallest|lowest|least)",
        r"is (?:a multiple of|divisible by|in the times tables of) both",
    ),
    (
        "hcf",
        "(?:largest|greatest|biggest|highest)",
        r"(?:is a factor of|divides|divides into|goes into) both",
    ),
)
_IN_ORDER = (
    r"in (?:ascending|descending|increasing|decreasing|size)?(?: ?order)?(?: of (?:size|value|length|"
    r"mass|weight|height|temperature|price|cost|age|distance))?"
)
_PRIMES = r"(?:(?:its|their|the) )?(?:powers of )?(?:(?:its|their|the) )?(?:prime factors|primes|prime numbers)"
_TERM = r"(?:(?:an expression|a formula|the rule|a rule) for )?(?:the|its) n\s?th term"
_SEQUENCE = (
    r"(?: (?:of|for)(?: the| this| a)?(?: (?:linear|quadratic|arithmetic|number|following))? sequence:?"
    r"| of| for)?"
    r"(?: (?:that|which) (?:begins|starts|goes)(?: with)?:?)?"
)
_KIND_OF_NUMBER = r"(?:decimal|fraction|percentage|mixed number|(?:improper|top-heavy) fraction)"
_THING = (
    r"(?:one of (?:these|the following)(?: [a-z]+)?|one|(?:of these )?(?:numbers?|fractions?|decimals?|"
    r"percentages?|values?|amounts?|ratios?|lengths?|mass(?:es)?|times?|temperatures?|distances?|"
    r"speeds?|heights?|weights?|scores?|marks?|prices?|ages?|years?))"
)
_THINGS = (
    r"(?:numbers|fractions|decimals|percentages|values|amounts|lengths|masses|times|temperatures|distances|speeds|"
    r"heights|weights|scores|marks|prices|ages|years|angles|areas|volumes|capacities)"
)
_LARGEST_OF = rf"the (?P<size>{SIZES})(?: {_THING})?(?: (?:of|out of|from|in))?[:,]? <NEither>"
_SIGN = r"(?:<, >,? or =|<, = or >|=, < or >|=, > or <|>, < or =|one of <, > or =|<, >, =)"

_WORDINGS: tuple[tuple[str, str, bool], ...] = (
    # Finding the number that makes an equation true.
    ("missing", rf"<FIND> {_BOX}", True),
    ("missing", rf"(?:fill|put) in {_BOX}", True),
    (
        "missing",
        r"(?:what|which) (?:number|digit|fraction|decimal) (?:goes|should go|belongs|is missing|fits)(?: in(?:to)? the (?:empty )?(?:box|gap|space))?",
        True,
    ),
    (
        "missing",
        r"(?:what|which) (?:number|fraction|decimal|value) makes (?:<where>|this|the (?:calculation|statement|sentence|equation)|it) (?:true|correct|work)",
        True,
    ),
    (
        "missing",
        r"(?:copy and )?complete(?: the (?:calculation|statement|equation|sentence))?(?:: ?| )<M>",
        False,
    ),
    ("missing", r"fill in the (?:missing number|box|gap|blank)(?: in)?(?:: ?| )<M>", False),
    (
        "missing",
        r"<FIND> the (?:missing )?(?:number|fraction|decimal|value) in(?: the box in)? <M>",
        False,
    ),
    # Sequences, factors and multiples.
    ("nth-term", rf"<FIND> {_TERM}{_SEQUENCE}(?: |: ?)<NPs>", False),
    ("nth-term", rf"<FIND> {_TERM}(?: (?:of|for) (?:this|the|each) sequence)?", True),
    ("nth-term", r"(?:the )?n\s?th term(?: of)?(?: the sequence)?:? <NPs>", False),
    *((task, rf"<FIND> the (?:{words}) of <NPs>", False) for task, words in _COMMON.items()),
    *((task, rf"(?:the )?(?:{words}) of <NPs>", False) for task, words in _COMMON.items()),
    *(
        (task, rf"<FIND> (?:the|their) (?:{words})(?: of <THEM>)?", True)
        for task, words in _COMMON.items()
    ),
    *(
        (
            task,
            rf"<FIND> the {size} (?:positive )?(?:whole )?number (?:that|which) {does} <NPs>(?: exactly)?",
            False,
        )
        for task, size, does in _COMMON_SAID
    ),
    ("prime-factors", rf"<PUT> <NP> as (?:a|the) product of {_PRIMES}", False),
    ("prime-factors", rf"<PUT> <THEM> as (?:a|the) product of {_PRIMES}", True),
    ("prime-factors", r"<FIND> the prime factori[sz]ation of <NP>", False),
    # Letters.
    (
        "expand",
        r"(?:expand|multiply out)(?: (?:and|then|and then) simplify)?(?: (?:(?:the|any|all) )?brackets?(?: in)?)?(?: and simplify)? <NP>",
        False,
    ),
    (
        "expand",
        r"(?:expand|multiply out)(?: (?:and|then|and then) simplify)?(?: (?:(?:the|any|all) )?brackets?)?(?: and simplify)?",
        True,
    ),
    ("expand", r"remove (?:the|any|all) brackets(?: (?:from|in) <NP>)?(?: and simplify)?", True),
    ("expand", r"<PUT> <NP> without (?:any )?brackets", False),
    ("factorise", r"(?:fully |completely )?factori[sz]e(?: fully| completely)? <NP>", False),
    ("factorise", r"(?:fully |completely )?factori[sz]e(?: fully| completely)?(?: <THEM>)?", True),
    (
        "factorise",
        r"take out (?:the|a|any) (?:(?:highest|largest|biggest|greatest) )?common factors?(?: (?:from|of|in))? <NP>",
        False,
    ),
    (
        "make-subject",
        r"(?:rearrange <THEM> to )?make <letter> the subject(?: of(?: the formula| this formula| the equation)?:? <M>)?",
        True,
    ),
    ("make-subject", r"make <letter> the subject of (?:the|this) (?:formula|equation)", True),
    ("make-subject", r"rearrange <NP> to make <letter> the subject", False),
    (
        "make-subject",
        r"rearrange <NP> (?:for|to (?:find|get|give)) <letter>(?: on its own)?",
        False,
    ),
    (
        "solve",
        r"(?:factori[sz]e,? (?:and so |and then |and |then )|hence,? )?solve (?:the )?(?:following )?(?:pair of )?(?:simultaneous equations:? )?<NPs>(?: for <letter>)?",
        False,
    ),
    (
        "solve",
        r"(?:factori[sz]e,? (?:and so |and then |and |then )|hence,? )?solve(?: <THEM>)?(?: for <letter>)?",
        True,
    ),
    (
        "solve",
        r"(?:factori[sz]e <NP>,? (?:and so |and then |and |then )|hence,? )solve (?:it|the equation)",
        False,
    ),
    (
        "solve",
        r"<FIND> (?:the|all(?: the)?|both|every)(?: possible| real)? (?:<pick> )?(?:solutions?|roots?) (?:of|to) <NPs>",
        False,
    ),
    ("solve", r"<FIND> the (?:<pick> )?(?:solutions?|roots?)", True),
    (
        "find-letter",
        r"<FIND> (?:the|all(?: the)?|both|every)(?: possible)? (?:<pick> )?values? of <letter> "
        r"(?:if|when|given(?: that)?|where|for which|that satisf(?:y|ies)|so that|such that|in) <where>",
        False,
    ),
    (
        "find-letter",
        r"<FIND> <letter>,? (?:if|when|given(?: that)?|where|in|so that|such that) <where>",
        False,
    ),
    (
        "find-letter",
        r"(?:if|when|given(?: that)?|for) <where>,? (?:then )?(?:<FIND>) (?:the value of )?<letter>",
        False,
    ),
    ("find-letter", r"<FIND> (?:the value of )?<letter>", True),
    ("solve", r"<FIND> (?:the value of )?the (?:letter|unknown)(?: in)?", True),
    ("solve", r"solve(?: (?:this|the|each) (?:equation|inequality))? for <letter> <NPs>", False),
    (
        "find-letter",
        r"(?:for )?(?:what|which) values? of <letter> (?:(?:makes?|satisf(?:y|ies)|solves?|is|does|gives?) )?"
        r"<where>(?: (?:true|correct|hold|holds))?",
        False,
    ),
    (
        "find-letter",
        r"<FIND> the values? of <letter> (?:that|which) (?:makes?|satisf(?:y|ies)|solves?) <where>(?: true| correct)?",
        False,
    ),
    # Fractions, decimals, surds.
    ("simplify", r"(?:fully )?simplify(?: fully| completely)? <NP>", False),
    ("simplify", r"(?:fully )?simplify(?: fully| completely)?(?: <THEM>)?", True),
    ("simplify", r"(?:cancel(?: down)?|reduce) <NP>(?: to its lowest terms)?", False),
    (
        "simplify",
        r"(?:collect|simplify by collecting)(?: the)? like terms(?: in| of)?:? <NP>",
        False,
    ),
    (
        "simplify",
        r"(?:collect|group)(?: the)? like terms(?: (?:to|and) simplify)?:? <NP>",
        False,
    ),
    (
        "simplify",
        r"write (?:this |the following )?(?:more simply|as simply as (?:possible|you can)):? <NP>",
        False,
    ),
    ("simplify", r"rationalise the denominators? of <NP>", False),
    ("simplify", r"rationalise <NP>", False),
    # Comparing and putting in order.
    (
        "compare",
        rf"(?:write|put|insert|place|use) (?:the (?:correct |right )?(?:sign|symbol)s?,? )?{_SIGN},? (?:in the box )?between <M> and <M>",
        False,
    ),
    (
        "compare",
        rf"(?:which (?:sign|symbol)|which of {_SIGN})(?: goes| should go| belongs)? (?:in the box )?between <M> and <M>(?:[:,]? {_SIGN})?",
        False,
    ),
    ("compare", r"which sign,? <M> or <M>", False),
    (
        "compare",
        r"(?:write|put|insert|place) the (?:correct|right) (?:sign|symbol) between <M> and <M>",
        False,
    ),
    (
        "compare",
        rf"(?:insert|write|put|use|complete (?:using|with)) {_SIGN}[:,]? <M>(?:,| and| ?\.\.\.)? ?<M>",
        False,
    ),
    ("compare", rf"(?:which (?:sign|symbol)) makes this true,? {_SIGN}[:,]? <M>,? <M>", False),
    (
        "extreme",
        rf"which(?: {_THING}| of (?:these|the following)(?: {_THING})?)?(?: is| has| was)?(?: worth)?(?: the)?"
        rf" (?P<size>{SIZES})(?: (?:value|{_THING}))?(?: in value)?[:,]? <Either>",
        False,
    ),
    ("extreme", rf"<FIND> {_LARGEST_OF}", False),
    ("extreme", rf"is <Either>(?: the)? (?P<size>{SIZES})(?: {_THING})?", False),
    (
        "extreme",
        rf"which(?: one)? of (?:these:? )?<NEither> (?:is|has)(?: the)? (?P<size>{SIZES})(?: value)?",
        False,
    ),
    (
        "extreme",
        rf"(?:circle|underline|choose|pick|pick out|identify|select) {_LARGEST_OF}",
        False,
    ),
    (
        "order",
        rf"(?:write|put|arrange|order|sort|list|place|rewrite) (?:(?:the|these|this)(?P<wild> [a-z]+) {_THINGS} <Ms>|<NPs>)"
        rf"(?: {_IN_ORDER})?",
        False,
    ),
    (
        "order",
        rf"(?:write|put|arrange|order|sort|list|place|rewrite) (?:(?:the|these|this)(?P<wild> [a-z]+) {_THINGS}|<THEM>|"
        rf"(?:the|these) [a-z]+)?(?: ?{_IN_ORDER})?",
        True,
    ),
    # Sharing and rounding.
    # The group *wild* is a stretch of a story, and is looked at as such.
    ("share", rf"{_SHARES} <M> in(?:to)? the ratio <M>", False),
    ("share", rf"{_SHARES} <M>(?P<wild>(?: [a-z-]+){{0,2}} [a-z]+s) in the ratio <M>", False),
    ("share", rf"{_SHARES} <M>(?P<wild> (?:between|among) [a-z, ]+?) in the ratio <M>", False),
    ("round", r"(?:round|truncate|correct)(?: off| up| down)? (?:the answer to )?<NP>", False),
    ("round", r"(?:round|truncate)(?: off| up| down)?(?: <THEM>)?", True),
    # Another way to write a number, or its form alone.
    ("convert", r"(?:the )?(?:ratio|fraction|number|percentage|decimal) <M>", False),
    ("convert", r"<PUT> <NP>", False),
    ("convert", r"<PUT> <THEM>", True),
    (
        "convert",
        r"(?:how many|find how many|work out how many) <UNIT> (?:is|are) (?:that|this|it)",
        True,
    ),
    ("convert", r"in <UNIT>,? (?:what|how much) is <M>", False),
    ("convert", r"what is <M>(?: written| expressed| measured)? in <UNIT>", False),
    (
        "convert",
        r"(?:how many|find how many|work out how many) <UNIT> (?:are (?:there )?in|is|are|make(?: up)?|(?:is|are) (?:equal to|the same as|equivalent to)|equals?) <M>",
        False,
    ),
    ("convert", rf"(?:what|which) {_KIND_OF_NUMBER} is (?:equal|equivalent) to <NP>", False),
    (
        "convert",
        rf"<FIND> the {_KIND_OF_NUMBER} (?:(?:that|which) is )?(?:equal|equivalent)(?: to| of| for) <NP>",
        False,
    ),
    ("convert", rf"<FIND> the equivalent {_KIND_OF_NUMBER} (?:to|of|for) <NP>", False),
    # Working out.
    ("work-out", r"substitute <where> (?:in|into|in to) <VALUE><NP>", False),
    ("work-out", r"(?:use <where> to )?(?:<FIND>|do|answer|try|complete) <VALUE><NP>", False),
    (
        "work-out",
        r"(?:use <where>|use (?:this|it|that|the formula|this fact)) to (?:<FIND>) <VALUE><NP>",
        False,
    ),
    ("work-out", r"(?:use (?:this|it|that|the formula|this fact) to )?<FIND> <VALUE><THEM>", True),
    ("work-out", r"(?:if|when|given(?: that)?|for|with) <where>,? <FIND> <VALUE><NP>", False),
    ("work-out", r"(?:how much|what) (?:is|does) <M>(?: equal| come to| make)?", False),
    ("work-out", r"<M>(?: ?=(?: ?\?| ?\.\.\.)?)?", False),
)

HEADS: tuple[Head, ...] = tuple(Head(*row) for row in _WORDINGS)

GIVENS = (
    r"(?:you are (?:told|given)|it is given|we know|given)(?: that)? <NPs>",
    r"here (?:is|are)(?: an?| the| some| two| three)?(?: \w+)?:? ?<NPs>",
    r"(?:here (?:is|are) )?the first (?:two|three|four|five|six|\d) (?:terms|numbers) (?:of|in) (?:a|an|this|the)(?: (?:linear|arithmetic|number))? "
    r"(?:sequence|pattern)(?: (?:is|are))?:? <Ms>",
    r"(?:let |if |when |where )?<Ms>",
    r"(?:the )?n\s?th term of (?:a|the|this) sequence is <M>",
    r"(?:a|the) sequence (?:begins|starts|goes)(?: with)?:? <Ms>",
    r"(?:two|three|some) numbers are written as (?:products? of (?:their )?prime(?:s| factors))?:? ?<Ms>",
    r"look at(?: the| this| these)?(?: \w+)?:? <Ms>",
    r"a formula(?: for \w+)? is <M>",
)
"""Sentences that give something and ask nothing."""

_POLITE = (
    r"(?:can|could|would|will) you(?: please)?|(?:i|we) (?:want|would like|need) you to|i'd like you to|"
    r"(?:your task is|try|have a go|you (?:need|have)|see if you can|it is your task)(?: to)?|let's|"
    r"in your head|mentally|without writing anything down|"
    r"us(?:e|ing) (?:a|your) calculator to|us(?:e|ing) (?:an? (?:written|mental|formal|column|efficient|suitable) method|(?:long|short|column) "
    r"(?:multiplication|division|addition|subtraction))(?: to)?"
)
_TO_DO = (
    r"(?:add|subtract|take|multiply|divide|double|halve|treble|triple|square|cube|increase|decrease|"
    r"reduce|round|work out|share|cancel|simplify|expand|factorise|find|convert|change|write)\b"
)
LEADS = (
    r"(?:(?:please|now|then|next|first|so|hence|\(?[a-h]\)|\(?i{1,3}\)|question \d+:?|"
    rf"(?:without|using) a calculator|without working it out|{_POLITE}),? )+"
    rf"(?:what (?:do|would|will) you get (?:when|if) you (?={_TO_DO}))?"
    rf"|what (?:do|would|will) you get (?:when|if) you (?={_TO_DO})"
    rf"|what is the (?:result|answer) (?:when|if) you (?={_TO_DO})"
)
"""What may stand before a command and says nothing of what is asked."""
