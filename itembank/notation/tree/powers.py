"""Powers and roots."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from itembank.data_class import dataclass
from itembank.notation.tree.brackets import ungrouped
from itembank.notation.tree.face import Faces, Part, Parts, Rank, Syntax, register_node
from itembank.notation.tree.fractions import Mixed
from itembank.notation.tree.line_signs import ROOT_WORD
from itembank.notation.tree.marked_up import body, element
from itembank.notation.tree.numbers import Int
from itembank.notation.tree.parsed import RefusedError, start_of
from itembank.notation.tree.spoken import ends_if_followed, said
from itembank.notation.tree.written import grouped, is_simple, refuse, shown_line, text_of

if TYPE_CHECKING:
    from itembank.notation.tree import Node


@dataclass(frozen=True, slots=True)
class Root:
    """A root sign of index 2, 3 or 4."""

    of: Node
    index: int = 2


_ROOT_SIGNS = {2: "√", 3: "∛", 4: "∜"}
_ROOT_NAMES = {2: "square", 3: "cube", 4: "fourth"}


def _root_line(node: Root) -> str:
    if node.index not in _ROOT_SIGNS:
        refuse(f"A root has index 2, 3 or 4, not {node.index}.")
    return _ROOT_SIGNS[node.index] + grouped(node.of, "the number under a root")


def _root_words(node: Root) -> str:
    kind = _ROOT_NAMES[node.index]
    if is_simple(node.of):
        return f"the {kind} root of {said(node.of)}"
    return f"the {kind} root of {said(node.of)}, end of root"


def _root_mathml(node: Root) -> str:
    if node.index == 2:
        return f"<msqrt>{body(node.of)}</msqrt>"
    return f"<mroot>{element(node.of)}<mn>{node.index}</mn></mroot>"


def _read_root(parts: list[Any]) -> Part:
    index = {"∛": 3, "∜": 4}.get(parts[0], 2)
    return Part(Root(ungrouped(parts[1]), index), start_of(parts))


register_node(
    Root,
    Faces(
        rank=Rank.FACTOR,
        parts=Parts(lambda node: (node.of,), lambda node, below: Root(below[0], node.index)),
        operation=True,
        line=_root_line,
        words=_root_words,
        ends=("root",),
        mathml=_root_mathml,
        syntax=Syntax(
            rules=(("base", "ROOT (simple | group) -> root"),),
            signs={"ROOT.6": f"/[√∛∜]|{ROOT_WORD}/"},
            joins="√∛∜",
            build={"root": _read_root},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Power:
    """A base raised to an exponent; the base is a number, letter, box or bracket."""

    base: Node
    exponent: Node


def _power_line(node: Power) -> str:
    below = text_of(node.base, Rank.BASE, "the base of a power")
    return f"{below}^{grouped(node.exponent, 'an exponent')}"


def _power_words(node: Power) -> str:
    base = said(node.base)
    if node.exponent == Int(2):
        return f"{base} squared"
    if node.exponent == Int(3):
        return f"{base} cubed"
    exponent = said(node.exponent)
    if is_simple(node.exponent):
        return f"{base} to the power {exponent}{ends_if_followed('power')}"
    return f"{base} to the power {exponent}, end of power"


def _read_power(parts: list[Any]) -> Part:
    base, exponents = parts[0], parts[2::2]
    # 2^3^2 is 64 or 512 as one begins below or above.
    if len(exponents) > 1:
        message = "A power of a power can be read in two ways: put one of them in brackets."
        raise RefusedError(message, parts[3].start_pos)
    # √2^3 may be the root of 2^3 or the cube of the root.
    if type(base.node) in (Root, Mixed):
        shown = shown_line(base.node)
        message = f"Put {shown} in brackets before raising it: write ({shown})^…"
        raise RefusedError(message, parts[1].start_pos)
    return Part(Power(base.node, ungrouped(exponents[0])), base.start)


register_node(
    Power,
    Faces(
        rank=Rank.FACTOR,
        parts=Parts(lambda node: (node.base, node.exponent), lambda node, below: Power(*below)),
        operation=True,
        line=_power_line,
        words=_power_words,
        ends=("power",),
        mathml=lambda node: f"<msup>{element(node.base)}{element(node.exponent)}</msup>",
        syntax=Syntax(
            rules=(("factor", "base (CARET exponent)+ -> power"),),
            signs={"CARET": '"^"'},
            joins="^",
            build={"power": _read_power},
        ),
    ),
)
