"""How a tree is set in MathML: what :mod:`itembank.notation.mathml` is made of."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from itembank.notation.tree.face import FACES, NotationError

if TYPE_CHECKING:
    from itembank.notation.tree import Node

THIN = "\u2009"


def body(node: Node) -> str:
    """Return the elements inside ``<math>`` for `node`; more than one where it is a row.

    Raises:
        NotationError: something in the tree is not a node, or a sign or unit is unknown.
    """
    faces = FACES.get(type(node))
    if faces is None:
        raise NotationError(f"{type(node).__name__} is not a kind of notation")
    try:
        return faces.mathml(node)
    except KeyError as error:
        raise NotationError(f"{error} is not a sign that can be printed here") from None


def element(node: Node) -> str:
    """Return `node` as exactly one element."""
    inner = body(node)
    # mfrac, msup and their like count their children: a row has to be one of them.
    return inner if FACES[type(node)].single else f"<mrow>{inner}</mrow>"


def digits(number: str) -> str:
    r"""Return a whole number's digits with thin spaces between thousands, from five digits.

    >>> digits("1234567"), digits("1234")
    ('1\u2009234\u2009567', '1234')
    """
    # Four digits stay together, as the SI brochure allows and school books print.
    if len(number) < 5:
        return number
    lead = len(number) % 3
    blocks = [number[i : i + 3] for i in range(lead, len(number), 3)]
    return THIN.join([number[:lead], *blocks] if lead else blocks)


def chain_of(signs: Mapping[str, str]) -> Callable[[Any], str]:
    """Return a writer for parts joined by `signs`."""

    def write(node: Any) -> str:
        return body(node.first) + "".join([signs[op] + body(part) for op, part in node.rest])

    return write


def row_of(mark: str) -> Callable[[Any], str]:
    """Return a writer for parts with a mark between them."""
    return lambda node: mark.join([body(part) for part in node.parts])
