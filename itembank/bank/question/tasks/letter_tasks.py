"""Tasks with letters: simplify, expand, factorise, solve, change the subject."""

from __future__ import annotations

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.task_given import Given, NeedsPerson, only_expression, parted
from itembank.items.item import (
    Ask,
    Find,
    Inequality,
    Rewrite,
    Solve,
    Subject,
)
from itembank.notation import tree as t
from itembank.wording.tasks.answers.answer_phrases import (
    letter_said,
)


def find_letter(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for what a letter is worth.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    relations, others = parted(given.all)
    letters = {name for relation in relations for name in t.symbols(relation)} - {"π"}
    if given.letter not in letters or others:
        raise NeedsPerson(f"The words ask for {given.letter}, and nothing says what it is worth.")
    signs = {op for relation in relations for op, _ in relation.rest}
    if len(relations) == 1 and len(letters) == 1 and not signs & {"=", "≠"}:
        return Inequality(relations[0])
    if signs != {"="}:
        raise NeedsPerson("A letter is found from equations, and there is another sign here.")
    if len(letters) == 1:
        return Solve(tuple(relations))
    return Find(t.Sym(given.letter), tuple(relations))


def simplify(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for an expression, a ratio or a number in its simplest form.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    relations, others = parted(given.where)
    if relations and not others and len(given.args) == 1 and isinstance(given.args[0], t.Ratio):
        return Find(given.args[0], tuple(relations))
    target = only_expression(given.all, "simplify")
    return Rewrite(target, "simplify") if t.symbols(target) else Find(target)


def expand(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for an expression without brackets.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    return Rewrite(only_expression(given.all, "expand"), "expand")


def factorise(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for an expression as a product.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    return Rewrite(only_expression(given.all, "factorise"), "factorise")


def solve(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for the solutions of equations or of an inequality.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    relations, others = parted(given.all)
    letters = {name for relation in relations for name in t.symbols(relation)}
    if not relations or not letters:
        raise NeedsPerson("To solve takes an equation or an inequality with a letter in it.")
    # "Solve {2x + 1 = 7} for {x}": the letter is named again, which changes nothing.
    if any(not (isinstance(node, t.Sym) and node.name in letters) for node in others):
        raise NeedsPerson("To solve takes equations or one inequality, and there is more here.")
    signs = {op for relation in relations for op, _ in relation.rest}
    letter = given.letter or letter_said(given.words)
    if letter and letter not in letters:
        raise NeedsPerson(f"The words ask for {letter}, which is not in the mathematics.")
    if letter and len(letters) > 1 and signs == {"="}:
        return Find(t.Sym(letter), tuple(relations))
    if signs == {"="}:
        apart = len(relations) > 1 and all(len(t.symbols(relation)) == 1 for relation in relations)
        if apart and not given.modelled and "simultaneous" not in given.words.casefold():
            raise NeedsPerson(
                "Equations of one letter each may be solved apart or together: ask one, or say "
                "‘simultaneous’."
            )
        return Solve(tuple(relations))
    if len(relations) == 1 and "=" not in signs and "≠" not in signs:
        return Inequality(relations[0])
    raise NeedsPerson("Several inequalities, or equations among them, are not solved here.")


def make_subject(item: BankItem, given: Given) -> Ask:
    """Return the question that asks for a formula with another subject.

    Raises:
        NeedsPerson: the mathematics does not fit the task.
    """
    relations, others = parted(given.all)
    if len(relations) != 1:
        raise NeedsPerson("To make a letter the subject takes one formula.")
    named = [node for node in others if isinstance(node, t.Sym)]
    if len(named) == 1 and len(others) == 1 and given.letter in ("", named[0].name):
        return Subject(relations[0], named[0])
    if others or not given.letter:
        raise NeedsPerson(
            "The prompt does not say which letter becomes the subject: put it in { }."
        )
    return Subject(relations[0], t.Sym(given.letter))
