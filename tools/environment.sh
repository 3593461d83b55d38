#!/bin/sh
# Makes the environment in .venv: `tools/environment.sh demo` what the program needs,
# `tools/environment.sh test` that, and the tools of the tests (also in node_modules).
# Exact versions, checked by hash. A stamp beside each says what was installed, so that the second run
# has nothing to do.
set -eu
cd "$(dirname "$0")/.."
purpose=${1:-demo}

fingerprint() { cat "$@" | python3 -c 'import hashlib, sys; print(hashlib.sha256(sys.stdin.buffer.read()).hexdigest())'; }

install_python() {
    lock=$1
    stamp=.venv/installed-$purpose
    wanted="$(fingerprint "$lock" pyproject.toml tools/environment.sh) $(pwd)"
    if [ -f "$stamp" ] && [ "$(cat "$stamp")" = "$wanted" ] && .venv/bin/python -c '' 2>/dev/null; then
        return
    fi
    echo "Making the environment in .venv from $lock"
    # An environment that was moved or whose Python has gone cannot be mended: make it anew.
    if ! .venv/bin/python -m pip --version >/dev/null 2>&1; then
        rm -rf .venv
        python3 -m venv .venv
    fi
    rm -f .venv/installed-*
    .venv/bin/python -m pip install --quiet --disable-pip-version-check --require-hashes -r "$lock"
    .venv/bin/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
    echo "$wanted" >"$stamp"
}

install_page_checkers() {
    stamp=node_modules/.installed
    wanted=$(fingerprint package-lock.json)
    if [ -f "$stamp" ] && [ "$(cat "$stamp")" = "$wanted" ]; then
        return
    fi
    echo "Installing the page checkers in node_modules"
    npm ci --ignore-scripts --no-audit --no-fund --silent
    echo "$wanted" >"$stamp"
}

case $purpose in
test)
    install_python requirements-test.lock
    install_page_checkers
    ;;
demo)
    # The tests' environment holds everything that the demo's does.
    if [ -f .venv/installed-test ]; then
        purpose=test
        install_python requirements-test.lock
    else
        install_python requirements.lock
    fi
    ;;
*)
    echo "usage: tools/environment.sh demo|test" >&2
    exit 2
    ;;
esac
