"""The code on a result slip, as the page writes it: made again, and read back with its faults told.

A code says a seat, the letter of its version where there are several, the score, and of each
question whether the answer was right (r), not yet right (n), left to the teacher (t) or empty
(e). The last part is a check with a key that belongs to the pack: it catches a figure that was
changed or copied wrongly. The key stands in the page, so somebody who reads its source can make
a code that passes.

>>> key = slip_key(b"the pack")
>>> text = slip_text(key, "A3", "", 6, 8, "rrnrrrrn")
>>> read_slip(text, key, [1] * 8).score
6
"""

from __future__ import annotations

import hashlib
import hmac
import re
from collections.abc import Sequence

from itembank.data_class import dataclass
from itembank.people.seats import seat_fault

_SIGNS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"
_CHECK = 8
_CODE = re.compile(
    r"(?P<seat>\S+)(?: (?P<version>[A-Z]))? (?P<score>\d{1,3})/(?P<out_of>\d{1,3}) "
    r"(?P<outcomes>[rnte]{1,30}) (?P<check>[0-9A-Z]{8})"
)


class SlipFault(ValueError):
    """A code that cannot be taken for a result; the message says why, in plain words."""


@dataclass(frozen=True, slots=True)
class Slip:
    """What a slip says: `outcomes` has a letter for each question, as the module says."""

    seat: str
    version: str
    score: int
    outcomes: str

    @property
    def left_to_teacher(self) -> tuple[int, ...]:
        """Return the numbers of the questions that the page could not mark."""
        return tuple(n for n, letter in enumerate(self.outcomes, 1) if letter == "t")


def slip_key(pack: bytes) -> str:
    """Return the key of a pack's slips, made from its `pack.json`."""
    return hashlib.sha256(b"itembank result slip\n" + pack).hexdigest()[:32]


def slip_text(key: str, seat: str, version: str, score: int, out_of: int, outcomes: str) -> str:
    """Return the code of a slip; `version` is empty where there is only one."""
    said = " ".join([seat.upper(), *([version] if version else []), f"{score}/{out_of}", outcomes])
    return f"{said} {_check(key, said)}"


def _check(key: str, said: str) -> str:
    digest = hmac.new(key.encode(), said.encode(), hashlib.sha256).digest()
    left, signs = int.from_bytes(digest[:8], "big"), ""
    for _ in range(_CHECK):
        left, place = divmod(left, len(_SIGNS))
        signs += _SIGNS[place]
    return signs


def read_slip(text: str, key: str, marks: Sequence[int]) -> Slip:
    """Return what a code says, for a starter whose questions are worth so many `marks`.

    Spaces, and capitals or small letters, do not matter.

    Raises:
        SlipFault: it is no such code, belongs to another pack, or was changed.

    >>> read_slip("A3 7/8 rrnrrrrn 23456789", slip_key(b""), [1] * 8)
    Traceback (most recent call last):
    ...
    itembank.selfmark.slip.SlipFault: A3: the score is 7 and its questions come to 6.
    """
    found = _CODE.fullmatch(_tidied(text))
    if found is None:
        raise SlipFault(
            f"‘{text.strip()[:60]}’ is not the code of a slip, such as A3 6/8 rrnrrrrn 4KQ72MXN."
        )
    seat, outcomes = found["seat"], found["outcomes"]
    if fault := seat_fault(seat):
        raise SlipFault(fault)
    if len(outcomes) != len(marks):
        raise SlipFault(
            f"{seat}: the slip is about {len(outcomes)} questions, and the starter has "
            f"{len(marks)}: it belongs to another pack."
        )
    earned = sum(worth for worth, letter in zip(marks, outcomes, strict=True) if letter == "r")
    if earned != int(found["score"]):
        raise SlipFault(
            f"{seat}: the score is {found['score']} and its questions come to {earned}."
        )
    said = found[0].rpartition(" ")[0]
    if int(found["out_of"]) != sum(marks) or not hmac.compare_digest(
        found["check"], _check(key, said)
    ):
        raise SlipFault(
            f"{seat}: the check at the end does not fit. Something was changed or copied wrongly, "
            "or the slip belongs to another pack."
        )
    return Slip(seat, found["version"] or "", earned, outcomes)


def _tidied(text: str) -> str:
    """Return a code in capitals but for its outcomes, with one space between its parts."""
    parts = text.split()
    last = len(parts) - 1
    small = [
        part.lower() if 1 < i < last and re.fullmatch("[rnteRNTE]+", part) else part.upper()
        for i, part in enumerate(parts)
    ]
    return " ".join(small)
