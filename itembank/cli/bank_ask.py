"""The conversation of ``itembank bank add``: one question at a time, each answer looked at."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from itembank.cli.ask import ask, ask_lines, one_of
from itembank.cli.bank_record import (
    Record,
    as_bank_item,
    in_order,
    mistake,
    next_id,
    the_topic,
    working_line,
)
from itembank.cli.text import say
from itembank.errors import ItembankError
from itembank.faults import join_words, nearest

if TYPE_CHECKING:
    from itembank.bank.load import Bank

STARTS = {
    "work out": "work-out",
    "simplify": "simplify",
    "expand": "expand",
    "multiply out": "expand",
    "factorise": "factorise",
    "solve": "solve",
    "make": "make-subject",
    "share": "share",
    "divide": "share",
    "round": "round",
}
"""The first words of a question, and the task they usually set."""
WITHIN = {
    "smallest first": "order",
    "largest first": "order",
    "highest common factor": "hcf",
    "lowest common multiple": "lcm",
    "product of prime": "prime-factors",
    "nth term": "nth-term",
}


def likely_task(prompt: str) -> str:
    """Return the task that a question's words set, or ``""`` where they leave it open.

    >>> likely_task("Solve {2x = 6}."), likely_task("Write in order, smallest first: {1, 3}")
    ('solve', 'order')
    """
    words = prompt.lower()
    for phrase, task in WITHIN.items():
        if phrase in words:
            return task
    for phrase, task in STARTS.items():
        # "Share" and "divide" set a sharing task only where a ratio stands there.
        if words.startswith(phrase) and (task != "share" or ":" in words):
            return task
    return ""


def converse(bank: Bank, record: Record, topic: str, title: str) -> tuple[Record, str, str]:
    """Ask for what a question still needs, with `record` as the first answers.

    Returns
    -------
    The record, its topic, and the topic's title.
    """
    from itembank.bank.model import TASKS, TIERS

    record = dict(record)
    topic, title = _topic(bank, topic, title)
    record["tier"] = ask("Tier", record.get("tier", "core"), one_of(TIERS))
    say("Put mathematics between braces, as in: Work out {3/4 + 1/6}.")
    record["prompt"] = ask("Question", record.get("prompt", ""), _prompt, needed=True)
    default = record.get("task") or likely_task(record["prompt"]) or "as it reads"
    task = ask("Task", default, _word("task", (*TASKS, "as it reads")))
    record["task"] = None if task == "as it reads" else task
    if record["task"] == "choose":
        _options(record)
    record["key"] = ask("Key", record.get("key", ""), _maths_or(record), needed=True)
    _model(record)
    _form(record)
    record["marks"] = int(ask("Marks", str(record.get("marks", 1)), _marks))
    if not record.get("working"):
        say("Working: a line at a time, as WORDS | MATHEMATICS. An empty line ends it.")
        record["working"] = [working_line(line) for line in ask_lines("  Line", _working)]
    if not record.get("misconceptions"):
        say("Likely mistakes: WRONG ANSWER | WHAT THEY DO | WHAT TO ASK. An empty line ends them.")
        ids: list[str] = []
        record["misconceptions"] = []
        for line in ask_lines("  Mistake", _mistake):
            record["misconceptions"].append(mistake(line, ids))
            ids.append(record["misconceptions"][-1]["id"])
    if bank.authors:
        codes = list(bank.authors)
        record["author"] = ask("Author", record.get("author") or codes[0], _word("author", codes))
    record["id"] = ask("Id", record.get("id") or next_id(bank, topic), _free_id(bank))
    return in_order(record), topic, title


def _topic(bank: Bank, topic: str, title: str) -> tuple[str, str]:
    while True:
        typed = ask("Topic", topic, needed=True)
        try:
            return the_topic(bank, typed, title)
        except ItembankError as error:
            for part in str(error).split(" a topic of your own")[0].split(";"):
                say(f"  {part.strip().rstrip('.')}.")
            title = ask("Title, if it is a topic of your own")
            topic = typed if title else ""
            if title:
                try:
                    return the_topic(bank, typed, title)
                except ItembankError as fault:
                    say(f"  {fault}")
                    title = topic = ""


def _prompt(typed: str) -> str:
    from itembank.bank.maths import split_prompt

    _readable({"prompt": typed, "key": "1"})
    if not any(is_maths for _, is_maths, _ in split_prompt(typed)) and any(
        char.isdigit() for char in typed
    ):
        say("  No braces: its numbers will print as words, and its key cannot be proved.")
    return typed


def _maths_or(record: Record) -> Any:
    def check(typed: str) -> str:
        _readable({**record, "key": typed})
        return typed

    return check


def _readable(record: Record) -> None:
    """Read the mathematics there is so far; raises ItembankError where it cannot be read."""
    trial = {"id": "new", "tier": "core", **{k: v for k, v in record.items() if v}}
    as_bank_item(trial)


def _word(kind: str, words: tuple[str, ...] | list[str]) -> Any:
    def check(typed: str) -> str:
        same = [word for word in words if word.lower() == typed.lower()]
        if same:
            return same[0]
        near = nearest(typed.lower(), words, 1)
        raise ItembankError(
            f"There is no {kind} ‘{typed}’. Did you mean {near[0]}?"
            if near
            else f"It may be {join_words(list(words), 'or')}."
        )

    return check


def _options(record: Record) -> None:
    say("What there is to choose from, as NAME = WORTH. An empty line ends it.")
    options = {}
    for line in ask_lines("  Choice"):
        name, _, worth = (part.strip() for part in line.partition("="))
        options[name] = worth
    record["options"] = options
    record["choose"] = ask("Which is right", "least", one_of(("least", "greatest")))


def _model(record: Record) -> None:
    """Ask for the mathematics behind the words where the words alone do not say it."""
    from itembank.bank.asking import NeedsPerson, ask_of
    from itembank.bank.maths import read_maths

    if record.get("model"):
        return
    item = as_bank_item({"id": "new", **in_order(record)})
    try:
        ask_of(item, read_maths(item))
    except NeedsPerson as error:
        say(f"  {error}")
    else:
        return
    say("The mathematics behind the words, a line at a time, proves the key; with an empty")
    say("line instead, a person has to check it.")
    trial = {key: value for key, value in record.items() if key != "task"}
    record["model"] = ask_lines("  Model", lambda line: _model_line(trial, line))
    if record["model"] and any("=" in line for line in record["model"]):
        record["find"] = ask("What is asked for", "", lambda line: _model_line(trial, line))


def _model_line(record: Record, line: str) -> str:
    _readable({**record, "model": [line]})
    return line


def _form(record: Record) -> None:
    from itembank.bank.maths import read_maths
    from itembank.bank.reading import form_of
    from itembank.items.forms import FORMS, form_words

    item = as_bank_item({"id": "new", **in_order(record), "form": None})
    usual = form_of(item, read_maths(item))
    say(f"The key is usually to be {form_words(usual)}.")
    form = ask("Form", record.get("form") or usual, _word("form", list(FORMS)))
    record["form"] = None if form == usual else form


def _marks(typed: str) -> str:
    from itembank.bank.model import MOST_MARKS

    if not (typed.isascii() and typed.isdigit() and 1 <= int(typed[:9]) <= MOST_MARKS):
        raise ItembankError(f"Write a whole number from 1 to {MOST_MARKS}.")
    return typed


def _working(typed: str) -> str:
    _readable({"prompt": "New", "key": "1", "working": [working_line(typed)]})
    return typed


def _mistake(typed: str) -> str:
    _readable({"prompt": "New", "key": "0", "misconceptions": [mistake(typed)]})
    return typed


def _free_id(bank: Bank) -> Any:
    used = {entry.item.id for entry in bank.entries()}

    def check(typed: str) -> str:
        as_bank_item({"id": typed, "tier": "core", "prompt": "New", "key": "1"})
        if typed in used:
            raise ItembankError(f"‘{typed}’ is taken. Write another.")
        return typed

    return check
