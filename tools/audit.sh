#!/bin/sh
# Asks the advisories of the Python Package Index about every locked library. Needs the network: where the service
# cannot be asked it says so and fails, since an unasked question is no good answer.
set -eu
cd "$(dirname "$0")/.."

scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
python3 -m venv "$scratch/venv"
"$scratch/venv/bin/pip" install --quiet pip-audit
for lock in requirements.lock requirements-test.lock; do
    echo "$lock:"
    "$scratch/venv/bin/pip-audit" --disable-pip --require-hashes --requirement "$lock" --progress-spinner off --strict
done
