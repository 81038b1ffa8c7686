"""Reads a pack's banks and says, of each topic, what it is taken from.

Of a bank's own questions only those are offered that both roads prove, that are not retired
and, where a pack keeps to signed questions, whose sign-off stands. What is left out is counted
with its reason. The generated items that a bank names are offered beside them; they carry no
sign-off, so a pack of signed questions has none of them.

A topic of which a pack may well need every question is proved whole, so that the pack can say how
many there were and why some were left out. Of a larger one only what is about to be asked is
proved (:mod:`.untried`), and the pack says how many were not needed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence
from functools import partial

from itembank.bank.index.any_address import read_banks
from itembank.bank.index.item_standing import states
from itembank.bank.index.kept_signoffs import sign_states
from itembank.bank.index.kept_words import twins_kept, years_of
from itembank.bank.index.opened import KeptBank, KeptTopic
from itembank.bank.index.rows.kept_entry import KeptEntry
from itembank.bank.proof.signoff import Signing, SignState
from itembank.bank.proof.state import EntryState
from itembank.bank.question.as_item import as_item
from itembank.bank.question.canonical import canonical
from itembank.bank.question.generated_sets import made_addresses
from itembank.bank.question.twins import twin_mark
from itembank.bank.question.year import first_year
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_item, find_topic, topic_ids
from itembank.packs.data.convert import generated
from itembank.packs.data.pack import NOT_NEEDED, BankLine, LeftOut, Provenance
from itembank.packs.data.pack_item import Source
from itembank.packs.data.source import InOrder, TopicSources
from itembank.packs.sources.bank_source import BankSource, Question
from itembank.packs.sources.told_of_bank import bank_source
from itembank.packs.sources.untried import UntriedQuestion
from itembank.packs.sources.within_year import (
    BEYOND,
    HOW_TO_ASK,
    all_beyond,
    refuse_if_beyond,
    within_year,
)
from itembank.planning.department.question_sources import QuestionSources

REASONS = (
    *("retired", "disproved", "needs a person", "unsigned", "sign-off stale"),
    *(BEYOND, NOT_NEEDED),
)

FEW_QUESTIONS = 100
"""A bank's questions on one topic are proved together where they are no more than these."""
BANK_ALONE = "bank alone"
"""The matter of an error that goes away where generated questions may fill up."""


class Banks:
    """The banks of one pack, with the part of them that is on its topics.

    Raises:
        ItembankError: a bank cannot be read, two have one name, or a topic is in none of them
            and nothing generates it.
    """

    def __init__(self, wanted: QuestionSources, topics: Sequence[str]) -> None:
        self.wanted = wanted
        self.banks = read_banks(wanted.banks)
        self.left_out: dict[str, dict[Tier, Counter[str]]] = {topic: {} for topic in topics}
        self._titles = self._read_titles()
        offered = self._offered(set(topics))
        self._sources = {
            name: BankSource(
                name,
                self._title(name),
                [bank.name for bank in self.banks],
                offered.get(name, ()),
                self.left_out[name],
                *self._advice(name),
            )
            for name in topics
        }

    def source(self, topic: str) -> TopicSources:
        """Return what a topic's questions are taken from.

        Raises:
            ItembankError: nothing generates the topic, though its questions may be generated
                only; or no bank has it, though they may come from a bank only.
        """
        found, wanted = self._sources[topic], self.wanted
        can_generate = topic in topic_ids() and not wanted.signed_only
        if wanted.questions_from == "bank" or not can_generate:
            if topic not in self._titles:
                raise self._not_in_banks(topic)
            return found
        whole, year = find_topic(topic), wanted.year_for(topic)
        if not found.questions:
            refuse_if_beyond(whole, year)
        if year is not None and all_beyond(whole, year):
            return found
        made = within_year(whole, year)
        if not found.questions:
            return made
        # The preferred one is looked at first, and the other where it has nothing that will do.
        return InOrder(found, made) if wanted.prefer == "bank" else InOrder(made, found)

    def source_of(self, item: Item) -> Source:
        """Return where an item of the pack comes from."""
        found = self._sources[item.topic].by_address.get(item.address)
        return found.source if found is not None else generated(item)

    def _advice(self, topic: str) -> tuple[str, str]:
        """Return what to do where the banks have too little on a topic, and the matter's name."""
        if any(counts[BEYOND] for counts in self.left_out[topic].values()):
            return HOW_TO_ASK, BEYOND
        if self.wanted.signed_only:
            return "Sign more of its questions, or leave out signed only.", ""
        if self.wanted.questions_from != "bank" or topic not in topic_ids():
            return "", ""
        return "Let questions come from both.", BANK_ALONE

    def said(self, follow_up: int, asked: Collection[str] = ()) -> Provenance:
        """Return what the pack says of where its questions come from.

        `follow_up` is the number of questions asked for on each sheet, `asked` are the addresses
        of all that stand in it. Of a large topic nothing is said but how many more there are:
        what was tried besides depends on what was known of it.
        """
        left = Counter[str]()
        for tiers in self.left_out.values():
            for counts in tiers.values():
                left.update(counts)
        offered = 0
        for source in self._sources.values():
            for question in source.by_address.values():
                if question.settled or question.address in asked:
                    offered += 1
                else:
                    left[NOT_NEEDED] += 1
        return Provenance(
            questions_from=self.wanted.questions_from,  # type: ignore[arg-type]
            prefer=self.wanted.prefer,  # type: ignore[arg-type]
            signed_only=self.wanted.signed_only,
            banks=[BankLine(name=bank.name, title=bank.title) for bank in self.banks],
            offered=offered,
            left_out=[
                LeftOut(why=why, count=left[why])  # type: ignore[arg-type]
                for why in REASONS
                if left[why]
            ],
            follow_up=follow_up,
        )

    def _read_titles(self) -> dict[str, str]:
        """Return the title of each topic that a bank's own or named items are on."""
        found: dict[str, str] = {}
        for bank in self.banks:
            for topic in bank.topics:
                found.setdefault(topic.id, topic.title)
                for address in made_addresses(topic):
                    name = address.partition("/")[0]
                    found.setdefault(name, find_topic(name).title)
        return found

    def _title(self, name: str) -> str:
        return find_topic(name).title if name in topic_ids() else self._titles.get(name, name)

    def _not_in_banks(self, topic: str) -> ItembankError:
        names = join_words([bank.name for bank in self.banks])
        held = f"the bank {names} has" if len(self.banks) == 1 else f"the banks {names} have"
        advice, matter = (
            ("Let questions come from both, or name another topic.", BANK_ALONE)
            if topic in topic_ids() and not self.wanted.signed_only
            else ("Name another topic, or another bank.", "another bank")
        )
        return ItembankError(
            f"There are to be no generated questions, but {held} none on {topic}. {advice}",
            matter=matter,
        )

    def _offered(self, topics: Collection[str]) -> dict[str, list[Question]]:
        """Return the questions that may be used, by topic, and count those that may not."""
        found: dict[str, list[Question]] = {}
        for bank in self.banks:
            own: list[KeptEntry] = []
            for topic in bank.kept_topics:
                if topic.id in topics:
                    if self._is_large(topic):
                        found.setdefault(topic.id, []).extend(self._as_needed(bank, topic))
                    else:
                        own += [entry for entry in topic.kept_entries() if self._in_use(entry)]
                for item in map(find_item, topic.made()):
                    if item.topic not in topics:
                        continue
                    if self._is_beyond(item):
                        self._leave_out(item.topic, item.tier, BEYOND)
                    elif self.wanted.signed_only:
                        self._leave_out(item.topic, item.tier, "unsigned")
                    else:
                        found.setdefault(item.topic, []).append(_made(item, bank.name))
            self._offer(bank, own, found)
        return found

    def _is_large(self, topic: KeptTopic) -> bool:
        return sum(not outline.retired for outline in topic.outlines()) > FEW_QUESTIONS

    def _as_needed(self, bank: KeptBank, topic: KeptTopic) -> list[Question]:
        """Return the questions of a large topic, to be proved when they are about to be asked.

        Who signed them is looked up at once where only signed ones are to be asked.
        """
        signs: dict[str, SignState] = {}
        if self.wanted.signed_only:
            entries = list(topic.kept_entries())
            found = zip(entries, sign_states(bank, entries), strict=True)
            signs = {entry.id: sign for entry, sign in found}
        year = self.wanted.year_for(topic.id)
        questions: list[Question] = []
        for outline in topic.outlines():
            tier, sign = Tier(outline.tier), signs.get(outline.id)
            if outline.retired:
                self._leave_out(topic.id, tier, "retired")
            elif sign is not None and sign.state is not Signing.SIGNED:
                self._leave_out(topic.id, tier, _unsigned(sign))
            else:
                questions.append(UntriedQuestion(bank, outline.id, tier, year, sign))
        return questions

    def _offer(
        self, bank: KeptBank, entries: Sequence[KeptEntry], found: dict[str, list[Question]]
    ) -> None:
        """Offer those of a bank's own questions that may be used.

        What is known of them is enough to choose by. What is chosen is read and proved anew.
        """
        usable = []
        for state in states(bank, entries):
            entry = state.entry
            assert isinstance(entry, KeptEntry)
            if state.usable(self.wanted.signed_only):
                usable.append((entry, state.sign))
            else:
                self._leave_out(entry.topic, Tier(entry.kept.tier), _why_not(state))
        entries = [entry for entry, _ in usable]
        asked = zip(usable, years_of(bank, entries), twins_kept(bank, entries), strict=True)
        for (entry, sign), first, twin in asked:
            year, tier = self.wanted.year_for(entry.topic), Tier(entry.kept.tier)
            if year is not None and year < first:
                self._leave_out(entry.topic, tier, BEYOND)
                continue
            read, tell = partial(as_item, entry), partial(bank_source, bank, entry, sign)
            question = Question(entry.address, tier, read, tell, ("question", twin))
            found.setdefault(entry.topic, []).append(question)

    def _is_beyond(self, item: Item) -> bool:
        """Tell whether a generated question is beyond the class's year, as its topic declares."""
        year = self.wanted.year_for(item.topic)
        return year is not None and year < first_year(item)

    def _in_use(self, entry: KeptEntry) -> bool:
        """Tell whether an entry is not retired, and count it where it is."""
        if entry.kept.retired:
            self._leave_out(entry.topic, Tier(entry.kept.tier), "retired")
        return not entry.kept.retired

    def _leave_out(self, topic: str, tier: Tier, why: str) -> None:
        self.left_out[topic].setdefault(tier, Counter())[why] += 1


def _made(item: Item, bank: str) -> Question:
    return Question(item.address, item.tier, lambda: item, lambda: generated(item, bank))


def _why_not(state: EntryState) -> str:
    """Return in a word or two why a question may not be used."""
    if not state.proved:
        return state.outcome.state.value
    return _unsigned(state.sign)


def _unsigned(sign: SignState) -> str:
    return "sign-off stale" if sign.state is Signing.STALE else "unsigned"


def same_question(item: Item) -> tuple[object, ...]:
    """Return what is equal for the same question in every disguise, whatever made it."""
    return ("question", twin_mark(canonical(item.ask, item.form)))
