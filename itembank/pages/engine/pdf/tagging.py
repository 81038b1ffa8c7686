"""The structure tree of a tagged PDF (ISO 32000-1, 14.7 and 14.8), built while drawing.

An element knows its kind, its parent, and its children in reading order: other elements, or
stretches of marked content on a page.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from itembank.pages.engine.pdf.compact_file import CompactDocument

Box = tuple[float, float, float, float]


class Element:
    """One node of the structure tree; `attributes` are ready PDF syntax.

    `actual` is the text that stands for its marks when a page is searched or copied. It goes
    with the marks, not into the tree, so that a screen reader speaks `alt`. `file` is the
    reference to a file that holds the same for other programs. `number` is that of its object,
    once the tree is added to a file.
    """

    __slots__ = (
        *("actual", "alt", "attributes", "box", "children", "file", "kind", "number", "page"),
        "parent",
    )

    def __init__(self, kind: str, parent: Element | None, alt: str = "", attributes: str = ""):
        self.kind = kind
        self.parent = parent
        self.alt = alt
        self.actual = ""
        self.file: str | None = None
        self.number = 0
        self.attributes = attributes
        self.box: Box | None = None
        self.page: int | None = None
        self.children: list[Element | tuple[int, int]] = []
        if parent is not None:
            parent.children.append(self)


_HALF = re.compile("[\ud800-\udfff]")


@lru_cache(maxsize=4096)
def text_string(text: str) -> str:
    """Return `text` as a PDF text string: UTF-16 with its byte-order mark, in hexadecimal.

    Half a surrogate pair is no text and would end the string for a reader; it becomes a space.

    >>> text_string("½")
    '<FEFF00BD>'
    """
    text = _HALF.sub(" ", text)
    return "<FEFF" + text.encode("utf-16-be").hex().upper() + ">"


def add_tree(
    document: CompactDocument, root: Element, page_names: list[str], parents: list[list[Element]]
) -> str:
    """Add the structure tree to a PDF document and return the reference to its root.

    `page_names` are ReportLab's internal names of the pages; `parents` holds, per page, the
    element that owns each marked-content number.
    """
    order: list[Element] = []

    def number(element: Element) -> None:
        order.append(element)
        for child in element.children:
            if isinstance(child, Element):
                number(child)

    number(root)
    # The root of the tree comes first, then the elements in their order.
    tree = document.next_number
    for place, element in enumerate(order, start=tree + 1):
        element.number = place
    rows = []
    for page, owners in enumerate(parents):
        kids = " ".join(f"{owner.number} 0 R" for owner in owners)
        # By a page's /StructParents: the owner of each of its marked stretches, in order.
        rows.append(f"{page} [{kids}]")
    document.add(
        f"<</Type /StructTreeRoot /K [{root.number} 0 R]"
        f" /ParentTree <</Nums [{' '.join(rows)}]>> /ParentTreeNextKey {len(parents)}>>"
    )
    pages = [document.idToObjectNumberAndVersion[name][0] for name in page_names]
    for element in order:
        document.add(_syntax(element, tree, pages))
    return f"{tree} 0 R"


def _syntax(element: Element, tree: int, pages: list[int]) -> str:
    """Return an element's syntax, from the numbers of the tree's root and of each page."""
    own = element.page
    kids = []
    for child in element.children:
        if isinstance(child, Element):
            kids.append(f"{child.number} 0 R")
        elif child[0] == own:
            # A number alone is a stretch on the element's own page.
            kids.append(str(child[1]))
        else:
            kids.append(f"<</Type /MCR /Pg {pages[child[0]]} 0 R /MCID {child[1]}>>")
    parent = tree if element.parent is None else element.parent.number
    syntax = f"<</Type /StructElem /S /{element.kind} /P {parent} 0 R"
    if own is not None:
        syntax += f" /Pg {pages[own]} 0 R"
    if kids:
        syntax += f" /K [{' '.join(kids)}]"
    if element.alt:
        syntax += f" /Alt {text_string(element.alt)}"
    if element.file is not None:
        syntax += f" /AF [{element.file}]"
    attributes = element.attributes
    # A picture and a formula say where they are; they have no other attributes.
    if element.box:
        box = " ".join(f"{value:.2f}" for value in element.box)
        attributes = f"<</O /Layout /Placement /Inline /BBox [{box}]>>"
    if attributes:
        syntax += f" /A {attributes}"
    return syntax + ">>"
