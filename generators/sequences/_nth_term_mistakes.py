"""Mistakes with the rule for the nth term."""

from __future__ import annotations

from itembank.items.item import Misconception

PLUS_DIFFERENCE = Misconception(
    "sequences.plus-difference",
    "writes n plus the difference",
    "Work out your rule for n = 2. Is it the second term?",
)
FIRST_TERM = Misconception(
    "sequences.first-term",
    "uses the first term as the number to add",
    "Work out your rule for n = 1. Is it the first term?",
)
WRONG_WAY = Misconception(
    "sequences.wrong-way",
    "adds a number where it should be subtracted, or the other way round",
    "Work out your rule for n = 1. Is it the first term?",
)
DIFFERENCE_SIGN = Misconception(
    "sequences.difference-sign",
    "loses the minus sign of a difference that goes down",
    "Work out your rule for n = 2. Do the terms go up or down?",
)
ZERO_START = Misconception(
    "sequences.zero-start",
    "counts the first term as number 0",
    "Work out your rule for n = 1. Is it the first term?",
)
TIMES_ONLY = Misconception(
    "sequences.difference-alone",
    "multiplies n by the difference and leaves it at that",
    "Work out your rule for n = 1. Is it the first term?",
)
