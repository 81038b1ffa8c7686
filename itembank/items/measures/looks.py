"""What a pupil sees of a question at a glance: its mathematics, its words, its answer."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from itertools import pairwise
from typing import Any

from itembank.data_class import dataclass
from itembank.figures.figure_data import to_data
from itembank.items.asks import FaultyWorking, asked, kind_of
from itembank.items.item import Item, Run
from itembank.items.measures.features import lines_worked
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.tree.face import FACES
from itembank.notation.value import exact

STORY_WORDS = 9
"""Words from which a prompt tells a story; fewer are an instruction, such as *Work out*."""

SMALL_WORDS = """
a an and are as at be by for from give has have how in into is it its many much of off on or out
that the their them then there they this to was were what which with you your
answer simplest form lowest terms number numbers work out find write solve expand simplify
factorise completely round use put order goes box missing ratio whole mixed improper fraction
decimal percentage places figures significant nearest standard units without
rounded error interval term sequence begins nth
say says true false right ready who why
"""
SMALL = frozenset(SMALL_WORDS.split())
"""Words that say nothing of a story."""


@dataclass(frozen=True, slots=True)
class Look:
    """What a pupil sees of an item at a glance."""

    shape: object
    """The prompt with its numbers and letters left out."""
    numbers: tuple[object, ...]
    """The numbers of the prompt in reading order."""
    words: frozenset[str]
    """The words that make its story; empty where it tells none."""
    answer: t.Node
    """The number found: of x = 3 the 3, so that y = 3 counts as the same."""
    ending: object
    """How an answer of several parts ends, or None where it is one number."""
    sides: tuple[object, ...] = ()
    """The way round each shape of a grid, wherever the shape lies; empty where there is none."""


def look(item: Item) -> Look:
    """Return what a pupil sees of an item at a glance.

    >>> from itembank.items.topics.registry import find_item
    >>> seen = look(find_item("equations.both-sides/core/234"))  # 2k + 3 = 8k − 39
    >>> seen.numbers, seen.words
    ((2, 3, 8, 39), frozenset())
    """
    numbers: list[object] = []
    shape: tuple[object, ...] = tuple(
        run if isinstance(run, str) else skeleton(run, numbers) for run in _question(item)
    )
    if item.figure is not None:
        leaves = list(_leaves(to_data(item.figure)))
        shape = (*shape, type(item.figure).__name__, *(leaf for leaf in leaves if _is_word(leaf)))
        numbers.extend(leaf for leaf in leaves if _has_number(leaf))
    answer = answer_of(item)
    sides = tuple(map(_way_round, getattr(item.figure, "shapes", ())))
    return Look(shape, tuple(numbers), _story(item), answer, _ending(answer), sides)


def structure(item: Item) -> tuple[object, ...]:
    """Return what is equal for two items that are solved by the same steps.

    It is the question behind the words, the form asked for, and the working line by line, all
    with numbers and letters left out; the story is not in it.

    >>> from itembank.items.topics.registry import find_item
    >>> item, other = (find_item(f"equations.both-sides/core/{n}") for n in (234, 235))
    >>> structure(item) == structure(other)
    True
    """
    if kind_of(item.ask).frame:
        # Cards and lines are as many; how hard they are is measured for itself.
        return (type(item.ask), item.form, len(asked(item.ask)), len(lines_worked(item)))
    asked_for = tuple(map(skeleton, _nodes(item.ask)))
    lines = tuple(step.maths and skeleton(step.maths) for step in lines_worked(item))
    return (type(item.ask), item.form, asked_for, skeleton(item.key), lines)


def skeleton(node: t.Node, numbers: list[object] | None = None) -> object:
    """Return a tree with its numbers and letters left out, adding the numbers to a list.

    >>> from itembank.notation.parse import parse
    >>> skeleton(parse("2k + 3 = 8")) == skeleton(parse("5x + 1 = 9"))
    True
    >>> skeleton(parse("3/4")) == skeleton(parse("3/x"))
    False
    """
    kept: tuple[object, ...]
    match node:
        case t.Int(n):
            kept, shown = (n,), "n"
        case t.Dec(whole, places, recurring):
            kept, shown = ((whole, places, recurring),), "r" if recurring else "d"
        case t.Sym():
            kept, shown = (), "x"
        case t.Frac(t.Int(top), t.Int(bottom)):
            kept, shown = (top, bottom), "f"
        case t.Mixed(whole_part, top_part, bottom_part):
            kept, shown = (whole_part, top_part, bottom_part), "m"
        case t.Label():
            kept, shown = (), "l"
        case t.Money(amount, _):
            return ("£", skeleton(amount, numbers))
        case t.Quantity(amount, _):
            return ("u", skeleton(amount, numbers))
        case t.Sum(first, rest) | t.Product(first, rest) | t.Relation(first, rest):
            name = type(node).__name__
            head = skeleton(first, numbers)
            return (name, head, *((op, skeleton(part, numbers)) for op, part in rest))
        case _:
            below = tuple(skeleton(part, numbers) for part in t.children(node))
            return (type(node).__name__, *below)
    if numbers is not None:
        numbers.extend(kept)
    return shown


def answer_of(item: Item) -> t.Node:
    """Return the number a pupil has found: of x = 3 the 3; £2, 2 kg and 2 are one answer."""
    key = item.key
    value = key.rest[-1][1] if isinstance(key, t.Relation) else key
    return value.amount if isinstance(value, t.Money | t.Quantity) else value


def _nodes(value: Any) -> Iterator[t.Node]:
    """Yield the trees of a question, in order."""
    for field in fields(value):
        for part in _flat(getattr(value, field.name)):
            if type(part) in FACES:
                yield part


def _flat(value: Any) -> Iterator[Any]:
    if isinstance(value, tuple):
        for part in value:
            yield from _flat(part)
    else:
        yield value


def _leaves(data: Any) -> Iterator[object]:
    """Yield every number and word of a figure's data, in order."""
    if isinstance(data, dict | list):
        for part in data.values() if isinstance(data, dict) else data:
            yield from _leaves(part)
    else:
        yield data


def _way_round(shape: Any) -> tuple[object, ...]:
    """Return the steps from corner to corner of a grid's shape, the same wherever it lies."""
    corners = [tuple(map(exact, corner)) for corner in shape.corners]
    return tuple((b[0] - a[0], b[1] - a[1]) for a, b in pairwise(corners))


def _has_number(leaf: object) -> bool:
    """Tell whether a leaf of a figure is a number, or a label that has one: 6 cm, 2x + 10."""
    if isinstance(leaf, str):
        return any(sign.isdigit() for sign in leaf)
    return isinstance(leaf, int) and not isinstance(leaf, bool)


def _is_word(leaf: object) -> bool:
    """Tell whether a leaf says what is drawn; a letter that names a point says nothing."""
    return not _has_number(leaf) and not (isinstance(leaf, str) and len(leaf) == 1)


def _question(item: Item) -> tuple[Run, ...]:
    """Return the prompt; where answers or a working are to be judged, the question and these.

    Who gives them stands in a line of its own; a story is the same story whoever does.
    """
    if isinstance(item.ask, FaultyWorking):
        # Before each line stands what numbers it, and before the first also who writes it.
        place = len(item.prompt) - 2 * len(item.ask.lines) - 1
        lead = item.prompt[place] if place >= 0 else None
        if isinstance(lead, str):
            return _cut(item, place, lead.rpartition("\n")[0])
    elif kind_of(item.ask).judges:
        for place, run in reversed(list(enumerate(item.prompt))):
            if isinstance(run, str) and "\n" in run:
                return _cut(item, place, run)
    return item.prompt


def _cut(item: Item, place: int, told: str) -> tuple[Run, ...]:
    """Return the prompt up to the last line told in a run, and what is given after it."""
    given = (node for node in item.prompt[place:] if not isinstance(node, str))
    return (*item.prompt[:place], told.rpartition("\n")[0], *given)


def _story(item: Item) -> frozenset[str]:
    if item.figure is not None or kind_of(item.ask).frame:
        return frozenset()  # what the picture shows tells two questions apart, not its words
    text = " ".join(run for run in _question(item) if isinstance(run, str))
    words = "".join(c if c.isalpha() else " " for c in text.lower()).split()
    if len(words) < STORY_WORDS:
        return frozenset()
    story = frozenset(words) - SMALL
    return story if len(story) >= 4 else frozenset()


def _ending(answer: t.Node) -> object:
    match answer:
        case t.Label():
            return answer
        case t.Ratio(parts) | t.Listing(parts) | t.Either(parts):
            return tuple(map(_text, parts[1:]))
        case t.Mixed(_, top, bottom):
            return (top, bottom)
        case t.Neg(of):
            return _ending(of)
        case t.Sum(_, rest):
            return (rest[-1][0], _text(rest[-1][1]))
        case t.Frac(_, bottom):
            return ("/", _text(bottom))
        case t.Power(_, index):
            return ("^", _text(index))
        case t.Percent(t.Mixed() as inner):
            return _ending(inner)
    return None


def _text(node: t.Node) -> str:
    try:
        return line(node)
    except t.NotationError:  # a piece of a tree that cannot stand alone
        return repr(node)
