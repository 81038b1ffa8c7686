"""Initials are chosen by the person, and no shared file holds a login or a machine's name."""

import json
import platform
import tomllib

import pytest

from itembank.bank.saving.bank_lock import locked
from itembank.cli.words import initials as asking
from itembank.errors import ItembankError
from itembank.people.colleague import (
    A_COLLEAGUE,
    FILE_NAME,
    chosen_initials,
    keep_initials,
    machine_mark,
    settings_folder,
)
from itembank.people.lock import LOCK_FILE


@pytest.fixture
def nobody(tmp_path, monkeypatch):
    """A person whom nobody has asked yet."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "own"))
    monkeypatch.delenv("ITEMBANK_INITIALS")
    return tmp_path


def in_lock(folder):
    with locked(folder):
        return (folder / LOCK_FILE).read_text(encoding="utf-8")


def test_a_lock_names_no_login_and_no_machine(nobody, monkeypatch):
    monkeypatch.setattr(platform, "node", lambda: "staff-room-pc")
    monkeypatch.setenv("USER", "harriet.login")
    monkeypatch.setenv("LOGNAME", "harriet.login")
    text = in_lock(nobody) + (settings_folder() / FILE_NAME).read_text(encoding="utf-8")
    assert json.loads(in_lock(nobody))["who"] == A_COLLEAGUE
    for hidden in ("staff-room-pc", "harriet.login"):
        assert hidden not in text


def test_the_lock_shows_the_initials_that_were_chosen(nobody, monkeypatch):
    keep_initials("HT")
    assert json.loads(in_lock(nobody))["who"] == "HT"
    monkeypatch.setenv("ITEMBANK_INITIALS", "nt")
    assert json.loads(in_lock(nobody))["who"] == "NT"
    monkeypatch.setenv("ITEMBANK_INITIALS", "")
    assert json.loads(in_lock(nobody))["who"] == A_COLLEAGUE


@pytest.mark.parametrize("typed", ["h t", "ht@desk", "Harriet", "\x1b[2J", "H-T"])
def test_what_are_no_initials_is_refused(nobody, monkeypatch, typed):
    monkeypatch.setenv("ITEMBANK_INITIALS", typed)
    with pytest.raises(ItembankError, match=r"ITEMBANK_INITIALS.*one to six letters or digits"):
        chosen_initials()


@pytest.mark.parametrize("who", ["ht@staff-room", "\x1b[2JHT", "Harriet Trent", ""])
def test_a_lock_of_another_kind_shows_no_more_than_a_colleague(nobody, who):
    from itembank.people.lock import holder

    record = json.loads(in_lock(nobody)) | {"who": who}
    (nobody / LOCK_FILE).write_text(json.dumps(record), encoding="utf-8")
    assert holder(nobody).who == A_COLLEAGUE


def test_a_machine_knows_itself_and_no_other_is_like_it(nobody, monkeypatch):
    monkeypatch.setattr(platform, "node", lambda: "one")
    text = machine_mark()
    assert text == machine_mark() != ""
    monkeypatch.setattr(platform, "node", lambda: "two")  # a home folder shared by two machines
    assert machine_mark() != text
    monkeypatch.setattr(platform, "node", lambda: "one")
    monkeypatch.setenv("XDG_CONFIG_HOME", str(nobody / "another person"))
    assert machine_mark() != text


def test_without_a_place_for_settings_a_lock_still_works(nobody, monkeypatch):
    (nobody / "file").write_text("", encoding="utf-8")
    monkeypatch.setenv("XDG_CONFIG_HOME", str(nobody / "file"))
    assert machine_mark() == ""
    assert json.loads(in_lock(nobody))["machine"] == ""


@pytest.mark.parametrize(
    "text", ["", "initials = 3\n", "[", 'initials = "\\" x"\nkey = "1"\n', "\0"]
)
def test_settings_that_cannot_be_read_are_as_good_as_none(nobody, text):
    settings_folder().mkdir(parents=True)
    (settings_folder() / FILE_NAME).write_text(text, encoding="utf-8")
    assert chosen_initials() is None
    assert machine_mark() == machine_mark() != ""
    keep_initials("HT")
    kept = tomllib.loads((settings_folder() / FILE_NAME).read_text(encoding="utf-8"))
    assert kept["initials"] == "HT"


def test_a_person_is_asked_once(nobody, monkeypatch, capsys):
    typed = iter(["harriet trent", "ht"])
    monkeypatch.setattr(asking, "can_ask", lambda: True)
    monkeypatch.setattr("builtins.input", lambda shown: next(typed))
    asking.ask_once()
    assert "one to six letters" in capsys.readouterr().out
    assert chosen_initials() == "HT"
    asking.ask_once()
    assert capsys.readouterr().out == ""


def test_a_person_who_wants_no_initials_is_not_asked_again(nobody, monkeypatch):
    monkeypatch.setattr(asking, "can_ask", lambda: True)
    monkeypatch.setattr("builtins.input", lambda shown: "")
    asking.ask_once()
    assert chosen_initials() == ""
    assert settings_folder().joinpath(FILE_NAME).stat().st_mode & 0o077 == 0


def test_where_nobody_sits_nobody_is_asked(nobody, monkeypatch):
    monkeypatch.setattr(asking, "can_ask", lambda: False)
    asking.ask_once()
    assert chosen_initials() is None
