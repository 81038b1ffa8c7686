"""Amounts that are written in several ways: the odd one out, pairs to match, an order of size."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import NamedTuple

from itembank.items.asks.odd_one_out import LETTERS
from itembank.items.asks.ordering import Order
from itembank.items.item import Draft, Misconception, Step, prompt
from itembank.items.kinds.card_kinds import Same, odd_one_out
from itembank.items.kinds.match_kind import CardMistake, match_pairs
from itembank.items.kinds.mistakes import OTHER_PAIR
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


class Way(NamedTuple):
    """An amount as it is written, with the line that brings it to a common way, where there is one.

    `say` introduces that line in the working.
    """

    shown: t.Node
    say: str = ""
    line: t.Node | None = None


def odd_way_out(
    odd: Way,
    others: Sequence[Way],
    mistake: Misconception,
    twin: tuple[object, ...],
    same: Same = "value",
) -> Draft:
    """Return the question which card is not worth what the others are.

    Who makes the mistake takes the odd one for the same as the first of the others, and so picks
    the last of them.
    """
    return odd_one_out(
        odd.shown,
        [way.shown for way in others],
        mistakes=((mistake, len(others) - 1),),
        steps=_lines((*others, odd)),
        twin=twin,
        same=same,
    )


def ways_matched(
    pairs: Sequence[tuple[t.Node, t.Node]],
    spare: t.Node,
    *,
    called: tuple[str, str],
    mistake: tuple[Misconception, int],
    say: Callable[[int], str],
    twin: tuple[object, ...],
    lines: Sequence[t.Node] | None = None,
) -> Draft:
    """Return the question which card goes with which; one partner is left over.

    Parameters
    ----------
    pairs, spare
        Each card with its partner, and the partner of no card.
    called
        What a card and its partner are called.
    mistake
        Who makes it matches the card of that number with the spare partner.
    say, lines
        What introduces the line of working of each card, and those lines where they do not say
        that the card is its partner.
    twin
        What tells the question from others.
    """
    shown = lines or [t.equals(card, partner) for card, partner in pairs]
    return match_pairs(
        pairs,
        (spare,),
        card=called[0],
        partner=called[1],
        mistakes=(
            CardMistake(mistake[0], mistake[1], len(pairs)),
            CardMistake(OTHER_PAIR, mistake[1], (mistake[1] + 1) % len(pairs)),
        ),
        steps=tuple(Step(f"{LETTERS[n]}: {say(n)}", line) for n, line in enumerate(shown)),
        twin=twin,
    )


def ways_in_order(
    ways: Sequence[Way],
    sizes: Sequence[Fraction | int],
    mistakes: Sequence[tuple[Misconception, Sequence[Fraction | int]]],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question to put amounts in order, smallest first.

    Parameters
    ----------
    ways, sizes
        The amounts as they are written, and what they are worth.
    mistakes
        Each with what the amounts are worth to who makes it.
    twin
        What tells the question from others.

    >>> from itembank.notation import line, parse
    >>> face = Misconception("m.face", "goes by the numbers", "What are the units?")
    >>> ways = [Way(parse(text)) for text in ("90 min", "2 h", "1.2 h")]
    >>> made = ways_in_order(ways, (90, 120, 72), ((face, (90, 2, Fraction(6, 5))),), ("order",))
    >>> line(made.key), line(made.slips[0].wrong)
    ('1.2 h, 90 min, 2 h', '1.2 h, 2 h, 90 min')
    """
    nodes = [way.shown for way in ways]

    def listed(worth: Sequence[Fraction | int]) -> t.Listing:
        return t.Listing(tuple(nodes[place] for place in by_size(worth)))

    key = listed(sizes)
    return Draft(
        prompt("Put these in order, smallest first:  {things}", things=t.Listing(tuple(nodes))),
        Order(tuple(nodes)),
        key,
        "list",
        (*_lines(ways), Step("Put them in order as they were printed.", key)),
        slips(*((mistake, listed(worth)) for mistake, worth in mistakes), key=key),
        twin,
    )


def by_size(worth: Sequence[Fraction | int]) -> list[int]:
    """Return the places of some numbers, the smallest first.

    >>> by_size((3, 1, 2))
    [1, 2, 0]
    """
    return sorted(range(len(worth)), key=lambda place: worth[place])


def order_fits(
    sizes: Sequence[Fraction | int], *mistaken: Sequence[Fraction | int], few: bool = False
) -> bool:
    """Tell whether an order is worth asking: no mistake finds it, and it is not printed so.

    Mistakes that come to one order are one; with `few` that is enough, or else there are to be two.
    """
    right = by_size(sizes)
    wrong = [by_size(worth) for worth in mistaken]
    apart = len({*map(tuple, wrong)}) > 1 or few
    return (
        len({*sizes}) == len(sizes)
        and right != [*range(len(sizes))]
        and right not in wrong
        and apart
    )


def _lines(ways: Sequence[Way]) -> tuple[Step, ...]:
    return tuple(Step(way.say, way.line) for way in ways if way.line is not None)
