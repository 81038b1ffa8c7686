"""``itembank bank find``, and what the other commands say with an index that cannot be used."""

from pathlib import Path

import pytest

BANK = Path(__file__).parents[3] / "banks" / "larkhythe" / "questions"


def ids(out):
    return [line.split()[0] for line in out.splitlines() if line.startswith("  ")]


def test_all_words_have_to_stand_in_a_question(said):
    both = said("bank", "find", "swimming", "club", "--bank", BANK)
    assert both.status == 0
    one = said("bank", "find", "SWIMMING", "--bank", BANK)
    assert ids(both.out)
    assert set(ids(both.out)) <= set(ids(one.out))
    together = said("bank", "find", "club swimming", "--bank", BANK)
    assert "No question of larkhythe is like that." in together.out


def test_words_topic_tier_and_state_narrow_one_another(said):
    whole = said("bank", "list", BANK, "--topic", "ratio", "--tier", "core", "--state", "proved")
    found = said(
        *("bank", "find", "--topic", "ratio", "--tier", "core", "--state", "proved"),
        *("--bank", BANK),
    )
    assert ids(found.out) == ids(whole.out)
    assert found.out.splitlines()[-1].startswith(f"{len(ids(found.out))} of ")


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ([], "What is to be found?"),
        (["x", "--topic", "ratoi"], "has nothing on ‘ratoi’"),
        (["x", "--tier", "hard"], "There is no tier ‘hard’"),
        (["x", "--state", "provd"], "Did you mean proved?"),
        (["x", "--author", "ZZ"], "There is no author ‘ZZ’"),
    ],
)
def test_what_cannot_be_found_is_said_plainly(said, typed, says):
    status, out, err = said("bank", "find", *typed, "--bank", BANK)
    assert (status, out) == (2, "")
    assert says in err


def test_an_index_that_cannot_be_used_is_remarked_once(said, tmp_path, monkeypatch):
    (tmp_path / "a-file").write_text("")
    monkeypatch.setenv("ITEMBANK_INDEX", str(tmp_path / "a-file" / "banks"))
    status, out, err = said("bank", "find", "swimming", "--bank", BANK)
    assert status == 0
    assert ids(out)
    assert err.count("without its index") == 1


def test_a_letter_that_pence_are_written_with_is_listed(said, tmp_path):
    bank = tmp_path / "bank"
    said("bank", "new", bank)
    (bank / "ratio.share.toml").write_text(
        'topic = "ratio.share"\n[[items]]\nid = "fare-1"\ntier = "core"\nkey = "1/40"\n'
        'prompt = "A ticket costs {£4}. {10p} is taken off. What fraction is taken off?"\n'
        'model = ["f = 10p ÷ £4"]\nfind = "f"\nform = "lowest-terms"\n'
        'working = [["Write the part over the whole.", "10p ÷ 400p = 10/400"]]\n'
    )
    listed = said("bank", "list", bank)
    assert listed.status == 0
    assert "10p is taken off" in listed.out
    assert said("bank", "show", "fare-1", "--bank", bank).status == 0
