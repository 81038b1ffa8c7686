"""What may stand in the files of a bank: the one description that loading and editors share.

A bank is a folder with ``bank.toml`` (:class:`BankFile`) and one file a topic
(:class:`TopicFile`). The models say what is allowed, field by field; :mod:`.load` turns what
they refuse into faults with a line, and :mod:`.schema` publishes them as JSON Schema.

>>> BankItem(id="garden-1", tier="core", prompt="Work out {3/4 + 1/6}.", key="11/12").tier
'core'
"""

from __future__ import annotations

import datetime
import re
import unicodedata
from typing import Annotated, Any, Literal

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    Strict,
    StrictInt,
    StrictStr,
    ValidationInfo,
    WithJsonSchema,
)

from itembank.items.forms.form_rules import FORMS

TIERS = ("support", "core", "challenge")
TASKS = (
    "work-out",
    "simplify",
    "expand",
    "factorise",
    "solve",
    "make-subject",
    "share",
    "order",
    "compare",
    "convert",
    "choose",
    "nth-term",
    "hcf",
    "lcm",
    "prime-factors",
    "round",
)
"""What a question may ask for."""

ID = r"[a-z0-9]+(?:-[a-z0-9]+)*"
ITEM_ID = re.compile(rf"{ID}(?:\.[0-9a-f]{{4,64}})?\Z")
BANK_NAME = re.compile(rf"{ID}\Z")
TOPIC_ID = re.compile(rf"{ID}(?:\.{ID})+\Z")
AUTHOR_CODE = re.compile(r"[A-Za-z0-9]+(?:-[A-Za-z0-9]+)*\Z")

MOST_TEXT = 2_000
MOST_MARKS = 20
MOST_SET = 500
"""The most items one generated set may hold."""


def text_fault(text: str) -> str:
    """Return what keeps `text` from being one line that prints as it is typed, or ``""``.

    >>> text_fault("Work out {1/2}.")
    ''
    >>> text_fault(chr(0x202E) + "12")
    'holds a character that cannot be seen (U+202E); take it out'
    """
    if not text.strip():
        return "is empty; write something between the quotation marks"
    if len(text) > MOST_TEXT:
        return f"is too long; write at most {MOST_TEXT:,} characters"
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


# Named before the models that use them: a model may look names up as it is made.
def _licensor(value: str | None, info: ValidationInfo) -> str | None:
    if value is not None and info.data.get("licence") is None:
        raise ValueError("stands here without a licence; state both, or neither")
    return value


def _task(value: str | None) -> str | None:
    if value is not None and value not in TASKS:
        raise ValueError("is not a task")
    return value


class _Model(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class BankFile(_Model):
    """The bank's own facts, in ``bank.toml``."""

    name: Annotated[
        StrictStr,
        AfterValidator(_Plain.bank_name),
        Field(
            description="Used in addresses, as in larkhythe:garden-12.",
            json_schema_extra={"pattern": f"^{ID}$"},
        ),
    ]
    title: Annotated[Text, Field(description="What people call the bank.")]
    licence: Annotated[Text | None, Field(description="The licence of its items.")] = None
    licensor: Annotated[
        Text | None,
        AfterValidator(_licensor),
        Field(description="Who grants the licence: a body, a school or a code, never a pupil."),
    ] = None
    authors: Annotated[
        dict[AuthorCode, Text],
        Field(
            description="Author codes, never names of people, each with a role.",
            json_schema_extra={"additionalProperties": False},
        ),
    ] = {}

    @property
    def terms(self) -> str | None:
        """Return the licence with who grants it, as an item says it that leaves the bank."""
        return terms_of(self.licence, self.licensor)


def terms_of(licence: str | None, licensor: str | None) -> str | None:
    """Return a licence with who grants it; None where there is none.

    >>> terms_of("MIT", "The itembank contributors")
    'MIT, granted by The itembank contributors'
    >>> terms_of("MIT", None)
    'MIT'
    """
    return f"{licence}, granted by {licensor}" if licence and licensor else licence


class MisconceptionText(_Model):
    """A wrong method that pupils are known to use, and the answer it gives."""

    id: ItemId
    name: Annotated[Text, Field(description="The wrong method, as in: adds tops and bottoms.")]
    wrong: Annotated[Text, Field(description="The answer it gives, in line notation.")]
    ask: Annotated[Text, Field(description="What a teacher can ask a pupil who used it.")]


class BankItem(_Model):
    """One question that a person wrote."""

    id: Annotated[ItemId, Field(description="Unique in the bank; it never changes.")]
    tier: Literal["support", "core", "challenge"]
    prompt: Annotated[Text, Field(description="The words, with mathematics between { and }.")]
    key: Annotated[Text, Field(description="The answer, in line notation.")]
    task: Annotated[
        str | None,
        Field(description="What is asked for.", json_schema_extra={"enum": [*TASKS, None]}),
        AfterValidator(_task),
    ] = None
    form: Annotated[Form | None, Field(description="The form the answer has to have.")] = None
    marks: Annotated[
        StrictInt | None,
        Field(ge=1, le=MOST_MARKS, description="Where it is not by the lines of its working."),
    ] = None
    from_year: Annotated[
        StrictInt | None,
        Field(
            ge=1,
            le=13,
            description="The first year group it suits, where its mathematics does not tell.",
        ),
    ] = None
    model: Annotated[
        tuple[Text, ...], Field(description="The mathematics behind the words of the prompt.")
    ] = ()
    find: Annotated[Text | None, Field(description="What the model is asked for.")] = None
    constants: Annotated[
        tuple[StrictInt, ...],
        Field(description="Whole numbers the model needs though the prompt does not print them."),
    ] = ()
    not_needed: Annotated[
        dict[Text, Text],
        Field(
            description="Numbers of the prompt that the model leaves out, each with the reason "
            "why the answer does not depend on it."
        ),
    ] = {}
    options: Annotated[
        dict[Text, Text], Field(description="For choose: each name with what it is worth.")
    ] = {}
    choose: Annotated[
        Literal["least", "greatest"] | None, Field(description="For choose: which one is right.")
    ] = None
    accept: Annotated[
        tuple[Text, ...], Field(description="How marking may be more lenient than the form.")
    ] = ()
    working: tuple[WorkingLine, ...] = ()
    misconceptions: tuple[MisconceptionText, ...] = ()
    author: Annotated[AuthorCode | None, Field(description="One of the bank's codes.")] = None
    licence: Annotated[Text | None, Field(description="Where it is not the bank's own.")] = None
    source: Text | None = None
    created: Day | None = None
    retired: Annotated[Day | None, Field(description="No longer used from this day on.")] = None
    retired_because: Text | None = None

    @property
    def base(self) -> str:
        """Return the id without the mark that a conflict of a merge put after it."""
        return self.id.partition(".")[0]


class GeneratedSet(_Model):
    """Items that a generator makes: so many of a tier by a seed, or a list of addresses."""

    topic: Annotated[TopicId | None, Field(description="Where it is not this file's.")] = None
    tier: Literal["support", "core", "challenge"] | None = None
    count: Annotated[StrictInt, Field(ge=1, le=MOST_SET)] | None = None
    seed: Annotated[StrictInt, Field(ge=0, le=2**53)] | None = None
    addresses: Annotated[tuple[Text, ...], Field(max_length=MOST_SET)] = ()


class PinnedItem(_Model):
    """One generated item, by its address."""

    address: Text


class TopicFile(_Model):
    """One topic of a bank."""

    topic: TopicId
    title: Annotated[
        Text | None, Field(description="Needed where the tool makes no items on the topic.")
    ] = None
    prerequisites: tuple[TopicId, ...] = ()
    items: tuple[BankItem, ...] = ()
    generated: tuple[GeneratedSet, ...] = ()
    pinned: tuple[PinnedItem, ...] = ()
