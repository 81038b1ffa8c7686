"""The structure tree of a tagged PDF (ISO 32000-1, 14.7 and 14.8), built while drawing.

An element knows its kind, its parent, and its children in reading order: other elements, or
stretches of marked content on a page.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Any

Box = tuple[float, float, float, float]


class Element:
    """One node of the structure tree; `attributes` are ready PDF syntax.

    `actual` is the text that stands for its marks when a page is searched or copied. It goes
    with the marks, not into the tree, so that a screen reader speaks `alt`. `file` is the
    reference to a file that holds the same for other programs.
    """

    __slots__ = ("actual", "alt", "attributes", "box", "children", "file", "kind", "page", "parent")

    def __init__(self, kind: str, parent: Element | None, alt: str = "", attributes: str = ""):
        self.kind = kind
        self.parent = parent
        self.alt = alt
        self.actual = ""
        self.file: Any = None
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
    document: Any, root: Element, page_names: list[str], parents: list[list[Element]]
) -> Any:
    """Add the structure tree to a ReportLab PDF document and return the reference to its root.

    `page_names` are ReportLab's internal names of the pages; `parents` holds, per page, the
    element that owns each marked-content number.
    """
    from itembank.pages.engine.pdf_objects import Raw

    order: list[Element] = []

    def number(element: Element) -> None:
        order.append(element)
        for child in element.children:
            if isinstance(child, Element):
                number(child)

    number(root)
    names = {id(element): f"SE{i}" for i, element in enumerate(order)}
    tree = Raw(lambda doc: tree_syntax(doc))
    reference = document.Reference(tree, "StructTree")
    for element in order:
        document.Reference(Raw(_writer(element, names, page_names)), names[id(element)])

    def tree_syntax(doc: Any) -> str:
        numbers = doc.idToObjectNumberAndVersion
        rows = []
        for page, owners in enumerate(parents):
            kids = " ".join(f"{numbers[names[id(owner)]][0]} 0 R" for owner in owners)
            # By a page's /StructParents: the owner of each of its marked stretches, in order.
            rows.append(f"{page} [{kids}]")
        return (
            f"<</Type /StructTreeRoot /K [{numbers[names[id(root)]][0]} 0 R]"
            f" /ParentTree <</Nums [{' '.join(rows)}]>> /ParentTreeNextKey {len(parents)}>>"
        )

    return reference


def _writer(element: Element, names: dict[int, str], page_names: list[str]) -> Any:
    def write(doc: Any) -> str:
        numbers = doc.idToObjectNumberAndVersion
        own = element.page
        kids = []
        for child in element.children:
            if isinstance(child, Element):
                kids.append(f"{numbers[names[id(child)]][0]} 0 R")
            elif child[0] == own:
                # A number alone is a stretch on the element's own page.
                kids.append(str(child[1]))
            else:
                page = numbers[page_names[child[0]]][0]
                kids.append(f"<</Type /MCR /Pg {page} 0 R /MCID {child[1]}>>")
        parent = "StructTree" if element.parent is None else names[id(element.parent)]
        parts = [f"<</Type /StructElem /S /{element.kind} /P {numbers[parent][0]} 0 R"]
        if own is not None:
            parts.append(f"/Pg {numbers[page_names[own]][0]} 0 R")
        if kids:
            parts.append(f"/K [{' '.join(kids)}]")
        if element.alt:
            parts.append(f"/Alt {text_string(element.alt)}")
        if element.file is not None:
            parts.append(f"/AF [{element.file.format(doc).decode('ascii')}]")
        attributes = element.attributes
        # A picture and a formula say where they are; they have no other attributes.
        if element.box:
            box = " ".join(f"{value:.2f}" for value in element.box)
            attributes = f"<</O /Layout /Placement /Inline /BBox [{box}]>>"
        if attributes:
            parts.append(f"/A {attributes}")
        return " ".join(parts) + ">>"

    return write
