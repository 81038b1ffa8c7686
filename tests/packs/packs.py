"""Real packs for the tests, made once."""

from __future__ import annotations

import datetime
from functools import cache

from itembank.planning.bands.bands import default_scheme
from itembank.planning.department.large_copies import LargePrint
from itembank.planning.department.pack_request import PackRequest, PlannedTopic

TOPICS = ("fractions.add-unlike", "equations.brackets", "ratio.share")


@cache
def request(**changes) -> PackRequest:
    usual = {
        "school": "Larkhythe School",
        "class_name": "8K",
        "date": datetime.date(2026, 11, 30),
        "title": "Fractions, ratio and equations",
        "topics": tuple(PlannedTopic(topic) for topic in TOPICS),
        "questions": 8,
        "seed": 7,
        "follow_up": 6,
        "variants": 2,
        "large_print": LargePrint(),
        "print_tint": False,
        "paper": "white",
        "slips": False,
        "self_mark": "when done",
        "bands": default_scheme(),
    }
    return PackRequest(**(usual | changes))
