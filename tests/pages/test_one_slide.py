"""A starter of eight questions stands on one slide, and its answers where eyes find them."""

from __future__ import annotations

import datetime
import random
from collections import Counter
from dataclasses import replace
from functools import cache

import pypdfium2
import pytest

from itembank.items.topics.registry import topic_ids
from itembank.packs.build import choose
from itembank.packs.choosing.starter import tier_counts
from itembank.packs.pack_as_data import as_data
from itembank.pages import draw
from itembank.pages.documents.slides import TOP, answers, bottom_of, starter
from itembank.pages.engine.page import theme
from itembank.pages.parts.questions.instructions import last_instruction, shared
from itembank.pages.parts.questions.question_cell import leaves_word, prompt
from itembank.pages.parts.slide.board import arrange
from itembank.pages.parts.slide.even_slides import splits
from itembank.pages.parts.slide.slide_board import LEFT, RIGHT
from itembank.planning.bands.bands import default_scheme
from itembank.planning.department.large_copies import LargePrint
from itembank.planning.department.pack_request import PackRequest, PlannedTopic
from tests.depth import cases, left, whole
from tests.pages.sheet_samples import draws_figures
from tests.pages.test_layout import slides_of

pytestmark = pytest.mark.usefixtures("one_core")

DRAWS = cases(5, 20, 20)
FIGURE_DRAWS = cases(2, 6, 4)
ANY_DRAWS = cases(6, 24, 24)


@cache
def draws(count=DRAWS):
    """Return packs on four topics drawn at random: words and formulae, which take one slide."""
    rng = random.Random(28)
    plain = [name for name in topic_ids() if not draws_figures(name)]
    return [on_topics(*rng.sample(plain, 4), seed=seed) for seed in range(count)]


LARGE = (
    *("probability.trees", "graphs.distance-time", "measures.timetables"),
    *("statistics.line-graphs", "probability.venn", "statistics.scatter-graphs"),
)
"""Topics with large pictures."""


@cache
def figure_draws():
    """Return packs on three topics with large pictures and another, however full they are."""
    rng = random.Random(29)
    plain = [name for name in topic_ids() if not draws_figures(name)]
    return [
        on_topics(*rng.sample(LARGE, 3), *rng.sample(plain, 1), seed=seed, fitted=False)
        for seed in range(FIGURE_DRAWS)
    ]


def too_full(count, *topics, questions=8):
    """Return the first request on some topics whose starter takes more slides as it is dealt."""
    requests = (
        replace(
            request_on(*topics, seed=seed),
            topics=tuple(PlannedTopic(name, None) for name in topics),
            questions=questions,
        )
        for seed in range(40)
    )
    return next(r for r in requests if not draw.fits_slides(as_data(r, choose(r)), count))


def on_topics(*topics, seed, fitted=True):
    """Return a pack of two questions on each of four topics."""
    request = request_on(*topics, seed=seed)
    return as_data(request, choose(request, draw.fits_slides if fitted else None))


def request_on(*topics, seed):
    return PackRequest(
        school="Larkhythe School",
        class_name="8K",
        date=datetime.date(2026, 11, 30),
        title="Four topics",
        topics=tuple(PlannedTopic(topic, 2) for topic in topics),
        questions=8,
        seed=seed,
        follow_up=3,
        variants=1,
        large_print=LargePrint(),
        paper="white",
        print_tint=False,
        self_mark="when done",
        slips=False,
        bands=default_scheme(3),
    )


class Told:
    """Slides that are as full as a function says, of questions as long as they are."""

    def __init__(self, fits):
        self.fits = fits

    def __call__(self, pack, count):
        return self.fits(pack, count)

    def share(self, item, shown):
        return draw.fits_slides.share(item, shown)


def placed(pack):
    return arrange(pack.versions[0].items, TOP, bottom_of(pack))


def opening(line):
    return "".join(one.atom.text or "\N{OBJECT REPLACEMENT CHARACTER}" for one in line.placed)


@whole
@pytest.mark.parametrize("seed", [0, left(1)])
def test_no_word_stands_alone_above_its_equation(seed):
    equations = ("equations.both-sides-brackets", "equations.two-step")
    for pack in [
        *draws(),
        on_topics(*equations, "ratio.share", "fractions.of-quantity", seed=seed),
    ]:
        for spot in (spot for slide in placed(pack) for spot in slide.spots):
            first, *rest = spot.cell.question.lines
            if rest and rest[0].placed[0].atom.maths is not None:
                assert len(opening(first).split()) > 1, opening(first)


@whole
def test_eight_questions_of_four_topics_take_one_slide():
    slides = [placed(pack) for pack in draws()]
    one = [made[0] for made in slides if len(made) == 1]
    # Four topics that all tell long stories may take two.
    assert len(one) >= 0.95 * DRAWS
    assert all(made.size >= theme.SLIDE_QUESTION[0] for made in one)
    assert sum(made.size >= 26 for made in one) >= 0.5 * DRAWS
    for made in slides:
        counts = [len(slide.spots) for slide in made]
        assert max(counts) - min(counts) <= 1


def all_draws():
    """Return packs on four topics drawn at random from all there are."""
    rng = random.Random(30)
    names = topic_ids()
    return [on_topics(*rng.sample(names, 4), seed=seed) for seed in range(ANY_DRAWS)]


@whole
def test_eight_questions_of_any_four_topics_take_one_slide():
    """Of 160 draws all did, two thirds at 26 points: here one may not, and half are as large."""
    slides = [placed(pack) for pack in all_draws()]
    one = [made[0] for made in slides if len(made) == 1]
    assert len(one) >= ANY_DRAWS - 1
    assert all(made.size >= theme.SLIDE_QUESTION[0] for made in one)
    assert sum(made.size >= 26 for made in one) > ANY_DRAWS / 2


def test_figures_go_over_slides_as_evenly_as_they_fit():
    """Not as many on the first as it holds: of one pack that was six, and two on the second."""
    packs = figure_draws()
    shares = [[len(slide.spots) for slide in placed(pack)] for pack in packs]
    assert sum(len(share) > 1 for share in shares) > len(shares) / 6
    for pack, share in zip(packs, shares, strict=True):
        if max(share) - min(share) > 2:
            assert not any(
                all(fits_one_slide(pack, group) for group in way)
                for way in splits(len(pack.versions[0].items), len(share))
                if max(map(len, way)) - min(map(len, way)) < max(share) - min(share)
            ), share


def fits_one_slide(pack, group):
    items = [pack.versions[0].items[number] for number in group]
    return len(arrange(items, TOP, bottom_of(pack))) == 1


@pytest.mark.parametrize(("count", "slides"), [(8, 2), (8, 3), (10, 4), (20, 7)])
def test_questions_are_shared_over_slides_in_order_the_most_even_way_first(count, slides):
    ways = list(splits(count, slides))
    spreads = []
    for way in ways:
        assert [number for group in way for number in group] == list(range(count))
        assert len(way) == slides
        spreads.append(max(map(len, way)) - min(map(len, way)))
    assert spreads == sorted(spreads)
    assert spreads[0] <= 1


CROWDED = ("ratio.difference", "number.factor-pairs", "fractions.between", "ratio.best-value")
"""Long stories."""
FULL = ("probability.trees", "statistics.line-graphs", "ratio.share", "number.hcf")
"""Large pictures among stories."""


def test_a_starter_that_turns_out_too_full_is_chosen_again():
    request = too_full(1, *FULL)
    after = as_data(request, choose(request, draw.fits_slides))
    assert draw.fits_slides(after, 1)
    items = after.versions[0].items
    # As many on each topic and of each tier as ever, the easiest first.
    assert Counter(item.topic for item in items) == dict.fromkeys(FULL, 2)
    assert Counter(item.tier for item in items) == {
        tier.value: count for tier, count in tier_counts(8).items()
    }
    assert [item.difficulty for item in items] == sorted(item.difficulty for item in items)


def test_what_no_slide_holds_stands_on_two_and_not_on_three():
    request = too_full(1, *LARGE[:5], questions=10)
    before, after = (as_data(request, choose(request, *fits)) for fits in ((), (draw.fits_slides,)))
    assert draw.fits_slides(after, 2)
    assert len(list(slides_of(after))) <= 2
    had, has = (Counter(i.topic for i in p.versions[0].items) for p in (before, after))
    assert had == has


@cache
def crowded():
    """Return the first request on these topics whose starter is so long that it is drawn."""
    for request in (request_on(*CROWDED, seed=seed) for seed in range(100, 140)):
        drawn = []
        choose(request, Told(lambda pack, count, drawn=drawn: not drawn.append(count)))
        if drawn:
            return request
    raise AssertionError


def test_long_questions_make_way_for_shorter_ones_of_their_topic_and_tier():
    """Told twice that it is too full, the starter is made of as few shorter ones as will do."""
    drawn = []

    def twice(pack, count):
        drawn.append(pack.versions[0].items)
        return len(drawn) > 1

    chosen = choose(crowded(), Told(twice))
    was, now = drawn[0], drawn[-1]
    assert [c.item.address for c in chosen.versions[0]] == [i.address for i in now]
    gone = sorted({i.address for i in was} - {i.address for i in now})
    come = sorted({i.address for i in now} - {i.address for i in was})
    assert len(gone) == 1
    for old, new in zip(gone, come, strict=True):
        assert old.rpartition("/")[0] == new.rpartition("/")[0]
        by_address = {item.address: item for item in (*was, *now)}
        # A picture takes more room than any words.
        pictured = by_address[old].picture is not None and by_address[new].picture is None
        assert pictured or words(by_address[new]) < words(by_address[old])
        # The standard deviation in these tiers: as far apart as any two of their questions.
        assert abs(by_address[new].difficulty - by_address[old].difficulty) < 0.8


def words(item):
    return sum(len(run.text if run.kind == "text" else run.line) for run in item.prompt)


def test_a_starter_that_no_choice_makes_fit_stays_as_it_was():
    drawn = []

    def never(pack, count):
        drawn.append([item.address for item in pack.versions[0].items])
        return False

    request = crowded()
    chosen, plain = choose(request, Told(never)), choose(request)
    assert len(drawn) > 1
    # The sheets as well: what was tried and given back can be asked there.
    assert [c.item.address for c in chosen.taken()] == [c.item.address for c in plain.taken()]


def test_what_a_teacher_keeps_is_never_taken_out():
    kept = [c.item.address for c in choose(request_on(*CROWDED, seed=105)).versions[0]]
    for count in (5, 8):
        request = replace(request_on(*CROWDED, seed=105), items=tuple(kept[-count:]))
        chosen = choose(request, draw.fits_slides)
        assert {c.item.address for c in chosen.versions[0]} >= set(kept[-count:])


def test_a_starter_with_room_to_spare_is_never_drawn_to_choose_it():
    topics = ("fractions.improper-mixed", "fractions.lowest-terms", "equations.one-step")
    request = request_on(*topics, "number.negatives-add", seed=1)
    choose(request, Told(lambda pack, count: pytest.fail("drawn")))


LONG = ("fractions.of-quantity", "ratio.share", "ratio.combine", "ratio.best-value")


@pytest.mark.parametrize("seed", [7, left(13), left(15)])
def test_a_starter_of_long_stories_is_set_closer_before_it_takes_two_slides(seed):
    slides = placed(on_topics(*LONG, seed=seed))
    assert len(slides) == 1
    assert slides[0].size >= theme.SLIDE_QUESTION[0]


@pytest.mark.parametrize("seed", [1, left(2), left(5)])
def test_no_word_stands_alone_above_its_equation_on_the_second_slide_either(seed):
    some = ("equations.both-sides-brackets", "equations.fractional")
    more = ("equations.both-sides", "equations.brackets", "ratio.difference", "ratio.one-part")
    pack = on_topics(*some, "ratio.best-value", "ratio.combine", seed=seed)
    items = [*pack.versions[0].items, *on_topics(*more, seed=seed).versions[0].items]
    slides = arrange(items, TOP, bottom_of(pack))
    assert len(slides) > 1
    for slide in slides:
        assert slide.size >= theme.SLIDE_QUESTION[0]
        for spot in slide.spots:
            assert not leaves_word(spot.cell.question), spot.item.address


def columns(slide):
    """Return each spot with the right edge of its column: a gap before the next, or the margin.

    Of the spots that stand level with it, the next begins there.
    """
    assert min(spot.x for spot in slide.spots) == LEFT
    for spot in slide.spots:
        strip = sum(spot.top < rule for rule in slide.rules)
        beside = [
            other.x
            for other in slide.spots
            if other.x > spot.x and sum(other.top < rule for rule in slide.rules) == strip
        ]
        yield spot, (min(beside) - 24.0 if beside else RIGHT)


@whole
def test_answers_stand_at_the_right_edge_and_clear_of_all_words(samples):
    for pack in (*draws(), *samples.PACKS.values()):
        for slide in slides_of(pack):
            for spot, right in columns(slide):
                made = spot.cell
                edge = spot.x + made.answer_x + made.answer.width + made.pad
                assert edge == pytest.approx(right, abs=0.02)
                top = made.answer_top - made.pad
                bottom = made.answer_top + made.answer.height + made.pad
                assert top >= -0.01
                assert bottom <= made.height + 0.01
                left = made.answer_x - made.pad - made.indent
                for line in made.question.lines:
                    # Ink of figures and small letters, which a box must not touch.
                    high = made.question_top + line.baseline - 0.68 * slide.size
                    low = made.question_top + line.baseline
                    apart = low <= top or high >= bottom or line.width <= left
                    assert apart, (pack.lesson.title, spot.number)


def words_of(pdf):
    pages = (page.get_textpage().get_text_range() for page in pypdfium2.PdfDocument(pdf))
    return " ".join(" ".join(pages).split())


@whole
def test_an_instruction_that_questions_share_is_said_once_and_kept_in_the_pack():
    seen = 0
    fractions = ("fractions.add-unlike", "fractions.multiply", "fractions.divide")
    said_often = [on_topics(*fractions, "fractions.add-like", seed=seed) for seed in range(3)]
    for pack in (*draws(), *figure_draws(), *said_often):
        items = pack.versions[0].items
        told = shared(items)
        text = words_of(starter(pack))
        for instruction in told:
            seen += 1
            assert len(instruction.numbers) > 1
            # Said once a slide however many share it, and nowhere on the answers.
            said = instruction.sentence[1:].removesuffix(".").replace("\u00a0", " ")
            where = [{spot.number for spot in slide.spots} for slide in placed(pack)]
            slides = sum(not numbers.isdisjoint(instruction.numbers) for numbers in where)
            assert text.count(said) == slides, (instruction, text)
            assert said not in words_of(answers(pack))
            for number in instruction.numbers:
                item = items[number - 1]
                assert last_instruction(item) == instruction.sentence
                kept = "".join(run if isinstance(run, str) else "" for run in prompt(item))
                assert not kept.endswith(instruction.sentence)
        alone = (
            {last_instruction(item) for item in items}
            - {instruction.sentence for instruction in told}
            - {""}
        )
        assert all(said[1:].split(".")[0].replace("\u00a0", " ") in text for said in alone)
    assert seen
