"""How many random cases a test takes: few on every run, many where new ones are looked for."""

from hypothesis import settings


def cases(few: int, many: int) -> int:
    """Return `few` in `make test`, which draws the same cases each time, else `many`.

    Drawn again, the same cases find nothing new. What the few are for is to fail where something
    that held is broken, so there are as many as meet every shape of what is drawn several times.
    """
    return few if settings.default.derandomize else many
