"""Questions asked directly, of the mathematics that is printed."""

from __future__ import annotations

from itembank.bank.model.fields import BankItem
from itembank.bank.question.give_asks import give_ask
from itembank.bank.question.given.agreeing import agree
from itembank.bank.question.given.answer_rounded import rounded
from itembank.bank.question.given.counted_units import counted_as_number, units_inside
from itembank.bank.question.given.maths import Maths, words_of
from itembank.bank.question.given.nouns_held import noun_fault
from itembank.bank.question.given.plain_numbers import is_number, is_plain
from itembank.bank.question.given.question import Question
from itembank.bank.question.given.task_given import Given, NeedsPerson, parted
from itembank.bank.question.stories.asked_of_story import asked_by_task
from itembank.bank.question.stories.choosing import extreme_ask
from itembank.bank.question.tasks.task_named import task_named
from itembank.items.item import Ask, Find, Pick, Rewrite, Solve, Which
from itembank.notation import tree as t
from itembank.proof.claim.finding import text
from itembank.wording.sentences.sizes import order_said
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.tasks.answers.answer_phrases import (
    form_in_words,
    rounding,
    says_rounded,
    says_simplest,
)
from itembank.wording.tasks.answers.forms_said import says_form
from itembank.wording.tasks.answers.written_how import (
    in_terms_of_pi,
    names_a_form,
)
from itembank.wording.tasks.reading_found import Reading
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sums.list_sums import summary_of
from itembank.wording.tasks.sums.sums import NotBuilt


def asked_directly(item: BankItem, maths: Maths, reading: Reading) -> Question:
    """Return the question that the words of a prompt ask of the mathematics it prints.

    Raises:
        NeedsPerson: the words and the mathematics do not go together.
    """
    nodes = [run for run in maths.runs if not isinstance(run, str)]
    if reading.giving is not None:
        told = [nodes[place] for place in reading.where]
        made, own, form = give_ask(item, maths, reading.giving, told)
        return Question(made, (*item.constants, *own), form)
    args = [nodes[place] for place in reading.args]
    where = [nodes[place] for place in reading.where]
    words = words_of(maths)
    if fault := noun_fault(maths.runs, reading.task in ("order", "extreme")):
        raise NeedsPerson(fault)
    for node in where:
        if not isinstance(node, t.Relation | t.Sym) and not _relations_listed(node):
            raise NeedsPerson(f"{text(node)} is given, but it is not said what it is for.")
    if reading.saying is not None:
        return _sum_said(item, maths, reading, args, where)
    units_inside(maths, args, words, reading.task)
    if reading.task == "extreme":
        _nothing_besides(where)
        return Question(extreme_ask(args, reading.pick, words), item.constants, "", "choose")
    if names_a_form(words) and form_in_words(words) not in _SHAPES:
        raise NeedsPerson("‘In the form’ is understood for a ratio 1 : n or n : 1 only.")
    task = _task(reading, args, words, item.task)
    if task in ("convert", "share", "round"):
        _nothing_besides(where)
    agree(item, task, any(t.symbols(node) for node in args))
    if item.task == "share" and not reading.args:
        return asked_by_task(item, maths)
    if task == "convert" and (counted := counted_as_number(args, words, maths.key)):
        return Question(Find(counted), (*item.constants, 1), "value", "work-out")
    given = Given(tuple(args), tuple(where), reading.letter, words)
    ask = _picked(task_named(item.task or task)(item, given), reading.pick, item.task or task)
    return Question(rounded(ask, maths, words), item.constants, "", item.task or task)


def _sum_said(
    item: BankItem,
    maths: Maths,
    reading: Reading,
    args: list[t.Node],
    where: list[t.Node],
) -> Question:
    """Return the question for a sum that is said in words, made of the mathematics in `args`."""
    assert reading.saying is not None
    words = words_of(maths)
    try:
        target, constants = reading.saying.build(*args)
    except NotBuilt as error:
        raise NeedsPerson(str(error)) from error
    units_inside(maths, [*args, target], words, reading.task)
    agree(item, "work-out")
    form = reading.saying.form
    if not form and form_in_words(words) == "percentage" and _compares(target):
        raise NeedsPerson(
            "How much more as a percentage may be of the first amount, or the difference "
            "itself: ask for the percentage increase, or for the difference."
        )
    if counted := counted_as_number([target], words, maths.key):
        return Question(Find(counted), (*item.constants, *constants, 1), "value", "work-out")
    said = reading.saying if isinstance(reading.saying, Saying) else None
    any_order = said is not None and said.any_order
    if any_order:
        target = _in_order_of(maths.key, target)
    ask = _worked_out(target, _all_relations(where))
    # Where the wording rounds the numbers of a sum, its words say nothing of the answer.
    if said is None or not said.rounds:
        ask = _of_a_list(rounded(ask, maths, words), said, args)
    return Question(
        ask,
        (*item.constants, *constants),
        form,
        "work-out",
        any_order=any_order,
    )


def _compares(target: t.Node) -> bool:
    """Tell whether what is worked out is one amount less another, neither of them a part."""
    match target:
        case t.Sum(first, (("-", second),)):
            return not any(
                isinstance(part, t.Percent | t.Frac | t.Dec)
                for node in (first, second)
                for part in t.walk(node)
            )
    return False


def _of_a_list(ask: Ask, said: Saying | None, args: list[t.Node]) -> Ask:
    """Return the summary of a list that was read, so that both roads start from the list."""
    plain = said is not None and isinstance(ask, Find) and not ask.relations
    return (summary_of(said.build, tuple(args)) or ask) if said and plain else ask


def _in_order_of(key: t.Node, target: t.Node) -> t.Node:
    """Return a list in the order of a key that holds the same numbers."""
    match key, target:
        case t.Listing(given), t.Listing(parts) if len(given) == len(parts) and {*given} == {
            *parts
        }:
            return key
    return target


def _nothing_besides(where: list[t.Node]) -> None:
    if where:
        raise NeedsPerson(f"{text(where[0])} is given, but it is not said what it is for.")


def _relations_listed(node: t.Node) -> bool:
    return isinstance(node, t.Listing) and all(isinstance(part, t.Relation) for part in node.parts)


def _worked_out(target: t.Node, relations: tuple[t.Relation, ...]) -> Ask:
    loose = (
        t.symbols(target) - {name for relation in relations for name in t.symbols(relation)} - {"π"}
    )
    if loose and relations:
        raise NeedsPerson(f"Nothing says what {min(loose)} is worth.")
    return Rewrite(target, "simplify") if loose else Find(target, relations)


def _all_relations(where: list[t.Node]) -> tuple[t.Relation, ...]:
    relations, others = parted(where)
    if others:
        raise NeedsPerson(f"{text(others[0])} is given, but it is not said what it is for.")
    return tuple(relations)


_SHAPES = ("one-to-n", "n-to-one")


def _task(reading: Reading, args: list[t.Node], words: str, stated: str | None) -> str:
    """Return the task that the words set, once their form and their mathematics are looked at."""
    task = reading.task
    form, only = form_in_words(words), args[0] if len(args) == 1 else None
    if task == "missing" and form and isinstance(only, t.Percent | t.Frac | t.Dec):
        task = "convert"  # Write the percentage as a fraction
    if task in ("convert", "work-out") and isinstance(only, t.Relation) and not reading.where:
        return "missing" if "□" in t.symbols(only) else task
    if task == "convert":
        if only is not None and t.symbols(only) == {"π"} and in_terms_of_pi(words):
            return "work-out"
        if only is not None and t.symbols(only) - {"π"} and says_form(words):
            return "simplify"
        if form or unit_said(words) or says_form(words):
            return "convert"
        if says_simplest(words):
            return "simplify"
        if says_rounded(words):
            return "round"
        return "convert"
    if task == "work-out" and only is not None and not reading.where:
        if isinstance(only, t.Listing) and order_said(words, (only,)):
            return "order"
        if stated is None and form and is_number(only):
            return "convert"
        if stated is None and isinstance(only, t.Ratio):
            return "simplify"
        if is_plain(only) and rounding(words):
            return "round"
    return task


_WHICH: dict[str, Which] = {
    **dict.fromkeys(("larger", "largest", "greater", "greatest", "bigger", "biggest"), "largest"),
    **dict.fromkeys(("higher", "highest"), "largest"),
    **dict.fromkeys(("smaller", "smallest", "lesser", "least", "lower", "lowest"), "smallest"),
    "positive": "positive",
    "negative": "negative",
}


def _picked(ask: Ask, pick: str, task: str) -> Ask:
    if not pick or task == "choose":
        return ask
    if not isinstance(ask, Solve) and task != "share":
        raise NeedsPerson(f"‘{pick}’ picks one of several solutions, and there are none here.")
    assert isinstance(ask, Solve | Find)
    return Pick(ask, _WHICH[pick])
