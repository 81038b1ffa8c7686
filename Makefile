# make demo   sets everything up and writes the demo class's pack into output/
# make test   sets everything up and runs every check, and every test on a part of its cases
# make whole  runs the tests that leave cases out there on all of these: every topic, page and width
# make cover  runs the tests on all cases and says which lines and branches none of them reaches
# make explore  runs the tests on random cases that are new each time
# make floors  walks README's tour with an installed wheel, on the lowest versions allowed
# make bench  prints speeds, as ratios measured in one run
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
PIP := $(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt
# The checkout is a line of a .pth file then. Else pip puts in a finder of modules, which takes
# half as long to load as all of Python's start, and does so with each command.
AS_PATH := --config-settings editable_mode=compat

# Python keeps what it has compiled: the tests start it hundreds of times.
unexport PYTHONDONTWRITEBYTECODE

.PHONY: demo test style contracts types suite whole check cover explore floors bench clean

$(VENV)/.made:
	@$(PYTHON) -c 'import sys; v = sys.version_info; sys.exit(None if v >= (3, 11) else "itembank needs Python 3.11 or later; this is %d.%d. Name a newer one: make PYTHON=python3.12 demo" % v[:2])'
	$(PYTHON) -m venv $(VENV)
	touch $@

$(VENV)/.ready: pyproject.toml constraints.txt | $(VENV)/.made
	$(PIP) -e . $(AS_PATH)
	touch $@

# All at once, and none of it compiled: Python does that as it loads a module, on both cores, and
# of all these packages the tests load a part. It is half of the time that pip takes.
$(VENV)/.ready-test: pyproject.toml constraints.txt | $(VENV)/.made
	$(PIP) --no-compile -e '.[test]' $(AS_PATH)
	touch $(VENV)/.ready $@

$(VENV)/.ready-bench: $(VENV)/.ready-test
	$(PIP) -e '.[bench]' $(AS_PATH)
	touch $@

demo: $(VENV)/.ready
	$(BIN)/itembank pack --department banks/larkhythe --output output --replace

style: $(VENV)/.ready-test
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .

check: style
	@$(MAKE) --no-print-directory types

# The parts of the tests, types and import contracts run at once, one more than there are cores,
# since those that look at pages wait for their browser. If one fails, the others are finished and
# then make fails. What each says stays together.
CORES ?= $(shell nproc 2>/dev/null || getconf _NPROCESSORS_ONLN)
TOGETHER := --no-print-directory --keep-going -j$(shell expr $(CORES) + 1) \
	$(if $(filter output-sync,$(.FEATURES)),--output-sync)

test: style
	@$(MAKE) $(TOGETHER) suite types

contracts:
	$(BIN)/lint-imports

types: contracts
	$(BIN)/mypy

# The parts of the tests, the longest first. Each is a process of its own that reads its own files
# alone: several processes that share out all tests read all files each, and to tell one another
# of every test takes them as long again. The first part is whatever no other names.
PARTS := desk records figures bank cli pages generators
IN_generators := tests/generators
IN_cli := tests/cli
IN_desk := tests/desk tests/selfmark
IN_pages := tests/pages
IN_bank := tests/bank tests/proof
IN_figures := tests/figures tests/packs tests/items
IN_records := tests/records tests/work tests/planning tests/processes
IN_others := tests itembank generators $(foreach part,$(PARTS),$(IN_$(part):%=--ignore=%))
PARTS := others $(PARTS)
suite: $(PARTS:%=part-%)

# What each remembers of its failures stands apart too.
.PHONY: $(PARTS:%=part-%)
$(PARTS:%=part-%): part-%:
	@echo 'Tests of $(if $(filter others,$*),all else,$(IN_$*)):'
	@$(BIN)/python -m pytest $(IN_$*) -o cache_dir=.pytest_cache/$*

# tests/depth.py tells which tests that are, and how they choose their part.
whole: $(VENV)/.ready-test
	$(BIN)/python -m pytest tests -m whole --hypothesis-profile=whole -n auto --dist worksteal

cover: $(VENV)/.ready-test
	$(BIN)/python -m pytest --hypothesis-profile=whole -n auto --cov --cov-report=term:skip-covered

explore: $(VENV)/.ready-test
	$(BIN)/python -m pytest -n auto --hypothesis-profile=new

# An environment with nothing but the wheel and the lowest version of each library it names:
# README's tour there, then the tests of a pack, a bank and a week on those versions.
FLOORS := $(VENV)/floors
FLOORS_PIP := $(FLOORS)/bin/python -m pip install --quiet --disable-pip-version-check --only-binary :all:
FLOORS_TESTS := tests/packs/test_build.py tests/packs/test_write.py tests/bank/test_load.py \
	tests/bank/saving/test_edit.py tests/cli/test_bank_commands.py tests/cli/test_week.py

floors: $(VENV)/.ready-test
	rm -rf $(FLOORS)
	$(PYTHON) -m venv $(FLOORS)
	$(BIN)/python -m installed.wheel $(FLOORS)
	$(FLOORS_PIP) $(FLOORS)/itembank-*.whl `$(BIN)/python -m installed.lowest`
	$(BIN)/python -m installed.tour $(FLOORS)/bin
	$(FLOORS_PIP) `$(BIN)/python -m installed.lowest pytest pytest-xdist hypothesis`
	$(FLOORS)/bin/python -m pytest -n auto -p no:cacheprovider -W ignore $(FLOORS_TESTS)

bench: $(VENV)/.ready-bench
	$(BIN)/python bench/run.py

clean:
	rm -rf $(VENV) .pytest_cache .mypy_cache .ruff_cache .hypothesis .coverage
