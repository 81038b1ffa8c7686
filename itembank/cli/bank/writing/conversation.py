"""The conversation of ``itembank bank add``: one question at a time, each answer looked at."""

from __future__ import annotations

from dataclasses import dataclass

from itembank.cli.bank.writing.answer_seen import (
    BY_WORKING,
    a_free_id,
    a_line_for,
    a_mistake,
    a_model_line,
    a_number_of_marks,
    a_prompt,
    a_word,
    a_working_line,
)
from itembank.cli.bank.writing.item_typed import mistakes, working_line
from itembank.cli.words.ask import ask, ask_lines, note, one_of
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.work.bank.bank_facts import BankFacts, next_id, the_topic
from itembank.work.bank.question_fields import (
    Fields,
    in_order,
    likely_task,
    usual_form,
    why_a_model,
)

AS_IT_READS = "as it reads"


@dataclass
class Draft:
    """A question in the making: what is known of it so far."""

    bank: BankFacts
    record: Fields
    topic: str = ""
    title: str = ""


def converse(draft: Draft) -> None:
    """Ask for every part of a question, with what is known as the first answers."""
    say("Put mathematics between braces, as in: Work out {3/4 + 1/6}.")
    for name, step in STEPS.items():
        # Lines have no answer that Enter keeps, so those that are given are not asked for again.
        if not draft.record.get(_OF_LINES.get(name, "")):
            step(draft)
    draft.record = in_order(draft.record)


def mend(draft: Draft) -> None:
    """Ask which part is to change, and for that part again."""
    steps = {**STEPS, "model": _model}
    say(f"Its parts are {', '.join(steps)}.")
    steps[ask("Change", "key", one_of(tuple(steps)))](draft)
    draft.record = in_order(draft.record)


def _topic(draft: Draft) -> None:
    typed, title = ask("Topic", draft.topic, needed=True), draft.title
    while True:
        try:
            draft.topic, draft.title = the_topic(draft.bank, typed, title)
        except ItembankError as error:
            note(str(error))
        else:
            return
        title = ""
        if _is_id(typed):
            title = ask("Title, if it is a topic of your own; Enter to write the topic again")
        if _is_id(title):  # the topic once more, where a title was asked for
            typed, title = title, ""
        elif not title:
            typed = ask("Topic", needed=True)


def _is_id(typed: str) -> bool:
    """Whether something typed may be the id of a topic; what is not takes no title."""
    from itembank.bank.model.field_types import TOPIC_ID

    return bool(TOPIC_ID.match(typed.strip().lower()))


def _tier(draft: Draft) -> None:
    from itembank.bank.model.field_types import TIERS

    draft.record["tier"] = ask("Tier", draft.record.get("tier", "core"), one_of(TIERS))


def _question(draft: Draft) -> None:
    draft.record["prompt"] = ask("Question", draft.record.get("prompt", ""), a_prompt, needed=True)


def _picture(draft: Draft) -> None:
    """Ask for what is drawn with the question; most questions have nothing."""
    from itembank.work.bank.figure_typed import EXAMPLE, checked_figure

    say(
        "A picture, where there is one: a line at a time, such as "
        f"{'; '.join(EXAMPLE)}. An empty line ends it. The guide to writing "
        "questions has every kind of picture."
    )
    while True:
        lines = ask_lines("  Picture")
        try:
            draft.record["figure"] = checked_figure("\n".join(lines)) if lines else None
        except ItembankError as error:
            note(f"{error} Write it again, or end it at once to have none.")
        else:
            return


def _task(draft: Draft) -> None:
    from itembank.bank.model.field_types import TASKS

    record = draft.record
    default = record.get("task") or likely_task(record["prompt"]) or AS_IT_READS
    task = ask("Task", default, a_word("task", (*TASKS, AS_IT_READS)))
    record["task"] = None if task == AS_IT_READS else task
    if task == "choose":
        _options(record)


def _key(draft: Draft) -> None:
    record = draft.record
    record["key"] = ask("Key", record.get("key", ""), a_line_for(record, "key"), needed=True)
    if not record.get("model") and not record.get("figure"):
        _model_if_needed(draft)


def _marks(draft: Draft) -> None:
    typed = ask("Marks", str(draft.record.get("marks") or BY_WORKING), a_number_of_marks)
    draft.record["marks"] = None if typed == BY_WORKING else int(typed)


def _working(draft: Draft) -> None:
    say("Working: a line at a time, as WORDS | MATHEMATICS. An empty line ends it.")
    draft.record["working"] = [working_line(line) for line in ask_lines("  Line", a_working_line)]


def _mistakes(draft: Draft) -> None:
    say("Likely mistakes: WRONG ANSWER | WHAT THEY DO | WHAT TO ASK. An empty line ends them.")
    draft.record["misconceptions"] = mistakes(ask_lines("  Mistake", a_mistake))


def _author(draft: Draft) -> None:
    codes = list(draft.bank.authors)
    if codes:
        default = draft.record.get("author") or codes[0]
        draft.record["author"] = ask("Author", default, a_word("author", codes))


def _id(draft: Draft) -> None:
    default = draft.record.get("id") or next_id(draft.bank.folder, draft.topic)
    draft.record["id"] = ask("Id", default, a_free_id(draft.bank.folder))


def _options(record: Fields) -> None:
    say("What there is to choose from, as NAME = WORTH. An empty line ends it.")
    options = {}
    for line in ask_lines("  Choice"):
        name, _, worth = (part.strip() for part in line.partition("="))
        options[name] = worth
    record["options"] = options
    record["choose"] = ask("Which is right", "least", one_of(("least", "greatest")))


def _model_if_needed(draft: Draft) -> None:
    """Ask for the mathematics behind the words where the words alone do not say it."""
    if why := why_a_model(draft.record):
        note(why)
        _model(draft)


def _model(draft: Draft) -> None:
    say(
        "Write the mathematics behind the words, a line at a time, such as 3/4 × 60. An empty "
        "line ends it; with none at all, a person has to check the key."
    )
    record = draft.record
    trial = {name: value for name, value in record.items() if name not in ("model", "find")}
    record["model"] = ask_lines("  Model", a_model_line(trial))
    record["find"] = None
    if any("=" in line for line in record["model"]):
        known = {**trial, "model": record["model"]}
        record["find"] = ask("What is asked for, such as b", "", a_line_for(known, "find"))


def _form(draft: Draft) -> None:
    from itembank.items.forms.form_rules import FORMS, form_words

    usual = usual_form(draft.record)
    say(f"The answer is usually to be {form_words(usual)}.")
    form = ask("Form", draft.record.get("form") or usual, a_word("form", list(FORMS)))
    draft.record["form"] = None if form == usual else form


STEPS = {
    "topic": _topic,
    "tier": _tier,
    "question": _question,
    "picture": _picture,
    "task": _task,
    "key": _key,
    "form": _form,
    "marks": _marks,
    "working": _working,
    "mistakes": _mistakes,
    "author": _author,
    "id": _id,
}
"""The parts of a question, in the order in which they are asked for."""
_OF_LINES = {"picture": "figure", "working": "working", "mistakes": "misconceptions"}
"""The parts that are asked for line by line, with their fields."""
