"""The form of a question: what was typed in it, as the fields that stand in a bank's file."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from starlette.datastructures import FormData

from itembank.desk.replying.forms import text
from itembank.errors import ItembankError

PLAIN = ("tier", "prompt", "key", "task", "form", "find", "source", "author")
"""Fields of one line, called the same in a file."""
NUMBERS = {"marks": "Marks", "from_year": "First year group"}
SPARE = {"working": 3, "mistakes": 2}
"""Empty rows after those that are filled."""
MOST_ROWS = 60


@dataclass
class Typed:
    """What stands in the form, field by field, just as it was typed."""

    topic: str = ""
    own_topic: str = ""
    own_title: str = ""
    plain: dict[str, str] = field(default_factory=dict)
    numbers: dict[str, str] = field(default_factory=dict)
    model: str = ""
    """A line each."""
    constants: str = ""
    working: list[tuple[str, str]] = field(default_factory=list)
    """What is done, and the mathematics it gives."""
    mistakes: list[tuple[str, str, str, str]] = field(default_factory=list)
    """The wrong answer, what they do, what to ask, and its id where it has one."""
    copied: str = ""
    """The address of the question that this is a copy of."""

    @property
    def working_rows(self) -> list[tuple[str, str]]:
        """Return the rows of working that the form shows, some of them empty."""
        return [*self.working, *[("", "")] * SPARE["working"]]

    @property
    def mistake_rows(self) -> list[tuple[str, str, str, str]]:
        """Return the rows of likely wrong answers that the form shows, some of them empty."""
        return [*self.mistakes, *[("", "", "", "")] * SPARE["mistakes"]]

    def get(self, name: str) -> str:
        """Return a field of one line."""
        return self.plain.get(name, "") or self.numbers.get(name, "")


def typed_in(form: FormData) -> Typed:
    """Return what somebody typed in the form; rows that are left empty are none."""
    typed = Typed(
        text(form, "topic"),
        text(form, "own_topic"),
        text(form, "own_title"),
        {name: text(form, name) for name in PLAIN},
        {name: text(form, name) for name in NUMBERS},
        text(form, "model").replace("\r\n", "\n"),
        text(form, "constants"),
        copied=text(form, "copied"),
    )
    for row in range(MOST_ROWS):
        step = text(form, f"say-{row}"), text(form, f"line-{row}")
        if any(step):
            typed.working.append(step)
        wrong, name = text(form, f"wrong-{row}"), text(form, f"name-{row}")
        ask, id = text(form, f"ask-{row}"), text(form, f"mistake-{row}")
        if wrong or name or ask:
            typed.mistakes.append((wrong, name, ask, id))
    return typed


def typed_of(topic: str, stated: Mapping[str, Any]) -> Typed:
    """Return the form as it is filled for a question that is there."""
    return Typed(
        topic,
        plain={name: str(stated.get(name) or "") for name in PLAIN},
        numbers={name: str(stated.get(name) or "") for name in NUMBERS},
        model="\n".join(stated.get("model") or ()),
        constants=", ".join(str(number) for number in stated.get("constants") or ()),
        working=[(step[0], step[1]) for step in _steps(stated.get("working") or ())],
        mistakes=[
            (each["wrong"], each["name"], each["ask"], each["id"])
            for each in stated.get("misconceptions") or ()
        ],
    )


def _steps(stated: Iterable[Any]) -> Iterable[tuple[str, str]]:
    for step in stated:
        say, *maths = [step] if isinstance(step, str) else step
        yield say, maths[0] if maths else ""


def fields_of(typed: Typed) -> dict[str, Any]:
    r"""Return the fields of a question as they are typed; what is empty is None.

    Raises:
        ItembankError: a number is none; `field` says which.

    >>> fields_of(Typed(plain={"prompt": "Double {7}."}, model="a\n\nb"))["model"]
    ['a', 'b']
    """
    from itembank.text.whole_number import whole_number
    from itembank.work.bank.question_fields import mistake_fields

    fields: dict[str, Any] = {name: typed.plain.get(name) or None for name in PLAIN}
    for name, called in NUMBERS.items():
        written = typed.numbers.get(name, "")
        number = whole_number(written) if written else None
        if written and number is None:
            raise ItembankError(
                f"{called}: write a whole number, not ‘{written[:40]}’.", field=name
            )
        fields[name] = number
    model = [line.strip() for line in typed.model.splitlines()]
    fields["model"] = [line for line in model if line] or None
    fields["constants"] = _whole_numbers(typed.constants) or None
    fields["working"] = [[say, line] for say, line in typed.working] or None
    mistakes: list[dict[str, Any]] = []
    taken = [id for *_, id in typed.mistakes if id]
    for wrong, name, ask, id in typed.mistakes:
        made = mistake_fields(wrong, name, ask, taken)
        mistakes.append({**made, "id": id or made["id"]})
        taken.append(mistakes[-1]["id"])
    fields["misconceptions"] = mistakes or None
    return fields


def _whole_numbers(typed: str) -> list[int]:
    from itembank.text.whole_number import whole_number

    found = []
    for part in typed.replace(",", " ").split():
        number = whole_number(part)
        if number is None:
            raise ItembankError(
                f"Numbers that the words do not print: write whole numbers, not ‘{part[:40]}’.",
                field="constants",
            )
        found.append(number)
    return found


def differing(fields: Mapping[str, Any], stated: Mapping[str, Any]) -> dict[str, Any]:
    """Return the fields that are not as a question states them.

    >>> differing({"key": "5", "find": None, "model": ["a"]}, {"key": "4", "model": ["a"]})
    {'key': '5'}
    """
    return {
        name: value for name, value in fields.items() if value != _plain(name, stated.get(name))
    }


def _plain(name: str, value: Any) -> Any:
    if value in (None, "", [], (), {}):
        return None
    if name == "working":
        return [list(step) for step in _steps(value)]
    if name == "misconceptions":
        return [{part: each[part] for part in ("id", "name", "wrong", "ask")} for each in value]
    return list(value) if isinstance(value, tuple) else value
