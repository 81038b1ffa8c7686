"""The form of a question: every field that a file can hold, and none lost by an edit."""

import html
import re
from html.parser import HTMLParser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from starlette.datastructures import FormData

from itembank.bank.model.fields import BankItem
from itembank.bank.read.load import read_bank
from itembank.desk.replying.question_form import differing, fields_of, typed_in, typed_of
from itembank.files.shipped import shipped_folder
from itembank.items.forms.form_rules import FORMS
from itembank.marking.form.policy import ACCEPT
from itembank.work.bank.question_fields import ORDER
from tests.depth import cases

BANK = "/questions/larkhythe"
WHOLE = {
    "id": "everything-1",
    "tier": "core",
    "task": "choose",
    "prompt": "Bag A is {4} for £{5}. For {3 days}, which is the best value?",
    "figure": {"kind": "number line", "first": 0, "last": "1/2", "steps": 4, "points": {"A": 3}},
    "key": "Bag A",
    "options": {"Bag A": "£4/5", "Bag B": "£1.50/2"},
    "choose": "least",
    "form": "name",
    "marks": 3,
    "model": ("a = 2", "b = a + 1"),
    "find": "b",
    "constants": (2, 60),
    "not_needed": {"3 days": "the price is the same"},
    "accept": ("within 0.1", "decimal", "no-unit", "any-order"),
    "working": (("Look", ""), ("", "1 + 1 = 2"), ("Add", "2 + 2 = 4")),
    "misconceptions": ({"id": "m", "name": "guesses", "wrong": "Bag B", "ask": "Why?"},),
    "from_year": 9,
    "author": "HT",
    "licence": "MIT",
    "source": "A colleague",
    "created": "2026-09-14",
}


class Fields(HTMLParser):
    """What a browser sends of a form, by its id or its class."""

    def __init__(self, form):
        super().__init__()
        self.form = form
        self.sent, self.inside, self.select, self.area = [], False, None, None

    def handle_starttag(self, tag, attrs):
        at = dict(attrs)
        if tag == "form":
            self.inside = self.form in (at.get("id"), at.get("class"))
        elif self.inside and tag == "input" and "name" in at:
            if at.get("type") not in ("radio", "checkbox") or "checked" in at:
                self.sent.append((at["name"], at.get("value", "on")))
        elif self.inside and tag == "select":
            self.select = (at["name"], None)
        elif self.select and tag == "option":
            if self.select[1] is None or "selected" in at:
                self.select = (self.select[0], at.get("value", ""))
        elif self.inside and tag == "textarea":
            self.area = [at["name"], ""]

    def handle_data(self, data):
        if self.area:
            self.area[1] += data

    def handle_endtag(self, tag):
        if tag == "select" and self.select:
            self.sent.append(self.select)
            self.select = None
        elif tag == "textarea" and self.area:
            self.sent.append((self.area[0], self.area[1].removeprefix("\n")))
            self.area = None
        elif tag == "form":
            self.inside = False


def sent_by(page, form="write"):
    """Return what a browser sends of a page's form as it stands."""
    fields = Fields(form)
    fields.feed(page)
    return fields.sent


def test_every_field_of_a_file_has_its_place_in_the_form():
    form = typed_of("ratio.share", WHOLE)
    said = {**fields_of(form), "id": "", "retired": "", "retired_because": ""}
    assert set(said) == set(BankItem.model_fields)
    assert set(ORDER) == set(BankItem.model_fields)  # else it would be lost where it is saved
    assert differing(fields_of(form), WHOLE) == {}
    assert sorted(WHOLE["accept"]) == sorted(fields_of(form)["accept"])


words = st.text("abz 12{}", min_size=1).filter(str.strip)


@settings(max_examples=cases(25, 60))
@given(
    options=st.dictionaries(words.map(str.strip), words, max_size=4),
    accept=st.sets(st.sampled_from([*ACCEPT, *FORMS, "within 0.5"])),
    working=st.lists(st.tuples(words, st.just("") | words), max_size=70),
    constants=st.lists(st.integers(0, 999), max_size=5),
)
def test_what_stands_in_a_form_is_what_stood_in_the_file(options, accept, working, constants):
    stated = {
        "options": options,
        "accept": tuple(accept),
        "working": tuple(working),
        "constants": tuple(constants),
    }
    typed = typed_of("ratio.share", stated)
    sent = [("constants", typed.constants), ("within", typed.within)]
    sent += [("accept", word) for word in typed.accept]
    names = {"options": ("choice", "worth"), "working": ("say", "line"), "also": ("also",)}
    for part, called in names.items():
        for number, row in enumerate(typed.shown_rows(part)):
            sent += [(f"{name}-{number}", value) for name, value in zip(called, row, strict=True)]
    assert differing(fields_of(typed_in(FormData(sent))), stated) == {}


def post(desk, path, fields):
    return desk.post(path, data=_listed(fields), follow_redirects=False)


def _listed(fields):
    data = {}
    for name, value in fields:
        data.setdefault(name, []).append(value)
    return data


def test_every_question_of_the_demo_says_the_same_after_it_was_looked_at_and_sent_back(desk, home):
    for entry in read_bank(home / "questions").entries():
        if entry.item.retired is not None:
            continue
        before = {p.name: p.read_bytes() for p in (home / "questions").glob("*.toml")}
        where = f"{BANK}/of/{entry.item.id}/edit"
        answer = post(desk, where, sent_by(desk.get(where).text))
        assert answer.status_code == 303, (entry.item.id, answer.text)
        assert "Nothing was changed" in desk.get(answer.headers["location"]).text
        assert {p.name: p.read_bytes() for p in (home / "questions").glob("*.toml")} == before


@pytest.mark.parametrize("bank", ["larkhythe/questions", "key-stage-3", "key-stage-4"])
def test_the_form_loses_nothing_of_any_shipped_question(bank):
    for entry in read_bank(shipped_folder() / bank).entries():
        stated = entry.item.model_dump(mode="json", exclude_defaults=True)
        assert differing(fields_of(typed_of(entry.topic, stated)), stated) == {}, entry.item.id


def test_a_question_to_choose_is_written_at_the_desk_and_changed(desk, home):
    typed = [
        ("topic", "ratio.share"),
        ("tier", "core"),
        ("id-wanted", "tins-9"),
        (
            "prompt",
            "Bag A has {5} tins for {£4}. Bag B has {2} for {£1.50}. Which costs less for "
            "each tin?",
        ),
        ("key", "Bag A"),
        ("task", "choose"),
        ("choose", "least"),
        ("choice-0", "Bag A"),
        ("worth-0", "£4/5"),
        ("choice-1", "Bag B"),
        ("worth-1", "£1.50/2"),
        ("within", ""),
        ("accept", "any-order"),
        ("created", "2026-10-01"),
    ]
    twice = post(desk, f"{BANK}/new", [*typed, ("choice-2", "Bag A"), ("worth-2", "£1")])
    assert twice.status_code == 400
    assert 'id="fault-options"' in twice.text
    answer = post(desk, f"{BANK}/new", typed)
    assert answer.status_code == 400  # £4/5 is 80p, £1.50/2 is 75p
    assert "Key wrong" in answer.text
    typed[4] = ("key", "Bag B")
    answer = post(desk, f"{BANK}/new", typed)
    assert answer.status_code == 303, html.unescape(answer.text)
    text = (home / "questions" / "ratio.share.toml").read_text()
    written = text[text.index('id = "tins-9"') :]
    for line in ('choose = "least"', 'accept = ["any-order"]', "created = 2026-10-01"):
        assert line in written
    where = f"{BANK}/of/tins-9/edit"
    sent = [(n, "30" if n == "marks" else v) for n, v in sent_by(desk.get(where).text)]
    assert post(desk, where, sent).status_code == 400
    sent = [(n, "2" if n == "marks" else v) for n, v in sent]
    assert post(desk, where, sent).status_code == 303
    after = (home / "questions" / "ratio.share.toml").read_text()
    assert re.sub(r"marks = 2\n", "", after) == text


def test_a_form_with_fewer_fields_leaves_the_others_alone(desk, home):
    where = f"{BANK}/of/tins-1/edit"
    typed = [(n, v) for n, v in sent_by(desk.get(f"{BANK}/of/depot-1/edit").text)]
    few = [(n, v) for n, v in typed if n in ("version", "tier", "key", "prompt")]
    before = (home / "questions" / "ratio.share.toml").read_bytes()
    assert post(desk, f"{BANK}/of/depot-1/edit", few).status_code == 303
    assert (home / "questions" / "ratio.share.toml").read_bytes() == before
    assert desk.get(where).status_code == 404


LINE = """kind = "number line"
first = 0
last = 1
steps = 4
points = { A = 3, B = 1 }"""
ON_LINE = [
    ("topic", "fractions.shaded"),
    ("tier", "core"),
    ("id-wanted", "line-1"),
    ("prompt", "What number is at A?"),
    ("within", ""),
]


def test_a_question_with_a_figure_is_drawn_as_it_is_typed_and_its_lying_key_refused(desk):
    lying = [*ON_LINE, ("key", "1/4"), ("figure", LINE)]
    tried = post(desk, f"{BANK}/try", lying).text
    assert "<svg" in tried
    assert "It comes to 3/4" in html.unescape(tried)
    refused = post(desk, f"{BANK}/new", lying)
    assert refused.status_code == 400
    assert "worked out, it is <strong>3/4" in refused.text
    assert LINE in html.unescape(refused.text)
    saved = post(desk, f"{BANK}/new", [*ON_LINE, ("key", "3/4"), ("figure", LINE)])
    assert saved.status_code == 303, saved.text
    assert "<svg" in desk.get(f"{BANK}/of/line-1").text
    where = f"{BANK}/of/line-1/edit"
    answer = post(desk, where, sent_by(desk.get(where).text))
    assert "Nothing was changed" in desk.get(answer.headers["location"]).text
    shown = sent_by(desk.get(where).text)
    wider = [(n, v.replace("last = 1", "last = 2") if n == "figure" else v) for n, v in shown]
    assert post(desk, where, wider).status_code == 400
    wider = [(n, "1 1/2" if n == "key" else v) for n, v in wider]
    assert post(desk, where, wider).status_code == 303
    assert "last = 2" in html.unescape(desk.get(where).text)
