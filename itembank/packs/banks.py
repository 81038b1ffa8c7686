"""Reads a pack's banks and says, of each topic, what it is drawn from.

Of a bank's own questions only those are offered that both roads prove, that are not retired
and, where a pack keeps to signed questions, whose sign-off stands. What is left out is counted
with its reason. The generated items that a bank names are offered beside them; they carry no
sign-off, so a pack of signed questions has none of them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Sequence
from pathlib import Path

from itembank.bank.canonical import canonical
from itembank.bank.content import content_hash
from itembank.bank.load import Bank, Entry, read_bank
from itembank.bank.reading import NeedsPerson, as_item
from itembank.bank.sets import made_addresses
from itembank.bank.workers import judge_all
from itembank.checking.outcome import State
from itembank.errors import ItembankError
from itembank.faults import FileFaults, join_words
from itembank.items.item import Item, Tier
from itembank.items.registry import UnknownTopic, find_item, find_topic, topic_ids
from itembank.packs.bank_source import BankSource, Question
from itembank.packs.convert import FROM_PRINT, FROM_WORDS, generated
from itembank.packs.model import BankLine, LeftOut, SignOff, SignOffState, Source
from itembank.packs.model import Drawing as Drawn
from itembank.packs.source import Drawable, InOrder
from itembank.planning.draw_from import Drawing

REASONS = ("retired", "disproved", "needs a person", "unsigned", "sign-off stale")


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
                self._advice(name),
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
                raise ItembankError(self._not_in_banks(topic))
            return found
        if not found.questions:
            return find_topic(topic)
        made = find_topic(topic)
        return InOrder(found, made) if drawing.prefer == "bank" else InOrder(made, found)

    def source_of(self, item: Item) -> Source:
        """Return where an item of the pack comes from."""
        found = self._sources[item.topic].sources.get(item.address)
        return found if found is not None else generated(item)

    def _advice(self, topic: str) -> str:
        """Return what to do where the banks have too little on a topic."""
        if self.drawing.signed_only:
            return "Sign more of its questions, or leave out signed only."
        if self.drawing.questions_from != "bank" or topic not in topic_ids():
            return ""
        return "Let questions come from both (--questions-from both)."

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

    def _not_in_banks(self, topic: str) -> str:
        names = join_words([bank.name for bank in self.banks])
        held = f"the bank {names} has" if len(self.banks) == 1 else f"the banks {names} have"
        advice = (
            "Let questions come from both (--questions-from both), or name another topic."
            if topic in topic_ids() and not self.drawing.signed_only
            else "Name another topic, or another bank with --bank."
        )
        return f"There are to be no generated questions, but {held} none on {topic}. {advice}"

    def _offered(self, topics: Collection[str]) -> dict[str, list[Question]]:
        """Return the questions that may be drawn, by topic, and count those that may not."""
        signed_only = self.drawing.signed_only
        found: dict[str, list[Question]] = {}
        readable: list[tuple[Bank, Entry, Item]] = []
        for bank in self.banks:
            for topic in bank.topics:
                if topic.id in topics:
                    readable += self._readable(bank, topic.entries)
                for address in made_addresses(topic):
                    item = find_item(address)
                    if item.topic not in topics:
                        continue
                    if signed_only:
                        self._leave_out(item.topic, item.tier, "unsigned")
                        continue
                    source = generated(item, bank.name)
                    found.setdefault(item.topic, []).append(Question(item, source))
        outcomes = judge_all([item for _, _, item in readable])
        for (bank, entry, item), outcome in zip(readable, outcomes, strict=True):
            source = bank_source(bank, entry)
            if outcome.state is not State.PROVED:
                self._leave_out(item.topic, item.tier, outcome.state.value)
            elif signed_only and source.sign_off != "signed":
                why = "sign-off stale" if source.sign_off == "stale" else "unsigned"
                self._leave_out(item.topic, item.tier, why)
            else:
                found.setdefault(item.topic, []).append(Question(item, source))
        return found

    def _readable(self, bank: Bank, entries: Iterable[Entry]) -> list[tuple[Bank, Entry, Item]]:
        """Return the entries that can be proved, and count the retired and the others."""
        found: list[tuple[Bank, Entry, Item]] = []
        for entry in entries:
            tier = Tier(entry.item.tier)
            if entry.item.retired is not None:
                self._leave_out(entry.topic, tier, "retired")
                continue
            try:
                found.append((bank, entry, as_item(entry)))
            except NeedsPerson:
                self._leave_out(entry.topic, tier, State.NEEDS_PERSON.value)
        return found

    def _leave_out(self, topic: str, tier: Tier, why: str) -> None:
        self.left_out[topic].setdefault(tier, Counter())[why] += 1


def read_banks(folders: Iterable[Path]) -> tuple[Bank, ...]:
    """Return the banks in some folders.

    Raises:
        FileFaults: every fault of every one of them.
        ItembankError: two banks have the same name, so that an address could mean either.
    """
    found: list[Bank] = []
    faults: FileFaults | None = None
    for folder in folders:
        try:
            found.append(read_bank(folder))
        except FileFaults as error:
            faults = FileFaults((*(faults.faults if faults else ()), *error.faults), most=None)
    if faults is not None:
        raise faults
    names: dict[str, Bank] = {}
    for bank in found:
        other = names.setdefault(bank.name, bank)
        if other is not bank:
            raise ItembankError(
                f"The banks in {other.folder} and {bank.folder} are both called {bank.name}, so "
                "an address could mean either. Use one of them, or change a name in bank.toml."
            )
    return tuple(found)


def bank_source(bank: Bank, entry: Entry) -> Source:
    """Return what a pack says of a question of a bank: where it is from, and who signed it."""
    state, signed = sign_off(bank, entry)
    return Source(
        kind="bank",
        bank=bank.name,
        id=entry.item.id,
        hash=content_hash(entry),
        proved=FROM_WORDS if entry.item.model else FROM_PRINT,
        sign_off=state,
        signed=signed,
        author=entry.item.author or "",
        licence=entry.item.licence or bank.licence or "",
        credit=entry.item.source or "",
    )


def same_question(item: Item) -> tuple[object, ...]:
    """Return what is equal for the same question in every disguise, whatever made it."""
    return ("question", *canonical(item.ask, item.form))


def find_any(address: str, folders: Iterable[Path] = ()) -> Item:
    """Return the item at an address: ``topic/tier/number``, or ``BANK:ID`` of one of the banks.

    Raises:
        ItembankError: the address names nothing, its bank is not among `folders` or has
            faults, or the item needs a person, so that its answer is not known to be right.
    """
    name, colon, id = address.partition(":")
    if not colon:
        return find_item(address)
    banks = read_banks(folders)
    bank = next((one for one in banks if one.name == name), None)
    if bank is None:
        there = join_words([one.name for one in banks])
        advice = f"The banks here are {there}." if banks else "Name its folder with --bank."
        raise UnknownTopic(f"{address}: there is no bank ‘{name}’ here. {advice}")
    entry = bank.find(id)
    try:
        return as_item(entry)
    except NeedsPerson as error:
        raise ItembankError(f"{address} needs a person: {error}") from None


def sign_off(bank: Bank, entry: Entry) -> tuple[SignOffState, list[SignOff]]:
    """Return whether a question is signed as it stands, and by whom."""
    return "unsigned", []
