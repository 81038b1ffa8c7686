"""The mistakes that are made with primes, common factors and common multiples."""

from __future__ import annotations

from itembank.items.item import Misconception

STOPS_BEFORE_PRIMES = Misconception(
    "number.primes-stops-before-primes",
    "stops before every factor is prime",
    "Look at each factor. Which of them can still be split?",
)
EACH_ONCE = Misconception(
    "number.primes-each-prime-once",
    "writes each prime once only",
    "Multiply your product out. Do you get the number back?",
)
ONE_IS_PRIME = Misconception(
    "number.primes-one-is-prime",
    "takes 1 for a prime number",
    "How many factors has a prime number? How many has 1?",
)
INDEX_TIMES = Misconception(
    "number.primes-index-as-a-factor",
    "writes the index as a factor",
    "What does an index tell you? How many times does the factor stand there?",
)
MISSES_A_BRANCH = Misconception(
    "number.primes-misses-a-branch",
    "leaves a factor of the tree out",
    "Multiply your product out. Do you get the number back?",
)
ODD_FOR_PRIME = Misconception(
    "number.primes-odd-for-prime",
    "takes every odd number for a prime number",
    "Is your number in the three, five or seven times table?",
)
BEYOND = Misconception(
    "number.primes-beyond-the-limits",
    "gives a prime number that is not between the two",
    "Is your number between the two numbers of the question?",
)
POWER_ON_ONE = Misconception(
    "number.primes-power-on-one-factor",
    "raises one of the prime factors only",
    "Write the power out as a product first. How often does each prime come?",
)
GIVES_LCM = Misconception(
    "number.common-gives-the-lcm",
    "gives the lowest common multiple",
    "What is a factor, and what is a multiple? Can a factor be larger than the number?",
)
GIVES_HCF = Misconception(
    "number.common-gives-the-hcf",
    "gives the highest common factor",
    "What is a factor, and what is a multiple? Can a multiple be smaller than the number?",
)
STOPS_TOO_SOON = Misconception(
    "number.common-stops-too-soon",
    "gives a common factor, but not the highest",
    "Divide all the numbers by your answer. Do the results still have a common factor?",
)
NOT_ITSELF = Misconception(
    "number.common-not-itself",
    "takes a number not to be a factor or a multiple of itself",
    "Is every number in its own times table?",
)
SHARED_ONCE = Misconception(
    "number.common-each-prime-once",
    "counts each prime once only",
    "How often does each prime stand in each of the numbers?",
)
COMMON_MULTIPLE = Misconception(
    "number.common-multiple-for-factor",
    "gives a common multiple instead of a common factor",
    "Does your number go into both, or do both go into it?",
)
COMMON_FACTOR = Misconception(
    "number.common-factor-for-multiple",
    "gives a common factor instead of a common multiple",
    "Do both numbers go into your number, or does it go into them?",
)
OF_ONE_ONLY = Misconception(
    "number.common-of-one-only",
    "looks at one of the numbers only",
    "Does it work for the other number as well?",
)
MULTIPLIES = Misconception(
    "number.common-multiplies-them",
    "multiplies the numbers together",
    "Your answer is a common multiple. Is there a smaller one?",
)
ANY_MULTIPLE = Misconception(
    "number.common-gives-any-multiple",
    "gives a common multiple, but not the lowest",
    "Is half of your answer a common multiple as well?",
)
FIRST_TWO = Misconception(
    "number.common-first-two-only",
    "stops after the first two numbers",
    "Does it work for the third number as well?",
)
ADDS = Misconception(
    "number.common-adds-them",
    "adds the numbers",
    "When does each of them come round? Do they meet then?",
)
DIVIDES_ONLY = Misconception(
    "number.common-divides-only",
    "divides the lowest common multiple by the number that is given",
    "What do the two numbers multiply to? What do the HCF and the LCM multiply to?",
)
