#!/bin/sh
# Lays the demo's ledger anew, with the program's own commands: run it when the words of a description change.
set -eu
cd "$(dirname "$0")/.."
rm -f content/ledger.jsonl
posted() { .venv/bin/tinleaf posted "$@" --content content --day 2026-11-25; }
posted kettle-boule page --on 2026-01-17
posted kettle-boule description --on 2026-01-17
posted cardamom-orange-braid card --to "Odile next door" --revision 1 --on 2026-03-20
posted cardamom-orange-braid page --on 2026-04-04
posted cardamom-orange-braid description --on 2026-04-04
posted cardamom-orange-braid pinned comment --on 2026-04-05
posted tall-tea-brack page --on 2026-10-24
posted tall-tea-brack description --on 2026-10-24
posted tall-tea-brack tags --to "the choir" --on 2026-11-09
posted sunday-milk-rolls page --on 2026-11-07
posted sunday-milk-rolls description --on 2026-11-07
posted sunday-milk-rolls newsletter --on 2026-11-08
