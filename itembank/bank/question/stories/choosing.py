"""Questions that are answered by naming one of several: the best buy, the larger number."""

from __future__ import annotations

import re
from collections.abc import Mapping

from itembank.bank.model.fields import BankItem
from itembank.bank.question.given.maths import Maths
from itembank.bank.question.given.task_given import NeedsPerson
from itembank.bank.question.stories.model_held import checked_options
from itembank.items.item import Choose
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.claim.dimensions import dimension
from itembank.proof.claim.finding import text
from itembank.text.late_pattern import late
from itembank.wording.meaning.choices import choice_fault
from itembank.wording.sentences.prompt import SLOT, index_of, sentences, slotted
from itembank.wording.sentences.question_sentences import questions
from itembank.wording.sentences.sizes import size_meant
from itembank.wording.story.chosen_by import asks_best, least_or_greatest, more_than_choosing


def choose_ask(item: BankItem, maths: Maths) -> Choose:
    """Return the question to choose among the options of an item.

    Raises:
        NeedsPerson: the options or the way are missing, or the words ask for the other way.
    """
    if not maths.options or item.choose is None:
        raise NeedsPerson("To choose takes ‘options’ and ‘choose’, which is least or greatest.")
    asking = questions(maths.runs)
    if len(asking) != 1:
        raise NeedsPerson("To choose takes one question, which says what is chosen by.")
    words = re.sub(SLOT, "…", asking[0])
    if more := more_than_choosing(words):
        raise NeedsPerson(f"‘{more}’ asks for more than to choose the {item.choose}.")
    way = _way(words, maths)
    if way != item.choose:
        told = f"the words ask for the {way}" if way else "the words do not say which"
        raise NeedsPerson(f"The options are chosen by the {item.choose}, but {told}.")
    checked_options(item, maths)
    _own_numbers(item, maths)
    if fault := choice_fault(maths.runs, dict(maths.options), item.constants):
        raise NeedsPerson(fault)
    return Choose(maths.options, item.choose)


def _way(words: str, maths: Maths) -> str:
    """Return whether the words choose the least or the greatest, or ``""`` where they do not say.

    *Best value* is the least money for each thing, or the most things for the money.
    """
    if way := least_or_greatest(words):
        return "" if way == "both" else way
    if not asks_best(words):
        return ""
    ways = {_value_way(node) for _, node in maths.options}
    return ways.pop() if len(ways) == 1 else ""


def _value_way(node: t.Node) -> str:
    try:
        money = dimension(node).get("money", 0)
    except t.NotationError:
        return ""
    return {1: "least", -1: "greatest"}.get(money, "")


def _own_numbers(item: BankItem, maths: Maths) -> None:
    """Raise NeedsPerson where an option uses the numbers of another option's sentence."""
    said = slotted(maths.runs)
    _numbered_names(maths)
    names = [name for name, _ in maths.options]
    asking = questions(maths.runs)
    own: dict[str, set[object]] = {name: set() for name in names}
    shared: set[object] = {*item.constants}
    current = ""
    for sentence in sentences(said.text):
        if sentence in asking:
            continue
        named = [name for name in names if re.search(rf"\b{re.escape(name)}\b", sentence)]
        if len(named) > 1:
            return  # several options in one sentence: which number is whose is not known
        current = named[0] if named else ""
        numbers = {
            number
            for char in re.findall(SLOT, sentence)
            for number in _numbers(said.nodes[index_of(char)])
        }
        (own[current] if current else shared).update(numbers)
    if any(own.values()):
        _held(dict(maths.options), own, shared)


_NUMBERED = late(r"(\d[\d.]*)(?= ?[a-z-])", re.I)


def _numbered_names(maths: Maths) -> None:
    """Raise NeedsPerson where an option named by a number, *3 cans*, has another's numbers.

    Its own are the number of its name, and what stands in the next braces after it.
    """
    said = slotted(maths.runs)
    shown = re.sub(SLOT, lambda m: text(said.nodes[index_of(m[0])]) + m[0], said.text)
    for name, node in maths.options:
        if not _NUMBERED.match(name) or re.search(rf"\b{re.escape(name)}\b", said.text):
            continue
        number, rest = re.match(r"([\d.]+)(.*)", name).groups()  # type: ignore[union-attr]
        places = [*re.finditer(rf"(?<![\d.]){re.escape(number)}({SLOT}){re.escape(rest)}\b", shown)]
        if len(places) != 1:
            raise NeedsPerson(f"Which numbers belong to ‘{name}’ is not known.")
        after = re.search(SLOT, shown[places[0].end() :])
        chars = [places[0][1], *([after[0]] if after else [])]
        own = {n for char in chars for n in _numbers(said.nodes[index_of(char)])}
        if not own or not own <= _numbers(node):
            raise NeedsPerson(f"‘{name}’ is given numbers that the prompt says of another choice.")


def _held(
    options: Mapping[str, t.Node], own: Mapping[str, set[object]], shared: set[object]
) -> None:
    for name, node in options.items():
        strange = _numbers(node) - own[name] - shared
        if strange and any(strange & numbers for role, numbers in own.items() if role != name):
            raise NeedsPerson(f"‘{name}’ is given numbers that the prompt says of another choice.")


def _numbers(node: t.Node) -> set[object]:
    found: set[object] = set()
    for part in t.walk(node):
        if isinstance(part, t.Int | t.Frac):
            try:
                found.add(exact(part))
            except t.NotationError:
                continue
        elif not isinstance(part, t.Listing) and type(part).__name__ in ("Dec", "Mixed"):
            found.add(exact(part))
    return found


def extreme_ask(args: list[t.Node], size: str, words: str = "") -> Choose:
    """Return the question which of some printed numbers is the largest or the smallest.

    Raises:
        NeedsPerson: there are not two numbers or more, or it is not known which end `size` means.

    >>> from itembank.notation import parse
    >>> extreme_ask([parse("2/3"), parse("3/5")], "larger").detail
    'greatest'
    """
    things = args[0].parts if len(args) == 1 and isinstance(args[0], t.Listing) else tuple(args)
    if len(things) < 2 or any(isinstance(node, t.Relation) or t.symbols(node) for node in things):
        raise NeedsPerson("To find the largest or the smallest takes two numbers or more.")
    meant = size_meant(size, things, words)
    if not meant:
        raise NeedsPerson(f"Of numbers without units it is not known what is ‘{size}’.")
    return Choose(tuple((text(node), node) for node in things), meant)
