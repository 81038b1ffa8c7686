"""What may stand in the files of a bank: the one description that loading and editors share.

A bank is a folder with ``bank.toml`` (:class:`BankFile`) and one file a topic
(:class:`TopicFile`). The models say what is allowed, field by field; :mod:`.load` turns what
they refuse into faults with a line, and :mod:`.schema` publishes them as JSON Schema.

>>> BankItem(id="garden-1", tier="core", prompt="Work out {3/4 + 1/6}.", key="11/12").tier
'core'
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    StrictInt,
    ValidationInfo,
)

from itembank.bank.model.field_types import (
    TASKS,
    AuthorCode,
    BankName,
    Day,
    Form,
    ItemId,
    Text,
    TopicId,
    WorkingLine,
)

MOST_MARKS = 20

MOST_SET = 500
"""The most items one generated set may hold."""


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

    name: Annotated[BankName, Field(description="Used in addresses, as in larkhythe:garden-12.")]
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
    figure: Annotated[
        dict[str, Any] | None,
        Field(description="A picture that is printed with the question: its kind, and its keys."),
    ] = None
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
