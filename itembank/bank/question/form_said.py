"""Whether a key has the form that the words of its prompt ask for."""

from __future__ import annotations

from itembank.bank.question.given.maths import Maths, words_of
from itembank.bank.question.key_form import ANSWERS
from itembank.items.asks import (
    Ask,
    Solve,
)
from itembank.items.forms.form_rules import form_fault, form_words
from itembank.notation import tree as t
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.tasks.answers.answer_phrases import form_in_words
from itembank.wording.tasks.answers.forms_said import says_form


def misformed(ask: Ask, maths: Maths) -> str:
    """Return how the solutions of equations have not the form that the words ask for, or ``""``."""
    words = form_in_words(words_of(maths))
    if not isinstance(ask, Solve) or words not in _OF_NUMBERS:
        return ""
    parts = maths.key.parts if isinstance(maths.key, t.Either | t.Listing) else (maths.key,)
    values = [part.rest[0][1] if isinstance(part, t.Relation) else part for part in parts]
    return next((fault for fault in (form_fault(words, value) for value in values) if fault), "")


_OF_NUMBERS = (
    *("percentage", "mixed", "improper", "lowest-terms", "decimal", "standard-form"),
    "integer",
)
_FITS = {
    "lowest-terms": (
        *("mixed", "improper", "surd", "single-fraction", "positive-indices", "simplest"),
        *("fraction", "number", "integer", "roots", "solution", "value"),
    ),
    "decimal": ("rounded", "standard-form", "number", "integer"),
    "percentage": ("rounded",),
    "mixed": ("simplest",),
    "integer": ("rounded", "value", "number", "amount"),
}
"""Forms that words ask for, each with the forms of a key that hold it to them as well."""


_FRACTIONS = ("lowest-terms", "mixed", "improper", "fraction")


def fraction_of_unit(maths: Maths, form: str) -> str:
    """Return that a fraction and a unit are wanted at once, which are not checked, or ``""``.

    A key 3/4 h is no wrong answer to *Express 45 min in hours as a fraction*.
    """
    if form not in _FRACTIONS:
        return ""
    measured = any(
        isinstance(part, t.Quantity | t.Money)
        for run in maths.runs
        if not isinstance(run, str)
        for part in t.walk(run)
    )
    sized = isinstance(maths.key, t.Quantity | t.Money)
    if not measured or not (sized or unit_said(words_of(maths))):
        return ""
    return "The words ask for a fraction and for a unit at once, which are not checked together."


def unchecked_form(words: str, ask: Ask, form: str) -> str:
    """Return which form the words ask for that the key is not held to, as a sentence, or ``""``."""
    asked, answers = form_in_words(words), ANSWERS.of(ask)
    if asked in ("", "quantity") or asked == form or answers.solutions:
        # Solutions are held to it one by one, by misformed.
        asked = ""
    if asked and form not in _FITS.get(asked, ()):
        return f"The words ask for {form_words(asked)}, which is not checked for this task."
    if asked not in ("", "integer") and answers.whole:
        return f"The words ask for {form_words(asked)}, and the answer is a whole number."
    if form == "standard-form" and "positive" in words.casefold() and says_form(words):
        return "Whether the power of 10 is to be positive is not checked for this task."
    powers = ("powers", "prime-powers", "power", "product")
    if answers.plain and says_form(words) and form not in powers:
        return "The words ask for a form of powers or fractions that is not checked for this task."
    return ""
