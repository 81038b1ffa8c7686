"""A department's own questions from the first one to a marked class, as a new user would do it."""

import csv
import json
import re
import shutil
from pathlib import Path

import pytest

from itembank.cli.main import run

pytestmark = pytest.mark.usefixtures("pages_outlined")

QUESTIONS = {
    "garden-1": [
        *("--topic", "fractions.of-quantity", "--tier", "support", "--key", "46"),  # it is 45
        *("--prompt", "A garden has {60} tomato plants. {3/4} of them flower. How many is that?"),
        *("--model", "3/4 × 60", "--author", "T7", "--anyway"),
        *("--working", "A quarter of 60 is 15 | 60 ÷ 4 = 15"),
    ],
    "garden-2": [
        *("--topic", "fractions.of-quantity", "--tier", "core", "--key", "24"),
        *("--prompt", "Work out {2/5} of {60}.", "--model", "2/5 of 60", "--author", "T7"),
    ],
    "pool-1": [
        *("--topic", "ratio.share", "--tier", "support", "--task", "share", "--author", "HT"),
        *("--prompt", "Two clubs share {£40} in the ratio {3 : 5}.", "--key", "£15, £25"),
        *("--mistake", "£20, £20 | shares equally | What does the 3 tell you?"),
    ],
    "pool-2": [
        *("--topic", "ratio.share", "--tier", "core", "--task", "share", "--author", "HT"),
        *("--prompt", "Share {90} lengths in the ratio {1 : 2}.", "--key", "30, 60"),
    ],
    "depot-1": [
        *("--topic", "equations.two-step", "--tier", "core", "--author", "HT"),
        *("--prompt", "Solve {5x + 12 = 47}.", "--key", "x = 7"),
        *("--mistake", "x = 35 | stops before dividing | What does 5x mean?"),
    ],
}


def do(*arguments, status=0):
    """Run a command whose output does not matter here."""
    with pytest.raises(SystemExit) as end:
        run([str(argument) for argument in arguments])
    assert (end.value.code or 0) == status, arguments


@pytest.fixture(scope="module")
def five(tmp_path_factory):
    """A new bank with five questions, added one by one; one of them has a wrong key."""
    folder = tmp_path_factory.mktemp("story") / "questions"
    do(
        *("bank", "new", folder, "--name", "larkhythe", "--title", "Larkhythe's own"),
        *("--author", "HT=head of mathematics", "--author", "T7=teacher of 7M"),
    )
    for name, options in QUESTIONS.items():
        do("bank", "add", "--bank", folder, "--id", name, *options)
    return folder


@pytest.fixture
def bank(five, tmp_path, monkeypatch):
    """A copy of the five questions, in the folder where the teacher works."""
    monkeypatch.chdir(tmp_path)
    return shutil.copytree(five, tmp_path / "questions").relative_to(tmp_path)


@pytest.fixture
def mended(bank):
    do("bank", "change", "garden-1", "--key", "45")
    return bank


@pytest.fixture
def signed(mended):
    do("bank", "sign", "--all-proved", "--by", "HT", "--on", "2026-11-20")
    return mended


def test_what_was_added_is_listed_with_its_state(said, bank):
    listed = said("bank", "list")
    assert listed.status == 0
    assert [re.search(rf" {name} .*", listed.out) is not None for name in QUESTIONS] == [True] * 5
    assert re.search(r"garden-1 +support +disproved +A garden has 60 tomato", listed.out)
    assert re.search(r"pool-1 +support +proved +Two clubs share £40", listed.out)
    assert listed.out.endswith("4 proved and 1 disproved; signed by nobody yet.\n")
    wrong = said("bank", "list", "--state", "disproved").out
    assert "garden-1" in wrong
    assert "pool-1" not in wrong


def test_the_wrong_key_is_found_with_its_place_and_both_answers(said, bank):
    status, out, err = said("bank", "prove")
    assert status == 1
    line = (bank / "fractions.of-quantity.toml").read_text(encoding="utf-8").splitlines()
    at = line.index("[[items]]") + 1
    assert f"garden-1  (questions/fractions.of-quantity.toml, line {at})" in out
    assert re.search(r"45.*46", out)
    assert "5 keys, 4 proved, 1 disproved, 0 need a person" in out
    assert "A key is wrong" in err
    assert said("bank", "prove", "--topic", "ratio.share").status == 0


def test_a_wrong_key_is_not_signed(said, bank):
    status, _, err = said("bank", "sign", "garden-1", "pool-1", "--by", "HT")
    assert status == 1
    assert "garden-1 cannot be signed" in err
    assert not (bank / "signoffs.toml").exists()


def test_a_mended_bank_proves(said, mended):
    status, out, _ = said("bank", "prove")
    assert status == 0
    assert "5 keys, 5 proved" in out


def test_mending_touches_one_line_only(bank):
    file = bank / "fractions.of-quantity.toml"
    text = file.read_text(encoding="utf-8").replace("[[items]]", "# Tomatoes\n[[items]]", 1)
    file.write_text(text, encoding="utf-8")
    do("bank", "change", "garden-1", "--key", "45")
    assert file.read_text(encoding="utf-8") == text.replace('"46"', '"45"')


def test_signed_then_edited_is_stale_and_says_what_changed(said, signed):
    shown = said("bank", "show", "pool-2").out
    assert "Signed   by HT on 20 November 2026" in shown
    file = signed / "ratio.share.toml"
    text = file.read_text(encoding="utf-8").replace("{90} lengths", "{90} widths")
    file.write_text(text, encoding="utf-8")
    shown = " ".join(said("bank", "show", "pool-2").out.split())
    assert "stale: by HT on 20 November 2026" in shown
    assert "was ‘Share {90} lengths in the ratio {1 : 2}.’" in shown
    assert "is now ‘Share {90} widths in the ratio {1 : 2}.’" in shown
    stale = said("bank", "list", "--state", "stale").out
    assert "pool-2" in stale
    assert "1 question: 1 proved; 1 stale." in stale
    do("bank", "sign", "pool-2", "--by", "T7")
    assert "No question" in said("bank", "list", "--state", "stale").out


def test_a_colleague_s_copy_with_another_version_is_merged_and_settled(said, signed):
    theirs = shutil.copytree(signed, Path("colleague"))
    do("bank", "change", "garden-2", "--prompt", "Find {2/5} of {60}.", "--bank", theirs)
    do("bank", "change", "garden-2", "--prompt", "What is {2/5} of {60}?", "-b", signed)
    do(
        *("bank", "add", "--bank", theirs, "--id", "pool-9", "-t", "ratio.share"),
        *("--tier", "core", "--task", "share"),
        # pool-2 in disguise: the parts the other way round would be another question
        *("--prompt", "Two squads share {90} lengths in the ratio {1 : 2}.", "--key", "30, 60"),
    )
    compared = said("bank", "compare", signed, theirs).out
    assert "pool-9" in compared
    assert "was ‘What is {2/5} of {60}?’" in " ".join(compared.split())

    before = {file.name: file.read_bytes() for file in signed.iterdir()}
    planned = said("bank", "merge", signed, theirs, "--dry-run").out
    assert "To settle:" in planned
    assert {file.name: file.read_bytes() for file in signed.iterdir()} == before

    status, out, _ = said("bank", "merge", signed, theirs)
    assert status == 0
    versions = re.findall(r"itembank bank settle (garden-2\.[0-9a-f]{4,})", out)
    assert len(set(versions)) == 2
    assert "What is {2/5} of {60}?" in out
    assert "Find {2/5} of {60}." in out
    assert re.search(r"Twins.*\n  pool-2, pool-9", out)
    assert "pool-9" in said("bank", "list", signed, "--text", "squads").out

    keep = next(
        name for name in versions if "What is" in said("bank", "show", name, "--bank", signed).out
    )
    status, out, _ = said("bank", "settle", keep, "--bank", signed)
    assert (status, keep in out) == (0, True)
    assert "What is 2/5 of 60?" in said("bank", "show", "garden-2", "--bank", signed).out
    again = said("bank", "merge", signed, theirs).out
    assert "To settle" not in again
    retired = said("bank", "list", signed, "--state", "retired").out
    assert "Find 2/5 of 60." in retired


def test_a_colleague_s_other_question_with_the_same_id_is_kept_beside_ours(said, signed):
    theirs = shutil.copytree(signed, Path("colleague"))
    do("bank", "change", "garden-2", "--prompt", "Work out {9 × 7}.", "--key", "63", "-b", theirs)
    do("bank", "change", "garden-2", "--prompt", "What is {2/5} of {60}?", "-b", signed)
    out = said("bank", "merge", signed, theirs).out
    ours, other = sorted(
        set(re.findall(r"itembank bank settle (garden-2\.[0-9a-f]{4,})", out)),
        key=lambda name: "What is" not in said("bank", "show", name, "--bank", signed).out,
    )
    assert "--both" in out
    for taken, told in (("garden-1", "is taken"), ("Garden", "cannot be an id")):
        status, _, err = said("bank", "settle", ours, "--both", "--as", taken, "-b", signed)
        assert (status, told in err) == (2, True)
    status, out, _ = said("bank", "settle", ours, "--as", "shop-1", "--bank", signed)
    assert (status, other in out, "shop-1" in out) == (0, True, True)
    assert "What is 2/5 of 60?" in said("bank", "show", "garden-2", "--bank", signed).out
    assert "9 × 7" in said("bank", "show", "shop-1", "--bank", signed).out
    assert "To settle" not in said("bank", "merge", signed, theirs).out

    status, out, _ = said("bank", "rename", "shop-1", "stall-4", "--bank", signed)
    assert (status, "stall-4" in out) == (0, True)
    assert "9 × 7" in said("bank", "show", "stall-4", "--bank", signed).out
    status, _, err = said("bank", "rename", "stall-4", "garden-1", "--bank", signed)
    assert (status, "‘garden-1’ is taken" in err) == (2, True)
    assert said("bank", "rename", "shop-1", "stall-5", "--bank", signed).status == 2
    assert said("bank", "check", signed).status == 0


def test_a_merge_into_a_new_folder_leaves_both_banks_alone(said, signed):
    theirs = shutil.copytree(signed, Path("colleague"))
    do("bank", "change", "garden-2", "--prompt", "Find {2/5} of {60}.", "--bank", theirs)
    before = {file: file.read_bytes() for home in (signed, theirs) for file in home.iterdir()}
    assert said("bank", "merge", signed, theirs, "--into", "both").status == 0
    assert {f: f.read_bytes() for home in (signed, theirs) for f in home.iterdir()} == before
    assert said("bank", "check", "both").status == 0
    assert said("bank", "merge", signed, theirs, "--into", "both").status == 2


def test_a_table_takes_everything_to_another_bank(said, signed):
    do("bank", "export", "all.csv")
    with open("all.csv", encoding="utf-8-sig", newline="") as file:
        assert {row["id"] for row in csv.DictReader(file)} == set(QUESTIONS)
    do("bank", "new", "other", "--author", "HT=head", "--author", "T7=seven")
    do("bank", "import", "all.csv", "--bank", "other")
    assert "hold the same questions" in said("bank", "compare", signed, "other").out
    assert said("bank", "export", "all.csv", "--bank", "other").status == 2
    status, _, err = said("bank", "import", "all.csv", "--bank", "other")
    assert status == 2
    assert err.count("is taken already") == 5


def test_moved_and_retired(said, signed):
    do("bank", "move", "garden-2", "--topic", "ratio.share")
    assert "(ratio.share)" in said("bank", "show", "garden-2").out
    do("bank", "new", "shared", "--author", "HT=head", "--author", "T7=seven")
    do("bank", "move", "garden-2", "--to", "shared", "--bank", signed)
    assert said("bank", "show", "garden-2", "--bank", signed).status == 2
    assert "Work out 2/5 of 60." in said("bank", "show", "garden-2", "--bank", "shared").out

    do("bank", "retire", "pool-2", "--because", "too easy", "--on", "2096-11-21", "-b", signed)
    shown = said("bank", "show", "pool-2", "--bank", signed).out
    assert "Retired  21 November 2096: too easy" in shown
    assert "by HT on 20 November 2026" in shown
    status, _, err = said("bank", "retire", "pool-2", "--because", "again", "--bank", signed)
    assert (status, "retired already" in err) == (2, True)


def test_a_question_keeps_its_licence_where_it_goes(said, signed):
    granted = ("--licence", "CC0-1.0", "--licensor", "the swimming club")
    do("bank", "new", "club", "--author", "HT=head", "--author", "T7=seven", *granted)
    do("bank", "move", "garden-2", "--to", "club", "--bank", signed)
    assert "none stated" in said("bank", "show", "garden-2", "--bank", "club").out
    add = ("--topic", "ratio.share", "--tier", "core", "--id", "pool-9")
    do("bank", "add", *add, "--prompt", "Work out {2 + 3}.", "--key", "5", "--bank", "club")
    shown = " ".join(said("bank", "show", "pool-9", "--bank", "club").out.split())
    assert "CC0-1.0, granted by the swimming club" in shown
    do("bank", "move", "pool-9", "--to", signed, "--bank", "club")
    shown = " ".join(said("bank", "show", "pool-9", "--bank", signed).out.split())
    assert "CC0-1.0, granted by the swimming club" in shown


def test_a_table_says_the_licence_of_what_it_takes_along(said, signed):
    granted = ("--licence", "CC0-1.0", "--licensor", "the swimming club")
    do("bank", "new", "club", *granted)
    add = ("--topic", "ratio.share", "--tier", "core", "--id", "pool-9")
    do("bank", "add", *add, "--prompt", "Work out {2 + 3}.", "--key", "5", "--bank", "club")
    do("bank", "export", "club.csv", "--bank", "club")
    do("bank", "new", "again", *granted)
    do("bank", "import", "club.csv", "--bank", "again")
    do("bank", "new", "elsewhere", "--licence", "MIT")
    do("bank", "import", "club.csv", "--bank", "elsewhere")
    assert "hold the same questions" in said("bank", "compare", "club", "again").out
    assert "licence" not in Path("again/ratio.share.toml").read_text()
    written = Path("elsewhere/ratio.share.toml").read_text()
    assert 'licence = "CC0-1.0, granted by the swimming club"' in written


def test_a_bank_that_names_no_author_says_how_to_name_one(said, signed):
    do("bank", "new", "club")
    add = ("--topic", "ratio.share", "--tier", "core", "--id", "pool-9")
    do("bank", "add", *add, "--prompt", "Work out {2 + 3}.", "--key", "5", "--bank", "club")
    status, _, err = said("bank", "sign", "pool-9", "--by", "HT", "--bank", "club")
    assert (status, "names none yet. Add a code with a role" in err) == (2, True)
    status, _, err = said("bank", "list", "--author", "HT", "club")
    assert (status, "name no author" in err) == (2, True)


PACK = (
    *("pack", "--class", "8K", "--date", "2026-11-30", "--title", "Our own", "--bank", "questions"),
    *("-t", "ratio.share", "-t", "fractions.of-quantity", "--questions", "2"),
)


def test_a_pack_with_the_bank_s_questions_first_and_a_class_marked_on_it(said, signed):
    do(*PACK, "--questions-from", "both", "--prefer", "bank")
    folder = Path("8K-2026-11-30")
    assert {file.suffix for file in folder.iterdir()} == {".pdf", ".json", ".html"}
    held = json.loads((folder / "pack.json").read_text(encoding="utf-8"))
    asked = [item["address"] for item in held["versions"][0]["items"]]
    assert len(asked) == 2
    assert all(one.startswith("larkhythe:") for one in asked)

    keys = {"pool-1": "£15 and £25", "pool-2": "30, 60", "garden-1": "45", "garden-2": "24"}
    wrong = {"pool-1": "£20, £20", "pool-2": "45, 45", "garden-1": "15", "garden-2": "12"}
    ids = [address.partition(":")[2] for address in asked]
    rows = ["seat,1,2"]
    for seat, answers in {"A1": (keys, keys), "A2": (keys, wrong), "B1": (wrong, wrong)}.items():
        cells = [side[id] for side, id in zip(answers, ids, strict=True)]
        rows.append(",".join([seat, *(f'"{cell}"' for cell in cells)]))
    Path("answers.csv").write_text("\n".join(rows) + "\n", encoding="utf-8")
    status, out, _ = said("mark", "--pack", folder, "--sheet", "answers.csv")
    assert status == 0
    for seat, marks in {"A1": 2, "A2": 1, "B1": 0}.items():
        assert re.search(rf"(?m)^ *{seat}\b.*\b{marks}\b", out), seat


def test_a_stale_question_is_not_in_a_pack_of_signed_ones(said, signed):
    do("bank", "change", "pool-1", "--prompt", "Two teams share {£40} in the ratio {3 : 5}.")
    do("bank", "change", "pool-2", "--prompt", "Share {90} widths in the ratio {1 : 2}.")
    status, _, err = said(*PACK, "--signed-only")
    assert status == 2
    assert "stale" in err
    assert not Path("8K-2026-11-30").exists()
