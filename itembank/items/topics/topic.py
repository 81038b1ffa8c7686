"""The contract of a generator: one class a topic, three spaces, one `make`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from itembank.errors import ItembankError
from itembank.items.item import Draft, Item, Misconception, Tier
from itembank.items.marks import usual_marks
from itembank.items.measures.years import FIRST_YEAR_KS3, Content, Parts, content_at
from itembank.items.topics.space import Space
from itembank.items.topics.space_part import is_other_kind
from itembank.items.wrong_answers import told_apart


class Topic:
    """A source of items on one topic. Subclass it, fill in the names, write :meth:`make`.

    Attributes
    ----------
    id
        ``strand.topic``, in lower case with hyphens.
    title
        What a teacher calls the topic.
    spaces
        The parameter space of each tier. Tiers differ in structure, not only in size.
    misconceptions
        Every misconception that some item of the topic can show.
    prerequisites
        The topics it rests on, by id: what to mend first where it goes wrong.
    statements
        What it serves of the programme of study, by label
        (:mod:`itembank.items.topics.programme_of_study`).
    spare
        Why a tier holds fewer than 200 items, where the mathematics has fewer.
    later
        The parts of its tiers that a later programme of study names than that of key stage 3;
        what is not told here suits a class from year 7 on (:mod:`itembank.items.measures.years`).
    """

    id: ClassVar[str]
    title: ClassVar[str]
    spaces: ClassVar[Mapping[Tier, Space]]
    misconceptions: ClassVar[tuple[Misconception, ...]]
    prerequisites: ClassVar[tuple[str, ...]] = ()
    statements: ClassVar[tuple[str, ...]] = ()
    spare: ClassVar[str] = ""
    later: ClassVar[Parts] = {}

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the topic's own question for one point of the tier's space."""
        raise NotImplementedError

    def draft(self, tier: Tier, *values: Any) -> Draft:
        """Return the question at one point of the tier's space, whichever kind it asks."""
        if is_other_kind(values):
            made: Draft = values[0].make(self, tier, *values[1:])
            return made
        return self.make(tier, *values)

    @property
    def strand(self) -> str:
        """Return the strand: the part of the id before the dot."""
        return self.id.partition(".")[0]

    def content(self, tier: Tier, *values: Any) -> Content | None:
        """Return the later content that one point of a tier's space is, or None.

        A question of another kind may be made of anything that its tier holds.
        """
        if is_other_kind(values):
            every = (part.content for part in self.later.get(tier, ()))
            return max(every, key=lambda content: content.from_year, default=None)
        return content_at(self.later, tier, values)

    def from_year(self, tier: Tier, *values: Any) -> int:
        """Return the first year group that one point of a tier's space suits."""
        content = self.content(tier, *values)
        return FIRST_YEAR_KS3 if content is None else content.from_year

    def item(self, tier: Tier, index: int) -> Item:
        """Return the item at `index` of a tier: the same one every time.

        Raises
        ------
        ItembankError
            If the topic has no such tier, or the tier no such index.
        """
        self.refuse_beyond(tier, index)
        draft = self.draft(tier, *self.spaces[tier][index])
        return Item(
            f"{self.id}/{tier}/{index}",
            self.id,
            tier,
            draft.prompt,
            draft.ask,
            draft.key,
            draft.form,
            draft.steps,
            told_apart(draft.slips),
            (self.id, *draft.twin),
            usual_marks(draft.prompt, draft.steps) if draft.marks is None else draft.marks,
            draft.constants,
            draft.accept,
            figure=draft.figure,
            key_figure=draft.key_figure,
        )

    def refuse_beyond(self, tier: Tier, index: int) -> None:
        """Refuse the number of an item that the tier has not.

        Raises
        ------
        ItembankError
            If the topic has no such tier, or the tier no such index.
        """
        if tier not in self.spaces:
            raise ItembankError(
                f"{self.id}/{tier}/{index}: there is no such item; this topic has no tier {tier}."
            )
        size = len(self.spaces[tier])
        if not 0 <= index < size:
            raise ItembankError(
                f"{self.id}/{tier}/{index}: there is no such item; "
                f"this tier's items are numbered 0 to {size - 1}."
            )

    def walk(self, tier: Tier) -> Iterator[Item]:
        """Yield every item of a tier in order."""
        for index in range(len(self.spaces[tier])):
            yield self.item(tier, index)
