"""A pair of solutions is completed by its letters, in whichever order it was given."""

from itertools import permutations

from itembank.marking.form.completed import completed
from itembank.notation import parse


def test_each_value_gets_the_unit_of_its_own_letter():
    units = {"x": "4 cm", "y": "3 kg", "z": "7 s"}
    key = parse(", ".join(f"{name} = {value}" for name, value in units.items()))
    for names in permutations(units):
        given = ", ".join(f"{name} = {units[name].split()[0]}" for name in names)
        whole = ", ".join(f"{name} = {units[name]}" for name in names)
        assert completed(parse(given), key) == parse(whole)
