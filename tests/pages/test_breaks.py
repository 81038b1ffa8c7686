"""Where lines end, on every topic: no number parted from its noun, no last line of a short word.

The lines are judged as a reader sees them, by rules written again here.
"""

from __future__ import annotations

import random
import re
from itertools import pairwise

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.packs.data.convert import Faces
from itembank.packs.data.pack_item import Maths
from itembank.pages.engine.faces.fonts import face
from itembank.pages.engine.text.breaks import NO_BREAK, held
from itembank.pages.engine.text.flow import Flow
from itembank.pages.engine.text.paragraph import measure
from tests.depth import drawn, each, whole

WIDTHS = ((430, 26), (404, 24), (860, 26), (480, 14), (230, 12))
"""A column of a slide, one at the least size, a whole slide, a sheet and a slip: points, size."""
AN_ITEM = 12
"""Questions of each tier that are looked at, in `make test` one of each part."""
LITTLE = re.compile(
    "of|and|in|to|for|from|by|is|are|at|on|a|an|as|or|per|the|than|with|how|what|if|each"
    "|has|it|that|into|more|less|who|which|when|do|does|be|but|its|was|were|have|had"
    "|there|this|can|then|their|they|them|these|those|up|out|over|under|through|parallel"
    "|perpendicular|about|after|before|between|where"
)


def lines_of(block):
    """Return each line as (its text, whether it ends in a fraction, its first formula)."""
    for line in block.lines:
        shown = ""
        for placed in line.placed:
            atom = placed.atom
            shown += atom.text or (atom.maths.line if atom.maths else "")
        last, first = line.placed[-1].atom, line.placed[0].atom
        fraction = bool(last.maths) and last.maths.mathml.count("<mfrac") > 0
        yield shown.replace(NO_BREAK, " ").strip(), fraction, first.maths


def short_ends(block, prompt):
    """Yield each row of a prompt whose last line is one short word, but for the last row."""
    told = "".join(run.line if isinstance(run, Maths) else run.text for run in prompt)
    rows = [row.split() for row in told.replace(NO_BREAK, " ").split("\n") if row.strip()]
    lines = [shown for shown, _, _ in lines_of(block)]
    for row, after in pairwise(rows):
        for line, below in pairwise(lines):
            ends = line == row[-1] and below.startswith(after[0]) and len(row) > 1
            if ends and len(line.rstrip(".?!")) < 8:
                yield "a short end of a row", " ".join(row), line


def faults(block):
    lines = list(lines_of(block))
    for (a, fraction, _), (b, _, maths) in pairwise(lines):
        after = b.split()[0]
        word = after.strip(".,?!:;")
        counted = re.fullmatch("[a-z]{2,}", word) and not LITTLE.fullmatch(word)
        if counted and re.search(r"(?:^|\s)[£€]?\d(?:[\d.,]*\d)?$", a):
            yield "number from its noun or unit", a, b
        if fraction and after == "of":
            yield "fraction from of", a, b
        if a[-1].isalpha() and not maths and re.fullmatch(r"[A-Z][.,:?]?", after):
            yield "name from its letter", a, b
        side = r"(?:^|\s)[A-Z]{1,3}"
        if re.search(side + r" [=+]$", a) or (
            re.search(side + "$", a) and b.startswith(("= ", "+ "))
        ):
            yield "side from its length or from another", a, b
        if a[-1].isalpha() and maths and re.fullmatch(r"[a-z]", maths.line):
            yield "name from its letter", a, b
    last = lines[-1][0]
    if len(lines) > 1 and " " not in last and len(last.rstrip(".?!")) < 8:
        yield "a short last line", lines[-2][0], last


@whole
@pytest.mark.parametrize("topic_id", each(topic_ids(), 52))
def test_no_line_of_any_topic_ends_within_one_thing(topic_id):
    topic = find_topic(topic_id)
    rng = random.Random(5)
    found, faces = [], Faces()
    for tier in Tier:
        for index in drawn(topic.spaces[tier], AN_ITEM, rng):
            prompt = [faces.run(run) for run in topic.item(tier, index).prompt]
            flow = Flow(prompt)
            for width, size in WIDTHS:
                block = measure(flow, width, size)
                if not block.cramped:
                    both = (*faults(block), *short_ends(block, prompt))
                    found += [(tier.value, index, width, *fault) for fault in both]
    assert found == []


@example("aa b a")
@example("7  7")
@example("it is 7.\nA b")
@given(st.text("ab A7.,?£ \n", max_size=60))
def test_only_spaces_are_held_and_once_is_enough(text):
    made = held(text)
    assert made.replace(NO_BREAK, " ") == text
    assert held(made) == made


@pytest.mark.parametrize(
    ("words", "kept"),
    [
        ("There are 36 members.", "36 members."),
        ("The rope is 4 m long yesterday.", "4 m"),
        ("Look at shop B again yesterday.", "shop B"),
        ("Is it? The bus leaves soon.", "leaves soon."),
        ("Is it? A bus leaves yesterday.", "A bus"),
        ("Buy 6 of them today please.", "today please."),
        ("What is the size of it?", "of it?"),
        ("Is it? True or false? Explain yourself.", "True or false?"),
        ("The value today is 38.\nExplain yourself.", "is 38."),
        ("Write these in order, smallest first: yesterday afternoon.", "smallest first:"),
    ],
)
def test_what_is_held(words, kept):
    assert held(words) == words.replace(kept, kept.replace(" ", NO_BREAK))


@given(width=st.floats(60, 400))
def test_words_too_wide_for_a_column_do_not_leave_a_short_one_alone(width):
    block = measure(Flow("True or false? Be\u00a0ready\u00a0to\u00a0say\u00a0why."), width, 24.0)
    *_, (last, _, _) = lines_of(block)
    widest = face().width("say why.") * 24.0
    assert last != "why." or width < widest


@pytest.mark.parametrize("width", range(90, 300, 7))
def test_no_line_begins_or_ends_with_the_colon_of_a_ratio(width):
    """A topic is called so: on the map of topics every line that rests on it ended in ‘n’."""
    title = find_topic("ratio.unit-form").title
    assert " : " in title
    for shown, _, _ in lines_of(measure(Flow(title), width, 12)):
        assert not shown.startswith(":"), shown
        assert not shown.endswith(":"), shown
