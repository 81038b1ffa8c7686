"""The questions of a bank: found, counted, paged; and a large bank is there at once."""

import html
import re

import pytest

from itembank.bank.write.as_toml import bank_toml, item_toml, topic_toml
from itembank.bank.write.edit import make_item

BANK = "/questions/larkhythe"


def ids(text):
    return re.findall(r'<a href="/questions/[^/"]+/of/([^"]+)">', text)


def test_the_header_leads_to_the_departments_own_bank_beside_the_shipped_ones(looking):
    assert '<a href="/questions"' in looking.get("/").text
    answer = looking.get("/questions")
    assert answer.url.path == BANK
    for name in ("key-stage-3", "key-stage-4"):
        assert f'<a href="/questions/{name}"' in answer.text
        assert looking.get(f"/questions/{name}").status_code == 200


def test_every_question_says_what_is_known_of_it_in_words(looking):
    looking.get(BANK)  # keys that are new to the desk are looked at beside the first page
    text = looking.get(BANK).text
    assert ids(text)[:2] == ["depot-1", "depot-2"]
    assert "Key not looked at yet" not in text
    assert text.count("Key proved") >= 11
    for says in ("Key needs a person", "Signed by HT, T7", "Signed, but edited since", "Retired"):
        assert says in text
    assert "<mfrac><mn>3</mn><mn>4</mn></mfrac>" in text


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ({"words": "COACH seats"}, ["depot-3"]),
        ({"topic": "ratio.share", "tier": "core"}, ["pool-2", "pool-3"]),
        ({"state": "retired"}, ["pool-5"]),
        ({"state": "stale"}, ["depot-3"]),
        ({"kind": "solve"}, ["depot-1", "depot-2"]),
        ({"kind": "word-problem", "topic": "ratio.share"}, ["pool-2", "pool-3", "pool-4"]),
        ({"kind": "picture"}, []),
        ({"state": "needs-a-person"}, ["garden-4"]),
        ({"words": "nowhere"}, []),
        ({"words": "%' OR 1=1 --"}, []),
    ],
)
def test_words_topic_tier_and_state_narrow_the_list(looking, asked, found):
    looking.get(BANK, params=asked)
    assert ids(looking.get(BANK, params=asked).text) == found


@pytest.mark.parametrize(
    ("path", "status"),
    [
        ("/questions/nowhere", 404),
        (f"{BANK}?topic=ratio.shaer", 400),
        (f"{BANK}?tier=hard", 400),
        (f"{BANK}?state=lovely", 400),
        (f"{BANK}?words=a+b+c+d+e+f+g", 400),
    ],
)
def test_what_is_not_there_is_told(looking, path, status):
    answer = looking.get(path)
    assert answer.status_code == status
    assert ("This is not here" if status == 404 else "That could not be done") in answer.text


def test_a_long_bank_comes_in_pages_and_its_topics_say_how_many(desk, home):
    folder = home / "long"
    folder.mkdir()
    (folder / "bank.toml").write_text(bank_toml("long", "A long one", None, {}, None))
    items = [
        make_item(
            {"id": f"sum-{n}", "tier": "core", "prompt": f"Work out {{{n} + 1}}.", "key": "1"}
        )
        for n in range(120)
    ]
    text = "\n".join([topic_toml("number.sums", "Sums"), *map(item_toml, items)])
    (folder / "number.sums.toml").write_text(text)
    first = desk.get("/questions/long").text
    assert "Sums (120)" in first
    assert "120 questions, page 1 of 3" in first
    last = desk.get("/questions/long", params={"page": "99"}).text
    assert ids(last) == [f"sum-{n}" for n in range(100, 120)]
    link = re.search(r'href="([^"]+)" rel="prev"', last)[1]
    assert ids(desk.get(html.unescape(link)).text) == [f"sum-{n}" for n in range(50, 100)]
    narrowed = desk.get("/questions/long", params={"words": "9 +", "page": "2"}).text
    assert "21 questions<" in narrowed


def test_a_script_in_a_question_is_text(desk, home):
    path = home / "questions" / "ratio.share.toml"
    path.write_text(path.read_text().replace("Two clubs rent", "<script>x()</script> rent", 1))
    text = desk.get(BANK).text
    assert "<script>x()" not in text
    assert "&lt;script&gt;x()" in text


def test_a_bank_with_a_fault_says_where_and_the_others_stay(desk, home):
    path = home / "questions" / "ratio.share.toml"
    path.write_text(path.read_text().replace('tier = "support"', 'tier = "easy"', 1))
    answer = desk.get(BANK)
    assert answer.status_code == 400
    assert "line" in answer.text
    assert desk.get("/questions/key-stage-4").status_code == 200
