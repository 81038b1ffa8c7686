"""What a pupil is told about an answer of the right value in a form that was not asked for.

The rules for forms say what an answer *is not*; a pupil needs to hear what to *do*. Each rule's
finding has its sentence here. A finding without one is told with the form that is wanted.
"""

from __future__ import annotations

import re

from itembank.items.forms import form_words

CANCEL = "now cancel to lowest terms, dividing the numerator and the denominator by the same number"
_DO: tuple[tuple[str, str], ...] = (
    (r"the division is not worked out", "now divide"),
    (r"it is not worked out", "now finish: a calculation is left to be worked out"),
    (r"a calculation is left to work out", "now finish: a calculation is left to be worked out"),
    (r"it is not given in pounds and pence", "now give it in pounds and pence"),
    (
        r"pounds and pence are not given to two places",
        "give pounds and pence to two places, as in £1.20",
    ),
    (r"it is not a power", "now write it as a power, with an index"),
    (r"a factor is repeated", "now write the repeated factor as a power, with an index"),
    (r"(?:the|a) fraction is not in its lowest terms", CANCEL),
    (r"it is not a whole number", "give it as a whole number"),
    (r"the denominator is 1", "a number over 1 is that number: write it without the fraction"),
    (
        r"its (?:top and bottom|numerator and denominator) are not whole numbers",
        "use whole numbers for the numerator and the denominator",
    ),
    (r"it is not a fraction(?: of whole numbers)?", "give it as a fraction"),
    (r"the fraction is not improper", "give it as an improper fraction"),
    (r"it is improper", "now write it as a mixed number"),
    (r"it is not a mixed number", "give it as a mixed number: a whole number and a fraction"),
    (
        r"its fraction part is not a proper fraction",
        "the fraction in a mixed number is less than 1: carry what is over to the whole number",
    ),
    (r"it is not a decimal", "give it as a decimal"),
    (r"it ends in a 0 that is not needed", "leave out the 0 at the end"),
    (r"a recurring decimal is not rounded", "now round it"),
    (r"it is not a percentage", "give it as a percentage, with a per cent sign"),
    (r"it is not a ratio", "give it as a ratio, with a colon between the numbers"),
    (r"its parts are not whole numbers", "now make both parts of the ratio whole numbers"),
    (
        r"the ratio is not in its simplest form",
        "now write the ratio in its simplest form, dividing every part by the same number",
    ),
    (r"the first part is not 1", "now divide both parts by the first, so that it begins 1 :"),
    (r"the second part is not 1", "now divide both parts by the second, so that it ends : 1"),
    (r"it is not a sum of money", "give it as money, with £ or p"),
    (r"the denominator is not a whole number", "now rationalise: no root in the denominator"),
    (r"the denominator is not more than 1", "write it without a denominator"),
    (r"like terms are not collected", "now collect the like terms"),
    (r"the fraction can be cancelled", "now cancel the fraction"),
    (r"a fraction can be cancelled", "now cancel: a fraction can be cancelled"),
    (r"it is not a sum of whole numbers times roots", "give it as a surd in its simplest form"),
    (r"(?P<it>[√∛∜]\S+) can be simplified", r"now simplify: \g<it> can be simplified"),
    (r"(?P<it>[√∛∜]\S+) is a whole number", r"now work out \g<it>: it is a whole number"),
    (
        r"it is not a number times a power of 10",
        "give it in standard form: a number times a power of 10",
    ),
    (r"the power of 10 is not a whole number", "the index of 10 has to be a whole number"),
    (
        r"the first number is not at least 1 and less than 10",
        "in standard form the first number is at least 1 and less than 10",
    ),
    (r"it is not a product(?: of prime numbers)?", "give it as a product of prime numbers"),
    (
        r"(?P<it>.+) is not a prime number",
        r"go on: \g<it> is not a prime number",
    ),
    (r"a prime stands there twice.*", "write each prime once, as one power"),
    (r"two minus signs stand together", "now tidy up: two minus signs stand together"),
    (r"two signs stand together", "now tidy up: two signs stand together"),
    (r"a bracket of one term is left raised to a power", "now work out the power of the bracket"),
    (r"a power of 0 or 1 is left", "now tidy up: a power of 0 or 1 is left"),
    (r"a division is not written as a fraction", "write the division as a fraction"),
    (r"a product is not multiplied out", "now multiply: a product is left"),
    (r"two numbers are left to multiply", "now multiply the two numbers"),
    (r"a factor (?P<it>\d) is left", r"now tidy up: a factor \g<it> is left"),
    (r"a bracket is not needed", "take away the bracket that is not needed"),
    (
        r"a letter stands twice in one product",
        "now simplify: write a letter times itself as a power",
    ),
    (
        r"a fraction stands inside a fraction",
        "now simplify: a fraction stands inside a fraction",
    ),
    (r"a term 0 is left", "leave out the term 0"),
    (r"a bracket is left to multiply out", "now multiply out the bracket"),
    (
        r"it is not a product of factors",
        "now factorise: write it as a product, with a bracket",
    ),
    (r"(?P<it>.+) has a common factor left", r"now take out the common factor of \g<it>"),
    (r"(?P<it>.+) can be factorised further", r"go on: \g<it> can be factorised further"),
    (r"(?P<it>.+) still holds a fraction", r"take the fraction out of \g<it>"),
    (
        r"it is not a letter, a sign and a number",
        "give the letter, the sign and the number",
    ),
    (r"the sign is not an inequality sign", "use an inequality sign"),
    (r"the sign is not =", "use an equals sign"),
    (
        r"it does not begin with one letter and an equals sign",
        "begin with the letter and an equals sign",
    ),
    (
        r"(?P<it>\w) stands on both sides",
        r"get \g<it> on one side only",
    ),
    (r"its letter is not n", "use the letter n"),
    (r"it is not a list(?: of amounts)?", "give the numbers as a list, with commas between"),
    (
        r"it is not two numbers with a sign between",
        "give both numbers with <, > or = between them",
    ),
    (r"it is not in (?P<it>.+)", r"give it in \g<it>"),
)
_RULES = tuple((re.compile(finding), sentence) for finding, sentence in _DO)


def what_to_do(fault: str) -> str:
    """Return what a pupil has to do about a finding of a form rule, or an empty string.

    >>> what_to_do("the fraction is not in its lowest terms")
    'now cancel to lowest terms, dividing the numerator and the denominator by the same number'
    >>> what_to_do("2x + 4 has a common factor left")
    'now take out the common factor of 2x + 4'
    """
    for finding, sentence in _RULES:
        if found := finding.fullmatch(fault):
            return found.expand(sentence) if "\\g" in sentence else sentence
    return ""


def right_value(fault: str, form: str) -> str:
    """Return the sentence for an answer of the right value that lacks something of its form.

    >>> right_value("the division is not worked out", "integer")
    'Right value: now divide.'
    >>> right_value("it is a riddle", "ratio")
    'Right value: give a ratio of whole numbers in its simplest form.'
    """
    return f"Right value: {what_to_do(fault) or f'give {form_words(form)}'}."
