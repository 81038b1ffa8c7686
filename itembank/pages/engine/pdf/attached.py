"""The MathML of a formula, inside the file: what a reader that speaks mathematics reads.

A structure element names it as an associated file (ISO 32000-2, 14.13); a reader that knows no
such thing speaks the element's alternative text. File specifications carry both of their names
(ISO 14289-1, 7.11).
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from itembank.pages.engine.pdf.pdf_objects import stream_syntax

if TYPE_CHECKING:
    from itembank.pages.engine.pdf.compact_file import CompactDocument

_TYPE = "/Type /EmbeddedFile /Subtype /application#2Fmathml+xml"
_NAMESPACE = ' xmlns="http://www.w3.org/1998/Math/MathML"'


def _named(mathml: str) -> str:
    """Return MathML that says what it is, as a file of its own must.

    >>> _named("<math><mn>2</mn></math>")
    '<math xmlns="http://www.w3.org/1998/Math/MathML"><mn>2</mn></math>'
    """
    head, end, rest = mathml.partition(">")
    return mathml if "xmlns=" in head else f"{head}{_NAMESPACE}{end}{rest}"


@lru_cache(maxsize=1024)
def _file(mathml: str) -> bytes:
    """Return a formula's MathML as a file: one formula stands in several documents."""
    content = _named(mathml).encode("utf-8")
    return stream_syntax(f"{_TYPE} /Params <</Size {len(content)}>>", content)


def attach(document: CompactDocument, mathml: str, number: int) -> str:
    """Add a formula's MathML to a document; return the reference to its file."""
    at = f"{document.add(_file(mathml))} 0 R"
    name = f"(formula-{number}.mml)"
    specified = document.add(
        f"<</Type /Filespec /F {name} /UF {name} /AFRelationship /Supplement"
        f" /Desc (MathML) /EF <</F {at} /UF {at}>>>>"
    )
    return f"{specified} 0 R"
