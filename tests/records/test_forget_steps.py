"""A forgetting that is broken off anywhere is true at each step, and is done in the end."""

import contextlib
import csv
import datetime
import io
import shutil

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.cli.main import run
from itembank.errors import ItembankError
from itembank.records.entries.entries import Answers, Clarity, LessonFacts, Scores
from itembank.records.entries.recording import record
from itembank.records.exporting import export_all
from itembank.records.forget.cleaned_table import clean_table
from itembank.records.forget.forgetting import finish, forget
from itembank.records.forget.resaved import Table, open_table, read_day
from itembank.records.forget.unfinished import unfinished
from itembank.records.pupils.whom import Whom
from itembank.records.store.store import Store, open_store
from itembank.text.in_words import day_month_year
from tests.depth import cases, left

from .stores import DAY, dump, facts

GONE, STAYS = "ZQ7", "XJ4"
A_DAY = DAY.resolution
WHOM = Whom("8K", GONE)


def fill(store, note=f"{GONE} asked, then zq7 again"):
    right = {GONE: {1: True, 2: False}, STAYS: {1: True, 2: True}}
    record(store, facts(), Answers(right, {(GONE, 2): "ratio.adds"}))
    record(store, facts(), Clarity(1, 2, note))
    record(store, facts(DAY - A_DAY), Scores({GONE: 1, STAYS: 2}))


def holds(folder):
    """Return the files of a folder in which the seat still stands."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    return {path.name for path in files if GONE.encode() in path.read_bytes().upper()}


def broken_at(patch, step, error):
    """Let the step of that number fail, of all that write something."""
    left = iter(range(step))

    def failing(real):
        def call(*words, **more):
            if next(left, None) is None:
                raise error
            return real(*words, **more)

        return call

    patch.setattr(Store, "writing", failing(Store.writing))
    patch.setattr(Store, "sweep", failing(Store.sweep))
    patch.setattr(Table, "write", failing(Table.write))


FULL = OSError(28, "No space left on device")


@pytest.mark.parametrize(
    "error",
    [FULL, left(ItembankError("The disk is full.")), KeyboardInterrupt()],
    ids=lambda e: type(e).__name__,
)
def test_broken_off_at_any_step_it_is_true_and_is_done_in_the_end(tmp_path, monkeypatch, error):
    with open_store(str(tmp_path / "results.sqlite3")) as store:
        fill(store)
        export_all(store, tmp_path / "out")
    steps = 0
    while True:
        folder = tmp_path / str(steps)  # in which the store knows its exports again
        folder.mkdir()
        shutil.copy(tmp_path / "results.sqlite3", folder)
        shutil.copytree(tmp_path / "out", folder / "out")
        with open_store(str(folder / "results.sqlite3")) as store:
            done = None
            with monkeypatch.context() as patch:
                broken_at(patch, steps, error)
                with contextlib.suppress(OSError, ItembankError, KeyboardInterrupt):
                    done = forget(store, WHOM)
            rows = [row[1] for row in dump(store)["score"]]
            if GONE in rows:  # then nothing at all was done, and nothing is listed
                assert rows.count(GONE) == 2
                assert not unfinished(store)
                assert "scores.csv" in holds(folder)
            elif done is None or not done.done:
                assert len(unfinished(store)) == 1
                for path, _ in done.left if done else ():
                    assert path.exists()
            else:
                assert not unfinished(store)
                assert not holds(folder)
                break
            again = forget(store, WHOM)
            assert again.done
            assert not unfinished(store)
            assert not holds(folder)
        steps += 1
    assert steps > 10


def test_what_is_left_is_kept_on_the_list_over_days(tmp_path):
    with open_store(str(tmp_path / "results.sqlite3")) as store:
        fill(store)
        export_all(store, tmp_path / "out")
        (tmp_path / "out" / "scores.csv").write_bytes(b"a spreadsheet,was here\n")
        assert not forget(store, WHOM).done
    with open_store(str(tmp_path / "results.sqlite3")) as store:
        (forgetting,) = unfinished(store)
        assert (forgetting.whom, forgetting.files) == (WHOM, ("out/scores.csv",))
        (path, why) = finish(store, forgetting.number).left[0]
        assert path == tmp_path / "out" / "scores.csv"
        assert "columns" in why
        path.unlink()
        assert finish(store, forgetting.number).done
        assert not unfinished(store)
    assert not holds(tmp_path)


def test_hidden_parts_of_a_killed_export_go(tmp_path):
    with open_store(str(tmp_path / "results.sqlite3")) as store:
        fill(store)
        export_all(store, tmp_path / "out")
        for name in (".scores.csv.x7f3k2", ".answers.csv.00ff00ff00ff00ff.itembank-new"):
            (tmp_path / "out" / name).write_text(f"class,date,seat\n8K,2026-11-30,{GONE}\n")
        (tmp_path / "out" / ".mine").write_text("stays")
        done = forget(store, WHOM)
    assert len(done.parts) == 2
    assert not holds(tmp_path)
    assert (tmp_path / "out" / ".mine").exists()


def test_notes_and_titles_lose_the_seat_and_nothing_else(store, tmp_path):
    fill(store)
    title = LessonFacts("8K", DAY + A_DAY, 4, f"Ratio again, {GONE} first", "", facts().questions)
    record(store, title, Scores({STAYS: 1}))
    record(store, facts(class_name="9S"), Clarity(1, 2, f"{GONE} of another class"))
    export_all(store, tmp_path / "out")
    done = forget(store, WHOM)
    assert done.cut == 2
    notes = [row[3] for row in dump(store)["clarity"]]
    assert notes == ["[forgotten] asked, then [forgotten] again", f"{GONE} of another class"]
    assert "Ratio again, [forgotten] first" in [row[4] for row in dump(store)["lesson"]]
    text = (tmp_path / "out" / "clarity.csv").read_text()
    assert text.count(GONE) == 1
    assert GONE not in (tmp_path / "out" / "lessons.csv").read_text()


def test_a_bare_number_in_a_note_is_shown_to_a_person(store):
    record(store, facts(), Clarity(1, 2, "question 12 was unclear to 12"))
    done = forget(store, Whom("8K", "12"))
    assert done.cut == 0
    assert done.notes == [f"{day_month_year(DAY)}: question 12 was unclear to 12"]


DATES = {
    "iso": lambda day: day.isoformat(),
    "England": lambda day: day.strftime("%d/%m/%Y"),
    "short": lambda day: f"{day.day}/{day.month}/{day:%y}",
    "dots": lambda day: day.strftime("%d.%m.%Y"),
    "words": lambda day: day.strftime("%d-%b-%y"),
    "long": lambda day: f"{day:%A}, {day.day} {day:%B} {day.year}",
    "time": lambda day: day.strftime("%d/%m/%Y 00:00"),
    "serial": lambda day: str((day - datetime.date(1899, 12, 30)).days),
}
DAYS = st.dates(datetime.date(2024, 1, 1), datetime.date(2027, 12, 31))
ROWS = st.lists(
    st.tuples(st.sampled_from(["8K", "8k", "9S"]), DAYS, st.sampled_from([GONE, "zq7", STAYS])),
    min_size=1,
    max_size=12,
)


@given(day=DAYS, how=st.sampled_from(sorted(DATES)))
def test_days_are_read_as_spreadsheets_write_them(day, how):
    assert read_day(DATES[how](day)) == day


@given(
    rows=ROWS,
    how=st.sampled_from(sorted(DATES)),
    separator=st.sampled_from([",", ";", "\t"]),
    encoding=st.sampled_from(["utf-8", "utf-8-sig", "utf-16", "cp1252"]),
    end=st.sampled_from(["\n", "\r\n"]),
    quoting=st.sampled_from([csv.QUOTE_ALL, csv.QUOTE_MINIMAL]),
    heads=st.permutations(["class", "date", "seat", "score, £"]),
    told=st.booleans(),
    before=st.none() | DAYS,
    seat=st.sampled_from([GONE, ""]),
)
@settings(max_examples=cases(25, 60), deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_a_table_saved_anew_by_a_spreadsheet_is_cleaned_and_kept_as_it_was(
    tmp_path_factory, rows, how, separator, encoding, end, quoting, heads, told, before, seat
):
    path = tmp_path_factory.mktemp("out") / "scores.csv"
    whom = Whom("8K", seat, before)

    def written(kept):
        out = io.StringIO(newline="")
        writer = csv.writer(out, delimiter=separator, lineterminator=end, quoting=quoting)
        named = [head.title() for head in heads]
        writer.writerow(named)
        for name, day, code in kept:
            cells = {"class": name, "date": DATES[how](day), "seat": code, "score, £": "½"}
            writer.writerow([cells[head] for head in heads])
        return (f"sep={separator}{end}" if told else "") + out.getvalue()

    path.write_bytes(written(rows).encode(encoding))
    goes = [whom.of_lesson(*row[:2]) and (not seat or whom.of_seat(row[2])) for row in rows]
    stay = [row for row, gone in zip(rows, goes, strict=True) if not gone]
    done = clean_table(path, whom, dict)
    assert done.changed == (stay != rows)
    assert not done.doubts
    found = path.read_bytes().decode(encoding)
    if done.changed:

        def cells(text):
            return list(csv.reader(io.StringIO(text, newline=""), delimiter=separator))

        assert cells(found) == cells(written(stay))
        assert found.count("\r\n") == written(stay).count("\r\n")
    else:
        assert found == written(rows)


def test_seats_and_days_that_a_spreadsheet_changed_are_told(tmp_path):
    path = tmp_path / "scores.csv"
    path.write_text("class,date,seat,marks\n8K,30/11/2026,ZQ7,1\n8K,30/11/2026,1.00E+02,2\n")
    done = clean_table(path, WHOM, dict)
    assert done.changed
    assert "1.00E+02" in done.doubts[0]
    path.write_text("class,date,seat,marks\n8K,some day,B2,1\n8K,01/09/2026,B2,1\n")
    done = clean_table(path, Whom("8K", before=DAY), dict)
    assert "some day" in done.doubts[0]
    assert path.read_text() == "class,date,seat,marks\n8K,some day,B2,1\n"
    path.write_text("class,date,seat,marks\n8K,01/09/2026,1,1\n8K,01/09/2026,11,1\n")
    assert clean_table(path, Whom("8K", "01"), dict).changed
    assert path.read_text() == "class,date,seat,marks\n8K,01/09/2026,11,1\n"
    path.write_text("class,date,seat,marks\n8K,11/30/2026,B2,1\n8K,12/01/2026,B2,1\n")
    assert open_table(path).month_first
    clean_table(path, Whom("8K", before=DAY + A_DAY), dict)
    assert path.read_text() == "class,date,seat,marks\n8K,12/01/2026,B2,1\n"


def test_a_server_is_said_to_keep_what_only_its_owner_can_clean(
    shared, server, tmp_path, monkeypatch, capsys
):
    (tmp_path / "department.toml").write_text(
        'school = "Larkhythe School"\n'
        '[[classes]]\nname = "8K"\nyear = 8\ntopics = ["ratio.share"]\n'
    )
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("ITEMBANK_STORE", server.url)
    fill(shared)
    with pytest.raises(SystemExit) as end:
        run(["forget", "--seat", f"8K/{GONE}", "--yes"])
    assert not end.value.code
    said = capsys.readouterr().out
    assert "VACUUM FULL" in said
    assert "backups" in said
    assert not unfinished(shared)
