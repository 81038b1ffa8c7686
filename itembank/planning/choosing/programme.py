"""A small integer linear programme, solved by HiGHS through scipy.

Variables are numbered as they are made; each is a whole number with its own worth.
"""

from __future__ import annotations

from collections.abc import Sequence

from itembank.errors import ItembankError


class Programme:
    """Whole numbers with their worth, and what has to hold between them.

    >>> programme = Programme()
    >>> apples, pears = programme.count(0, 5, 2.0), programme.count(0, 5, 3.0)
    >>> programme.require([apples, pears], 0, 7)
    >>> programme.no_more([pears], [apples])
    >>> solution = programme.solve()
    >>> solution[apples], solution[pears]
    (4, 3)
    """

    def __init__(self) -> None:
        self._low: list[float] = []
        self._high: list[float] = []
        self._worth: list[float] = []
        self._rows: list[tuple[list[int], list[float], float, float]] = []

    def count(self, low: int, high: int, worth: float) -> int:
        """Add a whole number from `low` to `high`, each one worth `worth`; return its number."""
        self._low.append(low)
        self._high.append(high)
        self._worth.append(worth)
        return len(self._low) - 1

    def require(self, variables: Sequence[int], low: float, high: float) -> None:
        """Let the sum of the variables be from `low` to `high`."""
        self._rows.append((list(variables), [1.0] * len(variables), low, high))

    def no_more(self, some: Sequence[int], others: Sequence[int]) -> None:
        """Let one set of variables come to no more than another one."""
        if some:
            signs = [1.0] * len(some) + [-1.0] * len(others)
            self._rows.append(([*some, *others], signs, -float("inf"), 0))

    def solve(self) -> list[int]:
        """Return the worthiest values.

        Raises:
            ItembankError: nothing fits all that has to hold.
        """
        import numpy as np
        from scipy.optimize import Bounds, LinearConstraint, milp
        from scipy.sparse import csr_array

        if not self._low:
            return []
        starts = np.cumsum([0, *(len(columns) for columns, _, _, _ in self._rows)])
        columns = [one for row, _, _, _ in self._rows for one in row]
        signs = [one for _, row, _, _ in self._rows for one in row]
        matrix = csr_array((signs, columns, starts), shape=(len(self._rows), len(self._low)))
        constraints = LinearConstraint(
            matrix, [row[2] for row in self._rows], [row[3] for row in self._rows]
        )
        worth, bounds = -np.array(self._worth), Bounds(self._low, self._high)
        # What is relaxed to fractions is solved in a third of the time. Where the best of it is
        # whole, it is the best of the whole numbers too.
        found = milp(worth, bounds=bounds, constraints=constraints, options={"presolve": False})
        # Without its presolving HiGHS gives up now and then on what can well be solved.
        if not found.success or np.abs(found.x - np.round(found.x)).max() > 1e-6:
            found = milp(
                worth,
                integrality=np.ones(len(self._low)),
                bounds=bounds,
                constraints=constraints,
                # The best is wanted, not one that is nearly as good.
                options={"mip_rel_gap": 1e-9},
            )
        if found.x is None:
            raise ItembankError(
                "No choice of topics fits what was pinned and banned. Take a pin away."
            )
        return [round(value) for value in found.x]
