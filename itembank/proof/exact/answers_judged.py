"""The first road to answers that are judged: it answers the question, and holds them to that."""

from __future__ import annotations

from itembank.items.asks import Answered, FaultyWorking, WhoIsRight
from itembank.notation import tree as t
from itembank.proof.claim.finding import Finding
from itembank.proof.claim.judged import find_faulty_working, find_judged, find_who
from itembank.proof.exact.cards import worth_the_same
from itembank.proof.exact.exact_road import ROAD


def judge_answer(ask: Answered, key: t.Node) -> Finding:
    """Return whether the answer is right, and whether the key says so.

    Raises:
        NotExact: the question is not settled, or the answer is not one thing.
    """
    return find_judged(ask, key, ROAD)


def judge_answers(ask: WhoIsRight, key: t.Node) -> Finding:
    """Return who gives the right answer, and whether the key says so.

    Raises:
        NotExact: nobody does, or more than one, and as for one answer.
    """
    return find_who(ask, key, ROAD)


def judge_working(ask: FaultyWorking, key: t.Node) -> Finding:
    """Return the line that is wrong, and whether the key names it and the right answer.

    Raises:
        NotExact: no line is wrong or more than one, and as for one answer.
    """
    return find_faulty_working(ask, key, ROAD, worth_the_same)
