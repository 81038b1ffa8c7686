"""Draws docs/desk.png, the picture of the desk in README.md: lesson, board, count, pupil's page.

Run it with the tests' environment, where Chromium is installed:
`.venv/bin/python docs/desk_pictures.py`. It opens the desk of a copy of the demo school that is
taken away again.
"""

from __future__ import annotations

import io
import os
import shutil
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from PIL import Image
from playwright.sync_api import sync_playwright

HERE = Path(__file__).parent
DAY = "2026-11-30"
LESSON = f"/class/8K/lesson/{DAY}/1"
GAP = 16
GREY = (200, 204, 210)
COLOURS = 256
HIDDEN_AFTER = 5000
"""Milliseconds after which the board's buttons are gone."""


@contextmanager
def the_desk() -> Iterator[tuple[str, Path]]:
    """Yield the address of a desk, and its folder, with a week planned."""
    import uvicorn

    from itembank.desk.replying.desk import Desk
    from itembank.desk.serving.application import application
    from itembank.desk.serving.start import listening
    from itembank.work.week.request import WeekRequest
    from itembank.work.week.week_run import make_week

    os.environ["ITEMBANK_TODAY"] = DAY
    with tempfile.TemporaryDirectory(prefix="itembank-pictures-") as folder:
        home = Path(folder) / "larkhythe"
        shutil.copytree(HERE.parent / "banks" / "larkhythe", home)
        make_week(WeekRequest(class_name="8K", output=home, department=home))
        socket = listening(None)
        host = f"127.0.0.1:{socket.getsockname()[1]}"
        config = uvicorn.Config(
            application(Desk(home, home), {host}), lifespan="off", ws="none", log_level="warning"
        )
        server = uvicorn.Server(config)
        thread = threading.Thread(target=server.run, kwargs={"sockets": [socket]}, daemon=True)
        thread.start()
        try:
            yield f"http://{host}", home
        finally:
            server.should_exit = True
            thread.join()


def shot(
    browser: Any, address: str, width: int, height: int, *, keys: str = "", wait: float = 0
) -> Image.Image:
    """Return a page as a window of that size shows it, after some keys and milliseconds."""
    page = browser.new_page(viewport={"width": width, "height": height})
    page.goto(address)
    page.evaluate("document.fonts.ready")
    for key in keys.split():
        page.keyboard.press(key)
    page.wait_for_timeout(wait)
    taken = Image.open(io.BytesIO(page.screenshot())).convert("RGB")
    page.close()
    return taken


def main() -> None:
    """Put the four side by side."""
    with the_desk() as (desk, home), sync_playwright() as driver:
        path = shutil.which("chromium")
        browser = driver.chromium.launch(executable_path=path, args=["--no-sandbox"])
        lesson = shot(browser, desk + LESSON, 1000, 1136)
        board = shot(browser, f"{desk}{LESSON}/board", 960, 560, keys="a", wait=HIDDEN_AFTER)
        count = shot(browser, f"{desk}{LESSON}/count", 400, 560)
        pupil = shot(browser, (home / f"8K-{DAY}" / "self-mark.html").as_uri(), 544, 560)
        browser.close()
    picture = Image.new("RGB", (1000 + 960 + 3 * GAP, 1136 + 2 * GAP), GREY)
    picture.paste(lesson, (GAP, GAP))
    picture.paste(board, (1000 + 2 * GAP, GAP))
    picture.paste(count, (1000 + 2 * GAP, 560 + 2 * GAP))
    picture.paste(pupil, (1000 + 400 + 3 * GAP, 560 + 2 * GAP))
    small = picture.resize((picture.width * 2 // 3, picture.height * 2 // 3), Image.LANCZOS)
    small.quantize(COLOURS).save(HERE / "desk.png", optimize=True)


if __name__ == "__main__":
    main()
