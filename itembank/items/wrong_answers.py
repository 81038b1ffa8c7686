"""The wrong answers of an item: made from its likely mistakes, and told apart.

A wrong answer tells a teacher which mistake was made only where no other known mistake leads
to it. Where two do, saying one of them would be a guess, so the two are said together.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterable
from fractions import Fraction
from typing import TypeAlias

from itembank.items.item import Misconception, Slip
from itembank.notation import tree as t

Wrong: TypeAlias = tuple[Misconception, t.Node | Fraction | int | None]
"""A mistake and what it gives: a tree as it is, a number to be written, None where nothing."""
_AND = "+"
"""Stands between the ids of mistakes that lead to one answer; no id of one mistake has it.
An id after the first that starts with a dot is of the first one's strand."""


def slips(
    *wrongs: Wrong,
    write: Callable[[Fraction | int], t.Node] | None = None,
    key: t.Node | None = None,
) -> tuple[Slip, ...]:
    """Return the wrong answers of an item, in the order of its mistakes.

    A mistake that gives None cannot show on the item and is left out. Two that give the same
    answer may both stand here: the topic says them together (:func:`told_apart`).

    Parameters
    ----------
    wrongs
        Each mistake with its answer.
    write
        How a number is written; in its simplest form unless told otherwise.
    key
        Where it is given, a mistake that happens to give it is left out: it cannot be told from
        none. Without it such a mistake stays, and the audit says that the item is blind.

    >>> across = Misconception("m.across", "adds across", "What is 1/2 + 1/2?")
    >>> [slip.wrong for slip in slips((across, Fraction(2, 4)), (across, None))]
    [Frac(num=Int(n=1), den=Int(n=2))]
    """
    # Not above: topics are looked up by commands that make no item and need no rules of forms.
    from itembank.items.forms.form_rules import simplest_node

    written = write or simplest_node
    kept = []
    for misconception, wrong in wrongs:
        if wrong is None:
            continue
        node = written(wrong) if isinstance(wrong, Fraction | int) else wrong
        if node != key:
            kept.append(Slip(misconception, node))
    return tuple(kept)


def told_apart(
    wrong_answers: Iterable[Slip], same: Callable[[t.Node, t.Node], bool] = operator.eq
) -> tuple[Slip, ...]:
    """Return slips no two of which have the same wrong answer.

    Mistakes that lead to one answer become one that names them all, in the place of the first.

    >>> tops = Misconception("m.tops", "adds the tops", "What are halves?")
    >>> half = Misconception("m.half", "stops half way", "Is that all?")
    >>> [slip] = told_apart([Slip(tops, t.Int(5)), Slip(half, t.Int(5))])
    >>> slip.misconception.name
    'adds the tops, or stops half way'
    """
    groups: list[tuple[Slip, list[Misconception]]] = []
    for slip in wrong_answers:
        for first, mistakes in groups:
            if same(first.wrong, slip.wrong):
                mistakes.append(slip.misconception)
                break
        else:
            groups.append((slip, [slip.misconception]))
    return tuple(
        first if len(mistakes) == 1 else Slip(either(*mistakes), first.wrong)
        for first, mistakes in groups
    )


def either(*mistakes: Misconception) -> Misconception:
    """Return the remark that one of several mistakes was made, and it is not known which.

    Its question is all of theirs. Its id names theirs (:func:`causes`).

    >>> first = Misconception("strand.one", "does this", "Why this?")
    >>> other = Misconception("strand.other", "does that", "Why that?")
    >>> either(first, other)
    Misconception(id='strand.one+.other', name='does this, or does that', ask='Why this? Why that?')
    >>> either(first, first) == first
    True
    """
    if len(mistakes) == 1:
        return mistakes[0]
    by_id = {mistake.id: mistake for mistake in reversed(mistakes)}
    first, *others = dict.fromkeys(mistake.id for mistake in mistakes)
    if not others:
        return by_id[first]
    strand = first.rpartition(".")[0]
    short = [
        name.removeprefix(strand) if strand and name.startswith(f"{strand}.") else name
        for name in others
    ]
    distinct = [by_id[name] for name in (first, *others)]
    return Misconception(
        _AND.join((first, *short)),
        said_together(mistake.name for mistake in distinct),
        " ".join(dict.fromkeys(mistake.ask for mistake in distinct)),
    )


def said_together(names: Iterable[str]) -> str:
    """Return the names of mistakes as the name of one, of which nobody knows which it was.

    >>> said_together(["adds the tops", "stops half way"])
    'adds the tops, or stops half way'
    """
    return ", or ".join(names)


def causes(name: str) -> tuple[str, ...]:
    """Return the ids of the mistakes that the id of a remark stands for: one or several.

    >>> causes("strand.one+.other"), causes("strand.one")
    (('strand.one', 'strand.other'), ('strand.one',))
    """
    first, *more = name.split(_AND)
    strand = first.rpartition(".")[0]
    return (first, *(strand + short if short.startswith(".") else short for short in more))
