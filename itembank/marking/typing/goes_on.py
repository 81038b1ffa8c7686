"""Decimals typed with dots at their end, where nothing shows which digits recur.

*0.33…* and *0.2727…* show it. *0.27…* may be 0.27̇, 0.2̇7̇, a root cut off, or, with two dots,
0.27 and a slip of the finger. Where one of these may be the answer, no verdict would be true.
"""

from __future__ import annotations

from fractions import Fraction

from itembank.items.item import Item
from itembank.marking.form.policy import policy
from itembank.marking.typing.answer_setting import Setting
from itembank.marking.typing.parsed_answer import Unreadable
from itembank.marking.typing.read_answer import read_answer
from itembank.marking.typing.working.working_results import comes_to
from itembank.marking.worth.same_worth import same
from itembank.notation import tree as t
from itembank.text.late_pattern import late

_GOES_ON = late(r"(?<![\d.])(?P<whole>\d*\.(?P<places>\d{1,30}))(?P<dots> ?\.{2,}|…)")

SEVERAL_WAYS = (
    "may go on in several ways: put dots over the digits that recur, or type these digits twice; "
    "if it ends there, leave the dots out."
)


def goes_on(item: Item, answer: str, asked: Setting, form_alone: bool = False) -> str:
    """Return what is said of a decimal with dots that may be the answer, or ``""``.

    `form_alone` is where its value was found right, and only the form another.

    >>> from itembank.items.topics.registry import find_item
    >>> item = find_item("fractions.decimals-percentages/support/295")  # 0.88
    >>> from itembank.marking.typing.answer_setting import setting
    >>> goes_on(item, "0.87...", setting(item))[:36]
    '0.87... may go on in several ways: p'
    >>> [goes_on(item, text, setting(item))[:10] for text in ("0.88..", "0.7...", "0.88...")]
    ['0.88.. may', '', '']
    """
    found = _GOES_ON.search(answer)
    if found is None:
        return ""
    slip, rounds = found["dots"].strip() == "..", policy(item).rounding is not None
    # Digits that stand there twice recur, and a rounded answer is wrong with more of them.
    if not slip and (form_alone or rounds or _shows_block(found["places"])):
        return ""
    # Between the decimal as it stands and one more in its last place, whatever comes next.
    ends = form_alone or rounds
    cut = f"{answer[: found.start()]}{found['whole']}{'' if ends else 5}{answer[found.end() :]}"
    try:
        typed = comes_to(read_answer(cut, asked))
    except Unreadable:
        return ""
    size = 100 if isinstance(item.key, t.Percent) else 1
    near = Fraction(0 if ends else 5, size * 10 ** (len(found["places"]) + 1))
    return f"{found[0]} {SEVERAL_WAYS}" if same(typed, item.key, near) else ""


def _shows_block(places: str) -> bool:
    """Tell whether some digits stand there twice at the end, as in 0.33… and 0.2727…."""
    sizes = range(1, len(places) // 2 + 1)
    return any(places[-size:] == places[-2 * size : -size] for size in sizes)
