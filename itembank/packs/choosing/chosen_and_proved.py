"""Chooses until all that was chosen may be used: of what nobody had proved, nothing is trusted.

A large topic of a bank is not proved beforehand (:mod:`itembank.packs.sources.untried`). What is
chosen of it is proved together. Where something of it may not be used, everything is chosen once
more, now with each question proved before it is taken. What comes of it is the same whatever was
known before: a question that may not be used is passed over for the next best, and no other
choice looks at whether it may.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.too_few import TooFew

T = TypeVar("T")


def chosen_and_proved(
    pool_of: Callable[[bool], Pool],
    choose: Callable[[Pool], T],
) -> T:
    """Return what `choose` takes from a pool, when all of it may be used.

    Parameters
    ----------
    pool_of
        Makes a pool of which nothing is used; it is told whether to prove what is taken.
    choose
        Chooses; it may be called again with a fresh pool, and must do as it did before.

    Raises
    ------
    TooFew
        A topic has too few different questions that may be used.
    """
    proves = False
    while True:
        try:
            pool = pool_of(proves)
            found = choose(pool)
        except TooFew as error:
            if not error.news:
                raise
            continue  # with what may not be used left out of every count
        if proves or not any_refused(pool):
            return found
        proves = True


def any_refused(pool: Pool) -> bool:
    """Prove what a pool trusted, and tell whether any of it may not be used."""
    questions = [candidate.question for candidate in pool.trusted]
    if questions:
        from itembank.packs.sources.untried import try_together

        try_together(questions)
    return any(question.refused for question in questions)
