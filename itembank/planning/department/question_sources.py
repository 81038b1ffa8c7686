"""What a pack's questions are taken from: generators, banks or both; within a year or beyond it.

The same five keys stand in ``department.toml`` (at the top and in a class) and in a plan::

    banks = ["questions", "../key-stage-3"]
    questions_from = "both"
    prefer = "bank"
    signed_only = true
    beyond_year = ["equations.inequalities"]

What one place leaves open is taken from the next: the command line, the plan, the class, the
top of the department's file.
"""

from __future__ import annotations

from dataclasses import fields
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.toml_table import Table
from itembank.text.characters import shown_value

QUESTIONS_FROM = ("generated", "bank", "both")
PREFER = ("bank", "generated")
BANK_FILE = "bank.toml"


@dataclass(frozen=True, slots=True)
class StatedSources:
    """What one place states about the source of questions; None where it leaves it open."""

    banks: tuple[Path, ...] | None = None
    questions_from: str | None = None
    prefer: str | None = None
    signed_only: bool | None = None
    beyond_year: bool | tuple[str, ...] | None = None

    def over(self, other: StatedSources) -> StatedSources:
        """Return what is stated here, and for what is left open what `other` states.

        Who asks here for generated questions alone does not want the sign-off that `other` asks
        for: generated questions carry none.

        >>> shared = StatedSources(questions_from="both", prefer="generated")
        >>> found = StatedSources(prefer="bank").over(shared)
        >>> found.questions_from, found.prefer
        ('both', 'bank')
        """
        stated = {field.name: getattr(self, field.name) for field in fields(self)}
        kept = {
            name: getattr(other, name) if value is None else value for name, value in stated.items()
        }
        if self.questions_from == "generated" and self.signed_only is None:
            kept["signed_only"] = None
        return StatedSources(**kept)

    def settle(self) -> QuestionSources:
        """Return the settings with nothing left open.

        Without banks questions are generated; with banks they come from both, the banks first.

        Raises:
            ItembankError: two of the settings contradict each other.

        >>> StatedSources().settle().questions_from
        'generated'
        >>> StatedSources(banks=(Path("questions"),)).settle().questions_from
        'both'
        """
        banks = tuple(dict.fromkeys(self.banks or ()))
        chosen = self.questions_from or ("both" if banks else "generated")
        if chosen not in QUESTIONS_FROM:
            raise ItembankError(
                f"Questions cannot come from ‘{chosen}’. Write generated, bank or both."
            )
        prefer = self.prefer or PREFER[0]
        if prefer not in PREFER:
            raise ItembankError(f"There is no preference ‘{prefer}’. Write bank or generated.")
        signed = bool(self.signed_only)
        if chosen != "generated" and not banks:
            raise ItembankError(
                f"Questions are to come from ‘{chosen}’, but no bank is named. "
                'Write banks = ["…"] in department.toml.',
                matter="no bank named",
            )
        if signed and chosen == "generated":
            raise ItembankError(
                "Only signed questions are to be used, but generated questions carry no "
                "sign-off. Name a bank and let questions come from it, or leave out signed only."
            )
        beyond = self.beyond_year if self.beyond_year is not None else False
        return QuestionSources(banks, chosen, prefer, signed, beyond)


@dataclass(frozen=True, slots=True)
class QuestionSources:
    """Where a pack's questions are taken from, with nothing left open."""

    banks: tuple[Path, ...] = ()
    questions_from: str = "generated"
    prefer: str = "bank"
    signed_only: bool = False
    beyond_year: bool | tuple[str, ...] = False
    """Whether content beyond the class's year may be asked, or on which topics."""
    year: int | None = None
    """The class's year group; without one nothing is beyond it."""

    def year_for(self, topic: str) -> int | None:
        """Return the year beyond which nothing of a topic is asked, or None for no such year.

        >>> wanted = QuestionSources(beyond_year=("ratio.share",), year=7)
        >>> wanted.year_for("ratio.scale"), wanted.year_for("ratio.share")
        (7, None)
        """
        beyond = self.beyond_year
        asked = beyond if isinstance(beyond, bool) else topic in beyond
        return None if asked else self.year

    @property
    def uses_banks(self) -> bool:
        """Tell whether any question may come from a bank."""
        return self.questions_from != "generated"


def read_sources(row: Table, folder: Path) -> StatedSources:
    """Read the five keys from a table of a file that stands in `folder`.

    Faults are noted in the table's file; a folder that holds no bank is one.
    """
    found = StatedSources(
        banks=_banks(row, folder) if "banks" in row else None,
        questions_from=(
            row.choice("questions_from", QUESTIONS_FROM[0], QUESTIONS_FROM)
            if "questions_from" in row
            else None
        ),
        prefer=row.choice("prefer", PREFER[0], PREFER) if "prefer" in row else None,
        signed_only=row.flag("signed_only", False) if "signed_only" in row else None,
        beyond_year=_beyond_year(row) if "beyond_year" in row else None,
    )
    for field in fields(StatedSources):  # what is absent was not read above, but it exists
        row.known(field.name)
    return found


def _banks(row: Table, folder: Path) -> tuple[Path, ...]:
    found: list[Path] = []
    for value in row.items("banks"):
        if not isinstance(value, str) or not value.strip():
            row.fault(
                "banks",
                f"A bank is the name of its folder in quotation marks, not {shown_value(value)}.",
            )
            continue
        path = folder / value
        if path in found:
            row.fault("banks", f"The bank {value} is listed twice.", value)
        elif (wrong := no_bank(path)) is not None:
            row.fault("banks", str(wrong), value, wrong.matter)
        else:
            found.append(path)
    return tuple(found)


def _beyond_year(row: Table) -> bool | tuple[str, ...]:
    """Read true, false or a list of topics.

    A name is not held against the topics there are: those of a bank are known only to whoever
    reads it. But it has to look like one.
    """
    value = row.any("beyond_year")
    if isinstance(value, bool):
        return value
    if not isinstance(value, list):
        row.fault(
            "beyond_year", "‘beyond_year’ must be true, false or a list of topics in brackets."
        )
        return False
    found: list[str] = []
    for name in value:
        if not isinstance(name, str) or "." not in name:
            row.fault(
                "beyond_year", f"A topic is a name such as ratio.share, not {shown_value(name)}."
            )
        else:
            found.append(name)
    return tuple(found)


def no_bank(path: Path) -> ItembankError | None:
    """Return what is wrong with a folder that should hold a bank, or None.

    >>> str(no_bank(Path("/no/such/folder")))
    'There is no folder /no/such/folder, so no bank in it. Check how it is spelt.'
    """
    try:
        if not path.is_dir():
            return ItembankError(
                f"There is no folder {path}, so no bank in it. Check how it is spelt."
            )
        if not (path / BANK_FILE).is_file():
            return ItembankError(
                f"The folder {path} holds no {BANK_FILE}, so it is no bank.", matter="not a bank"
            )
    except (OSError, ValueError) as error:
        return ItembankError(f"The folder {path} cannot be looked into: {error}.")
    return None
