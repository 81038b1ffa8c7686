"""The second road to answers that are judged: sympy answers the question, and holds them to it.

Importing this module imports sympy.
"""

from __future__ import annotations

from itembank.items.asks import Answered, FaultyWorking, OfFigure, WhoIsRight
from itembank.items.asks.round_reading import figure_asked
from itembank.notation import tree as t
from itembank.proof.claim.finding import Finding
from itembank.proof.claim.judged import find_faulty_working, find_judged, find_who
from itembank.proof.measured.measure import disagreement
from itembank.proof.sympy.sympy_cards import same
from itembank.proof.sympy.sympy_road import ROAD


def judged(ask: Answered, key: t.Node) -> Finding:
    """Return whether the answer is right, and whether the key says so.

    Raises:
        NotExact: sympy cannot settle the question, or the answer is not one thing.
    """
    of = figure_asked(ask.of)
    if of is not None and (parting := disagreement(of.figure)):
        return Finding("", parting)  # a drawing that lies makes no answer wrong
    return find_judged(ask, key, ROAD)


def who(ask: WhoIsRight, key: t.Node) -> Finding:
    """Return who gives the right answer, and whether the key says so.

    Raises:
        NotExact: nobody does, or more than one, and as for one answer.
    """
    return find_who(ask, key, ROAD)


def faulty_working(ask: FaultyWorking, key: t.Node) -> Finding:
    """Return the line that is wrong, and whether the key names it and the right answer.

    Raises:
        NotExact: no line is wrong or more than one, and as for one answer.
    """
    if isinstance(ask.of, OfFigure) and (parting := disagreement(ask.of.figure)):
        return Finding("", parting)
    return find_faulty_working(ask, key, ROAD, same)
