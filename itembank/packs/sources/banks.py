"""Reads a pack's banks and says, of each topic, what it is drawn from.

Of a bank's own questions only those are offered that both roads prove, that are not retired
and, where a pack keeps to signed questions, whose sign-off stands. What is left out is counted
with its reason. The generated items that a bank names are offered beside them; they carry no
sign-off, so a pack of signed questions has none of them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence

from itembank.bank.model.bank import Bank, Entry
from itembank.bank.model.content import content_hash
from itembank.bank.proof.prove import entry_state, prove_entries
from itembank.bank.proof.signoff import Signing, SignState, by_item, read_signoffs
from itembank.bank.proof.state import EntryState
from itembank.bank.question.as_item import as_item
from itembank.bank.question.canonical import canonical
from itembank.bank.question.generated_sets import made_addresses
from itembank.bank.question.year import first_year
from itembank.bank.read.any_address import read_banks
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_item, find_topic, topic_ids
from itembank.packs.data.convert import FROM_PRINT, FROM_WORDS, generated
from itembank.packs.data.pack import BankLine, LeftOut, SignOff, Source
from itembank.packs.data.pack import Drawing as Drawn
from itembank.packs.data.source import Drawable, InOrder
from itembank.packs.sources.bank_source import BankSource, Question
from itembank.packs.sources.within_year import (
    BEYOND,
    HOW_TO_ASK,
    all_beyond,
    refuse_if_beyond,
    within_year,
)
from itembank.planning.department.draw_from import Drawing
from itembank.proof.outcome import Outcome

REASONS = ("retired", "disproved", "needs a person", "unsigned", "sign-off stale", BEYOND)

BANK_ALONE = "bank alone"
"""The matter of an error that goes away where generated questions may fill up."""


class Banks:
    """The banks of one pack, with the part of them that is on its topics.

    Raises:
        ItembankError: a bank cannot be read, two have one name, or a topic is in none of them
            and nothing generates it.
    """

    def __init__(self, drawing: Drawing, topics: Sequence[str]) -> None:
        self.drawing = drawing
        self.banks = read_banks(drawing.banks)
        self.left_out: dict[str, dict[Tier, Counter[str]]] = {one: {} for one in topics}
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

    def source(self, topic: str) -> Drawable:
        """Return what a topic's questions are drawn from.

        Raises:
            ItembankError: nothing generates the topic, though its questions may be generated
                only; or no bank has it, though they may come from a bank only.
        """
        found, drawing = self._sources[topic], self.drawing
        can_generate = topic in topic_ids() and not drawing.signed_only
        if drawing.questions_from == "bank" or not can_generate:
            if topic not in self._titles:
                raise self._not_in_banks(topic)
            return found
        whole, year = find_topic(topic), drawing.year_for(topic)
        if not found.questions:
            refuse_if_beyond(whole, year)
        if year is not None and all_beyond(whole, year):
            return found
        made = within_year(whole, year)
        if not found.questions:
            return made
        return InOrder(found, made) if drawing.prefer == "bank" else InOrder(made, found)

    def source_of(self, item: Item) -> Source:
        """Return where an item of the pack comes from."""
        found = self._sources[item.topic].sources.get(item.address)
        return found if found is not None else generated(item)

    def _advice(self, topic: str) -> tuple[str, str]:
        """Return what to do where the banks have too little on a topic, and the matter's name."""
        if any(counts[BEYOND] for counts in self.left_out[topic].values()):
            return HOW_TO_ASK, BEYOND
        if self.drawing.signed_only:
            return "Sign more of its questions, or leave out signed only.", ""
        if self.drawing.questions_from != "bank" or topic not in topic_ids():
            return "", ""
        return "Let questions come from both.", BANK_ALONE

    def said(self, follow_up: int) -> Drawn:
        """Return what the pack says of where its questions come from.

        `follow_up` is the number of questions asked for on each sheet.
        """
        left = Counter[str]()
        for tiers in self.left_out.values():
            for counts in tiers.values():
                left.update(counts)
        return Drawn(
            questions_from=self.drawing.questions_from,  # type: ignore[arg-type]
            prefer=self.drawing.prefer,  # type: ignore[arg-type]
            signed_only=self.drawing.signed_only,
            banks=[BankLine(name=bank.name, title=bank.title) for bank in self.banks],
            offered=sum(len(source.sources) for source in self._sources.values()),
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
            if topic in topic_ids() and not self.drawing.signed_only
            else ("Name another topic, or another bank.", "another bank")
        )
        return ItembankError(
            f"There are to be no generated questions, but {held} none on {topic}. {advice}",
            matter=matter,
        )

    def _offered(self, topics: Collection[str]) -> dict[str, list[Question]]:
        """Return the questions that may be drawn, by topic, and count those that may not."""
        found: dict[str, list[Question]] = {}
        own: list[tuple[Bank, Entry]] = []
        for bank in self.banks:
            for topic in bank.topics:
                if topic.id in topics:
                    own += [(bank, entry) for entry in topic.entries if self._in_use(entry)]
                for item in map(find_item, made_addresses(topic)):
                    if item.topic not in topics:
                        continue
                    if self._is_beyond(item, None):
                        self._leave_out(item.topic, item.tier, BEYOND)
                    elif self.drawing.signed_only:
                        self._leave_out(item.topic, item.tier, "unsigned")
                    else:
                        question = Question(item, generated(item, bank.name))
                        found.setdefault(item.topic, []).append(question)
        signoffs = {bank.name: by_item(read_signoffs(bank.folder)) for bank in self.banks}
        outcomes = _proved([entry for _, entry in own])
        for (bank, entry), outcome in zip(own, outcomes, strict=True):
            state = entry_state(entry, outcome, signoffs[bank.name].get(entry.item.id, ()))
            if not state.usable(self.drawing.signed_only):
                self._leave_out(entry.topic, Tier(entry.item.tier), _why_not(state))
            else:
                item = as_item(entry)
                if self._is_beyond(item, entry):
                    self._leave_out(item.topic, item.tier, BEYOND)
                    continue
                question = Question(item, bank_source(bank, entry, state.sign))
                found.setdefault(entry.topic, []).append(question)
        return found

    def _is_beyond(self, item: Item, entry: Entry | None) -> bool:
        """Tell whether a question is beyond the class's year: as its author says, or by itself.

        A generated question, which has no entry, is what its topic declares.
        """
        year = self.drawing.year_for(item.topic)
        return year is not None and year < first_year(item, entry)

    def _in_use(self, entry: Entry) -> bool:
        """Tell whether an entry is not retired, and count it where it is."""
        if entry.item.retired is not None:
            self._leave_out(entry.topic, Tier(entry.item.tier), "retired")
        return entry.item.retired is None

    def _leave_out(self, topic: str, tier: Tier, why: str) -> None:
        self.left_out[topic].setdefault(tier, Counter())[why] += 1


_outcomes: dict[int, tuple[Entry, Outcome]] = {}
"""What was proved in this process, by the entry's identity: a week's packs share their banks."""


def _proved(entries: Sequence[Entry]) -> list[Outcome]:
    """Return the outcome of each entry, proved once however many packs ask for it."""
    new = [one for one in entries if id(one) not in _outcomes]
    for entry, outcome in zip(new, prove_entries(new), strict=True):
        _outcomes[id(entry)] = entry, outcome  # the entry is held, so its id stays its own
    return [_outcomes[id(one)][1] for one in entries]


def _why_not(state: EntryState) -> str:
    """Return in a word or two why a question may not be used."""
    if not state.proved:
        return state.outcome.state.value
    return "sign-off stale" if state.sign.state is Signing.STALE else "unsigned"


def bank_source(bank: Bank, entry: Entry, sign: SignState) -> Source:
    """Return what a pack says of a question of a bank: where it is from, and who signed it.

    Of a stale sign-off it says who signed the question as it was.
    """
    return Source(
        kind="bank",
        bank=bank.name,
        id=entry.item.id,
        hash=content_hash(entry),
        proved=FROM_WORDS if entry.item.model else FROM_PRINT,
        sign_off=sign.state.value,
        signed=[SignOff(by=one.by, on=one.on) for one in sign.signoffs],
        author=entry.item.author or "",
        licence=entry.item.licence or bank.terms or "",
        credit=entry.item.source or "",
    )


def same_question(item: Item) -> tuple[object, ...]:
    """Return what is equal for the same question in every disguise, whatever made it."""
    return ("question", *canonical(item.ask, item.form))
