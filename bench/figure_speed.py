"""Pages with figures of every kind, drawn by us and by typst: the same lines and labels."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
import time
from functools import partial
from pathlib import Path

from timing import ROOT, Cost, Missing, in_turn, table

ROUNDS = 5
EACH = 6
"""Figures of each kind."""
SIZE = 14.0
WANTED = 1.5
"""At most so many times typst's time."""


def figures() -> list[tuple[object, str]]:
    """Return the drawings with their words."""
    sys.path.insert(0, str(ROOT))
    from itembank.figures.figure import drawn, words
    from tests.figures.every_figure import examples, names

    return [(drawn(figure), words(figure)) for name in names() for figure in examples(name, EACH)]


def ours(folder: Path) -> Cost:
    """Draw every figure on a page of its own."""
    from itembank.pages.engine.page.page import Document
    from itembank.pages.engine.text.picture import draw_marks

    found = figures()

    def draw(some: list[tuple[object, str]]) -> bytes:
        document = Document("Figures")
        for made, said in some:
            draw_marks(document.page((595.28, 841.89)), made, said, 45, 400, SIZE)  # type: ignore[arg-type]
        return document.finish()

    import reportlab.pdfgen.canvas  # noqa: F401 - imports are left out

    draw(found[:1])
    return _timed(lambda: draw(found), folder / "ours.pdf")


def typst(folder: Path) -> Cost:
    """Compile the same figures."""
    import typst as compiler

    fonts = [(folder / "fonts.txt").read_text("utf-8")]

    def run() -> bytes:
        made: bytes = compiler.compile(
            str(folder / "figures.typ"),
            format="pdf",
            font_paths=fonts,
            ignore_system_fonts=True,
            pdf_standards=["ua-1"],
        )
        return made

    return _timed(run, folder / "typst.pdf")


def _timed(run: object, path: Path) -> Cost:
    cpu, start = time.process_time(), time.perf_counter()
    data = run()  # type: ignore[operator]
    cost = Cost(time.perf_counter() - start, time.process_time() - cpu)
    path.write_bytes(data)
    return cost


def _apart(engine: str, folder: Path) -> Cost:
    command = [sys.executable, __file__, engine, str(folder)]
    done = subprocess.run(command, capture_output=True, encoding="utf-8", check=False)
    if done.returncode:
        raise Missing((done.stderr.strip() or "no message").splitlines()[-1])
    return Cost(**json.loads(done.stdout.splitlines()[-1]))


def report() -> str:
    """Measure and return a table."""
    import fontpkg_atkinson_hyperlegible
    from figure_source import source

    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        fonts = Path(str(fontpkg_atkinson_hyperlegible.__file__)).parent / "files"
        (folder / "fonts.txt").write_text(str(fonts), "utf-8")
        found = figures()
        (folder / "figures.typ").write_text(source(found, SIZE), "utf-8")  # type: ignore[arg-type]
        costs = in_turn(
            {engine: partial(_apart, engine, folder) for engine in ("ours", "typst")}, ROUNDS
        )
    rows = [("engine", "seconds", "on all cores")]
    rows += [
        (engine, f"{cost.wall:.3f}", f"{cost.cpu:.3f}")
        for engine, cost in costs.items()
        if isinstance(cost, Cost)
    ]
    notes = [f"  {k} was not measured: {v}" for k, v in costs.items() if isinstance(v, str)]
    mine, other = costs["ours"], costs["typst"]
    if isinstance(mine, Cost) and isinstance(other, Cost):
        notes.append(
            f"  Ours take {mine.cpu / other.cpu:.2f} × typst's time on all cores, "
            f"{mine.wall / other.wall:.2f} × by the clock (wanted: at most {WANTED} ×)."
        )
    head = f"{len(found)} figures, {EACH} of each kind, a page each, median of {ROUNDS}, in turn"
    return "\n".join([head, table(rows), *notes])


if __name__ == "__main__":
    took = {"ours": ours, "typst": typst}[sys.argv[1]](Path(sys.argv[2]))
    print(json.dumps({"wall": took.wall, "cpu": took.cpu}), flush=True)
    os._exit(0)
