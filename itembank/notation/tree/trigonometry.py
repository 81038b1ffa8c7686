"""Sine, cosine and tangent of an angle in degrees, and the angle of such a ratio."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal

from itembank.data_class import dataclass
from itembank.notation.tree.brackets import ungrouped
from itembank.notation.tree.face import Faces, Part, Parts, Rank, Syntax, register_node
from itembank.notation.tree.line_signs import LETTERS, TRIG_WORD
from itembank.notation.tree.marked_up import body
from itembank.notation.tree.measures import Quantity
from itembank.notation.tree.parsed import start_of
from itembank.notation.tree.spoken import ends_if_followed, said
from itembank.notation.tree.written import is_simple, refuse, text_of, unconfined
from itembank.text.late_pattern import late

if TYPE_CHECKING:
    from itembank.notation.tree import Node

TrigName = Literal["sin", "cos", "tan"]


@dataclass(frozen=True, slots=True)
class Trig:
    """The sine, cosine or tangent of an angle in degrees; with `inverse` the angle itself.

    The angle of a sine or of a tangent lies from −90° to 90°, that of a cosine from 0° to 180°.
    """

    name: TrigName
    of: Node
    inverse: bool = False


_LETTER = late(f"[{LETTERS}]")
_SAID = {"sin": "sine", "cos": "cosine", "tan": "tangent"}


def _trig_line(node: Trig) -> str:
    if node.name not in _SAID:
        refuse(f"There is no function {node.name} here.")
    inside = text_of(unconfined(node.of), Rank.EXPRESSION, "what a sine is taken of")
    if _LETTER.search(inside):
        refuse(f"A {_SAID[node.name]} is taken of a number: {inside} has a letter or a unit in it.")
    return f"{node.name}{'^-1' if node.inverse else ''}({inside})"


def _trig_words(node: Trig) -> str:
    name = _SAID[node.name]
    kind = f"the {'inverse ' if node.inverse else ''}{name} of {said(node.of)}"
    if is_simple(node.of):
        return kind
    # The sine of 35 degrees ends by itself where nothing comes after it.
    if isinstance(node.of, Quantity) and is_simple(node.of.amount):
        return f"{kind}{ends_if_followed(name)}"
    return f"{kind}, end of {name}"


def _trig_mathml(node: Trig) -> str:
    name = f"<mi>{node.name}</mi>"
    if node.inverse:
        raised = '<mrow><mo form="prefix">−</mo><mn>1</mn></mrow>'
        name = f"<msup>{name}{raised}</msup>"
    return f"<mrow>{name}<mo>(</mo>{body(node.of)}<mo>)</mo></mrow>"


def _read_trig(parts: list[Any]) -> Part:
    word = str(parts[0])
    name: Any = word[:3]
    return Part(Trig(name, ungrouped(parts[1]), len(word) > 3), start_of(parts))


register_node(
    Trig,
    Faces(
        rank=Rank.UNSIGNED,
        parts=Parts(
            lambda node: (node.of,), lambda node, below: Trig(node.name, below[0], node.inverse)
        ),
        operation=True,
        line=_trig_line,
        words=_trig_words,
        ends=("sine", "cosine", "tangent"),
        mathml=_trig_mathml,
        syntax=Syntax(
            rules=(("measure", "TRIG group -> trig"),),
            signs={"TRIG.7": f"/{TRIG_WORD}/"},
            build={"trig": _read_trig},
        ),
    ),
)
