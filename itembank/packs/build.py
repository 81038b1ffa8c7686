"""Makes a pack: chooses its items, proves every key by two roads, and turns it into data.

:func:`start_pack` returns as soon as the data stands, with both roads under way in another
process, so that pages can be drawn meanwhile; whoever calls it must ask for the proof's result
before writing anything. :func:`build_pack` waits.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.packs.choosing.candidate import Candidate
from itembank.packs.choosing.chosen_and_proved import any_refused, chosen_and_proved
from itembank.packs.choosing.fixed_questions import bar_items, find_held, held_items
from itembank.packs.choosing.follow_up import choose_sheet, held_sheet
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.shorter_ones import SlideRoom
from itembank.packs.choosing.starter import Share, choose_starter, share_out
from itembank.packs.chosen import Chosen
from itembank.packs.data.source import TopicSources, is_short, sources
from itembank.packs.drawn_room import DrawnRoom, FitsSlides
from itembank.packs.pack_as_data import as_data
from itembank.packs.pack_proof import Proof, prove_by_both_roads
from itembank.packs.sources.bank_source import BankSource
from itembank.packs.sources.within_year import refuse_if_beyond, within_year
from itembank.planning.bands.bands import Band
from itembank.planning.department.pack_request import PackRequest, stated
from itembank.planning.department.question_sources import QuestionSources

if TYPE_CHECKING:
    from itembank.packs.data.pack import Pack
    from itembank.packs.sources.banks import Banks
    from itembank.processes.beside import Ahead


@dataclass(frozen=True, slots=True)
class Started:
    """A pack, and the proof of its keys that is still under way."""

    pack: Pack
    proof: Proof
    items: tuple[Item, ...] = ()
    """The questions of the pack, in the order of :func:`~.pack_checks.stored_items`."""


def build_pack(request: PackRequest) -> Pack:
    """Return the pack asked for, every key proved by both roads.

    Raises:
        ItembankError: a topic is unknown or has too few different questions.
        CheckFailed: a key is wrong; names the item's address and both answers.
    """
    started = start_pack(request)
    with started.proof:
        started.proof.result()
    return started.pack


def start_pack(
    request: PackRequest, begun: Ahead | None = None, fits_slides: FitsSlides | None = None
) -> Started:
    """Return the pack asked for; both roads to its keys are under way.

    Nothing may be written before ``.proof.result()`` has returned. `begun` is a process that
    has been got ready to prove. By `fits_slides` a starter is chosen that takes one slide, where
    there is one.

    Raises:
        ItembankError: a topic is unknown or has too few different questions.
    """
    chosen = choose(request, fits_slides)
    items = [candidate.item for candidate in chosen.taken()]
    proof = Proof(items, prove=prove_by_both_roads, begun=begun)
    try:
        return Started(as_data(request, chosen), proof, tuple(items))
    except BaseException:
        proof.close()
        raise


def choose(request: PackRequest, fits_slides: FitsSlides | None = None) -> Chosen:
    """Return the items of the pack asked for: starter, its parallel versions, three sheets.

    Raises:
        ItembankError: a topic is unknown or has too few different questions, or a bank cannot
            be read.
    """
    banks, topics = _sources_of(request)
    slide = _room(request, topics, fits_slides)
    return chosen_and_proved(
        _pools(banks), lambda pool: _chosen(request, banks, topics, pool, slide)
    )


def _chosen(
    request: PackRequest,
    banks: Banks | None,
    topics: tuple[TopicSources, ...],
    pool: Pool,
    slide: SlideRoom | None,
) -> Chosen:
    shares = _shares(request, topics)
    versions = _starter(request, shares, pool, slide)
    # Sheets are on the topics the class has just been asked about.
    asked = [share.topic for share in shares]
    settled = {sheet.tier: sheet for sheet in request.sheets}
    sheets = [
        held_sheet(asked, tier, settled[tier.value], pool)
        if tier.value in settled
        else choose_sheet(
            asked,
            tier,
            stated(request.follow_up),
            opens(tier, request.score_bands),
            stated(request.seed),
            pool,
        )
        for tier in Tier
    ]
    return Chosen(topics, tuple(map(tuple, versions)), tuple(sheets), banks)


def starter_addresses(
    request: PackRequest, fits_slides: FitsSlides | None = None
) -> tuple[str, ...]:
    """Return the addresses of the questions that the pack's starter asks, in order.

    The sheets are not chosen: it is what a week is planned with. By the same `fits_slides` it is
    the starter of :func:`start_pack`.

    Raises:
        ItembankError: as :func:`choose`.
    """
    banks, topics = _sources_of(request)
    slide = _room(request, topics, fits_slides)
    first = chosen_and_proved(
        _pools(banks),
        lambda pool: _starter(request, _shares(request, topics), pool, slide)[0],
    )
    return tuple(candidate.item.address for candidate in first)


def _room(
    request: PackRequest, topics: tuple[TopicSources, ...], fits_slides: FitsSlides | None
) -> SlideRoom | None:
    if fits_slides is None:
        return None
    slips = bool(request.slips) or stated(request.variants) > 1
    return DrawnRoom(request, topics, fits_slides, slips)


def askable(request: PackRequest, addresses: Iterable[str]) -> tuple[str, ...]:
    """Return those of some addresses whose questions a pack like this may ask, in order.

    A bank's question may have been retired, or edited so that its sign-off is stale.

    Raises:
        ItembankError: as :func:`choose`.
    """
    _, topics, pool = sources_of(request)
    there = [(address, find_held(topics, address, pool)) for address in addresses]
    any_refused(pool)  # all of them are proved together
    return tuple(
        address for address, found in there if found is not None and not pool.refuses(found)
    )


def rested_questions(request: PackRequest, *, exact: bool = False) -> dict[str, tuple[int, int]]:
    """Return, of each topic that only people wrote questions on, how many there are.

    The first number is of those that are not to be avoided, the second of all. Of a topic with a
    great many nobody proves all of them for that: unless the numbers are to be `exact`, those
    count that may turn out not to be of use.

    Raises:
        ItembankError: as :func:`choose`.
    """
    _, topics, pool = sources_of(request)
    bar_items(topics, request.never, pool)
    pool.avoid(request.avoid, topics)
    return {
        topic.id: _numbers(topic, request.avoid, pool, exact) for topic in topics if is_short(topic)
    }


def _numbers(
    topic: TopicSources, avoid: frozenset[str], pool: Pool, exact: bool
) -> tuple[int, int]:
    """Return how many questions of a topic are not to be avoided, and how many there are."""
    written = [source for source in sources(topic) if isinstance(source, BankSource)]
    if exact:
        for source in written:
            for tier in Tier:
                source.settle(tier)
    elif not all(source.is_settled for source in written):
        there = [address for source in written for address in source.by_address]
        return len(set(there) - avoid), len(there)
    return (
        sum(pool.room(topic, tier, rested=True) for tier in Tier),
        sum(pool.room(topic, tier) for tier in Tier),
    )


def sources_of(
    request: PackRequest,
) -> tuple[Banks | None, tuple[TopicSources, ...], Pool]:
    """Return the banks that a pack draws on, what its topics are drawn from, and an unused pool.

    Raises:
        ItembankError: a topic is unknown, or a bank cannot be read.
    """
    banks, topics = _sources_of(request)
    return banks, topics, _pools(banks)(False)


def _sources_of(request: PackRequest) -> tuple[Banks | None, tuple[TopicSources, ...]]:
    wanted = request.sources
    if not wanted.uses_banks:
        return None, tuple(_generated(wanted, name) for name in request.topic_ids)
    from itembank.packs.sources.banks import Banks

    banks = Banks(wanted, request.topic_ids)
    return banks, tuple(map(banks.source, request.topic_ids))


def _pools(banks: Banks | None) -> Callable[[bool], Pool]:
    """Return what makes an unused pool, which may prove what is taken from it."""
    if banks is None:
        return lambda proves: Pool()
    from itembank.packs.sources.banks import same_question

    return lambda proves: Pool(same_question, proves=proves)


def _generated(wanted: QuestionSources, name: str) -> TopicSources:
    """Return what of a generated topic suits the class's year."""
    topic, year = find_topic(name), wanted.year_for(name)
    refuse_if_beyond(topic, year)
    return within_year(topic, year)


def _shares(request: PackRequest, topics: Sequence[TopicSources]) -> list[Share]:
    counts = share_out([topic.count for topic in request.topics], stated(request.questions))
    return [Share(topic, count) for topic, count in zip(topics, counts, strict=True) if count]


def _starter(
    request: PackRequest, shares: list[Share], pool: Pool, slide: SlideRoom | None
) -> list[list[Candidate]]:
    pool_topics = [share.topic for share in shares]
    bar_items(pool_topics, request.never, pool)
    kept = held_items(pool_topics, request.items, pool)
    pool.avoid(request.avoid, pool_topics)
    versions, seed = stated(request.variants), stated(request.seed)
    return choose_starter(shares, versions, seed, pool, kept, slide)


def opens(tier: Tier, bands: Sequence[Band]) -> bool:
    """Tell whether a sheet opens with a worked example: support does, and where a band asks."""
    return tier is Tier.SUPPORT or any(
        band.task.worked_example for band in bands if band.task.tier == tier.value
    )
