"""Words typed after a command are read as typer reads them, without what it loads to do so."""

from dataclasses import replace
from pathlib import Path
from typing import Annotated

import pytest
import typer
import typer.core
import typer.main
from hypothesis import event, given, settings
from hypothesis import strategies as st

from itembank.cli.main import app
from itembank.cli.options.plain_command import PlainCommand
from itembank.cli.options.values import Reader, Slot, slots_of
from itembank.errors import ItembankError
from tests.depth import cases


def every_kind(
    first: Annotated[str, typer.Argument(metavar="FIRST")],
    others: Annotated[list[str] | None, typer.Argument(metavar="OTHER")] = None,
    word: Annotated[str | None, typer.Option("--word", "-w")] = None,
    number: Annotated[int, typer.Option("--number", "-n")] = 3,
    path: Annotated[Path | None, typer.Option("--path")] = None,
    words: Annotated[list[str] | None, typer.Option("--each", "-e")] = None,
    paths: Annotated[list[Path] | None, typer.Option("--paths")] = None,
    on: Annotated[bool, typer.Option("--open", "-o")] = False,
    off: Annotated[bool, typer.Option("--yes/--no")] = True,
) -> dict:
    return {name: value for name, value in locals().items() if value not in ([], ())}


def made(kind, function=every_kind):
    one = typer.Typer(add_completion=False, pretty_exceptions_enable=False)
    one.command("do", cls=kind)(function)
    return typer.main.get_command(one)


OURS, THEIRS = made(PlainCommand), made(typer.core.TyperCommand)

# NUL cannot stand in an argument. Digits of other scripts are whole numbers to us and none to
# typer, 3.0 the other way round.
LETTERS = st.characters(codec="ascii", exclude_characters="\0.=-") | st.sampled_from("éß☃½")
# What is blank is refused by us alone.
PLAIN = (
    st.text(LETTERS, max_size=8).filter(str.strip) | st.integers(-20, 999).map(str) | st.just("-")
)
LONG = st.sampled_from(["--word", "--number", "--path", "--each", "--paths"])
SHORT = st.sampled_from(["-w", "-n", "-e", "-ow", "-on"])
ALONE = st.sampled_from(["--open", "-o", "-oo", "--yes", "--no", "--", "--zz", "-z", "--open=1"])
TYPED = st.one_of(
    st.tuples(PLAIN),
    st.tuples(LONG | SHORT, PLAIN),
    st.builds(lambda name, value: (f"{name}={value}",), LONG, PLAIN),
    st.builds(lambda name, value: (f"{name}{value}",), SHORT, PLAIN.filter(bool)),
    st.tuples(ALONE),
)


def read_by(command, words):
    """Return what the function of a command is given, or that the words are refused."""
    try:
        return command.main(list(words), prog_name="do", standalone_mode=False)
    except Exception as error:
        return "refused" if isinstance(error, ItembankError) == (command is OURS) else error


@given(st.lists(TYPED, max_size=5).map(lambda some: [word for words in some for word in words]))
@settings(max_examples=cases(75, 300))
def test_words_are_read_as_typer_reads_them(words):
    ours = read_by(OURS, words)
    event("refused" if ours == "refused" else "read")
    assert ours == read_by(THEIRS, words)


def test_every_command_is_read_by_us():
    """Another reader would load pydantic again, or say things in a program's words."""
    from itembank.cli.options.command_groups import PlainGroup

    def below(command, path):
        yield path, command
        for name in getattr(command, "LATER", ()):
            yield from below(command.read_command(name), (*path, name))

    found = list(below(typer.main.get_command(app), ()))
    assert len(found) > 30
    for path, command in found:
        assert isinstance(command, PlainGroup if hasattr(command, "commands") else PlainCommand)
        assert [slot.name for slot in slots_of(command)] == [param.name for param in command.params]
        assert all(
            param.metavar for param in command.params if param.param_type_name == "argument"
        ), path


def commands_below(command, path=()):
    for name in getattr(command, "LATER", ()):
        yield from commands_below(command.read_command(name), (*path, name))
    if not hasattr(command, "LATER"):
        yield path, command


@pytest.mark.parametrize("blank", ["", " ", "\u00a0"])
def test_nothing_may_be_blank_but_an_answer(blank):
    """A script's variable that was never set must not be the folder one stands in."""
    for path, command in commands_below(typer.main.get_command(app)):
        for slot in slots_of(command):
            words = [slot.spellings[0], blank] if slot.spellings else [blank]
            reader = Reader(" ".join(path), [replace(slot, needed=False)], (), command.MAY_BE_BLANK)
            if slot.switch:
                continue
            if path == ("mark",) and slot.name == "answer":
                assert reader.values(words) == {"answer": blank}
                continue
            name = slot.spellings[0] if slot.spellings else slot.label
            with pytest.raises(ItembankError, match=rf"^{name} (is blank|needs a value)"):
                reader.values(words)


def test_a_kind_of_value_nothing_reads_is_found_at_once():
    def halves(value: float = 0.5) -> None: ...

    with pytest.raises(TypeError, match="no command reads"):
        slots_of(made(PlainCommand, halves))


READER = Reader(
    "itembank do",
    [
        Slot("topic", ("--topic", "-t"), "--topic"),
        Slot("count", ("--count", "-n"), "--count", int),
        Slot("new", ("--new",), "--new", switch=True),
        Slot("two", ("--two-up",), "--two-up", switch=True),
    ],
    ("-h", "--help"),
)
MORE = "‘itembank do --help’ shows what there is."


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        # An option is like another by its name; that all names begin with dashes says nothing.
        ("--slips", f"There is no option --slips. {MORE}"),
        ("--topics", "There is no option --topics. Did you mean --topic?"),
        ("--tpoic", "There is no option --tpoic. Did you mean --topic?"),
        ("--two", "There is no option --two. Did you mean --two-up?"),
        ("--t", "There is no option --t. Did you mean --topic or --two-up?"),
        ("--hlep", "There is no option --hlep. Did you mean --help?"),
        ("--nwe=8", "There is no option --nwe. Did you mean --new?"),
        # One dash too few is not -t with the value "opic".
        ("-topic ratio", "There is no option -topic. Did you mean --topic?"),
        ("-x", f"There is no option -x. {MORE}"),
        ("-n3x", "--count needs a whole number, such as --count 3."),
        # Dashes that a word processor has put in the place of two minus signs.
        ("–topic ratio", "There is no option –topic. Did you mean --topic?"),
        ("—new", "There is no option —new. Did you mean --new?"),
        ("–other", f"‘–other’ is not expected there. {MORE}"),
        # The next option is no value.
        (
            "--topic --new",
            "--topic needs a value after it. ‘itembank do --help’ shows which.",
        ),
        ("-t", "-t needs a value after it. ‘itembank do --help’ shows which."),
        ("--new=yes", "--new takes no value. Write it alone."),
    ],
)
def test_what_is_mistyped_is_named_with_what_is_likely_meant(typed, said):
    with pytest.raises(ItembankError) as fault:
        READER.values(typed.split())
    assert str(fault.value) == said


@pytest.mark.parametrize("typed", ["--help", "-h", "--topic x -h", "--new --help --zzz"])
def test_help_is_shown_to_who_asks_for_it(typed):
    assert READER.values(typed.split()) is None


def test_a_value_may_look_like_an_option_of_one_letter():
    assert READER.values(["--topic", "-t", "--count", "-3"])["count"] == -3
    assert READER.values(["--topic=--new", "-n3"]) == {
        "topic": "--new",
        "count": 3,
        "new": None,
        "two": None,
    }
