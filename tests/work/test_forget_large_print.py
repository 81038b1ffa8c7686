"""Forgetting a seat names the packs that hold large-print copies for it."""

import datetime
import json

from itembank.records.pupils.whom import Whom
from itembank.work.lesson.forget import large_print_for


def test_packs_with_copies_for_a_seat_are_named(tmp_path):
    looks = {
        "8K-2026-11-30": {"large_print": ["", "a3"]},
        "8K-2026-12-01": {"large_print": ["A30"]},
        "8K-2026-12-02": {"large_print": True},  # as packs of version 4 said
        "8K-2026-12-03": None,
        "7M-2026-12-03": {"large_print": ["A3"]},
        "8K-2026-12-04": {"large_print": ["A3"]},
    }
    for name, look in looks.items():
        (tmp_path / name).mkdir()
        (tmp_path / name / "pack.json").write_text(json.dumps({"look": look}))
    (tmp_path / "8K-2026-12-05").mkdir()
    (tmp_path / "8K-2026-12-05" / "pack.json").write_text("not JSON")
    first, last = tmp_path / "8K-2026-11-30", tmp_path / "8K-2026-12-04"
    assert large_print_for(Whom("8K", "A3"), tmp_path) == (first, last)
    assert large_print_for(Whom("8k", "A3", datetime.date(2026, 12, 4)), tmp_path) == (first,)
    assert large_print_for(Whom("8K"), tmp_path) == ()
