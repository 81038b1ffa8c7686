"""Where long work is done: on processes of this machine, or on a cluster of several."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.errors import ItembankError

if TYPE_CHECKING:
    from itembank.cli.words.bar import Bar
    from itembank.processes.work_place import Place

Jobs = Annotated[
    int | None, typer.Option(metavar="N", help="Processes to run; one a core if left out.")
]
ClusterAddress = Annotated[
    str | None,
    typer.Option(
        metavar="ADDRESS",
        help="Have it done by a cluster, whose scheduler is at tcp://HOST:PORT.",
    ),
]


@contextlib.contextmanager
def place_for(jobs: int | None, cluster: str | None, bar: Bar) -> Iterator[Place]:
    """Give the place that was asked for; what is to be said of it is said where the bar stands.

    Raises:
        ItembankError: what was typed makes no sense, or what it needs is not installed.
    """
    if jobs is not None and jobs < 1:
        raise ItembankError(f"--jobs must be 1 or more, not {jobs}.")
    if cluster is None:
        from itembank.processes.work_place import ThisMachine

        yield ThisMachine(jobs)
        return
    from itembank.cli.words.wrapped import say
    from itembank.processes.cluster import Cluster

    def remark(text: str) -> None:
        bar.clear()
        say(f"Note: {text}", err=True)

    with Cluster(cluster, remark, jobs) as place:
        yield place
