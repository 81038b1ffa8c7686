"""Pairs to match: cards that are worth the same, and one wrong answer left over."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from itembank.items.asks.matching import PARTNERS, Match, pair_name
from itembank.items.asks.odd_one_out import LETTERS
from itembank.items.item import Draft, Find, Misconception, Rewrite, Slip, Step, Tier
from itembank.items.kinds.card_kinds import names_joined, row_of_cards
from itembank.items.kinds.draft_worth import worth
from itembank.items.kinds.lot import lot, shuffled
from itembank.items.kinds.mistakes import OTHER_PAIR
from itembank.items.kinds.statements import with_claims
from itembank.items.wrong_answers import told_apart
from itembank.notation import tree as t

if TYPE_CHECKING:
    from itembank.items.topics.space import Space
    from itembank.items.topics.topic import Topic


class CardMistake(NamedTuple):
    """A mistake that matches a card with a wrong partner: that of another card, or a spare one.

    Partners are numbered as they are told, the spare ones after those of the cards.
    """

    mistake: Misconception
    card: int
    partner: int


def match_pairs(
    pairs: Sequence[tuple[t.Node, t.Node]],
    spare: Sequence[t.Node],
    *,
    card: str,
    partner: str,
    mistakes: Sequence[CardMistake],
    steps: tuple[Step, ...],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question which card goes with which.

    Parameters
    ----------
    pairs
        Each card with its partner; the partners are dealt in an order drawn by lot.
    spare
        Partners of no card, so that the last pair is not found by leaving out.
    card, partner
        What the cards are called: *sum* and *its answer* give *Match each sum with its answer.*
    mistakes
        At least two, each of which gives another set of pairs.
    steps, twin
        The working, to which the answer is added, and what tells the question from others.
    """
    partners = [*(answer for _, answer in pairs), *spare]
    dealt = shuffled(range(len(partners)), twin, "match")
    right = [dealt.index(place) for place in range(len(pairs))]
    key = _pairs(right)
    said = ", ".join(f"{LETTERS[card]} and {PARTNERS[place]}" for card, place in enumerate(right))
    wrong = []
    for mistake, placed, taken in mistakes:
        places = list(right)
        if taken < len(right):
            places[taken] = right[placed]  # whoever takes another's partner leaves it this one's
        places[placed] = dealt.index(taken)
        wrong.append(Slip(mistake, _pairs(places)))
    rows = (
        f"Match each {card} with {partner}.\n",
        *row_of_cards([asked for asked, _ in pairs], LETTERS, "\n"),
        *row_of_cards([partners[place] for place in dealt], PARTNERS),
    )
    return Draft(
        names_joined(rows),
        Match(tuple(asked for asked, _ in pairs), tuple(partners[place] for place in dealt)),
        key,
        "pairs",
        (*steps, Step(f"So {said} go together.")),
        told_apart(wrong),
        ("match", *twin),
        2,
    )


def match_answers(topic: Topic, tier: Tier, of: tuple[tuple[Any, ...], ...]) -> Draft:
    """Return three questions of the topic to match with their answers; one wrong answer is left.

    For questions that work out what is printed, and for those that solve an equation in one letter.
    The first three of the points are asked that have different answers; equations are in one
    letter (:meth:`~itembank.items.topics.space.Space.threes`).
    """
    asked: list[Draft] = []
    for point in of:
        draft = topic.make(tier, *point)
        if asked and bool(t.symbols(draft.key)) != bool(t.symbols(asked[0].key)):
            continue  # 3x − 3x comes to a number, and the others to expressions
        if worth(draft.key) not in [worth(earlier.key) for earlier in asked]:
            asked.append(draft)
        if len(asked) == 3:
            break
    pairs = [(_card(draft), draft.key) for draft in asked]
    keys = [worth(draft.key) for draft in asked]
    wrong = [
        (place, slip)
        for place, draft in enumerate(asked)
        for slip in told_apart(draft.slips)
        if worth(slip.wrong) not in keys
        and bool(t.symbols(slip.wrong)) == bool(t.symbols(draft.key))
    ]
    place, slip = wrong[lot(len(wrong), *of, "spare")]
    noun = _nouns(pairs, asked)
    return match_pairs(
        pairs,
        (slip.wrong,),
        card=noun[0],
        partner=noun[1],
        mistakes=(
            CardMistake(slip.misconception, place, len(pairs)),
            CardMistake(OTHER_PAIR, place, (place + 1) % len(pairs)),
        ),
        steps=tuple(
            Step(f"{LETTERS[n]}: {step.say[:1].lower()}{step.say[1:]}", step.maths)
            for n, draft in enumerate(asked)
            for step in draft.steps[-1:]
        ),
        twin=tuple(draft.twin for draft in asked),
    )


def with_matches(
    space: Space,
    alike: Callable[..., object] | None = None,
    count: int = 120,
    only: Callable[..., bool] | None = None,
) -> Space:
    """Return a space of a topic with threes of its own questions to match at its end.

    Those of a three are `alike`: of equations the function that gives their letter. Where not
    all questions work out what is printed, `only` tells which do.
    """
    return space.also(match_answers, of=space.threes(count, alike, 6, only))


def with_claims_and_matches(
    space: Space,
    alike: Callable[..., object] | None = None,
    only: Callable[..., bool] | None = None,
) -> Space:
    """Return a space of a topic with statements and threes to match at its end.

    This is what most topics have that ask to work out what is printed.

    >>> from itembank.items.topics.space import Space
    >>> len(with_claims_and_matches(Space(None, a=range(1000))))
    1240
    """
    return with_matches(with_claims(space, only=only), alike, only=only)


def _card(draft: Draft) -> t.Node:
    match draft.ask:
        case Find(t.Sym(), (equation,)) if isinstance(draft.key, t.Relation):
            return equation
        case Find(target, ()) | Rewrite(target, _):
            return target
    raise ValueError("a question to match works out what is printed, or solves an equation")


_CALLED: dict[type, str] = {
    t.Dec: "decimal",
    t.Percent: "percentage",
    t.Frac: "fraction",
    t.Mixed: "mixed number",
    t.Ratio: "ratio",
    t.Quantity: "measurement",
}


_REWRITTEN = {
    "simplify": "its simplest form",
    "expand": "its expanded form",
    "factorise": "its factorised form",
}
_SIMPLEST = ("ratio", "lowest-terms", "simplest", "number", "improper")


def _nouns(pairs: Sequence[tuple[t.Node, t.Node]], asked: Sequence[Draft]) -> tuple[str, str]:
    """Return what the cards and their partners are called."""
    form, first = asked[0].form, asked[0].ask
    if isinstance(first, Rewrite):
        return "expression", _REWRITTEN[first.detail]
    cards = {_CALLED.get(type(card), "") for card, _ in pairs}
    partners = {_CALLED.get(type(partner), "") for _, partner in pairs}
    if isinstance(pairs[0][0], t.Relation):
        return "equation", "its solution"
    if len(cards) == 1 and "" not in cards:
        (card,) = cards
        if partners == {card} and form in _SIMPLEST:
            return card, "its simplest form"
        if len(partners) == 1 and "" not in partners:
            return card, f"the equal {partners.pop()}"
        return card, "the equal number"
    if "" not in cards:
        return "number", "the equal number"
    signs = {
        op
        for card, _ in pairs
        for node in t.walk(card)
        if isinstance(node, t.Sum | t.Product)
        for op, _ in node.rest
    }
    if not all(isinstance(card, t.Sum | t.Product) for card, _ in pairs):
        return "calculation", "its answer"
    named = {"+": "sum", "-": "difference", "×": "product", "÷": "division"}
    return named.get("".join(signs), "calculation"), "its answer"


def _pairs(places: Sequence[int]) -> t.Listing:
    return t.Listing(tuple(pair_name(card, partner) for card, partner in enumerate(places)))
