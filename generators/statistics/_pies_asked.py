"""What is asked about a pie chart: its largest sector, an angle, a fraction, or how many."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.statistics import _chart_mistakes as m
from generators.statistics._charts import Wrongs
from generators.statistics._pies import STORIES, count_for, lead_to, pie_chart, two_sectors
from itembank.items.asks.of_figure import of_figure
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


class Ask:
    """What is asked."""

    MOST, MISSING, FRACTION, COUNT, EACH, MORE = range(6)


def _most(story: int, angles: tuple[int, ...], seed: int) -> Draft:
    _, names, _, _ = STORIES[story]
    most = seed % 2 == 0
    best = names[angles.index((max if most else min)(angles))]
    other = names[angles.index((min if most else max)(angles))]
    figure = pie_chart(story, angles)
    text = (f"{lead_to(story)} Which sector is the {'largest' if most else 'smallest'}?",)
    key = t.Label(best)
    turned = sorted(angles)
    second = names[angles.index(turned[-2] if most else turned[1])]
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        (
            Step(
                f"The {'largest' if most else 'smallest'} sector has the "
                f"{'largest' if most else 'smallest'} angle.",
                key,
            ),
        ),
        slips((m.OTHER_END, t.Label(other)), (m.NEXT_ANGLE, t.Label(second)), key=key),
        ("most", most, *angles),
        figure=figure,
    )


def _missing(story: int, angles: tuple[int, ...], seed: int) -> Draft:
    place = seed % 4
    hidden = angles[place]
    known = [angle for at, angle in enumerate(angles) if at != place]
    figure = pie_chart(story, angles, hidden=place)
    x = t.Sym("x")
    text = prompt(f"{lead_to(story)} Work out the value of {{x}}.", x=x)
    key = t.equals(x, t.Int(hidden))
    added = sum(known)
    wrong: list[tuple[Any, t.Node]] = [(m.ADDS_ANGLES, t.equals(x, t.Int(added)))]
    if added < 180:
        wrong.append((m.TURN_IS_180, t.equals(x, t.Int(180 - added))))
    else:
        wrong.append((m.QUARTER_EACH, t.equals(x, t.Int(90))))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "solution",
        (
            Step(
                "Add the angles that are known.", t.equals(t.add(*map(t.Int, known)), t.Int(added))
            ),
            Step(
                "The angles add up to 360°.",
                t.equals(t.add(x, t.Int(added)), t.Int(360)),
            ),
            Step(f"Subtract {added} from 360.", key),
        ),
        slips(*wrong, key=key),
        ("missing", place, *angles),
        figure=figure,
    )


def _fraction(story: int, angles: tuple[int, ...], seed: int) -> Draft:
    thing, names, verb, _ = STORIES[story]
    degrees, name = angles[seed % 4], names[seed % 4]
    figure = pie_chart(story, angles)
    text = (
        f"{lead_to(story)} What fraction of the {thing} {verb} {name}? "
        "Give your answer in its simplest form.",
    )
    key = number_node(Fraction(degrees, 360))
    unlike_ = t.frac(degrees, 360)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "lowest-terms",
        (
            Step("The whole circle is 360°.", unlike_),
            Step("Write it in its simplest form.", t.equals(unlike_, key)),
        ),
        slips(
            (m.OUT_OF_100, number_node(Fraction(degrees, 100))),
            (m.QUARTER_EACH, number_node(Fraction(1, 4))),
            (m.OTHER_PART, number_node(Fraction(360 - degrees, 360))),
            key=key,
        ),
        ("fraction", name, *angles),
        figure=figure,
    )


def _worked(total: int, degrees: int, say: str) -> Step:
    part = number_node(Fraction(degrees, 360))
    return Step(
        say,
        t.equals(t.times(part, t.Int(total)), t.Int(int(count_for(total, degrees)))),
    )


def _how_many(story: int, angles: tuple[int, ...], total: int, seed: int) -> Draft:
    thing, names, verb, _ = STORIES[story]
    degrees, name = angles[seed % 4], names[seed % 4]
    figure = pie_chart(story, angles, total)
    text = (f"{lead_to(story)} How many {thing} {verb} {name}?",)
    key = t.Int(int(count_for(total, degrees)))
    part = number_node(Fraction(degrees, 360))
    wrong: Wrongs = [
        (m.ANGLE_AS_COUNT, degrees),
        (m.QUARTER_EACH, Fraction(total, 4) if total % 4 == 0 else None),
        (m.DIVIDES_BY_ANGLE, Fraction(360, degrees) if 360 % degrees == 0 else None),
        (m.OTHER_PART, total - key.n),
    ]
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            Step("Write the angle as a fraction of 360°.", t.equals(t.frac(degrees, 360), part)),
            _worked(total, degrees, "Find that fraction of all."),
        ),
        slips(*wrong, key=key),
        ("count", name, total, *angles),
        figure=figure,
    )


def _more(story: int, angles: tuple[int, ...], total: int, seed: int) -> Draft:
    thing, names, verb, _ = STORIES[story]
    first, second = two_sectors(seed)
    if angles[first] < angles[second]:
        first, second = second, first
    figure = pie_chart(story, angles, total)
    a, b = (int(count_for(total, angles[place])) for place in (first, second))
    fewer = seed % 2 == 1
    text = (
        f"{lead_to(story)} How many fewer {thing} {verb} {names[second]} than {names[first]}?"
        if fewer
        else f"{lead_to(story)} How many more {thing} {verb} {names[first]} than {names[second]}?",
    )
    key = t.Int(a - b)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "integer",
        (
            _worked(total, angles[first], f"Find how many {verb} {names[first]}."),
            _worked(total, angles[second], f"Find how many {verb} {names[second]}."),
            Step("Subtract.", t.equals(t.sub(t.Int(a), t.Int(b)), key)),
        ),
        slips(
            (m.DEGREES_FOR_MORE, angles[first] - angles[second]),
            (m.ADDS_FOR_MORE, a + b),
            (m.READS_ONE_OF_TWO, b if fewer else a),
            key=key,
        ),
        ("more", total, names[first], names[second], *angles),
        figure=figure,
    )


def _each(story: int, angles: tuple[int, ...], total: int, seed: int) -> Draft:
    thing = STORIES[story][0]
    single = {"people": "person"}.get(thing, thing.removesuffix("s"))
    figure = pie_chart(story, angles, total)
    text = (f"{lead_to(story)} How many degrees stand for one {single}?",)
    degrees = 360 // total
    key = t.Quantity(t.Int(degrees), "°")
    half, hundredth = Fraction(180, total), Fraction(100, total)
    wrong: list[tuple[Any, t.Node]] = [
        (m.TOTAL_AS_DEGREES, t.Quantity(t.Int(total), "°")),
        (m.TURN_IS_180, t.Quantity(decimal_node(half), "°")),
    ]
    if (hundredth * 10).denominator == 1:
        wrong.append((m.OUT_OF_100, t.Quantity(decimal_node(hundredth), "°")))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "quantity",
        (
            Step(
                f"All 360° stand for {total} {thing}: divide by {total}.",
                t.equals(t.divide(t.Quantity(t.Int(360), "°"), t.Int(total)), key),
            ),
        ),
        slips(*wrong, key=key),
        ("each", total, *angles),
        figure=figure,
        constants=(360,),
    )


ALONE = {Ask.MOST: _most, Ask.MISSING: _missing, Ask.FRACTION: _fraction}
OF_ALL = {Ask.COUNT: _how_many, Ask.MORE: _more, Ask.EACH: _each}
