"""Every style sheet keeps to the grammars of the CSS specifications: no unknown property, value, rule or selector.

The grammars are those of css-tree, which follows the specifications' own data, and of @webref/css, which W3C extracts
from its specifications; `css_grammar.mjs` says how they are put together.
"""

import json
import subprocess
from pathlib import Path

import pytest

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
CHECKER = ROOT / "tests" / "reference" / "css_grammar.mjs"


def complaints(*folders: Path) -> list[str]:
    """What the grammars say against all sheets in these folders."""
    command = ["node", str(CHECKER), *map(str, folders)]
    told = subprocess.run(command, check=True, capture_output=True, text=True, timeout=120)
    return [str(each) for each in json.loads(told.stdout)]


FAULTS = {
    "a { colr: red }": "colr: red (Unknown property `colr`)",
    "a { color: rde }": "color: rde (Mismatch)",
    "a { width: 10 }": "width: 10 (Mismatch)",
    "a { padding: var(--nowhere) }": "padding: var(--nowhere) uses a custom property that no sheet sets",
    ":root { --hue: red } a { width: var(--hue) }": "width: red (Mismatch)",
    "a:hovr { margin: 0 }": ":hovr is no selector of the specifications",
    "@medai print { a { margin: 0 } }": "@medai: Unknown at-rule `@medai`",
    "@media (wide) and { a { margin: 0 } }": "@media: Mismatch",
    "@font-face { font-display: often }": "font-display: often (Mismatch)",
    "@page { size: huge }": "size: huge (Mismatch)",
    "a { margin 0 }": "Colon is expected",
}


def test_the_grammars_find_faults(tmp_path: Path) -> None:
    for number, sheet in enumerate(FAULTS):
        (tmp_path / f"{number:02}.css").write_text(sheet, encoding="utf-8")
    told = complaints(tmp_path)
    for number, words in enumerate(FAULTS.values()):
        own = [each for each in told if f"{number:02}.css:" in each]
        assert any(words in each for each in own), (words, own)


def test_every_sheet_of_every_theme_is_valid() -> None:
    folders = [each for each in sorted((ROOT / "themes").glob("*/*")) if each.is_dir()]
    assert sum(len(list(each.glob("*.css"))) for each in folders) > 20
    assert complaints(*folders) == []


def test_every_sheet_of_the_demo_is_valid_as_it_is_published(demo: Path) -> None:
    assert list((demo / "site" / "leaf").glob("*.css"))
    assert complaints(demo / "site" / "leaf") == []
