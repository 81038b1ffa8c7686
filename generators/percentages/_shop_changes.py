"""Percentage changes of what is bought and sold: two changes, the cheapest of three, and profit."""

from __future__ import annotations

from generators._prices import capital, the, thing
from generators._turns import by_turns
from generators.percentages._amounts import amount, multiplier, per_cent, wrong_amounts
from generators.percentages._as_percentage import wrong_percentages
from generators.percentages._change_mistakes import (
    ADDS_BOTH,
    CHANGE_AS,
    COST_OF_ONE,
    LOWEST_BEFORE,
    MOST_OFF,
    NEW_AS,
    ONE_CHANGE,
)
from generators.percentages._change_numbers import profit_wrong, three_shops, twice_wrong
from generators.percentages._change_stories import GOODS
from generators.percentages._changes import afterwards, changed, multiplier_step, way
from itembank.items.item import Choose, Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def two_changes(p: int, n: int, q: int) -> Draft:
    """Return the question what a price of £n comes to after a change p, and then q."""
    x, old = t.Sym("x"), amount(100 * n, "£")
    first, second = amount(n * (1000 + p) // 10, "£"), n * (1000 + p) * (1000 + q) // 10_000
    name = thing(n, n // 20 + p // 50 + q // 50)
    text = (
        f"{capital(name)} costs {{n}}. The price goes {way(p)} by {{p}}, and then the new "
        f"price goes {way(q)} by {{q}}. What does {the(name)} cost in the end?"
    )
    share, other = per_cent(abs(p)), per_cent(abs(q))
    factors = (t.Bracket(afterwards(change)) for change in (p, q))
    return Draft(
        prompt(text, n=old, p=share, q=other),
        Find(x, (t.equals(x, t.times(old, *factors)),)),
        amount(second, "£"),
        "money",
        (
            as_multiplier(p),
            Step("Multiply the first price.", t.equals(t.times(old, multiplier(1000 + p)), first)),
            as_multiplier(q, "after the second change"),
            Step(
                "Multiply the new price.",
                t.equals(t.times(first, multiplier(1000 + q)), amount(second, "£")),
            ),
        ),
        wrong_amounts("£", second, (ADDS_BOTH, ONE_CHANGE), twice_wrong(p, n, q)),
        ("twice", p, n, q),
        constants=(100,),
    )


def cheapest_shop(p: int, n: int, q: int) -> Draft:
    """Return the question which of three shops is the cheapest after its reduction."""
    shops = three_shops(n, p, q)
    turn = (p // 50 + n // 2 + q) % 3
    placed = shops[turn:] + shops[:turn]
    names = {shop: f"Shop {letter}" for shop, letter in zip(placed, "ABC", strict=True)}
    name = thing(n, n + q)
    text = f"Three shops sell the same {the(name)[4:]}. " + " ".join(
        f"{names[shop]}: {{n{k}}} with {{p{k}}} off." for k, shop in enumerate(placed)
    )
    text += " Which shop is the cheapest?"
    runs: dict[str, t.Node] = {}
    for k, (price, off) in enumerate(placed):
        runs[f"n{k}"], runs[f"p{k}"] = amount(100 * price, "£"), per_cent(off)
    key = t.Label(names[shops[1]])
    return Draft(
        prompt(text, **runs),
        Choose(
            tuple(
                (names[price, off], changed("down", amount(100 * price, "£"), off))
                for price, off in placed
            ),
            "least",
        ),
        key,
        "name",
        (
            *(
                Step(
                    f"{names[price, off]}: multiply by what is left.",
                    t.equals(
                        t.times(amount(100 * price, "£"), multiplier(1000 - off)),
                        amount(price * (1000 - off) // 10, "£"),
                    ),
                )
                for price, off in placed
            ),
            Step("Choose the lowest price.", key),
        ),
        slips((MOST_OFF, t.Label(names[shops[0]])), (LOWEST_BEFORE, t.Label(names[shops[2]]))),
        ("shops", p, n, q),
    )


def percentage_profit(p: int, n: int, q: int) -> Draft:
    """Return the question how much per cent is gained on n things that cost q pence each."""
    fits = [goods for goods in GOODS if goods[2] <= 3 * q and q <= 2 * goods[2]]
    goods, short, _ = by_turns(fits or GOODS[:1], n // 5 + p // 50 + q // 20)
    each = q + p * q // 1000
    cost, taken = n * q, n * each
    paid, price = amount(cost, "£"), amount(each, "£") if each >= 100 else _pence(each)
    in_pounds, gain = amount(taken, "£"), amount(taken - cost, "£")
    x, count = t.Sym("x"), t.Int(n)
    profit = t.sub(t.times(count, price), paid)
    return Draft(
        prompt(
            f"A stall buys {{n}} {goods} for {{c}} and sells all the {short} at {{e}} each. "
            "What is the percentage profit?",
            n=count,
            c=paid,
            e=price,
        ),
        Find(x, (t.equals(x, t.divide(t.Bracket(profit), paid)),)),
        per_cent(p),
        "percentage",
        (
            Step("Find how much is taken.", t.equals(t.times(count, price), in_pounds)),
            Step("Find the profit.", t.equals(t.sub(in_pounds, paid), gain)),
            Step(
                "Divide by what was paid.",
                t.equals(t.divide(gain, paid), multiplier(p)),
            ),
            Step("Multiply by 100 for per cents.", t.equals(multiplier(p), per_cent(p))),
        ),
        wrong_percentages((COST_OF_ONE, CHANGE_AS, NEW_AS), profit_wrong(cost, taken), p),
        ("profit", p, n, q),
    )


def _pence(pence: int) -> t.Money:
    return t.Money(t.Int(pence), "p")


def as_multiplier(p: int, when: str = "afterwards") -> Step:
    """Return how the multiplier of a change of p tenths of a per cent is found."""
    return multiplier_step(f"Find what percentage there is {when}, as a decimal.", p)
