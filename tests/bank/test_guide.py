"""Every question in the guide to writing questions is tried, and is what the guide says it is."""

import re
import tomllib
from pathlib import Path

import pytest

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import NeedsPerson, as_item
from itembank.notation import tree as t
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.depth import each

GUIDE = (Path(__file__).parents[2] / "docs" / "writing-questions.md").read_text(encoding="utf-8")


def section(title):
    return GUIDE.split(f"\n## {title}\n", 1)[1].split("\n## ", 1)[0]


def rows(title):
    """Return the body rows of the table in a section, as cells."""
    lines = [line for line in section(title).splitlines() if line.startswith("|")]
    cells = (re.split(r"(?<!\\)\|", line.strip("|")) for line in lines)
    return [[cell.replace("\\|", "|").strip() for cell in row] for row in cells][2:]


def judged(fields):
    item = BankItem.model_validate({"id": "a-1", "tier": "core", **fields})
    return judge(as_item(Entry(item, "number.try", "try", Path("number.try.toml"), 1)))


DIRECT = [(row[1], row[2]) for row in rows("Questions asked directly")]
MODELS = tomllib.loads(re.search(r"```toml\n(.*?)```", GUIDE, re.S)[1])["items"]


@pytest.mark.parametrize(("prompt", "key"), DIRECT, ids=[prompt for prompt, _ in DIRECT])
def test_a_wording_of_the_guide_is_proved(prompt, key):
    assert judged({"prompt": prompt, "key": key}).state is State.PROVED


MANY = [(row[0], row[1]) for row in rows("Questions with many right answers")]


@pytest.mark.parametrize(("prompt", "key"), MANY, ids=[prompt for prompt, _ in MANY])
def test_a_question_of_the_guide_with_many_answers_is_proved(prompt, key):
    assert judged({"prompt": prompt, "key": key}).state is State.PROVED


JUDGED = rows("True or false, and whose answer is right")


@pytest.mark.parametrize(("prompt", "key"), JUDGED, ids=[prompt for prompt, _ in JUDGED])
def test_an_answer_in_the_guide_is_judged_as_it_says(prompt, key):
    assert judged({"prompt": prompt, "key": key}).state is State.PROVED


CHANGES = (
    *("not", "half", "twice", "7", "minus", "−", "negative", "double", "other than 3", "squared"),
    *("of the rest", "and then add 5", "percent", "second", "two thirds of", "nearest", "plus"),
    *("ignoring the first", "{3}", "inverse", "approximately", "previous", "less", "more than"),
    *("smaller", "every", "at least", "over", "prime", "opposite", "except", "reciprocal"),
)


def with_word(prompt, word):
    """Yield a prompt with a word put in at every gap between its own."""
    outside = re.compile(r"\{[^}]*\}| |$")
    for match in outside.finditer(prompt):
        if not match[0].startswith("{"):
            yield f"{prompt[: match.start()]} {word}{prompt[match.start() :]}".strip()
    yield f"{word} {prompt}"


@pytest.mark.parametrize("word", each(CHANGES, 5))
def test_no_word_put_into_a_question_of_the_guide_is_passed_over(word):
    """The key is that of the question without the word, so it is never proved with it."""
    passed = []
    for prompt, key in DIRECT:
        for changed in with_word(prompt, word):
            try:
                if judged({"prompt": changed, "key": key}).state is State.PROVED:
                    passed.append(changed)
            except t.NotationError:
                continue
    assert not passed


# These words are read, and the example has the property that they add as well.
READ = {
    "prime": {"2", "3", "5", "23", "5, 19"},
    "at least": {"5, 19", "5, 8", "4, 6"},
    "not": {"8"},  # other than {1} and not {24}
    "except": {"8"},
}


@pytest.mark.parametrize("word", each(CHANGES, 5, 3))
def test_no_word_put_into_a_question_with_many_answers_is_passed_over(word):
    """The example is one for the question without the word."""
    passed = []
    for prompt, key in MANY:
        for changed in with_word(prompt, word):
            try:
                if judged({"prompt": changed, "key": key}).state is State.PROVED:
                    passed.append((changed, key))
            except t.NotationError:
                continue
    assert [one for one in passed if one[1] not in READ.get(word, ())] == []


def test_the_guide_shows_every_task():
    assert {row[0] for row in rows("Questions asked directly")} >= {
        *("work out", "sums said in words", "missing number", "simplify", "expand", "factorise"),
        *("solve", "subject", "share", "order", "compare", "convert", "nth term", "HCF and LCM"),
        *("prime factors", "round"),
    }


def test_the_story_before_a_question_of_the_guide_is_proved():
    prompt, key = re.search(r"`(A swimmer [^`]+)` \(key `([^`]+)`\)", GUIDE).groups()
    assert judged({"prompt": prompt, "key": key}).state is State.PROVED


@pytest.mark.parametrize("fields", MODELS, ids=[fields["id"] for fields in MODELS])
def test_a_word_problem_of_the_guide_is_proved(fields):
    assert judged(fields).state is State.PROVED
    assert len(MODELS) == 20


@pytest.mark.parametrize("fields", MODELS, ids=[fields["id"] for fields in MODELS])
def test_no_word_problem_of_the_guide_is_proved_with_a_number_left_out(fields):
    """Each number of the words stands in its model: without one, the model is not enough."""
    numbers = re.findall(r"\{(\d+)\}", fields["prompt"])
    if not numbers or "model" not in fields or "find" in fields:
        pytest.skip("its numbers stand in equations, or have units")
    less = {**fields, "prompt": fields["prompt"] + f" There are {{{97}}} more."}
    with pytest.raises(NeedsPerson, match="does not use 97"):
        judged(less)


@pytest.mark.parametrize("row", rows("Forms"), ids=lambda row: row[0])
def test_a_key_the_guide_calls_unfinished_is_not_proved(row):
    key, prompt = re.match(r"`([^`]+)` for \*(.+)\*$", row[0]).groups()
    assert judged({"prompt": prompt, "key": key}).state is not State.PROVED


@pytest.mark.parametrize("row", rows("When a question is refused"), ids=lambda row: row[0])
def test_a_refusal_of_the_guide_is_told_as_it_says(row):
    prompt, key = (part.strip() for part in row[0].split("||"))
    with pytest.raises(NeedsPerson, match=re.escape(row[1])):
        judged({"prompt": prompt, "key": key})


REFUSED_MODELS = rows("When a model is refused")


@pytest.mark.parametrize("row", REFUSED_MODELS, ids=[row[0][:50] for row in REFUSED_MODELS])
def test_a_model_of_the_guide_is_refused_as_it_says(row):
    prompt, key, model, says, _ = row
    with pytest.raises(NeedsPerson) as refused:
        judged({"prompt": prompt, "key": key, "model": [model]})
    assert says in str(refused.value)
