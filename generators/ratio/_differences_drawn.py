"""Two bars, the longer of which says how much more it is."""

from __future__ import annotations

from generators._bars import compared
from generators._turns import by_turns
from generators.ratio._difference_mistakes import AS_TOTAL, IS_PART, LARGER, STOPS
from generators.ratio._parts import TWO_SORTS, swapped
from itembank.figures.kinds.number.bar_model import BarModel
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def one_fits(pair: tuple[int, int], value: int, larger: int) -> bool:
    """Keep bars that are asked for and have several parts, whose number tells nothing."""
    return pair[larger] > 1 and value not in pair and value != pair[1] - pair[0]


def both_fit(pair: tuple[int, int], value: int) -> bool:
    """Keep bars whose numbers of parts are not the worth of a part."""
    return value not in pair and value != pair[1] - pair[0]


def one_drawn(topic: Topic, tier: Tier, pair: tuple[int, int], value: int, larger: int) -> Draft:
    """Return the question for one of two bars, the longer of which says how much more it is."""
    parts, lead, names, given, figure = _two_bars(pair, value)
    asked, gap = pair[larger], pair[1] - pair[0]
    key = t.Int(asked * value)
    text = (f"{lead} How many {names[parts.index(asked)]} are there?",)
    shared = gap * value % sum(pair) == 0
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            *worth_of_a_part(pair[1], pair[0], given, t.Int(value)),
            Step(
                f"The bar asked for has {asked} parts, so multiply.",
                t.equals(t.times(t.Int(asked), t.Int(value)), key),
            ),
        ),
        slips(
            (IS_PART, gap * value * asked),
            (STOPS, value),
            (AS_TOTAL, gap * value // sum(pair) * asked if shared else None),
        ),
        ("one drawn", pair, value, larger),
        figure=figure,
    )


def both_drawn(topic: Topic, tier: Tier, pair: tuple[int, int], value: int) -> Draft:
    """Return the question for both bars together, the longer of which says how much more it is."""
    parts, lead, _, given, figure = _two_bars(pair, value)
    count, gap = sum(pair), pair[1] - pair[0]
    key = t.Int(count * value)
    text = (f"{lead} How many are there altogether?",)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            *worth_of_a_part(pair[1], pair[0], given, t.Int(value)),
            Step(
                "Add to find the number of parts.",
                t.equals(t.add(*map(t.Int, parts)), t.Int(count)),
            ),
            Step("Multiply to find the whole.", t.equals(t.times(t.Int(count), t.Int(value)), key)),
        ),
        slips((IS_PART, gap * value * count), (LARGER, pair[1] * value)),
        ("all drawn", pair, value),
        figure=figure,
    )


def _two_bars(
    pair: tuple[int, int], value: int
) -> tuple[tuple[int, ...], str, tuple[str, str], t.Node, BarModel]:
    """Return the parts in the order drawn, the lead, the names, the difference, and the bars."""
    parts = swapped(pair, sum(pair) + value)
    lead, names = by_turns(TWO_SORTS, pair[0] + value)
    given = t.Int((pair[1] - pair[0]) * value)
    named = ((names[0].capitalize(), parts[0]), (names[1].capitalize(), parts[1]))
    return parts, lead, names, given, compared(named, given)


def worth_of_a_part(most: int, least: int, given: t.Node, part_worth: t.Node) -> tuple[Step, Step]:
    """Return the lines from a difference to the value of one part."""
    gap = t.Int(most - least)
    return (
        Step(
            "Find how many parts the difference is.",
            t.equals(t.sub(t.Int(most), t.Int(least)), gap),
        ),
        Step("Divide to find what one part is worth.", t.equals(t.divide(given, gap), part_worth)),
    )
