"""The wrong methods that the topics of this strand look for.

The names describe common classroom errors in solving equations (common practice, no
source); each is one mistake, and is carried out on the printed working line by line. The
`ask` here is what can be asked of any item; most items ask it of their own numbers
(:mod:`generators.equations._asks`).
"""

from __future__ import annotations

from itembank.items.item import Misconception

SAME_OPERATION = Misconception(
    "equations.same-operation",
    "repeats an operation instead of undoing it",
    "Which operation undoes the one in the question?",
)
DIVIDED_WRONG_WAY = Misconception(
    "equations.wrong-way-round",
    "divides the wrong way round",
    "Which number is shared out, and into how many parts?",
)
SUBTRACTED_WRONG_WAY = Misconception(
    "equations.subtracts-wrong-way-round",
    "subtracts the wrong way round",
    "Which number did you start from, and which did you subtract from it?",
)
SUBTRACTS_MULTIPLIER = Misconception(
    "equations.mixed-inverse",
    "subtracts the multiplier instead of dividing by it",
    "Which operation undoes multiplying?",
)
ADDS_DIVISOR = Misconception(
    "equations.adds-divisor",
    "adds the divisor instead of multiplying by it",
    "Which operation undoes dividing?",
)
SWAPPED = Misconception(
    "equations.swapped-order",
    "reads a subtraction the wrong way round",
    "Say the equation in words. What is subtracted from what?",
)
LOST_MINUS = Misconception(
    "equations.lost-minus",
    "loses the minus sign in front of the unknown",
    "What does the minus sign belong to? What happens when you substitute your answer?",
)
WRONG_ORDER = Misconception(
    "equations.wrong-order",
    "undoes the operations in the wrong order",
    "What is done to the unknown first, and what last? Which do you undo first?",
)
STOPS_EARLY = Misconception(
    "equations.stops-early",
    "stops with a step still to do",
    "What have you found so far? Is it what the question asks for?",
)
FIRST_TERM_ONLY = Misconception(
    "equations.first-term-only",
    "multiplies only the first term in a bracket",
    "What is 3(10 + 2)? Is it the same as 30 + 2?",
)
BRACKET_SIGN = Misconception(
    "equations.bracket-sign",
    "gets the sign of the last term wrong when expanding a bracket with a minus in front",
    "What is 10 − (5 − 2)? Is it the same as 10 − 5 − 2?",
)
LETTER_ACROSS = Misconception(
    "equations.adds-letters",
    "moves the unknown to the other side without changing its sign",
    "What did you do to one side? Did you do the same to the other side?",
)
NUMBER_ACROSS = Misconception(
    "equations.adds-numbers",
    "moves a number to the other side without changing its sign",
    "What did you do to one side? Did you do the same to the other side?",
)
ADDS_LIKE_TERMS = Misconception(
    "equations.adds-like-terms",
    "adds like terms where one is subtracted from the other",
    "Which sign stands between the two terms?",
)
SMALLER_FROM_LARGER = Misconception(
    "equations.smaller-from-larger",
    "subtracts the smaller number from the larger and loses the minus sign",
    "On a number line, where do you land when you subtract 9 from 4?",
)
ANSWER_SIGN = Misconception(
    "equations.answer-sign",
    "leaves the minus sign off a negative result",
    "Substitute your answer. Is the result positive or negative?",
)
MULTIPLIES_BY_FRACTION = Misconception(
    "equations.multiplies-by-fraction",
    "multiplies by the fraction instead of dividing by it",
    "If half of a number is 6, is the number bigger or smaller than 6?",
)
IGNORES_NUMERATOR = Misconception(
    "equations.ignores-numerator",
    "multiplies by the denominator and forgets the numerator",
    "If three quarters of a number is 6, what is one quarter of it?",
)
PART_CLEARED = Misconception(
    "equations.part-cleared",
    "leaves a term out when multiplying by the denominator",
    "If you double one side of a balance, what must happen to everything on the other side?",
)
ADDS_DENOMINATORS = Misconception(
    "equations.adds-denominators",
    "adds the numerators and adds the denominators when adding fractions",
    "What is half of 12 plus a third of 12? Is it two fifths of 12?",
)
OWN_DENOMINATOR = Misconception(
    "equations.own-denominator",
    "multiplies each numerator by the denominator below it",
    "Were both sides multiplied by the same number?",
)
TWO_SIDES = Misconception(
    "equations.two-sides-only",
    "counts only one length and one width in a perimeter",
    "Walk round the edge with your finger: how many sides do you pass?",
)
FORGETS_DIFFERENCE = Misconception(
    "equations.forgets-difference",
    "shares the total equally and forgets the difference",
    "If they were all equal, would one still be more than another?",
)
EXTRA_ONCE = Misconception(
    "equations.extra-once",
    "counts something once that comes twice",
    "How many times does that amount come in? How many times did you count it?",
)
FULL_TURN = Misconception(
    "equations.angle-sum-360",
    "uses 360° for the angles of a triangle",
    "Tear the corners off a triangle and put them together. What do they make?",
)
LETTER_ONLY = Misconception(
    "equations.letter-only",
    "gives the value of the unknown when something else is asked for",
    "What does the unknown stand for, and what does the question ask for?",
)
SIDE_BY_SIDE = Misconception(
    "equations.side-by-side",
    "writes the digits side by side instead of multiplying",
    "What does 3x mean? If x is 5, is that thirty-five?",
)
ADDS_FACTORS = Misconception(
    "equations.adds-factors",
    "adds two things written side by side instead of multiplying them",
    "How would you write three lots of x? And three more than x?",
)
SUM_FIRST = Misconception(
    "equations.sum-first",
    "adds or subtracts before multiplying",
    "In 2 + 3 × 4, which part is worked out first?",
)
POWER_OF_ALL = Misconception(
    "equations.power-of-all",
    "squares the number in front as well",
    "In 3x², what is the little 2 attached to? Write it out without the power.",
)
DOUBLES = Misconception(
    "equations.doubles-for-square",
    "doubles instead of squaring",
    "What is 5 squared? What shape has that area?",
)
SQUARE_SIGN = Misconception(
    "equations.negative-square",
    "makes the square of a negative number negative",
    "What is −4 × (−4)?",
)
NO_BRACKET = Misconception(
    "equations.ignores-bracket",
    "ignores a bracket and multiplies only its last term",
    "What does the bracket tell you to do first?",
)
NO_HALF = Misconception(
    "equations.forgets-half",
    "leaves out the division by 2 in the formula",
    "Which parts of the formula have you used? Is there one left?",
)
DROPS_MINUS = Misconception(
    "equations.drops-minus",
    "leaves out the minus sign of the value substituted",
    "Put the value in a bracket, with its sign. What do you have now?",
)
TURNS_SIGN = Misconception(
    "equations.turns-sign",
    "turns the inequality sign round when there is no need",
    "Try one number from your answer in the question. Does it work?",
)
SWAPS_SIDES = Misconception(
    "equations.swaps-sides",
    "swaps the sides without turning the inequality sign round",
    "If 5 is more than a number, is the number more than 5 or less than 5?",
)
KEEPS_SIGN = Misconception(
    "equations.keeps-sign",
    "keeps the inequality sign when dividing by a negative number",
    "3 < 5 is true. Multiply both sides by −1: which side is larger now?",
)
