"""The cache never gives back what was not put in, and can be deleted, filled and spoilt at any moment."""

import os
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from generator.build.cache import Cache, users_cache
from generator.build.packing import digest, packed, pressed, unpressed

KEY = "ab" * 32
OTHER = "ac" * 32


def file_of(root: Path, key: str) -> Path:
    return root / key[:2] / key[2:]


def test_what_is_put_in_comes_out(tmp_path: Path) -> None:
    cache = Cache(root=tmp_path / "not there yet")
    assert cache.get(KEY) is None
    assert cache.put(KEY, b"bread")
    assert cache.get(KEY) == b"bread"
    assert cache.get(OTHER) is None


@pytest.mark.parametrize("place", [0, 8, 39, 40, -1])
def test_any_flipped_bit_is_noticed_and_cleared_away(tmp_path: Path, place: int) -> None:
    cache = Cache(root=tmp_path)
    cache.put(KEY, b"a loaf of bread")
    data = bytearray(file_of(tmp_path, KEY).read_bytes())
    data[place] ^= 1
    file_of(tmp_path, KEY).write_bytes(data)
    assert cache.get(KEY) is None
    assert not file_of(tmp_path, KEY).exists()


@pytest.mark.parametrize("length", [0, 5, 40, 50])
def test_file_that_was_cut_off_is_noticed(tmp_path: Path, length: int) -> None:
    cache = Cache(root=tmp_path)
    cache.put(KEY, b"a loaf of bread")
    os.truncate(file_of(tmp_path, KEY), length)
    assert cache.get(KEY) is None


def test_file_under_another_key_is_not_believed(tmp_path: Path) -> None:
    cache = Cache(root=tmp_path)
    cache.put(KEY, b"bread")
    os.makedirs(tmp_path / OTHER[:2], exist_ok=True)
    os.rename(file_of(tmp_path, KEY), file_of(tmp_path, OTHER))
    assert cache.get(OTHER) is None


def test_folder_that_cannot_be_made_keeps_nothing_and_says_so(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    cache = Cache(root=tmp_path / "file")
    assert not cache.put(KEY, b"bread")
    assert cache.get(KEY) is None
    assert cache.trim(0) == 0
    assert Cache(root=None).put(KEY, b"bread") is False


def test_what_was_not_used_longest_goes_first(tmp_path: Path) -> None:
    cache = Cache(root=tmp_path)
    keys = [f"{number:02x}" * 32 for number in range(4)]
    for age, key in zip((40, 30, 20, 10), keys, strict=True):
        cache.put(key, b"x" * 960)
        os.utime(file_of(tmp_path, key), (time.time() - age,) * 2)
    assert cache.get(keys[0])
    assert cache.trim(2500) == 2
    assert [cache.get(key) is not None for key in keys] == [True, False, False, True]


def test_two_makes_at_once_never_read_half_a_file(tmp_path: Path) -> None:
    cache = Cache(root=tmp_path)
    contents = {bytes([65 + number]) * 100_000 for number in range(4)}

    def write(content: bytes) -> set[bytes | None]:
        return {(cache.put(KEY, content) and cache.get(KEY)) or None for _ in range(30)}

    with ThreadPoolExecutor(4) as pool:
        seen = set[bytes | None]().union(*pool.map(write, contents))
    assert seen <= contents
    assert not list(tmp_path.rglob(".new-*"))


def test_nothing_is_kept_where_none_is_wanted(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    assert users_cache() == Cache(root=None)
    monkeypatch.delenv("TINLEAF_CACHE_BYTES")
    assert users_cache() == Cache(root=tmp_path / "tinleaf" / "made")


def test_equal_values_have_equal_bytes_whatever_is_one_object() -> None:
    word = "".join(["bre", "ad"])
    shared, apart = (word, word), ("bread", "".join(["br", "ead"]))
    assert packed(shared) == packed(apart)
    assert digest(shared) == digest(apart) != digest(("bread", "rye"))
    assert unpressed(pressed(packed(shared))) == apart
