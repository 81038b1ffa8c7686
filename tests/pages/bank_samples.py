"""A pack of questions as departments write them: one of each thing a bank can ask for."""

from __future__ import annotations

import datetime

from itembank.packs.data.pack import BankLine, LeftOut, Provenance
from itembank.packs.data.pack_item import PackItem, SignOff, Source
from itembank.packs.data.pack_item import Step as PackStep
from tests.pages.samples import item, maths, pack

ASKED = {
    "work-out": ("Work out $2 1/3 × 1 3/4 − 5/6$.", "3 1/4"),
    "when": ("Work out $3x² − 2x + 5$ when $x = −4$.", "61"),
    "surd": ("Simplify $√72 + 3√50 − √8$.", "19√2"),
    "rational": ("Rationalise the denominator of $6/(2√3)$.", "√3"),
    "simplify": ("Simplify $7a + 4b − 2a + 3b − 5a² + 2a²$.", "-3a² + 5a + 7b"),
    "index": ("Simplify $(3x²y)³ ÷ (9x⁴y²)$.", "3x²y"),
    "expand": ("Expand and simplify $(2x − 3)(x + 5) − (x − 1)²$.", "x² + 9x − 16"),
    "factorise": ("Factorise $6x² − 7x − 20$.", "(2x − 5)(3x + 4)"),
    "quadratic": ("Solve $x² − 3x − 28 = 0$.", "x = −4 or x = 7"),
    "surd-roots": (
        "Solve $x² − 6x + 7 = 0$. Leave your answers as surds.",
        "x = 3 − √2 or x = 3 + √2",
    ),
    "pair": ("Solve $3x + 2y = 16$ and $5x − 2y = 0$.", "x = 2, y = 5"),
    "inequality": ("Solve $−3 < 2x + 5 ≤ 11$.", "−4 < x ≤ 3"),
    "subject": ("Make $t$ the subject of $v² = u² + 2at$.", "t = (v² − u²)/(2a)"),
    "share": ("Share $£60$ in the ratio $2 : 3$.", "£24, £36"),
    "order": (
        "Put these in order, smallest first: $−2/3, −0.7, 65%, 3/5$.",
        "−0.7, −2/3, 3/5, 65%",
    ),
    "compare": ("Which sign goes between $3/8$ and $0.4$?", "3/8 < 0.4"),
    "standard": (
        "Work out $(3.2 × 10^5) × (4 × 10^−3)$. Answer in standard form.",
        "1.28 × 10^3",
    ),
    "sequence": ("Find the nth term of $5, 11, 19, 29, 41$.", "n² + 3n + 1"),
    "hcf": ("Find the highest common factor of $84$ and $126$.", "42"),
    "primes": ("Write $360$ as a product of powers of its prime factors.", "2³ × 3² × 5"),
    "round": ("Round $0.040567$ to 3 significant figures.", "0.0406"),
    "long": (
        "Solve $(3(2x − 1))/4 − (2(x + 5))/3 = (5x − 7)/6 + (x + 2)/12$.",
        "x = −39",
    ),
}
"""A prompt and an answer of each kind; how they look is tested here, not what they are worth."""

SOURCES = (
    Source(kind="generated", proved="from the printed mathematics"),
    Source(
        kind="bank",
        bank="larkhythe",
        id="garden-12",
        hash="9f" * 32,
        proved="from a model of the words",
        sign_off="signed",
        signed=[SignOff(by="HT", on=datetime.date(2026, 9, 14))],
        author="KS",
    ),
    Source(
        kind="bank",
        bank="larkhythe",
        id="buses-3",
        hash="1c" * 32,
        proved="from the printed mathematics",
        sign_off="unsigned",
    ),
    Source(
        kind="bank",
        bank="key-stage-3",
        id="a-question-with-quite-a-long-name-7",
        hash="77" * 32,
        proved="from the printed mathematics",
        sign_off="stale",
        signed=[
            SignOff(by="HT", on=datetime.date(2026, 9, 14)),
            SignOff(by="KS", on=datetime.date(2026, 10, 2)),
        ],
    ),
)


def asked(kind: str, number: int = 0) -> PackItem:
    """Return the sample of a kind, the number deciding its source."""
    prompt, key = ASKED[kind]
    made = item(prompt, key, number=number)
    source = SOURCES[number % len(SOURCES)]
    address = f"{source.bank}:{source.id}-{number}" if source.kind == "bank" else made.address
    step = PackStep(say="Write out what is asked.", maths=maths(key))
    return made.model_copy(update={"source": source, "address": address, "steps": [step]})


def every_kind() -> list[PackItem]:
    """Return one question of each kind."""
    return [asked(kind, number) for number, kind in enumerate(ASKED)]


def packs():
    """Return packs that hold every kind, eight questions at a time."""
    items = every_kind()
    drawing = Provenance(
        questions_from="both",
        banks=[
            BankLine(name="larkhythe", title="Larkhythe School’s own questions"),
            BankLine(name="key-stage-3", title="Number, ratio and algebra"),
        ],
        offered=19,
        left_out=[LeftOut(why="disproved", count=1), LeftOut(why="needs a person", count=2)],
        follow_up=10,
    )
    made = [pack(items[start : start + 8], title="Every kind") for start in (0, 7, 14)]
    return [one.model_copy(update={"drawing": drawing}) for one in made]
