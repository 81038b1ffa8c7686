"""The words that stand wherever bands are shown: a band is no grade.

They are said here alone, so that no page and no command can say them otherwise or leave a
part out. Each form holds "not a grade".
"""

from __future__ import annotations

NOT_A_GRADE = "Bands are a teaching aid, not a grade."
CAUTION = f"{NOT_A_GRADE} Your judgement decides."
"""For teachers, on screens and in reports."""
FOR_PUPILS = "Bands help you choose what to do next. They are not a grade."
"""For pupils, on slides and on the groups' sheets."""
ON_A_SHEET = "Bands are not a grade."
"""For pupils, where there is little room."""
HEADING = "band (not a grade)"
"""Heads a column of bands in a table that leaves the tool."""
