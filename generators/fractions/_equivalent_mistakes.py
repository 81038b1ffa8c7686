"""The mistakes that are made with equivalent fractions."""

from __future__ import annotations

from itembank.items.item import Misconception

ADD_SAME = Misconception(
    "fractions.equivalent-by-adding",
    "adds the same number to the numerator and the denominator",
    "By adding 1 to numerator and denominator, 1/2 becomes 2/3. Are those equal? Draw them.",
)


TAKE_SAME = Misconception(
    "fractions.equivalent-by-subtracting",
    "takes the same number away from the numerator and the denominator",
    "Taking 1 away from the numerator and denominator of 2/3 gives 1/2. Are those equal?",
)


LEAVE_OTHER = Misconception(
    "fractions.equivalent-one-part",
    "changes one part of the fraction and leaves the other as it was",
    "Is 1/2 of a cake as much as 1/4 of it? If one part changes, what must happen to the other?",
)


REST_TAKEN = Misconception(
    "fractions.equivalent-rest-taken",
    "works with the rest, and not with the part that is shown",
    "Which part does the fraction speak of: the part that is shown, or the rest?",
)
