"""Which day it is: the one place that asks, so that a rehearsal or a test can say.

The environment variable ITEMBANK_TODAY holds another day, as 2026-11-28, for trying out a term
that is over or to come. Moments that are recorded are the clock's all the same.
"""

from __future__ import annotations

import datetime
import os

from itembank.errors import ItembankError

VARIABLE = "ITEMBANK_TODAY"


def today() -> datetime.date:
    """Return the day it is, or the one in ITEMBANK_TODAY.

    Raises:
        ItembankError: what stands there is no day.
    """
    said = os.environ.get(VARIABLE)
    if not said:
        return datetime.date.today()
    try:
        return datetime.date.fromisoformat(said)
    except ValueError:
        raise ItembankError(
            f"{VARIABLE} holds ‘{said}’, which is not a day. Write it as 2026-11-28, or unset it."
        ) from None
