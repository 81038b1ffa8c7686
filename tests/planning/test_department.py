"""A department's file: read whole, and every fault told at once with its line."""

import datetime
from pathlib import Path

import pytest

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.planning.calendar.days import usual_seed
from itembank.planning.department.department import find_department, read_department
from itembank.planning.department.large_copies import LargePrint
from itembank.planning.department.pack_request import PlannedTopic
from itembank.planning.department.plan_file import read_plan
from tests.planning.department_samples import GOOD, KNOWN, department, faults


def test_defaults(tmp_path):
    found = department(tmp_path, GOOD)
    assert found.default_class == "8K"
    one = found.find_class("8k")
    assert (one.questions, one.follow_up, one.paper) == (8, 10, "white")
    assert (one.large_print, one.print_tint) == (LargePrint(), False)
    assert [band.name for band in one.bands.bands(8)] == ["Rebuild", "Secure", "Extend"]


def test_larkhythe():
    folder = Path(__file__).parents[2] / "banks" / "larkhythe"
    found = read_department(folder)
    assert found.school == "Larkhythe School"
    assert [group.name for group in found.classes] == ["7M", "8K", "9S"]
    assert found.find_class().name == "8K"
    nine = found.find_class("9S")
    assert [(b.letter, b.lowest, b.highest) for b in nine.bands.bands(10)] == [
        ("R", 0, 5),
        ("P", 6, 8),
        ("S", 9, 10),
    ]
    plan = read_plan(folder / "plan-8K.toml")
    assert plan.class_name == "8K"
    assert plan.date == datetime.date(2026, 11, 30)
    assert plan.topics[-1] == PlannedTopic("equations.two-step", 2)


def test_every_fault_at_once_with_its_line(tmp_path):
    text = """school = "Larkhythe School"
default_class = "8Z"

[[classes]]
name = "8K"
yaer = 8
topics = [
    "ratio.share",
    "ratio.shar",
]

[[classes]]
name = "9S"
year = "nine"
topics = []
paper = "mauve"
"""
    found = faults(tmp_path, text)
    assert [line for line, _ in found] == [2, 4, 6, 9, 14, 15, 16]
    by_line = dict(found)
    assert "no class 8Z" in by_line[2]
    assert "‘year’ is missing" in by_line[4]
    assert "Did you mean ‘year’?" in by_line[6]
    assert "Did you mean ratio.share or" in by_line[9]
    assert "whole number" in by_line[14]
    assert "no topics" in by_line[15]
    assert "white, cream" in by_line[16]


BANDS = """
[[bands.band]]
name = "Red"
letter = "R"
shape = "triangle"
colour = "#D55E00"
colour_name = "red"
lowest = 0
highest = {red}

[[bands.band]]
name = "Green"
letter = "G"
shape = "square"
colour = "#009E73"
colour_name = "green"
lowest = {green}
"""


def test_own_bands(tmp_path):
    found = department(tmp_path, GOOD + BANDS.format(red=4, green=5)).find_class()
    assert [(b.name, b.lowest, b.highest) for b in found.bands.bands(16)] == [
        ("Red", 0, 9),
        ("Green", 10, 16),
    ]
    cuts = department(tmp_path, GOOD + "[bands]\nout_of = 10\ncuts = [4, 8]\n").find_class()
    assert [band.lowest for band in cuts.bands.bands(10)] == [0, 4, 8]


def test_a_top_that_is_not_stated_leaves_no_gap_below_the_next_band(tmp_path):
    text = BANDS.format(red=4, green=5).replace("highest = 4\n", "") + "[bands]\nout_of = 10\n"
    found = department(tmp_path, GOOD + text).find_class()
    assert [(b.name, b.lowest, b.highest) for b in found.bands.bands(10)] == [
        ("Red", 0, 4),
        ("Green", 5, 10),
    ]


def test_four_shapes_that_never_stand_together_are_told(tmp_path):
    shapes = ("circle", "square", "triangle", "diamond")
    colours = ("#D55E00", "#E69F00", "#F0E442", "#009E73")
    rows = "".join(
        f'[[bands.band]]\nname = "{shape}"\nletter = "{shape[0]}"\nshape = "{shape}"\n'
        f'colour = "{colour}"\ncolour_name = "{colour}"\n'
        for shape, colour in zip(shapes, colours, strict=True)
    )
    ((line, message),) = faults(tmp_path, GOOD + rows)
    assert line == 7
    assert "cannot all be signs of one class. Take another shape for one of them" in message
    # A room that signals in red, amber and green has the shapes and colours it is used to.
    three = GOOD + rows[rows.index("[[bands.band]]", 1) :]
    assert [band.shape for band in department(tmp_path, three).find_class().bands.bands(8)] == [
        *shapes[1:]
    ]


def test_own_bands_without_scores_follow_the_usual_rule(tmp_path):
    lines = [line for line in BANDS.splitlines() if not line.startswith(("lowest", "highest"))]
    text = GOOD + "\n".join(lines)
    found = department(tmp_path, text).find_class()
    assert [(b.name, b.lowest, b.highest) for b in found.bands.bands(5)] == [
        ("Red", 0, 2),
        ("Green", 3, 5),
    ]
    ((_, message),) = faults(tmp_path, text + "\nlowest = 5\n")
    assert "lowest" in message


@pytest.mark.parametrize(
    ("red", "green", "words"),
    [(4, 6, "No band holds the score 5"), (5, 4, "overlap"), (9, 5, "from 0 to 8, not 9")],
)
def test_bands_with_gaps_or_overlaps(tmp_path, red, green, words):
    ((_, message),) = faults(tmp_path, GOOD + BANDS.format(red=red, green=green))
    assert words in message


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ('school = "Lark', 1, "cannot be read as TOML"),
        ('school = "F"\nschool = "G"\n', 2, "cannot be read as TOML"),
        ('school = "F"\n', 0, "no class"),
        (GOOD + "[bands]\ncuts = [7, 5]\n", 8, "do not rise"),
        (GOOD + "[bands]\nout_of = 8\n", 7, "State the bands"),
        (GOOD + 'paper = ["white"]\n', 7, "must be one of"),
        (GOOD + "questions = 50\n", 7, "from 1 to 20, not 50"),
        (GOOD.replace("8K", "8/K"), 4, "must not"),
        (GOOD + '[[classes]]\nname = "8K"\nyear = 8\ntopics = ["ratio.scale"]\n', 8, "two classes"),
        (GOOD + '[[classes]]\nname = "8k"\nyear = 8\ntopics = ["ratio.scale"]\n', 8, "two classes"),
        (GOOD.replace('"ratio.share"', '"ratio.share", "ratio.share"'), 6, "listed twice"),
        ("classes = 3\nschool = 'F'\n", 1, "tables, each headed [[classes]]"),
    ],
)
def test_each_fault(tmp_path, text, line, words):
    found = faults(tmp_path, text)
    assert [(at, words in message) for at, message in found] == [(line, True)]


def test_encodings(tmp_path):
    path = tmp_path / "department.toml"
    path.write_bytes(("\ufeff" + GOOD).encode())
    assert read_department(tmp_path).school == "Larkhythe School"
    path.write_bytes(GOOD.encode("utf-16"))
    with pytest.raises(FileFaults, match="UTF-16"):
        read_department(tmp_path)
    path.write_bytes(GOOD.encode() + "title = 'é'\n".encode("latin-1"))
    with pytest.raises(FileFaults, match=r"line 7: .*not UTF-8"):
        read_department(tmp_path)
    path.unlink()
    with pytest.raises(FileFaults, match="no such file"):
        read_department(tmp_path)


def test_finding_the_department(tmp_path, monkeypatch):
    department(tmp_path, GOOD)
    below = tmp_path / "a" / "b"
    below.mkdir(parents=True)
    monkeypatch.chdir(below)
    assert find_department() == tmp_path
    assert find_department(tmp_path / "department.toml") == tmp_path
    with pytest.raises(ItembankError, match="holds no department"):
        find_department(below)
    with pytest.raises(ItembankError, match="no folder"):
        find_department(tmp_path / "none")


def test_unknown_class_names_those_there_are(tmp_path):
    with pytest.raises(ItembankError, match=r"no class 8Z .*The class is 8K\."):
        department(tmp_path, GOOD).find_class("8Z")


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("topics = []\n", 1, "no topics"),
        ('topics = ["ratio.shar"]\n', 1, "Did you mean ratio.share"),
        ('topics = ["ratio.share"]\ndate = "30 Nov"\n', 2, "such as 2026-11-30"),
        ('topics = ["ratio.share"]\nquestions = 0\n', 2, "from 1 to 20, not 0"),
        ('topics = ["ratio.share"]\nsed = 1\n', 2, "Did you mean ‘seed’?"),
        ('topics = [{ id = "ratio.share", cuont = 2 }]\n', 1, "Did you mean ‘count’?"),
        ('topics = [{ id = "ratio.share", count = 3 }]\nquestions = 2\n', 2, "ask for 3"),
        ("topics = [true]\n", 1, "in quotation marks, not true"),
        ('topics = ["ratio.share"]\nbanks = [false]\n', 2, "in quotation marks, not false"),
    ],
)
def test_faults_of_a_plan(tmp_path, text, line, words):
    path = tmp_path / "plan.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(FileFaults) as caught:
        read_plan(path, KNOWN)
    assert [(f.line, words in f.message) for f in caught.value.faults] == [(line, True)]


TODAY = datetime.date(2026, 11, 30)


def test_seeds_differ_between_lessons():
    seeds = {
        usual_seed("8K", TODAY, "Sharing"),
        usual_seed("7M", TODAY, "Sharing"),
        usual_seed("8K", TODAY.replace(day=29), "Sharing"),
        usual_seed("8K", TODAY, "Dividing"),
    }
    assert len(seeds) == 4
    assert all(0 <= seed < 1_000_000 for seed in seeds)


TAUGHT = """
[classes.taught]
ratio.share = 2026-11-19
"ratio.scale" = "2026-11-20"
fractions.divide = "not yet"
"""


def test_what_a_class_was_taught_is_read_with_quotation_marks_or_without(tmp_path):
    assert department(tmp_path, GOOD + TAUGHT).find_class("8K").plan.taught == {
        "ratio.share": datetime.date(2026, 11, 19),
        "ratio.scale": datetime.date(2026, 11, 20),
        "fractions.divide": None,
    }
    wrong = TAUGHT.replace("2026-11-19", '"soon"').replace("ratio.scale", "ratio.scal")
    assert sorted(line for line, _ in faults(tmp_path, GOOD + wrong)) == [9, 10]
    told = " ".join(message for _, message in faults(tmp_path, GOOD + wrong))
    assert "not ‘soon’" in told
    assert "Did you mean ratio.scale" in told
