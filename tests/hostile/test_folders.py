"""Whole content folders that somebody has filled with malice or by accident: an answer, soon, and no traceback."""

import os
import time
from pathlib import Path

import pytest

from generator.diagnostics.diagnostic import has_errors
from generator.diagnostics.text import as_text
from generator.pipeline import check_folder

SECONDS = 10.0
"""Far above what any of them takes, so that a laden machine does not fail the test; a hang is longer."""
HEAD = "---\ntitle: Plain loaf\n"
METHOD = "---\n\n## Method\n1. Mix.\n"


def recipe(lines: str, *, more: str = "", method: str = METHOD) -> bytes:
    return f"{HEAD}{more}formula:\n{lines}{method}".encode("utf-8", "surrogatepass")


def line(text: str) -> bytes:
    return recipe(f"  - {text}\n")


ALIASES = "a: &a [x, x, x, x, x, x, x, x, x]\n" + "".join(
    f"{chr(98 + n)}: &{chr(98 + n)} [{', '.join([f'*{chr(97 + n)}'] * 9)}]\n" for n in range(20)
)
FILES: dict[str, tuple[str, bytes]] = {
    "alias bomb": ("recipes/a.md", f"---\n{ALIASES}---\n".encode()),
    "alias bomb of settings": ("site.yaml", ALIASES.encode()),
    "alias bomb of the pantry": ("pantry.yaml", ALIASES.encode()),
    "an endless line of the pantry": ("pantry.yaml", b"a: " + b"x" * 10_000_000),
    "an endless line of the ledger": ("ledger.jsonl", b"x" * 10_000_000),
    "nested brackets in the ledger": ("ledger.jsonl", b"[" * 100_000),
    "nested brackets in the pantry": ("pantry.yaml", b"a: " + b"[" * 100_000),
    "nested brackets in a bake": ("bakes/2026-01-01-a.yaml", b"a: " + b"[" * 100_000),
    "a number without end in the ledger": ("ledger.jsonl", b'{"v": ' + b"9" * 100_000 + b"}\n"),
    "NUL": ("recipes/a.md", recipe("  - 500 g fl\x00our\n")),
    "a lone surrogate": ("recipes/a.md", recipe("  - 500 g fl\ud800our\n")),
    "a surrogate by escape": ("recipes/a.md", recipe('  - "500 g \\ud800 flour"\n')),
    "a surrogate by escape in the ledger": ("ledger.jsonl", b'{"event": "\\ud800"}\n'),
    "right to left": ("recipes/a.md", recipe("  - 500 g \u202eruolf\u202c\n")),
    "right to left in a title": ("recipes/a.md", recipe("  - 5 g salt\n").replace(b"Plain", b"\xe2\x80\xae")),
    "1e999": ("recipes/a.md", line("1e999 g bread flour")),
    "digits": ("recipes/a.md", line("1" + "0" * 400 + " g bread flour")),
    "very many digits": ("recipes/a.md", line("9" * 100_000 + " g bread flour")),
    "a fraction of many digits": ("recipes/a.md", line("1/" + "9" * 10_000 + " cup bread flour")),
    "nothing below the line": ("recipes/a.md", line("1/0 cup bread flour")),
    "arabic digits": ("recipes/a.md", line("٥٠٠ g bread flour")),
    "superscripts": ("recipes/a.md", line("²³ g bread flour")),
    "digits in settings": ("site.yaml", b"description_limit: " + b"9" * 100_000),
    "digits of a date": ("recipes/a.md", recipe("  - 5 g salt\n", more=f"date: {'9' * 5000}-01-01\n")),
    "digits of a yield": ("recipes/a.md", recipe("  - 5 g salt\n", more=f"makes: {'9' * 5000} loaves\n")),
    "digits of a price": ("pantry.yaml", b"bread flour:\n  weight: 1 cup = " + b"9" * 5000 + b" g\n"),
    "chapters": (
        "recipes/a.md",
        recipe(
            "  - 5 g salt\n", more="chapters:\n" + "".join(f"  - 0:{n % 60:02} Mix\n" for n in range(9000))
        ),
    ),
    "deep lists": (
        "journal/a.md",
        b"---\ntitle: a\n---\n" + b"".join(b"  " * n + b"- a\n" for n in range(500)),
    ),
    "brackets in an article": ("journal/a.md", b"---\ntitle: a\n---\n" + b"[" * 100_000),
    "links in an article": ("journal/a.md", b"---\ntitle: a\n---\n" + b"[a](" * 20_000),
    "emphasis": ("journal/a.md", b"---\ntitle: a\n---\n" + b"*a _b " * 20_000),
    "entities": ("journal/a.md", b"---\ntitle: a\n---\n" + b"&" * 100_000 + b"&#99999999999;"),
    "CON": ("recipes/con.md", line("5 g salt")),
    "NUL.md": ("recipes/NUL.md", line("5 g salt")),
    "aux": ("recipes/aux.md", line("5 g salt")),
    "a space at the end of a name": ("recipes/a .md", line("5 g salt")),
    "a line break in a name": ("recipes/a\nb.md", line("5 g salt")),
    "a picture outside": (
        "recipes/a.md",
        recipe("  - 5 g salt\n", more="photo: media/../../../etc/passwd\n"),
    ),
    "a picture at the root": ("recipes/a.md", recipe("  - 5 g salt\n", more="photo: /etc/passwd\n")),
    "a picture by signs": ("recipes/a.md", recipe("  - 5 g salt\n", more="photo: media/%2e%2e/site.yaml\n")),
    "a picture by backslash": (
        "recipes/a.md",
        recipe("  - 5 g salt\n", more="photo: media\\..\\site.yaml\n"),
    ),
}


@pytest.mark.parametrize("name", FILES)
def test_a_folder_with_one_hostile_file_is_answered(name: str, tmp_path: Path) -> None:
    path, data = FILES[name]
    (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
    (tmp_path / path).write_bytes(data)
    start = time.process_time()
    result = check_folder(tmp_path)
    shown = as_text(result.diagnostics, result.texts)
    assert time.process_time() - start < SECONDS
    assert shown.count("  hint: ") >= len(result.diagnostics)
    assert "\u202e" not in shown
    shown.encode()


@pytest.mark.parametrize("name", [each for each in FILES if "picture" in each])
def test_a_picture_elsewhere_is_an_error(name: str, tmp_path: Path) -> None:
    test_a_folder_with_one_hostile_file_is_answered(name, tmp_path)
    assert has_errors(check_folder(tmp_path).diagnostics)


def test_names_that_are_one_on_some_disks_are_told(tmp_path: Path) -> None:
    (tmp_path / "media").mkdir()
    for name in ("media/Loaf.jpg", "media/loaf.jpg"):
        (tmp_path / name).write_bytes(b"")
    assert any("loaf.jpg" in each.message.lower() for each in check_folder(tmp_path).diagnostics)


def test_pipes_and_links_out_are_no_sources(tmp_path: Path) -> None:
    """A pipe would be waited for without end, a link could publish what the maker keeps elsewhere."""
    (tmp_path / "content" / "recipes").mkdir(parents=True)
    (tmp_path / "content" / "media").mkdir()
    (tmp_path / "secret.jpg").write_bytes(b"secret")
    os.mkfifo(tmp_path / "content" / "recipes" / "pipe.md")
    os.mkfifo(tmp_path / "content" / "media" / "pipe.jpg")
    (tmp_path / "content" / "media" / "out.jpg").symlink_to(tmp_path / "secret.jpg")
    (tmp_path / "content" / "media" / "zero.jpg").symlink_to("/dev/zero")
    result = check_folder(tmp_path / "content")
    assert [each.code for each in result.diagnostics].count("S054") == 2
