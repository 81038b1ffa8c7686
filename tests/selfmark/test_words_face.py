"""What the page says of a tree that no line shows is what the marker says."""

from itembank.notation import tree as t
from itembank.notation.words import words
from itembank.selfmark.questions import tree_data
from tests.depth import some, whole
from tests.selfmark.answers import drawn_items
from tests.selfmark.test_same_verdict import marker_page

IN_PAGE = (
    "window.selfmark = { mark, question };\n",
    "window.selfmark = { mark, question };\n"
    "window.words = (trees) => trees.map((data) => inWords(restored(data)));\n",
)


@whole
def test_words_are_the_same(browser):
    trees = []
    for item in some(drawn_items(), 200):
        runs = [run for run in item.prompt if not isinstance(run, str)]
        for node in (item.key, *(slip.wrong for slip in item.slips), *runs):
            trees += [node, t.Neg(node), t.Listing((node, node)), t.Sum(node, (("-", node),))]
    trees = list(dict.fromkeys(trees))
    got = marker_page(browser, IN_PAGE).evaluate(
        "(trees) => window.words(trees)", list(map(tree_data, trees))
    )
    assert [pair for pair in zip(got, map(words, trees), strict=True) if pair[0] != pair[1]][
        :5
    ] == []
    assert len({type(node) for node in trees}) > 15
