"""Phrases about the answer in which a question may end, so that a prompt is read to its last word.

What a phrase means is for :mod:`.answer_phrases` to find; here it is told from what goes on with
the question, which nobody may pass over.
"""

from __future__ import annotations

from itembank.wording.sentences.phrases import COUNT, TOGETHER_NAMES, UNIT, UNITS_ASKED
from itembank.wording.sentences.prompt import SLOT
from itembank.wording.tasks.answers.answer_phrases import (
    ALONE,
    ARTICLE,
    DIGITS,
    GROUPED,
    NEAREST_WORDS,
    SIGNIFICANT,
    SIMPLEST,
)

_KIND = (
    rf"{ARTICLE}(?:(?:single|simplified|proper|exact|recurring|terminating|algebraic) )*"
    r"(?:improper fractions?|top-heavy fractions?|mixed numbers?|mixed fractions?|fractions?|"
    r"decimals?|percentages?|whole numbers?|integers?|ordinary numbers?|ratio of whole numbers|"
    r"ratios?|surds?|inequalit(?:y|ies)|expressions?|sums? of money)"
)
_ANSWER = (
    r"(?:(?:give|giving|given|write|writing|written|expressed|leave|leaving|express|expressing|state|show|put|round|"
    r"rounding) )?(?:(?:an? |any )(?:fraction|mixed number|decimal|ratio)s? |(?:your|the|each|all|any|both|every)(?: of your)?(?: final| exact)? "
    r"(?:answers?|results?|solutions?|values?) |it |them )?"
)
GLUE = r"(?:,|and|but|then)? ?"
GLUE_AND_ANSWER = GLUE + _ANSWER
"""What may stand before a phrase about the answer: *, and give your answer* to 1 decimal place."""
TAILS = (
    rf"(?:correct |rounded |accurate |off |exact )*(?:up |down )?to {COUNT} {DIGITS}",
    rf"(?:correct |rounded |accurate |off |exact )*(?:up |down )?to {COUNT} {SIGNIFICANT}",
    rf"(?:correct |rounded |accurate |off )*(?:up |down )?to the nearest "
    rf"(?:{NEAREST_WORDS}|{GROUPED}|{UNIT}|{SLOT}){ALONE}",
    rf"(?:as|into|to) {_KIND}",
    r"in standard (?:index )?form",
    r"(?:in|to) index (?:form|notation)",
    r"(?:using|use|with) (?:index notation|powers)",
    r"as (?:a |one )?(?:single )?powers? of (?:<M>|\d{1,2}|[a-z](?![a-z]))",
    r"as a (?:single )?power",
    r"as a (?:single term|product of powers|product)",
    SIMPLEST,
    r"simplify(?: (?:it|them|fully|completely|your answers?|the answers?|the result|"
    r"if (?:you can|possible|necessary)|where possible))*",
    r"in the form (?:<M>|1 ?: ?n|n ?: ?1)",
    r"in terms of (?:π|pi|<M>)",
    r"(?:(?:with|using|in) (?:only |a )?positive|without (?:any )?negative)(?: integer)? "
    r"(?:indices|powers|index|power)(?: only)?",
    r"(?:with|without|including|include|in(?:clude)?)(?: the| its| their| any| a| correct)* units?",
    r"(?:completely|fully|exactly|exact|in full|as far as possible)",
    r"exact (?:answer|value)s?",
    r"in (?:exact |simplest |simplified )?surd form",
    r"(?:as|in) (?:a )?surds?",
    r"(?:any )?square roots in your answers?",
    rf"(?:in|to|into) (?:{TOGETHER_NAMES}|{UNITS_ASKED})",
    r"(?:without|not using|using) a calculator",
    r"show(?:ing)? (?:all )?(?:your |the )?(?:working|method|steps)",
    r"with dots over the digits that recur",
    r"dots over the digits that recur",
    r"(?:using|with) dot notation",
    r"(?:remember(?:ing)?(?: to (?:use|follow))?|(?:using|by using|following|with|use)) "
    r"(?:the (?:correct |right )?order of operations|bidmas|bodmas|(?:(?:a|an|the) )?(?:written|column|formal|efficient|"
    r"grid|long|short) (?:methods?|addition|subtraction|multiplication|division))",
    r"(?:mentally|in your head|without writing anything down|by hand)",
    r"using algebra",
    r"check(?:ing)? (?:your |the )?(?:answers?|solutions?|it)",
    r"first",
    r"please",
)
"""Phrases about the answer that a question may go on with."""

METHODS = (
    r"by (?:factorising|completing the square|elimination|substitution)",
    r"(?:using|by using) the (?:quadratic )?formula",
)
"""How equations are to be solved, which leaves their solutions as they are."""

ASIDES = (
    r"(?:please )?show (?:all )?(?:of )?(?:your|each step of your|each line of(?: your)?) working(?: out)?(?: clearly)?",
    r"(?:do not|don't) use a calculator",
    r"(?:you may |you can )?use a calculator",
    r"(?:this is )?(?:a )?(?:non-)?calculator(?: question| allowed| not allowed)?",
    r"no calculators?(?: allowed)?",
    r"check your answers?",
    r"(?:you must |make sure you |write down |show )+(?:all )?(?:of )?(?:your |the )?(?:working|method|steps)(?: out)?(?: clearly)?",
    r"(?:remember|use|follow) (?:the (?:correct |right )?order of operations|bidmas|bodmas)",
    r"(?:use a written method|work mentally|take care|be careful|think carefully)",
    r"set out your working(?: clearly)?",
    r"remember(?: to)? (?:check|show) your (?:answer|working)",
    r"simplify(?: your answers?)?(?: fully| where possible| if possible)?",
    r"use index notation",
    r"put dots over the digits that recur",
    r"all (?:lengths|measurements|distances) are in <UNIT>",
)
"""Whole sentences that say how to work or to write, and nothing of what is asked."""
