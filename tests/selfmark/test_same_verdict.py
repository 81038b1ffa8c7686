"""The page's marker says of every answer what the marker says: verdict, sentence and mistake.

Some thousands of answers of every sort, to questions of every topic, tier and kind and of the
shipped banks, are marked by both: all that stand in the list of typed answers, and of those that
are drawn as many of each question as show each sort often. `make explore` marks forty thousand,
and ``python -m tests.selfmark.fuzz`` as many as there is time for.
"""

import random
from collections import Counter

import pytest

from itembank.marking.mark import mark
from itembank.notation.line import shown_line
from itembank.selfmark.html_page import page_script
from itembank.selfmark.questions import question_data
from tests.depth import cases, whole
from tests.selfmark.answers import answers_to, drawn_items, typed_answers

LEAST = cases(3_000, 40_000, 20_000)
MARK_ALL = """
(cases) => cases.map(([data, answers]) => {
  const q = window.selfmark.question(data);
  return answers.map((answer) => {
    const found = window.selfmark.mark(q, answer);
    return [found.verdict, found.says, found.slip < 0 ? "" : q.slips[found.slip].id];
  });
})
"""


def said(item, answer):
    marked = mark(item, answer)
    mistake = marked.misconception.id if marked.misconception else ""
    return [marked.verdict.value, marked.says, mistake]


def marker_page(browser, *changes):
    """Return a page that has the marker of every self-marking page, and nothing else of it."""
    page = browser.new_page()
    script = page_script()
    for old, new in (("begin();\n", "window.selfmark = { mark, question };\n"), *changes):
        assert old in script
        script = script.replace(old, new)
    page.set_content('<p id="old"></p>')
    page.add_script_tag(content=script)
    return page


@pytest.fixture(scope="module")
def cases():
    rng = random.Random(20261128)
    items = drawn_items()
    keys = [shown_line(item.key) for item in items]
    listed = list(typed_answers())
    drawn = [(item, answers_to(item, rng, keys)) for item in items]
    # As many of each question as come to the number wanted: all kinds, not all spellings.
    most = 2 + (LEAST - sum(len(answers) for _, answers in listed)) // len(drawn)
    some = [(item, rng.sample(answers, min(most, len(answers)))) for item, answers in drawn]
    return [*listed, *some]


@pytest.fixture(scope="module")
def marked(browser, cases):
    """Return what the page says of every case."""
    page = marker_page(browser)
    return page.evaluate(MARK_ALL, [[question_data(item), given] for item, given in cases])


@whole
def test_both_markers_say_the_same_of_thousands_of_answers(cases, marked):
    count, differ, undecided, verdicts = 0, [], [], Counter()
    for (item, given), found in zip(cases, marked, strict=True):
        for answer, mine in zip(given, found, strict=True):
            count += 1
            wanted = said(item, answer)
            verdicts[wanted[0]] += 1
            if mine[0] == "undecided":
                undecided.append(answer)
            elif mine != wanted:
                differ.append((item.address, answer, wanted, mine))
    assert differ[:5] == []
    assert count >= LEAST
    assert min(verdicts.values()) > LEAST / 40
    assert len(verdicts) == 5
    assert undecided == []


OLD_PATTERNS = ("LOOKS_BACK = canLookBack()", "LOOKS_BACK = false")
LONG_FORM = ("short = COMMON_TEXT.test(text)", "short = false")


@whole
@pytest.mark.parametrize("change", [OLD_PATTERNS, LONG_FORM])
def test_an_old_browser_and_strange_letters_change_no_verdict(browser, cases, marked, change):
    few = [[question_data(item), given] for item, given in cases[::12]]
    assert marker_page(browser, change).evaluate(MARK_ALL, few) == marked[::12]
