"""``itembank desk``: the tool in the browser."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.options.usual_options import DepartmentOption
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError

if TYPE_CHECKING:
    from itembank.desk.serving.visitors import Password

VARIABLE = "ITEMBANK_DESK_PASSWORD"


def desk(
    department: DepartmentOption = None,
    output: Annotated[
        Path | None, typer.Option(metavar="DIR", help="Where packs go; ‘output’ if there is.")
    ] = None,
    port: Annotated[
        int | None, typer.Option(metavar="N", min=1, max=65535, help="The port; the first free.")
    ] = None,
    browser: Annotated[bool, typer.Option(help="Whether to open the browser.")] = True,
    on_network: Annotated[
        bool,
        typer.Option("--on-network", help="Let others in the school's network in, by a password."),
    ] = False,
    shortcut: Annotated[
        bool, typer.Option("--shortcut", help="Put a starter for the desk on the desktop.")
    ] = False,
) -> None:
    """Open the desk: plan, look at questions, record and report in your browser.

    The page is made on this computer and only this computer can open it; nothing is fetched
    from elsewhere. Without a department around here it opens the one in your home folder
    (itembank/school), or helps you to begin. Stop it with Ctrl-C, or by closing this window.

    --on-network opens it to everybody in the network who knows the password that you choose
    (asked for, or in the environment variable ITEMBANK_DESK_PASSWORD). Whoever is in can do all
    that you can, and what they type crosses the network as it is.

    \b
    Examples:
      itembank desk
      itembank desk --shortcut
      itembank desk --department larkhythe
      itembank desk --no-browser --port 8420
    """  # noqa: D301 - typer keeps the lines after \b as they are
    if shortcut:
        from itembank.desk.serving.shortcut import write_shortcut

        say(f"Wrote {write_shortcut()}. Open it to start the desk.")
        return
    from itembank.desk.serving.start import desk_at, listening, serve
    from itembank.work.usual_home import home_near

    place = desk_at(home_near(department), output)
    password = _password() if on_network else None
    socket = listening(port, on_network)

    def ready(address: str) -> None:
        say(f"The desk is at {address} (stop it with Ctrl-C).")
        if on_network:
            say(
                "Others reach it at this computer's name or address, with the same port. Use it "
                "in a network you trust: what is typed crosses it as it is, and whoever knows the "
                "password can do all that you can. Your school's rules come first."
            )
        if browser:
            import threading
            import webbrowser

            # Some browsers hold the one who opens them until they are closed.
            threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()

    serve(place, socket, ready, password)


def _password() -> Password:
    """Return the password for a network, from the environment or asked for.

    Raises:
        ItembankError: it is too short, or nobody can be asked.
    """
    import os

    from itembank.cli.words.ask import can_ask
    from itembank.desk.serving.visitors import Password

    given = os.environ.get(VARIABLE)
    if given is None:
        if not can_ask():
            raise ItembankError(f"Put the password for the network into {VARIABLE} first.")
        given = typer.prompt(
            "A password for the network", hide_input=True, confirmation_prompt=True
        )
    return Password(given)
