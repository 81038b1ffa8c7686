"""Mathematics of a pack's file on a page: all of ours comes through, nothing else does."""

import json
import re

import pytest

from itembank.desk.replying.mathematics import mathml, prompt


def test_all_mathematics_of_a_pack_comes_through_whole(planned_home):
    seen = 0
    for path in sorted(planned_home.glob("8K-*/pack.json")):
        for text in re.findall(r"<math.*?</math>", json.dumps(json.loads(path.read_text()))):
            text = json.loads(f'"{text}"')
            shown = str(mathml(text))
            # A bracket in the middle of a row has to be told which side it is of.
            shown = re.sub(r' form="(prefix|postfix)"(?=>[()\[\]]<)', "", shown)
            shown = shown.replace(' stretchy="false"', "")
            # The namespace is the browser's own business in HTML.
            assert shown == text.replace(' xmlns="http://www.w3.org/1998/Math/MathML"', "")
            seen += 1
    assert seen > 200


@pytest.mark.parametrize(
    "bad",
    [
        "<math><mn>1</mn><script>alert(1)</script></math>",
        '<math><mn onclick="alert(1)">1</mn></math>',
        '<math><mtext><img src="x" onerror="alert(1)"/></mtext></math>',
        '<math href="javascript:alert(1)"><mn>1</mn></math>',
        '<math xmlns:h="http://www.w3.org/1999/xhtml"><h:script>alert(1)</h:script></math>',
        '<math><annotation-xml encoding="text/html"><b>alert(1)</b></annotation-xml></math>',
        '<math><mtext style="background:url(//evil.example)">1</mtext></math>',
        "<math><mtext>&lt;script&gt;alert(1)&lt;/script&gt;</mtext></math>",
        '<!DOCTYPE m [<!ENTITY a "aaaa">]><math><mn>&a;</mn></math>',
        "<script>alert(1)</script>",
        "<math><mn>1</mn>",
    ],
)
def test_nothing_else_comes_through(bad):
    shown = str(mathml(bad, '"><script>'))
    assert not re.search(r"<(?!/?(math|mn|mtext)\b)", shown)
    assert not re.search(r"<[^>]*\b(on\w+|href|style|src)\s*=", shown)


def test_a_script_in_the_text_of_a_question_is_text():
    shown = str(prompt([{"kind": "text", "text": "<script>alert(1)</script>"}]))
    assert shown == "&lt;script&gt;alert(1)&lt;/script&gt;"


def test_the_name_of_a_line_is_read_with_its_formula():
    runs = [
        {"kind": "text", "text": "Ewa simplifies it.\nLine 1:\u00a0"},
        {"kind": "math", "mathml": "<math/>"},
        {"kind": "text", "text": "\nWhich line?"},
    ]
    tied = '<br><span class="tied">Line 1:\u00a0<math></math></span><br>Which'
    assert tied in str(prompt(runs))


def test_rows_of_cards_begin_a_line_and_names_stay_by_their_cards():
    runs = [
        {"kind": "text", "text": "Match each <sum>.\n(A)\u00a0"},
        {"kind": "math", "mathml": "<math/>"},
        {"kind": "text", "text": ".\n(P)\u00a0"},
        {"kind": "math", "mathml": "<math/>"},
    ]
    shown = str(prompt(runs))
    rows = shown.split("<br>")
    assert [row.count("<math") for row in rows] == [0, 1, 1]
    assert "Match each &lt;sum&gt;." in rows[0]
    assert '<span class="tied">(P)\u00a0<math></math></span>' in rows[2]
