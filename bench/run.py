"""Prints speeds, as ratios measured in one run: items, marking, a bank, a pack, its pages, a year.

    python bench/run.py [items] [mark] [bank] [growth] [cold] [pages] [figures] [year] [depths]
        [week] [reports] [cluster] [desk]

With no names, all of them. Times change from machine to machine; the ratios much less.
"""

from __future__ import annotations

import os
import platform
import sys

from timing import Missing

from itembank.errors import ItembankError

PARTS = (
    *("items", "mark", "bank", "growth", "cold", "pages", "figures"),
    *("year", "depths", "week", "reports", "cluster", "desk"),
)


def main(names: list[str]) -> int:
    """Print the reports named; 2 if a name is none of them."""
    unknown = [name for name in names if name not in PARTS]
    if unknown:
        print(f"There is no report called {unknown[0]}; there are {', '.join(PARTS)}.")
        return 2
    print(f"Python {platform.python_version()}, {os.cpu_count()} cores, {platform.machine()}")
    if hasattr(os, "getloadavg") and os.getloadavg()[0] > 0.5:
        print(f"Other work is running (load {os.getloadavg()[0]:.1f}): times come out too long.")
    for name in names or PARTS:
        print(flush=True)
        try:
            print(_report(name), flush=True)
        except (Missing, ImportError, ItembankError) as missing:
            print(f"Not measured ({name}): {missing}")
    return 0


def _report(name: str) -> str:
    match name:
        case "items":
            from item_speed import report
        case "mark":
            from mark_speed import report
        case "bank":
            from bank_speed import report
        case "growth":
            from bank_growth import report
        case "cold":
            from cold_start import report
        case "cluster":
            from cluster_speed import report
        case "desk":
            from desk_speed import report
        case "reports":
            from report_speed import report
        case "week":
            from week_speed import report
        case "figures":
            from figure_speed import report
        case "depths":
            from simulate_depths import report
        case "year":
            from simulate_year import report
        case _:
            from page_speed import report
    return report()


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
