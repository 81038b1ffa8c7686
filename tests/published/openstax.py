"""Where the exercises of OpenStax in these tests stand: book and section of each.

Facts only, questions and answers, from *Prealgebra 2e* and *Elementary Algebra 2e* (OpenStax,
2020, Creative Commons Attribution). The titles of the sections, with every question and its
answer, are from a list made from the books, and every answer was recomputed; the list does not
say which exercise of its section a row is, so none is named. The book and the number of a
section are from memory.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest


@dataclass(frozen=True, slots=True)
class Section:
    """A section by its title, with its places: book and number, from memory."""

    title: str
    places: tuple[str, ...]

    def __str__(self) -> str:
        return f"OpenStax {' or '.join(self.places)}, {self.title}"


_PREALGEBRA = {
    "4.1": "Visualize Fractions",
    "4.2": "Multiply and Divide Fractions",
    "4.3": "Multiply and Divide Mixed Numbers and Complex Fractions",
    "4.4": "Add and Subtract Fractions with Common Denominators",
    "4.5": "Add and Subtract Fractions with Different Denominators",
    "4.6": "Add and Subtract Mixed Numbers",
    "4.7": "Solve Equations with Fractions",
    "5.3": "Decimals and Fractions",
    "6.5": "Solve Proportions and their Applications",
    "8.1": "Solve Equations Using the Subtraction and Addition Properties of Equality",
    "8.2": "Solve Equations using the Division and Multiplication Properties of Equality",
    "8.3": "Solve Equations with Variables and Constants on Both Sides",
    "10.3": "Multiply Polynomials",
}
_ELEMENTARY = {
    "2.1": "Solve Equations Using the Subtraction and Addition Properties of Equality",
    "2.2": "Solve Equations using the Division and Multiplication Properties of Equality",
    "2.3": "Solve Equations with Variables and Constants on Both Sides",
    "2.4": "Use a General Strategy to Solve Linear Equations",
    "2.5": "Solve Equations with Fractions or Decimals",
    "6.3": "Multiply Polynomials",
}


def section(title: str) -> Section:
    """Return the section of that title; a title that is in neither book is a fault."""
    places = [
        f"{book} {number}"
        for book, numbers in (
            ("Prealgebra 2e", _PREALGEBRA),
            ("Elementary Algebra 2e", _ELEMENTARY),
        )
        for number, found in numbers.items()
        if found == title
    ]
    if not places:
        raise KeyError(title)
    return Section(title, tuple(places))


def rows(table: dict[str, tuple[tuple[str, str], ...]]) -> list[object]:
    """Return question and answer of every row, each under the name of its section."""
    return [
        pytest.param(question, answer, id=f"{section(title)}: {question}")
        for title, pairs in table.items()
        for question, answer in pairs
    ]
