"""The three tiers of follow-up work, named without loading what an item is made of."""

from __future__ import annotations

from enum import StrEnum


class Tier(StrEnum):
    """Difficulty of follow-up work, easiest first."""

    SUPPORT = "support"
    CORE = "core"
    CHALLENGE = "challenge"
