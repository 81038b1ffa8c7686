"""What a prompt asks, as far as its words are understood."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.wording.tasks.other_kinds.giving import Giving
from itembank.wording.tasks.sayings.arithmetic import Saying
from itembank.wording.tasks.sayings.nested import Nested


@dataclass(frozen=True, slots=True)
class Reading:
    """What a prompt's words ask, as far as they are understood.

    `task` is empty where no command was read. `args`, `where` and `letter` are places in the
    prompt's mathematics: what the task is about, what is given, and the letter that is asked
    for (a letter may stand among the words instead). `saying` is the sum that is said in words,
    of the pieces in `args`; `giving` the property that any of many answers has. `unread` is the
    first stretch of words that was not understood and may change what is asked; nothing is proved
    where it is not empty.
    """

    task: str = ""
    args: tuple[int, ...] = ()
    where: tuple[int, ...] = ()
    letter: str = ""
    pick: str = ""
    saying: Saying | Nested | None = None
    giving: Giving | None = None
    unread: str = ""
