"""What stands for something else: a letter, an empty box, and a name used as an answer."""

from __future__ import annotations

from html import escape
from typing import Any

from itembank.data_class import dataclass
from itembank.notation.tree.face import Faces, Part, Rank, Syntax, register_node
from itembank.notation.tree.line_signs import LETTERS, OF, OR
from itembank.notation.tree.parsed import start_of
from itembank.notation.tree.written import refuse
from itembank.text.late_pattern import late

_LETTER = late(f"[{LETTERS}]")
_GREEK_NAMES = """alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi
    omicron pi rho sigma tau upsilon phi chi psi omega"""
_GREEK = dict(zip("αβγδεζηθικλμνξοπρστυφχψω", _GREEK_NAMES.split(), strict=True))
_GREEK["ς"] = "final sigma"


@dataclass(frozen=True, slots=True)
class Sym:
    """A letter standing for a number: one Latin or Greek letter, set in italics."""

    name: str


def _sym_line(node: Sym) -> str:
    name = node.name
    if not (len(name) == 1 and _LETTER.fullmatch(name)):
        refuse(f"An unknown is one Latin or Greek letter, not {name!r}.")
    return name


def _sym_words(node: Sym) -> str:
    name = node.name
    if name.lower() in _GREEK:
        return ("capital " if name.isupper() else "") + _GREEK[name.lower()]
    return f"capital {name}" if name.isupper() else name


register_node(
    Sym,
    Faces(
        rank=Rank.SIMPLE,
        line=_sym_line,
        words=_sym_words,
        mathml=lambda node: f"<mi>{escape(node.name)}</mi>",
        letter=lambda node: str(node.name),
        syntax=Syntax(
            rules=(("simple", "LETTER -> sym"),),
            signs={"LETTER": f"/(?!{OF}|{OR})[{LETTERS}]/"},
            build={"sym": lambda parts: Part(Sym(str(parts[0])), start_of(parts))},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Blank:
    """An empty box to be filled in."""


# The face's box at ordinary size is only as big as a digit: too small to write in.
_BOX = '<mtext mathsize="1.25em">□</mtext>'

register_node(
    Blank,
    Faces(
        rank=Rank.SIMPLE,
        line=lambda node: "□",
        words=lambda node: "a blank box",
        mathml=lambda node: _BOX,
        letter=lambda node: "□",
        syntax=Syntax(
            rules=(("simple", "BLANK -> blank"),),
            signs={"BLANK": "/□/"},
            joins="□",
            build={"blank": lambda parts: Part(Blank(), start_of(parts))},
        ),
    ),
)


@dataclass(frozen=True, slots=True)
class Label:
    """A name used as an answer, such as *Pack B*; it has no numerical value."""

    text: str


def _label_line(node: Label) -> str:
    text = node.text
    if not text.strip() or '"' in text or not text.isprintable():
        refuse(f"A name needs printable characters without quotation marks: {text!r}.")
    return f'"{text}"'


_SET_SIGNS = str.maketrans({"∩": "intersection", "∪": "union", "′": " dash"})


def _label_words(node: Label) -> str:
    """Return a name as it is said; sets in symbols as they are in classrooms.

    >>> _label_words(Label("Pack B")), _label_words(Label("A ∩ B′"))
    ('Pack B', 'A intersection B dash')
    """
    return node.text.translate(_SET_SIGNS)


def _read_label(parts: list[Any]) -> Part:
    return Part(Label(parts[0][1:-1]), start_of(parts))


register_node(
    Label,
    Faces(
        rank=Rank.SIDE,
        line=_label_line,
        words=_label_words,
        mathml=lambda node: f"<mtext>{escape(node.text)}</mtext>",
        syntax=Syntax(
            rules=(("side", "LABEL -> label"),),
            signs={"LABEL": '/"[^"]*"/'},
            build={"label": _read_label},
        ),
    ),
)
