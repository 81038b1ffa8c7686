"""What a question says about how its answers are read: its key, its letters, what it asks."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.figures.figure import kind_of
from itembank.items.asks import Ask
from itembank.items.item import Item, Run
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Setting:
    """What a question says about how its answers are read: its key, letters and kind."""

    key: t.Node
    letters: frozenset[str] = frozenset()
    ask: Ask | None = None
    prompt: tuple[Run, ...] = ()

    @property
    def several(self) -> bool:
        """Whether the answer has several parts, so that a comma or *and* parts them."""
        return isinstance(self.key, t.Either | t.Listing)

    @property
    def about_how_many(self) -> bool:
        """Whether the words ask for what is about so much, an estimate or what one expects."""
        return any(
            word in run for run in self.prompt if isinstance(run, str) for word in _ABOUT_SO_MUCH
        )


_ABOUT_SO_MUCH = ("stimat", "expect")


def setting(item: Item) -> Setting:
    """Return what `item` says about how its answers are read.

    Its letters are those a pupil sees, in the prompt, on its figure or in the key, not those of a
    hidden model.
    """
    letters = set(t.symbols(item.key))
    for run in item.prompt:
        if not isinstance(run, str):
            letters |= t.symbols(run)
    if item.figure is not None:
        for node in kind_of(item.figure).printed(item.figure):
            letters |= t.symbols(node)
    return Setting(item.key, frozenset(letters), item.ask, item.prompt)
