"""Looks for an answer on which the two markers differ, for as long as it is let.

    python -m tests.selfmark.fuzz [rounds] [seed]

Each round draws new questions and new answers. What differs is printed, and so is what the page
leaves to the teacher.
"""

import random
import sys

from playwright.sync_api import sync_playwright

from itembank.notation.line import shown_line
from itembank.selfmark.questions import question_data
from tests.browser import chromium
from tests.selfmark.answers import answers_to, every_item
from tests.selfmark.test_same_verdict import MARK_ALL, marker_page, said


def main() -> int:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 10
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else random.randrange(10**6)
    faults = 0
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=str(chromium()), args=["--no-sandbox"])
        page = marker_page(browser)
        for place in range(rounds):
            rng = random.Random(seed + place)
            items = list(every_item(rng, each=2))
            keys = [shown_line(item.key) for item in items]
            count = left = 0
            for item in rng.sample(items, min(200, len(items))):
                given = answers_to(item, rng, keys)
                (got,) = page.evaluate(MARK_ALL, [[question_data(item), given]])
                for answer, mine in zip(given, got, strict=True):
                    count += 1
                    if mine[0] == "undecided":
                        left += 1
                        print("left to the teacher:", item.address, repr(answer))
                    elif mine != (wanted := said(item, answer)):
                        faults += 1
                        print("differ:", item.address, repr(answer), wanted, mine, sep="\n    ")
            print(f"seed {seed + place}: {count} answers, {left} left, {faults} differ so far")
    return 1 if faults else 0


if __name__ == "__main__":
    raise SystemExit(main())
