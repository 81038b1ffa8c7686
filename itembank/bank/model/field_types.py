"""What one field in the files of a bank may hold: a text, an id, a code, a line of working.

A refused value raises a `ValueError` that carries the rest of a sentence that begins with the
name of the field.
"""

from __future__ import annotations

import datetime
import re
import unicodedata
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BeforeValidator,
    Field,
    Strict,
    StrictStr,
    WithJsonSchema,
)

from itembank.bank.model.tasks import TASKS as TASKS
from itembank.files.fault_words import EMPTY, too_long
from itembank.items.forms.form_rules import FORMS

TIERS = ("support", "core", "challenge")

ID = r"[a-z0-9]+(?:-[a-z0-9]+)*"

ITEM_ID = re.compile(rf"{ID}(?:\.[0-9a-f]{{4,64}})?\Z")

BANK_NAME = re.compile(rf"{ID}\Z")

TOPIC_ID = re.compile(rf"{ID}(?:\.{ID})+\Z")

AUTHOR_CODE = re.compile(r"[A-Za-z0-9]+(?:-[A-Za-z0-9]+)*\Z")

MOST_TEXT = 2_000


def text_fault(text: str) -> str:
    """Return what keeps `text` from being one line that prints as it is typed, or ``""``.

    >>> text_fault("Work out {1/2}.")
    ''
    >>> text_fault(chr(0x202E) + "12")
    'holds a character that cannot be seen (U+202E); take it out'
    """
    if not text.strip():
        return EMPTY
    if len(text) > MOST_TEXT:
        return too_long(MOST_TEXT)
    if text.isascii() and text.isprintable():
        return ""
    for char in text:
        if char == "\n":
            return "must be one line; take out the line break"
        # Controls, and marks that turn the direction of reading, would print something else.
        if unicodedata.category(char) in ("Cc", "Cf", "Cs", "Co", "Zl", "Zp") and char != "\u00ad":
            return f"holds a character that cannot be seen (U+{ord(char):04X}); take it out"
    return ""


class _Plain:
    """Pydantic validators: a `ValueError` carries the rest of a sentence that begins ‘key’."""

    @staticmethod
    def text(value: str) -> str:
        fault = text_fault(value)
        if fault:
            raise ValueError(fault)
        return value

    @staticmethod
    def id(value: str) -> str:
        if not ITEM_ID.match(value):
            raise ValueError(
                f"must be lower-case letters, digits and hyphens, as in garden-12, not ‘{value}’"
            )
        return value

    @staticmethod
    def bank_name(value: str) -> str:
        if not BANK_NAME.match(value):
            raise ValueError(
                f"must be lower-case letters, digits and hyphens, as in larkhythe, not ‘{value}’"
            )
        return value

    @staticmethod
    def topic(value: str) -> str:
        if not TOPIC_ID.match(value):
            raise ValueError(f"must be strand.topic, as in ratio.share, not ‘{value}’")
        return value

    @staticmethod
    def author(value: str) -> str:
        if not AUTHOR_CODE.match(value):
            raise ValueError(f"must be a code of letters and digits, as in HT, not ‘{value}’")
        return value

    @staticmethod
    def working(value: Any) -> Any:
        # Words alone may stand without a list of their own.
        if isinstance(value, str):
            return (value, "")
        if isinstance(value, list | tuple) and len(value) == 1 and isinstance(value[0], str):
            return (value[0], "")
        return value

    @staticmethod
    def step(value: tuple[str, str]) -> tuple[str, str]:
        for part in filter(None, value):
            if fault := text_fault(part):
                raise ValueError(fault)
        if not any(part.strip() for part in value):
            raise ValueError("has a line with neither words nor mathematics; write one of them")
        return value


_PATTERN_ID = ITEM_ID.pattern.replace(r"\Z", "$")

Text = Annotated[StrictStr, AfterValidator(_Plain.text), Field(json_schema_extra={"minLength": 1})]

ItemId = Annotated[
    StrictStr, AfterValidator(_Plain.id), Field(json_schema_extra={"pattern": f"^{_PATTERN_ID}"})
]

BankName = Annotated[
    StrictStr,
    AfterValidator(_Plain.bank_name),
    Field(json_schema_extra={"pattern": f"^{ID}$"}),
]
TopicId = Annotated[
    StrictStr,
    AfterValidator(_Plain.topic),
    Field(json_schema_extra={"pattern": rf"^{ID}(?:\.{ID})+$"}),
]

AuthorCode = Annotated[
    StrictStr,
    AfterValidator(_Plain.author),
    Field(json_schema_extra={"pattern": "^[A-Za-z0-9]+(?:-[A-Za-z0-9]+)*$"}),
]

Day = Annotated[datetime.date, Strict()]

WorkingLine = Annotated[
    tuple[StrictStr, StrictStr],
    BeforeValidator(_Plain.working),
    AfterValidator(_Plain.step),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "string", "minLength": 1},
                {"type": "array", "items": {"type": "string"}, "minItems": 1, "maxItems": 2},
            ],
            "description": "What is done, in words, and the line of mathematics it gives.",
        }
    ),
]


def _form(value: str) -> str:
    if value not in FORMS:
        raise ValueError("is not a form")
    return value


Form = Annotated[StrictStr, AfterValidator(_form), Field(json_schema_extra={"enum": sorted(FORMS)})]
