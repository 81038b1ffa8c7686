"""The kinds of question, one file a kind; :mod:`.kind` says what a kind is.

A kind stands in the table when its file is imported: name a new one here.
"""

from __future__ import annotations

from itembank.items.asks.answer_given import Answered
from itembank.items.asks.ask_kind import (
    KINDS,
    Ask,
    Handlers,
    Kind,
    Stored,
    asked,
    kind_of,
    register_kind,
)
from itembank.items.asks.choose import Choose
from itembank.items.asks.common import Common
from itembank.items.asks.comparing import Compare
from itembank.items.asks.draw_on import Draw
from itembank.items.asks.equivalent import Equivalent
from itembank.items.asks.error_interval import ErrorInterval
from itembank.items.asks.faulty_line import FaultyLine
from itembank.items.asks.faulty_working import FaultyWorking
from itembank.items.asks.find_value import Find
from itembank.items.asks.give import Condition, Give
from itembank.items.asks.inequality import Inequality
from itembank.items.asks.matching import Match
from itembank.items.asks.members import Members
from itembank.items.asks.odd_one_out import OddOneOut
from itembank.items.asks.of_figure import OfFigure
from itembank.items.asks.of_subject import Subject
from itembank.items.asks.ordering import Order
from itembank.items.asks.pick import Pick, Which
from itembank.items.asks.rewrite import Rewrite
from itembank.items.asks.round import Round
from itembank.items.asks.round_reading import RoundReading
from itembank.items.asks.sequence import Sequence
from itembank.items.asks.solve import Solve
from itembank.items.asks.summary import Summary
from itembank.items.asks.true_or_false import TrueOrFalse
from itembank.items.asks.two_numbers import TwoNumbers
from itembank.items.asks.who_is_right import WhoIsRight

__all__ = [
    "KINDS",
    "Answered",
    "Ask",
    "Choose",
    "Common",
    "Compare",
    "Condition",
    "Draw",
    "Equivalent",
    "ErrorInterval",
    "FaultyLine",
    "FaultyWorking",
    "Find",
    "Give",
    "Handlers",
    "Inequality",
    "Kind",
    "Match",
    "Members",
    "OddOneOut",
    "OfFigure",
    "Order",
    "Pick",
    "Rewrite",
    "Round",
    "RoundReading",
    "Sequence",
    "Solve",
    "Stored",
    "Subject",
    "Summary",
    "TrueOrFalse",
    "TwoNumbers",
    "Which",
    "WhoIsRight",
    "asked",
    "kind_of",
    "register_kind",
]
