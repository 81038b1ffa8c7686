"""What a hand-written item asks, worked out from its words, its task and its mathematics.

The prompt is read whole (:mod:`itembank.wording`). What it asks of the mathematics it prints, or
of the `model` behind its words, becomes an :data:`~itembank.items.item.Ask`, from which a proof
starts. Where that cannot be done, a person has to check the key: :class:`NeedsPerson` says why.
"""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import dataclass

from itembank.bank.model.fields import BankItem
from itembank.bank.question.choosing import choose_ask, extreme_ask
from itembank.bank.question.give_asks import give_ask
from itembank.bank.question.maths import Maths, words_of
from itembank.bank.question.model_held import checked_story, readable, whole_things
from itembank.bank.question.task_asks import TASKS, Given, NeedsPerson, parted
from itembank.items.item import Ask, Find, Pick, Rewrite, Round, Solve, Which
from itembank.notation import tree as t
from itembank.notation.clock import times_in
from itembank.notation.units import CURRENCY, UNITS
from itembank.notation.value import exact
from itembank.proof.claim.dimensions import dimension
from itembank.proof.claim.finding import text
from itembank.wording.sentences.phrases import unit_names
from itembank.wording.sentences.sizes import order_said
from itembank.wording.sentences.units_said import unit_said
from itembank.wording.story.story_numbers import unit_after
from itembank.wording.tasks.answer_phrases import (
    form_in_words,
    nearest_unit,
    rounding,
    rounding_way,
    says_rough,
    says_rounded,
    says_simplest,
)
from itembank.wording.tasks.arithmetic import Saying
from itembank.wording.tasks.forms_said import says_form
from itembank.wording.tasks.reader import Reading, read_prompt
from itembank.wording.tasks.sums import NotBuilt
from itembank.wording.tasks.written_how import (
    asks_how_many,
    in_terms_of_pi,
    names_a_form,
    nearest_coin,
)

__all__ = ["NeedsPerson", "Question", "ask_of", "question_of"]


@dataclass(frozen=True, slots=True)
class Question:
    """The question behind the words: what a proof starts from, and what only words add to it.

    `constants` are whole numbers that words stand for (the 2 of *half*); `form` is a form the
    question asks for by its very words, as *what percentage* does, or ``""``; `modelled` says that
    a model, options or a task stand for words that are not read one by one; `any_order` that the
    answer is a list in any order.
    """

    ask: Ask
    constants: tuple[int, ...] = ()
    form: str = ""
    task: str = ""
    modelled: bool = False
    any_order: bool = False


def ask_of(item: BankItem, maths: Maths) -> Ask:
    """Return the question behind the words; raises as :func:`question_of`.

    >>> from itembank.bank.question.maths import read_maths
    >>> item = BankItem(id="a-1", tier="core", prompt="Solve {2x = 6}.", key="x = 3")
    >>> type(ask_of(item, read_maths(item))).__name__
    'Solve'
    """
    return question_of(item, maths).ask


def question_of(item: BankItem, maths: Maths) -> Question:
    """Return the question behind the words, with what the words add to it.

    Raises:
        NeedsPerson: there is no mathematics to prove from, it does not fit the task, or words
            that may change the question are not understood; the message names them.
    """
    try:
        return _question(item, maths)
    except NeedsPerson:
        raise
    except t.NotationError:  # no other is to leave a command without an answer
        raise NeedsPerson(
            "What it asks could not be worked out from its words and its mathematics."
        ) from None


def _question(item: BankItem, maths: Maths) -> Question:
    if item.task == "choose" or (item.task is None and item.options):
        return Question(choose_ask(item, maths), item.constants, task="choose", modelled=True)
    reading = read_prompt(maths.runs)
    printed = any(not isinstance(run, str) for run in maths.runs)
    if not (maths.model or printed or (reading.giving and not reading.unread)):
        raise NeedsPerson(
            "The prompt prints no mathematics in { } and there is no model of its words."
        )
    if maths.model or maths.find is not None:
        # Words that are understood whole say more surely what is asked than a model does.
        if reading.task and not reading.unread and maths.find is None:
            try:
                return _direct(item, maths, reading)
            except NeedsPerson:
                pass
        return _modelled(item, maths, reading)
    if reading.unread or not reading.task:
        if item.task in STORIES:
            return _told_by_task(item, maths)
        raise NeedsPerson(_unread(reading.unread))
    return _direct(item, maths, reading)


STORIES = ("hcf", "lcm", "share")
"""Tasks that may stand for the words of a story that has no model."""


def _unread(words: str) -> str:
    if re.search(r"\d|[+×÷=<>≤≥√%£€$°^*/−]", words):
        return (
            f"‘{readable(words)}’ stands outside {{ }}: put all of a number or a sum in one pair "
            "of braces, or add a model of the words."
        )
    return (
        f"‘{readable(words)}’ is not understood, and may change what is asked: word it as in the "
        "guide to writing questions, or add a model of the words."
    )


# Questions asked directly, of the mathematics that is printed.


def _direct(item: BankItem, maths: Maths, reading: Reading) -> Question:
    nodes = [run for run in maths.runs if not isinstance(run, str)]
    if reading.giving is not None:
        told = [nodes[place] for place in reading.where]
        made, own, form = give_ask(item, maths, reading.giving, told)
        return Question(made, (*item.constants, *own), form)
    args = [nodes[place] for place in reading.args]
    where = [nodes[place] for place in reading.where]
    words = words_of(maths)
    for node in where:
        if not isinstance(node, t.Relation | t.Sym) and not _relations_listed(node):
            raise NeedsPerson(f"{text(node)} is given, but it is not said what it is for.")
    if reading.saying is None:
        _units_inside(maths, args, words, reading.task)
    else:
        try:
            target, constants = reading.saying.build(*args)
        except NotBuilt as error:
            raise NeedsPerson(str(error)) from error
        _units_inside(maths, [*args, target], words, reading.task)
        _agree(item, "work-out")
        form = reading.saying.form
        if counted := _counted([target], words, maths.key):
            return Question(Find(counted), (*item.constants, *constants, 1), "value", "work-out")
        said = reading.saying if isinstance(reading.saying, Saying) else None
        any_order = said is not None and said.any_order
        if any_order:
            target = _in_order_of(maths.key, target)
        ask = _worked_out(target, _all_relations(where))
        return Question(
            ask if said is not None and said.rounds else _rounded(ask, maths, words),
            (*item.constants, *constants),
            form,
            "work-out",
            any_order=any_order,
        )
    if reading.task == "extreme":
        _nothing_besides(where)
        return Question(extreme_ask(args, reading.pick, words), item.constants, "", "choose")
    if names_a_form(words) and form_in_words(words) not in _SHAPES:
        raise NeedsPerson("‘In the form’ is understood for a ratio 1 : n or n : 1 only.")
    task = _task(reading, args, words, item.task)
    if task in ("convert", "share", "round"):
        _nothing_besides(where)
    _agree(item, task, any(t.symbols(node) for node in args))
    if item.task == "share" and not reading.args:
        return _told_by_task(item, maths)
    if task == "convert" and (counted := _counted(args, words, maths.key)):
        return Question(Find(counted), (*item.constants, 1), "value", "work-out")
    given = Given(tuple(args), tuple(where), reading.letter, words)
    ask = _picked(TASKS[item.task or task](item, given), reading.pick, item.task or task)
    return Question(_rounded(ask, maths, words), item.constants, "", item.task or task)


def _in_order_of(key: t.Node, target: t.Node) -> t.Node:
    """Return a list in the order of a key that holds the same numbers."""
    match key, target:
        case t.Listing(given), t.Listing(parts) if len(given) == len(parts) and {*given} == {
            *parts
        }:
            return key
    return target


def _counted(args: list[t.Node], words: str, key: t.Node) -> t.Node | None:
    """Return *how many minutes are in {2.5 h}* as 2.5 h ÷ 1 min, where the key is a bare number."""
    unit = unit_said(words)
    bare = not _has_unit(key)
    if not (unit and bare and len(args) == 1 and asks_how_many(words)):
        return None
    lasts = isinstance(args[0], t.Sum) and times_in(args[0]) == 0
    if not (_has_unit(args[0]) or lasts):
        return None
    # £200 ÷ £15 is a number already: it counts the weeks themselves.
    with suppress(t.NotationError):
        measures = dimension(args[0])
        if not measures:
            return None
        if unit == "°" and "temperature" in measures:
            unit = "°C"  # how many degrees warmer
    one: t.Node = t.Money(t.Int(1), unit) if unit in CURRENCY else t.Quantity(t.Int(1), unit)
    return t.Product(args[0], (("÷", one),))


def _has_unit(node: t.Node) -> bool:
    return any(isinstance(part, t.Quantity | t.Money) for part in t.walk(node))


def _units_inside(maths: Maths, args: list[t.Node], words: str, task: str) -> None:
    """Raise NeedsPerson where a unit is asked for and the number's own stands outside its braces.

    *A film lasts {2} hours. How many seconds is that?* has two seconds in its braces.
    """
    if any(_has_unit(node) or isinstance(node, t.ClockTime) for node in args):
        return
    asked = unit_said(words) or nearest_coin(words)
    if not asked:
        return
    if task not in ("convert", "round", "work-out"):
        return
    if unit_after(maths.runs) != {asked}:
        raise NeedsPerson(
            "The question asks for another unit than its braces hold: write the unit in the braces "
            "with its number, as {2 h}."
        )


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


_AGREE = {
    "work-out": ("work-out", "missing", "find-letter", "convert", "round", "simplify", "nth-term"),
    "solve": ("solve", "find-letter", "missing", "work-out"),
    "simplify": ("simplify", "convert", "work-out"),
    "convert": ("convert", "work-out", "simplify", "round"),
    "round": ("round", "convert", "work-out"),
    "order": ("order", "convert", "work-out"),
    "compare": ("compare",),
}
"""The tasks of a file, each with the readings of the words that it fits."""


def _agree(item: BankItem, task: str, lettered: bool = True) -> None:
    """Raise NeedsPerson where the file names another task than the words."""
    if item.task is None or task == item.task or task in _AGREE.get(item.task, ()):
        return
    if item.task == "simplify" and task == "expand" and not lettered:
        return  # a surd multiplied out has no brackets left to simplify
    raise NeedsPerson(f"The words say to {_SAID.get(task, task)}, but the task is ‘{item.task}’.")


_SAID = {
    "hcf": "find the highest common factor",
    "lcm": "find the lowest common multiple",
    "prime-factors": "write a product of primes",
    "nth-term": "find the nth term",
    "make-subject": "change the subject",
    "expand": "expand",
    "factorise": "factorise",
    "share": "share in a ratio",
    "round": "round",
    "work-out": "work something out",
    "missing": "find a missing number",
    "find-letter": "find the value of a letter",
    "solve": "solve",
    "order": "put in order",
    "compare": "compare",
    "convert": "write in another way",
    "simplify": "simplify",
    "extreme": "find the largest or the smallest",
}

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


# Word problems: a model says what the words ask.


def _modelled(item: BankItem, maths: Maths, reading: Reading) -> Question:
    words = words_of(maths)
    lines = list(maths.model)
    if reading.task in _STRONG and not reading.unread and item.task not in (None, reading.task):
        _agree(item, reading.task)
    if not lines:
        raise NeedsPerson("‘find’ says what is asked for, but there is no model to find it from.")
    if maths.find is not None:
        ask: Ask = Find(maths.find, _find_relations(lines))
    else:
        given = Given(tuple(lines), (), "", words, modelled=True)
        ask = TASKS[item.task or _task_of_model(lines, words)](item, given)
    ask = checked_story(item, maths, ask)
    if (
        isinstance(ask, Find)
        and not ask.relations
        and (counted := _counted([ask.target], words, maths.key))
    ):
        return Question(Find(counted), (*item.constants, 1), "value", item.task or "", True)
    ask = whole_things(_rounded(ask, maths, words), maths, words)
    return Question(ask, (*item.constants, 1), "", item.task or "", True)


_STRONG = (
    "hcf",
    "lcm",
    "nth-term",
    "make-subject",
    "prime-factors",
    "expand",
    "factorise",
    "order",
)


def _find_relations(lines: list[t.Node]) -> tuple[t.Relation, ...]:
    relations, others = parted(lines)
    if others:
        raise NeedsPerson(
            f"With ‘find’ every line of the model is an equation; {text(others[0])} is not one."
        )
    return tuple(relations)


def _task_of_model(lines: list[t.Node], words: str) -> str:
    node = lines[0]
    relations, others = parted(lines)
    if len(lines) > 1 and order_said(words, lines) and not relations:
        return "order"
    if len(lines) == 1 and is_number(node) and rounding(words) and not says_rough(words):
        return "round"
    if not others:
        letters = {name for relation in relations for name in t.symbols(relation)}
        return "solve" if letters and "□" not in letters else "work-out"
    if len(lines) == 1 and (isinstance(node, t.Ratio) or t.symbols(node)):
        return "simplify"
    return "work-out"


def _told_by_task(item: BankItem, maths: Maths) -> Question:
    """Return the question of a story whose task says what its words ask."""
    words = words_of(maths)
    nodes = tuple(run for run in maths.runs if not isinstance(run, str))
    assert item.task is not None
    ask = TASKS[item.task](item, Given(nodes, (), "", words))
    ask = checked_story(item, maths, ask)
    return Question(_rounded(ask, maths, words), item.constants, "", item.task, True)


# Rounding, and what a number is.


def _rounded(ask: Ask, maths: Maths, words: str) -> Ask:
    """Return the question with its answer rounded, where the words say so."""
    made = _with_rounding(ask, maths, words)
    if isinstance(made, Round) and _whole_in_another_unit(maths.key, nearest_unit(words)):
        # To the nearest centimetre may be given as 3.46 m, but is worked out here in centimetres.
        name = nearest_unit(words)
        raise NeedsPerson(f"The words round to the nearest {name}: give the key in that unit.")
    return made


def _whole_in_another_unit(key: t.Node, name: str) -> bool:
    unit = unit_names().get(name.casefold(), "")
    if unit not in UNITS or not isinstance(key, t.Quantity) or key.unit == unit:
        return False
    with suppress(t.NotationError):
        return (exact(key) / UNITS[unit].size).denominator == 1
    return False


def _with_rounding(ask: Ask, maths: Maths, words: str) -> Ask:
    if isinstance(ask, Round) or not (says_rounded(words) or says_rough(words)):
        return ask
    if says_rough(words):
        if maths.model:
            return ask
        raise NeedsPerson("The words ask for an estimate or a bound: add a model of what is meant.")
    if not isinstance(ask, Find | Solve | Pick):
        return ask
    found, way = rounding(words), rounding_way(words)
    if not isinstance(ask, Find) or ask.relations or found is None or way is None:
        raise NeedsPerson("The words speak of rounding in a way that is not worked out here.")
    if isinstance(ask.target, t.Listing | t.Ratio) or t.symbols(ask.target) - {"π"}:
        raise NeedsPerson("Only a number is rounded here.")
    if "penny" in words and isinstance(maths.key, t.Money) and maths.key.sign == "p":
        raise NeedsPerson("Give a key to the nearest penny in pounds, as £0.45.")
    return Round(ask.target, *found, way)


def is_number(node: t.Node) -> bool:
    """Whether a tree is one number or a sum to be worked out, with no letter in it.

    >>> is_number(t.Int(3)), is_number(t.Sym("x"))
    (True, False)
    """
    return not isinstance(node, t.Relation | t.Ratio | t.Listing) and not t.symbols(node)


def is_plain(node: t.Node) -> bool:
    """Whether a tree is one number as it stands, so that nothing is left to work out.

    >>> is_plain(t.Int(7)), is_plain(t.Frac(t.Int(28), t.Int(9)))
    (True, True)
    """
    match node:
        case t.Neg(of) | t.Percent(of) | t.Money(of, _) | t.Quantity(of, _):
            return is_plain(of)
        case t.Int() | t.Dec() | t.Mixed() | t.Frac(t.Int(), t.Int()) | t.Blank():
            return True
    return False
