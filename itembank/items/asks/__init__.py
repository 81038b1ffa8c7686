"""The kinds of question, one file a kind; :mod:`.ask_kind` says what a kind is.

A kind is registered when its file is imported: name a new one here.
"""

from __future__ import annotations

from itembank.items.asks.answer_given import Answered as Answered
from itembank.items.asks.ask_kind import KINDS as KINDS
from itembank.items.asks.ask_kind import Ask as Ask
from itembank.items.asks.ask_kind import Kind as Kind
from itembank.items.asks.ask_kind import Stored as Stored
from itembank.items.asks.ask_kind import asked as asked
from itembank.items.asks.ask_kind import kind_of as kind_of
from itembank.items.asks.ask_kind import register_kind as register_kind
from itembank.items.asks.choose import Choose as Choose
from itembank.items.asks.common import Common as Common
from itembank.items.asks.comparing import Compare as Compare
from itembank.items.asks.draw_on import Draw as Draw
from itembank.items.asks.equivalent import Equivalent as Equivalent
from itembank.items.asks.error_interval import ErrorInterval as ErrorInterval
from itembank.items.asks.faulty_line import FaultyLine as FaultyLine
from itembank.items.asks.faulty_working import FaultyWorking as FaultyWorking
from itembank.items.asks.find_value import Find as Find
from itembank.items.asks.give import Condition as Condition
from itembank.items.asks.give import Give as Give
from itembank.items.asks.handlers import Handlers as Handlers
from itembank.items.asks.inequality import Inequality as Inequality
from itembank.items.asks.layers import Layers as Layers
from itembank.items.asks.matching import Match as Match
from itembank.items.asks.members import Members as Members
from itembank.items.asks.odd_one_out import OddOneOut as OddOneOut
from itembank.items.asks.of_figure import OfFigure as OfFigure
from itembank.items.asks.of_subject import Subject as Subject
from itembank.items.asks.ordering import Order as Order
from itembank.items.asks.pick import Pick as Pick
from itembank.items.asks.pick import Which as Which
from itembank.items.asks.rewrite import Rewrite as Rewrite
from itembank.items.asks.round import Round as Round
from itembank.items.asks.round_reading import RoundReading as RoundReading
from itembank.items.asks.sequence import Sequence as Sequence
from itembank.items.asks.solve import Solve as Solve
from itembank.items.asks.summary import Summary as Summary
from itembank.items.asks.true_or_false import TrueOrFalse as TrueOrFalse
from itembank.items.asks.two_numbers import TwoNumbers as TwoNumbers
from itembank.items.asks.who_is_right import WhoIsRight as WhoIsRight
