"""Both roads against answers that others published.

NUMBERS, EQUATIONS and EXPRESSIONS are exercises of OpenStax, under the title of the section each
is from; `tests/published/openstax.py` says in which book. Rows that print the letter p straight
after a number are read as lines of one question, where p is no sign for pence. The classic
problems name their sources beside them.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from itembank.items.forms.form_rules import FORMS, form_fault, number_node
from itembank.items.item import Ask, Find, Item, Rewrite, Solve, Tier
from itembank.notation import Node, Relation, Sym, equals, line, parse, parse_together, symbols
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof import prove_fast, prove_symbolic
from itembank.proof.claim.finding import WrongKey
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.published.openstax import rows

NUMBERS = {
    "Visualize Fractions": (
        ("(-6+6)/(8+4)", "0"),
        ("-5÷1/2", "-10"),
        ("-8(17/4)", "-34"),
        ("28/9", "3 1/9"),
    ),
    "Multiply and Divide Fractions": (
        ("-168/192", "-7/8"),
        ("-3÷1/4", "-12"),
        ("1/2÷1/8", "4"),
        ("7/21", "1/3"),
        ("3/4*9/10", "27/40"),
        ("4*5/11", "20/11"),
        ("(-14/15)(9/20)", "-21/50"),
    ),
    "Multiply and Divide Mixed Numbers and Complex Fractions": (
        ("(7^2+1)/60", "5/6"),
        ("13 1/2÷9", "3/2"),
        ("(3*4)/(-24)", "-1/2"),
        ("(8(9-2)-4(14-9))/(7(8-3)-3(16-9))", "18/7"),
        ("25/36*6 3/10", "35/8"),
    ),
    "Add and Subtract Fractions with Common Denominators": (
        ("7/12-5/12", "1/6"),
        ("-3/14*7/12", "-1/8"),
        ("-8/9-16/9", "-8/3"),
    ),
    "Add and Subtract Fractions with Different Denominators": (
        ("-23/30+5/48", "-53/80"),
        ("(3/4+1/6)÷(5/8-1/3)", "22/7"),
        ("1-3/10", "7/10"),
        ("1/2-(-1/6)", "2/3"),
        ("5/8-7/12", "1/24"),
        ("5/6-3/4", "1/12"),
        ("5/(1/4+1/3)", "60/7"),
        ("-5/12÷(-5/9)", "3/4"),
    ),
    "Add and Subtract Mixed Numbers": (
        ("2 4/9+5 1/9", "7 5/9"),
        ("6 5/9-4 2/5", "2 7/45"),
        ("6 4/5-1 1/4", "5 11/20"),
        ("7 9/10+3 1/10", "11"),
        ("2 5/12-1 7/12", "5/6"),
        ("2 7/12-1 5/12", "1 1/6"),
    ),
    "Solve Equations with Fractions": (
        ("-5/6÷5/12", "-2"),
        ("-3/13+(-4/13)", "-7/13"),
        ("16/5*15/8", "6"),
        ("-90/120", "-3/4"),
        ("2/5+1/5", "3/5"),
        ("(9^2-4^2)/(9-4)", "13"),
        ("8 2/3÷1 1/12", "8"),
        ("9 4/5", "49/5"),
    ),
    "Decimals and Fractions": (
        ("2/5", "0.4"),
        ("(37.1+52.7)÷(12.5÷62.5)", "449"),
        ("-3/8", "-0.375"),
        ("10÷0.1+(1.8)4-(0.3)^2", "107.11"),
    ),
}

EQUATIONS = {
    "Solve Equations with Fractions": (
        ("-9v=33", "v=-11/3"),
        ("p-3/10=5/8", "p=37/40"),
    ),
    "Solve Proportions and their Applications": (
        ("1.2/1.8=d/6", "4"),
        ("x/36=5/9", "20"),
    ),
    "Solve Equations Using the Subtraction and Addition Properties of Equality": (
        ("b+1/4=3/4", "b=1/2"),
        ("a-45=76", "a=121"),
        ("c+31-10=46", "c=25"),
        ("y-3/4=3/5", "y=27/20"),
    ),
    "Solve Equations with Variables and Constants on Both Sides": (
        ("7x-17=-8x+13", "x=2"),
        ("8x+3/4=7x", "x=-3/4"),
        ("12x-8=64", "x=6"),
        ("(5/4)a+15=(3/4)a-5", "a=-40"),
        ("8c+7=-3c-37", "c=-4"),
        ("-77=9b-5", "b=-8"),
        ("11-(1/5)a=(4/5)a+4", "a=7"),
    ),
    "Use a General Strategy to Solve Linear Equations": (
        ("21(y-5)=-42", "y=3"),
        ("15(y-9)=-60", "y=5"),
        ("3(4n-1)-2=8n+3", "n=2"),
        ("4(p-4)-(p+7)=5(p-3)", "p=-4"),
        ("35-5(2w+8)=-10", "w=1/2"),
        ("51+5(4-q)=56", "q=3"),
        ("-3-(m-1)=13", "m=-15"),
        ("4(2.5v-0.6)=7.6", "v=1"),
        ("5(8-r)=-2(2r-16)", "r=8"),
        ("15-(3r+8)=28", "r=-7"),
        ("7(2n-5)=8(4n-1)-9", "n=-1"),
    ),
    "Solve Equations using the Division and Multiplication Properties of Equality": (
        ("-13x=0", "x=0"),
        ("-10(q-4)-57=93", "q=-11"),
        ("100-16=4p-10p-p", "p=-12"),
        ("-5c=55", "c=-11"),
        ("w/(-2)=99", "w=-198"),
        ("-(5/8)w=40", "w=-64"),
        ("(9/10)x=90", "x=100"),
    ),
    "Solve Equations with Fractions or Decimals": (
        ("(10y-2)/3+3=(10y+1)/9", "y=-1"),
        ("0.4y-4=2", "y=15"),
        ("0.10d+0.25(d+7)=5.25", "d=10"),
        ("1.2x-0.91=0.8x+2.29", "x=8"),
        ("(5/8)b+1/2=-3/4", "b=-2"),
        ("(1/3)(x+5)=5/6", "x=-5/2"),
    ),
}

EXPRESSIONS = {
    "Multiply and Divide Mixed Numbers and Complex Fractions": (("(-3/8)/(-y/12)", "9/(2y)"),),
    "Add and Subtract Fractions with Common Denominators": (
        ("6/11-s/11", "(6-s)/11"),
        ("(-11x)/5+(7x)/5", "(-4x)/5"),
        ("x/19-8/19", "(x-8)/19"),
    ),
    "Add and Subtract Fractions with Different Denominators": (("y/2+2/3", "(3y+4)/6"),),
    "Solve Equations with Fractions": (
        ("-(8x)/(8y)", "-x/y"),
        ("x/10+7/10", "(x+7)/10"),
    ),
    "Multiply Polynomials": (
        ("(xy-9)(xy+9)", "x^2y^2-81"),
        ("-9a(3a+5)", "-27a^2-45a"),
        ("(y^2-7)(y^2-4)", "y^4-11y^2+28"),
        ("q(q+5)", "q^2+5q"),
        ("(p+(4/5)q)(p-(4/5)q)", "p^2-(16/25)q^2"),
        ("(x^2+3)(x+2)", "x^3+2x^2+3x+6"),
        ("(a+10)(3a^2+a-5)", "3a^3+31a^2+5a-50"),
        ("(10y-6)+(4y-7)", "14y-13"),
        ("(x+8)(x+3)", "x^2+11x+24"),
        ("((1/8)x-(1/9)y)^2", "(1/64)x^2-(1/36)xy+(1/81)y^2"),
        ("(9c+5)(9c-5)", "81c^2-25"),
        ("(2t-9)(10t+1)", "20t^2-88t-9"),
        ("(3r-8)(11r+1)", "33r^2-85r-8"),
        ("(y^2-4)(y+3)", "y^3+3y^2-4y-12"),
        ("(r^2-s^3)(r^3+s^2)", "r^5+r^2s^2-r^3s^3-s^5"),
        ("(2y-9)y", "2y^2-9y"),
        ("(y+8)(4y^2+y-7)", "4y^3+33y^2+y-56"),
        ("(5u^2+9)^2", "25u^4+90u^2+81"),
        ("(5ab-1)(2ab+3)", "10a^2b^2+13ab-3"),
        ("(p+11)(p-4)", "p^2+7p-44"),
        ("(m+11)(m-4)", "m^2+7m-44"),
        ("(q+12)^2", "q^2+24q+144"),
        ("6r(4r+s)", "24r^2+6rs"),
        ("(k-6)^2", "k^2-12k+36"),
    ),
}

# Problem, equation, answer. Sources: Rhind Mathematical Papyrus, problems 24 and 26; Greek
# Anthology XIV 126 (the age of Diophantus); Fibonacci, Liber Abaci (the tree of which a quarter
# and a third, 21 palms, are below ground). All from memory.
CLASSICS = (
    ("Rhind 24", "x + x/7 = 19", "16 5/8"),
    ("Rhind 26", "x + x/4 = 15", "12"),
    ("Greek Anthology XIV 126", "x/6 + x/12 + x/7 + 5 + x/2 + 4 = x", "84"),
    ("Liber Abaci, the tree", "(1/4)x + (1/3)x = 21", "36"),
)

# Rhind Mathematical Papyrus, the table of 2/n. From memory; the arithmetic checks itself.
TWO_OVER_N = (
    ("1/3 + 1/15", "2/5"),
    ("1/4 + 1/28", "2/7"),
    ("1/6 + 1/18", "2/9"),
    ("1/6 + 1/66", "2/11"),
    ("1/8 + 1/52 + 1/104", "2/13"),
)


def _item(question: Node, ask: Find, key: Node) -> Item:
    """Return an item as a topic would make it, in the first form that its key has."""
    form = next(name for name in FORMS if not form_fault(name, key))
    prompt = ("Work out ", question, ".")
    return Item(
        "x.y/core/0",
        "x.y",
        Tier.CORE,
        prompt,
        ask,
        key,
        form,
        (),
        (),
        ("x.y", line(question, pence="p" not in symbols(question))),
        1,
        (),
    )


def _number(question: str, key: Node) -> Item:
    tree = parse(question)
    return _item(tree, Find(tree), key)


def _solve(equation: str, value: Node) -> Item:
    (tree,) = parse_together([equation])
    assert isinstance(tree, Relation)
    (letter,) = symbols(tree)
    return _item(tree, Find(Sym(letter), (tree,)), equals(Sym(letter), value))


def _solution(answer: str) -> Node:
    """Return the number of an answer: some rows print v = −2, some only the 2."""
    tree = parse(answer)
    return tree.rest[0][1] if isinstance(tree, Relation) else tree


def _changed(answer: Node) -> set[Fraction]:
    """Return wrong answers near the right one: one more, the other sign, upside down."""
    value = exact(answer)
    wrong = {value + 1, -value, value * 10}
    if value:
        wrong.add(1 / value)
    return wrong - {value}


def _refused(item: Item) -> None:
    with pytest.raises(WrongKey):
        prove_fast(item)
    with pytest.raises(WrongKey):
        prove_symbolic(item)


def _proved(item: Item) -> None:
    prove_fast(item)
    prove_symbolic(item)


def test_there_are_enoughrows() -> None:
    counts = [sum(map(len, table.values())) for table in (NUMBERS, EQUATIONS, EXPRESSIONS)]
    assert counts == [45, 39, 31]


@pytest.mark.parametrize(("question", "answer"), rows(NUMBERS))
def test_a_published_number_is_proved_and_a_changed_one_refused(question: str, answer: str) -> None:
    key = parse(answer)
    _proved(_number(question, key))
    for wrong in _changed(key):
        _refused(_number(question, number_node(wrong)))


@pytest.mark.parametrize(("equation", "answer"), rows(EQUATIONS))
def test_a_published_solution_is_proved_and_a_changed_one_refused(
    equation: str, answer: str
) -> None:
    key = _solution(answer)
    _proved(_solve(equation, key))
    for wrong in _changed(key):
        _refused(_solve(equation, number_node(wrong)))


def _asked(question: str, answer: str) -> Item:
    """Return a row as a teacher's own question: what it asks follows from how it is written."""
    tree, key = parse_together([question, answer])
    ask: Ask = Rewrite(tree, "simplify") if symbols(tree) else Find(tree)
    form = "expression"
    if isinstance(tree, Relation):
        ask, form = Solve((tree,)), "roots" if isinstance(key, Relation) else "value"
    return Item(
        "bank:row", "x.y", Tier.CORE, ("Do ", tree), ask, key, form, (), (), ("row",), 1, ()
    )


def _wrong_keys(key: Node) -> list[Node]:
    """Return the key with one thing changed: a number more or less, its sign, a letter's number."""
    if isinstance(key, Relation):
        (op, right), left = key.rest[0], key.first
        return [Relation(left, ((op, wrong),)) for wrong in _wrong_keys(right)] + [
            Relation(Sym("k"), ((op, right),))
        ]
    bracket = t.Bracket(key)
    wrong: list[Node] = [
        t.add(bracket, t.Int(1)),
        t.sub(bracket, t.Int(1)),
        t.add(bracket, t.Frac(t.Int(1), t.Int(100))),
    ]
    if key != t.Int(0):
        wrong += [
            t.Neg(bracket),
            t.Product(t.Int(10), (("×", bracket),)),
            t.Product(bracket, (("÷", t.Int(2)),)),
        ]
    for letter in sorted(symbols(key)):
        wrong += [t.add(bracket, Sym(letter)), t.sub(bracket, t.Power(Sym(letter), t.Int(2)))]
    return wrong


@pytest.mark.parametrize(
    ("question", "answer"), [*rows(NUMBERS), *rows(EQUATIONS), *rows(EXPRESSIONS)]
)
def test_a_published_row_is_judged_right_and_every_changed_one_wrong(
    question: str, answer: str
) -> None:
    item = _asked(question, answer)
    outcome = judge(item)
    assert (outcome.state, outcome.says) == (State.PROVED, "")
    assert outcome.first
    assert outcome.second
    for wrong in _wrong_keys(item.key):
        changed = judge(replace(item, key=wrong))
        assert changed.state is State.DISPROVED, wrong
        assert changed.says


@pytest.mark.parametrize(("question", "answer"), [*rows(NUMBERS), *rows(EXPRESSIONS)])
def test_published_notation_is_written_as_it_is_read(question: str, answer: str) -> None:
    for tree in parse_together([question, answer]):
        written = line(tree, pence=False)
        assert parse(written, pence=False) == tree


@pytest.mark.parametrize(("name", "equation", "answer"), CLASSICS)
def test_a_classic_problem_comes_to_its_known_answer(name: str, equation: str, answer: str) -> None:
    letter = _item(parse(equation), _find(equation), parse(answer))
    _proved(letter)
    for wrong in _changed(parse(answer)):
        _refused(_solve(equation, number_node(wrong)))


def _find(equation: str) -> Find:
    tree = parse(equation)
    assert isinstance(tree, Relation)
    return Find(Sym("x"), (tree,))


@pytest.mark.parametrize(("parts", "answer"), TWO_OVER_N)
def test_the_rhind_table_of_two_over_n(parts: str, answer: str) -> None:
    _proved(_number(parts, parse(answer)))
    _refused(_number(parts, number_node(exact(parse(answer)) + Fraction(1, 1000))))


# The two proportions of "Solve Proportions and their Applications", as ratios: the parts that
# are asked for and the key, a ratio in its simplest form.
PROPORTIONS = (
    ("x : 36 = 5 : 9", "36 : x", (9, 5)),
    ("1.2 : 1.8 = d : 6", "d : 6", (2, 3)),
)


@pytest.mark.parametrize(("relation", "target", "key"), PROPORTIONS)
def test_a_published_proportion_as_a_ratio(
    relation: str, target: str, key: tuple[int, int]
) -> None:
    tree, wanted = parse(relation), parse(target)
    assert isinstance(tree, Relation)
    assert isinstance(wanted, t.Ratio)
    ask = Find(wanted, (tree,))
    a, b = key
    _proved(_item(tree, ask, t.ratio(t.num(a), t.num(b))))
    _refused(_item(tree, ask, t.ratio(t.num(a), t.num(a + b))))
    _refused(_item(tree, ask, t.ratio(t.num(b), t.num(a))))
