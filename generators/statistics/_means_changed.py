"""How a mean changes: one more value joins, which one it was, and two groups taken together."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.statistics import _average_mistakes as m
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_JOINS = (
    "The mean of {n} numbers is {m}. One more number, {v}, joins them. "
    "What is the mean of all the numbers now?",
    "A swimmer swims {n} times, a mean of {m} lengths each time. Then she swims {v} lengths. "
    "What is the mean of all her swims now?",
    "A garden stall is open for {n} days and sells a mean of {m} trays a day. On the next day it "
    "sells {v} trays. What is the mean for all the days now?",
    "On {n} days a mean of {m} people came to a swimming club. On the next day {v} came. "
    "What is the mean for all the days now?",
)


def one_joins(count: int, mean: int, _: int, rise: int) -> Draft:
    """Return the question for the mean after one more value has joined."""
    value = mean + rise * (count + 1)
    n, m_, v = t.Int(count), t.Int(mean), t.Int(value)
    before, after = count * mean, count * mean + value
    key = t.Int(mean + rise)
    target = t.divide(t.Bracket(t.add(t.times(n, m_), v)), t.Bracket(t.add(n, t.Int(1))))
    return Draft(
        prompt(by_turns(_JOINS, count + mean + rise), n=n, m=m_, v=v),
        Find(target),
        key,
        "integer",
        (
            Step("Find the total before.", t.equals(t.times(n, m_), t.Int(before))),
            Step("Add the new value.", t.equals(t.add(t.Int(before), v), t.Int(after))),
            Step(
                f"There are {count + 1} values now: divide by {count + 1}.",
                t.equals(t.divide(t.Int(after), t.Int(count + 1)), key),
            ),
        ),
        slips(
            (m.MEAN_OF_MEANS, Fraction(mean + value, 2)),
            (m.OLD_COUNT, Fraction(after, count) if after % count == 0 else None),
            (m.TOTAL_ONLY, after),
            write=decimal_node,
            key=key,
        ),
        ("joins", count, mean, rise),
        constants=(1,),
    )


_WHICH = (
    "The mean of {n} numbers is {m}. With one more number the mean is {k}. "
    "What is the number that was added?",
    "A swimmer swims {n} times, a mean of {m} lengths each time. After the next swim her mean is "
    "{k} lengths. How many lengths was that swim?",
    "A garden stall sells a mean of {m} trays a day on its first {n} days. After the next day the "
    "mean is {k}. How many trays did it sell on that day?",
    "On {n} days a mean of {m} people came to a swimming club. With the next day the mean is {k}. "
    "How many people came on that day?",
)


def which_joined(count: int, mean: int, _: int, rise: int) -> Draft:
    """Return the question for the value that changed the mean by `rise`."""
    value, now = mean + rise * (count + 1), mean + rise
    n, m_, k = t.Int(count), t.Int(mean), t.Int(now)
    before, after = count * mean, (count + 1) * now
    key = t.Int(value)
    target = t.sub(t.times(t.Bracket(t.add(n, t.Int(1))), k), t.times(n, m_))
    return Draft(
        prompt(by_turns(_WHICH, count + mean + rise), n=n, m=m_, k=k),
        Find(target),
        key,
        "integer",
        (
            Step("Find the total before.", t.equals(t.times(n, m_), t.Int(before))),
            Step(
                f"Find the total of all {count + 1}.",
                t.equals(t.times(t.Int(count + 1), k), t.Int(after)),
            ),
            Step("Subtract.", t.equals(t.sub(t.Int(after), t.Int(before)), key)),
        ),
        slips(
            (m.MEAN_OF_MEANS, 2 * now - mean),
            (m.STOPS_AT_TOTAL, after),
            (m.RISE_ONLY, now),
            key=key,
        ),
        ("which", count, mean, rise),
        constants=(1,),
    )


_TOGETHER = (
    "The mean of {n} numbers is {m}. The mean of {k} other numbers is {o}. "
    "What is the mean of all the numbers together?",
    "At a swimming club {n} juniors swim a mean of {m} lengths, and {k} adults swim a mean of {o} "
    "lengths. What is the mean for all of them together?",
    "A bus is late by a mean of {m} minutes on {n} trips, and by a mean of {o} minutes on {k} "
    "other trips. What is the mean for all the trips together?",
    "On one plot {n} plants bear a mean of {m} flowers. On another, {k} plants bear a mean of {o} "
    "flowers. What is the mean for all the plants together?",
)


def two_groups(count: int, mean: int, other: int, more: int) -> Draft:
    """Return the question for the mean of two groups together."""
    n, m_, k, o = t.Int(count), t.Int(mean), t.Int(more), t.Int(other)
    first, second, everyone = count * mean, more * other, count + more
    key = t.Int((first + second) // everyone)
    target = t.divide(t.Bracket(t.add(t.times(n, m_), t.times(k, o))), t.Bracket(t.add(n, k)))
    return Draft(
        prompt(by_turns(_TOGETHER, count + mean + other + more), n=n, m=m_, k=k, o=o),
        Find(target),
        key,
        "integer",
        (
            Step("Find the first total.", t.equals(t.times(n, m_), t.Int(first))),
            Step("Find the other total.", t.equals(t.times(k, o), t.Int(second))),
            Step("Add.", t.equals(t.add(t.Int(first), t.Int(second)), t.Int(first + second))),
            Step(
                f"Divide by how many there are in all: {count} + {more} = {everyone}.",
                t.equals(t.divide(t.Int(first + second), t.Int(everyone)), key),
            ),
        ),
        slips(
            (m.MEAN_OF_MEANS, (mean + other) // 2),
            (m.TOTAL_ONLY, first + second),
            key=key,
        ),
        ("together", *sorted(((count, mean), (more, other)))),
    )
