"""A fire drill, cover, a split class, a move, a change of sets, two results files: one story.

It is told by the command line alone, week by week. The reports before and after stand as text
in term_of_surprises.txt beside this file: what was seen, without the estimates of the forgetting
model. With ITEMBANK_RENEW=1 they are written anew, to be read before they are kept.
"""

import hashlib
import os
import re
import shutil
import tomllib
from pathlib import Path

import pytest

from tests.depth import only_whole

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
REPORTS = Path(__file__).with_name("term_of_surprises.txt")
DEPARTMENT = """
school = "Larkhythe School"
[[classes]]
name = "8K"
year = 8
scheme = "year-8"
seats = ["A1-A6", "B1-B6"]
lessons = ["Mon 1", "Tue 3", "Wed 2", "Thu 2", "Fri 5"]
topics = ["ratio.simplest-form"]
[[classes]]
name = "8L"
year = 8
scheme = "year-8"
seats = ["A1-A6", "B1-B6"]
lessons = ["Mon 2", "Tue 4", "Wed 3", "Thu 4", "Fri 1"]
topics = ["ratio.simplest-form"]
"""
FIRST = [f"A{n}" for n in range(1, 7)]
SECOND = [f"B{n}" for n in range(1, 7)]
PLAN = Path("plans/week-8K-2026-11-30.toml")


@pytest.fixture
def home(tmp_path, monkeypatch):
    (tmp_path / "department.toml").write_text(DEPARTMENT)
    (tmp_path / "schemes").mkdir()
    for name in ("calendar.toml", "schemes/year-8.toml"):
        (tmp_path / name).write_text((LARKHYTHE / name).read_text())
    (tmp_path / "output").mkdir()
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    monkeypatch.setenv("COLUMNS", "80")
    return tmp_path


def sheet(name, seats, questions, wrong):
    """Write a sheet of answers; `wrong` gives each seat's wrong answers."""
    rows = ["seat," + ",".join(str(n) for n in range(1, questions + 1))]
    for seat in seats:
        marks = ["0" if n in wrong.get(seat, ()) else "1" for n in range(1, questions + 1)]
        rows.append(",".join([seat, *marks]))
    Path(name).write_text("\n".join(rows) + "\n")
    return name


def facts(report):
    """Return of a report what was seen: its lessons, and its topics by title."""
    lines, topics, cut = [], [], None
    for line in report.splitlines():
        if line.startswith("Right:"):
            break
        if line.startswith("topic") and "expected" in line:
            cut = line.index("expected")
            lines.append(line[:cut].rstrip())
        elif cut is None:
            lines.append(line)
        elif line.startswith(" "):
            topics[-1] += "\n" + line[:cut].rstrip()
        elif line:
            topics.append(line[:cut].rstrip())
    return "\n".join([*lines, *sorted(topics)]).strip()


def answers(report):
    """Return the answers counted of each topic, by the beginning of its title."""
    rows = re.findall(r"^(\S.{15}).*?  +(\d+)  \d+ % \(", facts(report), re.M)
    return {title.strip(): int(count) for title, count in rows}


def hashes():
    return {
        path: hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(Path("output").glob("8K-2026-11-2*/*"))
    }


@only_whole
def test_a_term_of_surprises(said, home, on_day):
    def done(*words):
        found = said(*words)
        assert (found.status, found.err) == (0, ""), found.err
        return found.out

    def refused(*words):
        found = said(*words)
        assert (found.status, found.out) == (2, "")
        return found.err

    on_day("2026-11-20")
    done("week", "8K", "--from", "2026-11-23")
    packs = hashes()
    assert len({path.parent for path in packs}) == 5

    # Monday: the bell rings after question 5. The parallel class has the same starter.
    on_day("2026-11-23")
    sheet("drill.csv", FIRST + SECOND, 5, {"A1": [1], "A2": [2, 3], "B6": [1, 5]})
    out = done("record", "8K", "--sheet", "drill.csv")
    assert "Questions 6 to 8 were not asked." in out
    assert "12 pupils" in out
    sheet("parallel.csv", FIRST[:4], 8, {"A1": [6, 7, 8], "A2": [8]})
    assert "is a pack of 8K" in refused(
        "record", "8L", "--pack", "output/8K-2026-11-23", "--sheet", "parallel.csv"
    )
    assert "4 pupils" in done("record", "8L", "--same-as", "8K", "--sheet", "parallel.csv")
    before = {name: done("report", name) for name in ("8K", "8L")}
    assert len(answers(before["8K"])) == 5
    assert set(answers(before["8K"]).values()) == {12}

    # Tuesday: a cover teacher asks something else. Wednesday: the school photograph.
    on_day("2026-11-25")
    done("cover", "8K", "--date", "2026-11-24", "-t", "fractions.order 3", "-t", "ratio.unit-form")
    photograph = ["8K", "--date", "2026-11-25"]
    done("cancel", *photograph, "--why", "school photograph")
    assert "had no lesson" in refused("record", *photograph, "--bands", "1 2 3")

    # Thursday: two teachers, half a class each, and one seat on both sheets.
    on_day("2026-11-26")
    sheet("half.csv", FIRST, 8, {"A1": [1, 2], "A3": [8]})
    sheet("other.csv", [*SECOND[:5], "A6"], 8, {"B1": [4]})
    done("record", "8K", "--sheet", "half.csv")
    assert "has answers by seat already" in refused("record", "8K", "--sheet", "other.csv")
    assert "seat A6 is recorded already" in refused("record", "8K", "--sheet", "other.csv", "--add")
    sheet("other.csv", SECOND[:5], 8, {"B1": [4]})
    assert "11 pupils" in done("record", "8K", "--sheet", "other.csv", "--add")
    # B6 was away, and answers on Friday.
    on_day("2026-11-27")
    sheet("late.csv", ["B6"], 8, {"B6": [2, 4, 6]})
    shutil.copy("results.sqlite3", "before-late")
    late = ["record", "8K", "--date", "2026-11-26", "--sheet", "late.csv"]
    assert "12 pupils" in done(*late, "--add")
    assert "seat B6 is recorded already" in refused(*late, "--add")

    # Two machines, one shared folder: Friday's starter lands in a copy of the results.
    sheet("friday.csv", [*FIRST, *SECOND[:5]], 8, {"A4": [3], "A5": [3, 4]})
    mine, theirs = Path("results.sqlite3"), Path("results (copy).sqlite3")
    mine.rename("kept")
    shutil.copy("before-late", mine)
    done("record", "8K", "--sheet", "friday.csv")
    mine.rename(theirs)
    Path("kept").rename(mine)
    for _ in range(2):  # doing it again brings nothing twice
        assert "is as it was" in done("unite", theirs)
    theirs.unlink()
    assert "12 pupils" in " ".join(done("decide", "8K", "--date", "2026-11-26").split())
    assert "11 pupils" in " ".join(done("decide", "8K", "--date", "2026-11-27").split())

    # B6 moves to the parallel class; then the year group changes sets, two for two.
    assert "somebody else sits in 8L/A1" in refused("move", "8K/B6", "8L/A1")
    done("move", "8K/B6", "8L/B1", "--date", "2026-11-27")
    Path("sets.csv").write_text("from,to\n8K/A1,8L/A1\n8L/A1,8K/A1\n8K/A2,8L/A2\n8L/A2,8K/A2\n")
    on_day("2026-11-28")
    done("move", "--list", "sets.csv", "--date", "2026-11-28")
    after = {name: done("report", name) for name in ("8K", "8L")}
    # Nine of twelve are still in 8K; two came, who had Monday's eight questions.
    assert max(answers(after["8K"]).values()) == 3 * 9 + 2
    assert "Pupils who moved: 3 went to other classes or left, 2 came." in after["8K"]
    assert "No lesson: 25 Nov (school photograph)." in after["8K"]
    assert "Asked instead of the starter: 24 Nov (questions of their own)." in after["8K"]
    out = done("decide", "8K", "--date", "2026-11-26")
    assert "Moved since then: A1 is now 8L/A1, A2 is now 8L/A2, B6 is now 8L/B1." in " ".join(
        out.split()
    )

    # The next week knows all of it, and the week gone by keeps every byte.
    done("week", "8K", "--from", "2026-11-30")
    monday = tomllib.loads(PLAN.read_text())["lessons"][0]
    said_of = [topic["why"] for topic in monday["topics"]]
    assert any("% right" in why for why in said_of)
    assert not any("last seen 5 days ago" in why for why in said_of)  # nothing was, on Wednesday
    done("week", "8K", "--from", "2026-11-23", "--replace")
    assert hashes() == packs

    text = "\n\n".join(
        f"{name} {when}:\n\n{facts(reports[name])}"
        for when, reports in (("before", before), ("after", after))
        for name in ("8K", "8L")
    )
    if os.environ.get("ITEMBANK_RENEW"):
        REPORTS.write_text(text + "\n", encoding="utf-8")
    assert text + "\n" == REPORTS.read_text(encoding="utf-8"), "ITEMBANK_RENEW=1 writes it anew"

    # What was noted by mistake is taken back, one thing at a time, and each is named first.
    assert "the moves of 4 pupils" in done("undo", "8K")
    assert "the move of 8K/B6 to 8L/B1" in refused("undo", "8K")
    # B6 leaves the school: what was recorded is forgotten under the old seat and the new one.
    out = " ".join(done("forget", "--seat", "8L/B1", "--yes").split())
    assert "2 records removed" in out
    assert "forgotten there too: seat B6 of 8K, before 27 November 2026" in out
    assert max(answers(done("report", "8K")).values()) == 3 * 11
