"""Keys on solids found a third way: from the words of the picture, by a graph and by its drawing.

Faces are counted by Euler's relation from corners and edges; what is seen by drawn lines.
"""

from __future__ import annotations

import re

from itembank.figures.figure import drawn, words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from tests.depth import whole
from tests.figures.kinds.test_solid import graph
from tests.generators.key_reader import printed, sample
from tests.generators.mistakes import each_mistake

PART = r"(faces|edges|vertices)"


def _counts(item: Item) -> dict[str, int]:
    edges, _ = graph(words(item.figure))
    corners = len({corner for edge in edges for corner in edge})
    return {"edges": len(edges), "vertices": corners, "faces": 2 - corners + len(edges)}


def _name(text: str) -> str:
    sides = {3: "triangular", 4: "", 5: "pentagonal", 6: "hexagonal", 7: "heptagonal"}
    n = int(re.search(r"(\d) side", text)[1])
    shape = "prism" if text.startswith("A prism") else "pyramid"
    special = {("prism", 4): "cuboid", ("pyramid", 3): "tetrahedron"}
    special[("pyramid", 4)] = "square-based pyramid"
    return special.get((shape, n), f"{sides.get(n, 'octagonal')} {shape}")


@whole
def test_keys_are_found_again_from_what_is_printed() -> None:
    for item, text in sample("geometry.solids"):
        told, found = words(item.figure), _counts(item)
        if text.startswith("Which"):
            assert item.key.text == _name(told)
            continue
        key = int(line(item.key))
        if more := re.match(f"How many more {PART} than {PART}", text):
            assert key == found[more[1]] - found[more[2]] > 0
        elif "of the faces" in text:
            n = int(re.search(r"(\d) side", told)[1])
            rest = found["faces"] - n
            around, ends = (4, n) if told.startswith("A prism") else (3, n)
            wanted = 3 if "triangles" in text else 4
            assert key == n * (around == wanted) + rest * (ends == wanted)
        else:
            assert key == found[re.match(f"How many {PART}", text)[1]]


@whole
def test_mistakes_come_again_by_their_own_ways() -> None:
    used = set()
    for item, text in sample("geometry.solids"):
        found = _counts(item)
        solid = [mark.points for mark in drawn(item.figure).of("edge")]
        corners = {spot for ends in solid for spot in ends}
        # The lines that are seen cut the picture into the faces that are seen.
        seen = {
            "edges": len(solid),
            "vertices": len(corners),
            "faces": len(solid) - len(corners) + 1,
        }
        n = int(re.search(r"(\d) side", words(item.figure))[1])
        more = re.match(f"How many more {PART} than {PART}", text)
        match = re.match(f"How many {PART}", text)
        for slip in item.slips:
            wrong = line(slip.wrong)
            for which in re.findall(r"solids-[a-z-]+", slip.misconception.id):
                used.add(which)
                if which == "solids-hidden" and match:
                    assert int(wrong) == seen[match[1]]
                elif which == "solids-hidden" and more:
                    assert int(wrong) == seen[more[1]] - seen[more[2]]
                elif which == "solids-mixed-up":
                    other = {"edges": "vertices", "vertices": "edges"}[match[1]]
                    assert int(wrong) == found[other]
                elif which in ("solids-ends-left-out", "solids-top-left-out"):
                    assert int(wrong) == n
                elif which == "solids-joins-left-out":
                    assert int(wrong) == 2 * n
                elif which == "solids-inside":
                    shared = {"faces": 2, "edges": n, "vertices": n}[match[1]]
                    assert int(wrong) == found[match[1]] + shared
                elif which == "solids-all-faces":
                    assert int(wrong) == found["faces"]
                elif which == "solids-added":
                    assert int(wrong) == found[more[1]] + found[more[2]]
                elif which == "solids-only-first":
                    assert int(wrong) == found[more[1]]
                elif which in ("solids-other-family", "solids-other-base"):
                    assert slip.wrong != item.key
                    assert slip.wrong.text in text
    assert len(used) == 11


def test_what_is_counted_altogether_comes_again_with_its_mistakes() -> None:
    topic, used = find_topic("geometry.solids"), set()
    drawn_ones = [
        item
        for item in (topic.item(Tier.CHALLENGE, at) for at in range(len(topic.spaces["challenge"])))
        if item.figure is not None and printed(item).endswith("altogether?")
    ]
    assert len(drawn_ones) > 10
    for item in drawn_ones:
        found, parts = _counts(item), re.findall(PART, printed(item))
        assert printed(item).endswith(" does the solid have altogether?")
        assert int(line(item.key)) == sum(found[part] for part in parts)
        n = int(re.search(r"(\d) side", words(item.figure))[1])
        solid = [mark.points for mark in drawn(item.figure).of("edge")]
        corners = {spot for ends in solid for spot in ends}
        seen = {
            "edges": len(solid),
            "vertices": len(corners),
            "faces": len(solid) - len(corners) + 1,
        }
        shared = {"faces": 2, "edges": n, "vertices": n}
        wrongs = {
            "geometry.solids-inside": sum(found[part] + shared[part] for part in parts),
            "geometry.solids-hidden": sum(seen[part] for part in parts),
            "geometry.solids-one-left-out": sum(found[part] for part in parts[:-1]),
        }
        for slip in each_mistake(item):
            used.add(slip.misconception.id)
            assert int(line(slip.wrong)) == wrongs[slip.misconception.id], item.address
    assert used == set(wrongs)
