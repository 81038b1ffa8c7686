"""Which questions of a bank are meant: by topic, tier, author, words and state."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from itembank.bank.model.tasks import TASKS
from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest

if TYPE_CHECKING:
    from itembank.bank.index.opened import KeptBank
    from itembank.bank.model.bank import Bank

TIERS = ("support", "core", "challenge")
PROOFS = {"proved": "proved", "disproved": "disproved", "needs-a-person": "needs a person"}
SIGNS = ("unsigned", "signed", "stale")
STATES = (*PROOFS, *SIGNS, "retired")
"""What a question can be asked to be; a retired one is that alone."""

STORY, PICTURE = "word-problem", "picture"
KINDS = (*TASKS, STORY, PICTURE)
"""What a question can be known by: its task, that a model stands behind its words, its picture."""

Condition = tuple[str, list[object]]
"""A condition of SQL on the tables of an index, with its values."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is known of the questions that are looked for; what is left out may be anything.

    `topics` may be strands too. Every one of `words` has to stand in a question, in small
    letters or capitals, and it has to be in every one of `states`. A `kind` is one of
    :data:`KINDS`; a word problem about a picture is of both kinds.
    """

    topics: tuple[str, ...] = ()
    tier: str | None = None
    author: str | None = None
    words: tuple[str, ...] = ()
    states: tuple[str, ...] = ()
    kind: str | None = None

    @property
    def needs_proofs(self) -> bool:
        """Whether it has to be known what is proved."""
        return any(state in PROOFS for state in self.states)


def known_states(words: Iterable[str]) -> tuple[str, ...]:
    """Return the states that some words name, in any case, with spaces or hyphens.

    Raises:
        ItembankError: one of them is no state.

    >>> known_states(["Needs a person", "unsigned"])
    ('needs-a-person', 'unsigned')
    """
    found = []
    for word in words:
        state = word.strip().lower().replace(" ", "-")
        if state not in STATES:
            near = nearest(state, STATES, 1)
            advice = f"Did you mean {near[0]}?" if near else f"It is {join_words(STATES, 'or')}."
            raise ItembankError(f"There is no state ‘{word}’. {advice}")
        found.append(state)
    return tuple(found)


def known_tier(word: str | None) -> str | None:
    """Return the tier that a word names, in any case; None for none.

    Raises:
        ItembankError: there is no such tier.
    """
    tier = word.lower() if word is not None else None
    if tier is not None and tier not in TIERS:
        raise ItembankError(f"There is no tier ‘{tier}’. Write support, core or challenge.")
    return tier


def known_kind(word: str | None) -> str | None:
    """Return the kind of question that some words name, in any case; None for none.

    Raises:
        ItembankError: there is no such kind.

    >>> known_kind("Word problem")
    'word-problem'
    """
    if word is None:
        return None
    kind = "-".join(word.lower().split())
    if kind not in KINDS:
        near = nearest(kind, KINDS, 1)
        advice = f"Did you mean {near[0]}?" if near else f"It is {join_words(KINDS, 'or')}."
        raise ItembankError(f"There is no kind of question called ‘{word}’. {advice}")
    return kind


def refuse_unknown(bank: Bank, topics: Iterable[str], author: str | None = None) -> None:
    """Say so where a topic, a strand or an author that is wanted is none of the bank's.

    Raises:
        ItembankError: it is not.
    """
    known = [topic.id for topic in bank.topics]
    for named in topics:
        if not any(is_on(topic_id, named) for topic_id in known):
            near = nearest(named.lower(), known)
            advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
            raise ItembankError(f"{bank.name} has nothing on ‘{named}’.{advice}")
    if author is not None and author.lower() not in (code.lower() for code in bank.authors):
        there = (
            f"There are: {join_words(list(bank.authors))}."
            if bank.authors
            else ("Its questions name no author.")
        )
        raise ItembankError(f"There is no author ‘{author}’ in {bank.name}. {there}")


def is_on(topic: str, wanted: str) -> bool:
    """Tell whether a topic is the one that is wanted, or of that strand, in any case.

    >>> is_on("ratio.share", "Ratio"), is_on("ratio.share", "ratio.sha")
    (True, False)
    """
    return topic == wanted.lower() or topic.startswith(f"{wanted.lower()}.")


def condition(bank: KeptBank, wanted: Wanted) -> Condition:
    """Return the condition of all that is wanted but the states."""
    parts: list[str] = []
    values: list[object] = []
    if wanted.topics:
        sheets = [
            topic.sheet.number
            for topic in bank.kept_topics
            if any(is_on(topic.id, wanted_topic) for wanted_topic in wanted.topics)
        ]
        parts.append(f"place.sheet IN ({', '.join('?' * len(sheets))})")
        values += sheets
    if wanted.tier is not None:
        parts.append("fact.tier = ?")
        values.append(wanted.tier)
    if wanted.author is not None:
        parts.append("LOWER(COALESCE(fact.author, '')) = ?")
        values.append(wanted.author.lower())
    if wanted.kind is not None:
        field = {STORY: "$.model[0]", PICTURE: "$.figure"}.get(wanted.kind)
        task = "json_extract(fact.record, '$.task') = ?"
        parts.append(task if field is None else "json_extract(fact.record, ?) IS NOT NULL")
        values.append(field or wanted.kind)
    for word in wanted.words:
        if wanted.topics:  # few questions, each looked at; else all texts are gone through once
            parts.append("instr((SELECT words FROM words WHERE words.fact = fact.id), ?) > 0")
        else:
            parts.append("fact.id IN (SELECT fact FROM words WHERE instr(words, ?) > 0)")
        values.append(word.casefold())
    return " AND ".join(parts) or "1", values


def with_states(before: Condition, states: Iterable[str], signoffs: int | None) -> Condition:
    """Return a condition with that of being in every one of some states.

    `signoffs` is the sheet of the bank's sign-offs. Outcomes that are not kept are not known.
    """
    parts, values = [before[0]], [*before[1]]
    for state in states:
        if state == "retired":
            parts.append("fact.retired = 1")
            continue
        parts.append("fact.retired = 0")
        if state in PROOFS:
            here = "(SELECT 1 FROM {} AS found WHERE found.fact = fact.id AND found.state = ?)"
            tables = ("proof", "temp.passing")
            parts.append(f"({' OR '.join(f'EXISTS {here.format(table)}' for table in tables)})")
            values += [PROOFS[state]] * 2
            continue
        # Those of the item first, of which there are few.
        own = (
            "SELECT 1 FROM signoff CROSS JOIN holds ON holds.piece = signoff.piece "
            "WHERE holds.sheet = ? AND signoff.item = place.id"
        )
        stands = f"EXISTS ({own} AND signoff.content = fact.content)"
        said = {
            "unsigned": f"NOT EXISTS ({own})",
            "signed": stands,
            "stale": f"EXISTS ({own}) AND NOT {stands}",
        }[state]
        parts.append(said)
        values += [signoffs] * said.count("?")
    return " AND ".join(parts), values
