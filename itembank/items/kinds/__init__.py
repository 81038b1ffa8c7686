"""Questions of other kinds than *work it out*, made of what a topic knows already.

Each function returns a draft: the prompt in the wording that is read back
(:mod:`itembank.wording.tasks.other_kinds.kinds_said`), the question, its key, working and likely
mistakes. What is right is stated by whoever calls; both proofs find it out for themselves.
"""

from __future__ import annotations

from itembank.items.kinds.answers_given import (
    answer_claim,
    whose_answer,
    with_answers,
    with_given_answers,
    with_people_asked,
    with_who_is_right,
)
from itembank.items.kinds.card_kinds import odd_one_out
from itembank.items.kinds.lot import lot, shuffled
from itembank.items.kinds.match_kind import (
    CardMistake,
    match_answers,
    match_pairs,
    with_claims_and_matches,
    with_matches,
)
from itembank.items.kinds.missing import missing_number
from itembank.items.kinds.mistakes import BY_LOOKS, OTHER_LINE, OTHER_PAIR
from itembank.items.kinds.stated_answers import stated_answer, with_statements
from itembank.items.kinds.statements import claim, statement, with_claims
from itembank.items.kinds.working_spotted import with_working_spotted
from itembank.items.kinds.wrong_lines import spot_the_mistake
from itembank.items.kinds.wrong_solutions import (
    Solutions,
    WrongSolution,
    with_mistakes,
    with_odd_lines,
    with_working_gone_wrong,
    with_wrong_solutions,
)
from itembank.items.kinds.wrong_workings import working_goes_wrong

__all__ = [
    "BY_LOOKS",
    "OTHER_LINE",
    "OTHER_PAIR",
    "CardMistake",
    "Solutions",
    "WrongSolution",
    "answer_claim",
    "claim",
    "lot",
    "match_answers",
    "match_pairs",
    "missing_number",
    "odd_one_out",
    "shuffled",
    "spot_the_mistake",
    "stated_answer",
    "statement",
    "whose_answer",
    "with_answers",
    "with_claims",
    "with_claims_and_matches",
    "with_given_answers",
    "with_matches",
    "with_mistakes",
    "with_odd_lines",
    "with_people_asked",
    "with_statements",
    "with_who_is_right",
    "with_working_gone_wrong",
    "with_working_spotted",
    "with_wrong_solutions",
    "working_goes_wrong",
]
