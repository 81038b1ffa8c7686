"""Reads a typed answer and gives a verdict; marks whole answer sheets."""

from __future__ import annotations

from itembank.marking.mark import Marked, Verdict, mark

__all__ = ["Marked", "Verdict", "mark"]
