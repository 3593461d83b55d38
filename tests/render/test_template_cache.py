"""Translated templates are kept: found again, never used for another text, never in the way if spoilt."""

from pathlib import Path

import pytest
from jinja2 import DictLoader, Environment

from generator.render.kept import cache_folder
from generator.render.template_cache import TemplateCache

PAGE = "<h1>{{ title }}</h1>"


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    found = cache_folder("templates")
    assert found is not None
    return found


def filled(text: str, *, written: str = "") -> str:
    loader = DictLoader({"page.html": text})
    environment = Environment(loader=loader, autoescape=True, bytecode_cache=TemplateCache(written))
    return environment.get_template("page.html").render(title="Rye & oats")


def never(self: Environment, source: str, filename: str) -> None:
    raise AssertionError("translated again")


def test_what_was_translated_once_is_found_again(monkeypatch: pytest.MonkeyPatch) -> None:
    assert filled(PAGE) == "<h1>Rye &amp; oats</h1>"
    monkeypatch.setattr(Environment, "_compile", never)
    assert filled(PAGE) == "<h1>Rye &amp; oats</h1>"


def test_another_text_of_the_same_name_is_translated_anew() -> None:
    filled(PAGE)
    assert filled("<h2>{{ title }}</h2>") == "<h2>Rye &amp; oats</h2>"
    assert filled(PAGE) == "<h1>Rye &amp; oats</h1>"


def test_another_way_to_write_templates_has_translations_of_its_own(folder: Path) -> None:
    filled(PAGE, written="one")
    filled(PAGE, written="other")
    assert len(list(folder.iterdir())) == 2


@pytest.mark.parametrize("bit", [0, 7, 260, 300, 700, 1500])
def test_a_flipped_bit_or_a_file_cut_off_is_noticed_and_mended(
    folder: Path, monkeypatch: pytest.MonkeyPatch, bit: int
) -> None:
    filled(PAGE)
    (kept,) = folder.iterdir()
    whole = kept.read_bytes()
    spoilt = bytearray(whole)
    spoilt[bit // 8] ^= 1 << bit % 8
    for content in (bytes(spoilt), whole[: bit // 8], b""):
        kept.write_bytes(content)
        assert filled(PAGE) == "<h1>Rye &amp; oats</h1>"
        assert kept.read_bytes() == whole


def test_where_nothing_can_be_kept_templates_are_filled_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_bytes(b"")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    assert filled(PAGE) == "<h1>Rye &amp; oats</h1>"
