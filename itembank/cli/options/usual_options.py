"""Options and arguments that several commands take, said in the same words everywhere."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

ClassArgument = Annotated[
    str | None, typer.Argument(metavar="CLASS", help="The class; the department's usual one.")
]
PeriodOption = Annotated[
    str | None, typer.Option(metavar="N", help="Which lesson, where a day has two.")
]
PacksOption = Annotated[
    Path | None, typer.Option(metavar="DIR", help="Where packs are; ‘output’ if there is.")
]
DepartmentOption = Annotated[
    Path | None, typer.Option(metavar="DIR", help="Folder with department.toml.")
]
