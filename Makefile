# Each target works alone on a fresh clone; the first run installs what is missing and says so.
.PHONY: help demo test long bench audit format clean
.DEFAULT_GOAL := help
PYTHON := .venv/bin/python
# The day the demo is published on: its packs were read for that winter, and a make on one day is one output.
DEMO_DAY := 2026-11-25

help:  ## list these targets
	@grep -hE '^[a-z]+:.*##' $(MAKEFILE_LIST) | sed -E 's/^([a-z]+):[^#]*## */\1\t/' | \
		while IFS="$$(printf '\t')" read -r name text; do printf '  make %-8s %s\n' "$$name" "$$text"; done

demo:  ## build the demo publication from content/ into output/
	@tools/system.sh demo
	@tools/environment.sh demo
	@.venv/bin/tinleaf make content --output output --day $(DEMO_DAY)
	@echo "Open output/site/index.html in a browser; the cards lie in output/site/recipes/, the tags and descriptions in output/desk/."

test:  ## style, types and all the tests (what CI runs; under 15 minutes)
	@tools/system.sh test
	@tools/environment.sh test
	@$(PYTHON) -m ruff check --quiet .
	@$(PYTHON) -m ruff format --quiet --check .
	@$(PYTHON) -m mypy --no-error-summary
	@$(PYTHON) -m pytest -q -n 2

long:  ## the checks that take minutes to hours
	@tools/system.sh test
	@tools/environment.sh test
	@TINLEAF_LONG=1 $(PYTHON) -m pytest -q tests/properties tests/formula_depth tests/declaration/test_laws.py
	@TINLEAF_LONG=1 $(PYTHON) -m pytest -q -m long || { [ $$? = 5 ] && echo "There are no long checks yet."; }

bench:  ## measure how long a build takes
	@tools/system.sh test
	@tools/environment.sh test
	@$(PYTHON) -m pytest -q -m bench || { [ $$? = 5 ] && echo "There are no measurements yet."; }

audit:  ## ask whether a known fault is in a library that we use (needs the network)
	@tools/audit.sh

format:  ## lay the code out, and mend what can be mended by rule
	@tools/environment.sh test
	@$(PYTHON) -m ruff check --fix .
	@$(PYTHON) -m ruff format .

clean:  ## remove what was built, not the environment
	rm -rf output build dist .mypy_cache .ruff_cache .pytest_cache .hypothesis
	find . -name __pycache__ -not -path './.venv/*' -not -path './node_modules/*' -prune -exec rm -rf {} +
