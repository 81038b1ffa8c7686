"""Stories whose task says all that they ask: equal groups, buses that meet, shares in a ratio."""

from __future__ import annotations

import re
from typing import Literal

from itembank.items.item import Which
from itembank.text.late_pattern import late
from itembank.wording.sentences.prompt import SLOT

_MOST = r"(?:greatest|largest|highest|biggest|longest|maximum|most)"
_LEAST = r"(?:smallest|least|lowest|fewest|shortest|earliest|soonest|minimum|next|first)"
_HCF = (
    rf"\b(?:the )?{_MOST} (?:possible )?number of (?P<things>[\w' -]+)",
    rf"\b(?:{_MOST} (?:possible )?(?:length|side|size)|length\b.*\bside of the {_MOST}|length of each)\b",
    rf"\bhow (?:long|wide|big) is (?:each|the side of the {_MOST})\b",
)
_LCM = (
    r"\bhow many (?P<things>[a-z]+)\b.*\b(?:next|again|first|together|same time)\b",
    rf"\b(?:the )?{_LEAST} (?:possible )?(?:length|height|distance|amount|number of (?P<things>[\w' -]+))",
    rf"\b(?:the )?{_LEAST} (?:possible )?number that (?:is a multiple of both|both divide into|can be divided by both)",
    r"\bhow long\b.*\b(?:next|again|together)\b",
)
_MORE = late(
    r"\b(?:area|perimeter|altogether|total|in all|in each|in every|in an?|in one|per|packs?|packets?|boxes|"
    r"bags of|pieces|o'clock|what time|(?:second|third|fourth) time|how many of|squares|and (?:how|what)|not|except|left over)\b",
    re.I,
)
_PART_OF_SHARE = late(
    r"\b(?:first|second|third|one|each|more|less|fewer|other|rest|half|per|an? (?:day|week|month|hour))\b",
    re.I,
)
_SIZED: dict[str, Which] = {
    **dict.fromkeys(("larger", "largest", "greater", "bigger", "biggest"), "largest"),
    **dict.fromkeys(("smaller", "smallest"), "smallest"),
}
_APART = late(r"\b(?:only|separate\w*|same kind|one kind)\b", re.I)
_TOTAL = late(r"\b(?:altogether|in total|in all|total|more|less|difference)\b", re.I)
_EVERY = late(r"\beach\b|\bshares\b|\bevery(?:one|body)?\b", re.I)
_IN_RATIO = late(rf"\b(?:share|split|divide)[sd]?\b.*\bin(?:to)? the ratio {SLOT}$", re.I)
_ONE_SHARE = late(
    r"(?:how much|what|find|work out|calculate)(?: is)? the "
    rf"({'|'.join(_SIZED)}) (?:share|part|amount)",
    re.I,
)


def keeps_kinds_apart(text: str) -> bool:
    """Tell whether a story sets the condition that things of several kinds are not mixed."""
    return bool(_APART.search(text))


def common_asked(words: str, detail: Literal["hcf", "lcm"]) -> str | None:
    """Return what a question counts by a common factor or multiple; None where it asks another.

    It is empty where nothing is counted, as where a length is asked for.

    >>> common_asked("What is the greatest number of trays", "hcf")
    'trays'
    >>> common_asked("What is the total length", "hcf") is None
    True
    """
    patterns = _HCF if detail == "hcf" else _LCM
    found = next(
        (match for pattern in patterns if (match := re.search(pattern, words, re.I))), None
    )
    if found is None or _MORE.search(words):
        return None
    return found.groupdict().get("things") or ""


def share_of_size(words: str) -> Which | None:
    """Return which of two shares is asked for alone, or None.

    >>> share_of_size("How much is the larger share")
    'largest'
    """
    found = _ONE_SHARE.fullmatch(words)
    return _SIZED[found[1].lower()] if found else None


def asks_every_share(words: str) -> bool:
    """Tell whether a question asks what each of them gets, and no more."""
    return not _TOTAL.search(words) and bool(_EVERY.search(words))


def shares_in_ratio(sentence: str) -> bool:
    """Tell whether a sentence ends with an amount being shared in a ratio."""
    return bool(_IN_RATIO.search(sentence))


def part_of_share(sentence: str) -> str:
    """Return the word by which not all may be shared, or an empty string."""
    found = _PART_OF_SHARE.search(sentence)
    return found[0] if found and not sentence.endswith("?") else ""
