"""The recipe of DEVELOPERS.md works: its kind of figure is drawn, read, measured and proved."""

import re
import sys
import types
from pathlib import Path

import pytest

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import as_item
from itembank.figures import figure as table
from itembank.figures.figure import FigureError, drawn
from itembank.figures.figure_data import from_data, to_data
from itembank.figures.svg import svg
from itembank.proof.judge import judge
from itembank.proof.measured.measure import disagreement
from itembank.proof.outcome import State
from tests.figures import test_every_figure

TEXT = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text("utf-8")
KIND, MEASURED, MAKER = re.findall(
    r"^```python\n(.*?)^```$",
    TEXT.split("\n### Adding a kind of figure\n", 1)[1].split("\n## ", 1)[0],
    re.DOTALL | re.MULTILINE,
)


@pytest.fixture(autouse=True)
def recipe(monkeypatch):
    """Put the two files of the page where the page says, and take them away again."""
    tables = [(kept, dict(kept)) for kept in (table.KINDS, table._BY_CLASS)]
    for name, code in (
        ("itembank.figures.kinds.number.dot_row", KIND),
        ("itembank.proof.measured.number.dot_row_measured", MEASURED),
        ("tests.figures.examples.dot_row", MAKER),
    ):
        module = types.ModuleType(name)
        monkeypatch.setitem(sys.modules, name, module)
        exec(compile(code, f"<{name}>", "exec", dont_inherit=True), module.__dict__)
    yield
    for kept, before in tables:
        kept.clear()
        kept.update(before)


def judged(key):
    fields = {
        "id": "a-1",
        "tier": "core",
        "prompt": "How many dots are there?",
        "key": key,
        "figure": {"kind": "dot row", "dots": 7},
    }
    item = BankItem.model_validate(fields)
    return judge(as_item(Entry(item, "number.try", "try", Path("number.try.toml"), 1)))


def test_the_kind_is_drawn_read_and_proved():
    figure = from_data({"kind": "dot row", "dots": 7})
    assert from_data(to_data(figure)) == figure
    assert len(drawn(figure).marks) == 7
    assert disagreement(figure) == ""
    assert svg(figure).count("<circle") == 7
    assert judged("7").state is State.PROVED
    assert judged("6").state is State.DISPROVED


def test_its_fault_is_told():
    with pytest.raises(FigureError, match="1 to 12 dots"):
        from_data({"kind": "dot row", "dots": 13})


@pytest.mark.parametrize(
    "holds_for_every_kind",
    [
        test_every_figure.test_a_figure_comes_back_from_its_data,
        test_every_figure.test_the_drawing_is_exact,
        test_every_figure.test_what_is_read_is_what_is_measured,
        test_every_figure.test_labels_touch_neither_one_another_nor_a_stroke,
        test_every_figure.test_the_words_are_whole_sentences_and_differ_where_answers_do,
        test_every_figure.test_the_picture_for_web_pages_is_one_element_without_style_or_script,
    ],
)
def test_its_random_figures_pass_what_every_kind_passes(holds_for_every_kind):
    holds_for_every_kind("dot row")


def test_a_dot_of_it_out_of_place_is_found_out(monkeypatch):
    test_every_figure.test_a_drawing_moved_out_of_place_is_found_out("dot row", monkeypatch)
