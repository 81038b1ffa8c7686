"""Cards that are held against one another: the odd one out, and pairs to match."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from itembank.items.asks.odd_one_out import LETTERS, OddOneOut
from itembank.items.item import Draft, Misconception, Slip, Step
from itembank.items.kinds.lot import shuffled
from itembank.items.kinds.mistakes import BY_LOOKS
from itembank.items.wrong_answers import told_apart
from itembank.notation import tree as t

_COUNTS = ("two", "three", "four", "five")
Same = Literal["value", "solution", "form"]
_SAME: dict[Same, str] = {
    "value": "have the same value",
    "solution": "have the same solution",
    "form": "are equivalent",
}


def odd_one_out(
    odd: t.Node,
    others: Sequence[t.Node],
    *,
    mistakes: Sequence[tuple[Misconception, int]],
    steps: tuple[Step, ...],
    twin: tuple[object, ...],
    same: Same = "value",
) -> Draft:
    r"""Return the question which of some cards is not worth what the others are.

    Parameters
    ----------
    odd, others
        The odd one, and those that are worth the same as one another; they are dealt in an order
        drawn by lot.
    mistakes
        Each with the place in `others` of the card that who makes it picks; where fewer than two
        are told, the last of the others is one that looks different.
    steps, twin
        The working, to which the answer is added, and what tells the question from others.
    same
        What the others have in common: equations a solution, expressions with letters what they
        come to whatever these are, all else a value.

    >>> from itembank.notation import parse
    >>> cards = [parse(text) for text in ("1/2", "2/4", "4/8")]
    >>> made = odd_one_out(parse("3/5"), cards, mistakes=(), steps=(), twin=(1, 2))
    >>> made.prompt[0]
    'Three of these have the same value. Which is the odd one out?\n(A)\xa0'
    >>> made.ask.cards[ord(made.key.text) - ord("A")] == parse("3/5")
    True
    """
    cards = shuffled((odd, *others), twin, "odd")
    names = {card: t.Label(LETTERS[place]) for place, card in enumerate(cards)}
    wrong = [Slip(mistake, names[others[place]]) for mistake, place in mistakes]
    looks = [card for card in others if names[card] not in {slip.wrong for slip in wrong}]
    while len({slip.wrong for slip in wrong}) < 2 and looks:
        wrong.append(Slip(BY_LOOKS, names[looks.pop()]))
    count = _COUNTS[len(others) - 2].capitalize()
    key = names[odd]
    return Draft(
        names_joined(
            (
                f"{count} of these {_SAME[same]}. Which is the odd one out?\n",
                *row_of_cards(cards, LETTERS),
            )
        ),
        OddOneOut(tuple(cards)),
        key,
        "name",
        (*steps, Step(f"So {key.text} is the odd one out.")),
        told_apart(wrong),
        ("odd one out", *twin),
        1,
    )


def row_of_cards(cards: Sequence[t.Node], names: str, end: str = "") -> tuple[str | t.Node, ...]:
    """Return cards in a row, each after its name, which stays beside it."""
    runs: list[str | t.Node] = []
    for place, card in enumerate(cards):
        runs += [f"{'; ' if place else ''}({names[place]})\u00a0", card]
    return (*runs, f".{end}")


def names_joined(runs: Sequence[str | t.Node]) -> tuple[str | t.Node, ...]:
    """Return runs with neighbouring words made one."""
    made: list[str | t.Node] = []
    for run in runs:
        last = made[-1] if made else None
        if isinstance(run, str) and isinstance(last, str):
            made[-1] = last + run
        else:
            made.append(run)
    return tuple(made)
