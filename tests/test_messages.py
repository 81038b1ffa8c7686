"""Messages show a tree by `shown_line`, which refuses none; `line` is for what is read back."""

import ast
import re
from pathlib import Path

import itembank

ROOT = Path(itembank.__file__).parents[1]
READ_BACK = {
    "itembank/bank/question/judged_answers.py",  # the key of a question that it makes, and reads
    "itembank/figures/figure_data.py",
    "itembank/figures/kinds/grid/grid_readings.py",  # a point or line asked for, which it parses
    "itembank/figures/kinds/chance/sample_space.py",  # a number asked for, which its reading parses
    "itembank/figures/kinds/number/number_line_read.py",  # a number asked for, parsed when read
    "itembank/items/kinds/wrong_workings.py",  # looks for what the strict function refuses
    "itembank/items/measures/looks.py",  # compared, and told apart where it has no line
    "itembank/items/topics/frozen.py",
    "itembank/notation/__init__.py",
    "itembank/notation/line.py",
    "itembank/notation/parse.py",
    "itembank/packs/data/asks.py",
    "itembank/packs/data/convert.py",
    "itembank/packs/data/read_back.py",
    "itembank/proof/lines/writing.py",  # looks for what the strict function refuses
}
"""The files in which the line of a tree is kept or compared, and shown to nobody."""
WHERE = ("itembank.notation", "itembank.notation.line", "itembank.notation.tree.written")


IMPORTED = re.compile(r"\bline\b")


def takes_the_strict_line(source):
    if WHERE[0] not in source or not IMPORTED.search(source):
        return False  # most files are not worth parsing
    return any(
        isinstance(node, ast.ImportFrom)
        and node.module in WHERE
        and any(name.name == "line" for name in node.names)
        for node in ast.walk(ast.parse(source))
    )


def test_only_what_is_read_back_is_written_by_the_function_that_refuses():
    files = [path for part in ("itembank", "generators") for path in (ROOT / part).rglob("*.py")]
    assert len(files) > 300
    found = {
        path.relative_to(ROOT).as_posix()
        for path in files
        if takes_the_strict_line(path.read_text(encoding="utf-8"))
    }
    assert found == READ_BACK


def test_the_search_finds_it_however_it_is_imported():
    assert takes_the_strict_line("from itembank.notation import line")
    assert takes_the_strict_line("def f():\n    from itembank.notation.line import line as write")
    assert not takes_the_strict_line("from itembank.notation.line import shown_line")
