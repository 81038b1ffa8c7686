"""What may stand in the files of a bank: the one description that loading and editors share.

A bank is a folder with ``bank.toml`` (:class:`BankFile`) and one file a topic
(:class:`TopicFile`). They are declared as :mod:`itembank.files.fields.record` says, field by
field; :mod:`.load` gives what is refused its line, and :mod:`.schema` publishes them.

>>> BankItem(id="garden-1", tier="core", prompt="Work out {3/4 + 1/6}.", key="11/12").tier
'core'
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Annotated, Any, Literal

from itembank.files.fields.kinds import Check, Choice, Limit, Line, Whole, text_fault
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

MOST_MARKS = 20
MOST_SET = 500
"""The most items one generated set may hold."""


class _Plain:
    """Checks: a `ValueError` carries the rest of a sentence that begins with the key."""

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
        if isinstance(value, list | tuple) and len(value) > 2:
            raise ValueError("has a line with more than the words and the mathematics")
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
Text = Annotated[str, Line()]
ItemId = Annotated[str, Check(_Plain.id, {"pattern": f"^{_PATTERN_ID}"})]
TopicId = Annotated[str, Check(_Plain.topic, {"pattern": rf"^{ID}(?:\.{ID})+$"})]
AuthorCode = Annotated[str, Check(_Plain.author, {"pattern": "^[A-Za-z0-9]+(?:-[A-Za-z0-9]+)*$"})]
Day = datetime.date
WorkingLine = Annotated[
    tuple[str, str],
    Check(_Plain.working, first=True, wanted="words, or a list of words and mathematics"),
    Check(
        _Plain.step,
        {
            "anyOf": [
                {"type": "string", "minLength": 1},
                {"type": "array", "items": {"type": "string"}, "minItems": 1, "maxItems": 2},
            ],
            "description": "What is done, in words, and the line of mathematics it gives.",
        },
    ),
]
Form = Annotated[str, Choice(tuple(sorted(FORMS)), "form")]
Task = Annotated[str, Choice(TASKS, "task")]
TierName = Annotated[Literal["support", "core", "challenge"], Choice(TIERS, "tier")]


@dataclass(frozen=True, slots=True, kw_only=True)
class BankFile:
    """The bank's own facts, in ``bank.toml``."""

    name: Annotated[
        str,
        Check(_Plain.bank_name, {"pattern": f"^{ID}$"}),
        "Used in addresses, as in larkhythe:garden-12.",
    ]
    title: Annotated[Text, "What people call the bank."]
    licence: Annotated[Text | None, "The licence of its items."] = None
    licensor: Annotated[
        Text | None, "Who grants the licence: a body, a school or a code, never a pupil."
    ] = None
    authors: Annotated[
        dict[AuthorCode, Text], "Author codes, never names of people, each with a role."
    ] = field(default_factory=dict)

    def contradictions(self) -> Iterator[tuple[str, str]]:
        """Yield each key that another contradicts, with the rest of a sentence about it."""
        if self.licensor is not None and self.licence is None:
            yield "licensor", "stands here without a licence; state both, or neither"

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


@dataclass(frozen=True, slots=True, kw_only=True)
class MisconceptionText:
    """A wrong method that pupils are known to use, and the answer it gives."""

    id: ItemId
    name: Annotated[Text, "The wrong method, as in: adds tops and bottoms."]
    wrong: Annotated[Text, "The answer it gives, in line notation."]
    ask: Annotated[Text, "What a teacher can ask a pupil who used it."]


@dataclass(frozen=True, slots=True, kw_only=True)
class BankItem:
    """One question that a person wrote."""

    id: Annotated[ItemId, "Unique in the bank; it never changes."]
    tier: TierName
    prompt: Annotated[Text, "The words, with mathematics between { and }."]
    key: Annotated[Text, "The answer, in line notation."]
    task: Annotated[Task | None, "What is asked for."] = None
    form: Annotated[Form | None, "The form the answer has to have."] = None
    marks: Annotated[
        Annotated[int, Whole(1, MOST_MARKS)] | None,
        "Where it is not by the lines of its working.",
    ] = None
    from_year: Annotated[
        Annotated[int, Whole(1, 13)] | None,
        "The first year group it suits, where its mathematics does not tell.",
    ] = None
    model: Annotated[tuple[Text, ...], "The mathematics behind the words of the prompt."] = ()
    find: Annotated[Text | None, "What the model is asked for."] = None
    constants: Annotated[
        tuple[int, ...],
        "Whole numbers the model needs though the prompt does not print them.",
    ] = ()
    not_needed: Annotated[
        dict[Text, Text],
        "Numbers of the prompt that the model leaves out, each with the reason why the answer "
        "does not depend on it.",
    ] = field(default_factory=dict)
    options: Annotated[dict[Text, Text], "For choose: each name with what it is worth."] = field(
        default_factory=dict
    )
    choose: Annotated[
        Annotated[Literal["least", "greatest"], Choice(("least", "greatest"), "way to choose")]
        | None,
        "For choose: which one is right.",
    ] = None
    accept: Annotated[tuple[Text, ...], "How marking may be more lenient than the form."] = ()
    working: tuple[WorkingLine, ...] = ()
    misconceptions: tuple[MisconceptionText, ...] = ()
    author: Annotated[AuthorCode | None, "One of the bank's codes."] = None
    licence: Annotated[Text | None, "Where it is not the bank's own."] = None
    source: Text | None = None
    created: Day | None = None
    retired: Annotated[Day | None, "No longer used from this day on."] = None
    retired_because: Text | None = None

    @property
    def base(self) -> str:
        """Return the id without the mark that a conflict of a merge put after it."""
        return self.id.partition(".")[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class GeneratedSet:
    """Items that a generator makes: so many of a tier by a seed, or a list of addresses."""

    topic: Annotated[TopicId | None, "Where it is not this file's."] = None
    tier: TierName | None = None
    count: Annotated[int, Whole(1, MOST_SET)] | None = None
    seed: Annotated[int, Whole(0, 2**53)] | None = None
    addresses: Annotated[tuple[Text, ...], Limit(MOST_SET)] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PinnedItem:
    """One generated item, by its address."""

    address: Text


@dataclass(frozen=True, slots=True, kw_only=True)
class TopicFile:
    """One topic of a bank."""

    topic: TopicId
    title: Annotated[Text | None, "Needed where the tool makes no items on the topic."] = None
    prerequisites: tuple[TopicId, ...] = ()
    items: tuple[BankItem, ...] = ()
    generated: tuple[GeneratedSet, ...] = ()
    pinned: tuple[PinnedItem, ...] = ()
