"""Item statistics agree with other libraries on random answers, and hold where they must."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.records.statistics.interval import wilson
from itembank.records.statistics.item_statistics import (
    as_answers,
    corrected_correlation,
    facility,
    kr20,
    upper_lower,
)
from itembank.records.statistics.rasch import TooFew, rasch, symmetric
from tests.depth import cases, left

counts = st.integers(0, 200).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n)))
tables = st.integers(0, 10**6).map(
    lambda seed: np.random.default_rng(seed).integers(0, 2, size=(40, 6)).astype(float)
)


def simulate(seed, pupils, difficulties):
    rng = np.random.default_rng(seed)
    ability = rng.normal(size=(pupils, 1))
    return (
        rng.random((pupils, len(difficulties))) < 1 / (1 + np.exp(difficulties - ability))
    ) * 1.0


@given(counts, st.sampled_from([0.8, 0.9, 0.95, 0.99]))
def test_wilson_agrees_with_statsmodels(pair, confidence):
    from statsmodels.stats.proportion import proportion_confint

    right, out_of = pair
    if not out_of:
        assert wilson(0, 0) == (0.5, 0.0, 1.0)
        return
    expected = proportion_confint(right, out_of, alpha=1 - confidence, method="wilson")
    assert wilson(right, out_of, confidence)[1:] == pytest.approx(expected, abs=1e-9)
    assert 0 <= wilson(right, out_of).low <= right / out_of <= wilson(right, out_of).high <= 1


@pytest.mark.parametrize("bad", [(-1, 3), (4, 3)])
def test_impossible_counts_are_refused(bad):
    with pytest.raises(ValueError, match="cannot be"):
        wilson(*bad)


@given(tables)
@settings(max_examples=cases(25, 60), deadline=None)
def test_statistics_agree_with_their_definitions(table):
    from scipy.stats import pointbiserialr

    assert facility(table) == pytest.approx(table.mean(axis=0))
    covariance = np.cov(table.T, bias=True)
    if covariance.sum() > 0:
        alpha = 6 / 5 * (1 - np.trace(covariance) / covariance.sum())
        assert kr20(table) == pytest.approx(alpha)
    found = corrected_correlation(table)
    for item in range(6):
        rest = np.delete(table, item, axis=1).sum(axis=1)
        if table[:, item].std() and rest.std():
            assert found[item] == pytest.approx(pointbiserialr(table[:, item], rest).statistic)


@given(tables, st.integers(0, 10**6))
@settings(max_examples=cases(25, 60), deadline=None)
def test_the_order_of_pupils_makes_no_difference(table, seed):
    mixed = np.random.default_rng(seed).permutation(table)
    for statistic in (facility, kr20, corrected_correlation, upper_lower):
        assert statistic(mixed) == pytest.approx(statistic(table), nan_ok=True)


def test_upper_lower_of_groups_without_ties():
    # 100 pupils with scores all different: the groups are exactly the best and weakest 27.
    table = np.full((100, 101), np.nan)
    for pupil in range(100):
        table[pupil, 1:] = np.arange(100) < pupil
    table[:, 0] = np.arange(100) >= 60  # the best 40 pupils are right
    assert upper_lower(table)[0] == pytest.approx(1.0)
    table[:, 0] = np.arange(100) % 2
    assert upper_lower(table)[0] == pytest.approx(14 / 27 - 13 / 27, abs=1e-9)


def test_missing_answers_are_not_wrong_answers():
    table = np.array([[1, np.nan], [1, 0], [np.nan, 1], [0, 1]])
    assert facility(table) == pytest.approx([2 / 3, 2 / 3])
    assert np.isnan(facility([[np.nan], [np.nan]])).all()


def test_what_is_not_an_answer_is_refused():
    for bad in ([1, 0], [[1, 2]], [[0.5]]):
        with pytest.raises(ValueError, match="answer"):
            as_answers(bad)


@pytest.mark.parametrize("seed", [0, left(1), left(2)])
def test_rasch_agrees_with_conditional_logistic_regression(seed):
    from statsmodels.discrete.conditional_models import ConditionalLogit

    # statsmodels: each pupil is a stratum, each item a dummy variable, the last left out.
    table = simulate(seed, 300, np.array([-1.2, -0.4, 0.1, 0.6, 0.9]))
    table[:150, 0] = np.nan  # half the pupils were not asked the first item,
    table[150:, 4] = np.nan  # the others not the last
    pupils, items = np.nonzero(~np.isnan(table))
    dummies = -np.eye(5)[items][:, :4]
    fit = ConditionalLogit(table[pupils, items], dummies, groups=pupils).fit(disp=False)
    theirs = np.append(fit.params, 0)
    found = rasch(table)
    assert found.values == pytest.approx(theirs - theirs.mean(), abs=1e-4)
    # Standard errors of differences do not depend on where the zero is put.
    change = np.eye(5) - 0.2
    covariance = np.zeros((5, 5))
    covariance[:4, :4] = fit.cov_params()
    expected = np.sqrt(np.diag(change @ covariance @ change.T))
    assert found.errors == pytest.approx(expected, rel=1e-3)


def test_rasch_finds_the_difficulties_that_made_the_answers():
    truth = np.linspace(-2, 2, 12)
    found = rasch(simulate(7, 3000, truth))
    assert np.all(np.abs(found.values - truth) < 4 * found.errors)
    assert found.pupils <= 3000


@given(st.lists(st.floats(0.05, 20), min_size=1, max_size=12))
def test_symmetric_functions_are_the_coefficients_of_a_product(values):
    expected = np.poly(-np.array(values))  # (x + v1)(x + v2) …, highest power first
    assert symmetric(np.array(values)) == pytest.approx(expected, rel=1e-9)


def test_too_few_answers_are_said_so():
    table = simulate(3, 200, np.zeros(4))
    with pytest.raises(TooFew, match="pupils"):
        rasch(table[:20])
    with pytest.raises(TooFew, match="two or more"):
        rasch(table[:, :1])
    easy = table.copy()
    easy[:, 0] = 1
    with pytest.raises(TooFew, match="right or wrong"):
        rasch(easy)
    apart = table.copy()
    apart[:100, :2] = np.nan
    apart[100:, 2:] = np.nan
    with pytest.raises(TooFew, match="both sets"):
        rasch(apart)
