"""Draws docs/sheets/*.png: every kind of page the tool makes, from the demo school.

Run it with the tests' environment: `.venv/bin/python docs/contact_sheets.py`. It makes packs, a
week, a report and groups in a folder that is taken away again, so it needs nothing but the
project. Another folder, and a smaller scale, can be named: `contact_sheets.py FOLDER 0.2`.
"""

from __future__ import annotations

import datetime
import random
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pypdfium2
from PIL import Image

HERE = Path(__file__).parent
SCHOOL = HERE.parent / "banks" / "larkhythe"
GAP = 10
GREY = (200, 204, 210)
COLOURS = 64
"""Colours of a picture's palette: enough for soft edges of type."""
STARTERS = 12

PACKS: dict[str, tuple[str, ...]] = {
    "usual": ("--class", "8K", "--date", "2026-11-30", "--two-up"),
    "large": ("--class", "7M", "--date", "2026-11-30", "--large-print", "A3", "--paper", "cream"),
    "versions": ("--class", "9S", "--date", "2026-11-30", "--variants", "2", "--two-up"),
    "printed-tint": ("--class", "8K", "--date", "2026-12-01", "--paper", "green", "--print-tint"),
}
SLIDES = ("starter.pdf", "answers.pdf", "next-tasks.pdf")
CODES = [f"{row}{place}" for row in "ABC" for place in range(1, 6)]


def itembank(*words: str, within: Path) -> None:
    """Run a command as a teacher would; one that fails ends this too, with what it said."""
    done = subprocess.run(
        [sys.executable, "-m", "itembank.cli", *words],
        cwd=within,
        capture_output=True,
        encoding="utf-8",
        check=False,
    )
    if done.returncode:
        raise SystemExit(f"itembank {' '.join(words)}\n{done.stdout}{done.stderr}")


def pages(files: list[Path], scale: float) -> Iterator[Image.Image]:
    """Yield the pages of some PDFs as pictures."""
    for file in files:
        with pypdfium2.PdfDocument(file) as document:
            for page in document:
                yield page.render(scale=scale).to_pil().convert("RGB")


def write_sheet(path: Path, pictures: list[Image.Image], columns: int) -> None:
    """Put pictures beside and below each other into one file."""
    rows = [pictures[start : start + columns] for start in range(0, len(pictures), columns)]
    width = max(sum(picture.width + GAP for picture in row) for row in rows) + GAP
    height = sum(max(picture.height for picture in row) + GAP for row in rows) + GAP
    sheet = Image.new("RGB", (width, height), GREY)
    top = GAP
    for row in rows:
        left = GAP
        for picture in row:
            sheet.paste(picture, (left, top))
            left += picture.width + GAP
        top += max(picture.height for picture in row) + GAP
    sheet.quantize(COLOURS).save(path, optimize=True)


def packs(work: Path, folder: Path, scale: float) -> set[str]:
    """Draw the packs; return the names of the files that are shown."""
    shown: set[str] = set()
    for name, options in PACKS.items():
        itembank("pack", "--department", "larkhythe", *options, "--output", name, within=work)
        (made,) = (work / name).iterdir()
        files = sorted(made.glob("*.pdf"))
        shown |= {file.name for file in files}
        on_screen = [made / file for file in SLIDES]
        rest = [file for file in files if file.name not in SLIDES]
        write_sheet(folder / f"{name}-slides.png", list(pages(on_screen, scale)), 3)
        write_sheet(folder / f"{name}-paper.png", list(pages(rest, 0.8 * scale)), 6)
    return shown


def a_week(work: Path, folder: Path, scale: float) -> None:
    """Draw the overview of a week, a report on a class and its groups."""
    here = ("--department", "larkhythe")
    itembank("week", "8K", "--from", "2026-11-23", *here, "--output", "week", within=work)
    rows = ["seat,1,2,3,4,5,6,7,8"]
    rng = random.Random(8)
    rows += [f"{code},{','.join(rng.choice('1101') for _ in range(8))}" for code in CODES]
    (work / "marks.csv").write_text("\n".join(rows) + "\n", "utf-8")
    day = ("--date", "2026-11-25")
    told = ("--sheet", "marks.csv", "--pack", "week/8K-2026-11-25")
    itembank("record", "8K", *day, *told, *here, within=work)
    itembank("decide", "8K", *day, "--sheet", "groups.pdf", *here, within=work)
    since = ("--since", "2026-09-01", "--until", "2026-12-31")
    itembank("report", "8K", *since, "--pdf", "report.pdf", *here, within=work)
    files = [*(work / "week").glob("week-*.pdf"), work / "report.pdf", work / "groups.pdf"]
    write_sheet(folder / "week-report-groups.png", list(pages(files, 0.8 * scale)), 4)


def starters(folder: Path, scale: float) -> None:
    """Draw starters of eight questions on four topics at random, each beside its answers."""
    from itembank.items.topics.registry import topic_ids
    from itembank.packs.build import start_pack
    from itembank.pages.documents.slides import answers, starter
    from itembank.pages.draw import fits_slides
    from itembank.planning.department.pack_request import USUAL, PackRequest, PlannedTopic

    rng = random.Random(12)
    drawn = []
    for seed in range(STARTERS):
        topics = tuple(PlannedTopic(topic, 2) for topic in rng.sample(topic_ids(), 4))
        request = PackRequest(
            school="Larkhythe School",
            class_name="8K",
            date=datetime.date(2026, 11, 30),
            title="Four topics at random",
            topics=topics,
            follow_up=3,
            seed=seed,
        )
        # As a teacher gets them: chosen so that they stand on one slide where there is a way.
        started = start_pack(request.over(USUAL), fits_slides=fits_slides)
        with started.proof:
            started.proof.result()
        pack = started.pack
        for draw in (starter, answers):
            with pypdfium2.PdfDocument(draw(pack)) as document:
                drawn += [page.render(scale=scale).to_pil().convert("RGB") for page in document]
    write_sheet(folder / "twelve-starters.png", drawn, 4)


def strands(folder: Path, scale: float) -> None:
    """Draw the first page of a core sheet on each strand, on three of its topics."""
    from itembank.items.topics.registry import strands as all_strands
    from itembank.items.topics.registry import topic_ids
    from itembank.packs.build import build_pack
    from itembank.pages.draw import drawers
    from itembank.planning.department.pack_request import USUAL, PackRequest, PlannedTopic

    rng = random.Random(3)
    drawn = []
    for seed, strand in enumerate(all_strands()):
        names = [name for name in topic_ids() if name.startswith(f"{strand}.")]
        request = PackRequest(
            school="Larkhythe School",
            class_name="9S",
            date=datetime.date(2026, 11, 30),
            title=strand.capitalize(),
            topics=tuple(PlannedTopic(name) for name in rng.sample(names, min(3, len(names)))),
            follow_up=9,
            seed=seed,
        )
        pack = build_pack(request.over(USUAL))
        with pypdfium2.PdfDocument(drawers(pack)["core.pdf"](pack)) as document:
            drawn.append(document[0].render(scale=1.3 * scale).to_pil().convert("RGB"))
    write_sheet(folder / "strands.png", drawn, 5)


def topic_map(work: Path, folder: Path, scale: float) -> None:
    """Draw the map of topics by the terms of three years."""
    shutil.copytree(SCHOOL.parent / "three-years", work / "three-years")
    itembank("map", "--years", "--department", "three-years", "--output", "map", within=work)
    *_, poster = pages([work / "map" / "topic-map.pdf"], scale)
    write_sheet(folder / "topic-map.png", [poster], 1)


def year_9(work: Path, folder: Path, scale: float) -> None:
    """Draw a week of year 9 with geometry and graphs: its overview, and each starter's slides."""
    here = ("--department", "three-years", "--output", "year-9")
    itembank("week", "9S", "--from", "2027-05-10", *here, within=work)
    made = work / "year-9"
    files = [folder / name for folder in sorted(made.glob("9S-*")) for name in SLIDES[:2]]
    drawn = [*pages(sorted(made.glob("week-*.pdf")), 0.8 * scale), *pages(files, scale)]
    write_sheet(folder / "year-9-week.png", drawn, 4)


def draw_all(folder: Path, scale: float) -> set[str]:
    """Draw every sheet into a folder; return the names of the packs' files that are shown."""
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as name:
        work = Path(name)
        shutil.copytree(SCHOOL, work / "larkhythe")
        shown = packs(work, folder, scale)
        a_week(work, folder, scale)
        topic_map(work, folder, scale)
        year_9(work, folder, scale)
    starters(folder, scale)
    strands(folder, scale)
    return shown


def main() -> None:
    """Draw all sheets where the documents are, or where it is said."""
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else HERE / "sheets"
    draw_all(folder, float(sys.argv[2]) if len(sys.argv) > 2 else 0.45)


if __name__ == "__main__":
    main()
