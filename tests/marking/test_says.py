"""Every fault that a form rule can find has an instruction that a pupil can act on."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from itembank import items
from itembank.items.forms.form_rules import FORMS
from itembank.marking.form import form_told as says
from itembank.marking.form import left_to_do, missing_form, rounded_answer
from itembank.marking.form.form_told import TOLD_BY_FORM, WANTED, right_value, what_to_do
from itembank.notation import mixed_units
from itembank.text.in_words import counted

SOURCES = [
    *sorted((Path(items.__file__).parent / "forms").glob("*_forms.py")),
    *(Path(found.__file__) for found in (left_to_do, missing_form, rounded_answer)),
    Path(mixed_units.__file__),
]


def sentences(path):
    """Return every sentence a rule in a file returns or has a name for, with blanks filled."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        match node:
            case ast.Return(value=ast.AST() as value):
                pass
            case ast.Assign(targets=[ast.Name(name)], value=ast.Constant() as value):
                if not name.isupper():
                    continue
            case _:
                continue
        inside = [part for part in ast.walk(value) if isinstance(part, ast.JoinedStr)]
        pieces = {id(child) for part in inside for child in ast.walk(part)} - set(map(id, inside))
        for part in ast.walk(value):
            if isinstance(part, ast.JoinedStr):
                text = "".join(
                    value.value if isinstance(value, ast.Constant) else blank(value.value)
                    for value in part.values
                )
            elif isinstance(part, ast.Constant) and id(part) not in pieces:
                text = str(part.value)
            else:
                continue
            if " " in text.strip() and not text[:1].isupper() and text[0].strip(",. "):
                found.add(text)
    return found


def blank(node):
    """Return what may stand in a blank of a sentence."""
    text = ast.unparse(node)
    if text.startswith("counted("):
        return counted(2, *(arg.value for arg in node.args[1:]))
    if "first" in text:
        return "first"
    if "sign" in text:
        return "√"
    return "2"


EVERY = sorted({text for path in SOURCES for text in sentences(path)})


def test_the_rules_are_found_in_their_files():
    assert len(EVERY) > 80
    known = {"the denominator is 1", "it is a mixed number", "a negative power is left"}
    assert known <= set(EVERY)


@pytest.mark.parametrize("fault", EVERY)
def test_every_fault_has_an_instruction(fault):
    if fault in ROUNDING or fault == missing_form.UNIT_MISSING:
        return  # told with the places or the unit that the question asks for
    assert (what_to_do(fault) != "") != (fault in TOLD_BY_FORM)


ROUNDING = {text for text in EVERY if "decimal place" in text or "significant" in text}
ROUNDING |= {rounded_answer.NOT_ROUNDED}


def test_every_form_has_an_instruction_for_what_only_names_another_form():
    assert set(WANTED) == set(FORMS)
    for name in FORMS:
        assert right_value("it is a riddle", name) == f"Right value: {WANTED[name]}."


def test_no_instruction_is_for_a_fault_that_no_rule_finds():
    unused = [
        pattern.pattern
        for pattern, _ in says.RULES
        if not any(pattern.fullmatch(fault) for fault in EVERY)
    ]
    assert not unused
