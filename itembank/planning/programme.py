"""A small mixed-integer linear programme, solved by HiGHS through scipy.

Variables are numbered as they are made. Whole-number counts have an own worth; shares between
0 and 1 stand for costs.
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.errors import ItembankError


class Programme:
    """Counts and shares with their worth, and what has to hold between them.

    >>> programme = Programme()
    >>> apples, pears = programme.count(0, 5, 2.0), programme.count(0, 5, 3.0)
    >>> programme.require([apples, pears], 0, 7)
    >>> solution = programme.solve()
    >>> solution[apples], solution[pears]
    (2, 5)
    """

    def __init__(self) -> None:
        self._low: list[float] = []
        self._high: list[float] = []
        self._worth: list[float] = []
        self._whole: list[int] = []
        self._rows: list[tuple[dict[int, float], float, float]] = []

    def count(self, low: int, high: int, worth: float) -> int:
        """Add a whole number from `low` to `high`, each one worth `worth`; return its number."""
        return self._add(low, high, worth, 1)

    def share(self, worth: float) -> int:
        """Add a number from 0 to 1 with its worth (negative: a cost); return its number."""
        return self._add(0, 1, worth, 0)

    def _add(self, low: float, high: float, worth: float, whole: int) -> int:
        self._low.append(low)
        self._high.append(high)
        self._worth.append(worth)
        self._whole.append(whole)
        return len(self._low) - 1

    def most(self, variables: Sequence[int]) -> int:
        """Return the most that the variables can come to together."""
        return int(sum(self._high[one] for one in variables))

    def require(self, variables: Sequence[int], low: float, high: float) -> None:
        """Let the sum of the variables be from `low` to `high`."""
        self._rows.append((dict.fromkeys(variables, 1.0), low, high))

    def equal(self, some: Sequence[int], others: Sequence[int]) -> None:
        """Let two sets of variables come to the same."""
        if some or others:
            row = {**dict.fromkeys(some, 1.0), **dict.fromkeys(others, -1.0)}
            self._rows.append((row, 0, 0))

    def at_most_one_more(self, a: int, b: int, both: int) -> None:
        """Let `both` be 1 where a and b are both 1 or more: a + b ≤ most of one + both."""
        most = max(self._high[a], self._high[b], 1)
        self._rows.append(({a: 1.0, b: 1.0, both: -most}, -2 * most, most))

    def solve(self) -> list[int]:
        """Return the worthiest values, rounded to whole numbers.

        Raises:
            ItembankError: nothing fits all that has to hold.
        """
        import numpy as np
        from scipy.optimize import Bounds, LinearConstraint, milp
        from scipy.sparse import csr_array

        entries = [(i, j, c) for i, (row, _, _) in enumerate(self._rows) for j, c in row.items()]
        where = ([i for i, _, _ in entries], [j for _, j, _ in entries])
        matrix = csr_array(
            ([c for _, _, c in entries], where), shape=(len(self._rows), len(self._low))
        )
        found = milp(
            -np.array(self._worth),
            integrality=np.array(self._whole),
            bounds=Bounds(self._low, self._high),
            constraints=LinearConstraint(
                matrix, [row[1] for row in self._rows], [row[2] for row in self._rows]
            ),
        )
        if found.x is None:
            raise ItembankError(
                "No choice of topics fits what was pinned and banned. Take a pin away."
            )
        return [round(value) for value in found.x]
