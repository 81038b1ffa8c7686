"""England's programme of study for key stage 3, statement by statement, under labels of our own.

A topic names in ``statements`` what it serves, so that a department sees what its scheme covers,
and what the tool does not. The wording is ours and short. Source: Department for Education,
*Mathematics programmes of study: key stage 3*, DFE-00179-2013, whose statements are given here
from memory.
"""

from __future__ import annotations

import difflib
from typing import NamedTuple

from itembank.errors import ItembankError


class Statement(NamedTuple):
    """One statement of the programme: a label, what pupils are taught, and why it may be left out.

    >>> statement("number.rounding").text
    'round numbers and measures to decimal places or significant figures'
    """

    id: str
    text: str
    left_out: str = ""
    """Why no topic serves it, where that is on purpose."""

    @property
    def domain(self) -> str:
        """Return the domain of the programme: the part of the label before the dot."""
        return self.id.partition(".")[0]


class UnknownStatement(ItembankError):
    """The programme has no statement of this label."""


_PERSON = "is done by hand and looked at by a person"
_TALK = "is talked about, not answered in a line"

STATEMENTS: tuple[Statement, ...] = (
    Statement("number.place-value", "use place value for decimals and whole numbers of any size"),
    Statement("number.ordering", "order negative numbers, decimals and fractions; use = ≠ < > ≤ ≥"),
    Statement("number.primes", "primes, factors, multiples, HCF, LCM, prime factorisation"),
    Statement(
        "number.operations",
        "the four operations with integers, decimals, fractions and mixed numbers of either sign",
    ),
    Statement("number.priority", "the order of operations, with brackets, powers and roots"),
    Statement("number.inverses", "how operations undo one another"),
    Statement("number.powers-roots", "powers and roots, exact and to so many decimal places"),
    Statement("number.standard-form", "numbers in standard form"),
    Statement("number.decimals-fractions", "decimals that end, and their fractions"),
    Statement(
        "number.percentages",
        "parts of a hundred, over 100 % too; one quantity as a percentage of another",
    ),
    Statement("number.operators", "fractions and percentages as operators"),
    Statement("number.units", "units of mass, length, time, money and other measures"),
    Statement(
        "number.rounding", "round numbers and measures to decimal places or significant figures"
    ),
    Statement("number.estimation", "estimate by rounding; write errors as a < x ≤ b"),
    Statement("number.calculator", "use a calculator, and interpret what it shows", _PERSON),
    Statement("number.infinite-sets", "the integers and the real numbers never end", _TALK),
    Statement("algebra.notation", "read and write algebraic notation"),
    Statement("algebra.substitution", "put numbers into formulae and expressions"),
    Statement("algebra.vocabulary", "say expression, equation, inequality, term, factor", _TALK),
    Statement(
        "algebra.manipulation",
        "collect like terms, multiply out brackets, take out common factors",
    ),
    Statement("algebra.formulae", "use formulae, and change their subject"),
    Statement("algebra.modelling", "put situations into expressions, formulae and graphs"),
    Statement("algebra.linear-equations", "solve linear equations in one variable"),
    Statement("algebra.coordinates", "coordinates in all four quadrants"),
    Statement("algebra.graphs", "graphs of linear and quadratic functions"),
    Statement("algebra.two-views", "read a relation both as algebra and as a graph"),
    Statement("algebra.linear-graphs", "gradient and intercept; equations as y = mx + c"),
    Statement("algebra.graph-solutions", "read values, and solve two equations, from graphs"),
    Statement("algebra.real-life-graphs", "read graphs of real situations"),
    Statement("algebra.sequences", "make terms from a term-to-term or a position rule"),
    Statement("algebra.nth-term", "arithmetic sequences and their nth term"),
    Statement("algebra.other-sequences", "geometric sequences, and others that turn up"),
    Statement("ratio.units", "change between related units"),
    Statement("ratio.scale", "scale factors, scale drawings and maps"),
    Statement("ratio.fraction", "write one quantity as a fraction of another"),
    Statement("ratio.notation", "use ratio notation, and its simplest form"),
    Statement("ratio.division", "divide a quantity in a ratio"),
    Statement("ratio.multiplicative", "see a multiplicative relation as a ratio or a fraction"),
    Statement("ratio.linear", "relate ratios to fractions and to linear functions"),
    Statement(
        "ratio.percentage-change",
        "percentage change, original values, simple interest",
    ),
    Statement("ratio.proportion", "direct and inverse proportion"),
    Statement("ratio.compound-units", "speed, unit prices, density"),
    Statement(
        "geometry.formulae",
        "area of triangles, parallelograms and trapezia; volume of cuboids and prisms",
    ),
    Statement("geometry.perimeter-area", "perimeters, circles, composite shapes"),
    Statement("geometry.drawing", "draw and measure lines and angles", _PERSON),
    Statement("geometry.constructions", "construct with ruler and compasses"),
    Statement("geometry.terms", "name points, lines, angles and shapes, and their symmetries"),
    Statement("geometry.congruence", "the criteria for congruent triangles"),
    Statement("geometry.properties", "properties of triangles, quadrilaterals and circles"),
    Statement("geometry.transformations", "translations, rotations and reflections"),
    Statement("geometry.similarity", "similar shapes, and enlargement"),
    Statement("geometry.angles", "angles at a point, on a line, vertically opposite"),
    Statement("geometry.parallel-lines", "alternate and corresponding angles"),
    Statement("geometry.angle-sums", "angle sums of triangles and polygons; regular polygons"),
    Statement("geometry.reasoning", "derive results from angle facts; simple proofs", _TALK),
    Statement("geometry.right-angled", "Pythagoras’ theorem and trigonometric ratios"),
    Statement("geometry.solids", "faces, edges, surfaces and vertices of solids"),
    Statement("geometry.two-views", "read a relation both as algebra and as a figure"),
    Statement("probability.experiments", "frequencies, fairness, the scale from 0 to 1"),
    Statement("probability.sum", "the probabilities of all outcomes add up to 1"),
    Statement("probability.sets", "sets, unions and intersections, by tables and Venn diagrams"),
    Statement("probability.sample-spaces", "sample spaces of single and combined events"),
    Statement("statistics.averages", "mean, median, mode, range, and what they tell"),
    Statement("statistics.charts", "frequency tables, bar charts, pie charts, pictograms"),
    Statement("statistics.bivariate", "scatter graphs, and how two variables go together"),
)
"""Every statement, in the programme's order. What is left out says why."""

_BY_ID = {entry.id: entry for entry in STATEMENTS}


def statement(label: str) -> Statement:
    """Return the statement of a label.

    Raises
    ------
    UnknownStatement
        If there is none; the nearest label is named.

    >>> statement("ratio.division").domain
    'ratio'
    """
    if label in _BY_ID:
        return _BY_ID[label]
    near = difflib.get_close_matches(label, _BY_ID, 1)
    hint = f" Did you mean {near[0]}?" if near else ""
    raise UnknownStatement(f"There is no statement ‘{label}’ of the programme of study.{hint}")
