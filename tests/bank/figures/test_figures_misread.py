"""Questions about figures whose words ask for something else than a hasty reader takes.

Each was tried with the key that the hasty reading comes to. None may be proved: a person decides.
Beside them stand questions that are asked plainly, which have to be proved all the same.
"""

from __future__ import annotations

import pytest

from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import NeedsPerson, read_item
from itembank.proof.judge import judge
from itembank.proof.outcome import State

BARS = {
    "kind": "bar chart",
    "categories": ["Mon", "Tue", "Wed"],
    "series": [{"values": [12, 8, 10]}],
    "scale": 4,
    "between": 2,
    "counts": "Trays",
}
ANIMALS = {**BARS, "categories": ["Cat", "Dog", "Horse"], "counts": "Pupils"}
CLASSES = {**BARS, "categories": ["7M", "8K", "9S"], "counts": "Books"}
WARM = {
    "kind": "line graph",
    "points": [["09:00", 4], ["10:00", 12], ["11:00", 20], ["12:00", 8]],
    "scale": 4,
    "between": 2,
    "counts": "Temperature (°C)",
    "along": "Time",
}
TALL = {
    **WARM,
    "points": [["Mon", 40], ["Tue", 120], ["Wed", 200], ["Thu", 80]],
    "scale": 40,
    "counts": "Height (cm)",
    "along": "Day",
}
VISITORS = {**TALL, "counts": "Visitors"}
PIE = {
    "kind": "pie chart",
    "sectors": [["Bus", 150], ["Walk", 90], ["Cycle", 120]],
    "counted": "pupils",
    "total": 24,
}
VENN = {
    "kind": "Venn diagram",
    "first": "French",
    "second": "Spanish",
    "first_only": [12],
    "both": [5],
    "second_only": [8],
    "neither": [3],
}
SETS = {
    **VENN,
    "first": "A",
    "second": "B",
    "first_only": [1, 5],
    "both": [3, 7],
    "second_only": [2, 9],
    "neither": [4],
    "members": True,
}
CHANCES = {
    "kind": "probability table",
    "outcomes": ["red", "blue", "green"],
    "chances": ["0.2", "0.5", "0.3"],
    "heading": "Colour",
}
DICE = {
    "kind": "sample space",
    "first": [1, 2, 3, 4, 5, 6],
    "second": [1, 2, 3, 4, 5, 6],
    "rule": "sum",
}
_AGAIN = [{"outcome": "red", "chance": "5/8"}, {"outcome": "blue", "chance": "3/8"}]
TREE = {
    "kind": "tree diagram",
    "branches": [
        {"outcome": "red", "chance": "5/8", "then": _AGAIN},
        {"outcome": "blue", "chance": "3/8", "then": _AGAIN},
    ],
}
PLANTS = {
    "kind": "scatter graph",
    "x_title": "Age (weeks)",
    "y_title": "Height (cm)",
    "right": 12,
    "top": 40,
    "x_step": 1,
    "y_step": 5,
    "data": [[1, 5], [3, 10], [4, 15], [7, "32.5"], [11, 35]],
}
LINE = {"kind": "number line", "first": 0, "last": 1, "steps": 10, "points": {"A": 6}}
SPAN = {
    "kind": "number line",
    "first": -4,
    "last": 6,
    "steps": 10,
    "numbered": [2, 4, 6, 8],
    "span": {"low": 2, "high": 7, "high_counts": True},
}
SHADED = {
    "kind": "shaded shape",
    "shape": "rectangle",
    "rows": 2,
    "columns": 4,
    "shaded": [0, 1, 2],
}
SHARES = {
    "kind": "bar model",
    "bars": [{"name": "Ana", "boxes": [{}, {}]}, {"name": "Ben", "boxes": [{}, {}, {}]}],
    "total": "£40",
}
MACHINE = {
    "kind": "function machine",
    "does": [{"sign": "×", "number": 3}, {"sign": "+", "number": 5}],
    "input": 4,
}
TRIANGLE = {
    "kind": "polygon",
    "corners": [[0, 0], [14, 0], [5, 12]],
    "sides": [["AB", "14 cm"], ["BC", "15 cm"], ["CA", "13 cm"]],
    "lettered": True,
}
BARE = {**TRIANGLE, "sides": [["AB", "14"], ["BC", "15"], ["CA", "13"]]}
CYLINDER = {"kind": "cylinder", "radius": "5 cm", "height": "8 cm"}
ANGLES = {
    "kind": "angles",
    "arrangement": "line",
    "sizes": [48, 44, 88],
    "labels": [[1, "48°"], [2, "x°"], [3, "2x°"]],
}
TWOS = {
    "kind": "coordinate grid",
    "left": -10,
    "right": 10,
    "bottom": -8,
    "top": 8,
    "x_step": 2,
    "y_step": 2,
    "points": [["A", 6, -4]],
}
BUSES = {
    "kind": "coordinate grid",
    "left": 0,
    "right": 60,
    "bottom": 0,
    "top": 16,
    "x_step": 5,
    "y_step": 2,
    "shapes": [
        {"name": "A", "corners": [[0, 0], [40, 12]], "closed": False},
        {"name": "B", "corners": [[10, 0], [30, 12]], "closed": False},
    ],
    "x_title": "Time (minutes)",
    "y_title": "Distance from depot (km)",
}

MISREAD = [
    # A word beside the verb says how, and not who.
    (VENN, "How many only study French?", "17"),
    (VENN, "How many never study French?", "17"),
    (VENN, "How many cannot study French?", "17"),
    (VENN, "How many dont study French?", "17"),
    (VENN, "How many solely study French?", "17"),
    (VENN, "How many seldom study French?", "17"),
    (VENN, "How many perhaps study French?", "17"),
    (CHANCES, "What is the probability that the spinner only lands on red?", "0.2"),
    (CHANCES, "What is the probability that the spinner not lands on red?", "0.2"),
    # A sentence beside the question changes what the figure shows.
    (BARS, "The scale is in thousands. How many trays were sold on Mon?", "12"),
    (BARS, "The chart shows hundreds of trays. How many trays were sold on Mon?", "12"),
    (
        TRIANGLE,
        "The sides of the triangle are doubled. What is the perimeter of the triangle?",
        "42 cm",
    ),
    (CYLINDER, "The height is halved. Work out the volume of the cylinder.", "200π cm^3"),
    (CYLINDER, "Here is an open cylinder. Work out the surface area of the cylinder.", "130π cm^2"),
    (SHADED, "A further part is then shaded. What fraction of the rectangle is shaded?", "3/8"),
    (SHADED, "The shaded and unshaded parts are swapped. What fraction is shaded?", "3/8"),
    (MACHINE, "The machine is run backwards. What is the output?", "17"),
    (MACHINE, "The output is put into the machine again. What is the output?", "17"),
    (DICE, "The dice are biased. What is the probability that the total is {7}?", "1/6"),
    (TWOS, "The point A is moved right by a square. What are the coordinates of A?", "(6, -4)"),
    (LINE, "The numbers go down from left to right. What number is at A?", "0.6"),
    (TRIANGLE, "The lengths are in metres. What is the perimeter of the triangle?", "42 cm"),
    # What is told and what is asked differ.
    (BARS, "The chart shows the trays that a club made. How many trays were sold on Mon?", "12"),
    (VENN, "The Venn diagram shows the pupils in a class. How many teachers study French?", "17"),
    (SPAN, "The number line shows the values of {y}. Write the inequality for {x}.", "-2 < x ≤ 3"),
    (BUSES, "The graph shows two vans. How many times does bus A stop?", "0"),
    (
        TREE,
        "A bead is taken from a bag and kept, and then another from the same bag. What is the "
        "probability that both are red?",
        "25/64",
    ),
    # A chart counts other things, or in another way.
    (CLASSES, "How many pupils are there in 7M?", "12"),
    (CLASSES, "Which class has the most pupils?", '"7M"'),
    (CLASSES, "Which class is the largest?", '"7M"'),
    (ANIMALS, "Which animal is the largest?", '"Cat"'),
    (ANIMALS, "Which kind is the tallest?", '"Cat"'),
    (BARS, "Which day is the longest?", '"Mon"'),
    ({**BARS, "counts": "Trays made"}, "How many trays were sold on Mon?", "12"),
    ({**BARS, "counts": "Pupils absent"}, "How many pupils came on Mon?", "12"),
    ({**BARS, "counts": "Boys and girls"}, "How many boys came on Mon?", "12"),
    ({**BARS, "counts": "Trays (thousands)"}, "How many trays were sold on Mon?", "12"),
    ({**BARS, "counts": "Percentage of pupils"}, "How many pupils came on Mon?", "12"),
    ({**BARS, "counts": "Mean trays a shop"}, "How many trays were sold altogether?", "30"),
    (BARS, "What is the total number of days?", "30"),
    (VISITORS, "By how many per cent did the number of visitors rise from Mon to Wed?", "160"),
    (VISITORS, "By how many percent did the number of visitors rise from Mon to Wed?", "160"),
    (VISITORS, "By how many hundreds did the number of visitors rise from Mon to Wed?", "160"),
    (TALL, "By how many millimetres did the height rise from Mon to Tue?", "80"),
    (TALL, "On which day was the height {200} m?", '"Wed"'),
    (WARM, "By how many hours did the temperature rise from 09:00 to 11:00?", "16"),
    (WARM, "At what time was the temperature {12}?", '"10:00"'),
    (PIE, "How many degrees stand for each sector?", "15°"),
    (PIE, "How many degrees represent one bus?", "15°"),
    # A Venn diagram has other things to count.
    (VENN, "How many sets are there?", "28"),
    (VENN, "How many circles are shown?", "28"),
    (VENN, "How many languages are there?", "28"),
    (VENN, "How many more study French?", "17"),
    (VENN, "How many pupils do not dislike French?", "11"),
    (VENN, "How many pupils do not only French?", "11"),
    (VENN, "How many of the French study Spanish?", "13"),
    (VENN, "What is the probability that a French studies Spanish?", "13/28"),
    (SETS, "How many primes are in A?", "4"),
    (SETS, "How many sets are there?", "7"),
    (SETS, "What is the probability that an even is in A?", "4/7"),
    # Another event.
    (CHANCES, "What is the probability that the spinner never lands on red?", "0.2"),
    (CHANCES, "What is the probability that both spins lands on red?", "0.2"),
    (CHANCES, "What is the probability that at least one is red?", "0.2"),
    (CHANCES, "What is the probability that neither counter is red?", "0.2"),
    (CHANCES, "What is the probability that no counter is red?", "0.2"),
    (PLANTS, "How many weeks have a height of more than 15 cm?", "2"),
    (PLANTS, "How many more have a height of less than 15 cm?", "2"),
    # The answer is to be another kind of number, or in a unit of which the figure says nothing.
    (
        PLANTS,
        "What is the height of the plant with an age of 7 weeks? Give your answer in metres.",
        "32.5",
    ),
    (TALL, "What was the height on Tue? Give your answer in metres.", "120"),
    (
        BARE,
        "The lengths are in centimetres. What is the perimeter of the triangle? Give your answer "
        "in metres.",
        "42",
    ),
    (SHADED, "What percentage of the rectangle is shaded?", "3/8"),
    (SHADED, "What percentage of the rectangle is shaded to the nearest whole number?", "0"),
    (SHADED, "What decimal of the rectangle is shaded?", "3/8"),
    (SHADED, "What fraction of the rectangle is shaded to 1 decimal place?", "0.4"),
    (LINE, "What mixed number is at A?", "3/5"),
    (SHARES, "How much more does Ana get than Ben?", "-£8"),
    (ANGLES, "Find the length x.", "44"),
    # Moves and journeys that the grid does not show.
    (
        TWOS,
        "What are the coordinates of the image of A after a translation of 3 squares left?",
        "(3, -4)",
    ),
    (BUSES, "After how many minutes does bus A overtake bus B?", "20"),
    (BUSES, "After how many minutes does bus A catch up with bus B?", "20"),
]
PLAIN = [
    (BARS, "The bar chart shows the trays sold on a stall. How many trays were sold on Mon?", "12"),
    (BARS, "Here is a bar chart. Which bar is the tallest?", '"Mon"'),
    (BARS, "What fraction of the trays were sold on Tue?", "4/15"),
    (ANIMALS, "How many pupils have a cat?", "12"),
    (CLASSES, "Which class has the most books?", '"7M"'),
    (
        {**BARS, "counts": "Trays (thousands)"},
        "How many thousands of trays were sold on Mon?",
        "12",
    ),
    ({**BARS, "counts": "Boys and girls"}, "How many boys and girls came on Mon?", "12"),
    ({**BARS, "counts": "Pupils absent"}, "How many pupils were absent on Mon?", "12"),
    (VISITORS, "By how many visitors did the number of visitors rise from Mon to Wed?", "160"),
    (TALL, "By how many centimetres did the height rise from Mon to Tue?", "80"),
    (TALL, "What was the height on Tue? Give your answer in centimetres.", "120"),
    (TALL, "On which day was the height {200} cm?", '"Wed"'),
    (WARM, "At what time was the temperature {20} degrees?", '"11:00"'),
    (WARM, "At what time was the temperature the highest?", '"11:00"'),
    (PIE, "How many degrees stand for one pupil?", "15°"),
    (PIE, "How many degrees stand for each person?", "15°"),
    (
        VENN,
        "The Venn diagram shows the pupils in a class. How many pupils study only French?",
        "12",
    ),
    (VENN, "How many pupils do not study French?", "11"),
    (VENN, "How many pupils are there altogether?", "28"),
    (VENN, "How many of the staff study French?", "17"),
    (VENN, "What is the probability that a student studies French?", "17/28"),
    (VENN, "What is the probability that the child likes only French?", "12/28"),
    (SETS, "How many numbers are in A?", "4"),
    (SETS, "How many members are there?", "7"),
    (CHANCES, "What is the probability that the spinner lands on red?", "0.2"),
    (CHANCES, "The table is for a spinner. What is the probability of red or blue?", "0.7"),
    (DICE, "The dice are fair. What is the probability that the total is {7}?", "1/6"),
    (
        TREE,
        "A bead is taken from a bag, and then another from a box. What is the probability that "
        "both are red?",
        "25/64",
    ),
    (PLANTS, "How many plants have a height of more than 15 cm?", "2"),
    (SHADED, "What percentage of the rectangle is shaded?", "37.5%"),
    (SHADED, "What decimal of the rectangle is shaded?", "0.375"),
    (
        DICE,
        "What is the probability that the total is {7}? Give your answer as a percentage to 1 "
        "decimal place.",
        "16.7%",
    ),
    (
        SHADED,
        "What fraction of the rectangle is shaded? Give your answer as a decimal to 1 decimal "
        "place.",
        "0.4",
    ),
    (SHARES, "How much more does Ben get than Ana?", "£8"),
    (ANGLES, "Find the size of angle x.", "44"),
    (TRIANGLE, "The lengths are in centimetres. What is the perimeter of the triangle?", "42 cm"),
    (
        TRIANGLE,
        "The diagram shows a triangular plot. What is the perimeter of the triangle?",
        "42 cm",
    ),
    (BUSES, "After how many minutes does bus B overtake bus A?", "20"),
]


def proved(figure, prompt, key):
    """Return whether a question with this figure is proved with this key."""
    item = BankItem(id="line-1", tier="core", prompt=prompt, key=key, figure=figure)
    try:
        read = read_item(item, "garden:line-1", "number.try")
    except NeedsPerson:
        return False
    return judge(read).state is State.PROVED


@pytest.mark.parametrize(("figure", "prompt", "key"), MISREAD)
def test_words_that_ask_for_something_else_are_not_proved(figure, prompt, key):
    assert not proved(figure, prompt, key)


@pytest.mark.parametrize(("figure", "prompt", "key"), PLAIN)
def test_a_question_that_is_asked_plainly_is_proved(figure, prompt, key):
    assert proved(figure, prompt, key)
