# make demo   sets everything up and writes the demo class's pack into output/
# make test   sets everything up and runs every check and test
# make cover  runs the tests and says which lines and branches none of them reaches
# make explore  runs the tests on random cases that are new each time
# make bench  prints speeds, as ratios measured in one run
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin

.PHONY: demo test check cover explore bench clean

$(VENV)/.ready: pyproject.toml constraints.txt
	$(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt -e .
	touch $@

$(VENV)/.ready-test: $(VENV)/.ready
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt -e '.[test]'
	touch $@

$(VENV)/.ready-bench: $(VENV)/.ready-test
	$(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt -e '.[bench]'
	touch $@

demo: $(VENV)/.ready
	$(BIN)/itembank pack --department banks/larkhythe --output output --replace

check: $(VENV)/.ready-test
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/lint-imports

test: check
	$(BIN)/python -m pytest -n auto

cover: $(VENV)/.ready-test
	$(BIN)/python -m pytest -n auto --cov --cov-report=term:skip-covered

explore: $(VENV)/.ready-test
	$(BIN)/python -m pytest -n auto --hypothesis-profile=new

bench: $(VENV)/.ready-bench
	$(BIN)/python bench/run.py

clean:
	rm -rf $(VENV) .pytest_cache .mypy_cache .ruff_cache .hypothesis .coverage
