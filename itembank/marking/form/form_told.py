"""What a pupil is told about an answer of the right value in a form that was not asked for.

The rules for forms say what an answer *is not*; a pupil needs to hear what to *do*. Each rule's
finding has its sentence here. A finding that only names another form (*it is a decimal*) is told
with what the form that is wanted asks for, :data:`WANTED`.
"""

from __future__ import annotations

import re

CANCEL = "now cancel to lowest terms, dividing the numerator and the denominator by the same number"
_DO: tuple[tuple[str, str], ...] = (
    (r"the division is not (?:worked out|done)|a division is left to do", "now divide"),
    (r"it is not worked out", "now work out the calculation that is left"),
    (r"a calculation is left to work out", "now work out the calculation that is left"),
    (
        r"the whole number and the fraction are still added",
        "write it as one mixed number, without the plus sign",
    ),
    (r"the parts of the ratio have a unit", "now leave the units out"),
    (
        r"the parts of the ratio have different units",
        "write every part in the same unit, and then leave the units out",
    ),
    (r"it is not given in pounds and pence", "now give it in pounds and pence"),
    (
        r"pounds and pence are not given to two places",
        "give money to two places after the point, as in 1.20",
    ),
    (
        r"its base is not the one that is asked for",
        "write it as a power of the base that is asked for",
    ),
    (r"it is not a power", "now write it as a power, with an index"),
    (r"a factor is repeated", "now write the repeated factor as a power, with an index"),
    (r"(?:the|a) fraction is not in its lowest terms", CANCEL),
    (r"it is not a whole number", "give it as a whole number"),
    (r"the denominator is 1", "a number over 1 is that number: write it without the fraction"),
    (
        r"its numerator and denominator are not both whole numbers",
        "use whole numbers for the numerator and the denominator",
    ),
    (r"it is an improper fraction", "now write it as a mixed number or a whole number"),
    (
        r"its numerator is smaller than its denominator",
        "in an improper fraction the numerator is at least as large as the denominator",
    ),
    (
        r"the minus sign stands in the denominator",
        "write the minus sign in front of the fraction, not in the denominator",
    ),
    (r"it divides by zero", "look at the denominator: nothing can be divided by 0"),
    (
        r"its fraction part is not a proper fraction",
        "the fraction in a mixed number is less than 1: carry what is over to the whole number",
    ),
    (r"it ends in a 0 that is not needed", "leave out the 0 at the end"),
    (r"a recurring decimal is not rounded", "now round it"),
    (r"it is not a ratio", "give it as a ratio, with a colon between the numbers"),
    (
        r"its parts are not all whole numbers",
        "now make all its parts whole numbers, without units",
    ),
    (
        r"the ratio is not in its simplest form",
        "now write the ratio in its simplest form, dividing every part by the same number",
    ),
    (r"the first part is not 1", "now divide both parts by the first, so that it begins 1 :"),
    (r"it is not a ratio of two parts", "give it as a ratio of two numbers, with a colon"),
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
    (r"it is not a product of prime numbers", "give it as a product of prime numbers"),
    (
        r"(?P<it>.+) is not a prime number",
        r"go on: \g<it> is not a prime number",
    ),
    (r"a prime stands there twice.*", "write each prime once, as one power"),
    (r"(?P<it>.+) stands there twice: write it as one power", r"write \g<it> once, as one power"),
    (r"the power is not worked out", "now work out the power"),
    (r"a power is left to write out", "now write the power out as a product"),
    (r"the powers are not put together", "now put the powers together into a single power"),
    (r"a power stands inside a power", "now multiply the indices to get a single power"),
    (
        r"the base of the power is not one number or letter",
        "give one number or letter with one index",
    ),
    (
        r"it is not a product of powers",
        "give it as a product of powers of single numbers or letters",
    ),
    (
        r"its factors are not all single numbers or letters",
        "go on until every factor is a single number or letter",
    ),
    (
        r"its powers are not whole numbers from 2 up",
        "every index has to be a whole number: leave out an index of 1",
    ),
    (r"a negative power is left(?: in a fraction)?", "now write it without negative indices"),
    (r"two minus signs make a plus", "now tidy up: two minus signs make a plus"),
    (r"two signs stand together", "now tidy up: two signs stand together"),
    (r"a bracket of one term is left raised to a power", "now work out the power of the bracket"),
    (r"a power of 0 or 1 is left", "now tidy up: a power of 0 or 1 is left"),
    (r"a division is not written as a fraction", "write the division as a fraction"),
    (r"a product is not multiplied out", "now multiply: a product is left"),
    (r"two numbers are left to multiply", "now multiply the two numbers"),
    (r"a factor (?P<it>\d) is left", r"now tidy up: a factor \g<it> is left"),
    (r"a minus sign stands inside the product", "write the minus sign in front of the product"),
    (r"two roots are left to multiply", "now multiply the two roots"),
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
    (r"a fraction that is 0 is left", "now tidy up: a fraction with the numerator 0 is 0"),
    (r"it is not a single fraction", "now write it as a single fraction"),
    (
        r"fractions are left to put over one denominator",
        "now write the fractions with one denominator, as a single fraction",
    ),
    (r"a bracket is left to multiply out", "now multiply out the bracket"),
    (
        r"it is not a product of factors",
        "now factorise: write it as a product, with a bracket",
    ),
    (r"(?P<it>.+) has a common factor left", r"now take out the common factor of \g<it>"),
    (r"(?P<it>.+) can be factorised further", r"go on: \g<it> can be factorised further"),
    (
        r"(?P<it>.+) still holds a (?P<kind>fraction|decimal)",
        r"now take out a factor, so that no \g<kind> is left in \g<it>",
    ),
    (
        r"a product of factors is written without times signs",
        "write the factors side by side, without times signs",
    ),
    (
        r"it is not a letter, a sign and a number",
        "give the letter, the sign and the number",
    ),
    (r"the sign is not an inequality sign", "use an inequality sign"),
    (r"the sign is not =", "use an equals sign"),
    (r"its two signs do not point the same way", "write both signs so that they point one way"),
    (
        r"it is not one letter, an equals sign and an expression",
        "begin with the letter alone and an equals sign",
    ),
    (
        r"(?P<it>\w) stands on both sides",
        r"get \g<it> on one side only",
    ),
    (r"its letter is not n", "use the letter n"),
    (r"it is not a pair of coordinates", "give both coordinates in brackets, with a comma between"),
    (r"it is not a list(?: of amounts)?", "give the numbers as a list, with commas between"),
    (
        r"it is not two numbers with a sign between",
        "give both numbers with <, > or = between them",
    ),
    (r"it has two units", "give one unit"),
    (r"a sum of money is not written as a fraction", "give the money as a decimal or whole number"),
    (
        r"a whole number is written with a 0 after the point",
        "leave out the point and the 0 after it",
    ),
    (
        r"(?P<it>.+) is not less than (?P<one>.+)",
        r"go on: \g<it> is \g<one> or more, so carry over to the larger unit",
    ),
    (r"it is not in (?P<it>.+)", r"give it in \g<it>"),
)
RULES = tuple((re.compile(finding), sentence) for finding, sentence in _DO)


WANTED: dict[str, str] = {
    "integer": "give it as a whole number",
    "number": "give it as a whole number or a fraction in its lowest terms",
    "fraction": "give it as a fraction",
    "lowest-terms": "give it as a fraction in its lowest terms",
    "improper": "give it as an improper fraction in its lowest terms",
    "mixed": "give it as a mixed number, a whole number and a fraction in its lowest terms",
    "simplest": "give it as a whole number, a fraction less than 1 or a mixed number, in its "
    "lowest terms",
    "decimal": "give it as a decimal",
    "percentage": "give it as a percentage, with a per cent sign",
    "ratio": "give it as a ratio, with a colon between whole numbers",
    "one-to-n": "give it as a ratio that begins 1 :",
    "n-to-one": "give it as a ratio that ends : 1",
    "money": "give it as money, with £ or p",
    "quantity": "give one number with its unit",
    "amount": "give one number, worked out",
    "value": "give one number, worked out",
    "rounded": "give it as a rounded number",
    "surd": "give it as a surd in its simplest form",
    "standard-form": "give it in standard form: a number from 1 up to 10 times a power of 10",
    "prime-factors": "give it as a product of prime numbers",
    "prime-powers": "give it as a product of powers of prime numbers",
    "power": "give it as a single power, one number or letter with one index",
    "powers": "give it as a product of powers, each number or letter once",
    "product": "give it as a product, written out without powers",
    "expression": "give it as one expression, with like terms collected",
    "simplified": "now simplify it as far as you can",
    "single-fraction": "give it as a single fraction in its simplest form",
    "positive-indices": "now simplify it, with positive indices only",
    "expanded": "give it without brackets, with like terms collected",
    "factorised": "now factorise it as far as you can",
    "solution": "give the letter, an equals sign and its value",
    "inequality": "give the letter, an inequality sign and a number",
    "roots": "give every solution, as a letter, an equals sign and a number",
    "subject": "give the letter alone, an equals sign and an expression",
    "nth-term": "give an expression in n, as simple as it can be",
    "list": "give the numbers as a list, with commas between",
    "amounts": "give an amount for each, with commas between",
    "point": "give both coordinates in brackets, with a comma between",
    "sign": "give both numbers with <, > or = between them",
    "name": "give the name of one of the choices",
    "drawing": "draw it on the figure",
    "true-or-false": "answer true or false",
    "line-and-result": "give the number of the line and the right answer, worked out",
    "pairs": "give a partner for each card",
}
"""What each form asks for, as an instruction."""

TOLD_BY_FORM = frozenset(
    {
        "it does not name one of the choices",
        "it has a letter in it",
        "it has a root in it",
        "it has a unit",
        "it is a decimal",
        "it is a fraction",
        "it is a mixed number",
        "it is a percentage",
        "it is a ratio",
        "it is a sum of money",
        "it is a whole number",
        "it is neither true nor false",
        "it is not a line and a right answer",
        "it is not a list of pairs",
        "it is not a number",
        "it is not a product",
        "it is not an expression",
        "it is too long for the tool to tell whether it is fully factorised",
        "the number under the root is not from 2 to a thousand million",
    }
)
"""Findings that leave nothing to say but what the form asks for."""


def what_to_do(fault: str) -> str:
    """Return what a pupil has to do about a finding of a form rule, or an empty string.

    >>> what_to_do("the fraction is not in its lowest terms")
    'now cancel to lowest terms, dividing the numerator and the denominator by the same number'
    >>> what_to_do("2x + 4 has a common factor left")
    'now take out the common factor of 2x + 4'
    """
    if fault == "1 is not a prime number":
        return "leave out the 1, which is not a prime number"
    for finding, sentence in RULES:
        if found := finding.fullmatch(fault):
            return found.expand(sentence) if "\\g" in sentence else sentence
    return ""


def right_value(fault: str, form: str) -> str:
    """Return the sentence for an answer of the right value that lacks something of its form.

    >>> right_value("the division is not worked out", "integer")
    'Right value: now divide.'
    >>> right_value("it is a riddle", "ratio")
    'Right value: give it as a ratio, with a colon between whole numbers.'
    """
    todo = what_to_do(fault) or WANTED[form]
    # A mixed number is a fraction to many pupils, so to ask for a fraction says too little.
    if fault == "it is a mixed number" and form in ("fraction", "lowest-terms"):
        todo += ", with no whole number in front"
    return f"Right value: {todo}."
