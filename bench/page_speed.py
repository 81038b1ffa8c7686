"""The pages of one pack, laid out by us and by two general-purpose engines."""

from __future__ import annotations

import datetime
import importlib.util
import json
import subprocess
import sys
import tempfile
import time
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from timing import Cost, Missing, in_turn, table

if TYPE_CHECKING:
    from itembank.packs.data.pack import Pack

ROUNDS = 5
ENGINES = ("ours", "typst", "weasyprint")
WANTED = 8.0
"""How many times faster than weasyprint our pages must be."""
TOPICS = ("fractions.add-unlike", "fractions.of-quantity", "ratio.simplest-form", "ratio.share")


def a_pack() -> Pack:
    """Return the pack that is laid out: like the demo department's for class 8K."""
    from itembank.packs.build import build_pack
    from itembank.planning.bands.bands import default_scheme
    from itembank.planning.department.large_copies import LargePrint
    from itembank.planning.department.pack_request import PackRequest, PlannedTopic

    request = PackRequest(
        school="Larkhythe School",
        class_name="8K",
        date=datetime.date(2026, 11, 30),
        title="Sharing in a ratio",
        topics=tuple(PlannedTopic(name) for name in TOPICS),
        questions=8,
        seed=1,
        follow_up=10,
        variants=1,
        large_print=LargePrint(),
        paper="white",
        print_tint=False,
        slips=False,
        self_mark="when done",
        bands=default_scheme(),
    )
    return build_pack(request)


def prepare(folder: Path) -> list[str]:
    """Write what each engine starts from; return the names of the documents."""
    import fontpkg_atkinson_hyperlegible
    import html_source
    import typst_source
    from page_content import documents

    from itembank.packs.data.pack_files import pack_json
    from itembank.pages.draw import drawers

    pack = a_pack()
    names = list(drawers(pack))
    fonts = Path(str(fontpkg_atkinson_hyperlegible.__file__)).parent / "files"
    (folder / "pack.json").write_bytes(pack_json(pack))
    (folder / "fonts.txt").write_text(str(fonts), "utf-8")
    for name, made in zip(names, documents(pack, names), strict=True):
        stem = name.removesuffix(".pdf")
        (folder / f"{stem}.typ").write_text(typst_source.source(made), "utf-8")
        (folder / f"{stem}.html").write_text(html_source.source(made, fonts.as_uri()), "utf-8")
    return names


def run_engine(engine: str, folder: Path) -> Cost:
    """Lay out once in a process of its own; return what that took, its imports left out.

    Raises:
        Missing: the engine is not installed or fails.
    """
    if engine != "ours" and importlib.util.find_spec(engine) is None:
        raise Missing("it is not installed; make bench installs it")
    command = [sys.executable, str(Path(__file__).parent / "one_engine.py"), engine, str(folder)]
    start = time.perf_counter()
    done = subprocess.run(command, capture_output=True, encoding="utf-8", check=False)
    process = time.perf_counter() - start
    if done.returncode:
        raise Missing((done.stderr.strip() or "no message").splitlines()[-1])
    took = json.loads(done.stdout.splitlines()[-1])
    return Cost(took["wall"], took["cpu"], process)


def pages_and_letters(folder: Path) -> tuple[int, int]:
    """Return how many pages the PDFs of a folder have, and how many letters and digits."""
    import pypdfium2

    pages = letters = 0
    for file in folder.glob("*.pdf"):
        pdf = pypdfium2.PdfDocument(file)
        for page in pdf:
            pages += 1
            text = page.get_textpage().get_text_range()
            letters += sum(character.isalnum() for character in text)
        pdf.close()
    return pages, letters


def report() -> str:
    """Measure and return a table."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        names = prepare(folder)
        found = in_turn({engine: partial(run_engine, engine, folder) for engine in ENGINES}, ROUNDS)
        base = found["ours"]
        rows = [
            ("engine", "seconds", "÷ ours", "on all cores", "pages", "letters", "whole process")
        ]
        notes = []
        for engine, cost in found.items():
            if isinstance(cost, str):
                notes.append(f"  {engine} was not measured: {cost}")
                continue
            pages, letters = pages_and_letters(folder / engine)
            ratio = f"{cost.wall / base.wall:.2f}" if isinstance(base, Cost) else "–"
            counts = (f"{pages}", f"{letters:,}", f"{cost.process:.3f}")
            rows.append((engine, f"{cost.wall:.3f}", ratio, f"{cost.cpu:.3f}", *counts))
        if isinstance(base, Cost):
            for engine in ENGINES[1:]:
                cost = found[engine]
                if isinstance(cost, Cost):
                    notes.append(_verdict(engine, cost.wall / base.wall))
    return "\n".join(
        [
            f"The pages of one pack, {len(names)} documents, nothing cached, median of {ROUNDS},"
            " in turn, imports left out",
            table(rows),
            *notes,
        ]
    )


def _verdict(engine: str, ratio: float) -> str:
    if ratio >= 1:
        said = f"  Ours are {ratio:.1f} × as fast as {engine}'s"
    else:
        said = f"  {engine}'s are {1 / ratio:.1f} × as fast as ours"
    if engine == "weasyprint":
        return said + f" (wanted: {WANTED:.0f} ×), which sets formulas as plain lines of text."
    return said + " (compiled; wanted: at most 1.5 ×)."
