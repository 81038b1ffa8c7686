"""How many random cases a test takes: few on every run, many where new ones are looked for."""

from hypothesis import settings


def cases(few: int, many: int) -> int:
    """Return `few` in `make test`, which draws the same cases each time, else `many`.

    Say beside each use what the few are enough to find.
    """
    return few if settings.default.derandomize else many
