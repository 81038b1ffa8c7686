"""What the topics on fractions share: likely mistakes, last lines of working, wording."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import gcd

from itembank.items.forms.form_rules import number_node, simplest_node
from itembank.items.item import Misconception, Slip, Step
from itembank.notation import tree as t

SIMPLEST = " Give your answer in its simplest form."
AS_MIXED = " Give your answer as a mixed number in its simplest form."

ADD_ACROSS = Misconception(
    "fractions.add-across",
    "adds the numerators and adds the denominators",
    "What would 1/2 + 1/2 be by your method? Can that be right?",
)
SUBTRACT_ACROSS = Misconception(
    "fractions.subtract-across",
    "subtracts the numerators and subtracts the denominators",
    "What would 3/4 − 1/2 be by your method? Can that be more than 3/4?",
)
KEEP_NUMERATORS = Misconception(
    "fractions.keep-numerators",
    "changes the denominators to a common one but leaves the numerators as they were",
    "Is 1/2 worth as much as 1/4? When the denominator grows, what must the numerator do?",
)


def keep_numerators(
    parts: tuple[tuple[int, int], ...], bottom: int, answer: Fraction
) -> Misconception:
    """Return the misconception with a question about a fraction that has to change.

    Where none has to, the numerators are kept by right: there is nothing to ask about. One that
    the mistake turns into the answer is not asked about.

    >>> keep_numerators(((5, 6), (2, 3)), 6, Fraction(3, 2)).ask
    'Is 2/3 worth as much as 2/6? What must happen to the numerator?'
    """
    asked = [(n, d) for n, d in parts if d != bottom and Fraction(n, bottom) != answer]
    if not asked:
        return KEEP_NUMERATORS
    n, d = asked[0]
    question = f"Is {n}/{d} worth as much as {n}/{bottom}? What must happen to the numerator?"
    return replace(KEEP_NUMERATORS, ask=question)


def slips(*pairs: tuple[Misconception, t.Node | Fraction | int | None]) -> tuple[Slip, ...]:
    """Return the wrong answers; a number is written in its simplest form, None is left out.

    A wrong answer that an earlier misconception gives already is left out too, so each
    one that is kept tells a teacher which mistake was made.

    >>> [slip.wrong for slip in slips((ADD_ACROSS, Fraction(2, 4)), (KEEP_NUMERATORS, None))]
    [Frac(num=Int(n=1), den=Int(n=2))]
    """
    found: dict[t.Node, Slip] = {}
    for misconception, wrong in pairs:
        if wrong is None:
            continue
        node = simplest_node(wrong) if isinstance(wrong, Fraction | int) else wrong
        found.setdefault(node, Slip(misconception, node))
    return tuple(found.values())


def answer_form(value: Fraction) -> tuple[str, str]:
    """Return the sentence that says what form is wanted, and the form's name.

    >>> answer_form(Fraction(7, 4))
    (' Give your answer as a mixed number in its simplest form.', 'mixed')
    """
    if value > 1 and value.denominator > 1:
        return AS_MIXED, "mixed"
    return SIMPLEST, "simplest"


def finish(top: int, bottom: int) -> tuple[Step, ...]:
    """Return the lines that bring ``top/bottom`` to its simplest form, none if it is there.

    >>> [step.say for step in finish(10, 4)]
    ['Divide the numerator and denominator by 2.', 'Write it as a mixed number.']
    """
    value, common = Fraction(top, bottom), gcd(top, bottom)
    steps = []
    if value.denominator == 1:
        return (
            Step(
                "Divide the numerator by the denominator.",
                t.equals(t.frac(top, bottom), number_node(value)),
            ),
        )
    if common > 1:
        cancelled = t.equals(t.frac(top, bottom), number_node(value))
        steps.append(Step(f"Divide the numerator and denominator by {common}.", cancelled))
    if value > 1:
        whole = t.equals(number_node(value), simplest_node(value))
        steps.append(Step("Write it as a mixed number.", whole))
    return tuple(steps)


def mixed(whole: int, top: int, bottom: int) -> t.Node:
    """Return ``whole top/bottom`` as written, without the part that is 0.

    >>> mixed(0, 3, 4) == t.frac(3, 4), mixed(2, 0, 4)
    (True, Int(n=2))
    """
    if not top:
        return t.Int(whole)
    return t.Mixed(whole, top, bottom) if whole else t.frac(top, bottom)


def lcm_all(*numbers: int) -> int:
    """Return the lowest common multiple of positive whole numbers.

    >>> lcm_all(4, 6, 10)
    60
    """
    result = 1
    for number in numbers:
        result = result * number // gcd(result, number)
    return result
