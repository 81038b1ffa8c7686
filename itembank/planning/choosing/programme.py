"""A small integer linear programme, solved by HiGHS.

Variables are numbered as they are made; each is a whole number with its own worth.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import TYPE_CHECKING

from itembank.errors import ItembankError

if TYPE_CHECKING:
    from highspy import Highs, HighsLp, HighsVarType

OPTIONS: dict[str, bool | float | str] = {
    # The same numbers on every machine: one thread, and no lots drawn by the clock.
    "threads": 1,
    "parallel": "off",
    "random_seed": 0,
    # The best is wanted, not one that is nearly as good: what settles ties is worth little.
    "dual_feasibility_tolerance": 1e-10,
    "mip_rel_gap": 0.0,
    "mip_abs_gap": 0.0,
}
"""How HiGHS is run."""


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
        if not self._low:
            return []
        # What is relaxed to fractions is solved in a third of the time. Where the best of it is
        # whole, it is the best of the whole numbers too.
        found = self._best(whole=False, solver="simplex", presolve="off")
        # Without its presolving HiGHS gives up now and then on what can well be solved.
        if found is None or any(abs(value - round(value)) > 1e-6 for value in found):
            # Where a solver of fractions is named, HiGHS may let whole numbers be fractions.
            found = self._best(whole=True, solver="choose", presolve="on")
        if found is None:
            raise ItembankError(
                "No choice of topics fits what was pinned and banned. Take a pin away."
            )
        return [round(value) for value in found]

    def _best(self, whole: bool, **options: str) -> list[float] | None:
        """Return the worthiest values as HiGHS finds them, None where nothing fits."""
        from highspy import HighsModelStatus, HighsVarType

        highs = _quiet()
        for option, value in {**OPTIONS, **options}.items():
            highs.setOptionValue(option, value)
        highs.passModel(self._model(HighsVarType.kInteger if whole else HighsVarType.kContinuous))
        highs.run()
        status = highs.getModelStatus()
        if status == HighsModelStatus.kOptimal:
            return list(highs.getSolution().col_value)
        # Every number has its limits, so that nothing is worth more than all bounds.
        none_fits = (HighsModelStatus.kInfeasible, HighsModelStatus.kUnboundedOrInfeasible)
        if whole and status not in none_fits:
            raise RuntimeError(f"HiGHS ended with {highs.modelStatusToString(status)}")
        return None

    def _model(self, kind: HighsVarType) -> HighsLp:
        """Return the programme as HiGHS takes it: limits and worth of numbers, rows of signs."""
        from highspy import HighsLp, MatrixFormat, ObjSense

        model = HighsLp()
        model.sense_ = ObjSense.kMaximize
        model.num_col_, model.num_row_ = len(self._low), len(self._rows)
        model.col_lower_, model.col_upper_, model.col_cost_ = self._low, self._high, self._worth
        model.integrality_ = [kind] * len(self._low)
        model.row_lower_ = [low for _, _, low, _ in self._rows]
        model.row_upper_ = [high for _, _, _, high in self._rows]
        model.a_matrix_.format_ = MatrixFormat.kRowwise
        model.a_matrix_.num_col_, model.a_matrix_.num_row_ = len(self._low), len(self._rows)
        model.a_matrix_.start_ = [0, *accumulate(len(row) for row, _, _, _ in self._rows)]
        model.a_matrix_.index_ = [number for row, _, _, _ in self._rows for number in row]
        model.a_matrix_.value_ = [sign for _, row, _, _ in self._rows for sign in row]
        return model


def _quiet() -> Highs:
    """Return a HiGHS that prints nothing, not even its name and version as it is made."""
    from highspy import Highs

    class Quiet(Highs):
        # The first thing that is called as one is made, and what prints.
        def enableCallbacks(self) -> None:
            self.silent()
            super().enableCallbacks()  # type: ignore[no-untyped-call]

    highs = Quiet()  # type: ignore[no-untyped-call]
    highs.silent()
    return highs
