"""The wrong methods that the topics of this strand look for.

The names describe common classroom errors in solving equations (common practice, no
source); each `ask` is a question that lets the pupil find the fault.
"""

from __future__ import annotations

from itembank.items.item import Misconception

SAME_OPERATION = Misconception(
    "equations.same-operation",
    "repeats an operation instead of undoing it",
    "What was done to the letter? Which operation takes that back?",
)
WRONG_WAY = Misconception(
    "equations.wrong-way-round",
    "takes away or divides the wrong way round",
    "Which number did you start from, and which did you divide by or take away? Why that one?",
)
MIXED_INVERSE = Misconception(
    "equations.mixed-inverse",
    "undoes multiplying by subtracting, or dividing by adding",
    "If 4x is 20, what does the 4 do to x? What takes that back?",
)
SWAPPED = Misconception(
    "equations.swapped-order",
    "reads a subtraction the wrong way round",
    "Say the equation in words. What is taken away from what?",
)
LOST_MINUS = Misconception(
    "equations.lost-minus",
    "loses the minus sign in front of the letter",
    "What does the minus sign belong to? What happens when you put your answer back in?",
)
WRONG_ORDER = Misconception(
    "equations.wrong-order",
    "undoes the steps in the wrong order",
    "Starting from the letter, what is done to it first and last? Which must come off first?",
)
STOPS_EARLY = Misconception(
    "equations.stops-early",
    "stops with a step still to do",
    "What have you found so far: one of the letter, or several? Is it what was asked for?",
)
FIRST_TERM_ONLY = Misconception(
    "equations.first-term-only",
    "multiplies only the first term in a bracket",
    "What is 3(10 + 2)? Is it the same as 30 + 2?",
)
BRACKET_SIGN = Misconception(
    "equations.bracket-sign",
    "takes a bracket away but gets the sign of its last term wrong",
    "What is 10 − (5 − 2)? Is it the same as 10 − 5 − 2?",
)
ADDS_LETTERS = Misconception(
    "equations.adds-letters",
    "adds the letter terms of the two sides instead of subtracting",
    "What do you do to a side to make its letter term vanish? Did the other side get that too?",
)
ADDS_NUMBERS = Misconception(
    "equations.adds-numbers",
    "moves a number to the other side without undoing it",
    "What do you do to a side to make its number vanish? Did the other side get that too?",
)
SMALLER_FROM_LARGER = Misconception(
    "equations.smaller-from-larger",
    "takes the smaller number from the larger and loses the minus sign",
    "On a number line, where do you land when you take 9 from 4?",
)
ANSWER_SIGN = Misconception(
    "equations.answer-sign",
    "leaves the minus sign off a negative result",
    "Put your answer back into the question. Is the result positive or negative?",
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
    "adds the denominators when adding fractions of the letter",
    "What is half of 12 plus a third of 12? Is it two fifths of 12?",
)
OWN_DENOMINATOR = Misconception(
    "equations.own-denominator",
    "multiplies each side by its own denominator",
    "Were both sides multiplied by the same number? Does the balance still hold?",
)
ADDS_RATE = Misconception(
    "equations.adds-multiplier",
    "takes the multiplier away instead of dividing by it",
    "If one box holds 5, how many do 3 boxes hold? Did you undo that?",
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
    "gives the value of the letter when something else is asked for",
    "What does the letter stand for, and what does the question ask for?",
)
SIDE_BY_SIDE = Misconception(
    "equations.side-by-side",
    "writes the value beside the number instead of multiplying",
    "What does 3x mean? If x is 5, is that thirty-five?",
)
ADDS_FACTORS = Misconception(
    "equations.adds-factors",
    "adds a number and a letter written side by side",
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
    "What is −4 times −4?",
)
NO_BRACKET = Misconception(
    "equations.ignores-bracket",
    "multiplies only part of a bracket",
    "What does the bracket tell you to do first?",
)
NO_HALF = Misconception(
    "equations.forgets-half",
    "forgets to divide by two",
    "Which parts of the formula have you used? Is there one left?",
)
DROPS_MINUS = Misconception(
    "equations.drops-minus",
    "leaves out the minus sign of the value put in",
    "Put the value in a bracket, with its sign. What do you have now?",
)
TURNS_SIGN = Misconception(
    "equations.turns-sign",
    "turns the inequality sign round when there is no need",
    "Try one number from your answer in the question. Does it work?",
)
KEEPS_SIGN = Misconception(
    "equations.keeps-sign",
    "keeps the sign when multiplying or dividing by a negative number",
    "3 < 5 is true. Multiply both sides by −1: which side is larger now?",
)
