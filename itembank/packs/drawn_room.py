"""How full slides and slips are, told of questions before they are a pack."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Protocol

from itembank.errors import ItembankError
from itembank.packs.choosing.candidate import BankCandidate, Candidate
from itembank.packs.chosen import Chosen
from itembank.packs.data.source import TopicSources
from itembank.packs.pack_as_data import as_asked, as_data
from itembank.planning.department.pack_request import PackRequest

if TYPE_CHECKING:
    from itembank.packs.data.pack import Pack
    from itembank.packs.data.pack_item import PackItem


class FitsSlides(Protocol):
    """How full slides are: handed in, since only whoever draws them can say."""

    def __call__(self, pack: Pack, count: int, /) -> bool:
        """Tell whether the starter of a pack stands on so many slides."""

    def share(self, item: PackItem, shown: bool, /) -> float | None:
        """Return the least share of a slide that a question takes; None if it cannot be set.

        Its figure counts unless it is `shown` by another question.
        """

    def on_slip(self, pack: Pack, /) -> bool:
        """Tell whether one side of a pupil slip holds the starter of a pack."""

    def slip_share(self, item: PackItem, /) -> float:
        """Return the least share of one side of a slip that a question takes."""


@dataclass(frozen=True)
class DrawnRoom:
    """Tells how full slides are by drawing the questions of a request on them.

    With `slips`, what is to stand on one slide is to stand on one side of a pupil slip too.
    """

    request: PackRequest
    topics: tuple[TopicSources, ...]
    fits_slides: FitsSlides
    slips: bool = False

    def without_slips(self) -> DrawnRoom:
        """Return what tells how full slides are, whatever slips hold."""
        return replace(self, slips=False)

    def fits(self, questions: Sequence[Candidate], count: int) -> bool:
        """Tell whether questions stand on so many slides."""
        chosen = Chosen(self.topics, (tuple(questions),), ())
        try:
            # Where a question comes from changes nothing on a slide.
            pack = as_data(self.request, chosen)
            if self.slips and count == 1 and not self.fits_slides.on_slip(pack):
                return False
            return self.fits_slides(pack, count)
        except ItembankError:  # one question is too long for a slide of its own
            return False
        except Exception:
            if not any(isinstance(question, BankCandidate) for question in questions):
                raise
            return True  # of a bank, not proved yet: anything at all may stand in it

    def share(self, candidate: Candidate, shown: bool) -> float | None:
        """Return the least share of a slide that a question takes; None if it cannot be set.

        Where slips are to hold it too, the mean of both shares: what fits both takes no more than
        all of either.
        """
        try:
            item = as_asked(candidate)
            share = self.fits_slides.share(item, shown)
            if not self.slips or share is None:
                return share
            return (share + self.fits_slides.slip_share(item)) / 2
        except ItembankError:
            return None
        except Exception:
            if not isinstance(candidate, BankCandidate):
                raise
            return None
