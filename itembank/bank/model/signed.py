"""What is added to an item later: who has checked it, and since when it is not used."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import field
from typing import Any

from itembank.data_class import dataclass


@dataclass(frozen=True, slots=True)
class SignOff:
    """A reviewer's statement that an item was checked, and what it said then.

    `content` is the hash of everything that printed; `was` is that content itself.
    """

    item: str
    by: str
    on: datetime.date
    content: str
    was: Mapping[str, Any] = field(default_factory=dict, compare=False, repr=False)


Retirement = tuple[datetime.date, str]
"""From when an item is no longer used, and why."""
