"""Mathematics on a web page: the MathML of packs, let through piece by piece, or written out.

A pack's file may come from anywhere, so its MathML is read as XML and only elements and
attributes of MathML Core that our own pages use are written again; nothing else can come through.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Any
from xml.etree import ElementTree

from markupsafe import Markup, escape

from itembank.notation.browser_brackets import closed_up

_ELEMENTS = """
math mrow mi mn mo mtext mspace mfrac msqrt mroot msub msup msubsup munder mover munderover
mtable mtr mtd mstyle mpadded mphantom menclose
"""
_ATTRIBUTES = """
display displaystyle form lspace rspace stretchy fence separator linethickness mathvariant
mathsize minsize maxsize width height depth scriptlevel accent accentunder columnalign largeop
movablelimits symmetric voffset notation
"""
ELEMENTS = frozenset(_ELEMENTS.split())
ATTRIBUTES = frozenset(_ATTRIBUTES.split())
_NAMESPACE = "{http://www.w3.org/1998/Math/MathML}"
_LONGEST = 200_000
_TIED = Markup('<span class="tied">{}</span>')
_BRACKETS = {"(": "prefix", "[": "prefix", ")": "postfix", "]": "postfix"}
_SPACE = re.compile(r"[^\S\u00a0]")
"""Where a line may end: not at a space that holds the name of a card beside it."""
_NAMED_ROW = re.compile(r"(?<=\n)[^\n]{1,12}:\u00a0\Z")
"""The name of a row that a formula goes on: ‘Line 1:’ is read with it."""
_ROW = Markup("<br>")


@lru_cache(maxsize=20_000)
def mathml(text: str, words: str = "") -> Markup:
    """Return MathML as safe markup, with the words a teacher would say as its name.

    What is no MathML is shown as the text it is.

    >>> mathml('<math><mn onclick="x()">1</mn><script>x()</script></math>', "1")
    Markup('<math aria-label="1"><mn>1</mn></math>')
    >>> mathml("1 < 2")
    Markup('1 &lt; 2')
    """
    try:
        # No entity is known to this parser but the five of XML, so none can grow or fetch.
        root = ElementTree.fromstring(closed_up(text)) if len(text) <= _LONGEST else None
    except ElementTree.ParseError:
        root = None
    if root is None or _name(root) != "math":
        return escape(text)
    return Markup("".join(_written(root, words)))


def _name(element: ElementTree.Element) -> str:
    tag = element.tag
    return tag.removeprefix(_NAMESPACE) if isinstance(tag, str) else ""


def _written(element: ElementTree.Element, words: str = "") -> Iterable[str]:
    name = _name(element)
    if name not in ELEMENTS:
        return
    yield f"<{name}"
    if words:
        yield f' aria-label="{escape(words)}"'
    for key, value in element.attrib.items():
        if key in ATTRIBUTES:
            yield f' {key}="{escape(value)}"'
    # In the middle of a row a browser takes a bracket for a sign between two terms.
    side = _BRACKETS.get((element.text or "").strip()) if name == "mo" else None
    if side and "form" not in element.attrib:
        yield f' form="{side}"'
    yield f">{escape(element.text or '')}"
    for child in element:
        yield from _written(child)
        if child.tail and child.tail.strip():
            yield escape(child.tail)
    yield f"</{name}>"


def maths(stored: Mapping[str, Any]) -> Markup:
    """Return one piece of mathematics as a pack stores it: `mathml`, `line` and `words`."""
    return mathml(str(stored.get("mathml", "")), str(stored.get("words", "")))


def prompt(runs: Iterable[Mapping[str, Any]]) -> Markup:
    """Return a prompt as a pack stores it: runs of text and of mathematics.

    A browser may end a line between a formula and the full stop behind it, so a formula is tied
    to what stands against it, such as the name of a card. A row of cards begins on a new line.

    >>> prompt([{"kind": "text", "text": "Is <b> "}, {"kind": "math", "mathml": "<math/>"}])
    Markup('Is &lt;b&gt; <math></math>')
    >>> print(prompt([{"kind": "math", "mathml": "<math/>"}, {"kind": "text", "text": ". Say."}]))
    <span class="tied"><math></math>.</span> Say.
    """
    done, tied = Markup(""), Markup("")
    for run in runs:
        if run.get("kind") == "math":
            tied += maths(run)
            continue
        words = str(run.get("text", ""))
        ends = _SPACE.search(words) if tied else None
        against = words[: ends.start()] if ends else words if tied else ""
        rest = words[len(against) :]
        tied += escape(against)
        if not rest:
            continue
        named = _NAMED_ROW.search(rest)
        begins = max((space.end() for space in _SPACE.finditer(rest)), default=0)
        begins = named.start() if named else begins
        done += _as_one(tied) + _ROW.join(escape(row) for row in rest[:begins].split("\n"))
        tied = escape(rest[begins:])
    return done + _as_one(tied)


def _as_one(tied: Markup) -> Markup:
    """Return a formula and what stands against it so that no line ends between them."""
    formula = tied.startswith("<math") and tied.endswith("</math>") and tied.count("<math") == 1
    return tied if formula or "<math" not in tied else _TIED.format(tied)


def picture(stored: Mapping[str, Any] | None) -> Markup:
    """Return the figure that a pack stores, drawn, with its words for who cannot see it.

    It is drawn from its data, which is read as anyone's; of data that makes no sense the words
    are shown.

    >>> print(picture({"data": {"kind": "nonsense"}, "words": "A <circle>."}))
    <p class="picture">A &lt;circle&gt;.</p>
    >>> picture(None)
    Markup('')
    """
    if not stored:
        return Markup("")
    from itembank.figures.figure import FigureError
    from itembank.figures.figure_data import from_data
    from itembank.figures.svg import svg

    try:
        drawn = svg(from_data(stored.get("data")))
    except FigureError:
        return Markup('<p class="picture">{}</p>').format(stored.get("words", ""))
    return Markup('<div class="picture">{}</div>').format(Markup(drawn))
