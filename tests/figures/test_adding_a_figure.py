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

TEXT = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text("utf-8")
KIND, MEASURED = re.findall(
    r"^```python\n(.*?)^```$",
    TEXT.split("\n### Adding a kind of figure\n", 1)[1].split("\n## ", 1)[0],
    re.DOTALL | re.MULTILINE,
)


@pytest.fixture(autouse=True)
def recipe(monkeypatch):
    """Put the two files of the page where the page says, and take them away again."""
    tables = [(kept, dict(kept)) for kept in (table.KINDS, table._BY_CLASS)]
    for name, code in (
        ("itembank.figures.kinds.dot_row", KIND),
        ("itembank.proof.measured.dot_row_measured", MEASURED),
    ):
        module = types.ModuleType(name)
        monkeypatch.setitem(sys.modules, name, module)
        exec(code, module.__dict__)
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
