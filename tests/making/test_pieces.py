"""What is known of bakes lies in pieces: a correction reads and writes those that it reaches, and no others."""

from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from generator.build.cache import Cache
from generator.build.packing import packed, pressed, unpressed
from generator.build.works import Gone, Teller, key_of
from generator.pipeline import check_folder
from generator.publication.outputs import tasks_about
from generator.publication.pieces import Leaves, pieces_of, tie_of
from generator.publication.understanding import publication_of, shortened_site
from tests.making.kitchen import PAPER, Kitchen, lay


@dataclass(frozen=True, slots=True, kw_only=True)
class Tin:
    width: int
    name: str = "loaf"


def test_a_correction_that_no_list_shows_looks_at_no_other_bake(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path)
    first = {row.stage: row for row in kitchen.make().profile.rows}
    kitchen.change("recipes/oat-squares.md", "200 g rolled oats", "210 g rolled oats")
    then = {row.stage: row for row in kitchen.make().profile.rows}
    # Its page, its numbers, its descriptions, what the feeds say of it; and the feeds.
    assert (first["listed"].went_in > 14, then["listed"].went_in) == (True, 5)
    assert then["pages"].went_in == first["pages"].went_in == 3
    kitchen.change("recipes/oat-squares.md", "lead: Chewy.", "lead: Very chewy.")
    listed = {row.stage: row for row in kitchen.make().profile.rows}
    assert 5 < listed["listed"].went_in < first["listed"].went_in
    assert listed["lists"].made > then["lists"].made == 1


def test_the_work_on_a_bake_depends_on_no_list(tmp_path: Path) -> None:
    """Else a list that changed would leave it as it was."""
    publication = publication_of(check_folder(lay(tmp_path)), Cache(root=None))
    bare = replace(publication, site=shortened_site(publication.site))

    def keys(of: object) -> list[str]:
        assert isinstance(of, type(publication))
        told = Teller()
        tasks = (each for each in tasks_about(of, of.leaves) if each.stage not in PAPER)
        return [key_of(each, ground="", themes="".join, told=told) for each in tasks]

    assert keys(publication) == keys(bare)
    assert len(keys(bare)) == 12


def test_one_piece_is_read_and_written_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("generator.publication.pieces.AT_ONCE", 1)
    cache = Cache(root=tmp_path / "cache")
    known = publication_of(check_folder(lay(tmp_path / "content")), cache).leaves
    pieces = pieces_of(known, cache)
    name = "oat-squares"
    changed = replace(known[name], packs=("butter", "honey"))
    leaves = Leaves(pieces, {name: changed}, cache)
    assert dict(leaves) == {each: replace(known[each], entry=None) for each in known} | {name: changed}
    assert {each: leaves.entry(each) for each in known} == {each: known[each].entry for each in known}
    again = leaves.pieces()
    assert [old == new for old, new in zip(pieces, again, strict=True)] == [
        each.names != (name,) for each in pieces
    ]
    assert tie_of(changed).listed != tie_of(known[name]).listed
    assert tie_of(changed).entry == tie_of(known[name]).entry
    cache.drop(pieces[0].leaves.mark)
    with pytest.raises(Gone):
        Leaves(pieces, {}, cache)[pieces[0].names[0]]


def test_a_value_of_another_version_is_not_taken_for_one_of_this(monkeypatch: pytest.MonkeyPatch) -> None:
    kept = pressed(packed((Tin(width=23), Tin(width=20, name="square"))))
    assert unpressed(kept) == (Tin(width=23), Tin(width=20, name="square"))
    from generator.build import packing

    monkeypatch.setitem(packing._SETTERS, Tin, packing._SETTERS[Tin][:1])
    with pytest.raises(ValueError, match="longer"):
        unpressed(kept)
