"""What a week's plan was before each change, so that changes can be taken back one by one.

The texts stand beside the plans, in ``plans/earlier``, each under the name of its plan with a
number: the highest is what the plan was last. What a person edits in the file by hand is no
change of ours; it is kept as part of the text that the next change replaces.
"""

from __future__ import annotations

from pathlib import Path

from itembank.errors import ItembankError
from itembank.text.whole_number import whole_number

FOLDER = "earlier"
MOST = 20
"""How many changes of one plan can be taken back."""


def earlier_plans(plan: Path) -> list[Path]:
    """Return the files with what a plan was, the oldest first."""
    found = [
        (number, path)
        for path in _folder(plan).glob("*.toml")
        if (number := whole_number(path.stem)) is not None
    ]
    return [path for _, path in sorted(found)]


def place_for_next(plan: Path) -> Path:
    """Return where what the plan is now goes, before it changes."""
    there = earlier_plans(plan)
    last = int(there[-1].stem) if there else 0
    return _folder(plan) / f"{last + 1:04}.toml"


def before_last_change(plan: Path) -> Path:
    """Return the file with what a plan was before its last change.

    Raises:
        ItembankError: no change of it is known.
    """
    there = earlier_plans(plan)
    if not there:
        raise ItembankError(f"Nothing in {plan.name} can be taken back: no change of it is known.")
    return there[-1]


def clear_oldest(plan: Path) -> None:
    """Take away what is beyond the number of changes that can be taken back."""
    for path in earlier_plans(plan)[:-MOST]:
        path.unlink(missing_ok=True)


def _folder(plan: Path) -> Path:
    return plan.parent / FOLDER / plan.stem
