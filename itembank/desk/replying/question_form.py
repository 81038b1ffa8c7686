"""The form of a question: what was typed in it, as the fields that stand in a bank's file.

Every field of a file has its place here but `retired` and why, which retiring writes. What the
form shows of a question and is sent back untouched says the same as its file
(:func:`differing`), so that changing one field loses no other.
"""

from __future__ import annotations

import datetime
import re
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from starlette.datastructures import FormData

from itembank.desk.replying.forms import text
from itembank.errors import ItembankError
from itembank.files.toml_write import toml_pairs

PLAIN = (
    *("tier", "prompt", "key", "task", "form", "find", "choose"),
    *("author", "licence", "source", "created"),
)
"""Fields of one line, called the same in a file."""
AREAS = ("model", "figure", "constants")
"""Fields of a box of their own, of lines or of numbers."""
NUMBERS = {"marks": "Marks", "from_year": "First year group"}
ROWS: dict[str, tuple[tuple[str, ...], int]] = {
    "options": (("choice", "worth"), 2),
    "not_needed": (("spare", "why"), 1),
    "working": (("say", "line"), 3),
    "mistakes": (("wrong", "name", "ask", "mistake"), 2),
    "also": (("also",), 1),
}
"""Parts of several rows: what the fields of a row are called, and how many empty rows follow."""
TWICE = {
    "options": "Two choices are called ‘{}’. Give each a name of its own.",
    "not_needed": "‘{}’ stands twice among the numbers that are not needed.",
}
WITHIN = "within "

Row = tuple[str, ...]


@dataclass
class Typed:
    """What stands in the form, field by field, just as it was typed."""

    topic: str = ""
    own_topic: str = ""
    own_title: str = ""
    id: str = ""
    """The short name that a new question is to have."""
    plain: dict[str, str] = field(default_factory=dict)
    numbers: dict[str, str] = field(default_factory=dict)
    model: str = ""
    """A line each."""
    figure: str = ""
    """The picture, as lines of TOML."""
    constants: str = ""
    accept: tuple[str, ...] = ()
    """Words for how answers are marked that are ticked."""
    within: str = ""
    """How far from the key an answer may be."""
    rows: dict[str, list[Row]] = field(default_factory=lambda: {part: [] for part in ROWS})
    """The filled rows of each of :data:`ROWS`."""
    sent: frozenset[str] | None = None
    """The fields of a question that the form was about; None for all of them."""

    def shown_rows(self, part: str) -> list[Row]:
        """Return the rows of a part that the form shows, some of them empty."""
        names, spare = ROWS[part]
        return [*self.rows.get(part, ()), *[("",) * len(names)] * spare]

    def get(self, name: str) -> str:
        """Return a field of one line."""
        return self.plain.get(name, "") or self.numbers.get(name, "")


def typed_in(form: FormData) -> Typed:
    """Return what somebody typed in the form; rows that are left empty are none."""
    return Typed(
        text(form, "topic"),
        text(form, "own_topic"),
        text(form, "own_title"),
        text(form, "id-wanted"),
        {name: text(form, name) for name in PLAIN},
        {name: text(form, name) for name in NUMBERS},
        text(form, "model").replace("\r\n", "\n"),
        text(form, "figure").replace("\r\n", "\n"),
        text(form, "constants"),
        tuple(str(word) for word in form.getlist("accept")),
        text(form, "within"),
        {part: list(_rows_in(form, names)) for part, (names, _) in ROWS.items()},
        frozenset(_sent(form)),
    )


def _sent(form: FormData) -> Iterable[str]:
    """Yield the fields of a question that a form is about: a page of another day has fewer."""
    yield from (name for name in (*PLAIN, *NUMBERS, *AREAS) if name in form)
    if "within" in form:  # boxes that are not ticked are not sent
        yield "accept"
    called = {"mistakes": "misconceptions"}
    for part, (names, _) in ROWS.items():
        if any(key.startswith(tuple(f"{name}-" for name in names)) for key in form):
            yield called.get(part, part)


def _rows_in(form: FormData, names: Row) -> Iterable[Row]:
    # No longer numbers, and no other digits than 0 to 9, which int would read or refuse.
    pattern = re.compile(rf"(?:{'|'.join(names)})-(\d{{1,4}})", re.ASCII)
    numbers = {int(found[1]) for key in form if (found := pattern.fullmatch(key))}
    for number in sorted(numbers):
        row = tuple(text(form, f"{name}-{number}") for name in names)
        # The id of a mistake is not typed, so it alone makes no row.
        if any(part for part, name in zip(row, names, strict=True) if name != "mistake"):
            yield row


def typed_of(topic: str, stated: Mapping[str, Any]) -> Typed:
    """Return the form as it is filled for a question that is there."""
    accept = list(stated.get("accept") or ())
    ways = [word for word in accept if _is_way(word)]
    return Typed(
        topic,
        plain={name: str(stated.get(name) or "") for name in PLAIN},
        numbers={name: str(stated.get(name) or "") for name in NUMBERS},
        model="\n".join(stated.get("model") or ()),
        figure="\n".join(toml_pairs(stated.get("figure") or {})),
        constants=", ".join(str(number) for number in stated.get("constants") or ()),
        accept=tuple(ways),
        within=next((word[len(WITHIN) :] for word in accept if word.startswith(WITHIN)), ""),
        rows={
            "options": [(name, worth) for name, worth in (stated.get("options") or {}).items()],
            "not_needed": [(name, why) for name, why in (stated.get("not_needed") or {}).items()],
            "working": [(step[0], step[1]) for step in _steps(stated.get("working") or ())],
            "mistakes": [
                (mistake["wrong"], mistake["name"], mistake["ask"], mistake["id"])
                for mistake in stated.get("misconceptions") or ()
            ],
            "also": [
                (word,) for word in accept if word not in ways and not word.startswith(WITHIN)
            ],
        },
    )


def _is_way(word: str) -> bool:
    from itembank.marking.form.policy import ACCEPT

    return word in ACCEPT


def _steps(stated: Iterable[Any]) -> Iterable[tuple[str, str]]:
    for step in stated:
        say, *maths = [step] if isinstance(step, str) else step
        yield say, maths[0] if maths else ""


def fields_of(typed: Typed) -> dict[str, Any]:
    r"""Return the fields of a question as they are typed; what is empty is None.

    What the form was not about is not among them.

    Raises:
        ItembankError: a number or a day is none, or a choice stands twice; `field` says which.

    >>> fields_of(Typed(plain={"prompt": "Double {7}."}, model="a\n\nb"))["model"]
    ['a', 'b']
    >>> fields_of(Typed(accept=("no-unit",), within="0.1"))["accept"]
    ['no-unit', 'within 0.1']
    """
    from itembank.text.whole_number import whole_number
    from itembank.work.bank.figure_typed import figure_fields

    fields: dict[str, Any] = {name: typed.plain.get(name) or None for name in PLAIN}
    for name, called in NUMBERS.items():
        written = typed.numbers.get(name, "")
        number = whole_number(written) if written else None
        if written and number is None:
            raise ItembankError(
                f"{called}: write a whole number, not ‘{written[:40]}’.", field=name
            )
        fields[name] = number
    fields["created"] = _day(fields["created"])
    model = [line.strip() for line in typed.model.splitlines()]
    fields["model"] = [line for line in model if line] or None
    fields["figure"] = figure_fields(typed.figure) or None
    fields["constants"] = _whole_numbers(typed.constants) or None
    for part, message in TWICE.items():
        rows = typed.rows.get(part, ())
        twice = [name for name, times in Counter(name for name, _ in rows).items() if times > 1]
        if twice:
            raise ItembankError(message.format(twice[0][:40]), field=part)
        fields[part] = {name: value for name, value in rows} or None  # noqa: C416
    also = [word for (word,) in typed.rows.get("also", ())]
    within = [WITHIN + typed.within] if typed.within else []
    fields["accept"] = [*typed.accept, *within, *also] or None
    fields["working"] = [list(row) for row in typed.rows.get("working", ())] or None
    fields["misconceptions"] = _mistakes(typed.rows.get("mistakes", ())) or None
    if typed.sent is None:
        return fields
    # A field that the page did not have was not emptied by anybody.
    return {name: value for name, value in fields.items() if name in typed.sent}


def _mistakes(rows: Iterable[Row]) -> list[dict[str, Any]]:
    from itembank.work.bank.question_fields import mistake_fields

    found: list[dict[str, Any]] = []
    rows = list(rows)
    # All ids that stand there, those below too, so that a new mistake takes none of them.
    taken = [id for *_, id in rows if id]
    for wrong, name, ask, id in rows:
        made = mistake_fields(wrong, name, ask, taken)
        found.append({**made, "id": id or made["id"]})
        taken.append(found[-1]["id"])
    return found


def _day(typed: str | None) -> datetime.date | None:
    try:
        return datetime.date.fromisoformat(typed) if typed else None
    except ValueError:
        raise ItembankError(
            f"Written on: write a day such as 2026-09-14, not ‘{(typed or '')[:40]}’.",
            field="created",
        ) from None


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
    same = _plain_fields(fields)
    was = _plain_fields(stated)
    return {name: value for name, value in fields.items() if same.get(name) != was.get(name)}


def _plain_fields(stated: Mapping[str, Any]) -> dict[str, Any]:
    """Return fields in one shape, whether a form or a file says them; spaces round them are none.

    The ways in which answers are accepted have no order.
    """
    found = {}
    for name, value in stated.items():
        if name == "working":
            value = list(_steps(value or ()))
        elif name == "accept":
            value = sorted(value or ())
        found[name] = _plain(value)
    return found


def _plain(value: Any) -> Any:
    if value in (None, "", [], (), {}):
        return None
    if isinstance(value, str):
        return value.strip()
    if isinstance(value, datetime.date):
        return value.isoformat()
    if isinstance(value, Mapping):
        return {_plain(name): _plain(part) for name, part in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(part) for part in value]
    return value
