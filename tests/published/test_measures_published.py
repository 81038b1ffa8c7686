"""Units of area and volume against their definitions.

BIPM, *The International System of Units*, 9th ed., 2019, table 8 (from memory): a hectare is
10 000 m², a litre is a cubic decimetre.
"""

from __future__ import annotations

from generators.measures.area_volume_units import AreaVolumeUnits
from itembank.items.item import Tier
from itembank.notation import line


def test_a_hectare_and_a_litre_are_what_they_are_defined_as() -> None:
    topic = AreaVolumeUnits()
    assert line(topic.make(Tier.SUPPORT, "down", 3, 30).key) == "30000 m^2"
    assert line(topic.make(Tier.CORE, "down", 2, 20).key) == "2000 cm^3"
    assert line(topic.make(Tier.CHALLENGE, "litres", 50, 20, 10).key) == "10 l"
