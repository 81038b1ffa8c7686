"""Who or what is to be forgotten."""

from __future__ import annotations

import datetime
import re

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.text.folding import same_name
from itembank.text.in_words import day_month_year

CUT = "[forgotten]"
"""What stands in a note in place of a seat that is forgotten."""


@dataclass(frozen=True, slots=True)
class Whom:
    """What is to be forgotten; a seat is of a class, and all that is stated must hold.

    Raises:
        ItembankError: nothing is stated, or a seat without its class.
    """

    class_name: str = ""
    seat: str = ""
    before: datetime.date | None = None
    since: datetime.date | None = None
    """The first day of a pupil's time in a seat that was somebody else's before."""

    def __post_init__(self) -> None:
        if not self.class_name and self.before is None:
            raise ItembankError(
                "Say what to forget: a pupil's seat, a class, or the lessons before a day.",
                matter="whom to forget",
            )
        if self.seat and not self.class_name:
            raise ItembankError(
                "A seat is one of a class. Name the class too, as in 8K/A3.", field="seat"
            )

    def __str__(self) -> str:
        """Return what is forgotten in words."""
        what = f"seat {self.seat} of {self.class_name}" if self.seat else self.class_name
        what = what or "every class"
        what = f"{what}, from {day_month_year(self.since)}" if self.since else what
        return f"{what}, before {day_month_year(self.before)}" if self.before else what

    def of_lesson(self, class_name: str, date: datetime.date) -> bool:
        """Tell whether a lesson is one of those that are meant."""
        if self.class_name and not same_name(class_name, self.class_name):
            return False
        if self.since is not None and date < self.since:
            return False
        return self.before is None or date < self.before

    def of_seat(self, seat: str) -> bool:
        """Tell whether a seat code is the one that is meant."""
        return same_name(seat, self.seat)

    @property
    def is_word(self) -> bool:
        """Tell whether the seat code is told from the numbers in a sentence."""
        return not self.seat.isdigit()

    def said_in(self, text: str) -> bool:
        """Tell whether a note speaks of the seat.

        >>> whom = Whom("8K", "A3")
        >>> [whom.said_in(note) for note in ("a3 asked first", "A31 asked", "3 asked")]
        [True, False, False]
        """
        return bool(self.seat) and bool(self._word().search(text))

    def cut_from(self, text: str) -> str:
        """Return a note without the seat.

        >>> Whom("8K", "A3").cut_from("A3 and B1 asked what ‘share’ means")
        '[forgotten] and B1 asked what ‘share’ means'
        """
        return self._word().sub(CUT, text)

    def _word(self) -> re.Pattern[str]:
        return re.compile(rf"(?<![\w-]){re.escape(self.seat)}(?![\w-])", re.IGNORECASE)
