"""Lines that are kept from one width to the next are those that the text would be broken into."""

import random
from itertools import product

from itembank.pages.engine.text.flow import Flow
from itembank.pages.engine.text.line_breaking import break_lines, lines_of
from itembank.pages.parts.questions.question_cell import prompt
from tests.depth import cases, some, whole
from tests.pages.sheet_samples import real_pack
from tests.pages.test_figures_on_pages import drawn_by


def flows():
    """Return texts in words, with formulas, and with a figure after them: some of each."""
    pack = real_pack("8K")
    items = [*pack.versions[0].items, *(item for sheet in pack.sheets for item in sheet.items)]
    texts = [Flow(prompt(item)) for item in some(items, 3)]
    texts += [Flow(prompt(drawn_by(item))) for item in some(items[:4], 2)]
    return [*texts, Flow("A market garden\nsells 24\u00a0trays of 12\u00a0seedlings, and honey.")]


@whole
def test_kept_lines_are_those_of_the_room():
    rng = random.Random(5)
    hits = 0
    # Each text at both sizes of pictures, so that lines kept for the one are not the other's.
    for flow, pictures in product(flows(), (1.0, 0.7)):
        widest = sum(cluster.width for cluster in flow.clusters)
        rooms = [rng.uniform(1, 1.1 * widest) for _ in range(cases(20, 60, 60))]
        # The widths at which something just fits, and hardly any more or less.
        rooms += [cluster.width * scale for cluster in flow.clusters for scale in (1, pictures)]
        rooms += [room + step for room in rooms for step in (1e-6, -1e-6, 3e-7, 1e-5, -1e-5)]
        rng.shuffle(rooms)
        for room in rooms:
            before = sum(map(len, flow.kept.values()))
            found = lines_of(flow, room, pictures)
            hits += sum(map(len, flow.kept.values())) == before
            made = break_lines(flow.clusters, room, pictures)
            assert found.broken == made.broken
            assert found.cramped == made.cramped
            for size, gap in ((20.0, 0.3), (13.0, 0.3), (20.0, 0.2)):
                kept = found.block(flow, size, gap)
                new = break_lines(flow.clusters, room, pictures).block(flow, size, gap)
                assert kept._replace(lines=[]) == new._replace(lines=[])
                assert [(at.baseline, at.width) for at in kept.lines] == [
                    (at.baseline, at.width) for at in new.lines
                ]
    assert hits > 1000, "hardly anything is kept"
