"""What a kind of question is, and the one table of all kinds.

A kind is a slice through the layers, and its record here is all of it. It says what every layer
needs to know (the name in a file, the printed parts, the data, the twin) and names what one layer
alone does with it: a road, the check of working, marking, the words of a bank
(:mod:`.layers`; :mod:`.handlers` finds what is named).

>>> from itembank.items.asks import Find
>>> from itembank.notation import tree as t
>>> ask = Find(t.add(t.Int(2), t.Int(3)))
>>> kind_of(ask).name, [type(node).__name__ for node in asked(ask)]
('find', ['Sum'])
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Literal

from itembank.data_class import dataclass
from itembank.figures.figure import Figure, Reading
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t
from itembank.notation.line import shown_line

Nodes = tuple[t.Node, ...]


class Ask:
    """The question behind the words: what a proof starts from.

    Each kind of question is a frozen dataclass that holds the very trees the prompt prints.
    """

    __slots__ = ()


@dataclass(frozen=True, slots=True)
class Stored:
    """A question as data: its trees, and the few words that say what to do with them.

    The fields are those of a question in ``pack.json``; a kind uses those it needs.
    """

    target: Nodes = ()
    relations: tuple[t.Relation, ...] = ()
    detail: str = ""
    labels: tuple[str, ...] = ()
    way: str = "nearest"
    pick: str = ""
    conditions: tuple[tuple[str, Nodes], ...] = ()
    figure: Figure | None = None
    key_figure: Figure | None = None
    readings: tuple[tuple[str, Reading], ...] = ()
    answers: Nodes = ()
    form: str = ""


Twin = tuple[tuple[object, ...], Nodes, Nodes]
"""What twins have in common: words, trees whose order counts, and trees in any order."""


@dataclass(frozen=True, slots=True)
class Kind:
    """All that every layer needs to know of one kind of question.

    Attributes
    ----------
    name
        What the kind is called in files, for ever.
    ask
        Its class.
    trees
        The trees a question is about: each has to be printed.
    store, restore
        The question as data and back; `restore` raises NotationError for data that makes no
        sense.
    twin
        What a question has in common with the same one in disguise, given the form of its answer.
    does
        What a pupil is told to do, as *put in order*: for messages.
    layers
        The names of what each layer above does with it.
    relations
        Whether its data may hold relations.
    conditions
        Whether its data may hold conditions; that of kinds with many right answers may as well.
    filed
        Whether files name it; it may stand under the name of another kind instead.
    model
        The trees that stand for a story where the prompt does not print them.
    many
        Whether many answers are right: the key is then one of them, and printed as an example.
    told
        What a teacher calls such a question, where it is another than to work something out.
    frame
        Whether the words around its mathematics are a frame of fixed wording, and tell no story.
    judges
        Whether it has a question of another kind, and then somebody's answers to it to be judged.
    wrong_answers
        How many different likely wrong answers a question shows at least; of a statement that is
        true or false there is only one.
    answerable
        Whether somebody's answer to it is one thing, right or wrong: half of a list would be
        neither.
    whole
        Whether such an answer may have parts, as a point or a solution has, and is right as a
        whole.
    together
        Whether relations in one line of working are one statement, and not each a line of its own.
    numbers
        What is done with its longest number, which bounds how long that may be: it is taken apart
        into primes (``factored``), or ``rounded``.
    """

    name: str
    ask: type[Ask]
    trees: Callable[[Any], Nodes]
    store: Callable[[Any], Stored]
    restore: Callable[[Stored], Ask]
    twin: Callable[[Any, str], Twin]
    does: str
    layers: Layers
    relations: bool = False
    conditions: bool = False
    filed: bool = True
    model: Callable[[Any], Nodes] = lambda ask: ()
    many: bool = False
    told: str = ""
    frame: bool = False
    judges: bool = False
    wrong_answers: int = 2
    answerable: bool = False
    whole: bool = False
    together: bool = False
    numbers: Literal["", "factored", "rounded"] = ""


KINDS: dict[str, Kind] = {}
"""Every kind by its name."""
BY_CLASS: dict[type, Kind] = {}
"""Every kind by the class of its questions."""


def register_kind(kind: Kind) -> Kind:
    """Add a kind of question.

    Raises
    ------
    ValueError
        If another class has taken the name.
    """
    registered = KINDS.get(kind.name)
    if registered is not None and registered.ask is not kind.ask:
        raise ValueError(f"two kinds of question are called {kind.name!r}")
    KINDS[kind.name] = BY_CLASS[kind.ask] = kind
    return kind


def kind_of(ask: Ask) -> Kind:
    """Return the kind of a question.

    Raises
    ------
    NotationError
        If its class is no registered kind.
    """
    try:
        return BY_CLASS[type(ask)]
    except KeyError:
        raise t.NotationError(f"{type(ask).__name__} is no kind of question") from None


def asked(ask: Ask) -> Nodes:
    """Return every tree that a question is about."""
    return kind_of(ask).trees(ask)


# What the `restore` of several kinds asks of their data.


def only(stored: Stored, count: int) -> Nodes:
    """Return the targets of a stored question that has to have so many.

    Raises
    ------
    NotationError
        If it has more or fewer.
    """
    if len(stored.target) != count:
        raise t.NotationError(f"the ask has {len(stored.target)} targets where it needs {count}")
    return stored.target


def detail(stored: Stored, kind: str, known: tuple[str, ...]) -> Any:
    """Return the detail of a stored question, one of those known.

    Raises
    ------
    NotationError
        If it is another.
    """
    if stored.detail not in known:
        raise t.NotationError(f"the detail of a question to {kind} is {' or '.join(known)}")
    return stored.detail


def relation(node: t.Node) -> t.Relation:
    """Return a node that has to be an equation or an inequality.

    Raises
    ------
    NotationError
        If it is something else.
    """
    if not isinstance(node, t.Relation):
        raise t.NotationError(f"‘{shown_line(node)}’ is not an equation or an inequality")
    return node
