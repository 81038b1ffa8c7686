"""The sheets of pages in docs show every kind of file that a pack can have."""

from __future__ import annotations

import importlib.util
import shutil
from pathlib import Path

import pytest
from PIL import Image

from itembank.pages.draw import drawers
from tests.depth import only_whole
from tests.pages.sheet_samples import real_pack
from tests.pages.test_sheets import text_of

DOCS = Path(__file__).parents[2] / "docs"


def script(name: str):
    spec = importlib.util.spec_from_file_location(name, DOCS / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def drawing():
    return script("contact_sheets")


@only_whole
def test_every_file_of_a_pack_is_shown(drawing, monkeypatch, tmp_path):
    monkeypatch.setattr(
        drawing, "PACKS", {name: drawing.PACKS[name] for name in ("usual", "large")}
    )
    shutil.copytree(drawing.SCHOOL, tmp_path / "larkhythe")
    sheets = tmp_path / "sheets"
    sheets.mkdir()
    shown = drawing.packs(tmp_path, sheets, 0.05)
    pack = real_pack("8K")
    look = pack.look.model_copy(update={"slips": True, "large_print": ["A3"]})
    everything = pack.model_copy(update={"look": look})
    assert shown == set(drawers(everything))
    for path in sheets.iterdir():
        assert path.with_suffix(".png").exists()
        assert Image.open(path).width > 100


def test_the_sheets_that_are_kept_are_those_that_are_drawn(drawing):
    kept = {path.name for path in (DOCS / "sheets").glob("*.png")}
    names = {f"{name}-{part}.png" for name in drawing.PACKS for part in ("slides", "paper")}
    names |= {"week-report-groups.png", "twelve-starters.png", "figures.png"}
    assert kept == names | {"strands.png", "topic-map.png", "year-9-week.png"}


@only_whole
def test_the_sheet_of_figures_shows_every_kind():
    from itembank.figures import kinds
    from itembank.figures.figure import KINDS

    kinds.load_all()
    figures = script("figure_sheet")
    (text,) = text_of(figures.sheet())
    assert all(name in text for name in KINDS)
    # Each of a kind's figures once, and no two of them alike.
    assert all(len({*figures.shown(name)}) == figures.COLUMNS for name in KINDS)
