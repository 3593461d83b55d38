"""What the desk turns away: other names, other sites, paths that lead out, too much, and whoever has no token."""

import json
import zlib
from concurrent.futures import ThreadPoolExecutor
from io import BytesIO
from pathlib import Path
from struct import pack

import pytest
from PIL import Image

from generator.desk.entry_code import MOST_GUESSES, Door
from generator.desk.serve import LOOPBACK, sockets_for
from tests.desk.served import DAY, Served

SPELLINGS = [
    "../site.yaml",
    "../../site.yaml",
    "..%2fsite.yaml",
    "..%2Fsite.yaml",
    "%2e%2e/site.yaml",
    "%2e%2e%2fsite.yaml",
    "%252e%252e%252fsite.yaml",
    "..%c0%afsite.yaml",
    "..%5csite.yaml",
    "..\\site.yaml",
    "....//site.yaml",
    "./../site.yaml",
    "%2e/%2e%2e/site.yaml",
    "..;/site.yaml",
    "..%00/site.yaml",
    "site.yaml%00.html",
    "..%ef%bc%8fsite.yaml",
    "%u002e%u002e/site.yaml",
    "/etc/passwd",
    "%2fetc%2fpasswd",
    "file:///etc/passwd",
    "..%0d%0a/site.yaml",
]


@pytest.mark.parametrize("spelling", SPELLINGS)
@pytest.mark.parametrize(
    "start", ["/", "/media/", "/desk/out/", "/desk/files/", "/desk/edit/", "/desk/bench/"]
)
def test_no_path_leads_out(served: Served, start: str, spelling: str) -> None:
    answer = served.ask(start + spelling)
    assert answer.status in (400, 404)
    assert b"maker:" not in answer.body
    assert b"root:" not in answer.body


def test_a_recipe_that_is_a_link_out_of_the_folder_is_not_shown(served: Served, tmp_path: Path) -> None:
    (tmp_path / "secret.md").write_text("---\ntitle: Hidden\n---\nnobody's business")
    link = served.root / "recipes" / "secret.md"
    link.symlink_to(tmp_path / "secret.md")
    try:
        assert b"nobody" not in served.ask("/desk/edit/secret").body
        answer = served.send("/desk/edit/secret/save", {"base": "", "text": "mine"})
        assert answer.status == 400 or not answer.values["ok"]
        assert "nobody" in (tmp_path / "secret.md").read_text()
    finally:
        link.unlink()


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({"Host": "evil.example"}, 421),
        ({"Host": "127.0.0.1"}, 421),
        ({"Origin": "http://evil.example"}, 403),
        ({"Origin": "null"}, 403),
        ({"Origin": "http://127.0.0.1:1"}, 403),
        ({"Sec-Fetch-Site": "cross-site"}, 403),
        ({"Sec-Fetch-Site": "same-site"}, 403),
    ],
)
@pytest.mark.parametrize("path", ["/", "/desk/", "/desk/state.json"])
def test_other_names_and_other_sites(served: Served, path: str, headers: dict[str, str], status: int) -> None:
    assert served.ask(path, headers=headers).status == status


def test_a_change_needs_the_token_and_our_own_form(served: Served, recipe: Path) -> None:
    before, path = recipe.read_bytes(), f"/desk/edit/{recipe.stem}/save"
    assert served.send(path, {}, X_Desk_Token="guessed").status == 403
    assert served.ask(path, method="POST", body=b"{}").status == 403
    assert served.send(path, {}, Content_Type="text/plain").status == 400
    assert served.send(path, ["a list"]).status == 400
    assert served.send(path, {"base": 1, "text": None}).status == 400
    assert served.ask(path, method="PUT", body=b"{}").status == 405
    assert recipe.read_bytes() == before


def test_every_page_is_under_a_strict_policy(served: Served) -> None:
    for path in ("/desk/", "/", "/desk/nothing", "/desk/files/desk.js"):
        headers = served.ask(path).headers
        assert "default-src 'none'; script-src 'self'" in headers["content-security-policy"]
        assert "unsafe" not in headers["content-security-policy"]
        assert headers["x-content-type-options"] == "nosniff"
        assert "access-control-allow-origin" not in headers


def _bomb() -> bytes:
    """A PNG of a few kilobytes that says it is 60,000 × 60,000 pixels."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return pack(">I", len(data)) + kind + data + pack(">I", zlib.crc32(kind + data))

    head = pack(">IIBBBBB", 60000, 60000, 1, 0, 0, 0, 0)
    data = zlib.compress(bytes(7501 * 200), 9)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", data) + chunk(b"IEND", b"")


def _photo(served: Served, recipe: Path, data: bytes, id: str) -> dict[str, list[object]]:
    path = f"/desk/bench/{recipe.stem}/photo?day={DAY}&id={id}"
    answer = served.ask(path, method="POST", body=data, headers={"X-Desk-Token": served.token})
    values: dict[str, list[object]] = answer.values
    return values


def test_pictures_are_decoded_and_written_anew(served: Served, recipe: Path) -> None:
    made = BytesIO()
    picture = Image.new("RGB", (3000, 200), (200, 120, 40))
    exif = Image.Exif()
    exif[0x010F] = "<script>camera</script>"
    picture.save(made, "JPEG", exif=exif)
    sent = made.getvalue() + b"<?php hidden"
    for _ in range(2):
        assert _photo(served, recipe, sent, "photo-0001")["done"] == ["photo-0001"]
    (kept,) = (served.root / "media/bakes").glob("*.jpg")
    assert b"script" not in kept.read_bytes()
    assert b"php" not in kept.read_bytes()
    with Image.open(kept) as shown:
        assert shown.size == (1600, 107)
    record = next((served.root / "bakes").glob(f"{DAY}-{recipe.stem}.yaml")).read_text()
    assert record.count(f"media/bakes/{kept.name}") == 1


@pytest.mark.parametrize("data", [_bomb(), b"GIF89a", b"<svg onload='x'/>", b"", b"\x00" * 100])
def test_what_is_no_picture_is_refused(served: Served, recipe: Path, data: bytes) -> None:
    before = sorted((served.root / "media").rglob("*"))
    values = _photo(served, recipe, data, "photo-0002")
    assert values["done"] == []
    assert len(values["refused"]) == 1
    assert sorted((served.root / "media").rglob("*")) == before


def test_too_much_is_refused_before_it_is_read(served: Served, recipe: Path) -> None:
    path, token = f"/desk/bench/{recipe.stem}/photo?day={DAY}&id=photo-0003", {"X-Desk-Token": served.token}
    assert served.ask(path, method="POST", headers={**token, "Content-Length": "900000000"}).status == 413
    assert served.ask(path, method="POST", headers={**token, "Content-Length": "-1"}).status in (400, 413)
    large = json.dumps({"base": "", "text": "x" * 3_000_000}).encode()
    own = {**token, "Content-Type": "application/json"}
    assert served.ask(f"/desk/edit/{recipe.stem}/save", method="POST", body=large, headers=own).status == 400


def test_five_hundred_requests_at_once_are_answered_or_told_to_wait(served: Served) -> None:
    with ThreadPoolExecutor(100) as pool:
        answers = list(pool.map(lambda _: served.ask("/desk/state.json").status, range(500)))
    assert set(answers) <= {200, 503}
    assert 200 in answers
    assert served.ask("/desk/").status == 200


def test_nothing_but_loopback_is_bound() -> None:
    sockets = sockets_for(0)
    try:
        assert [each.getsockname()[0] for each in sockets] == [LOOPBACK]
    finally:
        for each in sockets:
            each.close()


def test_the_code_lets_one_in_once() -> None:
    told: list[str] = []
    door = Door(is_open=True, tell=told.append)
    first = door.code
    session = door.enter(f" {first[:4].lower()}-{first[4:].lower()} ")
    assert door.knows(session)
    assert door.enter(first) == ""
    assert not door.knows("")
    second = door.code
    assert [door.enter("WRONGONE") for _ in range(MOST_GUESSES)] == [""] * MOST_GUESSES
    assert door.enter(second) == ""
    assert told == [first, second, door.code]
    assert Door(is_open=False).enter("") == ""
