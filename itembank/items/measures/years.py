"""The year that content suits, by England's national curriculum.

The programmes of study set content out by key stage and leave the order inside a key stage to
the school: they are to be taught *by the end* of it. So content of key stage 3 suits any class
from year 7 on, and content that only the programme for key stage 4 names suits one from year 10.

Sources: Department for Education, *Mathematics programmes of study: key stage 3* (2013,
DFE-00179-2013) and *Mathematics programmes of study: key stage 4* (2014, DFE-00496-2014). The
statements are given in short and from memory; they are named so that they can be looked up.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeAlias

from itembank.data_class import dataclass
from itembank.items.tier import Tier

FIRST_YEAR_KS3 = 7
FIRST_YEAR_KS4 = 10
KS3 = "Mathematics programmes of study: key stage 3"
KS4 = "Mathematics programmes of study: key stage 4"


@dataclass(frozen=True, slots=True)
class Content:
    """A piece of the curriculum: what it is called, from which year, and what says so.

    `statement` is what the programme of study `document` says, in short.
    """

    name: str
    from_year: int
    statement: str
    document: str

    def __str__(self) -> str:
        return self.name


@dataclass(frozen=True, slots=True)
class Part:
    """The part of a tier that is some content: the items whose parameters `holds` is true of.

    Without `holds` the whole tier is.
    """

    content: Content
    holds: Callable[..., bool] | None = None


Parts: TypeAlias = Mapping[Tier, tuple[Part, ...]]


def content_at(parts: Parts, tier: Tier, values: tuple[Any, ...]) -> Content | None:
    """Return the content of latest year that one point of a tier is, or None where none is told.

    >>> parts = {Tier.CORE: (Part(SURDS, lambda n: n == 2),)}
    >>> str(content_at(parts, Tier.CORE, (2,))), content_at(parts, Tier.CORE, (4,))
    ('surds', None)
    """
    contents = (
        part.content for part in parts.get(tier, ()) if part.holds is None or part.holds(*values)
    )
    return max(contents, key=lambda content: content.from_year, default=None)


RECURRING_DECIMALS = Content(
    "recurring decimals and their fractions",
    FIRST_YEAR_KS4,
    "Number: change recurring decimals into their corresponding fractions and vice versa. "
    "(Key stage 3 asks for terminating decimals.)",
    KS4,
)
SURDS = Content(
    "surds",
    FIRST_YEAR_KS4,
    "Number: calculate exactly with surds; simplify surd expressions; rationalise denominators.",
    KS4,
)
STANDARD_FORM_SUMS = Content(
    "calculating in standard form",
    FIRST_YEAR_KS4,
    "Number: calculate with numbers in standard form. (Key stage 3: interpret and compare them.)",
    KS4,
)
INEQUALITIES = Content(
    "solving inequalities",
    FIRST_YEAR_KS4,
    "Algebra: solve linear inequalities in one or two variables. (Key stage 3: understand and "
    "use the concepts and vocabulary of inequalities.)",
    KS4,
)
QUADRATIC_EQUATIONS = Content(
    "quadratic equations",
    FIRST_YEAR_KS4,
    "Algebra: solve quadratic equations algebraically by factorising, by completing the square "
    "and by the formula.",
    KS4,
)
SIMULTANEOUS_EQUATIONS = Content(
    "simultaneous equations",
    FIRST_YEAR_KS4,
    "Algebra: solve two simultaneous equations in two variables algebraically. (Key stage 3: "
    "approximately, from graphs.)",
    KS4,
)
FACTORISING_QUADRATICS = Content(
    "factorising quadratics",
    FIRST_YEAR_KS4,
    "Algebra: factorise quadratic expressions, the difference of two squares among them. (Key "
    "stage 3: take out common factors.)",
    KS4,
)
QUADRATIC_SEQUENCES = Content(
    "nth terms of quadratic sequences",
    FIRST_YEAR_KS4,
    "Algebra: deduce expressions for the nth term of linear and quadratic sequences. (Key stage "
    "3: of arithmetic sequences.)",
    KS4,
)
COMPOUND_INTEREST = Content(
    "compound interest",
    FIRST_YEAR_KS4,
    "Ratio: growth and decay problems, including compound interest. (Key stage 3: simple "
    "interest.)",
    KS4,
)
COMPOUND_UNITS = Content(
    "converting compound units",
    FIRST_YEAR_KS4,
    "Ratio: convert between related compound units. (Key stage 3: change between related "
    "standard units, and use compound units.)",
    KS4,
)
