"""Keeps what was found of a thing while one look at it after another is taken.

An item's figure is read when the item is made, and read again by each part of its proof; a
drawing is measured by one reading after another. What is found is a function of the thing alone,
so one look is as good as many.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Final, TypeVar, TypeVarTuple, Unpack, cast

Thing = TypeVar("Thing")
Found = TypeVar("Found")
Rest = TypeVarTuple("Rest")


def once(
    find: Callable[[Thing, Unpack[Rest]], Found],
) -> Callable[[Thing, Unpack[Rest]], Found]:
    """Return a function that looks at a thing once, as long as only one other is looked at.

    The thing is told by what it is and not by what it holds, which is quicker than to compare;
    what else is handed over is told by its value. Two are kept, as a question may show one figure
    and its key another. An error is not kept. What is returned is shared: no caller changes it.

    >>> looked = []
    >>> longest = once(lambda words: looked.append(words) or max(map(len, words)))
    >>> fruit, roots = ("plum", "cherry"), ("leek", "carrot")
    >>> [longest(each) for each in (fruit, roots, fruit, roots)], len(looked)
    ([6, 6, 6, 6], 2)
    """
    last: tuple[Thing, dict[object, object]] | None = None
    before: tuple[Thing, dict[object, object]] | None = None

    @wraps(find)
    def found(thing: Thing, *rest: *Rest) -> Found:
        nonlocal last, before
        kept = last
        if kept is None or kept[0] is not thing:
            # Held, so that no other thing comes to stand where this one did.
            older = before
            kept = older if older is not None and older[0] is thing else (thing, {})
            last, before = kept, last
        known = kept[1]
        made = known.get(rest, _NOTHING)
        if made is _NOTHING:
            made = known[rest] = find(thing, *rest)
        return cast("Found", made)

    return found


_NOTHING: Final = object()
