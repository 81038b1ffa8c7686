"""More than one density: a mixture, and the densest of three pieces."""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._density_mistakes import HEAVIEST, MEAN, ONE_MASS, SMALLEST
from generators.ratio._density_numbers import three_pieces
from generators.ratio._materials import CM3, MIXED
from generators.ratio._parts import amount
from generators.ratio._rates import written, wrong_amounts
from itembank.items.item import Choose, Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_X = t.Sym("x")


def mixture(pair: int, b: int, c: int) -> Draft:
    """Return the question for the density of a mixture of two liquids, b and c cm³ of them."""
    first, second = MIXED[pair]
    rates = [amount(Fraction(density, 100), CM3) for density in (first, second)]
    rooms = [amount(volume, "cm^3") for volume in (b, c)]
    masses = [amount(first * b // 100, "g"), amount(second * c // 100, "g")]
    average = Fraction(first * b + second * c, 100 * (b + c))
    mass, room = amount((first * b + second * c) // 100, "g"), amount(b + c, "cm^3")
    products = [t.times(rate, volume) for rate, volume in zip(rates, rooms, strict=True)]
    return Draft(
        prompt(
            "A cook mixes {v} of syrup, of density {d}, with {w} of juice, of density {e}. "
            "The volumes add up. Work out the density of the mixture in g/cm³.",
            v=rooms[0],
            d=rates[0],
            w=rooms[1],
            e=rates[1],
        ),
        Find(
            _X,
            (t.equals(_X, t.divide(t.Bracket(t.add(*products)), t.Bracket(t.add(*rooms)))),),
        ),
        amount(average, CM3),
        "quantity",
        (
            Step("Find the mass of the syrup.", t.equals(products[0], masses[0])),
            Step("Find the mass of the juice.", t.equals(products[1], masses[1])),
            Step("Add the masses.", t.equals(t.add(*masses), mass)),
            Step("Add the volumes.", t.equals(t.add(*rooms), room)),
            Step(
                "Divide all of the mass by all of the volume.",
                t.equals(t.divide(mass, room), amount(average, CM3)),
            ),
        ),
        wrong_amounts(
            CM3,
            average,
            (MEAN, ONE_MASS),
            (written(first + second, 200, 3), written(first + second, 100)),
        ),
        ("mixture", pair, b, c),
    )


def densest(a: int, b: int, c: int) -> Draft:
    """Return the question which of three pieces of metal is the densest."""
    pieces = three_pieces(a, b, c)
    turn = (a // 4 + b // 10 + c) % 3
    placed = pieces[turn:] + pieces[:turn]
    names = {piece: f"Piece {letter}" for piece, letter in zip(placed, "ABC", strict=True)}
    text = "Which piece of metal is the densest? " + " ".join(
        f"{names[piece]}: {{m{k}}} and {{v{k}}}." for k, piece in enumerate(placed)
    )
    runs: dict[str, t.Node] = {}
    for k, (mass, volume) in enumerate(placed):
        runs[f"m{k}"], runs[f"v{k}"] = amount(mass, "g"), amount(volume, "cm^3")
    key = t.Label(names[pieces[1]])
    sums = {piece: t.divide(amount(piece[0], "g"), amount(piece[1], "cm^3")) for piece in placed}
    return Draft(
        prompt(text, **runs),
        Choose(tuple((names[piece], sums[piece]) for piece in placed), "greatest"),
        key,
        "name",
        (
            *(
                Step(
                    f"{names[piece]}: divide the mass by the volume.",
                    t.equals(sums[piece], amount(Fraction(*piece), CM3)),
                )
                for piece in placed
            ),
            Step("Compare the densities.", key),
        ),
        slips((SMALLEST, t.Label(names[pieces[0]])), (HEAVIEST, t.Label(names[pieces[2]]))),
        ("densest", a, b, c),
    )
