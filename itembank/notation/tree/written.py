"""How a tree is written on a line: what :mod:`itembank.notation.line` is made of."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from contextvars import ContextVar
from typing import TYPE_CHECKING, NoReturn

from itembank.notation.tree.face import FACES, NotationError, Rank
from itembank.notation.tree.line_signs import check_limits
from itembank.notation.tree.spoken import words
from itembank.notation.tree.walking import symbols

if TYPE_CHECKING:
    from itembank.notation.tree import Node

# Whether p after a number is pence is a fact of the whole line, read only where factors meet.
_pence: ContextVar[bool] = ContextVar("pence", default=True)


def line(node: Node, *, pence: bool = True) -> str:
    """Return the canonical one-line text of a well-formed tree.

    With `pence` false, p is a letter wherever it stands, so 3p is three times p.

    Raises:
        NotationError: the tree is not well formed (see the module), or goes past the
            limits of :mod:`.line_signs`; the message says which part and why.

    >>> from itembank.notation.tree import Dec, Int, Juxt, Sym, add, equals, frac, juxt
    >>> line(equals(add(juxt(frac(3, 4), Sym("x")), Int(1)), frac(-3, 4)))
    '(3/4)x + 1 = -3/4'
    >>> line(Dec("0", "", "142857")) == "0.1̇42857̇"
    True
    >>> line(Juxt((Int(3), Int(4))))
    Traceback (most recent call last):
    ...
    itembank.notation.tree.face.NotationError: 3 and 4 cannot stand side by side without a sign.
    """
    token = _pence.set(pence)
    try:
        text = text_of(node, Rank.EITHER, "a piece of mathematics")
    except RecursionError:
        raise NotationError("The mathematics is nested too deeply to write on a line.") from None
    finally:
        _pence.reset(token)
    fault = check_limits(text)
    if fault:
        raise NotationError(fault[1])
    return text


def shown_line(node: Node) -> str:
    """Return a tree as people may read it, whatever it is: its line, or failing that its words.

    A line is read as a whole, and in some p is a letter: there 3p is written though it is not
    threepence. So this is what messages and lists are made with, and :func:`line` what is to be
    read back.

    >>> from itembank.notation.parse import parse
    >>> shown_line(parse("10p ÷ 400p", pence=False))
    '10p ÷ 400p'
    """
    letter = "p" in symbols(node)
    # The likelier reading first; the other has to do where a line holds both.
    for pence in (not letter, letter):
        try:
            return line(node, pence=pence)
        except NotationError:
            continue
    try:
        return words(node)
    except NotationError:
        return repr(node)


def pence_here() -> bool:
    """Tell whether p straight after a number is pence in the line that is being written."""
    return _pence.get()


def refuse(message: str) -> NoReturn:
    """Raise the error for a tree that is not well formed."""
    raise NotationError(message)


def text_of(node: Node, most: Rank, place: str, also: tuple[type, ...] = ()) -> str:
    """Return the text of `node`, which stands at `place`.

    Only what binds at least as tightly as `most`, or is one of `also`, may stand there without
    brackets.

    Raises:
        NotationError: it may not stand there, or is not well formed itself.
    """
    faces = FACES.get(type(node))
    if faces is None or (faces.rank > most and type(node) not in also):
        misplaced(node, place)
    return faces.line(node)


def misplaced(node: Node, place: str) -> NoReturn:
    """Raise the error for a node that may not stand at `place`."""
    name = type(node).__name__
    faces = FACES.get(type(node))
    if faces is None:
        refuse(f"{name} is not a kind of notation.")
    refuse(faces.confined(node) or f"{name} cannot stand as {place} without brackets.")


def unconfined(node: Node) -> Node:
    """Return `node`, which is to stand inside something.

    Raises:
        NotationError: it may not, such as a time of day in brackets.
    """
    faces = FACES.get(type(node))
    if faces and (why := faces.confined(node)):
        refuse(why)
    return node


def is_simple(node: Node) -> bool:
    """Tell whether a node needs no brackets anywhere: a number, a letter, a box."""
    faces = FACES.get(type(node))
    return faces is not None and faces.rank is Rank.SIMPLE


def grouped(node: Node, place: str) -> str:
    """Return the text of `node`, in brackets unless it is one number, letter or box."""
    text = text_of(unconfined(node), Rank.EXPRESSION, place)
    return text if is_simple(node) else f"({text})"


def chained(
    first: Node,
    rest: Iterable[tuple[str, Node]],
    ops: Mapping[str, str],
    most: Rank,
    place: str,
    also: tuple[type, ...] = (),
) -> str:
    """Return the text of parts that are joined by `ops`, two or more."""
    if not rest:
        refuse(f"There must be two or more parts for there to be {place}.")
    texts = [text_of(first, most, place, also)]
    for op, part in rest:
        if op not in ops:
            refuse(f"{op!r} cannot join parts here; use one of {', '.join(ops)}.")
        texts += (ops[op], text_of(part, most, place, also))
    return "".join(texts)


def joined(parts: tuple[Node, ...], mark: str, most: Rank, place: str) -> str:
    """Return the text of two or more parts with a mark between them."""
    if len(parts) < 2:
        refuse(f"There must be two or more parts for there to be {place}.")
    return mark.join([text_of(part, most, place) for part in parts])
