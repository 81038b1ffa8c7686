"""A question written at the desk: stopped while its key is wrong, saved, signed, taken back."""

import html
import re

import pytest

from tests.desk.test_question_form import sent_by

BANK = "/questions/larkhythe"
GOOD = {
    "topic": "fractions.add-unlike",
    "tier": "core",
    "prompt": "Work out {3/4 + 1/6}.",
    "key": "11/12",
}


def post(desk, path, **fields):
    return desk.post(path, data=fields, follow_redirects=False)


def version(desk, id):
    return re.search(r'name="version" value="([^"]+)"', desk.get(f"{BANK}/of/{id}").text)[1]


def files(home):
    return {path.name: path.read_bytes() for path in sorted((home / "questions").glob("*.toml"))}


def test_a_wrong_key_is_stopped_mended_saved_signed_edited_and_all_is_taken_back(desk, home):
    start = files(home)
    wrong = post(desk, f"{BANK}/new", **GOOD | {"key": "4/10", "name-0": "adds <across>"})
    assert wrong.status_code == 400
    assert files(home) == start
    text = html.unescape(wrong.text)
    assert "Key wrong" in text
    assert "Work out {3/4 + 1/6}." in text  # what was typed is all there
    assert 'value="4/10"' in text
    assert "adds &lt;across&gt;" in wrong.text
    still = post(desk, f"{BANK}/new", **GOOD | {"key": "4/10"})
    assert "11/12" in still.text
    assert "<mn>4</mn><mn>10</mn>" in still.text

    saved = post(desk, f"{BANK}/new", **GOOD)
    assert saved.status_code == 303
    page = desk.get(saved.headers["location"])
    assert "Saved as add-unlike-1. Its key is proved." in page.text
    written = files(home)

    stale_page = version(desk, "add-unlike-1")
    signed = post(desk, f"{BANK}/of/add-unlike-1/sign", by="T9", version=stale_page)
    assert signed.status_code == 303
    assert "itembank-initials=T9" in signed.headers["set-cookie"]
    page = desk.get(f"{BANK}/of/add-unlike-1").text
    assert "Signed by T9" in page
    assert '<option value="T9" selected' in page  # asked once
    signed_files = files(home)

    edit = desk.get(f"{BANK}/of/add-unlike-1/edit").text
    seen = re.search(r'name="version" value="([^"]+)"', edit)[1]
    changed = GOOD | {"prompt": "Add {3/4} and {1/6}.", "task": "work-out", "version": seen}
    changed["model"] = "3/4 + 1/6"
    assert post(desk, f"{BANK}/of/add-unlike-1/edit", **changed).status_code == 303
    page = desk.get(f"{BANK}/of/add-unlike-1").text
    assert "Signed, but edited since" in page
    assert (
        post(desk, f"{BANK}/of/add-unlike-1/sign", by="T9", version=stale_page).status_code == 400
    )

    for before in (signed_files, written, start):
        assert post(desk, f"{BANK}/undo").status_code == 303
        assert files(home) == before
    assert post(desk, f"{BANK}/undo").status_code == 400


LINE = 'kind = "number line"\nfirst = 0\nlast = 1\nsteps = 4\n[points]\nA = 3'


def test_a_picture_is_drawn_proves_the_key_and_is_kept_by_an_edit(desk, home):
    asked = {"topic": "fractions.shaded", "tier": "core", "prompt": "What number is at A?"}
    tried = post(desk, f"{BANK}/try", **asked, key="3/4", figure=LINE).text
    assert '<div class="picture"><svg' in tried
    assert "proved" in tried
    wrong = post(desk, f"{BANK}/new", **asked, key="1/4", figure=LINE)
    assert wrong.status_code == 400
    for bad, says in (
        ("kind =", "line 1 is no key with its value"),
        (f"{LINE}\n[labels]", "Line 7, ‘labels’: "),
        (LINE.replace("steps = 4", 'steps = "many"'), "Line 4, ‘steps’: it is to be a whole"),
        (f"{LINE}\n[points]\nA = 2", "something a second time"),
        (LINE.replace("number line", "numberline"), "Line 1, ‘kind’: "),
    ):
        answer = post(desk, f"{BANK}/new", **asked, key="3/4", figure=bad)
        assert answer.status_code == 400
        beside = re.search(r'id="fault-figure"[^>]*>([^<]*)', answer.text)[1]
        assert says in html.unescape(beside)
        assert bad in html.unescape(answer.text)  # what was typed is all there

    saved = post(desk, f"{BANK}/new", **asked, key="3/4", figure=LINE)
    assert saved.status_code == 303
    place = saved.headers["location"].split("?")[0]
    assert "<svg" in desk.get(place).text
    edit = desk.get(f"{place}/edit").text
    seen = re.search(r'name="version" value="([^"]+)"', edit)[1]
    shown = html.unescape(
        re.search(r'<textarea id="figure"[^>]*>\n?(.*?)</textarea>', edit, re.S)[1]
    )
    assert "points = { A = 3 }" in shown
    held = {**asked, "key": "0.75", "accept": "decimal", "figure": shown, "version": seen}
    assert post(desk, f"{place}/edit", **held).status_code == 303
    written = (home / "questions" / "fractions.shaded.toml").read_text()
    assert "points = { A = 3 }" in written
    assert 'key = "0.75"' in written


TRIANGLE = (
    'kind = "polygon"\ncorners = [[0, 0], [8, 0], [2, 6]]\n'
    'angles = { A = "50°", B = "60°", C = "x°" }'
)


def test_the_preview_of_a_triangle_whose_label_lies_says_what_it_measures(desk):
    asked = {"topic": "geometry.angles-in-triangles", "tier": "core", "key": "70 °"}
    tried = post(desk, f"{BANK}/try", **asked, prompt="Find angle x.", figure=TRIANGLE).text
    assert "the angle labelled 50° is drawn as 71.6°" in html.unescape(tried)
    assert "proved" not in tried
    assert "<svg" not in tried


def test_what_is_typed_is_looked_at_piece_by_piece(desk, home):
    before = files(home)

    def tried(**fields):
        answer = post(desk, f"{BANK}/try", **fields)
        assert answer.status_code == 200
        assert "<html" not in answer.text
        return html.unescape(answer.text)

    assert "Write its words and its answer" in tried(tier="core")
    assert "<mfrac>" in tried(tier="core", prompt="Work out {3/4 + 1/6}.")
    assert 'data-field="prompt"' in tried(tier="core", prompt="Work out {3/4 + }.")
    assert "Key proved" in tried(**GOOD)
    assert "Key wrong" in tried(**GOOD | {"key": "1"})
    assert 'data-field="marks"' in tried(**GOOD | {"marks": "two"})
    assert 'data-field="topic"' in tried(**GOOD | {"topic": "fractions.ad"})
    twin = "Share {40} lane bookings in the ratio {4 : 3}."
    asked = {
        "topic": "ratio.share",
        "tier": "core",
        "prompt": "Solve {12 + 5n = 47}.",
        "key": "n = 7",
    }
    assert "depot-2" in tried(**asked)
    assert twin not in tried(**GOOD)
    assert files(home) == before


def test_without_script_a_button_does_the_same_and_saves_nothing(desk, home):
    before = files(home)
    answer = post(desk, f"{BANK}/new", **GOOD, do="try")
    assert answer.status_code == 200
    assert "Key proved" in answer.text
    assert files(home) == before


@pytest.mark.parametrize("gone", ["topic", "prompt", "key"])
def test_what_is_missing_is_told_beside_its_field(desk, home, gone):
    before = files(home)
    answer = post(desk, f"{BANK}/new", **GOOD | {gone: ""})
    assert answer.status_code == 400
    assert f'id="fault-{gone}"' in answer.text
    assert files(home) == before


def test_rows_of_working_and_mistakes_are_kept_and_changed_one_by_one(desk, home):
    rows = {
        "say-0": "Write over 12",
        "line-0": "9/12 + 2/12",
        "say-2": "Add",
        "line-2": "11/12",
        "wrong-1": "4/10",
        "name-1": "adds across",
        "ask-1": "Is it more than 3/4?",
    }
    post(desk, f"{BANK}/new", **GOOD | rows)
    text = (home / "questions" / "fractions.add-unlike.toml").read_text()
    assert '["Write over 12", "9/12 + 2/12"]' in text
    assert 'id = "adds-across"' in text
    form = desk.get(f"{BANK}/of/add-unlike-1/edit").text
    sent = dict(re.findall(r'<input[^>]*name="([a-z]+-\d+|version)" value="([^"]*)"', form))
    assert sent["mistake-0"] == "adds-across"
    same = post(desk, f"{BANK}/of/add-unlike-1/edit", **GOOD | sent)
    assert same.status_code == 303
    assert "Nothing was changed" in desk.get(same.headers["location"]).text
    post(desk, f"{BANK}/of/add-unlike-1/edit", **GOOD | sent | {"ask-0": "Is it over a half?"})
    after = (home / "questions" / "fractions.add-unlike.toml").read_text()
    assert after == text.replace("Is it more than 3/4?", "Is it over a half?")


def test_an_edit_of_what_somebody_changed_meanwhile_is_not_saved(desk, home):
    form = desk.get(f"{BANK}/of/pool-1/edit").text
    seen = re.search(r'name="version" value="([^"]+)"', form)[1]
    path = home / "questions" / "ratio.share.toml"
    path.write_text(path.read_text().replace("Two clubs rent a pool", "Two clubs hire a pool"))
    before = files(home)
    answer = post(
        desk,
        f"{BANK}/of/pool-1/edit",
        version=seen,
        tier="support",
        prompt="Mine {1 : 2}",
        key="£15, £25",
    )
    assert answer.status_code == 400
    assert "has been changed since you looked" in html.unescape(answer.text)
    assert "Mine {1 : 2}" in html.unescape(answer.text)
    assert files(home) == before


def test_a_shipped_bank_stays_as_it_is_and_its_questions_can_be_copied(desk):
    shipped = "/questions/key-stage-4"
    first = re.search(r'href="(/questions/key-stage-4/of/[^"]+)"', desk.get(shipped).text)[1]
    page = desk.get(first).text
    assert "/sign" not in page
    for path in (f"{first}/retire", f"{shipped}/new", f"{shipped}/undo", f"{shipped}/try"):
        assert post(desk, path, because="x").status_code == 400
    copy = html.unescape(re.search(r'href="([^"]+/new\?from=[^"]+)"', page)[1])
    form = desk.get(copy).text
    assert "Key proved" in form
    sent = dict(sent_by(form))
    assert sent["topic"] or sent["own_topic"]
    answer = post(desk, f"{BANK}/new", **sent)
    assert answer.status_code == 303, answer.text
    assert "Licence:" in desk.get(answer.headers["location"]).text


def test_a_question_is_moved_and_retired_with_a_reason(desk, home):
    assert post(desk, f"{BANK}/of/pool-1/retire", because=" ").status_code == 400
    post(desk, f"{BANK}/of/pool-1/move", topic="ratio.scale")
    assert "pool-1" in (home / "questions" / "ratio.scale.toml").read_text()
    post(desk, f"{BANK}/of/pool-1/retire", because="too easy")
    page = desk.get(f"{BANK}/of/pool-1").text
    assert "too easy" in page
    assert "/retire" not in page
    assert desk.get(f"{BANK}/of/pool-1/edit").status_code == 404


def test_a_question_that_is_not_there_is_a_404_and_a_script_is_text(desk, home):
    assert desk.get(f"{BANK}/of/pool-77").status_code == 404
    path = home / "questions" / "ratio.share.toml"
    path.write_text(path.read_text().replace("Two clubs rent", "<script>x()</script> rent", 1))
    for page in ("", "/edit"):
        text = desk.get(f"{BANK}/of/pool-1{page}").text
        assert "<script>x()" not in text
        assert "&lt;script&gt;x()" in text


def test_a_question_in_full_shows_both_roads_sign_offs_and_its_twins(looking):
    text = looking.get(f"{BANK}/of/depot-1").text
    for says in (
        "By exact arithmetic",
        "By computer algebra",
        "HT on 12 October 2026",
        "depot-2",
    ):
        assert says in text
    person = looking.get(f"{BANK}/of/garden-4").text
    assert "a person has to check it" in person


def test_a_question_is_asked_in_a_lesson_that_is_planned(desk, home):
    assert f'href="{BANK}/of/pool-2/ask"' in desk.get(f"{BANK}/of/pool-2").text
    assert "do not draw on this bank yet" in desk.get(f"{BANK}/of/pool-2/ask").text
    assert post(desk, f"{BANK}/of/pool-2/ask").status_code == 303
    assert "/ask" not in desk.get(f"{BANK}/of/garden-4").text  # its key is not proved
    page = desk.get(f"{BANK}/of/pool-2/ask").text
    where = re.findall(r'action="(/class/8K/lesson/[^"]+)"', page)
    assert where[0] == "/class/8K/lesson/2026-11-30/1/change"
    assert len(where) == 4
    answer = desk.post(where[0], data={"do": "keep", "address": "larkhythe:pool-2"})
    assert answer.status_code == 200, answer.text
    assert "larkhythe:pool-2" in answer.text
    assert "Kept by you" in answer.text


def test_somebody_new_adds_a_code_and_signs_with_it(desk, home):
    before = files(home)
    answer = post(desk, f"{BANK}/codes", code="t8", role="teacher of 8K", id="depot-2")
    assert answer.status_code == 303
    assert post(desk, f"{BANK}/codes", code="T8", role="another").status_code == 400
    assert post(desk, f"{BANK}/codes", code="no name", role="x").status_code == 400
    post(desk, f"{BANK}/of/depot-2/sign", by="T8", version=version(desk, "depot-2"))
    assert "Signed by T8" in desk.get(f"{BANK}/of/depot-2").text
    text = (home / "questions" / "bank.toml").read_text()
    assert text == before["bank.toml"].decode() + 'T8 = "teacher of 8K"\n'
    post(desk, f"{BANK}/undo")
    post(desk, f"{BANK}/undo")
    assert files(home) == before


def test_a_department_without_a_bank_starts_one_and_writes_in_it(desk, home):
    import shutil

    assert "Start a bank" not in desk.get(BANK).text
    assert post(desk, "/questions", code="HT", role="head").status_code == 400
    shutil.rmtree(home / "questions")
    assert "Start a bank of your own" in desk.get("/questions").text
    assert post(desk, "/questions", code="", role="").status_code == 400
    assert post(desk, "/questions", code="H T!", role="head").status_code == 400
    assert "Start a bank of your own" in desk.get("/questions").text
    answer = post(desk, "/questions", code="HT", role="head of mathematics")
    assert answer.status_code == 303
    assert "Larkhythe School" in desk.get(answer.headers["location"]).text
    assert post(desk, "/questions/ours/new", **GOOD).status_code == 303
    assert "Signed" not in desk.get("/questions/ours/of/add-unlike-1").text
