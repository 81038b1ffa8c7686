"""Packs built by hand for the tests of the pages: plain ones and nasty ones."""

from __future__ import annotations

import datetime
from functools import cache

from itembank.notation.line import line
from itembank.notation.mathml import mathml
from itembank.notation.parse import parse
from itembank.notation.words import words
from itembank.packs.data.pack import Band, Lesson, Look, NextTask, Pack, Sheet, TopicLine, Version
from itembank.packs.data.pack_item import (
    Ask,
    Key,
    MathRun,
    Maths,
    Misconception,
    PackItem,
    Run,
    Step,
    TextRun,
)


@cache
def faces(text: str) -> tuple[str, str, str]:
    tree = parse(text)
    return mathml(tree), line(tree), words(tree)


def maths(text: str) -> Maths:
    written = faces(text)
    return Maths(mathml=written[0], line=written[1], words=written[2])


def runs(text: str) -> list[Run]:
    """Return a prompt from text with mathematics between dollar signs, in line notation."""
    out: list[Run] = []
    for i, part in enumerate(text.split("$")):
        if i % 2:
            out.append(MathRun(**maths(part).model_dump()))
        elif part:
            out.append(TextRun(text=part))
    return out


def item(prompt: str, key: str, marks: int = 1, tier: str = "core", number: int = 0) -> PackItem:
    return PackItem(
        address=f"fractions.add-unlike/{tier}/{number}",
        topic="fractions.add-unlike",
        topic_title="Adding and subtracting fractions",
        tier=tier,
        marks=marks,
        difficulty=2.0,
        prompt=runs(prompt),
        key=Key(**maths(key).model_dump(), form="lowest-terms", form_words="in its lowest terms"),
        ask=Ask(kind="find", target=[line(parse("3/4"))]),
        steps=[
            Step(say="Write both over 12.", maths=maths("3/4 + 1/6 = 9/12 + 2/12")),
            Step(say="Add the numerators.", maths=maths("9/12 + 2/12 = 11/12")),
        ],
        misconceptions=[
            Misconception(
                id="add-across",
                name="adds tops and bottoms",
                wrong=maths("4/10"),
                ask="Is your answer bigger than the fraction you started with?",
            )
        ],
    )


PLAIN = [
    item("Work out $3/4 + 1/6$.", "11/12", number=1),
    item("Simplify the ratio $18 : 24$.", "3 : 4", number=2),
    item("Solve $3x + 5 = 20$.", "x = 5", number=3),
    item("Write $2 3/5$ as an improper fraction.", "13/5", number=4),
    item("Find $3/8$ of $£64$.", "£24", number=5),
    item("Put these in order, smallest first: $2/3, 0.6, 65%$.", "0.6, 65%, 2/3", number=6),
    item("Work out $1 1/2 ÷ 3/4$.", "2", number=7),
    item("Solve $4(x - 2) = 2x + 7$.", "x = 7 1/2", marks=2, number=8),
]

LONG = (
    "A market gardener fills trays with lettuce and radish seedlings in the ratio $5 : 3$. "
    "On Friday she fills $48$ trays altogether. How many more trays of lettuce than of radish "
    "does she fill? Give your answer in its simplest form."
)

NASTY = [
    item(LONG, "12", marks=3, number=11),
    item("Work out $(3/4 + 1/6)/(2/3 - 1/9)$.", "1 13/20", number=12),
    item(
        "Solve $3x + 4x + 5x + 6x + 7x + 8x + 9x = 12x + 13x + 14x + 15x - 16 + 17$.",
        "x = -1/12",
        number=13,
    ),
    item("Fill in the box: $□/12 = 3/4$.", "9", number=14),
    item("Write $0.1̇6̇$ as a fraction.", "16/99", number=15),
    item("Which is greatest: $-3 1/2, -3.45, -7/2 + 1/100, √16, 2^3, 34.5%$?", "2^3", number=16),
    item(
        "The temperature in the bus depot is $-4$ °C at 06:00. It rises by $3/4$ of a degree "
        "each hour. What is it at noon?",
        "1/2",
        number=17,
    ),
    item(
        "A swimming club’s lane is $25 m$ long. Amara swims $3/5$ of her $2 km$ in $40 min$. "
        "How far is left?",
        "800 m",
        number=18,
    ),
]


def task(title: str) -> NextTask:
    return NextTask(
        title=title,
        tier="core",
        mode="in pairs",
        worked_example=False,
        where="Stay in your seat. Take a core sheet.",
        first="Put right one question you got wrong.",
        how="Do one each, then compare and agree.",
        stuck="Ask your partner, then ask your teacher.",
        finished="Check, then try a challenge sheet.",
    )


def band(name: str, letter: str, shape: str, colour: str, colour_name: str, low: int, high: int):
    return Band(
        name=name,
        letter=letter,
        shape=shape,
        colour=colour,
        colour_name=colour_name,
        lowest=low,
        highest=high,
        task=task(f"Task of {name}"),
    )


def three_bands(marks: int) -> list[Band]:
    low, mid = marks // 2, (marks * 3) // 4
    return [
        band("Rebuild", "R", "house", "#E69F00", "orange", 0, low),
        band("Secure", "S", "ring", "#56B4E9", "sky blue", low + 1, mid),
        band("Extend", "E", "arch", "#009E73", "green", mid + 1, marks),
    ]


def five_bands(marks: int) -> list[Band]:
    step = marks // 5
    rows = [
        ("Rebuilding with the teacher", "RB", "house", "#D55E00", "vermilion"),
        ("Practising in pairs", "P", "book", "#56B4E9", "sky blue"),
        ("Secure", "S", "ring", "#009E73", "green"),
        ("Extending independently", "E", "arch", "#F0E442", "yellow"),
        ("Deepening", "D", "leaf", "#CC79A7", "pink"),
    ]
    out = []
    for i, (name, letter, shape, colour, colour_name) in enumerate(rows):
        low = 0 if i == 0 else i * step + 1
        high = marks if i == 4 else (i + 1) * step
        out.append(band(name, letter, shape, colour, colour_name, low, high))
    return out


def pack(
    items: list[PackItem] | None = None,
    bands: str = "three",
    look: Look | None = None,
    versions: int = 1,
    title: str = "Fractions and ratio review",
) -> Pack:
    items = PLAIN if items is None else items
    marks = sum(i.marks for i in items)
    return Pack(
        made_by="itembank 0.1.0",
        seed=7,
        lesson=Lesson(
            school="Larkhythe School",
            class_name="8K",
            date=datetime.date(2026, 11, 30),
            title=title,
        ),
        topics=[TopicLine(id="fractions.add-unlike", title="Adding and subtracting fractions")],
        versions=[Version(letter="ABCDEF"[i], items=items) for i in range(versions)],
        bands=three_bands(marks) if bands == "three" else five_bands(marks),
        sheets=[Sheet(tier="core", items=items)],
        look=look or Look(),
    )


def twenty() -> list[PackItem]:
    return [*PLAIN, *NASTY, *PLAIN[:4]]


PACKS = {
    "plain": pack(),
    "nasty": pack(NASTY, "five"),
    "twenty": pack(twenty(), "five", title="A very long lesson title that goes on " * 3),
    "one": pack([NASTY[0]]),
    "large": pack(PLAIN, look=Look(large_print=("A3", "C5"), paper="cream", slips=True)),
    "large-nasty": pack(
        NASTY,
        "five",
        look=Look(large_print=("B-1234-X",), paper="yellow", print_tint=True, slips=True),
    ),
    "versions": pack(PLAIN, versions=3, look=Look(paper="green", large_print=("", "", ""))),
}
