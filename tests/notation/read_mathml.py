"""Reads the exact value off a MathML string, as someone who sees only the page would.

It shares no code with the package: it walks the XML, applies the order of operations, and
knows the units by their definitions (BIPM, *The International System of Units*, 2019, and
those named below).
"""

import re
from fractions import Fraction
from xml.etree import ElementTree

SPACE = "{http://www.w3.org/1998/Math/MathML}"
LENGTHS = {"mm": "0.001", "cm": "0.01", "m": "1", "km": "1000"}
# Yard and pound: international agreement of 1959; the UK gallon: Weights and Measures Act 1985.
UNITS = {
    **LENGTHS,
    **{"in": "0.0254", "ft": "0.3048", "yd": "0.9144", "mile": "1609.344", "miles": "1609.344"},
    **{"mg": "0.000001", "g": "0.001", "kg": "1", "t": "1000"},
    **{"oz": "0.028349523125", "lb": "0.45359237", "st": "6.35029318"},
    **{"ml": "0.000001", "cl": "0.00001", "litre": "0.001", "litres": "0.001"},
    **{"pt": "0.00056826125", "gal": "0.00454609", "ha": "10000"},
    **{"s": "1", "min": "60", "h": "3600", "day": "86400", "days": "86400"},
    **{"week": "604800", "weeks": "604800", "month": "1", "months": "1"},
    **{"year": "12", "years": "12", "°": "1", "°C": "1"},
    **{"km/h": "5/18", "m/s": "1", "mph": "0.44704", "%": "0.01", "p": "0.01"},
}
RAISED = {"g/cm": "1000", "kg/m": "1"}
HALF = Fraction(1, 2)
SINES = {
    "sin": {-90: -1, -30: -HALF, 0: 0, 30: HALF, 90: 1, 150: HALF, 180: 0, 210: -HALF},
    "cos": {-120: -HALF, -90: 0, -60: HALF, 0: 1, 60: HALF, 90: 0, 120: -HALF, 180: -1},
    "tan": {-135: 1, -45: -1, 0: 0, 45: 1, 135: -1, 180: 0},
}
"""The sines that are fractions, by their angle in degrees: each once a whole turn."""
TIME = re.compile(r"(\d\d?)(?::(\d\d))?(?:\u00a0([ap])m)?")


class NoValueError(Exception):
    """What is printed has no exact rational value."""


def read(text, letters=None):
    """Return the values of the parts between colons (one, where there is no colon)."""
    root = ElementTree.fromstring(text)
    assert root.tag == SPACE + "math"
    rows = [[]]
    for element in root:
        if _tag(element) == "mo" and element.text == ":":
            rows.append([])
        else:
            rows[-1].append(element)
    return tuple(_Row(row, letters or {}).read() for row in rows)


def _tag(element):
    assert element.tag.startswith(SPACE)
    return element.tag[len(SPACE) :]


def _number(text):
    return Fraction(text.replace("\u2009", ""))


def _root(value, index):
    def whole(n):
        low, high = 0, n + 1
        while low + 1 < high:
            middle = (low + high) // 2
            low, high = (middle, high) if middle**index <= n else (low, middle)
        if low**index != n:
            raise NoValueError
        return low

    if value < 0:
        if index % 2 == 0:
            raise NoValueError
        return -_root(-value, index)
    return Fraction(whole(value.numerator), whole(value.denominator))


def _divide(top, bottom):
    if bottom == 0:
        raise NoValueError
    return top / bottom


def _power(base, exponent):
    if exponent.denominator != 1 or abs(exponent) > 64 or (base == 0 and exponent < 0):
        raise NoValueError
    return Fraction(base ** int(exponent))


class _Row:
    """A row of elements, read from left to right."""

    def __init__(self, elements, letters):
        self.elements = list(elements)
        self.letters = letters
        self.at = 0

    def sign(self, prefix=False):
        """Return the operator that stands next, if one does."""
        if self.at == len(self.elements):
            return None
        element = self.elements[self.at]
        if _tag(element) == "mtext" and element.text.strip() == "of":
            return "of"
        if _tag(element) != "mo" or (element.get("form") == "prefix") != prefix:
            return None
        return element.text

    def read(self):
        value = self.sum()
        assert self.at == len(self.elements), "something is left over in the row"
        return value

    def sum(self):
        times = self.is_time()
        any_time = times
        value = self.product()
        while (sign := self.sign()) in ("+", "−"):
            self.at += 1
            is_time = self.is_time()
            any_time |= is_time
            times += is_time if sign == "+" else -is_time
            term = self.product()
            value = value + term if sign == "+" else value - term
        if any_time and times == 1:
            return value % (24 * 60 * 60)
        if any_time and value < 0:
            raise NoValueError
        return value

    def is_time(self):
        element = self.elements[self.at]
        return _tag(element) == "mtext" and bool(TIME.fullmatch(element.text))

    def product(self):
        value = self.signed()
        while (sign := self.sign()) in ("×", "÷", "of"):
            self.at += 1
            factor = self.signed()
            value = _divide(value, factor) if sign == "÷" else value * factor
        return value

    def signed(self):
        if self.sign(prefix=True) == "−":
            self.at += 1
            return -self.signed()
        return self.measure()

    def measure(self):
        scale = Fraction(1)
        if _tag(self.elements[self.at]) == "mtext" and self.elements[self.at].text in "£€$":
            self.at += 1
        if self.is_time():
            self.at += 1
            hour, minute, half = TIME.fullmatch(self.elements[self.at - 1].text).groups()
            hours = int(hour) % 12 + 12 * (half == "p") if half else int(hour)
            return Fraction(60 * (60 * hours + int(minute or 0)))
        value = self.factors()
        if self.at < len(self.elements):
            unit = _unit(self.elements[self.at])
            if unit is not None:
                self.at += 1
                scale = unit
        value *= scale
        if self.at < len(self.elements) and self.elements[self.at].text == "\u00a0":
            self.at += 1
            value += self.measure()
        return value

    def factors(self):
        value = _value(self.elements[self.at], self.letters)
        self.at += 1
        while self.sign() == "\u2062":
            value *= _value(self.elements[self.at + 1], self.letters)
            self.at += 2
        return value


def _unit(element):
    """Return the size of the unit that `element` prints, or None if it prints none."""
    if _tag(element) == "msup" and _tag(element[0]) == "mtext" and element[0].text != "□":
        name, power = element[0].text.strip(), int(element[1].text)
        if name in RAISED and power == 3:
            return Fraction(RAISED[name])
        return Fraction(LENGTHS[name]) ** power
    if _tag(element) == "mtext" and element.text.strip() in UNITS:
        return Fraction(UNITS[element.text.strip()])
    return None


def _value(element, letters):
    tag, parts = _tag(element), list(element)
    if tag == "mn":
        return _number(element.text)
    if tag == "mi" or (tag == "mtext" and element.text == "□"):
        if element.text not in letters:
            raise NoValueError
        return letters[element.text]
    if tag == "mfrac":
        return _divide(_value(parts[0], letters), _value(parts[1], letters))
    if tag == "msup":
        return _power(_value(parts[0], letters), _value(parts[1], letters))
    if tag == "msqrt":
        return _root(_Row(parts, letters).read(), 2)
    if tag == "mroot":
        return _root(_value(parts[0], letters), int(parts[1].text))
    assert tag == "mrow", f"{tag} has no value"
    if any(_tag(part) == "mover" for part in parts):
        return _recurring(parts)
    if len(parts) == 3 and parts[1].text == "\u2064":
        return _number(parts[0].text) + _value(parts[2], letters)
    if _tag(parts[0]) == "msup" and parts[0][0].text in SINES:
        name, value = parts[0][0].text, _Row(parts[2:-1], letters).read()
        least, most = (0, 180) if name == "cos" else (-90, 90)
        return _only([a for a, s in SINES[name].items() if s == value and least <= a <= most])
    if parts[0].text in SINES:
        angle = _Row(parts[2:-1], letters).read()
        return _only([s for a, s in SINES[parts[0].text].items() if (angle - a) % 360 == 0])
    if _tag(parts[0]) == "mo" and parts[0].text == "(":
        assert parts[-1].text == ")"
        parts = parts[1:-1]
    return _Row(parts, letters).read()


def _only(found):
    if len(found) != 1:
        raise NoValueError
    return Fraction(found[0])


def _recurring(parts):
    """Return the value of a decimal with dots: the sum of a geometric series."""
    head, *block = parts
    digits = "".join(p.text if _tag(p) == "mn" else p[0].text for p in block)
    dotted = [part for part in block if _tag(part) == "mover"]
    assert all(part[1].text == "˙" for part in dotted)
    assert dotted[0] is block[0]
    assert dotted[-1] is block[-1]
    once = _number(head.text + digits)
    # Each block is worth a fixed fraction of the one before it.
    start = _number(head.text + "0")
    return start + (once - start) / (1 - Fraction(1, 10 ** len(digits)))
