"""What each layer does with a kind of question, named where the kind is registered.

A layer above the items has work of its own with each kind: a road finds the answer, marking reads
what a pupil typed. No layer below may import it, so a kind gives the *name* of what does the work,
``"module:function"``, as a package names its entry points. The module is imported when a question
of that kind comes to that layer, and not before (:mod:`.handlers`).

>>> Layers(first_road="math:gcd", second_road="", working="", bank="").first_road
'math:gcd'
"""

from __future__ import annotations

from itembank.data_class import dataclass


@dataclass(frozen=True, slots=True)
class Layers:
    """The names of what the layers do with one kind of question; ``""`` for nothing of its own.

    The first four no layer can do without: a kind that gives ``""`` is left to a person there.

    Attributes
    ----------
    first_road, second_road
        What exact arithmetic, and what sympy, makes of a question: a function from the question
        and a key to a `Finding`.
    working
        What is wrong with a line of working: from the question and the line to a sentence, or
        ``""``.
    bank
        The form of a key that states none: an `Answers` of :mod:`itembank.bank.question.key_form`.
    printed
        What else the prompt has to print: from the question and the item to what is lacking.
    fitting, measuring
        How a key is about another letter, and how it measures another thing, than the question:
        from the question and the key to a sentence.
    repeating
        Whether the key only says the question again: from the question and the item.
    forms
        How the form of a key is held to the question: a `FormRules` of
        :mod:`itembank.proof.exact.key_forms`.
    worth
        What is equal for answers that are marked as one: from the question and an answer.
    marking
        How answers are marked, where not by their worth alone: a `Marking` of
        :mod:`itembank.marking.worth.marked_by_kind`.
    trying
        What trying a wrong answer shows: from the question and the answer to a sentence.
    difficulty
        What makes a question hard: an `Asking` of
        :mod:`itembank.items.measures.difficulty_by_kind`.
    later
        Which content of later years a question is: from the question and the item.
    tasks
        The tasks by which the words of a bank ask such questions, each with the function that
        makes one of what is given: ``(("hcf", "module:function"),)``.
    """

    first_road: str
    second_road: str
    working: str
    bank: str
    printed: str = ""
    fitting: str = ""
    measuring: str = ""
    repeating: str = ""
    forms: str = ""
    worth: str = ""
    marking: str = ""
    trying: str = ""
    difficulty: str = ""
    later: str = ""
    tasks: tuple[tuple[str, str], ...] = ()
