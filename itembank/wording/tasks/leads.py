"""What may stand before a command, and sentences that give something and ask nothing."""

from __future__ import annotations

_LISTED = (
    r"(?:(?:(?:linear|quadratic|arithmetic|geometric|number|whole|simultaneous) )?(?:sequence|pattern|"
    r"numbers?|terms|lists?|sets?|data|row|cards|pair|fractions|decimals|percentages|amounts|"
    r"lengths|masses|weights|heights|times|temperatures|distances|speeds|ages|scores|marks|prices|"
    r"results|values|equations?|expressions?|calculations?|formulae?|inequality|inequalities|"
    r"ratios?|fraction|decimal))"
)
"""What may be said to be here: *here are the frequencies* gives something else than a list."""
GIVENS = (
    r"(?:you are (?:told|given)|it is given|we know|given)(?: that)? <NPs>",
    rf"here (?:is|are)(?: an?| the| some| two| three| four| five| six)?(?: {_LISTED})?:? ?<NPs>",
    r"(?:here (?:is|are) )?the first (?:two|three|four|five|six|\d) (?:terms|numbers) (?:of|in) (?:a|an|this|the)(?: (?:linear|arithmetic|number))? "
    r"(?:sequence|pattern)(?: (?:is|are))?:? <Ms>",
    r"(?:let |if |when |where )?<Ms>",
    r"(?:the )?n\s?th term of (?:a|the|this) sequence is <M>",
    r"(?:a|the) sequence (?:begins|starts|goes)(?: with)?:? <Ms>",
    r"(?:two|three|some) numbers are written as (?:products? of (?:their )?prime(?:s| factors))?:? ?<Ms>",
    rf"look at(?: the| this| these)?(?: {_LISTED})?:? <Ms>",
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
