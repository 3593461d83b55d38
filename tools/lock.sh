#!/bin/sh
# Writes requirements.lock (what the program needs) and requirements-test.lock (that, and what the tests
# need): exact versions with the hashes of every published file, for every platform and Python >= 3.11.
# Run it after a change of the dependencies in pyproject.toml; read the difference before you commit it.
# Versions already locked stay; `tools/lock.sh --upgrade` moves them.
set -eu
cd "$(dirname "$0")/.."

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
python3 -m venv "$scratch/venv"
"$scratch/venv/bin/pip" install --quiet uv

compile() {
    "$scratch/venv/bin/uv" pip compile pyproject.toml --quiet --universal --python-version 3.11 \
        --generate-hashes --no-annotate --no-emit-index-url \
        --custom-compile-command "tools/lock.sh" "$@"
}

compile --output-file requirements-test.lock --extra checkout --extra test "$@"
# The small lock is held to the same versions as the large one.
compile --output-file requirements.lock --extra checkout --constraint requirements-test.lock "$@"
