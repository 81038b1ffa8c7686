"""Lays out one pack by one engine, once, with nothing cached, and prints what it took.

    python bench/one_engine.py ours|typst|weasyprint FOLDER

FOLDER holds `pack.json` for ours and the sources for the others. The PDFs are left in
FOLDER/ENGINE. Imports are timed apart from laying out.
"""

from __future__ import annotations

import gc
import json
import os
import sys
import time
from collections.abc import Callable
from pathlib import Path

from itembank.cli import MOST_NEW

Layout = Callable[[], dict[str, bytes]]


def ours(folder: Path) -> Layout:
    """Return a call that draws the pack, with all that it imports imported."""
    import importlib
    import pkgutil

    import itembank.figures
    import itembank.pages
    from itembank.packs.data.pack import Pack

    # Kinds of figures too: each is loaded when the first of it is drawn.
    for part in (itembank.figures, itembank.pages):
        for module in pkgutil.walk_packages(part.__path__, f"{part.__name__}."):
            importlib.import_module(module.name)
    importlib.import_module("reportlab.pdfgen.canvas")
    from itembank.pages.draw import draw_pack

    pack = Pack.model_validate_json((folder / "pack.json").read_bytes())
    return lambda: draw_pack(pack)


def typst(folder: Path) -> Layout:
    """Return a call that compiles the typst sources as tagged PDFs."""
    import typst

    fonts = [(folder / "fonts.txt").read_text("utf-8")]

    def run() -> dict[str, bytes]:
        return {
            file.stem + ".pdf": typst.compile(
                str(file),
                format="pdf",
                font_paths=fonts,
                ignore_system_fonts=True,
                pdf_standards=["ua-1"],
            )
            for file in sorted(folder.glob("*.typ"))
        }

    return run


def weasyprint(folder: Path) -> Layout:
    """Return a call that prints the HTML sources as tagged PDFs."""
    import weasyprint

    def run() -> dict[str, bytes]:
        return {
            file.stem + ".pdf": weasyprint.HTML(filename=str(file)).write_pdf(
                pdf_variant="pdf/ua-1"
            )
            for file in sorted(folder.glob("*.html"))
        }

    return run


ENGINES = {"ours": ours, "typst": typst, "weasyprint": weasyprint}


def main(engine: str, name: str) -> None:
    """Lay out once; print seconds as JSON."""
    folder = Path(name)
    run = ENGINES[engine](folder)
    gc.set_threshold(MOST_NEW)  # as our command does it, for every engine alike
    cpu, start = time.process_time(), time.perf_counter()
    files = run()
    took = {"wall": time.perf_counter() - start, "cpu": time.process_time() - cpu}
    out = folder / engine
    out.mkdir(exist_ok=True)
    for file, data in files.items():
        (out / file).write_bytes(data)
    sys.stdout.write(json.dumps(took) + "\n")
    sys.stdout.flush()
    os._exit(0)  # leaving is no part of laying out


if __name__ == "__main__":
    main(*sys.argv[1:])
