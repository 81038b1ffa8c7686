"""Questions with more than one percentage in them: compared, one of another, and made equal."""

from __future__ import annotations

from generators._turns import by_turns
from generators.percentages._amounts import amount, per_cent, wrong_amounts
from generators.percentages._of_amount_mistakes import (
    GIVES_PART,
    LARGEST_AMOUNT,
    LARGEST_PERCENT,
    OF_WHOLE,
    REST_OF_ALL,
    SAME_SUM,
    STOPS,
)
from generators.percentages._of_amount_numbers import challenge_wrong, three_options
from itembank.items.item import Choose, Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_NESTED = (
    "A bus depot has {n} buses. {p} of them are electric. {q} of the electric buses are being "
    "cleaned. How many electric buses are not being cleaned?",
    "A market garden grows {n} plants. {p} of them are herbs. {q} of the herbs are mint. "
    "How many of the herbs are not mint?",
    "A library has {n} books. {p} of them are for children. {q} of the children's books are about "
    "animals. How many of the children's books are not about animals?",
    "A swimming club has {n} members. {p} of them are children. {q} of the children race. "
    "How many children do not race?",
)
_NAMES = ("A", "B", "C")


def worth_the_most(p: int, n: int, q: int, m: int) -> Draft:
    """Return the question which of p of £n, q of £m and a third is worth the most."""
    options = three_options(p, n, q, m)
    turn = (p // 100 + n // 10 + q // 50 + m // 10) % 3
    placed = options[turn:] + options[:turn]
    names = {option: name for name, option in zip(_NAMES, placed, strict=True)}
    sums = {
        option: t.part_of(per_cent(option[0]), amount(100 * option[1], "£")) for option in placed
    }
    text = "Which is worth the most? " + "   ".join(f"{name}: {{{name}}}" for name in _NAMES)
    runs = {names[option]: sums[option] for option in placed}
    key = t.Label(names[options[1]])
    steps = [
        Step(
            f"Work out {names[option]}.",
            t.equals(sums[option], amount(option[0] * option[1] // 10, "£")),
        )
        for option in placed
    ]
    return Draft(
        prompt(text, **runs),
        Choose(tuple((names[option], sums[option]) for option in placed), "greatest"),
        key,
        "name",
        (*steps, Step("Compare the three amounts.", key)),
        slips(
            (LARGEST_PERCENT, t.Label(names[options[0]])),
            (LARGEST_AMOUNT, t.Label(names[options[2]])),
        ),
        ("choose", p, n, q, m),
    )


def part_of_a_part(p: int, n: int, q: int) -> Draft:
    """Return the question how many are in a first part p of n and not in a part q of that."""
    whole, x = t.Int(n), t.Sym("x")
    part = p * n // 1000
    found = part * q // 1000
    key = part - found
    inner = t.part_of(per_cent(p), whole)
    return Draft(
        prompt(
            by_turns(_NESTED, p // 50 + n // 10 + q // 50),
            n=whole,
            p=per_cent(p),
            q=per_cent(q),
        ),
        Find(x, (t.equals(x, t.sub(inner, t.part_of(per_cent(q), t.Bracket(inner)))),)),
        t.Int(key),
        "integer",
        (
            Step("Find the first percentage.", t.equals(inner, t.Int(part))),
            Step(
                "Find the second percentage of that.",
                t.equals(t.part_of(per_cent(q), t.Int(part)), t.Int(found)),
            ),
            Step("Subtract.", t.equals(t.sub(t.Int(part), t.Int(found)), t.Int(key))),
        ),
        wrong_amounts(
            "", 100 * key, (STOPS, REST_OF_ALL, OF_WHOLE), challenge_wrong("nested", p, n, q)
        ),
        ("nested", p, n, q),
    )


def equal_sides(p: int, n: int, q: int) -> Draft:
    """Return the question which percentage of q is as much as p of n."""
    box, part = t.Blank(), p * n // 1000
    key = p * n // (10 * q)
    left = t.part_of(per_cent(p), t.Int(n))
    sides = t.equals(left, t.part_of(t.Percent(box), t.Int(q)))
    return Draft(
        prompt("Write the missing number: {e}", e=sides),
        Find(box, (sides,)),
        t.Int(key),
        "integer",
        (
            Step("Work out the side you know.", t.equals(left, t.Int(part))),
            Step(
                "Write it as a fraction of the other amount.",
                t.equals(t.frac(part, q), t.frac(key, 100)),
            ),
            Step("Hundredths are per cents.", t.equals(t.frac(key, 100), t.Percent(t.Int(key)))),
            Step("The box stands for the number before the sign.", t.equals(box, t.Int(key))),
        ),
        wrong_amounts("", 100 * key, (SAME_SUM, GIVES_PART), challenge_wrong("equal", p, n, q)),
        ("equal", p, n, q),
    )
