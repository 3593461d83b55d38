#!/bin/sh
# Sees to it that the machine has what pip cannot bring: `tools/system.sh demo` for printing,
# `tools/system.sh test` for that and the checks of finished pages.
# On Debian and its kin it installs what is missing with apt, and says so first. Elsewhere it names what
# to install and stops with 2, unless everything is there already. The second run finds nothing to do.
set -eu
purpose=${1:-demo}

missing=""

# want PACKAGE TEST...: notes the Debian package where the test fails.
want() {
    package=$1
    shift
    if ! "$@" >/dev/null 2>&1; then
        missing="$missing $package"
    fi
}

has_command() { command -v "$1"; }
has_library() { ldconfig -p 2>/dev/null | grep -F "$1" || /sbin/ldconfig -p 2>/dev/null | grep -F "$1" || other_library "$1"; }
# Where there is no ldconfig (macOS), the places that WeasyPrint itself looks in.
other_library() { ls /opt/homebrew/lib/"${1%.so*}"* /usr/local/lib/"${1%.so*}"* 2>/dev/null | grep .; }
has_python() { python3 -c 'import sys; sys.exit(sys.version_info < (3, 11))'; }
has_venv() { python3 -c 'import ensurepip, venv'; }
has_browser() { command -v chromium || command -v chromium-browser || command -v google-chrome; }

want python3 has_command python3
want python3-venv has_venv
want libpango-1.0-0 has_library libpango-1.0.so
want libpangoft2-1.0-0 has_library libpangoft2-1.0.so
want libharfbuzz-subset0 has_library libharfbuzz-subset.so
if [ "$purpose" = test ]; then
    want chromium has_browser
    want poppler-utils has_command pdftotext
    want default-jre-headless has_command java
    want nodejs has_command node
    want npm has_command npm
fi

as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

if [ -n "$missing" ]; then
    if ! command -v apt-get >/dev/null 2>&1; then
        echo "Please install these first (Debian's names; your system may call them otherwise):$missing" >&2
        exit 2
    fi
    if [ "$(id -u)" != 0 ] && ! command -v sudo >/dev/null 2>&1; then
        echo "Please install these first, as root: apt-get install$missing" >&2
        exit 2
    fi
    echo "Installing system packages with apt:$missing"
    as_root apt-get update -qq
    # shellcheck disable=SC2086  # a list of words is meant
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
fi

if ! has_python; then
    echo "Tinleaf needs Python 3.11 or newer; python3 here is $(python3 --version 2>&1)." >&2
    exit 2
fi
