"""``itembank desk``: the tool in the browser."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption
from itembank.cli.words.wrapped import say


def desk(
    department: DepartmentOption = None,
    output: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Where packs go; ‘output’ if there is.")
    ] = None,
    port: Annotated[
        int | None, typer.Option(metavar="N", min=1, max=65535, help="The port; the first free.")
    ] = None,
    browser: Annotated[bool, typer.Option(help="Whether to open the browser.")] = True,
) -> None:
    """Open the desk: plan, look at questions, record and report in your browser.

    The page is made on this computer and only this computer can open it; nothing is fetched
    from elsewhere. Without a department around here it opens the one in your home folder
    (itembank/school), or helps you to begin. Stop it with Ctrl-C, or by closing this window.

    \b
    Examples:
      itembank desk
      itembank desk --department larkhythe
      itembank desk --no-browser --port 8420
    """  # noqa: D301 - typer keeps the lines after \b as they are
    from itembank.desk.serving.start import desk_at, listening, serve
    from itembank.work.usual_home import home_near

    place = desk_at(home_near(department), output)
    socket = listening(port)

    def ready(address: str) -> None:
        say(f"The desk is at {address} (stop it with Ctrl-C).")
        if browser:
            import threading
            import webbrowser

            # Some browsers hold the one who opens them until they are closed.
            threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()

    serve(place, socket, ready)
