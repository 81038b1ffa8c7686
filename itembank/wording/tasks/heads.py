"""How each task is asked: the wordings teachers use, as data.

A wording begins a sentence; what may follow (a form, a rounding, *when x = 3*) stands in
:mod:`.answers.answer_tails` and :mod:`.command_said`. Groups are the mathematics the task is about, in order. The
first wording that reads a whole sentence counts, so a narrower one stands before a wider one.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from itembank.wording.sentences.phrases import phrase
from itembank.wording.sentences.sizes import SIZES
from itembank.wording.tasks.head_pieces import (
    BOX,
    COMMON,
    COMMON_SAID,
    IN_ORDER,
    KIND_OF_NUMBER,
    LARGEST_OF,
    PRIMES,
    SEQUENCE,
    SHARES,
    SIGN,
    TERM,
    THING,
    THINGS,
)


class Head(NamedTuple):
    """A wording that sets a task. `back` says that it may point back, with no mathematics."""

    task: str
    wording: str
    back: bool = False

    @property
    def pattern(self) -> re.Pattern[str]:
        """Return the wording as a pattern, compiled when it is first looked at."""
        return phrase(self.wording)


_WORDINGS: tuple[tuple[str, str, bool], ...] = (
    # Finding the number that makes an equation true.
    ("missing", rf"<FIND> {BOX}", True),
    ("missing", rf"(?:fill|put) in {BOX}", True),
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
    ("nth-term", rf"<FIND> {TERM}{SEQUENCE}(?: |: ?)<NPs>", False),
    ("nth-term", rf"<FIND> {TERM}(?: (?:of|for) (?:this|the|each) sequence)?", True),
    ("nth-term", r"(?:the )?n\s?th term(?: of)?(?: the sequence)?:? <NPs>", False),
    *((task, rf"<FIND> the (?:{words}) of <NPs>", False) for task, words in COMMON.items()),
    *((task, rf"(?:the )?(?:{words}) of <NPs>", False) for task, words in COMMON.items()),
    *(
        (task, rf"<FIND> (?:the|their) (?:{words})(?: of <THEM>)?", True)
        for task, words in COMMON.items()
    ),
    *(
        (
            task,
            rf"<FIND> the {size} (?:positive )?(?:whole )?number (?:that|which) {does} <NPs>(?: exactly)?",
            False,
        )
        for task, size, does in COMMON_SAID
    ),
    ("prime-factors", rf"<PUT> <NP> as (?:a|the) product of {PRIMES}", False),
    ("prime-factors", rf"<PUT> <THEM> as (?:a|the) product of {PRIMES}", True),
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
        rf"(?:write|put|insert|place|use) (?:the (?:correct |right )?(?:sign|symbol)s?,? )?{SIGN},? (?:in the box )?between <M> and <M>",
        False,
    ),
    (
        "compare",
        rf"(?:which (?:sign|symbol)|which of {SIGN})(?: goes| should go| belongs)? (?:in the box )?between <M> and <M>(?:[:,]? {SIGN})?",
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
        rf"(?:insert|write|put|use|complete (?:using|with)) {SIGN}[:,]? <M>(?:,| and| ?\.\.\.)? ?<M>",
        False,
    ),
    ("compare", rf"(?:which (?:sign|symbol)) makes this true,? {SIGN}[:,]? <M>,? <M>", False),
    (
        "extreme",
        rf"which(?: {THING}| of (?:these|the following)(?: {THING})?)?(?: is| has| was)?(?: worth)?(?: the)?"
        rf" (?P<size>{SIZES})(?: (?:value|{THING}))?(?: in value)?[:,]? <Either>",
        False,
    ),
    ("extreme", rf"<FIND> {LARGEST_OF}", False),
    ("extreme", rf"is <Either>(?: the)? (?P<size>{SIZES})(?: {THING})?", False),
    (
        "extreme",
        rf"which(?: one)? of (?:these:? )?<NEither> (?:is|has)(?: the)? (?P<size>{SIZES})(?: value)?",
        False,
    ),
    (
        "extreme",
        rf"(?:circle|underline|choose|pick|pick out|identify|select) {LARGEST_OF}",
        False,
    ),
    (
        "order",
        rf"(?:write|put|arrange|order|sort|list|place|rewrite) (?:(?:the|these|this)(?P<wild> [a-z]+) {THINGS} <Ms>|<NPs>)"
        rf"(?: {IN_ORDER})?",
        False,
    ),
    (
        "order",
        rf"(?:write|put|arrange|order|sort|list|place|rewrite) (?:(?:the|these|this)(?P<wild> [a-z]+) {THINGS}|<THEM>|"
        rf"(?:the|these) [a-z]+)?(?: ?{IN_ORDER})?",
        True,
    ),
    # Sharing and rounding.
    # The group *wild* is a stretch of a story, and is looked at as such.
    ("share", rf"{SHARES} <M> in(?:to)? the ratio <M>", False),
    ("share", rf"{SHARES} <M>(?P<wild>(?: [a-z-]+){{0,2}} [a-z]+s) in the ratio <M>", False),
    ("share", rf"{SHARES} <M>(?P<wild> (?:between|among) [a-z, ]+?) in the ratio <M>", False),
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
    ("convert", rf"(?:what|which) {KIND_OF_NUMBER} is (?:equal|equivalent) to <NP>", False),
    (
        "convert",
        rf"<FIND> the {KIND_OF_NUMBER} (?:(?:that|which) is )?(?:equal|equivalent)(?: to| of| for) <NP>",
        False,
    ),
    ("convert", rf"<FIND> the equivalent {KIND_OF_NUMBER} (?:to|of|for) <NP>", False),
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
