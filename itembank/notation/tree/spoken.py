"""How a tree is said: what :mod:`itembank.notation.words` is made of."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from itembank.notation.tree.face import FACES, NotationError, kept_until_registered

if TYPE_CHECKING:
    from itembank.notation.tree import Node

_MARK = "\0"


def words(node: Node) -> str:
    """Return the phrase for `node`.

    Raises:
        NotationError: something in the tree is not a node, or a sign or unit is unknown.

    >>> from itembank.notation.tree import Dec, Frac, Int, Mixed, Money, Sym, add
    >>> words(Mixed(2, 3, 4)), words(Dec("0", "1", "6")), words(Money(Dec("4", "50")))
    ('2 and 3 quarters', '0 point 1 6 recurring', '4 pounds 50 pence')
    >>> words(Frac(Sym("n"), Int(3))), words(add(Frac(Sym("n"), Int(3)), Int(1)))
    ('n over 3', 'n over 3, end of fraction, plus 1')
    """
    phrase = said(node)
    if _MARK in phrase:
        # At the very end nothing follows, so where the last thing ends goes without saying.
        if phrase.endswith(_MARK):
            phrase = phrase[: phrase.rindex(_MARK, 0, -1)]
        phrase = _MARKED.sub(r", end of \1", phrase)
    return _followed().sub(r"\1,", phrase) if ", end of " in phrase else phrase


_MARKED = re.compile(f"{_MARK}([a-z ]+){_MARK}")


def said(node: Node) -> str:
    """Return what is said of a node that stands in a longer phrase.

    Raises:
        NotationError: as :func:`words`.
    """
    faces = FACES.get(type(node))
    if faces is None:
        raise NotationError(f"{type(node).__name__} is not a kind of notation.")
    try:
        return faces.words(node)
    except KeyError as error:
        raise NotationError(f"{error} is not a sign that can be said here.") from None


def ends_if_followed(name: str) -> str:
    """Return a mark that says where something ends, but only where more is said after it."""
    return f"{_MARK}{name}{_MARK}"


def has_ended(phrase: str) -> bool:
    """Tell whether the last thing said of a part is where something ends."""
    return phrase.endswith(_MARK) or _ended().search(phrase) is not None


def _endings() -> str:
    return "|".join(dict.fromkeys(name for faces in FACES.values() for name in faces.ends))


@kept_until_registered
def _ended() -> re.Pattern[str]:
    return re.compile(rf", end of (?:{_endings()})\Z")


@kept_until_registered
def _followed() -> re.Pattern[str]:
    return re.compile(f"(, end of (?:{_endings()}))(?= )")


def said_chain(signs: Mapping[str, str]) -> Callable[[Any], str]:
    """Return a speaker for parts joined by `signs`."""

    def speak(node: Any) -> str:
        return " ".join(
            [said(node.first), *(f"{signs[op]} {said(part)}" for op, part in node.rest)]
        )

    return speak


def said_row(mark: str) -> Callable[[Any], str]:
    """Return a speaker for parts with a word or mark between them."""
    return lambda node: mark.join([said(part) for part in node.parts])
