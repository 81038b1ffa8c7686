"""What a sentence beside a tree diagram says of where two things are taken from.

Kept, or the next from the same bag, the same is not as likely again; from another bag it does not
matter what came first. A sentence that tells another way than the branches is not so.

>>> from fractions import Fraction
>>> again = [(Fraction(5, 8), Fraction(5, 8)), (Fraction(3, 8), Fraction(3, 8))]
>>> told = "A bead is taken from a bag, and then another from "
>>> [taken_otherwise(told + bag, again, False) for bag in ("the same bag", "a box")]
[True, False]
>>> taken_otherwise(told + "a box", [(Fraction(5, 8), Fraction(4, 7))], True)
True
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

_FROM = re.compile(
    r"from (?:a|the) (?P<first>[a-z]+).*\bfrom (?:a|the) (?P<same>same )?(?P<next>[a-z]+)",
    re.IGNORECASE,
)


def taken_otherwise(
    sentence: str, same: Sequence[tuple[Fraction | None, Fraction | None]], depends: bool
) -> bool:
    """Tell whether a sentence tells another way of taking two things than the branches show.

    `same` has for each outcome how likely it is first, and how likely once more after itself;
    `depends` says whether what is likely second depends on what came first.
    """
    said = _FROM.search(sentence)
    one_bag = said is not None and (
        said["same"] or said["first"].casefold() == said["next"].casefold()
    )
    if one_bag or re.search(r"\b(?:kept|eaten|used)\b", sentence, re.IGNORECASE):
        return any(
            first is not None and second is not None and second >= first for first, second in same
        )
    return said is not None and depends
