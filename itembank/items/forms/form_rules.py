"""The forms a key may have to take, and what is missing when it does not.

Each form is a name, a phrase for people, and a rule. :func:`form_fault` says in words what
keeps a tree from having a form; marking uses the same rule on typed answers. The rules stand
in files of their own: numbers and amounts, values, letters, and answers of several parts.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from itembank.items.forms import answer_forms as answers
from itembank.items.forms import factor_forms as factors
from itembank.items.forms import letter_forms as letters
from itembank.items.forms import number_forms as numbers
from itembank.items.forms import power_forms as powers
from itembank.items.forms import surd_forms
from itembank.items.forms import value_forms as values
from itembank.notation import tree as t

Rule = Callable[[t.Node], str]

FORMS: dict[str, tuple[str, Rule]] = {
    "integer": ("a whole number", numbers.integer),
    "number": ("a whole number or a fraction in its lowest terms", numbers.number),
    "fraction": ("a fraction", numbers.fraction),
    "lowest-terms": ("a fraction in its lowest terms", numbers.lowest_terms),
    "improper": ("an improper fraction in its lowest terms", numbers.improper),
    "mixed": ("a mixed number, its fraction in lowest terms", numbers.mixed),
    "simplest": ("the simplest form: improper fractions as mixed numbers", numbers.simplest),
    "decimal": ("a decimal", numbers.decimal),
    "percentage": ("a percentage", numbers.percentage),
    "ratio": ("a ratio of whole numbers in its simplest form", numbers.ratio),
    "one-to-n": ("a ratio in the form 1 : n", numbers.one_to_n),
    "n-to-one": ("a ratio in the form n : 1", numbers.n_to_one),
    "money": ("a sum of money", numbers.money),
    "quantity": ("a quantity with its unit", numbers.quantity),
    "amount": ("an amount", numbers.amount),
    "value": ("one number, worked out", values.value),
    "rounded": ("a rounded number", values.rounded),
    "surd": ("the simplest form of a surd, with no root in a denominator", surd_forms.surd),
    "standard-form": ("standard form, a × 10^n with a from 1 up to 10", values.standard_form),
    "prime-factors": ("a product of prime numbers or their powers", values.prime_factors),
    "prime-powers": ("a product of powers of prime numbers", powers.prime_powers),
    "power": ("a single power", powers.power),
    "powers": ("a product of powers, each number or letter once", powers.powers),
    "product": ("a product written out, without powers", powers.product),
    "expression": ("a finished expression, like terms collected", letters.expression),
    "simplified": ("an expression in its simplest form", letters.simplified),
    "single-fraction": ("a single fraction in its simplest form", letters.single_fraction),
    "positive-indices": ("the simplest form with positive powers", powers.positive_indices),
    "expanded": ("an expression without brackets, like terms collected", letters.expanded),
    "factorised": ("a product of factors, fully factorised", factors.factorised),
    "solution": ("the letter, an equals sign and its value", answers.solution),
    "inequality": ("the letter, an inequality sign and a number", answers.inequality),
    "roots": ("every solution, as letter = number", answers.roots),
    "subject": ("the letter alone, an equals sign and an expression", answers.subject),
    "nth-term": ("an expression in n, simplified", answers.nth_term),
    "list": ("a list", answers.listing),
    "amounts": ("an amount for each", answers.amounts),
    "point": ("the coordinates of a point", answers.point),
    "sign": ("two numbers with <, > or = between them", answers.sign),
    "name": ("the name of one of the choices", answers.name),
    "drawing": ("a drawing", answers.name),
    "true-or-false": ("true or false", answers.true_or_false),
    "line-and-result": ("the number of the line, and the right answer", answers.line_and_result),
    "pairs": ("a partner for each card", answers.pairs),
}


def form_words(form: str) -> str:
    """Return the phrase for a form.

    >>> form_words("ratio")
    'a ratio of whole numbers in its simplest form'
    """
    return FORMS[form][0]


def form_fault(form: str, node: t.Node) -> str:
    """Return what keeps `node` from having `form`, or an empty string.

    >>> form_fault("lowest-terms", t.Frac(t.Int(2), t.Int(4)))
    'the fraction is not in its lowest terms'
    >>> form_fault("lowest-terms", t.Frac(t.Int(1), t.Int(2)))
    ''
    """
    return FORMS[form][1](node)


# Builders: a rational number as a tree of a given form.


def number_node(value: Fraction | int) -> t.Node:
    """Return a whole number or a fraction (improper if need be) in lowest terms.

    >>> number_node(Fraction(-6, 4))
    Neg(of=Frac(num=Int(n=3), den=Int(n=2)))
    """
    top, bottom = abs(value.numerator), value.denominator
    node: t.Node = t.Int(top) if bottom == 1 else t.Frac(t.Int(top), t.Int(bottom))
    return t.Neg(node) if value < 0 else node


def simplest_node(value: Fraction | int) -> t.Node:
    """Return a whole number, a proper fraction or a mixed number in lowest terms.

    >>> simplest_node(Fraction(11, 4))
    Mixed(whole=2, num=3, den=4)
    """
    whole, top = divmod(abs(value.numerator), value.denominator)
    if not top or not whole:
        return number_node(value)
    node = t.Mixed(whole, top, value.denominator)
    return t.Neg(node) if value < 0 else node


def decimal_node(value: Fraction | int) -> t.Node:
    """Return a decimal, recurring where it does not terminate.

    The recurring block starts at the first remainder of the long division that comes again.

    >>> decimal_node(Fraction(1, 6))
    Dec(whole='0', places='1', recurring='6')
    >>> decimal_node(Fraction(3, 4))
    Dec(whole='0', places='75', recurring='')
    """
    whole, remainder = divmod(abs(value.numerator), value.denominator)
    digits, seen = "", {}
    while remainder and remainder not in seen:
        seen[remainder] = len(digits)
        digit, remainder = divmod(remainder * 10, value.denominator)
        digits += str(digit)
    cut = seen[remainder] if remainder else len(digits)
    node: t.Node = t.Dec(str(whole), digits[:cut], digits[cut:]) if digits else t.Int(whole)
    return t.Neg(node) if value < 0 else node


def money_node(pounds: Fraction | int) -> t.Money:
    """Return pounds, with pence to two places where there are any.

    >>> money_node(Fraction(9, 2))
    Money(amount=Dec(whole='4', places='50', recurring=''), sign='£')
    """
    whole, pence = divmod(int(pounds * 100), 100)
    return t.Money(t.Dec(str(whole), f"{pence:02d}")) if pence else t.Money(t.Int(whole))
