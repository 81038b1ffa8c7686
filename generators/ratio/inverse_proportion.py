"""Inverse proportion: the more there are, the less time it takes.

Key stage 3, ratio (England, 2013): "solve problems involving direct and inverse proportion,
including graphical and algebraic representations" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any, NamedTuple

from generators._turns import by_turns
from generators.ratio._parts import amount
from generators.ratio._rates import written
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Slip, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

DIRECT = Misconception(
    "ratio.inverse-as-direct",
    "takes it to be direct proportion: more of one means more of the other",
    "If one number is doubled, is the other doubled or halved? What does your method do?",
)
ADDITIVE = Misconception(
    "ratio.inverse-additive",
    "adds to one number what is taken from the other",
    "If one number is halved, what happens to the other? Does your method do that?",
)
UNDIVIDED = Misconception(
    "ratio.inverse-total",
    "stops at the product of the two numbers",
    "You have multiplied. By which number is the product to be divided?",
)
ALL_OF_THEM = Misconception(
    "ratio.inverse-all-not-extra",
    "gives how many are needed altogether, and not how many more",
    "How many are there already? What does the question ask for?",
)
FORGETS_DONE = Misconception(
    "ratio.inverse-forgets-what-is-done",
    "shares out the whole job, and forgets what is done already",
    "How much of the job is left when the number changes?",
)
SAME_TIME = Misconception(
    "ratio.inverse-nothing-changes",
    "takes the rest to last as long as with all of them",
    "Are as many at work as before? So does the rest take as long?",
)

_X = t.Sym("x")


class _Job(NamedTuple):
    """A job that several share: `unit` of time, and who does it."""

    who: str
    does: str
    asks: str
    unit: str


_JOBS = (
    _Job("gardeners", "weed a field", "weed the field", "h"),
    _Job("pumps", "fill a swimming pool", "fill the pool", "h"),
    _Job("mechanics", "repair a row of bikes", "repair the bikes", "h"),
    _Job("cleaners", "clean all the buses of a depot", "clean the buses", "min"),
    _Job("cooks", "peel a sack of potatoes", "peel the potatoes", "min"),
    _Job("printers", "print the books for a school", "print the books", "min"),
    _Job("volunteers", "sort a heap of books", "sort the books", "h"),
    _Job("painters", "paint the rooms of a club", "paint the rooms", "day"),
)
_TIMES = {"h": (2, 24), "min": (15, 240), "day": (2, 20)}
_SUPPLIES = (
    ("A sack of corn feeds {p} hens for {n}. For how long would it feed {q} hens?", "day", 3, 40),
    (
        "A tank of water lasts {p} goats for {n}. For how long would it last {q} goats?",
        "day",
        2,
        30,
    ),
    (
        "Food for a camp lasts {p} children for {n}. For how long would it last {q} children?",
        "day",
        2,
        20,
    ),
)
_ROWS = (
    "A gardener plants bulbs in {p} rows with {n} in each row. With {q} bulbs in each row, how "
    "many rows of the same bulbs would there be?",
    "A hall has {p} rows of {n} chairs. The same chairs are put in rows of {q}. How many rows are "
    "there?",
    "A library puts its maps into {p} boxes of {n}. It puts the same maps into boxes of {q}. "
    "How many boxes does it fill?",
)
_JOURNEYS = (
    "At {p} a coach journey takes {n}. How many hours does the same journey take at {q}?",
    "A lorry makes a journey in {n} at {p}. How many hours does the same journey take at {q}?",
)


def _job(first: int, second: int, turn: int) -> _Job | None:
    """Return a job for which both times are plausible, another for the next turn."""
    fits = [
        job
        for job in _JOBS
        if all(_TIMES[job.unit][0] <= n <= _TIMES[job.unit][1] for n in (first, second))
    ]
    return by_turns(fits, turn) if fits else None


def _apart(key: int, *wrong: int | None) -> bool:
    return len({value for value in wrong if value and value > 0 and value != key}) > 1


def _whole(top: int, bottom: int) -> int | None:
    """Return a quotient that is a positive whole number or a half, doubled; else None."""
    value, rest = divmod(2 * top, bottom)
    return None if rest or value <= 0 else value


def _support(kind: str, p: int, n: int, q: int) -> bool:
    """Keep a number that is doubled, trebled, halved or so."""
    if p == q or p * n % q or (p % q and q % p):
        return False
    key = p * n // q
    return _job(n, key, 0) is not None and _apart(2 * key, *_wrong(p, n, q))


def _wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what DIRECT, ADDITIVE and UNDIVIDED give, doubled."""
    return _whole(n * q, p), 2 * (n + p - q), 2 * p * n


def _core(kind: str, p: int, n: int, q: int) -> bool:
    """Keep numbers of which neither is a multiple of the other, so that the way is by one."""
    if p == q or p * n % q or not (p % q and q % p):
        return False
    if kind == "rows" and n == q:  # as many in each row as before
        return False
    key = p * n // q
    if kind == "job":
        plausible = _job(n, key, 0) is not None
    elif kind == "supply":
        low, high = by_turns(_SUPPLIES, p + n + q)[2:]
        plausible = low <= n <= high and low <= key <= high
    elif kind == "journey":
        plausible = p * n <= 600
    elif kind == "letters":
        plausible = p < 16
    else:
        plausible = key <= 40
    return plausible and _apart(2 * key, *_wrong(p, n, q))


def _challenge(kind: str, p: int, n: int, q: int) -> bool:
    """Keep how many more are needed, and a change when part is done."""
    if kind == "more":
        # n hours with p, q hours with more.
        if q >= n or p * n % q or q < 2 or p * n < q * (p + 2):
            return False
        key = p * n // q - p
        return _job(n, q, 0) is not None and key < 20 and _apart(2 * key, *_more_wrong(p, n, q))
    # p at work, n hours in all; when q are gone after a third or so, how much longer.
    done = _done(n)
    left = p * (n - done)
    if q >= p - 1 or left % (p - q) or n % 3:
        return False
    key = left // (p - q)
    return _job(n, key, 0) is not None and _apart(2 * key, *_gone_wrong(p, n, q))


def _done(n: int) -> int:
    return n // 3


def _more_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    """Return what ALL_OF_THEM, ADDITIVE and DIRECT give, doubled: as many more as hours fewer."""
    return 2 * (p * n // q), 2 * (n - q), None


def _gone_wrong(p: int, n: int, q: int) -> tuple[int | None, ...]:
    return _whole(p * n, p - q), 2 * (n - _done(n))


@register
class InverseProportion(Topic):
    """A multiple; by way of one; how many more, with letters, and a change on the way."""

    id = "ratio.inverse-proportion"
    title = "Inverse proportion"
    statements = ("ratio.proportion",)
    misconceptions = (DIRECT, ADDITIVE, UNDIVIDED, ALL_OF_THEM, FORGETS_DONE, SAME_TIME)
    prerequisites = ("ratio.proportion",)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(
                _support,
                kind=("job",),
                p=range(2, 13),
                n=(2, 3, 4, 5, 6, 8, 9, 10, 12, 15, 16, 18, 20, 24, 30, 36, 40, 45, 60, 80, 90),
                q=range(2, 13),
            )
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=("job",),
                p=range(3, 13),
                n=(
                    4,
                    5,
                    6,
                    8,
                    9,
                    10,
                    12,
                    14,
                    15,
                    16,
                    18,
                    20,
                    24,
                    30,
                    36,
                    40,
                    45,
                    48,
                    60,
                    72,
                    90,
                    120,
                ),
                q=range(4, 16),
            )
            .then(_core, kind=("supply",), p=range(6, 41, 4), n=range(4, 31, 2), q=range(8, 37, 4))
            .then(
                _core,
                kind=("journey",),
                p=range(30, 81, 5),
                n=(2, 3, 4, 5, 6, 8),
                q=range(25, 81, 5),
            )
            .then(_core, kind=("rows",), p=range(8, 25), n=range(8, 33, 2), q=range(9, 31))
            .then(_core, kind=("letters",), p=range(4, 16), n=range(6, 31, 6), q=range(6, 22))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=("more",),
                p=range(3, 16),
                n=(4, 5, 6, 8, 9, 10, 12, 14, 15, 16, 18, 20, 24, 30, 40, 45, 60, 90, 120),
                q=(2, 3, 4, 5, 6, 8, 9, 10, 12, 15, 18, 20, 30, 40, 45, 60, 80),
            ).then(
                _challenge,
                kind=("gone",),
                p=range(4, 13),
                n=(6, 9, 12, 15, 18, 24, 30, 36, 45, 60, 90),
                q=range(1, 9),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, p, n, q = values
        if kind == "more":
            return self._more(p, n, q)
        if kind == "letters":
            return self._letters(p, n, q)
        if kind == "gone":
            return self._gone(p, n, q)
        return self._simple(tier, kind, p, n, q)

    def _simple(self, tier: Tier, kind: str, p: int, n: int, q: int) -> Draft:
        turn, key = p + n + q, p * n // q
        first = unit = ""
        if kind == "job":
            job = _job(n, key, turn)
            assert job is not None
            unit = job.unit
            text = (
                f"It takes {{p}} {job.who} {{n}} to {job.does}. How long would it take {{q}} "
                f"{job.who} at the same rate?"
            )
            whole = f"Multiply to find how long 1 of the {job.who} would take."
            share = f"Share it among {q}."
        elif kind == "supply":
            text, unit, _, _ = by_turns(_SUPPLIES, turn)
            whole, share = "Multiply to find how long it would last 1.", f"Share it among {q}."
        elif kind == "journey":
            text, first, unit = by_turns(_JOURNEYS, turn // 5), "km/h", "h"
            whole, share = "Multiply to find the distance.", "Divide by the new speed."
        else:
            text = by_turns(_ROWS, turn)
            whole, share = "Multiply to find how many there are.", "Divide by the new number."
        shown_p, shown_q = amount(p, first), amount(q, first)
        shown_n, product = amount(n, unit), amount(p * n, "km" if kind == "journey" else unit)
        wrong: tuple[Fraction | int | None, ...] = _wrong(p, n, q)
        if kind == "rows":
            # It is the number in each row that changes, and with it the number of rows.
            wrong = (written(2 * p * q, n), *wrong[1:])
        by_product = (
            Step(whole, t.equals(t.times(shown_p, shown_n), product)),
            Step(share, t.equals(t.divide(product, shown_q), amount(key, unit))),
        )
        return Draft(
            prompt(text, p=shown_p, n=shown_n, q=shown_q),
            Find(_X, (t.equals(t.times(shown_p, shown_n), t.times(shown_q, _X)),)),
            amount(key, unit),
            "quantity" if unit else "integer",
            self._by_factor(p, n, q, unit) if tier is Tier.SUPPORT else by_product,
            _slips((DIRECT, ADDITIVE, UNDIVIDED), wrong, 2 * key, unit),
            (kind, p, n, q),
        )

    @staticmethod
    def _by_factor(p: int, n: int, q: int, unit: str) -> tuple[Step, ...]:
        """Return the working where one number is a multiple of the other."""
        time, key = amount(n, unit), amount(p * n // q, unit)
        if q > p:
            say = f"{q} is {q // p} times {p}, so divide the time by {q // p}."
            return (Step(say, t.equals(t.divide(time, t.Int(q // p)), key)),)
        say = f"{q} is {p} divided by {p // q}, so multiply the time by {p // q}."
        return (Step(say, t.equals(t.times(t.Int(p // q), time), key)),)

    def _more(self, p: int, n: int, q: int) -> Draft:
        job = _job(n, q, p + n + q)
        assert job is not None
        needed, key = p * n // q, p * n // q - p
        count, first, second = t.Int(p), amount(n, job.unit), amount(q, job.unit)
        product = amount(p * n, job.unit)
        return Draft(
            prompt(
                f"It takes {{p}} {job.who} {{n}} to {job.does}. How many more {job.who} are needed "
                f"to {job.asks} in {{q}} at the same rate?",
                p=count,
                n=first,
                q=second,
            ),
            Find(
                _X,
                (t.equals(t.times(count, first), t.times(t.Bracket(t.add(count, _X)), second)),),
            ),
            t.Int(key),
            "integer",
            (
                Step(
                    "Multiply to find the time of 1 alone.",
                    t.equals(t.times(count, first), product),
                ),
                Step(
                    "Divide to find how many are needed.",
                    t.equals(t.divide(product, second), t.Int(needed)),
                ),
                Step(
                    "Subtract those there are.",
                    t.equals(t.sub(t.Int(needed), count), t.Int(key)),
                ),
            ),
            _slips((ALL_OF_THEM, ADDITIVE), _more_wrong(p, n, q)[:2], 2 * key, ""),
            ("more", p, n, q),
        )

    def _letters(self, p: int, n: int, q: int) -> Draft:
        x, y = (t.Sym(name) for name in by_turns(("xy", "pq", "mn"), p + n + q))
        key = p * n // q
        product = t.times(t.Int(p), t.Int(n))
        return Draft(
            prompt(
                "{y} is inversely proportional to {x}. When {a}, {b}. Find {y} when {c}.",
                x=x,
                y=y,
                a=t.equals(x, t.Int(p)),
                b=t.equals(y, t.Int(n)),
                c=t.equals(x, t.Int(q)),
            ),
            Find(y, (t.equals(product, t.times(t.Int(q), y)),)),
            t.Int(key),
            "integer",
            (
                Step(
                    "In inverse proportion the product stays the same.",
                    t.equals(product, t.Int(p * n)),
                ),
                Step(
                    "Divide it by the new number.",
                    t.equals(t.divide(t.Int(p * n), t.Int(q)), t.Int(key)),
                ),
            ),
            _slips((DIRECT, ADDITIVE, UNDIVIDED), _wrong(p, n, q), 2 * key, ""),
            ("letters", p, n, q),
        )

    def _gone(self, p: int, n: int, q: int) -> Draft:
        done = _done(n)
        key = p * (n - done) // (p - q)
        job = _job(n, key, p + n + q)
        assert job is not None
        count, gone = t.Int(p), t.Int(q)
        whole, part, left = (amount(value, job.unit) for value in (n, done, n - done))
        product = amount(p * (n - done), job.unit)
        return Draft(
            prompt(
                f"It takes {{p}} {job.who} {{n}} to {job.does}. After {{d}}, {{q}} of them "
                f"{'stop' if q > 1 else 'stops'}. How much longer do the others take at the same "
                "rate?",
                p=count,
                n=whole,
                d=part,
                q=gone,
            ),
            Find(
                _X,
                (
                    t.equals(
                        t.times(count, t.Bracket(t.sub(whole, part))),
                        t.times(t.Bracket(t.sub(count, gone)), _X),
                    ),
                ),
            ),
            amount(key, job.unit),
            "quantity",
            (
                Step("Find the time that was left.", t.equals(t.sub(whole, part), left)),
                Step(
                    "Multiply to find the time of 1 alone.", t.equals(t.times(count, left), product)
                ),
                Step("Find how many go on.", t.equals(t.sub(count, gone), t.Int(p - q))),
                Step(
                    "Share it among them.",
                    t.equals(t.divide(product, t.Int(p - q)), amount(key, job.unit)),
                ),
            ),
            _slips((FORGETS_DONE, SAME_TIME), _gone_wrong(p, n, q), 2 * key, job.unit),
            ("gone", p, n, q),
        )


def _slips(
    mistakes: tuple[Misconception, ...],
    doubled: tuple[Fraction | int | None, ...],
    key: int,
    unit: str,
) -> tuple[Slip, ...]:
    pairs = (
        (mistake, None if not value or value <= 0 else amount(Fraction(value, 2), unit))
        for mistake, value in zip(mistakes, doubled, strict=True)
    )
    return slips(*pairs, key=amount(Fraction(key, 2), unit))
