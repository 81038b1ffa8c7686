"""Words typed after options are read as typer reads them, without what it loads to do so."""

from pathlib import Path
from types import SimpleNamespace

import pytest
import typer
import typer.main
from hypothesis import given
from hypothesis import strategies as st

from itembank.cli.main import app
from itembank.cli.options.values import READ_AS, Plainly, read_plainly

# NUL cannot stand in an argument. Digits of other scripts are whole numbers to us and none to
# typer, 3.0 the other way round.
LETTERS = st.characters(codec="ascii", exclude_characters="\0.") | st.sampled_from("éß–☃½")
WORDS = (
    st.text(LETTERS, max_size=12)
    | st.integers().map(str)
    | st.sampled_from(["", "-", "0x1", "1_0"])
)


def option(kind):
    """Return an option of that kind as typer makes it."""

    def command(value: kind = None) -> None: ...

    command.__annotations__["value"] = kind
    one = typer.Typer(add_completion=False)
    one.command()(command)
    return next(p for p in typer.main.get_command(one).params if p.name == "value")


def read_by(reader, value, param):
    try:
        return reader.coerce(value, param, None)
    except typer.BadParameter:
        return "refused"


@pytest.mark.parametrize("kind", [str, int, Path])
@given(word=WORDS)
def test_one_word_is_read_as_typer_reads_it(kind, word):
    param = option(kind)
    ours, theirs = Plainly(*READ_AS[kind]), param.get_runtime_param()
    wanted = read_by(theirs, word, param)
    found = read_by(ours, word, param)
    assert (type(found), found) == (type(wanted), wanted)


@pytest.mark.parametrize("kind", [str, int, Path])
@given(words=st.lists(WORDS, max_size=4))
def test_several_words_are_read_as_typer_reads_them(kind, words):
    param = option(list[kind])
    ours, theirs = Plainly(*READ_AS[list[kind]]), param.get_runtime_param()
    assert read_by(ours, words, param) == read_by(theirs, words, param)


@pytest.mark.parametrize("kind", list(READ_AS))
def test_an_option_left_out_is_what_typer_makes_of_it(kind):
    param = option(kind)
    assert Plainly(*READ_AS[kind]).coerce(None, param, None) == param.get_runtime_param().coerce(
        None, param, None
    )


def test_every_option_of_every_command_is_of_a_kind_we_read():
    """A new kind would load pydantic again; the one check that no command does so unseen."""
    from itembank.cli.options.group import _meant

    def kinds(command, path):
        for one in command.params:
            yield path, one.name, one.type_descriptor.annotation
        for name, inner in getattr(command, "commands", {}).items():
            yield from kinds(_meant(name, inner), (*path, name))

    found = list(kinds(typer.main.get_command(app), ()))
    assert len(found) > 150
    assert [one for one in found if one[2] not in READ_AS] == []


def test_an_option_of_another_kind_is_left_to_typer():
    param = SimpleNamespace(type_descriptor=SimpleNamespace(annotation=float))
    assert read_plainly([param]) == [param]
    assert not hasattr(param, "get_runtime_param")
